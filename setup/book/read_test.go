package book

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// requireSame compares a setup that was read back with the one that was kept.
// Places, and the figures of a wood of the maker's own, are not kept.
func requireSame(t *testing.T, want, got *deck.Setup) {
	t.Helper()
	bit := *want.Bit
	bit.Place, bit.Cap = plantext.Place{}, 0
	require.Equal(t, bit, *got.Bit)
	require.Equal(t, want.Fence, got.Fence)
	require.Equal(t, want.Heights, got.Heights)
	require.Len(t, got.Runs, len(want.Runs))
	for i := range want.Runs {
		w, g := want.Runs[i], got.Runs[i]
		require.Equal(t, w.Piece.Name, g.Piece.Name)
		require.Equal(t, w.Piece.Count, g.Piece.Count)
		require.Equal(t, w.Piece.Size, g.Piece.Size)
		require.Equal(t, w.Piece.Grain, g.Piece.Grain)
		require.Equal(t, w.Piece.Wood, g.Piece.Wood)
		require.Equal(t, w.Piece.MirrorOf, g.Piece.MirrorOf)
		require.Equal(t, w.Cut.Name, g.Cut.Name)
		require.Equal(t, w.Cut.Kind, g.Cut.Kind)
		require.Equal(t, w.Cut.Note, g.Cut.Note)
		require.Equal(t, w.Cut.Square, g.Cut.Square)
		w.Step.Bit, g.Step.Bit = nil, nil
		w.Piece, w.Cut, g.Piece, g.Cut = nil, nil, nil, nil
		w.Cautions, w.Joint = nil, nil // found anew, and of the whole plan
		w.Setup, w.Index = 1, i+1
		w.Cautions, w.Joint = nil, nil // not kept: they depend on the shop and the plan of the day
		require.Equal(t, w, g)
	}
}

func TestKeptSetupsComeBack(t *testing.T) {
	b, d := bookOf(t)
	require.Empty(t, b.Damage())
	require.Len(t, b.Entries(), len(d.Setups))
	for i := range d.Setups {
		requireSame(t, &d.Setups[i], &b.Entries()[i].Setup)
		assert.Equal(t, "2026-03-31", b.Entries()[i].Date)
		assert.Contains(t, b.Entries()[i].From, `of "Boot bench" (bench.yaml)`)
		assert.False(t, b.Entries()[i].Edited.Known())
		assert.Equal(t, d.Plan.Shop.Minutes, b.Entries()[i].Shop.Minutes)
		assert.Equal(t, d.Plan.Shop.Fence, b.Entries()[i].Shop.Fence)
	}
}

// Whatever setup is kept, the same comes back, under the same code, from a
// book that the others do not disturb.
func TestRandomSetupsComeBack(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	kept := 0
	for kept < 300 {
		d, err := setup.Make(randomPlan(random))
		if err != nil {
			continue
		}
		b := read(t, "# mine\n"+header+"\n")
		for i := range d.Setups {
			heights := d.Setups[i].Heights
			stood := heights[len(heights)-1] - measure.Length(random.IntN(int(deck.MostLearntHeight)))
			e, err := Keep(d, i+1, Keeping{
				Name: "n" + strings.Repeat("#", i), Notes: []string{"two\nlines # here"}, On: spring,
				Stood: Stood{Fence: &d.Setups[i].Fence.NearEdge, Height: &stood},
			})
			require.NoError(t, err)
			b, err = b.Put(e, false)
			require.NoError(t, err)
			back, err := b.NamedOrCoded(e.Name)
			require.NoError(t, err)
			requireSame(t, &d.Setups[i], &back.Setup)
			require.Equal(t, e.Code, back.Code)
			require.Equal(t, e.Stood, back.Stood)
			require.Equal(t, []string{"two", "lines # here"}, back.Notes)
			require.Empty(t, b.Damage())
			kept++
		}
		require.Len(t, b.Entries(), len(d.Setups))
	}
}

