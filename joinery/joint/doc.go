// Package joint works out the two cuts of a joint from what a maker says once:
// which end goes into which side, how the one piece lies against the other, and
// the words of the kind, such as the thickness of a tenon.
//
// A [Kind] is one row of [Kinds] and one file. [Kind.Make] takes a [Meeting] of
// two pieces and its [Words] and returns the [Halves], or what is wrong with
// them in the words that were written. Nothing here reads text: package planfile
// does, and names the cuts.
//
// Both pieces are described as they stand in the finished work, in the same
// axes, so the left end of a rail meets the right side of a leg, and what is
// left open between them is one distance in each of the two directions across
// the joint: see [Place].
package joint
