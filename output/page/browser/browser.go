// Package browser opens pages in a real browser, for tests. It needs Chromium or
// its like; where none is installed a test that asks for one is left out, and says
// so, unless FENCECARD_BROWSER=required makes that a failure.
//
// One browser serves all tests of a package, which end it in their TestMain:
//
//	func TestMain(m *testing.M) { os.Exit(browser.Shared(m).Run()) }
package browser

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"
)

// required is the environment variable that, set to "required", makes it a failure
// that no browser is installed.
const required = "FENCECARD_BROWSER"

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

// needed leaves a test out where there is no browser, or fails it.
func needed(t testing.TB) {
	t.Helper()
	switch {
	case installed() != "":
	case os.Getenv(required) == "required":
		t.Fatal("no browser is installed, and " + required + " requires one: install chromium")
	default:
		t.Skip("left out: no browser is installed to test the page in; install chromium")
	}
}

// shots is the folder in which pictures of the pages are left, "" for none.
func shots() string { return os.Getenv("FENCECARD_SHOTS") }

// Tests are those of a package, as TestMain gets them.
type Tests struct{ m interface{ Run() int } }

// Shared lets the tests of a package share one browser.
func Shared(m interface{ Run() int }) Tests { return Tests{m} }

// Run runs the tests and ends the browser.
func (ts Tests) Run() int {
	running.ends = true
	if shots() != "" {
		// A picture brings its tab before all others, where these lose a touch.
		if err := flag.Set("test.parallel", "1"); err != nil {
			panic(err)
		}
	}
	code := ts.m.Run()
	if err := running.end(); err != nil {
		fmt.Fprintln(os.Stderr, "the browser did not end:", err)
	}
	return code
}

// running is the browser of this process, started when the first test asks for it.
var running process

type process struct {
	ends    bool // somebody ends it
	lock    sync.Mutex
	started bool
	folder  string
	ctx     context.Context
	err     error
}

// browser is a context of the browser, to open tabs in.
func (p *process) browser() (context.Context, error) {
	p.lock.Lock()
	defer p.lock.Unlock()
	switch {
	case !p.ends:
		return nil, errors.New("the package has no TestMain that ends the browser: see browser.Shared")
	case !p.started:
		p.started = true
		p.err = p.start()
	}
	return p.ctx, p.err
}

func (p *process) start() (err error) {
	if p.folder, err = os.MkdirTemp("", "fencecard-browser"); err != nil {
		return err
	}
	allocator, _ := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(installed()), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.UserDataDir(p.folder))...)
	p.ctx, _ = chromedp.NewContext(allocator)
	return chromedp.Do(p.ctx, chromedp.Steps()) // the first action starts it
}

func (p *process) end() error {
	p.lock.Lock()
	defer p.lock.Unlock()
	if !p.started {
		return nil
	}
	err := p.err
	if err == nil {
		err = chromedp.Cancel(p.ctx) // waits until it has gone
	}
	return errors.Join(err, os.RemoveAll(p.folder))
}
