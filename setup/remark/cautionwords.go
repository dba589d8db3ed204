package remark

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// fill puts the run's own figures into words, or general ones for the table.
// A name with a capital begins a sentence.
func (s *situation) fill(words string) string {
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(words, "{")
		b.WriteString(before)
		if !found {
			return b.String()
		}
		name, after, _ := strings.Cut(rest, "}")
		said := s.word(strings.ToLower(name))
		if name != strings.ToLower(name) {
			said = strings.ToUpper(said[:1]) + said[1:]
		}
		b.WriteString(said)
		words = after
	}
}

// word is what stands for a name in the words of a caution.
func (s *situation) word(name string) string {
	scale, rules, r := s.shop.Scale, s.shop.Rules, s.run
	d, drops := pivots(r, s.shop)
	switch name {
	case "rpm":
		return s.speed()
	case "shank":
		return or(r.Step.Bit.Shank > 0, scale.Say(r.Step.Bit.Shank), "the shank")
	case "full":
		return or(r.Piece != nil, scale.Say(r.Channel.Depth), "its full height")
	case "blank":
		return or(s.otherEnd(), "a longer blank serves for its first end only, for the other use a jig that rides the fence", "cut the joint in a longer blank and saw it off, or use a jig that rides the fence")
	case "longer":
		return or(s.otherEnd(), "longer blank for one end, a jig that rides the fence for the other", "longer blank, or a jig that rides the fence")
	case "thick":
		return or(r.Piece != nil, scale.Say(r.Step.Bit.True()), "a fifth of its height")
	case "waste":
		return or(r.Piece == nil || r.Start != nil || r.Stop != nil, "bore out most of the waste", "saw out most of the waste")
	case "reach":
		return or(r.Step.Bit.Cutting == 0, "; see that its edge is that long", "")
	case "grip":
		return scale.Say(trade.ShankGrip.Of(scale))
	case "large":
		return scale.Say(trade.LargeBit.Of(scale))
	case "short":
		return scale.Say(rules.ShortPiece)
	case "hands":
		return scale.Say(rules.HandDistance)
	case "open":
		return scale.Say(trade.OpenFence.Of(scale))
	case "wall":
		return s.thinnest()
	case "whole":
		return or(r.Channel.Section.Shaped(), scale.Say(scale.Ceil(r.Along()/2)), "half of what the bit is wide at the fence")
	case "cap":
		if r.Channel.Section.Shaped() {
			return scale.SayArea(r.Cap.Depth.Millimetres())
		}
		return or(r.Cap.Depth > 0, scale.Say(r.Cap.Depth), "what the sheet gives")
	case "along":
		return or(r.Piece != nil, scale.Say(s.rides), "a short end")
	case "riding": // of a guided end that is said already
		return or(s.guided(), "", ", rides only "+s.word("along")+" of the fence")
	case "left":
		if r.Piece == nil {
			return "little"
		}
		left, _ := onEdge(r)
		return scale.Say(left)
	case "earlier":
		return "the earlier " + or(s.opens != "", s.opens, "cut")
	case "plunge": // where nobody knows, a hole is bored
		return or(s.needsStartHole(), "", " The bit must cut across its end.")
	case "carry":
		return or(r.Piece != nil && longAcross(r, s.rides, scale), "let a second person or roller stands carry its free end", "carry its free end")
	case "carried":
		return or(r.Piece != nil && longAcross(r, s.rides, scale), "a helper or stands at its free end", "its free end carried")
	case "scrap":
		return or(r.End == deck.RunOut, ", scrap behind where the bit comes out"+s.word("filling"), "")
	case "filling":
		return or(s.fills != "", ", filling the earlier "+s.fills, "")
	case "across":
		return or(r.Piece != nil, scale.Say(s.across()), "far")
	case "push":
		if r.Piece == nil {
			return "a square block or a mitre gauge"
		}
		return [...]string{"a square block", "the mitre gauge", "the carriage"}[s.shop.Cross.With]
	case "bore":
		return s.bore()
	case "square":
		if r.Start == nil {
			return "hold it square to " + s.word("push")
		}
		// Block and back stop want one place, and neither gauge nor carriage comes down with the work.
		return "clamp the work to a square block behind its tail, the back stop farther right by the block's thickness, hands " + s.word("hands") + " off; or rout it from above, or chisel it"
	case "hold":
		return or(s.starts(), "clamp a block to it as a handle", or(s.guided(), "the block or gauge behind it", "push block and featherboard"))
	case "steady":
		return or(s.starts() || s.bored(), "clamp a wide block to the work, riding the table", or(s.guided(), "clamp the work to a tall block behind it", "press the work to that with a featherboard"))
	case "down":
		return or(s.starts(), "", ", or hold the work down with a featherboard and clear the chips at every height")
	case "there":
		if r.Piece == nil {
			return "at the mark, or against the front stop on the left"
		}
		return or(s.shop.Stops == joinery.Blocks, "against the front stop on the left", "at the mark")
	case "bury":
		if r.Piece == nil {
			return "the bit is buried in the fence, or flush with its face and turning free of it"
		}
		return or(r.Step.NearEdge == 0, "the bit is flush with the face of the fence and turns free of it", "the bit is buried in the fence")
	case "gone":
		return or(s.gone > 0, scale.Say(s.gone), "some of its length")
	case "dust":
		return s.dustOf()
	case "trial":
		return s.trial()
	case "offfence":
		return s.offFence()
	}
	if !drops {
		return generalDrop[name]
	}
	switch name {
	case "tilt":
		return d.tilt()
	case "tail":
		return or(d.tail > 0, scale.Say(d.tail), "nothing")
	case "early":
		return scale.Say(scale.Ceil(max(d.Early, s.worst.Early)))
	case "stop":
		d.Tilt = max(d.Tilt, s.worst.Tilt)
		return d.stop(scale)
	}
	if name == "outs" {
		return s.outs()
	}
	return either(waysOut(r, scale))
}

