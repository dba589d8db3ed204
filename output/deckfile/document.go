package deckfile

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"fencecard/joinery/plantext"
)

// mostFaults is after how many faults a document is given up.
const mostFaults = 50

// deepest is how far lists and objects lie inside one another at most; those of
// a deck do to 9.
const deepest = 50

// anew is what helps where a deck was broken by hand.
const anew = "write the deck anew with fencecard cards --format json"

// document walks a JSON text token by token. It keeps no tree, so that a
// hostile text costs no more than its own size, and it goes on after a wrong
// value, so that all faults are told at once.
type document struct {
	file   string
	text   string
	tokens *json.Decoder
	faults plantext.Faults
	ended  bool // a syntax error or too many faults: nothing more is read
	depth  int  // of lists and objects that are open
	cursor cursor
}

func newDocument(file string, data []byte) *document {
	text := strings.TrimPrefix(string(data), "\ufeff")
	d := &document{file: file, text: text, cursor: cursor{line: 1}}
	d.tokens = json.NewDecoder(strings.NewReader(d.text))
	d.tokens.UseNumber()
	d.checkText()
	return d
}

// cursor counts lines and characters up to an offset, going forward only.
type cursor struct{ offset, line, lineStart, lineEnd, column int }

// place is a place in the text. It costs what lies between it and the one
// before, so that a deck of one long line takes no longer than another.
func (d *document) place(offset int) plantext.Place {
	c := d.cursor
	if offset < c.offset {
		c = cursor{line: 1}
	}
	for i := c.offset; i < offset; i++ {
		switch {
		case d.text[i] == '\n':
			c.line, c.lineStart, c.column = c.line+1, i+1, 0
		case utf8.RuneStart(d.text[i]):
			c.column++
		}
	}
	c.offset = offset
	if c.lineEnd < offset || c.lineEnd == 0 {
		c.lineEnd = len(d.text)
		if end := strings.IndexByte(d.text[offset:], '\n'); end >= 0 {
			c.lineEnd = offset + end
		}
	}
	d.cursor = c
	line := d.text[c.lineStart:c.lineEnd]
	return plantext.Place{File: d.file, Line: c.line, Column: c.column + 1, Source: strings.TrimSuffix(line, "\r")}
}

func (d *document) fault(offset int, problem, remedy string) {
	if d.ended {
		return
	}
	d.faults.Add(plantext.Fault{Place: d.place(offset), Problem: problem, Remedy: remedy})
	if len(d.faults) == mostFaults {
		d.ended = true
		d.faults.Add(plantext.Fault{Place: d.place(offset), Problem: "from here on the deck was not read: too much of it is wrong", Remedy: anew})
	}
}

// refuse notes a fault after which nothing can be read.
func (d *document) refuse(offset int, problem, remedy string) {
	d.fault(offset, problem, remedy)
	d.ended = true
}

// here is where the next token begins.
func (d *document) here() int {
	i := int(d.tokens.InputOffset())
	for i < len(d.text) && strings.IndexByte(" \t\r\n,:", d.text[i]) >= 0 {
		i++
	}
	return i
}

// next returns the next token, or nil once the document has ended.
func (d *document) next() json.Token {
	if d.ended {
		return nil
	}
	at := d.here()
	token, err := d.tokens.Token()
	switch {
	case err == nil && d.tooDeep(token):
		d.refuse(at, "lists and objects lie inside one another too deeply", "those of a deck do to 9; "+anew)
	case err == nil:
		return token
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		d.refuse(len(d.text), "the deck breaks off here", anew)
	default:
		d.noJSON(err)
	}
	return nil
}

// tooDeep counts what a token opens and closes.
func (d *document) tooDeep(token json.Token) bool {
	switch token {
	case json.Delim('{'), json.Delim('['):
		d.depth++
	case json.Delim('}'), json.Delim(']'):
		d.depth--
	}
	return d.depth > deepest
}

// opened skips nothing and returns true where the token opens the kind of value
// wanted; any other value is faulted and passed over.
func (d *document) opened(want json.Delim, what string) bool {
	at := d.here()
	token := d.next()
	if token == want || d.ended {
		return token == want
	}
	remedy := "write it in braces, as in {}; or " + anew
	if want == '[' {
		remedy = "write it in brackets, as in []; or " + anew
	}
	d.pass(token)
	d.fault(at, fmt.Sprintf("%s stands where %s belongs", tokenWords(token), what), remedy)
	return false
}

