package oblique

import (
	"cmp"
	"math"
	"slices"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/solid"
)

// pictured is a cut of a piece as it is drawn: where it is, on which sides it
// opens, and what is written beside it.
type pictured struct {
	box   solid.Box
	sides []joinery.Side
	cut   *joinery.Cut
	says  string
}

// picturedCuts are the cuts of a card, a channel each, with all the runs of the
// cut, and those made by hand.
func picturedCuts(c *deck.Card) []pictured {
	var cuts []pictured
	seen := map[string]bool{}
	runs := map[*joinery.Cut][]*deck.Run{}
	for _, r := range c.Runs {
		runs[r.Cut] = append(runs[r.Cut], r)
	}
	for _, r := range c.Runs {
		if part := r.Cut.Name + "/" + r.Channel.Part; seen[part] {
			continue
		} else {
			seen[part] = true
		}
		box := solid.Of(r.Channel, c.Piece.Size, r.Step.Bit.True()).Box(c.Piece.Size)
		cuts = append(cuts, pictured{box: box, sides: opensAt(box, c.Piece.Size), cut: r.Cut, says: wording.Ranges(runs[r.Cut])})
	}
	for _, h := range c.ByHand {
		for _, ch := range h.Cut.Channels {
			box := solid.Of(ch, c.Piece.Size, 0).Box(c.Piece.Size)
			cuts = append(cuts, pictured{box: box, sides: opensAt(box, c.Piece.Size), cut: h.Cut, says: "by " + h.Cut.By})
		}
	}
	return cuts
}

// opensAt lists the sides of a piece that a box reaches.
func opensAt(b solid.Box, size joinery.Size) []joinery.Side {
	var all []joinery.Side
	for _, side := range joinery.Sides {
		d := side.Dimension()
		if side.High() && b[d].Hi == size[d] || !side.High() && b[d].Lo == 0 {
			all = append(all, side)
		}
	}
	return all
}

// shows reports whether the viewer sees a cut.
func (p pieceView) shows(c pictured) bool { return slices.ContainsFunc(c.sides, p.sees) }

// viewsOf chooses from where a piece is drawn: from the front with the sides
// that show most of its cuts and, where half of them stay hidden, once more from
// behind with the other three.
func viewsOf(size joinery.Size, cuts []pictured) []pieceView {
	best, most := pieceView{}, -1
	for _, lr := range []joinery.Side{joinery.Right, joinery.Left} {
		for _, tb := range []joinery.Side{joinery.Top, joinery.Bottom} {
			p := newView(size, [3]joinery.Side{lr, joinery.Front, tb}, false)
			n := 0
			for _, c := range cuts {
				if p.shows(c) {
					n++
				}
			}
			if n > most {
				best, most = p, n
			}
		}
	}
	views := []pieceView{best}
	if hidden := len(cuts) - most; hidden > 0 && 2*hidden >= len(cuts) {
		views = append(views, newView(size, [3]joinery.Side{best.seen[0].Opposite(), joinery.Back, best.seen[2].Opposite()}, true))
	}
	return views
}

func newView(size joinery.Size, seen [3]joinery.Side, behind bool) pieceView {
	p := pieceView{size: size, seen: seen, behind: behind}
	longest := max(size[0], size[1], size[2]).Millimetres()
	for i, l := range size {
		p.long[i] = paper.Paper(max(thinnest, math.Pow(l.Millimetres()/longest, taming)))
	}
	return p
}

// fitted returns the view as large as fits.
func (p pieceView) fitted(w, h paper.Paper) pieceView {
	f := p.frame()
	scale := min(w/f.W, h/f.H)
	for i := range p.long {
		p.long[i] *= scale
	}
	return p
}

// centred moves what is drawn of a view into the middle of a width and height.
func (p pieceView) centred(w, h paper.Paper) func(path []paper.Point) []paper.Point {
	f := p.frame()
	shift := paper.At((w-f.W)/2-f.X, (h-f.H)/2-f.Y)
	return func(path []paper.Point) []paper.Point { return paper.Shifted(shift, path) }
}

