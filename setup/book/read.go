package book

import (
	"fmt"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
)

// mostEntries is more setups than a workshop keeps.
const mostEntries = 10_000

const anotherBook = "move some of them into a book of their own, and name it with --book when you want it"

// mostLines bounds the lines of one entry: some 1,500 runs.
const mostLines = 30_000

// mostName bounds the name of an entry, in characters.
const mostName = 200

// readEntries reads every block; a name may be used once.
func (b *Book) readEntries() {
	first := make(map[string]uint32) // the line of each name
	read := &reading{lengths: memory{}}
	strays := len(b.damage)
	for i, block := range b.blocks {
		if i == mostEntries {
			b.damage = append(b.damage, plantext.Fault{Place: b.place(int(block.first), 0),
				Problem: fmt.Sprintf("from here on the book was not read: it has more than %d setups", mostEntries), Remedy: anotherBook})
			break
		}
		if len(b.damage)-strays >= mostDamage {
			b.damage = append(b.damage, plantext.Fault{Place: b.place(int(block.first), 0),
				Problem: "from here on the book was not read: too much of it is damaged",
				Remedy:  "mend what is above, or take the backup beside the book"})
			break
		}
		e, faults := b.readEntry(block, read)
		name := b.nameOf(block)
		key := strings.ToLower(name)
		if before, ok := first[key]; ok {
			faults.add(plantext.Fault{Place: b.place(int(block.first), 0),
				Problem: fmt.Sprintf("a second setup has the name %q", plantext.Brief(name, mostQuoted)), Remedy: "give it another name",
				Other: b.place(int(before), 0), Clash: "the first one"})
		} else {
			first[key] = block.first
		}
		if faults.count == 0 {
			b.entries = append(b.entries, e)
		}
		b.damage = append(b.damage, faults.listed...)
	}
	b.damage, _ = b.damage.Err().(plantext.Faults) // sorted
}

// readEntry reads one block.
func (b *Book) readEntry(block block, read *reading) (*Entry, complaints) {
	var faults complaints
	if !b.bounded(block, &faults) {
		return nil, faults
	}
	g, runs := b.groups(block, &faults, read)
	e := &Entry{Name: g.head.value, From: g.words(keyFrom), Notes: g.notes()}
	if e.Name == "" {
		g.fault(g.head, "write setup: NAME", "this setup has no name")
	}
	g.read = read.lengths
	e.Shop = read.same(g.shop())
	for i := range runs {
		runs[i].unit, runs[i].read = g.unit, read.lengths
	}
	e.Date = g.date()
	bit := g.bit()
	heights := g.ladder()
	near := measure.Length(0)
	if f, ok := g.need(keyFence, "1/2 in"); ok {
		near, _ = g.parse(f, f.value)
	}
	e.Setup = deck.Setup{Number: 1, Bit: bit, Fence: deck.FenceAt(bit, near), Heights: heights, Carriage: max(0, g.length(keyCarriage))}
	e.Stood = Stood{Fence: g.stood(keyStood), Height: g.stood(keyHigh)}
	e.readRuns(runs)
	if faults.count == 0 {
		e.Setup.PairUp(e.Shop)
		e.Code = Code(&e.Setup)
		if f, ok := g.one(keyCode); ok && plainCode(f.value) != plainCode(e.Code) {
			e.Edited = b.place(f.line, f.at)
		}
	}
	return e, faults
}

// bounded faults a block that is no setup, before it is read.
func (b *Book) bounded(block block, faults *complaints) bool {
	head, _ := b.fieldOf(int(block.first))
	if block.last-block.first > mostLines {
		faults.add(plantext.Fault{Place: b.place(int(block.first), head.at),
			Problem: fmt.Sprintf("this setup has more than %d lines, so it was not read", mostLines), Remedy: "cut it into several setups, or take it away"})
	}
	if utf8.RuneCountInString(head.value) > mostName {
		faults.add(plantext.Fault{Place: b.place(int(block.first), head.at),
			Problem: fmt.Sprintf("this name is longer than %d letters", mostName), Remedy: "write a shorter one, and the rest in a note: line"})
	}
	return faults.count == 0
}

// date reads the day an entry was kept.
func (g *group) date() string {
	f, ok := g.one(keyDate)
	if !ok {
		return ""
	}
	if _, err := time.Parse(time.DateOnly, f.value); err != nil {
		g.fault(f, "write year, month and day, such as 2026-03-31", "kept: %q is no date", f.value)
	}
	return f.value
}

// bit reads the bit.
func (g *group) bit() *joinery.Bit {
	bit := &joinery.Bit{
		Name:     g.words(keyBit),
		Diameter: g.needLength(keyDiameter, "3/8 in", 1),
		Measured: g.length(keyMeasured),
		Cutting:  g.length(keyCutting),
		Shank:    g.length(keyShank),
	}
	bit.Kind, _ = joinery.ParseBitKind(g.oneOf(keyKind, joinery.BitKindNames()...))
	bit.Outline = g.outline(bit)
	if _, ok := g.one(keySpeed); ok {
		bit.Speed = g.count(keySpeed)
	}
	switch g.oneOf(keyPlunges, "", answers[joinery.Yes], answers[joinery.No]) {
	case answers[joinery.Yes]:
		bit.Plunges = joinery.Yes
	case answers[joinery.No]:
		bit.Plunges = joinery.No
	}
	return bit
}

var position = pattern.New(`^(\d{1,3}) of (\d{1,3})$`)

// position reads which of a cut's runs it is.
func (g *group) position() (at, of int) {
	f, ok := g.one(keyPosition)
	if !ok {
		return 1, 1
	}
	if m := position.FindStringSubmatch(f.value); m != nil {
		at, _ = strconv.Atoi(m[1])
		of, _ = strconv.Atoi(m[2])
		if at >= 1 && at <= of {
			return at, of
		}
	}
	g.fault(f, "write 1 of 2", "position: %q cannot be read", f.value)
	return 1, 1
}
