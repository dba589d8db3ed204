package shopfile_test

import (
	"strings"
	"testing"

	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/shopfile"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestKeepMeasured(t *testing.T) {
	for _, test := range []struct{ name, before, after string }{
		{"below the diameter",
			"# mine\nbits:\n  - bit: half   # good\n    diameter: 1/2 # label\n    kind: straight\n",
			"# mine\nbits:\n  - bit: half   # good\n    diameter: 1/2 # label\n    measured: 0.497 in\n    kind: straight\n"},
		{"in place of an older measure",
			"bits:\n- bit: half\n  measured: 0.499   # in May\n  diameter: 1/2\n",
			"bits:\n- bit: half\n  measured: 0.497 in   # in May\n  diameter: 1/2\n"},
		{"in place of a quoted one",
			"bits:\n- bit: half\n  measured: '0.499 in'\n  diameter: 1/2\n",
			"bits:\n- bit: half\n  measured: 0.497 in\n  diameter: 1/2\n"},
		{"in braces",
			"bits: [{bit: quarter, diameter: 1/4}, {bit: half, diameter: 1/2, kind: up-cut}]\n",
			"bits: [{bit: quarter, diameter: 1/4}, {bit: half, diameter: 1/2, measured: 0.497 in, kind: up-cut}]\n"},
		{"where the key stands empty",
			"bits:\n- bit: half\n  measured:\n  diameter: 1/2\n",
			"bits:\n- bit: half\n  measured: 0.497 in\n  diameter: 1/2\n"},
		{"behind a dash",
			"bits:\n  - diameter: 1/2\n    bit: half\n",
			"bits:\n  - diameter: 1/2\n    measured: 0.497 in\n    bit: half\n"},
		{"at the end of a file without a line end",
			"bits:\n  - bit: half\n    diameter: 1/2",
			"bits:\n  - bit: half\n    diameter: 1/2\n    measured: 0.497 in"},
		{"with Windows line ends",
			"bits:\r\n  - bit: half\r\n    diameter: 1/2\r\n    kind: up-cut\r\n",
			"bits:\r\n  - bit: half\r\n    diameter: 1/2\r\n    measured: 0.497 in\r\n    kind: up-cut\r\n"},
		{"behind a byte order mark, beside letters of two bytes",
			"\ufeffbits: [{bit: ä, diameter: ½}, {bit: half, diameter: 1/2}]\n",
			"\ufeffbits: [{bit: ä, diameter: ½}, {bit: half, diameter: 1/2, measured: 0.497 in}]\n"},
		{"in a plan with the shop in place",
			"unit: in\nshop:\n  bits:\n    - bit: half\n      diameter: 1/2\npieces: []\n",
			"unit: in\nshop:\n  bits:\n    - bit: half\n      diameter: 1/2\n      measured: 0.497 in\npieces: []\n"},
	} {
		t.Run(test.name, func(t *testing.T) {
			kept, err := shopfile.KeepMeasured("shop.yaml", []byte(test.before), "half", 497*measure.Inch/1000, measure.InchScale)
			require.NoError(t, err)
			assert.Equal(t, test.after, string(kept))
			again, err := shopfile.KeepMeasured("shop.yaml", kept, "half", 497*measure.Inch/1000, measure.InchScale)
			require.NoError(t, err)
			assert.Equal(t, test.after, string(again), "kept twice is kept once")
		})
	}
}

// A plan that names the shop has the name in one line, however the shop file
// spaces it.
func TestKeepMeasuredOfANameSpacedOut(t *testing.T) {
	const shop = "bits:\n  - bit: straight   half\n    diameter: 1/2\n"
	kept, err := shopfile.KeepMeasured("shop.yaml", []byte(shop), "straight half", 497*measure.Inch/1000, measure.InchScale)
	require.NoError(t, err)
	assert.Equal(t, shop+"    measured: 0.497 in\n", string(kept))
}

func TestKeepMeasuredRefuses(t *testing.T) {
	for _, test := range []struct{ name, shop, want string }{
		{"no such bit", "bits:\n  - {bit: quarter, diameter: 1/4}\n", `there is no bit "half" here`},
		{"no bits", "scale: 1/64\n", `there is no bit "half" here`},
		{"no diameter", "bits:\n  - bit: half\n", "cannot be written"},
		{"a diameter on two lines", "bits:\n  - bit: half\n    diameter:\n      1\n      1/2\n", "cannot be written"},
		{"no YAML", "bits: [", "shop.yaml:1"},
	} {
		kept, err := shopfile.KeepMeasured("shop.yaml", []byte(test.shop), "half", 497*measure.Inch/1000, measure.InchScale)
		require.Error(t, err, test.name)
		assert.Contains(t, err.Error(), test.want, test.name)
		assert.Nil(t, kept, test.name)
	}
}

func FuzzKeepMeasured(f *testing.F) {
	f.Add([]byte("bits:\n  - bit: half\n    diameter: 1/2 # label\n"))
	f.Add([]byte("\ufeffshop: {bits: [{bit: half, measured: '1/2', diameter: \"1/2\"}]}\r\n"))
	f.Add([]byte("bits:\r- bit: half\r  measured:\r  diameter: 1/2"))
	f.Fuzz(func(t *testing.T, data []byte) {
		kept, err := shopfile.KeepMeasured("shop.yaml", data, "half", 497*measure.Inch/1000, measure.InchScale)
		if err != nil {
			return
		}
		before, after := strings.Fields(string(data)), strings.Fields(string(kept))
		if len(after) > len(before)+3 || len(after) < len(before)-1 {
			t.Fatalf("more than the measure changed:\n%q\n%q", data, kept)
		}
	})
}
