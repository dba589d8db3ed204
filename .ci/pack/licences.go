package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// licences are those of all that is linked into the program for a machine, and
// of Go's own library.
func licences(m machine) (file, error) {
	cmd := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}\t{{.Dir}}{{end}}{{end}}\t{{.Dir}}", "./cmd/fencecard")
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0", "GOOS="+m.system, "GOARCH="+m.processor)
	cmd.Stderr = os.Stderr
	list, err := cmd.Output()
	if err != nil {
		return file{}, err
	}
	goes, err := output("go", "env", "GOROOT", "GOVERSION")
	if err != nil {
		return file{}, err
	}
	root, version, _ := strings.Cut(goes, "\n")
	folders := map[string][]string{"Go, its library and runtime, " + version: {root}}
	for line := range strings.Lines(string(list)) {
		words := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		switch len(words) {
		case 3: // of a module: its own folder, and the package's, which may have a licence of its own
			for folder := words[2]; ; folder = filepath.Dir(folder) {
				if !slices.Contains(folders[words[0]], folder) {
					folders[words[0]] = append(folders[words[0]], folder)
				}
				if folder == words[1] || !strings.HasPrefix(folder, words[1]) {
					break
				}
			}
		case 2: // of this program or of Go
			if strings.Contains(words[1], string(filepath.Separator)+"cmd"+string(filepath.Separator)) {
				page := "fencecard's page in the browser"
				folders[page] = append(folders[page], words[1], filepath.Join(words[1], "files"))
			}
		}
	}
	names := make([]string, 0, len(folders))
	for name := range folders {
		names = append(names, name)
	}
	slices.Sort(names)
	var b strings.Builder
	b.WriteString("fencecard is built of these, each under its own licence.\n")
	for _, name := range names {
		text, err := licenceTexts(folders[name])
		if err != nil {
			return file{}, err
		}
		if text == "" {
			return file{}, fmt.Errorf("%s carries no licence", name)
		}
		fmt.Fprintf(&b, "\n\n%s\n%s\n\n%s", name, strings.Repeat("=", len(name)), text)
	}
	return file{name: "LICENCES.txt", data: []byte(b.String())}, nil
}

// licenceTexts are the licences and notices that lie in some folders.
func licenceTexts(folders []string) (string, error) {
	slices.Sort(folders)
	var texts []string
	for _, folder := range folders {
		for _, like := range []string{"LICEN[SC]E*", "NOTICE*", "COPYING*", "*-licences.txt"} {
			found, err := filepath.Glob(filepath.Join(folder, like))
			if err != nil {
				return "", err
			}
			for _, path := range found {
				data, err := os.ReadFile(path)
				if err != nil {
					return "", err
				}
				text := strings.TrimSpace(strings.ReplaceAll(string(data), "\r\n", "\n")) + "\n"
				if !slices.Contains(texts, text) {
					texts = append(texts, text)
				}
			}
		}
	}
	return strings.Join(texts, "\n"), nil
}
