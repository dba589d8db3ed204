package main

import (
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Data flows one way: plan text, joinery, setup, output, commands. What a
// package must not depend on, directly or not.
var forbidden = map[string][]string{
	"fencecard/joinery/plantext":              {"fencecard/setup", "fencecard/output", "fencecard/cmd", "go.yaml.in/yaml"},
	"fencecard/joinery/measure":               {"fencecard/joinery/timber", "fencecard/setup", "fencecard/output", "fencecard/cmd", "go.yaml.in/yaml"},
	"fencecard/joinery/timber":                {"fencecard/joinery/planfile", "fencecard/setup", "fencecard/output", "fencecard/cmd", "go.yaml.in/yaml"},
	"fencecard/joinery":                       {"fencecard/setup", "fencecard/output", "fencecard/cmd", "go.yaml.in/yaml", "github.com/spf13/cobra", "github.com/jung-kurt/gofpdf"},
	"fencecard/joinery/planfile":              {"fencecard/setup", "fencecard/output", "fencecard/cmd", "github.com/spf13/cobra", "github.com/jung-kurt/gofpdf"},
	"fencecard/joinery/planfile/keys":         {"fencecard/joinery/planfile/yamlfile", "fencecard/setup", "fencecard/output", "fencecard/cmd", "go.yaml.in/yaml"},
	"fencecard/joinery/planfile/yamlfile":     {"fencecard/joinery/planfile/shopfile", "fencecard/joinery/planfile/where", "fencecard/setup", "fencecard/output", "fencecard/cmd"},
	"fencecard/joinery/planfile/shopfile":     {"fencecard/joinery/planfile/where", "fencecard/setup", "fencecard/output", "fencecard/cmd"},
	"fencecard/joinery/planfile/where":        {"fencecard/joinery/planfile/shopfile", "fencecard/setup", "fencecard/output", "fencecard/cmd"},
	"fencecard/joinery/planform":              {"fencecard/setup", "fencecard/output", "fencecard/cmd", "github.com/spf13/cobra", "github.com/jung-kurt/gofpdf"},
	"fencecard/joinery/piecelist/spreadsheet": {"fencecard/setup", "fencecard/output", "fencecard/cmd", "fencecard/joinery/planfile"},
	"fencecard/joinery/piecelist":             {"fencecard/setup", "fencecard/output", "fencecard/cmd", "fencecard/joinery/planfile", "go.yaml.in/yaml", "github.com/spf13/cobra", "github.com/jung-kurt/gofpdf"},
	"fencecard/setup":                         {"fencecard/output", "fencecard/cmd", "fencecard/joinery/planfile", "github.com/spf13/cobra", "github.com/jung-kurt/gofpdf"},
	"fencecard/setup/deck":                    {"fencecard/setup/remark", "fencecard/setup/whatif", "fencecard/setup/proof", "fencecard/setup/solid", "fencecard/output", "fencecard/joinery/planfile"},
	"fencecard/setup/remark/joints":           {"fencecard/setup/proof", "fencecard/setup/whatif", "fencecard/output", "fencecard/joinery/planfile"},
	"fencecard/setup/deck/deckpart":           {"fencecard/setup/remark", "fencecard/setup/proof", "fencecard/output", "fencecard/joinery/planfile"},
	"fencecard/setup/remark/loose":            {"fencecard/setup/proof", "fencecard/setup/remark/joints", "fencecard/output", "fencecard/joinery/planfile"},
	"fencecard/setup/remark/trade":            {"fencecard/setup/proof", "fencecard/setup/remark/joints", "fencecard/output", "fencecard/joinery/planfile"},
	"fencecard/setup/remark":                  {"fencecard/setup/proof", "fencecard/setup/whatif", "fencecard/output", "fencecard/joinery/planfile"},
	"fencecard/setup/proof/attable":           {"fencecard/setup/remark", "fencecard/setup/whatif", "fencecard/output", "fencecard/joinery/planfile", "github.com/spf13/cobra"},
	"fencecard/setup/proof":                   {"fencecard/setup/remark", "fencecard/setup/whatif", "fencecard/output", "fencecard/joinery/planfile", "github.com/spf13/cobra"},
	"fencecard/setup/book":                    {"fencecard/output", "fencecard/cmd", "fencecard/joinery/planfile", "github.com/spf13/cobra", "github.com/jung-kurt/gofpdf", "github.com/gofrs/flock"},
	"fencecard/setup/search/model":            {"fencecard/setup/search/order", "fencecard/setup/deck", "fencecard/output"},
	"fencecard/setup/search/order":            {"fencecard/setup/deck", "fencecard/output"},
	"fencecard/setup/search":                  {"fencecard/output", "fencecard/cmd", "fencecard/joinery/planfile"},
	"fencecard/cmd/internal/session":          {"fencecard/cmd/internal/bench", "fencecard/cmd/internal/desk", "fencecard/cmd/internal/lists", "net/http"},
	"fencecard/cmd/internal/terminal":         {"fencecard/setup", "fencecard/output", "fencecard/cmd/internal/session"},
	"fencecard/cmd/internal/manual":           {"fencecard/cmd/internal/session"},
	"fencecard/cmd/internal/typed":            {"fencecard/setup", "fencecard/output", "fencecard/cmd/internal/session"},
	"fencecard/output":                        {"fencecard/cmd", "fencecard/joinery/planfile", "github.com/spf13/cobra"},
}

func TestImportsFlowOneWay(t *testing.T) {
	for pkg, banned := range forbidden {
		out, err := exec.Command("go", "list", "-deps", pkg).Output()
		require.NoError(t, err, pkg)
		for dep := range strings.FieldsSeq(string(out)) {
			for _, b := range banned {
				assert.False(t, strings.HasPrefix(dep, b), "%s depends on %s", pkg, dep)
			}
		}
	}
}

// Only the bench page is served, and only a browser is started: what else of ours
// imports what could do either has slipped. The program asks nobody for anything:
// nothing of ours dials.
func TestNoNetwork(t *testing.T) {
	may := map[string][]string{
		"net":      {"fencecard/cmd/internal/bench", "fencecard/cmd/fencecard"},
		"net/http": {"fencecard/cmd/internal/bench", "fencecard/cmd/internal/desk"},
		"os/exec":  {"fencecard/cmd/internal/terminal"},
		"syscall":  {"fencecard/cmd/fencecard"}, // the name of a signal
	}
	out, err := exec.Command("go", "list", "-deps", "-f", `{{.ImportPath}} {{.Dir}} {{join .Imports " "}}`, ".").Output()
	require.NoError(t, err)
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		pkg, folder, imports := words[0], words[1], words[2:]
		assert.NotEqual(t, "plugin", pkg)
		if !strings.HasPrefix(pkg, "fencecard/") {
			continue
		}
		for _, used := range imports {
			assert.NotEqual(t, "unsafe", used, pkg)
			for _, of := range []string{"net", "net/http", "os/exec", "syscall"} {
				if used == of {
					assert.Contains(t, may[of], pkg, "%s imports %s", pkg, used)
				}
			}
		}
		files, err := filepath.Glob(filepath.Join(folder, "*.go"))
		require.NoError(t, err)
		for _, file := range files {
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			if !strings.HasSuffix(file, "_test.go") {
				assert.NotRegexp(t, `net\.Dial|http\.(Get|Post|Head|Client|DefaultClient|NewRequest|Transport)`, string(text), file)
			}
		}
	}
}

