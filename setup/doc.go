// Package setup turns a plan into machine setups: for every channel of every
// piece which side goes down, which against the fence, which end leads, the
// fence distance, the start and stop marks and the heights of the bit. It
// groups the runs into setups, orders them, and gathers warnings.
//
// [Make] is the whole way from a plan to a [deck.Deck]. On the way a channel
// becomes a [Job] with one or more ways to make it, each [Way] a chain of
// [deck.Step]s; steps that share a bit and a fence distance become a
// [deck.Setup], each of them a [deck.Run].
//
// The machine is seen by the operator: the fence across the back of the table,
// the bit turning counter-clockwise seen from above, the work fed from right
// (infeed) to left (outfeed).
package setup
