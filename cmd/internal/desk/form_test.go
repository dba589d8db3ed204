package desk

import (
	"html"
	"regexp"
	"slices"
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
			if chosen = unescape.Replace(text); strings.Contains(head, ` value="`) {
				chosen = attribute("value")
			}
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
	assert.Contains(t, cut.HTML, "<strong>&#34;nowhere&#34; is")
	back := asked(t, formAsked{planText: planText{cut.Text}, At: cut.At, Do: takeOut})
	assert.Equal(t, piece.Text, back.Text)
}

// What is at fault elsewhere in the plan hides no drawing.
func TestDrawnAlone(t *testing.T) {
	text := strings.Replace(string(examples.BootBench), "length: 3/4\n    deeper", "length: three\n    deeper", 1)
	for at, drawn := range map[string]bool{"pieces/0": true, "pieces/9/cuts/0": true, "pieces/11/cuts/2": true, "pieces/4": true, "joints/0": false, "joints/1": true} {
		got := asked(t, formAsked{planText: planText{text}, At: at})
		assert.Equal(t, drawn, strings.Contains(got.Drawing, "<svg"), at)
		assert.Equal(t, at == "joints/0", strings.Contains(got.HTML, "<strong>&#34;three&#34; is"), at)
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

// Each direction in which a joint may lie is a number and a list of what it is measured
// from; what is half filled in is told beside it, and not written.
func TestHowAJointLies(t *testing.T) {
	plan := "unit: in\npieces:\n  - piece: side\n    size: {left-right: 3/4, front-back: 8, top-bottom: 16}\n" +
		"  - piece: shelf\n    size: {left-right: 20, front-back: 7, top-bottom: 3/4}\n"
	fields := [][2]string{{"kind", "housing"}, {"name", "shelf"}, {"board/piece", "shelf"}, {"board/side", "left"}, {"into/piece", "side"}, {"into/side", "right"}, {"depth", "1/4"}}
	ask := func(lies ...[2]string) formTold {
		return asked(t, formAsked{planText: planText{plan}, Kind: planform.Joint, Word: "housing", Field: append(slices.Clone(fields), lies...), Do: putIt})
	}
	row := func(direction, number, from string) [2][2]string {
		return [2][2]string{{"place/" + direction + "/number", number}, {"place/" + direction + "/from", from}}
	}
	for want, rows := range map[string][2][2][2]string{
		"place: {front: flush, bottom: 6 up}":           {row("front-back", "", "front flush"), row("top-bottom", "6", "bottom in")},
		"place: {top: 4 down, centred: front-back}":     {row("front-back", "", "centred"), row("top-bottom", "4", "top in")},
		"place: {back: 1/4 forward, top: 1/8 proud}":    {row("front-back", "1/4", "back in"), row("top-bottom", "1/8", "top proud")},
		"place: {centred: [front-back, top-bottom]}":    {row("front-back", "", "centred"), row("top-bottom", "", "centred")},
		"place: {bottom: 6 up}\n    depth":              {row("front-back", "1/8", ""), row("top-bottom", "6", "bottom in")},
		"into: side / right\n    place: {front: flush}": {row("front-back", "", "front flush"), row("top-bottom", "", "bottom in")},
	} {
		got := ask(slices.Concat(rows[0][:], rows[1][:])...)
		assert.Contains(t, got.Text, want)
		assert.NotContains(t, got.HTML, "Left to right", "the way in which the shelf goes in")
		again := asked(t, formAsked{planText: planText{got.Text}, At: got.At, Field: fieldsOf(t, got.HTML), Do: putIt})
		assert.Equal(t, got.Text, again.Text)
		if rows[1][0][1] == "" && strings.HasSuffix(rows[1][1][1], " in") {
			assert.Contains(t, got.HTML, "<strong>Say how far.</strong>")
		}
		if rows[0][1][1] == "" {
			assert.Contains(t, got.HTML, `value="1/8"`, "what was typed stays in its box")
			assert.Contains(t, got.HTML, "<strong>Choose what it is measured from.</strong>")
		}
	}

	// What a row cannot show keeps the plan's own boxes.
	for _, written := range []string{"centred", "{front: flush, back: flush, bottom: 6 up}", "{front: 1/8 bck, top: flush}", "middle", "{front: Flush, bottom: 6 up}"} {
		text := plan + "joints:\n  - housing: shelf\n    board: shelf / left\n    into: side / right\n    place: " + written + "\n    depth: 1/4\n"
		shown := asked(t, formAsked{planText: planText{text}, At: "joints/0"})
		again := asked(t, formAsked{planText: planText{text}, At: "joints/0", Field: fieldsOf(t, shown.HTML), Do: putIt})
		assert.Equal(t, text, again.Text)
	}

	// Centred both ways, and then one row changed.
	text := plan + "joints:\n  - housing: shelf\n    board: shelf / left\n    into: side / right\n    place: centred\n    depth: 1/4\n"
	shown := asked(t, formAsked{planText: planText{text}, At: "joints/0"})
	changed := fieldsOf(t, shown.HTML)
	for i := range changed {
		if changed[i][0] == "place/front-back/from" {
			changed[i][1] = "front flush"
		}
	}
	assert.Contains(t, asked(t, formAsked{planText: planText{text}, At: "joints/0", Field: changed, Do: putIt}).Text, "place: {front: flush, centred: top-bottom}")
}

// The near wall is a number and the side it is measured from.
func TestNearWall(t *testing.T) {
	plan := "unit: in\npieces:\n  - piece: side\n    size: {left-right: 3/4, front-back: 8, top-bottom: 16}\n"
	ask := func(number, from string) formTold {
		return asked(t, formAsked{planText: planText{plan}, Kind: planform.Cut, Under: "pieces/0", Word: "groove", Do: putIt, Field: [][2]string{{"kind", "groove"}, {"name", "back"},
			{"in", "right"}, {"width", "1/4"}, {"depth", "1/4"}, {"setback/number", number}, {"setback/from", from}}})
	}
	got := ask("3/8", "back")
	assert.Contains(t, got.Text, "setback: 3/8 from back\n")
	assert.Contains(t, got.HTML, ">forward from the back</option>")
	assert.NotContains(t, got.HTML, `<option value="left">`, "the way into the wood")
	for _, from := range []string{"centred", "centred from front"} {
		got = ask("", from)
		assert.Contains(t, got.Text, "setback: "+from+"\n")
		again := asked(t, formAsked{planText: planText{got.Text}, At: got.At, Field: fieldsOf(t, got.HTML), Do: putIt})
		assert.Equal(t, got.Text, again.Text)
	}
	assert.NotContains(t, ask("3/8", "").Text, "setback")
	assert.Contains(t, ask("", "back").HTML, "<strong>Say how far.</strong>")
	as := strings.Replace(ask("3/8", "back").Text, "3/8 from back", "3/8 from the back", 1)
	shown := asked(t, formAsked{planText: planText{as}, At: "pieces/0/cuts/0"})
	assert.Equal(t, as, asked(t, formAsked{planText: planText{as}, At: "pieces/0/cuts/0", Field: fieldsOf(t, shown.HTML), Do: putIt}).Text, "as it is written")
}

// What a form still needs is said beside its boxes, in words of the trade: nobody who
// fills one in is told of keys.
func TestWhatAFormNeeds(t *testing.T) {
	plan := "unit: in\npieces:\n  - piece: side\n    size: {left-right: 3/4, front-back: 8, top-bottom: 16}\n"
	beside := func(got formTold) string {
		var all []string
		for _, part := range strings.Split(got.HTML, "<strong>")[1:] {
			words, _, _ := strings.Cut(part, "<")
			all = append(all, html.UnescapeString(words))
		}
		return strings.Join(all, "\n")
	}
	empty := formAsked{planText: planText{plan}, Kind: planform.Piece}
	assert.Empty(t, beside(asked(t, empty)), "nothing was done yet")
	empty.Do = putIt
	assert.Equal(t, "Say what the piece is called.\nSay how long the piece is from left to right.\nSay how long the piece is from front to back.\nSay how long the piece is from top to bottom.", beside(asked(t, empty)))
	for _, kind := range []string{planform.Cut, planform.Joint, planform.Piece} {
		words := []string{""}
		if kind != planform.Piece {
			blank := planform.Blank(kind, "", nil)
			words = blank.Field(planform.KindKey).Choices
		}
		for _, word := range words {
			for _, name := range []string{"", "one"} {
				got := asked(t, formAsked{planText: planText{plan}, Kind: kind, Under: "pieces/0", Word: word, Do: putIt, Field: [][2]string{{"kind", word}, {"piece", name}, {"name", name}}})
				assert.NotEmpty(t, beside(got), word)
				assert.NotContains(t, got.Drawing, `class="said"`, word)
				assert.NotRegexp(t, `\b(add|write) [a-z]+: `, beside(got), word)
			}
		}
	}

	// What is filled in wrongly is told beside its box, and there without its key.
	got := asked(t, formAsked{planText: planText{plan}, Kind: planform.Cut, Under: "pieces/0", Word: "profile", Do: putIt, Field: [][2]string{{"kind", "profile"}, {"name", "edge"}, {"on", "top front"}, {"raise", "hgh"}}})
	assert.Contains(t, got.HTML, "is not a length")
	assert.NotContains(t, html.UnescapeString(got.HTML+got.Drawing), "raise: ")
	assert.Contains(t, html.UnescapeString(got.Drawing), "add “This bit and no other” and the name of a bit, or “Shape of the edge” round-over")

	// Of a place half said, the row that is empty.
	got = asked(t, formAsked{planText: planText{plan + "  - piece: shelf\n    size: {left-right: 20, front-back: 7, top-bottom: 3/4}\n"}, Kind: planform.Joint, Word: "housing", Do: putIt,
		Field: [][2]string{{"kind", "housing"}, {"name", "shelf"}, {"board/piece", "shelf"}, {"board/side", "left"}, {"into/piece", "side"}, {"into/side", "right"}, {"depth", "1/4"}, {"place/front-back/from", "front flush"}}})
	_, row, _ := strings.Cut(got.HTML, `data-key="place.top-bottom"`)
	row, _, _ = strings.Cut(row, "</fieldset>")
	assert.Contains(t, row, "<strong>Choose how it lies, top to bottom.</strong>")
}

// Every kind that may be chosen says what it is.
func TestEveryKindSaysWhatItIs(t *testing.T) {
	for _, kind := range []string{planform.Cut, planform.Joint} {
		all := kindsOf(planform.Blank(kind, "", nil)).All
		require.NotEmpty(t, all)
		for _, k := range all {
			assert.NotEmpty(t, k.Example, "%s %s", kind, k.Word)
		}
	}
}

// A plan in millimetres stays so with a shop of its own, and a size that no scale has
// is short enough for its place in the drawing.
func TestSizesInTheDrawing(t *testing.T) {
	drawing := func(plan string) string {
		return asked(t, formAsked{planText: planText{plan}, At: "pieces/0"}).Drawing
	}
	metric := "unit: mm\npieces:\n  - piece: side\n    size: {left-right: 20, front-back: 200, top-bottom: 600}\n"
	own := asked(t, formAsked{planText: planText{metric}, Do: ownShop})
	assert.Contains(t, own.Text, "20 mm straight")
	assert.Empty(t, put[seen](t, workOn(t, nil), "POST", "/plan/look", planText{own.Text}).Faults)
	for _, plan := range []string{metric, own.Text} {
		got := drawing(plan)
		for _, size := range []string{">20<", ">200<", ">600<", "in millimetres, not to scale<"} {
			assert.Contains(t, got, size)
		}
	}
	got := drawing(strings.Replace(metric, "unit: mm", "unit: in", 1))
	assert.Contains(t, got, ">600<")
	got = drawing(strings.Replace(strings.Replace(metric, "unit: mm", "unit: in", 1), "20,", "20 mm,", 1))
	assert.Contains(t, got, ">0.787<")
	assert.NotContains(t, got, "(")
}

// A joint says where it is made in a mirror image as well, and a piece without cuts what
// its ends go into, on its form and on its card.
func TestWhereAJointIsMade(t *testing.T) {
	plan := "unit: in\npieces:\n  - piece: side\n    size: {left-right: 3/4, front-back: 8, top-bottom: 16}\n" +
		"  - piece: other side\n    mirror: {of: side, across: left-right}\n" +
		"  - piece: shelf\n    size: {left-right: 20, front-back: 8, top-bottom: 3/4}\n" +
		"joints:\n  - housing: shelf\n    board: shelf / left\n    into: side / right\n    place: {front: flush, bottom: 6 up}\n    depth: 1/4\n"
	joint := asked(t, formAsked{planText: planText{plan}, At: "joints/0"})
	for _, where := range []string{"the left of shelf goes into the right of side<", "the right of shelf goes into the left of other side<"} {
		assert.Contains(t, joint.Drawing, where)
	}
	shelf := asked(t, formAsked{planText: planText{plan}, At: "pieces/2"})
	assert.Contains(t, shelf.HTML, "its right goes into the left of other side: housing “shelf”")
	assert.Contains(t, shelf.HTML, "None of its own; what its joints need is in them.")
	other := asked(t, formAsked{planText: planText{plan}, At: "pieces/1"})
	assert.Contains(t, other.HTML, "the right of shelf goes into its left: housing “shelf”")

	sheets := put[printed](t, workOn(t, nil), "POST", "/plan/sheets", planText{plan})
	_, card, _ := strings.Cut(sheets.HTML, `aria-label="the card of shelf"`)
	card, _, _ = strings.Cut(card, "</section>")
	words := strings.Join(strings.Fields(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(card, " ")), " ")
	assert.Contains(t, words, "no cuts; its left goes into the housing in the right of side, its right into the housing in the left of other side")
}

// A shop to begin with comes into a plan that has none.
func TestAShopOfOnesOwn(t *testing.T) {
	got := asked(t, formAsked{planText: planText{string(examples.BootBench)}, Do: ownShop})
	assert.Contains(t, got.HTML, `data-at="shop/bits/0"`)
	shown := asked(t, formAsked{planText: planText{got.Text}, At: "shop"})
	first, more, _ := strings.Cut(shown.HTML, `<details class="more"><summary>More about the shop</summary>`)
	for _, key := range []string{"fence.infeed", "fence.outfeed", "fence.reach", "lift"} {
		assert.Contains(t, first, `name="`+key+`"`)
	}
	assert.Equal(t, 4, strings.Count(first, " name="), "those that are needed first")
	assert.Greater(t, strings.Count(more, " name="), 15)
	seen := put[seen](t, workOn(t, nil), "POST", "/plan/look", planText{got.Text})
	assert.Empty(t, seen.Faults)
}

// What is to be written into a file is told as the box of a form.
func TestInForms(t *testing.T) {
	for words, want := range map[string]string{
		"cut it by hand (write base: in the shop file to have its place worked out), or correct reach in the shop file; or write by: hand and make it with other tools": "cut it by hand (fill in “Width of the base of your hand-held router”, under table and fence to have its place worked out), " +
			"or correct “How far the fence can be set from the middle of the bit”, under table and fence; or choose hand at “Made by hand” and make it with other tools",
		"so passes are the shallowest; write wood: white ash, or yours from fencecard wood, at the top of the plan": "so passes are the shallowest; choose the wood, such as white ash, under title, unit, wood",
		"write scale: 1/64 or a finer one in the shop file, or make the cut no deeper":                              "put 1/64 or a finer one into “Finest line of your rule that you set by eye”, under table and fence, or make the cut no deeper",
		"make the base thinner (crossing: in the shop file)":                                                        "make the base thinner (“Thickness of the base of your carriage, if you have one”, under table and fence)",
		"the bit may throw it: write fence: left, which is near enough":                                             "the bit may throw it: choose left at “Side that goes to the fence”, which is near enough",
		"hold it in a jig (likewise \"end\", line 90)":                                                              "hold it in a jig (likewise \"end\")",
		"nothing of files": "nothing of files",
	} {
		assert.Equal(t, want, inForms(nil, words))
	}
}

// A fault that is mended in the shop has a button to its form, and one of the wood opens
// the plan's own.
func TestWhereItIsMended(t *testing.T) {
	plan := "unit: in\npieces:\n  - piece: board\n    size: {left-right: 40, front-back: 3/4, top-bottom: 60}\n    cuts:\n" +
		"      - groove: far\n        in: front\n        width: 1/4\n        depth: 1/4\n        setback: 20 from left\n"
	shop := asked(t, formAsked{planText: planText{plan}, Do: ownShop})
	got := put[seen](t, workOn(t, nil), "POST", "/plan/look", planText{shop.Text})
	require.Len(t, got.Faults, 1)
	assert.Equal(t, "board, groove: far", got.Faults[0].Of)
	assert.Contains(t, got.Faults[0].Plain, "“How far the fence can be set from the middle of the bit”, under table and fence")
	assert.NotContains(t, got.Faults[0].Plain, "file")
	require.Len(t, got.Faults[0].Also, 1)
	assert.Equal(t, "shop", got.Faults[0].Also[0].At)

	// Of the built-in shop the list leads to one's own.
	got = put[seen](t, workOn(t, nil), "POST", "/plan/look", planText{plan})
	require.Len(t, got.Faults, 1)
	assert.Contains(t, got.Faults[0].Plain, "middle of the bit”, under table, fence and bits")
	require.Len(t, got.Faults[0].Also, 1)
	assert.Contains(t, asked(t, formAsked{planText: planText{plan}, At: got.Faults[0].Also[0].At}).HTML, `data-do="shop"`)

	no := put[printed](t, workOn(t, nil), "POST", "/plan/sheets", planText{strings.Replace(string(examples.BootBench), "wood: white ash", "", 1)})
	assert.Regexp(t, `<li><button type="button" data-at="/">title, unit, wood</button>[^/]*</button><span class="words">[^<]*</span><span class="plain">[^<]*choose the wood, such as white ash, under title, unit, wood`, no.HTML)
}

// To have no piece yet is no fault of the plan's own form.
func TestNoPieceYet(t *testing.T) {
	got := asked(t, formAsked{planText: planText{"title: Shelf\nunit: in\n"}, At: "/"})
	assert.NotContains(t, got.Drawing, "no pieces")
	assert.NotContains(t, got.HTML+got.Drawing, "<strong>")
	assert.NotContains(t, got.Drawing, "said")
}

// A shop put in opens, and says what it stands in place of.
func TestOwnShopIsTold(t *testing.T) {
	got := asked(t, formAsked{planText: planText{"title: Shelf\nunit: in\n"}, Do: ownShop})
	assert.Equal(t, "shop", got.At)
	assert.Contains(t, got.HTML, `<p class="note">Your shop is in the plan now, in place of the built-in example shop: the fence can be set 8 in instead of 10 in`)
	assert.Contains(t, got.HTML, `name="fence.reach" value="8"`)
	assert.Contains(t, got.HTML, "Take table, fence and bits out of the plan")
}

// A name that another piece has is told at its box, whatever else is missing; so is a size
// that is none, in a form that is not in the plan yet. What is empty is not told yet.
func TestToldAtItsBox(t *testing.T) {
	plan := "unit: in\npieces:\n  - piece: side\n    size: {left-right: 3/4, front-back: 8, top-bottom: 16}\n"
	ask := func(do string, fields ...[2]string) formTold {
		return asked(t, formAsked{planText: planText{plan}, Kind: planform.Piece, Field: fields, Do: do})
	}
	got := ask("", [2]string{"piece", "side"})
	assert.Contains(t, got.HTML, "<strong>Two pieces are called “side”. Give one another name; or, if they are the same,")
	assert.Equal(t, 1, strings.Count(got.HTML, "<strong>"))
	got = ask("", [2]string{"piece", "shelf"}, [2]string{"size.left-right", "wide"})
	assert.Equal(t, 1, strings.Count(got.HTML, "<strong>"))
	assert.Regexp(t, `data-key="size.left-right".*\n.*aria-invalid="true".*\n.*<strong>`, got.HTML)
	got = ask(putIt, [2]string{"piece", "side"}, [2]string{"size.left-right", "1"}, [2]string{"size.front-back", "1"}, [2]string{"size.top-bottom", "1"})
	assert.Equal(t, 1, strings.Count(got.HTML+got.Drawing, "Two pieces are called"))
	seen := put[seen](t, workOn(t, nil), "POST", "/plan/look", planText{got.Text})
	require.Len(t, seen.Faults, 1)
	assert.Equal(t, twoCalled("side"), seen.Faults[0].Plain)
}

// The form of a mirror image shows what it has from the other piece; that of a joint, that
// the mirror image has it too.
func TestMirrorImages(t *testing.T) {
	plan := "unit: in\npieces:\n  - piece: side\n    size: {left-right: 3/4, front-back: 8 1/4, top-bottom: 16}\n    cuts:\n      - groove: back\n        in: right\n        width: 1/4\n        depth: 1/4\n        setback: 1 from back\n" +
		"  - piece: other side\n    mirror: {of: side, across: left-right}\n  - piece: shelf\n    size: {left-right: 20, front-back: 8, top-bottom: 3/4}\n" +
		"joints:\n  - housing: shelf\n    board: shelf / left\n    into: side / right\n    place: {front: flush, bottom: 6 up}\n    depth: 1/4\n"
	got := asked(t, formAsked{planText: planText{plan}, At: "pieces/1"})
	assert.Contains(t, got.HTML, "<legend>Size, left empty: it is that of side</legend>")
	assert.Contains(t, got.HTML, `name="size.front-back" value="" autocomplete="off" spellcheck="false" placeholder="8 1/4"`)
	assert.Regexp(t, `Those of side, mirrored.</p><ul class="things"><li><button type="button" data-at="pieces/0/cuts/0">groove: back`, got.HTML)
	assert.NotContains(t, got.HTML, "None of its own")
	got = asked(t, formAsked{planText: planText{plan}, At: "joints/0"})
	assert.Contains(t, got.HTML, "<small>Its mirror image other side has it too, mirrored: do not name it here.</small>")
	assert.NotContains(t, asked(t, formAsked{planText: planText{plan}, At: "pieces/0"}).HTML, "Those of")
}
