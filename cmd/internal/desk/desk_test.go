package desk

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planform"
	"fencecard/output/sheets"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// workOn is a desk on a plan in a folder of its own; nil for no file yet.
func workOn(t *testing.T, text []byte) Work {
	t.Helper()
	w := Work{Path: filepath.Join(t.TempDir(), "bench.yaml"), Make: makeIt}
	if text != nil {
		require.NoError(t, os.WriteFile(w.Path, text, 0o600))
	}
	return w
}

func makeIt(ctx context.Context, plan *joinery.Plan) (*deck.Deck, error) {
	return setup.MakeWith(ctx, plan, setup.Options{})
}

func put[A any](t *testing.T, w Work, method, path string, q any) A {
	t.Helper()
	body, err := json.Marshal(q)
	require.NoError(t, err)
	recorder := httptest.NewRecorder()
	New(w).ServeHTTP(recorder, httptest.NewRequest(method, path, bytes.NewReader(body)))
	require.Equal(t, http.StatusOK, recorder.Code, recorder.Body.String())
	var a A
	require.NoError(t, json.Unmarshal(recorder.Body.Bytes(), &a))
	return a
}

// A plan that was just begun is not at fault, whatever else may be.
func TestAPlanJustBegun(t *testing.T) {
	look := func(text string) seen { return put[seen](t, workOn(t, nil), "POST", "/plan/look", planText{text}) }
	for _, text := range []string{"title: Shelf\nunit: in\n", "", "# soon\n", "title: Shelf\nunit: mm\npieces:\n", "title: Shelf\nunit: mm\nshop: {unit: mm}"} {
		got := look(text)
		assert.Empty(t, got.Faults, text)
		assert.True(t, got.Begins, text)
	}
	got := look("title: Shelf\nunit: ells\n")
	require.Len(t, got.Faults, 1)
	assert.Equal(t, 2, got.Faults[0].Line)
	assert.False(t, look("unit: in\npieces:\n  - piece: side\n").Begins)
	assert.False(t, look("unit: in\npieces:\n  - piece: side\n    size: {left-right: 1, front-back: 2, top-bottom: 9}\n").Begins)
}

// One slip in a piece that has a mirror image is one fault, which names both.
func TestAFaultOfAMirrorToo(t *testing.T) {
	got := put[seen](t, workOn(t, nil), "POST", "/plan/look", planText{"unit: in\npieces:\n  - piece: end\n    size: {left-right: 3/4, front-back: 6, top-bottom: 16}\n" +
		"    cuts:\n      - groove: slit\n        in: right\n        width: 1/16\n        setback: 1 from front\n        depth: 1/4\n" +
		"  - piece: other end\n    mirror: {of: end, across: left-right}\n"})
	require.Len(t, got.Faults, 1)
	assert.Contains(t, got.Faults[0].Words, `groove "slit" in "end" and "other end": no bit is narrow enough`)
	assert.Equal(t, 8, got.Faults[0].Line)
}

func TestFaultsStandAtTheirLines(t *testing.T) {
	text := strings.Replace(string(examples.BootBench), "wood: ", "wood: no such ", 1)
	line := 1 + strings.Count(text[:strings.Index(text, "no such")], "\n")
	got := put[seen](t, workOn(t, nil), "POST", "/plan/look", planText{text})
	require.NotEmpty(t, got.Faults)
	assert.Equal(t, line, got.Faults[0].Line)
	assert.Contains(t, got.Faults[0].Words, "no such")
	sheets := put[printed](t, workOn(t, nil), "POST", "/plan/sheets", planText{text})
	assert.Equal(t, got.Faults, sheets.Faults)
	assert.Empty(t, sheets.HTML)
}

func TestSheetsAreThoseThatArePrinted(t *testing.T) {
	plan, err := planfile.Read("bench.yaml", examples.BootBench, nil)
	require.NoError(t, err)
	d, err := setup.Make(plan)
	require.NoError(t, err)
	got := put[printed](t, workOn(t, nil), "POST", "/plan/sheets", planText{string(examples.BootBench)})
	assert.Equal(t, d.Code, got.Code)
	assert.Empty(t, got.Faults)
	screen := sheets.OnScreen(d, sheets.Pages{})
	for i := range d.Setups {
		head, err := screen.Head(i)
		require.NoError(t, err)
		assert.True(t, strings.Contains(got.HTML, string(head)))
		for k := range d.Setups[i].Runs {
			row, err := screen.Row(&d.Setups[i], &d.Setups[i].Runs[k])
			require.NoError(t, err)
			assert.True(t, strings.Contains(got.HTML, string(row)))
		}
	}
	for _, c := range d.Cards() {
		card, err := screen.Card(&c)
		require.NoError(t, err)
		assert.True(t, strings.Contains(got.HTML, string(card)))
	}
}