// sample is an entry as it may stand in a maker's book, edited by hand.
const sample = `fencecard setup book 1
# My setups. The spring batch.

setup: Seat rail mortises
    code: CODE
    note: collet snug; # is no comment here
    rating: good enough          # a field of my own
    scale: 1/64"                 # the old rule
    bit: three eighths up-cut
    kind: up-cut
    diameter: 3/8
    fence to near edge: 1/2      # from the steel rule
    fence stood: 33/64
    # it crept
    heights: 1/4, 1/2, 3/4, 1
    run: front left leg
        cut: seat rail
        kind: mortise
        size: 1 5/8 left-right, 1 5/8 front-back, 17 top-bottom
        grain: top-bottom
        down: right
        to fence: front
        setback: 1/2 from front
        width: 3/8
        depth: 1
        start: 1/2
        stop: 3
        stop stood: 3 1/32
        heights: 1/4, 1/2, 3/4, 1
        best face: out
`

func TestEntryWrittenByHand(t *testing.T) {
	e := only(t, read(t, strings.Replace(sample, "    code: CODE\n", "", 1)))
	assert.Equal(t, "Seat rail mortises", e.Name)
	assert.Equal(t, []string{"collet snug; # is no comment here"}, e.Notes)
	assert.Equal(t, []string{
		"after the test cut the fence stood at 33/64",
		"after the test cut the stop of front left leg, seat rail, stood at 3 1/32",
	}, e.Learnt(measure.InchScale))
	r := e.Setup.Runs[0]
	assert.Equal(t, joinery.Top, r.Leads)
	assert.Equal(t, 11*in/16, e.Setup.Fence.Centre)
	assert.Equal(t, 11*in/16, r.Start.LeadPastCentre)
	assert.Equal(t, 14*in, r.Stop.TailBeforeEdge)
	assert.Equal(t, 17*in/8, r.Travel())
}

func only(t *testing.T, b *Book) *Entry {
	t.Helper()
	require.NoError(t, b.Damage().Err())
	require.Len(t, b.Entries(), 1)
	return b.Entries()[0]
}

func TestCodeIsTheSameEverywhere(t *testing.T) {
	// This stands in makers' books and on their cards: if it fails, a code that
	// was printed no longer finds its setup.
	const code = "g68j-5xn4"
	e := only(t, read(t, strings.Replace(sample, "CODE", code, 1)))
	assert.Equal(t, code, e.Code)
	assert.False(t, e.Edited.Known())
}

func TestEditedContentsAreNoticed(t *testing.T) {
	e := only(t, read(t, strings.Replace(sample, "CODE", "7777-7777", 1)))
	assert.Equal(t, 5, e.Edited.Line)
}

func TestCodeLooksAtTheMachineAlone(t *testing.T) {
	code := func(change func(p *joinery.Plan)) string {
		plan := bench(t)
		change(plan)
		return Code(&deckOf(t, plan).Setups[0])
	}
	plain := code(func(*joinery.Plan) {})
	assert.Regexp(t, `^[0-9a-hjkmnp-tv-z]{4}-[0-9a-hjkmnp-tv-z]{4}$`, plain)
	for what, change := range map[string]func(p *joinery.Plan){
		"names":    func(p *joinery.Plan) { p.Title, p.Pieces[0].Name, p.Pieces[0].Cuts[0].Name = "x", "y", "z" },
		"counts":   func(p *joinery.Plan) { p.Pieces[0].Count = 12 },
		"bit name": func(p *joinery.Plan) { p.Shop.Bits[0].Name = "x" },
		"shank":    func(p *joinery.Plan) { p.Shop.Bits[0].Shank = 3 * in / 8 },
	} {
		assert.Equal(t, plain, code(change), what)
	}
	for what, change := range map[string]func(p *joinery.Plan){
		"fence":    func(p *joinery.Plan) { moveAll(p, "seat rail", in/64); moveAll(p, "seat boards", in/64) },
		"measured": func(p *joinery.Plan) { p.Shop.Bits[0].Measured = 371 * in / 1000 },
		"kind":     func(p *joinery.Plan) { p.Shop.Bits[0].Kind = joinery.Straight },
	} {
		assert.NotEqual(t, plain, code(change), what)
	}
}

