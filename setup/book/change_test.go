package book

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPutLeavesEveryOtherLine(t *testing.T) {
	b := read(t, sample)
	d := deckOf(t, bench(t))
	for _, text := range []string{sample, strings.TrimSuffix(sample, "\n"), sample + "\n\n# the end\n"} {
		grown, err := read(t, text).Put(keepAs(t, d, 1, "another"), false)
		require.NoError(t, err)
		assert.True(t, strings.HasPrefix(string(grown.Bytes()), strings.TrimRight(text, "\n")+"\n"))
		assert.Len(t, grown.Entries(), 2)
	}
	assert.Equal(t, sample, string(b.Bytes()), "the book that was read stays as it is")
}

func TestPutRefusesANameThatIsTaken(t *testing.T) {
	d := deckOf(t, bench(t))
	_, err := read(t, sample).Put(keepAs(t, d, 1, "SEAT rail mortises"), false)
	assert.ErrorContains(t, err, "book.txt:4:1: the book already has a setup \"Seat rail mortises\"")
	assert.ErrorContains(t, err, "--force")
}

func TestReplaceKeepsWhatIsTheMakers(t *testing.T) {
	d := deckOf(t, bench(t))
	number := 0
	for i, s := range d.Setups {
		if s.Runs[0].Cut.Name == "seat rail" {
			number = i + 1
		}
	}
	require.NotZero(t, number)
	for _, text := range []string{sample, strings.ReplaceAll(sample, "    ", "\t"), strings.ReplaceAll(sample, "    ", " ")} {
		b, err := read(t, text).Put(keepAs(t, d, number, "seat rail mortises"), true)
		require.NoError(t, err)
		require.NoError(t, b.Damage().Err())
		require.Len(t, b.Entries(), 1)
		requireSame(t, &d.Setups[number-1], &b.Entries()[0].Setup)
		after := strings.Join(strings.Fields(string(b.Bytes())), " ")
		for _, stays := range []string{
			"# My setups. The spring batch. setup: Seat rail mortises",
			"note: collet snug; # is no comment here",
			"rating: good enough # a field of my own",
			"scale: 1/64 in # the old rule",
			"fence to near edge: 1/2 in # from the steel rule",
			"fence stood: 33/64",
			"# it crept",
			"stop stood: 3 1/32",
			"best face: out",
		} {
			assert.Contains(t, after, stays)
		}
		assert.Equal(t, []string{"collet snug; # is no comment here"}, b.Entries()[0].Notes)
		assert.NotNil(t, b.Entries()[0].Stood.Fence)
	}
}

// A maker may write on below the runs.
func TestReplaceWithFieldsBelowTheRuns(t *testing.T) {
	d := deckOf(t, bench(t))
	b, err := read(t, sample+"    note: and this\n    # last words\n").Put(keepAs(t, d, 2, "seat rail mortises"), true)
	require.NoError(t, err)
	assert.Equal(t, []string{"collet snug; # is no comment here", "and this"}, only(t, b).Notes)
	assert.Contains(t, string(b.Bytes()), "    # last words\n")
	assert.Equal(t, 1, strings.Count(string(b.Bytes()), "and this"))
}

func TestReplaceTwiceIsReplaceOnce(t *testing.T) {
	d := deckOf(t, bench(t))
	once, err := read(t, sample).Put(keepAs(t, d, 1, "seat rail mortises"), true)
	require.NoError(t, err)
	twice, err := once.Put(keepAs(t, d, 1, "seat rail mortises"), true)
	require.NoError(t, err)
	assert.Equal(t, string(once.Bytes()), string(twice.Bytes()))
}

