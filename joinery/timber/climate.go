package timber

// Climate is the air the finished work will live in, at its driest and at its
// dampest.
type Climate struct {
	Dry, Damp   float64 // relative humidity, percent
	Temperature Temperature
	Assembly    float64 // moisture content of the wood when the work is put together, percent; 0 when not said
}

// DefaultClimate is that of a house heated in winter: 30 to 65 % at 70 F
// (common practice, no source).
var DefaultClimate = Climate{Dry: 30, Damp: 65, Temperature: Temperature{Degrees: 70, Fahrenheit: true}}

// Moistures gives the moisture content of wood, in percent, at the driest and
// at the dampest. The zero climate is the usual one.
func (c Climate) Moistures() (dry, damp float64, err error) {
	if c.Dry == 0 && c.Damp == 0 {
		c = DefaultClimate
	}
	if dry, err = Moisture(c.Temperature, c.Dry); err != nil {
		return 0, 0, err
	}
	damp, err = Moisture(c.Temperature, c.Damp)
	return dry, damp, err
}
