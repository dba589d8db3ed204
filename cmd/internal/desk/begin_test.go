package desk

import (
	"bytes"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/page/browser"
)

// firstIn begins in a folder that is not there yet, and opens plans at an address
// that tells their file.
func firstIn(t *testing.T) First {
	return First{Folder: filepath.Join(t.TempDir(), "plans"), Called: "the folder plans", Open: func(path string) (string, error) {
		return "/opened#" + filepath.Base(path), nil
	}}
}

// begins asks where one begins, and returns the answer's status and text.
func begins(t *testing.T, f First, path string, q any) (int, going, string) {
	t.Helper()
	body, err := json.Marshal(q)
	require.NoError(t, err)
	recorder := httptest.NewRecorder()
	NewFirst(f).ServeHTTP(recorder, httptest.NewRequest("POST", path, bytes.NewReader(body)))
	var g going
	if recorder.Code == http.StatusOK {
		require.NoError(t, json.Unmarshal(recorder.Body.Bytes(), &g))
	}
	return recorder.Code, g, recorder.Body.String()
}

func TestBeginAPlan(t *testing.T) {
	f := firstIn(t)
	_, g, _ := begins(t, f, "/plan/begin", begun{"Wall shelf: no. 2", "mm"})
	assert.Equal(t, going{Address: "/opened#wall-shelf-no-2.yaml"}, g)
	text, err := os.ReadFile(filepath.Join(f.Folder, "wall-shelf-no-2.yaml"))
	require.NoError(t, err)
	assert.Equal(t, "title: \"Wall shelf: no. 2\"\nunit: mm\n", string(text))

	_, again, _ := begins(t, f, "/plan/begin", begun{"Wall shelf: no. 2", "mm"})
	assert.Equal(t, g, again, "nothing was written into it")
	status, _, said := begins(t, f, "/plan/begin", begun{"wall shelf no 2", "in"})
	assert.Equal(t, http.StatusConflict, status)
	assert.Contains(t, said, "has a wall-shelf-no-2.yaml already")
	now, err := os.ReadFile(filepath.Join(f.Folder, "wall-shelf-no-2.yaml"))
	require.NoError(t, err)
	assert.Equal(t, text, now)
}

func TestNamesOfFiles(t *testing.T) {
	for title, want := range map[string]string{
		"Boot bench": "boot-bench", "../../etc/passwd": "etc-passwd", "  ": "", "<b>": "b", "Stühle & Tisch": "stühle-tisch",
		"a/b\\c:d": "a-b-c-d", ".hidden": "hidden", strings.Repeat("long ", 40): strings.TrimSuffix(strings.Repeat("long-", 11), "-") + "-long",
	} {
		assert.Equal(t, want, fileName(title), title)
	}
}

func TestBringAPlan(t *testing.T) {
	f := firstIn(t)
	_, g, _ := begins(t, f, "/plan/bring", brought{`C:\plans\Boot bench.yml`, examples.BootBench})
	assert.True(t, strings.HasSuffix(g.Address, "boot-bench.yaml"), g.Address)
	plans := f.plans()
	require.Len(t, plans, 1)
	assert.Equal(t, strings.TrimPrefix(g.Address, "/opened#"), plans[0].Name)
	status, _, said := begins(t, f, "/plan/bring", brought{"photo.png", []byte("x")})
	assert.Equal(t, http.StatusUnprocessableEntity, status)
	assert.Contains(t, said, "neither a plan")
}

// Only what is offered is opened.
func TestOpenAPlan(t *testing.T) {
	f := firstIn(t)
	require.NoError(t, os.Mkdir(f.Folder, 0o777))
	for name, text := range map[string]string{"a.yaml": "pieces: [", "shop.yaml": "bits: []", "b.txt": "pieces:", "../c.yaml": "pieces:"} {
		require.NoError(t, os.WriteFile(filepath.Join(f.Folder, name), []byte(text), 0o666))
	}
	assert.Equal(t, []offered{{Name: "a.yaml"}}, f.plans())
	_, g, _ := begins(t, f, "/plan/open", map[string]string{"name": "a.yaml"})
	assert.Equal(t, "/opened#a.yaml", g.Address)
	for _, name := range []string{"../c.yaml", "shop.yaml", "b.txt", "", "."} {
		status, _, _ := begins(t, f, "/plan/open", map[string]string{"name": name})
		assert.Equal(t, http.StatusConflict, status, name)
	}
}

