package output_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/output"
	"fencecard/output/internal/render"
	"fencecard/output/sheets"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// numbers are what a writer says of a deck, each under its name: "2 near",
// "2 height 1", "2A START", "2.1 orders". They are compared with the JSON's.
type numbers map[string]string

// put keeps a number, and marks one that is said twice and differs.
func (n numbers) put(name, value string) {
	value = strings.ReplaceAll(strings.TrimSpace(value), "−", "-")
	if old, ok := n[name]; ok && old != value {
		value = old + " and " + value
	}
	n[name] = value
}

type jsonLength struct{ Text string }

type jsonMark struct {
	Guide        string
	Line         *jsonLength
	LeadTrailing *jsonLength `json:"lead_past_trailing_edge"`
	LeadLeading  *jsonLength `json:"lead_past_leading_edge"`
	TailTrailing *jsonLength `json:"tail_before_trailing_edge"`
	TailLeading  *jsonLength `json:"tail_before_leading_edge"`
}

// by is the measure for an end of the work, or the layout line, from the edge
// that the mark is measured from.
func (m jsonMark) by(guide string) string {
	for _, l := range map[string][]*jsonLength{"lead": {m.LeadTrailing, m.LeadLeading}, "tail": {m.TailTrailing, m.TailLeading}, "line": {m.Line}}[guide] {
		if l != nil {
			return l.Text
		}
	}
	return ""
}

type jsonFence struct {
	Near   jsonLength `json:"to_near_edge"`
	Centre jsonLength `json:"to_centre"`
	Far    jsonLength `json:"to_far_edge"`
}

type jsonDeck struct {
	Setups []struct {
		Number int
		Fence  jsonFence
		Kept   *struct {
			Stood  *jsonFence  `json:"fence_stood"`
			Height *jsonLength `json:"height_stood"`
		}
		Heights []jsonLength
		Marks   []struct {
			Letter      string
			Start, Stop *jsonMark
		}
		Runs []struct {
			Number, Piece, Down, Fence, Leads string
			Count                             int
			Marks                             *string
			Start, Stop                       *jsonMark
			Heights                           []jsonLength
		}
	}
}

// said are a deck's numbers as its JSON has them. Between stop blocks the tail
// meets the back stop and the leading end the front one.
func (j *jsonDeck) said(d *deck.Deck, blocks bool) numbers {
	n := numbers{}
	run := map[string]*deck.Run{}
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			run[d.Setups[i].Runs[k].Number()] = &d.Setups[i].Runs[k]
		}
	}
	for _, u := range j.Setups {
		at := fmt.Sprint(u.Number)
		fence := u.Fence
		if u.Kept != nil && u.Kept.Stood != nil {
			fence = *u.Kept.Stood
		}
		n.put(at+" near", fence.Near.Text)
		n.put(at+" centre", fence.Centre.Text)
		n.put(at+" far", fence.Far.Text)
		var heights []string
		for i, h := range u.Heights {
			heights = append(heights, h.Text)
			if i == len(u.Heights)-1 && u.Kept != nil && u.Kept.Height != nil {
				h = *u.Kept.Height
			}
			n.put(fmt.Sprintf("%s height %d", at, i+1), h.Text)
		}
		for _, m := range u.Marks {
			for name, mark := range map[string]*jsonMark{"START": m.Start, "STOP": m.Stop} {
				if mark == nil {
					continue
				}
				guide := mark.Guide
				if blocks {
					guide = map[string]string{"START": "tail", "STOP": "lead"}[name]
				}
				n.put(at+m.Letter+" "+name, mark.by(guide))
				if name == "START" && guide != "tail" {
					n.put(at+m.Letter+" BACK STOP", mark.by("tail"))
				}
			}
		}
		for _, r := range u.Runs {
			var ordinals []string
			for _, h := range r.Heights {
				ordinals = append(ordinals, fmt.Sprint(slices.Index(heights, h.Text)+1))
			}
			n.put(r.Number+" heights", strings.Join(ordinals, " "))
			n.put(r.Number+" count", fmt.Sprint(r.Count))
			c := run[r.Number]
			orders := []string{r.Down, r.Fence, r.Leads}
			for i, side := range []fmt.Stringer{c.Step.Down, c.Step.Fence, c.Leads} {
				if orders[i] != side.String() {
					n.put(r.Number+" orders", "not the deck's")
				}
			}
			n.put(r.Number+" orders", strings.ToUpper(strings.Join([]string{c.Shown(c.Step.Down), c.Shown(c.Step.Fence), c.Shown(c.Leads)}, " ")))
		}
	}
	return n
}

