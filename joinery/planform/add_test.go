package planform_test

import (
	"strings"
	"testing"

	"fencecard/joinery/planform"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// put puts a form into a text that takes it.
func put(t testing.TB, text string, f planform.Form) (string, string) {
	written, at, err := planform.Put([]byte(text), f)
	require.NoError(t, err, text)
	return string(written), at
}

func TestAddingToNothing(t *testing.T) {
	for _, test := range []struct {
		name, text string
		form       planform.Form
		at, after  string
	}{
		{"a plan", "", set(t, planform.Blank(planform.Plan, "", nil), "unit=mm", "title=Bench"), "/", "title: Bench\nunit: mm\n"},
		{"a plan below a remark", "# mine\n", set(t, planform.Blank(planform.Plan, "", nil), "unit=mm"), "/", "# mine\n\nunit: mm\n"},
		{"a plan below a remark without an end", "# mine", set(t, planform.Blank(planform.Plan, "", nil), "unit=mm"), "/", "# mine\n\nunit: mm"},
		{"a piece", "\ufeff", set(t, planform.Blank(planform.Piece, "", nil), "piece=leg"), "pieces/0", "\ufeffpieces:\n\n  - piece: leg\n"},
		{"a bit", "unit: in\n", set(t, planform.Blank(planform.Bit, "shop", nil), "bit=half"), "shop/bits/0", "unit: in\nshop:\n  bits:\n    - bit: half\n"},
		{"a shop file", "", set(t, shopFile(), "lift=2", "fence.reach=9"), "/", "fence: {reach: 9}\nlift: 2\n"},
		{"a bit in a shop file", "lift: 2\n", set(t, planform.Blank(planform.Bit, "/", nil), "bit=half"), "bits/0", "lift: 2\nbits:\n  - bit: half\n"},
		{"a wood in a shop file", "lift: 2\nbits:\n- bit: half\n", set(t, planform.Blank(planform.Wood, "/", nil), "wood=bog oak", "shrinkage.radial=6"), "woods/0",
			"lift: 2\nwoods:\n- wood: bog oak\n  shrinkage: {radial: 6}\nbits:\n- bit: half\n"},
	} {
		after, at := put(t, test.text, test.form)
		assert.Equal(t, test.after, after, test.name)
		assert.Equal(t, test.at, at, test.name)
	}
}

// shopFile is the form of a shop in a file of its own.
func shopFile() planform.Form {
	f := planform.Blank(planform.Shop, "", nil)
	f.At = planform.Top
	return f
}

// New things stand as the others of their plan do.
func TestAddingAsTheOthersStand(t *testing.T) {
	piece := set(t, planform.Blank(planform.Piece, "", nil), "piece=shelf", "size.left-right=30")
	joint := set(t, planform.BlankJoint("housing", nil), "name=shelf", "board=shelf / left, right", "into=side / right, other / left", "place.top=4 down")
	cut := set(t, planform.BlankCut("dado", "pieces/0", nil), "name=shelf", "in=right", "note=- first")
	for _, test := range []struct {
		name, text string
		form       planform.Form
		after      string
	}{
		{"with blank lines", "pieces:\n\n  - piece: a\n\n  - piece: b\n    # count: 2\n\n# The end.\n", piece,
			"pieces:\n\n  - piece: a\n\n  - piece: b\n    # count: 2\n\n  - piece: shelf\n    size: {left-right: 30}\n\n# The end.\n"},
		{"without", "pieces:\n  - piece: a\n  - piece: b\n", piece, "pieces:\n  - piece: a\n  - piece: b\n  - piece: shelf\n    size: {left-right: 30}\n"},
		{"without steps", "pieces:\n- piece: a\nwood: oak\n", piece, "pieces:\n- piece: a\n- piece: shelf\n  size: {left-right: 30}\nwood: oak\n"},
		{"with long steps", "pieces:\n    -   piece: a\n", piece, "pieces:\n    -   piece: a\n    -   piece: shelf\n        size: {left-right: 30}\n"},
		{"behind braces", "pieces:\n- {piece: a}\n- {piece: b}   # last", piece, "pieces:\n- {piece: a}\n- {piece: b}   # last\n- {piece: shelf, size: {left-right: 30}}"},
		{"in brackets of several lines", "pieces: [\n  {piece: a},   # first\n  {piece: b}\n]\n", piece, "pieces: [\n  {piece: a},   # first\n  {piece: b}, {piece: shelf, size: {left-right: 30}}\n]\n"},
		{"in no brackets", "pieces: []   # none\nwood: oak\n", piece, "pieces:   # none\n\n  - piece: shelf\n    size: {left-right: 30}\nwood: oak\n"},
		{"where nothing stands", "pieces:\n", piece, "pieces:\n\n  - piece: shelf\n    size: {left-right: 30}\n"},
		{"a joint below pieces", "pieces:\n\n  - piece: a\n", joint,
			"pieces:\n\n  - piece: a\n\njoints:\n\n  - housing: shelf\n    board: shelf / left, right\n    into: side / right, other / left\n    place: {top: 4 down}\n"},
		{"a joint in a plan without blank lines", "pieces:\n- piece: a\n- piece: b\n", joint,
			"pieces:\n- piece: a\n- piece: b\njoints:\n- housing: shelf\n  board: shelf / left, right\n  into: side / right, other / left\n  place: {top: 4 down}\n"},
		{"a joint in braces", "joints: [{lap: a}]\n", joint, `joints: [{lap: a}, {housing: shelf, board: "shelf / left, right", into: "side / right, other / left", place: {top: 4 down}}]` + "\n"},
		{"a cut", "pieces:\n  - piece: a\n    cuts:\n      - lap: b\n        in: left\n  - piece: c\n", cut,
			"pieces:\n  - piece: a\n    cuts:\n      - lap: b\n        in: left\n      - dado: shelf\n        in: right\n        note: \"- first\"\n  - piece: c\n"},
		{"the first cut", "pieces:\n- piece: a\n  # no cuts\n- piece: c\n", cut,
			"pieces:\n- piece: a\n  cuts:\n  - dado: shelf\n    in: right\n    note: \"- first\"\n  # no cuts\n- piece: c\n"},
		{"no end of the last line", "pieces:\r\n- piece: a", cut, "pieces:\r\n- piece: a\r\n  cuts:\r\n  - dado: shelf\r\n    in: right\r\n    note: \"- first\""},
	} {
		after, _ := put(t, test.text, test.form)
		assert.Equal(t, test.after, after, test.name)
	}
}

func TestRemoving(t *testing.T) {
	for _, test := range []struct{ name, text, at, after string }{
		{"a piece with blank lines", "pieces:\n\n  # legs\n\n  - piece: a\n\n  # the middle one\n  - piece: b\n    cuts:\n      - lap: x\n    # in: left\n\n  - piece: c\n", "pieces/1",
			"pieces:\n\n  # legs\n\n  - piece: a\n\n  - piece: c\n"},
		{"the first, below a remark of all", "pieces:\n\n  # legs\n\n  - piece: a\n\n  - piece: b\n", "pieces/0", "pieces:\n\n  # legs\n\n  - piece: b\n"},
		{"the last of some", "pieces:\n\n  - piece: a\n\n  - piece: b   # end", "pieces/1", "pieces:\n\n  - piece: a\n"},
		{"one of a plan without blank lines", "pieces:\n- piece: a\n- piece: b\n\njoints:\n- lap: c\n", "pieces/1", "pieces:\n- piece: a\n\njoints:\n- lap: c\n"},
		{"the only cut", "pieces:\n- piece: a\n  cuts:   # one\n  - lap: x\n    # deep\n  wood: oak\n", "pieces/0/cuts/0", "pieces:\n- piece: a\n  wood: oak\n"},
		{"the only joint", "pieces:\n\n  - piece: a\n\njoints:\n\n  - lap: x\n    into: y\n", "joints/0", "pieces:\n\n  - piece: a\n"},
		{"in brackets", "pieces: [{piece: a}, {piece: b}, {piece: c}]\n", "pieces/1", "pieces: [{piece: a}, {piece: c}]\n"},
		{"the last in brackets", "pieces: [{piece: a}, {piece: b}]\n", "pieces/1", "pieces: [{piece: a}]\n"},
		{"the only one in brackets", "{unit: in, pieces: [{piece: a}]}\n", "pieces/0", "{unit: in}\n"},
		{"a shop", "unit: in\nshop:\n  lift: 2\n  bits:\n  - bit: half\npieces:\n- piece: a\n", "shop", "unit: in\npieces:\n- piece: a\n"},
		{"a bit", "lift: 2\nbits:\n- bit: half\n- bit: quarter\n", "bits/0", "lift: 2\nbits:\n- bit: quarter\n"},
	} {
		for _, end := range []string{"\n", "\r\n"} {
			after, err := planform.Remove([]byte(strings.ReplaceAll(test.text, "\n", end)), test.at)
			require.NoError(t, err, test.name)
			assert.Equal(t, strings.ReplaceAll(test.after, "\n", end), string(after), test.name)
		}
	}
	for _, at := range []string{"/", "", "pieces/1", "pieces", "joints/0"} {
		_, err := planform.Remove([]byte("pieces:\n- piece: a\n"), at)
		assert.Error(t, err, at)
	}
}

// What is added to a plan of the project and removed again leaves every byte.
func TestAddingAndRemoving(t *testing.T) {
	for file, text := range plans(t) {
		if strings.Contains(file, "broken") {
			continue
		}
		forms, err := planform.Read(file, text)
		require.NoError(t, err)
		for _, f := range forms {
			var fresh planform.Form
			switch f.Kind {
			case planform.Piece:
				fresh = set(t, planform.BlankCut("mortise", f.At, text), "name=new: one", "in=left")
			case planform.Plan:
				fresh = set(t, planform.BlankJoint("bridle", text), "name=new", "tenon=a / left")
			case planform.Shop:
				fresh = set(t, planform.Blank(planform.Bit, f.At, text), "bit=new one", "diameter=1/4")
			default:
				continue
			}
			with, at, err := planform.Put(text, fresh)
			require.NoError(t, err, "%s %s", file, f.At)
			without, err := planform.Remove(with, at)
			require.NoError(t, err, "%s %s\n%s", file, at, with)
			require.Equal(t, string(text), string(without), "%s %s\n%s", file, at, with)
		}
	}
}
