package deckfile_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/plantext"
	"fencecard/output/deckfile"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckcode"
	"fencecard/setup/proof"
	"fencecard/setup/proof/attable"
	"fencecard/setup/remark"
)

// smallDeck is the JSON of one piece of the boot bench.
func smallDeck(t testing.TB) (*joinery.Plan, []byte) {
	t.Helper()
	plan := *bothExamples(t)["boot bench"]
	plan.Pieces = plan.Pieces[:1]
	var b bytes.Buffer
	require.NoError(t, deckfile.Write(&b, deckOf(t, &plan)))
	return &plan, b.Bytes()
}

// proves reports whether a deck is read and proves.
func proves(plan *joinery.Plan, data []byte) bool {
	claims, err := deckfile.Read("deck.json", data, plan.Shop.Scale)
	if err != nil {
		return false
	}
	if r := proof.Check(plan, claims); !r.Proved() {
		return false
	}
	d := proof.Deck(plan, claims)
	remark.Add(d)
	return len(deckfile.Differences(d, claims)) == 0
}

// In a deck changed by hand a number is changed in its millimetres, in its
// text, or in both.
func TestEveryNumberInAFileIsChecked(t *testing.T) {
	plan, data := smallDeck(t)
	require.True(t, proves(plan, data))
	number := regexp.MustCompile(`"mm": (-?[0-9.]+),\s*"text": "([^"]*)"`)
	all := number.FindAllSubmatchIndex(data, -1)
	require.Greater(t, len(all), 80)
	splice := func(from, to int, text string) []byte {
		return []byte(string(data[:from]) + text + string(data[to:]))
	}
	for _, at := range all {
		var mm float64
		_, err := fmt.Sscan(string(data[at[2]:at[3]]), &mm)
		require.NoError(t, err)
		for _, by := range []float64{25.4 / 64, -25.4 / 64} {
			l := measure.FromMillimetres(mm + by)
			text := plan.Shop.Scale.Format(l)
			if l.Abs() < measure.Inch/64 {
				continue // a coarse rule reads 0+ there
			}
			where := string(data[at[0]:at[1]])
			assert.False(t, proves(plan, splice(at[2], at[3], l.MM())), "mm of %s", where)
			assert.False(t, proves(plan, splice(at[4], at[5], text)), "text of %s", where)
			assert.False(t, proves(plan, splice(at[0], at[1], fmt.Sprintf(`"mm": %s, "text": %q`, l.MM(), text))), "both of %s", where)
		}
	}
}

func TestReadIsTolerant(t *testing.T) {
	plan, data := smallDeck(t)
	text := string(data)
	for name, changed := range map[string]string{
		"fields nobody knows":  strings.Replace(text, `"title"`, `"colour": {"of": ["the", "bench", 1, null]}, "title"`, 1),
		"only what must stand": regexp.MustCompile(`"(wood|cap_rule)": "[^"]*",\s*|"(length|cap)": \{[^}]*\},\s*|"positions?": 1,\s*`).ReplaceAllString(text, ""),
		"a byte order mark":    "\ufeff" + text,
		"another order":        strings.Replace(strings.Replace(text, `"unit": "in",`, "", 1), "{", `{"unit": "in",`, 1),
		"Windows line ends":    strings.ReplaceAll(text, "\n", "\r\n"),
		"no line ends":         strings.ReplaceAll(text, "\n", ""),
	} {
		_, err := deckfile.Read("deck.json", []byte(changed), plan.Shop.Scale)
		assert.NoError(t, err, name)
		assert.True(t, proves(plan, []byte(changed)), name)
	}
}

