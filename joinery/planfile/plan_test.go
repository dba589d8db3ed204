package planfile_test

import (
	"os"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func read(t *testing.T, name string, data []byte) *joinery.Plan {
	t.Helper()
	plan, err := planfile.Read(name, data, nil)
	require.NoError(t, err)
	return plan
}

func TestExamplesAreRead(t *testing.T) {
	cabinet, err := os.ReadFile("../../testdata/wall-cabinet.yaml")
	require.NoError(t, err)
	for name, data := range map[string][]byte{
		"boot-bench.yaml":   examples.BootBench,
		"starter.yaml":      examples.StarterPlan,
		"wall-cabinet.yaml": cabinet,
	} {
		plan := read(t, name, data)
		assert.NotEmpty(t, plan.Pieces, name)
	}
	shop, err := planfile.ReadShop("shop.yaml", examples.StarterShop, joinery.Inches)
	require.NoError(t, err)
	assert.Len(t, shop.Bits, 4)
}
