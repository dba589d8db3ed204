package screen

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
	"fencecard/setup/remark/trade"
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
	t.pieces(d)
	t.warnings(d)
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
	first := fmt.Sprintf("%s: %s in %s%s, deck %s", plantext.Printable(file),
		wording.Plural(d.Runs(), "run"), wording.Plural(len(d.Setups), "setup"), onPages(pages), d.Code)
	lines := append([]string{first},
		wording.ChangesLines(d)...)
	if d.Runs() == 0 {
		lines = []string{fmt.Sprintf("%s: %s%s, deck %s", plantext.Printable(file), wording.NothingToCut, onPages(pages), d.Code),
			"cuts are written under cuts: of a piece or under joints: in the plan; fencecard help plan tells how"}
	}
	lines = append(lines, wording.Plural(len(remark.Once(d)), "warning"))
	_, err := io.WriteString(w, strings.Join(lines, "\n")+"\n")
	return err
}

// PartSummary is the same of a file that has only a part of a deck, in words such
// as "run 3.6".
func PartSummary(w io.Writer, file, part string, d *deck.Deck, pages int) error {
	_, err := fmt.Fprintf(w, "%s: %s of deck %s%s\n", plantext.Printable(file), part, d.Code, onPages(pages))
	return err
}

func onPages(pages int) string {
	if pages == 0 {
		return ""
	}
	return " on " + wording.Plural(pages, "page")
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
	scale  measure.Scale
	fence  joinery.FenceReach
	blocks bool // the shop sets stop blocks for each run
	push   joinery.Push
	router int // the router's own highest speed; 0 when not said
}

