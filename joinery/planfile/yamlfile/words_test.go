package yamlfile_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"
)

// A distance says from which side it is; what is centred may.
func TestDistancesFromASide(t *testing.T) {
	for text, want := range map[string][2]string{
		"1/2 from front":        {"1/2", "front"},
		"1 1/2 in from the top": {"1 1/2 in", "top"},
		"12 mm FROM Left":       {"12 mm", "Left"},
		"1/2":                   {},
		"from front":            {},
		"1/2 from":              {},
	} {
		distance, side, ok := yamlfile.FromSide(text)
		assert.Equal(t, want, [2]string{distance, side}, text)
		assert.Equal(t, want != [2]string{}, ok, text)
	}
	for text, want := range map[string]string{"centred": "", "Center": "", "centre from the left": "left"} {
		side, ok := yamlfile.IsCentred(text)
		assert.True(t, ok, text)
		assert.Equal(t, want, side, text)
	}
	for _, text := range []string{"", "centred left", "1 from centre", "middle"} {
		_, ok := yamlfile.IsCentred(text)
		assert.False(t, ok, text)
	}
}

// A number is written in ten figures, never in eight, and is no longer than a maker
// writes one.
func TestNumbers(t *testing.T) {
	for text, want := range map[string]string{"8": "8", "0.25": "1/4", "010/20": "1/2", "3/8": "3/8"} {
		n, ok := yamlfile.Number(text)
		if assert.True(t, ok, text) {
			assert.Equal(t, want, n.RatString(), text)
		}
	}
	for _, text := range []string{"", "1/0", "1e9", "-1", "1/2/3", "0x10", "123456789", "/2", "3/"} {
		_, ok := yamlfile.Number(text)
		assert.False(t, ok, text)
	}
	for text, want := range map[string]float64{"0.35": 0.35, "12": 12, "008": 8} {
		n, ok := yamlfile.Figure(text)
		assert.True(t, ok, text)
		assert.InDelta(t, want, n, 1e-9, text)
	}
	for _, text := range []string{"", "1/2", "1e3", "..", "12345678901"} {
		_, ok := yamlfile.Figure(text)
		assert.False(t, ok, text)
	}
}

// fieldsOf reads one thing and what is wrong with it.
func fieldsOf(text string, known ...string) (*yamlfile.File, *yamlfile.Fields) {
	f := yamlfile.New("plan.yaml", measure.Inches, measure.InchScale)
	return f, f.Fields(f.Tree([]byte(text), "the plan", ""), "the piece", known)
}

// remedies are what is offered for the faults of a file.
func remedies(f *yamlfile.File) string {
	said := ""
	for _, fault := range f.Faults {
		said += fault.Problem + ": " + fault.Remedy + "\n"
	}
	return said
}

// The keys of a thing are known, there once, and not beside the key that they belong
// inside; a comma in a number is not taken for the next key.
func TestSlipsInKeys(t *testing.T) {
	for text, says := range map[string]string{
		"{width: 1, width: 2}":                "the piece has width twice",
		"{widht: 1}":                          "write width",
		"{width: 1,5, depth: 2}":              "write width: 1.5",
		"{depth: 1, width:2}":                 "no space after the colon",
		"{flavour: 1}":                        "its keys are size, width and depth",
		"size:\nleft-right: 3\ntop-bottom: 4": "begin it two spaces further in than size",
	} {
		f, _ := fieldsOf(text, "size", "width", "depth")
		assert.Len(t, f.Faults, 1, "%s: %s", text, remedies(f))
		assert.Contains(t, remedies(f), says, text)
	}
}

// What has to be there is asked for in one fault, with an example of each, and not where
// a slip was taken for it.
func TestKeysThatAreMissing(t *testing.T) {
	f, piece := fieldsOf("{widht: 1}", "width", "depth")
	piece.Need("width", "depth")
	assert.Len(t, f.Faults, 2)
	assert.Contains(t, f.Faults[1].Problem, "the piece has no depth")
	assert.NotContains(t, f.Faults[1].Problem, "width")

	f, piece = fieldsOf("{width: , depth: 1}", "width", "depth")
	assert.Zero(t, piece.Length("width"))
	assert.Contains(t, remedies(f), "nothing stands after width")
	assert.Len(t, piece.Unread(), 1, "nobody asked for depth")
	assert.Equal(t, measure.Inch, piece.Length("depth"))
	assert.Empty(t, piece.Unread())
}

// A word that is none of a few is answered with the one that was likely meant.
func TestWordsOfAFew(t *testing.T) {
	words := []string{"yes", "no"}
	f, piece := fieldsOf("{a: NO, b: false, c: noo, d: left-right, e: right-left, f: the Front, g: leftt}", "a", "b", "c", "d", "e", "f", "g")
	assert.Equal(t, 1, piece.Word("a", "answer", words))
	assert.Equal(t, 1, piece.Word("b", "answer", words, "true", "false"))
	assert.Empty(t, f.Faults)
	assert.Equal(t, -1, piece.Word("c", "answer", words))
	assert.Contains(t, remedies(f), `"noo" is no answer: write no`)
	d, ok := f.Dimension(piece.Value("d"), "left-right")
	assert.True(t, ok)
	assert.Equal(t, joinery.LeftRight, d)
	_, ok = f.Dimension(piece.Value("e"), "right-left")
	assert.False(t, ok)
	assert.Contains(t, remedies(f), "write left-right")
	assert.Equal(t, joinery.Front, piece.Side("f"))
	assert.Equal(t, joinery.NoSide, piece.Side("g"))
	assert.Contains(t, remedies(f), "write left\n")
	assert.Len(t, f.Faults, 3)
}

// A file that is no plan is refused as a whole, and one that is full of faults told to an
// end.
func TestFilesThatAreNone(t *testing.T) {
	for text, says := range map[string]string{
		"":                       "the plan is empty",
		"# nothing but a remark": "the plan is empty",
		"\xff\xfea\x00b\x00":     "saved as UTF-16",
		"\x89PNG\r\n\x1a\n\x00\x00\x00\x0dIHDR\x00\x00\x00\x01\x00\x00": "is not a text file",
		"a: b\n\tc: d\n":   "begins with a tab",
		"a: \xe9\n":        "in Latin-1",
		"a: &x 1\nb: *x\n": "which a plan does not do",
	} {
		f := yamlfile.New("plan.yaml", measure.Inches, measure.InchScale)
		f.Tree([]byte(text), "the plan", "")
		assert.Contains(t, remedies(f), says, "%q", text)
	}
	f := yamlfile.New("plan.yaml", measure.Inches, measure.InchScale)
	for range yamlfile.MostFaults + 5 {
		f.Add(plantext.Fault{Problem: "x"})
	}
	assert.ErrorContains(t, f.Err(), "more than 100 faults")
}
