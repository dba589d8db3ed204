package output

// part is something on a page: its box, worked out before anything is drawn,
// and how it is painted there. Painting keeps inside the box.
type part struct {
	name  string // what it is, for tests
	says  string // the words, for tests
	box   Box
	paint func(c Canvas, at Point) // at is the box's top left corner
}

// block is a group of parts laid out together, its top left corner at the
// origin until it is moved.
type block struct {
	w, h  Paper
	parts []part
}

// at returns the block's parts moved to a place.
func (b block) at(right, down Paper) []part {
	moved := make([]part, len(b.parts))
	for i, p := range b.parts {
		p.box.X += right
		p.box.Y += down
		moved[i] = p
	}
	return moved
}

// add puts another block into this one, which grows to hold it.
func (b *block) add(other block, right, down Paper) {
	b.parts = append(b.parts, other.at(right, down)...)
	b.w = max(b.w, right+other.w)
	b.h = max(b.h, down+other.h)
}

// below puts another block under this one, with a gap where both have height.
func (b *block) below(other block, gap Paper) {
	if b.h == 0 || other.h == 0 {
		gap = 0
	}
	b.add(other, 0, b.h+gap)
}

// beside puts another block to the right of this one.
func (b *block) beside(other block, gap Paper) {
	if b.w == 0 || other.w == 0 {
		gap = 0
	}
	b.add(other, b.w+gap, 0)
}

// stack puts blocks under each other.
func stack(gap Paper, blocks ...block) block {
	var all block
	for _, b := range blocks {
		all.below(b, gap)
	}
	return all
}

// paint draws the parts.
func paint(c Canvas, parts []part) {
	for _, p := range parts {
		p.paint(c, Point{p.box.X, p.box.Y})
	}
}

// figure returns a block of one part that paints itself.
func figure(name string, w, h Paper, paint func(c Canvas, at Point)) block {
	return block{w, h, []part{{name: name, box: Box{0, 0, w, h}, paint: paint}}}
}