// allPlans are the plans of the test data and the examples, by name.
func allPlans(t *testing.T) map[string][]byte {
	t.Helper()
	plans := map[string][]byte{"boot bench": examples.BootBench}
	files, err := filepath.Glob("../testdata/plans/*.yaml")
	require.NoError(t, err)
	for _, file := range append(files, "../testdata/wall-cabinet.yaml", "../testdata/frame.yaml") {
		plans[filepath.Base(file)], err = os.ReadFile(file)
		require.NoError(t, err)
	}
	return plans
}

func deckOf(t *testing.T, name string, plan []byte) *deck.Deck {
	t.Helper()
	p, err := planfile.Read(name, plan, nil)
	require.NoError(t, err)
	d, err := setup.Make(p)
	require.NoError(t, err)
	return d
}

// TestEveryFormSaysTheSame reads back what every writer made of every plan of
// the test data and of the examples, number by number.
func TestEveryFormSaysTheSame(t *testing.T) {
	plans, compared, onStrips := allPlans(t), 0, 0
	for name, plan := range plans {
		n, strips := sameInEveryForm(t, deckOf(t, name, plan), name)
		compared, onStrips = compared+n, onStrips+strips
	}
	t.Logf("%d numbers of %d plans in %d formats, %d on strips", compared, len(plans), len(readers), onStrips)
}

// Where a setup book knows where the fence stood, every form has that, and the centre
// and the far edge that follow from it; the computed distance stands beside it once. So
// it is with the bit at full height.
func TestEveryFormSaysWhatATestCutTaught(t *testing.T) {
	d := deckOf(t, "boot bench", examples.BootBench)
	for i := range d.Setups {
		u := &d.Setups[i]
		stood := u.Fence.NearEdge + measure.Inch/64*measure.Length(i%3-1)
		high := u.Heights[len(u.Heights)-1] + measure.Inch/64
		u.Kept = &deck.Kept{Name: "spring", Code: "hp3d-f96d", FenceStood: &stood, HeightStood: &high}
	}
	n, _ := sameInEveryForm(t, d, "boot bench, learnt")
	assert.Greater(t, n, 100)

	u := &d.Setups[0]
	var b bytes.Buffer
	require.NoError(t, output.PDF(&b, d, sheets.Pages{}))
	words := wordsOf(render.Open(t, b.Bytes()))
	computed := slices.Index(words, "computed")
	require.Positive(t, computed)
	assert.Equal(t, d.Plan.Shop.Scale.Format(u.Fence.NearEdge), strings.ReplaceAll(words[computed+1], "−", "-"))
	full := d.Plan.Shop.Scale.Format(u.Heights[len(u.Heights)-1])
	assert.Contains(t, words, "computed "+full)

	b.Reset()
	require.NoError(t, output.PDF(&b, d, sheets.Pages{Only: sheets.OnlyCards}))
	text := strings.Join(wordsOf(render.Open(t, b.Bytes())), " ")
	first := regexp.MustCompile(`1\.1 .*?, to (\S+)`).FindStringSubmatch(text)
	require.NotNil(t, first)
	assert.Equal(t, d.Plan.Shop.Scale.Format(*u.Kept.HeightStood), first[1])
}

// written is a deck with what its JSON says, which every other format is held to.
type written struct {
	*deck.Deck
	want   numbers
	pieces map[string]string // by the number of a run
	name   string
}

