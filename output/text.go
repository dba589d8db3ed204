package output

import (
	"fmt"
	"io"
	"strings"

	"fencecard/joinery"
	"fencecard/setup"
)

// textWidth is the width of a terminal that everybody has.
const textWidth = 80

// Text writes the deck to be read on a screen of 80 columns.
func Text(w io.Writer, d *setup.Deck) error {
	t := &textWriter{scale: d.Plan.Shop.Scale}
	t.heading(d)
	for i := range d.Setups {
		t.setup(&d.Setups[i])
	}
	t.warnings(d)
	_, err := io.WriteString(w, t.String())
	return err
}

// Summary writes what a maker wants to know after the pages went to a file.
func Summary(w io.Writer, file string, d *setup.Deck) error {
	_, err := fmt.Fprintf(w, "%s: %s in %s\n%s\n%s\n", file,
		plural(d.Cards(), "card"), plural(len(d.Setups), "setup"), changesLine(d.Changes),
		strings.ToUpper(plural(len(d.Warnings), "warning")[:1])+plural(len(d.Warnings), "warning")[1:])
	return err
}

// WarningLine gives a warning in one line, with its place where it has one.
func WarningLine(w setup.Warning) string {
	line := "warning: " + w.Text + " [" + w.Code + "]"
	if w.Place.Known() {
		line = w.Place.String() + ": " + line
	}
	return line
}

// changesLine says what is set and how long it takes.
func changesLine(c setup.Changes) string {
	return fmt.Sprintf("%s, %s, %s to set: about %g min",
		plural(c.Bits, "bit"), plural(c.Fences, "fence distance"), plural(c.Heights, "height"), c.Time.Minutes())
}

