package output

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
	Of    string     `json:"of"`
	Room  jsonLength `json:"room"`
	Part  jsonLength `json:"part"`
	Gap   jsonLength `json:"gap"`
	Wants jsonLength `json:"wants"`
}

type jsonReveal struct {
	Side     string     `json:"side"`
	Distance jsonLength `json:"distance"`
}

type jsonMovement struct {
	Along string     `json:"along"`
	Wood  string     `json:"wood"`
	Need  jsonLength `json:"need"`
	Room  jsonLength `json:"room"`
	Open  bool       `json:"open"`
	Short jsonLength `json:"short"`
	Fixed string     `json:"fixed"`
	Glue  jsonLength `json:"glue"`
	Whole bool       `json:"whole"`
	Basis string     `json:"basis"`
}

func (s jsonScale) joints(in []deck.Joint) []jsonJoint {
	out := make([]jsonJoint, len(in))
	for i := range in {
		out[i] = s.joint(&in[i])
	}
	return out
}

func (s jsonScale) joint(j *deck.Joint) jsonJoint {
	out := jsonJoint{Into: halfToJSON(j.Into), Part: halfToJSON(j.Part), Fits: []jsonFit{}, Reveals: []jsonReveal{}}
	for _, f := range j.Fits {
		out.Fits = append(out.Fits, jsonFit{f.Of, s.length(f.Room), s.length(f.Part), s.length(f.Gap()), s.length(f.Wants)})
	}
	for _, r := range j.Reveals {
		out.Reveals = append(out.Reveals, jsonReveal{r.Side.String(), s.length(r.Distance)})
	}
	if m := j.Movement; m != nil {
		out.Movement = &jsonMovement{
			Along: m.Along.String(), Wood: m.Wood.Name, Need: s.length(m.Need), Room: s.length(m.Room), Open: m.Open,
			Short: s.length(m.Short()), Fixed: m.Fixed.String(), Glue: s.length(m.Glue), Whole: m.Whole(), Basis: m.Change,
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
