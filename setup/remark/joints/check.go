package joints

import (
	"fmt"
	"math"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// jointCheck checks one joint and gathers what it finds.
type jointCheck struct {
	deck     *deck.Deck
	scale    measure.Scale
	joint    deck.Joint
	warnings []deck.Warning
	channel  joinery.Channel // of the half that is gone into
}

func (c *jointCheck) run() {
	if !c.joint.Into.Cut.Kind.Receives {
		c.lap()
		return
	}
	c.channel = c.joint.Into.Cut.Channels[0]
	c.thickness()
	c.raisedEdge()
	c.width()
	c.length()
	c.roundEnds()
	c.reveals()
	c.movement()
}

// warn adds a warning at the half that is gone into, or at its part.
func (c *jointCheck) warn(h deck.Half, code, text string, args ...any) {
	w := deck.Warning{Code: code, Piece: h.Piece.Name, Text: fmt.Sprintf(text, args...), Place: h.Piece.Place}
	if h.Cut != nil {
		w.Cut, w.Place = h.Cut.Name, h.Cut.Place
	}
	c.warnings = append(c.warnings, w)
}

// text is a length with its unit.
func (c *jointCheck) text(l measure.Length) string {
	return c.scale.Say(l)
}

// stopped reports whether the channel has a wall at that end of its run.
func (c *jointCheck) stopped(end joinery.Side) bool {
	return !c.channel.OpenAt(end, c.joint.Into.Piece.Size)
}

// thickness holds the tenon's thickness against the width of its mortise.
func (c *jointCheck) thickness() {
	clearance := c.deck.Plan.Shop.Clearance.Cheek
	fit := deck.Fit{Of: "thickness", Room: c.channel.Width, Part: acrossOf(c.joint.Part, c.channel.Near.Dimension()), Wants: clearance}
	c.joint.Fits = append(c.joint.Fits, fit)
	part, into := c.joint.Part, c.joint.Into
	_, panel := c.raised()
	switch {
	case panel != nil && (fit.Gap() < 0 || fit.Gap() > trade.LooseFit.Of(c.scale)):
		code, is := "part-too-thick", "does not go in"
		if fit.Gap() > 0 {
			code, is = "part-loose", "is loose"
		}
		c.warn(part, code, "panel %q leaves the edges of %s %s thick, which %s: %s is %s wide; write leaves: %s",
			panel.Name, part, c.text(fit.Part), is, into, c.text(fit.Room), c.scale.Format(fit.Room))
	case panel != nil:
	case fit.Gap() < 0 && part.Cut != nil:
		c.warn(part, "part-too-thick", "%s is %s thick, but %s is %s wide: take %s more off its cheeks",
			part, c.text(fit.Part), into, c.text(fit.Room), c.text(fit.Wants-fit.Gap()))
	case fit.Gap() < 0:
		c.warn(into, "part-too-thick", "%s is %s thick, but %s is %s wide: make it %s wide",
			part, c.text(fit.Part), into, c.text(fit.Room), c.text(fit.Part+fit.Wants))
	case fit.Gap() > fit.Wants+trade.LooseFit.Of(c.scale) && part.Cut != nil:
		c.warn(part, "part-loose", "%s is %s thick, but %s is %s wide: take %s less off its cheeks",
			part, c.text(fit.Part), into, c.text(fit.Room), c.text(fit.Gap()-fit.Wants))
	case fit.Gap() > fit.Wants+trade.LooseFit.Of(c.scale):
		c.warn(into, "part-loose", "%s is %s thick, but %s is %s wide: make it %s wide",
			part, c.text(fit.Part), into, c.text(fit.Room), c.text(fit.Part+fit.Wants))
	}
}

// width holds the tenon's width against the length of its mortise. A channel
// that is open at an end bounds nothing there.
func (c *jointCheck) width() {
	run := c.channel.Run()
	if !c.stopped(run.Low()) || !c.stopped(run.High()) {
		return
	}
	fit := deck.Fit{Of: "width", Room: c.channel.Hi - c.channel.Lo, Part: acrossOf(c.joint.Part, run), Wants: 0}
	c.joint.Fits = append(c.joint.Fits, fit)
	if fit.Gap() < 0 {
		c.warn(c.joint.Part, "part-too-wide", "%s is %s wide, but %s is only %s long: take %s off its edges, or lengthen the other",
			c.joint.Part, c.text(fit.Part), c.joint.Into, c.text(fit.Room), c.text(-fit.Gap()))
	}
}

// length holds the tenon's length against the depth of its mortise, unless
// that goes through.
func (c *jointCheck) length() {
	part, into := c.joint.Part, c.joint.Into
	if part.Cut == nil || c.channel.Depth == into.Piece.Size.Between(c.channel.Down) {
		return
	}
	fit := deck.Fit{Of: "length", Room: c.channel.Depth, Part: part.Cut.Length, Wants: c.deck.Plan.Shop.Clearance.Length}
	c.joint.Fits = append(c.joint.Fits, fit)
	if fit.Gap() < fit.Wants {
		c.warn(part, "tenon-bottoms", "%s is %s long, but %s is %s deep: make the tenon %s long, %s short of the bottom",
			part, c.text(fit.Part), into, c.text(fit.Room), c.text(fit.Room-fit.Wants), c.text(fit.Wants))
	}
}

// roundEnds warns where square corners would have to go into round ends.
func (c *jointCheck) roundEnds() {
	into, run := c.joint.Into, c.channel.Run()
	stopped := measure.Length(0)
	for _, end := range []joinery.Side{run.Low(), run.High()} {
		if c.stopped(end) {
			stopped++
		}
	}
	bit := bitFor(c.deck, into.Cut)
	part := c.joint.Part.Cut
	roundedByHand := part != nil && strings.Contains(part.Note, joinery.RoundEdges)
	if into.Cut.Square || roundedByHand || stopped == 0 || bit == nil {
		return
	}
	radius, fit := bit.True()/2, c.joint.Fits[0]
	intrusion := roundEndIntrusion(radius, fit.Part, fit.Room)
	if acrossOf(c.joint.Part, run)+stopped*intrusion <= c.channel.Hi-c.channel.Lo {
		return
	}
	c.warn(into, "round-ends", "%s has round ends of %s radius and %s has square corners: round the corners over, or write ends: square and chisel the ends",
		into, c.text(radius), c.joint.Part)
}

// roundEndIntrusion is how far the corner of a part of some thickness, in the
// middle of a channel of some width, must stay from the channel's end, which
// is round in its corners with the bit's radius.
func roundEndIntrusion(radius, thickness, width measure.Length) measure.Length {
	r := radius.Millimetres()
	x := r - max(0, (width-thickness).Millimetres()/2)
	if x <= 0 {
		return 0
	}
	return measure.FromMillimetres(r - math.Sqrt(r*r-x*x))
}

// bitFor returns the bit a cut is made with, or nil.
func bitFor(d *deck.Deck, cut *joinery.Cut) *joinery.Bit {
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			if d.Setups[i].Runs[k].Cut == cut {
				return d.Setups[i].Bit
			}
		}
	}
	return nil
}