// moveAll shifts every cut of a name and lays the plan again.
func moveAll(p *joinery.Plan, cut string, by measure.Length) {
	for i := range p.Pieces {
		for k := range p.Pieces[i].Cuts {
			if c := &p.Pieces[i].Cuts[k]; c.Name == cut {
				c.Start.Distance += by
				c.Width += map[bool]measure.Length{true: by}[c.Kind == &joinery.Rabbet]
			}
		}
		p.Pieces[i].LayAll(p.Shop.Scale)
	}
}

func TestDamageIsReportedWithItsLineAndTheRestWorks(t *testing.T) {
	b, _ := bookOf(t)
	whole := string(b.Bytes())
	replace := func(old, with string) string {
		require.Contains(t, whole, old)
		return strings.Replace(whole, old, with, 1)
	}
	for _, c := range []struct {
		name, text, want string
		lost             int
	}{
		{"a length", replace("  diameter: 3/8 in", "  diameter: 3/8 inn"), `book.txt:10:13: diameter: "3/8 inn"`, 1},
		{"a comma", replace("  diameter: 3/8 in", "  diameter: 0,375 in"), "write 0.375", 1},
		{"no fence", replace("  fence to near edge: ", "  fence: "), `has no "fence to near edge"`, 1},
		{"no field", replace("  scale: 1/64 in", "  scale 1/64 in"), "this line is no field", 1},
		{"a side", replace("    down: right", "    down: rihgt"), `"rihgt" is no side`, 1},
		{"sides that do not meet", replace("    to fence: front", "    to fence: left"), "do not fit each other", 1},
		{"the wrong end leads", replace("    leads: top", "    leads: bottom"), "with the right down and the front to the fence the top leads, not the bottom", 1},
		{"a cut outside its piece", replace("    setback: 1/2 in from front", "    setback: 1 1/2 in from front"), "does not lie inside", 1},
		{"marks that cross", replace("    start: 1/2 in", "    start: 4 in"), "cannot be", 1},
		{"a ladder that falls", replace("  heights: ", "  heights: 2 in, "), "do not climb", 1},
		{"a rung that is none", replace("    depth: 1 in\n    start: 1/2 in\n    stop: 3 in\n    heights: ", "    depth: 1 in\n    start: 1/2 in\n    stop: 3 in\n    heights: 1/64 in, "), "not on the setup's ladder", 1},
		{"a date", replace("  kept: 2026-03-31", "  kept: last spring"), "is no date", 1},
		{"twice", replace("  kind: up-cut", "  kind: up-cut\n  kind: straight"), `"kind" stands here twice`, 1},
		{"a second of the name", replace("setup: setup 2", "setup: SETUP 1"), "a second setup has the name", 1},
		{"an unsettled merge", replace("  kept: 2026-03-31", "<<<<<<< ours\n  kept: 2026-03-31"), "merged here and not settled", 1},
		{"a stray line", "hello\n" + strings.TrimPrefix(whole, header+"\n"), "this line begins no setup", 0},
		{"an indented line first", "  hello: you\n" + strings.TrimPrefix(whole, header+"\n"), "stands below no setup", 0},
		{"a count", replace("    count: 1", "    count: many"), "is no number to count by", 1},
		{"minutes", replace("  minutes: 3 bit", "  minutes: 3 bits"), "cannot be read", 1},
		{"a kind", replace("    kind: mortise", "    kind: mortis"), "is no kind of cut", 1},
		{"no name", replace("setup: setup 1", "setup:"), "has no name", 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			damaged := read(t, c.text)
			require.NotEmpty(t, damaged.Damage())
			assert.ErrorContains(t, damaged.Damage().Err(), c.want)
			for _, f := range damaged.Damage() {
				assert.True(t, f.Known(), "a fault has its line: %v", f)
				assert.NotEmpty(t, f.Remedy)
			}
			assert.Len(t, damaged.Entries(), len(b.Entries())-c.lost)
			// A change to another entry leaves the damaged one as it is.
			grown, err := damaged.Put(renamed(b.Entries()[1], "one more"), false)
			require.NoError(t, err)
			assert.Contains(t, string(grown.Bytes()), strings.TrimPrefix(c.text, header+"\n"))
		})
	}
}

