package desk

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/planform"
	"fencecard/output/page/browser"
	"fencecard/setup/deck"
)

// policy is that of the bench page; the editor asks for no exception.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; " +
	"form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// serve serves a desk as the bench page does.
func serve(t *testing.T, next http.Handler) string {
	s := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Security-Policy", policy)
		w.Header().Set("X-Content-Type-Options", "nosniff")
		next.ServeHTTP(w, r)
	}))
	t.Cleanup(func() {
		s.CloseClientConnections() // the tab may still hold some
		s.Close()
	})
	return s.URL
}

// The element that is typed into.
const content = `document.querySelector('#text').shadowRoot?.querySelector('.cm-content')`

// twoHundred is a plan with as many cuts, in boards with grooves side by side.
func twoHundred() string {
	var b strings.Builder
	b.WriteString("title: big\nunit: in\nwood: white ash\npieces:\n")
	for p := range 25 {
		fmt.Fprintf(&b, "  - piece: board %d\n    size: {left-right: 6, front-back: 3/4, top-bottom: 40}\n    cuts:\n", p+1)
		for c := range 8 {
			fmt.Fprintf(&b, "      - groove: cut %d\n        in: front\n        width: 1/4\n        depth: 1/4\n        setback: 1 from left\n        span: %d to %d from top\n", c+1, 1+4*c, 3+4*c)
		}
	}
	return b.String()
}

func TestTypeAndSave(t *testing.T) {
	b := browser.Open(t, 1400, 900)
	w := workOn(t, examples.BootBench)
	b.Go(serve(t, New(w)) + "/plan")
	b.Until(content)
	b.Until(`document.querySelector('#sheets').dataset.code`)
	b.Shot("plan")
	code := browser.Eval[string](b, `document.querySelector('#sheets').dataset.code`)
	assert.Equal(t, "none", browser.Eval[string](b, `document.querySelector('#faults li') ? "some" : "none"`))

	browser.Eval[any](b, content+`.focus()`)
	browser.Eval[any](b, `(function () { window.refused = []; addEventListener("securitypolicyviolation", (e) => window.refused.push(e.violatedDirective + " " + e.blockedURI)); })()`)
	b.Press("q")
	b.Until(`document.querySelector('#faults li .line')?.textContent === "line 1"`)
	b.Until(content + `?.querySelector('.cm-lintRange-error')`)
	assert.Equal(t, "underline none", browser.Eval[string](b, `(function () { const s = getComputedStyle(`+content+`.querySelector('.cm-lintRange-error')); return s.textDecorationLine + " " + s.backgroundImage; })()`))
	assert.Equal(t, "!", browser.Eval[string](b, `getComputedStyle(document.querySelector('#text').shadowRoot.querySelector('.cm-lint-marker-error'), '::before').content.replaceAll('"', '')`))
	b.Shot("fault")
	assert.Equal(t, "true false", browser.Eval[string](b, `document.querySelector('#none').hidden + " " + document.querySelector('#before').hidden`))
	b.Tap("#undo")
	b.Until(`!document.querySelector('#faults li')`)
	assert.Equal(t, code, browser.Eval[string](b, `document.querySelector('#sheets').dataset.code`))

	assert.Empty(t, browser.Eval[[]string](b, `window.refused`), "refused by the policy")

	// Another editor writes a line at the end, this one in the first.
	browser.Eval[any](b, content+`.focus()`)
	b.Press("# here ")
	outside := string(examples.BootBench) + "# there\n"
	require.NoError(t, os.WriteFile(w.Path, []byte(outside), 0o600))
	b.Tap("#save")
	b.Until(`document.querySelector('#told').textContent.startsWith("saved, with")`)
	holds, err := os.ReadFile(w.Path)
	require.NoError(t, err)
	assert.Equal(t, "# here "+outside, string(holds))

	// Both write the first line.
	require.NoError(t, os.WriteFile(w.Path, []byte("# elsewhere\n"+outside), 0o600))
	browser.Eval[any](b, content+`.focus()`)
	b.Press("really ")
	b.Tap("#save")
	b.Until(`document.querySelector('#asks').open`)
	b.Shot("asks")
	now, err := os.ReadFile(w.Path)
	require.NoError(t, err)
	assert.Equal(t, "# elsewhere\n"+outside, string(now), "overwritten unseen")
	b.Tap("#mine")
	b.Until(`document.querySelector('#told').textContent === "saved"`)
	now, err = os.ReadFile(w.Path)
	require.NoError(t, err)
	assert.Contains(t, string(now), "really")
}

