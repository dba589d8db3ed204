package book

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/whatif"
)

// setupOf returns the setup that runs a cut.
func setupOf(t *testing.T, d *deck.Deck, cut string) *deck.Setup {
	t.Helper()
	for i := range d.Setups {
		for _, r := range d.Setups[i].Runs {
			if r.Cut.Name == cut {
				return &d.Setups[i]
			}
		}
	}
	t.Fatalf("no card of %s", cut)
	return nil
}

// useAt is what it takes to cut a setup with the fence shifted.
func useAt(t *testing.T, d *deck.Deck, s *deck.Setup, shift measure.Length) *whatif.Use {
	t.Helper()
	trial, err := whatif.NewTrial(d)
	require.NoError(t, err)
	return trial.Shift(s, shift)
}

// found is what the book has for the setups of a deck.
func found(t testing.TB, b *Book, d *deck.Deck) []Match {
	t.Helper()
	matches, err := b.Match(d)
	require.NoError(t, err)
	return matches
}

// matchOf matches the setup that runs a cut of a plan against the book.
func matchOf(t *testing.T, b *Book, plan *joinery.Plan, cut string) Match {
	t.Helper()
	d := deckOf(t, plan)
	return found(t, b, d)[setupOf(t, d, cut).Number-1]
}

func TestABatchMadeAgainEqualsTheFirst(t *testing.T) {
	b, _ := bookOf(t)
	batch, err := setup.Batch(bench(t), 12)
	require.NoError(t, err)
	again := deckOf(t, batch)
	for i, m := range b.Mark(again) {
		require.NotNil(t, m.Equal)
		assert.Empty(t, m.Offers)
		assert.Equal(t, b.Entries()[i].Name, m.Equal.Name)
		assert.Equal(t, b.Entries()[i].Name, again.Setups[i].Kept.Name)
	}
}

// Other rungs to the same full depths are the same setup: a bit with another cap
// orphans nothing that was kept.
func TestOtherRungsAreTheSameSetup(t *testing.T) {
	b, _ := bookOf(t)
	plan := bench(t)
	kept := deckOf(t, plan)
	plan.Shop.Share = timber.Share{Num: 1, Den: 16}
	again := deckOf(t, plan)
	other := 0
	for i := range kept.Setups {
		s := &kept.Setups[i]
		if m := found(t, b, again)[i]; assert.NotNil(t, m.Equal) {
			assert.Equal(t, Code(s), m.Equal.Code)
		}
		if Code(s) != Code(&again.Setups[i]) {
			other++
		}
	}
	assert.Positive(t, other)
}

func TestMarkSaysWhatWasLearnt(t *testing.T) {
	d := deckOf(t, bench(t))
	e := keepAs(t, d, 2, "x")
	scale, code := d.Plan.Shop.Scale, d.Code
	stood := d.Setups[1].Fence.NearEdge + in/64
	e.Stood.Fence, e.Notes = &stood, []string{"mind the knot"}
	b, err := read(t, "").Put(e, false)
	require.NoError(t, err)
	b.Mark(d)
	assert.Equal(t, &deck.Kept{Name: "x", Code: e.Code, Notes: []string{"mind the knot"},
		Learnt: []string{"after the test cut the fence stood at " + scale.Format(stood)}, FenceStood: &stood}, d.Setups[1].Kept)
	assert.Nil(t, d.Setups[0].Kept)
	assert.NotEqual(t, code, d.Code)

	*b.Entries()[0].Stood.Fence += in // by hand
	b.Mark(d)
	assert.Nil(t, d.Setups[1].Kept.FenceStood)
	assert.Equal(t, code, d.Code)
}

func TestTheLastKeptOfEqualsCounts(t *testing.T) {
	d := deckOf(t, bench(t))
	b := read(t, "")
	for _, k := range []struct{ name, date string }{{"older", "2026-01-01"}, {"newest", "2026-05-05"}, {"middle", "2026-03-03"}} {
		e := keepAs(t, d, 1, k.name)
		e.Date = k.date
		var err error
		b, err = b.Put(e, false)
		require.NoError(t, err)
	}
	assert.Equal(t, "newest", found(t, b, d)[0].Equal.Name)
}