func TestForget(t *testing.T) {
	b, d := bookOf(t)
	whole := string(b.Bytes())
	first := read(t, strings.Replace(whole, "setup: setup 2", "# above the second\nsetup: setup 2", 1))
	for _, word := range []string{"setup 2", "SETUP 2", b.Entries()[1].Code, strings.ToUpper(strings.ReplaceAll(b.Entries()[1].Code, "-", ""))} {
		rest, err := first.Forget(word)
		require.NoError(t, err)
		assert.Len(t, rest.Entries(), len(d.Setups)-1)
		_, err = rest.NamedOrCoded("setup 2")
		assert.ErrorContains(t, err, `no setup "setup 2"`)
		assert.Contains(t, string(rest.Bytes()), "\n\n# above the second\nsetup: setup 3\n")
	}
	_, err := first.Forget("setup twelve")
	assert.ErrorContains(t, err, "fencecard book list")
	_, err = first.Forget("setup 22")
	assert.ErrorContains(t, err, "did you mean")
}

func TestForgetADamagedEntry(t *testing.T) {
	b := read(t, "setup: broken\n  diameter: x\n\nsetup: other\n  diameter: y\n")
	require.Empty(t, b.Entries())
	rest, err := b.Forget("broken")
	require.NoError(t, err)
	assert.Equal(t, header+"\n\nsetup: other\n  diameter: y\n", string(rest.Bytes()))
}

func TestKeepAndForgetIsNothing(t *testing.T) {
	d := deckOf(t, bench(t))
	with, err := read(t, sample).Put(keepAs(t, d, 1, "another"), false)
	require.NoError(t, err)
	without, err := with.Forget("another")
	require.NoError(t, err)
	assert.Equal(t, sample, string(without.Bytes()))
}

func TestLineEndsStay(t *testing.T) {
	d := deckOf(t, bench(t))
	windows := byteOrderMark + strings.ReplaceAll(sample, "\n", "\r\n")
	b, err := read(t, windows).Put(keepAs(t, d, 1, "another"), false)
	require.NoError(t, err)
	after := string(b.Bytes())
	assert.True(t, strings.HasPrefix(after, windows))
	assert.Equal(t, strings.Count(after, "\n"), strings.Count(after, "\r\n"))
	assert.Len(t, b.Entries(), 2)
}

func TestKeepRefuses(t *testing.T) {
	d := deckOf(t, bench(t))
	_, err := Keep(d, 99, Keeping{Name: "x"})
	assert.ErrorContains(t, err, "no setup 99")
	for _, name := range []string{"", "  \n", "\x00", "-"} {
		_, err = Keep(d, 1, Keeping{Name: name})
		assert.ErrorContains(t, err, "needs a name")
	}
}

func TestKeepCleansNames(t *testing.T) {
	d := deckOf(t, bench(t))
	for _, name := range []string{"a: b", "#1", "setup: x", "tab\tand\nnewline", "ä ł Ω 榫", "\u202ebidi", "a\xffb", "card: y"} {
		e := keepAs(t, d, 1, name)
		b, err := read(t, "").Put(e, false)
		require.NoError(t, err, name)
		assert.Equal(t, e.Name, only(t, b).Name)
	}
}

// A name is no code: a setup may be called like the code of another, and is then
// neither that one nor takes its place.
func TestACodeForAName(t *testing.T) {
	b, d := bookOf(t)
	code := b.Entries()[0].Code
	_, err := b.Named(code)
	require.Error(t, err)
	grown, err := b.Put(keepAs(t, d, 2, code), false)
	require.NoError(t, err)
	named, err := grown.Named(code)
	require.NoError(t, err)
	assert.Equal(t, code, named.Name)
	assert.Len(t, grown.Entries(), len(b.Entries())+1)
}

// A run was called a card in books kept before.
func TestOldBooksCallARunACard(t *testing.T) {
	old := strings.Replace(sample, "    run: front left leg\n", "    card: front left leg\n", 1)
	require.NotEqual(t, sample, old)
	kept := only(t, read(t, old))
	requireSame(t, &only(t, read(t, sample)).Setup, &kept.Setup)

	changed := func(text string) string {
		b, err := read(t, text).Put(kept, true)
		require.NoError(t, err)
		return string(b.Bytes())
	}
	assert.Equal(t, changed(sample), changed(old), "kept again it has today's word, and the maker's lines")
}
