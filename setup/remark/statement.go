package remark

import (
	"fmt"

	"fencecard/joinery"
)

// Statement is a rule that a maker is told, and what stands behind it: a source
// that was read, memory, or the practice of the trade, which has none.
type Statement struct {
	Where string // "caution", "warning", "limit" or "everywhere"
	Name  string // its code
	Words string
	Basis string
}

// Statements lists every rule of this package, in general words: those of every
// card, the cautions in their order of gravity, the warnings by their codes, and
// the limits at which they begin.
func Statements() []Statement {
	all := []Statement{{"everywhere", "always", AlwaysMind, bgr100500 + ", on setting with the tool standing still; the rest: " + commonPractice}}
	for _, c := range Everywhere() {
		all = append(all, Statement{"everywhere", c.Code, c.Words, c.Basis})
	}
	shop := &joinery.Shop{Scale: joinery.InchScale, Rules: joinery.DefaultRules(joinery.Inches)}
	for _, c := range CautionTable(shop) {
		all = append(all, Statement{"caution", c.Code, c.Words, c.Basis})
	}
	for _, w := range WarningCodes() {
		all = append(all, Statement{"warning", w.Code, w.Says, w.Basis})
	}
	for l := range limitCount {
		row := limits[l]
		all = append(all, Statement{"limit", row.what, fmt.Sprintf("%s, or %s",
			joinery.InchScale.Say(row.in), joinery.MetricScale.Say(row.mm)), row.basis})
	}
	return all
}
