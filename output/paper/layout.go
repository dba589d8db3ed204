package paper

// Part is something on a page: its box, worked out before anything is drawn,
// and how it is painted there. Painting keeps inside the box.
type Part struct {
	Name  string // what it is, for tests
	Says  string // the words, for tests
	Box   Box
	paint func(c Canvas, at Point) // at is the box's top left corner
}

// Block is a group of parts laid out together, its top left corner at the
// origin until it is moved.
type Block struct {
	W, H  Paper
	Parts []Part
}

// At returns the block's parts moved to a place.
func (b Block) At(right, down Paper) []Part {
	moved := make([]Part, len(b.Parts))
	for i, p := range b.Parts {
		p.Box.X += right
		p.Box.Y += down
		moved[i] = p
	}
	return moved
}

// Add puts another block into this one, which grows to hold it.
func (b *Block) Add(other Block, right, down Paper) {
	b.Parts = append(b.Parts, other.At(right, down)...)
	b.W = max(b.W, right+other.W)
	b.H = max(b.H, down+other.H)
}

// Below puts another block under this one, with a gap where both have height.
func (b *Block) Below(other Block, gap Paper) {
	if b.H == 0 || other.H == 0 {
		gap = 0
	}
	b.Add(other, 0, b.H+gap)
}

// Beside puts another block to the right of this one.
func (b *Block) Beside(other Block, gap Paper) {
	if b.W == 0 || other.W == 0 {
		gap = 0
	}
	b.Add(other, b.W+gap, 0)
}

// Stack puts blocks under each other.
func Stack(gap Paper, blocks ...Block) Block {
	var all Block
	for _, b := range blocks {
		all.Below(b, gap)
	}
	return all
}

// Paint draws the parts.
func Paint(c Canvas, parts []Part) {
	for _, p := range parts {
		p.paint(c, Point{p.Box.X, p.Box.Y})
	}
}

// Figure returns a block of one part that paints itself.
func Figure(name string, w, h Paper, paint func(c Canvas, at Point)) Block {
	return Block{w, h, []Part{{Name: name, Box: Box{0, 0, w, h}, paint: paint}}}
}
