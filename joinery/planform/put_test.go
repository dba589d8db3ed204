package planform_test

import (
	"strings"
	"testing"

	"fencecard/joinery/planform"
	"fencecard/joinery/plantext"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// set fills fields of a form in: "in=right", "size.top-bottom=17".
func set(t testing.TB, f planform.Form, fields ...string) planform.Form {
	for _, field := range fields {
		key, value, _ := strings.Cut(field, "=")
		require.True(t, f.Set(key, value), "no field %s", key)
	}
	return f
}

// formAt is the form of a text that stands at a place.
func formAt(t testing.TB, text, at string) planform.Form {
	forms, err := planform.Read("plan.yaml", []byte(text))
	require.NoError(t, err)
	for _, f := range forms {
		if f.At == at {
			return f
		}
	}
	require.Fail(t, "no form at "+at, text)
	return planform.Form{}
}

const bench = `# A bench.
unit: in   # inches

pieces:

  # The legs.

  - piece: "leg: left"   # front
    count: 2
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    # grain: top-bottom
    cuts:
      - mortise: rail     # one of two
        width:   3/8      # as the bit
        in: right
        depth: 1

      - dado: shelf
        in: right
        width: 3/4
        after: [rail, 'lock rail, upper']
        note: |
          slowly, and
          twice

  - piece: rail
    size:
      left-right: 32    # long
      front-back: 7/8
      top-bottom: 3

# The end.
`

func TestChangingOneValue(t *testing.T) {
	for _, test := range []struct{ name, at, set, before, after string }{
		{"in place of a value", "pieces/0/cuts/0", "width=1/2", "width:   3/8      # as the bit", "width:   1/2      # as the bit"},
		{"in braces", "pieces/0", "size.top-bottom=18 1/2", "top-bottom: 17}", "top-bottom: 18 1/2}"},
		{"in a block inside", "pieces/1", "size.left-right=32 1/2 between shoulders", "left-right: 32    # long", "left-right: 32 1/2 between shoulders    # long"},
		{"a unit and a fraction as typed", "pieces/0/cuts/0", `depth=1' 6 1/2"`, "depth: 1\n", "depth: 1' 6 1/2\"\n"},
		{"in the quotes it had", "pieces/0", "piece=leg", `"leg: left"   # front`, `"leg"   # front`},
		{"a quote inside quotes", "pieces/0", `piece=leg 3"`, `"leg: left"   # front`, `'leg 3"'   # front`},
		{"a name that needs quotes", "pieces/1", "piece=rail: #2", "piece: rail\n", "piece: \"rail: #2\"\n"},
		{"the name of a cut", "pieces/0/cuts/0", "name=end rail", "mortise: rail     #", "mortise: end rail     #"},
		{"a list of names", "pieces/0/cuts/1", `after="lock rail, upper"`, "[rail, 'lock rail, upper']", "lock rail, upper"},
		{"one more in a list", "pieces/0/cuts/1", `after=rail, "lock rail, upper", panel`, "[rail, 'lock rail, upper']", `[rail, "lock rail, upper", panel]`},
		{"a text of several lines", "pieces/0/cuts/1", "note=once", "note: |\n          slowly, and\n          twice\n", "note: once\n"},
		{"a new key between others", "pieces/0/cuts/0", "span=0 to 3 from top", "        in: right\n        depth: 1\n", "        in: right\n        span: 0 to 3 from top\n        depth: 1\n"},
		{"a new key before the first", "/", "title=Bench", "unit: in ", "title: Bench\nunit: in "},
		{"a new key behind remarks", "/", "wood=oak", "unit: in   # inches\n", "unit: in   # inches\nwood: oak\n"},
		{"a new key before a list", "pieces/0", "grain=top-bottom", "17}\n    # grain", "17}\n    grain: top-bottom\n    # grain"},
		{"a new key inside a new one", "pieces/0", "sides.front=outside", "17}\n    #", "17}\n    sides: {front: outside}\n    #"},
		{"a key taken out, with its remark", "pieces/0/cuts/0", "width=", "        width:   3/8      # as the bit\n", ""},
		{"a key taken out of braces", "pieces/0", "size.front-back=", "front-back: 1 5/8, ", ""},
		{"the last key taken out of braces", "pieces/0", "size.top-bottom=", ", top-bottom: 17}", "}"},
		{"a key taken out of a block", "pieces/1", "size.front-back=", "      front-back: 7/8\n", ""},
		{"the kind of a cut", "pieces/0/cuts/0", "kind=groove", "mortise: rail ", "groove: rail "},
		{"a kind that has fewer keys", "pieces/0/cuts/1", "kind=tenon", "dado: shelf\n        in: right\n        width: 3/4\n", "tenon: shelf\n"},
		{"blanks around a value", "pieces/0/cuts/0", "in=  left ", "in: right\n        depth", "in: left\n        depth"},
	} {
		t.Run(test.name, func(t *testing.T) {
			for _, end := range []string{"\n", "\r\n", "\r"} {
				as := func(text string) string { return strings.ReplaceAll(text, "\n", end) }
				for _, begin := range []string{"", "\ufeff"} {
					text := begin + as(bench)
					require.Equal(t, 1, strings.Count(text, as(test.before)), "the test means one place")
					put, at, err := planform.Put([]byte(text), set(t, formAt(t, text, test.at), test.set))
					require.NoError(t, err)
					assert.Equal(t, test.at, at)
					assert.Equal(t, strings.Replace(text, as(test.before), as(test.after), 1), string(put))
				}
			}
		})
	}
}

func TestSeveralChangesAtOnce(t *testing.T) {
	f := set(t, formAt(t, bench, "pieces/0/cuts/0"), "width=", "in=left", "setback=centred", "span=0 to 3 from top", "fence=either", "note=a: b", "repeat.times=2", "repeat.every=1")
	put, _, err := planform.Put([]byte(bench), f)
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(bench, `        width:   3/8      # as the bit
        in: right
        depth: 1
`, `        in: left
        setback: centred
        span: 0 to 3 from top
        depth: 1
        fence: either
        note: "a: b"
        repeat: {times: 2, every: 1}
`, 1), string(put))

	f = set(t, formAt(t, bench, "pieces/1"), "size.left-right=", "size.front-back=", "size.top-bottom=", "mirror.of=leg: left", "mirror.across=left-right, front-back")
	put, _, err = planform.Put([]byte(bench), f)
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(bench, `    size:
      left-right: 32    # long
      front-back: 7/8
      top-bottom: 3
`, `    mirror: {of: "leg: left", across: [left-right, front-back]}
`, 1), string(put))
}

