package sheets

import (
	"fmt"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// keptRows say what the setup book knows of a setup; none where it is not kept.
func (s Setter) keptRows(k *deck.Kept, w paper.Paper) []paper.Block {
	if k == nil {
		return nil
	}
	body, bold := s.Letters(s.grade.body), s.bold(s.grade.body)
	rows := []paper.Block{paper.Phrase{}.Say(bold, fmt.Sprintf("KEPT AS %q", k.Name)).Say(body, "("+k.Code+")").Set(w)}
	for _, line := range k.Learnt {
		rows = append(rows, paper.Phrase{}.Say(bold, line).Set(w))
	}
	for _, line := range k.Notes {
		rows = append(rows, paper.Phrase{}.Say(body, line).Set(w))
	}
	return rows
}
