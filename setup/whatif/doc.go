// Package whatif changes a plan, makes it, and compares: it finds the small
// changes that would spare a setup, and says why each setup is there.
package whatif
