package planfile_test

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v4"
)

func read(t *testing.T, name string, data []byte) *joinery.Plan {
	t.Helper()
	plan, err := planfile.Read(name, data, nil)
	require.NoError(t, err)
	return plan
}

// board is a plan of one board, 20 x 6 x 2 in, with one cut.
func board(cut string) string {
	return "unit: in\npieces:\n  - piece: board\n    size: {left-right: 20, front-back: 6, top-bottom: 2}\n    cuts:\n      - {" + cut + "}\n"
}

func readCut(t *testing.T, cut string) joinery.Cut {
	t.Helper()
	plan := read(t, "plan.yaml", []byte(board(cut)))
	require.Len(t, plan.Pieces[0].Cuts, 1)
	return plan.Pieces[0].Cuts[0]
}

const in = measure.Inch

func TestPlanOfTheFormat(t *testing.T) {
	plan := read(t, "work/boot-bench.yaml", []byte(`title: Boot bench
unit: in
wood: white ash
pieces:
  - piece: front left leg
    count: 1
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    grain: top-bottom
    cuts:
      - mortise: seat rail
        in: right
        width: 3/8
        setback: 1/2 from front
        span: 1/2 to 3 from top
        depth: 1
      - dado: shelf
        in: right
        width: 3/4
        setback: 4 from bottom
        span: 0 to 1 1/4 from back
        depth: 1/4
  - piece: front right leg
    mirror: {of: front left leg, across: left-right}
`))
	assert.Equal(t, "Boot bench", plan.Title)
	assert.Equal(t, "boot-bench", plan.Name)
	assert.Equal(t, measure.Inches, plan.Unit)
	assert.Equal(t, shopfile.BuiltInName, plan.Shop.Name)
	require.Len(t, plan.Pieces, 2)
	leg, other := plan.Pieces[0], plan.Pieces[1]
	assert.Equal(t, "white ash", leg.Wood.Name)
	assert.Equal(t, joinery.TopBottom, leg.Grain)
	assert.Equal(t, joinery.Size{13 * in / 8, 13 * in / 8, 17 * in}, leg.Size)
	seat := leg.Cut("seat rail")
	assert.Equal(t, joinery.Channel{
		Down: joinery.Right, Near: joinery.Front, Setback: in / 2, Width: 3 * in / 8, Depth: in, Lo: 14 * in, Hi: 33 * in / 2,
	}, seat.Channels[0])
	assert.Equal(t, plantext.Place{File: "work/boot-bench.yaml", Line: 12, Column: 16, Source: "        width: 3/8"}, seat.Places.At(seat.Place, "width"))
	assert.Equal(t, 10, seat.Place.Line)
	assert.Equal(t, "front left leg", other.MirrorOf)
	assert.Equal(t, joinery.Left, other.Cut("seat rail").In)
	assert.Equal(t, joinery.Left, other.Cut("shelf").Channels[0].Down)
}

func TestSetbacks(t *testing.T) {
	for text, want := range map[string]joinery.Setback{
		"1/2 from front":     {Distance: in / 2, From: joinery.Front},
		"1/2 from the Front": {Distance: in / 2, From: joinery.Front},
		"0 from back":        {From: joinery.Back},
		`1/2" from front`:    {Distance: in / 2, From: joinery.Front},
		"12.7 mm from front": {Distance: in / 2, From: joinery.Front},
		"centred":            {Centred: true},
		"centered":           {Centred: true},
		"Centre":             {Centred: true},
		"centred from back":  {Centred: true, From: joinery.Back},
	} {
		cut := readCut(t, "groove: g, in: top, width: 1, depth: 1/2, setback: "+strings.ReplaceAll(text, `"`, " in"))
		assert.Equal(t, want, cut.Start, text)
	}
}

