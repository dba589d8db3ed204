package page_test

import (
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/output/page"
	"fencecard/output/page/browser"
	"fencecard/setup/deck/deckcode"
)

const twoLegs = `
title: Legs
unit: in
wood: white ash
pieces:
  - piece: leg
    count: 2
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    cuts:
      - {mortise: rail, in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 1/2}
      - {mortise: side, in: left, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 1/2}
`

const (
	here     = "document.querySelector('section.here')"
	firstBox = "section.here .box[data-height='1'][data-copy='1']"
)

// is says that the first box of the run that is shown is in a state.
func is(state string) string {
	return "document.querySelector(\"" + firstBox + "\").classList.contains('is-" + state + "')"
}

// A tick is shown as done when it is stored and not before; it is still there when
// the page was loaded anew, and on another device at once.
func TestTickIsDoneWhenStored(t *testing.T) {
	t.Parallel()
	k := openDesk(t, deckOf(t, []byte(twoLegs)), page.About{})
	b := browser.Open(t, 360, 640)
	b.Go(k.at + "/run/1.1")
	b.Until(is("open"))
	b.Until("document.querySelector('#told').textContent.includes('stored at the desk')")
	k.set(func() { k.hold = make(chan struct{}) })
	b.Tap(firstBox)
	b.Until(is("wait"))
	assert.Equal(t, "mixed", browser.Eval[string](b, "document.querySelector(\""+firstBox+"\").getAttribute('aria-pressed')"))
	assert.Contains(t, b.Text("#told"), "1 tick not stored yet")
	assert.Empty(t, k.stored())
	b.Shot("360-waits")

	close(k.hold)
	b.Until(is("done"))
	k.set(func() { k.hold = nil })
	assert.Equal(t, []string{"leg 1 1 true"}, k.stored())
	b.Reload()
	b.Until(is("done"))

	other := b.Another(768, 1024)
	other.Go(k.at + "/run/1.1")
	other.Until(is("done"))
	other.Hold(firstBox, time.Second)
	other.Until(is("open"))
	b.Until(is("open"))
	assert.Equal(t, []string{"leg 1 1 true", "leg 1 1 false"}, k.stored())
}

// The program is killed; the page goes on, says so, and hands over what waits when
// the program is back: once.
func TestTicksWaitWhileTheProgramIsGone(t *testing.T) {
	t.Parallel()
	k := openDesk(t, deckOf(t, []byte(twoLegs)), page.About{})
	b := browser.Open(t, 360, 640)
	b.Go(k.at + "/run/1.1")
	b.Until(is("open") + " && bench.desk.state()")
	k.leave()
	b.Until("document.querySelector('#told').textContent.includes('does not answer')")
	b.Tap("section.here .done")
	b.Tap("section.here .done") // a finger that trembles
	time.Sleep(time.Second)
	b.Until("bench.queue.length() === 1")
	b.Tap("section.here .done")
	b.Until("document.querySelector('#told').textContent.includes('2 ticks not stored yet')")
	b.Tap("#up")
	b.Until(here + ".id === 'setup-1'")
	assert.Contains(t, b.Text("section.here .row .state"), "not stored yet")
	b.Shot("360-gone")

	k.come()
	b.Until("bench.queue.length() === 0 && document.querySelector('#told').textContent.includes('stored at the desk')")
	assert.Equal(t, []string{"leg 1 1 true", "leg 1 2 true"}, k.stored())
	assert.Zero(t, k.twice)
	assert.Equal(t, int64(0), browser.Eval[int64](b, "Object.keys(localStorage).length"))
}

// A tablet slept, and its connection died without a word: what others ticked meanwhile
// is shown when it is looked at again, and with what it asks then.
func TestConnectionThatDiedInSleep(t *testing.T) {
	t.Parallel()
	k := openDesk(t, deckOf(t, []byte(twoLegs)), page.About{})
	b := browser.Open(t, 360, 640)
	b.Go(k.at + "/run/1.1")
	b.Until(is("open") + " && bench.desk.state()")
	k.set(func() { k.mute = k.heard })
	other := browser.Open(t, 768, 1024)
	other.Go(k.at + "/run/1.1")
	other.Until(is("open") + " && bench.desk.state()")
	other.Tap(firstBox)
	other.Until(is("done"))
	assert.True(t, browser.Eval[bool](b, is("open")), "nobody told it")
	browser.Eval[any](b, `document.dispatchEvent(new Event("visibilitychange"))`)
	b.Until(is("done"))
}

