package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"time"
)

// release is what all archives of a commit share.
type release struct {
	version string
	made    time.Time // of the commit, so that a clock changes no byte
}

// newRelease names the release by the day and the hash of its commit, and says
// so where there are changes that no commit has: that one is for trying only.
func newRelease() (release, error) {
	changed, err := output("git", "status", "--porcelain", "--untracked-files=no")
	if err != nil {
		return release{}, err
	}
	said, err := output("git", "log", "-1", "--format=%cI %h", "--abbrev=8")
	if err != nil {
		return release{}, err
	}
	day, hash, _ := strings.Cut(said, " ")
	made, err := time.Parse(time.RFC3339, day)
	if err != nil {
		return release{}, err
	}
	made = made.UTC()
	version := made.Format("2006.01.02") + "-" + hash
	if changed != "" {
		version += "-changed"
	}
	return release{version: version, made: made}, nil
}

// built is the program for a machine.
func (r release) built(work string, m machine) (file, error) {
	name := "fencecard"
	if m.system == "windows" {
		name += ".exe"
	}
	path := filepath.Join(work, m.called, name)
	err := r.build(path, m.system, m.processor)
	if err != nil {
		return file{}, err
	}
	data, err := os.ReadFile(path)
	return file{name: name, data: data, runs: true}, err
}

// build writes the program without what differs from one build to the next: the
// folders it was built in, and when.
func (r release) build(path, system, processor string) error {
	cmd := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags", "-s -w -buildid= -X main.version="+r.version, "-o", path, "./cmd/fencecard")
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0", "GOOS="+system, "GOARCH="+processor)
	cmd.Stderr = os.Stderr
	return cmd.Run()
}

// written is what the program writes about itself, made by one that runs here.
func (r release) written(work string) ([]file, error) {
	here := filepath.Join(work, "here", "fencecard")
	if err := r.build(here, runtime.GOOS, runtime.GOARCH); err != nil {
		return nil, err
	}
	var files []file
	for _, w := range []struct {
		name string
		args []string
	}{
		{"fencecard.1", []string{"man"}},
		{"completions/fencecard.bash", []string{"completion", "bash"}},
		{"completions/_fencecard", []string{"completion", "zsh"}},
		{"completions/fencecard.fish", []string{"completion", "fish"}},
		{"completions/fencecard.ps1", []string{"completion", "powershell"}},
	} {
		text, err := output(here, w.args...)
		if err != nil {
			return nil, err
		}
		files = append(files, file{name: w.name, data: []byte(text + "\n")})
	}
	return files, nil
}

// output runs a command and returns what it writes, without the last line's end.
func output(name string, args ...string) (string, error) {
	cmd := exec.Command(name, args...)
	cmd.Stderr = os.Stderr
	data, err := cmd.Output()
	if err != nil {
		return "", fmt.Errorf("%s %s: %w", name, strings.Join(args, " "), err)
	}
	return strings.TrimRight(string(data), "\n"), nil
}