// String returns what was written. A deck may come from somebody else's file.
func (t *textWriter) String() string {
	return strings.Map(func(r rune) rune {
		if r != '\n' && plantext.Unprintable(r) {
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
	if d.Runs() == 0 {
		t.line(0, "%s", wording.NothingToCut)
		t.line(0, "deck %s", d.Code)
		return
	}
	t.line(0, "%s in %s", wording.Plural(d.Runs(), "run"), wording.Plural(len(d.Setups), "setup"))
	for _, line := range wording.ChangesLines(d) {
		t.line(0, "%s", line)
	}
	if d.Code != "" {
		t.line(0, "deck %s", d.Code)
	}
	t.line(0, "Lengths in %s; + or - behind one: a hair more or less (true length).", wording.UnitWord(t.scale.Unit))
	t.line(0, "Left and right are of the bit, as you stand before the table.")
	t.wrapped("", trade.AlwaysMind)
	t.wrapped("", trade.Deference+wording.ExampleShop(&d.Plan.Shop))
}

// setup writes a setup as its sheet has it: the head once, every pair of marks
// and under it a line or two for each run.
func (t *textWriter) setup(s *deck.Setup) {
	mind := wording.MindOf(s, wording.MindIn{Scale: t.scale, Push: t.push, Block: t.blocks, Own: true})
	t.head(s, mind)
	climb := -1
	told := map[*joinery.Cut]bool{} // what a cut joins, at its first run here: a tenon has four cheeks
	for _, g := range wording.Groups(s) {
		t.line(0, "")
		if t.blocks && g.Climb != climb {
			t.wrapped("", wording.BlocksFor(s, g.Climb))
			climb = g.Climb
		}
		t.pair(s, g)
		if g.Pair != nil {
			for _, c := range mind.Pairs[g.Pair.Letter] {
				t.wrapped(fmt.Sprintf("      %-7s   ", c.Weight), c.Brief)
			}
		}
		for _, r := range g.Runs {
			t.run(s, r, mind, !told[r.Cut])
			told[r.Cut] = true
		}
	}
}

func (t *textWriter) head(s *deck.Setup, mind wording.Mind) {
	t.line(0, "")
	t.line(0, "%s", strings.Repeat("=", textWidth))
	bit := []string{"bit: " + s.Bit.Name, t.exactly(s.Bit.True()) + " wide", wording.Collet(s.Bit, t.scale)}
	if kind := wording.KindOf(s.Bit); kind != "" {
		bit = slices.Insert(bit, 1, kind)
	}
	bit = slices.DeleteFunc(bit, func(part string) bool { return part == "" })
	t.wrapped(fmt.Sprintf("SETUP %d   ", s.Number), strings.Join(bit, ", "))
	t.wrapped("speed     ", s.Bit.TopSpeed(t.router).String())
	set := s.SetTo()
	t.wrappedParts("fence     ", []string{
		"near edge " + t.exactly(set.NearEdge),
		"centre " + t.exactly(set.Centre),
		"far edge " + t.exactly(set.FarEdge),
	}, "   ")
	if set != s.Fence {
		t.wrapped("          ", "where it stood after the test cut; computed: near edge "+t.exactly(s.Fence.NearEdge))
	}
	if bury := wording.Bury(s, t.exactly); bury != "" {
		t.wrapped("          ", bury)
	}
	t.heights(s)
	if s.Carriage > 0 {
		var above []string
		for _, h := range s.BitRungs() {
			above = append(above, t.exactly(h))
		}
		t.wrappedParts("          ", append([]string{"on the carriage, the bit above the table:"}, above...), "   ")
	}
	t.kept(s.Kept)
	for _, c := range mind.All {
		words := c.Brief
		if runs := mind.For(c.Runs); runs != "" {
			words = runs + " " + words
		}
		t.wrapped(fmt.Sprintf("%-7s   ", c.Weight), words)
	}
	for _, words := range mind.Do {
		t.wrapped("          ", words)
	}
}

// heights writes the ladder, every height with the number that runs name it by.
func (t *textWriter) heights(s *deck.Setup) {
	var parts []string
	for i, h := range s.Rungs() {
		parts = append(parts, fmt.Sprintf("%d) %s", i+1, t.exactly(h)))
	}
	t.wrappedParts("heights   ", parts, "   ")
	if to := wording.HeightTo(s); to != "" {
		t.wrapped("          ", to)
	}
	if order := wording.HeightByHeight(s, t.blocks); order != "" {
		t.wrapped("          ", order)
	}
	if full, ok := s.ComputedFull(); ok {
		t.wrapped("          ", "the full height where the bit stood after the test cut; computed: "+t.exactly(full))
	}
}

// pair writes what is set for some runs: the start, the stop, and the back stop.
func (t *textWriter) pair(s *deck.Setup, g wording.Group) {
	if g.Pair == nil {
		t.line(0, "no marks  %s, %s", wording.Unmarked(s, false), wording.Unmarked(s, true))
		return
	}
	label := fmt.Sprintf("%-4s  ", fmt.Sprint(s.Number)+g.Pair.Letter)
	for i, m := range []*deck.PairMark{g.Pair.Start, g.Pair.Stop} {
		stop := i == 1
		name := [2]string{"START", "STOP"}[i]
		if m == nil {
			t.wrapped(label, fmt.Sprintf("%-5s no mark: %s", name, wording.Unmarked(s, stop)))
		} else {
			marking := wording.MarkingOf(g.Runs[0], stop, m.Guide, t.blocks)
			text := fmt.Sprintf("%-5s %s  %s, %s, %s", name, t.exactly(marking.Length(&m.Mark)), marking.Set, marking.For, marking.From)
			if others := marking.Others(m, t.exactly); others != "" {
				text += " (" + others + ")"
			}
			t.wrapped(label, text)
			if line := marking.StopLine(m, t.exactly, t.fence, g.Runs[0]); line != "" {
				t.wrapped("      ", line)
			}
		}
		label = "      "
	}
}

// run writes one run: the piece and its cut and the heights it takes, the orders
// and what shows, what is peculiar to it, and what it joins where that is to be told.
func (t *textWriter) run(s *deck.Setup, r *deck.Run, mind wording.Mind, joins bool) {
	t.wrapped(fmt.Sprintf("%-6s", r.Number()), fmt.Sprintf("%s, %s: %s, %s", r.Piece.Name, wording.Plural(r.Piece.Count, "piece"), cutTitle(r), heightsOf(s, r)))
	t.wrapped("      ", fmt.Sprintf("%s down, %s to the fence, %s leads; %s up, %s toward you",
		shout(r, r.Step.Down), shout(r, r.Step.Fence), shout(r, r.Leads), r.Shown(r.Up()), r.Shown(r.TowardYou())))
	for _, c := range mind.Own[r] {
		t.wrapped(fmt.Sprintf("      %-7s   ", c.Weight), c.Brief)
	}
	if wording.SquaredEnds(r) && !mind.Squared {
		t.wrapped("      ", wording.SquareOne)
	}
	if joins {
		for _, line := range wording.JointLines(r, t.scale) {
			t.wrapped("      joint     ", line)
		}
	}
	if note := mind.NoteOf(s, r); note != "" {
		t.wrapped("      note      ", note)
	}
}

func shout(r *deck.Run, side joinery.Side) string { return strings.ToUpper(r.Shown(side)) }

// cutTitle names the cut, the part of it and which of several runs it is.
func cutTitle(r *deck.Run) string {
	title := r.Cut.Kind.Name + ` "` + r.Cut.Name + `"`
	if r.Channel.Part != "" {
		title += ", " + r.Channel.Part
	}
	return title + wording.Which(r)
}

// heightsOf names the heights that a run takes by their numbers.
func heightsOf(s *deck.Setup, r *deck.Run) string {
	rungs := wording.RungNames(s, r)
	switch n := len(rungs); {
	case n == 1:
		return fmt.Sprintf("height %d", rungs[0])
	case n == 0:
		return "no height"
	case rungs[n-1]-rungs[0] == n-1:
		return fmt.Sprintf("heights %d to %d", rungs[0], rungs[n-1])
	default:
		return "heights " + strings.Trim(strings.ReplaceAll(fmt.Sprint(rungs), " ", ", "), "[]")
	}
}

// where says how far something is on one side, or if negative on the other.
func (t *textWriter) where(l measure.Length, side, other string) string {
	if l < 0 {
		side = other
	}
	return t.exactly(l.Abs()) + " " + side
}

// exactly is a length as read off the scale, and beside it the true one where
// that is a hair more or less.
func (t *textWriter) exactly(l measure.Length) string {
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