// A room is one idea, and no heap.
func TestNoRoomIsAHeap(t *testing.T) {
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{len .GoFiles}}`, "fencecard/...").Output()
	require.NoError(t, err)
	rooms := 0
	for line := range strings.Lines(string(out)) {
		pkg, count, _ := strings.Cut(strings.TrimSpace(line), " ")
		files, err := strconv.Atoi(count)
		require.NoError(t, err)
		assert.LessOrEqual(t, files, 25, "%s has %d files: part it by its ideas", pkg, files)
		rooms++
	}
	assert.Greater(t, rooms, 40)
}

// Every package says what is in it and has its row in the table of rooms, and every
// file or folder that DEVELOPERS.md names is there.
func TestRoomsAreListed(t *testing.T) {
	guide, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	out, err := exec.Command("go", "list", "-f", "{{.ImportPath}}\t{{.Doc}}", "fencecard/...").Output()
	require.NoError(t, err)
	for line := range strings.Lines(string(out)) {
		pkg, says, _ := strings.Cut(strings.TrimSpace(line), "\t")
		assert.NotEmpty(t, says, "%s: say in a comment on the package what is in it", pkg)
		room := strings.TrimPrefix(pkg, "fencecard/")
		assert.True(t, strings.Contains(string(guide), "\n| `"+room+"` |"), "DEVELOPERS.md: give %s a row in the table of rooms", room)
	}
	named := regexp.MustCompile("`((?:cmd|joinery|setup|output|testdata)/[A-Za-z0-9_./-]+)`").FindAllStringSubmatch(string(guide), -1)
	assert.Greater(t, len(named), 60)
	for _, name := range named {
		_, err := os.Stat("../../" + name[1])
		assert.NoError(t, err)
	}
}

// A word that the guide gives a meaning in code is the name of no type elsewhere.
func TestCodeWordsHaveOneMeaning(t *testing.T) {
	guide, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	_, section, _ := strings.Cut(string(guide), "\n## Words with one meaning\n")
	section, _, _ = strings.Cut(section, "\n## ")
	words := regexp.MustCompile(`\*(\w+)\*:`).FindAllStringSubmatch(section, -1)
	require.NotEmpty(t, words)
	for _, folder := range []string{"joinery", "output", "cmd"} {
		require.NoError(t, filepath.WalkDir("../../"+folder, func(path string, _ os.DirEntry, err error) error {
			if err != nil || filepath.Ext(path) != ".go" {
				return err
			}
			code, err := os.ReadFile(path)
			for _, word := range words {
				assert.NotRegexp(t, `(?mi)^type `+word[1]+`\b`, string(code), "%s: %s means something in setup", path, word[1])
			}
			return err
		}))
	}
}

// Both texts are read beside the code, in a window no wider than that: only tables are
// wider, and sessions, which are printed as they are.
func TestTheGuideIsNoWiderThanCode(t *testing.T) {
	for _, name := range []string{"DEVELOPERS.md", "README.md"} {
		text, err := os.ReadFile("../../" + name)
		require.NoError(t, err)
		for i, line := range strings.Split(string(text), "\n") {
			if session := name == "README.md" && strings.HasPrefix(line, "    "); !session && !strings.HasPrefix(line, "|") {
				assert.LessOrEqual(t, utf8.RuneCountInString(line), 120, "%s:%d: wrap this at 120 columns", name, i+1)
			}
		}
	}
}

// The standard library's packages, ours and other people's stand apart in every
// list of imports, which gofmt does not see to.
func TestImportsStandApart(t *testing.T) {
	sort := func(path string) string {
		first, _, _ := strings.Cut(path, "/")
		switch {
		case first == "fencecard":
			return "ours"
		case strings.Contains(first, "."):
			return "other people's"
		}
		return "the library's"
	}
	files := token.NewFileSet()
	require.NoError(t, filepath.WalkDir("../..", func(path string, _ os.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".go" {
			return err
		}
		parsed, err := parser.ParseFile(files, path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for i, one := range parsed.Imports {
			if i == 0 {
				continue
			}
			above := parsed.Imports[i-1]
			if files.Position(one.Pos()).Line == files.Position(above.End()).Line+1 {
				assert.Equal(t, sort(strings.Trim(above.Path.Value, `"`)), sort(strings.Trim(one.Path.Value, `"`)), "%s imports %s and %s in one group", path, above.Path.Value, one.Path.Value)
			}
		}
		return nil
	}))
}
