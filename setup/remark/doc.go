// Package remark is what a maker is told about a deck: warnings about the plan
// ([Add] gives a deck all of them), cautions for each run, and what the check of
// its joints found. Conditions and cautions are rows of tables, each with its
// code, its words and what stands behind it.
package remark
