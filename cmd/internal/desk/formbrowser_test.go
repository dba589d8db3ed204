package desk

import (
	"encoding/json"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/joint"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planform"
	"fencecard/output/page/browser"
	"fencecard/setup"
)

// maker sits before the plan's screen.
type maker struct {
	*browser.Tab
	t *testing.T
}

func quotedJS(text string) string {
	quoted, _ := json.Marshal(text)
	return string(quoted)
}

// press presses a button by the expression that finds it, and waits for another to be
// true.
func (m maker) press(button, until string) {
	m.t.Helper()
	m.Until(button)
	browser.Eval[any](m.Tab, "("+button+").click()")
	m.Until(until)
}

// list goes to the list of what the plan has.
func (m maker) list() {
	m.t.Helper()
	m.press(`document.querySelector('#form-side [data-list]') || document.querySelector('#show-forms')`, `document.querySelector('[data-new=piece]')`)
}

// fill fills the fields of a form in and puts it into the plan.
func (m maker) fill(f planform.Form) {
	m.t.Helper()
	for _, field := range f.Filled() {
		switch field.Key {
		case planform.KindKey:
			continue
		}
		if field.Shape == keys.Spots {
			for i, spot := range spotsOf(field.Value) {
				row := fmt.Sprintf(`document.querySelectorAll('#form [data-key="%s"] .spot')[%d]`, field.Key, i)
				m.Until(row)
				m.choose(row+".querySelectorAll('select')[0]", spot.Piece)
				m.choose(row+".querySelectorAll('select')[1]", spot.Side)
				m.Until(fmt.Sprintf(`document.querySelectorAll('#form [data-key="%s"] .spot').length > %d`, field.Key, i+1))
			}
			continue
		}
		if outer, _, _ := strings.Cut(field.Key, "."); outer == place && f.Kind == planform.Joint {
			continue
		}
		if field.Shape == keys.FromSide {
			distance, ok := fromSide(field.Value)
			require.True(m.t, ok)
			m.measured(field.Key, distance)
			continue
		}
		named := fmt.Sprintf(`[...document.querySelectorAll('#form [name="%s"]')]`, field.Key)
		m.Until(named + ".length")
		if browser.Eval[bool](m.Tab, named+`.some((e) => e.type === "checkbox")`) {
			for _, word := range listOf(field.Value) {
				box := named + ".find((e) => e.value === " + quotedJS(word) + ")"
				browser.Eval[any](m.Tab, box+".click()")
				m.Until(box + ".checked")
			}
			continue
		}
		m.choose(named+"[0]", field.Value)
	}
	for _, d := range directions {
		if lies, ok := liesOf(&f, d.Dimension); ok && lies.From != "" {
			m.measured(place+"/"+d.String(), lies)
		}
	}
	m.press(`document.querySelector('#form button.main')`, `document.querySelector('#form')?.dataset.at`)
}

// measured fills a number in and chooses what it is measured from.
func (m maker) measured(name string, as distance) {
	m.t.Helper()
	if as.Number != "" {
		m.choose(fmt.Sprintf(`document.querySelector('#form [name="%s/number"]')`, name), as.Number)
	}
	m.choose(fmt.Sprintf(`document.querySelector('#form [name="%s/from"]')`, name), as.From)
}

// choose types or chooses a value, as leaving the field ends it.
func (m maker) choose(element, value string) {
	m.t.Helper()
	browser.Eval[any](m.Tab, fmt.Sprintf(`(function (e) {
		e.focus();
		e.value = %s;
		e.dispatchEvent(new Event("input", { bubbles: true }));
		e.dispatchEvent(new Event("change", { bubbles: true }));
	})(%s)`, quotedJS(value), element))
	require.Equal(m.t, value, browser.Eval[string](m.Tab, element+".value"))
}

