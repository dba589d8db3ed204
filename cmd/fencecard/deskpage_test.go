package main

import (
	"bytes"
	"encoding/json"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/output/page/browser"
)

// The element of the plan's screen that is typed into.
const typedInto = `document.querySelector('#text').shadowRoot?.querySelector('.cm-content')`

// A fault typed at the desk stands at its line, what is saved is in the file, and the
// table shows it.
func TestWriteAtTheDesk(t *testing.T) {
	plan, _ := leg(t)
	book, _ := aBook(t)
	s := serve(t, plan, book)
	before := s.state().FileCode
	b := browser.Open(t, 1280, 800)
	b.Go(s.address)
	b.Until(`document.querySelector('a[href="/plan"]')`)
	b.Go(s.address + "plan")
	b.Until(typedInto)
	b.Until(`document.querySelector('#sheets').dataset.code === "` + before + `"`)

	// At the end of the line of the unit.
	browser.Eval[any](b, typedInto+`.focus()`)
	b.Press(browser.Down + browser.Down)
	b.Press(browser.End)
	b.Press("x")
	b.Until(`document.querySelector('#faults li .line')?.textContent === "line 3"`)
	b.Press(browser.Backspace)
	b.Until(`!document.querySelector('#faults li')`)
	b.Press("   # as sawn")
	b.Tap("#save")
	b.Until(`document.querySelector('#told').textContent === "saved"`)
	holds, err := os.ReadFile(plan)
	require.NoError(t, err)
	lines := strings.SplitAfter(legPlan, "\n")
	lines[2] = strings.TrimSuffix(lines[2], "\n") + "   # as sawn\n"
	assert.Equal(t, strings.Join(lines, ""), string(holds))
	assert.Equal(t, before, s.state().FileCode, "a remark changes no sheet")
}

// What the table taught goes into the shop file and the setup book that the plan and
// the program name.
func TestKeepAtTheDesk(t *testing.T) {
	plan, _ := leg(t)
	shop := filepath.Join(filepath.Dir(plan), "shop.yaml")
	require.NoError(t, os.WriteFile(shop, examples.StarterShop, 0o666))
	text := strings.Replace(legPlan, "unit: in\n", "unit: in\nshop: shop.yaml\n", 1)
	require.NoError(t, os.WriteFile(plan, []byte(text), 0o666))
	flag, _ := aBook(t)
	s := serve(t, plan, flag)
	ask := func(q map[string]any) (int, string) {
		q["text"], q["setup"] = text, 1
		body, err := json.Marshal(q)
		require.NoError(t, err)
		r, err := http.NewRequest(http.MethodPost, s.address+"plan/learn", bytes.NewReader(body))
		require.NoError(t, err)
		r.Header.Set("Origin", strings.TrimSuffix(s.address, "/"))
		answer, err := once.Do(r)
		require.NoError(t, err)
		defer answer.Body.Close()
		said, err := io.ReadAll(answer.Body)
		require.NoError(t, err)
		return answer.StatusCode, string(said)
	}
	status, said := ask(map[string]any{"do": "setup", "name": "rail mortises"})
	assert.Equal(t, http.StatusOK, status, said)
	entry, err := wholeBook(t, strings.TrimPrefix(flag, "--book=")).NamedOrCoded("rail mortises")
	require.NoError(t, err)
	assert.Equal(t, `setup 1 of "Leg" (leg.yaml)`, entry.From)
	status, said = ask(map[string]any{"do": "setup", "name": "rail mortises"})
	assert.Equal(t, http.StatusConflict, status)
	assert.Contains(t, said, "already")
	// A name that is the code of a setup is free.
	status, said = ask(map[string]any{"do": "setup", "name": entry.Code})
	assert.Equal(t, http.StatusOK, status, said)
	status, said = ask(map[string]any{"do": "setup", "name": "rail mortises", "instead": true, "note": "slowly"})
	assert.Equal(t, http.StatusOK, status, said)

	status, said = ask(map[string]any{"do": "bit", "width": "0.372"})
	assert.Equal(t, http.StatusOK, status, said)
	holds, err := os.ReadFile(shop)
	require.NoError(t, err)
	assert.Equal(t, 1, strings.Count(string(holds), "measured: 0.372"))
	now, err := os.ReadFile(plan)
	require.NoError(t, err)
	assert.Equal(t, text, string(now))
}
