//go:build ignore

// Generate bundles the editor of the plan's text anew, from what package-lock.json
// names, into ../files: editor.js and the licences of all that went into it. It asks
// the npm registry and the Go module proxy; the program needs neither, since both
// files are kept beside its source. Run it by go generate ./cmd/internal/desk.
package main

import (
	"encoding/json"
	"fmt"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// bundler is run by its version and no requirement of go.mod, so that whoever
// builds the program never fetches it.
const bundler = "github.com/evanw/esbuild/cmd/esbuild@v0.28.2"

var sources = []string{"package.json", "package-lock.json", "editor.js"}

func main() {
	log.SetFlags(0)
	if err := generate(); err != nil {
		log.Fatal(err)
	}
}

func generate() error {
	folder, err := os.MkdirTemp("", "fencecard-editor-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	for _, name := range sources {
		data, err := os.ReadFile(filepath.Join("editor", name))
		if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o666); err != nil {
			return err
		}
	}
	if err := run(folder, "npm", "ci", "--ignore-scripts", "--no-audit", "--no-fund"); err != nil {
		return err
	}
	if err := run(folder, "go", "run", bundler, "editor.js", "--bundle", "--minify", "--format=esm", "--target=es2020",
		"--charset=utf8", "--legal-comments=none", "--metafile=inputs.json", "--outfile=out.js"); err != nil {
		return err
	}
	bundle, err := os.ReadFile(filepath.Join(folder, "out.js"))
	if err != nil {
		return err
	}
	licences, err := licencesOf(folder)
	if err != nil {
		return err
	}
	head := "// Bundled from CodeMirror 6 by editor/generate.go; its licences are in editor-licences.txt. Do not edit.\n"
	if err := os.WriteFile("files/editor.js", append([]byte(head), bundle...), 0o666); err != nil {
		return err
	}
	return os.WriteFile("files/editor-licences.txt", licences, 0o666)
}

func run(folder, name string, args ...string) error {
	c := exec.Command(name, args...)
	c.Dir, c.Stderr = folder, os.Stderr
	if err := c.Run(); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}

// licencesOf gives the licence of each package that the bundle took something from.
func licencesOf(folder string) ([]byte, error) {
	data, err := os.ReadFile(filepath.Join(folder, "inputs.json"))
	if err != nil {
		return nil, err
	}
	var meta struct{ Inputs map[string]json.RawMessage }
	if err := json.Unmarshal(data, &meta); err != nil {
		return nil, err
	}
	var packages []string
	for input := range meta.Inputs {
		rest, inside := strings.CutPrefix(filepath.ToSlash(input), "node_modules/")
		if !inside {
			continue
		}
		words := strings.Split(rest, "/")
		depth := 1
		if strings.HasPrefix(rest, "@") {
			depth = 2
		}
		packages = append(packages, strings.Join(words[:depth], "/"))
	}
	slices.Sort(packages)
	var all strings.Builder
	for _, name := range slices.Compact(packages) {
		home := filepath.Join(folder, "node_modules", filepath.FromSlash(name))
		about, err := os.ReadFile(filepath.Join(home, "package.json"))
		if err != nil {
			return nil, err
		}
		var known struct{ Version, License string }
		if err := json.Unmarshal(about, &known); err != nil {
			return nil, err
		}
		licence, err := os.ReadFile(filepath.Join(home, "LICENSE"))
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&all, "%s %s (%s)\n\n%s\n\n", name, known.Version, known.License, strings.TrimSpace(string(licence)))
	}
	return []byte(strings.TrimSpace(all.String()) + "\n"), nil
}
