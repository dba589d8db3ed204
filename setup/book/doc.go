// Package book keeps setups that have worked, in a text file that belongs to
// the maker.
//
// The file is lines of "key: value". An entry begins with "setup: NAME" at the
// left margin; its fields are indented below it, its runs' fields further:
//
//	fencecard setup book 1
//
//	# tenons fit dry, cut these first
//	setup: seat rail mortises
//	  code: 7k3f-9m2q
//	  bit: three eighths up-cut
//	  ...
//	  fence to near edge: 1/2 in
//	  fence stood: 33/64 in
//	  run: front left leg
//	    cut: seat rail
//	    ...
//
// A line format of its own, and not YAML, because a change must leave every
// other line as the maker wrote it, and because a slip in one entry must not
// take the others with it: [Book] is its lines, and a change replaces those of
// one entry. Comments (# at the start of a line, or after a blank behind a
// value that is no free text) and fields this package does not know are kept.
//
// [Read] takes the text, [Book.Put] and [Book.Forget] give the changed text,
// [Book.Match] compares a deck with what is kept. Nothing here touches a file.
package book
