package book

import (
	"fmt"
	"strings"

	"fencecard/joinery/plantext"
)

// Put returns the book with an entry added at its end. Where the book has an
// entry of that name, it is a fault, unless replace is set: then the fields
// this package knows are written anew in their places, and comments, fields it
// does not know, and notes and corrections that the new entry does not speak
// of stay.
func (b *Book) Put(e *Entry, replace bool) (*Book, error) {
	at := b.blockNamed(e.Name)
	if at >= 0 && !replace {
		return nil, plantext.Faults{{Place: b.place(int(b.blocks[at].first), 0),
			Problem: fmt.Sprintf("the book already has a setup %q", plantext.Brief(b.nameOf(b.blocks[at]), mostQuoted)),
			Remedy:  "choose another name, or say --force to keep the new setup in its place"}}
	}
	if at >= 0 {
		if _, err := b.Named(e.Name); err != nil {
			return nil, err
		}
		block := b.blocks[at]
		return b.reread(b.changed(int(block.first), int(block.last), b.merged(block, e)), e)
	}
	if len(b.blocks) >= mostEntries {
		return nil, plantext.Faults{{Place: plantext.Place{File: b.name}, Problem: fmt.Sprintf("the book is full: it has %d setups", len(b.blocks)), Remedy: anotherBook}}
	}
	lines, n := e.lines(), b.count()
	if n > 0 && strings.TrimSpace(b.line(n-1)) != "" {
		lines = append([]string{""}, lines...)
	}
	return b.reread(b.changed(n, n, lines), e)
}

// reread reads the changed text and makes sure that it gives the entry back: a
// book that could not be read again must never be written.
func (b *Book) reread(data []byte, e *Entry) (*Book, error) {
	changed, err := Read(b.name, data)
	if err != nil {
		return nil, err
	}
	back, err := changed.Named(e.Name)
	if err == nil && back.Code == e.Code {
		return changed, nil
	}
	return nil, plantext.Faults{{Place: plantext.Place{File: b.name},
		Problem: fmt.Sprintf("setup %q cannot be written so that it is read back; the book was left as it is", e.Name),
		Remedy:  "try another name; if that does not help, this is a fault of fencecard"}}
}

// Forget returns the book without the entry of that name or code, its own
// lines and the comments indented below it gone, all other lines as they were.
// It forgets a damaged entry too.
func (b *Book) Forget(word string) (*Book, error) {
	at := b.blockNamed(word)
	if at < 0 {
		e, err := b.NamedOrCoded(word)
		if err != nil {
			return nil, err
		}
		at = b.blockNamed(e.Name)
	}
	first, last := int(b.blocks[at].first), int(b.blocks[at].last)
	// One of the blank lines around it goes too, lest they add up.
	empty := func(line int) bool { return strings.TrimSpace(b.line(line)) == "" }
	switch {
	case last < b.count() && empty(last):
		last++
	case last == b.count() && first > 0 && empty(first-1):
		first--
	}
	return Read(b.name, b.changed(first, last, nil))
}
