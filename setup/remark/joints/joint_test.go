package joints_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/planfile"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// jointCodes are the codes that only joints can bring up.
var jointCodes = []string{"part-too-thick", "part-loose", "part-too-wide", "tenon-bottoms", "round-ends",
	"stands-proud", "mates-apart", "place-differs", "tenons-meet", "room-too-small", "movement-unknown",
	"too-long", "laps-not-flush", "lap-length", "panel-edge-short", "panel-comes-out"}

func jointWarnings(d *deck.Deck) (codes []string, text string) {
	for _, w := range d.Warnings {
		for _, code := range jointCodes {
			if w.Code == code {
				codes, text = append(codes, code), text+w.Text+"\n"
			}
		}
	}
	return codes, text
}

func TestASoundJoint(t *testing.T) {
	d := workpiece.JointDeck(t, nil)
	codes, text := jointWarnings(d)
	require.Empty(t, codes, text)
	require.Len(t, d.Joints, 1)
	j := d.Joints[0]
	assert.Equal(t, "leg", j.Into.Piece.Name)
	assert.Equal(t, "rail", j.Part.Piece.Name)
	assert.Equal(t, []deck.Fit{
		{Of: "thickness", Room: workpiece.In(t, "3/8"), Part: workpiece.In(t, "0.3725"), Wants: workpiece.In(t, "0.0025")},
		{Of: "width", Room: workpiece.In(t, "2 1/2"), Part: workpiece.In(t, "2 1/2")},
		{Of: "length", Room: workpiece.In(t, "15/16"), Part: workpiece.In(t, "7/8"), Wants: workpiece.In(t, "1/16")},
	}, j.Fits)
	assert.Equal(t, []deck.Reveal{
		// The rail stands back by the mortise's setback less its own shoulder, of which
		// the play is no part: 1/4 is what the maker lays it out by.
		{Side: joinery.Front, Distance: workpiece.In(t, "1/4"), Play: workpiece.In(t, "0.0025")}, {Side: joinery.Back, Distance: workpiece.In(t, "5/8")},
		{Side: joinery.Top, Distance: workpiece.In(t, "1/4")}, {Side: joinery.Bottom, Distance: workpiece.In(t, "13 3/4")},
	}, j.Reveals)
	for _, u := range d.Setups {
		for _, r := range u.Runs {
			assert.Same(t, &d.Joints[0], r.Joint, r.Number())
		}
	}
}

func TestEitherHalfMayNameTheOther(t *testing.T) {
	mortiseNames := workpiece.JointDeck(t, map[string]string{"mates": "", "leg mates": ", mates: rail / end"})
	bothName := workpiece.JointDeck(t, map[string]string{"leg mates": ", mates: rail / end"})
	for _, d := range []*deck.Deck{mortiseNames, bothName} {
		require.Len(t, d.Joints, 1)
		assert.Equal(t, "leg", d.Joints[0].Into.Piece.Name)
	}
	assert.Empty(t, workpiece.JointDeck(t, map[string]string{"mates": ""}).Joints)
}

