package screen

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/output/wording"
	"fencecard/setup/book"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// KeptSetups lists the entries of a setup book.
func KeptSetups(w io.Writer, entries []*book.Entry) error {
	out := bufio.NewWriter(w) // a long book is not held twice
	if len(entries) == 0 {
		out.WriteString("The setup book is empty. fencecard book keep puts a setup into it.\n")
	}
	for _, e := range entries {
		t := &textWriter{scale: e.Shop.Scale}
		t.wrapped("", e.Name)
		t.wrapped("    ", keptLine(e))
		t.bit("    ", &e.Setup)
		t.said("    ", e.Kept(t.scale))
		out.WriteString(t.String())
	}
	return out.Flush()
}

// KeptSetup writes one entry with its runs.
func KeptSetup(w io.Writer, e *book.Entry) error {
	d := e.Deck()
	t := deckText(d)
	t.line(0, "%s", strings.ToUpper(e.Name))
	t.wrapped("", keptLine(e))
	if e.From != "" {
		t.wrapped("from      ", e.From)
	}
	t.wrapped("", trade.Deference)
	t.setup(&d.Setups[0])
	_, err := io.WriteString(w, t.String())
	return err
}

// KeptCuts says in short what was kept: numbers of setups change when the plan
// or the shop does, and this shows that the right one was named.
func KeptCuts(w io.Writer, e *book.Entry) error {
	t := &textWriter{scale: e.Shop.Scale}
	t.bit("    ", &e.Setup)
	const most = 6
	runs := e.Setup.Runs
	for i := range runs[:min(len(runs), most)] {
		r := &runs[i]
		t.wrapped("    ", fmt.Sprintf("%s: %s", r.Piece.Name, cutTitle(r)))
	}
	if more := len(runs) - most; more > 0 {
		t.line(4, "and %s more", wording.Plural(more, "run"))
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// keptLine is what a kept setup is known by besides its name.
func keptLine(e *book.Entry) string {
	parts := []string{e.Code}
	if e.Date != "" {
		parts = append(parts, "kept "+e.Date)
	}
	return strings.Join(append(parts, wording.Plural(len(e.Setup.Runs), "run")), ", ")
}

// bit names the bit and the fence of a setup in a line.
func (t *textWriter) bit(label string, s *deck.Setup) {
	t.wrapped(label, fmt.Sprintf("%s, %s wide, fence to near edge %s",
		nameOr(s.Bit.Name, s.Bit.Kind.String()+" bit"), t.length(s.Bit.True()), t.length(s.Fence.NearEdge)))
}

func nameOr(name, other string) string {
	if name == "" {
		return other
	}
	return name
}

// length is a length with its unit.
func (t *textWriter) length(l measure.Length) string {
	return t.exactly(l) + " " + t.scale.Unit.String()
}

// kept writes what the setup book says of a setup, below its ladder.
func (t *textWriter) kept(k *deck.Kept) {
	if k == nil {
		return
	}
	if k.Name != "" { // else an entry of other work taught the fence
		t.wrapped("kept as   ", fmt.Sprintf("%q (%s)", k.Name, k.Code))
	}
	t.said("          ", k)
}

// said writes what was learnt and the maker's notes.
func (t *textWriter) said(label string, k *deck.Kept) {
	for _, line := range k.Learnt {
		t.wrapped(label, line)
	}
	for _, line := range k.Notes {
		t.wrapped(label, line)
	}
}
