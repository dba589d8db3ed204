// Package sheets lays out a deck for paper: the run sheet, a sheet for each setup,
// a card for each workpiece, and strips with marks at full size.
package sheets
