package timber

import (
	"fmt"
	"strconv"

	"fencecard/joinery/plantext"
)

// The air the equation below was fitted to, in Celsius: 30 F to 210 F, the
// span of table 4-2 of the Wood Handbook.
const (
	coldestAir = (30 - 32) / 1.8
	hottestAir = (210 - 32) / 1.8
)

// Moisture gives the moisture content in percent that wood comes to, in time,
// in air of that temperature and relative humidity in percent.
//
// It is the Hailwood-Horrobin two-hydrate equation with the constants of W. T.
// Simpson, "Equilibrium moisture content of wood in outdoor locations in the
// United States and worldwide", FPL-RN-0268 (1998), the Fahrenheit or the
// Celsius set as the temperature is written. It was fitted to table 4-2 of the
// Wood Handbook and lies within 0.13 of it on the average.
//
// The error is a [plantext.Fault] without a place where the humidity is not a percentage
// or the temperature is outside 30 F to 210 F (-1 C to 98 C in whole degrees).
func Moisture(t Temperature, humidity float64) (float64, error) {
	if err := checkAir(t, humidity); err != nil {
		return 0, err
	}
	d, h := t.Degrees, humidity/100
	if t.Fahrenheit {
		return hailwoodHorrobin(h,
			330+0.452*d+0.00415*d*d,
			0.791+0.000463*d-0.000000844*d*d,
			6.34+0.000775*d-0.0000935*d*d,
			1.09+0.0284*d-0.0000904*d*d), nil
	}
	return hailwoodHorrobin(h,
		349+1.29*d+0.0135*d*d,
		0.805+0.000736*d-0.00000273*d*d,
		6.27-0.00938*d-0.000303*d*d,
		1.91+0.0407*d-0.000293*d*d), nil
}

// hailwoodHorrobin is the equation itself: h is the relative humidity from 0
// to 1, w and k, k1, k2 depend on the temperature.
func hailwoodHorrobin(h, w, k, k1, k2 float64) float64 {
	kh, second := k*h, k1*k2*k*k*h*h
	return 1800 / w * (kh/(1-kh) + (k1*kh+2*second)/(1+k1*kh+second))
}

func checkAir(t Temperature, humidity float64) error {
	text := strconv.FormatFloat(humidity, 'g', -1, 64)
	switch {
	case humidity > 0 && humidity < 1:
		return plantext.Fault{
			Problem: fmt.Sprintf("a relative humidity of %s %% is drier than any air a shop has", text),
			Remedy:  fmt.Sprintf("write it in percent: %s", strconv.FormatFloat(humidity*100, 'g', -1, 64)),
		}
	case !(humidity >= 0 && humidity <= 100):
		return plantext.Fault{
			Problem: fmt.Sprintf("a relative humidity of %s %% is not possible", text),
			Remedy:  "give a percentage from 0 to 100",
		}
	case !(t.Celsius() >= coldestAir && t.Celsius() <= hottestAir):
		return plantext.Fault{
			Problem: fmt.Sprintf("the moisture of wood at %s is not known", t),
			Remedy:  "give a temperature from 30F to 210F, or -1C to 98C",
		}
	}
	return nil
}
