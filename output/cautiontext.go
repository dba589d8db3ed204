package output

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fencecard/setup"
)

// inFull is how many cautions a card gives in full; the others by number.
const inFull = 3

// cautions writes a card's gravest cautions in full, the rest by number.
func (t *textWriter) cautions(c *setup.Card) {
	full := min(inFull, len(c.Cautions))
	for _, caution := range c.Cautions[:full] {
		t.wrapped(fmt.Sprintf("      %-7s   ", caution.Weight), caution.Words)
	}
	if rest := c.Cautions[full:]; len(rest) > 0 {
		t.wrapped("      also      ", byNumber(rest)+" below")
	}
}

// byNumber refers to cautions as "cautions 4, 7 and 9".
func byNumber(cautions []setup.Caution) string {
	var numbers []string
	for _, c := range cautions {
		numbers = append(numbers, strconv.Itoa(c.Number))
	}
	last := len(numbers) - 1
	if last == 0 {
		return "caution " + numbers[0]
	}
	return "cautions " + strings.Join(numbers[:last], ", ") + " and " + numbers[last]
}

// usedCautions lists the cautions that some card has beyond its first few, in
// general words.
func usedCautions(d *setup.Deck, beyond int) []setup.Caution {
	used := map[int]bool{}
	for i := range d.Setups {
		for _, c := range d.Setups[i].Cards {
			for _, caution := range c.Cautions[min(beyond, len(c.Cautions)):] {
				used[caution.Number] = true
			}
		}
	}
	return slices.DeleteFunc(setup.CautionTable(&d.Plan.Shop), func(c setup.Caution) bool { return !used[c.Number] })
}

// allCautions writes every caution that some card refers to by number.
func (t *textWriter) allCautions(d *setup.Deck) {
	t.line(0, "")
	t.line(0, "%s", strings.Repeat("=", textWidth))
	t.line(0, "CAUTIONS")
	t.wrapped("At every card: ", setup.AlwaysMind)
	for _, c := range usedCautions(d, inFull) {
		t.wrapped(fmt.Sprintf("%4d  %-7s  ", c.Number, c.Weight), c.Words)
	}
}
