package sheets

import (
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/output/oblique"
	"fencecard/output/paper"
	"fencecard/output/views"
	"fencecard/setup/deck"
)

// Sketch draws what a plan says while it is written, when there is no deck of it
// yet: nothing of it says how anything is cut.
type Sketch struct{ Setter }

// SketchOf draws the pieces, cuts and joints of a plan for a screen.
func SketchOf(plan *joinery.Plan) Sketch {
	return Sketch{OnScreen(&deck.Deck{Plan: plan}, Pages{}).sheets}
}

// Piece is a piece as it stands in the finished work, seen from the front and from
// behind, with its six sides named, its sizes, and its cuts.
func (k Sketch) Piece(p *joinery.Piece) (Drawing, error) {
	return drawBare(oblique.Sketch(k.Setter.Setter, screenWide, p, nil))
}

// Cut is a piece with one of its cuts black, and the side that the bit enters with
// where the cut starts and stops.
func (k Sketch) Cut(p *joinery.Piece, cut *joinery.Cut) (Drawing, error) {
	all := oblique.Sketch(k.Setter.Setter, screenWide, p, cut)
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

// JointsNamed are the joints of a name, as [Sketch.Joint] draws them.
func JointsNamed(joints []deck.Joint, name string) []deck.Joint {
	named := strings.ToLower(strings.TrimSpace(name))
	return slices.DeleteFunc(slices.Clone(joints), func(j deck.Joint) bool { return !isNamed(&j, named) })
}

// mouthHigh is how high the side that the bit enters is drawn.
const mouthHigh paper.Paper = 45
