package strips

import (
	"math"

	"fencecard/output/paper"
)

// tile is a part of a strip that fits on the paper. Its left end, the tab,
// goes under the tile before it.
type tile struct {
	from, To paper.Paper // along the strip
	tab      paper.Paper // how much of it goes under its neighbour; 0 on the first
}

// Measures of tiles.
const (
	tabWidth paper.Paper = 12
	tileEdge paper.Paper = 3.5 // from the edge of a tile to its labels
	headRoom paper.Paper = 60  // for the strip's name beside the bit
)

// owns reports whether a mark is labelled on this tile.
func (t tile) owns(at paper.Paper) bool { return at <= t.To && (t.tab == 0 || at > t.from+t.tab) }

// shows reports whether a mark is drawn on this tile: those on the tab are, so
// that they can be held against its neighbour's.
func (t tile) shows(at paper.Paper) bool { return at >= t.from && at <= t.To }

// divide cuts the strip into tiles. Where it needs more than one, the bit is
// in the middle of its own; the others follow on both sides. The outer ends
// are snug about their labels or as long as the paper.
func (st *strip) divide(snug bool) {
	lo, hi := st.reach()
	if hi-lo <= st.wide {
		if !snug {
			spare := (st.wide - (hi - lo)) / 2
			lo, hi = lo-spare, hi+spare
		}
		st.tiles = []tile{{from: lo, To: hi}}
		return
	}
	step := st.wide - tabWidth
	count := func(reach paper.Paper) int { return int(math.Ceil(max(0, float64((reach-st.wide/2)/step)))) }
	left, right := count(-st.tags[0].at), count(st.tags[len(st.tags)-1].at)
	st.tiles = nil
	for k := -left; k <= right; k++ {
		middle := paper.Paper(k) * step
		t := tile{middle - st.wide/2, middle + st.wide/2, tabWidth}
		if k == -left {
			t.tab = 0
			if snug {
				t.from = max(t.from, lo)
			}
		}
		if k == right && snug {
			t.To = min(t.To, hi)
		}
		st.tiles = append(st.tiles, t)
	}
}

// reach is how far the strip goes if every label stands straight beside its
// mark.
func (st *strip) reach() (lo, hi paper.Paper) {
	lo, hi = -st.column-headRoom, st.column+tileEdge
	for _, g := range st.tags {
		end := g.at
		if g.left {
			end = min(end, -st.column) - g.width() - tileEdge
		} else {
			end = max(end, st.column) + g.width() + tileEdge
		}
		lo, hi = min(lo, end), max(hi, end)
	}
	return lo, hi
}
