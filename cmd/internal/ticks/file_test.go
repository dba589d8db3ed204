package ticks

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	bench = "0123456789abcdef"
	other = "fedcba9876543210"
	says  = "00000000000000aa"
)

var noon = time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC)

func open(t *testing.T, path, plan string) *File {
	t.Helper()
	f, err := Open(t.Context(), path, plan, "bench.yaml", noon)
	require.NoError(t, err)
	return f
}

// tick is a box ticked a second later for each number.
func tick(f *File, device string, counter int64, copy int, on bool) Tick {
	return Tick{
		Device: device, Counter: counter, Time: noon.Add(time.Duration(counter) * time.Second), Plan: f.Plan(), Batch: f.Batch(),
		Box: Box{says, 1, "leg", copy}, On: on,
	}
}

func TestTicksStay(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ticks.jsonl")
	f := open(t, path, bench)
	assert.Equal(t, "2026-11-26 a", f.Batch())
	require.NoError(t, f.Add(t.Context(), []Tick{tick(f, "tablet", 1, 1, true), tick(f, "tablet", 2, 2, true), tick(f, "tablet", 3, 1, false)}))
	want := []Stand{{Box{says, 1, "leg", 1}, false}, {Box{says, 1, "leg", 2}, true}}
	assert.Equal(t, want, f.Stands())
	again := open(t, path, bench)
	assert.Equal(t, want, again.Stands())
	assert.Equal(t, "2026-11-26 a", again.Batch())
	assert.Empty(t, open(t, path, other).Stands(), "of another plan")
}

// What comes twice, in one message or in two, is stored once.
func TestTakenOnce(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ticks.jsonl")
	f, g := open(t, path, bench), open(t, path, bench)
	one := tick(f, "tablet", 1, 1, true)
	off := tick(f, "phone", 1, 1, false)
	off.Time = one.Time.Add(time.Minute)
	require.NoError(t, f.Add(t.Context(), []Tick{one, one}))
	require.NoError(t, f.Add(t.Context(), []Tick{off}))
	require.NoError(t, g.Add(t.Context(), []Tick{one}), "sent once more, to another program")
	assert.False(t, g.Stands()[0].On)
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, 3, bytes.Count(data, []byte("\n")), "a batch and two ticks")
}

// The later tick of a box stands, in whichever order both arrive.
func TestALateQueue(t *testing.T) {
	f := open(t, filepath.Join(t.TempDir(), "ticks.jsonl"), bench)
	require.NoError(t, f.Add(t.Context(), []Tick{tick(f, "phone", 9, 1, true)}))
	require.NoError(t, f.Add(t.Context(), []Tick{tick(f, "tablet", 3, 1, false)}))
	assert.True(t, f.Stands()[0].On)
}

func TestANewBatchHasNoTicks(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ticks.jsonl")
	f := open(t, path, bench)
	old := tick(f, "tablet", 2, 2, true)
	require.NoError(t, f.Add(t.Context(), []Tick{tick(f, "tablet", 1, 1, true)}))
	require.NoError(t, f.AddReading(t.Context(), Reading{Time: noon, Plan: f.Plan(), Batch: f.Batch(), Says: says, What: "marks", Values: map[string]string{"near": "25/64"}}))
	assert.Len(t, f.Readings(), 1)
	batch, err := f.NewBatch(t.Context(), noon)
	require.NoError(t, err)
	assert.Equal(t, "2026-11-26 b", batch)
	assert.Empty(t, f.Stands())
	assert.Empty(t, f.Readings())
	require.NoError(t, f.Add(t.Context(), []Tick{old}), "queued before the batch began")
	assert.Empty(t, f.Stands())
	assert.Equal(t, batch, open(t, path, bench).Batch())
}

func TestBatchesOfADay(t *testing.T) {
	for n, want := range map[int]string{0: "a", 25: "z", 26: "aa", 27: "ab", 51: "az", 52: "ba", 701: "zz", 702: "aaa"} {
		assert.Equal(t, want, letters(n))
	}
}

// A crash, or a power failure, may leave any part of the last line, or noughts in
// its place: what stood before stays, and what is added after is read.
func TestATornLine(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ticks.jsonl")
	f := open(t, path, bench)
	require.NoError(t, f.Add(t.Context(), []Tick{tick(f, "tablet", 1, 1, true)}))
	whole, err := os.ReadFile(path)
	require.NoError(t, err)
	next, err := lines(tick(f, "tablet", 2, 2, true))
	require.NoError(t, err)
	for cut := range len(next) {
		for _, torn := range [][]byte{next[:cut], make([]byte, cut)} {
			require.NoError(t, os.WriteFile(path, append(bytes.Clone(whole), torn...), 0o600))
			f := open(t, path, bench)
			require.Len(t, f.Stands(), 1, cut)
			require.NoError(t, f.Add(t.Context(), []Tick{tick(f, "tablet", 3, 3, true)}))
			again := open(t, path, bench)
			stands := again.Stands()
			require.Equal(t, f.Stands(), stands)
			require.Contains(t, stands, Stand{Box{says, 1, "leg", 3}, true})
			if cut == len(next)-1 && torn[0] != 0 {
				require.Len(t, stands, 3, "only the end of the line was lost")
			} else {
				require.Len(t, stands, 2)
			}
		}
	}
}

