package output

import (
	"fmt"

	"fencecard/setup/deck"
)

// stripSheets lays out the strips of a deck on sheets, wide side down. Every
// sheet has a bar to measure; the first tells how strips are used.
// Where there are none, only a file of strips alone has that sheet, to say so.
func (s setter) stripSheets(d *deck.Deck, alone bool) ([]page, error) {
	wide, high := s.stripRoom()
	var tiles []block
	var none []string
	for i := range d.Setups {
		strips, err := s.stripsOf(&d.Setups[i], d.Plan.Shop.Fence, wide, high)
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
	return s.fillSheets(append(s.stripUse(d, none, wide, high), tiles...)), nil
}

// stripFrame is the part of a strip sheet inside its margins.
func (s setter) stripFrame() Box { return Box{s.frame.Y, s.frame.X, s.frame.H, s.frame.W} }

// stripRoom is the width and height of the largest tile.
func (s setter) stripRoom() (wide, high Paper) {
	frame := s.stripFrame()
	return frame.W, frame.H - s.bar(frame.W).h - sheetGap
}

const (
	mostRows Paper = 50 // of labels: a strip higher than a fence cannot be stuck on it
	sheetGap Paper = 4
)

// fillSheets puts blocks under each other, on as many sheets as they take.
func (s setter) fillSheets(blocks []block) []page {
	frame := s.stripFrame()
	bar := s.bar(frame.W)
	var sheets []block
	var now block
	for _, b := range blocks {
		if now.h > 0 && now.h+sheetGap+b.h > frame.H-bar.h-sheetGap {
			sheets, now = append(sheets, now), block{}
		}
		now.below(b, sheetGap)
	}
	sheets = append(sheets, now)
	pages := make([]page, len(sheets))
	for i, b := range sheets {
		count := phrase{}.say(s.letters(least), fmt.Sprintf("Strip sheet %d of %d", i+1, len(sheets))).set(frame.W)
		parts := append(bar.at(frame.X, frame.Y), count.at(frame.Right()-count.w, frame.Y)...)
		parts = append(parts, b.at(frame.X, frame.Y+bar.h+sheetGap)...)
		pages[i] = page{s.paper.H, s.paper.W, parts}
	}
	return pages
}

// bar is two lines to measure, so that a sheet printed at another size is
// found out.
func (s setter) bar(w Paper) block {
	small := s.letters(least)
	const high Paper = 8
	d := &drawing{w: w, h: high}
	middle := high / 2
	d.stroke(thin, Point{0, middle}, Point{4 * Inch, middle})
	for i := range 5 {
		x := Paper(i) * Inch
		d.stroke(markPen, Point{x, 0}, Point{x, middle})
	}
	for i := range 11 {
		x, end := Paper(i)*10, middle+2
		if i%10 == 0 {
			end = high
		}
		d.stroke(markPen, Point{x, middle}, Point{x, end})
	}
	x := 4*Inch + 1.5
	inches, metric := phrase{}.say(small, "4 in").set(w), phrase{}.say(small, "100 mm").set(w)
	d.text(inches, x, middle-inches.h)
	d.text(metric, x, middle)
	say := phrase{}.say(s.bold(least), "Print at 100 %, not fitted to the page. Measure this bar.")
	return stack(1, say.set(w), d.block())
}
