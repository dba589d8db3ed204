package book

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
)

// Put returns the book with an entry added at its end. Where the book has an
// entry of that name, it is a fault, unless replace is set: then the fields
// this package knows are written anew in their places, and comments, fields it
// does not know, and notes and corrections that the new entry does not speak
// of stay.
func (b *Book) Put(e *Entry, replace bool) (*Book, error) {
	at := b.blockNamed(e.Name)
	if at >= 0 && !replace {
		return nil, joinery.Faults{{Place: b.place(b.blocks[at].first, 0),
			Problem: fmt.Sprintf("the book already has a setup %q", b.blocks[at].name),
			Remedy:  "choose another name, or say --force to keep the new setup in its place"}}
	}
	t := b.text
	if at >= 0 {
		if _, err := b.Find(e.Name); err != nil {
			return nil, err
		}
		block := b.blocks[at]
		t.lines = slices.Concat(t.lines[:block.first], b.merged(block, e), t.lines[block.last:])
	} else {
		t.lines = slices.Clone(t.lines)
		if n := len(t.lines); n > 0 && strings.TrimSpace(t.lines[n-1]) != "" {
			t.lines = append(t.lines, "")
		}
		t.lines = append(t.lines, e.lines()...)
	}
	return reread(t, e)
}

// reread reads the changed text and makes sure that it gives the entry back: a
// book that could not be read again must never be written.
func reread(t text, e *Entry) (*Book, error) {
	changed, err := Read(t.name, t.withHeader().bytes())
	if err != nil {
		return nil, err
	}
	back, err := changed.Find(e.Name)
	if err == nil && back.Code == e.Code {
		return changed, nil
	}
	return nil, joinery.Faults{{Place: joinery.Place{File: t.name},
		Problem: fmt.Sprintf("setup %q cannot be written so that it is read back; the book was left as it is", e.Name),
		Remedy:  "try another name; if that does not help, this is a fault of fencecard"}}
}

// Forget returns the book without the entry of that name or code, its own
// lines and the comments indented below it gone, all other lines as they were.
// It forgets a damaged entry too.
func (b *Book) Forget(word string) (*Book, error) {
	at := b.blockNamed(word)
	if at < 0 {
		e, err := b.Find(word)
		if err != nil {
			return nil, err
		}
		at = b.blockNamed(e.Name)
	}
	first, last, t := b.blocks[at].first, b.blocks[at].last, b.text
	// One of the blank lines around it goes too, lest they add up.
	empty := func(line int) bool { return strings.TrimSpace(t.lines[line]) == "" }
	switch {
	case last < len(t.lines) && empty(last):
		last++
	case last == len(t.lines) && first > 0 && empty(first-1):
		first--
	}
	t.lines = slices.Concat(t.lines[:first], t.lines[last:])
	return Read(t.name, t.withHeader().bytes())
}

// withHeader writes the format at the top of a book that does not name it.
func (t text) withHeader() text {
	for i, line := range t.lines {
		if strings.HasPrefix(line, formatLine) {
			t.lines = slices.Clone(t.lines)
			t.lines[i] = header
			return t
		}
		if !blank(line) {
			break
		}
	}
	t.lines = append([]string{header, ""}, t.lines...)
	return t
}
