package screen

import (
	"fmt"
	"strconv"
	"strings"

	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// cautions writes a card's gravest cautions in full, the rest by number.
func (t *textWriter) cautions(r *deck.Run) {
	full := min(wording.InFull, len(r.Cautions))
	for _, caution := range r.Cautions[:full] {
		t.wrapped(fmt.Sprintf("      %-7s   ", caution.Weight), caution.Words)
	}
	if rest := r.Cautions[full:]; len(rest) > 0 {
		t.wrapped("      also      ", ByNumber(rest)+" below")
	}
}

// ByNumber refers to cautions as "cautions 4, 7 and 9".
func ByNumber(cautions []deck.Caution) string {
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

// allCautions writes every caution that some card refers to by number.
func (t *textWriter) allCautions(d *deck.Deck) {
	t.line(0, "")
	t.line(0, "%s", strings.Repeat("=", textWidth))
	t.line(0, "CAUTIONS")
	t.wrapped("At every card: ", remark.AlwaysMind)
	for _, c := range wording.UsedCautions(d, wording.InFull) {
		t.wrapped(fmt.Sprintf("%4d  %-7s  ", c.Number, c.Weight), c.Words)
	}
}