// In braces all of a plan may stand in one line.
func TestFlow(t *testing.T) {
	const text = "{unit: in, pieces: [{piece: leg, size: {top-bottom: 17}, cuts: [{tenon: a, at: top, cheeks: 3/16}, {lap: b}]}, {piece: rail}]}"
	for _, test := range []struct{ name, at, set, before, after string }{
		{"a value", "pieces/0", "piece=foot", "piece: leg", "piece: foot"},
		{"a comma", "pieces/0", "piece=leg, left", "piece: leg", `piece: "leg, left"`},
		{"a new key", "pieces/0", "count=2", "leg, size", "leg, count: 2, size"},
		{"a new key at the end", "pieces/0/cuts/1", "depth=1", "lap: b", "lap: b, depth: 1"},
		{"a new key inside", "pieces/0", "size.left-right=1", "{top-bottom: 17}", "{left-right: 1, top-bottom: 17}"},
		{"the only key inside taken out", "pieces/0", "size.top-bottom=", "size: {top-bottom: 17}, ", ""},
		{"a key taken out", "pieces/0/cuts/0", "at=", "at: top, ", ""},
		{"the last taken out", "pieces/0/cuts/0", "cheeks=", ", cheeks: 3/16", ""},
		{"a name for nothing", "pieces/0/cuts/1", "name=", "lap: b", "lap:"},
		{"the plan's own", "/", "title=Bench", "{unit", "{title: Bench, unit"},
	} {
		put, _, err := planform.Put([]byte(text), set(t, formAt(t, text, test.at), test.set))
		require.NoError(t, err, test.name)
		assert.Equal(t, strings.Replace(text, test.before, test.after, 1), string(put), test.name)
	}
	for _, test := range []struct{ under, before, after string }{
		{"pieces/0", "{lap: b}", "{lap: b}, {lap: corner, in: back}"},
		{"pieces/1", "{piece: rail}", "{piece: rail, cuts: [{lap: corner, in: back}]}"},
	} {
		put, at, err := planform.Put([]byte(text), set(t, planform.BlankCut("lap", test.under, []byte(text)), "name=corner", "in=back"))
		require.NoError(t, err)
		assert.Equal(t, strings.Replace(text, test.before, test.after, 1), string(put))
		assert.Equal(t, "lap: corner", formAt(t, string(put), at).Title)
	}
}

