package desk

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/planform"
)

func asked(t *testing.T, q formAsked) formTold {
	t.Helper()
	return put[formTold](t, workOn(t, nil), "POST", "/plan/form", q)
}

func TestTheListOfForms(t *testing.T) {
	got := asked(t, formAsked{planText: planText{string(examples.BootBench)}})
	for _, want := range []string{`data-at="/">Boot bench<`, `data-at="pieces/0">front left leg<`, "mirrors front left leg", `data-at="pieces/6">end rail × 2<`, `data-at="joints/0">mortise and tenon: seat rail<`} {
		assert.Contains(t, got.HTML, want)
	}
	assert.Contains(t, asked(t, formAsked{planText: planText{"pieces: ["}}).HTML, "cannot be taken apart")
}

// Every form of the bench is shown with its values and, of a piece, a cut or a joint,
// drawn; put back as it is shown it changes nothing.
func TestEveryFormIsShown(t *testing.T) {
	text := string(examples.BootBench)
	forms, err := planform.Read("bench.yaml", []byte(text))
	require.NoError(t, err)
	for _, f := range forms {
		got := asked(t, formAsked{planText: planText{text}, At: f.At})
		assert.Equal(t, f.Line, got.Line)
		if f.Kind != planform.Plan {
			assert.Contains(t, got.Drawing, "<svg", f.At)
		}
		assert.NotContains(t, got.Drawing, `class="said"`, f.At)
		again := asked(t, formAsked{planText: planText{text}, At: f.At, Field: fieldsOf(t, got.HTML), Do: putIt})
		assert.Equal(t, text, again.Text, f.At)
	}
}

// fieldsOf are the fields of a form's HTML as a browser would send them.
func fieldsOf(t *testing.T, form string) [][2]string {
	t.Helper()
	unescape := strings.NewReplacer("&#34;", `"`, "&#39;", "'", "&lt;", "<", "&gt;", ">", "&#43;", "+", "&amp;", "&")
	var fields [][2]string
	inSelect, chosen := "", ""
	for tag := range strings.SplitSeq(form, "<") {
		head, text, _ := strings.Cut(tag, ">")
		attribute := func(name string) string {
			_, value, _ := strings.Cut(head, " "+name+`="`)
			value, _, _ = strings.Cut(value, `"`)
			return unescape.Replace(value)
		}
		switch {
		case strings.HasPrefix(head, "input") && (!strings.Contains(head, "checkbox") || strings.Contains(head, " checked")):
			fields = append(fields, [2]string{attribute("name"), attribute("value")})
		case strings.HasPrefix(head, "select"):
			inSelect, chosen = attribute("name"), ""
		case strings.HasPrefix(head, "option") && strings.HasSuffix(head, " selected"):
			chosen = unescape.Replace(text)
		case strings.HasPrefix(head, "/select"):
			fields = append(fields, [2]string{inSelect, chosen})
		}
	}
	require.NotEmpty(t, fields)
	return fields
}

func TestFormsWriteTheText(t *testing.T) {
	plan := "title: Shelf\nunit: in\n"
	piece := asked(t, formAsked{planText: planText{plan}, Kind: planform.Piece, Field: [][2]string{{"piece", "side"}, {"size.left-right", "3/4"}, {"size.front-back", "6"}, {"size.top-bottom", "16"}}, Do: putIt})
	assert.Equal(t, plan+"\npieces:\n\n  - piece: side\n    size: {left-right: 3/4, front-back: 6, top-bottom: 16}\n", piece.Text)
	assert.Equal(t, "pieces/0", piece.At)
	assert.Contains(t, piece.HTML, `<form id="form" data-at="pieces/0"`)
	assert.Equal(t, 6, piece.Line)
	assert.Contains(t, piece.Drawing, "<svg")
	shown := asked(t, formAsked{planText: planText{plan}, Kind: planform.Piece, Field: [][2]string{{"piece", "side"}, {"size.left-right", "3/4"}}})
	assert.Equal(t, plan, shown.Text, "a new piece is written when it is said so")
	cut := asked(t, formAsked{planText: planText{piece.Text}, Kind: planform.Cut, Under: "pieces/0", Word: "dado",
		Field: [][2]string{{"kind", "dado"}, {"name", "shelf"}, {"in", "right"}, {"width", "3/4"}, {"setback", "5 from nowhere"}, {"depth", "1/4"}}, Do: putIt})
	assert.Contains(t, cut.Text, "    cuts:\n      - dado: shelf\n        in: right\n        width: 3/4\n        setback: 5 from nowhere\n        depth: 1/4\n")
	assert.Contains(t, cut.HTML, `name="setback" value="5 from nowhere" autocomplete="off" spellcheck="false" aria-invalid="true"`)
	assert.Contains(t, cut.Drawing, "nowhere")
	back := asked(t, formAsked{planText: planText{cut.Text}, At: cut.At, Do: takeOut})
	assert.Equal(t, piece.Text, back.Text)
}

// What is at fault elsewhere in the plan hides no drawing.
func TestDrawnAlone(t *testing.T) {
	text := strings.Replace(string(examples.BootBench), "length: 3/4\n    deeper", "length: three\n    deeper", 1)
	for at, drawn := range map[string]bool{"pieces/0": true, "pieces/9/cuts/0": true, "pieces/11/cuts/2": true, "pieces/4": true, "joints/0": false, "joints/1": true} {
		got := asked(t, formAsked{planText: planText{text}, At: at})
		assert.Equal(t, drawn, strings.Contains(got.Drawing, "<svg"), at)
		assert.Equal(t, at == "joints/0", strings.Contains(got.Drawing, "three"), at)
	}
}

func TestSpots(t *testing.T) {
	for _, value := range []string{"rail / left", "rail / left, right", "a / right, b / left", "shelf / left, right, other / top", "stile", "a, b / left"} {
		assert.Equal(t, value, composed(spotsOf(value)))
	}
	form := planform.BlankJoint("housing", nil)
	value, ok := filledIn(form.Field("into"), map[string][]string{"into/piece": {"side", "side", "", "other"}, "into/side": {"right", "left", "", "left"}})
	assert.True(t, ok)
	assert.Equal(t, "side / right, left, other / left", value)
}

// A shop to begin with comes into a plan that has none.
func TestAShopOfOnesOwn(t *testing.T) {
	got := asked(t, formAsked{planText: planText{string(examples.BootBench)}, Do: ownShop})
	assert.Contains(t, got.HTML, `data-at="shop/bits/0"`)
	seen := put[seen](t, workOn(t, nil), "POST", "/plan/look", planText{got.Text})
	assert.Empty(t, seen.Faults)
}
