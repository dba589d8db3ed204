package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// served is a bench page of the program, as a process of its own.
type served struct {
	t       *testing.T
	cmd     *exec.Cmd
	address string // "http://127.0.0.1:20123/"
	told    *heard
}

// heard is what a process says, to be read while it goes on.
type heard struct {
	lock sync.Mutex
	text []byte
}

func (h *heard) Write(data []byte) (int, error) {
	h.lock.Lock()
	defer h.lock.Unlock()
	h.text = append(h.text, data...)
	return len(data), nil
}

func (h *heard) String() string {
	h.lock.Lock()
	defer h.lock.Unlock()
	return string(h.text)
}

// serve starts the program and waits for its first line.
func serve(t *testing.T, args ...string) *served {
	t.Helper()
	return serveBy(t, exec.Command("fencecard", append([]string{"bench", "--no-open"}, args...)...))
}

func serveBy(t *testing.T, cmd *exec.Cmd) *served {
	t.Helper()
	s := &served{t: t, cmd: cmd, told: &heard{}}
	s.cmd.Stderr = s.told
	out, err := s.cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, s.cmd.Start())
	t.Cleanup(func() {
		_ = s.cmd.Process.Kill()
		_ = s.cmd.Wait()
	})
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		_ = s.cmd.Wait()
		require.NoError(t, err, s.told.String())
	}
	s.address = strings.TrimSuffix(strings.TrimSpace(line), "plan") // where one begins without a plan
	require.Regexp(t, `^http://127\.0\.0\.1:\d+/$`, s.address)
	return s
}

func (s *served) port() string {
	return strings.TrimSuffix(s.address[strings.LastIndex(s.address, ":")+1:], "/")
}

// once is a client that keeps no connection.
var once = &http.Client{Transport: &http.Transport{DisableKeepAlives: true}}

func (s *served) get(path string) string {
	s.t.Helper()
	answer, err := once.Get(s.address + path)
	require.NoError(s.t, err)
	defer answer.Body.Close()
	data, err := io.ReadAll(answer.Body)
	require.NoError(s.t, err)
	require.Equal(s.t, http.StatusOK, answer.StatusCode, string(data))
	return string(data)
}

// toldState is what the tests want to know of a state.
type toldState struct {
	Code     string
	FileCode string `json:"file_code"`
	Fault    string
	Batch    string
	Ticks    []struct {
		Copy int
		On   bool
	}
}

func (s *served) state() (st toldState) {
	s.t.Helper()
	require.NoError(s.t, json.Unmarshal([]byte(s.get("state")), &st))
	return st
}

// sentTick sends a tick and reports whether it was answered as stored.
func sentTick(address, device string, counter int, says string) bool {
	body := fmt.Sprintf(`{"device":%q,"ticks":[{"counter":%d,"time":%q,"says":%q,"height":1,"piece":"leg","copy":%d,"on":true}]}`,
		device, counter, time.Now().Format(time.RFC3339Nano), says, counter)
	r, err := http.NewRequest(http.MethodPost, address+"ticks", strings.NewReader(body))
	if err != nil {
		return false
	}
	r.Header.Set("Origin", strings.TrimSuffix(address, "/"))
	answer, err := once.Do(r)
	if err != nil {
		return false
	}
	defer answer.Body.Close()
	data, err := io.ReadAll(answer.Body)
	return err == nil && answer.StatusCode == http.StatusOK && bytes.Contains(data, fmt.Appendf(nil, `"taken":%d,`, counter))
}

// aBook names a setup book in a folder of the test, and with it where ticks are.
func aBook(t *testing.T) (flag, ticks string) {
	folder := t.TempDir()
	return "--book=" + filepath.Join(folder, "book.txt"), filepath.Join(folder, "ticks.jsonl")
}

// The program ends by Ctrl-C or SIGTERM with exit 0, whoever listens to it.
func TestBenchStops(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no process can be interrupted there")
	}
	plan, _ := leg(t)
	book, _ := aBook(t)
	for _, signal := range []os.Signal{os.Interrupt, syscall.SIGTERM} {
		s := serve(t, plan, book)
		answer, err := once.Get(s.address + "events")
		require.NoError(t, err)
		defer answer.Body.Close()
		_, err = bufio.NewReader(answer.Body).ReadString('\n')
		require.NoError(t, err)
		require.NoError(t, s.cmd.Process.Signal(signal))
		assert.NoError(t, s.cmd.Wait(), s.told.String())
	}
}

