package remark_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/joinery/plantext"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// slipCodes are the warnings that ask whether the maker meant it.
var slipCodes = []string{"unit-doubt", "grain-doubt", "same-mirror", "wide-mortise", "far-setback", "crossed-grain"}

// asked lists the questions among a deck's warnings.
func asked(d *deck.Deck) []string {
	var questions []string
	for _, w := range d.Warnings {
		for _, code := range slipCodes {
			if w.Code == code {
				questions = append(questions, w.Code+" "+w.Text)
			}
		}
	}
	return questions
}

// Each slip is a plan on either side of its edge: what is asked, or "".
func TestSlips(t *testing.T) {
	const head = "unit: UNIT\npieces:\n  - {piece: a, size: {left-right: X, front-back: Y, top-bottom: Z}, EXTRA cuts: [{CUT}]}\n"
	leg := []string{"in", "1 5/8", "1 5/8", "17"}
	board := []string{"in", "24", "3/4", "8"}
	mm := func(x, y, z string) []string { return []string{"mm", x, y, z} }
	inch := func(x, y, z string) []string { return []string{"in", x, y, z} }
	const groove = "groove: g, in: bottom, width: 1/4 in, setback: centred, depth: 1/4 in"
	const mortise = "mortise: m, in: right, setback: 3/8 from front, depth: 1/2"
	for _, test := range []struct {
		name  string
		size  []string // unit, left-right, front-back, top-bottom
		extra string   // keys of the piece
		cut   string
		want  string // the question holds these words; "": nothing is asked
	}{
		{"twelve feet", inch("144", "3/4", "8"), "", groove, ""},
		{"over twelve feet", inch("144 1/64", "3/4", "8"), "", groove, "unit-doubt a: a piece of 144 1/64 in by 3/4 in by 8 in: are these millimetres? Write unit: mm"},
		{"six inches thick", inch("24", "6", "8"), "", groove, ""},
		{"thicker", inch("90", "20", "64"), "", groove, "unit-doubt a: a piece of 90 in by 20 in by 64 in: are these millimetres?"},
		{"fifty millimetres long", mm("50", "20", "40"), "", groove, ""},
		{"shorter", mm("49.9", "20", "40"), "", groove, "unit-doubt a: a piece of 49.9 mm by 20 mm by 40 mm: are these inches? Write unit: in"},
		{"two millimetres thick", mm("500", "2", "100"), "", "dado: d, in: front, width: 6, setback: 250 from left, depth: 1", ""},
		{"thinner", mm("48", "3/4", "9"), "", "dado: d, in: front, width: 6, setback: 20 from left, depth: 1/2", "unit-doubt a: a piece of 48 mm by 0.75 mm by 9 mm"},
		{"one millimetre deep", mm("640", "20", "90"), "", "groove: g, in: back, width: 6, setback: 10 from bottom, depth: 1", ""},
		{"less deep", mm("640", "20", "90"), "", "groove: g, in: back, width: 6, setback: 10 from bottom, depth: 3/8",
			`unit-doubt a: the groove "g" in the back has a depth of only 0.375 mm: is it in inches? Write in behind it`},
		{"one millimetre in", mm("640", "20", "90"), "", "groove: g, in: back, width: 6, setback: 1 from bottom, depth: 6", ""},
		{"less far in", mm("640", "20", "90"), "", "groove: g, in: back, width: 6, setback: 1/2 from bottom, depth: 6",
			`unit-doubt a: the groove "g" in the back has a setback of only 0.5 mm`},
		{"a unit behind the second line only", leg, "", mortise + ", width: 3/8, span: 1 to 76.2 mm from top",
			`unit-doubt a: the span of the mortise "m" in the right begins at 1 in, since a number without a unit is in inches: is that meant? Write a unit behind both lines`},
		{"a unit behind both", leg, "", mortise + ", width: 3/8, span: 1 in to 76.2 mm from top", ""},
		{"nothing needs no unit", leg, "", mortise + ", width: 3/8, span: 0 to 76.2 mm from top", ""},
		{"at the edge", mm("640", "20", "90"), "", "groove: g, in: back, width: 6, setback: 0 from bottom, depth: 6", ""},

		{"grain along the middle way", board, "grain: top-bottom,", "dado: d, in: front, width: 1/4, setback: 4 from left, depth: 1/4", "crossed-grain"},
		{"grain along the shortest", leg, "grain: front-back,", "dado: d, in: right, width: 1/4, setback: 4 from top, depth: 1/4",
			"grain-doubt a: the grain runs front-back, the shortest way through the piece: is it grain: top-bottom?"},
		{"a cube", inch("6", "6", "6"), "grain: front-back,", "dado: d, in: right, width: 1/4, setback: 1 from top, depth: 1/4", "crossed-grain"},
		{"a cube, left to itself", inch("6", "6", "6"), "", "dado: d, in: front, width: 1/4, setback: 1 from left, depth: 1/4", ""},
		{"plywood", board, "wood: plywood, grain: front-back,", "groove: g, in: bottom, width: 1/4, setback: centred from front, depth: 1/4", ""},

		{"a mortise of half the stock", inch("1 1/2", "3/4", "20"), "", "mortise: m, in: right, setback: 1/8 from front, depth: 1/2, width: 3/8, span: 1 to 3 from top", ""},
		{"a wider one", inch("1 1/2", "3/4", "20"), "", "mortise: m, in: right, setback: 1/8 from front, depth: 1/2, width: 25/64, span: 1 to 3 from top",
			`wide-mortise a: the mortise "m" in the right is 25/64 in wide in 3/4 in of stock: is that the width? A third, 1/4 in, is usual`},
		{"let in for a hinge", inch("1 1/2", "3/4", "20"), "", "mortise: m, in: right, setback: 1/8 from front, depth: 3/16, width: 25/64, span: 1 to 3 from top", ""},
		{"a square mortise", leg, "", mortise + ", width: 3/8, span: 1 to 1 3/8 from top", ""},
		{"width and span exchanged", inch("1 3/4", "1 3/4", "17"), "", "mortise: m, in: right, width: 2 1/2, setback: 1/2 from top, span: 1/2 to 1 from front, depth: 1, start: hole",
			`wide-mortise a: the mortise "m" in the right is 2 1/2 in wide and only 1/2 in long: are width and span exchanged? The width is measured from the top`},

		{"not quite twice as far from its side", leg, "", "mortise: m, in: right, width: 3/8, setback: 53/64 from front, span: 1 to 3 from top, depth: 1", ""},
		{"more than twice as far", leg, "", "mortise: m, in: right, width: 3/8, setback: 27/32 from front, span: 1 to 3 from top, depth: 1",
			`far-setback a: the mortise "m" in the right stands 27/32 in from the front and so only 13/32 in from the back: is that the side it is measured from? If it is, write it from the nearer one, setback: 13/32 in from back`},
		{"both from the face side", leg, "", "mortise: m, in: right, width: 1/4, setback: 1/4 from front, span: 1 to 3 from top, depth: 1}, {mortise: n, in: right, width: 1/4, setback: 1 from front, span: 1 to 3 from top, depth: 1", ""},
		{"the fence was chosen", leg, "", "mortise: m, in: right, width: 3/8, setback: 1 from front, span: 1 to 3 from top, depth: 1, fence: back", ""},
		{"a dado in the upper half", inch("10", "3/4", "12"), "", "dado: d, in: back, width: 3/4, setback: 8 from bottom, depth: 1/4", ""},

		{"a groove with the grain", board, "", "groove: g, in: back, width: 1/4, setback: 1 from bottom, depth: 1/4", ""},
		{"a groove across it", board, "", "groove: g, in: back, width: 1/4, setback: 1 from left, depth: 1/4",
			`crossed-grain a: the groove "g" in the back runs across the grain, which is left-right: are its sides and the grain of the piece what you mean? Across the grain it is called a dado`},
		{"a groove in end grain", board, "", "groove: g, in: left, width: 1/4, setback: 1/4 from front, depth: 1/4", ""},
		{"a dado across the grain", board, "", "dado: d, in: back, width: 1/4, setback: 1 from left, depth: 1/4", ""},
		{"a dado along it", board, "", "dado: d, in: back, width: 1/4, setback: 1 from bottom, depth: 1/4",
			`crossed-grain a: the dado "d" in the back runs with the grain, which is left-right: are its sides and the grain of the piece what you mean? With the grain it is called a groove`},
	} {
		t.Run(test.name, func(t *testing.T) {
			text := strings.NewReplacer("UNIT", test.size[0], "X", test.size[1], "Y", test.size[2], "Z", test.size[3],
				"EXTRA", test.extra, "CUT", test.cut).Replace(head)
			plan, err := planfile.Read("plan.yaml", []byte(text), nil)
			require.NoError(t, err)
			questions := asked(workpiece.DeckOf(t, plan))
			if test.want == "" {
				assert.Empty(t, questions)
				return
			}
			require.Len(t, questions, 1, strings.Join(questions, "\n"))
			assert.Contains(t, questions[0], test.want)
		})
	}
}