// What the sheets show is printed from the plan's screen, saved or not, while the plan
// has no fault and while it has one.
func TestPrintFromThePlan(t *testing.T) {
	w := workOn(t, examples.BootBench)
	var printed []string
	w.Print = func(to http.ResponseWriter, r *http.Request, d *deck.Deck) {
		printed = append(printed, d.Code+" "+r.PathValue("file")+" "+r.URL.Query().Get("paper"))
		fmt.Fprint(to, "pages")
	}
	b := browser.Open(t, 1280, 800)
	at := serve(t, New(w))
	b.Go(at + "/plan")
	b.Until(`document.querySelector('#sheets').dataset.code`)
	code := browser.Eval[string](b, `document.querySelector('#sheets').dataset.code`)
	b.Tap("#print")
	b.Until(`document.querySelector('#printing').open`)
	b.Shot("printing")
	assert.True(t, browser.Eval[bool](b, `document.querySelector('#unsaved').hidden`))
	browser.Eval[any](b, `(function () { const f = document.querySelector('#printing form'); f.target = ""; f.elements.paper.value = "a5"; })()`)
	b.Tap(`#printing [formaction$="cards.pdf"]`)
	b.Until(`document.body.textContent === "pages"`)
	assert.Equal(t, []string{code + " cards.pdf a5"}, printed)
	other, err := http.Get(at + "/plan/print/deck.pdf?deck=none")
	require.NoError(t, err)
	other.Body.Close()
	assert.Equal(t, http.StatusNotFound, other.StatusCode, "and nothing else is printed in its place")
}

// Where no sheets were ever made, it is said when they come.
func TestNoSheetsYet(t *testing.T) {
	b := browser.Open(t, 1280, 800)
	b.Go(serve(t, New(workOn(t, []byte("unit: in\npieces:\n  - piece: rail\n    size: {left-right: wide, front-back: 1, top-bottom: 2}\n")))) + "/plan")
	b.Until(`document.querySelector('#faults li') && document.querySelector('#none').offsetHeight && !document.querySelector('#before').offsetHeight`)
}

