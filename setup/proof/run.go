package proof

import (
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/solid"
)

// run proves what a run of a piece says by itself, and puts it on the table
// for the proof of its channel.
func (p *prover) claimed(d dealt, of *wantedPiece) {
	at, c := d.result, p.results[d.result].Claimed
	w := of.find(c)
	if w == nil {
		p.unknown(at, c)
		return
	}
	w.claimed++
	p.labels(at, c, w)
	s, tool := &p.claims.Setups[d.setup], &p.tools[d.setup]
	if !p.orientation(at, c, w) || tool.bit == nil {
		return
	}
	t := onTable(c, s.Fence, w, tool.bit)
	if c.says(NoLength) && differ(c.Length, t.long) {
		p.wrongRun(at, "length", c.Length-t.long, "the work is %s long along the feed, not %s", p.text(t.long), p.text(c.Length))
	}
	p.begin(at, t, w)
	p.pivot(at, t, w)
	p.startHole(at, t, w, s)
	p.raised(at, t, w)
	p.screw(at, c, w, of)
	p.end(at, t, w)
	over := gone(w, of)
	p.heights(at, t, w, s, p.cap(c, tool, w), over)
	p.limits(at, t, w, tool.bit, s, over)
	p.crossing(at, t, w, s)
	if c.Start != nil && c.Stop != nil {
		p.results[at].Travel = c.Stop.Line - c.Start.Line - t.along
	}
	w.runs = append(w.runs, run{table: t, dealt: d, fence: s.Fence})
}

// unknown tells of a run whose piece or cut the plan does not have.
func (p *prover) unknown(at int, c *Run) {
	p.wrongRun(at, "cut", 0, "the plan has no cut %q%s in a piece %q", c.Cut, inBrackets(c.Part), c.Piece)
}

// labels compares the words and counts that set nothing on the table but tell
// the maker which piece is meant.
func (p *prover) labels(at int, c *Run, w *wanted) {
	ends := "round"
	if w.cut.Square {
		ends = "square"
	}
	for _, label := range []struct {
		field     string
		silent    Silence
		got, want string
	}{
		{"kind", 0, c.Kind, w.cut.Kind.Common()},
		{"wood", NoWood, c.Wood, w.piece.Wood.Name},
		{"ends", NoEnds, c.Ends, ends},
		{"note", NoNote, c.Note, w.cut.Note},
	} {
		if c.says(label.silent) && label.got != label.want {
			p.wrongRun(at, label.field, 0, "the run says %s %q, the plan %q", label.field, label.got, label.want)
		}
	}
	if c.Count != w.piece.Count {
		p.wrongRun(at, "count", 0, "the run counts %d of this piece, the plan %d", c.Count, w.piece.Count)
	}
}

// orientation compares the sides that lie down, bear and lead. It returns
// false where the run is so wrong that its numbers mean nothing.
func (p *prover) orientation(at int, c *Run, w *wanted) bool {
	ch := w.channel
	if c.Down != ch.Down {
		p.wrongRun(at, "down", 0, "with the %s down the %s would be cut into the %s; the plan wants it in the %s",
			c.Down, w.cut.Kind, c.Down, ch.Down)
		return false
	}
	lead := leading(c.Down, c.Fence)
	if lead == joinery.NoSide || c.Fence.Dimension() != ch.Near.Dimension() {
		p.wrongRun(at, "fence", 0, "the walls of the %s are measured from the %s, so the %s cannot go to the fence",
			w.cut.Kind, ch.Near, c.Fence)
		return false
	}
	if !mayBear(w, c.Fence) {
		p.wrongRun(at, "fence", 0, "the plan wants another side to the fence than the %s", c.Fence)
	}
	if c.Turned && !w.cut.Fence.Either {
		p.wrongRun(at, "turned", 0, "the piece may be turned between two runs only where the plan says fence: either")
	}
	if c.Leads != lead {
		p.wrongRun(at, "leads", 0, "with the %s down and the %s to the fence the %s end leads, not the %s",
			c.Down, c.Fence, lead, c.Leads)
		return false
	}
	return true
}

