package remark_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/setup/internal/workpiece"
)

func TestTheMeetingOfAGrooveAndADadoSpeaksOfNoTenon(t *testing.T) {
	meeting := func(a, b string) string {
		for _, w := range workpiece.DeckOf(t, workpiece.PieceFrom(t, "20 2 2", a, b)).Warnings {
			if w.Code == "cuts-meet" {
				return w.Text
			}
		}
		return ""
	}
	said := meeting("groove a top 1/4 1/2:back - 1", "dado b back 1/4 4:left - 1")
	assert.Contains(t, said, `the groove "a" in the top and the dado "b" in the back meet`)
	assert.NotContains(t, said, "tenon")
	said = meeting("mortise a top 1/4 1/2:back 3-6:left 1", "mortise b back 1/4 1/2:top 3-6:left 1")
	assert.Contains(t, said, "mitre the ends of both tenons")
}
