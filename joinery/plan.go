package joinery

import (
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"
)

// Plan is a maker's plan, read and checked: every mirror is already a piece of
// its own, every wood and the shop are looked up.
type Plan struct {
	Name    string // the file's name without folder and ending, or "plan"
	Title   string
	Unit    measure.Unit
	Shop    Shop
	Climate timber.Climate
	Pieces  []Piece
	Place   plantext.Place
}

// Piece is one kind of blank and all its cuts, as it stands in the finished
// work, seen from the front.
type Piece struct {
	Name     string
	Count    int // 1 or more
	Size     Size
	Opening  Size // the lengths that were written between shoulders, 0 where whole ones were
	Grain    Dimension
	Wood     timber.Wood
	MirrorOf string // the piece this one was mirrored from, or ""
	Across   Flips  // the dimensions it was mirrored across
	Called   Pencilled
	Cuts     []Cut
	Place    plantext.Place
	Places   plantext.Places
}

// Cut returns the piece's cut of that name, or nil.
func (p *Piece) Cut(name string) *Cut {
	for i := range p.Cuts {
		if p.Cuts[i].Name == name {
			return &p.Cuts[i]
		}
	}
	return nil
}
