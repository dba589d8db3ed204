package remark

import (
	"slices"
	"strings"
)

// WarningCode is one code a warning may have, and what it says in a line.
type WarningCode struct{ Code, Says string }

// jointWarnings are the codes of what is found wrong with a joint.
var jointWarnings = []WarningCode{
	{"mates-apart", "Two cuts that are to be joined make no joint."},
	{"part-too-thick", "A tenon or board is too thick for its slot."},
	{"part-loose", "A tenon or board is loose in its slot."},
	{"part-too-wide", "A tenon or board is wider than its slot is long."},
	{"tenon-bottoms", "A tenon meets the bottom of its mortise."},
	{"round-ends", "A square part goes into a slot with round ends."},
	{"stands-proud", "A piece stands proud of the one it is joined to."},
	{"place-differs", "A piece is joined at another place at its other end."},
	{"tenons-meet", "Two tenons meet inside a piece."},
	{"room-too-small", "A joint leaves the wood no room to move with the seasons."},
	{"movement-unknown", "How the wood of a joint moves is not known."},
	{"laps-not-flush", "Two laps do not lie flush."},
	{"lap-length", "A lap is not as long as its mate is wide."},
}

// WarningCodes lists every code a warning may have, in the order of the
// alphabet.
func WarningCodes() []WarningCode {
	all := append([]WarningCode{unnamedWood}, jointWarnings...)
	for _, c := range slices.Concat(slips, conditions) {
		all = append(all, WarningCode{c.code, c.says})
	}
	byCode := func(a, b WarningCode) int { return strings.Compare(a.Code, b.Code) }
	slices.SortStableFunc(all, byCode)
	return slices.CompactFunc(all, func(a, b WarningCode) bool { return byCode(a, b) == 0 })
}
