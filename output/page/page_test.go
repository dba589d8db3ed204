package page_test

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/page"
	"fencecard/setup"
	"fencecard/setup/deck"
)

func deckOf(t testing.TB, plan []byte) *deck.Deck {
	t.Helper()
	p, err := planfile.Read("plan.yaml", plan, nil)
	require.NoError(t, err)
	d, err := setup.Make(p)
	require.NoError(t, err)
	return d
}

func written(t testing.TB, d *deck.Deck, about page.About) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, page.Write(&b, d, about))
	return b.String()
}

// hostilePlan has markup wherever a maker writes words.
const hostilePlan = `
title: Legs </script><img src=x onerror=alert(1)>
unit: in
wood: white ash
shop:
  bits:
    - {bit: '<b>quarter</b>', diameter: 1/4, plunges: yes}
    - {bit: 'three & eighths', diameter: 3/8, plunges: yes}
pieces:
  - piece: leg "<script>alert(2)</script>
    count: 2
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    cuts:
      - {mortise: '<svg/onload=alert(3)>', in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 1, note: 'a <i>note</i> & {{.}}'}
      - {groove: '--><!-- x', in: front, width: 1/4, setback: 1/2 from left, depth: 1/4}
`

// What a maker writes stays words, wherever it comes to stand.
func TestNamesStayWords(t *testing.T) {
	d := deckOf(t, []byte(hostilePlan))
	for _, served := range []bool{false, true} {
		text := written(t, d, page.About{Served: served})
		for _, bad := range []string{"<script>alert", "<img", "<b>quarter", "<i>note", "<svg/", "<!-- x", "ZgotmplZ"} {
			assert.NotContains(t, text, bad)
		}
		assert.Contains(t, text, "&lt;script&gt;alert(2)&lt;/script&gt;")
		assert.Contains(t, text, `\u003c/script\u003e`)
		scripts := strings.Count(text, "<script")
		assert.Equal(t, scripts, strings.Count(text, "</script>"))
	}
}

// A page in a file needs nothing beside it, and says where it is served what its
// policy allows: no style and no script of its own.
func TestWhatAPageNeeds(t *testing.T) {
	d := deckOf(t, examples.BootBench)
	alone, served := written(t, d, page.About{}), written(t, d, page.About{Served: true})
	outward := regexp.MustCompile(`(?:src|href|action|formaction)="[^"#]`)
	assert.Empty(t, outward.FindAllString(alone, -1))
	assert.NotContains(t, alone, "http:")
	assert.NotContains(t, alone, "https:")

	assert.NotContains(t, served, "<style")
	assert.NotContains(t, served, " style=")
	assert.Empty(t, regexp.MustCompile(`\son[a-z]+=`).FindAllString(served, -1))
	inline := regexp.MustCompile(`<script(?: [^>]*)?>[^<]`).FindAllString(served, -1)
	require.Len(t, inline, 1)
	assert.Contains(t, inline[0], "application/json") // which is not run
	for _, m := range regexp.MustCompile(`(?:src|href)="/([a-z]+\.[a-z]+)"`).FindAllStringSubmatch(served, -1) {
		_, err := fs.Stat(page.Files(), m[1])
		assert.NoError(t, err)
	}
}

// Every link leads somewhere, nothing has two names, and every field and drawing
// that a screen reader meets has one.
func TestLinksAndNames(t *testing.T) {
	d := deckOf(t, examples.BootBench)
	asked := map[string]page.Questions{"1.1": {
		Table: []page.Question{{Name: "near", Words: "fence face to the near edge of the bit", Unit: "in"}},
		Cut:   []page.Question{{Name: "depth", Words: "depth, from the back", Unit: "in"}},
	}}
	text := written(t, d, page.About{Served: true, Questions: asked, Plan: "/plan"})
	ids := map[string]int{}
	for _, m := range regexp.MustCompile(` id="([^"]+)"`).FindAllStringSubmatch(text, -1) {
		ids[m[1]]++
	}
	for id, n := range ids {
		assert.Equal(t, 1, n, id)
	}
	for _, m := range regexp.MustCompile(` (?:href="#|aria-labelledby=")([^"]+)"`).FindAllStringSubmatch(text, -1) {
		assert.Equal(t, 1, ids[m[1]], m[0])
	}
	runs := 0
	for i := range d.Setups {
		runs += len(d.Setups[i].Runs)
	}
	assert.Equal(t, runs, strings.Count(text, `<section id="run-`))
	assert.Equal(t, runs, strings.Count(text, `<section id="try-`))
	assert.Equal(t, 2, strings.Count(text, `action="/try"`))
	assert.Equal(t, 2, strings.Count(text, `<input type="text"`))
	assert.Equal(t, 2, strings.Count(text, `<label><span>`))
	assert.Contains(t, text, `<a class="target wide" href="/plan"`)
	assert.NotContains(t, written(t, d, page.About{Served: true, Shared: true}), "NEW BATCH")
}

// The same deck gives the same bytes.
func TestPageIsDeterministic(t *testing.T) {
	files, err := filepath.Glob("../../testdata/plans/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files[:6] {
		plan, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.Equal(t, written(t, deckOf(t, plan), page.About{}), written(t, deckOf(t, plan), page.About{}), file)
	}
}

// Its scripts compute nothing of cuts: they know no length.
func TestScriptsKnowNoLengths(t *testing.T) {
	files, err := fs.Glob(page.Files(), "*.js")
	require.NoError(t, err)
	for _, name := range files {
		text, err := fs.ReadFile(page.Files(), name)
		require.NoError(t, err)
		for _, word := range []string{"25.4", "toFixed", "parseInt", "eval("} {
			assert.NotContains(t, string(text), word, name)
		}
	}
}
