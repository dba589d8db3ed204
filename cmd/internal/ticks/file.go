package ticks

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"sync"
	"time"

	"fencecard/cmd/internal/shelf"
)

// File is a file of ticks as one plan sees it. Several programs may add to it at
// once. Its methods may be called by several goroutines.
type File struct {
	path, plan, name string

	lock  sync.Mutex
	state *state
	read  int64 // so much of the file, all of it whole lines
}

// Open reads a file of ticks, made where it is not there, and begins a batch
// where the plan has none yet. Plan is a key of 16 hexadecimal digits, name what
// its file is called.
func Open(ctx context.Context, path, plan, name string, now time.Time) (*File, error) {
	if !IsKey(plan) {
		return nil, fmt.Errorf("%q is no key of a plan", plan)
	}
	f := &File{path: path, plan: plan, name: name, state: newState(plan)}
	if _, err := f.Look(); err != nil {
		return nil, err
	}
	if f.Batch() != "" {
		return f, nil
	}
	err := f.grow(ctx, func() ([]byte, error) {
		if f.state.batch() != "" {
			return nil, nil // somebody else was faster
		}
		return f.next(now)
	})
	return f, err
}

// Plan is the key of the plan.
func (f *File) Plan() string { return f.plan }

// Batch is the batch of now, such as "2026-11-26 a".
func (f *File) Batch() string {
	f.lock.Lock()
	defer f.lock.Unlock()
	return f.state.batch()
}

// Stands are the boxes of the batch of now that were ever ticked.
func (f *File) Stands() []Stand {
	f.lock.Lock()
	defer f.lock.Unlock()
	return f.state.stands(f.state.batch())
}

// Told are the runs of which something was ticked in the batch of now.
func (f *File) Told() []Told {
	f.lock.Lock()
	defer f.lock.Unlock()
	var all []Told
	for t := range f.state.told[f.state.batch()] {
		all = append(all, t)
	}
	return all
}

// Readings are the last ones of each run in the batch of now.
func (f *File) Readings() []Reading {
	f.lock.Lock()
	defer f.lock.Unlock()
	return f.state.readingsOf(f.state.batch())
}

// Damaged counts the lines that could not be read.
func (f *File) Damaged() int {
	f.lock.Lock()
	defer f.lock.Unlock()
	return f.state.damaged
}

// Look reads what was added since, also by others, and reports whether anything was.
func (f *File) Look() (more bool, err error) {
	f.lock.Lock()
	defer f.lock.Unlock()
	if err := shelf.Ordinary(f.path); err != nil {
		return false, err
	}
	file, err := os.Open(f.path)
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	if err != nil {
		return false, err
	}
	defer file.Close()
	was := f.read
	_, err = f.catchUp(file)
	return f.read != was, err
}

// catchUp reads what the file has more than was read, and returns what follows
// its last whole line. A file that lost something is read anew.
func (f *File) catchUp(file shelf.Growing) (torn []byte, err error) {
	info, err := file.Stat()
	if err != nil {
		return nil, err
	}
	if info.Size() < f.read {
		f.read, f.state = 0, newState(f.plan)
	}
	data, err := io.ReadAll(io.NewSectionReader(file, f.read, info.Size()-f.read))
	if err != nil {
		return nil, err
	}
	whole := f.state.take(data)
	f.read += int64(whole)
	return data[whole:], nil
}

// Add stores ticks; when it returns nil they last. Those that are there already
// are not stored again.
func (f *File) Add(ctx context.Context, all []Tick) error {
	for i := range all {
		if err := all[i].Err(); err != nil {
			return err
		}
	}
	return f.grow(ctx, func() ([]byte, error) {
		type key struct {
			device  string
			counter int64
		}
		twice := map[key]bool{}
		return lines(slices.DeleteFunc(slices.Clone(all), func(t Tick) bool {
			k := key{t.Device, t.Counter}
			gone := twice[k] || f.state.has(t.Device, t.Counter)
			twice[k] = true
			return gone
		})...)
	})
}

// AddReading stores what was measured.
func (f *File) AddReading(ctx context.Context, r Reading) error {
	if err := r.Err(); err != nil {
		return err
	}
	return f.grow(ctx, func() ([]byte, error) { return lines(r) })
}

// NewBatch begins a batch and returns its name.
func (f *File) NewBatch(ctx context.Context, now time.Time) (string, error) {
	err := f.grow(ctx, func() ([]byte, error) { return f.next(now) })
	return f.Batch(), err
}

// next is the line that begins the batch after the last of that day.
func (f *File) next(now time.Time) ([]byte, error) {
	for n := 0; ; n++ {
		batch := now.Format(time.DateOnly) + " " + letters(n)
		if !slices.Contains(f.state.batches, batch) {
			return lines(start{Begins: batch, Plan: f.plan, Name: f.name, Time: now.UTC()})
		}
	}
}

// letters counts a, b, ..., z, aa, ab.
func letters(n int) string {
	text := ""
	for n++; n > 0; n = (n - 1) / 26 {
		text = string(rune('a'+(n-1)%26)) + text
	}
	return text
}

// grow adds lines to the file, made after all that others added was read. A last
// line that a crash tore is ended first: what is whole stays, and what is not is
// passed over from then on.
func (f *File) grow(ctx context.Context, more func() ([]byte, error)) error {
	f.lock.Lock()
	defer f.lock.Unlock()
	added := false
	err := shelf.Grow(ctx, f.path, func(file shelf.Growing) error {
		batch := f.state.batch()
		torn, err := f.catchUp(file)
		if err != nil {
			return err
		}
		data, err := more()
		if err != nil || len(data) == 0 {
			return err
		}
		if batch != "" && f.state.batch() == "" { // somebody took the file away
			begins, err := lines(start{Begins: batch, Plan: f.plan, Name: f.name, Time: time.Now().UTC()})
			if err != nil {
				return err
			}
			data = append(begins, data...)
		}
		if len(torn) > 0 {
			data = append([]byte("\n"), data...)
		}
		added = true
		_, err = file.Write(data)
		return err
	})
	if err != nil || !added {
		return err
	}
	file, err := os.Open(f.path)
	if err != nil {
		return err
	}
	defer file.Close()
	_, err = f.catchUp(file)
	return err
}
