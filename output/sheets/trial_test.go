package sheets

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// The trial of a shaped edge is measured at its full height, over the face and up
// the edge: the round-over of 1/2 in on the bench seat takes two heights.
func TestTrialOfAShapedEdge(t *testing.T) {
	tried := 0
	for _, d := range realDecks(t) {
		for i := range d.deck.Setups {
			u := &d.deck.Setups[i]
			if !slices.ContainsFunc(u.Runs, func(r deck.Run) bool { return r.Channel.Section.Shaped() }) {
				continue
			}
			doc := printed(t, d.deck, Pages{Only: OnlySetups})
			full := newSetter(d.deck, Pages{}).Plain(u.Heights[len(u.Heights)-1])
			said := false
			for page := range doc.Pages() {
				var words []string
				for _, p := range doc.Pieces(page) {
					words = append(words, strings.TrimSpace(p.Text))
				}
				said = said || strings.Contains(strings.Join(words, " "), "up the edge "+full)
			}
			assert.True(t, said, "%s, setup %d: up the edge %s", d.Name, u.Number, full)
			tried++
		}
	}
	assert.Greater(t, tried, 3)
}

// The trial of a stopped cut is measured from the end of the work that its marks
// are set by too, wherever the head has room for it: at more than an eighth of the
// setups with marks.
func TestTrialOfAStoppedCut(t *testing.T) {
	marked, said := 0, 0
	for _, d := range realDecks(t) {
		s := newSetter(d.deck, Pages{Paper: Letter})
		for i := range d.deck.Setups {
			u := &d.deck.Setups[i]
			if len(u.Marks) == 0 {
				continue
			}
			marked++
			head, _ := s.head(d.deck, i, s.minds[u.Number], 1)
			words := saidIn(head)
			if !strings.Contains(words, "begins from") && !strings.Contains(words, "ends from") {
				continue
			}
			said++
			assert.LessOrEqual(t, float64(head.H), float64(trialHigh), "%s, setup %d", d.Name, u.Number)
			for k, m := range []*deck.PairMark{u.Marks[0].Start, u.Marks[0].Stop} {
				pair := ""
				if len(u.Marks) > 1 {
					pair = u.Marks[0].Letter + " "
				}
				if m != nil && m.Lead {
					assert.Contains(t, words, "|"+pair+[2]string{"begins", "ends"}[k]+" from lead|"+s.Plain(m.Line), "%s, setup %d", d.Name, u.Number)
				}
			}
		}
	}
	assert.Greater(t, 8*said, marked)
}

// A tenon whose play is in no height says what to do until it fits; any other whose
// mortise is known is tried in it, and one whose mortise the plan does not name in the
// real one.
func TestTrialOfATenonSaysWhatToDo(t *testing.T) {
	raised, tried, unnamed := 0, 0, 0
	for _, d := range realDecks(t) {
		s := newSetter(d.deck, Pages{})
		for i := range d.deck.Setups {
			u := &d.deck.Setups[i]
			items, _ := s.trial(d.deck, i, s.Frame.W)
			said := ""
			for _, item := range items {
				said += strings.ReplaceAll(saidIn(item), "|", " ") + " "
			}
			at := slices.IndexFunc(u.Runs, func(r deck.Run) bool { _, ok := remark.TrialTenon(&r); return ok })
			if at < 0 {
				loose := slices.ContainsFunc(u.Runs, func(r deck.Run) bool { return r.Cut.Kind.Enters && r.Joint == nil })
				if loose {
					unnamed++
				}
				assert.Equal(t, loose, strings.Contains(said, "tenon: try it in the real mortise"), "%s, setup %d", d.Name, u.Number)
				continue
			}
			if tenon, _ := remark.TrialTenon(&u.Runs[at]); tenon.Fitted < tenon.AsSet {
				raised++
				top := slices.Index(u.Heights, u.Runs[at].Heights[len(u.Runs[at].Heights)-1]) + 1
				assert.Contains(t, said, fmt.Sprintf(" at height %d: raise a hair, cut both faces, until it slides in by hand, about ", top), "%s, setup %d", d.Name, u.Number)
			} else {
				tried++
				assert.Contains(t, said, "tenon, tried in its mortise ", "%s, setup %d", d.Name, u.Number)
			}
		}
	}
	assert.Greater(t, raised, 3)
	assert.Greater(t, unnamed, 10)
	t.Logf("%d raised by hairs, %d as set", raised, tried)
}

// Every pair of settings that gives a width between them is tried once at least, at the
// last of its runs, and says which setup it is tried with: on the sheets there are as
// many such trials as the deck counts.
func TestTrialOfAWidthOfTwoSettings(t *testing.T) {
	all := 0
	for _, d := range realDecks(t) {
		s := newSetter(d.deck, Pages{})
		told := map[deck.Trial]bool{}
		for i := range d.deck.Setups {
			u := &d.deck.Setups[i]
			items, _ := s.trial(d.deck, i, s.Frame.W)
			said := ""
			for _, item := range items {
				said += strings.ReplaceAll(saidIn(item), "|", " ") + "; "
			}
			for k := range u.Runs {
				r := &u.Runs[k]
				trial, ok := deck.TrialOf(r.Channel, r.Piece.Size, r.Step)
				if !ok || r.Step.Position < r.Step.Of {
					continue
				}
				told[trial] = true
				assert.Regexp(t, `(with setups? [\d, and]+|turned, both runs) wide `+regexp.QuoteMeta(s.Plain(r.Channel.Width))+";", said, "%s, run %s", d.Name, r.Number())
			}
		}
		assert.Len(t, told, d.deck.Changes.Fits, d.Name)
		all += len(told)
	}
	assert.Greater(t, all, 20)
}

// Two tenons of different thickness that one setup cuts are both tried.
func TestTrialOfTwoTenons(t *testing.T) {
	plan, err := planfile.Read("rails.yaml", []byte(`unit: in
wood: cherry
pieces:
  - piece: leg
    size: {left-right: 2, front-back: 2, top-bottom: 26}
  - piece: rail
    size: {left-right: 18, front-back: 3/4, top-bottom: 3}
  - piece: low rail
    size: {left-right: 18, front-back: 1, top-bottom: 3}
joints:
  - mortise and tenon: rail
    tenon: rail / left
    into: leg / right
    place: {top: flush, front: flush}
    thickness: 1/4
    shoulders: {top: 1/2, bottom: 1/2}
    length: 3/4
    deeper: 1/16
  - mortise and tenon: low rail
    tenon: low rail / left
    into: leg / right
    place: {bottom: 4 up, front: flush}
    thickness: 1/2
    shoulders: {top: 1/2, bottom: 1/2}
    length: 3/4
    deeper: 1/16
`), nil)
	require.NoError(t, err)
	d, err := setup.Make(plan)
	require.NoError(t, err)
	s := newSetter(d, Pages{})
	for i := range d.Setups {
		u := &d.Setups[i]
		said := ""
		items, _ := s.trial(d, i, s.Frame.W)
		for _, item := range items {
			said += strings.ReplaceAll(saidIn(item), "|", " ") + "; "
		}
		if tenons := trialTenons(u); len(tenons) == 2 {
			assert.Regexp(t, `tenon of \d+\.\d+.* 1/4.*; tenon of \d+\.\d+.* 1/2`, said)
			return
		}
	}
	t.Fatal("no setup cuts both tenons")
}
