package bench

import (
	"bytes"
	"context"
	"fmt"
	"net/http"
	"net/url"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/cmd/internal/ticks"
	"fencecard/joinery/measure"
	"fencecard/output"
	"fencecard/output/page"
	"fencecard/output/paper"
	"fencecard/output/sheets"
	"fencecard/setup/deck"
)

// spoilt puts a folder in the place of the ticks, so that none are stored.
func spoilt(t *testing.T, path string) {
	t.Helper()
	require.NoError(t, os.Remove(path))
	require.NoError(t, os.Mkdir(path, 0o777))
}

// someRunOf is a run of a plan as it was.
func (b *table) someRunOf(plan string) (number, says string) {
	return (&table{t: b.t, plan: plan}).someRun()
}

// runOf is the run of a cut as the plan is now.
func (b *table) runOf(cut string) *told {
	d, err := b.make(b.t.Context())
	require.NoError(b.t, err)
	for _, r := range show(d).all {
		if r.run.Cut.Name == cut {
			return r
		}
	}
	b.t.Fatal("no run of " + cut)
	return nil
}

// What one device ticks the other sees, and both may tick at once.
func TestTwoDevices(t *testing.T) {
	b := set(t, legPlan, true)
	_, says := b.someRun()
	desk, tablet := b.browser(0), b.guest()
	seen := desk.listen()
	assert.Empty(t, (<-seen).Ticks)
	const each = 30
	var all sync.WaitGroup
	for device, g := range map[string]*browser{"desk": desk, "tablet": tablet} {
		first := 0
		if device == "tablet" {
			first = each
		}
		all.Go(func() {
			for i := range each {
				status, _ := g.post("/ticks", ticked(device, box(i+1, says, first+i+1, true)))
				assert.Equal(t, http.StatusOK, status)
			}
		})
	}
	all.Wait()
	assert.Len(t, tablet.state().Ticks, 2*each)
	for st := range seen { // a test that hangs here has failed
		if len(st.Ticks) == 2*each {
			break
		}
	}
}

// A queue that a tablet sends again, because it did not hear the answer, counts
// once; and a tick of the last batch does not tick this one.
func TestAQueueCountsOnce(t *testing.T) {
	b := set(t, legPlan, false)
	g := b.browser(0)
	_, says := b.someRun()
	old := g.state()
	queue := ticked("tablet", box(1, says, 1, true), box(2, says, 2, true), box(3, says, 2, false))
	for range 3 {
		status, text := g.post("/ticks", queue)
		require.Equal(t, http.StatusOK, status)
		assert.Contains(t, text, `"taken":3`)
	}
	data, err := os.ReadFile(b.path)
	require.NoError(t, err)
	assert.Equal(t, 4, bytes.Count(data, []byte("\n")))
	status, text := g.post("/batch", nil)
	require.Equal(t, http.StatusOK, status)
	st := stateIn(t, text)
	assert.NotEqual(t, old.Batch, st.Batch)
	assert.Empty(t, st.Ticks)
	late := box(4, says, 3, true)
	late["plan"], late["batch"] = old.Plan, old.Batch
	status, _ = g.post("/ticks", ticked("tablet", late))
	assert.Equal(t, http.StatusOK, status)
	assert.Empty(t, g.state().Ticks)
}

// A tablet whose clock is years off still ticks in the right order.
func TestAWrongClock(t *testing.T) {
	b := set(t, legPlan, false)
	g := b.browser(0)
	_, says := b.someRun()
	status, _ := g.post("/ticks", ticked("desk", box(1, says, 1, true)))
	require.Equal(t, http.StatusOK, status)
	for i, years := range []int{-50, 40} {
		clock := time.Now().AddDate(years, 0, 0)
		for k, on := range []bool{false, true} {
			off := box(2*i+k+1, says, 1, on)
			off["time"] = clock.Format(time.RFC3339Nano)
			queue := ticked("tablet", off)
			queue["sent"] = clock.Format(time.RFC3339Nano)
			status, _ = g.post("/ticks", queue)
			require.Equal(t, http.StatusOK, status)
			assert.Equal(t, on, g.state().Ticks[0].On)
		}
	}
}

