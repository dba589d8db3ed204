// Package workpiece has pieces, plans and bits for tests, written in few words.
package workpiece

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// In reads a length in inches, mm one in millimetres.
func In(t testing.TB, text string) measure.Length { return length(t, text, measure.Inches) }

// MM reads a length in millimetres.
func MM(t testing.TB, text string) measure.Length { return length(t, text, measure.Millimetres) }

// length reads a length that may be negative, as fence distances are.
func length(t testing.TB, text string, unit measure.Unit) measure.Length {
	t.Helper()
	sign := measure.Length(1)
	if text[0] == '-' {
		sign, text = -1, text[1:]
	}
	l, err := measure.ParseLength(text, unit)
	require.NoError(t, err)
	return sign * l
}

// PlanOf lays one piece on a bench with the bits given.
func PlanOf(t testing.TB, unit measure.Unit, size joinery.Size, cut joinery.Cut, bits ...joinery.Bit) *joinery.Plan {
	t.Helper()
	p := joinery.Piece{Name: "piece", Count: 1, Size: size, Grain: size.Longest(), Cuts: []joinery.Cut{cut}, Wood: timber.Wood{Name: "wood"}}
	scale := measure.DefaultScale(unit)
	require.Empty(t, p.LayAll(scale))
	return &joinery.Plan{
		Name: "plan", Unit: unit, Pieces: []joinery.Piece{p},
		Shop: joinery.Shop{Scale: scale, Bits: bits, Rules: joinery.DefaultRules(unit),
			Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2, Pass: joinery.Minute / 5, Fit: 2 * joinery.Minute}},
	}
}

// DeckOf makes the deck of a plan.
func DeckOf(t testing.TB, plan *joinery.Plan) *deck.Deck {
	t.Helper()
	d, err := setup.Make(plan)
	require.NoError(t, err)
	return d
}

// BitOf is a plunging straight bit named after its diameter.
func BitOf(diameter measure.Length) joinery.Bit {
	return joinery.Bit{Name: diameter.String(), Diameter: diameter, Plunges: joinery.Yes}
}

// Inches reads lengths in inches.
func Inches(t testing.TB, texts ...string) []measure.Length {
	var ls []measure.Length
	for _, text := range texts {
		ls = append(ls, In(t, text))
	}
	return ls
}

// RealPlans reads the two examples and every plan of testdata/plans: tables,
// cabinets, doors, beds and benches as a maker would write them.
func RealPlans(t testing.TB) map[string]*joinery.Plan {
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

// Groove is a groove along a board, in its front, from its bottom.
func Groove(t testing.TB, name, width, setback string, after ...string) joinery.Cut {
	return joinery.Cut{
		Kind: &joinery.Groove, Name: name, In: joinery.Front,
		Width: In(t, width), Depth: In(t, "1/4"),
		Start: joinery.Setback{Distance: In(t, setback), From: joinery.Bottom},
		After: after,
	}
}

// BoardWith is a plan of one board with these grooves.
func BoardWith(t testing.TB, bits []joinery.Bit, cuts ...joinery.Cut) *joinery.Plan {
	plan := PlanOf(t, measure.Inches, joinery.Size{In(t, "24"), In(t, "3/4"), In(t, "8")}, cuts[0], bits...)
	p := &plan.Pieces[0]
	p.Cuts = cuts
	require.Empty(t, p.LayAll(plan.Shop.Scale))
	return plan
}

// Route writes a deck's setups as "bit@near edge: cuts".
func Route(d *deck.Deck) []string {
	var steps []string
	for _, s := range d.Setups {
		step := s.Bit.Name + "@" + measure.InchScale.Format(s.Fence.NearEdge) + ":"
		for _, r := range s.Runs {
			step += " " + r.Cut.Name
		}
		steps = append(steps, step)
	}
	return steps
}

// BenchBits are the usual sizes, all plunging, and long enough for anything.
func BenchBits(t testing.TB) []joinery.Bit {
	var bits []joinery.Bit
	for _, d := range []string{"1/8", "1/4", "3/8", "1/2", "3/4"} {
		bits = append(bits, BitOf(In(t, d)))
	}
	return bits
}

// PieceFrom is a plan of one piece, its size written "left-right front-back top-bottom".
// A cut may end in "square", for its ends, or "after groove".
func PieceFrom(t testing.TB, size string, cuts ...string) *joinery.Plan {
	t.Helper()
	var s joinery.Size
	for i, word := range strings.Fields(size) {
		s[i] = In(t, strings.ReplaceAll(word, "_", " "))
	}
	plan := PlanOf(t, measure.Inches, s, CutFrom(t, cuts[0]), BenchBits(t)...)
	p := &plan.Pieces[0]
	p.Cuts = nil
	for _, words := range cuts {
		c, after, ok := strings.Cut(words, " after ")
		c, square := strings.CutSuffix(c, " square")
		cut := CutFrom(t, c)
		cut.Square = square
		if ok {
			cut.After = []string{after}
		}
		p.Cuts = append(p.Cuts, cut)
	}
	require.Empty(t, p.LayAll(plan.Shop.Scale))
	return plan
}

// CutFrom reads a cut from words: "mortise rail right 3/8 1/2:front 1/2-3:top 1"
// is kind, name, side, width, setback, span and depth; a rabbet, lap or tenon
// has "rabbet edge back left 3/8 1/2", "lap end back left 1 1/2 3/8" (in quarters
// without blanks) and "tenon end left 7/8 front:3/16 back:3/16".
func CutFrom(t testing.TB, words string) joinery.Cut {
	t.Helper()
	w := strings.Fields(words)
	side := func(name string) joinery.Side {
		s, ok := joinery.ParseSide(name)
		require.True(t, ok, name)
		return s
	}
	size := func(text string) measure.Length { return In(t, strings.ReplaceAll(text, "_", " ")) }
	c := joinery.Cut{Kind: joinery.KindNamed(w[0]), Name: w[1]}
	switch k := c.Kind; {
	case k.Has("along"):
		c.In, c.Along, c.Width, c.Depth = side(w[2]), side(w[3]), size(w[4]), size(w[5])
	case k.Has("cheeks"):
		c.At, c.Length = side(w[2]), size(w[3])
		for _, cheek := range w[4:] {
			name, deep, _ := strings.Cut(cheek, ":")
			c.Cheeks = append(c.Cheeks, joinery.Cheek{Side: side(name), Depth: size(deep)})
		}
	case k.Has("at"):
		c.In, c.At, c.Length, c.Depth = side(w[2]), side(w[3]), size(w[4]), size(w[5])
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

// PlainPlan is a groove along a long board, with no caution but those of every
// first run: whatever a test brings up is its own doing.
func PlainPlan(t testing.TB) *joinery.Plan {
	t.Helper()
	plan := PlanOf(t, measure.Inches, joinery.Size{In(t, "24"), In(t, "3"), In(t, "1 1/2")}, joinery.Cut{
		Kind: &joinery.Groove, Name: "groove", In: joinery.Bottom, Width: In(t, "1/2"), Depth: In(t, "1/4"),
		Start: joinery.Setback{Distance: In(t, "1/2"), From: joinery.Front},
	}, BitOf(In(t, "1/2")))
	plan.Shop.Rules = joinery.DefaultRules(measure.Inches)
	plan.Shop.Fence = joinery.FenceReach{Infeed: In(t, "24"), Outfeed: In(t, "24")}
	plan.Shop.Bits[0].Shank = In(t, "1/2")
	return plan
}

// BoardSize is a board for pieceFrom.
const BoardSize = "24 3/4 8"
