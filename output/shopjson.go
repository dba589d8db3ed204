package output

import (
	"io"
	"math"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/output/deckfile"
	"fencecard/setup"
)

type jsonShop struct {
	Format string         `json:"format"`
	Name   string         `json:"name"`
	Unit   string         `json:"unit"`
	Bits   []jsonAllowing `json:"bits"`
}

type jsonAllowing struct {
	deckfile.Bit
	Deepest  *deckfile.Length `json:"deepest"`
	Widest   *deckfile.Length `json:"widest"`
	RPM      *int             `json:"rpm"`
	RPMRule  string           `json:"rpm_rule"`
	RimSpeed *float64         `json:"rim_m_s"`
	Caps     []jsonCap        `json:"caps"`
}

// ShopJSON writes what a shop allows as JSON.
func ShopJSON(w io.Writer, shop *joinery.Shop, woods []timber.Wood) error {
	s := deckfile.Scale(shop.Scale)
	out := jsonShop{Format: "fencecard shop 1", Name: shop.Name, Unit: shop.Scale.Unit.String(), Bits: []jsonAllowing{}}
	for _, a := range setup.Allowances(shop, woods) {
		bit := jsonAllowing{
			Bit:     deckfile.Bit{Name: a.Bit.Name, Kind: a.Bit.Kind.String(), Diameter: s.Length(a.Bit.True())},
			Deepest: orNull(s, a.Deepest), Widest: orNull(s, a.Widest), RPMRule: a.Top.Rule, Caps: []jsonCap{},
		}
		if a.Top.RPM > 0 {
			rim := math.Round(a.Rim*10) / 10
			bit.RPM, bit.RimSpeed = &a.Top.RPM, &rim
		}
		for i, c := range a.Caps {
			most := capOf(s, a.Bit, c)
			most.Wood = woods[i].String()
			bit.Caps = append(bit.Caps, most)
		}
		out.Bits = append(out.Bits, bit)
	}
	return deckfile.Indented(w, out)
}

func orNull(s deckfile.Scale, l measure.Length) *deckfile.Length {
	if l == 0 {
		return nil
	}
	length := s.Length(l)
	return &length
}
