// Package trade has the rules of the trade that a maker is told by: the limits at
// which something is said, what holds at every run, and what stands behind it.
package trade

// What stands behind a rule.
const (
	// CommonPractice marks a rule of the trade that no handbook we read gives.
	CommonPractice = "common practice, no source"
	// BGR100500 is on setting with the tool standing still, and on covering it.
	BGR100500 = "German BGR 100-500, ch. 2.23 (read)"
	// WIS18 is on stopped work, and on knots.
	WIS18 = "UK HSE sheet WIS18, the issue marked Revised (read in part; a Revision 2 exists)"
	// Rotation is why work is fed against the turn of the bit.
	Rotation = "worked out from the rotation of the bit"
	// WoodDust is how much of it may be breathed, and of which.
	WoodDust = "UK HSE: wood dust limits of 3 mg/m3 for hardwood and mixtures, 5 mg/m3 for softwood, over 8 h; its page on woodworking on western redcedar"
)
