package planfile_test

import (
	"strings"
	"testing"

	"fencecard/joinery/planfile"
	"fencecard/joinery/timber"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPlanUsesTheShopsWoodsAndItsClimate(t *testing.T) {
	plan := read(t, "plan.yaml", []byte(`unit: in
wood: Oak, bog
climate: {dry: 35, temp: 20C}
shop:
  woods: [{wood: bog oak, hardness: 1500}]
pieces:
  - piece: stick
    size: {left-right: 1, front-back: 1, top-bottom: 20}
`))
	assert.Equal(t, "bog oak", plan.Pieces[0].Wood.Name)
	assert.Equal(t, timber.Climate{Dry: 35, Damp: 65, Temperature: timber.Temperature{Degrees: 20}}, plan.Climate)
}

func TestClimateFaults(t *testing.T) {
	for text, want := range map[string]string{
		"{dry: 70, damp: 40}":   "the dry season is no drier",
		"{dry: 0.3, damp: 0.6}": "write it in percent: 30",
		"{damp: 130}":           "cannot be the damp",
		"{temp: 70}":            "write 70F or 70C",
		"{temp: 400F}":          "give a temperature from 30F",
		"{wet: 60}":             `no key "wet"`,
		"30":                    "a climate has a dry and a damp season",
	} {
		_, err := planfile.Read("plan.yaml", []byte("unit: in\nclimate: "+text+"\npieces:\n  - {piece: a, size: {left-right: 1, front-back: 1, top-bottom: 2}}\n"), nil)
		require.Error(t, err, text)
		assert.Contains(t, err.Error(), want, text)
		assert.True(t, strings.HasPrefix(err.Error(), "plan.yaml:2:"), text)
	}
}
