package output_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output"
	"fencecard/output/page"
	"fencecard/setup/deck"
)

// element is a part of a page: the page is written so that an XML reader can read
// it, which knows nothing of the program.
type element struct {
	name  string
	attrs map[string]string
	in    []*element // in the order of the page; words have no name
	words string
}

func readHTML(t *testing.T, text []byte) *element {
	t.Helper()
	in := xml.NewDecoder(bytes.NewReader(text))
	in.Strict = false
	root := &element{}
	open := []*element{root}
	for {
		token, err := in.Token()
		if err == io.EOF {
			require.Len(t, open, 1)
			return root
		}
		require.NoError(t, err)
		last := open[len(open)-1]
		switch e := token.(type) {
		case xml.StartElement:
			child := &element{name: e.Name.Local, attrs: map[string]string{}}
			for _, a := range e.Attr {
				child.attrs[a.Name.Local] = a.Value
			}
			last.in = append(last.in, child)
			open = append(open, child)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			last.in = append(last.in, &element{words: string(e)})
		}
	}
}

// all are the elements in e that fit.
func (e *element) all(fits func(*element) bool) (found []*element) {
	for _, c := range e.in {
		if c.name != "" && fits(c) {
			found = append(found, c)
		}
		found = append(found, c.all(fits)...)
	}
	return found
}

func (e *element) class(name string) []*element {
	return e.all(func(c *element) bool { return slices.Contains(strings.Fields(c.attrs["class"]), name) })
}

func (e *element) named(name string) []*element {
	return e.all(func(c *element) bool { return c.name == name })
}

// text is what is read of e, spaces as one.
func (e *element) text() string {
	var b strings.Builder
	var add func(*element)
	add = func(e *element) {
		b.WriteString(e.words)
		for _, c := range e.in {
			add(c)
		}
	}
	add(e)
	return strings.Join(strings.Fields(b.String()), " ")
}

// drawnWords are the texts of the drawings in e, built numbers as one.
func (e *element) drawnWords() (words []string) {
	for _, c := range e.in {
		switch {
		case c.name == "g" && c.attrs["aria-label"] != "":
			words = append(words, c.attrs["aria-label"])
		case c.name == "text":
			if text := c.text(); text != "" {
				words = append(words, text)
			}
		default:
			words = append(words, c.drawnWords()...)
		}
	}
	return words
}

// readPage reads what a page says of its setups and runs in words of its own.
func readPage(t *testing.T, root *element) numbers {
	n := numbers{}
	for _, s := range root.named("section") {
		kind, number, _ := strings.Cut(s.attrs["id"], "-")
		switch kind {
		case "setup":
			for _, near := range s.class("near") {
				n.put(number+" near", near.class("n")[0].text())
			}
			for i, li := range s.named("li") {
				require.Equal(t, fmt.Sprint(i+1), li.attrs["data-rung"])
				n.put(fmt.Sprintf("%s height %d", number, i+1), li.class("n")[0].text())
			}
			words := s.drawnWords()
			for i, w := range words {
				switch w {
				case "to centre":
					n.put(number+" near", words[i-1])
					n.put(number+" centre", words[i+1])
				case "to far edge":
					n.put(number+" far", words[i+1])
				}
			}
		case "run":
			setup, _, _ := strings.Cut(number, ".")
			n.put(setup+" near", s.class("near")[0].class("n")[0].text())
			var rungs, orders []string
			for _, li := range s.class("ladder")[0].named("li") {
				rungs = append(rungs, li.attrs["data-rung"])
				n.put(setup+" height "+li.attrs["data-rung"], li.class("n")[0].text())
			}
			n.put(number+" heights", strings.Join(rungs, " "))
			for _, order := range s.class("big") {
				orders = append(orders, order.text())
			}
			n.put(number+" orders", strings.Join(orders, " "))
			count := "1"
			if _, many, is := strings.Cut(s.class("bit")[0].text(), " × "); is {
				count, _, _ = strings.Cut(many, ";")
			}
			n.put(number+" count", count)
			for name, class := range map[string]string{"START": "start", "BACK STOP": "behind", "STOP": "stop"} {
				for _, mark := range s.class(class) {
					for _, at := range mark.class("n") {
						n.put(setup+s.class("letter")[0].text()+" "+name, at.text())
					}
				}
			}
		}
	}
	return n
}

// samePage compares a page with the deck's JSON: in its words, in its drawings, and
// in what its script knows.
func samePage(t *testing.T, d *deck.Deck, want numbers, pieces map[string]string, what string) {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, output.Page(&b, d, page.About{Served: true}))
	root := readHTML(t, b.Bytes())
	same(t, want, readPage(t, root), what+", page")

	// The rows of the sheets have no boxes to tick, and so no heights.
	drawn := numbers{}
	for _, s := range root.named("section") {
		if strings.HasPrefix(s.attrs["id"], "setup-") {
			for k, v := range readSheets(s.drawnWords(), pieces) {
				drawn.put(k, v)
			}
		}
	}
	onPaper := numbers{}
	for k, v := range want {
		if strings.HasSuffix(k, " heights") {
			delete(drawn, k)
		} else {
			onPaper[k] = v
		}
	}
	same(t, onPaper, drawn, what+", drawings of the page")

	var script struct {
		Code string
		Runs []struct {
			Number, Piece, Says string
			Count, Setup        int
			Rungs               []int
		}
		Steps [][2]int
	}
	at := slices.IndexFunc(root.named("script"), func(e *element) bool { return e.attrs["type"] == "application/json" })
	require.NoError(t, json.Unmarshal([]byte(root.named("script")[at].text()), &script))
	assert.Equal(t, d.Code, script.Code)
	told := numbers{}
	says := map[string]bool{}
	var boxes []string
	for i, r := range script.Runs {
		assert.Equal(t, pieces[r.Number], r.Piece)
		assert.False(t, says[r.Says], "two runs of one key")
		says[r.Says] = true
		told.put(r.Number+" count", fmt.Sprint(r.Count))
		told.put(r.Number+" heights", strings.Trim(fmt.Sprint(r.Rungs), "[]"))
		for h := range r.Rungs {
			boxes = append(boxes, fmt.Sprint(i, h+1))
		}
	}
	known := numbers{}
	for k, v := range want {
		if strings.HasSuffix(k, " heights") || strings.HasSuffix(k, " count") {
			known[k] = v
		}
	}
	same(t, known, told, what+", script of the page")
	var steps []string
	for _, s := range script.Steps {
		steps = append(steps, fmt.Sprint(s[0], s[1]))
	}
	assert.ElementsMatch(t, boxes, steps, "%s: every height of every run once, in the order of work", what)
}
