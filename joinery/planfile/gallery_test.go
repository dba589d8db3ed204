package planfile_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/joinery/plantext"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const gallery = "../../testdata/broken"

// TestGallery reads broken plans, one fault each, and shop files (their names
// begin with shop-file-), and holds the message against the text beside it.
func TestGallery(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(gallery, "*.yaml"))
	require.NoError(t, err)
	require.Greater(t, len(files), 85)
	for _, file := range files {
		name := filepath.Base(file)
		t.Run(strings.TrimSuffix(name, ".yaml"), func(t *testing.T) {
			data, err := os.ReadFile(file)
			require.NoError(t, err)
			faults := faultsOf(t, name, data)
			assert.Len(t, faults, 1, "one fault each:\n%s", faults)
			golden(t, strings.TrimSuffix(file, ".yaml")+".txt", faults.Error()+"\n")
		})
	}
}

// faultsOf reads a plan or shop file and returns its faults.
func faultsOf(t *testing.T, name string, data []byte) plantext.Faults {
	t.Helper()
	var err error
	if strings.HasPrefix(name, "shop-file-") && name != "shop-file-missing.yaml" {
		_, err = shopfile.Read(name, data, measure.Inches)
	} else {
		_, err = planfile.Read(name, data, func(string) ([]byte, error) { return nil, fs.ErrNotExist })
	}
	require.Error(t, err)
	var faults plantext.Faults
	require.ErrorAs(t, err, &faults)
	return faults
}

// golden compares a text with a file, or writes the file where the environment
// variable FENCECARD_GOLDEN is "update".
func golden(t *testing.T, file, got string) {
	t.Helper()
	if os.Getenv("FENCECARD_GOLDEN") == "update" {
		require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
		return
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(want), got)
}
