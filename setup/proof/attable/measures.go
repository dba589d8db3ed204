package attable

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// Measure is a length that a maker can measure for a run.
type Measure struct {
	Name  string // as the flags of check and correct call it: "near", "start", "setback"
	Words string // from where to where, as the papers of the run say it: "fence face to the near edge of the bit"
}

// Measures is what can be measured for a run.
type Measures struct {
	Table []Measure // as the table stands, for [AsSet]
	Cut   []Measure // on a test cut, for [Correct]
}

// AllMeasures says what can be measured for each run of a deck that proves, by
// the run's number.
func AllMeasures(plan *joinery.Plan, claims *proof.Claims) map[string]Measures {
	all := map[string]Measures{}
	for _, s := range proof.StandingRuns(plan, claims) {
		b := bench{s, claims.Setups}
		all[b.Claimed.Number] = Measures{b.onTable(), b.onCut()}
	}
	return all
}

func (b bench) onTable() []Measure {
	var all []Measure
	if b.Tool.Pilot == 0 { // else the fence is set by the pilot, with a straightedge
		for i, name := range []string{"near", "centre", "far"} {
			all = append(all, Measure{name, "fence face " + b.fenceSays()[i].as})
		}
	}
	for _, stop := range []bool{false, true} {
		if b.mark(stop) == nil {
			continue
		}
		name := "start"
		if stop {
			name = "stop"
		}
		guide := b.guide(stop)
		all = append(all, Measure{name, name + ": " + b.as(guide, stop)})
		if !stop && guide != deck.ByTail {
			all = append(all, Measure{"back-stop", "back stop: " + b.as(deck.ByTail, stop)})
		}
	}
	return append(all, Measure{"height", b.heightAs()})
}

func (b bench) onCut() []Measure {
	near, far := b.open()
	if b.Tool.Pilot > 0 { // a shape has no walls
		near, far = true, true
	}
	side := b.Claimed.Fence
	var all []Measure
	if !near {
		all = append(all, Measure{"setback", fmt.Sprintf("from the %s to the near wall", side)})
	}
	switch {
	case near && far:
	case near:
		all = append(all, Measure{"width", fmt.Sprintf("from the %s to the %s", side, b.farWall())})
	case far:
		all = append(all, Measure{"width", fmt.Sprintf("from the near wall to the %s", side.Opposite())})
	default:
		all = append(all, Measure{"width", "from wall to wall, of this run alone"})
	}
	if b.Claimed.Start != nil {
		all = append(all, Measure{"begins", fmt.Sprintf("from the %s end, which leads, to where the cut begins", b.Claimed.Leads)})
	}
	if b.Claimed.Start != nil || b.Claimed.Stop != nil {
		all = append(all, Measure{"length", "length of the cut, round ends included"})
	}
	return append(all, Measure{"depth", fmt.Sprintf("depth, from the %s", b.Claimed.Down)})
}
