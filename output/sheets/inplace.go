package sheets

import (
	"math"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/setup/deck"
	"fencecard/setup/solid"
)

// inPlace is the picture of the piece as it stands in the finished work, the
// cut marked on it and the end that leads flagged. It is an oblique picture
// seen from the front, and from whichever of left and right, top and bottom
// shows the sides the card speaks of. Its proportions are tamed, so that a
// long rail keeps a thickness: it is the one drawing not to scale.
type inPlace struct {
	size joinery.Size
	seen [3]joinery.Side // of each dimension, the side that faces the viewer
	Long [3]paper.Paper  // how long each dimension is drawn,
	pole paper.Paper     // of the flag
}

// taming is the power the proportions are raised to; receding is how much
// shorter what goes away from the viewer is drawn, across and up.
const (
	taming  = 0.55
	recedeX = 0.5
	recedeZ = 0.38
)

// thickness is the least a dimension is drawn, in shares of the longest: the
// first at which one can see which side is cut, so that a leg on a small card
// is no black stick.
var thickness = []float64{0.12, 0.2, 0.3, 0.45}

// sideSeen is how wide a side must be on paper to see what is cut in it.
const sideSeen paper.Paper = 5

func newInPlace(r *deck.Run, least float64) inPlace {
	p := inPlace{size: r.Piece.Size}
	for _, side := range []joinery.Side{r.Step.Down, r.Step.Fence, r.Leads} {
		p.seen[side.Dimension()] = side
	}
	p.seen[joinery.FrontBack] = joinery.Front
	longest := max(p.size[0], p.size[1], p.size[2]).Millimetres()
	for i, l := range p.size {
		p.Long[i] = paper.Paper(max(least, math.Pow(l.Millimetres()/longest, taming)))
	}
	return p
}

// corner is a place in the piece.
type corner [3]joinery.Length

// at projects a place; the y axis of paper points down.
func (p inPlace) at(k corner) paper.Point {
	var v [3]paper.Paper
	for i := range v {
		v[i] = p.Long[i] * paper.Paper(k[i].Millimetres()/p.size[i].Millimetres())
	}
	right, up := paper.Paper(recedeX), paper.Paper(recedeZ)
	if p.seen[joinery.LeftRight] == joinery.Left {
		right = -right
	}
	if p.seen[joinery.TopBottom] == joinery.Bottom {
		up = -up
	}
	return paper.At(v[0]+right*v[1], -v[2]-up*v[1])
}

// face returns the outline of a box's face toward a side, closed.
func (p inPlace) face(b solid.Box, side joinery.Side) []paper.Point {
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

// middle returns the middle of a side of the piece.
func (p inPlace) middle(side joinery.Side) paper.Point {
	var k corner
	for i := range k {
		k[i] = p.size[i] / 2
	}
	k[side.Dimension()] = 0
	if side.High() {
		k[side.Dimension()] = p.size[side.Dimension()]
	}
	return p.at(k)
}

// outward returns the way a side faces, one long.
func (p inPlace) outward(side joinery.Side) paper.Point {
	a, b := p.middle(side.Opposite()), p.middle(side)
	n := paper.Paper(math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y)))
	return paper.At((b.X-a.X)/n, (b.Y-a.Y)/n)
}

// Measures of the flag at the leading end.
const (
	longestPole paper.Paper = 7
	flagWide    paper.Paper = 4
)

// besideFlag is how wide and high a picture must be for words beside its flag.
const besideFlag = 30

// narrowPicture is how wide a picture must be to stand beside the orders.
const narrowPicture paper.Paper = 15

// inPlace lays the picture out within a width and height, its words under it.
func (s Setter) inPlace(u *deck.Setup, r *deck.Run, w, h paper.Paper) paper.Block {
	flag, caption := s.flagWords(r, w, h)
	words := caption.Set(w)
	b := picture(u, r, flag, w, h-words.H-1)
	b.Add(words, (w-words.W)/2, h-words.H)
	return b
}

// flagWords are the words beside the flag, where these have room, and those
// under the picture.
func (s Setter) flagWords(r *deck.Run, w, h paper.Paper) (flag paper.Block, caption paper.Phrase) {
	leads := paper.Phrase{}.Say(s.bold(paper.Least), strings.ToUpper(r.Leads.String())+" leads")
	caption = paper.Phrase{}.Say(s.Letters(paper.Least), "cut in the "+strings.ToUpper(r.Step.Down.String())+"; seen from the front")
	if w < 1.5*besideFlag || h < besideFlag || r.Leads.Dimension() != joinery.TopBottom {
		return paper.Block{}, append(leads.Tie(s.Letters(paper.Least), ";"), caption...)
	}
	return leads.Set(w), caption
}

