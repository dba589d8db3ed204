package output

import (
	"encoding/json"
	"io"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// DeckFormat names the JSON form of a deck and its version.
const DeckFormat = "fencecard deck 1"

// JSON writes the deck as one indented JSON document.
func JSON(w io.Writer, d *deck.Deck) error {
	return indented(w, deckToJSON(d))
}

type jsonLength struct {
	MM   json.Number `json:"mm"`
	Text string      `json:"text"`
}

type jsonDeck struct {
	Format   string        `json:"format"`
	Title    string        `json:"title"`
	Unit     string        `json:"unit"`
	Setups   []jsonSetup   `json:"setups"`
	Changes  jsonChanges   `json:"changes"`
	Joints   []jsonJoint   `json:"joints,omitempty"`
	Cautions []jsonCaution `json:"cautions"`
	Warnings []jsonWarning `json:"warnings"`
}

type jsonSetup struct {
	Number  int          `json:"number"`
	Bit     jsonBit      `json:"bit"`
	Fence   jsonFence    `json:"fence"`
	Heights []jsonLength `json:"heights"`
	Cards   []jsonCard   `json:"cards"`
	Kept    *jsonKept    `json:"kept,omitempty"`
}

type jsonBit struct {
	Name     string     `json:"name"`
	Kind     string     `json:"kind"`
	Diameter jsonLength `json:"diameter"`
}

type jsonFence struct {
	NearEdge jsonLength `json:"to_near_edge"`
	Centre   jsonLength `json:"to_centre"`
	FarEdge  jsonLength `json:"to_far_edge"`
}

type jsonCard struct {
	Number    string       `json:"number"`
	Piece     string       `json:"piece"`
	Count     int          `json:"count"`
	Wood      string       `json:"wood"`
	Cut       string       `json:"cut"`
	Kind      string       `json:"kind"`
	Part      string       `json:"part,omitempty"`
	Position  int          `json:"position"`
	Positions int          `json:"positions"`
	Turned    bool         `json:"turned,omitempty"`
	Down      string       `json:"down"`
	Fence     string       `json:"fence"`
	Leads     string       `json:"leads"`
	Length    jsonLength   `json:"length"`
	Begin     string       `json:"begin"`
	End       string       `json:"end"`
	Start     *jsonStart   `json:"start"`
	Stop      *jsonStop    `json:"stop"`
	Climb     int          `json:"climb"` // from 1: cards of one climb go up the ladder together
	Heights   []jsonLength `json:"heights"`
	Cap       jsonLength   `json:"cap"`
	CapRule   string       `json:"cap_rule"`
	Ends      string       `json:"ends"`
	Note      string       `json:"note,omitempty"`
	Cautions  []int        `json:"cautions"`
}

type jsonStart struct {
	Guide            string     `json:"guide"` // what is brought to the mark: line, lead or tail
	Line             jsonLength `json:"line"`
	LeadPastEdge     jsonLength `json:"lead_past_trailing_edge"`
	LeadPastCentre   jsonLength `json:"lead_past_centre"`
	TailBeforeEdge   jsonLength `json:"tail_before_trailing_edge"`
	TailBeforeCentre jsonLength `json:"tail_before_centre"`
}

type jsonStop struct {
	Guide            string     `json:"guide"` // what is brought to the mark: line, lead or tail
	Line             jsonLength `json:"line"`
	LeadPastEdge     jsonLength `json:"lead_past_leading_edge"`
	LeadPastCentre   jsonLength `json:"lead_past_centre"`
	TailBeforeEdge   jsonLength `json:"tail_before_leading_edge"`
	TailBeforeCentre jsonLength `json:"tail_before_centre"`
}

type jsonChanges struct {
	Bits    int     `json:"bits"`
	Fences  int     `json:"fences"`
	Heights int     `json:"heights"`
	Stops   int     `json:"stops"`
	Minutes float64 `json:"minutes"`
	Proved  bool    `json:"proved"`
	Bound   float64 `json:"bound"`
}

type jsonWarning struct {
	Code  string `json:"code"`
	Piece string `json:"piece"`
	Cut   string `json:"cut"`
	Text  string `json:"text"`
}

// jsonScale writes lengths for JSON as the cards print them.
type jsonScale joinery.Scale

func (s jsonScale) length(l joinery.Length) jsonLength {
	return jsonLength{json.Number(l.MM()), joinery.Scale(s).Format(l)}
}

func (s jsonScale) lengths(ls []joinery.Length) []jsonLength {
	out := make([]jsonLength, len(ls))
	for i, l := range ls {
		out[i] = s.length(l)
	}
	return out
}

func deckToJSON(d *deck.Deck) jsonDeck {
	s := jsonScale(d.Plan.Shop.Scale)
	out := jsonDeck{
		Format: DeckFormat,
		Title:  d.Plan.Title,
		Unit:   d.Plan.Unit.String(),
		Setups: make([]jsonSetup, len(d.Setups)),
		Changes: jsonChanges{
			d.Changes.Bits, d.Changes.Fences, d.Changes.Heights, d.Changes.Stops, d.Changes.Time.Minutes(),
			d.Changes.Proved, d.Changes.Bound.Minutes(),
		},
		Joints:   s.joints(d.Joints),
		Cautions: cautionsToJSON(d),
		Warnings: warningsToJSON(d),
	}
	for i := range d.Setups {
		out.Setups[i] = s.setup(&d.Setups[i], d.Plan.Shop.Fence)
	}
	return out
}

func warningsToJSON(d *deck.Deck) []jsonWarning {
	out := make([]jsonWarning, len(d.Warnings))
	for i, w := range d.Warnings {
		out[i] = jsonWarning{w.Code, w.Piece, w.Cut, w.Text}
	}
	return out
}

func (s jsonScale) setup(in *deck.Setup, fence joinery.FenceReach) jsonSetup {
	out := jsonSetup{
		Number:  in.Number,
		Bit:     jsonBit{in.Bit.Name, in.Bit.Kind.String(), s.length(in.Bit.True())},
		Fence:   jsonFence{s.length(in.Fence.NearEdge), s.length(in.Fence.Centre), s.length(in.Fence.FarEdge)},
		Heights: s.lengths(in.Heights),
		Kept:    keptToJSON(in.Kept),
		Cards:   make([]jsonCard, len(in.Runs)),
	}
	for i := range in.Runs {
		out.Cards[i] = s.card(&in.Runs[i], fence)
	}
	return out
}

func (s jsonScale) card(r *deck.Run, fence joinery.FenceReach) jsonCard {
	out := jsonCard{
		Number: r.Number(),
		Piece:  r.Piece.Name, Count: r.Piece.Count, Wood: r.Piece.Wood.Name,
		Cut: r.Cut.Name, Kind: r.Cut.Kind.Name, Part: r.Channel.Part,
		Position: r.Step.Position, Positions: r.Step.Of, Turned: r.Step.Turned,
		Down: r.Step.Down.String(), Fence: r.Step.Fence.String(), Leads: r.Leads.String(),
		Length: s.length(r.Length),
		Begin:  r.Begin.String(), End: r.End.String(),
		Climb:   r.Climb + 1,
		Heights: s.lengths(r.Heights),
		Cap:     s.length(r.Cap.Depth), CapRule: r.Cap.Rule,
		Ends: "round", Note: r.Cut.Note, Cautions: []int{},
	}
	if r.Cut.Square {
		out.Ends = "square"
	}
	for _, caution := range r.Cautions {
		out.Cautions = append(out.Cautions, caution.Number)
	}
	if m := r.Start; m != nil {
		out.Start = &jsonStart{r.Reach(false, fence).Guide.String(), s.length(m.Line), s.length(m.LeadPastEdge), s.length(m.LeadPastCentre),
			s.length(m.TailBeforeEdge), s.length(m.TailBeforeCentre)}
	}
	if m := r.Stop; m != nil {
		out.Stop = &jsonStop{r.Reach(true, fence).Guide.String(), s.length(m.Line), s.length(m.LeadPastEdge), s.length(m.LeadPastCentre),
			s.length(m.TailBeforeEdge), s.length(m.TailBeforeCentre)}
	}
	return out
}
