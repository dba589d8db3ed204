package main

import (
	"context"
	"fmt"
	"path/filepath"

	"fencecard/cmd/internal/bench"
	"fencecard/cmd/internal/desk"
	"fencecard/cmd/internal/shelf"
	"fencecard/joinery/plantext"
	"fencecard/setup/book"
)

// desk is what the plan's screen works on: the same files, read in the same way,
// as the bench page beside it.
func (w *benchWork) desk() desk.Work {
	folder := filepath.Dir(w.file)
	return desk.Work{
		Path: w.file, Begin: w.begin,
		Make: w.deck, Print: bench.Print,
		Open: func(path string) ([]byte, error) { return w.app.Silently().ShopIn(folder)(path) },
		Shelf: desk.Shelf{
			Shop: func(ctx context.Context, name string, change func([]byte) ([]byte, error)) error {
				// The name was read below the folder, or there would be no deck.
				return shelf.Update(ctx, filepath.Join(folder, filepath.FromSlash(name)), change)
			},
			Book: w.keep,
		},
	}
}

// keep puts a setup into the setup book.
func (w *benchWork) keep(ctx context.Context, e *book.Entry, instead bool) error {
	_, err := w.app.Silently().ChangeBook(ctx, w.o.book, func(b *book.Book) (*book.Book, error) {
		if _, err := b.Named(e.Name); err == nil && !instead {
			return nil, desk.Conflict(fmt.Sprintf("the book has a setup %q already: choose another name, or say that it takes the place of that one", plantext.Brief(e.Name, 60)))
		}
		return b.Put(e, instead)
	})
	return err
}
