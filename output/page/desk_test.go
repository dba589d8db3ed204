package page_test

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/output/page"
	"fencecard/setup/deck"
)

// desk is as much of a program that keeps ticks as a page can tell from a whole one,
// and does what a whole one does seldom: it is slow, refuses, loses its answers,
// and goes away.
type desk struct {
	t       testing.TB
	page    string
	at      string // its address, which stays when it comes back
	server  *httptest.Server
	end     context.CancelFunc // of all that it still answers
	lock    sync.Mutex
	changed chan struct{}

	came   []sent          // ticks in the order in which they came, doubles once
	known  map[string]bool // by device and counter
	twice  int             // ticks that came once more
	batch  string
	code   string                           // of the plan as it is now
	answer func(w http.ResponseWriter) bool // answers a post of ticks instead of storing; nil
	lose   bool                             // the next ticks are stored, and the answer is lost
	hold   chan struct{}
	mute   int // connections, the first ones, over which nothing is said any more
	heard  int // connections that were opened for events
	tried  []string
	tries  []map[string]string // what was measured in this batch
}

type sent struct {
	Device  string `json:"-"`
	Counter int    `json:"counter"`
	Batch   string `json:"batch"`
	Says    string `json:"says"`
	Height  int    `json:"height"`
	Piece   string `json:"piece"`
	Copy    int    `json:"copy"`
	On      bool   `json:"on"`
}

const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; " +
	"form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

func openDesk(t testing.TB, d *deck.Deck, about page.About) *desk {
	t.Helper()
	about.Served = true
	k := &desk{t: t, page: written(t, d, about), known: map[string]bool{}, batch: "2026-01-31 a", code: d.Code, changed: make(chan struct{})}
	k.come()
	t.Cleanup(k.leave)
	return k
}

// come opens it, again at the address it had.
func (k *desk) come() {
	k.server = httptest.NewUnstartedServer(k)
	ctx, end := context.WithCancel(context.Background())
	k.server.Config.BaseContext = func(net.Listener) context.Context { return ctx }
	k.end = end
	if k.at != "" {
		l, err := net.Listen("tcp", strings.TrimPrefix(k.at, "http://"))
		require.NoError(k.t, err)
		k.server.Listener.Close()
		k.server.Listener = l
	}
	k.server.Start()
	k.at = k.server.URL
}

// leave ends it as a kill does, whatever a page or a test that failed waits for.
func (k *desk) leave() {
	k.end()
	k.server.CloseClientConnections()
	k.server.Close()
}

func (k *desk) tell() {
	k.lock.Lock()
	defer k.lock.Unlock()
	close(k.changed)
	k.changed = make(chan struct{})
}

// set changes how it behaves.
func (k *desk) set(change func()) {
	k.lock.Lock()
	change()
	k.lock.Unlock()
	k.tell()
}

func (k *desk) state() map[string]any {
	ticks := []sent{}
	for _, s := range k.came {
		if s.Batch == k.batch {
			ticks = append(ticks, s)
		}
	}
	differs := 0
	if !strings.Contains(k.page, "deck "+k.code) {
		differs = 2
	}
	return map[string]any{"code": k.code, "file_code": k.code, "differs": differs, "fault": "", "plan": "0123456789abcdef", "batch": k.batch,
		"ticks": ticks, "changed": []string{}, "tries": k.triesNow(), "shared": false}
}

func (k *desk) triesNow() []map[string]string {
	if k.tries == nil || k.batch != "2026-01-31 a" {
		return []map[string]string{}
	}
	return k.tries
}

func (k *desk) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Security-Policy", policy)
	w.Header().Set("Cache-Control", "no-store")
	switch {
	case r.URL.Path == "/events":
		k.events(w, r)
	case r.URL.Path == "/ticks":
		k.ticks(w, r)
	case r.URL.Path == "/state":
		k.lock.Lock()
		defer k.lock.Unlock()
		tell(w, k.state())
	case r.URL.Path == "/batch":
		k.set(func() { k.batch = "2026-01-31 b" })
		k.lock.Lock()
		defer k.lock.Unlock()
		tell(w, k.state())
	case r.URL.Path == "/try":
		_ = r.ParseForm()
		k.set(func() { k.tried = append(k.tried, r.PostForm.Encode()) })
		tell(w, map[string]any{"html": "<p>It would cut <b>1/64</b> too far.</p>", "ok": false})
	case strings.HasSuffix(r.URL.Path, ".js"), strings.HasSuffix(r.URL.Path, ".css"):
		http.FileServerFS(page.Files()).ServeHTTP(w, r)
	case r.URL.Path == "/favicon.ico":
		http.NotFound(w, r)
	default:
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		_, _ = io.WriteString(w, k.page)
	}
}

func tell(w http.ResponseWriter, v any) {
	w.Header().Set("Content-Type", "application/json")
	_ = json.NewEncoder(w).Encode(v)
}

func (k *desk) events(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/event-stream")
	k.lock.Lock()
	k.heard++
	mine := k.heard
	k.lock.Unlock()
	for {
		k.lock.Lock()
		changed := k.changed
		mute := mine <= k.mute
		k.lock.Unlock()
		if mute {
			<-r.Context().Done()
			return
		}
		k.lock.Lock()
		data, _ := json.Marshal(k.state())
		k.lock.Unlock()
		fmt.Fprintf(w, "event: state\ndata: %s\n\n", data)
		w.(http.Flusher).Flush()
		select {
		case <-changed:
		case <-r.Context().Done():
			return
		}
	}
}

func (k *desk) ticks(w http.ResponseWriter, r *http.Request) {
	var body struct {
		Device string
		Ticks  []sent
	}
	if err := json.NewDecoder(r.Body).Decode(&body); err != nil {
		return
	}
	k.lock.Lock()
	answer, hold := k.answer, k.hold
	k.lock.Unlock()
	if answer != nil && answer(w) {
		return
	}
	if hold != nil {
		select {
		case <-hold:
		case <-r.Context().Done():
			return
		}
	}
	highest := 0
	k.set(func() {
		for _, s := range body.Ticks {
			s.Device = body.Device
			if s.Batch == "" {
				s.Batch = k.batch
			}
			name := fmt.Sprint(s.Device, " ", s.Counter)
			if k.known[name] {
				k.twice++
			} else {
				k.known[name] = true
				k.came = append(k.came, s)
			}
			highest = max(highest, s.Counter)
		}
	})
	k.lock.Lock()
	defer k.lock.Unlock()
	if k.lose {
		k.lose = false
		c, _, err := w.(http.Hijacker).Hijack()
		if err == nil {
			c.Close()
		}
		return
	}
	tell(w, map[string]any{"taken": highest, "state": k.state()})
}

// stored are the ticks that came, each as "run height copy on".
func (k *desk) stored() []string {
	k.lock.Lock()
	defer k.lock.Unlock()
	all := []string{}
	for _, s := range k.came {
		all = append(all, fmt.Sprint(s.Piece, " ", s.Height, " ", s.Copy, " ", s.On))
	}
	return all
}
