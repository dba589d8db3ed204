package deckfile

import (
	"math"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// jsonRun is one kind of piece once over the bit.
type jsonRun struct {
	Number    string      `json:"number"`
	Card      int         `json:"card,omitempty"`
	Marks     *string     `json:"marks"`
	Piece     string      `json:"piece"`
	Count     int         `json:"count"`
	Wood      string      `json:"wood"`
	Cut       string      `json:"cut"`
	Kind      string      `json:"kind"`
	Part      string      `json:"part,omitempty"`
	Position  int         `json:"position"`
	Positions int         `json:"positions"`
	Turned    bool        `json:"turned"`
	Down      string      `json:"down"`
	Fence     string      `json:"fence"`
	Leads     string      `json:"leads"`
	Up        string      `json:"up"`
	TowardYou string      `json:"toward_you"`
	Near      string      `json:"near"` // what format 2 called it first; elsewhere the near edge is the one at the fence
	Shown     *jsonShown  `json:"shown,omitempty"`
	Length    Length      `json:"length"`
	Begin     string      `json:"begin"`
	End       string      `json:"end"`
	Start     *jsonStart  `json:"start"`
	Stop      *jsonStop   `json:"stop"`
	Pivot     *jsonPivot  `json:"pivot"`
	StartHole *jsonHole   `json:"start_hole,omitempty"`
	Screw     *jsonScrew  `json:"screw,omitempty"`
	Raised    bool        `json:"raised,omitempty"`
	Guided    bool        `json:"guided"`
	Nibble    *jsonNibble `json:"nibble"`
	Climb     int         `json:"climb"` // from 1: runs of one climb go up the ladder together
	Heights   []Length    `json:"heights"`
	Areas     []float64   `json:"areas,omitempty"` // in mm2, the wood of each pass of a shaped edge
	Bite      float64     `json:"bite,omitempty"`  // in mm2, the most of one such pass, in place of a cap
	Cap       *Length     `json:"cap,omitempty"`
	CapRule   string      `json:"cap_rule"`
	Ends      string      `json:"ends"`
	Note      string      `json:"note,omitempty"`
	Cautions  []int       `json:"cautions"`
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

// jsonPivot is what a drop takes at the run's full height.
type jsonPivot struct {
	Tilt  float64 `json:"tilt_degrees"`
	Early Length  `json:"early"`
}

// jsonHole is the centre of a start hole, from the end that leads and from the
// side at the fence.
type jsonHole struct {
	FromLead  Length `json:"from_leads"`
	FromFence Length `json:"from_fence"`
}

// jsonScrew is where a screw goes in its slot: how far from the slot's middle,
// away from the fixed line.
type jsonScrew struct {
	FromMiddle Length `json:"from_middle"`
}

// jsonNibble is how the waste at an end is taken.
type jsonNibble struct {
	Passes   int    `json:"passes"`
	DrawBack Length `json:"draw_back"`
}

// jsonShown is what the sides are called at the bench.
type jsonShown struct {
	Down      string `json:"down"`
	Fence     string `json:"fence"`
	Leads     string `json:"leads"`
	Up        string `json:"up"`
	TowardYou string `json:"toward_you"`
	Near      string `json:"near"`
}

// shown is nil where nothing is pencilled on the piece.
func shown(r *deck.Run) *jsonShown {
	if r.Piece.Called == (joinery.Pencilled{}) {
		return nil
	}
	return &jsonShown{r.Shown(r.Step.Down), r.Shown(r.Step.Fence), r.Shown(r.Leads), r.Shown(r.Up()), r.Shown(r.TowardYou()), r.Shown(r.TowardYou())}
}

func (s Scale) run(r *deck.Run, fence joinery.FenceReach) jsonRun {
	out := jsonRun{
		Number: r.Number(),
		Piece:  r.Piece.Name, Count: r.Piece.Count, Wood: r.Piece.Wood.Name,
		Cut: r.Cut.Name, Kind: r.Cut.Kind.Common(), Part: r.Channel.Part,
		Position: r.Step.Position, Positions: r.Step.Of, Turned: r.Step.Turned,
		Down: r.Step.Down.String(), Fence: r.Step.Fence.String(), Leads: r.Leads.String(),
		Up: r.Up().String(), TowardYou: r.TowardYou().String(), Near: r.TowardYou().String(),
		Length: s.Length(r.Length),
		Begin:  r.Begin.String(), End: r.End.String(),
		Guided:  r.Guided,
		Raised:  r.Raised,
		Shown:   shown(r),
		Climb:   r.Climb + 1,
		Heights: s.Lengths(r.Heights),
		CapRule: r.Cap.Rule,
		Ends:    "round", Note: r.Cut.Note, Cautions: []int{},
	}
	if areas := r.Areas(); areas != nil {
		out.Bite = thousandth(r.Cap.Depth.Millimetres())
		for _, area := range areas {
			out.Areas = append(out.Areas, thousandth(area))
		}
	} else {
		most := s.Length(r.Cap.Depth)
		out.Cap = &most
	}
	if h := r.Hole; h != nil {
		out.StartHole = &jsonHole{s.Length(h.FromLead), s.Length(h.FromFence)}
	}
	if screw := r.Screw; screw != nil {
		out.Screw = &jsonScrew{s.Length(screw.FromMiddle)}
	}
	if n := r.Nibble; n != nil {
		out.Nibble = &jsonNibble{n.Passes, s.Length(n.DrawBack)}
	}
	if r.Cut.Square {
		out.Ends = "square"
	}
	for _, caution := range r.Cautions {
		out.Cautions = append(out.Cautions, caution.Number)
	}
	if r.Pair != "" {
		out.Marks = &r.Pair
	}
	if r.Pivot != nil {
		out.Pivot = &jsonPivot{math.Round(r.Pivot.Tilt*10) / 10, s.Length(r.Pivot.Early)}
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

// thousandth rounds an area to what a file says of it.
func thousandth(area float64) float64 { return math.Round(area*1000) / 1000 }
