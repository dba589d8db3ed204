package remark

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/remark/trade"
)

// WarningCode is one code a warning may have, what it says in a line, and what
// stands behind it.
type WarningCode struct{ Code, Says, Basis string }

const (
	jointPlay        = "slip clearance of a tenon's thickness: " + trade.CommonPractice
	handbookMovement = "Wood Handbook, FPL-GTR-190 (2010), equations 13-2 and 13-3, tables 4-3 and 13-5"
)

// jointWarnings are the codes of what is found wrong with a joint.
var jointWarnings = []WarningCode{
	{"mates-apart", "Two cuts that are to be joined make no joint.", "the plan"},
	{"not-joined", "Grooves have the name of a piece that is joined to nothing.", "the plan"},
	{"part-too-thick", "A tenon or board is too thick for what it goes into.", jointPlay},
	{"part-loose", "A tenon or board is loose in what it goes into.", jointPlay},
	{"panel-edge-short", "A raised edge is not thin as far as it goes into its groove.", "the plan"},
	{"panel-comes-out", "A groove is so shallow that the panel shrinks out of it.", handbookMovement},
	{"part-too-wide", "A tenon or board is wider than what it goes into is long.", "the plan"},
	{"too-long", "A piece is longer than there is room between two others.", "the plan"},
	{"frames-differ", "Two pieces hold the same frames apart by different lengths.", "the plan"},
	{"tenon-bottoms", "A tenon meets the bottom of its mortise.", "mortise a little deeper than the tenon is long: Handwork in Wood, ch. VII; by how much: " + trade.CommonPractice},
	{"round-ends", "A square part goes into a cut with round ends.", "worked out from the round of the bit"},
	{"stands-proud", "A piece stands proud of the one it is joined to.", "the plan"},
	{"place-differs", "A piece is joined at another place at its other end.", "the plan"},
	{"tenons-meet", "Two tenons meet inside a piece.", "meeting tenons in a leg mitred: Woodwork Joints; the web between them: " + trade.CommonPractice},
	{"room-too-small", "A joint leaves the wood no room to move with the seasons.", handbookMovement},
	{"movement-unknown", "How the wood of a joint moves is not known.", handbookMovement},
	{"laps-not-flush", "Two laps do not lie flush.", "the plan"},
	{"lap-length", "A lap is not as long as its mate is wide.", "the plan"},
}

// WarningCodes lists every code a warning may have, in the order of the
// alphabet.
func WarningCodes() []WarningCode {
	all := append([]WarningCode{unnamedWood}, jointWarnings...)
	for _, c := range slices.Concat(slips, conditions) {
		all = append(all, WarningCode{c.code, c.says, c.basis})
	}
	byCode := func(a, b WarningCode) int { return strings.Compare(a.Code, b.Code) }
	slices.SortStableFunc(all, byCode)
	return slices.CompactFunc(all, func(a, b WarningCode) bool { return byCode(a, b) == 0 })
}

// Statement is a rule that a maker is told, and what stands behind it: a source
// that was read, memory, or the practice of the trade, which has none.
type Statement struct {
	Where string // "caution", "warning", "limit" or "everywhere"
	Name  string // its code
	Words string
	Basis string
}

// Statements lists every rule of this package, in general words: those of every
// run, the cautions in their order of gravity, the warnings by their codes, and
// the limits at which they begin.
func Statements() []Statement {
	all := []Statement{{"everywhere", "always", trade.AlwaysMind, trade.BGR100500 + ", on setting with the tool standing still; the rest: " + trade.CommonPractice}}
	for _, c := range trade.Everywhere() {
		all = append(all, Statement{"everywhere", c.Code, c.Words, c.Basis})
	}
	shop := &joinery.Shop{Scale: measure.InchScale, Rules: joinery.DefaultRules(measure.Inches)}
	for _, c := range CautionTable(shop) {
		all = append(all, Statement{"caution", c.Code, c.Words, c.Basis})
	}
	for _, w := range WarningCodes() {
		all = append(all, Statement{"warning", w.Code, w.Says, w.Basis})
	}
	for _, row := range trade.Limits() {
		all = append(all, Statement{"limit", row.What, fmt.Sprintf("%s, or %s",
			measure.InchScale.Say(row.In), measure.MetricScale.Say(row.MM)), row.Basis})
	}
	return all
}
