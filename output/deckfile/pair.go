package deckfile

import "fencecard/setup/deck"

// jsonPair is a pair of marks; the measures in which its runs differ are left out.
type jsonPair struct {
	Letter string         `json:"letter"`
	Start  *jsonPairStart `json:"start"`
	Stop   *jsonPairStop  `json:"stop"`
}

type jsonPairStart struct {
	Guide            string  `json:"guide"`
	Line             *Length `json:"line,omitempty"`
	LeadPastEdge     *Length `json:"lead_past_trailing_edge,omitempty"`
	LeadPastCentre   *Length `json:"lead_past_centre,omitempty"`
	TailBeforeEdge   *Length `json:"tail_before_trailing_edge,omitempty"`
	TailBeforeCentre *Length `json:"tail_before_centre,omitempty"`
}

type jsonPairStop struct {
	Guide            string  `json:"guide"`
	Line             *Length `json:"line,omitempty"`
	LeadPastEdge     *Length `json:"lead_past_leading_edge,omitempty"`
	LeadPastCentre   *Length `json:"lead_past_centre,omitempty"`
	TailBeforeEdge   *Length `json:"tail_before_leading_edge,omitempty"`
	TailBeforeCentre *Length `json:"tail_before_centre,omitempty"`
}

func (s Scale) pairs(in []deck.Pair) []jsonPair {
	out := make([]jsonPair, len(in))
	for i, p := range in {
		out[i] = jsonPair{Letter: p.Letter, Start: s.pairStart(p.Start)}
		if stop := s.pairStart(p.Stop); stop != nil {
			out[i].Stop = (*jsonPairStop)(stop)
		}
	}
	return out
}

func (s Scale) pairStart(m *deck.PairMark) *jsonPairStart {
	if m == nil {
		return nil
	}
	out := &jsonPairStart{Guide: m.Guide.String()}
	if m.Lead {
		out.Line, out.LeadPastEdge, out.LeadPastCentre = s.some(m.Line), s.some(m.LeadPastEdge), s.some(m.LeadPastCentre)
	}
	if m.Tail {
		out.TailBeforeEdge, out.TailBeforeCentre = s.some(m.TailBeforeEdge), s.some(m.TailBeforeCentre)
	}
	return out
}
