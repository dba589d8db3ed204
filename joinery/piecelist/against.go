package piecelist

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"
)

// Difference is one thing in which a list and a plan do not agree.
type Difference struct {
	Row   int            // of the list, 0 where no row is meant
	Place plantext.Place // in the plan, unknown where nothing there is meant
	Says  string
}

// Compare holds a list against a plan that was made of an earlier one. It
// matches rows and pieces by name, a row of four legs with the plan's front left
// leg and its mirrors, and compares counts, sizes and woods. Which way a piece
// lies is the plan's to say and is not asked. Questions and errors are those of
// [Read].
func Compare(name string, data []byte, o Options, plan *joinery.Plan) ([]Difference, []Question, error) {
	r, err := open(name, data, o)
	if err != nil {
		return nil, nil, err
	}
	r.sizesOnly = true
	if r.o.Unit == UnknownUnit {
		r.planUnit = Inches
		if plan.Unit == measure.Millimetres {
			r.planUnit = Millimetres
		}
	}
	r.readPieces()
	if _, questions, err := r.result(); err != nil || len(questions) > 0 {
		return nil, questions, err
	}
	return r.list.against(plan), nil, nil
}

// comparing is the comparison of a list with a plan.
type comparing struct {
	byName map[string]*joinery.Piece
	own    map[string]bool // the pieces that are some row's
	last   map[string]int  // the last number behind a name that rows share
	german bool
}

// against compares every row with the pieces that are its own, and looks what is
// left over.
func (l *List) against(plan *joinery.Plan) []Difference {
	c := comparing{map[string]*joinery.Piece{}, map[string]bool{}, map[string]int{}, l.german}
	for i := range plan.Pieces {
		c.byName[nameKey(plan.Pieces[i].Name)] = &plan.Pieces[i]
	}
	var all []Difference
	for i := range l.Pieces {
		p := &l.Pieces[i]
		pieces := c.among(p)
		if pieces == nil {
			all = append(all, Difference{Row: p.Row, Says: fmt.Sprintf("%s is not in the plan: %d of %s x %s x %s",
				quoted(p.Name), p.Count, p.Length.Text, p.Width.Text, p.Thickness.Text)})
			continue
		}
		all = append(all, p.differences(pieces, plan)...)
	}
	for i := range plan.Pieces {
		if p := &plan.Pieces[i]; !c.own[nameKey(p.Name)] {
			all = append(all, Difference{Place: p.Place, Says: quoted(p.Name) + " is in no row of the list"})
		}
	}
	return all
}

// among finds the pieces of the plan that a row stands for, and marks them.
func (c *comparing) among(p *Piece) []*joinery.Piece {
	names := []string{p.Name}
	if p.Heading != "" {
		names = append(names, p.Heading+" "+p.Name)
	}
	next := max(2, c.last[nameKey(p.Name)]+1)
	names = append(names, fmt.Sprintf("%s %d", p.Name, next))
	for i, name := range names {
		found := c.as(p, name)
		if found == nil {
			continue
		}
		if i == len(names)-1 {
			c.last[nameKey(p.Name)] = next
		}
		for _, piece := range found {
			c.own[nameKey(piece.Name)] = true
		}
		return found
	}
	return nil
}

// as finds the pieces that a row of some name came to: those that are as many as
// the row says, or else the first that have its name.
func (c *comparing) as(p *Piece, name string) (best []*joinery.Piece) {
	for _, as := range []As{Alike, Corners, PairLeftRight, PairFrontBack} {
		found, count := c.named(Piece{As: as}, name)
		if count == p.Count {
			return found
		}
		if best == nil {
			best = found
		}
	}
	return best
}

// named finds all of the pieces that a row of some name would come to, and how
// many they are; nil where one is not there.
func (c *comparing) named(made Piece, name string) (found []*joinery.Piece, count int) {
	for _, copy := range made.copies(name, c.german) {
		piece := c.byName[nameKey(copy.Name)]
		if piece == nil || c.own[nameKey(copy.Name)] {
			return nil, 0
		}
		found = append(found, piece)
		count += piece.Count
	}
	return found, count
}

// differences compares a row with its pieces; those of one row are of one size.
func (p *Piece) differences(pieces []*joinery.Piece, plan *joinery.Plan) []Difference {
	var all []Difference
	first := pieces[0]
	differs := func(what string, list, planned string) {
		if list != planned {
			all = append(all, Difference{p.Row, first.Place, fmt.Sprintf("%s: %s %s in the list, %s in the plan", quoted(p.Name), what, list, planned)})
		}
	}
	count := 0
	for _, piece := range pieces {
		count += piece.Count
	}
	differs("count", fmt.Sprint(p.Count), fmt.Sprint(count))
	text := func(l measure.Length) string { return measure.DefaultScale(plan.Unit).Spell(l) }
	// A list may count a rail's tenons in, or leave them to the joints.
	if opening := first.Opening[first.Grain]; opening == 0 || p.Length.Length != opening {
		differs("length", text(p.Length.Length), text(first.Size[first.Grain]))
	}
	var across []measure.Length
	for _, d := range joinery.Dimensions {
		if d != first.Grain {
			across = append(across, first.Size[d])
		}
	}
	// Which of the two a list calls the width is not the plan's to say.
	slices.Sort(across)
	list := []measure.Length{p.Width.Length, p.Thickness.Length}
	slices.Sort(list)
	if !slices.Equal(list, across) {
		differs("width and thickness", text(list[1])+" x "+text(list[0]), text(across[1])+" x "+text(across[0]))
	}
	if p.Wood != "" {
		planned := first.Wood.Name
		if planned == "" {
			planned = "none"
		}
		if found, _, ok := timber.FindWood(p.Wood); !ok || !strings.EqualFold(found.Name, planned) {
			differs("wood", p.Wood, planned)
		}
	}
	return all
}
