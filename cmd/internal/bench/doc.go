// Package bench serves the work on a plan to browsers: the sheets to read, the
// ticks, and what a measure at the table means. It watches the plan's files and
// hands what changed to whoever asks for it.
//
// A [Server] has one site or two: the desk's, on the loopback address, and the
// shared one, on an address of the local network, for those who were let in by a
// key. See guard.go for what each may do.
package bench
