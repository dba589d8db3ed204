package book

import (
	"bytes"
	"fmt"
	"strings"
	"sync"
	"unicode/utf8"

	"fencecard/joinery"
)

// Book is a setup book: its text, and the entries found in it. They are read
// when somebody first asks for one, so that adding to a long book costs little.
type Book struct {
	text
	blocks  []block
	read    sync.Once
	entries []*Entry
	damage  joinery.Faults
}

// mostBytes bounds a book: some 10,000 setups.
const mostBytes = 16 << 20

// Read reads a setup book; the name is for messages. An error, always
// [joinery.Faults], means that the book cannot be used at all: it is written
// in a newer format, or is no text. What is wrong with single entries is told
// by [Book.Damage], and the rest works. An empty book is a book.
func Read(name string, data []byte) (*Book, error) {
	if err := checkText(name, data); err != nil {
		return nil, err
	}
	b := &Book{text: split(name, string(data))}
	if err := b.checkFormat(); err != nil {
		return nil, err
	}
	var strays complaints
	b.blocks, strays = b.divide()
	b.damage = strays.listed
	return b, nil
}

// checkText refuses what is no text, before any of it is read.
func checkText(name string, data []byte) error {
	refuse := func(place joinery.Place, problem, remedy string) error {
		place.File = name
		return joinery.Faults{{Place: place, Problem: problem, Remedy: remedy}}
	}
	if len(data) > mostBytes {
		return refuse(joinery.Place{}, "the setup book is larger than 16 MB", "name another file with --book; this is hardly a setup book")
	}
	if at := bytes.IndexByte(data, 0); at >= 0 {
		return refuse(joinery.Place{Line: lineAt(data, at), Column: 1}, "there is a zero byte here, so this is no text",
			"save the file as UTF-8 text")
	}
	if !utf8.Valid(data) {
		at := 0
		for at < len(data) {
			r, n := utf8.DecodeRune(data[at:])
			if r == utf8.RuneError && n == 1 {
				break
			}
			at += n
		}
		return refuse(joinery.Place{Line: lineAt(data, at), Column: 1}, "this line is not UTF-8 text", "save the file as UTF-8")
	}
	return nil
}

func lineAt(data []byte, at int) int { return bytes.Count(data[:at], []byte{'\n'}) + 1 }

// Entries returns the sound entries as they stand in the book.
func (b *Book) Entries() []*Entry {
	b.read.Do(b.readEntries)
	return b.entries
}

// Damage returns what is wrong with the other entries and with lines that
// belong to none, by their lines.
func (b *Book) Damage() joinery.Faults {
	b.read.Do(b.readEntries)
	return b.damage
}

// Bytes returns the book's text.
func (b *Book) Bytes() []byte { return b.bytes() }

// Find returns the sound entry that a maker means by a name or a code.
// Capitals and the hyphen of a code do not count. The error, always
// [joinery.Faults], says what there is instead.
func (b *Book) Find(word string) (*Entry, error) {
	for _, e := range b.Entries() {
		if sameName(e.Name, word) {
			return e, nil
		}
	}
	for _, e := range b.Entries() {
		if plainCode(e.Code) == plainCode(word) {
			return e, nil
		}
	}
	if i := b.blockNamed(word); i >= 0 {
		return nil, joinery.Faults{{Place: b.place(b.blocks[i].first, 0),
			Problem: fmt.Sprintf("the entry %q is damaged", word), Remedy: "mend it as the messages about it say"}}
	}
	return nil, b.unknown(word)
}

// unknown is the fault of a name that is not in the book.
func (b *Book) unknown(word string) error {
	fault := joinery.Fault{Place: joinery.Place{File: b.name}, Problem: fmt.Sprintf("the book has no setup %q", word),
		Remedy: "fencecard book list shows what it has"}
	var names []string
	for _, block := range b.blocks {
		names = append(names, block.name)
	}
	if near := joinery.Nearest(word, names); near != "" {
		fault.Remedy = fmt.Sprintf("did you mean %q?", near)
	}
	return joinery.Faults{fault}
}

// blockNamed returns the first entry of that name, sound or not, or -1.
func (b *Book) blockNamed(name string) int {
	for i, block := range b.blocks {
		if sameName(block.name, name) {
			return i
		}
	}
	return -1
}

func sameName(a, b string) bool { return strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b)) }
