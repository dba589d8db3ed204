package sheets

import (
	"fencecard/output/paper"
	"fencecard/setup/remark/trade"
)

// rules sets the rules that hold at every run.
func (s Setter) rules(w paper.Paper) paper.Block {
	if w < twoColumns {
		return s.rulesPhrase().Set(w)
	}
	return runOn(s.rulesPhrase(), 2, (w-4)/2, 4)
}

func (s Setter) rulesPhrase() paper.Phrase {
	var all paper.Phrase
	for _, c := range trade.Everywhere() {
		all = all.Say(s.Bold(paper.Least), c.Weight.String()).Say(s.Letters(paper.Least), c.Words)
	}
	return all
}
