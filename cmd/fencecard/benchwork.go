package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"sync"
	"time"

	"fencecard/cmd/internal/session"
	"fencecard/cmd/internal/shelf"
	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/search/budget"
)

// benchWork is the plan of a bench page, which is read again whenever one of its
// files changed.
type benchWork struct {
	app  *app
	file string // "" for the built-in plan
	// begin is where it was begun or chosen, "" where it was named.
	begin string
	o     benchOptions

	making sync.Mutex // one deck at a time
	lock   sync.Mutex
	shops  []string // what the plan named when it was last read
}

func (a *app) benchWork(args []string, o benchOptions) (*benchWork, error) {
	w := &benchWork{app: a, o: o}
	if len(args) == 0 {
		a.Note("fencecard: no plan named, using the built-in boot bench")
		return w, nil
	}
	w.file = args[0]
	if w.file == "-" {
		return nil, session.Usage(errors.New("the bench page looks at a file again and again: write the plan into one, and name it"))
	}
	if err := shelf.Ordinary(w.file); err != nil {
		return nil, session.Plainly(err)
	}
	_, err := a.ReadNamed(w.file) // a slip of the name is told here, and serves nothing
	return w, err
}

// key tells plans apart by where they lie, without saying where.
func (w *benchWork) key() string {
	where := "the built-in plan"
	if w.file != "" {
		where = w.file
		if real, err := filepath.EvalSymlinks(where); err == nil {
			where = real
		}
		if whole, err := filepath.Abs(where); err == nil {
			where = whole
		}
	}
	sum := sha256.Sum256([]byte(where))
	return hex.EncodeToString(sum[:8])
}

// make reads the plan and makes its deck, with what the setup book says of it. The
// plan goes by its bare name: what is said of it is served.
func (w *benchWork) make(ctx context.Context) (*deck.Deck, error) {
	w.making.Lock()
	defer w.making.Unlock()
	plan, err := w.read()
	if err != nil {
		return nil, err
	}
	return w.deck(ctx, plan)
}

// deck makes the deck of a plan as the page shows it.
func (w *benchWork) deck(ctx context.Context, plan *joinery.Plan) (*deck.Deck, error) {
	plan, err := setup.Batch(plan, w.o.batch)
	if err != nil {
		return nil, err
	}
	d, err := setup.MakeWith(ctx, plan, setup.Options{Plain: w.o.search == 0, Search: budget.Limit{Time: time.Duration(w.o.search)}})
	if err != nil {
		return nil, err
	}
	b, err := w.app.Silently().ReadBook(w.o.book)
	if err != nil {
		return d, nil // the page stands without it, and other commands say why
	}
	b.Mark(d)
	return d, nil
}

func (w *benchWork) read() (*joinery.Plan, error) {
	defer session.CollectSooner()()
	if w.file == "" {
		return planfile.Read("boot-bench.yaml", examples.BootBench, nil)
	}
	if err := shelf.Ordinary(w.file); err != nil {
		return nil, errors.New("the plan is no file any more")
	}
	quiet := w.app.Silently()
	data, err := quiet.ReadNamed(w.file)
	switch {
	case errors.Is(err, fs.ErrNotExist): // while it was, the name was right
		return nil, fmt.Errorf("%s is not there any more", filepath.Base(w.file))
	case err != nil:
		return nil, fmt.Errorf("%s cannot be read: %w", filepath.Base(w.file), session.Cause(err))
	}
	shop := quiet.ShopIn(filepath.Dir(w.file))
	var shops []string
	plan, err := planfile.Read(filepath.Base(w.file), data, func(path string) ([]byte, error) {
		shops = append(shops, path)
		return shop(path)
	})
	w.lock.Lock()
	w.shops = shops
	w.lock.Unlock()
	return plan, err
}

// look is a digest of all files that the deck is made of.
func (w *benchWork) look() string {
	sum := sha256.New()
	add := func(data []byte, err error) {
		fmt.Fprintf(sum, "%d %t\n", len(data), err == nil)
		sum.Write(data)
	}
	quiet := w.app.Silently()
	if w.file != "" {
		data, err := []byte(nil), shelf.Ordinary(w.file)
		if err == nil {
			data, err = quiet.ReadNamed(w.file)
		}
		add(data, err)
		w.lock.Lock()
		shops := w.shops
		w.lock.Unlock()
		for _, path := range shops {
			add(quiet.ShopIn(filepath.Dir(w.file))(path))
		}
	}
	if path, _, err := session.BookPath(w.o.book); err == nil && shelf.Ordinary(path) == nil {
		add(quiet.ReadNamed(path))
	}
	return hex.EncodeToString(sum.Sum(nil))
}
