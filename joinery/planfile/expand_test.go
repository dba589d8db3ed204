package planfile_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fencecard/joinery/planfile"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func expanded(t *testing.T, text string) string {
	t.Helper()
	out, err := planfile.Expand("plan.yaml", []byte(text), nil)
	require.NoError(t, err)
	return string(out)
}

// Spelt out, a plan has the same pieces with the same cuts, and nothing is left
// to spell out.
func TestExpandedPlanIsTheSame(t *testing.T) {
	for name, text := range map[string]string{
		"every kind":  every,
		"windows":     strings.ReplaceAll(every, "\n", "\r\n"),
		"no line end": strings.TrimSpace(every),
		"in braces": "unit: in\npieces:\n  - {piece: post, " + post + ", cuts: [{groove: a, in: left, width: 1/4, setback: centred, depth: 1/4}]}\n  - {piece: rail, " + stick + "} # a stick\n" +
			"joints:\n  - {mortise and tenon: b, tenon: rail / left, into: post / right, place: centred, thickness: 3/8, length: 1}\n",
		"repeats": rail("      - mortise: slat\n        in: top\n        width: 3/8\n        setback: centred\n        span: 1 1/2\n        depth: 1/2\n        repeat: {times: 7, between: 3 and 31 from left}\n" +
			"      - {groove: last, in: bottom, width: 1/4, setback: 1/4 from front, depth: 1/4, after: slat}\n"),
		"repeats in braces": "unit: in\npieces:\n  - {piece: rail, size: {left-right: 36, front-back: 1, top-bottom: 3}, cuts: [{mortise: slat, in: top, width: 3/8, setback: centred, span: 2, depth: 1/2, note: \"a, b\", repeat: {times: 3, first: 1 from left, every: 4}}]}\n",
		"joints first":      "unit: in\njoints:\n  - {mortise and tenon: b, tenon: rail / left, into: post / right, place: centred, thickness: 3/8, length: 1}\npieces:\n  - {piece: post, " + post + "}\n  - piece: rail\n    " + stick + "\n",
		"odd names":         strings.NewReplacer("front left leg", `"leg: front, left"`, "seat rail", `"rail #1"`).Replace("unit: in\npieces:\n  - piece: front left leg\n    " + post + "\n  - piece: stick\n    " + stick + "\njoints:\n  - mortise and tenon: seat rail\n    tenon: stick / left\n    into: [front left leg / right]\n    place: centred\n    thickness: 3/8\n    length: 1\n"),
	} {
		t.Run(name, func(t *testing.T) {
			if name == "odd names" {
				text = strings.Replace(text, `["leg: front, left" / right]`, `["leg: front, left / right"]`, 1)
			}
			first := read(t, "plan.yaml", []byte(text))
			out := expanded(t, text)
			assert.NotRegexp(t, `(?m)^ *(?:- )?(joints|repeat):|between shoulders`, out)
			again := read(t, "plan.yaml", []byte(out))
			for i := range first.Pieces {
				p, q := &first.Pieces[i], &again.Pieces[i]
				assert.Equal(t, p.Size, q.Size)
				assert.Equal(t, cutNames(p), cutNames(q))
				assert.Equal(t, channelsOf(p), channelsOf(q))
				for k := range p.Cuts {
					assert.Equal(t, p.Cuts[k].Mates, q.Cuts[k].Mates)
					assert.Equal(t, p.Cuts[k].Note, q.Cuts[k].Note)
					assert.ElementsMatch(t, p.Cuts[k].After, q.Cuts[k].After)
				}
			}
			assert.Equal(t, out, expanded(t, out), "once is enough")
		})
	}
}

// What a maker wrote beside the joints stays where it was, letter for letter.
func TestExpandKeepsRemarks(t *testing.T) {
	out := expanded(t, `# A frame.
title: Frame   # small
unit: in

pieces:
  # The post.
  - piece: post
    size: {left-right: 2, front-back: 2, top-bottom: 20}   # square

  # The rail.
  - piece: rail
    size: {left-right: 10 between shoulders, front-back: 1, top-bottom: 3}  # long
    cuts:
      # For buttons.
      - groove: buttons       # six of them
        in: back
        width: 1/4
        setback: 1/2 from top # gauged
        span: 1 1/2
        repeat: {times: 2, first: 1 from left, every: 4}   # two
        depth: 1/4
      # Done.
  - piece: other post
    mirror: {of: post, across: left-right}

# How it goes together.
joints:
  - mortise and tenon: rail   # by the book
    tenon: rail / left
    # flush above
    into: post / right
    place: {top: flush, centred: front-back}
    thickness: 3/8
    length: 1
`)
	assert.Equal(t, `# A frame.
title: Frame   # small
unit: in

pieces:
  # The post.
  - piece: post
    size: {left-right: 2, front-back: 2, top-bottom: 20}   # square
    cuts:
      # mortise and tenon: rail
      - mortise: rail
        in: right
        width: 3/8
        setback: 13/16 from front
        span: 0 to 3 from top
        depth: 1
        fence: either
        mates: rail / rail left

  # The rail.
  - piece: rail
    size: {left-right: 12, front-back: 1, top-bottom: 3}  # long
    cuts:
      # For buttons.
        # six of them
        # gauged
        # two
      - groove: buttons 1
        in: back
        width: 1/4
        setback: 1/2 from top
        span: 1 to 2 1/2 from left
        depth: 1/4
      - groove: buttons 2
        in: back
        width: 1/4
        setback: 1/2 from top
        span: 5 to 6 1/2 from left
        depth: 1/4
      # mortise and tenon: rail
      - tenon: rail left
        at: left
        length: 1
        cheeks: {front: 5/16, back: 5/16}
      # mortise and tenon: rail
      - tenon: rail right
        at: right
        length: 1
        cheeks: {front: 5/16, back: 5/16}
      # Done.
  - piece: other post
    mirror: {of: post, across: left-right}

# How it goes together.
    # by the book
    # flush above
`, out)
}

func TestExpandOfAFaultyPlan(t *testing.T) {
	_, err := planfile.Expand("plan.yaml", []byte("unit: in\npieces: []\n"), nil)
	require.ErrorContains(t, err, "the list of pieces is empty")
	_, err = planfile.Expand("plan.yaml", []byte("{unit: in, pieces: [{piece: post, "+post+"}, {piece: rail, "+stick+"}], joints: [{bridle: b, tenon: rail / left, into: post / right, place: {top: flush, front: 1/2 back}}]}"), nil)
	require.ErrorContains(t, err, "cannot be spelt out")
}

// Plans without joints come out as they went in.
func TestExpandChangesNothingElse(t *testing.T) {
	files, err := filepath.Glob("../../testdata/plans/*.yaml")
	require.NoError(t, err)
	for _, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		if !strings.Contains(string(data), "\njoints:") {
			assert.Equal(t, string(data), expanded(t, string(data)), file)
		}
	}
}

// FuzzExpand holds, for any bytes that read: spelt out they are the same plan, or
// it says that they cannot be.
func FuzzExpand(f *testing.F) {
	seed(f)
	f.Add([]byte(every))
	f.Fuzz(func(t *testing.T, data []byte) {
		out, err := planfile.Expand("plan.yaml", data, nil)
		if err != nil {
			checkFaults(t, data, err)
			return
		}
		_, err = planfile.Read("plan.yaml", out, nil)
		assert.NoError(t, err)
	})
}
