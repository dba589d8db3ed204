package output

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
)

// A length that no rule shows has the true one beside it, a space between, the
// same in text and on paper.
func TestTrueLengthBeside(t *testing.T) {
	eighths := joinery.Scale{Unit: joinery.Inches, Division: joinery.Inch / 8}
	for want, l := range map[string]joinery.Length{
		"1/2- (0.4375)":   joinery.Inch * 7 / 16,
		"3/8+ (0.376)":    joinery.Inch * 376 / 1000,
		"24 1/4+ (24.26)": joinery.Inch * 2426 / 100,
		"1/2":             joinery.Inch / 2,
		"0+ (0.01)":       joinery.Inch / 100,
	} {
		text := &textWriter{scale: eighths}
		assert.Equal(t, want, text.exactly(l))
		s := setter{scale: eighths}
		said := oneLine(saidOnCard([]block{s.length(nil, s.letters(least), l).set(100)}))
		assert.Equal(t, want, said)
	}
}
