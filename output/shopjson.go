package output

import (
	"io"
	"math"

	"fencecard/joinery"
	"fencecard/setup"
)

type jsonShop struct {
	Format string         `json:"format"`
	Name   string         `json:"name"`
	Unit   string         `json:"unit"`
	Bits   []jsonAllowing `json:"bits"`
}

type jsonAllowing struct {
	jsonBit
	Deepest  *jsonLength `json:"deepest"`
	Widest   *jsonLength `json:"widest"`
	RPM      *int        `json:"rpm"`
	RPMRule  string      `json:"rpm_rule"`
	RimSpeed *float64    `json:"rim_m_s"`
	Caps     []jsonCap   `json:"caps"`
}

// ShopJSON writes what a shop allows as JSON.
func ShopJSON(w io.Writer, shop *joinery.Shop, woods []joinery.Wood) error {
	s := jsonScale(shop.Scale)
	out := jsonShop{Format: "fencecard shop 1", Name: shop.Name, Unit: shop.Scale.Unit.String(), Bits: []jsonAllowing{}}
	for _, a := range setup.Allowances(shop, woods) {
		bit := jsonAllowing{
			jsonBit: jsonBit{a.Bit.Name, a.Bit.Kind.String(), s.length(a.Bit.True())},
			Deepest: s.orNull(a.Deepest), Widest: s.orNull(a.Widest), RPMRule: a.Top.Rule, Caps: []jsonCap{},
		}
		if a.Top.RPM > 0 {
			rim := math.Round(a.Rim*10) / 10
			bit.RPM, bit.RimSpeed = &a.Top.RPM, &rim
		}
		for i, c := range a.Caps {
			bit.Caps = append(bit.Caps, jsonCap{Wood: woods[i].String(), Depth: s.length(c.Depth), Rule: c.Rule})
		}
		out.Bits = append(out.Bits, bit)
	}
	return indented(w, out)
}

func (s jsonScale) orNull(l joinery.Length) *jsonLength {
	if l == 0 {
		return nil
	}
	length := s.length(l)
	return &length
}
