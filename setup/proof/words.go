package proof

import (
	"strconv"

	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

func (p *prover) text(l measure.Length) string { return Say(p.scale, l) }

// Say is a length as a scale reads it, with mm but without in, as it is
// said at the bench; one that falls between two divisions is given in full.
func Say(s measure.Scale, l measure.Length) string {
	if !s.On(l) {
		return s.Spell(l)
	}
	if s.Unit == measure.Millimetres {
		return s.Format(l) + " mm"
	}
	return s.Format(l)
}

// name is the channel in words, with its piece.
func (w *wanted) name() string {
	return w.cut.Kind.Name + " " + strconv.Quote(w.cut.Name) + inBrackets(w.channel.Part) + " in " + strconv.Quote(w.piece.Name)
}

func inBrackets(part string) string {
	if part == "" {
		return ""
	}
	return " (" + part + ")"
}

func markOrNone(m *deck.Mark, which string) string {
	if m == nil {
		return "no " + which + " mark"
	}
	return "a " + which + " mark"
}

// ordinal counts in words as far as is useful.
func ordinal(n int) string {
	words := [...]string{"", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"}
	if n < len(words) {
		return words[n]
	}
	return "at place " + strconv.Itoa(n)
}
