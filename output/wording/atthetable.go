package wording

import (
	"strings"

	"fencecard/joinery/pattern"
)

// Words of a warning that are for whoever edits the plan.
var (
	lineOfPlan = pattern.New(`, line \d+`)
	sawInPlan  = pattern.New(` \((leave the \w+ out of its cheeks, and add a lap there with|write) by: saw\)`)
	writeInIt  = pattern.New(`\bwrite (\w+):`)
)

// AtTheTable says a warning for the one at the table: what the plan's editor would
// write becomes what is done with tools, or is said to be for the plan.
func AtTheTable(text string) string {
	text = lineOfPlan.ReplaceAllString(text, "")
	text = sawInPlan.ReplaceAllString(text, "")
	text = strings.NewReplacer(
		"write start: hole and bore it first", "bore a start hole first",
		"write ends: square and chisel the ends", "chisel the ends square",
	).Replace(text)
	return writeInIt.ReplaceAllString(text, "in the plan write $1:")
}
