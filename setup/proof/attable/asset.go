package attable

import (
	"cmp"
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// Settings is what a maker measures on the table as it stands; nil where it
// was not measured.
type Settings struct {
	Near, Centre, Far *measure.Length // fence face to that edge or the centre of the bit; negative where that is behind the face
	Start, Stop       *measure.Length // as the setup sheet says it for the run, see [deck.Run.Reach]
	BackStop          *measure.Length // trailing edge of the bit to the back stop, where the tail end is when the work is dropped
	Height            *measure.Length // of the bit above the table
}

// Finding is one setting as it stands on the table.
type Finding struct {
	What     string         // "fence", "start", "stop", "back stop" or "height"
	As       string         // how it is measured: "to the near edge of the bit"
	Measured measure.Length // on the table
	Wants    measure.Length // what the sheet says
	Makes    []Made         // what it would cut
	Ask      string         // a question, where another number of the run was measured; "" for none
	Move     string         // what to do about it; "" where it is right
}

// Off returns by how much it is off: more than the sheet says is positive.
func (f Finding) Off() measure.Length { return f.Measured - f.Wants }

// Right reports whether nothing need be moved.
func (f Finding) Right() bool { return f.Move == "" }

// Made is one wall, end or depth as the table would cut it.
type Made struct {
	What  string         // "near wall", "far wall", "shoulder", "begins", "ends", "depth"
	From  string         // what it is measured from: "the front", "the top end"
	Would measure.Length // where the table would cut it
	Wants measure.Length // where this run wants it; another run may cut on from there
	Words string         // "1/64 too near the back"; "correct" within half a division
}

// Standing is the table as it stands, set for one run.
type Standing struct {
	Run   *proof.Run
	Pair  string // the letter of its marks; "" where it has none
	Found []Finding
}

// Right reports whether nothing need be moved.
func (a *Standing) Right() bool {
	for _, f := range a.Found {
		if !f.Right() {
			return false
		}
	}
	return true
}

// AsSet says what the table as it stands would cut in a run of a deck that
// proves. The error is [plantext.Faults]: there is no such run, or it has no
// such mark.
func AsSet(plan *joinery.Plan, claims *proof.Claims, number string, s Settings) (Standing, error) {
	b, err := benchFor(plan, claims, number)
	if err != nil {
		return Standing{}, err
	}
	if err := b.anotherBit(s); err != nil {
		return Standing{}, err
	}
	as := Standing{Run: b.Claimed, Pair: b.Run.Pair, Found: b.fenceAsSet(s)}
	marks, err := b.marksAsSet(s)
	if err != nil {
		return Standing{}, err
	}
	as.Found = append(as.Found, marks...)
	if s.Height != nil {
		as.Found = append(as.Found, b.heightAsSet(*s.Height))
	}
	return as, nil
}

// fenceAsSet judges the fence by each distance that was measured.
func (b bench) fenceAsSet(s Settings) []Finding {
	var found []Finding
	for i, measured := range []*measure.Length{s.Near, s.Centre, s.Far} {
		if measured == nil {
			continue
		}
		numbers := b.fenceSays()
		computed := []measure.Length{b.Setup.Fence.NearEdge, b.Setup.Fence.Centre, b.Setup.Fence.FarEdge}[i]
		f := Finding{What: "fence", As: numbers[i].as, Measured: *measured, Wants: numbers[i].length}
		f.Makes = b.walls(f.Off())
		if !b.right(f.Measured, f.Wants) {
			f.Ask = cmp.Or(b.droppedMinus(f), b.strayMinus(f), b.ask(f, numbers), b.askComputed(f, computed), b.askSetup(f, i), b.askPoint(f.Measured, f.Wants))
			f.Move = b.moveFence(f.Off())
		}
		found = append(found, f)
	}
	return found
}

// walls are what a fence cuts that stands so much too far from the bit.
func (b bench) walls(off measure.Length) []Made {
	side := b.Claimed.Fence
	wall := func(what string, wants measure.Length) Made {
		m := Made{What: what, From: "the " + side.String(), Would: wants + off, Wants: wants, Words: "correct"}
		if !b.right(m.Would, m.Wants) {
			m.Words = fmt.Sprintf("%s too near the %s", b.text(off.Abs()), proof.Toward(off, side))
		}
		return m
	}
	var made []Made
	near, far := b.open()
	if !near {
		made = append(made, wall("near wall", b.Setup.Fence.NearEdge))
	}
	if !far {
		made = append(made, wall(b.farWall(), b.Setup.Fence.NearEdge+b.Bit))
	}
	return made
}

// marksAsSet judges the marks and the back stop.
func (b bench) marksAsSet(s Settings) ([]Finding, error) {
	var found []Finding
	asked := false
	lines := map[bool]measure.Length{}
	for _, m := range []struct {
		what     string
		measured *measure.Length
		stop     bool
	}{{"start", s.Start, false}, {"back stop", s.BackStop, false}, {"stop", s.Stop, true}} {
		if m.measured == nil {
			continue
		}
		mark := b.mark(m.stop)
		if mark == nil {
			return nil, b.noMark(m.what, m.stop)
		}
		guide := b.guide(m.stop)
		if m.what == "back stop" {
			guide = deck.ByTail
		}
		f := b.markAsSet(m.what, guide, m.stop, *m.measured, s.BackStop != nil)
		lines[m.stop] = f.Makes[0].Would
		asked = asked || f.Ask != ""
		found = append(found, f)
	}
	if start, ok := lines[false]; ok && !asked {
		if stop, ok := lines[true]; ok && stop-start < b.Bit {
			return nil, plantext.Faults{{
				Problem: fmt.Sprintf("between these marks the work would move backwards: the cut cannot be shorter than the bit, %s", b.text(b.Bit)),
				Remedy:  fmt.Sprintf("measure the start %s, and the stop %s", b.as(b.guide(false), false), b.as(b.guide(true), true)),
			}}
		}
	}
	return found, nil
}

// markAsSet judges one mark by the guide it was measured with.
func (b bench) markAsSet(what string, guide deck.Guide, stop bool, measured measure.Length, stopMeasured bool) Finding {
	f := Finding{What: what, As: b.as(guide, stop), Measured: measured, Wants: says(guide, b.mark(stop))}
	line := b.mark(stop).Line
	off := f.Off() // of the line on the work, from the leading end
	if guide == deck.ByTail {
		off = -off
	}
	made := Made{What: "begins", From: fmt.Sprintf("the %s end", b.Claimed.Leads), Would: line + off, Wants: line, Words: "correct"}
	if stop {
		made.What = "ends"
	}
	if !b.right(f.Measured, f.Wants) {
		made.Words = fmt.Sprintf("%s too near the %s", b.text(off.Abs()), proof.Toward(off, b.Claimed.Leads))
		f.Ask = cmp.Or(b.ask(f, b.markSays(stop)), b.fromWrongEdge(f, guide, stop), b.askPoint(f.Measured, f.Wants))
		f.Move = b.moveMark(stop, guide, off, stopMeasured)
	}
	f.Makes = []Made{made}
	return f
}

func (b bench) noMark(what string, stop bool) error {
	how, side := "fed in", b.Claimed.Leads
	if stop {
		how, side = "run out", b.Claimed.Leads.Opposite()
	}
	flag := what
	if what == "back stop" {
		flag = "back-stop"
	}
	return plantext.Faults{{
		Problem: fmt.Sprintf("run %s has no %s: the work is %s at the %s end", b.Claimed.Number, what, how, side),
		Remedy:  "leave --" + flag + " out",
	}}
}

// heightAs is from where to where a height is measured. A pilot stands above what
// cuts: who measured to the top of it would cut too shallow.
func (b bench) heightAs() string {
	if b.Tool.Pilot > 0 {
		return "from the table to the underside of the pilot"
	}
	return "from the table to the top of the bit"
}

// heightAsSet judges the bit's height.
func (b bench) heightAsSet(height measure.Length) Finding {
	carriage := b.Setup.Carriage
	wants := b.Channel.Depth
	says := b.full() // on the sheet, without the carriage
	deep := height - carriage - (says - wants)
	f := Finding{What: "height", As: b.heightAs(), Measured: height, Wants: says + carriage}
	m := Made{What: "depth", From: "the " + b.Claimed.Down.String(), Would: deep, Wants: wants, Words: "correct"}
	off := f.Off()
	if !b.right(deep, wants) {
		m.Words = fmt.Sprintf("%s too %s", b.text(off.Abs()), proof.DeepOrShallow(off))
		f.Move = b.moveBit(off)
		if carriage > 0 && b.right(height, wants) {
			f.Ask = fmt.Sprintf("%s is the depth of the cut. Did you measure above the carriage?", b.text(wants))
		}
		if b.Tool.Pilot > 0 && off > 0 {
			f.Ask = "Did you measure to the top of the pilot? The height is to its underside."
		}
	}
	if f.Move != "" && says != wants && b.right(height-carriage, wants) {
		f.Ask = fmt.Sprintf("%s was computed; after the test cut the bit at full height stood at %s, as the sheet says. Was it set by the other?", b.text(wants+carriage), b.text(f.Wants))
	}
	if f.Move != "" && f.Ask == "" {
		f.Ask = cmp.Or(b.askHeight(f), b.askPoint(f.Measured, f.Wants))
	}
	b.onTheWay(&f, &m, height-carriage)
	f.Makes = []Made{m}
	return f
}

// onTheWay judges a height of a run by that of its ladder which it is nearest to, where
// that is not the full one: raised by what is left to that, the bit would cut too deep at
// once. At a height of the setup that the run skips nothing is to be moved for it.
func (b bench) onTheWay(f *Finding, m *Made, height measure.Length) {
	full := b.Channel.Depth
	if f.Move == "" {
		return
	}
	rung := b.cutAt(height)
	left := full - height
	if i := slices.IndexFunc(b.Setup.Heights, func(h measure.Length) bool { return b.right(height, h) }); i >= 0 && !slices.Contains(b.Claimed.Heights, b.Setup.Heights[i]) {
		f.Ask, f.Move = "", fmt.Sprintf("leave the bit, and do not cut this run now: %s is height %d, which it skips; its own %s", b.text(f.Measured), i+1, b.ladder())
		return
	}
	if rung == full {
		return
	}
	off := height - rung
	if b.right(height, rung) {
		m.Words, f.Move, f.Ask = fmt.Sprintf("a height on the way, %s to go", b.text(left)), "", ""
		return
	}
	f.Wants, m.Wants = rung+b.Setup.Carriage, rung
	m.Words = fmt.Sprintf("%s too %s", b.text(off.Abs()), proof.DeepOrShallow(off))
	f.Move = fmt.Sprintf("%s for height %d", b.moveBit(off), slices.Index(b.Setup.Heights, rung)+1)
}

// ladder says which heights of its setup a run is cut at: "are heights 1 and 3".
func (b bench) ladder() string {
	var numbers []string
	for i, h := range b.Setup.Heights {
		if slices.Contains(b.Claimed.Heights, h) {
			numbers = append(numbers, fmt.Sprint(i+1))
		}
	}
	if len(numbers) == 1 {
		return "is height " + numbers[0]
	}
	return "are heights " + plantext.List(numbers, "and")
}
