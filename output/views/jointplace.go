package views

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// jointPlace is where the two halves of a joint lie when they are together, in
// the dimensions of the piece gone into: read off its channel, its fits and its
// reveals.
type jointPlace struct {
	channel          joinery.Channel
	near, run, depth joinery.Dimension
	into             solidBox
	hollow           solidBox // the room of the channel
	tongue           solidBox // what lies in it
	body             solidBox // the part outside, as far as it is drawn
	beyond           bool     // there is a body outside
}

// wholeOf is a piece.
func wholeOf(size joinery.Size) (b solidBox) {
	for d, l := range size {
		b[d] = extent{0, l}
	}
	return b
}

// wallsOf is a channel from wall to wall.
func wallsOf(c joinery.Channel, size joinery.Size) extent {
	if c.Near.High() {
		far := size.Between(c.Near) - c.Setback
		return extent{far - c.Width, far}
	}
	return extent{c.Setback, c.Setback + c.Width}
}

// roomOf is the room of a channel.
func roomOf(c joinery.Channel, size joinery.Size) (b solidBox) {
	b[c.Near.Dimension()] = wallsOf(c, size)
	b[c.Run()] = extent{c.Lo, c.Hi}
	b[c.Down.Dimension()] = inward(c.Down, c.Depth, size)
	return b
}

// inward is so much of a piece from a side.
func inward(from joinery.Side, much measure.Length, size joinery.Size) extent {
	if from.High() {
		return extent{size.Between(from) - much, size.Between(from)}
	}
	return extent{0, much}
}

// toSide is from a side of the piece to the nearer end of an extent.
func toSide(e extent, side joinery.Side, size joinery.Size) extent {
	if side.High() {
		return extent{e.hi, size.Between(side)}
	}
	return extent{0, e.lo}
}

// leastStub is how much of the part is drawn outside, at the least.
const leastStub = 3 * measure.Inch / 4

// placeJoint puts the halves of a joint together.
func placeJoint(j *deck.Joint) jointPlace {
	c, size := j.Into.Cut.Channels[0], j.Into.Piece.Size
	p := jointPlace{channel: c, near: c.Near.Dimension(), run: c.Run(), depth: c.Down.Dimension(),
		into: wholeOf(size), hollow: roomOf(c, size)}
	if j.Part.Cut != nil && j.Part.Cut.Kind.Laps {
		p.tongue = p.hollow
		p.tongue[p.near] = against(p.hollow[p.near], c.Near.Opposite(), j.Part.Piece.Size[p.near])
		p.tongue[p.depth] = against(p.hollow[p.depth], c.Down, fitOf(j, "thickness", c.Depth))
		return p
	}
	p.beyond = true
	p.body[p.near], p.tongue[p.near] = p.lie(j, p.near, c.Near, "thickness")
	p.body[p.run], p.tongue[p.run] = p.lie(j, p.run, p.setAgainst(j), "width")
	goes := min(j.Part.Enters, size[p.depth])
	if goes == 0 {
		goes = c.Depth
	}
	p.tongue[p.depth] = inward(c.Down, goes, size)
	stub := min(j.Part.Piece.Size[p.depth], max(leastStub, c.Depth))
	if c.Down.High() {
		p.body[p.depth] = extent{size[p.depth], size[p.depth] + stub}
	} else {
		p.body[p.depth] = extent{-stub, 0}
	}
	return p
}

// against is an extent of a length within another, at the end opposite a side.
func against(e extent, open joinery.Side, length measure.Length) extent {
	if open.High() {
		return extent{e.lo, e.lo + length}
	}
	return extent{e.hi - length, e.hi}
}

// fitOf is the part's measure of that name in the joint, or another.
func fitOf(j *deck.Joint, of string, or measure.Length) measure.Length {
	for _, f := range j.Fits {
		if f.Of == of {
			return f.Part
		}
	}
	return or
}

// setAgainst is the end of the channel that the part is set against.
func (p jointPlace) setAgainst(j *deck.Joint) joinery.Side {
	for _, r := range j.Reveals {
		if r.Side.Dimension() == p.run {
			return r.Side // of the two the one it is set against comes first
		}
	}
	if p.channel.OpenAt(p.run.Low(), j.Into.Piece.Size) && !p.channel.OpenAt(p.run.High(), j.Into.Piece.Size) {
		return p.run.High()
	}
	return p.run.Low()
}

// lie is where the part and its tongue lie in a dimension, set against a wall.
func (p jointPlace) lie(j *deck.Joint, d joinery.Dimension, wall joinery.Side, of string) (body, tongue extent) {
	part := j.Part.Piece.Size[d]
	low, high := cheekOf(j.Part.Cut, d.Low()), cheekOf(j.Part.Cut, d.High())
	tongue = against(p.hollow[d], wall.Opposite(), fitOf(j, of, part-low-high))
	body = extent{tongue.lo - low, tongue.lo - low + part}
	if wall.High() {
		body = extent{tongue.hi + high - part, tongue.hi + high}
	}
	for _, r := range j.Reveals {
		if r.Side.Dimension() == d {
			body = inward(r.Side, r.Distance, j.Into.Piece.Size)
			if r.Side.High() {
				return extent{body.lo - part, body.lo}, extent{tongue.lo - r.Play, tongue.hi - r.Play}
			}
			return extent{body.hi, body.hi + part}, extent{tongue.lo + r.Play, tongue.hi + r.Play}
		}
	}
	return body, tongue
}

// cheekOf is how much a tenon takes off a side.
func cheekOf(c *joinery.Cut, side joinery.Side) measure.Length {
	if c == nil {
		return 0
	}
	for _, cheek := range c.Cheeks {
		if cheek.Side == side {
			return cheek.Depth
		}
	}
	return 0
}
