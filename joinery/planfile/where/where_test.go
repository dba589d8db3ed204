package where_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/where"
	"fencecard/joinery/planfile/yamlfile"
)

const in = measure.Inch

// written are the keys of a cut, as they stand in a plan in inches.
func written(t *testing.T, line string) (*yamlfile.File, *yamlfile.Fields) {
	t.Helper()
	file := yamlfile.New("plan.yaml", measure.Inches, measure.InchScale)
	root := file.Tree([]byte("{"+line+"}\n"), "the cut", "write one")
	require.NotNil(t, root, line)
	return file, file.Fields(root, "the cut", []string{"setback", "span", "cheeks", "fence", "on", "at"})
}

func TestWhereACutLies(t *testing.T) {
	for line, want := range map[string]joinery.Setback{
		"setback: 1/2 from front":     {Distance: in / 2, From: joinery.Front},
		"setback: 0 from the top":     {From: joinery.Top},
		"setback: centred":            {Centred: true},
		"setback: centred from right": {Centred: true, From: joinery.Right},
	} {
		file, f := written(t, line)
		assert.Equal(t, want, where.Setback(f, joinery.Bottom), line)
		assert.Empty(t, file.Faults, line)
	}
	for line, says := range map[string]string{
		"setback: 1/2":           "write setback: 1/2 from left, right, front or back",
		"setback: from front":    "the setback has no distance",
		"setback: 1/2 front":     "write setback: 1/2 from front",
		"setback: in the middle": "write setback: centred",
	} {
		file, f := written(t, line)
		where.Setback(f, joinery.Bottom)
		require.Len(t, file.Faults, 1, line)
		assert.Contains(t, file.Faults[0].Words(), says, line)
	}
}

// A board 20 long. What is measured from both ends is turned to be from the first.
func TestWhereACutRuns(t *testing.T) {
	size := joinery.Size{20 * in, 6 * in, in}
	for line, want := range map[string]joinery.Span{
		"span: end to end":                  {},
		"span: 1/2 to 3 from left":          {From: in / 2, To: 3 * in, Side: joinery.Left},
		"span: from 1/2 to 3 from the left": {From: in / 2, To: 3 * in, Side: joinery.Left},
		"span: 2 from left to 3 from right": {From: 2 * in, To: 17 * in, Side: joinery.Left},
		"span: 2 from right to 3 from left": {From: 2 * in, To: 17 * in, Side: joinery.Right},
		"span: 1 to 30 mm from left":        {From: in, To: 30 * measure.Millimetre, Side: joinery.Left, Bare: true},
		"span: 1 mm to 30 mm from left":     {From: measure.Millimetre, To: 30 * measure.Millimetre, Side: joinery.Left},
	} {
		file, f := written(t, line)
		assert.Equal(t, want, where.Span(f, joinery.Top, size, true), line)
		assert.Empty(t, file.Faults, line)
	}
	for line, says := range map[string]string{
		"span: 1 to 3":                        "the span does not say from which side",
		"span: 3 from left":                   "the span has only one line",
		"span: 1 - 3 from left":               "write span: 1 to 3 from left",
		"span: 2 from left to 3 from front":   "a span cannot run from the left to the front",
		"span: 10 from left to 10 from right": "meet or pass each other",
		"span: 12 from left to 9 from right":  "meet or pass each other",
		"span: somewhere":                     "is no span",
	} {
		file, f := written(t, line)
		assert.Equal(t, joinery.Span{}, where.Span(f, joinery.Top, size, true), line)
		require.Len(t, file.Faults, 1, line)
		assert.Contains(t, file.Faults[0].Words(), says, line)
	}
}

func TestCheeksOfATenon(t *testing.T) {
	for line, want := range map[string][]joinery.Cheek{
		"cheeks: {back: 1/4, front: 1/8}": {{Side: joinery.Front, Depth: in / 8}, {Side: joinery.Back, Depth: in / 4}},
		"cheeks: 1/4":                     {{Side: joinery.Front, Depth: in / 4}, {Side: joinery.Back, Depth: in / 4}, {Side: joinery.Bottom, Depth: in / 4}, {Side: joinery.Top, Depth: in / 4}},
		"at: left":                        nil,
	} {
		file, f := written(t, line)
		assert.ElementsMatch(t, want, where.Cheeks(f, joinery.Left), line)
		assert.Empty(t, file.Faults, line)
	}
	for _, line := range []string{"cheeks: 0", "cheeks: {front: 0}", "cheeks: {}"} {
		file, f := written(t, line)
		where.Cheeks(f, joinery.Left)
		assert.Len(t, file.Faults, 1, line)
	}
}

func TestWhatGoesToTheFence(t *testing.T) {
	for line, want := range map[string]joinery.Fencing{
		"fence: Either": {Either: true}, "fence: Front": {Side: joinery.Front}, "at: left": {},
	} {
		file, f := written(t, line)
		assert.Equal(t, want, where.Fence(f), line)
		assert.Empty(t, file.Faults, line)
	}
	file, f := written(t, "on: top / front")
	down, fence := where.Arris(f)
	assert.Equal(t, [2]joinery.Side{joinery.Top, joinery.Front}, [2]joinery.Side{down, fence})
	assert.Empty(t, file.Faults)
	file, f = written(t, "at: [4 from left, centred]")
	assert.Equal(t, [2]joinery.Setback{{Distance: 4 * in, From: joinery.Left}, {Centred: true}}, where.Centre(f))
	assert.Empty(t, file.Faults)
}
