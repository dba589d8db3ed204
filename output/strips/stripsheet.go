// Package strips makes strips of paper for the fence: every mark of a setup at
// full size, to be cut out and stuck on, so that nothing need be measured.
package strips

import (
	"fmt"

	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// maker makes the strips of one deck.
type maker struct{ setting.Setter }

// Sheet is one sheet of strips with everything on it in its place.
type Sheet struct {
	W, H  paper.Paper
	Parts []paper.Part
}

// Sheets lays out the strips of a deck on sheets, wide side down. Every sheet
// has a bar to measure; the first tells how strips are used. Where there are
// none, only a file of strips alone has that sheet, to say so. There is an error
// where the paper has no room beside a bit.
func Sheets(s setting.Setter, d *deck.Deck, alone bool) ([]Sheet, error) {
	return maker{s}.sheets(d, alone)
}

func (s maker) sheets(d *deck.Deck, alone bool) ([]Sheet, error) {
	wide, high := s.stripRoom()
	var tiles []paper.Block
	var none []string
	for i := range d.Setups {
		strips, err := s.stripsOf(&d.Setups[i], &d.Plan.Shop, wide, high)
		if err != nil {
			return nil, err
		}
		if len(strips) == 0 {
			none = append(none, fmt.Sprint(d.Setups[i].Number))
		}
		for k := range strips {
			tiles = append(tiles, strips[k].tileBlocks()...)
		}
	}
	if len(tiles) == 0 && !alone {
		return nil, nil // nothing to make, so no need to tell how
	}
	use := s.stripUse(d, none, wide, high)
	if alone { // a deck has said it
		use = append(use, s.Say(wide, trade.Deference))
	}
	return s.fillSheets(append(use, tiles...)), nil
}

// stripFrame is the part of a strip sheet inside its margins.
func (s maker) stripFrame() paper.Box {
	return paper.Box{X: s.Frame.Y, Y: s.Frame.X, W: s.Frame.H, H: s.Frame.W}
}

// stripRoom is the width and height of the largest tile.
func (s maker) stripRoom() (wide, high paper.Paper) {
	frame := s.stripFrame()
	return frame.W, frame.H - s.bar(frame.W).H - sheetGap
}

const (
	mostRows paper.Paper = 50 // of labels: a strip higher than a fence cannot be stuck on it
	sheetGap paper.Paper = 4
)

// fillSheets puts blocks under each other, on as many sheets as they take.
func (s maker) fillSheets(blocks []paper.Block) []Sheet {
	frame := s.stripFrame()
	bar := s.bar(frame.W)
	var sheets []paper.Block
	var now paper.Block
	for _, b := range blocks {
		if now.H > 0 && now.H+sheetGap+b.H > frame.H-bar.H-sheetGap {
			sheets, now = append(sheets, now), paper.Block{}
		}
		now.Below(b, sheetGap)
	}
	sheets = append(sheets, now)
	pages := make([]Sheet, len(sheets))
	for i, b := range sheets {
		count := paper.Phrase{}.Say(s.Letters(paper.Least), s.counted(i+1, len(sheets))).Set(frame.W)
		parts := append(bar.At(frame.X, frame.Y), count.At(frame.Right()-count.W, frame.Y)...)
		parts = append(parts, b.At(frame.X, frame.Y+bar.H+sheetGap)...)
		pages[i] = Sheet{s.Page.H, s.Page.W, parts}
	}
	return pages
}

// bar is two lines to measure, so that a sheet printed at another size is
// found out.
func (s maker) bar(w paper.Paper) paper.Block {
	small := s.Letters(paper.Least)
	const high paper.Paper = 8
	d := &paper.Drawing{W: w, H: high}
	middle := high / 2
	d.Stroke(paper.Thin, paper.At(0, middle), paper.At(4*paper.Inch, middle))
	for i := range 5 {
		x := paper.Paper(i) * paper.Inch
		d.Stroke(markPen, paper.At(x, 0), paper.At(x, middle))
	}
	for i := range 11 {
		x, end := paper.Paper(i)*10, middle+2
		if i%10 == 0 {
			end = high
		}
		d.Stroke(markPen, paper.At(x, middle), paper.At(x, end))
	}
	x := 4*paper.Inch + 1.5
	inches, metric := paper.Phrase{}.Say(small, "4 in").Set(w), paper.Phrase{}.Say(small, "100 mm").Set(w)
	d.Text(inches, x, middle-inches.H)
	d.Text(metric, x, middle)
	say := paper.Phrase{}.Say(s.Bold(paper.Least), "Print at 100 %, not fitted. Measure this bar.")
	return paper.Stack(1, say.Set(w), d.Block())
}

// counted names a sheet, and the deck that it belongs to.
func (s maker) counted(n, of int) string {
	text := fmt.Sprintf("Strip sheet %d of %d", n, of)
	if s.Code != "" {
		text += ", deck " + s.Code
	}
	return text
}
