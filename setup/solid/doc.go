// Package solid holds the solid of one piece of wood: its blank less what the
// bit takes out. It knows the six sides and nothing of fences, marks or runs,
// so that both the warnings and the proof can ask it where cuts meet, how thin
// the wood between them is, and how much wood is gone.
//
// A [Hollow] is the room a bit sweeps: an upright prism over a rectangle whose
// corners are rounded with the bit's radius. It may stick out of the blank,
// where a bit is fed in, runs out or is buried in the fence; only what lies
// inside the blank counts.
package solid
