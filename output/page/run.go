package page

import (
	"html/template"
	"slices"

	"fencecard/output/sheets"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckcode"
	"fencecard/setup/remark/trade"
)

// firstWords come before anything that stands on the page.
const firstWords = trade.Deference

// runView is one run.
type runView struct {
	Number, Says, Piece, Cut  string
	Setup, Count              int
	Down, Fence, Leads        string
	Up, Toward                string
	Short                     string // what the distance of the fence is called in short
	Near                      number
	Heights                   []height
	HeightTo                  string // as of its setup
	Letter                    string // of its pair of marks
	Marks                     []markView
	Stops                     []string // on stops, and that there are no marks
	Lines                     []string // what is done besides
	Cautions                  []deck.Caution
	Row, Lies, Above, Section template.HTML
	Questions                 Questions
	Asked                     bool
}

// markView is the start or the stop of a run.
type markView struct {
	Name, Class    string // "START", "BACK STOP" or "STOP"
	At             *number
	Set, For, From string // or, without a number, what is done instead in Set
	Others         string // the other ways to measure it
}

func (v *view) run(s *sheets.Screen, u *deck.Setup, r *deck.Run, of *setupView) (runView, error) {
	view := runView{Number: r.Number(), Says: deckcode.Says(u, r), Piece: r.Piece.Name, Cut: wording.CutName(r), Setup: u.Number, Count: r.Piece.Count,
		Down: sheets.Shout(r, r.Step.Down), Fence: sheets.Shout(r, r.Step.Fence), Leads: sheets.Shout(r, r.Leads),
		Up: sheets.Shout(r, r.Up()), Toward: sheets.Shout(r, r.TowardYou()), Short: of.Short, Near: of.Near, HeightTo: of.HeightTo, Letter: r.Pair}
	for _, n := range wording.RungNames(u, r) {
		view.Heights = append(view.Heights, of.Heights[n-1])
	}
	view.Questions, view.Asked = v.About.Questions[r.Number()]
	view.marks(s, u, r)
	view.said(s, u, r)
	for _, part := range []struct {
		of   *template.HTML
		draw func() (sheets.Drawing, error)
	}{
		{&view.Row, func() (sheets.Drawing, error) { return s.Row(u, r) }},
		{&view.Lies, func() (sheets.Drawing, error) { return s.Lies(r) }},
		{&view.Above, func() (sheets.Drawing, error) { return s.FromAbove(u, r) }},
		{&view.Section, func() (sheets.Drawing, error) { return s.Section(u, r) }},
	} {
		var err error
		if *part.of, err = drawn(part.draw()); err != nil {
			return view, err
		}
	}
	return view, nil
}

// marks are the start and the stop, as the sheet sets them.
func (view *runView) marks(s *sheets.Screen, u *deck.Setup, r *deck.Run) {
	pair := u.Pair(r.Pair)
	if pair == nil {
		view.Stops = append(view.Stops, wording.NoMarks(u))
		return
	}
	var last []markView // start and stop are looked at for every piece, the back stop when it is set
	for i, m := range []*deck.PairMark{pair.Start, pair.Stop} {
		stop := i == 1
		mark := markView{Name: [2]string{"START", "STOP"}[i], Class: [2]string{"start", "stop"}[i]}
		if m == nil {
			mark.Set = "no mark: " + wording.Unmarked(u, stop)
			view.Marks = append(view.Marks, mark)
			continue
		}
		marking := wording.MarkingOf(r, stop, m.Guide, s.Blocks)
		if marking.Clamped() { // it has not the sign of a mark
			mark.Class += " clamped"
		}
		at := numberOf(s.Setter, marking.Length(&m.Mark))
		mark.At, mark.Set, mark.For, mark.From, mark.Others = &at, marking.Set, marking.For, marking.From, marking.Others(m, s.Plain)
		view.Marks = append(view.Marks, mark)
		if behind, asked := marking.Behind(); asked {
			at := numberOf(s.Setter, behind.Length(&m.Mark))
			last = append(last, markView{Name: "BACK STOP", Class: "behind", At: &at, Set: behind.Set, For: behind.For, From: behind.From})
		}
		if line := marking.OffFence(s.Reach, r); line != "" {
			view.Stops = append(view.Stops, line)
		}
	}
	view.Marks = append(view.Marks, last...)
}

// said is what is minded at the run and done besides.
func (view *runView) said(s *sheets.Screen, u *deck.Setup, r *deck.Run) {
	mind := s.Mind(u)
	for _, c := range mind.All {
		if c.Code == "shank-and-collet" || slices.Contains(c.Runs, r) {
			view.Cautions = append(view.Cautions, c.Caution)
		}
	}
	view.Cautions = append(view.Cautions, mind.Pairs[r.Pair]...)
	view.Cautions = append(view.Cautions, mind.Own[r]...)
	if words := wording.Crossing(r, s.Scale, s.Push()); words != "" {
		view.Lines = append(view.Lines, words)
	}
	if u.Recessed() {
		view.Lines = append(view.Lines, wording.RecessFirst)
	}
	if p := u.Pair(r.Pair); p != nil && wording.BroughtUp(p, s.Blocks) {
		view.Stops = append(view.Stops, wording.BringingUp(u, s.Blocks))
	}
	if wording.SquaredEnds(r) {
		view.Lines = append(view.Lines, wording.SquareOne)
	}
	if words := wording.ScrewPlace(r, s.Scale); words != "" {
		view.Lines = append(view.Lines, words)
	}
	view.Lines = append(view.Lines, wording.JointLines(r, s.Scale)...)
	if r.Cut.Note != "" {
		view.Lines = append(view.Lines, "Note: "+r.Cut.Note)
	}
}
