package book

import (
	"fmt"
	"strings"
	"sync"

	"fencecard/joinery/plantext"
)

// Book is a setup book: its text, and the entries found in it. They are read
// when somebody first asks for one, so that adding to a long book costs little.
type Book struct {
	text
	blocks  []block
	read    sync.Once
	entries []*Entry
	damage  plantext.Faults
}

// mostBytes bounds a book: some 10,000 setups.
const mostBytes = 16 << 20

// Read reads a setup book; the name is for messages. An error, always
// [plantext.Faults], means that the book cannot be used at all: it is written
// in a newer format, is no text, or is a text of another kind. What is wrong with single entries is told
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
	if err := b.checkBook(b.blocks); err != nil {
		return nil, err
	}
	b.damage = strays.listed
	return b, nil
}

// Entries returns the sound entries as they stand in the book.
func (b *Book) Entries() []*Entry {
	b.read.Do(b.readEntries)
	return b.entries
}

// Damage returns what is wrong with the other entries and with lines that
// belong to none, by their lines.
func (b *Book) Damage() plantext.Faults {
	b.read.Do(b.readEntries)
	return b.damage
}

// Bytes returns the book's text.
func (b *Book) Bytes() []byte { return []byte(b.mark + b.source) }

// NamedOrCoded returns the sound entry that a maker means by a name or a code.
// Capitals and the hyphen of a code do not count. The error, always
// [plantext.Faults], says what there is instead.
func (b *Book) NamedOrCoded(word string) (*Entry, error) {
	e, err := b.Named(word)
	if err == nil {
		return e, nil
	}
	code := plainCode(word)
	for _, e := range b.Entries() {
		if plainCode(e.Code) == code {
			return e, nil
		}
	}
	return nil, err
}

// Named returns the sound entry of a name, and takes no code for one: a new setup may
// be called like the code of another. Its errors are those of [Book.NamedOrCoded].
func (b *Book) Named(name string) (*Entry, error) {
	for _, e := range b.Entries() {
		if sameName(e.Name, name) {
			return e, nil
		}
	}
	if i := b.blockNamed(name); i >= 0 {
		return nil, plantext.Faults{{Place: b.place(int(b.blocks[i].first), 0),
			Problem: fmt.Sprintf("the entry %q is damaged", name), Remedy: "mend it as the messages about it say"}}
	}
	return nil, b.unknown(name)
}

// unknown is the fault of a name that is not in the book.
func (b *Book) unknown(word string) error {
	fault := plantext.Fault{Place: plantext.Place{File: b.name}, Problem: fmt.Sprintf("the book has no setup %q", word),
		Remedy: "fencecard book list shows what it has"}
	var names []string
	for _, block := range b.blocks {
		names = append(names, b.nameOf(block))
	}
	if near := plantext.Nearest(word, names); near != "" {
		fault.Remedy = fmt.Sprintf("did you mean %q?", near)
	}
	return plantext.Faults{fault}
}

// nameOf returns the name of an entry.
func (b *Book) nameOf(block block) string {
	f, _ := b.fieldOf(int(block.first))
	return f.value
}

// blockNamed returns the first entry of that name, sound or not, or -1.
func (b *Book) blockNamed(name string) int {
	for i, block := range b.blocks {
		if sameName(b.nameOf(block), name) {
			return i
		}
	}
	return -1
}

func sameName(a, b string) bool { return strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b)) }
