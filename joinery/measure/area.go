package measure

import "fmt"

// Strip gives an area in mm2 as the length of a strip 1 mm wide, so that areas
// compare exactly as lengths do.
func Strip(area float64) Length { return FromMillimetres(area) }

// SayArea says an area in mm2 in the unit of the scale: "0.025 sq in", "16.4 mm2".
func (s Scale) SayArea(area float64) string {
	if s.Unit == Inches {
		side := Inch.Millimetres()
		return fmt.Sprintf("%.3f sq in", area/side/side)
	}
	return fmt.Sprintf("%.1f mm2", area)
}
