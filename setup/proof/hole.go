package proof

import (
	"math"

	"fencecard/joinery/measure"
)

// startHole checks where a start hole is bored: within the cut, where the bit
// stands when the work is lowered over it.
func (p *prover) startHole(at int, t table, w *wanted, s *Setup) {
	c := t.claim
	if wants := w.cut.Bored && c.Start != nil; wants != (c.Hole != nil) {
		p.wrongRun(at, "start hole", 0, "the run has %s start hole, the plan wants %s start hole", oneOrNone(c.Hole != nil), oneOrNone(wants))
		return
	}
	if c.Hole == nil {
		return
	}
	if off := c.Hole.FromLead - t.half() - c.Start.Line; off.Abs() > hair {
		p.wrongRun(at, "start hole", off, "the start hole would lie %s too near the %s", p.text(off.Abs()), Toward(off, c.Leads))
	}
	if off := c.Hole.FromFence - t.half() - s.Fence.NearEdge; off.Abs() > hair {
		p.wrongRun(at, "start hole", off, "the start hole would lie %s too near the %s", p.text(off.Abs()), Toward(off, c.Fence))
	}
}

func oneOrNone(one bool) string {
	if one {
		return "a"
	}
	return "no"
}

// raised checks that the bit is raised into clamped work where that can be done and
// dropping would be steep, more than one in 3.73, or near the hands.
func (p *prover) raised(at int, t table, w *wanted) {
	c, shop := t.claim, &p.plan.Shop
	want := false
	if shop.Raises && c.Start != nil && c.Hole == nil {
		room := c.Start.TailBeforeEdge - t.bit
		steep := room.Millimetres()*math.Tan(15*math.Pi/180) < w.channel.Depth.Millimetres()-measure.Length(1).Millimetres()
		want = steep || room < shop.Rules.HandDistance
	}
	if c.Raised != want {
		p.wrongRun(at, "raised", 0, "the run says that the bit is %s into the work; it must be %s", raisedOrNot(c.Raised), raisedOrNot(want))
	}
}

func raisedOrNot(raised bool) string {
	if raised {
		return "raised"
	}
	return "not raised"
}
