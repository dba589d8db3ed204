package timber

import (
	"fmt"
	"strconv"

	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
)

// Direction is a direction across the grain, by the growth rings.
type Direction uint8

// Tangential is along the rings, the width of a flat-sawn board; Radial is
// across them, the width of a quarter-sawn board.
const (
	Tangential Direction = iota
	Radial
)

// String gives "tangential" or "radial".
func (d Direction) String() string {
	if d == Radial {
		return "radial"
	}
	return "tangential"
}

// Limits of moisture content in percent: the coefficients hold from 6 to 14,
// and above 30, the fibre saturation point, wood no longer swells.
const (
	coefficientFrom = 6
	coefficientTo   = 14
	fibreSaturation = 30
)

// Movement is a change of dimension and what it was worked out by.
type Movement struct {
	Change measure.Length // above 0 where the wood swells
	By     string         // "coefficient", "shrinkage", or "sheet" for one that does not move
	Figure float64        // the coefficient, or the shrinkage in percent
	From   Origin         // where the figure is from
}

// Change gives how much a width of the wood, measured at moisture content from
// (percent), swells or shrinks when it comes to the moisture content to.
//
// Where both lie in 6 to 14 %, it is equation 13-2 of the Wood Handbook
// (FPL-GTR-190, 2010): width x C x (to - from), C being CR or CT. Where either
// lies outside, it is equation 13-3 for the whole of the way: width x (to -
// from) / (30 x 100 / S - 30 + from), S being the shrinkage. The way is not
// parted at 6 or 14 %: C is 1 / (3000 / S - 20), which is equation 13-3 from
// 10 %, so for one species the two meet there, and where they do not (oaks and
// hickories as sold, some imported woods) a parted way would mix the figures of
// two sets of samples in one answer. A wood without a
// coefficient goes by its shrinkage throughout.
//
// The error is a [plantext.Fault] without a place: a moisture content below 0 or over
// 30 %, a width not above 0, or a wood without figures.
func (w Wood) Change(width measure.Length, from, to float64, d Direction) (Movement, error) {
	if width <= 0 {
		return Movement{}, plantext.Fault{Problem: "the width is 0", Remedy: "give the width across the grain"}
	}
	for _, moisture := range []float64{from, to} {
		if err := checkMoisture(moisture); err != nil {
			return Movement{}, err
		}
	}
	if !w.Moves() {
		return Movement{By: "sheet"}, nil
	}
	coefficient, shrinkage := w.CT, w.ShrinkT
	if d == Radial {
		coefficient, shrinkage = w.CR, w.ShrinkR
	}
	switch {
	case coefficient > 0 && moderate(from) && moderate(to):
		return Movement{part(width, coefficient*(to-from)), "coefficient", coefficient, w.CFrom}, nil
	case shrinkage > 0:
		share := (to - from) / (fibreSaturation*100/shrinkage - fibreSaturation + from)
		return Movement{part(width, share), "shrinkage", shrinkage, w.ShrinkFrom}, nil
	case coefficient > 0:
		return Movement{}, plantext.Fault{
			Problem: fmt.Sprintf("the %s shrinkage of %s is not known", d, w),
			Remedy:  fmt.Sprintf("keep within %d to %d %%, where its coefficient holds", coefficientFrom, coefficientTo),
		}
	}
	return Movement{}, plantext.Fault{
		Problem: fmt.Sprintf("how %s moves in its %s direction is not known", w, d),
		Remedy:  "name a wood of the table, or give its shrinkage in the shop file",
	}
}

// moderate reports whether the coefficients hold at that moisture content.
func moderate(moisture float64) bool { return moisture >= coefficientFrom && moisture <= coefficientTo }

// part is a share of a width.
func part(width measure.Length, share float64) measure.Length {
	return measure.FromMillimetres(width.Millimetres() * share)
}

func checkMoisture(percent float64) error {
	text := strconv.FormatFloat(percent, 'g', -1, 64)
	switch {
	case percent > fibreSaturation:
		return plantext.Fault{
			Problem: fmt.Sprintf("a moisture content of %s %% is above %d %%, where wood no longer swells", text, fibreSaturation),
			Remedy:  fmt.Sprintf("give %d at the most", fibreSaturation),
		}
	case !(percent >= 0):
		return plantext.Fault{
			Problem: fmt.Sprintf("a moisture content of %s %% is not possible", text),
			Remedy:  fmt.Sprintf("give a percentage from 0 to %d", fibreSaturation),
		}
	}
	return nil
}
