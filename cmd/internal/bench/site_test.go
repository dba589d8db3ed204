package bench

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"net"
	"net/http"
	"net/url"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"fencecard/cmd/internal/ticks"
	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckcode"
)

const legPlan = `
title: Leg & <b>rail</b>
unit: in
wood: white ash
pieces:
  - piece: leg <script>alert(1)</script>
    count: 4
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    cuts:
      - {mortise: rail, in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 1}
      - {groove: panel, in: front, width: 1/4, setback: 1/2 from left, depth: 1/4}
`

// table is a server under test, and the plan that it serves.
type table struct {
	t      *testing.T
	sites  []Site
	server *Server
	ticks  *ticks.File
	path   string // of the ticks

	lock    sync.Mutex
	plan    string
	letting []string
	faulty  []error
}

const underTest = "0123456789abcdef"

// set serves a plan until the test ends. Shared adds a site at 127.0.0.2.
func set(t *testing.T, plan string, shared bool) *table {
	t.Helper()
	b := &table{t: t, plan: plan, path: filepath.Join(t.TempDir(), "ticks.jsonl")}
	at := ""
	if shared {
		if runtime.GOOS == "darwin" {
			t.Skip("it has one loopback address")
		}
		at = "127.0.0.2"
	}
	var err error
	b.ticks, err = ticks.Open(t.Context(), b.path, underTest, "leg.yaml", time.Now())
	require.NoError(t, err)
	b.sites, err = listen(0, at)
	require.NoError(t, err)
	b.server = New(t.Context(), Options{Make: b.make, Look: b.look, Ticks: b.ticks, Letting: b.let, Faulty: b.fault, Desk: writing})
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- b.server.Serve(ctx, b.sites...) }()
	t.Cleanup(func() {
		stop()
		require.NoError(t, <-ended)
	})
	return b
}

// writing stands for the plan's screen.
var writing = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { _, _ = io.WriteString(w, "written here: "+r.URL.Path) })

func (b *table) make(ctx context.Context) (*deck.Deck, error) {
	plan, err := planfile.Read("leg.yaml", []byte(b.look()), nil)
	if err != nil {
		return nil, err
	}
	return setup.MakeWith(ctx, plan, setup.Options{Plain: true})
}

func (b *table) look() string {
	b.lock.Lock()
	defer b.lock.Unlock()
	return b.plan
}

func (b *table) edit(was, is string) {
	b.lock.Lock()
	defer b.lock.Unlock()
	require.Contains(b.t, b.plan, was)
	b.plan = strings.Replace(b.plan, was, is, 1)
}

func (b *table) let(address string) {
	b.lock.Lock()
	defer b.lock.Unlock()
	b.letting = append(b.letting, address)
}

func (b *table) fault(err error) {
	b.lock.Lock()
	defer b.lock.Unlock()
	b.faulty = append(b.faulty, err)
}

// key is the address that lets the next device in.
func (b *table) key() string {
	deadline := time.Now().Add(10 * time.Second)
	for {
		b.lock.Lock()
		all := b.letting
		b.lock.Unlock()
		if len(all) > 0 {
			return all[len(all)-1]
		}
		require.True(b.t, time.Now().Before(deadline))
		time.Sleep(time.Millisecond)
	}
}

// browser is one with cookies of its own, at the site of a number.
type browser struct {
	t    *testing.T
	at   string // "http://127.0.0.1:20123"
	jar  map[string]string
	from string // what it says its pages come from; as its site where empty
}

func (b *table) browser(site int) *browser {
	return &browser{t: b.t, at: "http://" + b.sites[site].address(), jar: map[string]string{}}
}

// guest is a browser that was let in.
func (b *table) guest() *browser {
	g := b.browser(1)
	status, _ := g.get(strings.TrimPrefix(b.key(), g.at))
	require.Equal(b.t, http.StatusOK, status)
	return g
}