func TestSpans(t *testing.T) {
	for text, want := range map[string]joinery.Span{
		"1/2 to 3 from left":                {From: in / 2, To: 3 * in, Side: joinery.Left},
		"1/2 in to 76.2 mm from the left":   {From: in / 2, To: 3 * in, Side: joinery.Left},
		"0 to 76.2 mm from left":            {To: 3 * in, Side: joinery.Left},
		"1/2 to 3\u2033 from left":          {From: in / 2, To: 3 * in, Side: joinery.Left},
		"1/2 to 76.2 mm from left":          {From: in / 2, To: 3 * in, Side: joinery.Left, Bare: true},
		"0 to 1 1/4 from right":             {To: 5 * in / 4, Side: joinery.Right},
		"from 1/2 to 3 from left":           {From: in / 2, To: 3 * in, Side: joinery.Left},
		"1/2 from left to 3 from left":      {From: in / 2, To: 3 * in, Side: joinery.Left},
		"1/2 from left to 3 from right":     {From: in / 2, To: 17 * in, Side: joinery.Left},
		"3 from the right to 1/2 from left": {From: 3 * in, To: 39 * in / 2, Side: joinery.Right},
		"end to end":                        {},
	} {
		cut := readCut(t, "groove: g, in: top, width: 1, depth: 1/2, setback: 1 from front, span: "+text)
		assert.Equal(t, want, cut.Span, text)
	}
}

func TestKindsAndTheirOtherWords(t *testing.T) {
	const channel = ", in: top, width: 1, depth: 1/2, setback: 1 from front"
	for text, want := range map[string]*joinery.Kind{
		"mortise: a" + channel: &joinery.Mortise,
		"mortice: a" + channel: &joinery.Mortise,
		"groove: a" + channel:  &joinery.Groove,
		"plough: a" + channel:  &joinery.Groove,
		"dado: a" + channel:    &joinery.Dado,
		"housing: a" + channel: &joinery.Dado,
		"rabbet: a, in: top, along: back, width: 1, depth: 1":       &joinery.Rabbet,
		"rebate: a, in: top, along: back, width: 1, depth: 1":       &joinery.Rabbet,
		"lap: a, in: top, at: left, length: 3, depth: 1":            &joinery.Lap,
		"half-lap: a, in: top, at: left, length: 3, depth: 1":       &joinery.Lap,
		"halving: a, in: top, at: left, length: 3, depth: 1":        &joinery.Lap,
		"tenon: a, at: left, length: 1, cheeks: {top: 1/2}":         &joinery.Tenon,
		"in: top, width: 1, mortise: a, depth: 1, setback: centred": &joinery.Mortise,
	} {
		cut := readCut(t, text)
		assert.Equal(t, want.Common(), cut.Kind.Common(), text)
		assert.Equal(t, "a", cut.Name)
		assert.NotEmpty(t, cut.Channels)
	}
}

func TestTenonTakesCheeksInTheOrderOfSides(t *testing.T) {
	cut := readCut(t, "tenon: a, at: left, length: 7/8, cheeks: {top: 1/4, front: 3/16, back: 3/16}")
	assert.Equal(t, []joinery.Cheek{
		{Side: joinery.Front, Depth: 3 * in / 16}, {Side: joinery.Back, Depth: 3 * in / 16}, {Side: joinery.Top, Depth: in / 4},
	}, cut.Cheeks)
}

func TestWhatACutIsMadeWith(t *testing.T) {
	cut := readCut(t, "groove: a, in: top, width: 1/2, setback: 1 from front, depth: 1/2, bit: half straight, start: hole")
	assert.Equal(t, "half straight", cut.Bit)
	assert.True(t, cut.Bored)
	assert.Empty(t, cut.By)
	cut = readCut(t, "groove: a, in: top, width: 1/2, setback: 1 from front, depth: 1/2, by: plough plane")
	assert.Equal(t, "plough plane", cut.By)
	assert.Len(t, cut.Channels, 1, "its neighbours and its mate see it")
	assert.Empty(t, cut.Bit)
	assert.False(t, cut.Bored)
}

