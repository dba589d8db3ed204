// Package deck has the types of a deck and nothing of how one is made: a [Deck]
// is [Setup]s in running order, a setup one bit at one fence distance and the
// [Run]s made there, a run one kind of piece once over the bit.
//
// What a maker is told along with it, [Warning]s, [Caution]s and [Joint]s, is
// written by the package remark.
package deck