func TestNearMortise(t *testing.T) {
	b, _ := bookOf(t)
	for _, c := range []struct {
		by   measure.Length
		near bool
	}{{in / 64, true}, {-in / 64, true}, {in / 32, true}, {in/32 + 1, false}, {in / 16, false}} {
		plan := bench(t)
		moveAll(plan, "seat rail", c.by)
		m := matchOf(t, b, plan, "seat rail")
		require.Nil(t, m.Equal)
		if !c.near {
			assert.Empty(t, m.Offers)
			continue
		}
		require.Len(t, m.Offers, 1)
		o := m.Offers[0]
		assert.Equal(t, -c.by, o.Shift)
		assert.True(t, o.Use.Allowed(), o.Use.Refused)
		assert.Equal(t, []whatif.Change{{Piece: "front left leg", Cut: "seat rail", Key: "setback", Word: "setback",
			From: in/2 + c.by, To: in / 2, Side: joinery.Front}}, o.Use.Changes, "the mirrored leg follows by itself")
	}
}

// At the same fence with other marks nothing of the plan has to change.
func TestSameFenceOtherMarks(t *testing.T) {
	b, _ := bookOf(t)
	plan := bench(t)
	for i := range 2 {
		plan.Pieces[i].Cuts[0].Span.To += in
		plan.Pieces[i].LayAll(plan.Shop.Scale)
	}
	m := matchOf(t, b, plan, "seat rail")
	require.Nil(t, m.Equal)
	require.Len(t, m.Offers, 1)
	assert.Zero(t, m.Offers[0].Shift)
	assert.Nil(t, m.Offers[0].Use)
}

func TestAnotherBitIsNotNear(t *testing.T) {
	b, _ := bookOf(t)
	plan := bench(t)
	plan.Shop.Bits[0].Kind = joinery.Straight
	m := matchOf(t, b, plan, "seat rail")
	assert.Nil(t, m.Equal)
	assert.Empty(t, m.Offers)
}

func TestRabbetGrowsWithTheFence(t *testing.T) {
	b, _ := bookOf(t)
	plan := bench(t)
	plan.Shop.Bits = plan.Shop.Bits[:1]
	moveAll(plan, "seat boards", -in/64) // the bit is buried, the rabbet narrower
	m := matchOf(t, b, plan, "seat boards")
	require.NotEmpty(t, m.Offers)
	use := m.Offers[0].Use
	require.NotNil(t, use)
	assert.True(t, use.Allowed(), use.Refused)
	assert.Equal(t, []whatif.Change{{Piece: "seat rail", Cut: "seat boards", Key: "width", Word: "width", From: 23 * in / 64, To: 3 * in / 8}}, use.Changes)
}

// The first run of a wide groove makes its near wall only, the last its far
// wall only.
func TestWideGrooveMovesOneWall(t *testing.T) {
	d := deckOf(t, bench(t))
	for _, c := range []struct {
		position int
		want     []whatif.Change
	}{
		{1, []whatif.Change{
			{Piece: "seat rail", Cut: "wide groove", Key: "setback", Word: "setback", From: in / 8, To: in/8 + in/64, Side: joinery.Front}, {Piece: "seat rail", Cut: "wide groove", Key: "width", Word: "width", From: in / 2, To: in/2 - in/64, Side: joinery.NoSide}}},
		{2, []whatif.Change{
			{Piece: "seat rail", Cut: "wide groove", Key: "width", Word: "width", From: in / 2, To: in/2 + in/64, Side: joinery.NoSide}}},
	} {
		for i := range d.Setups {
			s := &d.Setups[i]
			if s.Runs[0].Cut.Name == "wide groove" && s.Runs[0].Step.Position == c.position {
				assert.Equal(t, c.want, useAt(t, d, s, in/64).Changes)
			}
		}
	}
}

