package output

import (
	"fmt"

	"fencecard/setup/deck"
)

// keptRows say what the setup book knows of a setup; none where it is not kept.
func (s setter) keptRows(k *deck.Kept, w Paper) []block {
	if k == nil {
		return nil
	}
	body, bold := s.letters(s.grade.body), s.bold(s.grade.body)
	rows := []block{phrase{}.say(bold, fmt.Sprintf("KEPT AS %q", k.Name)).say(body, "("+k.Code+")").set(w)}
	for _, line := range k.Learnt {
		rows = append(rows, phrase{}.say(bold, line).set(w))
	}
	for _, line := range k.Notes {
		rows = append(rows, phrase{}.say(body, line).set(w))
	}
	return rows
}
