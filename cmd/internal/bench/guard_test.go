package bench

import (
	"bytes"
	"encoding/json"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// routes are all that a site answers, with a method that would do it.
var routes = []struct{ method, path string }{
	{"GET", "/"}, {"GET", "/setup/1"}, {"GET", "/run/1.1"}, {"GET", "/try/1.1"}, {"GET", "/print"},
	{"GET", "/state"}, {"GET", "/events"}, {"GET", "/print/deck.pdf"}, {"GET", "/bench.js"}, {"GET", "/bench.css"},
	{"GET", "/plan"}, {"GET", "/nothing"},
	{"POST", "/ticks"}, {"POST", "/try"}, {"POST", "/take"}, {"POST", "/batch"}, {"POST", "/plan/look"},
	{"PUT", "/plan/text"}, {"DELETE", "/"}, {"OPTIONS", "/ticks"},
}

// A name that a stranger's site turned into this address, and a page of a
// stranger's that sends something here, get nothing from any route.
func TestStrangeHostAndOrigin(t *testing.T) {
	b := set(t, legPlan, true)
	guest := b.guest()
	for _, g := range []*browser{b.browser(0), guest} {
		_, port, _ := strings.Cut(strings.TrimPrefix(g.at, "http://"), ":")
		for _, route := range routes {
			for _, host := range []string{"evil.example", "evil.example:" + port, "localhost:" + port, "127.0.0.3:" + port, strings.TrimPrefix(g.at, "http://") + ".evil.example", strings.TrimPrefix(strings.TrimSuffix(g.at, ":"+port), "http://")} {
				status, text := g.ask(route.method, route.path, nil, func(r *http.Request) { r.Host = host })
				assert.Equal(t, http.StatusForbidden, status, "%s %s to %s: %s", route.method, route.path, host, text)
			}
			for _, origin := range []string{"http://evil.example", "null", "", "https://" + strings.TrimPrefix(g.at, "http://"), g.at + "/", "http://127.0.0.1", b.browser(0).at + "1"} {
				status, _ := g.ask(route.method, route.path, nil, func(r *http.Request) { r.Header.Set("Origin", origin) })
				assert.Equal(t, http.StatusForbidden, status, "%s %s from %q", route.method, route.path, origin)
			}
			if route.method != http.MethodGet {
				status, _ := g.ask(route.method, route.path, nil, func(r *http.Request) { r.Header.Del("Origin") })
				assert.Equal(t, http.StatusForbidden, status, "%s %s from nowhere", route.method, route.path)
			}
		}
	}
	assert.Contains(t, b.raw(0, "GET / HTTP/1.1\r\n\r\n"), "HTTP/1.1 400", "no host at all")
	assert.Contains(t, b.raw(0, "GET / HTTP/1.0\r\n\r\n"), "HTTP/1.0 403", "likewise, of old")
}

// Whoever belongs here and asks for what is not answered is told so, and changes
// nothing.
func TestStrangeMethods(t *testing.T) {
	b := set(t, legPlan, true)
	_, says := b.someRun()
	guest := b.guest()
	for _, g := range []*browser{b.browser(0), guest} {
		before := g.state()
		for _, method := range []string{"PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "BREW"} {
			for _, path := range []string{"/", "/state", "/events", "/ticks", "/try", "/take", "/batch", "/print/deck.pdf"} {
				body, err := json.Marshal(ticked("stranger", box(1, says, 1, true)))
				require.NoError(t, err)
				status, _ := g.ask(method, path, bytes.NewReader(body), nil)
				assert.Contains(t, []int{http.StatusMethodNotAllowed, http.StatusNotFound}, status, "%s %s", method, path)
			}
		}
		for _, path := range []string{"/ticks", "/try", "/take", "/batch"} {
			status, _ := g.get(path)
			assert.Contains(t, []int{http.StatusMethodNotAllowed, http.StatusNotFound}, status, "GET %s", path)
		}
		assert.Equal(t, before, g.state())
	}
}

// A device that was let in fills no disk: what it may have stored has an end.
func TestSharedDevicesHaveTheirLimit(t *testing.T) {
	b := set(t, legPlan, true)
	g, desk := b.guest(), b.browser(0)
	number, says := b.someRun()
	b.server.takenIn.more(mostShared - 1)
	try := url.Values{"run": {number}, "deck": {g.state().Code}, "what": {marks}, "near": {"1/2"}}
	status, _ := g.form("/try", try)
	assert.Equal(t, http.StatusOK, status)
	status, _ = g.form("/try", try)
	assert.Equal(t, http.StatusTooManyRequests, status)
	status, _ = g.post("/ticks", ticked("tablet", box(1, says, 1, true)))
	assert.Equal(t, http.StatusTooManyRequests, status)
	status, _ = desk.post("/ticks", ticked("desk", box(1, says, 1, true)))
	assert.Equal(t, http.StatusOK, status, "the desk goes on")
}

// Without a cookie of this start, a shared site tells nothing but that.
func TestStrangersStayOut(t *testing.T) {
	b := set(t, legPlan, true)
	b.guest()
	for name, cookie := range map[string]string{"no cookie": "", "a guess": secret(), "the key": b.key()[strings.LastIndex(b.key(), "/")+1:]} {
		for _, route := range routes {
			g := b.browser(1)
			if cookie != "" {
				g.jar[visitor{address: b.sites[1].address()}.cookie("key")] = cookie
			}
			status, text := g.ask(route.method, route.path, nil, nil)
			assert.Equal(t, http.StatusForbidden, status, "%s: %s %s", name, route.method, route.path)
			assert.Less(t, len(text), 400)
			assert.NotContains(t, text, "rail")
		}
	}
}

// A key lets one device in, once; then there is another for the next one.
func TestAKeyIsSpent(t *testing.T) {
	b := set(t, legPlan, true)
	first := b.key()
	assert.Regexp(t, `^http://127\.0\.0\.2:\d+/in/[A-Z2-7]{26}$`, first, "26 letters of 5 bits are more than 128 bits")
	path := strings.TrimPrefix(first, b.browser(1).at)

	ahead := b.browser(1)
	status, _ := ahead.ask(http.MethodGet, path, nil, func(r *http.Request) { r.Header.Set("Sec-Purpose", "prefetch;prerender") })
	assert.Equal(t, http.StatusForbidden, status, "a look ahead spends no key")

	tablet := b.guest()
	assert.NotEqual(t, first, b.key())
	assert.True(t, tablet.state().Shared)
	status, _ = b.browser(1).get(path)
	assert.Equal(t, http.StatusForbidden, status, "another device with the key that was spent")
	status, _ = tablet.get(path)
	assert.Equal(t, http.StatusOK, status, "the device that spent it comes back")
	status, _ = b.browser(1).get("/in/")
	assert.Equal(t, http.StatusForbidden, status)
	status, _ = b.browser(0).get(strings.TrimPrefix(b.key(), b.browser(1).at))
	assert.Equal(t, http.StatusNotFound, status, "the desk needs none")

	phone := b.guest()
	assert.NotEqual(t, tablet.jar, phone.jar)
	assert.True(t, tablet.state().Shared, "the first one is still in")
	assert.Len(t, b.letting, 3)
}

// The cookie of one start is worth nothing at the next.
func TestCookiesEndWithTheProgram(t *testing.T) {
	old := set(t, legPlan, true).guest()
	b := set(t, legPlan, true)
	g := b.browser(1)
	for _, value := range old.jar {
		g.jar[visitor{address: b.sites[1].address()}.cookie("key")] = value
	}
	status, _ := g.get("/state")
	assert.Equal(t, http.StatusForbidden, status)
}

// A shared device reads, ticks, tries and prints, and does nothing else.
func TestWhatASharedDeviceMay(t *testing.T) {
	b := set(t, legPlan, true)
	g := b.guest()
	number, says := b.someRun()
	for _, path := range []string{"/", "/setup/1", "/run/" + number, "/try/" + number, "/print", "/print/deck.pdf", "/print/strips.pdf"} {
		status, text := g.get(path)
		assert.Equal(t, http.StatusOK, status, path)
		assert.NotContains(t, text, b.path)
	}
	status, _ := g.post("/ticks", ticked("tablet", box(1, says, 1, true)))
	assert.Equal(t, http.StatusOK, status)
	status, _ = g.form("/try", url.Values{"run": {number}, "deck": {g.state().Code}, "what": {"marks"}, "near": {"1/2"}})
	assert.Equal(t, http.StatusOK, status)
	status, _ = g.post("/batch", nil)
	assert.Contains(t, []int{http.StatusNotFound, http.StatusMethodNotAllowed}, status)
	for _, path := range []string{"/plan", "/plan/", "/plan/text", "/plan/look", "/plan/nothing"} {
		status, _ = g.get(path)
		assert.Equal(t, http.StatusForbidden, status, path)
		status, _ = g.post(path, nil)
		assert.Contains(t, []int{http.StatusForbidden, http.StatusTemporaryRedirect}, status, path)
	}
	assert.Len(t, b.browser(0).state().Ticks, 1, "no new batch")
}

// Nothing that is answered names a file or a folder, whatever goes wrong.
func TestNoPathsForSharedDevices(t *testing.T) {
	b := set(t, legPlan, true)
	g := b.guest()
	b.edit("unit: in", "unit: furlong\nshop: ../secret/shop.yaml")
	st := g.until(func(st state) bool { return st.Fault != "" })
	assert.Equal(t, "The plan has a fault; the desk tells which.", st.Fault)
	assert.Contains(t, b.browser(0).state().Fault, "leg.yaml:", "the desk is told where")
	spoilt(t, b.path)
	_, says := b.someRunOf(legPlan)
	status, text := g.post("/ticks", ticked("tablet", box(1, says, 1, true)))
	assert.Equal(t, http.StatusInternalServerError, status)
	for _, word := range []string{"/", "leg.yaml", "ticks.jsonl"} {
		assert.NotContains(t, text, word)
	}
}

// Names are text, wherever they stand.
func TestNamesAreText(t *testing.T) {
	b := set(t, legPlan, false)
	g := b.browser(0)
	number, _ := b.someRun()
	status, page := g.get("/")
	require.Equal(t, http.StatusOK, status)
	assert.NotContains(t, page, "<script>alert")
	assert.NotContains(t, page, "<b>rail")
	assert.Contains(t, page, "&lt;script&gt;alert(1)")
	for _, fields := range []url.Values{
		{"near": {"<img src=x onerror=alert(1)>"}},
		{"near": {"1/2"}, "run": {"<b>1"}},
		{"near": {"1/2"}, "deck": {"<b>1"}},
	} {
		for name, value := range map[string]string{"run": number, "deck": g.state().Code, "what": "marks"} {
			if !fields.Has(name) {
				fields.Set(name, value)
			}
		}
		_, answer := g.form("/try", fields)
		assert.NotContains(t, answer, "<img")
		assert.NotContains(t, answer, "<b>")
	}
}

// Every answer carries the rules by which a browser keeps others out.
func TestHeaders(t *testing.T) {
	b := set(t, legPlan, true)
	for _, g := range []*browser{b.browser(0), b.browser(1)} {
		for _, path := range []string{"/", "/state", "/nothing", "/print/deck.pdf"} {
			answer, err := g.do(http.MethodGet, path, nil, nil)
			require.NoError(t, err)
			answer.Body.Close()
			h := answer.Header
			assert.Equal(t, policy, h.Get("Content-Security-Policy"))
			assert.Equal(t, "nosniff", h.Get("X-Content-Type-Options"))
			assert.Equal(t, "no-referrer", h.Get("Referrer-Policy"))
			assert.Equal(t, "same-origin", h.Get("Cross-Origin-Resource-Policy"))
			for name := range h {
				assert.False(t, strings.HasPrefix(name, "Access-Control-"), name)
			}
		}
	}
}

func TestBodiesHaveTheirLimit(t *testing.T) {
	b := set(t, legPlan, false)
	g := b.browser(0)
	_, says := b.someRun()
	for _, path := range []string{"/ticks", "/take", "/try"} {
		status, _ := g.ask(http.MethodPost, path, strings.NewReader(`{"device":"`+strings.Repeat("x", 2<<20)), func(r *http.Request) {
			if path == "/try" {
				r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
			}
		})
		assert.Equal(t, http.StatusRequestEntityTooLarge, status, path)
	}
	var many []map[string]any
	for i := range 500 {
		many = append(many, box(i+1, says, i+1, true))
	}
	status, text := g.post("/ticks", ticked("tablet", many...))
	assert.Equal(t, http.StatusOK, status, "as many as a page sends at once")
	assert.Contains(t, text, `"taken":500`)
	for _, body := range []string{"", "{", "[]", `{"device":"a"} {}`, `{"device":"a","ticks":[{"counter":0}]}`, "\xff"} {
		status, _ := g.ask(http.MethodPost, "/ticks", strings.NewReader(body), nil)
		assert.Equal(t, http.StatusBadRequest, status, body)
	}
	assert.Len(t, g.state().Ticks, 500)
}

// One address may have so many connections, and gets more when it closes some.
func TestConnectionsHaveTheirLimit(t *testing.T) {
	b := set(t, legPlan, false)
	var open []<-chan state
	g := b.browser(0)
	for range mostOfOne {
		open = append(open, g.listen())
	}
	for _, states := range open {
		<-states
	}
	transport := &http.Transport{DisableKeepAlives: true}
	r, err := http.NewRequestWithContext(t.Context(), http.MethodGet, g.at+"/state", nil)
	require.NoError(t, err)
	_, err = transport.RoundTrip(r)
	assert.Error(t, err)
}

// The plan is written at the desk's own address, and there is a way to it from there.
func TestThePlanIsWrittenAtTheDesk(t *testing.T) {
	b := set(t, legPlan, true)
	desk := b.browser(0)
	for _, path := range []string{"/plan", "/plan/text"} {
		status, text := desk.get(path)
		assert.Equal(t, http.StatusOK, status)
		assert.Equal(t, "written here: "+path, text)
	}
	_, sheet := desk.get("/")
	assert.Contains(t, sheet, `href="/plan"`)
	_, sheet = b.guest().get("/")
	assert.NotContains(t, sheet, `"/plan"`)
}