// The boot bench entered by forms alone gives the deck of its file; saved, changed in
// another editor and shown again, it is what was written.
func TestTheBenchByForms(t *testing.T) {
	w := workOn(t, []byte("title: Boot bench\nunit: in\n"))
	b := browser.Open(t, 1280, 800)
	b.Go(serve(t, New(w)) + "/plan")
	m := maker{b, t}
	m.Until(content)
	m.Until(`document.querySelector('[data-new=piece]')`) // a plan without pieces shows the forms
	b.Shot("forms-list-empty")
	forms, err := planform.Read("bench.yaml", examples.BootBench)
	require.NoError(t, err)
	piece := ""
	for _, f := range forms {
		switch f.Kind {
		case planform.Plan:
			m.press(`document.querySelector('[data-at="/"]')`, `document.querySelector('#form [name=wood]')`)
			m.choose(`document.querySelector('#form [name=wood]')`, f.Value("wood"))
			b.Shot("forms-plan")
		case planform.Piece:
			m.list()
			m.press(`document.querySelector('[data-new=piece]')`, `document.querySelector('#form[data-kind=piece][data-at=""]')`)
			m.fill(f)
			piece = f.Title
			b.Shot("forms-piece-" + strings.ReplaceAll(f.Title, " ", "-"))
		case planform.Cut:
			m.list()
			m.press(fmt.Sprintf(`[...document.querySelectorAll('.things button')].find((b) => b.textContent.replace(/ × .*/, "") === %q)`, piece), `document.querySelector('[data-new=cut]')`)
			m.press(`document.querySelector('[data-new=cut]')`, `document.querySelector('[data-word="`+f.Value("kind")+`"]')`)
			m.press(`document.querySelector('[data-word="`+f.Value("kind")+`"]')`, `document.querySelector('#form [name=name]')`)
			m.fill(f)
			b.Shot("forms-cut-" + f.Value("kind"))
		case planform.Joint:
			kind := joint.KindNamed(f.Value("kind")).Name // as it is offered
			m.list()
			m.press(`document.querySelector('[data-new=joint]')`, `document.querySelector('[data-word="`+kind+`"]')`)
			m.press(`document.querySelector('[data-word="`+kind+`"]')`, `document.querySelector('#form [name=name]')`)
			m.fill(f)
			b.Shot("forms-joint-" + strings.ReplaceAll(kind, " ", "-"))
		}
	}
	m.list()
	b.Shot("forms-list")
	m.Until(`!document.querySelector('#faults li')`)
	m.press(`document.querySelector('#save')`, `document.querySelector('#told').textContent === "saved"`)
	text, err := os.ReadFile(w.Path)
	require.NoError(t, err)
	assert.Equal(t, deckCode(t, examples.BootBench), deckCode(t, text), string(text))

	// In another editor, then here, and both are kept.
	elsewhere := strings.Replace(string(text), "wood: white ash", "wood: white oak", 1)
	require.NoError(t, os.WriteFile(w.Path, []byte(elsewhere), 0o600))
	b.Reload()
	m.Until(content)
	m.list()
	m.press(`document.querySelector('[data-at="/"]')`, `document.querySelector('#form [name=wood]')?.value === "white oak"`)
	m.choose(`document.querySelector('#form [name=title]')`, "Bench: of oak")
	m.Until(`document.querySelector('#told').textContent === "not saved"`)
	m.press(`document.querySelector('#save')`, `document.querySelector('#told').textContent === "saved"`)
	now, err := os.ReadFile(w.Path)
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(elsewhere, "title: Boot bench", `title: "Bench: of oak"`, 1), string(now))
}

func deckCode(t *testing.T, text []byte) string {
	t.Helper()
	plan, err := planfile.Read("bench.yaml", text, nil)
	require.NoError(t, err)
	d, err := setup.Make(plan)
	require.NoError(t, err)
	return d.Code
}

