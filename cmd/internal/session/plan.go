package session

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/shopfile"
)

// ReadPlan reads the plan named by the arguments, or the built-in one, which
// it says on standard error.
func (s *Session) ReadPlan(args []string) (*joinery.Plan, error) {
	if len(args) == 0 {
		s.Note("fencecard: no plan named, using the built-in boot bench")
		return planfile.Read("boot-bench.yaml", examples.BootBench, nil)
	}
	name := args[0]
	data, err := s.ReadFile(name)
	if err != nil {
		return nil, err
	}
	folder := filepath.Dir(name)
	if name == "-" {
		name, folder = "stdin", "."
	}
	defer CollectSooner()()
	return planfile.Read(name, data, s.ShopIn(folder))
}

// ShopIn reads shop files from a plan's folder and below it: a plan from
// somebody else must not make the program read other files.
func (s *Session) ShopIn(folder string) func(path string) ([]byte, error) {
	return func(path string) ([]byte, error) {
		root, err := os.OpenRoot(folder)
		if err != nil {
			return nil, Plainly(err)
		}
		defer root.Close()
		path = filepath.FromSlash(path)
		if info, err := root.Stat(path); err == nil && !info.Mode().IsRegular() {
			return nil, errors.New("it is not a file") // a pipe would be waited for
		}
		f, err := root.Open(path)
		if errors.Is(err, fs.ErrNotExist) {
			return nil, &shopfile.Missing{Near: nearShop(root, path)}
		}
		if err != nil {
			return nil, Plainly(err)
		}
		defer f.Close()
		if err := s.source(f); err != nil {
			return nil, Plainly(err)
		}
		return readAll(f, path)
	}
}

// nearShop is the file beside a shop file that is not there which could be meant;
// "" for none.
func nearShop(root *os.Root, file string) string {
	folder, base := path.Split(filepath.ToSlash(file))
	below, err := fs.Sub(root.FS(), path.Clean(folder))
	if err != nil {
		return ""
	}
	files, _ := filesIn(below)
	near := nearest(base, files)
	if near == "" {
		return ""
	}
	return folder + near
}
