package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"fencecard/joinery"
)

// missing adds to the error of a file that is not there the name beside it that
// could be meant.
func missing(name string, err error) error {
	folder, base := filepath.Split(name)
	if near := nearest(filepath.Dir(name), base); near != "" && errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("%w; did you mean %s?", plainly(err), folder+near)
	}
	return plainly(err)
}

// nearest is the file of a folder whose name comes nearest to one that is not
// there: a plan of that name with another ending, else one spelt alike; "" for
// none.
func nearest(folder, name string) string {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return ""
	}
	var files []string
	for _, e := range entries {
		if e.IsDir() {
			continue
		}
		if bare(e.Name()) == bare(name) && isPlan(e.Name()) {
			return e.Name()
		}
		files = append(files, e.Name())
	}
	return joinery.Nearest(name, files)
}

func bare(name string) string { return strings.TrimSuffix(name, filepath.Ext(name)) }

func isPlan(name string) bool {
	ending := filepath.Ext(name)
	return ending == ".yaml" || ending == ".yml"
}