func TestPencilledSides(t *testing.T) {
	plan := read(t, "plan.yaml", []byte(`unit: in
pieces:
  - piece: post
    size: {left-right: 2, front-back: 2, top-bottom: 20}
    sides: {front: outside, left: window, top: top}
  - piece: other post
    mirror: {of: post, across: [left-right, front-back]}
`))
	names := func(p joinery.Piece) []string {
		var all []string
		for _, s := range joinery.Sides {
			all = append(all, p.Called.Name(s))
		}
		return all
	}
	assert.Equal(t, []string{"window", "right", "outside", "back", "bottom", "top"}, names(plan.Pieces[0]))
	assert.Equal(t, []string{"left", "window", "front", "outside", "bottom", "top"}, names(plan.Pieces[1]))
	assert.Equal(t, "", plan.Pieces[0].Called[joinery.Top], "its own name is no other")
}

func TestOneDepthForAllCheeks(t *testing.T) {
	cut := readCut(t, "tenon: a, at: left, length: 7/8, cheeks: 3/16")
	require.Len(t, cut.Cheeks, 4)
	for i, side := range []joinery.Side{joinery.Front, joinery.Back, joinery.Bottom, joinery.Top} {
		assert.Equal(t, joinery.Cheek{Side: side, Depth: 3 * in / 16}, cut.Cheeks[i])
	}
	_, err := planfile.Read("plan.yaml", []byte(board("tenon: a, at: left, length: 7/8, cheeks: 0")), nil)
	assert.ErrorContains(t, err, "nothing is taken off the cheeks")
}

func TestWishesOfACut(t *testing.T) {
	const groove = "groove: g, in: top, width: 1, depth: 1/2, setback: 1 from front, "
	assert.Equal(t, joinery.Fencing{}, readCut(t, groove).Fence)
	assert.Equal(t, joinery.Fencing{Side: joinery.Back}, readCut(t, groove+"fence: back").Fence)
	assert.Equal(t, joinery.Fencing{Either: true}, readCut(t, groove+"fence: either").Fence)
	assert.True(t, readCut(t, groove+"ends: square").Square)
	assert.False(t, readCut(t, groove+"ends: round").Square)
	assert.Equal(t, "first: test, then cut", readCut(t, groove+`note: "first: test,  then cut"`).Note)
}

func TestOrderAndMates(t *testing.T) {
	plan := read(t, "plan.yaml", []byte(`unit: in
pieces:
  - piece: board
    size: {left-right: 20, front-back: 6, top-bottom: 2}
    cuts:
      - {groove: a, in: top, width: 1, depth: 1, setback: centred, after: [b, "c 1"]}
      - {groove: b, in: bottom, width: 1/2, depth: 1/2, setback: centred, after: c 1, mates: tongue / left end}
      - {dado: c 1, in: bottom, width: 1/2, depth: 1/2, setback: 3 from left, mates: tongue}
  - piece: tongue
    size: {left-right: 20, front-back: 6, top-bottom: 1/2}
    cuts:
      - {tenon: left end, at: left, length: 1, cheeks: {top: 1/8}}
`))
	cuts := plan.Pieces[0].Cuts
	assert.Equal(t, []string{"b", "c 1"}, cuts[0].After)
	assert.Equal(t, []string{"c 1"}, cuts[1].After)
	assert.Equal(t, joinery.Mate{Piece: "tongue", Cut: "left end"}, cuts[1].Mates)
	assert.Equal(t, joinery.Mate{Piece: "tongue"}, cuts[2].Mates)
}