func (g *browser) do(method, path string, body io.Reader, set func(*http.Request)) (*http.Response, error) {
	r, err := http.NewRequestWithContext(g.t.Context(), method, g.at+path, body)
	require.NoError(g.t, err)
	if method != http.MethodGet {
		r.Header.Set("Origin", g.at)
	}
	for name, value := range g.jar {
		r.AddCookie(&http.Cookie{Name: name, Value: value})
	}
	if set != nil {
		set(r)
	}
	answer, err := http.DefaultTransport.RoundTrip(r)
	if err == nil {
		for _, c := range answer.Cookies() {
			require.True(g.t, c.HttpOnly)
			require.Equal(g.t, http.SameSiteStrictMode, c.SameSite)
			g.jar[c.Name] = c.Value
		}
	}
	return answer, err
}

func (g *browser) ask(method, path string, body io.Reader, set func(*http.Request)) (int, string) {
	g.t.Helper()
	answer, err := g.do(method, path, body, set)
	require.NoError(g.t, err)
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	require.NoError(g.t, err)
	return answer.StatusCode, string(text)
}

func (g *browser) get(path string) (int, string) {
	g.t.Helper()
	return g.ask(http.MethodGet, path, nil, nil)
}

func (g *browser) post(path string, body any) (int, string) {
	g.t.Helper()
	data, err := json.Marshal(body)
	require.NoError(g.t, err)
	return g.ask(http.MethodPost, path, bytes.NewReader(data), nil)
}

func (g *browser) form(path string, fields url.Values) (int, string) {
	g.t.Helper()
	return g.ask(http.MethodPost, path, strings.NewReader(fields.Encode()), func(r *http.Request) {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("Accept", "application/json")
	})
}

func (g *browser) state() state {
	g.t.Helper()
	status, text := g.get("/state")
	require.Equal(g.t, http.StatusOK, status)
	return stateIn(g.t, text)
}

func stateIn(t *testing.T, text string) (st state) {
	t.Helper()
	require.NoError(t, json.Unmarshal([]byte(text), &st))
	return st
}

// until asks for the state until it is as wanted; a test that hangs has failed.
func (g *browser) until(wanted func(state) bool) state {
	g.t.Helper()
	for {
		if st := g.state(); wanted(st) {
			return st
		}
		time.Sleep(10 * time.Millisecond)
	}
}

// ticked are ticks as a page sends them.
func ticked(device string, ticks ...map[string]any) map[string]any {
	return map[string]any{"device": device, "sent": time.Now().Format(time.RFC3339Nano), "ticks": ticks}
}

func box(counter int, says string, copy int, on bool) map[string]any {
	return map[string]any{"counter": counter, "time": time.Now().Format(time.RFC3339Nano), "says": says, "height": 1, "piece": "leg", "copy": copy, "on": on}
}

// listen reads events and hands on their states.
func (g *browser) listen() <-chan state {
	answer, err := g.do(http.MethodGet, "/events", nil, nil)
	require.NoError(g.t, err)
	require.Equal(g.t, "text/event-stream", answer.Header.Get("Content-Type"))
	states := make(chan state, 100)
	g.t.Cleanup(func() { answer.Body.Close() })
	go func() {
		defer close(states)
		lines := bufio.NewScanner(answer.Body)
		for lines.Scan() {
			if data, is := strings.CutPrefix(lines.Text(), "data: "); is {
				var st state
				if json.Unmarshal([]byte(data), &st) == nil {
					states <- st
				}
			}
		}
	}()
	return states
}

// someRun is a run of the deck that a browser has.
func (b *table) someRun() (number, says string) {
	d, err := b.make(b.t.Context())
	require.NoError(b.t, err)
	s := &d.Setups[0]
	return s.Runs[0].Number(), deckcode.Says(s, &s.Runs[0])
}

// raw sends bytes to a site and returns the first line of the answer, "" where it
// hung up.
func (b *table) raw(site int, text string) string {
	c, err := net.Dial("tcp", b.sites[site].address())
	require.NoError(b.t, err)
	defer c.Close()
	_, err = io.WriteString(c, text)
	require.NoError(b.t, err)
	line, err := bufio.NewReader(c).ReadString('\n')
	if err != nil && !errors.Is(err, io.EOF) {
		require.ErrorIs(b.t, err, net.ErrClosed)
	}
	return strings.TrimSpace(line)
}

func jsonIn(text string, into any) error { return json.Unmarshal([]byte(text), into) }
