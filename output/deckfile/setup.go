package deckfile

import (
	"fencecard/joinery"
	"fencecard/setup/deck"
)

// Setup is one bit at one fence distance, in JSON.
type Setup struct {
	Number  int       `json:"number"`
	Bit     Bit       `json:"bit"`
	Speed   jsonSpeed `json:"speed"`
	Fence   jsonFence `json:"fence"`
	Heights []Length  `json:"heights"`
	// How high the work stands on a carriage, and the bit above the table.
	Carriage   *Length    `json:"carriage,omitempty"`
	BitHeights []Length   `json:"bit_heights,omitempty"`
	Marks      []jsonPair `json:"marks"`
	Runs       []jsonRun  `json:"runs"`
	Kept       *Kept      `json:"kept,omitempty"`
}

// jsonSpeed is the highest speed of the bit in this shop.
type jsonSpeed struct {
	RPM      int    `json:"rpm"` // 0 where nothing says one
	Rule     string `json:"rule"`
	Cautious int    `json:"more_cautious,omitempty"`
}

// Bit is a bit, in JSON.
type Bit struct {
	Name     string `json:"name"`
	Kind     string `json:"kind"`
	Diameter Length `json:"diameter"`
}

type jsonFence struct {
	NearEdge Length `json:"to_near_edge"`
	Centre   Length `json:"to_centre"`
	FarEdge  Length `json:"to_far_edge"`
}

func (s Scale) fence(f deck.Fence) jsonFence {
	return jsonFence{s.Length(f.NearEdge), s.Length(f.Centre), s.Length(f.FarEdge)}
}

// Setup is one setup in a shop.
func (s Scale) Setup(in *deck.Setup, shop *joinery.Shop) Setup {
	top := in.Bit.TopSpeed(shop.Speed)
	out := Setup{
		Number:  in.Number,
		Speed:   jsonSpeed{top.RPM, top.Rule, top.Cautious},
		Bit:     Bit{in.Bit.Name, in.Bit.Kind.String(), s.Length(in.Bit.True())},
		Fence:   s.fence(in.Fence),
		Heights: s.Lengths(in.Heights),
		Marks:   s.pairs(in.Marks),
		Kept:    s.Kept(in, in.Kept),
		Runs:    make([]jsonRun, len(in.Runs)),
	}
	if in.Carriage > 0 {
		carriage := s.Length(in.Carriage)
		out.Carriage, out.BitHeights = &carriage, s.Lengths(in.BitHeights())
	}
	for i := range in.Runs {
		out.Runs[i] = s.run(&in.Runs[i], shop.Fence)
	}
	return out
}
