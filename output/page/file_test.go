package page_test

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery/examples"
	"fencecard/output/page"
	"fencecard/output/page/browser"
)

// A page in a file by itself: what is ticked is still ticked when it was loaded
// anew, in another tab as well, until it is unticked by holding.
func TestTicksOfAFile(t *testing.T) {
	t.Parallel()
	address := fileOf(t, deckOf(t, []byte(twoLegs)), page.About{})
	b := browser.Open(t, 360, 640)
	b.Go(address + "#run-1.1")
	b.Until(is("open"))
	assert.Contains(t, b.Text("#told"), "kept in this browser")
	b.Tap(firstBox)
	b.Until(is("done"))
	b.Reload()
	b.Until(is("done"))
	other := b.Another(768, 1024)
	other.Go(address + "#run-1.1")
	other.Until(is("done"))

	b.Tap(firstBox) // what is done is not unticked by a brush of the sleeve
	b.Until("document.querySelector('#told').textContent.includes('Hold it')")
	b.Until(is("done"))
	b.Hold(firstBox, time.Second)
	b.Until(is("open"))
	other.Until(is("open"))
	b.Tap("section.here .undo")
	b.Until(is("done"))
	other.Until(is("done"))
	b.Until("document.querySelector('section.here .undo').disabled")
}

// clock is one that is put ahead instead of waiting.
const clock = "var ahead = 0; (function () { const now = Date.now; Date.now = function () { return now() + ahead; }; })()"

// DONE goes through a setup as its sheet does: at each height every run and every
// piece of it, then the next height, and at last the next setup.
func TestDoneGoesOn(t *testing.T) {
	t.Parallel()
	d := deckOf(t, examples.BootBench)
	b := browser.Open(t, 360, 640)
	b.Before(clock)
	b.Go(fileOf(t, d, page.About{}) + "#sheet")
	b.Until("document.querySelector('#next').textContent.includes('run 1.1')")
	b.Tap("#next")
	var order []string
	for i := range 16 {
		b.Until(fmt.Sprintf("bench.boxes.count(bench.boxes.ofSetup(1)).done === %d", i))
		order = append(order, browser.Eval[string](b, here+".dataset.run + ' ' + "+here+".querySelector('.ladder .now').dataset.rung"))
		if i == 4 {
			assert.Contains(t, b.Text("#told"), "Now height 2: unplug, set the bit")
			b.Shot("360-raise")
		}
		browser.Eval[any](b, "ahead += 700") // as long as a finger trembles
		b.Tap("section.here .done")
	}
	assert.Equal(t, []string{"1.1 1", "1.2 1", "1.3 1", "1.4 1", "1.1 2", "1.2 2", "1.3 2", "1.4 2",
		"1.1 3", "1.2 3", "1.3 3", "1.4 3", "1.1 4", "1.2 4", "1.3 4", "1.4 4"}, order)
	b.Until(here + ".id === 'setup-2'")
	b.Tap(".top a")
	b.Until(here + ".id === 'sheet'")
	assert.Contains(t, b.Text("#sheet [data-setup='1'] .state"), "all done")
	assert.Contains(t, b.Text("#next"), "run 2.1")
	b.Back()
	b.Until(here + ".id === 'setup-2'")
	b.Back()
	b.Until(here + ".id === 'run-1.4'")
	assert.Equal(t, "ALL HEIGHTS DONE", b.Text("section.here .heights"))
}

// A browser that keeps nothing for files, or at all: the page ticks and says that it
// forgets.
func TestBrowserThatKeepsNothing(t *testing.T) {
	t.Parallel()
	b := browser.Open(t, 360, 640)
	b.Before(`Object.defineProperty(window, "localStorage", { get: function () { throw new DOMException("no"); } })`)
	b.Go(fileOf(t, deckOf(t, []byte(twoLegs)), page.About{}) + "#run-1.1")
	b.Until(is("open"))
	assert.Contains(t, b.Text("#told"), "ticks are lost when the page is closed")
	b.Tap(firstBox)
	b.Until(is("done"))

	k := openDesk(t, deckOf(t, []byte(twoLegs)), page.About{})
	b.Go(k.at + "/run/1.1")
	b.Until(is("open") + " && bench.desk.state()")
	k.leave()
	b.Until("bench.desk.gone()")
	b.Tap(firstBox)
	b.Until("document.querySelector('#told').textContent.includes('leave the page open')")
	k.come()
	b.Until(is("done"))
}
