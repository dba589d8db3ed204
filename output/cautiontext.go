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
		t.wrapped("      also      ", "cautions "+cautionNumbers(rest)+" below")
	}
}

// cautionNumbers lists numbers as "4, 7 and 9".
func cautionNumbers(cautions []setup.Caution) string {
	var numbers []string
	for _, c := range cautions {
		numbers = append(numbers, strconv.Itoa(c.Number))
	}
	last := len(numbers) - 1
	if last < 1 {
		return strings.Join(numbers, "")
	}
	return strings.Join(numbers[:last], ", ") + " and " + numbers[last]
}

// allCautions writes every caution that some card refers to by number.
func (t *textWriter) allCautions(d *setup.Deck) {
	used := map[int]bool{}
	for i := range d.Setups {
		for _, c := range d.Setups[i].Cards {
			for _, caution := range c.Cautions[min(inFull, len(c.Cautions)):] {
				used[caution.Number] = true
			}
		}
	}
	t.line(0, "")
	t.line(0, "%s", strings.Repeat("=", textWidth))
	t.line(0, "CAUTIONS")
	t.wrapped("At every card: ", setup.AlwaysMind)
	table := setup.CautionTable(&d.Plan.Shop)
	for _, c := range slices.DeleteFunc(table, func(c setup.Caution) bool { return !used[c.Number] }) {
		t.wrapped(fmt.Sprintf("%4d  %-7s  ", c.Number, c.Weight), c.Words)
	}
}
