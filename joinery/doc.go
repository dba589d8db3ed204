// Package joinery holds what a maker knows before going to the machine: pieces
// of wood and their six sides, the cuts to be made in them, the woods, and the
// shop with its fence and bits.
//
// A [Plan] is read by the package planfile below this one. Each [Cut] is laid
// out once, by [Cut.Lay], as one or more channels, rectangular but for shaped
// edges; everything that comes after (setups, cards, proofs) knows only channels.
//
// Lengths are exact: see [measure.Length]. A piece is described as it stands in the
// finished work, seen from the front, so left and right are the viewer's:
//
//	X points right, Y points back, Z points to the top (right-handed).
package joinery