func TestTheJointDoesNotAllowIt(t *testing.T) {
	d := deckOf(t, bench(t))
	// A rabbet as wide as its bit cannot grow without a second fence distance.
	use := useAt(t, d, setupOf(t, d, "seat boards"), in/64)
	require.False(t, use.Allowed())
	assert.Contains(t, strings.Join(use.Refused, "\n"), "seat rail, seat boards: the cut would no longer be made at this fence distance alone")

	// A mortise pushed out of its leg.
	plan := bench(t)
	for i := range 2 {
		plan.Pieces[i].Cuts[0].Start.Distance = 79 * in / 64
		plan.Pieces[i].LayAll(plan.Shop.Scale)
	}
	d = deckOf(t, plan)
	use = useAt(t, d, setupOf(t, d, "seat rail"), in/32)
	require.False(t, use.Allowed())
	assert.Contains(t, strings.Join(use.Refused, "\n"), "outside the piece")
}

func TestUseLeavesThePlanAlone(t *testing.T) {
	plan := bench(t)
	d := deckOf(t, plan)
	before := *deckOf(t, bench(t)).Plan
	for i := range d.Setups {
		useAt(t, d, &d.Setups[i], in/64)
		useAt(t, d, &d.Setups[i], -in/32)
	}
	for i := range before.Pieces {
		assert.Equal(t, before.Pieces[i], plan.Pieces[i])
	}
}

// Where a kept fence can be used, the plan as changed really has that setup.
func TestChangesDoWhatTheySay(t *testing.T) {
	d := deckOf(t, bench(t))
	allowed := 0
	for i := range d.Setups {
		for _, shift := range []measure.Length{in / 64, -in / 64, in / 32, -in / 32} {
			s := &d.Setups[i]
			use := useAt(t, d, s, shift)
			if !use.Allowed() {
				continue
			}
			allowed++
			plan := bench(t)
			for _, c := range use.Changes {
				for k := range plan.Pieces {
					p := &plan.Pieces[k]
					if p.Name != c.Piece && p.MirrorOf != c.Piece {
						continue
					}
					cut := p.Cut(c.Cut)
					value := map[string]*measure.Length{"setback": &cut.Start.Distance, "width": &cut.Width, "length": &cut.Length}[c.Key]
					require.Equal(t, c.From, *value)
					*value = c.To
					require.Empty(t, p.LayAll(plan.Shop.Scale))
				}
			}
			found := false
			for _, after := range deckOf(t, plan).Setups {
				found = found || after.Bit.CutsLike(s.Bit) && after.Fence.NearEdge == s.Fence.NearEdge+shift
			}
			otherBit := strings.Contains(strings.Join(use.Beware, "\n"), "the deck would choose another bit")
			assert.NotEqual(t, otherBit, found, "setup %d by %v", s.Number, shift)
		}
	}
	assert.GreaterOrEqual(t, allowed, 8)
}

// The cards of a printed entry are those of its pieces, so that lists by piece
// find them.
func TestCardsOfAnEntryAreThoseOfItsPieces(t *testing.T) {
	b, _ := bookOf(t)
	for _, e := range b.Entries() {
		d := e.Deck()
		for _, r := range d.Setups[0].Runs {
			var found bool
			for i := range d.Plan.Pieces {
				found = found || r.Piece == &d.Plan.Pieces[i]
			}
			assert.True(t, found, r.Piece.Name)
		}
	}
}

// A setup kept again with nothing to say does not hide what the first learnt; one
// that says something does.
func TestASilentEntryHidesNothing(t *testing.T) {
	b, d := bookOf(t)
	stood := d.Setups[0].Fence.NearEdge + in/64
	put := func(b *Book, name string, k Keeping) *Book {
		k.Name, k.From, k.On = name, "bench.yaml", spring
		e, err := Keep(d, 1, k)
		require.NoError(t, err)
		grown, err := b.Put(e, false)
		require.NoError(t, err)
		return grown
	}
	b = put(b, "learnt", Keeping{Stood: Stood{Fence: &stood}})
	b = put(b, "silent", Keeping{})
	silent, err := b.NamedOrCoded("silent")
	require.NoError(t, err)
	assert.Equal(t, "learnt", b.Twin(silent).Name)
	b.Mark(d)
	assert.Equal(t, "learnt", d.Setups[0].Kept.Name)
	assert.Equal(t, stood, *d.Setups[0].Kept.FenceStood)

	b = put(b, "noted", Keeping{Notes: []string{"collet snug"}})
	b.Mark(d)
	assert.Equal(t, "noted", d.Setups[0].Kept.Name)

	alone, err := b.NamedOrCoded("setup 2")
	require.NoError(t, err)
	assert.Nil(t, b.Twin(alone))
}

