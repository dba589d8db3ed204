//go:build linux

package main

import (
	"os"
	"syscall"
)

// peakOf is the most memory that a process which has ended held at once, in
// bytes. Linux counts in kilobytes, other systems otherwise.
func peakOf(ended *os.ProcessState) (int, bool) {
	used, ok := ended.SysUsage().(*syscall.Rusage)
	if !ok {
		return 0, false
	}
	return int(used.Maxrss) << 10, true
}
