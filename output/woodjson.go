package output

import (
	"encoding/json"
	"io"
	"math"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/output/deckfile"
	"fencecard/output/screen"
	"fencecard/setup"
	"fencecard/setup/ladder"
)

type jsonWoods struct {
	Format string     `json:"format"`
	Woods  []jsonWood `json:"woods"`
}

type jsonWood struct {
	Name      string          `json:"name"`
	Botanical string          `json:"botanical,omitempty"`
	Group     string          `json:"group"`
	Moves     bool            `json:"moves"`
	Hardness  *jsonHardness   `json:"hardness"`
	Shrinkage *jsonDirections `json:"shrinkage"`
	Change    *jsonDirections `json:"coefficients"`
	Note      string          `json:"note,omitempty"`
	Remark    string          `json:"remark,omitempty"`
	Caps      []jsonCap       `json:"caps,omitempty"`
}

type jsonOrigin struct {
	From      timber.Origin `json:"from"`
	Published bool          `json:"published"`
}

type jsonHardness struct {
	LBF float64 `json:"lbf"`
	jsonOrigin
}

type jsonDirections struct {
	Radial     *float64 `json:"radial"`
	Tangential *float64 `json:"tangential"`
	jsonOrigin
}

type jsonCap struct {
	Bit   string           `json:"bit,omitempty"`
	Wood  string           `json:"wood,omitempty"`
	Depth *deckfile.Length `json:"depth,omitempty"`
	Bite  float64          `json:"bite,omitempty"` // of a bit that shapes edges: so much wood in mm2, in place of a depth
	Rule  string           `json:"rule"`
}

// capOf is what one pass of a bit may take.
func capOf(s deckfile.Scale, bit *joinery.Bit, c ladder.Cap) jsonCap {
	if bit.Outline != nil {
		return jsonCap{Bite: math.Round(c.Depth.Millimetres()*1000) / 1000, Rule: c.Rule}
	}
	depth := s.Length(c.Depth)
	return jsonCap{Depth: &depth, Rule: c.Rule}
}

// WoodsJSON writes the table of woods as JSON.
func WoodsJSON(w io.Writer, woods []timber.Wood) error {
	out := jsonWoods{Format: "fencecard woods 1", Woods: make([]jsonWood, len(woods))}
	for i, wood := range woods {
		out.Woods[i] = woodToJSON(wood)
	}
	return deckfile.Indented(w, out)
}

// WoodJSON writes one wood as JSON, with its caps for each bit of a shop.
func WoodJSON(w io.Writer, wood timber.Wood, shop *joinery.Shop, remark string) error {
	out, s := woodToJSON(wood), deckfile.Scale(shop.Scale)
	out.Remark = remark
	for _, a := range setup.Allowances(shop, []timber.Wood{wood}) {
		most := capOf(s, a.Bit, a.Caps[0])
		most.Bit = a.Bit.Name
		out.Caps = append(out.Caps, most)
	}
	return deckfile.Indented(w, out)
}

func woodToJSON(wood timber.Wood) jsonWood {
	out := jsonWood{
		Name: wood.Name, Botanical: wood.Botanical, Group: string(wood.Group), Moves: wood.Moves(), Note: wood.Note,
		Shrinkage: directions(wood.ShrinkR, wood.ShrinkT, wood.ShrinkFrom),
		Change:    directions(wood.CR, wood.CT, wood.CFrom),
	}
	if wood.Known() {
		out.Hardness = &jsonHardness{wood.Hardness, jsonOrigin{wood.HardnessFrom, wood.HardnessFrom.Published()}}
	}
	return out
}

func directions(radial, tangential float64, from timber.Origin) *jsonDirections {
	if from == "" {
		return nil
	}
	return &jsonDirections{known(radial), known(tangential), jsonOrigin{from, from.Published()}}
}

// known is nil for a figure that is not known.
func known(f float64) *float64 {
	if f == 0 {
		return nil
	}
	return &f
}

// EMCJSON writes a moisture content, to a hundredth of a percent.
func EMCJSON(w io.Writer, air timber.Temperature, humidity, moisture float64) error {
	return deckfile.Indented(w, struct {
		Moisture    float64 `json:"moisture"`
		Temperature string  `json:"temperature"`
		Humidity    float64 `json:"humidity"`
	}{hundredth(moisture), air.String(), humidity})
}

func hundredth(f float64) float64 { return math.Round(f*100) / 100 }

type jsonChange struct {
	Wood       string          `json:"wood"`
	Width      deckfile.Length `json:"width"`
	From       float64         `json:"from"`
	To         float64         `json:"to"`
	Tangential *jsonMoving     `json:"tangential"`
	Radial     *jsonMoving     `json:"radial"`
}

// jsonMoving is a change; negative where the wood shrinks.
type jsonMoving struct {
	deckfile.Length
	Becomes deckfile.Length `json:"becomes"`
	By      string          `json:"by"`
	Figure  float64         `json:"figure,omitempty"`
	Origin  timber.Origin   `json:"from,omitempty"`
}

// ChangeJSON writes a change of width as JSON.
func ChangeJSON(w io.Writer, c screen.WoodChange) error {
	return deckfile.Indented(w, jsonChange{
		Wood: c.Wood.Name, Width: changed(c, c.Width), From: hundredth(c.From), To: hundredth(c.To),
		Tangential: movingOf(c, c.Tangential), Radial: movingOf(c, c.Radial),
	})
}

func changed(c screen.WoodChange, l measure.Length) deckfile.Length {
	return deckfile.Length{MM: json.Number(l.MM()), Text: c.Text(l)}
}

func movingOf(c screen.WoodChange, m *timber.Movement) *jsonMoving {
	if m == nil {
		return nil
	}
	return &jsonMoving{changed(c, m.Change), changed(c, c.Width+m.Change), m.By, m.Figure, m.From}
}
