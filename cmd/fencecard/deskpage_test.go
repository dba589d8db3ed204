package main

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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
	b.Until(`document.querySelector('#faults li button')?.textContent === "line 3"`)
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
