package piecelist_test

import (
	"strings"
	"testing"

	"fencecard/joinery/piecelist"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

const germanList = "Teil;Anzahl;Länge (mm);Breite (mm);Dicke (mm);Liegt\nTür;1;720;396;22;Länge hoch, Dicke vorne-hinten\n"

// One list, however it is encoded, makes one plan.
func TestEncodings(t *testing.T) {
	want := planOf(t, []byte(germanList))
	assert.Contains(t, want, "piece: Tür")
	for name, e := range map[string]encoding.Encoding{
		"Windows-1252":       charmap.Windows1252,
		"UTF-8 marked":       unicode.UTF8BOM,
		"UTF-16 little":      unicode.UTF16(unicode.LittleEndian, unicode.UseBOM),
		"UTF-16 big":         unicode.UTF16(unicode.BigEndian, unicode.UseBOM),
		"UTF-16 little bare": unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM),
		"UTF-16 big bare":    unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM),
	} {
		for _, end := range []string{"\n", "\r\n", "\r"} {
			data, err := e.NewEncoder().Bytes([]byte(strings.ReplaceAll(germanList, "\n", end)))
			require.NoError(t, err)
			assert.Equal(t, want, planOf(t, data), name)
		}
	}
	for _, sep := range []string{"\t", ","} {
		text := strings.ReplaceAll(strings.ReplaceAll(germanList, ", ", " / "), ";", sep)
		assert.Equal(t, want, planOf(t, []byte(strings.ReplaceAll(text, " / ", "; "))), "%q", sep)
	}
}

func planOf(t *testing.T, data []byte) string {
	t.Helper()
	list, questions, err := piecelist.Read("list.csv", data, piecelist.Options{})
	require.NoError(t, err)
	require.Empty(t, questions)
	text := string(list.Plan())
	return text[strings.Index(text, "title:"):strings.Index(text, "  # row")] + text[strings.Index(text, "  - piece"):]
}

// What is no list as text is refused in one line that says what to do.
func TestFilesThatAreNoList(t *testing.T) {
	for text, says := range map[string]string{
		"PK\x03\x04....":                    "this is a spreadsheet file, not a list as text",
		"\xd0\xcf\x11\xe0\xa1\xb1":          "a spreadsheet file of the older kind",
		"%PDF-1.7":                          "this is a PDF",
		"":                                  "the list is empty",
		" \n;;;\n":                          "no row of this list names its columns",
		"Part,Qty,Length\nleg,\x01,2":       "there is a character here that no text has",
		strings.Repeat("x", 9<<20):          "larger than 8 MB",
		strings.Repeat(",", 500_000):        "more than 300000 cells",
		"a,b\n" + strings.Repeat("c,", 200): "more than 100 cells",
	} {
		_, _, err := piecelist.Read("list.csv", []byte(text), piecelist.Options{})
		if assert.Error(t, err, says) {
			assert.Contains(t, err.Error(), says)
		}
	}
}
