// Package planfile reads a maker's plan and shop file, which are YAML, into
// the types of package joinery. It is the only reader of YAML in the program.
//
// [Read] reads a plan and finds every fault in it at once; a fault in one cut
// hides none in the others and causes no second one. [ReadShop] does the same
// for a shop file, and [BuiltInShop] is the example shop for a plan that names
// none. The format itself is described by "fencecard help plan".
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
