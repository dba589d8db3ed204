package setup_test

import (
	"fencecard/joinery"
	"fencecard/joinery/planfile"
	"fencecard/setup"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// in reads a length in inches, mm one in millimetres.
func in(t testing.TB, text string) joinery.Length { return length(t, text, joinery.Inches) }

func mm(t testing.TB, text string) joinery.Length { return length(t, text, joinery.Millimetres) }

// length reads a length that may be negative, as fence distances are.
func length(t testing.TB, text string, unit joinery.Unit) joinery.Length {
	t.Helper()
	sign := joinery.Length(1)
	if text[0] == '-' {
		sign, text = -1, text[1:]
	}
	l, err := joinery.ParseLength(text, unit)
	require.NoError(t, err)
	return sign * l
}

// planOf lays one piece on a bench with the bits given.
func planOf(t testing.TB, unit joinery.Unit, size joinery.Size, cut joinery.Cut, bits ...joinery.Bit) *joinery.Plan {
	t.Helper()
	p := joinery.Piece{Name: "piece", Count: 1, Size: size, Grain: longest(size), Cuts: []joinery.Cut{cut}, Wood: joinery.Wood{Name: "wood"}}
	scale := joinery.DefaultScale(unit)
	require.Empty(t, p.LayAll(scale))
	return &joinery.Plan{
		Name: "plan", Unit: unit, Pieces: []joinery.Piece{p},
		Shop: joinery.Shop{Scale: scale, Bits: bits, Rules: joinery.DefaultRules(unit),
			Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2}},
	}
}

func longest(size joinery.Size) joinery.Dimension {
	d := joinery.LeftRight
	for _, other := range joinery.Dimensions {
		if size[other] > size[d] {
			d = other
		}
	}
	return d
}

// deckOf makes the deck of a plan.
func deckOf(t testing.TB, plan *joinery.Plan) *setup.Deck {
	t.Helper()
	d, err := setup.Make(plan)
	require.NoError(t, err)
	return d
}

// bitOf is a plunging straight bit named after its diameter.
func bitOf(diameter joinery.Length) joinery.Bit {
	return joinery.Bit{Name: diameter.String(), Diameter: diameter, Plunges: joinery.Yes}
}

// inches reads lengths in inches.
func inches(t testing.TB, texts ...string) []joinery.Length {
	var ls []joinery.Length
	for _, text := range texts {
		ls = append(ls, in(t, text))
	}
	return ls
}

// realPlans reads the two examples and every plan of testdata/plans: tables,
// cabinets, doors, beds and benches as a maker would write them.
func realPlans(t testing.TB) map[string]*joinery.Plan {
	t.Helper()
	root := ".."
	for _, err := os.Stat(filepath.Join(root, "go.mod")); err != nil; _, err = os.Stat(filepath.Join(root, "go.mod")) {
		root = filepath.Join(root, "..")
	}
	files, err := filepath.Glob(filepath.Join(root, "testdata/plans/*.yaml"))
	require.NoError(t, err)
	files = append(files, filepath.Join(root, "joinery/examples/boot-bench.yaml"), filepath.Join(root, "testdata/wall-cabinet.yaml"))
	plans := map[string]*joinery.Plan{}
	for _, f := range files {
		data, err := os.ReadFile(f)
		require.NoError(t, err)
		plan, err := planfile.Read(f, data, nil)
		require.NoError(t, err)
		plans[strings.TrimSuffix(filepath.Base(f), ".yaml")] = plan
	}
	return plans
}

// groove is a groove along a board, in its front, from its bottom.
func groove(t testing.TB, name, width, setback string, after ...string) joinery.Cut {
	return joinery.Cut{
		Kind: &joinery.Groove, Name: name, In: joinery.Front,
		Width: in(t, width), Depth: in(t, "1/4"),
		Start: joinery.Setback{Distance: in(t, setback), From: joinery.Bottom},
		After: after,
	}
}

// boardWith is a plan of one board with these grooves.
func boardWith(t testing.TB, bits []joinery.Bit, cuts ...joinery.Cut) *joinery.Plan {
	plan := planOf(t, joinery.Inches, joinery.Size{in(t, "24"), in(t, "3/4"), in(t, "8")}, cuts[0], bits...)
	p := &plan.Pieces[0]
	p.Cuts = cuts
	require.Empty(t, p.LayAll(plan.Shop.Scale))
	return plan
}

