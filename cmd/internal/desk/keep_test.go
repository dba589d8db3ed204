package desk

import (
	"bytes"
	"context"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/output/page/browser"
	"fencecard/setup/book"
)

// grooved is a plan of one groove, in a shop of its own or that of a file.
func grooved(shop string) string {
	return "title: Board\nunit: in\nwood: white ash\n" + shop +
		"pieces:\n  - piece: board\n    size: {left-right: 30, front-back: 6, top-bottom: 3/4}\n    cuts:\n" +
		"      - {groove: panel, in: top, width: 1/4, setback: 1 from front, depth: 1/4}\n"
}

// learns asks a desk, and returns its answer or its trouble.
func learns(t *testing.T, w Work, q learnt) (lesson, string) {
	t.Helper()
	body, err := json.Marshal(q)
	require.NoError(t, err)
	recorder := httptest.NewRecorder()
	New(w).ServeHTTP(recorder, httptest.NewRequest("POST", "/plan/learn", bytes.NewReader(body)))
	var l lesson
	var said trouble
	if recorder.Code != http.StatusOK {
		require.NoError(t, json.Unmarshal(recorder.Body.Bytes(), &said))
		return l, said.Trouble
	}
	require.NoError(t, json.Unmarshal(recorder.Body.Bytes(), &l))
	return l, ""
}

func TestKeepABit(t *testing.T) {
	own := asked(t, formAsked{planText: planText{grooved("")}, Do: ownShop}).Text
	w := workOn(t, nil)
	l, said := learns(t, w, learnt{planText: planText{own}, Setup: 1, Width: "0.246"})
	require.Empty(t, said)
	assert.Equal(t, own, l.Text, "only asked")
	assert.Contains(t, strings.Join(l.Says, " "), "0.246")
	l, said = learns(t, w, learnt{planText: planText{own}, Setup: 1, Width: "0.246", Do: theBit})
	require.Empty(t, said)
	assert.Equal(t, 1, strings.Count(l.Text, "measured: 0.246"), l.Text)
	assert.NoFileExists(t, w.Path, "the text is the maker's to save")

	_, said = learns(t, w, learnt{planText: planText{grooved("")}, Setup: 1, Width: "0.246", Do: theBit})
	assert.Contains(t, said, "built-in example shop")
	for _, width := range []string{"", "wide", "-1/4"} {
		_, said = learns(t, w, learnt{planText: planText{own}, Setup: 1, Width: width, Do: theBit})
		assert.NotEmpty(t, said, width)
	}
	_, said = learns(t, w, learnt{planText: planText{own}, Setup: 9, Width: "1/4"})
	assert.Contains(t, said, "no such setup")
}

func TestKeepABitInAShopFile(t *testing.T) {
	w := workOn(t, nil)
	file := filepath.Join(filepath.Dir(w.Path), "shop.yaml")
	require.NoError(t, os.WriteFile(file, examples.StarterShop, 0o600))
	w.Open = func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(w.Path), name)) }
	w.Shelf.Shop = func(_ context.Context, name string, change func([]byte) ([]byte, error)) error {
		assert.Equal(t, "shop.yaml", name)
		old, err := os.ReadFile(file)
		require.NoError(t, err)
		now, err := change(old)
		if err != nil {
			return err
		}
		return os.WriteFile(file, now, 0o600)
	}
	text := grooved("shop: shop.yaml\n")
	l, said := learns(t, w, learnt{planText: planText{text}, Setup: 1, Width: "0.246", Do: theBit})
	require.Empty(t, said)
	assert.Equal(t, text, l.Text)
	holds, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, 1, strings.Count(string(holds), "measured: 0.246"))
}

// A setup goes into the book from a plan as it is saved, and only when it is said
// into the place of another.
func TestKeepASetup(t *testing.T) {
	text := grooved("")
	w := workOn(t, []byte(text))
	var kept []*book.Entry
	w.Shelf.Book = func(_ context.Context, e *book.Entry, instead bool) error {
		assert.False(t, instead)
		kept = append(kept, e)
		return nil
	}
	q := learnt{planText: planText{text}, Setup: 1, Name: "panel grooves", Note: "a slow feed", Fence: "1 1/64", Do: theSetup}
	_, said := learns(t, w, q)
	require.Empty(t, said)
	require.Len(t, kept, 1)
	assert.Equal(t, "panel grooves", kept[0].Name)
	assert.Equal(t, []string{"a slow feed"}, kept[0].Notes)

	unsaved := q
	unsaved.Text += "# more\n"
	_, said = learns(t, w, unsaved)
	assert.Contains(t, said, "save the plan first")
	for _, wrong := range []learnt{{Fence: "far"}, {Fence: "9"}, {Name: " "}} {
		bad := q
		if wrong.Name != "" {
			bad.Name = wrong.Name
		} else {
			bad.Fence = wrong.Fence
		}
		_, said = learns(t, w, bad)
		assert.NotEmpty(t, said)
	}
	assert.Len(t, kept, 1)
}

func TestKeepInABrowser(t *testing.T) {
	own := asked(t, formAsked{planText: planText{grooved("")}, Do: ownShop}).Text
	w := workOn(t, []byte(own))
	m := maker{browser.Open(t, 1280, 800), t}
	m.Go(serve(t, New(w)) + "/plan")
	m.Until(content)
	m.press(`document.querySelector('details.learn summary')`, `document.querySelector('details.learn input[name=width]')`)
	browser.Eval[any](m.Tab, `document.querySelector('details.learn input[name=width]').focus()`)
	m.Press("0.246")
	m.Shot("learn")
	m.press(`document.querySelector('details.learn button[value=bit]')`, `document.querySelector('#told').textContent.includes("0.246")`)
	m.press(`document.querySelector('#save')`, `document.querySelector('#told').textContent === "saved"`)
	holds, err := os.ReadFile(w.Path)
	require.NoError(t, err)
	assert.Equal(t, 1, strings.Count(string(holds), "measured: 0.246"))
	m.press(`document.querySelector('details.why summary')`, `document.querySelector('details.why li')`)
	m.Shot("why")
}
