package views

import (
	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/setup/deck"
)

// Joint draws a joint: the piece that is gone into and the end that goes in,
// apart, then both together in sections, all at one scale, which it names. Each
// figure is a block no wider than w, laid out to stand in a height of about h.
func Joint(s setting.Setter, j *deck.Joint, w, h paper.Paper) (figures []paper.Block, scale string) {
	all := jointFigures(j)
	fits := func(try drawingScale) bool {
		for i := range all {
			if room := w - all[i].columns(s, w); room < leastWide || !all[i].fit(try.size, room, h) {
				return false
			}
		}
		return true
	}
	chosen := largest(drawings(s), fits)
	for i := range all {
		all[i].fit(chosen.size, max(leastWide, w-all[i].columns(s, w)), h)
		figures = append(figures, all[i].draw(s, w))
	}
	return figures, scaled(s, chosen)
}

// Mouth draws a half as it is seen from the side that its cut is made in, with where
// the cut starts and stops, no wider than w and about h high.
func Mouth(s setting.Setter, h deck.Half, w, high paper.Paper) paper.Block {
	f := mouthOf(h)
	room := func() paper.Paper { return max(leastWide, w-f.columns(s, w)) }
	chosen := largest(drawings(s), func(try drawingScale) bool { return f.fit(try.size, room(), high) })
	f.fit(chosen.size, room(), high)
	return f.draw(s, w)
}

// jointFigures are the views of a joint.
func jointFigures(j *deck.Joint) []jointFigure {
	p := placeJoint(j)
	mouth := mouthOf(j.Into)
	if j.Part.Cut != nil && j.Part.Cut.Kind.Laps {
		return []jointFigure{mouth, mouthOf(j.Part), p.section(j, p.run, p.near)}
	}
	all := []jointFigure{mouth, p.end(j), p.section(j, p.run, p.near)}
	return append(all, p.section(j, p.near, p.run))
}

// mouthOf is a half as it is seen from the side its cut is made in.
func mouthOf(h deck.Half) jointFigure {
	ch := h.Cut.Channels[0]
	f := jointFigure{from: ch.Down, shapes: []shape{{box: wholeOf(h.Piece.Size)}}}
	for _, c := range h.Cut.Channels {
		if c.Down == ch.Down {
			f.shapes = append(f.shapes, shape{box: roomOf(c, h.Piece.Size), look: partWood})
		}
	}
	near, run, size := ch.Near.Dimension(), ch.Run(), h.Piece.Size
	across := wallsOf(ch, size)
	if ch.Setback > 0 {
		f.measures = append(f.measures, dimension{near, toSide(across, ch.Near, size)})
	}
	f.measures = append(f.measures, dimension{near, across})
	along := extent{ch.Lo, ch.Hi}
	if from := h.Cut.Span.Side; from != joinery.NoSide && !ch.OpenAt(from, size) {
		f.measures = append(f.measures, dimension{run, toSide(along, from, size)})
	} else if ch.Lo > 0 && ch.Hi < size[run] {
		f.measures = append(f.measures, dimension{run, toSide(along, run.Low(), size)})
	}
	f.measures = append(f.measures, dimension{run, along})
	f.caption = h.Piece.Name + ", " + standing(f.from)
	return f
}

// standing says from where a figure is seen and which way is up in it.
func standing(from joinery.Side) string {
	return "seen from its " + from.String() + ", its " + seenFrom(from).above().String() + " up"
}

// end is the part as it is seen from the end that goes in.
func (p jointPlace) end(j *deck.Joint) jointFigure {
	f := jointFigure{from: p.channel.Down.Opposite(), shapes: []shape{{box: p.body}}}
	if j.Part.Cut != nil {
		f.shapes = append(f.shapes, shape{box: p.tongue, look: partWood})
	}
	for _, d := range []joinery.Dimension{p.near, p.run} {
		body, tongue := p.body[d], p.tongue[d]
		if tongue.lo > body.lo {
			f.measures = append(f.measures, dimension{d, extent{body.lo, tongue.lo}})
		}
		f.measures = append(f.measures, dimension{d, tongue})
		if tongue.hi < body.hi {
			f.measures = append(f.measures, dimension{d, extent{tongue.hi, body.hi}})
		}
	}
	f.caption = j.Part.Piece.Name + ", its end " + standing(f.from)
	return f
}

// section is both pieces together, cut through so that a dimension across the
// channel or along it shows beside its depth; through is the one that does not.
func (p jointPlace) section(j *deck.Joint, through, shown joinery.Dimension) jointFigure {
	from := through.High()
	if through == joinery.FrontBack {
		from = joinery.Front
	}
	f := jointFigure{from: from, shapes: []shape{{box: p.into, look: cutWood}, {box: p.hollow, look: emptied}}}
	if p.beyond {
		f.shapes = append(f.shapes, shape{box: p.body, look: partWood, broken: p.channel.Down})
	}
	tongue := shape{box: p.tongue, look: partWood}
	if p.beyond {
		tongue.joined = p.channel.Down
	}
	f.shapes = append(f.shapes, tongue)
	f.measures = append(f.measures, dimension{p.depth, p.hollow[p.depth]})
	if p.tongue[p.depth] != p.hollow[p.depth] {
		f.measures = append(f.measures, dimension{p.depth, p.tongue[p.depth]})
	}
	for _, r := range j.Reveals {
		if r.Side.Dimension() != shown || r.Distance == 0 {
			continue
		}
		size := p.into[shown].hi
		e := extent{0, r.Distance}
		if r.Side.High() {
			e = extent{size - r.Distance, size}
		}
		if r.Distance < 0 {
			e = extent{e.hi, e.lo}
		}
		f.measures = append(f.measures, dimension{shown, e})
	}
	f.caption = "together, cut through, seen from the " + from.String() + ", the " + seenFrom(from).above().String() + " up"
	return f
}