func TestWhatAPlanLeavesOut(t *testing.T) {
	plan := read(t, "shelf.yaml", []byte("unit: mm\npieces:\n  - piece: board\n    size: {left-right: 300, front-back: 640, top-bottom: 18}\n"))
	assert.Equal(t, "shelf", plan.Title)
	p := plan.Pieces[0]
	assert.Equal(t, 1, p.Count)
	assert.Equal(t, joinery.FrontBack, p.Grain, "along the longest dimension")
	assert.False(t, p.Wood.Known())
	assert.Equal(t, measure.MetricScale, plan.Shop.Scale)
	assert.Equal(t, timber.DefaultClimate, plan.Climate)
	for name, want := range map[string]string{"": "plan", "-": "plan", "a/b.c.yaml": "b.c", "ümlaut plan.yml": "ümlaut plan"} {
		assert.Equal(t, want, read(t, name, []byte(board("lap: a, in: top, at: left, length: 1, depth: 1"))).Name)
	}
}

func TestWoodOfAPiece(t *testing.T) {
	plan := read(t, "plan.yaml", []byte(`unit: in
wood: white ash
pieces:
  - {piece: a, size: {left-right: 9, front-back: 2, top-bottom: 1}}
  - {piece: b, wood: "oak, white", size: {left-right: 9, front-back: 2, top-bottom: 1}}
  - {piece: c, mirror: {of: b, across: left-right}}
  - {piece: d, mirror: {of: b, across: left-right}, wood: black walnut}
`))
	for i, want := range []string{"white ash", "white oak", "white oak", "black walnut"} {
		assert.Equal(t, want, plan.Pieces[i].Wood.Name)
	}
}

func TestMirrors(t *testing.T) {
	plan := read(t, "plan.yaml", []byte(`unit: in
pieces:
  - piece: back right
    mirror: {of: front left, across: [left-right, front-back]}
    count: 3
    cuts:
      - {groove: slot, in: top, width: 1/4, depth: 1/4, setback: 1/4 from left, after: rail}
  - piece: front left
    count: 2
    size: {left-right: 2, front-back: 2, top-bottom: 20}
    cuts:
      - {mortise: rail, in: right, width: 1/2, depth: 1, setback: 1/2 from front, span: 1 to 3 from top}
`))
	require.Len(t, plan.Pieces, 2)
	m := plan.Pieces[0]
	assert.Equal(t, "back right", m.Name, "pieces stay in the order of the plan")
	assert.Equal(t, "front left", m.MirrorOf)
	assert.Equal(t, 3, m.Count)
	require.Len(t, m.Cuts, 2)
	assert.Equal(t, joinery.Left, m.Cuts[0].In)
	assert.Equal(t, joinery.Back, m.Cuts[0].Channels[0].Near)
	assert.Equal(t, joinery.Top, m.Cuts[0].Span.Side)
	assert.Equal(t, joinery.Left, m.Cuts[1].Start.From, "the mirror's own cut is as written")
	assert.Len(t, plan.Pieces[1].Cuts, 1)
	assert.Equal(t, 2, plan.Pieces[1].Count)
}

// Windows editors begin a file with a mark and end its lines with CR LF.
func TestLineEndsAndByteOrderMark(t *testing.T) {
	text := board("lap: a, in: top, at: left, length: 1, depth: 3")
	for name, data := range map[string]string{
		"CR LF": strings.ReplaceAll(text, "\n", "\r\n"), "CR": strings.ReplaceAll(text, "\n", "\r"), "mark": "\ufeff" + text,
	} {
		_, err := planfile.Read("plan.yaml", []byte(data), nil)
		require.Error(t, err, name)
		assert.True(t, strings.HasPrefix(err.Error(), "plan.yaml:6:55: lap"), "%s: %s", name, err)
	}
}

