package main

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/setup/remark"
)

// helpBases is what stands behind each rule of the help on safety, by the words
// it begins with.
var helpBases = []struct{ begins, basis string }{
	{"Unplug the router", "German BGR 100-500, ch. 2.23 (read): set with the tool standing still; the shank: common practice, no source"},
	{"Guard the bit", "German BGR 100-500, ch. 2.23 (read): cover all but the cut, close the fence; the start: common practice, no source"},
	{"Feed from right to left", "worked out from the rotation of the bit"},
	{"Never put wood between", "worked out from the rotation of the bit"},
	{"Where one channel", "worked out from the rotation of the bit"},
	{"Stopped start", "UK HSE sheet WIS18, the issue marked Revised (read in part); the angles and the tail: common practice, no source"},
	{"Stopped end", "UK HSE sheet WIS18, the issue marked Revised (read in part); the switch: common practice, no source"},
	{"Push an end", "common practice, no source"},
	{"Where the bit comes out", "common practice, no source"},
	{"Keep hands", "common shop rules, no regulator's figure; jigs and featherboards: California Title 8 s. 4296 (read)"},
	{"Look for knots", "UK HSE sheet WIS18, the issue marked Revised (read in part); nails: common practice, no source"},
	{"Wear eye", "UK HSE on wood dust, its page on woodworking on western redcedar; the rest: common practice, no source"},
	{"Between passes", "common practice, no source"},
	{"Big bits turn slower", "speeds by diameter: common practice, no source"},
	{"Cut a trial slot", "common practice, no source"},
	{"Cut ends before", "common practice, no source"},
}

// TestEveryStatementHasItsBasis holds the one table of what a maker is told as a
// rule: cautions, warnings, limits and the help on safety, each with what stands
// behind it.
func TestEveryStatementHasItsBasis(t *testing.T) {
	all := remark.Statements()
	help, err := topicFiles.ReadFile("topics/safety.txt")
	require.NoError(t, err)
	said := regexp.MustCompile(`(?m)^(?:WARNING|NOTICE)\s+(.*(?:\n {9}.*)*)`).FindAllStringSubmatch(string(help), -1)
	require.Len(t, said, len(helpBases))
	for i, m := range said {
		words := strings.Join(strings.Fields(m[1]), " ")
		require.True(t, strings.HasPrefix(words, helpBases[i].begins), "%s has no basis", words)
		all = append(all, remark.Statement{Where: "help safety", Name: helpBases[i].begins, Words: words, Basis: helpBases[i].basis})
	}
	var table strings.Builder
	table.WriteString("# What a maker is told as a rule, and what stands behind it: a source that was read, geometry, memory, or the\n" +
		"# practice of the trade, which has no source. Where a source is said to be read in part, only that part counts.\n" +
		"# None of them is written for a router in a table. FENCECARD_GOLDEN=update writes this file anew.\n" +
		"where\tname\tstatement\tbasis\n")
	for _, s := range all {
		assert.NotEmpty(t, s.Basis, "%s %s", s.Where, s.Name)
		assert.NotContains(t, s.Words+s.Basis, "\t")
		table.WriteString(strings.Join([]string{s.Where, s.Name, s.Words, s.Basis}, "\t") + "\n")
	}
	if os.Getenv("FENCECARD_GOLDEN") == "update" {
		require.NoError(t, os.WriteFile("../../testdata/statements.tsv", []byte(table.String()), 0o644))
	}
	kept, err := os.ReadFile("../../testdata/statements.tsv")
	require.NoError(t, err)
	assert.Equal(t, string(kept), table.String())
}