// The process is killed at random moments while two tablets tick: what was answered
// as stored is there, once, and a tick that was not is there once when it is sent
// again. FENCECARD_KILLS says how often.
func TestKilledWhileTicking(t *testing.T) {
	kills := killsOr(12)
	plan, _ := leg(t)
	book, file := aBook(t)
	random := rand.New(rand.NewPCG(18, 1))
	devices := []string{"tablet", "phone"}
	var stored [2]atomic.Int64 // the highest counter that each device heard of
	says := ""
	for range kills {
		s := serve(t, plan, book)
		if says == "" {
			says = regexp.MustCompile(`data-says="([0-9a-f]{16})"`).FindStringSubmatch(s.get(""))[1]
		}
		var both sync.WaitGroup
		for i, device := range devices {
			both.Go(func() { // as a page does: the queue goes on where it was not answered
				for next := int(stored[i].Load()) + 1; sentTick(s.address, device, next, says); next++ {
					stored[i].Store(int64(next))
				}
			})
		}
		time.Sleep(time.Duration(random.Int64N(int64(60 * time.Millisecond))))
		require.NoError(t, s.cmd.Process.Kill())
		both.Wait()
		_ = s.cmd.Wait()
		lines := countedTicks(t, file)
		for i, device := range devices {
			heard := int(stored[i].Load())
			for n := 1; n <= heard; n++ {
				require.Equal(t, 1, lines[device][n], "%s %d", device, n)
			}
			require.LessOrEqual(t, len(lines[device]), heard+1, "one at the most was stored unheard")
		}
	}
	require.Positive(t, stored[0].Load()+stored[1].Load())
	t.Logf("%d kills, %d and %d ticks", kills, stored[0].Load(), stored[1].Load())
	s := serve(t, plan, book)
	for i, device := range devices {
		assert.True(t, sentTick(s.address, device, int(stored[i].Load())+1, says), "sent again")
	}
	for _, lines := range countedTicks(t, file) {
		for n, times := range lines {
			assert.Equal(t, 1, times, n)
		}
	}
}

// killsOr is how often a program is killed in a test.
func killsOr(few int) int {
	if n, err := strconv.Atoi(os.Getenv("FENCECARD_KILLS")); err == nil {
		return n
	}
	return few
}

// countedTicks counts the whole lines of each device by their counters.
func countedTicks(t *testing.T, file string) map[string]map[int]int {
	t.Helper()
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	all := map[string]map[int]int{}
	for line := range bytes.Lines(data) {
		var tick struct {
			Device  string
			Counter int
		}
		if json.Unmarshal(line, &tick) != nil || tick.Device == "" {
			continue
		}
		if all[tick.Device] == nil {
			all[tick.Device] = map[int]int{}
		}
		all[tick.Device][tick.Counter]++
	}
	return all
}

// An edit of the plan or of its shop is noticed, a fault is told at the terminal
// and in the page, and mended it is gone.
func TestBenchSeesEdits(t *testing.T) {
	folder := t.TempDir()
	plan, shop := filepath.Join(folder, "leg.yaml"), filepath.Join(folder, "shop.yaml")
	write := func(file, text string) { require.NoError(t, os.WriteFile(file, []byte(text), 0o666)) }
	bits := "bits: [{bit: three eighths, kind: up-cut, diameter: 3/8, plunges: yes}]\n"
	write(plan, "shop: shop.yaml"+legPlan)
	write(shop, bits)
	book, _ := aBook(t)
	s := serve(t, plan, book)
	until := func(what string, is func(toldState) bool) toldState {
		t.Helper()
		for range 6000 {
			if st := s.state(); is(st) {
				return st
			}
			time.Sleep(10 * time.Millisecond)
		}
		require.FailNow(t, what+" was never seen", "%+v", s.state())
		return toldState{}
	}
	first := s.state()
	write(plan, "shop: shop.yaml"+strings.Replace(legPlan, "depth: 1}", "depth: 7/8}", 1))
	second := until("the plan", func(st toldState) bool { return st.FileCode != first.FileCode })
	write(shop, strings.Replace(bits, "diameter: 3/8", "diameter: 5/16", 1))
	until("the shop", func(st toldState) bool { return st.FileCode != second.FileCode })
	write(shop, "bitz: []\n")
	fault := until("a fault", func(st toldState) bool { return st.Fault != "" }).Fault
	assert.Contains(t, fault, "shop.yaml:1:1")
	assert.NotContains(t, fault, folder)
	require.NoError(t, os.Remove(shop))
	until("no shop", func(st toldState) bool { return st.Fault != "" && st.Fault != fault })
	write(shop, bits)
	until("mended", func(st toldState) bool { return st.Fault == "" && st.FileCode == second.FileCode })
	require.NoError(t, os.Remove(plan))
	gone := until("no plan", func(st toldState) bool { return st.Fault != "" }).Fault
	assert.NotContains(t, gone, folder)
	write(plan, "shop: shop.yaml"+legPlan)
	until("the plan as it was", func(st toldState) bool { return st.Fault == "" && st.FileCode == first.FileCode })
}

