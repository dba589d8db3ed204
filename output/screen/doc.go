// Package screen writes decks, proofs, shops, woods and setup books to be read on
// a screen of 80 columns.
package screen
