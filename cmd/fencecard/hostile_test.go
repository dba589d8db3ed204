package main

import (
	"slices"
	"strings"
)

// hostileDocuments are the documents that mean harm, of every kind.
func hostileDocuments() []hostileDocument {
	return slices.Concat(hostilePlans(), hostileDecks(), hostileBooks())
}

var planRead = documentKind{
	file: "plan.yaml", args: []string{"cards", "plan.yaml", "--format", "text", "--out", "-"}, sound: legPlan,
}

// hostilePlans are the plans. What their tree costs is measured in
// joinery/planfile.
func hostilePlans() []hostileDocument {
	row := func(name string, text func() string, says string) hostileDocument {
		return hostileDocument{"plan/" + name, planRead, text, says, exitFault}
	}
	return []hostileDocument{
		row("brackets", func() string { return fill("[", megabyte) }, "plan.yaml:1:51: lists and braces lie inside one another too deeply"),
		row("braces", func() string { return fill("{a: ", megabyte) }, "plan.yaml:1:201: lists and braces lie inside"),
		row("zero bytes", func() string { return fill("\x00", megabyte) }, "plan.yaml: the plan is not a text file"),
		row("UTF-16", func() string { return wide(fill("unit: in\n", megabyte)) }, "plan.yaml: the plan is saved as UTF-16"),
		row("a long line", func() string { return "unit: in\ntitle: " + fill("x", 7*megabyte) }, "plan.yaml:1:1: the plan has no pieces"),
		row("a longer file", func() string { return fill("# \n", 9*megabyte) }, "plan.yaml: the plan is larger than 8 MB"),
		row("a million keys", func() string { return counted("", "k%d:\n", 8*megabyte-64) }, "plan.yaml:200001:8: the plan has more than 400000 words and values"),
		row("tabs", func() string { return fill("\tunit: in\n", megabyte) }, "plan.yaml:1:1: this line begins with a tab"),
		row("Latin-1", func() string { return fill("title: Tischb\xf6cke\n", megabyte) }, "plan.yaml:1:14: this letter is not UTF-8"),
		row("a long length", func() string { return strings.Replace(legPlan, "17}", fill("3", megabyte)+"}", 1) }, `plan.yaml:7:62: "333333333333..." is not a length`),
	}
}
