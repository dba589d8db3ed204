package book

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
)

// group is the fields of an entry, or of one of its runs.
type group struct {
	text   *text
	head   field // the setup or run line
	lines  []int // the others, by index: fields, comments and what cannot be read
	fields []field
	unit   measure.Unit
	read   memory
	faults *complaints
}

// memory keeps the lengths that a book's lines were read as: the same few stand
// in it again and again, and reading one is most of the work.
type memory map[spelling]measure.Length

// mostRemembered is more than the lengths of any workshop's book.
const mostRemembered = 10_000

type spelling struct {
	text string
	unit measure.Unit
}

// mostQuoted is how much of a name or a value a message quotes, in characters.
const mostQuoted = 60

// fault adds a fault at a field, with the value pointed at.
func (g *group) fault(f field, remedy, problem string, args ...any) {
	for i, arg := range args {
		if word, ok := arg.(string); ok {
			args[i] = plantext.Brief(word, mostQuoted)
		}
	}
	g.faults.add(plantext.Fault{Place: g.text.place(f.line, f.at), Problem: fmt.Sprintf(problem, args...), Remedy: remedy})
}

// all returns every field with that key.
func (g *group) all(key string) []field {
	var found []field
	for _, f := range g.fields {
		if f.key == key {
			found = append(found, f)
		}
	}
	return found
}

// one returns the field with that key, its comment cut off, and faults a
// second one.
func (g *group) one(key string) (field, bool) {
	found := g.all(key)
	if len(found) == 0 {
		return field{}, false
	}
	if len(found) > 1 {
		g.fault(found[1], "keep the correct line", "%q stands here twice", key)
	}
	f := found[0]
	if !free(key) {
		f.value, _ = withoutComment(f.value)
	}
	return f, true
}

// need is one, and faults where the field is missing.
func (g *group) need(key, example string) (field, bool) {
	f, ok := g.one(key)
	if !ok {
		g.fault(g.head, "add a line below it, such as "+key+": "+example, "%s %q has no %q", g.head.key, g.head.value, key)
	}
	return f, ok
}

// words returns a field of free text, "" where there is none.
func (g *group) words(key string) string {
	f, _ := g.one(key)
	return f.value
}

// notes returns every line of note.
func (g *group) notes() []string {
	var notes []string
	for _, f := range g.all(keyNote) {
		if f.value != "" {
			notes = append(notes, f.value)
		}
	}
	return notes
}

// needLength returns the length of a field that must be there, and faults one
// below least.
func (g *group) needLength(key, example string, least measure.Length) measure.Length {
	f, ok := g.need(key, example)
	if !ok {
		return 0
	}
	return g.bounded(f, least)
}

// length returns a length that may be left out, 0 then.
func (g *group) length(key string) measure.Length {
	f, ok := g.one(key)
	if !ok {
		return 0
	}
	return g.bounded(f, 1)
}

// stood returns a correction, nil where there is none.
func (g *group) stood(key string) *measure.Length {
	f, ok := g.one(key)
	if !ok {
		return nil
	}
	l, ok := g.parse(f, f.value)
	if !ok {
		return nil
	}
	return &l
}

// bounded reads a field's length and faults one below least.
func (g *group) bounded(f field, least measure.Length) measure.Length {
	l, ok := g.parse(f, f.value)
	if ok && l < least {
		g.fault(f, "write a length above 0", "%s is %s", f.key, f.value)
	}
	return l
}

// parse reads a length and faults what is none.
func (g *group) parse(f field, value string) (measure.Length, bool) {
	as := spelling{value, g.unit}
	if l, ok := g.read[as]; ok {
		return l, true
	}
	l, err := measure.ParseSpelled(value, g.unit)
	var bad *measure.LengthError
	if errors.As(err, &bad) {
		g.fault(f, bad.Remedy, "%s: %q %s", f.key, bad.Text, bad.Problem)
		return 0, false
	}
	if len(g.read) < mostRemembered {
		g.read[as] = l
	}
	return l, true
}

// mostHeights bounds a ladder: no bit climbs in so many.
const mostHeights = 5000

// ladder reads heights that climb.
func (g *group) ladder() []measure.Length {
	f, ok := g.one(keyHeights)
	if !ok || f.value == "" {
		return nil
	}
	if n := strings.Count(f.value, ",") + 1; n > mostHeights {
		g.fault(f, "take away what is too much", "there are %d heights, and a setup has at most %d", n, mostHeights)
		return nil
	}
	var heights []measure.Length
	last := measure.Length(0)
	for word := range strings.SplitSeq(f.value, ",") {
		l, ok := g.parse(f, strings.TrimSpace(word))
		if !ok {
			return nil
		}
		if l <= last {
			g.fault(f, "write them from the lowest up, such as 1/4 in, 1/2 in", "the heights do not climb")
			return nil
		}
		heights, last = append(heights, l), l
	}
	return heights
}

// side reads a side that must be there.
func (g *group) side(key string) joinery.Side {
	f, ok := g.need(key, "front")
	if !ok {
		return joinery.NoSide
	}
	return g.sideOf(f, f.value)
}

func (g *group) sideOf(f field, word string) joinery.Side {
	side, ok := joinery.ParseSide(word)
	if !ok {
		g.fault(f, "write left, right, front, back, top or bottom", "%s: %q is no side", f.key, word)
	}
	return side
}

// oneOf reads a word out of a few; the first stands for a field left out.
func (g *group) oneOf(key string, words ...string) string {
	f, ok := g.one(key)
	if !ok {
		return words[0]
	}
	if !slices.Contains(words, f.value) {
		g.fault(f, "write "+strings.Trim(strings.Join(words, " or "), " "), "%s: %q is not known here", key, f.value)
		return words[0]
	}
	return f.value
}

// count reads a number from 1 up; 1 stands for a field left out.
func (g *group) count(key string) int {
	f, ok := g.one(key)
	if !ok {
		return 1
	}
	n, err := strconv.Atoi(f.value)
	if err != nil || n < 1 || n > mostCount {
		g.fault(f, "write a whole number, such as 4", "%s: %q is no number to count by", key, f.value)
		return 1
	}
	return n
}

// mostCount bounds the pieces of one kind.
const mostCount = 1_000_000
