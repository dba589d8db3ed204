package paper

import (
	"fmt"
	"strings"
	"sync"
	"unicode/utf8"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"
)

// Face is one of the two faces of the cards.
type Face uint8

// The faces.
const (
	Regular Face = iota
	Bold
)

// The Go fonts' measures, in shares of the em (2,048 units): a capital, the
// tallest accented capital or bracket, and the deepest descender.
const (
	Capital   = 1480.0 / 2048
	Ascender  = 1935.0 / 2048
	Descender = 432.0 / 2048
)

// Em returns the size of the face that gives capitals of a height.
func Em(height Paper) Paper { return height / Capital }

// faceFiles are the fonts as the library takes them.
var faceFiles = [...][]byte{Regular: goregular.TTF, Bold: gobold.TTF}

// glyphs tells how wide each character of a face is, in shares of the em; what
// the face lacks has no width. The characters of everyday stand in a table.
type glyphs struct {
	common [0x500]Paper // up to the Cyrillic letters
	others map[rune]Paper
}

// of returns the width of a character and whether the face has it.
func (g *glyphs) of(r rune) (Paper, bool) {
	if r >= 0 && int(r) < len(g.common) {
		return g.common[r], g.common[r] > 0
	}
	w, ok := g.others[r]
	return w, ok
}

// faces reads the two fonts once; what it returns never changes.
var faces = sync.OnceValue(func() [2]*glyphs {
	var all [2]*glyphs
	for f := range all {
		all[f] = glyphsOf(faceFiles[f])
	}
	return all
})

// lastRune is the last character looked for in the fonts; beyond the basic
// plane they have none, and the PDF writer takes none.
const lastRune = 0xFFFF

// glyphsOf reads the widths of a font that is part of the program, so a fault
// in it is a fault of the program.
func glyphsOf(file []byte) *glyphs {
	parsed, err := sfnt.Parse(file)
	if err != nil {
		panic("output: embedded font: " + err.Error())
	}
	const unit = 2048
	var buf sfnt.Buffer
	all := &glyphs{others: map[rune]Paper{}}
	for r := rune(' '); r <= lastRune; r++ {
		index, err := parsed.GlyphIndex(&buf, r)
		if err != nil || index == 0 {
			continue
		}
		advance, err := parsed.GlyphAdvance(&buf, index, fixed.I(unit), font.HintingNone)
		if w := Paper(advance.Round()) / unit; err != nil || w <= 0 {
			continue
		} else if int(r) < len(all.common) {
			all.common[r] = w
		} else {
			all.others[r] = w
		}
	}
	return all
}

// Width returns how wide a line of clean text is.
func (l Letters) Width(text string) Paper {
	widths := faces()[l.Face]
	var w Paper
	for _, r := range text {
		one, _ := widths.of(r)
		w += one
	}
	return w * Em(l.Height)
}

// Printable makes any string fit to print. A character the fonts lack becomes
// its plain letter where it is a letter with marks ("ṣ" becomes "s"), else its
// code in brackets ("[U+4E16]"), so that two names never look the same by
// losing what they differ in; line ends and tabs become spaces.
func Printable(text string) string {
	has := faces()[Regular]
	clean := true
	for _, r := range text {
		if _, ok := has.of(r); !ok || r == utf8.RuneError {
			clean = false
			break
		}
	}
	if clean {
		return text
	}
	var b strings.Builder
	for _, r := range norm.NFC.String(strings.ToValidUTF8(text, "\uFFFD")) {
		b.WriteString(substitute(r, has))
	}
	return b.String()
}

func substitute(r rune, has *glyphs) string {
	if _, ok := has.of(r); ok && r != utf8.RuneError {
		return string(r)
	}
	switch r {
	case '\t', '\n', '\r', '\u2028', '\u2029':
		return " "
	}
	if plain, _ := utf8.DecodeRuneInString(norm.NFD.String(string(r))); plain != r {
		if _, ok := has.of(plain); ok {
			return string(plain)
		}
	}
	return fmt.Sprintf("[U+%04X]", r)
}
