package page

import (
	"embed"
	"html/template"
	"io/fs"
	"sync"
)

//go:embed files/*.css files/*.js
var files embed.FS

//go:embed page.html
var layoutText string

// Files are the files that a served page needs beside it: its style sheet and its
// scripts, by their names at the root.
func Files() fs.FS {
	sub, err := fs.Sub(files, "files")
	if err != nil {
		panic("page: " + err.Error()) // part of the program
	}
	return sub
}

// scripts are the page's own, in the order in which they are read.
var scripts = []string{"boxes.js", "queue.js", "talk.js", "parts.js", "told.js", "press.js", "table.js", "keys.js", "begin.js"}

// layout is the page to be filled in. It is read when the first page is written, so
// that other commands do not wait for it.
var layout = sync.OnceValue(func() *template.Template {
	page := template.New("page").Funcs(template.FuncMap{"scripts": func() []string { return scripts }})
	return template.Must(template.Must(page.Parse(layoutText)).Parse(printText))
})

// inlined are the style sheet and the scripts for a page by itself.
func inlined() (template.CSS, template.JS, []template.JS) {
	read := func(name string) string {
		text, err := fs.ReadFile(Files(), name)
		if err != nil {
			panic("page: " + err.Error()) // part of the program
		}
		return string(text)
	}
	var all []template.JS
	for _, name := range scripts {
		all = append(all, template.JS(read(name)))
	}
	return template.CSS(read("bench.css")), template.JS(read("early.js")), all
}
