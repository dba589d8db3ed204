package remark_test

import (
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
)

// kindPlans are pieces with something wrong with cuts of every kind, and joints
// with something wrong.
func kindPlans(t *testing.T) map[string]*joinery.Plan {
	plans := map[string]*joinery.Plan{}
	for _, piece := range [][]string{
		{"20 2 1_1/2", "mortise a top 1/2 3/4:front 2-4:left 1_3/8", "mortise b bottom 1/4 3/4:front 8-10:left 1_1/2"},
		{"20 2 1_1/2", "mortise a top 1/4 1/8:front 2-4:left 1/2", "mortise b top 1/4 1/2:front 2-4:left 1/2"},
		{"20 2 1_1/2", "mortise a top 1_1/4 1/4:front 2-5:left 1_1/4", "mortise b bottom 1/2 1:front 9-9_1/2:left 1/4"},
		{"20 2 1_1/2", "mortise a top 1/2 3/4:front 2-4:left 1", "mortise b front 1/2 1/2:bottom 2-4:left 1"},
		{"20 2 1_1/2", "mortise a top 1/2 3/4:front 0-4:left 1", "tenon end left 2 top:1/2 bottom:1/2"},
		{"20 2 1_1/2", "mortise a top 1/2 1_3/8:front 4-8:left 1/2"},
		{"20 2 1_1/2", "groove a top 1/2 1_3/8:front - 1", "dado b bottom 1/2 4:left - 1/2"},
		{"20 8 3/4", "groove a top 1/4 2:left - 1/2", "dado b bottom 3/4 3:front - 5/8"},
		{"20 8 3/4", "rabbet a top front 6 1/4", "rabbet b top back 3/8 5/8"},
		{"20 2 3/4", "lap a top left 2 5/8", "tenon b right 1 top:5/16 bottom:5/16"},
	} {
		plans[strings.Join(piece, "; ")] = workpiece.PieceFrom(t, piece[0], piece[1:]...)
	}
	for _, joint := range [][2]string{
		{"lap a top left 2 3/8", "lap b bottom right 1 1/4"},
		{"mortise a top 1/2 3/4:front 2-4:left 1", "tenon b bottom 1 left:1/2 right:1/2"},
	} {
		plan := workpiece.PieceFrom(t, "20 2 1_1/2", joint[0])
		other := workpiece.PieceFrom(t, "1_1/2 3 20", joint[1]).Pieces[0]
		other.Name = "other"
		plan.Pieces[0].Cuts[0].Mates = joinery.Mate{Piece: "other", Cut: "b"}
		plan.Pieces = append(plan.Pieces, other)
		plans[joint[0]] = plan
	}
	return plans
}

// remarks are all warnings and cautions of the plans, in which every cut of one
// kind is of another instead that goes by the same name.
func remarks(t *testing.T, plans map[string]*joinery.Plan, kind, instead *joinery.Kind) map[string][]string {
	said := map[string][]string{}
	for name, plan := range plans {
		for i := range plan.Pieces {
			for k := range plan.Pieces[i].Cuts {
				if c := &plan.Pieces[i].Cuts[k]; c.Kind == kind {
					c.Kind = instead
					defer func() { c.Kind = kind }()
				}
			}
		}
		d, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
		require.NoError(t, err)
		for _, w := range d.Warnings {
			said[name] = append(said[name], w.Code+strings.ReplaceAll(w.Text, "made-up", kind.Name))
		}
		for _, s := range d.Setups {
			for _, r := range s.Runs {
				said[name] = append(said[name], codes(r.Cautions)...)
			}
		}
	}
	return said
}

// TestAMadeUpKindGetsTheWarningsOfItsTwin gives each kind a twin that nothing
// in the program knows. Nothing may be lost; and where the twin means something
// else in one respect, something else must be said, or the field means nothing.
func TestAMadeUpKindGetsTheWarningsOfItsTwin(t *testing.T) {
	plans, real := kindPlans(t), workpiece.RealPlans(t)
	felt := map[string]bool{}
	for _, kind := range joinery.Kinds {
		as := remarks(t, plans, kind, kind)
		twin := *kind
		twin.Name = "made-up"
		assert.Equal(t, as, remarks(t, plans, kind, &twin), kind.Name)
		assert.Equal(t, remarks(t, real, kind, kind), remarks(t, real, kind, &twin), kind.Name)
		fields := reflect.TypeOf(twin)
		for f := range fields.NumField() {
			field := fields.Field(f)
			other := twin
			switch v := reflect.ValueOf(&other).Elem().Field(f); {
			case field.Name == "Screwed": // what is read of it, long before anything is said
				continue
			case field.Type.Kind() == reflect.Bool:
				v.SetBool(!v.Bool())
			case field.Name == "Deepest":
				other.Deepest = timber.Share{Num: 1, Den: 50}
			default:
				continue
			}
			felt[field.Name] = felt[field.Name] || !reflect.DeepEqual(as, remarks(t, plans, kind, &other))
		}
	}
	assert.NotEmpty(t, felt)
	for field, is := range felt {
		assert.True(t, is, "nothing is said differently where %s is changed", field)
	}
}

// TestNothingComparesKinds reads the program's own sources: what a kind means
// stands in its row. A joint makes cuts of some kind, which compares none.
func TestNothingComparesKinds(t *testing.T) {
	sources, err := filepath.Glob("../../joinery/*.go")
	require.NoError(t, err)
	var names []string
	for _, path := range sources {
		source, err := os.ReadFile(path)
		require.NoError(t, err)
		for _, name := range regexp.MustCompile(`(?m)^var (\w+) = Kind\{`).FindAllStringSubmatch(string(source), -1) {
			names = append(names, name[1])
		}
	}
	require.Len(t, names, len(joinery.Kinds))
	compares := regexp.MustCompile(`([!=]=|case)\s.*&(joinery\.)?(` + strings.Join(names, "|") + `)\b`)
	files := 0
	require.NoError(t, filepath.WalkDir("../..", func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.Contains(path, "setup/internal/") {
			return err
		}
		source, err := os.ReadFile(path)
		files++
		for _, line := range strings.Split(string(source), "\n") {
			if compares.MatchString(line) && !strings.HasPrefix(line, "var Kinds = ") {
				assert.Fail(t, "a kind of cut is compared in code", "%s: %s", path, line)
			}
		}
		return err
	}))
	assert.Greater(t, files, 200)
}
