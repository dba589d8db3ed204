// Package proof proves a deck before the first cut, by a way that shares
// nothing with how its runs were made: [Check] puts each piece on a table of
// its own, cuts it only by what the runs say (side down, side to the fence,
// fence distance, marks, heights, bit) and compares that with what the plan
// asks for, wall by wall, end by end and depth by depth. Every number on a run
// is used by itself, so one that does not agree with the others is found.
//
// The proof works on [Claims], filled by [Of] from a deck or by a reader of a
// deck written as JSON. It uses the types of the package setup but none of the
// functions that make runs; a test holds it to that.
//
// A run ready to be cut, [Standing], is what package attable puts measures to.
package proof