func TestShopByPath(t *testing.T) {
	plan := "unit: in\nshop: shops/mine.yaml\npieces:\n  - {piece: a, size: {left-right: 9, front-back: 2, top-bottom: 1}}\n"
	asked := ""
	open := func(data string, err error) func(string) ([]byte, error) {
		return func(path string) ([]byte, error) { asked = path; return []byte(data), err }
	}
	got, err := planfile.Read("work/plan.yaml", []byte(plan), open("lift: 50 mm\n", nil))
	require.NoError(t, err)
	assert.Equal(t, "shops/mine.yaml", asked)
	assert.Equal(t, "shops/mine.yaml", got.Shop.Name)
	assert.Equal(t, 50*measure.Millimetre, got.Shop.Lift)

	_, err = planfile.Read("work/plan.yaml", []byte(plan), open("", fs.ErrPermission))
	assert.ErrorContains(t, err, "the shop file shops/mine.yaml cannot be read: permission denied")
	_, err = planfile.Read("work/plan.yaml", []byte(plan), open("", &shopfile.Missing{Near: "shop/mine.yaml"}))
	assert.ErrorContains(t, err, "there is no shop file shops/mine.yaml")
	assert.ErrorContains(t, err, "did you mean shop/mine.yaml?")
	_, err = planfile.Read("work/plan.yaml", []byte(plan), open("", &shopfile.Missing{}))
	assert.ErrorContains(t, err, "check the path")
	_, err = planfile.Read("work/plan.yaml", []byte(plan), nil)
	assert.ErrorContains(t, err, "write the keys of the shop in the plan")
	// The faults of both files, each with its own name; a wood may be one of
	// the shop's own, so it is not faulted as long as the shop is.
	_, err = planfile.Read("work/plan.yaml", []byte(strings.Replace(plan, "unit: in\n", "unit: in\nwood: bog oak\ncolor: red\n", 1)), open("lift: high\n", nil))
	var faults plantext.Faults
	require.ErrorAs(t, err, &faults)
	require.Len(t, faults, 2)
	assert.Equal(t, "work/plan.yaml:3:1", faults[0].Place.String())
	assert.Equal(t, "work/shops/mine.yaml:1:7", faults[1].Place.String())
}

func TestExamplesAreRead(t *testing.T) {
	cabinet, err := os.ReadFile("../../testdata/wall-cabinet.yaml")
	require.NoError(t, err)
	for name, data := range map[string][]byte{
		"boot-bench.yaml": examples.BootBench, "starter.yaml": examples.StarterPlan, "wall-cabinet.yaml": cabinet,
	} {
		assert.NotEmpty(t, read(t, name, data).Pieces, name)
	}
	shop, err := shopfile.Read("shop.yaml", examples.StarterShop, measure.Inches)
	require.NoError(t, err)
	assert.Len(t, shop.Bits, 4)
}

// Every kind of cut stands in a plan that a maker may look at: an example,
// or one of the gallery.
func TestEveryKindStandsInAPlan(t *testing.T) {
	plans := map[string][]byte{"boot-bench.yaml": examples.BootBench}
	files, err := filepath.Glob("../../testdata/plans/*.yaml")
	require.NoError(t, err)
	for _, file := range append(files, "../../testdata/wall-cabinet.yaml", "../../testdata/frame.yaml") {
		plans[filepath.Base(file)], err = os.ReadFile(file)
		require.NoError(t, err)
	}
	cuts := map[string]bool{}
	for name, text := range plans {
		for _, p := range read(t, name, text).Pieces {
			for _, c := range p.Cuts {
				cuts[c.Kind.Name] = true
			}
		}
	}
	for _, k := range joinery.Kinds {
		assert.True(t, cuts[k.Name], "no plan has a %s: add one to testdata/plans", k.Name)
	}
}

// A plan with ten thousand cuts is read, as a maker writes it and as a program
// does.
func TestLargePlan(t *testing.T) {
	written := planOf(10_000)
	var tree map[string]any
	require.NoError(t, yaml.Load(written, &tree))
	inBraces, err := json.Marshal(tree)
	require.NoError(t, err)
	for _, data := range [][]byte{written, inBraces} {
		plan, err := planfile.Read("plan.yaml", data, nil)
		require.NoError(t, err)
		require.Len(t, plan.Pieces, 1000)
		for i := range plan.Pieces {
			require.Len(t, plan.Pieces[i].Cuts, 10)
		}
	}
}