func renamed(e *Entry, name string) *Entry {
	other := *e
	other.Name = name
	return &other
}

func TestFormats(t *testing.T) {
	b, _ := bookOf(t)
	whole := string(b.Bytes())
	require.True(t, strings.HasPrefix(whole, "fencecard setup book 1\n"))

	older := strings.TrimPrefix(whole, header+"\n\n")
	assert.Len(t, read(t, older).Entries(), len(b.Entries()), "a book that names no format is in the oldest")

	for _, newer := range []string{"2", "17", "99999999999999999999999"} {
		_, err := Read("book.txt", []byte("# mine\n"+formatLine+" "+newer+"\n"+older))
		assert.ErrorContains(t, err, "format "+newer+", and this fencecard reads formats up to 1")
		assert.ErrorContains(t, err, "book.txt:2:1")
		assert.ErrorContains(t, err, "use a newer fencecard")
	}
	for _, bad := range []string{"", " x", " 0", " 1.5", " -1"} {
		_, err := Read("book.txt", []byte(formatLine+bad+"\n"+older))
		assert.ErrorContains(t, err, "has no number", bad)
	}
}

// A file of another kind is no book, whatever is asked of it.
func TestWhatIsNoBook(t *testing.T) {
	for _, text := range []string{
		"unit: in\npieces:\n  - piece: leg\n",
		"bits:\n  - {bit: quarter, diameter: 1/4}\n",
		"# a list of what to buy\n",
		"Dear aunt,\n  the chairs are done.\n",
		"setup: tools\n\tgo build ./...\n", // of a file that builds something
		"\n\n  \n.\n",
	} {
		_, err := Read("book.txt", []byte(text))
		assert.ErrorContains(t, err, "this is no setup book", text)
		assert.ErrorContains(t, err, "begins with the line "+header, text)
	}
	for _, text := range []string{"", "\n  \n", byteOrderMark, "# mine\n" + header, "<<<<<<< mine\n" + header + "\n", "stray\nsetup: a\n  Diameter: 3/8 in\n"} {
		_, err := Read("book.txt", []byte(text))
		assert.NoError(t, err, text)
	}
}

func TestNoText(t *testing.T) {
	for _, data := range []string{"setup: a\n\x00", "setup: a\nbit: \xff", "\xff\xfes\x00e\x00"} {
		_, err := Read("book.txt", []byte(data))
		assert.ErrorContains(t, err, "text")
	}
	_, err := Read("book.txt", make([]byte, mostBytes+1))
	assert.ErrorContains(t, err, "larger than 16 MB")
}

func TestAFileOfFaultsStaysSmall(t *testing.T) {
	head := "setup: a\n diameter: 1\n fence to near edge: 1\n"
	for name, text := range map[string]string{
		"entries": header + "\n" + strings.Repeat("setup: x\n", 100_000),
		"strays":  header + "\n" + strings.Repeat("x\n", 100_000),
		"runs":    head + strings.Repeat(" run: x\n", 100_000),
		"lines":   head + strings.Repeat(" x\n", 100_000),
	} {
		b := read(t, text)
		assert.NotEmpty(t, b.Damage(), name)
		assert.LessOrEqual(t, len(b.Damage()), 3*mostDamage, name)
	}
}
