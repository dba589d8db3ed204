package main

import "embed"

//go:embed start
var start embed.FS

// startPages are what one reads who has unpacked the archive, and what one presses:
// a program without a window of its own is opened through a terminal, which this
// does.
var startPages = map[string][]struct {
	from, name string
	runs       bool
}{
	"linux":   {{from: "linux.txt", name: "START HERE.txt"}},
	"darwin":  {{from: "macos.txt", name: "START HERE.txt"}, {from: "macos.command", name: "Start fencecard.command", runs: true}},
	"windows": {{from: "windows.txt", name: "START HERE.txt"}, {from: "windows.cmd", name: "Start fencecard.cmd"}},
}

// handed are the pages that an archive begins with.
func handed(m machine) []file {
	var files []file
	for _, p := range startPages[m.system] {
		data, err := start.ReadFile("start/" + p.from)
		if err != nil {
			panic(err) // an embedded file is missing from the build
		}
		files = append(files, file{name: p.name, data: data, runs: p.runs})
	}
	return files
}
