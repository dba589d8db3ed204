package page

import (
	"html/template"

	"fencecard/output/sheets"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// setupView is the sheet of a setup.
type setupView struct {
	Number, Next int // Next is 0 after the last
	Bit          string
	SameBit      bool
	Caption      string // of the distance that is set
	Short        string // the same on the screen of a run
	Near         number
	Heights      []height
	HeightTo     string // what the heights are measured to; "" where to the top of the bit
	Carriage     string // how thick, where the heights count from the table through it
	Words        string // how many runs and pairs
	Head         template.HTML
	Groups       []groupView
}

// height is a height that the bit is set to, above the table.
type height struct {
	Rung int // its number on the setup's ladder, from 1
	At   number
}

// groupView is a pair of marks and its runs.
type groupView struct {
	groupHead
	Runs []runView
}

func (v *view) setup(s *sheets.Screen, d *deck.Deck, i int) (setupView, error) {
	u := &d.Setups[i]
	view := setupView{Number: u.Number, Bit: u.Bit.Name, SameBit: d.BitStays(i),
		Caption: "FENCE to NEAR edge", Short: "FENCE to NEAR", Near: numberOf(s.Setter, u.SetTo().NearEdge)}
	switch {
	case u.Kept != nil && u.Kept.FenceStood != nil:
		view.Caption, view.Short = "FENCE STOOD at NEAR edge", "FENCE STOOD at NEAR"
	case u.Fence.NearEdge < 0:
		view.Caption, view.Short = "FENCE, NEAR edge behind it", "FENCE, NEAR behind"
	}
	for k, h := range u.BitRungs() {
		view.Heights = append(view.Heights, height{k + 1, numberOf(s.Setter, h)})
	}
	if u.Carriage > 0 {
		view.Carriage = s.Plain(u.Carriage)
	}
	view.HeightTo = wording.HeightTo(u)
	view.Words = wording.Plural(len(u.Runs), "run")
	if pairs := wording.Pairs(u, s.Blocks); pairs != "" {
		view.Words += ", " + pairs
	}
	var err error
	if view.Head, err = drawn(s.Head(i)); err != nil {
		return view, err
	}
	groups := wording.Groups(u)
	v.Script.add(u, groups)
	err = eachGroup(s, u, groups, func(g wording.Group, head groupHead) error {
		group := groupView{groupHead: head}
		for _, r := range g.Runs {
			run, err := v.run(s, u, r, &view)
			if err != nil {
				return err
			}
			group.Runs = append(group.Runs, run)
		}
		view.Groups = append(view.Groups, group)
		return nil
	})
	return view, err
}

// groupHead stands over the runs of a pair of marks.
type groupHead struct {
	Blocks string // for which runs stop blocks are set; "" where that was said, or none are
	Marks  template.HTML
}

// eachGroup draws what stands over the runs of each pair of marks, and hands both on.
func eachGroup(s *sheets.Screen, u *deck.Setup, groups []wording.Group, each func(g wording.Group, head groupHead) error) error {
	climb := -1
	for _, g := range groups {
		var head groupHead
		if s.Blocks && g.Climb != climb {
			head.Blocks = wording.BlocksFor(u, g.Climb)
			climb = g.Climb
		}
		var err error
		if head.Marks, err = drawn(s.Marks(u, g)); err != nil {
			return err
		}
		if err := each(g, head); err != nil {
			return err
		}
	}
	return nil
}
