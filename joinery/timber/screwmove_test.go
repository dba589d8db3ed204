package timber

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/measure"
)

// emc is the handbook's moisture content at 70 F.
func emc(t *testing.T, humidity string) float64 {
	t.Helper()
	for _, row := range publishedTable(t, "moisture-4-2.tsv") {
		if row[0] == "70" && row[1] == humidity && row[3] == "seen" {
			return number(t, row[2])
		}
	}
	require.Fail(t, "the table has no such air", humidity)
	return 0
}

// tangential is the handbook's coefficient of a wood.
func tangential(t *testing.T, name string) float64 {
	t.Helper()
	for _, row := range publishedTable(t, "coefficients-13-5.tsv") {
		if row[0] == name {
			return number(t, row[2])
		}
	}
	require.Fail(t, "the table has no such wood", name)
	return 0
}

// screwIn is a screw 12 in from the line that a cherry top is held on, in the air of a
// house at 70 F.
func screwIn(t *testing.T, assembly float64) (ScrewMove, Wood) {
	t.Helper()
	cherry, _, ok := FindWood("black cherry")
	require.True(t, ok)
	return ScrewMove{From: 12 * measure.Inch, Climate: Climate{Dry: 30, Damp: 65, Temperature: fahrenheit(70), Assembly: assembly}}, cherry
}

func inches(l measure.Length) float64 { return l.Millimetres() / 25.4 }

// A thousandth of an inch is what the rounding of the handbook's moistures comes to in
// 12 in of cherry, three times over.
const asTheHandbook = 0.003

// The whole movement is width x C x the difference of the moistures (Wood Handbook,
// FPL-GTR-190, 2010, equation 13-2), both moistures from its table 4-2.
func TestAScrewMovesAsTheHandbookSays(t *testing.T) {
	m, cherry := screwIn(t, 0)
	dry, damp, c := emc(t, "30"), emc(t, "65"), tangential(t, "cherry, black")
	over, err := m.Over(cherry)
	require.NoError(t, err)
	assert.InDelta(t, 12*c*(damp-dry), inches(over), asTheHandbook)
	_, known := m.Place(cherry)
	assert.False(t, known, "nobody said how moist it is at assembly")

	oak, _, ok := FindWood("white oak")
	require.True(t, ok)
	m.Board = &oak // not the wood of the piece that the slot is in
	over, err = m.Over(cherry)
	require.NoError(t, err)
	assert.InDelta(t, 12*tangential(t, "oak, white (commercial)")*(damp-dry), inches(over), asTheHandbook)

	m.Whole = measure.Inch / 4
	over, err = m.Over(cherry)
	require.NoError(t, err)
	assert.Equal(t, measure.Inch/4, over, "what is said outright counts")
}

// Put together dry, the board can only grow: the screw stands at the end of its slot
// that is nearest to the fixed line. Put together damp, it can only shrink. What is
// moister or drier at assembly than the seasons make it widens the slot.
func TestWhereAScrewGoesAtAssembly(t *testing.T) {
	dry, damp, c := emc(t, "30"), emc(t, "65"), tangential(t, "cherry, black")
	for _, at := range []float64{dry - 0.1, dry, 8, (dry + damp) / 2, 10, damp, damp + 0.1, 13.5} {
		m, cherry := screwIn(t, at)
		low, high := min(dry, at), max(damp, at)
		over, err := m.Over(cherry)
		require.NoError(t, err)
		assert.InDelta(t, 12*c*(high-low), inches(over), asTheHandbook, "%g %%", at)
		place, known := m.Place(cherry)
		require.True(t, known)
		assert.InDelta(t, 12*c*(at-(low+high)/2), inches(place), asTheHandbook, "%g %%: the middle of the slot is the middle of the moistures", at)
	}
	m, cherry := screwIn(t, 8)
	m.Whole = measure.Inch / 4
	_, known := m.Place(cherry)
	assert.False(t, known, "of a movement said outright the seasons are not known")
}

func TestAScrewThatDoesNotMove(t *testing.T) {
	m, _ := screwIn(t, 8)
	ply := Wood{Name: "plywood", Group: Sheet, Still: true}
	_, err := m.Over(ply)
	assert.ErrorContains(t, err, "so that a round hole does")
	_, known := m.Place(ply)
	assert.False(t, known)
	m, cherry := screwIn(t, 0)
	m.Climate.Damp = m.Climate.Dry
	_, err = m.Over(cherry)
	assert.ErrorContains(t, err, "so that a round hole does")
}

// The zero climate is the usual one, and no other is: a climate at 0 % says so.
func TestTheUsualClimate(t *testing.T) {
	dry, damp, err := Climate{}.Moistures()
	require.NoError(t, err)
	assert.InDelta(t, emc(t, "30"), dry, 0.1)
	assert.InDelta(t, emc(t, "65"), damp, 0.1)
	dry, damp, err = Climate{Damp: 50, Temperature: fahrenheit(70)}.Moistures()
	require.NoError(t, err)
	assert.Zero(t, dry)
	assert.InDelta(t, emc(t, "50"), damp, 0.1)
}
