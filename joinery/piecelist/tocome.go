package piecelist

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// toCome is the end of the plan: what the maker adds, shown with the names of
// the pieces themselves, all of it remarks.
func (l *List) toCome() string {
	lines := []string{"Now the joints. Take the # away, and write your own figures."}
	if joints := slices.Concat(l.tenonExample(), l.housingExample()); joints != nil {
		lines = append(append(lines, "", "joints:"), joints...)
	}
	if cut := l.cutExample(); cut != nil {
		lines = append(append(lines, ""), cut...)
	}
	var b strings.Builder
	for _, line := range lines {
		b.WriteString(strings.TrimRight("# "+line, " ") + "\n")
	}
	return b.String()
}

// tenonExample joins a rail with the legs at its ends.
func (l *List) tenonExample() []string {
	for _, end := range []joinery.Dimension{joinery.LeftRight, joinery.FrontBack} {
		leg := l.first(func(p *Piece) bool {
			board := p.Width.Length > 2*p.Thickness.Length && p.Lies.Thickness == end
			return p.Lies.Length == joinery.TopBottom && !board && l.places(p, end) > 0 && l.joint(p.Size()[end], 2) != ""
		})
		if leg == nil {
			continue
		}
		rail := l.first(func(p *Piece) bool {
			return p.Lies.Length == end && p.Lies.Thickness != joinery.TopBottom && l.joint(p.Thickness.Length, 3) != "" &&
				l.fills(p, l.places(leg, end))
		})
		if rail == nil {
			continue
		}
		low, high := l.facing(leg, end)
		deeper := "1/16"
		if l.Unit == measure.Millimetres {
			deeper = "2"
		}
		return []string{
			"  - mortise and tenon: " + scalar(rail.Copies[0].Name),
			fmt.Sprintf("    tenon: %s / %s, %s", scalar(rail.Copies[0].Name), end.Low(), end.High()),
			fmt.Sprintf("    into: %s / %s, %s / %s", scalar(low), end.High(), scalar(high), end.Low()),
			fmt.Sprintf("    place: {top: flush, centred: %s}", rail.Lies.Thickness),
			"    thickness: " + l.joint(rail.Thickness.Length, 3),
			"    length: " + l.joint(leg.Size()[end], 2),
			"    deeper: " + deeper,
			"    ends: square",
		}
	}
	return nil
}

// housingExample joins a shelf with the sides that hold it.
func (l *List) housingExample() []string {
	side := l.first(func(p *Piece) bool {
		return p.Lies.Length == joinery.TopBottom && p.Lies.Thickness == joinery.LeftRight && l.places(p, joinery.LeftRight) > 0 &&
			l.joint(p.Thickness.Length, 3) != "" && l.part(p.Length.Length, 8) != ""
	})
	if side == nil {
		return nil
	}
	flat := func(p *Piece) bool {
		return p.Lies.Thickness == joinery.TopBottom && p.Lies.Length == joinery.LeftRight && l.fills(p, l.places(side, joinery.LeftRight))
	}
	shelf := l.first(func(p *Piece) bool { return flat(p) && p.kind.what == "a shelf" })
	if shelf == nil {
		shelf = l.first(flat)
	}
	if shelf == nil {
		return nil
	}
	left, right := l.facing(side, joinery.LeftRight)
	return []string{
		"  - housing: " + scalar(shelf.Copies[0].Name),
		fmt.Sprintf("    board: %s / left, right", scalar(shelf.Copies[0].Name)),
		fmt.Sprintf("    into: %s / right, %s / left", scalar(left), scalar(right)),
		fmt.Sprintf("    place: {front: flush, bottom: %s up}", l.part(side.Length.Length, 8)),
		"    depth: " + l.joint(side.Thickness.Length, 3),
	}
}

// mirrors lists the pieces that mirror the first of a row, those of other rows
// too.
func (l *List) mirrors(p *Piece) []Copy {
	if l.mirrored == nil {
		l.mirrored = map[string][]Copy{}
		for i := range l.Pieces {
			for _, c := range l.Pieces[i].Copies {
				if c.Of != "" {
					l.mirrored[c.Of] = append(l.mirrored[c.Of], c)
				}
			}
		}
	}
	return l.mirrored[p.Copies[0].Name]
}

// facing gives a row's first piece and its mirror image across a dimension, ""
// where there is none.
func (l *List) facing(p *Piece, across joinery.Dimension) (low, high string) {
	for _, c := range l.mirrors(p) {
		if len(c.Across) == 1 && c.Across[0] == across {
			return p.Copies[0].Name, c.Name
		}
	}
	return "", ""
}

// places is how many pairs of a row's pieces and their mirror images face each
// other across a dimension.
func (l *List) places(p *Piece, across joinery.Dimension) int {
	if low, _ := l.facing(p, across); low == "" {
		return 0
	}
	return l.total(p) / 2
}

// total is how many there are of a row's first piece, with its mirror images.
func (l *List) total(p *Piece) int { return p.Count / len(p.Copies) * (1 + len(l.mirrors(p))) }

// fills reports whether there are as many of a piece as places between others: a
// joint in a piece is in its mirror images too.
func (l *List) fills(p *Piece, places int) bool {
	return p.Copies[0].Of == "" && l.total(p) == places && len(l.mirrors(p)) < 2
}

// first is the first piece that fits, or nil.
func (l *List) first(fits func(*Piece) bool) *Piece {
	for i := range l.Pieces {
		if fits(&l.Pieces[i]) {
			return &l.Pieces[i]
		}
	}
	return nil
}

// cutExample is one cut by itself, which stands below its piece.
func (l *List) cutExample() []string {
	p := &l.Pieces[0]
	wide, deep := l.joint(p.Width.Length, 3), l.joint(p.Thickness.Length, 3)
	if wide == "" || deep == "" {
		return nil
	}
	return []string{
		"A single cut stands below the size of its piece; fencecard help plan has them all.",
		"",
		"  - piece: " + scalar(p.Copies[0].Name),
		"    cuts:",
		"      - groove: panel",
		fmt.Sprintf("        in: %s", p.Lies.Thickness.High()),
		"        width: " + wide,
		fmt.Sprintf("        setback: %s from %s", wide, p.Lies.Width().Low()),
		"        depth: " + deep,
	}
}

// part is a share of a length, rounded down to what a maker would set, or "" where
// that is nothing.
func (l *List) part(of, share measure.Length) string { return l.atMost(of/share, measure.MaxLength) }

// joint is a share of a length, at most what joints usually have.
func (l *List) joint(of, share measure.Length) string {
	if share > 2 {
		return l.atMost(of/share, measure.Inch*3/8)
	}
	return l.atMost(of/share, measure.Inch*7/8)
}

func (l *List) atMost(of, most measure.Length) string {
	scale := measure.Scale{Unit: measure.Inches, Division: measure.Inch / 16}
	if l.Unit == measure.Millimetres {
		scale = measure.Scale{Unit: measure.Millimetres, Division: measure.Millimetre}
	}
	if of = scale.Floor(min(of, most)); of == 0 {
		return ""
	}
	return scale.Format(of)
}