// What the setup book learnt is said in a Try, and a setup kept while the page is
// open is known to it.
func TestBenchSaysLastTime(t *testing.T) {
	plan, file := leg(t)
	s := serve(t, plan, "--book="+file)
	ask := func() string {
		body := "run=1.1&what=marks&near=1/2&deck=" + s.state().FileCode
		r, err := http.NewRequest(http.MethodPost, s.address+"try", strings.NewReader(body))
		require.NoError(t, err)
		r.Header.Set("Origin", strings.TrimSuffix(s.address, "/"))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		answer, err := once.Do(r)
		require.NoError(t, err)
		defer answer.Body.Close()
		data, err := io.ReadAll(answer.Body)
		require.NoError(t, err)
		return string(data)
	}
	assert.NotContains(t, ask(), "last time")
	require.NoError(t, exec.Command("fencecard", "book", "keep", plan, "--setup", "1", "--name", "rails", "--fence-stood", "33/64", "--book", file).Run())
	for { // a test that hangs here has failed
		if answer := ask(); strings.Contains(answer, "last time") {
			assert.Contains(t, answer, "after the test cut the fence stood at 33/64")
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
}

// The page prints the bytes that the command writes.
func TestBenchPrintsAsTheCommands(t *testing.T) {
	plan, _ := leg(t)
	book, _ := aBook(t)
	s := serve(t, plan, book)
	for path, flags := range map[string]string{
		"deck.pdf": "", "deck.pdf?paper=a4": "--paper=a4", "strips.pdf": "--only=strips", "sheets.pdf?units=mm": "--only=sheets --units=mm",
	} {
		out := filepath.Join(t.TempDir(), "out.pdf")
		require.NoError(t, exec.Command("fencecard", append([]string{"cards", plan, book, "--out", out}, strings.Fields(flags)...)...).Run())
		want, err := os.ReadFile(out)
		require.NoError(t, err)
		assert.True(t, string(want) == s.get("print/"+path), path)
	}
}

// The port stays from one start to the next, for the browser's sake, and two plans
// at once have two.
func TestBenchPort(t *testing.T) {
	plan, _ := leg(t)
	book, _ := aBook(t)
	s := serve(t, plan, book)
	second := serve(t, plan, book)
	assert.NotEqual(t, s.port(), second.port())
	require.NoError(t, s.cmd.Process.Kill())
	_ = s.cmd.Wait()
	assert.Equal(t, s.port(), serve(t, plan, book).port())
	out, err := exec.Command("fencecard", "bench", plan, book, "--no-open", "--port", second.port()).CombinedOutput()
	assert.Error(t, err)
	assert.Contains(t, string(out), "try another --port")
}

// With --share the next device is let in at the address that the terminal shows, as
// text and as a code.
func TestBenchShares(t *testing.T) {
	if runtime.GOOS == "darwin" {
		t.Skip("it has one loopback address")
	}
	plan, _ := leg(t)
	book, _ := aBook(t)
	s := serve(t, plan, book, "--share=127.0.0.2", "--quiet")
	s.get("state") // the desk needs no key
	answer, err := once.Get("http://127.0.0.2:" + s.port() + "/")
	require.NoError(t, err)
	answer.Body.Close()
	assert.Equal(t, http.StatusForbidden, answer.StatusCode)
	if runtime.GOOS != "windows" {
		require.NoError(t, s.cmd.Process.Signal(os.Interrupt))
		require.NoError(t, s.cmd.Wait())
		assert.Regexp(t, `the next device is let in, once, at\n    http://127\.0\.0\.2:\d+/in/[A-Z2-7]{26}\n    █+\n`, s.told.String())
	}
}