func TestOneForAllOrEach(t *testing.T) {
	const text = "pieces:\n- piece: rail\n  cuts:\n  - tenon: a\n    cheeks: 3/16   # all\n"
	f := formAt(t, text, "pieces/0/cuts/0")
	assert.Equal(t, "3/16", f.Value("cheeks"))
	_, _, err := planform.Put([]byte(text), set(t, f, "cheeks.front=1/4"))
	assert.ErrorContains(t, err, "one value for all")
	put, _, err := planform.Put([]byte(text), set(t, f, "cheeks=", "cheeks.front=1/4"))
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(text, "3/16", "{front: 1/4}", 1), string(put))

	f = formAt(t, string(put), "pieces/0/cuts/0")
	assert.Equal(t, "", f.Value("cheeks"))
	_, _, err = planform.Put(put, set(t, f, "cheeks=3/16"))
	assert.ErrorContains(t, err, "one value for all")
	back, _, err := planform.Put(put, set(t, f, "cheeks=3/16", "cheeks.front="))
	require.NoError(t, err)
	assert.Equal(t, text, string(back))
}

func TestPlanWithItsShop(t *testing.T) {
	const text = "unit: in\nshop: {lift: 2, bits: [{bit: half, diameter: 1/2}]}\npieces:\n- piece: rail\n"
	_, _, err := planform.Put([]byte(text), set(t, formAt(t, text, "/"), "shop=shop.yaml"))
	assert.Error(t, err, "the shop in the plan would be lost")
	put, at, err := planform.Put([]byte(text), set(t, planform.Blank(planform.Bit, "shop", []byte(text)), "bit=quarter, new", "diameter=1/4"))
	require.NoError(t, err)
	assert.Equal(t, "shop/bits/1", at)
	assert.Equal(t, strings.Replace(text, "1/2}]", `1/2}, {bit: "quarter, new", diameter: 1/4}]`, 1), string(put))
	put, _, err = planform.Put([]byte(text), set(t, formAt(t, text, "shop"), "fence.reach=12"))
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(text, "{lift: 2", "{fence: {reach: 12}, lift: 2", 1), string(put))

	const without = "unit: in\n\npieces:\n\n- piece: rail\n"
	put, at, err = planform.Put([]byte(without), set(t, planform.Blank(planform.Shop, "", []byte(without)), "unit=mm", "lift=50"))
	require.NoError(t, err)
	assert.Equal(t, "shop", at)
	assert.Equal(t, "unit: in\nshop:\n  unit: mm\n  lift: 50\n\npieces:\n\n- piece: rail\n", string(put))
	put, _, err = planform.Put(put, set(t, planform.Blank(planform.Bit, "shop", put), "bit=quarter", "diameter=1/4"))
	require.NoError(t, err)
	assert.Equal(t, "unit: in\nshop:\n  unit: mm\n  lift: 50\n  bits:\n  - bit: quarter\n    diameter: 1/4\n\npieces:\n\n- piece: rail\n", string(put))
}

func TestFormsThatCannotBePut(t *testing.T) {
	text := []byte(bench)
	for _, test := range []struct {
		name string
		form planform.Form
		says string
	}{
		{"a place that is gone", set(t, planform.Form{Kind: planform.Cut, At: "pieces/7/cuts/0"}), "not in the plan any more"},
		{"a place of another kind", planform.Form{Kind: planform.Joint, At: "pieces/0"}, "not in the plan any more"},
		{"no kind of form", planform.Form{Kind: "glue"}, "no form for a glue"},
		{"a cut without a kind", planform.Blank(planform.Cut, "pieces/0", text), "what kind of cut"},
		{"a kind there is not", set(t, planform.BlankCut("mortise", "pieces/0", text), "kind=glue"), `"glue" is no kind of cut`},
		{"a cut in nothing", planform.BlankCut("mortise", "pieces/9", text), "nothing at pieces/9"},
		{"a cut in a plan", planform.BlankCut("mortise", "/", text), "nothing at /"},
		{"a character that cannot be seen", set(t, planform.Blank(planform.Piece, "", text), "piece=a\x07b"), "invisible"},
		{"a letter that is none", set(t, planform.Blank(planform.Piece, "", text), "piece=a\xffb"), "UTF-8"},
		{"brackets that do not close", planform.Form{Kind: planform.Piece, Fields: []planform.Field{{Key: "piece", Value: "[[a", Shape: "corners"}}}, "cannot be written"},
	} {
		put, _, err := planform.Put(text, test.form)
		assert.Nil(t, put, test.name)
		require.ErrorContains(t, err, test.says, test.name)
		assert.ErrorAs(t, err, new(plantext.Fault), test.name)
	}
	_, _, err := planform.Put([]byte("a: [b\n"), planform.Blank(planform.Piece, "", nil))
	assert.ErrorAs(t, err, new(plantext.Faults))
}
