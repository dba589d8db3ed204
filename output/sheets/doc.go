// Package sheets lays out a deck for paper: the run sheet, a sheet for each setup,
// a card for each piece, pages of joints, and the strips of package strips.
package sheets
