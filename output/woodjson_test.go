package output

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/output/screen"
)

// A wood whose row has no radial figure says so.
func TestChangeJSONWithoutARadialFigure(t *testing.T) {
	c := screen.WoodChange{Wood: joinery.Wood{Name: "bog oak"}, Width: joinery.Inch, From: 8, To: 12, Tangential: &joinery.Movement{By: "coefficient", Figure: 0.004, Change: joinery.Inch / 64, From: joinery.ShopFile}}
	var json strings.Builder
	require.NoError(t, ChangeJSON(&json, c))
	assert.Contains(t, json.String(), `"radial": null`)
}