func TestSameMirror(t *testing.T) {
	const head = "unit: in\npieces:\n  - {piece: a, size: {left-right: 16, front-back: 3/4, top-bottom: 8}, cuts: [{CUT}]}\n  - {piece: b, mirror: {of: a, across: left-right}EXTRA}\n"
	for name, test := range map[string]struct {
		cut, extra string
		same       bool
	}{
		"a groove from end to end":         {"groove: g, in: back, width: 1/4, setback: 1 from bottom, depth: 1/4", "", true},
		"a centred dado":                   {"dado: g, in: back, width: 1/4, setback: centred, depth: 1/4", "", true},
		"joined to another":                {"groove: g, in: back, width: 1/4, setback: centred, depth: 1/4, mates: shelf", "}\n  - {piece: shelf, size: {left-right: 16, front-back: 5, top-bottom: 1/4}", false},
		"both ends alike":                  {"lap: r, in: back, at: right, length: 2, depth: 3/8}, {lap: l, in: back, at: left, length: 2, depth: 3/8", "", true},
		"a groove stopped at the left":     {"groove: g, in: back, width: 1/4, setback: 1 from bottom, depth: 1/4, span: 1 to 16 from left", "", false},
		"a dado off the middle":            {"dado: g, in: back, width: 1/4, setback: 7 1/2 from left, depth: 1/4", "", false},
		"a cut of the mirror's own":        {"groove: g, in: back, width: 1/4, setback: 1 from bottom, depth: 1/4", ", cuts: [{dado: d, in: back, width: 1/4, setback: 3 from left, depth: 1/4}]", false},
		"the same in another wood":         {"groove: g, in: back, width: 1/4, setback: 1 from bottom, depth: 1/4", ", wood: white ash", false},
		"a lap at one end, a longer other": {"lap: r, in: back, at: right, length: 2, depth: 3/8}, {lap: l, in: back, at: left, length: 2 1/64, depth: 3/8", "", false},
	} {
		plan, err := planfile.Read("plan.yaml", []byte(strings.NewReplacer("CUT", test.cut, "EXTRA", test.extra).Replace(head)), nil)
		require.NoError(t, err, name)
		questions := asked(workpiece.DeckOf(t, plan))
		if !test.same {
			assert.Empty(t, questions, name)
			continue
		}
		require.Len(t, questions, 1, name)
		assert.Contains(t, questions[0], `same-mirror b: the mirror image of "a" is the same piece again`, name)
	}
}