// Several programs add at once, and each line is there once.
func TestManyAddAtOnce(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ticks.jsonl")
	const programs, each = 8, 25
	var all sync.WaitGroup
	for p := range programs {
		f := open(t, path, bench)
		all.Go(func() {
			for i := range each {
				assert.NoError(t, f.Add(t.Context(), []Tick{tick(f, fmt.Sprint("p", p), int64(i+1), p*each+i+1, true)}))
			}
		})
	}
	all.Wait()
	f := open(t, path, bench)
	assert.Len(t, f.Stands(), programs*each)
	assert.Zero(t, f.Damaged())
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, programs*each+1, bytes.Count(data, []byte("\n")), "one batch, however many began it")
}

func TestLookSeesWhatOthersAdd(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ticks.jsonl")
	f, g := open(t, path, bench), open(t, path, bench)
	require.NoError(t, f.Add(t.Context(), []Tick{tick(f, "tablet", 1, 1, true)}))
	more, err := g.Look()
	require.NoError(t, err)
	assert.True(t, more)
	assert.Equal(t, f.Stands(), g.Stands())
	more, err = g.Look()
	require.NoError(t, err)
	assert.False(t, more)
}

// Whoever takes the file away takes the ticks away, and nothing else: what is
// added belongs to the batch that the tablets know.
func TestAFileTakenAway(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ticks.jsonl")
	f := open(t, path, bench)
	_, err := f.NewBatch(t.Context(), noon)
	require.NoError(t, err)
	require.NoError(t, f.Add(t.Context(), []Tick{tick(f, "tablet", 1, 1, true)}))
	require.NoError(t, os.Remove(path))
	require.NoError(t, f.Add(t.Context(), []Tick{tick(f, "tablet", 2, 2, true)}))
	assert.Equal(t, "2026-11-26 b", f.Batch())
	assert.Len(t, f.Stands(), 1)
	assert.Equal(t, f.Stands(), open(t, path, bench).Stands())
}

func TestNoTick(t *testing.T) {
	f := open(t, filepath.Join(t.TempDir(), "ticks.jsonl"), bench)
	for name, spoil := range map[string]func(*Tick){
		"device":  func(t *Tick) { t.Device = "a b" },
		"counter": func(t *Tick) { t.Counter = 0 },
		"plan":    func(t *Tick) { t.Plan = "/home/plan" },
		"batch":   func(t *Tick) { t.Batch = "now" },
		"says":    func(t *Tick) { t.Says = "<b>" },
		"height":  func(t *Tick) { t.Height = 0 },
		"copy":    func(t *Tick) { t.Copy = -1 },
		"piece":   func(t *Tick) { t.Piece = strings.Repeat("x", 5000) },
		"text":    func(t *Tick) { t.Piece = "\xff" },
		"time":    func(t *Tick) { t.Time = time.Date(20000, 1, 1, 0, 0, 0, 0, time.UTC) },
	} {
		one := tick(f, "tablet", 1, 1, true)
		spoil(&one)
		assert.Error(t, f.Add(t.Context(), []Tick{one}), name)
	}
	assert.Empty(t, f.Stands())
}

// No file of bytes, whole or taken in parts, makes a reader fail or take more than
// a line is worth; and what was read of the parts is what was read of the whole.
func FuzzRead(f *testing.F) {
	f.Add([]byte(`{"begins":"2026-11-26 a","plan":"0123456789abcdef","name":"x","time":"2026-11-26T12:00:00Z"}`+"\n"+
		`{"device":"t","counter":1,"time":"2026-11-26T12:00:00Z","plan":"0123456789abcdef","batch":"2026-11-26 a","says":"00000000000000aa","setup_height":1,"piece":"leg","copy":1,"on":true}`+"\n"), 40)
	f.Add([]byte(`{"plan":"0123456789abcdef","batch":"2026-11-26 a","says":"00000000000000aa","what":"marks","values":{"near":"1/2"},"time":"2026-11-26T12:00:00Z"}`+"\n{\n\n\x00\n"), 3)
	f.Fuzz(func(t *testing.T, data []byte, cut int) {
		whole, parts := newState(bench), newState(bench)
		read := whole.take(data)
		if read > 0 {
			require.Equal(t, byte('\n'), data[read-1])
		}
		require.Negative(t, bytes.IndexByte(data[read:], '\n'))
		cut = min(max(cut, 0), len(data))
		first := parts.take(data[:cut])
		parts.take(data[first:])
		require.Equal(t, whole, parts)
		require.LessOrEqual(t, whole.damaged+len(whole.batches), bytes.Count(data, []byte("\n")))
	})
}
