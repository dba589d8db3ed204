package planfile_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/joint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A plan with a fault in every part of it reports them all at once, in order,
// and none that follows only from another.
func TestEveryFaultAtOnce(t *testing.T) {
	text := `title:
unit: in
wood: balck cherry
colour: red
pieces:
  - piece: front left leg
    count: some
    size: {left-right: 1 1/2, front-back: 1,5, top-bottom: 26}
    cuts:
      - mortise: rail
        in: rigth
        width: 3/8
        setback: 3/8
        span: 1/2 to 3 1/2 form top
        depth: 9
      - dado: shelf
        in: right
        width: 1/2
        setback: 6 from bottom
        depth: 1/4
        after: rial
  - piece: front right leg
    mirror: {of: front left leg, across: left-rihgt}
    cuts:
      - groov: panel
        in: back
  - piece: board
    size: {left-right: 20, front-back: 6, top-bottom: 2}
    cuts:
      - {groove: a, in: top, width: 7, depth: 3, setback: 1 from front, after: b}
      - {groove: b, in: top, width: 1, depth: 1, setback: 1 from front, after: a}
`
	var got []string
	for _, f := range faultsOf(t, "plan.yaml", []byte(text)) {
		got = append(got, fmt.Sprintf("%d:%d %s", f.Line, f.Column, f.Problem))
		assert.NotEmpty(t, f.Remedy, f.Problem)
		assert.Equal(t, strings.Split(text, "\n")[f.Line-1], f.Source)
	}
	assert.Equal(t, []string{
		`1:1 nothing stands after title`,
		`3:7 "balck cherry" is no wood in the table`,
		`4:1 the plan has no key "colour"`,
		`7:12 "some" is not a whole number`,
		`8:43 there is a comma where a point belongs`,
		`11:13 "rigth" is no side`,
		`13:18 the setback does not say from which side`,
		`14:15 "1/2 to 3 1/2 form top" is no span`,
		`21:16 this piece has no cut named "rial"`,
		`23:42 "left-rihgt" is no dimension`,
		`25:9 "groov" is no kind of cut`,
		`30:37 groove "a" in "board": a width of 7 in is more than the piece has`,
		`30:47 groove "a" in "board": 3 in deep from the top, but the piece measures 2 in top-bottom`,
		`31:80 the cuts wait for each other in a circle: a after b after a`,
	}, got)
}

// One fault, wherever it is put, is the only one reported.
func TestOneFaultIsOneFault(t *testing.T) {
	plan := `unit: in
wood: white ash
shop: {lift: 2, bits: [{bit: half, diameter: 1/2}]}
pieces:
  - piece: post
    count: 2
    size: {left-right: 2, front-back: 3, top-bottom: 20}
    grain: top-bottom
    cuts:
      - {mortise: rail, in: right, width: 1/2, setback: 1/2 from front, span: 1 to 3 from top, depth: 1, mates: rail / end}
      - {rabbet: panel, in: back, along: left, width: 1/2, depth: 1/2, after: rail}
  - piece: other post
    mirror: {of: post, across: left-right}
    cuts:
      - {dado: extra, in: top, width: 1/2, setback: centred from left, depth: 1/2, after: [rail, panel]}
  - piece: rail
    size: {left-right: 10, front-back: 1, top-bottom: 3}
    cuts:
      - {tenon: end, at: left, length: 1, cheeks: {front: 1/4, back: 1/4}, fence: left}
`
	assert.NotEmpty(t, read(t, "plan.yaml", []byte(plan)))
	words := strings.FieldsFunc(plan, func(r rune) bool { return strings.ContainsRune(" \n[]{},", r) })
	position := 0
	for _, word := range words {
		at := position + strings.Index(plan[position:], word)
		position = at + len(word)
		if strings.ContainsAny(word, "-:") || word == "to" || word == "from" {
			continue // the marks of YAML, and keys: the gallery has those
		}
		broken := plan[:at] + word + "qz" + plan[position:]
		// A new name may be legal, or be missed in several places.
		if named := strings.Count(plan, word) > 1 && !strings.ContainsAny(word, "0123456789"); named && !isSide(word) {
			continue
		}
		if slices.Contains([]string{"other", "extra", "half"}, word) {
			continue
		}
		faults := faultsOf(t, "plan.yaml", []byte(broken))
		assert.Len(t, faults, 1, "%s at %d:\n%v", word, at, faults)
	}
}

func isSide(word string) bool {
	_, ok := joinery.ParseSide(word)
	return ok
}

// A file with a fault in every line is cut short, and says so.
func TestTooManyFaultsAreCutShort(t *testing.T) {
	faults := faultsOf(t, "plan.yaml", []byte("unit: in\npieces:\n"+strings.Repeat("  - piece: \n", 5_000)))
	assert.Len(t, faults, 101)
	assert.Contains(t, faults[100].Problem, "more than 100 faults")
}

// A name with a colon in it wants quotes, behind whichever word for a kind it stands.
func TestANameWithAColon(t *testing.T) {
	for _, k := range joinery.Kinds {
		for _, word := range append([]string{k.Name}, k.Also...) {
			faults := faultsOf(t, "plan.yaml", []byte("unit: in\npieces:\n  - piece: a\n    cuts:\n      - "+word+": a: b\n        in: left\n"))
			require.Len(t, faults, 1)
			assert.Equal(t, "there is a second colon in this line", faults[0].Problem, word)
			assert.Equal(t, "write "+word+`: "a: b"`, faults[0].Remedy)
		}
	}
	for _, k := range joint.Kinds {
		faults := faultsOf(t, "plan.yaml", []byte("unit: in\njoints:\n  - "+k.Name+": a: b\n    into: c / left\n"))
		require.Len(t, faults, 1)
		assert.Equal(t, "write "+k.Name+`: "a: b"`, faults[0].Remedy)
	}
}
