package planfile

import (
	"strconv"
	"strings"

	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/timber"

	"go.yaml.in/yaml/v4"
)

// readClimate reads the air the work will live in; what is left out stays as
// in a heated house.
func (r *planReader) readClimate(f *yamlfile.Fields) {
	if !f.Has("climate") || !r.Mapping(f.Value("climate"), "a climate has a dry and a damp season", "write "+keys.Example("climate")) {
		return
	}
	before, climate := len(r.Faults), timber.DefaultClimate
	g := r.Fields(f.Value("climate"), "the climate", keys.Climate)
	for _, part := range []struct {
		key   string
		value *float64
	}{{"dry", &climate.Dry}, {"damp", &climate.Damp}} {
		if g.Written(part.key) {
			*part.value = g.Figure(part.key, 100)
		}
	}
	if text, n, ok := g.Scalar("temp"); ok {
		t, err := timber.ParseTemperature(text)
		if climate.Temperature = t; err != nil {
			r.Because(n, err)
		}
	}
	climate.Assembly = r.moisture(g, "assembly")
	if len(r.Faults) == before {
		r.checkClimate(f.Value("climate"), climate)
	}
}

func (r *planReader) checkClimate(n *yaml.Node, climate timber.Climate) {
	for _, humidity := range []float64{climate.Dry, climate.Damp} {
		if _, err := timber.Moisture(climate.Temperature, humidity); err != nil {
			r.Because(n, err)
			return
		}
	}
	if climate.Dry >= climate.Damp {
		r.Fault(n, "write the drier humidity as dry: and the damper as damp:", "the dry season is no drier than the damp one")
		return
	}
	r.plan.Climate = climate
}

// wettest is more water than wood holds that still shrinks with the seasons.
const wettest = 30

// moisture reads a moisture content in percent; 0 where it was not written.
func (r *planReader) moisture(f *yamlfile.Fields, key string) float64 {
	text, n, ok := f.Scalar(key)
	if !ok {
		return 0
	}
	value, ok := yamlfile.Figure(strings.TrimSpace(strings.TrimSuffix(text, "%")))
	if !ok || value <= 0 || value > wettest {
		r.Fault(n, "write the moisture that a meter shows in the wood when the work is put together, above 0 and up to "+strconv.Itoa(wettest)+", such as "+keys.Example(key),
			"%s is no moisture content of wood", yamlfile.Quoted(text))
		return 0
	}
	return value
}