// picture draws the piece and its flag in the middle of a width and height.
func picture(u *deck.Setup, r *deck.Run, flag paper.Block, w, h paper.Paper) paper.Block {
	p := pictured(r, flag, w, h)
	frame := p.around(r, flag)
	d := &paper.Drawing{W: w, H: h}
	p.draw(d, paper.At((w-frame.W)/2-frame.X, (h-frame.H)/2-frame.Y), r, u.Bit.True(), flag)
	return d.Block()
}

// pictured returns the picture as large as fits with its flag, its proportions
// tamed no more than it takes to see its sides.
func pictured(r *deck.Run, flag paper.Block, w, h paper.Paper) inPlace {
	var p inPlace
	for _, least := range thickness {
		p = newInPlace(r, least)
		p.pole = min(longestPole, h/4)
		scale := p.fitted(r, flag, w, h)
		for i := range p.Long {
			p.Long[i] *= scale
		}
		if slices.Min(p.Long[:]) >= sideSeen {
			break
		}
	}
	return p
}

// fitted returns the scale at which the picture with its flag fits.
func (p inPlace) fitted(r *deck.Run, flag paper.Block, w, h paper.Paper) paper.Paper {
	scale := 2 * max(w, h)
	for ; scale > 1; scale *= 0.95 {
		q := p
		for i := range q.Long {
			q.Long[i] *= scale
		}
		if frame := q.around(r, flag); frame.W <= w && frame.H <= h {
			break
		}
	}
	return scale
}

// frame returns the box round the piece, around the one round its flag too.
func (p inPlace) frame() paper.Box {
	var points []paper.Point
	for _, side := range joinery.Sides {
		points = append(points, p.face(solid.Whole(p.size), side)...)
	}
	return boxOf(points)
}

func (p inPlace) around(r *deck.Run, flag paper.Block) paper.Box {
	_, top := p.flagPole(r)
	points := append(p.frame().Path(), p.flagText(r, flag).Path()...)
	return boxOf(append(points, top.Add(-flagWide, -1.5), top.Add(flagWide, 1.5)))
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

// flagPole returns the foot and the top of the flag's pole.
func (p inPlace) flagPole(r *deck.Run) (foot, top paper.Point) {
	foot = p.middle(r.Leads)
	out := p.outward(r.Leads)
	return foot, foot.Add(out.X*p.pole, out.Y*p.pole)
}

// flagText returns where the words beside the flag go.
func (p inPlace) flagText(r *deck.Run, flag paper.Block) paper.Box {
	_, top := p.flagPole(r)
	return paper.Box{X: top.X + flagWide + 0.5, Y: top.Y - flag.H/2, W: flag.W, H: flag.H}
}

func (p inPlace) draw(d *paper.Drawing, shift paper.Point, r *deck.Run, bit joinery.Length, flag paper.Block) {
	move := func(path []paper.Point) []paper.Point { return paper.Shifted(shift, path) }
	whole := solid.Whole(p.size)
	for _, side := range joinery.Sides {
		if side == p.seen[side.Dimension()] {
			d.Fill(paper.White, move(p.face(whole, side))...)
		}
	}
	cut := solid.Of(r.Channel, p.size, bit).Box(p.size)
	for _, side := range joinery.Sides {
		if !onSurface(cut, side, p.size) {
			continue
		}
		path := move(p.face(cut, side))
		if side == p.seen[side.Dimension()] {
			d.Fill(paper.Black, path...)
		} else {
			d.Stroke(paper.Hidden, path...)
		}
	}
	for _, side := range joinery.Sides {
		if side == p.seen[side.Dimension()] {
			d.Stroke(paper.Pen{Width: 0.35}, move(p.face(whole, side))...)
		}
	}
	foot, top := p.flagPole(r)
	foot, top = foot.Add(shift.X, shift.Y), top.Add(shift.X, shift.Y)
	d.Stroke(paper.Thick, foot, top)
	words := p.flagText(r, flag)
	way := flagWide
	if p.outward(r.Leads).X < 0 {
		way = -flagWide
	}
	d.Fill(paper.Black, top.Add(0, -1.5), top.Add(way, 0), top.Add(0, 1.5))
	d.Text(flag, words.X+shift.X, words.Y+shift.Y)
}

// onSurface reports whether a box reaches the side of the piece.
func onSurface(b solid.Box, side joinery.Side, size joinery.Size) bool {
	d := side.Dimension()
	if side.High() {
		return b[d].Hi == size[d]
	}
	return b[d].Lo == 0
}
