package screen

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// longShop has names that are longer than any column.
func longShop() *joinery.Shop {
	return &joinery.Shop{
		Name: "long names", Scale: measure.InchScale,
		Bits: []joinery.Bit{{Name: strings.Repeat("very long bit ", 7), Diameter: measure.Inch / 2}, {Name: "half", Diameter: measure.Inch / 2}},
	}
}

func TestShopAndWoodsFitAScreen(t *testing.T) {
	woods := append(timber.Woods(), timber.Wood{Name: strings.Repeat("very long wood ", 6), Group: timber.Own, Hardness: 900, HardnessFrom: timber.ShopFile})
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
	c := WoodChange{Wood: timber.Wood{Name: "bog oak"}, Width: measure.Inch, From: 8, To: 12, Tangential: &timber.Movement{By: "coefficient", Figure: 0.004, Change: measure.Inch / 64, From: timber.ShopFile}}
	var text strings.Builder
	require.NoError(t, Change(&text, c))
	assert.Contains(t, text.String(), "radial (quarter-sawn)      not known")
}
