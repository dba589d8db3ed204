// Package oblique draws a piece as it stands in the finished work, seen from the front
// or from behind, with its cuts: for its card, and for a plan that is being written.
package oblique

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/setting"
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
type corner [3]measure.Length

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
	for _, turn := range [][2]measure.Length{{b[e].Lo, b[f].Lo}, {b[e].Hi, b[f].Lo}, {b[e].Hi, b[f].Hi}, {b[e].Lo, b[f].Hi}, {b[e].Lo, b[f].Lo}} {
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

// Picture draws a piece with all its cuts, from one side or from two, on a page as
// high as that.
func Picture(s setting.Setter, c *deck.Card, w, page paper.Paper) paper.Block {
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
	switch { // a card has little room
	case page < 80:
		high *= 0.64
	case page < 150:
		high *= 0.8
	}
	abreast := len(views) == 2 && f.H > f.W && w >= 80
	each := w
	switch {
	case abreast:
		each = (w - 4) / 2
	case len(views) == 2: // under each other
		high *= 0.8
	}
	for {
		told := map[*joinery.Cut]bool{}
		var all paper.Block
		room := true
		for i, v := range views {
			b, ok := view(s, v, cuts, each, high, told)
			room = room && ok
			if abreast {
				all.Add(b, paper.Paper(i)*(each+4), 0)
			} else {
				all.Below(b, 1)
			}
		}
		if room || high > min(mostPicture, page*0.4) {
			return all
		}
		high *= 1.25
	}
}

// mostPicture is how high a picture may get for its labels.
const mostPicture paper.Paper = 90
