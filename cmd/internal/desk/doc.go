// Package desk is the plan's screen: the text of a plan with its faults at their
// lines, the sheets beside it as they will be printed, and a way to save that never
// overwrites unseen what another editor wrote.
//
// [New] gives a handler for everything under /plan. It is for the desk alone: who
// mounts it sees to it that no shared device reaches it, and which hosts and origins
// may.
package desk

//go:generate go run editor/generate.go
