package session

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fencecard/joinery/plantext"
)

// missing adds to the error of a file that is not there the name beside it that
// could be meant, else what there is to choose from.
func missing(name string, err error) error {
	if !errors.Is(err, fs.ErrNotExist) {
		return Plainly(err)
	}
	folder, base := filepath.Split(name)
	files, unread := filesIn(os.DirFS(filepath.Dir(name)))
	if unread != nil {
		return fmt.Errorf("%w; there is no folder %s either", Plainly(err), filepath.Dir(name))
	}
	if near := nearest(base, files); near != "" {
		return fmt.Errorf("%w; did you mean %s?", Plainly(err), folder+near)
	}
	return fmt.Errorf("%w; %s", Plainly(err), choice(folder, base, files))
}

// filesIn are the names of the files of a folder.
func filesIn(folder fs.FS) ([]string, error) {
	entries, err := fs.ReadDir(folder, ".")
	var files []string
	for _, e := range entries {
		if !e.IsDir() {
			files = append(files, e.Name())
		}
	}
	return files, err
}

// nearest is the file whose name comes nearest to one that is not there: a plan of
// that name with another ending, else one spelt alike; "" for none.
func nearest(name string, files []string) string {
	for _, file := range files {
		if bare(file) == bare(name) && IsPlan(file) {
			return file
		}
	}
	return plantext.Nearest(name, files)
}

// mostOffered bounds the files that are named where none is near.
const mostOffered = 6

// choice names the files of the kind that was looked for.
func choice(folder, name string, files []string) string {
	where := "here"
	if folder != "" {
		where = "in " + folder
	}
	ending := strings.ToLower(filepath.Ext(name))
	if ending != ".json" && ending != ".csv" {
		ending = ".yaml"
	}
	files = slices.DeleteFunc(slices.Clone(files), func(file string) bool {
		return filepath.Ext(file) != ending && !(ending == ".yaml" && IsPlan(file))
	})
	switch {
	case len(files) > 0:
		if len(files) > mostOffered {
			files = append(files[:mostOffered], "others")
		}
		return fmt.Sprintf("the %s files %s are %s", ending, where, plantext.List(files, "and"))
	case ending == ".yaml":
		return fmt.Sprintf("there is no .yaml file %s: fencecard new PLAN writes one to begin with", where)
	}
	return fmt.Sprintf("there is no %s file %s", ending, where)
}

func bare(name string) string { return strings.TrimSuffix(name, filepath.Ext(name)) }

// IsPlan tells that a file is one of plans by its ending.
func IsPlan(name string) bool {
	ending := filepath.Ext(name)
	return ending == ".yaml" || ending == ".yml"
}