// An answer that is lost on its way: the ticks are sent again and count once.
func TestLostAnswer(t *testing.T) {
	t.Parallel()
	k := openDesk(t, deckOf(t, []byte(twoLegs)), page.About{})
	b := browser.Open(t, 360, 640)
	b.Go(k.at + "/run/1.1")
	b.Until(is("open") + " && bench.desk.state()")
	k.set(func() { k.lose = true })
	b.Tap("section.here .done")
	b.Until("bench.queue.length() === 0")
	assert.Equal(t, []string{"leg 1 1 true"}, k.stored())
	assert.Equal(t, 1, k.twice)
}

// A page is closed with ticks that were not stored: the next one takes them up, with
// the numbers they had.
func TestQueueOutlivesThePage(t *testing.T) {
	t.Parallel()
	k := openDesk(t, deckOf(t, []byte(twoLegs)), page.About{})
	full := func(w http.ResponseWriter) bool {
		w.WriteHeader(http.StatusInternalServerError)
		_, _ = w.Write([]byte(`{"wrong": "It could not be stored."}`))
		return true
	}
	k.answer = full
	b := browser.Open(t, 360, 640)
	b.Go(k.at + "/run/1.1")
	b.Until(is("open") + " && bench.desk.state()")
	b.Tap("section.here .done")
	b.Until("document.querySelector('#told').textContent.includes('could not be stored')")
	b.Go("about:blank")
	b.Go(k.at + "/run/1.1")
	b.Until(is("wait"))
	b.Tap("section.here .done") // of another page, whose first tick has the same number
	b.Until("bench.queue.length() === 2")
	k.set(func() { k.answer = nil })
	b.Until("bench.queue.length() === 0")
	b.Until("[1, 2].every(function (c) { return bench.boxes.state(bench.boxes.box(bench.boxes.find('1.1'), 1, c)) === 'done'; })")
	assert.Equal(t, []string{"leg 1 1 true", "leg 1 2 true"}, k.stored())
	assert.NotEqual(t, k.came[0].Device, k.came[1].Device)
}

// What the page says where the program refuses it.
func TestRefused(t *testing.T) {
	t.Parallel()
	k := openDesk(t, deckOf(t, []byte(twoLegs)), page.About{})
	b := browser.Open(t, 360, 640)
	b.Go(k.at + "/run/1.1")
	b.Until(is("open") + " && bench.desk.state()")
	k.set(func() {
		k.answer = func(w http.ResponseWriter) bool { w.WriteHeader(http.StatusForbidden); return true }
	})
	b.Tap(firstBox)
	b.Until("document.querySelector('#told').textContent.includes('scan the code at the desk')")
	b.Until(is("wait"))

	// No tick of this program's: it is thrown away, and the next ones go on.
	refusals := 0
	k.set(func() {
		k.answer = func(w http.ResponseWriter) bool {
			refusals++
			if refusals == 1 {
				w.WriteHeader(http.StatusBadRequest)
			}
			return refusals == 1
		}
	})
	b.Tap("section.here .box[data-height='1'][data-copy='2']")
	b.Until("bench.queue.length() === 0")
	assert.Len(t, k.stored(), 2)
}

// A plan that was changed is told of, and taken between runs by a press.
func TestChangedPlan(t *testing.T) {
	t.Parallel()
	k := openDesk(t, deckOf(t, []byte(twoLegs)), page.About{})
	b := browser.Open(t, 360, 640)
	b.Go(k.at + "/run/1.1")
	b.Until(is("open") + " && bench.desk.state()")
	text := "document.querySelector('main').textContent"
	before := browser.Eval[string](b, text)
	k.set(func() { k.code = "zzzz" })
	b.Until("document.querySelector('#told').textContent.includes('2 runs differ')")
	assert.Equal(t, before, browser.Eval[string](b, text), "numbers never change under the hand")
	assert.True(t, browser.Eval[bool](b, "document.querySelector('#take').hidden"))
	b.Tap("#up")
	b.Until("!document.querySelector('#take').hidden")
	b.Shot("360-differs")
	k.set(func() { k.page = strings.ReplaceAll(k.page, "deck "+deckOf(t, []byte(twoLegs)).Code, "deck zzzz") })
	b.Tap("#take")
	b.Until("document.title.includes('zzzz') || document.querySelector('.top').textContent.includes('zzzz')")
}

