package oblique

import (
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/output/wording"
	"fencecard/setup/solid"
)

// Heights of a sketch.
const (
	sketchUpright paper.Paper = 56
	sketchFlat    paper.Paper = 42
)

// Sketch draws a piece from both sides in a width, its six sides named; the chosen
// cut is black.
func Sketch(k setting.Setter, w paper.Paper, p *joinery.Piece, chosen *joinery.Cut) paper.Block {
	cuts := everyCut(p)
	ahead := newView(p.Size, [3]joinery.Side{joinery.Right, joinery.Front, joinery.Top}, false)
	behind := newView(p.Size, [3]joinery.Side{joinery.Left, joinery.Back, joinery.Bottom}, true)
	high := sketchFlat
	if f := ahead.frame(); f.H > f.W {
		high = sketchUpright
	}
	if chosen != nil { // one picture, on which it shows
		shown := slices.DeleteFunc(slices.Clone(cuts), func(c pictured) bool { return c.cut != chosen })
		if len(shown) > 0 {
			all := viewsOf(p.Size, shown)
			ahead = all[len(all)-1] // from behind where the first hides half of it
		}
		if !slices.ContainsFunc(shown, ahead.shows) {
			ahead = behind
		}
		return named(k, w, ahead, cuts, chosen, high)
	}
	return paper.Stack(2, named(k, w, ahead, cuts, nil, high), named(k, w, behind, cuts, nil, high))
}

// everyCut are the cuts of a piece as they will be, a channel each.
func everyCut(p *joinery.Piece) []pictured {
	var cuts []pictured
	for i := range p.Cuts {
		for _, ch := range p.Cuts[i].Channels {
			box := solid.Of(ch, p.Size, 0).Box(p.Size)
			cuts = append(cuts, pictured{box: box, sides: opensAt(box, p.Size), cut: &p.Cuts[i]})
		}
	}
	return cuts
}

// named draws a view with the names of the sides that face the viewer beside it, and
// the sizes at its edges.
func named(k setting.Setter, w paper.Paper, p pieceView, cuts []pictured, chosen *joinery.Cut, h paper.Paper) paper.Block {
	const gap, captionHigh, under = 3, 5, 5
	l, bold := k.Letters(paper.Least), k.Bold(paper.Least)
	column := bold.Width("BOTTOM") + 0.1
	p = p.fitted(w-2*(column+gap)-16, h-captionHigh-2*under)
	move := p.centred(w, h-captionHigh)
	d := &paper.Drawing{W: w, H: h}
	whole := solid.Whole(p.size)
	for _, side := range p.seen {
		d.Fill(paper.White, move(p.face(whole, side))...)
	}
	for _, c := range cuts {
		if c.cut == chosen {
			continue
		}
		for _, side := range c.sides {
			if p.sees(side) {
				d.Fill(paper.Pale, move(p.face(c.box, side))...)
				d.Stroke(paper.Pen{Width: 0.18}, move(p.face(c.box, side))...)
			}
		}
	}
	for _, c := range cuts {
		if c.cut != chosen || chosen == nil {
			continue
		}
		for _, side := range c.sides {
			if p.sees(side) {
				d.Fill(paper.Black, move(p.face(c.box, side))...)
			} else {
				d.Stroke(paper.Hidden, move(p.face(c.box, side))...)
			}
		}
	}
	ahead, aside := boxOf(move(p.face(whole, p.seen[joinery.FrontBack]))), boxOf(move(p.face(whole, p.seen[joinery.LeftRight])))
	turned := aside.X < ahead.X // what goes away from the viewer lies to the left
	var left, right []*labelled
	for _, side := range p.seen {
		path := move(p.face(whole, side))
		d.Stroke(paper.Pen{Width: 0.35}, path...)
		b := boxOf(path)
		one := &labelled{to: paper.At(b.X+b.W/2, b.Y+b.H/2), text: paper.Phrase{}.Say(bold, strings.ToUpper(side.String())).Set(column)}
		// On the side where nothing else stands between it and its name.
		if (side.Dimension() == joinery.FrontBack) != turned {
			left = append(left, one)
		} else {
			right = append(right, one)
		}
	}
	spread(left, h-captionHigh)
	spread(right, h-captionHigh)
	labels(d, left, func(one *labelled) (paper.Paper, paper.Paper) { return column - one.text.W, column + 0.7 })
	labels(d, right, func(*labelled) (paper.Paper, paper.Paper) { return w - column, w - column - 0.7 })
	sizes(k, d, p, ahead, aside)
	caption := "seen from the front"
	if p.behind {
		caption = "seen from behind"
	}
	if k.Unit() != "" {
		caption += ", in " + wording.UnitWord(k.Scale.Unit)
	}
	caption += ", not to scale"
	text := paper.Phrase{}.Say(l, caption).Set(w)
	d.Text(text, (w-text.W)/2, h-text.H)
	return d.Block()
}

// sizes writes the sizes of a piece at its edges: ahead is the box round the face that
// is seen straight, aside that round the one that goes away from the viewer.
func sizes(k setting.Setter, d *paper.Drawing, p pieceView, ahead, aside paper.Box) {
	below := p.seen[joinery.TopBottom] == joinery.Bottom // the bottom shows, and lies under the front
	text := func(dim joinery.Dimension) paper.Block {
		return paper.Phrase{}.Say(k.Bold(paper.Least), k.Scale.Fine(p.size[dim])).Set(30)
	}
	wide := text(joinery.LeftRight)
	y := ahead.Y + ahead.H + 1
	if below {
		y = ahead.Y - wide.H - 1
	}
	d.Text(wide, ahead.X+(ahead.W-wide.W)/2, y)

	beside := func(b paper.Block, face paper.Box, left bool) paper.Paper {
		if left {
			return face.X - b.W - 1.2
		}
		return face.X + face.W + 1.2
	}
	left := aside.X < ahead.X // where the face lies that goes away
	high := text(joinery.TopBottom)
	d.Text(high, beside(high, ahead, !left), ahead.Y+max((ahead.H-high.H)*0.8, ahead.H/2+0.5)) // under the line to the name of the front

	deep := text(joinery.FrontBack)
	x := aside.X + aside.W/2 + 1.2
	if left {
		x = aside.X + aside.W/2 - deep.W - 1.2
	}
	y = aside.Y + aside.H - deep.H/2
	if below {
		y = aside.Y - deep.H/2
	}
	d.Text(deep, x, y)
}