// Ticks that another program stores are seen here.
func TestTicksOfAnotherProgram(t *testing.T) {
	b := set(t, legPlan, false)
	g := b.browser(0)
	_, says := b.someRun()
	f, err := ticks.Open(t.Context(), b.path, underTest, "leg.yaml", time.Now())
	require.NoError(t, err)
	require.NoError(t, f.Add(t.Context(), []ticks.Tick{{
		Device: "elsewhere", Counter: 1, Time: time.Now(), Plan: f.Plan(), Batch: f.Batch(),
		Box: ticks.Box{Says: says, Height: 1, Piece: "leg", Copy: 1}, On: true,
	}}))
	g.until(func(st state) bool { return len(st.Ticks) == 1 })
}

// An edit is noticed, and changes nothing that stands before somebody.
func TestNumbersStayUntilTaken(t *testing.T) {
	b := set(t, legPlan, true)
	desk, tablet := b.browser(0), b.guest()
	status, before := desk.get("/")
	require.Equal(t, http.StatusOK, status)
	_, _ = tablet.get("/")
	old := desk.state()
	number, _ := b.someRun()
	rail, changed := b.runOf("rail"), b.runOf("panel")
	first := box(1, rail.says, 1, true)
	second := box(2, changed.says, 1, true)
	second["piece"] = changed.run.Piece.Name
	status, _ = desk.post("/ticks", ticked("desk", first, second))
	require.Equal(t, http.StatusOK, status)
	seen := desk.listen()
	<-seen

	b.edit("setback: 1/2 from left", "setback: 9/16 from left")
	st := desk.until(func(st state) bool { return st.FileCode != old.Code })
	for event := range seen {
		if event.FileCode == st.FileCode {
			break
		}
	}
	assert.Equal(t, old.Code, st.Code, "the browser's own stays")
	assert.Equal(t, 1, st.Differs, "the mortise says the same as before")
	assert.Empty(t, st.Changed)
	_, still := desk.get("/run/" + number)
	assert.Equal(t, before, still)
	_, pdf := desk.get("/print/deck.pdf")
	assert.Contains(t, pdf, "%PDF")

	status, _ = desk.post("/take", map[string]string{"file_code": old.Code})
	assert.Equal(t, http.StatusConflict, status, "not the one that it was told of")
	status, text := desk.post("/take", map[string]string{"file_code": st.FileCode})
	require.Equal(t, http.StatusOK, status)
	taken := stateIn(t, text)
	assert.Equal(t, st.FileCode, taken.Code)
	assert.Zero(t, taken.Differs)
	assert.Contains(t, taken.Ticks, tickSay{rail.says, 1, "leg", 1, true}, "a run that the edit left alone is ticked")
	assert.Equal(t, []string{b.runOf("panel").says}, taken.Changed, "changed, not done")
	_, after := desk.get("/")
	assert.NotEqual(t, before, after)
	assert.Equal(t, old.Code, tablet.state().Code, "what the desk took is not the tablet's")
	_, text = desk.get("/state?deck=" + old.Code)
	assert.Equal(t, 1, stateIn(t, text).Differs, "a page still open with the old numbers")
	_, text = desk.get("/state?deck=zzzz")
	assert.Equal(t, 2, stateIn(t, text).Differs, "a page of a former start: nobody knows what it says")
	status, _ = desk.get("/print/deck.pdf?deck=zzzz")
	assert.Equal(t, http.StatusNotFound, status, "and nothing else is printed in its place")
}

// A fault is told and takes nothing away; the plan mended, it is gone.
func TestAFaultWhileServing(t *testing.T) {
	b := set(t, legPlan, false)
	g := b.browser(0)
	code := g.state().Code
	b.edit("unit: in", "unit: inn")
	st := g.until(func(st state) bool { return st.Fault != "" })
	assert.Equal(t, code, st.Code)
	status, _ := g.get("/")
	assert.Equal(t, http.StatusOK, status)
	b.edit("unit: inn", "unit: in")
	st = g.until(func(st state) bool { return st.Fault == "" })
	assert.Equal(t, code, st.FileCode)
	require.Len(t, b.faulty, 2)
	assert.Error(t, b.faulty[0])
	assert.NoError(t, b.faulty[1])
}

