package planfile

import (
	"strconv"
	"strings"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// readClimate reads the air the work will live in; what is left out stays as
// in a heated house.
func (r *planReader) readClimate(f *fields) {
	if !f.has("climate") || !r.mapping(f.value("climate"), "a climate has a dry and a damp season", "write "+example("climate")) {
		return
	}
	before, climate := len(r.faults), joinery.DefaultClimate
	g := r.fields(f.value("climate"), "the climate", climateKeys)
	for _, part := range []struct {
		key   string
		value *float64
	}{{"dry", &climate.Dry}, {"damp", &climate.Damp}} {
		if g.written(part.key) {
			*part.value = g.figure(part.key, 100)
		}
	}
	if text, n, ok := g.scalar("temp"); ok {
		t, err := joinery.ParseTemperature(text)
		if climate.Temperature = t; err != nil {
			r.because(n, err)
		}
	}
	climate.Assembly = r.moisture(g, "assembly")
	if len(r.faults) == before {
		r.checkClimate(f.value("climate"), climate)
	}
}

func (r *planReader) checkClimate(n *yaml.Node, climate joinery.Climate) {
	for _, humidity := range []float64{climate.Dry, climate.Damp} {
		if _, err := joinery.Moisture(climate.Temperature, humidity); err != nil {
			r.because(n, err)
			return
		}
	}
	if climate.Dry >= climate.Damp {
		r.fault(n, "write the drier humidity as dry: and the damper as damp:", "the dry season is no drier than the damp one")
		return
	}
	r.plan.Climate = climate
}

// wettest is more water than wood holds that still shrinks with the seasons.
const wettest = 30

// moisture reads a moisture content in percent; 0 where it was not written.
func (r *planReader) moisture(f *fields, key string) float64 {
	text, n, ok := f.scalar(key)
	if !ok {
		return 0
	}
	value, ok := figure(strings.TrimSpace(strings.TrimSuffix(text, "%")))
	if !ok || value <= 0 || value > wettest {
		r.fault(n, "write the moisture that a meter shows in the wood when the work is put together, above 0 and up to "+strconv.Itoa(wettest)+", such as "+example(key),
			"%s is no moisture content of wood", quoted(text))
		return 0
	}
	return value
}
