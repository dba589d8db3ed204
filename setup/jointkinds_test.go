package setup_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/joint"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/keys"
	"fencecard/setup"
)

// jointStock are the pieces that the examples of the kinds of joint name: a kind whose
// example names another adds it.
var jointStock = map[string]string{
	"leg":         "{left-right: 2, front-back: 2, top-bottom: 17}",
	"stile":       "{left-right: 1, front-back: 3/4, top-bottom: 20}",
	"rail":        "{left-right: 12, front-back: 7/8, top-bottom: 3}",
	"left side":   "{left-right: 3/4, front-back: 9, top-bottom: 24}",
	"right side":  "{left-right: 3/4, front-back: 9, top-bottom: 24}",
	"shelf":       "{left-right: 20, front-back: 9, top-bottom: 3/4}",
	"left stile":  "{left-right: 2, front-back: 3/4, top-bottom: 20}",
	"right stile": "{left-right: 2, front-back: 3/4, top-bottom: 20}",
	"top rail":    "{left-right: 14, front-back: 3/4, top-bottom: 2}",
	"bottom rail": "{left-right: 14, front-back: 3/4, top-bottom: 2}",
	"panel":       "{left-right: 10 between shoulders, front-back: 1/2, top-bottom: 16 between shoulders}",
}

// jointPlan is a plan with one joint, whose words stand a line each.
func jointPlan(k *joint.Kind, words []string) string {
	var b strings.Builder
	b.WriteString(kindShop + "pieces:\n")
	for _, name := range slices.Sorted(maps.Keys(jointStock)) {
		if strings.Contains(k.Example, name+" / ") {
			fmt.Fprintf(&b, "  - piece: %s\n    size: %s\n", name, jointStock[name])
		}
	}
	b.WriteString("joints:\n  - " + k.Name + ": trial\n")
	for _, word := range words {
		b.WriteString("    " + word + "\n")
	}
	return b.String()
}

// wordsOf takes the example of a kind apart into its words.
func wordsOf(k *joint.Kind) (words []string) {
	for part := range strings.SplitSeq(k.Example, ", ") {
		word, _, _ := strings.Cut(part, ":")
		if n := len(words); n == 0 || slices.Contains(k.Keys(), word) && strings.Count(words[n-1], "{") == strings.Count(words[n-1], "}") {
			words = append(words, part)
		} else {
			words[n-1] += ", " + part
		}
	}
	return words
}

// speltOut is a plan with its joint as cuts, or what is wrong with it.
func speltOut(text string) string {
	out, err := planfile.Expand("plan.yaml", []byte(text), nil)
	if err != nil {
		return err.Error()
	}
	return string(out)
}

// A kind of joint is there when its example goes all the way from the plan to a deck that
// proves, and its halves fit. What is missing in the tables beside its row is found here,
// too.
func TestAKindOfJointIsAllThere(t *testing.T) {
	help, err := os.ReadFile("../cmd/internal/manual/topics/joints.txt")
	require.NoError(t, err)
	for _, k := range joint.Kinds {
		t.Run(k.Name, func(t *testing.T) {
			said := strings.Join(strings.Fields(string(help)), " ")
			assert.NotEmpty(t, k.Says, "say what it is, for one who does not know the word")
			assert.Regexp(t, `\b`+strings.ReplaceAll(k.Name, " ", `\W+(\S+\W+){0,6}?`)+`\b`, said, "'fencecard help joints' does not name it: topics/joints.txt of cmd/internal/manual")
			for _, key := range k.Keys() {
				assert.True(t, keys.IsKey(key), "%s has no example: examplesOf in joinery/planfile/keys/words.go", key)
				assert.Regexp(t, `\b`+key+`\b`, said, "'fencecard help joints' does not show %s: topics/joints.txt of cmd/internal/manual", key)
			}
			text := jointPlan(k, wordsOf(k))
			plan, err := planfile.Read("plan.yaml", []byte(text), nil)
			require.NoError(t, err, "its example, in the pieces of jointStock:\n%s", text)
			d, err := setup.MakeWith(t.Context(), plan, setup.Options{})
			require.NoError(t, err)
			for _, j := range d.Joints {
				for _, fit := range j.Fits {
					assert.GreaterOrEqual(t, fit.Gap(), -fit.Wants, "%s of %v in %v", fit.Of, j.Part, j.Into)
				}
			}
			for _, w := range d.Warnings {
				assert.NotEqual(t, "mates-apart", w.Code, w.Text)
			}
			assert.NotContains(t, speltOut(text), "joints:")
			for _, key := range slices.Concat(k.Needs, k.Takes) {
				wordIsFelt(t, k, key)
			}
			isIn(t, k, "../testdata/broken/*.yaml", "one for each of its faults")
		})
	}
}

// wordIsFelt holds that a word changes the cuts, by itself or with another or without it,
// or is a fault where it does not fit: else a maker would write it for nothing.
func wordIsFelt(t *testing.T, k *joint.Kind, key string) {
	without := func(words []string, key string) []string {
		return slices.DeleteFunc(slices.Clone(words), func(word string) bool { return strings.HasPrefix(word, key+": ") })
	}
	with := func(words []string, key string) []string {
		value, _, _ := strings.Cut(keys.ExampleInJoint(key), " (or ")
		for _, word := range words {
			if strings.HasPrefix(word, key+": ") {
				value = word
			}
		}
		return append(without(words, key), value)
	}
	words := wordsOf(k)
	tries := [][]string{words}
	for _, other := range k.Takes {
		if other == key {
			continue
		}
		tries = append(tries, with(words, other), without(words, other))
	}
	for _, words := range tries {
		if speltOut(jointPlan(k, with(words, key))) != speltOut(jointPlan(k, without(words, key))) {
			return
		}
	}
	assert.Fail(t, key+" of a "+k.Name+" changes nothing", "readJointWords of joinery/planfile/jointwords.go does not read it, or make in joinery/joint does not ask for it")
}

// isIn holds that some plans write a kind of joint.
func isIn(t *testing.T, k *joint.Kind, plans, what string) {
	files, err := filepath.Glob(plans)
	require.NoError(t, err)
	written := regexp.MustCompile(`(?m)^ *- \{?(` + strings.Join(append([]string{k.Name}, k.Also...), "|") + `): `)
	for _, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		if _, joints, ok := strings.Cut(string(data), "joints:"); ok && written.MatchString(joints) {
			return
		}
	}
	assert.Fail(t, "no plan in "+plans+" has it: write "+what)
}