// A plan that is at fault from the start is served as its faults.
func TestAFaultAtTheStart(t *testing.T) {
	b := set(t, strings.Replace(legPlan, "unit: in", "unit: inn <b>", 1), true)
	desk, tablet := b.browser(0), b.guest()
	status, page := desk.get("/")
	assert.Equal(t, http.StatusServiceUnavailable, status)
	assert.Contains(t, page, "leg.yaml:3:7")
	assert.NotContains(t, page, "<b>")
	_, page = tablet.get("/run/1.1")
	assert.Contains(t, page, "the desk tells which")
	assert.NotContains(t, page, "leg.yaml")
	for _, path := range []string{"/print/deck.pdf"} {
		status, _ = desk.get(path)
		assert.Equal(t, http.StatusNotFound, status)
	}
	status, _ = desk.post("/take", map[string]string{"file_code": ""})
	assert.Equal(t, http.StatusConflict, status)
	b.edit("inn <b>", "in")
	desk.until(func(st state) bool { return st.Code != "" })
	status, _ = desk.get("/")
	assert.Equal(t, http.StatusOK, status)
}

// The page of a plan just begun says so, and that of one saved a moment ago waits for its
// deck.
func TestAPlanJustBegun(t *testing.T) {
	before, pieces, _ := strings.Cut(legPlan, "pieces:")
	b := set(t, before, true)
	desk := b.browser(0)
	status, page := desk.get("/")
	assert.Equal(t, http.StatusServiceUnavailable, status)
	assert.Contains(t, page, "<h1>The plan, as last saved, has no pieces yet</h1>")
	assert.NotContains(t, page, "leg.yaml")
	assert.Contains(t, page, `href="/plan">TO THE PLAN</a>`)
	_, page = b.guest().get("/")
	assert.Contains(t, page, "the desk tells which")
	b.edit(before, before+"pieces:"+pieces)
	status, _ = desk.get("/")
	assert.Equal(t, http.StatusOK, status)
}

// What is tried is answered by the code of the commands, and stays with its run
// until the batch ends.
func TestTries(t *testing.T) {
	b := set(t, legPlan, false)
	g := b.browser(0)
	r, d := b.runOf("rail"), g.state()
	try := func(fields ...string) (answer struct {
		HTML string
		OK   bool
	}) {
		t.Helper()
		v := url.Values{"run": {r.run.Number()}, "deck": {d.Code}}
		for i := 0; i < len(fields); i += 2 {
			v.Set(fields[i], fields[i+1])
		}
		status, text := g.form("/try", v)
		require.Equal(t, http.StatusOK, status, text)
		require.NoError(t, jsonIn(text, &answer))
		return answer
	}
	right := try("what", "marks", "near", "1/2")
	assert.True(t, right.OK, right.HTML)
	assert.Contains(t, right.HTML, "1/2 to the near edge of the bit: correct")
	wrong := try("what", "marks", "near", "33/64")
	assert.False(t, wrong.OK)
	assert.Contains(t, wrong.HTML, "move the fence 1/64 toward the bit")
	assert.Contains(t, wrong.HTML, "near wall 33/64 from the front: 1/64 too near the back")
	cut := try("what", "cut", "depth", "31/32")
	assert.Contains(t, cut.HTML, "raise the bit 1/32")
	assert.False(t, try("what", "cut").OK)
	assert.Contains(t, try("what", "cut", "near", "1/2").HTML, "Type what you measured", "no measure of a cut")
	assert.Contains(t, try("what", "cut", "depth", "-1").HTML, "a test cut measures more than 0")
	st := g.state()
	require.Len(t, st.Tries, 2)
	assert.Equal(t, []string{"cut", "marks"}, []string{st.Tries[0].What, st.Tries[1].What})
	assert.Equal(t, strings.TrimSpace(wrong.HTML), strings.TrimSpace(st.Tries[1].HTML), "the last one")
	_, text := g.post("/batch", nil)
	assert.Empty(t, stateIn(t, text).Tries)
	status, _ := g.form("/try", url.Values{"run": {"9.9"}, "deck": {d.Code}, "what": {"marks"}, "near": {"1"}})
	assert.Equal(t, http.StatusConflict, status)
}

// Every question that is asked of a run can be answered.
func TestEveryQuestionHasAnAnswer(t *testing.T) {
	b := set(t, legPlan, false)
	d, err := b.make(t.Context())
	require.NoError(t, err)
	s := show(d)
	asked := 0
	for _, r := range s.all {
		q := s.questions(r.run.Number())
		require.NotEmpty(t, q.Table)
		for what, all := range map[string][]page.Question{marks: q.Table, testCut: q.Cut} {
			for _, q := range all {
				a := s.answer(r, what, map[string]string{q.Name: "1/2"})
				if q.Name == "width" {
					a = s.answer(r, what, map[string]string{q.Name: r.setup.Bit.Diameter.MM() + " mm"})
				}
				assert.False(t, a.unread, "%s %s: %s", r.run.Number(), q.Words, a.HTML)
				asked++
			}
		}
	}
	assert.Greater(t, asked, 10)
}

