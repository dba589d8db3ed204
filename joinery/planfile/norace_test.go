//go:build !race

package planfile_test

const raceDetector = false
