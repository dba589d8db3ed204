package screen

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/whatif"
)

// Explain writes why each setup is there and which small change to the plan
// would spare one, for a screen of 80 columns.
func Explain(w io.Writer, d *deck.Deck, all []whatif.Explanation) error {
	t := &textWriter{scale: d.Plan.Shop.Scale}
	t.line(0, "WHY EACH SETUP IS THERE")
	var untried []string
	for _, x := range all {
		if x.Untried {
			untried = append(untried, strconv.Itoa(x.Setup.Number))
		}
		t.line(0, "")
		s := x.Setup
		t.wrapped(fmt.Sprintf("setup %-3d ", s.Number), fmt.Sprintf("%s, near edge at %s %s, %s",
			s.Bit.Name, t.exactly(s.Fence.NearEdge), t.scale.Unit, wording.Plural(len(s.Runs), "card")))
		for _, reason := range x.Reasons {
			t.wrapped("          ", reason)
		}
		t.wrapped("          ", x.Cutting)
		if x.Saving != nil {
			t.wrapped("  spare it:  ", x.Saving.Change+": "+savings(x.Saving, &d.Plan.Shop))
		}
	}
	if len(untried) > 0 {
		setups := "setup"
		if len(untried) > 1 {
			setups = "setups"
		}
		t.line(0, "")
		t.wrapped("", "Not every change that might spare one was tried, there being too many: of "+
			setups+" "+joinery.List(untried, "and")+".")
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// savings says what a change makes less and, if there is any, more.
func savings(s *whatif.Saving, shop *joinery.Shop) string {
	var less, more []string
	add := func(n int, one, many string) {
		switch {
		case n > 0:
			less = append(less, wording.Count(n, one, many))
		case n < 0:
			more = append(more, wording.Count(-n, one, many))
		}
	}
	add(s.Less.Bits, "bit", "bits")
	add(s.Less.Fences, "fence setting", "fence settings")
	add(s.Less.Heights, "height", "heights")
	if shop.Stops == joinery.Blocks {
		add(s.Less.Stops, "pair of blocks", "pairs of blocks")
	}
	if shop.Minutes.Run > 0 {
		add(s.Less.Runs, "pass", "passes")
	}
	if shop.Minutes.Fit > 0 {
		add(s.Less.Fits, "trial of fit", "trials of fit")
	}
	text := strings.Join(less, ", ") + " less"
	if len(more) > 0 {
		text += ", " + strings.Join(more, ", ") + " more"
	}
	return fmt.Sprintf("%s, %g min", text, s.Less.Time.Minutes())
}
