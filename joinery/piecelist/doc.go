// Package piecelist turns a list of pieces, kept in a spreadsheet and saved as
// text, into a plan to which only joints must be added.
//
// Bytes become rows (package spreadsheet, by [encoding/csv] and
// golang.org/x/text), rows become pieces, pieces become the text of a plan. Columns are known by their
// heads, in English or German. What the list does not say, such as which way a
// piece lies in the finished work, and what a spreadsheet has spoiled, such as
// the 3/4 it took for a day in April, is never guessed in silence: [Read]
// returns it as a [Question], most with a default. It is called again with the
// answers, until there is nothing left to ask. A caller who cannot ask makes
// faults of the questions, or takes every default, which then stands as a
// remark beside its piece.
//
// Lengths are parsed by package measure alone; this package only undoes what
// spreadsheets and countries do to them. The words it knows (heads, kinds of
// pieces, names of woods) are the embedded tables *.tsv, which a maker may
// correct.
package piecelist
