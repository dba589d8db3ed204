package timber

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWoodsSayWhereEachFigureIsFrom(t *testing.T) {
	species := 0
	for _, w := range Woods() {
		assert.Contains(t, []WoodGroup{Hardwood, Softwood, Imported, Sheet}, w.Group, w.Name)
		for _, f := range []struct {
			value float64
			from  Origin
		}{{w.Hardness, w.HardnessFrom}, {w.ShrinkR, w.ShrinkFrom}, {w.ShrinkT, w.ShrinkFrom}} {
			assert.Equal(t, f.value > 0, f.from.Published() || f.from == Memory, w.Name)
		}
		assert.Equal(t, w.CR > 0 || w.CT > 0, w.CFrom.Published() || w.CFrom == Memory, w.Name)
		if w.Group == Sheet {
			assert.NotZero(t, w.Share, w.Name)
			assert.Zero(t, w.ShrinkT, w.Name)
			continue
		}
		species++
		assert.NotEmpty(t, w.Botanical, w.Name)
		assert.Less(t, w.ShrinkR, w.ShrinkT, "%s: wood shrinks more along the rings than across them", w.Name)
	}
	assert.GreaterOrEqual(t, species, 35)
}

// Wood Handbook, FPL-GTR-190 (2010), tables 5-3b and 5-5b, 4-3 and 4-4, 13-5.
func TestWoodsAgainstTheHandbook(t *testing.T) {
	for _, row := range publishedTable(t, "hardness-5-3.tsv") {
		w := wood(t, row[0])
		assert.True(t, w.HardnessFrom.Published(), w.Name)
		assert.Equal(t, number(t, row[1]), w.Hardness, w.Name)
	}
	for _, row := range publishedTable(t, "shrinkage-4-3.tsv") {
		w := wood(t, row[0])
		assert.True(t, w.ShrinkFrom.Published(), w.Name)
		assert.Equal(t, []float64{number(t, row[1]), number(t, row[2])}, []float64{w.ShrinkR, w.ShrinkT}, w.Name)
	}
	for _, row := range publishedTable(t, "coefficients-13-5.tsv") {
		w := wood(t, strings.TrimSuffix(row[0], " (commercial)"))
		assert.Equal(t, []float64{number(t, row[1]), number(t, row[2])}, []float64{w.CR, w.CT}, w.Name)
		assert.True(t, w.CFrom.Published(), w.Name)
	}
}

// The handbook works its coefficients out as C = 1 / (3000 / S - 20). That
// ties two tables together for every row of one species; rows for groups of
// species, and those whose note says so, rest on other samples.
func TestCoefficientsFollowFromShrinkage(t *testing.T) {
	checked := 0
	for _, w := range Woods() {
		if w.CR == 0 || w.ShrinkR == 0 || strings.Contains(w.Note, "CR") {
			continue
		}
		checked++
		assert.LessOrEqual(t, math.Abs(w.CR-1/(3000/w.ShrinkR-20)), 0.0000151, w.Name)
		assert.LessOrEqual(t, math.Abs(w.CT-1/(3000/w.ShrinkT-20)), 0.0000151, w.Name)
	}
	assert.Greater(t, checked, 30)
}

func TestReadSpeciesRefuses(t *testing.T) {
	row := func(change func(cells []string)) string {
		cells := strings.Split("x\ty\thardwood\t\t\t900\tmemory\t3\t6\tmemory\t0.001\t0.002\tmemory\t\t", "\t")
		change(cells)
		return speciesColumns + "\n" + strings.Join(cells, "\t") + "\n"
	}
	_, err := readSpecies(row(func([]string) {}))
	require.NoError(t, err)
	for name, table := range map[string]string{
		"columns":     "name\tlatin\n",
		"hardness":    row(func(c []string) { c[5] = "hard" }),
		"below 0":     row(func(c []string) { c[5] = "-3" }),
		"not a share": row(func(c []string) { c[13] = "half" }),
		"cells":       speciesColumns + "\nx\ty\n",
	} {
		_, err := readSpecies(table)
		assert.Error(t, err, name)
	}
}