// mayBear reports whether the plan lets a side go to the fence.
func mayBear(w *wanted, side joinery.Side) bool {
	c, ch := w.cut, w.channel
	switch {
	case c.Fence.Either:
		return true
	case c.Fence.Side != joinery.NoSide:
		return side == c.Fence.Side
	}
	// The end of the piece goes to the fence where all of it is crossed.
	return side == ch.Near || side.Dimension() == w.piece.Grain && ch.OpenBeside(side, w.piece.Size) &&
		ch.EndToEnd(w.piece.Size)
}

// lines returns where a channel begins and ends, from the leading end.
func (t table) lines(ch *joinery.Channel) (a, b measure.Length) {
	r := solid.From(t.claim.Leads, ch.Lo, ch.Hi, t.size)
	return r.Lo, r.Hi
}

// begin compares where the run begins to cut with the plan's line, by each
// number of its mark.
func (p *prover) begin(at int, t table, w *wanted) {
	c, kind := t.claim, w.cut.Kind
	a, _ := t.lines(w.channel)
	drops := c.Begin == deck.Drop
	switch {
	case drops != (c.Start != nil):
		p.wrongRun(at, "start", 0, "the run says %s, but has %s", c.Begin, markOrNone(c.Start, "start"))
	case drops && a == 0:
		p.wrongRun(at, "begin", 0, "the %s is open at the %s and is fed in there; the run drops the work on", kind, c.Leads)
	case !drops && a > 0:
		p.wrongRun(at, "begin", a, "fed in, the %s would run out at the %s; the plan wants it to begin %s from there", kind, c.Leads, p.text(a))
	case drops:
		numbers := t.starts(c.Start)
		p.mark(at, w, numbers[:], a, "start", "begin", c.Leads)
	}
}

// end does the same for where the run stops cutting.
func (p *prover) end(at int, t table, w *wanted) {
	c, kind := t.claim, w.cut.Kind
	_, b := t.lines(w.channel)
	lifts := c.End == deck.Lift
	tail := c.Leads.Opposite()
	switch {
	case lifts != (c.Stop != nil):
		p.wrongRun(at, "stop", 0, "the run says %s, but has %s", c.End, markOrNone(c.Stop, "stop"))
	case lifts && b == t.long:
		p.wrongRun(at, "end", 0, "the %s is open at the %s and runs out there; the run lifts the work off", kind, tail)
	case !lifts && b < t.long:
		p.wrongRun(at, "end", t.long-b, "run out, the %s would be open at the %s; the plan wants it to end %s from there", kind, tail, p.text(t.long-b))
	case lifts:
		numbers := t.stops(c.Stop)
		p.mark(at, w, numbers[:], b, "stop", "end", c.Leads)
	}
}

// mark compares the line that each number of a mark gives with the plan's. All
// wrong by the same is told once.
func (p *prover) mark(at int, w *wanted, numbers []markNumber, want measure.Length, field, verb string, leads joinery.Side) {
	off := numbers[0].line - want
	together := !slices.ContainsFunc(numbers, func(n markNumber) bool { return differ(n.line-want, off) })
	if together && off.Abs() > hair {
		p.wrongRun(at, field, off, "the %s would %s %s too near the %s", w.cut.Kind, verb, p.text(off.Abs()), Toward(off, leads))
		return
	}
	for _, n := range numbers {
		if off := n.line - want; off.Abs() > hair {
			p.wrongRun(at, field+", "+n.name, off, "set by %s, the %s would %s %s too near the %s",
				n.name, w.cut.Kind, verb, p.text(off.Abs()), Toward(off, leads))
		}
	}
}

// Toward tells which way along the work something lies that is off, measured
// from the side given.
func Toward(off measure.Length, from joinery.Side) joinery.Side {
	if off < 0 {
		return from
	}
	return from.Opposite()
}
