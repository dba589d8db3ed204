package sheets

import (
	"cmp"
	"math"
	"slices"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/solid"
)

// pieceView is a picture of a piece as it stands in the finished work, seen
// from the front or from behind, obliquely, so that one of left and right and
// one of top and bottom shows too. Its proportions are tamed, so that a long
// rail keeps a thickness: it is not to scale.
type pieceView struct {
	size   joinery.Size
	seen   [3]joinery.Side // of each dimension, the side that faces the viewer
	behind bool
	long   [3]paper.Paper // how long each dimension is drawn
}

// taming is the power the proportions are raised to, thinnest the least a
// dimension is drawn as a share of the longest; receding is how much shorter
// what goes away from the viewer is drawn, across and up.
const (
	taming   = 0.5
	thinnest = 0.24
	recedeX  = 0.5
	recedeZ  = 0.38
)

// corner is a place in the piece.
type corner [3]joinery.Length

// at projects a place; the y axis of paper points down.
func (p pieceView) at(k corner) paper.Point {
	var v [3]paper.Paper
	for i := range v {
		v[i] = p.long[i] * paper.Paper(k[i].Millimetres()/p.size[i].Millimetres())
	}
	right, up := paper.Paper(recedeX), paper.Paper(recedeZ)
	if p.behind { // the viewer's right is the piece's left, what is far is near
		v[0], v[1] = p.long[0]-v[0], p.long[1]-v[1]
	}
	if (p.seen[joinery.LeftRight] == joinery.Left) != p.behind {
		right = -right
	}
	if p.seen[joinery.TopBottom] == joinery.Bottom {
		up = -up
	}
	return paper.At(v[0]+right*v[1], -v[2]-up*v[1])
}

// face returns the outline of a box's face toward a side, closed.
func (p pieceView) face(b solid.Box, side joinery.Side) []paper.Point {
	d := side.Dimension()
	e, f := (d+1)%3, (d+2)%3
	at := b[d].Lo
	if side.High() {
		at = b[d].Hi
	}
	var path []paper.Point
	for _, turn := range [][2]joinery.Length{{b[e].Lo, b[f].Lo}, {b[e].Hi, b[f].Lo}, {b[e].Hi, b[f].Hi}, {b[e].Lo, b[f].Hi}, {b[e].Lo, b[f].Lo}} {
		var k corner
		k[d], k[e], k[f] = at, turn[0], turn[1]
		path = append(path, p.at(k))
	}
	return path
}

// sees reports whether a side faces the viewer.
func (p pieceView) sees(side joinery.Side) bool { return p.seen[side.Dimension()] == side }

// frame returns the box round the piece.
func (p pieceView) frame() paper.Box {
	var points []paper.Point
	for _, side := range joinery.Sides {
		points = append(points, p.face(solid.Whole(p.size), side)...)
	}
	return boxOf(points)
}

// boxOf returns the box round some points, of which there must be one.
func boxOf(points []paper.Point) paper.Box {
	least, most := points[0], points[0]
	for _, q := range points {
		least = paper.At(min(least.X, q.X), min(least.Y, q.Y))
		most = paper.At(max(most.X, q.X), max(most.Y, q.Y))
	}
	return paper.Box{X: least.X, Y: least.Y, W: most.X - least.X, H: most.Y - least.Y}
}

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

// labelled is what is written beside a picture, tied to its cut by a line.
type labelled struct {
	to   paper.Point // in the middle of the cut
	text paper.Block
	y    paper.Paper // of its top
}

// view draws a view in a width and height: cuts that show black, hidden ones
// dashed, each with its runs, which stand in columns on both sides. It
// reports whether they have room.
func (s Setter) view(p pieceView, cuts []pictured, w, h paper.Paper, told map[*joinery.Cut]bool) (paper.Block, bool) {
	const gap, captionHigh = 2.5, 4.5
	column := paper.Paper(8)
	for _, c := range cuts {
		column = max(column, min(w/4, s.Bold(paper.Least).Width(c.says)+0.1))
	}
	p = p.fitted(w-2*(column+gap), h-captionHigh)
	f := p.frame()
	shift := paper.At((w-f.W)/2-f.X, (h-captionHigh-f.H)/2-f.Y)
	move := func(path []paper.Point) []paper.Point { return paper.Shifted(shift, path) }
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
	s.labels(d, left, func(l *labelled) (paper.Paper, paper.Paper) { return column - l.text.W, column + 0.7 })
	s.labels(d, right, func(*labelled) (paper.Paper, paper.Paper) { return w - column, w - column - 0.7 })
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
func (s Setter) labels(d *paper.Drawing, all []*labelled, place func(*labelled) (x, foot paper.Paper)) {
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

// piecePicture draws a piece with all its cuts, from one side or from two.
func (s Setter) piecePicture(c *deck.Card, w paper.Paper) paper.Block {
	cuts := picturedCuts(c)
	if len(cuts) == 0 {
		return paper.Block{}
	}
	views := viewsOf(c.Piece.Size, cuts)
	f := views[0].frame()
	high := paper.Paper(26)
	if f.W > f.H {
		high = 19
	}
	if s.body().H < 150 { // a card has little room
		high *= 0.8
	}
	abreast := len(views) == 2 && f.H > f.W && w >= 80
	each := w
	if abreast {
		each = (w - 4) / 2
	}
	for {
		told := map[*joinery.Cut]bool{}
		var all paper.Block
		room := true
		for i, v := range views {
			b, ok := s.view(v, cuts, each, high, told)
			room = room && ok
			if abreast {
				all.Add(b, paper.Paper(i)*(each+4), 0)
			} else {
				all.Below(b, 1)
			}
		}
		if room || high > min(mostPicture, s.body().H*0.4) {
			return all
		}
		high *= 1.25
	}
}

// mostPicture is how high a picture may get for its labels.
const mostPicture paper.Paper = 90
