package deckfile

import (
	"encoding/json"
	"io"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// Format names the JSON form of a deck and its version.
const Format = "fencecard deck 1"

// Write writes the deck as one indented JSON document.
func Write(w io.Writer, d *deck.Deck) error {
	return Indented(w, deckToJSON(d))
}

type Length struct {
	MM   json.Number `json:"mm"`
	Text string      `json:"text"`
}

type jsonDeck struct {
	Format   string        `json:"format"`
	Title    string        `json:"title"`
	Unit     string        `json:"unit"`
	Setups   []Setup       `json:"setups"`
	Changes  jsonChanges   `json:"changes"`
	Joints   []jsonJoint   `json:"joints,omitempty"`
	Cautions []jsonCaution `json:"cautions"`
	Warnings []Warning     `json:"warnings"`
}

type Setup struct {
	Number  int        `json:"number"`
	Bit     Bit        `json:"bit"`
	Fence   jsonFence  `json:"fence"`
	Heights []Length   `json:"heights"`
	Cards   []jsonCard `json:"cards"`
	Kept    *Kept      `json:"kept,omitempty"`
}

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

type jsonCard struct {
	Number    string     `json:"number"`
	Piece     string     `json:"piece"`
	Count     int        `json:"count"`
	Wood      string     `json:"wood"`
	Cut       string     `json:"cut"`
	Kind      string     `json:"kind"`
	Part      string     `json:"part,omitempty"`
	Position  int        `json:"position"`
	Positions int        `json:"positions"`
	Turned    bool       `json:"turned,omitempty"`
	Down      string     `json:"down"`
	Fence     string     `json:"fence"`
	Leads     string     `json:"leads"`
	Length    Length     `json:"length"`
	Begin     string     `json:"begin"`
	End       string     `json:"end"`
	Start     *jsonStart `json:"start"`
	Stop      *jsonStop  `json:"stop"`
	Climb     int        `json:"climb"` // from 1: cards of one climb go up the ladder together
	Heights   []Length   `json:"heights"`
	Cap       Length     `json:"cap"`
	CapRule   string     `json:"cap_rule"`
	Ends      string     `json:"ends"`
	Note      string     `json:"note,omitempty"`
	Cautions  []int      `json:"cautions"`
}

type jsonStart struct {
	Guide            string `json:"guide"` // what is brought to the mark: line, lead or tail
	Line             Length `json:"line"`
	LeadPastEdge     Length `json:"lead_past_trailing_edge"`
	LeadPastCentre   Length `json:"lead_past_centre"`
	TailBeforeEdge   Length `json:"tail_before_trailing_edge"`
	TailBeforeCentre Length `json:"tail_before_centre"`
}

type jsonStop struct {
	Guide            string `json:"guide"` // what is brought to the mark: line, lead or tail
	Line             Length `json:"line"`
	LeadPastEdge     Length `json:"lead_past_leading_edge"`
	LeadPastCentre   Length `json:"lead_past_centre"`
	TailBeforeEdge   Length `json:"tail_before_leading_edge"`
	TailBeforeCentre Length `json:"tail_before_centre"`
}

type jsonChanges struct {
	Bits    int     `json:"bits"`
	Fences  int     `json:"fences"`
	Heights int     `json:"heights"`
	Stops   int     `json:"stops"`
	Runs    int     `json:"runs"`
	Fits    int     `json:"fits"`
	Minutes float64 `json:"minutes"`
	Proved  bool    `json:"proved"`
	Bound   float64 `json:"bound"`
}

type Warning struct {
	Code  string `json:"code"`
	Piece string `json:"piece"`
	Cut   string `json:"cut"`
	Text  string `json:"text"`
}

// Scale writes lengths for JSON as the cards print them.
type Scale joinery.Scale

func (s Scale) Length(l joinery.Length) Length {
	return Length{json.Number(l.MM()), joinery.Scale(s).Format(l)}
}

func (s Scale) Lengths(ls []joinery.Length) []Length {
	out := make([]Length, len(ls))
	for i, l := range ls {
		out[i] = s.Length(l)
	}
	return out
}

func deckToJSON(d *deck.Deck) jsonDeck {
	s := Scale(d.Plan.Shop.Scale)
	out := jsonDeck{
		Format: Format,
		Title:  d.Plan.Title,
		Unit:   d.Plan.Unit.String(),
		Setups: make([]Setup, len(d.Setups)),
		Changes: jsonChanges{
			d.Changes.Bits, d.Changes.Fences, d.Changes.Heights, d.Changes.Stops, d.Changes.Runs, d.Changes.Fits, d.Changes.Time.Minutes(),
			d.Changes.Proved, d.Changes.Bound.Minutes(),
		},
		Joints:   s.joints(d.Joints),
		Cautions: cautionsToJSON(d),
		Warnings: warningsToJSON(d),
	}
	for i := range d.Setups {
		out.Setups[i] = s.Setup(&d.Setups[i], d.Plan.Shop.Fence)
	}
	return out
}

func warningsToJSON(d *deck.Deck) []Warning {
	out := make([]Warning, len(d.Warnings))
	for i, w := range d.Warnings {
		out[i] = Warning{w.Code, w.Piece, w.Cut, w.Text}
	}
	return out
}

func (s Scale) Setup(in *deck.Setup, fence joinery.FenceReach) Setup {
	out := Setup{
		Number:  in.Number,
		Bit:     Bit{in.Bit.Name, in.Bit.Kind.String(), s.Length(in.Bit.True())},
		Fence:   jsonFence{s.Length(in.Fence.NearEdge), s.Length(in.Fence.Centre), s.Length(in.Fence.FarEdge)},
		Heights: s.Lengths(in.Heights),
		Kept:    KeptOf(in.Kept),
		Cards:   make([]jsonCard, len(in.Runs)),
	}
	for i := range in.Runs {
		out.Cards[i] = s.card(&in.Runs[i], fence)
	}
	return out
}

func (s Scale) card(r *deck.Run, fence joinery.FenceReach) jsonCard {
	out := jsonCard{
		Number: r.Number(),
		Piece:  r.Piece.Name, Count: r.Piece.Count, Wood: r.Piece.Wood.Name,
		Cut: r.Cut.Name, Kind: r.Cut.Kind.Name, Part: r.Channel.Part,
		Position: r.Step.Position, Positions: r.Step.Of, Turned: r.Step.Turned,
		Down: r.Step.Down.String(), Fence: r.Step.Fence.String(), Leads: r.Leads.String(),
		Length: s.Length(r.Length),
		Begin:  r.Begin.String(), End: r.End.String(),
		Climb:   r.Climb + 1,
		Heights: s.Lengths(r.Heights),
		Cap:     s.Length(r.Cap.Depth), CapRule: r.Cap.Rule,
		Ends: "round", Note: r.Cut.Note, Cautions: []int{},
	}
	if r.Cut.Square {
		out.Ends = "square"
	}
	for _, caution := range r.Cautions {
		out.Cautions = append(out.Cautions, caution.Number)
	}
	if m := r.Start; m != nil {
		out.Start = &jsonStart{r.Reach(false, fence).Guide.String(), s.Length(m.Line), s.Length(m.LeadPastEdge), s.Length(m.LeadPastCentre),
			s.Length(m.TailBeforeEdge), s.Length(m.TailBeforeCentre)}
	}
	if m := r.Stop; m != nil {
		out.Stop = &jsonStop{r.Reach(true, fence).Guide.String(), s.Length(m.Line), s.Length(m.LeadPastEdge), s.Length(m.LeadPastCentre),
			s.Length(m.TailBeforeEdge), s.Length(m.TailBeforeCentre)}
	}
	return out
}
