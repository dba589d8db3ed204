// Package deckfile is the JSON form of a deck, written by [Write] and read by
// [Read]. What a deck that was read says besides its claims is compared by
// [Differences].
package deckfile
