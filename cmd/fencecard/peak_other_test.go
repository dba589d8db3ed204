//go:build !linux

package main

import "os"

func peakOf(*os.ProcessState) (int, bool) { return 0, false }