// pass reads on to the end of the value that a token begins.
func (d *document) pass(token json.Token) {
	depth := 0
	for {
		switch token {
		case json.Delim('{'), json.Delim('['):
			depth++
		case json.Delim('}'), json.Delim(']'):
			depth--
		}
		if depth <= 0 || d.ended {
			return
		}
		token = d.next()
	}
}

func tokenWords(token json.Token) string {
	switch t := token.(type) {
	case nil:
		return "null"
	case json.Delim:
		if t == '{' {
			return "an object"
		}
		return "a list"
	case string:
		return "a text"
	case bool:
		return "true or false"
	}
	return "a number"
}

// field reads the value of one key.
type field struct {
	read     func()
	optional bool
}

// object reads the fields of an object. Keys it does not know are passed over;
// a key given twice or a missing one is a fault.
func (d *document) object(what string, fields map[string]field) {
	start := d.here()
	if !d.opened('{', what) {
		return
	}
	seen := map[string]bool{}
	for !d.ended && d.tokens.More() {
		at := d.here()
		key, _ := d.next().(string)
		f, known := fields[key]
		switch {
		case d.ended:
			return
		case !known:
			d.pass(d.next())
		case seen[key]:
			d.fault(at, fmt.Sprintf("%q is given twice in %s", key, what), "take one of the two away")
			d.pass(d.next())
		default:
			seen[key] = true
			f.read()
		}
	}
	d.next() // the closing brace, or the error that stands in its place
	for _, key := range sortedKeys(fields) {
		if !seen[key] && !fields[key].optional {
			d.fault(start, fmt.Sprintf("%s has no %q", what, key), "add it, or "+anew)
		}
	}
}

// list reads the values of a list of no more than most, where most is not 0.
func (d *document) list(what string, most int, read func()) {
	if !d.opened('[', what) {
		return
	}
	for n := 1; !d.ended && d.tokens.More(); n++ {
		if at := d.here(); n == most+1 && most > 0 {
			d.fault(at, fmt.Sprintf("%s has more than %d", what, most), "take what is too much away, or "+anew)
			for !d.ended && d.tokens.More() {
				d.pass(d.next())
			}
			break
		}
		read()
	}
	d.next()
}

// entries returns the text of a list, which is read no further than its brackets.
func (d *document) entries(what string) string {
	at := d.here()
	if !d.opened('[', what) {
		return ""
	}
	d.pass(json.Delim('['))
	if d.ended {
		return ""
	}
	return d.text[at:d.tokens.InputOffset()]
}

// null reports whether the next value is null, and reads it if so.
func (d *document) null() bool {
	if strings.HasPrefix(d.text[d.here():], "null") {
		return d.next() == nil && !d.ended
	}
	return false
}

// word reads a text; it is "" after a fault.
func (d *document) word(what string) string {
	at := d.here()
	token := d.next()
	text, ok := token.(string)
	if !ok && !d.ended {
		d.pass(token)
		d.fault(at, fmt.Sprintf("%s stands where %s belongs", tokenWords(token), what), "write it in quotes")
	}
	return text
}

// number reads a number between limits that hold for everything in a deck.
func (d *document) number(what string) (value float64, at int) {
	at = d.here()
	token := d.next()
	number, ok := token.(json.Number)
	if !ok && !d.ended {
		d.pass(token)
		d.fault(at, fmt.Sprintf("%s stands where %s belongs", tokenWords(token), what), "write a number without quotes")
		return 0, at
	}
	value, err := strconv.ParseFloat(number.String(), 64)
	if ok && (err != nil || math.Abs(value) > 1e9) {
		d.fault(at, fmt.Sprintf("%s is no sensible %s", shorten(number.String()), what), "check the number, or "+anew)
		return 0, at
	}
	return value, at
}

// whole reads a whole number.
func (d *document) whole(what string) int {
	value, at := d.number(what)
	if value != math.Trunc(value) {
		d.fault(at, fmt.Sprintf("%v is not whole", value), "write "+what+" as a whole number")
	}
	return int(value)
}

// truth reads true or false.
func (d *document) truth(what string) bool {
	at := d.here()
	token := d.next()
	value, ok := token.(bool)
	if !ok && !d.ended {
		d.pass(token)
		d.fault(at, fmt.Sprintf("%s stands where %s belongs", tokenWords(token), what), "write true or false")
	}
	return value
}

// shorten keeps a hostile text from filling the screen.
func shorten(text string) string { return plantext.Brief(text, 24) }