// readers write a deck in each format of the program, by the word behind --format, read
// it back, and hold what it says to the JSON. That is read with a decoder of its own.
var readers = map[string]func(t *testing.T, d written){
	"json": func(t *testing.T, d written) { assert.NotEmpty(t, d.want, d.name) },
	"text": func(t *testing.T, d written) {
		var b bytes.Buffer
		require.NoError(t, output.Text(&b, d.Deck))
		same(t, d.want, readText(t, b.String()), d.name+", text")
	},
	"pdf": func(t *testing.T, d written) {
		var b bytes.Buffer
		require.NoError(t, output.PDF(&b, d.Deck, sheets.Pages{Only: sheets.OnlySetups}))
		same(t, d.want, readSheets(wordsOf(render.Open(t, b.Bytes())), d.pieces), d.name+", PDF")
	},
	"svg": func(t *testing.T, d written) {
		drawn := numbers{}
		for i := range d.Setups {
			var b bytes.Buffer
			require.NoError(t, output.SetupSVG(&b, d.Deck, d.Setups[i].Number, sheets.Pages{}))
			for k, v := range readSheets(wordsOfSVG(t, b.Bytes()), d.pieces) {
				drawn.put(k, v)
			}
		}
		same(t, d.want, drawn, d.name+", SVG")
	},
	"html": func(t *testing.T, d written) { samePage(t, d.Deck, d.want, d.pieces, d.name) },
}

// formatsFile is the one table of formats. Output knows nothing of commands, so its text
// is read.
const formatsFile = "../cmd/internal/session/formats.go"

// Every format of the table has a reader, or its numbers would be held to nothing.
func TestEveryFormatIsReadBack(t *testing.T) {
	table, err := parser.ParseFile(token.NewFileSet(), formatsFile, nil, parser.SkipObjectResolution)
	require.NoError(t, err)
	formats := map[string]bool{}
	ast.Inspect(table, func(n ast.Node) bool {
		row, is := n.(*ast.CompositeLit)
		if !is {
			return true
		}
		if of, is := row.Type.(*ast.Ident); !is || of.Name != "Format" {
			return true
		}
		for _, field := range row.Elts {
			pair, is := field.(*ast.KeyValueExpr)
			require.True(t, is, "%s: name the fields of a Format", formatsFile)
			if name, is := pair.Key.(*ast.Ident); is && name.Name == "Name" {
				word, err := strconv.Unquote(pair.Value.(*ast.BasicLit).Value)
				require.NoError(t, err)
				formats[word] = true
			}
		}
		return true
	})
	assert.GreaterOrEqual(t, len(formats), 5, "%s is read no longer", formatsFile)
	for name := range formats {
		assert.NotNil(t, readers[name], "nothing reads the numbers of the format %s back: add a row to readers in output/samenumbers_test.go, which writes a deck so, "+
			"reads from it what numbers names (fence distances, heights, marks, orders, counts), and compares by same", name)
	}
	for name := range readers {
		assert.True(t, formats[name], "%s has no format %s", formatsFile, name)
	}
}

// sameInEveryForm compares what every writer made of a deck with its JSON, and counts
// the numbers, and those on strips.
func sameInEveryForm(t *testing.T, d *deck.Deck, name string) (compared, onStrips int) {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, output.JSON(&b, d))
	var j jsonDeck
	require.NoError(t, json.Unmarshal(b.Bytes(), &j))
	all := written{d, j.said(d, d.Plan.Shop.Stops == joinery.Blocks), map[string]string{}, name}
	for _, u := range j.Setups {
		for _, r := range u.Runs {
			all.pieces[r.Number] = r.Piece
		}
	}
	for _, format := range slices.Sorted(maps.Keys(readers)) {
		readers[format](t, all)
	}
	b.Reset()
	require.NoError(t, output.PDF(&b, d, sheets.Pages{Only: sheets.OnlyStrips}))
	return len(all.want), checkStrips(t, wordsOf(render.Open(t, b.Bytes())), &j, name)
}

// How many are shown of what two forms say otherwise: one slip makes hundreds, in one form
// after the other, and the first ones tell which.
const mostDifferences, mostFurther = 20, 2

// same reports the numbers in which two sets differ.
func same(t *testing.T, want, got numbers, what string) {
	t.Helper()
	var all []string
	for _, k := range slices.Sorted(maps.Keys(want)) {
		if got[k] != want[k] {
			all = append(all, fmt.Sprintf("%s: %s is %q, in the JSON %q", what, k, got[k], want[k]))
		}
	}
	for _, k := range slices.Sorted(maps.Keys(got)) {
		if _, ok := want[k]; !ok {
			all = append(all, fmt.Sprintf("%s: %s is %q, and the JSON has none", what, k, got[k]))
		}
	}
	most := mostDifferences
	if t.Failed() {
		most = mostFurther
	}
	for i, line := range all {
		if i == most {
			t.Errorf("%s: %d more like these", what, len(all)-i)
			break
		}
		t.Error(line)
	}
}