// offFence names the stop that the fence does not reach.
func (s *situation) offFence() string {
	r, fence := s.run, s.shop.Fence
	back := r.Piece == nil || r.Start != nil && r.StopOffFence(false, fence)
	front := r.Piece == nil || r.Stop != nil && s.shop.Stops == joinery.Blocks && r.StopOffFence(true, fence)
	switch {
	case back && front:
		return ", back or front stop there or on the table"
	case back:
		return ", back stop there or on the table"
	case front:
		return ", front stop there or on the table"
	}
	return ""
}

// outs names the ways out of a hard drop in a few words.
func (s *situation) outs() string {
	short := "a longer blank or a start hole"
	if side, _ := otherSide(s.run, s.shop.Scale); side != joinery.NoSide {
		return fmt.Sprintf("the %s to the fence, %s", side, short)
	}
	return short
}

// generalDrop is what the table says of any drop.
var generalDrop = map[string]string{
	"tilt": "far", "tail": "little", "early": "a little",
	"stop": "the back stop is low, or its face leans away by more than the tilt",
	"outs": "the other side to the fence, a longer blank or a start hole",
	"ways": "the other side to the fence, a longer blank, or a start hole bored first",
}

func or(is bool, yes, no string) string {
	if is {
		return yes
	}
	return no
}

// speed says the highest speed, and where it comes from.
func (s *situation) speed() string {
	bit := s.run.Step.Bit
	if top := bit.TopSpeed(s.shop.Speed); bit.True() > 0 && top.RPM > 0 {
		return top.String()
	}
	return "no faster than its maker allows, its diameter or the router"
}

// trial says what is tried in scrap before the first piece.
func (s *situation) trial() string {
	r := s.run
	switch {
	case r.Channel.Recess.Depth > 0 && r.Cut.Slot != nil:
		return "cut a trial in the trial cut for the head, not in whole wood, and put the screw through it"
	case r.Channel.Recess.Depth > 0:
		return "cut a trial in scrap that has the cut it goes on from, not in whole wood, and measure its width and place"
	case r.Cut == nil || r.Cut.Kind.Receives:
		return "cut a trial groove in scrap and measure its width and place"
	case r.Cut.Kind.Enters:
		trial := "cut a trial tenon on scrap just as thick as the stock, all its cheeks, and try it in "
		if r.Joint == nil {
			return trial + "the mortise it is for, which the plan does not name (mates:)"
		}
		return trial + "its mortise" + s.aim()
	}
	return "cut a trial in scrap just as thick as the stock and measure its depth and place"
}

// aim says how thick the trial tenon comes out, and what it should measure.
func (s *situation) aim() string {
	t, ok := TrialTenon(s.run)
	if !ok {
		return ""
	}
	scale := s.shop.Scale
	if t.Fitted == t.AsSet {
		return fmt.Sprintf(": %s thick, the mortise %s wide", scale.Say(t.AsSet), scale.Say(t.Room))
	}
	return fmt.Sprintf(": raise the bit by hairs, to %s thick,", scale.Say(t.Fitted))
}

// Tenon is how thick the trial of a tenon comes out.
type Tenon struct {
	AsSet  measure.Length // by the printed heights
	Fitted measure.Length // with the play that the shop wants in its mortise
	Room   measure.Length
}

// TrialTenon gives the trial of a run's tenon. Play that the plan does not ask for is
// in no height, being finer than a rule shows: drawn 3/8 into 3/8 the tenon comes out
// as drawn, and is fitted at the trial. There is none where the run cuts no tenon, or
// its joint is not known or does not fit.
func TrialTenon(r *deck.Run) (t Tenon, ok bool) {
	if r.Joint == nil || r.Joint.Part.Cut != r.Cut {
		return Tenon{}, false
	}
	for _, fit := range r.Joint.Fits {
		if fit.Of == "thickness" && fit.Gap() >= 0 {
			return Tenon{fit.Part, min(fit.Part, fit.Room-fit.Wants), fit.Room}, true
		}
	}
	return Tenon{}, false
}

// dustOf names the dust.
func (s *situation) dustOf() string {
	if s.run.Piece == nil {
		return "The dust of this material"
	}
	w := s.run.Piece.Wood
	if w.Name == "" {
		return "The wood is not named, so its dust counts as harmful, as that of many woods"
	}
	return "The dust of " + w.Name
}

// across is how far the work reaches out from the fence.
func (s *situation) across() measure.Length {
	if s.run.Piece == nil {
		return 0
	}
	return s.run.Piece.Size.Between(s.run.Step.Fence)
}

// harmful are the softwoods whose dust is known to harm more than others'.
var harmful = map[string]string{
	"western redcedar":     "UK HSE, woodworking: most dangerous for asthma",
	"eastern redcedar":     "memory, not seen in a source",
	"old-growth redwood":   "memory, not seen in a source",
	"young-growth redwood": "memory, not seen in a source",
}
