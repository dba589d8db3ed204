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
	var required []string
	for _, line := range regexp.MustCompile(`(?m)^\t(\S+) v`).FindAllStringSubmatch(string(module), -1) {
		required = append(required, line[1])
	}
	require.NotEmpty(t, required)
	folders := moduleFolders(t, required)
	for _, path := range required {
		t.Run(path, func(t *testing.T) {
			require.NotEmpty(t, listed[path], "not in the table")
			names := strings.Split(listed[path], ", ")
			delete(listed, path)
			for _, name := range names {
				require.NotEmpty(t, licenceWords[name], name)
			}
			if folders[path] == "" {
				t.Skip("not in the module cache, since nothing was built here that needs it; go mod download fetches it")
			}
			files, err := filepath.Glob(filepath.Join(folders[path], "LICENSE*"))
			require.NoError(t, err)
			require.NotEmpty(t, files)
			licence, err := os.ReadFile(files[0])
			require.NoError(t, err)
			for _, name := range names {
				assert.Contains(t, string(licence), licenceWords[name])
			}
		})
	}
	assert.Empty(t, listed, "no longer in go.mod")
}

// moduleFolders tells where each module lies in the module cache; "" for one
// that is not there.
func moduleFolders(t *testing.T, paths []string) map[string]string {
	t.Helper()
	list, err := exec.Command("go", append([]string{"list", "-m", "-f", "{{.Path}}\t{{.Dir}}"}, paths...)...).Output()
	require.NoError(t, err)
	folders := map[string]string{}
	for line := range strings.Lines(string(list)) {
		path, folder, _ := strings.Cut(strings.TrimSuffix(line, "\n"), "\t")
		folders[path] = folder
	}
	return folders
}