// labelled is what is written beside a picture, tied to its cut by a line.
type labelled struct {
	to   paper.Point // in the middle of the cut
	text paper.Block
	y    paper.Paper // of its top
}

// view draws a view in a width and height: cuts that show black, hidden ones
// dashed, each with its runs, which stand in columns on both sides. It
// reports whether they have room.
func view(s setting.Setter, p pieceView, cuts []pictured, w, h paper.Paper, told map[*joinery.Cut]bool) (paper.Block, bool) {
	const gap, captionHigh = 2.5, 4.5
	column := paper.Paper(8)
	for _, c := range cuts {
		column = max(column, min(w/4, s.Bold(paper.Least).Width(c.says)+0.1))
	}
	p = p.fitted(w-2*(column+gap), h-captionHigh)
	move := p.centred(w, h-captionHigh)
	d := &paper.Drawing{W: w, H: h}
	whole := solid.Whole(p.size)
	for _, side := range joinery.Sides {
		if p.sees(side) {
			d.Fill(paper.White, move(p.face(whole, side))...)
		}
	}
	var left, right []*labelled
	for _, c := range cuts {
		shown := p.shows(c)
		var middle paper.Point
		for _, side := range c.sides {
			path := move(p.face(c.box, side))
			switch {
			case p.sees(side):
				d.Fill(paper.Mid, path...)
				d.Stroke(paper.Pen{Width: 0.35}, path...)
			default:
				d.Stroke(paper.Hidden, path...)
			}
			if p.sees(side) == shown {
				b := boxOf(path)
				middle = paper.At(b.X+b.W/2, b.Y+b.H/2)
			}
		}
		if told[c.cut] || !shown && p.behind {
			continue
		}
		told[c.cut] = true
		l := &labelled{to: middle, text: paper.Phrase{}.Say(s.Bold(paper.Least), c.says).Set(column)}
		if middle.X < w/2 {
			left = append(left, l)
		} else {
			right = append(right, l)
		}
	}
	for _, side := range joinery.Sides {
		if p.sees(side) {
			d.Stroke(paper.Pen{Width: 0.35}, move(p.face(whole, side))...)
		}
	}
	room := spread(left, h-captionHigh)
	room = spread(right, h-captionHigh) && room
	labels(d, left, func(l *labelled) (paper.Paper, paper.Paper) { return column - l.text.W, column + 0.7 })
	labels(d, right, func(*labelled) (paper.Paper, paper.Paper) { return w - column, w - column - 0.7 })
	caption := "from the front"
	if p.behind {
		caption = "from behind"
	}
	text := s.Say(w, caption)
	d.Text(text, (w-text.W)/2, h-text.H)
	return d.Block(), room
}

// spread places labels down a height, in the order of what they are for, and
// reports whether they have room.
func spread(all []*labelled, h paper.Paper) bool {
	slices.SortStableFunc(all, func(a, b *labelled) int { return cmp.Compare(a.to.Y, b.to.Y) })
	y := paper.Paper(0)
	for _, l := range all {
		l.y = max(y, l.to.Y-l.text.H/2)
		y = l.y + l.text.H + 0.4
	}
	limit := h
	for i := len(all) - 1; i >= 0; i-- {
		all[i].y = min(all[i].y, limit-all[i].text.H)
		limit = all[i].y - 0.4
	}
	return len(all) == 0 || all[0].y >= 0
}

// labels draws labels and the lines to their cuts.
func labels(d *paper.Drawing, all []*labelled, place func(*labelled) (x, foot paper.Paper)) {
	for _, l := range all {
		if l.y < 0 {
			continue // more cuts than any picture has room to name
		}
		x, foot := place(l)
		d.Stroke(paper.Pen{Width: 0.18}, paper.At(foot, l.y+l.text.H/2), l.to)
		d.Circle(l.to, 0.5, paper.Black, paper.NoPen)
		d.Text(l.text, x, l.y)
	}
}
