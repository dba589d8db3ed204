package sheets

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile"
	"fencecard/joinery/plantext"
	"fencecard/output/deckfile"
	"fencecard/output/internal/render"
	"fencecard/output/screen"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// hostileNames would break out of a document that does not escape them.
var hostileNames = []string{
	`</text><script>alert(1)</script>`,
	`<!ENTITY x SYSTEM "file:///etc/passwd">`,
	`&lt;&amp;&#0;&x;`,
	`]]><![CDATA[`,
	`" onload="alert(1)`,
	`' or 'x`,
	`(unbalanced ) Tj ET Q (`,
	`\) \( \\ \101 \n`,
	`) Tj ET endstream endobj 1 0 obj`,
	`<</S/JavaScript/JS(app.alert(1))>>`,
	`%PDF-1.7 %%EOF`,
	`{nb} {{.}} %s %d ${HOME}`,
	`../../etc/passwd`,
	`=cmd|' /C calc'!A0`,
}

// namedDeckOf makes a deck in which everything a maker names has the name.
func namedDeckOf(t testing.TB, name string) *deck.Deck {
	t.Helper()
	q := strconv.Quote(name)
	plan, err := planfile.Read("plan.yaml", fmt.Appendf(nil, `title: %[1]s
unit: in
shop:
  bits:
    - {bit: %[1]s, diameter: 1/4, cutting: 1, shank: 1/4, plunges: yes}
pieces:
  - piece: %[1]s
    size: {left-right: 24, front-back: 3/4, top-bottom: 3}
    cuts:
      - {groove: %[1]s, in: bottom, width: 1/4, setback: 1/4 from front, depth: 1/4, span: 1 to 23 from left, note: %[1]s}
`, q), nil)
	require.NoError(t, err)
	d, err := setup.Make(plan)
	require.NoError(t, err)
	return d
}

// streams are the packed parts of a PDF.
var streams = regexp.MustCompile(`(?s)stream\n.*?endstream`)

// lettersOnly takes out what wrapping a line may add.
func lettersOnly(text string) string {
	return strings.Map(func(r rune) rune {
		if r <= ' ' || r == '\u00a0' || r == '-' {
			return -1
		}
		return r
	}, text)
}

// Names come out of a PDF as they went in, read by a renderer that shares
// nothing with the writer, and the document holds nothing that acts.
func TestHostileNamesInPDF(t *testing.T) {
	for _, name := range hostileNames {
		d := namedDeckOf(t, name)
		var file bytes.Buffer
		require.NoError(t, PDF(&file, d, Pages{}))
		objects := streams.ReplaceAllString(file.String(), "")
		for _, act := range []string{"/JavaScript", "/JS", "/AA", "/URI", "/Launch", "/Filespec", "/Annots"} {
			assert.NotContains(t, objects, act, name)
		}
		doc := render.Open(t, file.Bytes())
		require.Positive(t, doc.Pages(), name)
		var text strings.Builder
		for page := range doc.Pages() {
			text.WriteString(doc.Text(page))
		}
		assert.Contains(t, lettersOnly(text.String()), lettersOnly(name))
	}
}

// elements lists the elements a card's SVG is made of.
var elements = map[string]bool{"svg": true, "g": true, "title": true, "desc": true, "rect": true, "path": true, "circle": true, "text": true}

// An SVG is well-formed XML of drawing elements alone, with the names as text.
func TestHostileNamesInSVG(t *testing.T) {
	for _, name := range hostileNames {
		d := namedDeckOf(t, name)
		var file bytes.Buffer
		require.NoError(t, RunSVG(&file, d, d.Setups[0].Runs[0].Number(), Pages{}))
		var text strings.Builder
		reader := xml.NewDecoder(&file)
		for {
			token, err := reader.Token()
			if err == io.EOF {
				break
			}
			require.NoError(t, err, name)
			switch token := token.(type) {
			case xml.StartElement:
				assert.True(t, elements[token.Name.Local], "%s: element %s", name, token.Name.Local)
				for _, a := range token.Attr {
					assert.False(t, strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "href", "%s: attribute %s", name, a.Name.Local)
				}
			case xml.CharData:
				text.Write(token)
			case xml.Directive, xml.ProcInst:
				assert.Fail(t, "a directive", "%s: %v", name, token)
			}
		}
		assert.Contains(t, lettersOnly(text.String()), lettersOnly(name))
	}
}

// JSON stays JSON, with every name as it was written.
func TestHostileNamesInJSON(t *testing.T) {
	for _, name := range hostileNames {
		var file bytes.Buffer
		require.NoError(t, deckfile.Write(&file, namedDeckOf(t, name)))
		var deck struct {
			Title  string
			Setups []struct {
				Bit  struct{ Name string }
				Runs []struct{ Piece, Cut string }
			}
		}
		require.NoError(t, json.Unmarshal(file.Bytes(), &deck), name)
		assert.Equal(t, name, deck.Title)
		assert.Equal(t, name, deck.Setups[0].Bit.Name)
		assert.Equal(t, name, deck.Setups[0].Runs[0].Piece)
		assert.Equal(t, name, deck.Setups[0].Runs[0].Cut)
	}
}

// What cannot come from a plan file but from a program: bytes that are no
// letters, controls, and letters no font has.
func TestUnprintableNames(t *testing.T) {
	for _, name := range []string{"\x00\x07\x1b[2J", "\xff\xfe\xc3", "\u202egnp.exe", "\U0001F4A9\U0010FFFD", "\ufffe", "a\u0301\u0301\u0301", "\n\r\t\u2028"} {
		d := namedDeckOf(t, "plain")
		d.Plan.Title, d.Plan.Pieces[0].Name, d.Plan.Pieces[0].Cuts[0].Name = name, name, name
		d.Setups[0].Bit.Name = name
		d.Warnings = append(d.Warnings, deck.Warning{Code: "x", Piece: name, Cut: name, Text: name, Place: plantext.Place{}})
		var pdf, svg, text, js bytes.Buffer
		require.NoError(t, PDF(&pdf, d, Pages{}), "%q", name)
		require.Positive(t, render.Open(t, pdf.Bytes()).Pages())
		require.NoError(t, RunSVG(&svg, d, d.Setups[0].Runs[0].Number(), Pages{}))
		require.NoError(t, xml.Unmarshal(svg.Bytes(), new(struct{})), "%q", name)
		require.NoError(t, deckfile.Write(&js, d))
		require.True(t, json.Valid(js.Bytes()), "%q", name)
		for _, r := range js.String() {
			assert.False(t, r != '\n' && plantext.Unprintable(r), "%q: %q in the JSON", name, r)
		}
		var back struct{ Title string }
		require.NoError(t, json.Unmarshal(js.Bytes(), &back))
		assert.Equal(t, string([]rune(name)), back.Title)
		require.NoError(t, screen.Text(&text, d))
		for _, r := range text.String() {
			assert.False(t, r != '\n' && plantext.Unprintable(r), "%q: %q in the text", name, r)
		}
	}
}
