package browser

import (
	"context"
	"fmt"
	"os"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// patience is how long a test waits for what must come; nothing is measured by it.
const patience = 60 * time.Second

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

// Open opens a tab with a touch screen, of a size in pixels, as on a device of its
// own: it knows nothing of what the tabs of other tests kept. It ends with the test,
// which fails where a page threw an error or was refused something by its policy.
func Open(t testing.TB, width, height int64) *Tab {
	t.Helper()
	needed(t)
	all, err := running.browser()
	require.NoError(t, err)
	ctx, end := chromedp.NewContext(all, chromedp.WithNewBrowserContext())
	b := &Tab{t, ctx, &problems{}}
	t.Cleanup(end)
	b.begin(width, height)
	t.Cleanup(b.sound)
	return b
}

// Another opens one more tab on the same device.
func (b *Tab) Another(width, height int64) *Tab {
	b.t.Helper()
	ctx, end := chromedp.NewContext(b.ctx)
	b.t.Cleanup(end)
	other := &Tab{b.t, ctx, b.far}
	other.begin(width, height)
	return other
}

func (b *Tab) begin(width, height int64) {
	b.t.Helper()
	require.NoError(b.t, chromedp.Do(b.ctx, chromedp.Steps())) // the first action opens the tab, which ends with its context
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

// Before runs a script in every page that is opened from now on, before its own.
func (b *Tab) Before(script string) {
	b.t.Helper()
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: script})
		return err
	}))
}

// Sleep stops all that the page does, as a tablet does whose screen went dark.
func (b *Tab) Sleep() { b.t.Helper(); b.live(page.SetWebLifecycleStateStateFrozen) }

// Wake lets it go on. It takes no touch from then on in a browser without a screen.
func (b *Tab) Wake() { b.t.Helper(); b.live(page.SetWebLifecycleStateStateActive) }

func (b *Tab) live(state page.SetWebLifecycleStateState) {
	b.t.Helper()
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, page.SetWebLifecycleState, page.SetWebLifecycleStateParams{State: state})
		return err
	}))
}

// Shot writes a picture of what is seen to a file, where the environment variable
// FENCECARD_SHOTS names a folder for it, which is made.
func (b *Tab) Shot(name string) {
	b.t.Helper()
	if folder := shots(); folder != "" {
		require.NoError(b.t, os.MkdirAll(folder, 0o755))
		require.NoError(b.t, os.WriteFile(folder+"/"+name+".png", b.Picture(), 0o600))
	}
}

// Picture is what is seen, as a PNG file.
func (b *Tab) Picture() []byte {
	b.t.Helper()
	ctx, stop := context.WithTimeout(b.ctx, patience)
	defer stop()
	png, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	require.NoError(b.t, err)
	return png
}
