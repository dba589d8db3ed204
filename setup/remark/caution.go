package remark

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/remark/loose"
)

// Cautions gives every run its cautions, the gravest first. The package setup has done so;
// a deck that is put together otherwise needs it.
func Cautions(d *deck.Deck) {
	apart, holes, bears, opens, fills := takenApart(d), startHoles(d), bearings(d), openings(d), filled(d)
	for i := range d.Setups {
		u := &d.Setups[i]
		fitted, worst := i == 0 || d.Setups[i-1].Bit != u.Bit, worstDrop(u, &d.Plan.Shop)
		for k := range u.Runs {
			r := &u.Runs[k]
			s := situation{shop: &d.Plan.Shop, run: r, apart: apart[r], fitted: fitted, worst: worst, holes: holes[channelOf(r)], borne: bears[r], opens: opens[r], fills: fills[r]}
			r.Cautions = s.cautions()
		}
	}
}

// caution is row i of the table, in the words of the situation.
func (s *situation) caution(i int) deck.Caution {
	row := cautionTable[i]
	return deck.Caution{Number: i + 1, Code: row.code, Weight: row.weight, Words: s.fill(row.words), Brief: s.fill(row.brief), Basis: row.basis}
}

// lessIsGraver are the figures of cautions, counted from 0, that are the graver the
// less they are.
var lessIsGraver = map[string]int{"steep-drop": 1, "guided": 0, "slender-bit": 0, "swings": 1, "panel-bit": 0, "large-bit": 0, "passes": 0, "thin-wall": 0}

// unranked are the cautions whose figures are places, of which none is graver.
var unranked = []string{"start-hole", "bored-start"}

// Graver compares the figures of a caution at one place in its words, counted from
// 0, the graver first.
func Graver(code string, at int, a, b measure.Length) int {
	less, ok := lessIsGraver[code]
	switch {
	case slices.Contains(unranked, code):
		return 0
	case ok && less == at:
		return cmp.Compare(a, b)
	}
	return cmp.Compare(b, a)
}

// cautions lists the rows of the table that apply. The table stands in the
// order of gravity. Where the run is not to be run, that is all.
func (s *situation) cautions() []deck.Caution {
	var found []deck.Caution
	for i, row := range cautionTable {
		if len(found) > 0 && cautionTable[found[len(found)-1].Number-1].alone && !row.alone {
			break
		}
		if row.when(s) {
			found = append(found, s.caution(i))
		}
	}
	return found
}

// situation is one run as it is run.
type situation struct {
	shop   *joinery.Shop
	run    *deck.Run
	apart  bool       // the run leaves its piece in two
	fitted bool       // its setup begins with the bit being put in
	worst  deck.Pivot // of the drops of its setup, which share a stop
	opens  string     // the kind of the cut that it breaks into
	fills  string     // the kind of the cut that has taken the edge where it comes out
	borne
	holes []*deck.Run // the runs of its channel that need a start hole, in running order
}

// takenApart tells the runs that cut their pieces apart.
func takenApart(d *deck.Deck) map[*deck.Run]bool {
	of := map[*joinery.Piece][]*deck.Run{}
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			r := &d.Setups[i].Runs[k]
			of[r.Piece] = append(of[r.Piece], r)
		}
	}
	found := map[*deck.Run]bool{}
	for _, runs := range of {
		parted, _ := loose.Partings(runs)
		for _, p := range parted {
			found[p.Run] = true
		}
	}
	return found
}

// CautionTable gives every row of the table in general words, with the figures
// of a shop, for the page that runs refer to by number.
func CautionTable(shop *joinery.Shop) []deck.Caution {
	s := situation{shop: shop, run: &deck.Run{Step: deck.Step{Bit: &joinery.Bit{}}}}
	all := make([]deck.Caution, len(cautionTable))
	for i := range cautionTable {
		all[i] = s.caution(i)
	}
	return all
}
