package merge

import (
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestMerge(t *testing.T) {
	for name, c := range map[string]struct{ base, mine, theirs, want string }{
		"nobody changed":              {"a\nb\n", "a\nb\n", "a\nb\n", "a\nb\n"},
		"only here":                   {"a\nb\n", "a\nc\n", "a\nb\n", "a\nc\n"},
		"only there":                  {"a\nb\n", "a\nb\n", "z\nb\n", "z\nb\n"},
		"apart":                       {"a\nb\nc\n", "A\nb\nc\n", "a\nb\nC\n", "A\nb\nC\n"},
		"the same in both":            {"a\nb\nc\n", "a\nx\nc\n", "a\nx\nc\n", "a\nx\nc\n"},
		"a line here, another there":  {"a\nb\nc\nd\n", "a\nn\nb\nc\nd\n", "a\nb\nc\n", "a\nn\nb\nc\n"},
		"the same line":               {"a\nb\nc\n", "a\nx\nc\n", "a\ny\nc\n", "?"},
		"neighbouring lines":          {"a\nb\n", "A\nb\n", "a\nB\n", "?"},
		"changed here, removed there": {"a\nb\nc\n", "a\nx\nc\n", "a\nc\n", "?"},
		"two new files":               {"", "a\n", "b\n", "?"},
		"emptied there":               {"a\nb\n", "a\nb\nc\n", "", "?"},
		"ends of lines stay":          {"a\nb\nc\n", "a\nB\nc\n", "a\r\nb\r\nc\r\n", "a\r\nB\r\nc\r\n"},
		"no end of the last line":     {"a\nb", "x\na\nb", "a\nb", "x\na\nb"},
		"more behind a last line":     {"a\nb", "a\nb\nc\n", "a\nb", "a\nb\nc\n"},
	} {
		t.Run(name, func(t *testing.T) {
			got, ok := Lines(c.base, c.mine, c.theirs)
			if c.want == "?" {
				require.False(t, ok, got)
				return
			}
			require.True(t, ok)
			assert.Equal(t, c.want, got)
		})
	}
}

// Random edits, held against diff3 of the GNU diffutils where that is installed:
// what it merges and we do is the same text. (The two may find different common
// lines where lines repeat, so these do not.)
func TestMergeAgreesWithDiff3(t *testing.T) {
	diff3, err := exec.LookPath("diff3")
	if err != nil {
		t.Skip("left out: diff3 is not installed")
	}
	random := rand.New(rand.NewPCG(19, 3))
	merged, asked := 0, 0
	for range 150 {
		base := make([]string, 4+random.IntN(12))
		for i := range base {
			base[i] = "line " + string(rune('a'+i))
		}
		mine, theirs := edited(random, base, "mine"), edited(random, base, "theirs")
		folder := t.TempDir()
		var names []string
		for i, text := range [][]string{mine, base, theirs} {
			names = append(names, filepath.Join(folder, string(rune('0'+i))))
			require.NoError(t, os.WriteFile(names[i], []byte(joined(text)), 0o600))
		}
		want, err := exec.Command(diff3, append([]string{"-m"}, names...)...).Output()
		got, ok := Lines(joined(base), joined(mine), joined(theirs))
		if err != nil || !ok {
			assert.Equal(t, err == nil, ok, "diff3 and merge\nbase\n%s\nmine\n%s\ntheirs\n%s", joined(base), joined(mine), joined(theirs))
			asked++
			continue
		}
		merged++
		assert.Equal(t, string(want), got)
	}
	assert.Greater(t, merged, 20)
	assert.Greater(t, asked, 20)
}

func joined(lines []string) string {
	if len(lines) == 0 {
		return ""
	}
	return strings.Join(lines, "\n") + "\n"
}

func edited(random *rand.Rand, base []string, by string) []string {
	var out []string
	for i, line := range base {
		switch random.IntN(10) {
		case 0: // removed
		case 1:
			out = append(out, line+" "+by)
		case 2:
			out = append(out, line, "new "+by+" "+string(rune('a'+i)))
		default:
			out = append(out, line)
		}
	}
	return out
}
