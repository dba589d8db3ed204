package setup_test

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/keys"
	"fencecard/setup"
)

// kindStock are pieces in which the examples of the kinds are cut, and cut centred: a
// kind whose example fits none of them adds one.
var kindStock = []string{
	"{left-right: 40, front-back: 3/4, top-bottom: 5}",
	"{left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}",
	"{left-right: 3/4, front-back: 9 1/2, top-bottom: 24}",
	"{left-right: 3/4, front-back: 9 1/2, top-bottom: 18}",
	"{left-right: 14, front-back: 6, top-bottom: 3/4}",
	"{left-right: 16, front-back: 1/2, top-bottom: 20}",
}

// kindShop has bits for all of them.
const kindShop = `unit: in
wood: white oak
shop:
  fence: {infeed: 24, outfeed: 24, reach: 10}
  lift: 2 1/4
  bits:
    - {bit: eighth, kind: up-cut, diameter: 1/8, cutting: 3/4, shank: 1/4, plunges: yes}
    - {bit: three sixteenths, kind: up-cut, diameter: 3/16, cutting: 1, shank: 1/4, plunges: yes}
    - {bit: quarter, kind: up-cut, diameter: 1/4, cutting: 1, shank: 1/4, plunges: yes}
    - {bit: three eighths up-cut, kind: up-cut, diameter: 3/8, cutting: 1 1/4, shank: 3/8, plunges: yes}
    - {bit: three quarters, kind: straight, diameter: 3/4, cutting: 1 1/4, shank: 1/2, plunges: yes}
    - {bit: quarter round, kind: round-over, radius: 1/4, pilot: 1/2, diameter: 1, cutting: 1/2, shank: 1/2}
    - {bit: table panel, kind: outline, outline: [[0, 3/8], [1/4, 1]], pilot: 1/2, diameter: 2 1/2, cutting: 1/2, shank: 1/2}
`

// kindPlan is a plan with one cut.
func kindPlan(size string, cut string) string {
	return kindShop + "pieces:\n  - piece: board\n    size: " + size + "\n    cuts:\n      - {" + cut + "}\n"
}

// A kind is there when its example goes all the way from the plan to a deck that
// proves. What is missing in the tables beside its row is found here, too.
func TestAKindOfCutIsAllThere(t *testing.T) {
	help, err := os.ReadFile("../cmd/internal/manual/topics/plan.txt")
	require.NoError(t, err)
	for _, k := range joinery.Kinds {
		t.Run(k.Name, func(t *testing.T) {
			for _, word := range append([]string{k.Name}, k.Also...) {
				assert.True(t, regexp.MustCompile(`\b`+word+`\b`).Match(help), "'fencecard help plan' does not name %s: topics/plan.txt of cmd/internal/manual", word)
			}
			assert.True(t, k.Has("setback") || k.Has("span") || k.Refuses["repeat"].Why != "", "nothing says where one of a repeat lies: let the kind refuse it, with why")
			for _, key := range k.Keys() {
				assert.True(t, keys.IsKey(key), "%s has no example: examplesOf in joinery/planfile/keys/words.go", key)
				assert.True(t, strings.Contains(string(help), key+":"), "'fencecard help plan' does not show %s: topics/plan.txt of cmd/internal/manual", key)
			}
			cut := k.Name + ": trial, " + k.Example
			size := stockFor(t, cut)
			text := kindPlan(size, cut)
			spelt, err := planfile.Expand("plan.yaml", []byte(text), nil)
			require.NoError(t, err)
			assert.Equal(t, text, string(spelt), "nothing of it is left to spell out")
			for _, key := range k.Keys() {
				if !regexp.MustCompile(`(^|, )` + key + `: `).MatchString(cut) {
					keyIsRead(t, size, cut, key)
				}
			}
			for _, centred := range centredIn(k) {
				isCentred(t, k.Name+": trial, "+centred)
			}
		})
	}
}

// fromASide is a distance from a side where it says where a cut lies.
var fromASide = regexp.MustCompile(`(setback: |at: \[|, )(?:\d+ )?[\d/]+ from (\w+)`)