// Each row changes the sound joint over one edge.
func TestJointWarnings(t *testing.T) {
	const tenon = "at: left, length: 7/8, cheeks: {front: %s, back: 1/4, top: 1/4, bottom: 1/4}"
	rows := []struct {
		name    string
		changes map[string]string
		code    string // "" for none
		says    string
	}{
		{"as thick as its mortise is wide: goes in with a mallet", map[string]string{"tenon": fmt.Sprintf(tenon, "1/4")}, "", ""},
		{"a hair too thick", map[string]string{"tenon": fmt.Sprintf(tenon, "0.2499")}, "part-too-thick", "take 0.003 in more off its cheeks"},
		{"1/64 beyond its clearance", map[string]string{"tenon": fmt.Sprintf(tenon, "0.268125")}, "", ""},
		{"looser than that", map[string]string{"tenon": fmt.Sprintf(tenon, "0.2682")}, "part-loose", "less off its cheeks"},
		{"too wide", map[string]string{"tenon": strings.Replace(fmt.Sprintf(tenon, "1/4"), "top: 1/4", "top: 15/64", 1)}, "part-too-wide", "take 1/64 in off its edges"},
		{"1/16 short of the bottom", nil, "", ""},
		{"less than that", map[string]string{"mortise": strings.Replace(workpiece.JointPlan["mortise"], "15/16", "59/64", 1)}, "tenon-bottoms", "make the tenon 55/64 in long"},
		{"through: no bottom", map[string]string{
			"mortise": strings.Replace(workpiece.JointPlan["mortise"], "15/16", "1", 1), "leg size": strings.Replace(workpiece.JointPlan["leg size"], "left-right: 1 3/4", "left-right: 1", 1),
			"tenon": strings.Replace(workpiece.JointPlan["tenon"], "7/8", "1", 1)}, "", ""},
		{"round ends", map[string]string{"mortise": strings.Replace(workpiece.JointPlan["mortise"], ", ends: square", "", 1)}, "round-ends", "round ends of 3/16 in radius"},
		{"round ends, a tenon that stops before them", map[string]string{
			"mortise": strings.Replace(workpiece.JointPlan["mortise"], "1/2 to 3 from top, depth: 15/16, ends: square", "5/16 to 3 3/16 from top, depth: 15/16", 1)}, "", ""},
		{"round ends, the tenon to be rounded by hand", map[string]string{"mortise": strings.Replace(workpiece.JointPlan["mortise"], ", ends: square", "", 1),
			"tenon": workpiece.JointPlan["tenon"] + ", note: " + strconv.Quote(joinery.RoundEdges)}, "", ""},
		{"flush", map[string]string{"mortise": strings.Replace(workpiece.JointPlan["mortise"], "1/2 from front", "0.2525 from front", 1)}, "", ""},
		{"proud", map[string]string{"mortise": strings.Replace(workpiece.JointPlan["mortise"], "1/2 from front", "0.2425 from front", 1)}, "stands-proud", `"rail" stands 0.01 in proud of the front of "leg"`},
		{"another hand", map[string]string{"mortise": strings.Replace(workpiece.JointPlan["mortise"], "in: right", "in: left", 1)}, "mates-apart", "it would have to be in the right"},
		{"a tenon joined with a piece", map[string]string{"mates": "leg"}, "mates-apart", "only a mortise, groove or dado is"},
	}
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			codes, text := jointWarnings(workpiece.JointDeck(t, r.changes))
			if r.code == "" {
				assert.Empty(t, codes, text)
				return
			}
			assert.Equal(t, []string{r.code}, codes, text)
			assert.Contains(t, text, r.says)
		})
	}
}

// The classic case, common practice: a wide apron into a leg, with the grain of
// the leg along its mortise.
func TestAWideTenonNeedsRoom(t *testing.T) {
	wide := map[string]string{
		"rail size": "{left-right: 30, front-back: 7/8, top-bottom: 6 1/2}",
		"mortise":   "in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 6 1/2 from top, depth: 15/16, ends: square",
	}
	d := workpiece.JointDeck(t, wide)
	m := d.Joints[0].Movement
	require.NotNil(t, m)
	// Wood Handbook, FPL-GTR-190 (2010), equation 13-2 with CT of white ash from
	// table 13-5: 6 x 0.00274 for each of the 5.79 % between 30 and 65 % humidity.
	assert.InDelta(t, 6*0.00274*(11.964-6.172), m.Need.Inches(), 0.0005)
	assert.Equal(t, joinery.Top, m.Fixed)
	assert.Equal(t, workpiece.In(t, "3"), m.Glue)
	assert.False(t, m.Whole())
	codes, text := jointWarnings(d)
	require.Equal(t, []string{"room-too-small"}, codes, text)
	assert.Contains(t, text, "write span: 1/2 to 6 39/64 from top", "the shoulder of 1/4 hides a longer mortise")

	// What the warning says to change, changed, is enough.
	wide["mortise"] = strings.Replace(wide["mortise"], "6 1/2 from", "6 39/64 from", 1)
	codes, text = jointWarnings(workpiece.JointDeck(t, wide))
	assert.Empty(t, codes, text)

	// Where the shoulder would not hide it, the tenon is made narrower.
	wide["mortise"] = strings.Replace(wide["mortise"], "6 39/64 from", "6 11/16 from", 1)
	wide["tenon"] = strings.Replace(workpiece.JointPlan["tenon"], "bottom: 1/4", "bottom: 1/16", 1)
	codes, text = jointWarnings(workpiece.JointDeck(t, wide))
	require.Equal(t, []string{"room-too-small"}, codes, text)
	assert.Contains(t, text, "take 7/64 in more off the bottom edge of the tenon (cheeks: bottom: 11/64)")
	wide["tenon"] = strings.Replace(workpiece.JointPlan["tenon"], "bottom: 1/4", "bottom: 11/64", 1)
	codes, text = jointWarnings(workpiece.JointDeck(t, wide))
	assert.Empty(t, codes, text)
}

