package desk

import (
	"bytes"
	"embed"
	"errors"
	"fmt"
	"html/template"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"unicode"

	"fencecard/cmd/internal/shelf"
	"fencecard/joinery/planform"
	"fencecard/joinery/plantext"
)

//go:embed pages
var pages embed.FS

// ownPage is a page or a part of one, parsed when the first is shown.
func ownPage(name string) *template.Template { return ownPages().Lookup(name) }

var ownPages = sync.OnceValue(func() *template.Template { return template.Must(template.ParseFS(pages, "pages/*.html")) })

// First is where a maker begins who has named no plan.
type First struct {
	// Folder is where plans are and new ones go. It need not be there yet.
	Folder string
	// Called is how its maker knows the folder.
	Called string
	// Open serves the plan of a file and returns the address of its screen.
	Open func(path string) (address string, err error)
}

// NewFirst returns the handler of everything under /plan where there is no plan.
func NewFirst(first First) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /plan", first.page)
	mux.Handle("GET /plan/", filesUnder())
	mux.HandleFunc("POST /plan/begin", answer(first.begin))
	mux.HandleFunc("POST /plan/open", answer(first.open))
	mux.HandleFunc("POST /plan/bring", answer(first.bring))
	mux.HandleFunc("POST /plan/list", answer(first.list))
	return mux
}

func (f First) page(w http.ResponseWriter, _ *http.Request) {
	writePage(w, "begin.html", struct {
		Called string
		Plans  []offered
	}{f.Called, f.plans()})
}

// writePage writes a page, or nothing of it.
func writePage(w http.ResponseWriter, name string, data any) {
	var b bytes.Buffer
	if err := ownPage(name).Execute(&b, data); err != nil {
		http.Error(w, "This page cannot be shown.", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write(b.Bytes()) // a page that has gone needs no answer
}

// mostPlans bounds the plans that are offered.
const mostPlans = 40

// offered is a plan that one may go on with.
type offered struct {
	Name  string // of its file
	Title string // its own; "" where it has none or cannot be read
}

// plans are those in the folder, by the names of their files; shop files are none.
func (f First) plans() []offered {
	entries, err := os.ReadDir(f.Folder)
	if err != nil {
		return nil // it is not there yet, or nothing in it may be seen
	}
	var plans []offered
	for _, e := range entries {
		if len(plans) == mostPlans {
			break
		}
		if isPlanName(e.Name()) && e.Type().IsRegular() {
			if text, is := f.isPlan(e); is {
				plans = append(plans, offered{e.Name(), titleOf(text)})
			}
		}
	}
	return plans
}

func titleOf(text []byte) string {
	forms, err := planform.Read("", text)
	if err != nil {
		return ""
	}
	return plantext.Printable(plantext.Brief(forms[0].Value("title"), 60))
}

// mostLooked is how long a file is that is looked into.
const mostLooked = 1 << 20

// isPlan reads a file and reports whether it looks like a plan: one with a slip in it is
// one too, a shop file is none.
func (f First) isPlan(e fs.DirEntry) (text []byte, is bool) {
	info, err := e.Info()
	if err != nil || info.Size() > mostLooked {
		return nil, false
	}
	data, err := os.ReadFile(filepath.Join(f.Folder, e.Name()))
	return data, err == nil && (bytes.Contains(data, []byte("pieces:")) || bytes.HasPrefix(data, []byte("title:")))
}

func isPlanName(name string) bool {
	ending := strings.ToLower(filepath.Ext(name))
	return (ending == ".yaml" || ending == ".yml") && !strings.HasPrefix(name, ".")
}

// going is where the page goes on.
type going struct {
	Address string `json:"address,omitempty"`
	// HTML asks what is still open, or tells what is wrong.
	HTML string `json:"html,omitempty"`
}

// begun is a plan of one's own as it begins.
type begun struct {
	Title string `json:"title"`
	Unit  string `json:"unit"`
}

// begin writes a plan that has nothing but its title and unit.
func (f First) begin(_ *http.Request, b begun) (going, error) {
	form := planform.Blank(planform.Plan, "", nil)
	form.Set("title", b.Title)
	form.Set("unit", b.Unit)
	text, _, err := planform.Put(nil, form)
	if err != nil {
		return going{}, err
	}
	name := fileName(b.Title)
	if name == "" {
		return going{}, unfit("say what you are making, such as wall shelf: the file is called after it")
	}
	return f.write(name+".yaml", text)
}

// fileName makes a title the name of a file that every system takes; "" where nothing
// of it is left.
func fileName(title string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(strings.TrimSpace(title)) {
		switch {
		case unicode.IsLetter(r), unicode.IsDigit(r), r == '_':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	const most = 60
	name := strings.Trim(plantext.Brief(b.String(), most), "-.…")
	if !filepath.IsLocal(name + ".yaml") { // a name that the system keeps to itself
		return ""
	}
	return name
}

// write writes a new plan and serves it. One that is there with the same text is
// served as it is; with another it is left alone.
func (f First) write(name string, text []byte) (going, error) {
	path := filepath.Join(f.Folder, name)
	if err := os.MkdirAll(f.Folder, 0o777); err != nil {
		return going{}, fmt.Errorf("the folder %s cannot be made: %s", f.Called, plainly(err))
	}
	err := shelf.New(path, text)
	if errors.Is(err, fs.ErrExist) {
		there, err := os.ReadFile(path)
		if err != nil || !bytes.Equal(there, text) {
			return going{}, Conflict(fmt.Sprintf("%s has a %s already, with something else in it: choose another name", f.Called, name))
		}
	} else if err != nil {
		return going{}, errors.New(plainly(err))
	}
	return f.serve(path)
}

func (f First) serve(path string) (going, error) {
	address, err := f.Open(path)
	if err != nil {
		return going{}, err
	}
	return going{Address: address}, nil
}

// open serves one of the plans that are offered, and no other file.
func (f First) open(_ *http.Request, q struct{ Name string }) (going, error) {
	if !slices.ContainsFunc(f.plans(), func(p offered) bool { return p.Name == q.Name }) {
		return going{}, Conflict(plantext.Printable(plantext.Brief(q.Name, 60)) + " is no longer there")
	}
	return f.serve(filepath.Join(f.Folder, q.Name))
}

// brought is a file that was dropped on the page.
type brought struct {
	Name string `json:"name"`
	Data []byte `json:"data"`
}

// bring puts a copy of a plan that was dropped on the page into the folder.
func (f First) bring(_ *http.Request, b brought) (going, error) {
	base := filepath.Base(filepath.FromSlash(b.Name))
	if !isPlanName(base) {
		return going{}, unfit("that is neither a plan, which ends in .yaml, nor a list of pieces, which ends in .csv")
	}
	name := fileName(strings.TrimSuffix(base, filepath.Ext(base)))
	if name == "" {
		name = "plan"
	}
	return f.write(name+".yaml", b.Data)
}
