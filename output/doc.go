// Package output prints a deck: as JSON, as text, as pages to print or to tick on a
// screen, and as full-scale strips. It computes no geometry of cuts; what stands on a card was
// worked out by the package setup.
package output