// One history for the text and the forms: its buttons say what they undo and do again, and
// the forms follow.
func TestUndoAndRedo(t *testing.T) {
	b := browser.Open(t, 1280, 800)
	b.Go(serve(t, New(workOn(t, []byte("title: Shelf\nunit: in\n")))) + "/plan")
	m := maker{b, t}
	m.Until(content)
	m.press(`document.querySelector('[data-new=piece]')`, `document.querySelector('#form[data-at=""]')`)
	assert.True(t, browser.Eval[bool](b, `document.querySelector('#undo').disabled && document.querySelector('#redo').disabled`))
	piece := planform.Blank(planform.Piece, "", nil)
	for key, value := range map[string]string{"piece": "rail", "size.left-right": "20", "size.front-back": "1", "size.top-bottom": "3"} {
		piece.Set(key, value)
	}
	m.fill(piece)
	m.Until(`document.querySelector('#undo').textContent === "Undo adding a piece"`)
	m.choose(`document.querySelector('#form [name="size.left-right"]')`, "24")
	m.Until(`document.querySelector('#undo').textContent === "Undo changing rail"`)
	b.Tap("#fold") // who begins by forms has it folded away
	browser.Eval[any](b, content+`.focus()`)
	b.Press("#") // one key: two that come slowly are two steps
	m.Until(`document.querySelector('#undo').textContent === "Undo typing"`)
	b.Shot("undo")
	text := content + `.innerText`
	b.Tap("#undo")
	m.Until(`document.querySelector('#undo').textContent === "Undo changing rail" && document.querySelector('#redo').textContent === "Redo typing"`)
	b.Tap("#undo")
	m.Until(text + `.includes("left-right: 20") && document.querySelector('#form [name="size.left-right"]')?.value === "20"`)
	b.Tap("#undo")
	m.Until(`!` + text + `.includes("rail") && !document.querySelector('#form')`)
	b.Tap("#redo")
	m.Until(text + `.includes("left-right: 20") && document.querySelector('#redo').textContent === "Redo changing rail"`)
	b.Tap("#redo")
	m.Until(text + `.includes("left-right: 24")`)
	m.Until(`document.querySelector('#form [name="size.left-right"]')?.value === "24"`) // back where it was
	m.press(`document.querySelector('#form-side [data-do=remove]')`, `document.querySelector('#undo').textContent === "Undo taking out rail"`)
	assert.True(t, browser.Eval[bool](b, `document.querySelector('#redo').disabled`), "what was undone before is gone")
}

// What is said of the plan opens the form that it belongs to; the text is folded away for
// one who began by forms, and comes where its line is asked for.
func TestFromAFaultToItsForm(t *testing.T) {
	b := browser.Open(t, 1280, 800)
	w := workOn(t, []byte("title: Shelf\nunit: in\n"))
	b.Go(serve(t, New(w)) + "/plan")
	m := maker{b, t}
	const folded = `document.querySelector('#writing').offsetWidth === 0`
	m.press(`document.querySelector('[data-new=piece]')`, `document.querySelector('#form[data-at=""]')`)
	assert.True(t, browser.Eval[bool](b, folded))
	piece := planform.Blank(planform.Piece, "", nil)
	piece.Set("piece", "rail")
	piece.Set("size.left-right", "20")
	m.fill(piece)
	m.Until(`document.querySelector('#told').textContent === "not right yet: Say how long the piece is from front to back."`)
	m.Until(`document.activeElement.name === "size.front-back"`)
	b.Shot("another")
	m.press(`document.querySelector('#form-side [data-new=piece]')`, `document.querySelector('#form[data-at=""]')`) // another piece
	m.list()
	const said = `[...document.querySelectorAll('#faults li span')].filter((e) => e.offsetWidth).map((e) => e.textContent).join()`
	m.Until(said + ` === "Say how long the piece is from front to back. Say how long the piece is from top to bottom."`)
	b.Shot("fault-folded")
	assert.False(t, browser.Eval[bool](b, `[...document.querySelectorAll('#faults .line')].some((e) => e.offsetWidth)`))
	m.press(`document.querySelector('#faults .of')`, `document.querySelector('#form[data-at="pieces/0"]')`)
	b.Shot("fault-form")
	m.choose(`document.querySelector('#form [name="size.front-back"]')`, "1")
	m.choose(`document.querySelector('#form [name="size.top-bottom"]')`, "3")
	m.Until(`!document.querySelector('#faults li')`)
	m.press(`document.querySelector('#save')`, `document.querySelector('#told').textContent === "saved"`)
	b.Reload()
	m.Until(content)
	assert.True(t, browser.Eval[bool](b, folded), "kept")

	// A plan that was written in an editor has its text beside it, and the sheets' warnings
	// open forms.
	other := browser.Open(t, 1280, 800)
	other.Go(serve(t, New(workOn(t, examples.BootBench))) + "/plan")
	m = maker{other, t}
	m.Until(content)
	assert.False(t, browser.Eval[bool](other, folded))
	m.press(`document.querySelector('#deck .said [data-at^="joints/"]')`, `document.querySelector('#form[data-kind=joint]')`)
	other.Tap("#fold")
	other.Tap("#show-sheets")
	m.Until(folded)
	m.press(`document.querySelector('#deck .said .line')`, `!(`+folded+`)`)
}

