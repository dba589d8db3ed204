// Package ticks keeps what was done at the table: which box of which run was
// ticked, by which device, and what was measured there. A file only ever grows,
// by one JSON document a line, so that nothing that happens to the program takes
// away what stood there.
//
// A batch is one making of a plan's pieces. A tick belongs to the batch in which
// it was made; [File.NewBatch] begins one that has none.
package ticks
