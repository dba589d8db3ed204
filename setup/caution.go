package setup

import (
	"strconv"
	"strings"

	"fencecard/joinery"
)

// AlwaysMind is what every card says.
const AlwaysMind = "Plug out before you touch bit or collet. Feed right to left. Eyes, ears, lungs protected; no gloves."

// Cautions gives every card its cautions, the gravest first. [Make] has done so;
// a deck that is put together otherwise needs it.
func Cautions(d *Deck) {
	apart := takenApart(d)
	for i := range d.Setups {
		for k := range d.Setups[i].Cards {
			c := &d.Setups[i].Cards[k]
			s := situation{shop: &d.Plan.Shop, card: c, apart: apart[c]}
			c.Cautions = s.cautions()
		}
	}
}

// cautions lists the rows of the table that apply. The table stands in the
// order of gravity.
func (s *situation) cautions() []Caution {
	var found []Caution
	for i, row := range cautionTable {
		if row.when(s) {
			found = append(found, Caution{i + 1, row.code, row.weight, s.fill(row.words), s.fill(row.brief), row.basis})
		}
	}
	return found
}

// situation is one card as it is run.
type situation struct {
	shop  *joinery.Shop
	card  *Card
	apart bool // the card leaves its piece in two
}

// takenApart tells the cards that cut their pieces apart.
func takenApart(d *Deck) map[*Card]bool {
	of := map[*joinery.Piece][]*Card{}
	for i := range d.Setups {
		for k := range d.Setups[i].Cards {
			c := &d.Setups[i].Cards[k]
			of[c.Piece] = append(of[c.Piece], c)
		}
	}
	found := map[*Card]bool{}
	for _, cards := range of {
		for _, p := range partings(cards) {
			found[p.card] = true
		}
	}
	return found
}

// fill puts the card's own figures into words, or general ones where it has no
// bit.
func (s *situation) fill(words string) string {
	if !strings.Contains(words, "{") {
		return words
	}
	scale, bit := s.shop.Scale, s.card.Run.Bit
	rpm, shank := "the speed for its diameter", "the shank"
	if top := bit.TopSpeed(s.shop.Speed); bit.True() > 0 && top.RPM > 0 {
		rpm = strconv.Itoa(top.RPM) + " rpm"
	}
	if bit.Shank > 0 {
		shank = scale.Say(bit.Shank)
	}
	return strings.NewReplacer(
		"{rpm}", rpm,
		"{shank}", shank,
		"{large}", scale.Say(largeBit),
		"{short}", scale.Say(s.shop.Rules.ShortPiece),
		"{hands}", scale.Say(s.shop.Rules.HandDistance),
		"{open}", scale.Say(openFence.of(scale)),
		"{wall}", scale.Say(thinWall.of(scale)),
	).Replace(words)
}

// CautionTable gives every row of the table in general words, with the figures
// of a shop, for the page that cards refer to by number.
func CautionTable(shop *joinery.Shop) []Caution {
	s := situation{shop: shop, card: &Card{Run: Run{Bit: &joinery.Bit{}}}}
	all := make([]Caution, len(cautionTable))
	for i, row := range cautionTable {
		all[i] = Caution{i + 1, row.code, row.weight, s.fill(row.words), s.fill(row.brief), row.basis}
	}
	return all
}
