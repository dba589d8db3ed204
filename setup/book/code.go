package book

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckcode"
)

// codeBytes of a digest make a code of eight letters; among 10,000 setups two
// different ones share a code once in 20,000 books.
const codeBytes = 5

// Code returns a setup's short code, such as "7k3f-9m2q". It comes from what
// the table is set to and how the work is run there, in exact millimetres: the
// bit's kind, true diameter and outline, the fence, the ladder, and the runs' sides,
// lengths, marks and heights. Names, counts, woods and the order of the runs
// do not count, so a batch made again has the code of the first.
func Code(s *deck.Setup) string {
	sum := sha256.Sum256([]byte(contents(s)))
	code := deckcode.Letters.EncodeToString(sum[:codeBytes])
	return code[:4] + "-" + code[4:]
}

// contents writes what counts of a setup, one fact a line.
func contents(s *deck.Setup) string { return spell(s, deckcode.Lengths) }

// alike writes what two setups have in common that are the same but for the rungs
// that lead to the full depths.
func alike(s *deck.Setup) string {
	return spell(s, func([]measure.Length) string { return "" })
}

func spell(s *deck.Setup, heights func([]measure.Length) string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "fencecard setup 1\nbit %s %s\nfence %s\nheights%s\n",
		s.Bit.Kind, s.Bit.True().MM(), s.Fence.NearEdge.MM(), heights(s.Heights))
	deckcode.Shapes(&b, s.Bit)
	if s.Carriage > 0 {
		fmt.Fprintf(&b, "carriage %s\n", s.Carriage.MM())
	}
	var runs []string
	for i := range s.Runs {
		runs = append(runs, run(&s.Runs[i], heights))
	}
	slices.Sort(runs)
	for _, run := range slices.Compact(runs) {
		b.WriteString(run)
	}
	return b.String()
}

// run writes what counts of a run. Its first word is no word of the trade any more, but codes stand on paper.
func run(r *deck.Run, heights func([]measure.Length) string) string {
	start, stop := "open", "open"
	if r.Start != nil {
		start = r.A.MM()
	}
	if r.Stop != nil {
		stop = r.B.MM()
	}
	return fmt.Sprintf("card %s down %s to fence %s leads, %s long, from %s to %s, depth %s, heights%s\n",
		r.Step.Down, r.Step.Fence, r.Leads, r.Length.MM(), start, stop, r.Channel.Depth.MM(), heights(r.Heights))
}

// plainCode takes hyphens and capitals out of a code as typed.
func plainCode(code string) string {
	return strings.ToLower(strings.ReplaceAll(strings.TrimSpace(code), "-", ""))
}