// plural counts things: "no cards", "1 card", "2 cards".
func plural(n int, thing string) string {
	switch n {
	case 0:
		return "no " + thing + "s"
	case 1:
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

type textWriter struct {
	strings.Builder
	scale joinery.Scale
}

func (t *textWriter) line(indent int, format string, args ...any) {
	text := strings.Repeat(" ", indent) + fmt.Sprintf(format, args...)
	t.WriteString(strings.TrimRight(text, " ") + "\n")
}

// wrapped writes words under each other, the first line behind a label.
func (t *textWriter) wrapped(label, text string) {
	room := textWidth - len(label)
	for _, line := range wrapWords(text, room) {
		t.line(0, "%s%s", label, line)
		label = strings.Repeat(" ", len(label))
	}
}

// wrapWords breaks text into lines of at most room characters; a longer word
// stands alone.
func wrapWords(text string, room int) []string {
	var lines []string
	line := ""
	for word := range strings.FieldsSeq(text) {
		if line != "" && len([]rune(line+" "+word)) > room {
			lines = append(lines, line)
			line = ""
		}
		line = strings.TrimPrefix(line+" "+word, " ")
	}
	return append(lines, line)
}

func (t *textWriter) heading(d *setup.Deck) {
	title := d.Plan.Title
	if title == "" {
		title = d.Plan.Name
	}
	t.line(0, "%s", strings.ToUpper(title))
	t.line(0, "%s in %s", plural(d.Cards(), "card"), plural(len(d.Setups), "setup"))
	t.line(0, "%s", changesLine(d.Changes))
	unit := "inches"
	if t.scale.Unit == joinery.Millimetres {
		unit = "millimetres"
	}
	t.line(0, "Lengths in %s; + or - behind one: a hair more or less.", unit)
	t.line(0, "Feed from right to left. Plug out before you touch the bit or its collet.")
}

func (t *textWriter) setup(s *setup.Setup) {
	t.line(0, "")
	t.line(0, "%s", strings.Repeat("=", textWidth))
	t.line(0, "SETUP %d   bit: %s, %s wide", s.Number, s.Bit.Name, t.scale.Format(s.Bit.True()))
	t.line(0, "fence to  near edge %s   centre %s   far edge %s%s",
		t.scale.Format(s.Fence.NearEdge), t.scale.Format(s.Fence.Centre), t.scale.Format(s.Fence.FarEdge), buried(s.Fence))
	t.wrapped("heights   ", t.boxes(s.Heights))
	for i := range s.Cards {
		t.card(&s.Cards[i])
	}
}

// buried explains a near edge behind the fence face.
func buried(f setup.Fence) string {
	if f.NearEdge < 0 {
		return "   (bit buried in the fence)"
	}
	return ""
}

// boxes writes heights as boxes to tick.
func (t *textWriter) boxes(heights []joinery.Length) string {
	// A no-break space keeps box and number on one line.
	var parts []string
	for _, h := range heights {
		parts = append(parts, "[\u00a0]\u00a0"+strings.ReplaceAll(t.scale.Format(h), " ", "\u00a0"))
	}
	return strings.Join(parts, "   ")
}

func (t *textWriter) card(c *setup.Card) {
	t.line(0, "")
	t.wrapped(fmt.Sprintf("%-6s", c.Number()), fmt.Sprintf("%s, %s: %s", c.Piece.Name, plural(c.Piece.Count, "piece"), cutTitle(c)))
	t.line(6, "%s side down, %s to the fence, %s end leads",
		strings.ToUpper(c.Run.Down.String()), strings.ToUpper(c.Run.Fence.String()), strings.ToUpper(c.Leads.String()))
	t.start(c)
	t.stop(c)
	t.wrapped("      heights  ", t.boxes(c.Heights))
	if c.Cut.Note != "" {
		t.wrapped("      note     ", c.Cut.Note)
	}
}

// cutTitle names the cut, the part of it and the fence position.
func cutTitle(c *setup.Card) string {
	title := c.Cut.Kind.Name + " \"" + c.Cut.Name + "\""
	if c.Channel.Part != "" {
		title += ", " + c.Channel.Part
	}
	switch {
	case c.Run.Turned:
		title += fmt.Sprintf(", run %d of %d (turn the piece)", c.Run.Position, c.Run.Of)
	case c.Run.Of > 1:
		title += fmt.Sprintf(", fence position %d of %d", c.Run.Position, c.Run.Of)
	}
	if c.Cut.Square {
		title += ", ends to be squared"
	}
	return title
}

func (t *textWriter) start(c *setup.Card) {
	if c.Start == nil {
		t.line(6, "begin    feed in at the %s end", c.Leads)
		return
	}
	m := c.Start
	t.line(6, "begin    DROP ON: line %s from the %s end meets the bit's trailing edge (left)", t.scale.Format(m.Line), c.Leads)
	t.line(15, "%s, %s", t.leading(c, m.LeadPastEdge), t.tail(c, m.TailBeforeEdge))
}

func (t *textWriter) stop(c *setup.Card) {
	if c.Stop == nil {
		t.line(6, "end      run out")
		return
	}
	m := c.Stop
	t.line(6, "end      LIFT OFF: line %s from the %s end meets the bit's leading edge (right)", t.scale.Format(m.Line), c.Leads)
	t.line(15, "%s, %s", t.leading(c, m.LeadPastEdge), t.tail(c, m.TailBeforeEdge))
}

// leading says where the leading end of the work stands.
func (t *textWriter) leading(c *setup.Card, past joinery.Length) string {
	where := "past (left of)"
	if past < 0 {
		where = "before (right of)"
	}
	return fmt.Sprintf("%s end %s %s that edge", c.Leads, t.scale.Format(past.Abs()), where)
}

// tail says where the tail end of the work stands.
func (t *textWriter) tail(c *setup.Card, before joinery.Length) string {
	where := "before it (right)"
	if before < 0 {
		where = "past it (left)"
	}
	return fmt.Sprintf("%s end %s %s", c.Leads.Opposite(), t.scale.Format(before.Abs()), where)
}

func (t *textWriter) warnings(d *setup.Deck) {
	if len(d.Warnings) == 0 {
		return
	}
	t.line(0, "")
	t.line(0, "%s", strings.Repeat("=", textWidth))
	t.line(0, "WARNINGS")
	for _, w := range d.Warnings {
		t.wrapped("  - ", w.Text+" ["+w.Code+"]")
	}
}
