// Package deckcode knows decks and runs by what they say: the code that every paper
// of a deck bears, and the key of a run that is done as before.
package deckcode

import (
	"crypto/sha256"
	"encoding/base32"
	"encoding/hex"
	"fmt"
	"io"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// Letters writes codes: digits and letters without i, l, o and u, which are
// misread.
var Letters = base32.NewEncoding("0123456789abcdefghjkmnpqrstvwxyz").WithPadding(base32.NoPadding)

// codeLength is how many letters the code of a deck has: among a hundred decks
// made of one plan, two share a code once in two hundred plans.
const codeLength = 4

// Seal gives a deck its code, from its setups, runs, numbers and cards: what
// one card says of a number, all papers with that code say: the finished sizes of the
// pieces count, to which they are sawn by the run sheet, and where the fence or the
// bit stood after a test cut counts, being set in place of the computed number.
// Titles, notes, remarks and all else that a setup book knows do not count.
func Seal(d *deck.Deck) {
	sum := sha256.New()
	contents(sum, d)
	d.Code = Letters.EncodeToString(sum.Sum(nil))[:codeLength]
}

// Is reports whether a text is written as the code of a deck is; capitals do
// not count.
func Is(text string) bool {
	_, err := Letters.DecodeString(strings.ToLower(text))
	return err == nil && len(text) == codeLength
}

// contents writes what counts of a deck, one fact a line.
func contents(w io.Writer, d *deck.Deck) {
	fmt.Fprintf(w, "fencecard deck 2 %s\n", d.Plan.Unit)
	for i := range d.Setups {
		s := &d.Setups[i]
		fmt.Fprintf(w, "setup %d bit %q %s fence %s carriage %s heights%s\n",
			s.Number, s.Bit.Name, s.Bit.True().MM(), s.Fence.NearEdge.MM(), s.Carriage.MM(), Lengths(s.Heights))
		Shapes(w, s.Bit)
		learnt(w, s.Kept)
		for k := range s.Runs {
			run(w, &s.Runs[k])
		}
	}
	for _, c := range d.Cards() {
		fmt.Fprintf(w, "card %d %q %d, %s", c.Number, c.Piece.Name, c.Piece.Count, strings.TrimSpace(Lengths(c.Piece.Size[:])))
		for _, h := range c.ByHand {
			fmt.Fprintf(w, " %q %q", h.Cut.Name, h.Cut.By)
		}
		fmt.Fprintln(w)
	}
}

// learnt writes the numbers that stand in the place of computed ones.
func learnt(w io.Writer, k *deck.Kept) {
	if k == nil {
		return
	}
	if l := k.FenceStood; l != nil {
		fmt.Fprintf(w, "fence stood %s\n", l.MM())
	}
	if l := k.HeightStood; l != nil {
		fmt.Fprintf(w, "full height stood %s\n", l.MM())
	}
}

// saysLength is how many letters the key of what a run says has.
const saysLength = 16

// Says is the key of what a run of a setup says, 16 hexadecimal digits: its bit
// and fence, its sides, marks and heights, and not its number. A run whose key is
// the same after the plan was edited is done as before, however many pieces there
// are.
func Says(s *deck.Setup, r *deck.Run) string {
	sum := sha256.New()
	fmt.Fprintf(sum, "fencecard run 1 bit %q %s fence %s carriage %s\n", s.Bit.Name, s.Bit.True().MM(), s.Fence.NearEdge.MM(), s.Carriage.MM())
	Shapes(sum, s.Bit)
	says(sum, r)
	return hex.EncodeToString(sum.Sum(nil))[:saysLength]
}

// run writes what counts of a run.
func run(w io.Writer, r *deck.Run) {
	fmt.Fprintf(w, "run %s: %d ", r.Number(), r.Piece.Count)
	says(w, r)
}

// says writes what a run says of each of its pieces.
func says(w io.Writer, r *deck.Run) {
	back := measure.Length(0)
	if r.Nibble != nil {
		back = r.Nibble.DrawBack
	}
	fmt.Fprintf(w, "%q, %q %q; down %s, fence %s, leads %s, %s long; pair %q, %s %s to %s %s; guided %t, %d from %s, hole %v, raised %t; heights%s\n",
		r.Piece.Name, r.Cut.Name, r.Channel.Part,
		r.Step.Down, r.Step.Fence, r.Leads, r.Length.MM(),
		r.Pair, r.Begin, r.A.MM(), r.End, r.B.MM(), r.Guided, r.Sideways(), back.MM(), r.Hole != nil, r.Raised, Lengths(r.Heights))
	if r.Screw != nil {
		fmt.Fprintf(w, "screw %s\n", r.Screw.FromMiddle.MM())
	}
}

// Shapes writes the outline of a bit that shapes edges: of another outline the same
// heights leave another edge.
func Shapes(w io.Writer, bit *joinery.Bit) {
	o := bit.Outline
	if o == nil {
		return
	}
	fmt.Fprintf(w, "pilot %s shape %d radius %s%s\n", bit.Pilot.MM(), o.Shape, o.Radius.MM(), Lengths(o.Lengths()))
}

// Lengths writes lengths in exact millimetres, a space before each.
func Lengths(ls []measure.Length) string {
	var b strings.Builder
	for _, l := range ls {
		b.WriteString(" " + l.MM())
	}
	return b.String()
}
