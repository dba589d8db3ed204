package main

import "strings"

var listRead = documentKind{
	file: "list.csv", args: []string{"new", "-", "--from", "list.csv"},
	sound: "Part,Qty,Length,Width,Thickness,Lies\nShelf,1,30,9,3/4,\"length left-right, thickness up\"\n",
}

// hostileLists are the lists: some that are refused at sight, and some with
// something to say of every row.
func hostileLists() []hostileDocument {
	const heads = "Part,Qty,Length,Width,Thickness\n"
	row := func(name string, text func() string, says string) hostileDocument {
		return hostileDocument{"list/" + name, listRead, text, "list.csv:" + says, exitFault, mostTimes}
	}
	rows := func(line string) func() string {
		return func() string { return counted(heads, line, megabyte) }
	}
	return []hostileDocument{
		row("commas", func() string { return heads + fill(",", megabyte) }, "1:1: the list has more than 300000 cells"),
		row("wide rows", rows(strings.Repeat(",x%[1]d", 150)+"\n"), "2:1: this row has more than 100 cells"),
		row("an open quote", func() string { return heads + `"` + fill("rail,2,30,3,3/4\n", megabyte) }, "2:1: a quotation mark begins here"),
		row("quotes", func() string { return heads + fill(`"`, megabyte) }, "2:1: "),
		row("line ends in cells", func() string { return heads + fill("\"an\nend\",", megabyte) }, "2:1: "),
		row("zero bytes", func() string { return heads + fill("\x00", megabyte) }, "2:1: there is a character here that no text has"),
		row("bytes of no alphabet", func() string { return heads + fill("\x81", megabyte) }, "2:1: there is a character here that no text has"),
		row("UTF-16", func() string { return wide(heads + fill("rail,2,30,3,3/4\n", megabyte)) }, "15001:1: the list has more than 15000 rows"),
		row("a larger file", func() string { return fill("rail,2,30,3,3/4\n", 9*megabyte) }, " the list is larger than 8 MB"),
		row("no heads", func() string { return fill("rail,2,30,3,3/4\n", megabyte/8) + fill("a line of words\n", megabyte) }, "15001:1: the list has more than 15000 rows"),
		row("a long name", func() string { return heads + fill("x", megabyte) + ",2,30,3,3/4\n" }, "2:1: cell A2 has more than 2000 characters"),
		row("a long length", func() string { return heads + "rail,2," + fill("9", megabyte) + ",3,3/4\n" }, "2:1: cell C2 has more than 2000 characters"),
		row("many lengths in a cell", func() string { return heads + "rail,2," + fill("4x", megabyte) + ",3,3/4\n" }, "2:1: cell C2 has more than 2000 characters"),
		row("too many rows", rows("rail %d,2,30,3,3/4\n"), "15001:1: the list has more than 15000 rows"),
		row("a question in every row", rows("a piece whose name is so long that fifteen thousand fill a megabyte %d,2,30,3,3/4\n"), "2:1: the list does not say which way"),
		row("corners", rows("leg that is at every corner of a chest of drawers in a row of them %d,4,30 1/2,3,3\n"), "2:1: the list does not say which way"),
	}
}
