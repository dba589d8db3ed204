package book

import (
	"strconv"
	"strings"
	"time"

	"fencecard/joinery"
	"fencecard/joinery/pattern"
	"fencecard/setup"
)

// readEntries reads every block; a name may be used once.
func (b *Book) readEntries() {
	first := map[string]joinery.Place{}
	read := memory{}
	strays := len(b.damage)
	for _, block := range b.blocks {
		if len(b.damage)-strays >= mostDamage {
			b.damage = append(b.damage, joinery.Fault{Place: b.place(block.first, 0),
				Problem: "from here on the book was not read: too much of it is damaged",
				Remedy:  "mend what is above, or take the backup beside the book"})
			break
		}
		e, faults := b.readEntry(block, read)
		key := strings.ToLower(block.name)
		if before, ok := first[key]; ok {
			faults.add(joinery.Fault{Place: b.place(block.first, 0),
				Problem: "a second setup has the name \"" + block.name + "\"", Remedy: "give it another name",
				Other: before, Clash: "the first one"})
		} else {
			first[key] = b.place(block.first, 0)
		}
		if faults.count == 0 {
			b.entries = append(b.entries, e)
		}
		b.damage = append(b.damage, faults.listed...)
	}
	b.damage, _ = b.damage.Err().(joinery.Faults) // sorted
}

// readEntry reads one block.
func (b *Book) readEntry(block block, read memory) (*Entry, complaints) {
	var faults complaints
	g, cards := b.groups(block, &faults)
	e := &Entry{Name: block.name, From: g.words(keyFrom), Notes: g.notes(), Place: b.place(block.first, 0)}
	if e.Name == "" {
		g.fault(g.head, "write setup: NAME", "this setup has no name")
	}
	g.read = read
	e.Shop = g.shop()
	for _, card := range cards {
		card.unit, card.read = g.unit, read
	}
	e.Date = g.date()
	bit := g.bit()
	heights := g.ladder()
	near := joinery.Length(0)
	if f, ok := g.need(keyFence, "1/2 in"); ok {
		near, _ = g.parse(f, f.value)
	}
	e.Setup = setup.Setup{Number: 1, Bit: bit, Fence: setup.FenceAt(bit, near), Heights: heights}
	e.Stood = Stood{Fence: g.stood(keyStood), Height: g.stood(keyHigh)}
	e.readCards(cards)
	if faults.count == 0 {
		e.Code = Code(&e.Setup)
		if f, ok := g.one(keyCode); ok && plainCode(f.value) != plainCode(e.Code) {
			e.Edited = b.place(f.line, f.at)
		}
	}
	return e, faults
}

// groups divides a block into the entry's own fields and its cards'. A line
// indented further than its card's belongs to the card.
func (b *Book) groups(block block, faults *complaints) (entry *group, cards []*group) {
	entry = &group{text: b.text, faults: faults}
	entry.head, _ = b.fieldOf(block.first)
	current, inset := entry, 0 // who gets the lines, and its own line's indent
	for i := block.first + 1; i < block.last; i++ {
		f, ok := b.fieldOf(i)
		switch {
		case blank(b.lines[i]):
			current.lines = append(current.lines, i)
			continue
		case current != entry && indentOf(b.lines[i]) > inset:
		case ok && f.key == keyCard:
			current, inset = &group{text: b.text, head: f, faults: faults}, indentOf(b.lines[i])
			cards = append(cards, current)
			continue
		default:
			current = entry
		}
		current.lines = append(current.lines, i)
		if ok {
			current.fields = append(current.fields, f)
			continue
		}
		faults.add(joinery.Fault{Place: b.place(i, len(blanks(b.lines[i]))),
			Problem: "this line is no field", Remedy: "write KEY: VALUE, or # before a comment"})
	}
	return entry, cards
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
	bit.Kind, _ = joinery.ParseBitKind(g.oneOf(keyKind, joinery.Straight.String(), joinery.UpCut.String(), joinery.DownCut.String()))
	switch g.oneOf(keyPlunges, "", answers[joinery.Yes], answers[joinery.No]) {
	case answers[joinery.Yes]:
		bit.Plunges = joinery.Yes
	case answers[joinery.No]:
		bit.Plunges = joinery.No
	}
	return bit
}

var position = pattern.New(`^(\d{1,3}) of (\d{1,3})$`)

// position reads which of a cut's runs a card is.
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
