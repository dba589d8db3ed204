package screen

import (
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"fencecard/joinery"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// textWidth is the width of a terminal that everybody has.
const textWidth = 80

// Text writes the deck to be read on a screen of 80 columns.
func Text(w io.Writer, d *deck.Deck) error {
	t := deckText(d)
	t.heading(d)
	for i := range d.Setups {
		t.setup(&d.Setups[i])
	}
	t.warnings(d)
	t.allCautions(d)
	_, err := io.WriteString(w, t.String())
	return err
}

// deckText is a text on what is done in a deck's shop.
func deckText(d *deck.Deck) *textWriter {
	shop := &d.Plan.Shop
	return &textWriter{scale: shop.Scale, fence: shop.Fence, blocks: shop.Stops == joinery.Blocks, push: shop.Cross.With, router: shop.Speed}
}

// Summary writes what a maker wants to know after a deck went to a file; pages
// is 0 where it has none.
func Summary(w io.Writer, file string, d *deck.Deck, pages int) error {
	first := fmt.Sprintf("%s: %s in %s", joinery.Printable(file), wording.Plural(d.Runs(), "card"), wording.Plural(len(d.Setups), "setup"))
	if pages > 0 {
		first += " on " + wording.Plural(pages, "page")
	}
	first += ", deck " + d.Code
	lines := append([]string{first},
		wording.ChangesLines(d)...)
	lines = append(lines, wording.Plural(len(remark.Once(d)), "warning"))
	_, err := io.WriteString(w, strings.Join(lines, "\n")+"\n")
	return err
}

// WarningLine gives a warning in one line, with its place where it has one.
func WarningLine(w deck.Warning) string {
	line := "warning: " + w.Text + " [" + w.Code + "]"
	if w.Place.Known() {
		line = w.Place.String() + ": " + line
	}
	return line
}

type textWriter struct {
	strings.Builder
	scale  joinery.Scale
	fence  joinery.FenceReach
	blocks bool // the shop sets stop blocks for each card
	push   joinery.Push
	router int // the router's own highest speed; 0 when not said
}

// String returns what was written. A deck may come from somebody else's file.
func (t *textWriter) String() string {
	return strings.Map(func(r rune) rune {
		if r != '\n' && joinery.Unprintable(r) {
			return unicode.ReplacementChar
		}
		return r
	}, t.Builder.String())
}

func (t *textWriter) line(indent int, format string, args ...any) {
	text := strings.Repeat(" ", indent) + fmt.Sprintf(format, args...)
	t.WriteString(strings.TrimRight(text, " ") + "\n")
}

// wrapped writes words under each other, the first line behind a label.
func (t *textWriter) wrapped(label, text string) {
	t.wrappedParts(label, strings.Fields(text), " ")
}

// wrappedParts writes parts behind a label, as many on a line as fit, none
// broken.
func (t *textWriter) wrappedParts(label string, parts []string, between string) {
	room := textWidth - utf8.RuneCountInString(label)
	line := ""
	for i, part := range parts {
		longer := part
		if line != "" {
			longer = line + between + part
		}
		if i > 0 && utf8.RuneCountInString(longer) > room {
			t.line(0, "%s%s", label, line)
			label = strings.Repeat(" ", textWidth-room)
			longer = part
		}
		line = longer
	}
	t.line(0, "%s%s", label, line)
}

func (t *textWriter) heading(d *deck.Deck) {
	title := d.Plan.Title
	if title == "" {
		title = d.Plan.Name
	}
	t.line(0, "%s", strings.ToUpper(title))
	t.line(0, "%s in %s", wording.Plural(d.Runs(), "card"), wording.Plural(len(d.Setups), "setup"))
	for _, line := range wording.ChangesLines(d) {
		t.line(0, "%s", line)
	}
	t.line(0, "Lengths in %s; + or - behind one: a hair more or less (true length).", wording.UnitWord(t.scale.Unit))
	t.line(0, "Past is to the left of the bit, before is to the right. Feed from right to left.")
	t.line(0, "Unplug before you touch the bit or its collet.")
	t.wrapped("", remark.Deference)
}

func (t *textWriter) setup(s *deck.Setup) {
	t.line(0, "")
	t.line(0, "%s", strings.Repeat("=", textWidth))
	t.wrapped(fmt.Sprintf("SETUP %d   ", s.Number), fmt.Sprintf("bit: %s, %s wide", s.Bit.Name, t.exactly(s.Bit.True())))
	t.wrapped("speed     ", s.Bit.TopSpeed(t.router).String())
	t.wrappedParts("fence     ", []string{
		"near edge " + t.exactly(s.Fence.NearEdge),
		"centre " + t.exactly(s.Fence.Centre),
		"far edge " + t.exactly(s.Fence.FarEdge),
	}, "   ")
	if s.Fence.NearEdge < 0 {
		t.line(10, "the near edge stands behind the fence face: bury the bit in the fence")
	}
	if !t.blocks {
		t.boxes("heights   ", s.Heights)
	}
	if s.Carriage > 0 {
		var above []string
		for _, h := range s.BitHeights() {
			above = append(above, t.exactly(h))
		}
		t.wrappedParts("          ", append([]string{"on the carriage, the bit above the table:"}, above...), "   ")
	}
	t.kept(s.Kept)
	for _, c := range s.Climbs() {
		if t.blocks {
			t.line(0, "")
			t.wrapped("blocks    ", wording.BlocksLine(c))
			t.boxes("heights   ", c.Heights)
		}
		for i := range c.Runs {
			t.card(&c.Runs[i])
		}
	}
}

// boxes writes heights as boxes to tick.
func (t *textWriter) boxes(label string, heights []joinery.Length) {
	var parts []string
	for _, h := range heights {
		parts = append(parts, "[ ] "+t.exactly(h))
	}
	t.wrappedParts(label, parts, "   ")
}

func (t *textWriter) card(r *deck.Run) {
	t.line(0, "")
	t.wrapped(fmt.Sprintf("%-6s", r.Number()), fmt.Sprintf("%s, %s: %s", r.Piece.Name, wording.Plural(r.Piece.Count, "piece"), cutTitle(r)))
	t.line(6, "%s side down, %s to the fence, %s end leads",
		strings.ToUpper(r.Shown(r.Step.Down)), strings.ToUpper(r.Shown(r.Step.Fence)), strings.ToUpper(r.Shown(r.Leads)))
	t.start(r)
	t.stop(r)
	for _, s := range wording.Crossing(r, t.scale, t.push) {
		t.wrapped("      guided    ", s.Words(true))
	}
	t.boxes("      heights   ", r.Heights)
	for _, line := range wording.JointLines(r, t.scale) {
		t.wrapped("      joint     ", line)
	}
	t.cautions(r)
	if r.Cut.Note != "" {
		t.wrapped("      note      ", r.Cut.Note)
	}
}

// cutTitle names the cut, the part of it and the fence position.
func cutTitle(r *deck.Run) string {
	title := r.Cut.Kind.Name + " \"" + r.Cut.Name + "\""
	if r.Channel.Part != "" {
		title += ", " + r.Channel.Part
	}
	switch {
	case r.Step.Turned:
		title += fmt.Sprintf(", run %d of %d (turn the piece)", r.Step.Position, r.Step.Of)
	case r.Step.Of > 1:
		title += fmt.Sprintf(", fence position %d of %d", r.Step.Position, r.Step.Of)
	}
	if r.Cut.Square {
		title += ", ends to be squared"
	}
	return title
}

func (t *textWriter) start(r *deck.Run) {
	if r.Start == nil {
		t.line(6, "feed in   at the %s end", r.Leads)
		return
	}
	t.mark("drop on", "trailing (left)", r, false)
	switch {
	case r.Hole != nil:
		t.wrapped(strings.Repeat(" ", 16), fmt.Sprintf("over a start hole bored first: its centre %s from the %s end, %s from the %s; no pivoting",
			t.exactly(r.Hole.FromLead), r.Shown(r.Leads), t.exactly(r.Hole.FromFence), r.Shown(r.Step.Fence)))
	case r.Raised:
		t.wrapped(strings.Repeat(" ", 16), "not dropped: clamp the work there and raise the turning bit into it")
	}
}

func (t *textWriter) stop(r *deck.Run) {
	if r.Stop == nil {
		t.line(6, "run out   at the %s end", r.Leads.Opposite())
		return
	}
	t.mark("lift off", "leading (right)", r, true)
}

// mark writes the three ways to find where a stopped cut starts or stops.
func (t *textWriter) mark(what, edge string, r *deck.Run, stop bool) {
	m := wording.MarkOf(r, stop)
	tail := r.Leads.Opposite()
	t.wrapped(fmt.Sprintf("      %-9s ", what), fmt.Sprintf("line %s from the %s end at the %s edge:", t.exactly(m.Line), r.Leads, edge))
	t.wrapped(strings.Repeat(" ", 16), fmt.Sprintf("%s end %s it, %s end %s it", r.Leads, t.where(m.LeadPastEdge, "past", "before"),
		tail, t.where(m.TailBeforeEdge, "before", "past")))
	b := wording.Bids(r, stop, t.fence, t.blocks)
	for _, to := range []struct {
		bid wording.Step
		end joinery.Side
	}{{b.Lead, r.Leads}, {b.Tail, tail}} {
		if to.bid != (wording.Step{}) {
			t.wrapped(strings.Repeat(" ", 16), fmt.Sprintf("%s for the %s end", to.bid.Long, to.end))
		}
	}
	if b.Mind != "" {
		t.wrapped(strings.Repeat(" ", 16), b.Mind)
	}
	if b == (wording.Bid{}) {
		t.line(16, "by the line: neither end stands on the fence")
	}
}

// where says how far something is on one side, or if negative on the other.
func (t *textWriter) where(l joinery.Length, side, other string) string {
	if l < 0 {
		side = other
	}
	return t.exactly(l.Abs()) + " " + side
}

// exactly is a length as read off the scale, and beside it the true one where
// that is a hair more or less.
func (t *textWriter) exactly(l joinery.Length) string {
	r := t.scale.Read(l)
	return strings.TrimRight(r.String()+" "+wording.Beside(r), " ")
}

func (t *textWriter) warnings(d *deck.Deck) {
	if len(d.Warnings) == 0 {
		return
	}
	t.line(0, "")
	t.line(0, "%s", strings.Repeat("=", textWidth))
	t.line(0, "WARNINGS")
	for _, w := range remark.Once(d) {
		t.wrapped("  - ", w.Text+" ["+w.Code+"]")
	}
}
