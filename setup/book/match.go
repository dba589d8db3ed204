package book

import (
	"cmp"
	"fmt"
	"slices"

	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckcode"
	"fencecard/setup/whatif"
)

// closeFence is how far a close setup's fence may stand from the kept one's.
const closeFence = measure.Inch / 32

// mostOffers bounds the close entries offered for one setup.
const mostOffers = 3

// Match is what the book has for one setup of a deck.
type Match struct {
	Setup  *deck.Setup
	Equal  *Entry  // nil: no entry equals it
	Offers []Offer // close entries, the nearest first; none where one is equal
}

// Offer is an entry with the same bit, or one that was measured a hair otherwise, whose
// fence stands close.
type Offer struct {
	Entry *Entry
	Bit   measure.Length // from the setup's bit to the kept one: 0 where they cut alike
	Shift measure.Length // from the setup's fence distance to the kept one
	Use   *whatif.Use    // what it takes to use the kept fence; nil where the fence is the same, or nobody asked
}

// Match finds for every setup of a deck what the book has: an entry with the
// same contents, whatever rungs lead to its full depths, else entries with the same
// bit, or one that measures a hair otherwise, and the fence within 1/32 in.
// Of several equal entries the one kept last counts, of those that say what a test
// cut taught or have a note, if any do. For close ones it finds out what it takes to
// use them; the error is that of a plan that cannot be made, of which that is not known.
func (b *Book) Match(d *deck.Deck) ([]Match, error) {
	matches := b.match(d)
	var t *whatif.Trial
	for _, m := range matches {
		for i := range m.Offers {
			o := &m.Offers[i]
			if o.Shift == 0 || o.Bit != 0 {
				continue
			}
			if t == nil {
				var err error
				if t, err = whatif.NewTrial(d); err != nil {
					return nil, err
				}
			}
			o.Use = t.Shift(m.Setup, o.Shift)
		}
	}
	return matches, nil
}

func (b *Book) match(d *deck.Deck) []Match {
	kept := map[string]*Entry{}
	for _, e := range b.Entries() {
		if last := kept[alike(&e.Setup)]; last == nil || e.outdoes(last) {
			kept[alike(&e.Setup)] = e
		}
	}
	matches := make([]Match, len(d.Setups))
	for i := range d.Setups {
		s := &d.Setups[i]
		matches[i] = Match{Setup: s, Equal: kept[alike(s)]}
		if matches[i].Equal == nil {
			matches[i].Offers = b.offers(s)
		}
	}
	return matches
}

// Twin returns the entry of another name that equals one, and of several the one
// that [Book.Match] would choose; nil for none.
func (b *Book) Twin(of *Entry) *Entry {
	var twin *Entry
	for _, e := range b.Entries() {
		if !sameName(e.Name, of.Name) && alike(&e.Setup) == alike(&of.Setup) && (twin == nil || e.outdoes(twin)) {
			twin = e
		}
	}
	return twin
}

// outdoes reports whether an entry counts more than an equal one that stands above
// it: a silent one never hides what another has to say.
func (e *Entry) outdoes(above *Entry) bool {
	if e.silent() != above.silent() {
		return !e.silent()
	}
	return e.Date >= above.Date
}

// silent reports whether nobody said anything of the setup.
func (e *Entry) silent() bool {
	return len(e.Notes) == 0 && e.Stood == (Stood{}) && !slices.ContainsFunc(e.Marks, func(m Stood) bool { return m != Stood{} })
}

// Mark gives every setup of a deck that equals an entry its name, its notes and
// what was learnt, and the deck the code of what its papers say then. What it takes to use the close ones is left to [Book.Match].
func (b *Book) Mark(d *deck.Deck) []Match {
	matches := b.match(d)
	for _, m := range matches {
		if m.Equal != nil {
			m.Setup.Kept = m.Equal.Kept(d.Plan.Shop.Scale)
		}
	}
	share(d)
	b.fences(d)
	deckcode.Seal(d)
	return matches
}

// share gives setups between which the fence stays what was learnt of it at one of
// them: where only the heights are set anew, the sheets name one distance.
func share(d *deck.Deck) {
	for i := range d.Setups {
		s := &d.Setups[i]
		for k := i - 1; k >= 0 && d.Setups[k].Bit == s.Bit && d.Setups[k].Fence == s.Fence; k-- {
			to, from := s, &d.Setups[k]
			if from.SetTo() == from.Fence {
				to, from = from, to
			}
			if from.SetTo() == from.Fence || to.SetTo() != to.Fence {
				continue
			}
			learnFence(to, deck.Kept{Name: from.Kept.Name, Code: from.Kept.Code}, from.Kept.FenceStood,
				fmt.Sprintf("the fence stays where it stood at setup %d", from.Number))
		}
	}
}

// learnFence gives a setup where its fence stood, beside what the book has of it or,
// where that is nothing, in an entry begun so; first it says from where that is known.
func learnFence(s *deck.Setup, begun deck.Kept, stood *measure.Length, says string) {
	kept := begun
	if s.Kept != nil {
		kept = *s.Kept
	}
	kept.FenceStood = stood
	kept.Learnt = append([]string{says}, kept.Learnt...)
	s.Kept = &kept
}

// fences gives setups of which the book says nothing of the fence what was learnt of it
// at an entry with other pieces, marks or heights: what a test cut teaches of a fence
// hangs on the bit and the distance alone. Of several entries the one kept last counts.
func (b *Book) fences(d *deck.Deck) {
	for i := range d.Setups {
		s := &d.Setups[i]
		if s.Kept != nil && s.Kept.FenceStood != nil {
			continue
		}
		var from *Entry
		for _, e := range b.Entries() {
			if e.Setup.Fence == s.Fence && e.Setup.Carriage == s.Carriage && e.Setup.Bit.CutsLike(s.Bit) && e.Stood.Fence != nil &&
				len(e.Stood.far(&e.Setup, d.Plan.Shop.Scale)) == 0 && (from == nil || e.Date >= from.Date) {
				from = e
			}
		}
		if from == nil || *from.Stood.Fence == s.Fence.NearEdge {
			continue
		}
		learnFence(s, deck.Kept{}, from.Stood.Fence,
			fmt.Sprintf("the fence stands where it stood after the test cut for %q (%s), the same bit and distance", from.Name, from.Code))
	}
}

// nearBit is how far the true diameters of two bits are apart at the most that may be
// one bit measured twice, or ground in between.
const nearBit = measure.Inch / 128

// offers lists the close entries of one setup.
func (b *Book) offers(s *deck.Setup) []Offer {
	var offers []Offer
	for _, e := range b.Entries() {
		shift := e.Setup.Fence.NearEdge - s.Fence.NearEdge
		bit := e.Setup.Bit.True() - s.Bit.True()
		same := s.Bit.CutsLike(e.Setup.Bit) || s.Bit.Outline == nil && e.Setup.Bit.Kind == s.Bit.Kind && bit.Abs() <= nearBit
		if same && shift.Abs() <= closeFence {
			offers = append(offers, Offer{Entry: e, Bit: bit, Shift: shift})
		}
	}
	slices.SortStableFunc(offers, func(a, b Offer) int {
		return cmp.Or(cmp.Compare(a.Bit.Abs(), b.Bit.Abs()), cmp.Compare(a.Shift.Abs(), b.Shift.Abs()), cmp.Compare(b.Entry.Date, a.Entry.Date))
	})
	return offers[:min(len(offers), mostOffers)]
}
