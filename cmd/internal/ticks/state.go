package ticks

import (
	"bytes"
	"cmp"
	"slices"
	"time"
)

// Stand is how a box stands.
type Stand struct {
	Box
	On bool
}

// Told is a run of which something was ticked: what it said then, and what of
// which piece it cuts.
type Told struct{ Says, Piece, Cut string }

// state is what the lines of one plan come to.
type state struct {
	plan     string
	batches  []string                      // in the order in which they began
	seen     map[string]map[int64]struct{} // the counters taken of each device
	boxes    map[string]map[Box]stood      // by batch
	told     map[string]map[Told]struct{}
	readings map[string]map[[2]string]Reading // by batch, then says and what
	damaged  int                              // lines that are none
}

type stood struct {
	on bool
	at time.Time
}

func newState(plan string) *state {
	return &state{
		plan:     plan,
		seen:     map[string]map[int64]struct{}{},
		boxes:    map[string]map[Box]stood{},
		told:     map[string]map[Told]struct{}{},
		readings: map[string]map[[2]string]Reading{},
	}
}

// take reads whole lines and returns how many bytes those are; what follows the
// last line's end is left for when it is whole.
func (s *state) take(data []byte) (whole int) {
	for {
		end := bytes.IndexByte(data[whole:], '\n')
		if end < 0 {
			return whole
		}
		line := bytes.TrimSpace(data[whole : whole+end])
		whole += end + 1
		if len(line) > 0 && !read(line, s.tick, s.reading, s.begin) {
			s.damaged++
		}
	}
}

func (s *state) begin(b start) {
	if b.Plan == s.plan && !slices.Contains(s.batches, b.Begins) {
		s.batches = append(s.batches, b.Begins)
	}
}

func (s *state) has(device string, counter int64) bool {
	_, has := s.seen[device][counter]
	return has
}

func (s *state) tick(t Tick) {
	if t.Plan != s.plan || s.has(t.Device, t.Counter) {
		return
	}
	within(s.seen, t.Device)[t.Counter] = struct{}{}
	boxes := within(s.boxes, t.Batch)
	if before, is := boxes[t.Box]; !is || !t.Time.Before(before.at) {
		boxes[t.Box] = stood{t.On, t.Time}
	}
	within(s.told, t.Batch)[Told{t.Says, t.Piece, t.Cut}] = struct{}{}
}

func (s *state) reading(r Reading) {
	if r.Plan != s.plan {
		return
	}
	all := within(s.readings, r.Batch)
	key := [2]string{r.Says, r.What}
	if before, is := all[key]; !is || !r.Time.Before(before.Time) {
		all[key] = r
	}
}

// within is the map of a key, made where there is none yet.
func within[K, L comparable, V any](all map[K]map[L]V, key K) map[L]V {
	if all[key] == nil {
		all[key] = map[L]V{}
	}
	return all[key]
}

// batch is the one that began last, "" for none.
func (s *state) batch() string {
	if len(s.batches) == 0 {
		return ""
	}
	return s.batches[len(s.batches)-1]
}

// stands are the boxes of a batch that were ever ticked, in a settled order.
func (s *state) stands(batch string) []Stand {
	all := make([]Stand, 0, len(s.boxes[batch]))
	for box, stood := range s.boxes[batch] {
		all = append(all, Stand{box, stood.on})
	}
	slices.SortFunc(all, func(a, b Stand) int {
		return cmp.Or(cmp.Compare(a.Says, b.Says), cmp.Compare(a.Height, b.Height), cmp.Compare(a.Piece, b.Piece), cmp.Compare(a.Copy, b.Copy))
	})
	return all
}

// readingsOf are those of a batch, in a settled order.
func (s *state) readingsOf(batch string) []Reading {
	all := make([]Reading, 0, len(s.readings[batch]))
	for _, r := range s.readings[batch] {
		all = append(all, r)
	}
	slices.SortFunc(all, func(a, b Reading) int { return cmp.Or(cmp.Compare(a.Says, b.Says), cmp.Compare(a.What, b.What)) })
	return all
}
