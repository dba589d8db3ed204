package piecelist

import (
	"slices"
	"strings"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every row of the embedded tables can be read, and no head or kind stands for
// two things.
func TestTables(t *testing.T) {
	for cells := range tableRows(headTable) {
		require.Len(t, cells, 3, cells)
		assert.Positive(t, slices.Index(fieldNames[:], cells[0]), cells)
		assert.Contains(t, []string{"en", "de"}, cells[1])
		for _, word := range strings.Split(cells[2], ", ") {
			assert.Equal(t, word, headKey(word), "a head as it is looked up")
		}
	}
	for word, found := range headWords() {
		for _, w := range found {
			assert.Equal(t, found[0].field, w.field, word)
		}
	}
	seen := map[string]bool{}
	for cells := range tableRows(kindTable) {
		require.GreaterOrEqual(t, len(cells), 5, cells)
		_, wrong := parseOrientation(cells[2], false)
		assert.Empty(t, wrong, cells)
		for _, as := range cells[3:5] {
			_, wrong = parseAs(as)
			assert.Empty(t, wrong, cells)
		}
		if len(cells) > 5 {
			_, err := measure.ParseLength(cells[5], measure.Inches)
			assert.NoError(t, err, cells)
		}
		for _, name := range strings.Split(strings.ReplaceAll(cells[0], "/", ", "), ", ") {
			assert.False(t, seen[name], name)
			seen[name] = true
		}
	}
	for cells := range tableRows(woodTable) {
		require.Len(t, cells, 3, cells)
		found, _, ok := timber.FindWood(cells[1])
		assert.True(t, ok, cells)
		assert.Equal(t, cells[1], found.Name)
		assert.Contains(t, []string{"yes", "no"}, cells[2])
	}
}

// Fractions that a spreadsheet shows with two, three or four places are found
// again, and decimals that stand on a rule are left alone.
func TestRounded(t *testing.T) {
	for text, want := range map[string]string{
		"0.63": "5/8", "0.19": "3/16", "0.31": "5/16", "1.06": "1 1/16", "3.88": "3 7/8", "0.188": "3/16", "0.156": "5/32", "0.0313": "1/32", "0.03": "",
		"0.7": "", "0.70": "", "0.75": "", "0.5": "", "0.625": "", "0.1875": "", "12": "", "0.33": "", "2.10": "",
	} {
		l, err := measure.ParseLength(text, measure.Inches)
		require.NoError(t, err)
		assert.Equal(t, want, rounded(text, l, measure.Inches), text)
	}
}

func TestRoughNames(t *testing.T) {
	for _, text := range []string{"4/4", "5/4", "6/4", "8/4", "12/4", "4/4 rough", "5 / 4", "2x4", "1 x 6", "2×4×96", "5/4x6"} {
		assert.True(t, rough(text, measure.Inches), text)
	}
	for _, text := range []string{"3/4", "1/4", "2/4", "44", "4 1/4", `2" x 4"`, "1 1/2 x 3 1/2", "26 x 4 x 2", "5/16"} {
		assert.False(t, rough(text, measure.Inches), text)
	}
}

func TestOrientations(t *testing.T) {
	const lr, fb, up = joinery.LeftRight, joinery.FrontBack, joinery.TopBottom
	for text, want := range map[string]Orientation{
		"length up, thickness front-back":        {up, fb},
		"Length UP ; thickness left to right":    {up, lr},
		"thickness up, length front-back":        {fb, up},
		"up, width left-right":                   {up, fb},
		"Länge hoch, Dicke links-rechts":         {up, lr},
		"Länge links - rechts, Breite senkrecht": {lr, fb},
	} {
		got, wrong := parseOrientation(text, false)
		assert.Empty(t, wrong, text)
		assert.Equal(t, want, got, text)
	}
	for _, text := range []string{"", "up", "length up", "thickness up", "length up, thickness up", "length up, length left-right", "up, up", "length", "depth up, thickness front-back", "a b c"} {
		_, wrong := parseOrientation(text, false)
		assert.NotEmpty(t, wrong, text)
	}
	// Every one comes back from its own words.
	for _, length := range joinery.Dimensions {
		for _, thickness := range joinery.Dimensions {
			if length != thickness {
				got, wrong := parseOrientation(Orientation{length, thickness}.String(), false)
				assert.Empty(t, wrong)
				assert.Equal(t, Orientation{length, thickness}, got)
			}
		}
		got, wrong := parseOrientation("length "+directionName(length), true)
		assert.Empty(t, wrong)
		assert.Equal(t, length, got.Length)
	}
}

func TestNamesOfSides(t *testing.T) {
	for _, c := range []struct {
		name   string
		as     As
		german bool
		want   string
	}{
		{"Leg", Corners, false, "front left leg, front right leg, back left leg, back right leg"},
		{"Legs", Corners, false, "front left leg, front right leg, back left leg, back right leg"},
		{"left leg", Corners, false, "front left leg, front right leg, back left leg, back right leg"},
		{"Front leg", PairLeftRight, false, "Front left leg, Front right leg"},
		{"front rail", PairFrontBack, false, "front rail, back rail"},
		{"Rail, front", PairFrontBack, false, "Rail, front, Rail, back"},
		{"rear rail", PairFrontBack, false, "front rail, rear rail"},
		{"LEFT SIDE", PairLeftRight, false, "LEFT SIDE, RIGHT SIDE"},
		{"Drawer side", PairLeftRight, false, "left drawer side, right drawer side"},
		{"MDF panel", PairLeftRight, false, "left MDF panel, right MDF panel"},
		{"Shelves", Alike, false, "Shelves"},
		{"Beine", Corners, true, "Bein vorne links, Bein vorne rechts, Bein hinten links, Bein hinten rechts"},
		{"Zarge vorne", PairFrontBack, true, "Zarge vorne, Zarge hinten"},
		{"Tür", PairLeftRight, true, "Tür links, Tür rechts"},
	} {
		p := Piece{As: c.as}
		var names []string
		for _, made := range p.copies(c.name, c.german) {
			names = append(names, made.Name)
		}
		assert.Equal(t, c.want, strings.Join(names, ", "), c.name)
	}
}

func TestKinds(t *testing.T) {
	for _, c := range []struct {
		name, heading string
		german        bool
		want          string
	}{
		{"Leg", "", false, "a leg"},
		{"Front left leg", "", false, "a leg"},
		{"Rail, front", "", false, "a front rail"},
		{"front drawer rail", "", false, "a front rail"},
		{"Leg back left", "", false, "a leg"},
		{"Rail, top", "", false, "a rail"},
		{"Seat back", "", false, "a thin back"},
		{"Table top", "", false, "a top"},
		{"Bottom", "", false, "a bottom"},
		{"Drawer front", "", false, "a drawer front"},
		{"Side", "Drawer", false, "a drawer side"},
		{"Slat", "Table top", false, "a slat"},
		{"Side", "Carcase", false, "a side"},
		{"back panel", "", false, "a back"},
		{"Tischbein", "", true, "a leg"},
		{"Schubkastenseiten", "", true, "a drawer side"},
		{"Längszarge", "", true, "a long apron"},
		{"Einlegeboden", "", true, "a shelf"},
		{"headrail", "", false, ""},
		{"Widget", "", false, ""},
		{"", "", false, ""},
	} {
		assert.Equal(t, c.want, kindNamed(c.name, c.heading, c.german).what, c.name)
	}
}

func TestHeads(t *testing.T) {
	for head, want := range map[string]struct {
		key, unit string
	}{
		"Length (mm)": {"length", "mm"}, "L [in]": {"l", "in"}, "Länge in mm": {"länge", "mm"}, "Width, cm": {"width", "cm"}, "Thickness/in.": {"thickness", "in"},
		"L in": {"l", "in"}, `Long (")`: {"long", "in"}, "Qty.": {"qty", ""}, "in": {"in", ""}, "# of": {"of", ""}, "Fertigmaß (Zoll)": {"fertigmaß", "in"}, "Pos. Nr.": {"pos nr", ""},
	} {
		key, unit := splitHead(head)
		assert.Equal(t, want.key, key, head)
		assert.Equal(t, want.unit, unit, head)
	}
	assert.Equal(t, []Field{Length, Width, Thickness}, orderOf("l x w x t"))
	assert.Equal(t, []Field{Thickness, Width}, orderOf("thk*width"))
	assert.Nil(t, orderOf("l x l"))
	assert.Nil(t, orderOf("length"))
}
