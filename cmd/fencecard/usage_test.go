package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What the command line lacks is said as what to type.
func TestUsageWords(t *testing.T) {
	for line, want := range map[string]string{
		"cards a b":                      `fencecard cards: what is "b"? A name or a length of several words goes in quotes, as "7 1/64"`,
		"book keep a b --setup 1":        `fencecard book keep: what is "b"?`,
		"version extra":                  `fencecard version: what is "extra"?`,
		"new --shop":                     "the FILE is missing: fencecard new FILE; as in fencecard new bench.yaml",
		"wood change":                    "the NAME is missing: fencecard wood change NAME",
		"wood change oak":                `give --width; as in fencecard wood change "white oak" --width 9.15 --from 8 --to 11`,
		"book keep a":                    "give --name and --setup; as in fencecard book keep bench.yaml --setup 3",
		"wood change a --width 3":        "give --from or --rh-from; as in fencecard wood change",
		"wood change a --width 3 --to 2": "--from and --to go together: give --from too",
		"wood change a --width 3 --from 2 --to 3 --rh-from 2 --rh-to 4": "--from and --rh-from do not go together: leave one out",
		"cards --batch x":      `--batch takes a whole number, not "x"`,
		"cards --only-setup x": `--only-setup takes the number of a setup, such as 3 or 3@k7fw, not "x"`,
		"cards --search x":     `--search takes a time such as 5s, not "x"`,
		"cards --strips=x":     `--strips takes true or false, not "x"`,
		"wood emc --rh x":      `--rh takes a number, not "x"`,
		"check --run":          "--run needs its value behind it: --run NUMBER",
		"cards --formt x":      "there is no flag --formt; did you mean --format?",
		"cards -x":             "there is no flag -x\n",
		"cards -dash.yaml":     "-dash.yaml is taken for a flag; a file whose name begins with - is written ./-dash.yaml",
	} {
		var told bytes.Buffer
		code := run(t.Context(), strings.Fields(line), streams{strings.NewReader(""), &told, &told})
		assert.Equal(t, exitUsage, code, line)
		assert.Contains(t, told.String(), "fencecard: "+want, line)
		for _, raw := range []string{"arg(s)", "flag(s)", "in the group", "strconv", "shorthand"} {
			assert.NotContains(t, told.String(), raw, line)
		}
	}
}