// A plan that can no longer be made is told, not passed over as if a near setup could
// be used as it stands.
func TestAPlanThatCannotBeMadeIsTold(t *testing.T) {
	b, _ := bookOf(t)
	plan := bench(t)
	moveAll(plan, "seat rail", in/64)
	d := deckOf(t, plan)
	d.Plan.Shop.Bits = nil
	_, err := b.Match(d)
	assert.ErrorContains(t, err, "seat rail")
}

// Of entries with the same bit and distance that are not equal, what the one kept last
// learnt of the fence counts, wherever it stands in the book.
func TestTheFenceLearntLastCounts(t *testing.T) {
	for _, dates := range [][2]string{{"2026-01-01", "2026-05-05"}, {"2026-05-05", "2026-01-01"}, {"2026-05-05", "2026-05-05"}} {
		plan := bench(t)
		for i := range 2 { // other marks, so that no entry equals a setup of the bench
			plan.Pieces[i].Cuts[0].Span.To += in
			require.Empty(t, plan.Pieces[i].LayAll(plan.Shop.Scale))
		}
		other, d, b := deckOf(t, plan), deckOf(t, bench(t)), read(t, "")
		number := setupOf(t, other, "seat rail").Number
		want := measure.Length(0)
		for i, date := range dates {
			e := keepAs(t, other, number, date+string(rune('a'+i)))
			e.Date = date
			stood := e.Setup.Fence.NearEdge + measure.Length(i+1)*in/64
			e.Stood.Fence = &stood
			var err error
			b, err = b.Put(e, false)
			require.NoError(t, err)
			if date == "2026-05-05" { // of one day, the one that stands last
				want = stood
			}
		}
		b.Mark(d)
		s := setupOf(t, d, "seat rail")
		if assert.NotNil(t, s.Kept, dates) && assert.NotNil(t, s.Kept.FenceStood, dates) {
			assert.Equal(t, want, *s.Kept.FenceStood, dates)
		}
	}
}

// Offers stand by how near they are: first the bit, then the fence, then the one kept
// last. No more than three are made.
func TestOffersTheNearestFirst(t *testing.T) {
	d := deckOf(t, bench(t))
	type near struct {
		name, date string
		bit, fence measure.Length
	}
	for _, test := range []struct {
		kept []near
		want []string
	}{
		{[]near{{"far", "2026-05-05", 0, in / 32}, {"old", "2026-01-01", 0, in / 64}, {"new", "2026-03-03", 0, -in / 64}}, []string{"new", "old", "far"}},
		{[]near{{"new", "2026-03-03", 0, -in / 64}, {"old", "2026-01-01", 0, in / 64}}, []string{"new", "old"}},
		{[]near{{"another bit", "2026-06-06", in / 256, 0}, {"far", "2026-05-05", 0, in / 32}}, []string{"far", "another bit"}},
		{[]near{{"wider bit", "2026-06-06", in / 200, 0}, {"narrower bit", "2026-06-06", -in / 256, 0}}, []string{"narrower bit", "wider bit"}},
		{[]near{{"too far", "2026-06-06", 0, in/32 + 1}, {"too wide", "2026-06-06", in/128 + 1, 0}}, nil},
		{[]near{{"a", "", 0, 4}, {"b", "", 0, 3}, {"c", "", 0, 2}, {"d", "", 0, 1}}, []string{"d", "c", "b"}},
	} {
		s, b := setupOf(t, d, "seat rail"), read(t, "")
		b.Entries()
		for _, n := range test.kept {
			e := keepAs(t, d, s.Number, n.name)
			bit := *e.Setup.Bit
			bit.Measured = bit.True() + n.bit
			e.Date, e.Setup.Bit, e.Setup.Fence.NearEdge = n.date, &bit, e.Setup.Fence.NearEdge+n.fence
			b.entries = append(b.entries, e)
		}
		var names []string
		for _, o := range b.offers(s) {
			names = append(names, o.Entry.Name)
		}
		assert.Equal(t, test.want, names)
	}
}
