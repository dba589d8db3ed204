package page

import "fencecard/output/sheets"

// About is what a page needs to know besides its deck. The zero value is a page in
// a file by itself.
type About struct {
	// Served: a program keeps the ticks and answers, and has [Files] beside the
	// page.
	Served bool
	// Shared: the page is for a device that was let in, which may tick and try.
	Shared bool
	// Plan is the address of the screen on which the plan is written, "" for none.
	Plan string
	// Begin is the address where other plans are begun and gone on with, "" for none; a
	// page that has no plan's screen shows it first.
	Begin string
	// Questions are what can be measured, by the number of a run.
	Questions map[string]Questions
	// Pages says in which units lengths are printed and how they are rounded.
	Pages sheets.Pages
}

// Questions are what can be measured for a run.
type Questions struct {
	Table []Question // as the table stands
	Cut   []Question // on a test cut
}

// Question is one measure.
type Question struct {
	Name  string // of its field in a form
	Words string // from where to where, in the sheet's own words
	Unit  string // of a bare number: "in" or "mm"
}
