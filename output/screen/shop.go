package screen

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/output/wording"
	"fencecard/setup"
	"fencecard/setup/ladder"
)

// Shop writes what a shop allows: its table and fence, and for every bit its
// speed, its deepest and widest cut, and the cap of a pass in the woods given.
func Shop(w io.Writer, shop *joinery.Shop, woods []timber.Wood) error {
	t := &textWriter{scale: shop.Scale}
	t.wrapped("", strings.ToUpper(shop.Name))
	t.table(shop)
	t.line(0, "")
	t.line(0, "%-*s %8s %8s %8s %10s %9s", bitColumn, "BIT", "wide", "deepest", "widest", "top speed", "rim")
	for _, a := range setup.Allowances(shop, woods) {
		t.allowance(a, woods)
	}
	t.line(0, "")
	t.wrapped("", "Deepest and widest: the deepest and the widest cut, the fence moved away from pass to pass; a groove beside the fence. Top speed in rpm, rim speed there in m/s. The router's own manual comes before any figure here.")
	_, err := io.WriteString(w, t.String())
	return err
}

// bitColumn is the width of the column of names.
const bitColumn = 26

// table writes the table, the fence and the shop's rules.
func (t *textWriter) table(shop *joinery.Shop) {
	unit := t.scale.Unit.String()
	t.wrappedParts("fence   ", []string{
		"infeed " + t.orNotSaid(shop.Fence.Infeed), "outfeed " + t.orNotSaid(shop.Fence.Outfeed),
		"reach " + t.orNotSaid(shop.Fence.Reach) + " to the bit's centre",
	}, "   ")
	t.wrappedParts("table   ", []string{
		"lift " + t.orNotSaid(shop.Lift), "scale " + t.scale.Spell(t.scale.Division), "stops by " + shop.Stops.String(),
	}, "   ")
	t.wrappedParts("rules   ", []string{
		"pieces under " + t.orNotSaid(shop.Rules.ShortPiece) + " are short",
		"hands " + t.orNotSaid(shop.Rules.HandDistance) + " away",
		"floors under " + t.orNotSaid(shop.Rules.ThinFloor) + " are thin",
	}, "   ")
	t.line(0, "joints  clearance %s %s at the cheeks, %s %s beyond the end",
		t.fine(shop.Clearance.Cheek), unit, t.fine(shop.Clearance.Length), unit)
	if shop.Share.Num > 0 {
		t.line(0, "passes  %s of the bit's diameter, your own share", shop.Share)
	}
	t.line(0, "Lengths in %s; + or - behind one: a hair more or less (true length).", wording.UnitWord(t.scale.Unit))
}

func (t *textWriter) orNotSaid(l measure.Length) string {
	if l == 0 {
		return "not said"
	}
	return t.exactly(l)
}

// fine writes a length that may be finer than the scale.
func (t *textWriter) fine(l measure.Length) string { return t.scale.Fine(l) }

func (t *textWriter) allowance(a setup.Allowance, woods []timber.Wood) {
	speed, rim := "ask", "-"
	if a.Top.RPM > 0 {
		speed, rim = strconv.Itoa(a.Top.RPM), fmt.Sprintf("%.1f m/s", a.Rim)
	}
	name := a.Bit.Name
	if utf8.RuneCountInString(name) > bitColumn {
		t.wrapped("", name)
		name = ""
	}
	t.line(0, "%-*s %8s %8s %8s %10s %9s", bitColumn, name, t.fine(a.Bit.True()),
		t.orNotSaid(a.Deepest), t.orNotSaid(a.Widest), speed, rim)
	t.wrapped("  ", t.kindOf(a))
	for _, g := range sameCaps(a.Caps, woods) {
		t.wrapped(fmt.Sprintf("%10s  ", t.most(a.Bit, g.depth)), strings.Join(g.woods, ", ")+": "+g.rule)
	}
}

// most is what one pass may take: a depth, or of a bit that shapes edges so much wood.
func (t *textWriter) most(bit *joinery.Bit, limit measure.Length) string {
	if bit.Outline != nil {
		return t.scale.SayArea(limit.Millimetres())
	}
	return t.scale.Format(limit)
}

// kindOf says what kind of bit it is, and where its speed is from.
func (t *textWriter) kindOf(a setup.Allowance) string {
	text := a.Bit.Kind.String()
	if a.Bit.Shank > 0 {
		text += ", shank " + t.scale.Fine(a.Bit.Shank)
	}
	switch a.Bit.Plunges {
	case joinery.Yes:
		text += ", plunges"
	case joinery.No:
		text += ", does not plunge"
	default:
		text += ", not known to plunge"
	}
	return text + "; speed: " + a.Top.Rule
}

// capGroup is a cap that several woods share.
type capGroup struct {
	depth measure.Length
	rule  string // without the wood's name
	woods []string
}

// sameCaps brings woods with the same cap by the same rule together.
func sameCaps(caps []ladder.Cap, woods []timber.Wood) []*capGroup {
	var groups []*capGroup
	for i, c := range caps {
		name := woods[i].String()
		rule := strings.TrimSuffix(c.Rule, " in "+name)
		at := slices.IndexFunc(groups, func(g *capGroup) bool { return g.depth == c.Depth && g.rule == rule })
		if at < 0 {
			groups, at = append(groups, &capGroup{depth: c.Depth, rule: rule}), len(groups)
		}
		groups[at].woods = append(groups[at].woods, name)
	}
	return groups
}