func TestReadFaults(t *testing.T) {
	plan, data := smallDeck(t)
	text := string(data)
	for _, test := range []struct{ name, deck, want string }{
		{"nothing", "", "deck.json:1:1: the deck breaks off here"},
		{"a plan", "title: Boot bench\n", "deck.json:1:1: this is no deck: one begins with {"},
		{"UTF-16 without a mark", "{\x00}\x00", "deck.json:1:1: the deck is saved as UTF-16"},
		{"a zero byte", "{\n\x00}", "deck.json:2:1: there is a zero byte here"},
		{"too deep", `{"x": ` + strings.Repeat("[", 50) + strings.Repeat("]", 50) + "}", "deck.json:1:56: lists and objects lie inside one another too deeply"},
		{"too many faults", `{"setups": [` + strings.Repeat("1, ", 60) + "1]}", "from here on the deck was not read"},
		{"too many heights", strings.Replace(text, `"heights": [`, `"heights": [`+strings.Repeat(`{"mm": 25.4, "text": "1"}, `, 5000), 1), "a list of heights has more than 5000"},
		{"no object", "[]", "deck.json:1:1: a list stands where the deck belongs"},
		{"another format", `{"format": "fencecard deck 9"}`, `deck.json:1:12: this is "fencecard deck 9", not a "fencecard deck 2"`},
		{"no JSON", "{\n  \"format\" 1}", "deck.json:2:12: this is not JSON: '1' cannot stand here"},
		{"cut short", text[:len(text)/2], "the deck breaks off here"},
		{"more behind", text + "{}", "something stands behind the end of the deck"},
		{"no UTF-8", strings.Replace(text, "Boot", "B\xf6\xf6t", 1), "deck.json:3:14: this letter is not UTF-8"},
		{"a side that is none", strings.Replace(text, `"down": "right"`, `"down": "rihgt"`, 1), `"rihgt" is not a side`},
		{"a word that is none", strings.Replace(text, `"begin": "drop"`, `"begin": "plunge"`, 1), `"plunge" is neither feed-in nor drop`},
		{"a text for a length", regexp.MustCompile(`"length": \{[^}]*\}`).ReplaceAllString(text, `"length": "17"`), "a text stands where a length belongs"},
		{"a huge number", regexp.MustCompile(`"mm": [0-9.]+`).ReplaceAllString(text, `"mm": 1e300`), "1e300 is no sensible length in mm"},
		{"a huge length", regexp.MustCompile(`"mm": [0-9.]+`).ReplaceAllString(text, `"mm": 200000`), "longer than 100 m"},
		{"a text that differs", strings.Replace(text, `"text": "3/8"`, `"text": "5/8"`, 1), `the text says "5/8", but 9.525 mm is "3/8"`},
		{"a count in parts", strings.Replace(text, `"count": 1`, `"count": 1.5`, 1), "1.5 is not whole"},
		{"a key twice", strings.Replace(text, `"count": 1`, `"count": 1, "count": 2`, 1), `"count" is given twice in a run`},
		{"a key missing", strings.Replace(text, `"leads"`, `"laeds"`, 1), `a run has no "leads"`},
		{"passes that are not its runs", regexp.MustCompile(`"passes": \d+,\s+"runs"`).ReplaceAllString(text, `"passes": 5, "runs"`), "runs and 5 passes, and both are the passes of all pieces"},
		{"no list", `{"format": "fencecard deck 2", "setups": {"number": 1}}`, "an object stands where a list of setups belongs"},
		{"null", `{"format": "fencecard deck 2", "setups": [null]}`, "null stands where a setup belongs"},
	} {
		_, err := deckfile.Read("deck.json", []byte(test.deck), plan.Shop.Scale)
		var faults plantext.Faults
		require.ErrorAs(t, err, &faults, test.name)
		assert.Contains(t, faults.Error(), test.want, test.name)
		for _, f := range faults {
			assert.True(t, f.Place.Known(), test.name)
			assert.NotEmpty(t, f.Remedy, test.name)
		}
	}
}

// hostile are decks made to harm.
func hostile(n int) map[string]string {
	head := `{"format": "fencecard deck 2", "setups": `
	return map[string]string{
		"deep lists":       strings.Repeat("[", n),
		"deep inside":      head + strings.Repeat(`[`, n),
		"deep in unknown":  `{"x": ` + strings.Repeat(`{"y":`, n/5),
		"many setups":      head + "[" + strings.Repeat("{},", n/3),
		"many numbers":     head + "[" + strings.Repeat("1,", n/2),
		"many keys":        "{" + strings.Repeat(`"a":1,`, n/6),
		"a long text":      `{"title": "` + strings.Repeat("x", n),
		"a long number":    head + strings.Repeat("9", n) + "}",
		"one long line":    head + "[" + strings.Repeat(`{"number":1},`, n/13) + "]}",
		"zero bytes":       strings.Repeat("\x00", n),
		"UTF-16":           "\xff\xfe{\x00}\x00" + strings.Repeat("a\x00", n/2),
		"a byte order":     "\ufeff" + head,
		"commas and colon": head + strings.Repeat(",:", n/2),
	}
}