// A warning stands above the sheet that it belongs to, with its line.
func TestWarningsStandAtTheirSheets(t *testing.T) {
	got := put[printed](t, workOn(t, nil), "POST", "/plan/sheets", planText{string(examples.BootBench)})
	_, at, _ := strings.Cut(got.HTML, `<section class="sheet" data-setup="5"`)
	at, _, _ = strings.Cut(at, "</section>")
	before, _, _ := strings.Cut(string(examples.BootBench), "board: shelf / left\n")
	line := 3 + strings.Count(before, "\n") // of its place
	assert.True(t, strings.Contains(at, fmt.Sprintf(`data-line="%d" data-from="11">line %d</button>front left leg: for the dado`, line, line)))
	assert.Equal(t, 3, strings.Count(got.HTML, `<button type="button" class="line" data-line=`))
	assert.True(t, strings.Contains(at, `data-at="joints/3">dado: shelf</button>`))
}

func TestWhyEachSetupIsThere(t *testing.T) {
	got := put[reasons](t, workOn(t, nil), "POST", "/plan/why", planText{string(examples.BootBench)})
	assert.Contains(t, got.HTML[1], "no other bit or fence distance makes the groove &#34;panel&#34;")
	assert.Len(t, got.HTML, 10)
}

// A column counts characters; a browser counts some of them twice.
func TestUnits(t *testing.T) {
	assert.Equal(t, 2, units("abc", 2))
	assert.Equal(t, 3, units("a\U0001FAB5c", 2))
	assert.Equal(t, 1, units("é", 9))
	assert.Equal(t, 0, units("abc", -1))
}

func TestSave(t *testing.T) {
	for name, c := range map[string]struct {
		file, base, text string
		want             saved
		holds            string
	}{
		"as it was":         {"a\nb\nc\n", "a\nb\nc\n", "a\nb\nC\n", saved{Text: "a\nb\nC\n"}, "a\nb\nC\n"},
		"changed elsewhere": {"A\nb\nc\n", "a\nb\nc\n", "a\nb\nC\n", saved{Text: "A\nb\nC\n", Merged: true}, "A\nb\nC\n"},
		"the same line":     {"a\nb\nx\n", "a\nb\nc\n", "a\nb\ny\n", saved{Asks: true, Theirs: "a\nb\nx\n"}, "a\nb\nx\n"},
		"other line ends":   {"a\r\nb\r\n", "a\nb\n", "a\nB\n", saved{Text: "a\r\nB\r\n"}, "a\r\nB\r\n"},
		"made meanwhile":    {"a\n", "", "b\n", saved{Asks: true, Theirs: "a\n"}, "a\n"},
	} {
		t.Run(name, func(t *testing.T) {
			w := workOn(t, []byte(c.file))
			assert.Equal(t, c.want, put[saved](t, w, "PUT", "/plan/text", change{c.base, c.text}))
			holds, err := os.ReadFile(w.Path)
			require.NoError(t, err)
			assert.Equal(t, c.holds, string(holds))
		})
	}
}

func TestSaveANewPlan(t *testing.T) {
	w := workOn(t, nil)
	assert.Equal(t, saved{Text: "a\n"}, put[saved](t, w, "PUT", "/plan/text", change{"", "a\n"}))
	require.NoError(t, os.Remove(w.Path))
	assert.Equal(t, saved{Asks: true, Gone: true}, put[saved](t, w, "PUT", "/plan/text", change{"a\n", "b\n"}))
	assert.NoFileExists(t, w.Path)
}

// A browser would change the letters of such a file, so it is not given to one.
func TestAFileThatIsNoText(t *testing.T) {
	w := workOn(t, []byte("name: \xff\n"))
	for _, r := range []*http.Request{
		httptest.NewRequest("GET", "/plan/text", nil),
		httptest.NewRequest("PUT", "/plan/text", strings.NewReader(`{"base":"name: \ufffd\n","text":"name: x\n"}`)),
	} {
		recorder := httptest.NewRecorder()
		New(w).ServeHTTP(recorder, r)
		assert.NotEqual(t, http.StatusOK, recorder.Code)
		assert.Contains(t, recorder.Body.String(), "UTF-8")
	}
	holds, err := os.ReadFile(w.Path)
	require.NoError(t, err)
	assert.Equal(t, "name: \xff\n", string(holds))
}