func TestWhenNothingMoves(t *testing.T) {
	wide := func(changes ...string) map[string]string {
		m := map[string]string{
			"rail size": "{left-right: 30, front-back: 7/8, top-bottom: 6 1/2}",
			"mortise":   "in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 6 1/2 from top, depth: 15/16, ends: square",
		}
		for i := 0; i < len(changes); i += 2 {
			m[changes[i]] = changes[i+1]
		}
		return m
	}
	assert.Nil(t, workpiece.JointDeck(t, wide("rail wood", "plywood")).Joints[0].Movement, "plywood")
	assert.NotNil(t, workpiece.JointDeck(t, wide("leg wood", "plywood")).Joints[0].Movement, "a solid rail in plywood")
	narrow := workpiece.JointDeck(t, nil).Joints[0].Movement
	require.NotNil(t, narrow)
	assert.True(t, narrow.Whole(), "narrow enough to glue all over")

	dry := workpiece.JointDeck(t, wide("climate", "{dry: 30, damp: 40, temp: 70F}")).Joints[0].Movement
	damp := workpiece.JointDeck(t, wide("climate", "{dry: 30, damp: 80, temp: 70F}")).Joints[0].Movement
	assert.Less(t, dry.Need, damp.Need)
}

const shelfPlan = `unit: in
wood: white ash
pieces:
  - piece: side
    size: {left-right: 3/4, front-back: 10, top-bottom: 40}
    wood: %s
    cuts:
      - {dado: shelf, in: right, width: %s, setback: 4 from bottom, span: %s, depth: 1/4, ends: square, mates: shelf}
  - piece: shelf
    size: {left-right: 30, front-back: 9 1/2, top-bottom: 3/4}
`

func shelfDeck(t *testing.T, wood, width, span string) *deck.Deck {
	t.Helper()
	plan, err := planfile.Read("shelf.yaml", []byte(fmt.Sprintf(shelfPlan, wood, width, span)), nil)
	require.NoError(t, err)
	return workpiece.DeckOf(t, plan)
}

func TestAShelfInItsDado(t *testing.T) {
	// Like woods move together: nothing to say.
	d := shelfDeck(t, "white ash", "3/4", "0 to 9 1/2 from back")
	codes, text := jointWarnings(d)
	require.Empty(t, codes, text)
	assert.Nil(t, d.Joints[0].Movement)

	// A solid shelf in a plywood side moves; the open back leaves it room.
	d = shelfDeck(t, "plywood", "3/4", "0 to 9 1/2 from back")
	codes, text = jointWarnings(d)
	require.Empty(t, codes, text)
	m := d.Joints[0].Movement
	require.NotNil(t, m)
	assert.True(t, m.Open)
	assert.Equal(t, joinery.Front, m.Fixed, "glued at the stopped end")
	assert.False(t, m.Floats())

	// Stopped at both ends it has none.
	codes, text = jointWarnings(shelfDeck(t, "plywood", "3/4", "1/4 to 9 3/4 from back"))
	assert.Equal(t, []string{"room-too-small"}, codes)
	assert.Contains(t, text, "write span: 1/4 to 9 29/32 from back, or stopped: 3/32 from front where it is a joint of the plan")

	codes, text = jointWarnings(shelfDeck(t, "white ash", "47/64", "0 to 9 1/2 from back"))
	assert.Equal(t, []string{"part-too-thick"}, codes)
	assert.Contains(t, text, "make it 0.755 in wide")
}

func TestPlacesOfTwoEnds(t *testing.T) {
	more := `  - piece: other leg
    size: {left-right: 1 3/4, front-back: 1 3/4, top-bottom: 17}
    wood: white ash
    cuts:
      - {mortise: seat, in: left, width: 3/8, setback: %s from front, span: 1/2 to 3 from top, depth: 15/16, ends: square, mates: rail / other}
`
	tenons := "at: left, length: 7/8, cheeks: {front: 0.2525, back: 1/4, top: 1/4, bottom: 1/4}, mates: leg / seat}\n" +
		"      - {tenon: other, at: right, length: 7/8, cheeks: {front: 0.2525, back: 1/4, top: 1/4, bottom: 1/4}"
	codes, text := jointWarnings(workpiece.JointDeck(t, map[string]string{"tenon": tenons, "mates": "", "more": fmt.Sprintf(more, "1/2")}))
	assert.Empty(t, codes, text)
	codes, text = jointWarnings(workpiece.JointDeck(t, map[string]string{"tenon": tenons, "mates": "", "more": fmt.Sprintf(more, "9/16")}))
	assert.Equal(t, []string{"place-differs"}, codes)
	assert.Contains(t, text, `"rail" lies 1/4 in from the front of "leg" at one end, but 5/16 from that of "other leg" at the other`)
}

