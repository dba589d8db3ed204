package deckfile

import (
	"fmt"

	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// Kept is what a setup book says of a setup, in JSON.
type Kept struct {
	Name   string   `json:"name"`
	Code   string   `json:"code"`
	Notes  []string `json:"notes"`
	Learnt []string `json:"learnt"`
	// Where the fence, and the bit at its full height, stood after the test cut:
	// set in place of the setup's own, which are computed.
	FenceStood  *jsonFence `json:"fence_stood,omitempty"`
	HeightStood *Length    `json:"height_stood,omitempty"`
}

// Kept is what a setup book says of a setup; nil where it does not have it.
func (s Scale) Kept(u *deck.Setup, k *deck.Kept) *Kept {
	if k == nil {
		return nil
	}
	out := &Kept{Name: k.Name, Code: k.Code, Notes: OrEmpty(k.Notes), Learnt: OrEmpty(k.Learnt)}
	if k.FenceStood != nil {
		f := s.fence(k.Fence(u.Fence))
		out.FenceStood = &f
	}
	if k.HeightStood != nil {
		out.HeightStood = s.some(*k.HeightStood)
	}
	return out
}

// kept reads what a setup book says of a setup, and returns what is to be looked at
// when the whole setup was read.
func (r *reader) kept(s *proof.Setup) (check func()) {
	if r.null() {
		return nil
	}
	k, at, stood := &deck.Kept{}, r.here(), deck.Fence{}
	s.Kept = k
	r.object("what is kept", map[string]field{
		"name":         {read: func() { k.Name = r.word("a name") }, optional: true},
		"code":         {read: func() { k.Code = r.word("a code") }, optional: true},
		"notes":        {read: func() { k.Notes = r.words("a list of notes") }, optional: true},
		"learnt":       {read: func() { k.Learnt = r.words("a list of what was learnt") }, optional: true},
		"fence_stood":  {read: func() { stood = r.fence(); k.FenceStood = &stood.NearEdge }, optional: true},
		"height_stood": {read: func() { l := r.length(); k.HeightStood = &l }, optional: true},
	})
	return func() { r.stoodAsKept(at, s, stood) }
}

// stoodAsKept faults numbers that no setup book has.
func (r *reader) stoodAsKept(at int, s *proof.Setup, stood deck.Fence) {
	const remedy = "look at the setup book, or " + anew
	off := measure.Length(0)
	if s.Kept.FenceStood != nil {
		off = stood.NearEdge - s.Fence.NearEdge
		if stood != s.Kept.Fence(s.Fence) {
			r.fault(at, "the near edge, centre and far edge of where the fence stood are not those of one bit", remedy)
		}
	}
	if n := len(s.Heights); s.Kept.HeightStood != nil && n > 0 {
		off = max(off.Abs(), (*s.Kept.HeightStood - s.Heights[n-1]).Abs())
	}
	if off.Abs() > deck.MostLearnt {
		r.fault(at, fmt.Sprintf("after the test cut it stood %s off what was computed, which is another setup", r.scale.Say(off.Abs())), remedy)
	}
}

// mostWords bounds the lines that are kept with a setup: more mean harm.
const mostWords = 1000

func (r *reader) words(what string) []string {
	var all []string
	r.list(what, mostWords, func() { all = append(all, r.word("a text")) })
	return all
}

// OrEmpty makes an empty list of none, which is null in JSON.
func OrEmpty(texts []string) []string {
	if texts == nil {
		return []string{}
	}
	return texts
}
