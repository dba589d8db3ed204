package sheets

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/setup/remark/joints"
)

// Every piece, cut and joint of every plan can be sketched, with the sizes that it
// has and the names of its sides.
func TestSketches(t *testing.T) {
	files, err := filepath.Glob("../../testdata/plans/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	cuts, pairs := 0, 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		plan, err := planfile.Read(file, data, func(path string) ([]byte, error) {
			return os.ReadFile(filepath.Join(filepath.Dir(file), path))
		})
		require.NoError(t, err, file)
		k := SketchOf(plan)
		for i := range plan.Pieces {
			p := &plan.Pieces[i]
			drawn, err := k.Piece(p)
			require.NoError(t, err, "%s %s", file, p.Name)
			for _, name := range []string{"LEFT", "RIGHT", "FRONT", "BACK", "TOP", "BOTTOM"} {
				assert.Equal(t, 1, strings.Count(string(drawn), ">"+name+"<"), "%s %s", file, p.Name)
			}
			for c := range p.Cuts {
				drawn, err := k.Cut(p, &p.Cuts[c])
				require.NoError(t, err, "%s %s %s", file, p.Name, p.Cuts[c].Name)
				assert.NotEmpty(t, drawn)
				cuts++
			}
		}
		all := joints.Of(plan)
		for i := range all {
			drawn, err := k.Joint(all, all[i].Into.Cut.Name)
			require.NoError(t, err, file)
			assert.NotEmpty(t, drawn, "%s %s", file, all[i].Into.Cut.Name)
		}
		drawn, err := k.Joint(all, "no such joint")
		require.NoError(t, err)
		assert.Empty(t, drawn)
		pairs += len(all)
	}
	assert.Greater(t, cuts, 300)
	assert.Greater(t, pairs, 30)
}

// The sizes on a sketch are those of the piece, the same every time.
func TestSketchOfALeg(t *testing.T) {
	plan, err := planfile.Read("bench.yaml", examples.BootBench, nil)
	require.NoError(t, err)
	first, err := SketchOf(plan).Piece(&plan.Pieces[0])
	require.NoError(t, err)
	assert.Equal(t, 2, strings.Count(string(first), `aria-label="17"`)+strings.Count(string(first), ">17<"))
	again, err := SketchOf(plan).Piece(&plan.Pieces[0])
	require.NoError(t, err)
	assert.Equal(t, string(first), string(again))
	if folder := os.Getenv("FENCECARD_SHOTS"); folder != "" {
		var b strings.Builder
		for i := range plan.Pieces {
			drawn, err := SketchOf(plan).Piece(&plan.Pieces[i])
			require.NoError(t, err)
			b.Write(drawn)
			for c := range plan.Pieces[i].Cuts {
				drawn, err := SketchOf(plan).Cut(&plan.Pieces[i], &plan.Pieces[i].Cuts[c])
				require.NoError(t, err)
				b.Write(drawn)
			}
		}
		require.NoError(t, os.MkdirAll(folder, 0o755))
		require.NoError(t, os.WriteFile(folder+"/sketch.html", []byte("<style>svg{width:380px;float:left;margin:8px;border:1px solid #ccc} svg text{font-family:Arial,Liberation Sans} .b{font-weight:bold}.w{fill:#fff}</style>"+b.String()), 0o600))
	}
}