func TestHostileDecks(t *testing.T) {
	for name, deck := range hostile(1 << 20) {
		begun := time.Now()
		_, err := deckfile.Read("deck.json", []byte(deck), measure.InchScale)
		var faults plantext.Faults
		require.ErrorAs(t, err, &faults, name)
		assert.LessOrEqual(t, len(faults), 51, name)
		if took := time.Since(begun); took > 10*time.Second {
			t.Errorf("%s took %v", name, took)
		}
	}
}

func FuzzDeck(f *testing.F) {
	plan, data := smallDeck(f)
	f.Add(data)
	for _, deck := range hostile(256) {
		f.Add([]byte(deck))
	}
	f.Add([]byte(strings.Replace(string(data), `"setups": [`, `"setups": [null, `, 1)))
	f.Fuzz(func(t *testing.T, data []byte) {
		claims, err := deckfile.Read("deck.json", data, plan.Shop.Scale)
		var faults plantext.Faults
		if err != nil {
			if !errors.As(err, &faults) || claims != nil {
				t.Fatalf("an error that is no list of faults: %v", err)
			}
			_ = faults.Error()
			return
		}
		r := proof.Check(plan, claims)
		for _, d := range r.Faults {
			if d.Text == "" {
				t.Fatal("a difference without words")
			}
		}
		proof.Deck(plan, claims)
		for i := range claims.Setups {
			for j := range claims.Setups[i].Runs {
				number := claims.Setups[i].Runs[j].Number
				one := measure.Inch
				attable.AsSet(plan, claims, number, attable.Settings{Near: &one, Far: &one, BackStop: &one, Start: &one, Stop: &one, Height: &one})
				attable.Correct(plan, claims, number, attable.TestCut{Setback: one, Width: one, Length: one, Depth: one})
			}
		}
	})
}

// bothExamples are the plans that come with the project.
func bothExamples(t testing.TB) map[string]*joinery.Plan {
	t.Helper()
	bench, err := planfile.Read("boot-bench.yaml", examples.BootBench, nil)
	require.NoError(t, err)
	data, err := os.ReadFile("../../testdata/wall-cabinet.yaml")
	require.NoError(t, err)
	cabinet, err := planfile.Read("wall-cabinet.yaml", data, nil)
	require.NoError(t, err)
	return map[string]*joinery.Plan{"boot bench": bench, "wall cabinet": cabinet}
}

func deckOf(t testing.TB, plan *joinery.Plan) *deck.Deck {
	t.Helper()
	d, err := setup.Make(plan)
	require.NoError(t, err)
	return d
}

// What a test cut taught is read back with the deck; numbers that no setup book would
// keep are faults.
func TestWhatWasLearntIsRead(t *testing.T) {
	plan, _ := smallDeck(t)
	d := deckOf(t, plan)
	stood := d.Setups[0].Fence.NearEdge + measure.Inch/64
	kept := &deck.Kept{Name: "spring", Code: "hp3d-f96d", Notes: []string{"mine"}, Learnt: []string{"it stood"}, FenceStood: &stood}
	d.Setups[0].Kept = kept
	deckcode.Seal(d)
	write := func() []byte {
		var b bytes.Buffer
		require.NoError(t, deckfile.Write(&b, d))
		return b.Bytes()
	}
	data := write()
	require.True(t, proves(plan, data))
	claims, err := deckfile.Read("deck.json", data, plan.Shop.Scale)
	require.NoError(t, err)
	assert.Equal(t, kept, claims.Setups[0].Kept)

	at := bytes.Index(data, []byte(`"fence_stood"`))
	require.Positive(t, at)
	for _, which := range []string{"to_near_edge", "to_centre", "to_far_edge"} {
		rest := regexp.MustCompile(`("`+which+`": \{\s*"mm": )[-0-9.]+(,\s*"text": )"[^"]*"`).ReplaceAll(data[at:], []byte("${1}25.4${2}\"1\""))
		assert.False(t, proves(plan, append(bytes.Clone(data[:at]), rest...)), which)
	}
	stood = d.Setups[0].Fence.NearEdge + measure.Inch
	deckcode.Seal(d)
	_, err = deckfile.Read("deck.json", write(), plan.Shop.Scale)
	assert.ErrorContains(t, err, "after the test cut it stood 1 in off what was computed, which is another setup")
}
