package strips

import (
	"slices"

	"fencecard/output/paper"
)

// tag is a label on a strip and the leader that ties it to its mark. The
// leader slants from the mark to its foot, and goes up from there to the
// label, which stands beside it.
type tag struct {
	at    paper.Paper // the mark, along the strip
	left  bool        // the label stands to the left of its leader, else to the right
	level bool        // the leader runs level to the label, from a line that goes right across the strip
	stop  bool        // of a mark: measured from the leading edge of the bit
	ruled bool        // a rule line, which is no mark
	label paper.Block

	foot paper.Paper // where the leader's upper part stands; at, where there is room
	rise paper.Paper // from the foot of the rows to the label's lower edge
}

// Distances between labels and leaders.
const (
	tread   paper.Paper = 2 // least distance of a leader from the next of its staircase
	besides paper.Paper = 1 // from a leader to its label
	landing paper.Paper = 2 // between two staircases
)

// width is the room a tag takes beside its leader.
func (t *tag) width() paper.Paper { return besides + t.label.W }

// step is how far the next leader of a staircase must stand off this one: a
// level leader does not pass beside the labels below it.
func (t *tag) step() paper.Paper {
	if t.level {
		return 0
	}
	return tread
}

// box is where the label stands, the foot of the rows at y = 0.
func (t *tag) box() paper.Box {
	x := t.foot + besides
	if t.left {
		x = t.foot - besides - t.label.W
	}
	return paper.Box{X: x, Y: -t.rise - t.label.H, W: t.label.W, H: t.label.H}
}

// staircase is tags whose labels would collide on one line: each stands above
// all those it reaches over, so that no leader runs through a label.
type staircase []*tag

func (s staircase) height() paper.Paper {
	h := paper.Paper(0)
	for _, t := range s {
		h += t.label.H
	}
	return h
}

// end is how far the labels reach.
func (s staircase) end() paper.Paper {
	far := s[0].foot
	for _, t := range s {
		far = max(far, t.foot+t.width())
	}
	return far
}

// arrange places tags that stand to the right of their leaders, sorted by
// their marks, between two places and in rows no higher than most. Every
// leader stays over its mark where it can; the order of leaders is that of the
// marks, so they never cross. It reports whether all found room.
func arrange(tags []*tag, from, to, most paper.Paper) bool {
	stairs := climb(tags, from, most)
	limit := to
	for i := len(stairs) - 1; i >= 0; i-- {
		last := stairs[i]
		first := last.crowd(limit)
		// Pushed against its neighbour, it becomes part of it.
		for i > 0 && stairs[i-1].end() > first-landing && stairs[i-1].height()+last.height() <= most {
			i--
			last = slices.Concat(stairs[i], last)
			first = last.crowd(limit)
		}
		limit = first - landing
	}
	room := len(tags) == 0 || tags[0].foot >= from-paper.Touching
	for _, t := range tags {
		room = room && t.rise+t.label.H <= most
	}
	return room
}

// climb deals the tags to staircases from left to right.
func climb(tags []*tag, from, most paper.Paper) []staircase {
	var stairs []staircase
	for _, t := range tags {
		t.foot = max(t.at, from)
		if len(stairs) > 0 {
			last := &stairs[len(stairs)-1]
			clear := last.end() + landing
			if t.foot < clear && last.height()+t.label.H <= most {
				above := (*last)[len(*last)-1]
				t.foot = max(t.foot, above.foot+above.step())
				*last = append(*last, t)
				continue
			}
			t.foot = max(t.foot, clear)
		}
		stairs = append(stairs, staircase{t})
	}
	return stairs
}

// crowd moves the tags left until none reaches beyond a limit, stacks them,
// the last lowest, and returns where the first stands.
func (s staircase) crowd(limit paper.Paper) paper.Paper {
	next, rise := limit+tread, paper.Paper(0)
	for i := len(s) - 1; i >= 0; i-- {
		t := s[i]
		t.foot = min(t.foot, limit-t.width(), next-t.step())
		next = t.foot
		t.rise = rise
		rise += t.label.H
	}
	return s[0].foot
}

// arrangeLeft places tags that stand to the left of their leaders, sorted by
// their marks from right to left: it looks at them in a mirror.
func arrangeLeft(tags []*tag, from, to, most paper.Paper) bool {
	for _, t := range tags {
		t.at = -t.at
	}
	ok := arrange(tags, -to, -from, most)
	for _, t := range tags {
		t.at, t.foot = -t.at, -t.foot
	}
	return ok
}
