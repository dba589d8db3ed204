package screen

import (
	"fmt"
	"io"
	"strconv"

	"fencecard/joinery/plantext"
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
			s.Bit.Name, t.exactly(s.SetTo().NearEdge), t.scale.Unit, wording.Plural(len(s.Runs), "run")))
		for _, reason := range x.Reasons {
			t.wrapped("          ", reason)
		}
		t.wrapped("          ", x.Cutting)
		if x.Saving != nil {
			t.wrapped("  spare it:  ", x.Saving.Change+": "+wording.Savings(x.Saving, &d.Plan.Shop))
		}
	}
	if len(untried) > 0 {
		setups := "setup"
		if len(untried) > 1 {
			setups = "setups"
		}
		t.line(0, "")
		t.wrapped("", "Not every change that might spare one was tried, there being too many: of "+
			setups+" "+plantext.List(untried, "and")+".")
	}
	_, err := io.WriteString(w, t.String())
	return err
}
