package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// licenceWords is how the text of a licence is known.
var licenceWords = map[string]string{
	"MIT":          "Permission is hereby granted, free of charge",
	"Apache-2.0":   "Apache License",
	"BSD-3-Clause": "Redistribution and use in source and binary forms",
}

// Every module of go.mod stands in the table of DEVELOPERS.md with the licence
// that it carries, and nothing else stands there.
func TestLicences(t *testing.T) {
	text, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	listed := map[string]string{}
	for _, row := range regexp.MustCompile(`(?m)^\| ([a-z]+\.[^ |]+/[^ |]+) \| ([^|]+) \|`).FindAllStringSubmatch(string(text), -1) {
		listed[row[1]] = row[2]
	}
	module, err := os.ReadFile("../../go.mod")
	require.NoError(t, err)
	required := regexp.MustCompile(`(?m)^\t(\S+) v`).FindAllStringSubmatch(string(module), -1)
	require.NotEmpty(t, required)
	for _, r := range required {
		path := r[1]
		folder, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", path).Output()
		require.NoError(t, err, path)
		files, err := filepath.Glob(filepath.Join(strings.TrimSpace(string(folder)), "LICENSE*"))
		require.NoError(t, err)
		require.NotEmpty(t, files, path)
		licence, err := os.ReadFile(files[0])
		require.NoError(t, err)
		require.NotEmpty(t, listed[path], "%s is not in the table", path)
		for name := range strings.SplitSeq(listed[path], ", ") {
			require.NotEmpty(t, licenceWords[name], "%s: %s", path, name)
			assert.Contains(t, string(licence), licenceWords[name], path)
		}
		delete(listed, path)
	}
	assert.Empty(t, listed, "no longer in go.mod")
}
