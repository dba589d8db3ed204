package main

import "slices"

// hostileDocuments are the documents that mean harm, of every kind.
func hostileDocuments() []hostileDocument {
	return slices.Concat(hostilePlans(), hostileDecks(), hostileBooks(), hostileLists())
}
