// Command pack builds the archives that are passed on: the program for six
// machines, each with its manual page, completions, the licences of all that is
// inside, and a page for whoever unpacks it.
package main

import (
	"fmt"
	"os"
	"path/filepath"
)

// machine is one of those the program is built for.
type machine struct{ system, processor, called string }

var machines = []machine{
	{"linux", "amd64", "linux-amd64"},
	{"linux", "arm64", "linux-arm64"},
	{"darwin", "amd64", "macos-amd64"},
	{"darwin", "arm64", "macos-arm64"},
	{"windows", "amd64", "windows-amd64"},
	{"windows", "arm64", "windows-arm64"},
}

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: go run ./.ci/pack FOLDER")
		os.Exit(2)
	}
	if err := pack(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "pack:", err)
		os.Exit(1)
	}
}

// pack writes the six archives and their checksums into the folder, which is
// made where it is missing.
func pack(folder string) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	work, err := os.MkdirTemp("", "fencecard-pack-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(work)
	release, err := newRelease()
	if err != nil {
		return err
	}
	shared, err := release.written(work)
	if err != nil {
		return err
	}
	var sums []byte
	for _, m := range machines {
		program, err := release.built(work, m)
		if err != nil {
			return err
		}
		licences, err := licences(m)
		if err != nil {
			return err
		}
		files := append([]file{program, licences}, shared...)
		files = append(files, handed(m)...)
		name, data, err := release.archive(m, files)
		if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o644); err != nil {
			return err
		}
		sums = append(sums, sum(name, data)...)
		fmt.Printf("%s  %.1f MB\n", name, float64(len(data))/1e6)
	}
	return os.WriteFile(filepath.Join(folder, "SHA256SUMS"), sums, 0o644)
}
