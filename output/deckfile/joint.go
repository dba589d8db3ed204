package deckfile

import (
	"fencecard/setup/deck"
)

type jsonJoint struct {
	Into     jsonHalf      `json:"into"`
	Part     jsonHalf      `json:"part"`
	Fits     []jsonFit     `json:"fits"`
	Reveals  []jsonReveal  `json:"reveals"`
	Movement *jsonMovement `json:"movement"`
}

type jsonHalf struct {
	Piece string `json:"piece"`
	Cut   string `json:"cut,omitempty"`
}

type jsonFit struct {
	Of    string `json:"of"`
	Room  Length `json:"room"`
	Part  Length `json:"part"`
	Gap   Length `json:"gap"`
	Wants Length `json:"wants"`
}

type jsonReveal struct {
	Side     string `json:"side"`
	Distance Length `json:"distance"`
}

type jsonMovement struct {
	Along string `json:"along"`
	Wood  string `json:"wood"`
	Need  Length `json:"need"`
	Room  Length `json:"room"`
	Open  bool   `json:"open"`
	Short Length `json:"short"`
	Fixed string `json:"fixed"`
	Glue  Length `json:"glue"`
	Whole bool   `json:"whole"`
	Basis string `json:"basis"`
}

func (s Scale) joints(in []deck.Joint) []jsonJoint {
	out := make([]jsonJoint, len(in))
	for i := range in {
		out[i] = s.joint(&in[i])
	}
	return out
}

func (s Scale) joint(j *deck.Joint) jsonJoint {
	out := jsonJoint{Into: halfToJSON(j.Into), Part: halfToJSON(j.Part), Fits: []jsonFit{}, Reveals: []jsonReveal{}}
	for _, f := range j.Fits {
		out.Fits = append(out.Fits, jsonFit{f.Of, s.Length(f.Room), s.Length(f.Part), s.Length(f.Gap()), s.Length(f.Wants)})
	}
	for _, r := range j.Reveals {
		out.Reveals = append(out.Reveals, jsonReveal{r.Side.String(), s.Length(r.Distance)})
	}
	if m := j.Movement; m != nil {
		out.Movement = &jsonMovement{
			Along: m.Along.String(), Wood: m.Wood.Name, Need: s.Length(m.Need), Room: s.Length(m.Room), Open: m.Open,
			Short: s.Length(m.Short()), Fixed: m.Fixed.String(), Glue: s.Length(m.Glue), Whole: m.Whole(), Basis: m.Change,
		}
	}
	return out
}

func halfToJSON(h deck.Half) jsonHalf {
	out := jsonHalf{Piece: h.Piece.Name}
	if h.Cut != nil {
		out.Cut = h.Cut.Name
	}
	return out
}