// What is printed is what the library prints.
func TestPrintedPages(t *testing.T) {
	b := set(t, legPlan, false)
	g := b.browser(0)
	d, err := b.make(t.Context())
	require.NoError(t, err)
	for path, p := range map[string]sheets.Pages{
		"deck.pdf":             {},
		"strips.pdf":           {Only: sheets.OnlyStrips},
		"deck.pdf?paper=a4":    {Paper: sheets.A4},
		"cards.pdf?paper=A5":   {Paper: sheets.A5, Only: sheets.OnlyCards},
		"sheets.pdf?units=mm":  {Units: sheets.InMillimetres, Only: sheets.OnlySheets},
		"deck.pdf?strips=yes":  {Strips: true},
		"deck.pdf?paper=index": {Paper: sheets.Index},
	} {
		var want bytes.Buffer
		require.NoError(t, output.PDF(&want, d, p))
		status, text := g.get("/print/" + path)
		require.Equal(t, http.StatusOK, status, path)
		assert.True(t, string(paper.Stamp(want.Bytes(), PrintedFor(d))) == text, path)
	}
	for path, want := range map[string]int{"nothing.pdf": http.StatusNotFound, "..%2fdeck.pdf": http.StatusNotFound, "deck.pdf?paper=wall": http.StatusBadRequest} {
		status, _ := g.get("/print/" + path)
		assert.Equal(t, want, status, path)
	}
}

// A change that comes while a deck is made calls it off.
func TestEditWhileMaking(t *testing.T) {
	b := set(t, legPlan, false)
	g := b.browser(0)
	for i := range 5 {
		b.edit(fmt.Sprintf("top-bottom: %d", 17+i), fmt.Sprintf("top-bottom: %d", 18+i))
		time.Sleep(look / 3)
	}
	want, err := b.make(t.Context())
	require.NoError(t, err)
	g.until(func(st state) bool { return st.FileCode == want.Code })
}

// Making that does not end is called off by the next change.
func TestMakingIsCalledOff(t *testing.T) {
	b := &table{t: t, plan: legPlan}
	text, lock := "1", sync.Mutex{}
	read := func() string { lock.Lock(); defer lock.Unlock(); return text }
	write := func(to string) { lock.Lock(); defer lock.Unlock(); text = to }
	waiting := make(chan struct{})
	f, err := ticks.Open(t.Context(), t.TempDir()+"/ticks.jsonl", underTest, "x", time.Now())
	require.NoError(t, err)
	ctx, stop := context.WithCancel(t.Context())
	made := make(chan string, 10)
	s := New(ctx, Options{Ticks: f, Look: read, Make: func(ctx context.Context) (*deck.Deck, error) {
		now := read()
		if now == "2" {
			close(waiting)
			<-ctx.Done()
		}
		made <- now
		return b.make(t.Context())
	}})
	assert.Equal(t, "1", <-made)
	ended := make(chan struct{})
	go func() { s.watch(ctx); close(ended) }()
	write("2")
	<-waiting
	write("3")
	got := []string{<-made, <-made}
	assert.ElementsMatch(t, []string{"2", "3"}, got)
	stop()
	<-ended
}

// What the setup book learnt meanwhile of a fence or a height is another number for the
// hand, though what the runs say is the same.
func TestALearntNumberDiffers(t *testing.T) {
	b := set(t, legPlan, false)
	made := func(teach func(k *deck.Kept, u *deck.Setup)) *shown {
		d, err := b.make(t.Context())
		require.NoError(t, err)
		if teach != nil {
			d.Setups[0].Kept = &deck.Kept{}
			teach(d.Setups[0].Kept, &d.Setups[0])
		}
		return show(d)
	}
	before := made(nil)
	runs := len(before.deck.Setups[0].Runs)
	assert.Zero(t, before.differs(made(nil)))
	assert.Equal(t, runs, before.differs(made(func(k *deck.Kept, u *deck.Setup) {
		stood := u.Fence.NearEdge + measure.Inch/64
		k.FenceStood = &stood
	})))
	assert.Equal(t, runs, before.differs(made(func(k *deck.Kept, u *deck.Setup) {
		stood := u.Heights[len(u.Heights)-1] - measure.Inch/64
		k.HeightStood = &stood
	})))
}
