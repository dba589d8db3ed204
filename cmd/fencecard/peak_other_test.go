//go:build !linux || race

package main

// peak is not told by other systems, and says nothing of the program where the
// race detector keeps its own books.
func peak() int { return 0 }
