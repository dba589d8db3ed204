//go:build race

package planfile_test

// The race detector lets pools forget what they keep, so that far more is
// allocated than otherwise.
const raceDetector = true