// A tenon that is thinner or narrower than its mortise lies where the plan puts it, not
// against a wall of the play: what is flush there does not stand proud.
func TestPlayTakesNothingOffAPlace(t *testing.T) {
	const joint = `unit: in
wood: white ash
pieces:
  - piece: leg
    size: {left-right: 1 3/4, front-back: 1 3/4, top-bottom: 17}
  - piece: rail
    size: {left-right: 30, front-back: 7/8, top-bottom: 3}
joints:
  - mortise and tenon: seat
    tenon: rail / left
    into: leg / right
    place: {top: flush, front: %s}
    thickness: 3/8
    shoulders: {front: 1/4, top: 1/2, bottom: 1/4}
    length: 7/8
    deeper: 1/16
    play: 0.006
    room: 1/8
    ends: square
`
	for place, front := range map[string]string{"flush": "0", "1/8 back": "1/8"} {
		plan, err := planfile.Read("joint.yaml", []byte(fmt.Sprintf(joint, place)), nil)
		require.NoError(t, err)
		d := workpiece.DeckOf(t, plan)
		codes, text := jointWarnings(d)
		assert.NotContains(t, codes, "stands-proud", text)
		require.Len(t, d.Joints, 1)
		at, half := workpiece.In(t, front), workpiece.In(t, "0.003")
		assert.Equal(t, []deck.Reveal{
			{Side: joinery.Front, Distance: at, Play: half}, {Side: joinery.Back, Distance: workpiece.In(t, "7/8") - at, Play: half},
			{Side: joinery.Top, Play: workpiece.In(t, "1/16")}, {Side: joinery.Bottom, Distance: workpiece.In(t, "14"), Play: workpiece.In(t, "1/16")},
		}, d.Joints[0].Reveals)
	}
	tenon := "at: left, length: 7/8, cheeks: {front: 0.5025, top: 1/4, bottom: 1/4}"
	codes, text := jointWarnings(workpiece.JointDeck(t, map[string]string{"tenon": tenon}))
	assert.Empty(t, codes, text)
	codes, text = jointWarnings(workpiece.JointDeck(t, map[string]string{"tenon": tenon, "mortise": strings.Replace(workpiece.JointPlan["mortise"], "1/2", "7/16", 1)}))
	assert.Equal(t, []string{"stands-proud"}, codes)
	assert.Contains(t, text, `"rail" stands 1/16 in proud of the front`)
}

// Two mortises w wide, a from the faces, in a leg L square: the tenons stay
// apart while they are shorter than L - a - w (worked out).
func TestTenonsThatMeet(t *testing.T) {
	plan := func(length string) *deck.Deck {
		text := strings.ReplaceAll(`unit: in
wood: white ash
pieces:
  - piece: leg
    size: {left-right: 1 3/4, front-back: 1 3/4, top-bottom: 17}
    cuts:
      - {mortise: seat, in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 1 1/4, ends: square}
      - {mortise: end, in: back, width: 3/8, setback: 1/2 from left, span: 1/2 to 3 from top, depth: 1 1/4, ends: square}
  - piece: rail
    size: {left-right: 30, front-back: 7/8, top-bottom: 3}
    cuts:
      - {tenon: end, at: left, length: LONG, cheeks: {front: 1/4, back: 1/4, top: 1/4, bottom: 1/4}, mates: leg / seat}
  - piece: end rail
    size: {left-right: 7/8, front-back: 12, top-bottom: 3}
    cuts:
      - {tenon: end, at: front, length: LONG, cheeks: {left: 1/4, right: 1/4, top: 1/4, bottom: 1/4}, mates: leg / end}
`, "LONG", length)
		plan, err := planfile.Read("leg.yaml", []byte(text), nil)
		require.NoError(t, err)
		return workpiece.DeckOf(t, plan)
	}
	codes, text := jointWarnings(plan("7/8"))
	assert.Empty(t, codes, text)
	codes, text = jointWarnings(plan("57/64"))
	assert.Equal(t, []string{"tenons-meet"}, codes)
	assert.Contains(t, text, "make the one 3/4 in long or the other 3/4 in", "a web of 1/8 is left")
}

