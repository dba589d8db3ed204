package planfile_test

import (
	"cmp"
	"fmt"
	"runtime"
	"strings"
	"testing"
	"unicode/utf16"

	"fencecard/joinery/planfile"
	"fencecard/joinery/plantext"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const megabyte = 1 << 20

// fill repeats a text up to a size.
func fill(text string, size int) string { return strings.Repeat(text, size/len(text)) }

// numbered writes a line for every number from 0 until the text has a size. A
// line with a second verb gets the next number there.
func numbered(head, line string, size int) string {
	numbers := []any{0, 0}[:min(2, strings.Count(line, "%"))]
	if strings.Contains(line, "[1]") {
		numbers = []any{0, 0}
	}
	var b strings.Builder
	b.WriteString(head)
	for i := 0; b.Len() < size; i++ {
		for j := range numbers {
			numbers[j] = i + j
		}
		fmt.Fprintf(&b, line, numbers...)
	}
	return b.String()
}

// staircase writes keys inside one another, a line each.
func staircase(size int) string {
	var b strings.Builder
	for i := 0; b.Len() < size; i++ {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

const (
	onePiece = "unit: in\npieces:\n  - piece: shelf\n    size: {left-right: 30, front-back: 9, top-bottom: 1}\n"
	oneCut   = "{dado: end, in: top, width: 1/4, setback: 1 from left, depth: 1/4}\n"
)

// wide spells a text as UTF-16, the low byte first where little is true.
func wide(text string, little bool) string {
	var b strings.Builder
	for _, unit := range utf16.Encode([]rune("\ufeff" + text)) {
		high, low := byte(unit>>8), byte(unit)
		if little {
			high, low = low, high
		}
		b.WriteByte(high)
		b.WriteByte(low)
	}
	return b.String()
}

// TestHostileDocuments reads documents of a megabyte and more that no maker
// writes. Each is refused with a place, and what is allocated on the way, freed
// or not, stays below a multiple of the document: 20, or more where hundreds of
// thousands of sound values are read before the fault. What is in memory at once
// is measured with the program itself, in cmd/fencecard.
func TestHostileDocuments(t *testing.T) {
	const (
		dado    = "      - {dado: c%d, in: top, width: 1/4, setback: 1 from left, depth: 1/4"
		tooMany = "the plan has more than 400000 words and values up to here"
		tooDeep = "lists and braces lie inside one another too deeply"
		few     = 3000 // bytes; so little is parsed at once
	)
	for name, doc := range map[string]struct {
		text   string
		says   string // part of the first line of the message
		within int    // times the document; 0 stands for 20
	}{
		"brackets":          {strings.Repeat("[", megabyte), "1:400000: " + tooMany, 0},
		"some brackets":     {strings.Repeat("[", few), "1:51: " + tooDeep, 200},
		"braces":            {fill("{a: ", megabyte), "1:799999: " + tooMany, 0},
		"some braces":       {fill("{a: ", few), "1:201: " + tooDeep, 200},
		"dashes":            {fill("- ", megabyte), "1:799999: " + tooMany, 0},
		"some dashes":       {fill("- ", few), "1:101: " + tooDeep, 200},
		"questions":         {fill("? ", megabyte), "1:101: " + tooDeep, 0},
		"steps inward":      {staircase(megabyte), "51:52: " + tooDeep, 0},
		"nested lists":      {onePiece + "    cuts: " + strings.Repeat("[", megabyte), "5:399994: " + tooMany, 0},
		"some nested lists": {onePiece + "    cuts: " + strings.Repeat("[", few), "5:61: " + tooDeep, 200},
		"colons":            {fill(": ", megabyte), "1:799999: " + tooMany, 0},
		"a million keys":    {numbered("", "k%d:\n", 8*megabyte-64), "200001:1: " + tooMany, 0},
		"fewer keys":        {numbered("", "k%d:\n", megabyte), "1:1: the plan has no key \"k0\"", 100},
		"keys and pieces":   {numbered(onePiece, "k%d:\n", megabyte), "5:1: the plan has no key \"k0\"", 100},
		"a million in one":  {"{" + fill("a: b, ", 8*megabyte-8) + "}", "1:1199997: " + tooMany, 0},
		"a longer file":     {fill("# \n", 9*megabyte), "plan.yaml: the plan is larger than 8 MB", 0},
		"a long line":       {"unit: in\ntitle: " + strings.Repeat("x", 8*megabyte-64), "1:1: the plan has no pieces", 0},
		"a long length":     {strings.Replace(onePiece, "30", strings.Repeat("3", megabyte), 1), "4:24: \"333333333333...\" is not a length", 0},
		"an open quote":     {"title: \"" + fill(`a\"`, megabyte), "1:8: a quotation mark begins here and none ends it", 0},
		"zero bytes":        {strings.Repeat("\x00", megabyte), "the plan is not a text file", 0},
		"tabs":              {fill("\tunit: in\n", megabyte), "1:1: this line begins with a tab, and so do others (104856 more)", 0},
		"UTF-16 LE":         {wide(fill("unit: in\n", megabyte), true), "plan.yaml: the plan is saved as UTF-16", 0},
		"UTF-16 BE":         {wide(fill("unit: in\n", megabyte), false), "plan.yaml: the plan is saved as UTF-16", 0},
		"Latin-1":           {fill("title: Tischb\xf6cke\n", megabyte), "1:14: this letter is not UTF-8 (ö in Latin-1)", 0},
		"documents":         {fill("---\n", megabyte), "200001:1: " + tooMany, 0},
		"some documents":    {fill("---\n", few), "2:1: a second plan begins in this file", 200},
		"line separators":   {fill("\u2028", megabyte), "1:1: there is an invisible character here (code 2028)", 0},
		"empty lines":       {strings.Repeat("\n", megabyte), "plan.yaml: the plan is empty", 0},
		"remarks":           {fill("#\n", megabyte), "plan.yaml: the plan is empty", 0},
		"aliases":           {numbered("a0: &a0 [x, x, x]\n", "a%[2]d: &a%[2]d [*a%[1]d, *a%[1]d, *a%[1]d, *a%[1]d]\n", megabyte), "1:5: &a0 gives the value a name", 60},
		"some aliases":      {numbered("a0: &a0 [x, x, x]\n", "a%[2]d: &a%[2]d [*a%[1]d, *a%[1]d, *a%[1]d, *a%[1]d]\n", few), "1:5: &a0 gives the value a name", 600},
		"tags":              {fill("- !!int b\n", megabyte), "1:3: !!int gives a value a type", 60},
		"tags for pieces":   {"unit: in\npieces:\n" + fill("- !!int b\n", megabyte), "3:3: !!int gives a value a type", 60},
		"texts for pieces":  {"unit: in\npieces: [" + fill("x, ", megabyte) + "]", "2:10: a piece has a name and a size", 300},
		"one key again":     {onePiece + "    cuts: [{" + fill("note: y, ", megabyte) + "}]", "5:13: a cut begins with its kind and name, not with note", 600},
		"a key in a piece":  {onePiece + fill("    count: 1\n", megabyte), "6:5: \"shelf\" has count twice", 60},
		"after no cuts":     {onePiece + "    cuts:\n" + strings.TrimSuffix(fmt.Sprintf(dado, 0), "}") + ", after: [" + numbered("", "n%d, ", megabyte) + "]}", "6:83: this piece has no cut named \"n0\"", 400},
		"a chain of cuts":   {numbered(onePiece+"    cuts:\n", dado+", after: c%d}\n", megabyte), "this piece has no cut named", 150},
		"many circles":      {numbered(onePiece+"    cuts:\n", dado+", after: [c0, c%d]}\n", megabyte), "6:83: \"c0\" cannot come after itself", 150},
		"many mirrors":      {numbered(numbered(onePiece+"    cuts:\n", dado+"}\n", megabyte/4), "  - {piece: m%d, mirror: {of: shelf, across: left-right}}\n", megabyte), "3428:17: with this mirror there are more than 15000 mirrored pieces and cuts", 150},
		"a broken end":      {numbered(onePiece+"    cuts:\n", dado+"}\n", megabyte) + "      - {dado: last", "13591:9: a brace begins here and is not closed", 150},
	} {
		t.Run(name, func(t *testing.T) {
			data := []byte(doc.text)
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			_, err := planfile.Read("plan.yaml", data, nil)
			message := ""
			if err != nil {
				message = err.Error()
			}
			runtime.ReadMemStats(&after)
			var faults plantext.Faults
			require.ErrorAs(t, err, &faults)
			first, _, _ := strings.Cut(message, "\n")
			assert.Contains(t, first, doc.says)
			assert.LessOrEqual(t, len(faults), 101)
			assert.Less(t, len(message), 64<<10, "the message")
			used := after.TotalAlloc - before.TotalAlloc
			t.Logf("%.1f MB, %.1f times", float64(len(data))/megabyte, float64(used)/float64(len(data)))
			if !raceDetector {
				assert.LessOrEqual(t, used, uint64(cmp.Or(doc.within, 20)*len(data)))
			}
		})
	}
}

// The same plan is read whatever the ends of its lines and the mark before it.
func TestLineEndsAndMark(t *testing.T) {
	text := onePiece + "    cuts:\n      - " + oneCut
	want, err := planfile.Read("plan.yaml", []byte(text), nil)
	require.NoError(t, err)
	for name, changed := range map[string]string{
		"CRLF":              strings.ReplaceAll(text, "\n", "\r\n"),
		"CR":                strings.ReplaceAll(text, "\n", "\r"),
		"byte order mark":   "\ufeff" + text,
		"both":              "\ufeff" + strings.ReplaceAll(text, "\n", "\r\n"),
		"no end of line":    strings.TrimSuffix(text, "\n"),
		"blanks after line": strings.ReplaceAll(text, "\n", "  \n"),
	} {
		got, err := planfile.Read("plan.yaml", []byte(changed), nil)
		require.NoError(t, err, name)
		assert.Equal(t, len(want.Pieces[0].Cuts), len(got.Pieces[0].Cuts), name)
		assert.Equal(t, want.Pieces[0].Cuts[0].Channels, got.Pieces[0].Cuts[0].Channels, name)
		assert.Equal(t, want.Pieces[0].Cuts[0].Place.Line, got.Pieces[0].Cuts[0].Place.Line, name)
	}
}
