package output

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/output/screen"
)

// A wood whose row has no radial figure says so.
func TestChangeJSONWithoutARadialFigure(t *testing.T) {
	c := screen.WoodChange{Wood: timber.Wood{Name: "bog oak"}, Width: measure.Inch, From: 8, To: 12, Tangential: &timber.Movement{By: "coefficient", Figure: 0.004, Change: measure.Inch / 64, From: timber.ShopFile}}
	var json strings.Builder
	require.NoError(t, ChangeJSON(&json, c))
	assert.Contains(t, json.String(), `"radial": null`)
}