func TestWhatCannotBeRead(t *testing.T) {
	for body, status := range map[string]int{
		"{":   http.StatusBadRequest,
		"[1]": http.StatusBadRequest,
		`{"text":"` + strings.Repeat("a", mostBytes) + `"}`: http.StatusRequestEntityTooLarge,
	} {
		recorder := httptest.NewRecorder()
		New(workOn(t, nil)).ServeHTTP(recorder, httptest.NewRequest("POST", "/plan/look", strings.NewReader(body)))
		assert.Equal(t, status, recorder.Code)
	}
}

// No path of the maker's computer goes to a browser.
func TestNoPath(t *testing.T) {
	w := workOn(t, []byte("name: [\n"))
	for _, ask := range []*http.Request{
		httptest.NewRequest("GET", "/plan/text", nil),
		httptest.NewRequest("POST", "/plan/look", strings.NewReader(`{"text":"name: [\n"}`)),
	} {
		recorder := httptest.NewRecorder()
		New(w).ServeHTTP(recorder, ask)
		assert.NotContains(t, recorder.Body.String(), filepath.Dir(w.Path))
	}
}

func TestFiles(t *testing.T) {
	for path, kind := range map[string]string{
		"/plan": "text/html", "/plan/desk.js": "text/javascript", "/plan/desk.css": "text/css",
		"/plan/editor.js": "text/javascript", "/plan/editor-licences.txt": "text/plain",
	} {
		recorder := httptest.NewRecorder()
		New(workOn(t, nil)).ServeHTTP(recorder, httptest.NewRequest("GET", path, nil))
		assert.Equal(t, http.StatusOK, recorder.Code, path)
		assert.Contains(t, recorder.Header().Get("Content-Type"), kind, path)
	}
}

// The shop file that a plan names has the same forms, and is saved by the same rules.
func TestShopInAFileOfItsOwn(t *testing.T) {
	w := workOn(t, []byte("unit: in\nshop: shop.yaml\npieces:\n  - piece: side\n    size: {left-right: 1, front-back: 6, top-bottom: 20}\n"))
	path := filepath.Join(filepath.Dir(w.Path), "shop.yaml")
	require.NoError(t, os.WriteFile(path, examples.StarterShop, 0o600))
	w.Open = func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(w.Path), name)) }
	assert.Contains(t, put[formTold](t, w, "POST", "/plan/form", formAsked{planText: planText{"unit: in\nshop: shop.yaml\npieces: []\n"}}).HTML, `href="/plan?file=shop"`)

	shop := put[fileText](t, w, "GET", "/plan/text?file=shop", nil)
	assert.Equal(t, "shop.yaml", shop.Name)
	assert.Equal(t, string(examples.StarterShop), shop.Text)
	assert.Empty(t, put[seen](t, w, "POST", "/plan/look?file=shop", shop.planText).Faults)
	assert.Contains(t, put[formTold](t, w, "POST", "/plan/form?file=shop", formAsked{planText: shop.planText}).HTML, `data-at="bits/0"`)
	wrong := put[formTold](t, w, "POST", "/plan/form?file=shop", formAsked{planText: shop.planText, At: "/", Field: [][2]string{{"lift", "high"}}, Do: putIt})
	assert.Contains(t, wrong.HTML, "<strong>&#34;high&#34; is")
	bit := put[formTold](t, w, "POST", "/plan/form?file=shop", formAsked{planText: shop.planText, Kind: planform.Bit, Under: "/", Field: [][2]string{{"bit", "five"}, {"diameter", "5/8"}}, Do: putIt})
	assert.Contains(t, bit.Text, "  - bit: five\n    diameter: 5/8\n")

	// Another editor writes at the beginning, then the same lines.
	require.NoError(t, os.WriteFile(path, append([]byte("# mine\n"), examples.StarterShop...), 0o600))
	kept := put[saved](t, w, "PUT", "/plan/text?file=shop", change{Base: shop.Text, Text: bit.Text})
	assert.True(t, kept.Merged)
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "# mine\n"+bit.Text, string(now))
	other := strings.Replace(string(now), "lift: 2", "lift: 3", 1)
	require.NoError(t, os.WriteFile(path, []byte(other), 0o600))
	assert.True(t, put[saved](t, w, "PUT", "/plan/text?file=shop", change{Base: string(now), Text: strings.Replace(string(now), "lift: 2", "lift: 4", 1)}).Asks)
	now, err = os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, other, string(now), "never overwritten unseen")

	for _, name := range []string{"../shop.yaml", path, "none.yaml", ""} {
		require.NoError(t, os.WriteFile(w.Path, []byte("unit: in\nshop: "+name+"\npieces: []\n"), 0o600))
		recorder := httptest.NewRecorder()
		New(w).ServeHTTP(recorder, httptest.NewRequest("GET", "/plan/text?file=shop", nil))
		assert.Equal(t, http.StatusNotFound, recorder.Code, name)
	}
}
