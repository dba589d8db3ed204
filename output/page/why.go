package page

import (
	"fmt"
	"html/template"
	"io"
	"sync"

	"fencecard/joinery"
	"fencecard/output/wording"
	"fencecard/setup/whatif"
)

var whyLayout = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("why").Parse(
		`<ul>{{range .Reasons}}<li>{{.}}</li>{{end}}{{with .Cutting}}<li>{{.}}</li>{{end}}</ul>` +
			`{{with .Spare}}<p><b>To spare it:</b> {{.}}</p>{{end}}` +
			`{{if .Untried}}<p>Not every change that might spare it was tried, there being too many.</p>{{end}}`))
})

// WriteWhy writes why a setup is there, and which small change to the plan would
// spare it, as a part of a page.
func WriteWhy(w io.Writer, x whatif.Explanation, shop *joinery.Shop) error {
	v := struct {
		Reasons        []string
		Cutting, Spare string
		Untried        bool
	}{Reasons: x.Reasons, Cutting: x.Cutting, Untried: x.Untried}
	if x.Saving != nil {
		v.Spare = x.Saving.Change + ": " + wording.Savings(x.Saving, shop)
	}
	if err := whyLayout().Execute(w, v); err != nil {
		return fmt.Errorf("writing why setup %d is there: %w", x.Setup.Number, err)
	}
	return nil
}
