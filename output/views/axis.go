package views

import (
	"cmp"
	"slices"

	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/setting"
)

// axis places millimetres at the machine on paper, at a drawing's scale. Where
// the whole does not fit, stretches in which nothing happens are left out, as
// in an interrupted view (ISO 128-3).
type axis struct {
	Scale float64 // paper for a millimetre at the machine
	kept  []stretch
}

// stretch is a part of an axis drawn without a break.
type stretch struct {
	from, To float64     // at the machine, in mm
	at       paper.Paper // where from lies on paper
}

// mostBreaks is how often an axis may be broken; a view in shreds says nothing.
const mostBreaks = 2

// breakRoom is the paper between two stretches, taken up by the break lines.
const breakRoom paper.Paper = 3

// span is a part of an axis that must be seen whole; a point has from == to.
type span struct{ from, To float64 }

// point is the span of a single place.
func point(x float64) span { return span{x, x} }

// newAxis draws everything from the least to the greatest of the spans at a
// scale, within some room on paper, and shows at least pad of paper round each
// span. It reports whether that fits.
func newAxis(scale float64, room, pad paper.Paper, seen []span) (axis, bool) {
	seen = slices.Clone(seen)
	slices.SortFunc(seen, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	first, last := seen[0].from, seen[0].To
	for _, s := range seen {
		last = max(last, s.To)
	}
	a := axis{Scale: scale}
	if paper.Paper((last-first)*scale) <= room {
		a.kept = []stretch{{from: first, To: last}}
		return a, true
	}
	reach := float64(pad) / scale
	for _, p := range seen {
		s := stretch{from: max(first, p.from-reach), To: min(last, p.To+reach)}
		if n := len(a.kept); n > 0 && paper.Paper((s.from-a.kept[n-1].To)*scale) <= breakRoom {
			a.kept[n-1].To = max(a.kept[n-1].To, s.To)
		} else {
			a.kept = append(a.kept, s)
		}
	}
	spare := room - a.length()
	if spare < 0 {
		return axis{}, false
	}
	a.spread(spare)
	return a, len(a.kept) <= mostBreaks+1
}

// length is the paper the stretches and the breaks between them take.
func (a axis) length() paper.Paper {
	n := len(a.kept)
	if n == 0 {
		return 0
	}
	w := breakRoom * paper.Paper(n-1)
	for _, s := range a.kept {
		w += paper.Paper((s.To - s.from) * a.Scale)
	}
	return w
}

// spread uses spare paper: it closes the narrowest gaps, as long as there is
// paper for them, widens what is on both sides of the others, the widest most,
// and places the stretches.
func (a *axis) spread(spare paper.Paper) {
	for len(a.kept) > 1 {
		narrow := 1
		for i := 2; i < len(a.kept); i++ {
			if a.gap(i) < a.gap(narrow) {
				narrow = i
			}
		}
		need := paper.Paper(a.gap(narrow)*a.Scale) - breakRoom
		if need > spare {
			break
		}
		spare -= need
		a.kept[narrow-1].To = a.kept[narrow].To
		a.kept = slices.Delete(a.kept, narrow, narrow+1)
	}
	var total float64
	for i := 1; i < len(a.kept); i++ {
		total += a.gap(i)
	}
	gaps := make([]float64, len(a.kept))
	for i := 1; i < len(a.kept); i++ {
		gaps[i] = float64(spare) / a.Scale * a.gap(i) / total
	}
	var at paper.Paper
	for i := range a.kept {
		if i > 0 {
			a.kept[i].from -= gaps[i] / 2
			a.kept[i-1].To += gaps[i] / 2
		}
	}
	for i := range a.kept {
		a.kept[i].at = at
		at += paper.Paper((a.kept[i].To-a.kept[i].from)*a.Scale) + breakRoom
	}
}

// gap is what is left out before a stretch, in mm at the machine.
func (a axis) gap(i int) float64 { return a.kept[i].from - a.kept[i-1].To }

// place returns where a point lies on paper, from the axis's beginning. A point
// in a stretch left out lies in the middle of the break.
func (a axis) place(x float64) paper.Paper {
	for i, s := range a.kept {
		if x <= s.To || i == len(a.kept)-1 {
			if x < s.from && i > 0 {
				return s.at - breakRoom/2
			}
			return s.at + paper.Paper((x-s.from)*a.Scale)
		}
	}
	return 0
}

// broken counts the breaks.
func (a axis) broken() int { return max(0, len(a.kept)-1) }

// breaks returns the middle of every break on paper.
func (a axis) breaks() []paper.Paper {
	var at []paper.Paper
	for i := 1; i < len(a.kept); i++ {
		at = append(at, a.kept[i].at-breakRoom/2)
	}
	return at
}

// drawingScale is a scale and how it is written.
type drawingScale struct {
	size float64
	Name string
}

// The scales of drawings, largest first: those of ISO 5455 for a metric deck,
// halves of halves for an inch deck.
var (
	metricDrawings = []drawingScale{{1, "1:1"}, {1. / 2, "1:2"}, {1. / 5, "1:5"}, {1. / 10, "1:10"}, {1. / 20, "1:20"}, {1. / 50, "1:50"}, {1. / 100, "1:100"}, {1. / 200, "1:200"}, {1. / 500, "1:500"}, {1. / 1000, "1:1000"}}
	inchDrawings   = []drawingScale{{1, "1:1"}, {1. / 2, "1:2"}, {1. / 4, "1:4"}, {1. / 8, "1:8"}, {1. / 16, "1:16"}, {1. / 32, "1:32"}, {1. / 64, "1:64"}, {1. / 128, "1:128"}, {1. / 256, "1:256"}, {1. / 512, "1:512"}, {1. / 1024, "1:1024"}}
)

// largest returns the first scale that fits, or the smallest of all.
func largest(scales []drawingScale, fits func(drawingScale) bool) drawingScale {
	for _, s := range scales {
		if fits(s) {
			return s
		}
	}
	return slices.MinFunc(scales, func(a, b drawingScale) int { return cmp.Compare(a.size, b.size) })
}

// drawings are the scales drawings are made at.
func drawings(s setting.Setter) []drawingScale {
	if s.Scale.Unit == measure.Millimetres {
		return metricDrawings
	}
	return inchDrawings
}

// scaled says at which scale something is drawn, and in which of two units its
// lengths are.
func scaled(s setting.Setter, d drawingScale) string {
	text := "scale " + d.Name
	if s.Other != nil {
		text += ", " + s.Scale.Unit.String()
	}
	return text
}