// A new batch has no ticks, and what waited for the old one does not tick it.
func TestNewBatch(t *testing.T) {
	t.Parallel()
	k := openDesk(t, deckOf(t, []byte(twoLegs)), page.About{})
	b := browser.Open(t, 360, 640)
	b.Go(k.at + "/run/1.1")
	b.Until(is("open") + " && bench.desk.state()")
	b.Tap(firstBox)
	b.Until(is("done"))
	b.Go(k.at + "/")
	b.Until("document.querySelector('#batch').textContent === '2026-01-31 a'")
	b.Tap("#new-batch") // too short
	b.Until("document.querySelector('#told').textContent.includes('Hold it')")
	assert.Equal(t, "2026-01-31 a", k.batch)
	b.Hold("#new-batch", time.Second)
	b.Until("document.querySelector('#batch').textContent === '2026-01-31 b'")
	b.Go(k.at + "/run/1.1")
	b.Until(is("open") + " && bench.desk.state()")
}

// Where something was measured, a new batch does not begin before it is said what goes
// from sight and how it is kept.
func TestNewBatchAsksAboutWhatWasMeasured(t *testing.T) {
	t.Parallel()
	d := deckOf(t, []byte(twoLegs))
	k := openDesk(t, d, page.About{Plan: "/plan"})
	u := &d.Setups[0]
	k.tries = []map[string]string{{"says": deckcode.Says(u, &u.Runs[0]), "what": "cut", "html": "<p>1/64 off</p>"}}
	b := browser.Open(t, 360, 640)
	b.Go(k.at + "/")
	b.Until("document.querySelector('#batch').textContent === '2026-01-31 a'")
	b.Hold("#new-batch", time.Second)
	b.Until("!document.querySelector('#batch-asks').hidden")
	assert.Contains(t, b.Text("#batch-asks"), "In this batch something was measured at one run:")
	assert.Contains(t, b.Text("#batch-asks"), "setup 1, run 1.1, ")
	assert.Contains(t, b.Text("#batch-asks"), "kept in the setup book: below the sheet of its setup, under THE PLAN")
	b.Shot("360-new-batch")
	b.Tap("#batch-stays")
	b.Until("document.querySelector('#batch-asks').hidden")
	assert.Equal(t, "2026-01-31 a", k.batch)
	b.Hold("#new-batch", time.Second)
	b.Until("!document.querySelector('#batch-asks').hidden")
	b.Tap("#batch-begins")
	b.Until("document.querySelector('#batch').textContent === '2026-01-31 b' && document.querySelector('#batch-asks').hidden")
}

// What was measured at a run that the plan has changed since goes from sight as well.
func TestNewBatchAsksAboutARunThatChanged(t *testing.T) {
	t.Parallel()
	k := openDesk(t, deckOf(t, []byte(twoLegs)), page.About{})
	k.tries = []map[string]string{{"says": "as it was", "what": "cut", "html": "<p>1/64 off</p>"}, {"says": "as it was", "what": "table", "html": "<p>correct</p>"}}
	b := browser.Open(t, 360, 640)
	b.Go(k.at + "/")
	b.Until("document.querySelector('#batch').textContent === '2026-01-31 a'")
	b.Hold("#new-batch", time.Second)
	b.Until("!document.querySelector('#batch-asks').hidden")
	assert.Contains(t, b.Text("#batch-asks"), "In this batch something was measured at one run:")
	assert.Contains(t, b.Text("#batch-asks"), "one run as the plan had it before it changed")
	assert.Equal(t, "2026-01-31 a", k.batch)
}

// TRY sends what was typed on the keypad and shows the answer; without the program
// it says that it has none.
func TestTry(t *testing.T) {
	t.Parallel()
	d := deckOf(t, examples.BootBench)
	k := openDesk(t, d, page.About{Questions: map[string]page.Questions{"3.1": {
		Table: []page.Question{{Name: "near", Words: "fence face to the near edge of the bit", Unit: "in"}, {Name: "far", Words: "fence face to the far edge of the bit", Unit: "in"}},
	}}})
	b := browser.Open(t, 360, 640)
	b.Go(k.at + "/try/3.1")
	b.Until("document.querySelector('section.here .keypad')")
	key := func(name string) {
		b.Tap("section.here .keypad button[data-key='" + name + "']")
	}
	for _, name := range []string{"1", "and", "3", "/16", "2", "←", "/2", "←"} {
		key(name)
	}
	b.Tap("section.here input[name=far]")
	key("2")
	b.Tap("section.here .ask")
	b.Until("document.querySelector('section.here .answer b')")
	assert.Equal(t, "It would cut 1/64 too far.", b.Text("section.here .answer"))
	assert.Equal(t, []string{"deck=" + d.Code + "&far=2&near=1+3%2F16&run=3.1&what=marks"}, k.tried)
	b.Shot("360-answer")
	k.leave()
	b.Tap("section.here .ask")
	b.Until("document.querySelector('section.here .answer').textContent.includes('does not answer')")
	require.Equal(t, "1 3/16", browser.Eval[string](b, "document.querySelector('section.here input[name=near]').value"))
	k.come()
}
