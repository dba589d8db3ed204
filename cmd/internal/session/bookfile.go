package session

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/shelf"
	"fencecard/joinery/plantext"
	"fencecard/output/screen"
	"fencecard/output/wording"
	"fencecard/setup/book"
	"fencecard/setup/deck"
)

// BookVariable names the setup book, where --book does not.
const BookVariable = "FENCECARD_BOOK"

// BookFlag is the flag that names a setup book.
func BookFlag(cmd *cobra.Command, file *string) {
	cmd.Flags().StringVar(file, "book", "", "the setup book `FILE`; else $"+BookVariable+", else your data folder")
}

// BookPath is the file of the setup book. Chosen tells that the maker named it.
func BookPath(flag string) (path string, chosen bool, err error) {
	if flag != "" {
		return flag, true, nil
	}
	if named := os.Getenv(BookVariable); named != "" {
		return named, true, nil
	}
	folder, ok := dataFolder(runtime.GOOS, os.Getenv)
	if !ok {
		return "", false, fmt.Errorf("your data folder is not known here; name the setup book with --book or $%s", BookVariable)
	}
	return filepath.Join(folder, "fencecard", "setup-book.txt"), false, nil
}

// dataFolder is where a system keeps a user's data: on macOS by Apple's File
// System Programming Guide, on Windows FOLDERID_LocalAppData of the known
// folders, elsewhere by the XDG Base Directory Specification 0.8, which says to
// ignore a path that is not absolute.
func dataFolder(system string, env func(string) string) (string, bool) {
	below := func(variable string, folders ...string) (string, bool) {
		base := env(variable)
		return filepath.Join(append([]string{base}, folders...)...), base != ""
	}
	switch system {
	case "windows":
		if local, ok := below("LOCALAPPDATA"); ok {
			return local, true
		}
		return below("USERPROFILE", "AppData", "Local")
	case "darwin", "ios":
		return below("HOME", "Library", "Application Support")
	}
	if xdg := env("XDG_DATA_HOME"); filepath.IsAbs(xdg) {
		return xdg, true
	}
	return below("HOME", ".local", "share")
}

// MakeFolderOf makes the folder of the book, and of what stands beside it, where the
// maker named none: for its owner alone, as the XDG Base Directory Specification says.
func MakeFolderOf(path string) error { return os.MkdirAll(filepath.Dir(path), 0o700) }

// OpenBook reads the setup book and reports what is damaged in it.
func (s *Session) OpenBook(flag string) (*book.Book, error) {
	defer CollectSooner()()
	b, err := s.ReadBook(flag)
	if err == nil {
		s.reportDamage(b)
	}
	return b, err
}

// ReadBook reads the setup book; one that is not there yet is empty.
func (s *Session) ReadBook(flag string) (*book.Book, error) {
	path, _, err := BookPath(flag)
	if err != nil {
		return nil, err
	}
	// A pipe or a terminal would be waited for.
	switch err := shelf.Ordinary(path); {
	case errors.Is(err, shelf.ErrNoFile):
		return nil, fmt.Errorf("%w; name a setup book with --book or $%s", Plainly(err), BookVariable)
	case err != nil:
		return nil, Plainly(err)
	}
	data, err := s.ReadNamed(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	return book.Read(path, data)
}

// MarkKept gives a deck what the setup book says of its setups, and returns what
// was found. A book that the maker did not ask for never stops the cards.
func (s *Session) MarkKept(d *deck.Deck, p Printed) (Found, error) {
	b, err := s.OpenBook(p.Book)
	if err != nil && p.Book == "" {
		s.unused(err)
		return Found{}, nil
	}
	if err != nil {
		return Found{}, err
	}
	return p.mark(d, b), nil
}

// unused says why the setup book was not used.
func (s *Session) unused(err error) {
	fmt.Fprintf(s.Err, "%v\nthe setup book was not used\n", err)
}

// TellFound tells which numbers of a deck are the setup book's, what that learnt after
// the papers of the deck were printed, and of kept setups that are near those of the
// deck; of one run alone where it is named.
func (s *Session) TellFound(d *deck.Deck, f Found, run string) {
	s.tellTaken(d, run)
	s.tellSince(d, f, run)
	near := false
	for _, m := range f.matches {
		printed := slices.ContainsFunc(d.Setups, func(s deck.Setup) bool { return s.Number == m.Setup.Number })
		if printed && len(m.Offers) > 0 {
			near = true
			s.Note("%s", screen.OfferLine(m, d.Plan.Shop.Scale))
		}
	}
	if near {
		s.Note("fencecard book match tells more")
	}
}

// tellTaken says of the setups of a deck, or of that of the run that is named, where the
// setup book has other numbers for the table than those computed, and that the sheets
// have them.
func (s *Session) tellTaken(d *deck.Deck, run string) {
	for i := range d.Setups {
		u := &d.Setups[i]
		if !isAbout(u, run) || !u.Kept.Numbers() {
			continue
		}
		computed := *u
		computed.Kept = nil
		if taken := wording.Since(&computed, u, d.Plan.Shop.Scale); taken != "" {
			s.Note("setup %d: by the setup book, as after the test cut of %q, its sheet has %s", u.Number, u.Kept.Name, taken)
		}
	}
}

// reportDamage says what of a book cannot be used; the rest of it can.
func (s *Session) reportDamage(b *book.Book) {
	if err := b.Damage().Err(); err != nil {
		fmt.Fprintln(s.Err, err)
	}
	for _, e := range b.Entries() {
		if e.Edited.Known() {
			fmt.Fprintf(s.Err, "%s: note: %q was edited since it was kept; its code is %s now\n", e.Edited, e.Name, e.Code)
		}
	}
}

// ChangeBook changes the setup book while no other run does.
func (s *Session) ChangeBook(ctx context.Context, flag string, change func(*book.Book) (*book.Book, error)) (path string, err error) {
	path, chosen, err := BookPath(flag)
	if err != nil {
		return "", err
	}
	if !chosen {
		if err := MakeFolderOf(path); err != nil {
			return "", fmt.Errorf("the setup book %s cannot be made: %w; name another place for it with --book or $%s", path, Cause(err), BookVariable)
		}
	}
	defer CollectSooner()()
	var changed *book.Book
	err = shelf.Update(ctx, path, func(old []byte) ([]byte, error) {
		b, err := book.Read(path, old)
		if err != nil {
			return nil, err
		}
		if changed, err = change(b); err != nil {
			return nil, err
		}
		return changed.Bytes(), nil
	})
	if err != nil {
		return "", bookFault(path, err)
	}
	s.reportDamage(changed)
	return path, nil
}

// bookFault says of an error of the disk what it means for the book.
func bookFault(path string, err error) error {
	var fault plantext.Faults
	switch {
	case errors.As(err, &fault):
		return err
	case errors.Is(err, shelf.ErrBusy):
		return fmt.Errorf("%s: %w for more than %g seconds; try again", path, shelf.ErrBusy, shelf.Patience.Seconds())
	case errors.Is(err, shelf.ErrUnsettled):
		return fmt.Errorf("%s: %w; close it in your editor and try again", path, shelf.ErrUnsettled)
	}
	var named *fs.PathError
	if errors.As(err, &named) { // the book, its lock or its backup
		path, err = named.Path, named.Err
	}
	switch {
	case errors.Is(err, shelf.ErrNoFile):
		err = fmt.Errorf("%w; move it away, or name another book", err)
	case errors.Is(err, fs.ErrPermission):
		err = fmt.Errorf("%w; allow writing to it, or name another book", err)
	}
	return fmt.Errorf("%s: %w; the book was left as it is", path, err)
}