func TestMirroredPiecesFindTheirOwnMates(t *testing.T) {
	plan, err := planfile.Read("bench.yaml", []byte(`unit: in
wood: white ash
pieces:
  - piece: left leg
    size: {left-right: 1 3/4, front-back: 1 3/4, top-bottom: 17}
    cuts:
      - {mortise: seat, in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 15/16, ends: square, mates: rail / left}
  - piece: right leg
    mirror: {of: left leg, across: left-right}
  - piece: rail
    size: {left-right: 30, front-back: 7/8, top-bottom: 3}
    cuts:
      - {tenon: left, at: left, length: 7/8, cheeks: {front: 1/4, back: 1/4, top: 1/4, bottom: 1/4}}
      - {tenon: right, at: right, length: 7/8, cheeks: {front: 1/4, back: 1/4, top: 1/4, bottom: 1/4}}
`), nil)
	require.NoError(t, err)
	d := workpiece.DeckOf(t, plan)
	require.Len(t, d.Joints, 2)
	assert.Equal(t, "left", d.Joints[0].Part.Cut.Name)
	assert.Equal(t, "right leg", d.Joints[1].Into.Piece.Name)
	assert.Equal(t, "right", d.Joints[1].Part.Cut.Name)
	codes, text := jointWarnings(d)
	assert.Empty(t, codes, text)
}

func TestLaps(t *testing.T) {
	laps := func(depth, length string) *deck.Deck {
		plan, err := planfile.Read("frame.yaml", []byte(fmt.Sprintf(`unit: in
wood: cherry
pieces:
  - piece: rail
    size: {left-right: 20, front-back: 3/4, top-bottom: 2}
    cuts: [{lap: corner, in: back, at: left, length: %s, depth: %s, mates: stile / corner}]
  - piece: stile
    size: {left-right: 1 1/2, front-back: 3/4, top-bottom: 30}
    cuts: [{lap: corner, in: front, at: top, length: 2, depth: 3/8}]
`, length, depth)), nil)
		require.NoError(t, err)
		return workpiece.DeckOf(t, plan)
	}
	codes, text := jointWarnings(laps("3/8", "1 1/2"))
	assert.Empty(t, codes, text)
	codes, text = jointWarnings(laps("11/32", "1 1/2"))
	assert.Equal(t, []string{"laps-not-flush", "laps-not-flush"}, codes)
	assert.Contains(t, text, `make it 3/8 in deep to lie flush`)
	codes, text = jointWarnings(laps("3/8", "1 7/16"))
	assert.Equal(t, []string{"lap-length"}, codes)
	assert.Contains(t, text, "make it 1 1/2 in long")
}

// A notch, a tongue and a haunch narrow what goes in: neither board stands proud
// or is too thick for its dado.
func TestWhatNarrowsAnEnd(t *testing.T) {
	plan, err := planfile.Read("case.yaml", []byte(`unit: in
wood: white oak
pieces:
  - {piece: side, size: {left-right: 3/4, front-back: 10, top-bottom: 20}}
  - {piece: other side, mirror: {of: side, across: left-right}}
  - {piece: shelf, size: {left-right: 20 between shoulders, front-back: 10, top-bottom: 3/4}}
  - {piece: top, size: {left-right: 20 between shoulders, front-back: 10, top-bottom: 3/4}}
  - {piece: post, size: {left-right: 2, front-back: 2, top-bottom: 20}}
  - {piece: rail, size: {left-right: 12, front-back: 1, top-bottom: 3}}
joints:
  - {housing: shelf, board: shelf / left, into: side / right, place: {bottom: 6 up, front: flush}, depth: 1/4, stopped: 3/8 from front, ends: square}
  - {housing: top, board: top / left, into: side / right, place: {top: 1 down, front: flush}, depth: 1/4, tongue: 0.245 from top}
  - {mortise and tenon: rail, tenon: rail / left, into: post / right, place: {top: flush, centred: front-back}, thickness: 3/8, shoulders: {top: 3/4},
     haunch: 3/8 at top, length: 1, deeper: 1/16, ends: square}
`), nil)
	require.NoError(t, err)
	d := workpiece.DeckOf(t, plan)
	require.Len(t, d.Joints, 5)
	for _, w := range d.Warnings {
		assert.NotContains(t, []string{"stands-proud", "part-too-thick", "part-too-wide", "by-hand", "mates-apart"}, w.Code, w.Text)
	}
}

// Glue in its groove would split a panel of wood (common practice, no source).
func TestAPanelFloats(t *testing.T) {
	plan, err := planfile.Read("frame.yaml", []byte(`unit: in
wood: cherry
pieces:
  - piece: rail
    size: {left-right: 14, front-back: 3/4, top-bottom: 2}
    cuts: [{groove: panel, in: bottom, width: 1/4, setback: 1/4 from front, depth: 3/8, mates: panel}]
  - {piece: panel, size: {left-right: 10, front-back: 1/4, top-bottom: 16}, grain: top-bottom}
`), nil)
	require.NoError(t, err)
	m := workpiece.DeckOf(t, plan).Joints[0].Movement
	require.NotNil(t, m)
	assert.True(t, m.Floats())
}
