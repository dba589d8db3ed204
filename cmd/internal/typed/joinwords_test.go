package typed

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestJoinLengths(t *testing.T) {
	for in, want := range map[string]string{
		"check p --stop 3 1/4 --height 1":         "check|p|--stop|3 1/4|--height|1",
		"correct p --length 2 15/32 --depth 1":    "correct|p|--length|2 15/32|--depth|1",
		"correct --begins 1 1/32 p":               "correct|--begins|1 1/32|p",
		"correct --length=2 15/32 p":              "correct|--length=2 15/32|p",
		"check --fence=-1 1/8":                    "check|--fence=-1 1/8",
		"check --fence 33/64 --start 15/32":       "check|--fence|33/64|--start|15/32",
		"check --stop 3":                          "check|--stop|3",
		"check --stop":                            "check|--stop",
		"check --stop 3 plan.yaml":                "check|--stop|3|plan.yaml",
		"check --run 2 1/2":                       "check|--run|2|1/2",
		"check --height --stop 3 1/2 1/4":         "check|--height|--stop|3 1/2|1/4",
		"cards bench.yaml --format json --out - ": "cards|bench.yaml|--format|json|--out|-",
	} {
		assert.Equal(t, strings.Split(want, "|"), JoinLengths(strings.Fields(in)), in)
	}
}
