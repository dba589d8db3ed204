package browser

import (
	"context"
	"fmt"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// Tap touches an element with a finger, as briefly as one does.
func (b *Tab) Tap(selector string) {
	b.t.Helper()
	b.Hold(selector, 0)
}

// Hold touches an element for some time.
func (b *Tab) Hold(selector string, long time.Duration) {
	b.t.Helper()
	where := fmt.Sprintf(`(async function () {
		const e = document.querySelector(%q);
		const box = e.getBoundingClientRect();
		if (box.top < 120 || box.bottom > innerHeight - 120) { e.scrollIntoView({ block: "center" }); }
		// A finger comes when what was scrolled is seen: two frames later at the latest.
		const frame = function () { return new Promise(function (go) { requestAnimationFrame(go); setTimeout(go, 300); }); };
		await frame();
		await frame();
		const seen = e.getBoundingClientRect();
		return [seen.left + seen.width / 2, seen.top + seen.height / 2];
	})()`, selector)
	ctx, stop := context.WithTimeout(b.ctx, patience)
	defer stop()
	at, err := chromedp.Run(ctx, chromedp.Evaluate[[]float64](where, chromedp.EvalAwaitPromise))
	require.NoError(b.t, err, selector)
	b.do(touch(input.DispatchTouchEventTypeTouchStart, &input.TouchPoint{X: at[0], Y: at[1]}))
	time.Sleep(long)
	b.do(touch(input.DispatchTouchEventTypeTouchEnd))
}

func touch(what input.DispatchTouchEventType, at ...*input.TouchPoint) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: what, TouchPoints: append([]*input.TouchPoint{}, at...)})
		return err
	})
}

// Keys without a letter, for [Tab.Press].
const (
	TabKey    = kb.Tab
	Enter     = kb.Enter
	Space     = " "
	Down      = kb.ArrowDown
	End       = kb.End
	Backspace = kb.Backspace
)

// Press presses keys, one after the other.
func (b *Tab) Press(keys string) {
	b.t.Helper()
	b.do(chromedp.KeyEvent(keys))
}
