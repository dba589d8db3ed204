package screen

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
)

// longShop has names that are longer than any column.
func longShop() *joinery.Shop {
	return &joinery.Shop{
		Name: "long names", Scale: joinery.InchScale,
		Bits: []joinery.Bit{{Name: strings.Repeat("very long bit ", 7), Diameter: joinery.Inch / 2}, {Name: "half", Diameter: joinery.Inch / 2}},
	}
}

func TestShopAndWoodsFitAScreen(t *testing.T) {
	woods := append(joinery.Woods(), joinery.Wood{Name: strings.Repeat("very long wood ", 6), Group: joinery.Own, Hardness: 900, HardnessFrom: joinery.ShopFile})
	print := map[string]func(*strings.Builder) error{
		"shop":  func(b *strings.Builder) error { return Shop(b, longShop(), woods) },
		"woods": func(b *strings.Builder) error { return Woods(b, woods) },
		"wood":  func(b *strings.Builder) error { return Wood(b, woods[len(woods)-1], longShop(), "") },
	}
	for name, f := range print {
		var b strings.Builder
		require.NoError(t, f(&b), name)
		for line := range strings.SplitSeq(b.String(), "\n") {
			assert.LessOrEqual(t, utf8.RuneCountInString(line), textWidth, "%s: %s", name, line)
		}
	}
}

// A wood whose row has no radial figure says so.
func TestChangeWithoutARadialFigure(t *testing.T) {
	c := WoodChange{Wood: joinery.Wood{Name: "bog oak"}, Width: joinery.Inch, From: 8, To: 12, Tangential: &joinery.Movement{By: "coefficient", Figure: 0.004, Change: joinery.Inch / 64, From: joinery.ShopFile}}
	var text strings.Builder
	require.NoError(t, Change(&text, c))
	assert.Contains(t, text.String(), "radial (quarter-sawn)      not known")
}
