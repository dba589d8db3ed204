package page

import (
	"bytes"
	_ "embed"
	"html/template"
	"sync"
)

//go:embed print.html
var printText string

var printLayout = sync.OnceValue(func() *template.Template { return template.Must(template.New("").Parse(printText)) })

// Prints is where the pages of the deck are.
func (*view) Prints() string { return "/print/" }

// PrintForm asks what to print, and on which paper: HTML for a page whose program has
// the pages below an address, such as "/print/". Whoever shows it puts the code of the
// deck into its field "deck".
func PrintForm(below string) (template.HTML, error) {
	var b bytes.Buffer
	err := printLayout().ExecuteTemplate(&b, "print", struct{ Prints, Code string }{below, ""})
	return template.HTML(b.String()), err
}