// route writes a deck's setups as "bit@near edge: cuts".
func route(d *setup.Deck) []string {
	var steps []string
	for _, s := range d.Setups {
		step := s.Bit.Name + "@" + joinery.InchScale.Format(s.Fence.NearEdge) + ":"
		for _, c := range s.Cards {
			step += " " + c.Cut.Name
		}
		steps = append(steps, step)
	}
	return steps
}

// benchBits are the usual sizes, all plunging, and long enough for anything.
func benchBits(t testing.TB) []joinery.Bit {
	var bits []joinery.Bit
	for _, d := range []string{"1/8", "1/4", "3/8", "1/2", "3/4"} {
		bits = append(bits, bitOf(in(t, d)))
	}
	return bits
}

// pieceFrom is a plan of one piece, its size written "left-right front-back top-bottom".
// A cut may end in "square", for its ends, or "after groove".
func pieceFrom(t testing.TB, size string, cuts ...string) *joinery.Plan {
	t.Helper()
	var s joinery.Size
	for i, word := range strings.Fields(size) {
		s[i] = in(t, strings.ReplaceAll(word, "_", " "))
	}
	plan := planOf(t, joinery.Inches, s, cutFrom(t, cuts[0]), benchBits(t)...)
	p := &plan.Pieces[0]
	p.Cuts = nil
	for _, words := range cuts {
		c, after, ok := strings.Cut(words, " after ")
		c, square := strings.CutSuffix(c, " square")
		cut := cutFrom(t, c)
		cut.Square = square
		if ok {
			cut.After = []string{after}
		}
		p.Cuts = append(p.Cuts, cut)
	}
	require.Empty(t, p.LayAll(plan.Shop.Scale))
	return plan
}

// cutFrom reads a cut from words: "mortise rail right 3/8 1/2:front 1/2-3:top 1"
// is kind, name, side, width, setback, span and depth; a rabbet, lap or tenon
// has "rabbet edge back left 3/8 1/2", "lap end back left 1 1/2 3/8" (in quarters
// without blanks) and "tenon end left 7/8 front:3/16 back:3/16".
func cutFrom(t testing.TB, words string) joinery.Cut {
	t.Helper()
	w := strings.Fields(words)
	side := func(name string) joinery.Side {
		s, ok := joinery.ParseSide(name)
		require.True(t, ok, name)
		return s
	}
	size := func(text string) joinery.Length { return in(t, strings.ReplaceAll(text, "_", " ")) }
	c := joinery.Cut{Kind: joinery.KindNamed(w[0]), Name: w[1]}
	switch c.Kind {
	case &joinery.Rabbet:
		c.In, c.Along, c.Width, c.Depth = side(w[2]), side(w[3]), size(w[4]), size(w[5])
	case &joinery.Lap:
		c.In, c.At, c.Length, c.Depth = side(w[2]), side(w[3]), size(w[4]), size(w[5])
	case &joinery.Tenon:
		c.At, c.Length = side(w[2]), size(w[3])
		for _, cheek := range w[4:] {
			name, deep, _ := strings.Cut(cheek, ":")
			c.Cheeks = append(c.Cheeks, joinery.Cheek{Side: side(name), Depth: size(deep)})
		}
	default:
		setback, from, _ := strings.Cut(w[4], ":")
		c.In, c.Width, c.Depth = side(w[2]), size(w[3]), size(w[6])
		c.Start = joinery.Setback{Distance: size(setback), From: side(from)}
		if span, of, ok := strings.Cut(w[5], ":"); ok {
			lo, hi, _ := strings.Cut(span, "-")
			c.Span = joinery.Span{From: size(lo), To: size(hi), Side: side(of)}
		}
	}
	return c
}

// plainPlan is a groove along a long board, with no caution but those of every
// first card: whatever a test brings up is its own doing.
func plainPlan(t testing.TB) *joinery.Plan {
	t.Helper()
	plan := planOf(t, joinery.Inches, joinery.Size{in(t, "24"), in(t, "3"), in(t, "1 1/2")}, joinery.Cut{
		Kind: &joinery.Groove, Name: "groove", In: joinery.Bottom, Width: in(t, "1/2"), Depth: in(t, "1/4"),
		Start: joinery.Setback{Distance: in(t, "1/2"), From: joinery.Front},
	}, bitOf(in(t, "1/2")))
	plan.Shop.Rules = joinery.DefaultRules(joinery.Inches)
	plan.Shop.Fence = joinery.FenceReach{Infeed: in(t, "24"), Outfeed: in(t, "24")}
	plan.Shop.Bits[0].Shank = in(t, "1/2")
	return plan
}

// boardSize is a board for pieceFrom.
const boardSize = "24 3/4 8"
