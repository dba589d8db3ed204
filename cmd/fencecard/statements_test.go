package main

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/cmd/internal/manual"
	"fencecard/setup/remark"
)

// helpBases is what stands behind each rule of the help on safety, by the words
// it begins with.
var helpBases = []struct{ begins, basis string }{
	{"Unplug the router", "German BGR 100-500, ch. 2.23 (read): set with the tool standing still; the shank: common practice, no source"},
	{"Guard the bit", "German BGR 100-500, ch. 2.23 (read): cover all but the cut, close the fence; the start: common practice, no source"},
	{"Feed from right to left", "worked out from the rotation of the bit"},
	{"Bury the bit", "worked out from the rotation of the bit"},
	{"Where one channel", "worked out from the rotation of the bit"},
	{"Stopped start", "UK HSE sheet WIS18, the issue marked Revised (read in part); the angles and the tail: common practice, no source"},
	{"Start hole", "common practice, no source"},
	{"Stopped end", "UK HSE sheet WIS18, the issue marked Revised (read in part); the switch: common practice, no source"},
	{"Push an end", "common practice, no source"},
	{"Where the bit comes out", "common practice, no source"},
	{"Keep hands", "common shop rules, no regulator's figure; jigs and featherboards: California Title 8 s. 4296 (read)"},
	{"Look for knots", "UK HSE sheet WIS18, the issue marked Revised (read in part); nails: common practice, no source"},
	{"Wear eye", "UK HSE on wood dust, its page on woodworking on western redcedar; the rest: common practice, no source"},
	{"Between passes", "common practice, no source"},
	{"Big bits turn slower", "speeds by diameter: common practice, no source"},
	{"Cut a trial groove", "common practice, no source"},
	{"Cut ends before", "common practice, no source"},
}

// ruleOfHelp is a rule in a page of help other than that on safety, in its words.
type ruleOfHelp struct{ page, words, basis string }

var rulesOfHelp = []ruleOfHelp{
	{"cards", "feed from right to left.", "worked out from the rotation of the bit"},
	{"cards", "Unplug.", "German BGR 100-500, ch. 2.23 (read): set with the tool standing still"},
	{"cards", "keep their order: the fence only ever moves away from the bit.", "worked out from the rotation of the bit"},
	{"cards", "the end is first drawn back from the fence as far as it says, then brought nearer by less than the bit is wide each time, and is last at the fence", "worked out from the rotation of the bit: every pass takes wood on the side that the bit pushes from"},
	{"cards", "A square block, a gauge or a carriage pushes the work, and it is held to that.", "common practice, no source"},
	{"correct", "Make a test cut in scrap of the same stock", "common practice, no source"},
	{"correct", "The width that one run cut is also the bit's true diameter.", "geometry"},
	{"correct", "marks and fence distances follow the true diameter", "geometry"},
	{"joints", "thickness (left out: a third)", "common practice, no source"},
	{"plan", "for how they move with the seasons", "Wood Handbook, FPL-GTR-190 (2010), equations 13-2 and 13-3, tables 4-3 and 13-5"},
	{"shop", "what one change of each costs, test cut included", "estimates of ours, to be replaced by your own"},
	{"shop", "the turning bit may be raised into clamped work", "common practice, no source"},
	{"shop", "of the bit's diameter for one pass, whatever the wood; left out: by the hardness of the wood", "common practice, no source"},
	{"shop", "shorter pieces are not fed by hand alone, hands stay this far from the bit, a thinner floor under a cut is warned of", "common shop rules, no regulator's figure"},
	{"shop", "shrinkage: {radial: 6, tangential: 11} from green to ovendry, percent", "Wood Handbook, FPL-GTR-190 (2010), table 4-3, from which the table of woods is"},
	{"shop", "rout a groove in scrap, measure its width", "common practice, no source"},
	{"words", "the work lowered onto the turning bit, where a cut starts stopped; where it ends stopped, the work is lifted off", "common practice, no source"},
	{"words", "you stand in front of it and feed from right, the infeed, to left, the outfeed", "worked out from the rotation of the bit"},
}

// ruling are the words by which a rule is known that must not stand in a page of
// help without a basis.
var ruling = regexp.MustCompile(`(?i)\bunplug|feed from|away from the bit|by hand alone|hands stay|turning bit|true diameter|a third\)|with the seasons|test cut in|thinner|shrinkage:|for one pass, whatever`)

// helpStatements are the rules in the pages of help other than that on safety.
func helpStatements(t *testing.T) []remark.Statement {
	var all []remark.Statement
	pages, err := os.ReadDir("../internal/manual/topics")
	require.NoError(t, err)
	for _, page := range pages {
		name := strings.TrimSuffix(page.Name(), ".txt")
		if name == "safety" {
			continue
		}
		text := strings.Join(strings.Fields(manual.Topic(name)), " ")
		covered := text
		for _, rule := range rulesOfHelp {
			if rule.page == name {
				require.Contains(t, text, rule.words, name)
				covered = strings.ReplaceAll(covered, rule.words, "")
				all = append(all, remark.Statement{Where: "help " + name, Name: "rule", Words: rule.words, Basis: rule.basis})
			}
		}
		assert.Empty(t, ruling.FindAllString(covered, -1), "the help on %s says a rule without a basis", name)
	}
	return all
}

// TestEveryStatementHasItsBasis holds the one table of what a maker is told as a
// rule: cautions, warnings, limits and the help, each with what stands behind it.
func TestEveryStatementHasItsBasis(t *testing.T) {
	all := remark.Statements()
	help, err := os.ReadFile("../internal/manual/topics/safety.txt")
	require.NoError(t, err)
	said := regexp.MustCompile(`(?m)^(?:WARNING|NOTICE)\s+(.*(?:\n {9}.*)*)`).FindAllStringSubmatch(string(help), -1)
	require.Len(t, said, len(helpBases))
	for i, m := range said {
		words := strings.Join(strings.Fields(m[1]), " ")
		require.True(t, strings.HasPrefix(words, helpBases[i].begins), "%s has no basis", words)
		all = append(all, remark.Statement{Where: "help safety", Name: helpBases[i].begins, Words: words, Basis: helpBases[i].basis})
	}
	all = append(all, helpStatements(t)...)
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
