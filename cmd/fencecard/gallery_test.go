package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// runIn runs the program in a folder and returns its exit code and what it
// wrote.
func runIn(t *testing.T, folder string, args ...string) (code int, out, err string) {
	t.Helper()
	t.Chdir(folder)
	var stdout, stderr bytes.Buffer
	code = run(t.Context(), args, streams{strings.NewReader(""), &stdout, &stderr})
	return code, stdout.String(), stderr.String()
}

// TestGalleries gives every broken plan, and every plan that is sound but
// cannot be cut in its shop, to the command: it must say the message beside the
// plan in full, nothing else, and make no cards.
func TestGalleries(t *testing.T) {
	for _, gallery := range []string{"broken", "uncuttable"} {
		folder, err := filepath.Abs("../../testdata/" + gallery)
		require.NoError(t, err)
		files, err := filepath.Glob(filepath.Join(folder, "*.yaml"))
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, file := range files {
			name := filepath.Base(file)
			if strings.HasPrefix(name, "shop-file-") && name != "shop-file-missing.yaml" {
				continue // not a plan
			}
			t.Run(gallery+"/"+name, func(t *testing.T) {
				code, out, message := runIn(t, folder, "cards", name, "--format", "text")
				assert.Equal(t, exitFault, code)
				assert.Empty(t, out)
				hold(t, strings.TrimSuffix(file, ".yaml")+".txt", message)
			})
		}
	}
}

// hold compares a text with a file, or writes the file where the environment
// variable FENCECARD_GOLDEN is "update".
func hold(t *testing.T, file, got string) {
	t.Helper()
	if os.Getenv("FENCECARD_GOLDEN") == "update" {
		require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
		return
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(want), got)
}