// From a plan to the forms of the shop file that it names, and back.
func TestShopFileByForms(t *testing.T) {
	w := workOn(t, []byte("unit: in\nshop: shop.yaml\npieces:\n  - piece: side\n    size: {left-right: 1, front-back: 6, top-bottom: 20}\n"))
	path := filepath.Join(filepath.Dir(w.Path), "shop.yaml")
	require.NoError(t, os.WriteFile(path, examples.StarterShop, 0o600))
	w.Open = func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(w.Path), name)) }
	b := browser.Open(t, 1280, 800)
	b.Go(serve(t, New(w)) + "/plan")
	m := maker{b, t}
	m.Until(content)
	m.list()
	b.Tap(`#form-side a[href="/plan?file=shop"]`)
	m.Until(`document.querySelector('#name').textContent === "shop.yaml"`)
	m.press(`document.querySelector('#form-side [data-at="/"]')`, `document.querySelector('#form [name=lift]')?.value === "2"`)
	b.Shot("shop-file")
	m.choose(`document.querySelector('#form [name=lift]')`, "3 1/2")
	m.Until(`document.querySelector('#undo').textContent === "Undo changing table and fence"`)
	m.press(`document.querySelector('#save')`, `document.querySelector('#told').textContent === "saved"`)
	holds, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(string(examples.StarterShop), "lift: 2 ", "lift: 3 1/2 ", 1), string(holds))
	b.Tap(`a[href="/plan"]`)
	m.Until(`document.querySelector('#name').textContent === "bench.yaml"`)
}

// What a maker presses comes, however slow the program is: the forms follow the text a
// little after it was changed, and what follows is not to come in its place.
func TestWhatIsPressedComes(t *testing.T) {
	plan := New(workOn(t, []byte("title: Shelf\nunit: in\nwood: oak\npieces:\n  - {piece: side, size: {left-right: 6, front-back: 1, top-bottom: 20}}\n")))
	var slow atomic.Bool
	b := browser.Open(t, 1280, 800)
	b.Go(serve(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if slow.Load() && r.Method == http.MethodPost && strings.HasSuffix(r.URL.Path, "/form") {
			time.Sleep(time.Second)
		}
		plan.ServeHTTP(w, r)
	})) + "/plan")
	m := maker{b, t}
	m.Until(content)
	m.list()
	m.Until(`document.querySelector('[data-at="pieces/0"]')`)
	slow.Store(true)
	browser.Eval[any](b, content+`.focus()`)
	m.Until(`document.activeElement.id === "text"`)
	browser.Eval[any](b, `document.querySelector('[data-at="pieces/0"]').click()`)
	b.Press("# a")
	m.Until(content + `.innerText.includes("# a")`)
	m.Until(`document.querySelector('#form[data-at="pieces/0"]')`)
}
