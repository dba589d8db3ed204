// Package timber holds what is known of woods: how hard each is, how deep one
// pass may go, and how far it moves with the seasons. Its figures stand in
// species.tsv, each with its source.
package timber
