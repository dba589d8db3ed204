package timber

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// publishedTable reads a table of testdata/tables, whose header names its
// source: rows without comments and column names.
func publishedTable(t *testing.T, name string) [][]string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "tables", name))
	require.NoError(t, err)
	require.Contains(t, string(text), "\n# Source: ")
	var rows [][]string
	for _, line := range strings.Split(string(text), "\n") {
		if line != "" && line[0] != '#' {
			rows = append(rows, strings.Split(line, "\t"))
		}
	}
	require.Greater(t, len(rows), 1, name)
	return rows[1:]
}

func number(t *testing.T, cell string) float64 {
	t.Helper()
	n, err := strconv.ParseFloat(cell, 64)
	require.NoError(t, err)
	return n
}
