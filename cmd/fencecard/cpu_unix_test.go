//go:build unix

package main

import (
	"syscall"
	"time"
)

// cpuTime is the time this process has kept processors busy, however many
// other programs wait for them.
func cpuTime() time.Duration {
	var used syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &used) != nil {
		return 0
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}
