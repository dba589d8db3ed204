// Package browser opens pages in a real browser, for tests. It needs Chromium or
// its like; where none is installed a test that asks for one is left out, and says
// so, unless FENCECARD_BROWSER=required makes that a failure.
package browser

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// Required is the environment variable that, set to "required", makes it a failure
// that no browser is installed.
const Required = "FENCECARD_BROWSER"

// patience is how long a test waits for what must come; nothing is measured by it.
const patience = 60 * time.Second

// Pixels are how many a millimetre has on every screen, by CSS.
const Pixels = 96 / 25.4

var names = []string{"chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"}

// installed is the browser's program, "" for none.
var installed = sync.OnceValue(func() string {
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
})

// Tab is one tab of a browser. Its methods fail the test where the browser does.
type Tab struct {
	t   testing.TB
	ctx context.Context
	far *problems
}

// problems are what pages complained of.
type problems struct {
	lock sync.Mutex
	all  []string
}

// Open starts a browser of its own with one tab, of a size in pixels and with a
// touch screen. Both end with the test, which fails where a page threw an error or
// was refused something by its policy.
func Open(t testing.TB, width, height int64) *Tab {
	t.Helper()
	path := installed()
	if path == "" {
		if os.Getenv(Required) == "required" {
			t.Fatal("no browser is installed, and " + Required + " requires one: install chromium")
		}
		t.Skip("left out: no browser is installed to test the page in; install chromium")
	}
	allocator, end := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.UserDataDir(t.TempDir()))...)
	t.Cleanup(end)
	ctx, close := chromedp.NewContext(allocator)
	t.Cleanup(func() {
		_ = chromedp.Cancel(ctx) // waits until the browser has gone
		close()
	})
	b := &Tab{t, ctx, &problems{}}
	b.begin(width, height)
	t.Cleanup(b.sound)
	return b
}

// Another opens one more tab of the same browser.
func (b *Tab) Another(width, height int64) *Tab {
	b.t.Helper()
	ctx, close := chromedp.NewContext(b.ctx)
	b.t.Cleanup(close)
	other := &Tab{b.t, ctx, b.far}
	other.begin(width, height)
	return other
}

func (b *Tab) begin(width, height int64) {
	b.t.Helper()
	// The first action starts the browser, which ends with its context.
	require.NoError(b.t, chromedp.Do(b.ctx, chromedp.Steps()))
	console := chromedp.Console(b.ctx)
	go func() {
		for message, err := range console {
			if err != nil {
				return
			}
			if message.IsException() {
				b.far.lock.Lock()
				b.far.all = append(b.far.all, message.String())
				b.far.lock.Unlock()
			}
		}
	}()
	b.do(chromedp.EmulateViewport(width, height, chromedp.EmulateTouch, chromedp.EmulateMobile))
}

func (b *Tab) sound() {
	b.far.lock.Lock()
	defer b.far.lock.Unlock()
	require.Empty(b.t, b.far.all, "errors in the page")
}

func (b *Tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	ctx, stop := context.WithTimeout(b.ctx, patience)
	defer stop()
	require.NoError(b.t, chromedp.Do(ctx, steps...))
}

// Go opens an address.
func (b *Tab) Go(address string) {
	b.t.Helper()
	b.do(chromedp.Navigate(address))
}

// Reload loads the page anew.
func (b *Tab) Reload() {
	b.t.Helper()
	b.do(chromedp.Reload())
}

// Back goes back as the browser's own button does.
func (b *Tab) Back() {
	b.t.Helper()
	Eval[any](b, "history.back()")
}

// Eval returns what an expression of the page's language is worth.
func Eval[T any](b *Tab, expression string) T {
	b.t.Helper()
	v, err := eval[T](b, expression)
	require.NoError(b.t, err, expression)
	return v
}

func eval[T any](b *Tab, expression string) (T, error) {
	ctx, stop := context.WithTimeout(b.ctx, patience)
	defer stop()
	return chromedp.Run(ctx, chromedp.Evaluate[T](expression))
}

// Until waits for an expression to be true. One that fails is not true yet: while a
// page is loaded, what it asks of is not there.
func (b *Tab) Until(expression string) {
	b.t.Helper()
	end := time.Now().Add(patience)
	for {
		is, err := eval[bool](b, "!!("+expression+")")
		if err == nil && is {
			return
		}
		if time.Now().After(end) {
			require.NoError(b.t, err, expression)
			require.FailNow(b.t, "it never came true: "+expression, "the page says: %s", Eval[string](b, "document.getElementById('told')?.textContent || document.body.innerText.slice(0, 500)"))
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// Text is what an element says.
func (b *Tab) Text(selector string) string {
	b.t.Helper()
	return Eval[string](b, fmt.Sprintf("document.querySelector(%q).textContent.trim()", selector))
}

// Tap touches an element with a finger, as briefly as one does.
func (b *Tab) Tap(selector string) {
	b.t.Helper()
	b.Hold(selector, 0)
}

// Hold touches an element for some time.
func (b *Tab) Hold(selector string, long time.Duration) {
	b.t.Helper()
	at := Eval[[]float64](b, fmt.Sprintf(`(function () {
		const e = document.querySelector(%q);
		let box = e.getBoundingClientRect();
		if (box.top < 120 || box.bottom > innerHeight - 120) { e.scrollIntoView({ block: "center" }); box = e.getBoundingClientRect(); }
		return [box.left + box.width / 2, box.top + box.height / 2];
	})()`, selector))
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
	TabKey = kb.Tab
	Enter  = kb.Enter
	Space  = " "
)

// Press presses keys, one after the other.
func (b *Tab) Press(keys string) {
	b.t.Helper()
	b.do(chromedp.KeyEvent(keys))
}

// Before runs a script in every page that is opened from now on, before its own.
func (b *Tab) Before(script string) {
	b.t.Helper()
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: script})
		return err
	}))
}

// Shot writes a picture of what is seen to a file, where the environment variable
// FENCECARD_SHOTS names a folder for it.
func (b *Tab) Shot(name string) {
	b.t.Helper()
	folder := os.Getenv("FENCECARD_SHOTS")
	if folder == "" {
		return
	}
	ctx, stop := context.WithTimeout(b.ctx, patience)
	defer stop()
	png, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	require.NoError(b.t, err)
	require.NoError(b.t, os.WriteFile(folder+"/"+name+".png", png, 0o600))
}
