package session

import (
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is said of a format comes from its row alone: one that nobody has heard of is
// asked for, completed, refused and known by its ending like those there are.
func TestAFormatIsARow(t *testing.T) {
	carved := &Format{Name: "carved", Endings: []string{".oak", ".elm"}}
	fs := Formats[int]{{Text, "", 1}, {PDF, "", 2}, {carved, "those who read wood", 3}}
	cmd := &cobra.Command{Use: "x"}
	var format string
	fs.Flag(cmd, &format)
	assert.Equal(t, "text", format)
	assert.Equal(t, "the `FORMAT`: text or pdf; carved for those who read wood", cmd.Flags().Lookup("format").Usage)
	assert.Equal(t, "write to this `FILE`, by its ending as txt, pdf or oak; - for standard output", fs.OutSays())
	complete, _ := cmd.GetFlagCompletionFunc("format")
	words, _ := complete(cmd, nil, "")
	assert.Equal(t, []string{"text", "pdf", "carved"}, words)

	named, err := fs.Named("carved")
	require.NoError(t, err)
	assert.Equal(t, 3, named.Write)
	_, err = fs.Named("engraved")
	assert.EqualError(t, err, `--format is text, pdf or carved, not "engraved"`)
	assert.True(t, IsUsage(err))

	targets, err := fs.Targets([]string{"a.ELM", "b.txt", "-", "c"}, "pdf", false)
	require.NoError(t, err)
	assert.Equal(t, []Target{{"a.ELM", carved}, {"b.txt", Text}, {"-", PDF}, {"c", PDF}}, targets)
	_, err = fs.Targets([]string{"a.ash"}, "text", false)
	assert.EqualError(t, err, "--out a.ash: nothing here is written as .ash; end it in .txt, .pdf, .oak or .elm, or say by --format what it is to hold")
	assert.True(t, IsUsage(err))
	targets, err = fs.Targets([]string{"a.ash"}, "carved", true)
	require.NoError(t, err)
	assert.Equal(t, []Target{{"a.ash", carved}}, targets)
}

// No two formats share a name or an ending, or the one would be written for the other.
func TestFormatsAreApart(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range []*Format{PDF, HTML, SVG, Text, JSON} {
		require.NotEmpty(t, f.Endings, f.Name)
		for _, word := range append([]string{f.Name}, f.Endings...) {
			assert.False(t, seen[word], word)
			assert.Equal(t, strings.ToLower(word), word)
			seen[word] = true
		}
		for _, e := range f.Endings {
			assert.Regexp(t, `^\.[a-z]+$`, e)
		}
	}
}
