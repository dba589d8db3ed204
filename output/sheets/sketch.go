package sheets

import (
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/views"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/solid"
)

// Sketch draws what a plan says while it is written, when there is no deck of it
// yet: nothing of it says how anything is cut.
type Sketch struct{ Setter }

// SketchOf draws the pieces, cuts and joints of a plan for a screen.
func SketchOf(plan *joinery.Plan) Sketch {
	return Sketch{OnScreen(&deck.Deck{Plan: plan}, Pages{}).sheets}
}

// Heights of a sketch.
const (
	sketchUpright paper.Paper = 56
	sketchFlat    paper.Paper = 42
	mouthHigh     paper.Paper = 45
)

// Piece is a piece as it stands in the finished work, seen from the front and from
// behind, with its six sides named, its sizes, and its cuts.
func (k Sketch) Piece(p *joinery.Piece) (Drawing, error) {
	return drawBare(k.piece(p, nil))
}

// Cut is a piece with one of its cuts black, and the side that the bit enters with
// where the cut starts and stops.
func (k Sketch) Cut(p *joinery.Piece, cut *joinery.Cut) (Drawing, error) {
	all := k.piece(p, cut)
	if len(cut.Channels) > 0 {
		all.Below(views.Mouth(k.Setter.Setter, deck.Half{Piece: p, Cut: cut}, screenWide, mouthHigh), 3)
	}
	return drawBare(all)
}

// Joint draws each of the joints of a name that differ, its halves apart and together,
// with the numbers that follow; nothing where none has the name.
func (k Sketch) Joint(joints []deck.Joint, name string) (Drawing, error) {
	named := strings.ToLower(strings.TrimSpace(name))
	var blocks []paper.Block
	for _, all := range alikeJoints(joints) {
		if slices.ContainsFunc(all, func(j *deck.Joint) bool { return isNamed(j, named) }) {
			blocks = append(blocks, paper.Stack(2, k.jointRows(all, screenWide)...))
		}
	}
	return drawBare(paper.Stack(jointsApart, blocks...))
}

// piece draws a piece from both sides; the chosen cut is black.
func (k Sketch) piece(p *joinery.Piece, chosen *joinery.Cut) paper.Block {
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
		return k.named(ahead, cuts, chosen, high)
	}
	return paper.Stack(2, k.named(ahead, cuts, nil, high), k.named(behind, cuts, nil, high))
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
func (k Sketch) named(p pieceView, cuts []pictured, chosen *joinery.Cut, h paper.Paper) paper.Block {
	const gap, captionHigh, under = 3, 5, 5
	l, bold := k.Letters(paper.Least), k.Bold(paper.Least)
	column := bold.Width("BOTTOM") + 0.1
	p = p.fitted(screenWide-2*(column+gap)-16, h-captionHigh-2*under)
	f := p.frame()
	shift := paper.At((screenWide-f.W)/2-f.X, (h-captionHigh-f.H)/2-f.Y)
	move := func(path []paper.Point) []paper.Point { return paper.Shifted(shift, path) }
	d := &paper.Drawing{W: screenWide, H: h}
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
	k.labels(d, left, func(one *labelled) (paper.Paper, paper.Paper) { return column - one.text.W, column + 0.7 })
	k.labels(d, right, func(*labelled) (paper.Paper, paper.Paper) { return screenWide - column, screenWide - column - 0.7 })
	k.sizes(d, p, ahead, aside)
	caption := "seen from the front"
	if p.behind {
		caption = "seen from behind"
	}
	if k.Unit() != "" {
		caption += ", lengths in " + wording.UnitWord(k.Scale.Unit)
	}
	text := paper.Phrase{}.Say(l, caption).Set(screenWide)
	d.Text(text, (screenWide-text.W)/2, h-text.H)
	return d.Block()
}

// sizes writes the sizes of a piece at its edges: ahead is the box round the face that
// is seen straight, aside that round the one that goes away from the viewer.
func (k Sketch) sizes(d *paper.Drawing, p pieceView, ahead, aside paper.Box) {
	below := p.seen[joinery.TopBottom] == joinery.Bottom // the bottom shows, and lies under the front
	text := func(dim joinery.Dimension) paper.Block {
		return paper.Phrase{}.Say(k.Bold(paper.Least), k.Plain(p.size[dim])).Set(30)
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
