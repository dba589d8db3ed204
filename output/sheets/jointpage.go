package sheets

import (
	"fmt"
	"iter"
	"slices"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/views"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Measures of the drawing of a joint.
const (
	jointAbreast paper.Paper = 170 // from this width on two figures stand side by side
	jointHigh    paper.Paper = 52  // of the wood in a figure
	jointsApart  paper.Paper = 7
)

// jointPages draws every joint of the plan, those that are alike once.
func (s Setter) jointPages(d *deck.Deck) iter.Seq[page] {
	heading := func(int) paper.Block { return s.Strong(s.Frame.W, 5, "Joints") }
	var rows []paper.Block
	for _, all := range alikeJoints(d.Joints) {
		drawn := s.jointRows(all, s.Frame.W)
		if whole := paper.Stack(2, drawn...); whole.H < s.body().H-10 {
			drawn = []paper.Block{whole}
		}
		rows = append(rows, drawn...)
	}
	return func(yield func(page) bool) {
		if len(rows) == 0 {
			return
		}
		for _, b := range fill(rows, jointsApart, s.body().H, heading) {
			if !yield(s.upright(b)) {
				return
			}
		}
	}
}

// jointRows is the drawing of joints that are alike: what they are, the figures
// in lines, and how they fit.
func (s Setter) jointRows(all []*deck.Joint, w paper.Paper) []paper.Block {
	j := all[0]
	each, high := w, min(jointHigh, s.body().H/4)
	if w >= jointAbreast {
		each = (w - jointsApart) / 2
	}
	figures, scale := views.Joint(s.Setter, j, each, high)
	l, bold := s.Letters(paper.Least), s.Bold(paper.Least)
	head := paper.Phrase{}.Say(s.Bold(4.2), jointNames(all)).Tie(l, ",").Say(l, times(all)+";").Say(l, s.lengthsIn(scale))
	rows := []paper.Block{paper.Stack(1, rule(w, paper.Thin), paper.Block{H: 0.5}, head.Set(w), paper.Phrase{}.Say(bold, j.Part.String()).Say(l, "goes into").Say(bold, j.Into.String()).Set(w))}
	for len(figures) > 0 {
		n := min(len(figures), max(1, int((w+jointsApart)/(each+jointsApart))))
		var line paper.Block
		for i, f := range figures[:n] {
			line.Add(f, paper.Paper(i)*(each+jointsApart), 0)
		}
		rows, figures = append(rows, line), figures[n:]
	}
	for _, text := range wording.Joined(j, s.Scale) {
		rows = append(rows, s.inLines(paper.Phrase{}.Say(l, text), w)...)
	}
	return rows
}

// lengthsIn names the scale of a drawing and the unit of its lengths.
func (s Setter) lengthsIn(scale string) string {
	if s.Unit() != "" {
		return scale + ", lengths in " + wording.UnitWord(s.Scale.Unit)
	}
	return scale
}

// jointNames are the names of joints that are alike.
func jointNames(all []*deck.Joint) string {
	var names []string
	for _, j := range all {
		if name := j.Into.Cut.Name; !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	const most = 4
	if n := len(names); n > most {
		return strings.Join(names[:most], ", ") + fmt.Sprintf(" and %d more", n-most)
	}
	return strings.Join(names, ", ")
}

// times says how often joints that are alike are made.
func times(all []*deck.Joint) string {
	n := 0
	for _, j := range all {
		n += max(1, j.Into.Piece.Count, j.Part.Piece.Count)
	}
	return wording.Plural(n, "time")
}

// alikeJoints groups joints that are the same in all their measures, or each
// other's mirror image, in the plan's order.
func alikeJoints(joints []deck.Joint) [][]*deck.Joint {
	at := map[string]int{}
	var groups [][]*deck.Joint
	for i := range joints {
		j := &joints[i]
		key := jointKey(j)
		if n, ok := at[key]; ok {
			groups[n] = append(groups[n], j)
			continue
		}
		at[key] = len(groups)
		groups = append(groups, []*deck.Joint{j})
	}
	return groups
}

// jointKey is the same for joints that are alike: whatever has a left and a
// right is told without order.
func jointKey(j *deck.Joint) string {
	c, size := j.Into.Cut.Channels[0], j.Into.Piece.Size
	setbacks := []measure.Length{c.Setback, size.Between(c.Near) - c.Setback - c.Width}
	ends := []measure.Length{c.Lo, size[c.Run()] - c.Hi}
	var reveals, cheeks []measure.Length
	for _, r := range j.Reveals {
		reveals = append(reveals, r.Distance)
	}
	if j.Part.Cut != nil {
		for _, k := range j.Part.Cut.Cheeks {
			cheeks = append(cheeks, k.Depth)
		}
	}
	for _, pair := range [][]measure.Length{setbacks, ends, reveals, cheeks} {
		slices.Sort(pair)
	}
	part := slices.Clone(j.Part.Piece.Size[:])
	into := slices.Clone(size[:])
	slices.Sort(part)
	slices.Sort(into)
	return fmt.Sprint(j.Into.Cut.Kind.Name, c.Width, c.Depth, c.Hi-c.Lo, setbacks, ends, into,
		j.Part.Cut != nil, j.Part.Enters, cheeks, part, reveals, j.Fits)
}
