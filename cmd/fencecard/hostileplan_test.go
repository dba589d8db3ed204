package main

import (
	"fmt"
	"strings"
)

var planRead = documentKind{
	file: "plan.yaml", args: []string{"cards", "plan.yaml", "--format", "text", "--out", "-"}, sound: legPlan,
}

// hostilePlans are the plans: some that are refused at sight, and some whose
// fault comes after a megabyte of sound cuts and pieces.
func hostilePlans() []hostileDocument {
	const (
		shelf   = "  - piece: shelf\n    size: {left-right: 30, front-back: 9, top-bottom: 1}\n    cuts:\n"
		dado    = "      - {dado: c%d, in: top, width: 1/4, setback: 1 from left, depth: 1/4"
		tenon   = "      - {tenon: c%d, at: left, length: 1, cheeks: {front: 1/8, back: 1/8, top: 1/8, bottom: 1/8}}\n"
		rail    = "      - mortise: c%d\n        in: top\n        width: 1/4\n        setback: 1 from front\n        span: 1 to 3 from left\n        depth: 1/4\n"
		mirror  = "  - {piece: m%d, mirror: {of: shelf, across: left-right}}\n"
		tiny    = "  - {piece: p%d, size: {left-right: 9, front-back: 2, top-bottom: 1}}\n"
		fault   = "      - {dado: end, in: top, width: 1/4, setback: 1 from left, depht: 1/4}\n"
		tooMany = "the plan has more than 400000 words and values"
	)
	row := func(name string, text func() string, says string) hostileDocument {
		return hostileDocument{"plan/" + name, planRead, text, "plan.yaml:" + says, exitFault, mostTimesTree}
	}
	inBraces := func(name string, text func() string, says string) hostileDocument {
		doc := row(name, text, says)
		doc.most = mostTimesInBraces
		return doc
	}
	ending := func(head, line, end string) func() string {
		return func() string { return counted("unit: in\npieces:\n"+head, line, megabyte) + end }
	}
	keyAgain := func() string {
		return "unit: in\npieces:\n" + shelf + "      - {note: a" + fill(", note: a", megabyte) + "}\n"
	}
	return []hostileDocument{
		row("brackets", func() string { return fill("[", megabyte) }, "1:400000: "+tooMany),
		row("dashes", func() string { return fill("- ", megabyte) }, "1:799999: "+tooMany),
		row("zero bytes", func() string { return fill("\x00", megabyte) }, " the plan is not a text file"),
		row("UTF-16", func() string { return wide(fill("unit: in\n", megabyte)) }, " the plan is saved as UTF-16"),
		row("a long line", func() string { return "unit: in\ntitle: " + fill("x", 7*megabyte) }, "1:1: the plan has no pieces"),
		row("a longer file", func() string { return fill("# \n", 9*megabyte) }, " the plan is larger than 8 MB"),
		row("a million keys", func() string { return counted("", "k%d:\n", 8*megabyte-64) }, "200001:1: "+tooMany),
		row("fewer keys", func() string { return counted("", "k%d:\n", megabyte) }, `1:1: the plan has no key "k0"`),
		row("empty lines", func() string { return fill("\n", megabyte) }, " the plan is empty"),
		row("tabs", func() string { return fill("\tunit: in\n", megabyte) }, "1:1: this line begins with a tab"),
		row("Latin-1", func() string { return fill("title: Tischb\xf6cke\n", megabyte) }, "1:14: this letter is not UTF-8"),
		row("a long length", func() string { return strings.Replace(legPlan, "17}", fill("3", megabyte)+"}", 1) }, `7:62: "333333333333..." is not a length`),
		row("aliases", func() string { return counted("a0: &a0 [x, x, x]\n", "a%d: &a1 [*a0, *a0, *a0, *a0]\n", megabyte) }, "1:5: &a0 gives the value a name"),
		row("an open quote", func() string { return `title: "` + fill(`a\"`, megabyte) }, "1:8: a quotation mark begins here and none ends it"),
		row("texts for pieces", func() string { return "unit: in\npieces: [" + fill("x, ", megabyte) + "]" }, "2:10: a piece has a name and a size"),
		inBraces("one key again", keyAgain, "6:10: a cut begins with its kind and name, not with note"),
		row("sound cuts", ending(shelf, dado+"}\n", fault), `13591:64: dado "end" has no key "depht"`),
		row("a cut over lines", ending(shelf, rail, fault), `45642:64: dado "end" has no key "depht"`),
		row("tenons", ending(shelf, tenon, fault), `10497:64: dado "end" has no key "depht"`),
		row("a chain of cuts", func() string {
			var b strings.Builder
			b.WriteString("unit: in\npieces:\n" + shelf)
			for i := 0; b.Len() < megabyte; i++ {
				fmt.Fprintf(&b, dado+", after: c%d}\n", i, i+1)
			}
			return b.String()
		}, `11518:86: this piece has no cut named "c11513"`),
		row("circles", ending(shelf, dado+", after: [c0, c9, c5]}\n", ""), `6:83: "c0" cannot come after itself`),
		row("tiny pieces", ending("", tiny, "  - {piece: end}\n"), `14520:5: "end" has no size`),
		row("mirrors", ending(shelf+fmt.Sprintf(dado, 0)+"}\n", mirror, "  - {piece: end}\n"), "7507:20: with this mirror there are more than 15000 mirrored"),
		inBraces("braces", func() string {
			return counted("{unit: in, pieces: [{piece: shelf, size: {left-right: 30, front-back: 9, top-bottom: 1}, cuts: [",
				"{dado: c%d, in: top, width: 1/4, setback: 1 from left, depth: 1/4},", megabyte) + "{dado: end}]}]}"
		}, `1:1048577: dado "end" has no in`),
	}
}
