package sheets

import (
	"strings"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// wide makes a block at least so wide.
func wide(b paper.Block, w paper.Paper) paper.Block {
	b.W = max(b.W, w)
	return b
}

// sized makes a block at least so wide and so high, what is in it at its top
// left corner.
func sized(b paper.Block, w, h paper.Paper) paper.Block {
	b.W, b.H = max(b.W, w), max(b.H, h)
	return b
}

// beside puts two blocks side by side, each in the middle of their height.
func beside(left, right paper.Block, gap paper.Paper) paper.Block {
	high := max(left.H, right.H)
	var b paper.Block
	b.Add(left, 0, (high-left.H)/2)
	b.Add(right, left.W+gap, (high-right.H)/2)
	return b
}

// indented moves a block right.
func indented(b paper.Block, by paper.Paper) paper.Block {
	var moved paper.Block
	moved.Add(b, by, 0)
	return moved
}

// rule is a line across a width.
func rule(w paper.Paper, pen paper.Pen) paper.Block {
	return paper.Figure("rule", w, 0, func(c paper.Canvas, at paper.Point) { c.Stroke(pen, at, at.Add(w, 0)) })
}

// uprightRule is a line down a height.
func uprightRule(h paper.Paper) paper.Block {
	return paper.Figure("rule", 0, h, func(c paper.Canvas, at paper.Point) { c.Stroke(paper.Thin, at, at.Add(0, h)) })
}

// blank is a line to write on.
func blank(w paper.Paper) paper.Block {
	h := paper.Paper(4)
	return paper.Figure("blank", w, h, func(c paper.Canvas, at paper.Point) {
		c.Stroke(paper.Thin, at.Add(0, h), at.Add(w, h))
	})
}

// black sets a word in white on a black ground of a width and height.
func black(word string, l paper.Letters, w, h paper.Paper) paper.Block {
	l.White = true
	b := paper.Figure("text", w, h, func(c paper.Canvas, at paper.Point) {
		c.Fill(paper.Black, paper.Box{X: at.X, Y: at.Y, W: w, H: h}.Path()...)
		c.Text(at.Add((w-l.Width(word))/2, (h+l.Height)/2), l, word)
	})
	b.Parts[0].Says = word
	return b
}

// badge is a word over a number, white on black.
func (s Setter) badge(word, number string) paper.Block {
	big, small := s.Bold(9), s.Bold(paper.Least)
	big.White, small.White = true, true
	w := max(22, big.Width(number)+6, small.Width(word)+4)
	const h = 17
	b := paper.Figure("text", w, h, func(c paper.Canvas, at paper.Point) {
		c.Fill(paper.Black, paper.Box{X: at.X, Y: at.Y, W: w, H: h}.Path()...)
		c.Text(at.Add((w-small.Width(word))/2, 3.9), small, word)
		c.Text(at.Add((w-big.Width(number))/2, 15.9), big, number)
	})
	b.Parts[0].Says = word + " " + number
	return b
}

// flowed puts blocks side by side in lines of a width, all of a line in the
// middle of its height.
func flowed(items []paper.Block, w, gap, between paper.Paper) paper.Block {
	return paper.Stack(between, lined(items, w, gap)...)
}

// lined is the same, a block for each line.
func lined(items []paper.Block, w, gap paper.Paper) []paper.Block {
	var all []paper.Block
	var line []paper.Block
	var used paper.Paper
	end := func() {
		var high paper.Paper
		for _, b := range line {
			high = max(high, b.H)
		}
		var now paper.Block
		for i, b := range line {
			if i > 0 {
				now.W += gap
			}
			now.Add(b, now.W, (high-b.H)/2)
		}
		all = append(all, now)
		line, used = nil, 0
	}
	for _, b := range items {
		if len(line) > 0 && used+gap+b.W > w+paper.Touching {
			end()
		}
		if len(line) > 0 {
			used += gap
		}
		line = append(line, b)
		used += b.W
	}
	if len(line) > 0 {
		end()
	}
	return all
}

// shout is the name that is pencilled on a side of a run's piece, in capitals.
func shout(r *deck.Run, side joinery.Side) string { return strings.ToUpper(r.Shown(side)) }

// order is a side's name no wider than a width, in letters of a height or, where
// that is a long name, smaller ones.
func (s Setter) order(r *deck.Run, side joinery.Side, height, w paper.Paper) paper.Block {
	l, text := s.Bold(height), paper.Printable(shout(r, side))
	for l.Height > paper.Least && l.Width(text) > w {
		l.Height = max(paper.Least, l.Height*0.95)
	}
	return paper.Phrase{}.Say(l, text).Set(w)
}
