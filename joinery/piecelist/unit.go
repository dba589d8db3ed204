package piecelist

import (
	"strings"

	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
	"fencecard/joinery/piecelist/spreadsheet"
)

var (
	metricWord = pattern.New(`(?i)(?:^|[^\p{L}])(?:mm|cm|millimet(?:er|re)s?|centimet(?:er|re)s?|zentimeter)(?:$|[^\p{L}])`)
	inchWord   = pattern.New(`(?i)(?:^|[^\p{L}])(?:inch|inches|zoll)(?:$|[^\p{L}])|[(\[](?:in|")[)\]]`)
	aFraction  = pattern.New(`\d\s*[/⁄]\s*\d|[¼½¾⅛⅜⅝⅞]`)
)

// The figures that tell one unit from the other where nothing else does: no
// piece is 250 in long, and a list that is all under 2 thick is not in
// millimetres. Common practice, no source.
const (
	longestInches = 250
	thinnestMM    = 2
)

// readUnit finds the unit of bare numbers: on the command line, in the heads,
// above them, in the figures, behind other lengths. Else it is asked.
func (r *reader) readUnit() {
	unit := r.o.Unit
	for _, find := range []func() Unit{r.unitOfHeads, r.unitAbove, r.unitOfFigures, r.unitOfCells} {
		if unit == UnknownUnit {
			unit = find()
		}
	}
	if unit == UnknownUnit {
		unit = r.planUnit
	}
	if unit == UnknownUnit {
		unit = r.askUnit()
	}
	r.list.Unit = unit.of()
}

func (r *reader) askUnit() Unit {
	at := r.column(Length)
	if at == nil {
		at = r.column(Size)
	}
	q := Question{
		Key:     "unit",
		Place:   r.place(&r.rows[r.head], at.index),
		About:   "unit",
		Asks:    "are bare numbers in inches or millimetres, in or mm?",
		Choices: []string{"in", "mm"},
		Problem: "the list does not say whether its lengths are in inches or in millimetres",
		Remedy:  "write the unit into the head, such as Length (mm), or say it: --unit in or --unit mm",
	}
	if r.list.german {
		q.Default, q.Why = "mm", "the heads are German"
	}
	switch word, _ := ask(r, q, oneOf("in", "mm")); word {
	case "in":
		return Inches
	case "mm":
		return Millimetres
	}
	return UnknownUnit
}

// only gives the unit that has votes where the other has none.
func only(inches, metric bool) Unit {
	switch {
	case inches && !metric:
		return Inches
	case metric && !inches:
		return Millimetres
	}
	return UnknownUnit
}

func metricSuffix(unit string) bool { return unit == "mm" || unit == "cm" }

// unitOfHeads is the unit behind the heads, or in a row of units below them.
// Where they differ, that of the length counts; the others keep their own.
func (r *reader) unitOfHeads() Unit {
	if below := r.head + 1; below < len(r.rows) {
		if kind, _ := r.kindOf(&r.rows[below]); kind == unitRow {
			for i := range r.columns {
				if m := unitOnly.FindStringSubmatch(strings.ToLower(r.rows[below].Cell(r.columns[i].index))); m != nil {
					r.columns[i].unit = unitNamed(m[1])
				}
			}
		}
	}
	var inches, metric bool
	for _, c := range r.columns {
		if c.field < Length || c.field > Size || c.unit == "" {
			continue
		}
		if c.field == Length {
			return only(!metricSuffix(c.unit), metricSuffix(c.unit))
		}
		metric = metric || metricSuffix(c.unit)
		inches = inches || !metricSuffix(c.unit)
	}
	return only(inches, metric)
}

// unitAbove is the unit that a text above the heads names.
func (r *reader) unitAbove() Unit {
	var inches, metric bool
	for i := range r.rows[:r.head] {
		text := r.rows[i].Text()
		inches = inches || inchWord.MatchString(text)
		metric = metric || metricWord.MatchString(text)
	}
	return only(inches, metric)
}

// hasUnit reports whether a unit stands behind a length, and whether it is a
// metric one.
func hasUnit(text string) (has, metric bool) {
	if strings.Trim(text, "0123456789 .,/-") == "" {
		return false, false // most cells; the patterns of a unit take their time
	}
	bare := measure.UnitOf(text, measure.Inches) != measure.UnitOf(text, measure.Millimetres)
	return !bare, measure.UnitOf(text, measure.Inches) == measure.Millimetres
}

// unitOfCells is the unit behind the lengths: of most where none is bare. Beside
// bare ones only inches count: many a list of inches has its plywood in
// millimetres.
func (r *reader) unitOfCells() Unit {
	inches, metric, bare := 0, 0, 0
	for _, text := range r.lengthCells() {
		switch has, isMetric := hasUnit(text); {
		case isMetric:
			metric++
		case has:
			inches++
		default:
			bare++
		}
	}
	switch {
	case bare > 0 && metric > 0, inches+metric == 0:
		return UnknownUnit
	case inches > metric:
		return Inches
	}
	return Millimetres
}

// unitOfFigures judges by the bare figures alone.
func (r *reader) unitOfFigures() Unit {
	var inches, metric bool
	thickest := measure.Length(0)
	for c, text := range r.lengthCells() {
		if has, _ := hasUnit(text); has || c.unit != "" {
			continue
		}
		if d, is := spreadsheet.DateIn(text); is {
			inches = inches || d.Fraction() != ""
			continue
		}
		inches = inches || aFraction.MatchString(text)
		clean, _ := r.style.Plain(text, measure.Millimetres)
		l, err := measure.ParseLength(clean, measure.Millimetres)
		if err != nil {
			continue
		}
		metric = metric || l > longestInches*measure.Millimetre
		inches = inches || l > 0 && l < measure.Millimetre
		if c.field == Thickness {
			thickest = max(thickest, l)
		}
	}
	if thickest > 0 && thickest < thinnestMM*measure.Millimetre {
		inches = true
	}
	return only(inches, metric)
}
