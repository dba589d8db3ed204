package planfile

import (
	"iter"
	"strings"
	"unicode/utf8"
)

// stretch is a part of the text, from one offset to before another.
type stretch struct{ from, to int }

// listing is a list that is read some entries at a time.
type listing struct {
	key   int     // where its key begins
	inner stretch // all its entries; whole lines, or what stands between the brackets
	flow  bool    // in brackets
	dash  int     // how far its dashes are indented, where it is not in brackets
}

// entries gives the stretches of a list's entries one after another.
func (l listing) entries(text string) iter.Seq[stretch] {
	text = text[:l.inner.to]
	end := func(at int) int { return min(flowEnd(text, at, ",")+1, len(text)) }
	if !l.flow {
		end = func(at int) int { return l.nextDash(text, at) }
	}
	return func(yield func(stretch) bool) {
		for at := l.inner.from; at < len(text); {
			next := end(at)
			if !yield(stretch{at, next}) {
				return
			}
			at = next
		}
	}
}

// nextDash is where the line of the next entry begins, behind the one at the
// offset.
func (l listing) nextDash(text string, at int) int {
	first := word(text, at)
	for {
		if first = word(text, below(text, first)); first >= len(text) {
			return len(text)
		}
		if at := lineStart(text, first); first-at == l.dash && dashAt(text, first) {
			return at
		}
	}
}

// batches gives stretches of several entries each, as many as are no heavier
// than the most; a heavier entry comes alone.
func (l listing) batches(text string, most int) iter.Seq[stretch] {
	return func(yield func(stretch) bool) {
		batch, weight := stretch{l.inner.from, l.inner.from}, 0
		for entry := range l.entries(text) {
			own, _ := weigh(text[entry.from:entry.to], most)
			if weight > 0 && weight+own > most {
				if !yield(batch) {
					return
				}
				batch, weight = stretch{entry.from, entry.from}, 0
			}
			batch.to = entry.to
			weight += own
		}
		if batch.to > batch.from {
			yield(batch)
		}
	}
}

// blanked is a stretch of the text with the lists in it emptied, and every other
// character at its line and column.
func blanked(text string, in stretch, lists []listing) string {
	if len(lists) == 0 {
		return text[in.from:in.to]
	}
	var b strings.Builder
	for _, l := range lists {
		b.WriteString(text[in.from:l.inner.from])
		inner := text[l.inner.from:l.inner.to]
		b.WriteString(strings.Repeat("\n", strings.Count(inner, "\n")))
		last := inner[strings.LastIndexByte(inner, '\n')+1:]
		b.WriteString(strings.Repeat(" ", utf8.RuneCountInString(last)))
		in.from = l.inner.to
	}
	b.WriteString(text[in.from:in.to])
	return b.String()
}
