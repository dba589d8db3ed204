package main

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"sync"

	"fencecard/cmd/internal/desk"
)

// firstStart is where one begins who has named no plan. Each plan that is begun or
// chosen there gets a page of its own, which ends with the program.
// They lead back to begin, the address of the first page, which is known when it is
// served.
func (a *app) firstStart(ctx context.Context, o benchOptions, shared string, begin *string) desk.First {
	folder, called := plansFolder()
	served := &servedPlans{addresses: map[string]string{}}
	o.port = 0 // the one that was asked for is taken by the first page
	return desk.First{Folder: folder, Called: called, Open: func(path string) (string, error) {
		return served.open(path, func() (*servedBench, error) {
			w, err := (&app{Session: a.Silently()}).benchWork([]string{path}, o)
			if err != nil {
				return nil, err
			}
			w.begin = *begin
			return a.serveBench(ctx, w, o, shared)
		})
	}}
}

// servedPlans are the plans that were opened from the page where one begins.
type servedPlans struct {
	lock      sync.Mutex
	addresses map[string]string // by their files
}

// open returns the address of the screen of a plan, which is served once.
func (s *servedPlans) open(path string, serve func() (*servedBench, error)) (string, error) {
	s.lock.Lock()
	defer s.lock.Unlock()
	if s.addresses[path] == "" {
		page, err := serve()
		if err != nil {
			return "", err
		}
		if page == nil {
			return "", errors.New("the program is ending")
		}
		s.addresses[path] = page.address + "plan"
	}
	return s.addresses[path], nil
}

// plansFolder is where plans are looked for and new ones go: the folder that one is
// in; or, where that is the program's own, as after a press on it, or the one above
// all others, fencecard in the documents.
func plansFolder() (folder, called string) {
	here, err := os.Getwd()
	if err == nil && here != filepath.Dir(here) && !programIn(here) {
		return here, "the folder " + filepath.Base(here)
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return here, "the folder of the program"
	}
	if info, err := os.Stat(filepath.Join(home, "Documents")); err == nil && info.IsDir() {
		return filepath.Join(home, "Documents", "fencecard"), "the folder fencecard in your documents"
	}
	return filepath.Join(home, "fencecard"), "the folder fencecard in your home folder"
}

// programIn reports whether a folder is the one that the program lies in.
func programIn(folder string) bool {
	program, err := os.Executable()
	if err != nil {
		return false
	}
	if real, err := filepath.EvalSymlinks(program); err == nil {
		program = real
	}
	one, err1 := os.Stat(folder)
	two, err2 := os.Stat(filepath.Dir(program))
	return err1 == nil && err2 == nil && os.SameFile(one, two)
}