// A list is asked about until it is a plan.
func TestAListOfPieces(t *testing.T) {
	f := firstIn(t)
	list := brought{"side table.csv", []byte("Part,Qty,Length,Width,Thickness,Material\nLeg,4,26,1 1/2,1 1/2,cherry\nTop,1,24,18,3/4,cherry\n")}
	answers := map[string]string{}
	for range 6 {
		_, g, said := begins(t, f, "/plan/list", listed{list, answers})
		if g.Address != "" {
			assert.Equal(t, "/opened#side-table.yaml", g.Address)
			text, err := os.ReadFile(filepath.Join(f.Folder, "side-table.yaml"))
			require.NoError(t, err)
			plan, err := planfile.Read("side-table.yaml", text, nil)
			require.NoError(t, err)
			assert.Len(t, plan.Pieces, 5)
			return
		}
		require.Contains(t, g.HTML, `<input id="answer-0"`, said)
		for field := range strings.SplitSeq(g.HTML, `<input id="answer-`) {
			_, rest, is := strings.Cut(field, ` name="`)
			if !is {
				continue
			}
			key, rest, _ := strings.Cut(rest, `" value="`)
			answers[key], _, _ = strings.Cut(rest, `"`)
			if answers[key] == "" {
				answers[key] = "in"
			}
		}
	}
	t.Fatal("it never became a plan")
}

func TestAListThatIsWrong(t *testing.T) {
	_, g, _ := begins(t, firstIn(t), "/plan/list", listed{brought{"<b>.csv", []byte("Part,Qty,Length,Width,Thickness\n<i>leg</i>,many,26,1 1/2,wide\n")}, nil})
	assert.Empty(t, g.Address)
	assert.NotContains(t, g.HTML, "<b>.csv")
	assert.NotContains(t, g.HTML, "<i>leg")
}

func TestBeginInABrowser(t *testing.T) {
	b := browser.Open(t, 1280, 800)
	f := firstIn(t)
	address := serve(t, NewFirst(f))
	b.Go(address + "/plan")
	b.Shot("begin")
	b.Until(`document.querySelector('#begin button')`)
	b.Tap("#title")
	b.Press("Wall shelf" + browser.Enter)
	b.Until(`location.hash === "#wall-shelf.yaml"`)

	b.Go(address + "/plan")
	b.Until(`document.querySelector('button[data-plan="wall-shelf.yaml"]')`)
	assert.Equal(t, "have own bring look", browser.Eval[string](b, `[...document.querySelectorAll('#ways section')].map((s) => s.getAttribute("aria-labelledby")).join(" ")`), "one's own come first")
	b.Shot("begin-again")
	browser.Eval[any](b, `(function () {
		const data = new DataTransfer();
		data.items.add(new File(["Part;Qty;Length;Width;Thickness\nLeg;4;26 in;1 1/2;1 1/2\n"], "table.csv"));
		dispatchEvent(new DragEvent("drop", { dataTransfer: data, cancelable: true }));
	})()`)
	b.Until(`document.querySelector('#answers input')`)
	b.Shot("begin-list")
	for range 4 {
		browser.Eval[any](b, `(function () {
			document.querySelectorAll('#answers input').forEach((i) => { i.value = i.value || "cherry"; });
			document.querySelector('#answers').dataset.sent = "yes";
			document.querySelector('#answers button').click();
		})()`)
		b.Until(`location.hash === "#table.yaml" || document.querySelector('#answers:not([data-sent])')`)
		if browser.Eval[string](b, "location.hash") != "" {
			break
		}
	}
	b.Until(`location.hash === "#table.yaml"`)
	assert.FileExists(t, filepath.Join(f.Folder, "table.yaml"))
}
