package desk

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"unicode/utf8"

	"fencecard/cmd/internal/desk/merge"
	"fencecard/cmd/internal/shelf"
)

// errForeign is what is said of a file whose letters a browser would change.
const errForeign = Conflict("the file is no text in UTF-8: open it in the editor that wrote it, and save it as UTF-8")

type fileText struct {
	planText
	Name string `json:"name"`
	// Here tells that there is such a file.
	Here bool `json:"here"`
	// Key tells files apart by where they lie, without saying where.
	Key string `json:"key"`
}

func (w Work) key() string {
	where := w.Path
	if whole, err := filepath.Abs(where); err == nil {
		where = whole
	}
	sum := sha256.Sum256([]byte(where))
	return hex.EncodeToString(sum[:8])
}

func (w Work) read(out http.ResponseWriter, _ *http.Request) {
	data, err := os.ReadFile(w.Path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		say(out, http.StatusOK, fileText{Name: w.name(), Key: w.key()})
	case err != nil:
		say(out, http.StatusInternalServerError, trouble{plainly(err)})
	case !utf8.Valid(data):
		say(out, http.StatusConflict, trouble{errForeign.Error()})
	default:
		say(out, http.StatusOK, fileText{planText{string(data)}, w.name(), true, w.key()})
	}
}

// change is a text to be saved, and the one that the page began with.
type change struct {
	Base string `json:"base"`
	Text string `json:"text"`
}

// saved tells what the file holds now; or, where Asks, what it holds that the page
// has not seen: then nothing was written. The page saves once more, with Theirs for
// its base, when its maker has chosen.
type saved struct {
	Text   string `json:"text"`
	Merged bool   `json:"merged"` // it has lines that the page did not send
	Asks   bool   `json:"asks"`
	Theirs string `json:"theirs"`
	Gone   bool   `json:"gone"` // the file is no longer there
}

// errAsks ends an update without writing.
var errAsks = errors.New("two editors changed the same lines")

// save writes a text where the file still holds what the page began with, or where
// both changes go together line by line.
func (w Work) save(r *http.Request, q change) (saved, error) {
	var s saved
	err := shelf.Update(r.Context(), w.Path, func(old []byte) ([]byte, error) {
		s = saved{}
		if !utf8.Valid(old) {
			return nil, errForeign
		}
		theirs := string(old)
		if old == nil && q.Base != "" {
			s = saved{Asks: true, Gone: true}
			return nil, errAsks
		}
		text, ok := merge.Lines(q.Base, q.Text, theirs)
		if !ok {
			s = saved{Asks: true, Theirs: theirs}
			return nil, errAsks
		}
		s = saved{Text: text, Merged: !merge.Same(text, q.Text)}
		return []byte(text), nil
	})
	if errors.Is(err, errAsks) {
		return s, nil
	}
	if err != nil {
		return saved{}, plainFault(err)
	}
	return s, nil
}

// plainly says an error without the path, which a page need not know.
func plainly(err error) string {
	var path *fs.PathError
	if errors.As(err, &path) {
		return "the plan's file: " + path.Err.Error()
	}
	return err.Error()
}