// centredIn is the example of a kind with each place that may be centred centred
// instead: its setback, or one of the two of a slot.
func centredIn(k *joinery.Kind) (all []string) {
	for _, at := range fromASide.FindAllStringSubmatchIndex(k.Example, -1) {
		word := k.Example[at[2]:at[3]]
		if word == "setback: " || strings.Contains(k.Example[:at[3]], "at: [") && !strings.Contains(k.Example[:at[0]], "]") {
			all = append(all, k.Example[:at[3]]+"centred"+k.Example[at[1]:])
		}
	}
	return all
}

// isCentred takes a cut that is placed centred to a deck, and measures that as much
// wood is left on either side of each of its channels, across them or along.
func isCentred(t *testing.T, cut string) {
	var why strings.Builder
	for _, size := range kindStock {
		plan, err := planfile.Read("plan.yaml", []byte(kindPlan(size, cut)), nil)
		if err == nil {
			_, err = setup.MakeWith(t.Context(), plan, setup.Options{})
		}
		if err != nil {
			fmt.Fprintf(&why, "%s\n%s\n\n", size, err)
			continue
		}
		p := plan.Pieces[0]
		for _, ch := range p.Cuts[0].Channels {
			along := ch.Lo > 0 && ch.Lo == p.Size[ch.Run()]-ch.Hi
			assert.True(t, ch.InMiddle(p.Size) || along, "%s: %+v of %v", cut, ch, p.Size)
		}
		return
	}
	require.Fail(t, "centred, the kind's example comes to no deck in any piece of kindStock", "%s\n%s", cut, &why)
}

// What may be centred is, of the kinds there are, each trench by its setback and a slot
// for a screw both ways.
func TestWhatMayBeCentred(t *testing.T) {
	ways := map[string]int{}
	for _, k := range joinery.Kinds {
		ways[k.Name] = len(centredIn(k))
		if k.Has("setback") {
			assert.Positive(t, ways[k.Name], "the example of %s has no setback from a side", k.Name)
		}
	}
	assert.Equal(t, 2, ways[joinery.Slot.Name])
}

// stockFor finds a piece in which the cut is read, laid, made and proved.
func stockFor(t *testing.T, cut string) string {
	var why strings.Builder
	for _, size := range kindStock {
		plan, err := planfile.Read("plan.yaml", []byte(kindPlan(size, cut)), nil)
		if err == nil {
			require.NotEmpty(t, plan.Pieces[0].Cuts[0].Channels, "it lays nothing")
			_, err = setup.MakeWith(t.Context(), plan, setup.Options{})
		}
		if err == nil {
			return size
		}
		fmt.Fprintf(&why, "%s\n%s\n\n", size, err)
	}
	require.Fail(t, "the kind's example comes to no deck in any piece of kindStock",
		"%s\nAdd a piece that it fits; a key that nothing reads is read in readCutValues of joinery/planfile/cut.go.\n%s", cut, &why)
	return ""
}

// keyIsRead holds that a key which the example does not have is read as well. A
// value that does not fit here was read to know so.
func keyIsRead(t *testing.T, size, cut, key string) {
	value, _, _ := strings.Cut(keys.Example(key), " (or ")
	_, err := planfile.Read("plan.yaml", []byte(kindPlan(size, cut+", "+value)), nil)
	if err != nil {
		assert.NotContains(t, err.Error(), "nothing reads it", "readCutValues in joinery/planfile/cut.go does not ask for it")
	}
}

// A key that a kind takes and nothing reads is a fault of the plan that has it: the
// cut would be made without it.
func TestAKeyThatNothingReads(t *testing.T) {
	known := joinery.Lap.Optional
	defer func() { joinery.Lap.Optional = known }()
	joinery.Lap.Optional = []string{"inward"}
	_, err := planfile.Read("plan.yaml", []byte(kindPlan(kindStock[0], "lap: trial, inward: 9, "+joinery.Lap.Example)), nil)
	assert.ErrorContains(t, err, `lap "trial" may say inward, and nothing reads it`)
	_, err = planfile.Read("plan.yaml", []byte(kindPlan(kindStock[0], "lap: trial, "+joinery.Lap.Example)), nil)
	assert.NoError(t, err)
}
