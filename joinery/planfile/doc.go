// Package planfile reads a maker's plan, which is YAML, into the types of package
// joinery: pieces, cuts, mirrors, joints and repeats. Its rooms are keys, what may
// be written; yamlfile, the text as keys and values with their places; shopfile,
// the shop; and where, how a cut's place on its piece is told. Nobody else in the
// program reads YAML.
//
// [Read] finds every fault of a plan at once; a fault in one cut hides none in the
// others and causes no second one. The format itself is described by "fencecard
// help plan".
//
// Only a small part of YAML is understood, the part a maker can see through:
// keys, lists and texts. Anchors, aliases, tags, merge keys and second
// documents are refused by name.
//
// The caller opens files: Read is handed a function for a shop that the plan
// names by path, and never touches the disk itself. A plan of a megabyte,
// however odd, is read or refused in time and memory that grow with its size: a
// large one is never made a tree as a whole.
package planfile