// What is not saved is here again after the page was left, with a form that was not put in
// yet; and going to the table saves it, by the rules of saving.
func TestNothingIsLost(t *testing.T) {
	w := workOn(t, []byte("title: Shelf\nunit: in\n"))
	plan := New(w)
	table := http.NewServeMux()
	table.Handle("/plan", plan)
	table.Handle("/plan/", plan)
	table.HandleFunc("/{$}", func(to http.ResponseWriter, _ *http.Request) { fmt.Fprint(to, "the table") })
	b := browser.Open(t, 1280, 800)
	at := serve(t, table)
	b.Go(at + "/plan")
	m := maker{b, t}
	m.Until(content)
	assert.Equal(t, "To the table", browser.Eval[string](b, `document.querySelector('#table').textContent`))
	tall := browser.Eval[float64](b, `document.querySelector('header').offsetHeight`)
	place := browser.Eval[float64](b, `document.querySelector('#print, #table').getBoundingClientRect().left`)
	m.press(`document.querySelector('[data-new=piece]')`, `document.querySelector('#form[data-at=""]')`)
	piece := planform.Blank(planform.Piece, "", nil)
	for key, value := range map[string]string{"piece": "rail with a long name to be told in the header", "size.left-right": "20", "size.front-back": "1", "size.top-bottom": "3"} {
		piece.Set(key, value)
	}
	m.fill(piece)
	m.Until(`document.querySelector('#undo').textContent === "Undo adding a piece"`)
	m.choose(`document.querySelector('#form [name="size.left-right"]')`, "24")
	m.Until(`document.querySelector('#undo').textContent.startsWith("Undo changing rail with")`)
	assert.Equal(t, tall, browser.Eval[float64](b, `document.querySelector('header').offsetHeight`), "the header jumps")
	assert.Equal(t, place, browser.Eval[float64](b, `document.querySelector('#print, #table').getBoundingClientRect().left`), "the buttons jump")
	b.Shot("unsaved")
	m.press(`document.querySelector('#form-side [data-new=piece]')`, `document.querySelector('#form[data-at=""]')`)
	browser.Eval[any](b, `document.querySelector('#form [name=piece]').focus()`)
	b.Press("post")

	b.Reload()
	m.Until(content + `?.innerText.includes("left-right: 24")`)
	m.Until(`document.querySelector('#form[data-at=""] [name=piece]')?.value === "post"`)
	assert.Equal(t, "Undo what came back", browser.Eval[string](b, `document.querySelector('#undo').textContent`))
	assert.Equal(t, "what was not saved is here again", browser.Eval[string](b, `document.querySelector('#told').textContent`))
	b.Shot("here-again")
	on, err := os.ReadFile(w.Path)
	require.NoError(t, err)
	assert.Equal(t, "title: Shelf\nunit: in\n", string(on))

	// So does what is typed in a box of a piece that is there.
	m.list()
	m.press(`document.querySelector('[data-at="pieces/0"]')`, `document.querySelector('#form[data-at="pieces/0"]')`)
	browser.Eval[any](b, `document.querySelector('#form [name=count]').focus()`)
	b.Press("7")
	b.Reload()
	m.Until(content + `?.innerText.includes("count: 7")`)
	m.Until(`document.querySelector('#form[data-at="pieces/0"] [name=count]')?.value === "7"`)

	// Meanwhile another editor wrote the same file: asked first, and then on.
	m.list()
	require.NoError(t, os.WriteFile(w.Path, []byte("title: Shelf\nunit: mm\n\npieces: []\n"), 0o600))
	m.press(`document.querySelector('#table')`, `document.querySelector('#asks').open`)
	m.press(`document.querySelector('#mine')`, `document.body.textContent === "the table"`)
	on, err = os.ReadFile(w.Path)
	require.NoError(t, err)
	assert.Contains(t, string(on), "left-right: 24")
	b.Go(at + "/plan")
	m.Until(content + `?.innerText.includes("left-right: 24")`)
	assert.Equal(t, "", browser.Eval[string](b, `document.querySelector('#told').textContent`))
	assert.True(t, browser.Eval[bool](b, `document.querySelector('#save').disabled`))
}

// What a maker waits for after a key, measured in the browser and told; a machine
// that is busy makes it no failure.
func TestFaultsAfterAKey(t *testing.T) {
	b := browser.Open(t, 1400, 900)
	b.Go(serve(t, New(workOn(t, []byte(twoHundred())))) + "/plan")
	b.Until(content)
	b.Until(`document.querySelector('#sheets').dataset.code || document.querySelector('#faults li')`)
	require.Empty(t, browser.Eval[string](b, `document.querySelector('#faults').textContent`))
	browser.Eval[any](b, content+`.focus()`)
	browser.Eval[any](b, `(function () {
		window.took = [];
		let at;
		document.querySelector('#text').shadowRoot.addEventListener('keydown', () => { at = performance.now(); }, true);
		new MutationObserver(() => { if (at) { window.took.push(performance.now() - at); at = 0; } }).observe(document.querySelector('#faults'), { childList: true });
	})()`)
	for n := range 10 {
		b.Press("q")
		b.Until(fmt.Sprintf(`window.took.length > %d`, n))
	}
	b.Until(`document.querySelector('#faults li')`)
	took := browser.Eval[[]float64](b, `window.took.sort((a, b) => a - b)`)
	t.Logf("from a key to the fault at its line, 200 cuts: %.0f ms (median), %.0f ms (worst)", took[len(took)/2], took[len(took)-1])

	// What is typed goes again, so that the plan is sound: from its last key to new sheets.
	for range 9 {
		b.Press(browser.Backspace)
	}
	b.Until(`document.querySelector('#faults li')`)
	browser.Eval[any](b, `(function () {
		const began = performance.now();
		const sheets = document.querySelector('#sheets');
		new MutationObserver(() => { if (!sheets.classList.contains('old')) { window.drawn = window.drawn || performance.now() - began; } }).observe(sheets, { attributes: true });
	})()`)
	b.Press(browser.Backspace)
	b.Until(`window.drawn`)
	t.Logf("from a key to new sheets, 200 cuts: %.0f ms", browser.Eval[float64](b, `window.drawn`))
}
