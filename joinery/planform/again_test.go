package planform_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"fencecard/joinery/planform"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// plans are all the plans and shop files of the project by their files: what
// makers wrote, and broken ones, of which some cannot be read.
func plans(t testing.TB) map[string][]byte {
	all := map[string][]byte{}
	for _, pattern := range []string{"../examples/*.yaml", "../planfile/shopfile/builtin.yaml", "../../testdata/*.yaml", "../../testdata/*/*.yaml"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, file := range files {
			all[file], err = os.ReadFile(file)
			require.NoError(t, err)
		}
	}
	require.Greater(t, len(all), 300)
	return all
}

// Every form of every plan, put back as it was read, changes no byte.
func TestPuttingBackChangesNothing(t *testing.T) {
	read := 0
	for file, text := range plans(t) {
		forms, err := planform.Read(file, text)
		if err != nil {
			assert.Contains(t, file, "broken", "%v", err)
			continue
		}
		read++
		for _, f := range forms {
			again, at, err := planform.Put(text, f)
			require.NoError(t, err, "%s at %s", file, f.At)
			assert.Equal(t, f.At, at)
			require.True(t, bytes.Equal(text, again), "%s at %s", file, f.At)
		}
	}
	assert.Greater(t, read, 250)
}

// Every form of every plan, put into an empty text one after the other, makes a text of which
// the forms say the same.
func TestPlansByFormsAlone(t *testing.T) {
	entered := 0
	for file, text := range plans(t) {
		forms, err := planform.Read(file, text)
		if err != nil {
			continue
		}
		built, err := rebuilt(forms)
		if err != nil {
			assert.Contains(t, file, "broken", "%v", err)
			continue
		}
		entered++
		again, err := planform.Read(file, built)
		require.NoError(t, err, "%s\n%s", file, built)
		require.Len(t, again, len(forms), file)
		for i := range forms {
			for _, field := range forms[i].Fields {
				require.Equal(t, field.Value, again[i].Value(field.Key), "%s %s %s\n%s", file, forms[i].At, field.Key, built)
			}
		}
	}
	assert.Greater(t, entered, 200)
}

// rebuilt puts forms into an empty text.
func rebuilt(forms []planform.Form) ([]byte, error) {
	var text []byte
	for _, f := range forms {
		if f.At != planform.Top {
			f.At = ""
		}
		if f.Kind == planform.Shop && len(f.Filled()) == 0 {
			continue // its bits bring it
		}
		var err error
		if text, _, err = planform.Put(text, f); err != nil {
			return text, err
		}
	}
	return text, nil
}
