package page

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"slices"
	"sync"

	"fencecard/output/sheets"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// Beside is what the sheets that stand beside the text of a plan are told besides
// their deck.
type Beside struct {
	// At tells where a warning is in the text.
	At func(w deck.Warning) Spot
	// Plain says words for one who has forms before them and not the text; nil for none.
	Plain func(words string) string
	// Pages says in which units lengths are printed and how they are rounded.
	Pages sheets.Pages
}

// Spot is a place in the text of a plan, and the form it belongs to.
type Spot struct {
	// Line is that of the text, from 1; 0 for nowhere.
	Line int `json:"line"`
	// From is where in the line, from 0, in the units in which a browser counts.
	From int `json:"from"`
	// At is where the form stands, "" for none, and Of what it is called.
	At string `json:"at"`
	Of string `json:"of"`
}

//go:embed beside.html
var besideText string

var besideLayout = sync.OnceValue(func() *template.Template { return template.Must(template.New("beside").Parse(besideText)) })

// besideView is what stands there.
type besideView struct {
	Title, Code, Sums, First string
	Rest                     template.HTML // of the run sheet
	Said                     []saidView    // warnings of no single setup
	Setups                   []besideSetup
	Pieces                   []pieceView
}

type besideSetup struct {
	Number int
	Bit    string
	Said   []saidView
	Head   template.HTML
	Groups []besideGroup
}

type besideGroup struct {
	groupHead
	Rows []template.HTML
}

// saidView is a warning and where in the text it is.
type saidView struct {
	Spot
	Words string
	Plain string // "" where it is the same
}

// WriteBeside writes the sheets of a deck as they are printed, to stand beside the
// text of their plan: HTML for a part of a page, each warning above the sheet of the
// first setup that it means.
func WriteBeside(w io.Writer, d *deck.Deck, b Beside) error {
	v, err := besideOf(d, b)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if err := besideLayout().Execute(&out, v); err != nil {
		return fmt.Errorf("making the sheets: %w", err)
	}
	if _, err := w.Write(out.Bytes()); err != nil {
		return fmt.Errorf("writing the sheets: %w", err)
	}
	return nil
}

func besideOf(d *deck.Deck, b Beside) (*besideView, error) {
	s := sheets.OnScreen(d, b.Pages)
	v := &besideView{Title: title(d), Code: d.Code, Sums: s.Sums(), First: firstWords}
	var err error
	if v.Rest, err = drawn(s.RunSheet()); err != nil {
		return nil, err
	}
	said := map[int][]saidView{}
	for _, w := range remark.Once(d) {
		n := meant(d, w)
		view := saidView{b.At(w), w.Text, ""}
		if b.Plain != nil {
			if plain := b.Plain(w.Text); plain != w.Text {
				view.Plain = plain
			}
		}
		said[n] = append(said[n], view)
	}
	v.Said = said[0]
	for i := range d.Setups {
		u, err := setupBeside(s, d, i)
		if err != nil {
			return nil, err
		}
		u.Said = said[u.Number]
		v.Setups = append(v.Setups, u)
	}
	for _, c := range d.Cards() {
		p, err := pieceOf(s, &c)
		if err != nil {
			return nil, err
		}
		v.Pieces = append(v.Pieces, p)
	}
	return v, nil
}

// meant is the first setup that cuts what a warning names, 0 where it names no cut.
func meant(d *deck.Deck, w deck.Warning) int {
	if w.Cut == "" {
		return 0
	}
	at := slices.IndexFunc(d.Setups, func(u deck.Setup) bool {
		return slices.ContainsFunc(u.Runs, func(r deck.Run) bool { return r.Piece.Name == w.Piece && r.Cut.Name == w.Cut })
	})
	if at < 0 {
		return 0
	}
	return d.Setups[at].Number
}

func setupBeside(s *sheets.Screen, d *deck.Deck, i int) (besideSetup, error) {
	u := &d.Setups[i]
	view := besideSetup{Number: u.Number, Bit: u.Bit.Name}
	var err error
	if view.Head, err = drawn(s.Head(i)); err != nil {
		return view, err
	}
	err = eachGroup(s, u, wording.Groups(u), func(g wording.Group, head groupHead) error {
		group := besideGroup{groupHead: head}
		for _, r := range g.Runs {
			row, err := drawn(s.Row(u, r))
			if err != nil {
				return err
			}
			group.Rows = append(group.Rows, row)
		}
		view.Groups = append(view.Groups, group)
		return nil
	})
	return view, err
}