// A pair without cuts is not one and its copy: the cuts may be still to come.
func TestNoSameMirrorWithoutCuts(t *testing.T) {
	plan, err := planfile.Read("plan.yaml", []byte(`unit: in
pieces:
  - {piece: a, size: {left-right: 16, front-back: 3/4, top-bottom: 8}}
  - {piece: b, mirror: {of: a, across: left-right}}
  - {piece: c, size: {left-right: 16, front-back: 3/4, top-bottom: 8}, cuts: [{groove: g, in: back, width: 1/4, setback: centred, depth: 1/4}]}
`), nil)
	require.NoError(t, err)
	assert.Empty(t, asked(workpiece.DeckOf(t, plan)))
}

// Sound plans are asked nothing: the examples and every plan kept for tests.
func TestNoQuestionsAboutSoundPlans(t *testing.T) {
	plans := map[string][]byte{"boot-bench.yaml": examples.BootBench, "starter-plan.yaml": examples.StarterPlan}
	kept, err := filepath.Glob("../../testdata/plans/*.yaml")
	require.NoError(t, err)
	for _, file := range append(kept, "../../testdata/wall-cabinet.yaml") {
		plans[file], err = os.ReadFile(file)
		require.NoError(t, err)
	}
	for name, data := range plans {
		plan, err := planfile.Read(name, data, func(path string) ([]byte, error) {
			return os.ReadFile(filepath.Join(filepath.Dir(name), path))
		})
		require.NoError(t, err, name)
		d, err := setup.Make(plan)
		if err != nil { // plans kept for their faults
			var faults plantext.Faults
			require.ErrorAs(t, err, &faults)
			continue
		}
		assert.Empty(t, asked(d), name)
	}
}
