package sheets

import (
	"cmp"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Every sheet that a run stands on says each warning of the run, and how its waste is
// nibbled: the sheets of a setup are taped up apart. An index card has room for the
// gravest alone, as small sheets where more would take one more, and what is of the bit was done when it was fitted. Where two cautions
// differ in their figures, one says both.
func TestEverySheetSaysTheWarningsOfItsRuns(t *testing.T) {
	figures := regexp.MustCompile(`\d+ \d+/\d+|\d+/\d+|\d+(\.\d+)?`)
	apart, stood, short := map[PaperSize]int{}, 0, 0
	runs := 0
	for _, d := range realDecks(t) {
		runs += d.deck.Runs()
		for _, on := range []PaperSize{Letter, A4, Legal, A5} {
			s := newSetter(d.deck, Pages{Paper: on})
			for i := range d.deck.Setups {
				u := &d.deck.Setups[i]
				for n, sheet := range s.setupSheet(d.deck, i, s.body().H) {
					words := strings.ReplaceAll(saidIn(sheet), "|", " ")
					alike := figures.ReplaceAllString(words, "#")
					for k := range u.Runs {
						r := &u.Runs[k]
						if !standsOn(r, sheet) {
							continue
						}
						stood++
						if n > 0 {
							apart[on]++
						}
						if on == A5 && n > 0 && strings.Contains(words, allOnFirst) {
							short++
							continue
						}
						for _, c := range r.Cautions {
							if c.Weight < deck.Grave || c.Code == "trial-cut" || n > 0 && c.Code == "shank-and-collet" {
								continue
							}
							for _, sentence := range strings.SplitAfter(c.Brief, ". ") {
								sentence = strings.TrimSpace(sentence)
								assert.Contains(t, alike, figures.ReplaceAllString(sentence, "#"),
									"%s on %s, sheet %d of setup %d, run %s, %s", d.Name, on, n+1, u.Number, r.Number(), c.Code)
								for _, figure := range figures.FindAllString(sentence, -1) {
									assert.Contains(t, words, figure, sentence)
								}
							}
						}
						for _, sentence := range strings.SplitAfter(wording.Crossing(r, s.Scale, s.push), ". ") {
							assert.Contains(t, words, strings.TrimSpace(sentence), "%s on %s, run %s", d.Name, on, r.Number())
						}
					}
				}
			}
		}
	}
	for on, n := range apart {
		assert.Greater(t, n, 20, fmt.Sprint(on))
	}
	assert.Less(t, short, 3*apart[A5]/4, "small sheets have room for most")
	assert.Len(t, apart, 4)
	assert.Equal(t, 4*runs, stood, "every run stands on one sheet")
}

// An index card says the gravest warning of the runs that stand on it, of several the one
// that most of them have; what the others of the setup have is not theirs.
func TestIndexCardsSayTheGravestOfTheirRuns(t *testing.T) {
	figures := regexp.MustCompile(`\d+ \d+/\d+|\d+/\d+|\d+(\.\d+)?`)
	cards, short, bare := 0, 0, 0
	for _, d := range realDecks(t) {
		s := newSetter(d.deck, Pages{Paper: Index})
		for i := range d.deck.Setups {
			u := &d.deck.Setups[i]
			for n, sheet := range s.setupSheet(d.deck, i, s.body().H) {
				type said struct {
					number int // of the caution
					words  string
				}
				have := map[said]int{}
				for k := range u.Runs {
					if r := &u.Runs[k]; standsOn(r, sheet) {
						for _, c := range r.Cautions {
							if c.Weight < deck.Grave || c.Code == "trial-cut" || c.Code == "shank-and-collet" {
								continue
							}
							for _, sentence := range strings.SplitAfter(c.Brief, ". ") {
								have[said{c.Number, figures.ReplaceAllString(strings.TrimSpace(sentence), "#")}]++
							}
						}
					}
				}
				if n == 0 || len(have) == 0 {
					continue
				}
				order := func(a, b said) int { return cmp.Or(have[b]-have[a], a.number-b.number) }
				all := slices.SortedFunc(maps.Keys(have), order)
				words := figures.ReplaceAllString(strings.ReplaceAll(saidIn(sheet), "|", " "), "#")
				says := slices.ContainsFunc(all, func(s said) bool { return order(s, all[0]) == 0 && strings.Contains(words, s.words) })
				cards++
				switch {
				case says:
				case strings.Contains(words, "foot switch"), strings.Contains(words, "checked by"), strings.Contains(words, strings.TrimSuffix(allOnFirst, " 1.")):
					short++ // it is on the card before, and would take one more
				default:
					bare++
					t.Logf("%s, setup %d, card %d: not %q", d.Name, u.Number, n+1, all[0].words)
				}
			}
		}
	}
	assert.Greater(t, cards, 100)
	assert.Less(t, short, cards/20)
	assert.LessOrEqual(t, bare, 1, "a row as high as a card leaves no line")
}

// standsOn reports whether the row of a run is on a sheet: its number, and behind it the
// name of its piece.
func standsOn(r *deck.Run, sheet paper.Block) bool {
	name, _, _ := strings.Cut(paper.Printable(r.Piece.Name), " ")
	for i, p := range sheet.Parts {
		if p.Says == r.Number() && i+1 < len(sheet.Parts) && strings.HasPrefix(sheet.Parts[i+1].Says, name) {
			return true
		}
	}
	return false
}
