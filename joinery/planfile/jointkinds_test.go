package planfile_test

import (
	"fmt"
	"strings"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// four is four legs, each the mirror image of its neighbours.
const four = `title: Bench
unit: in
wood: white ash
pieces:
  - piece: front left leg
    size: {left-right: 1 3/4, front-back: 1 3/4, top-bottom: 17}
  - piece: front right leg
    mirror: {of: front left leg, across: left-right}
  - piece: back left leg
    mirror: {of: front left leg, across: front-back}
  - piece: back right leg
    mirror: {of: front left leg, across: [left-right, front-back]}
`

// seatRail is the joint of the worked example.
const seatRail = `
  - mortise and tenon: seat rail
    tenon: front seat rail / left, right
    into: front left leg / right, front right leg / left
    place: {top: flush, front: 1/8 back}
    thickness: 3/8
    shoulders: {front: 1/4, top: 1/2, bottom: 1/4}
    length: 3/4
    deeper: 1/16
    ends: square
`

const frontRail = `  - piece: front seat rail
    size: {left-right: 32 1/2 between shoulders, front-back: 7/8, top-bottom: 3 1/2}
  - piece: back seat rail
    mirror: {of: front seat rail, across: front-back}
`

// cutOf finds a cut of a plan.
func cutOf(t *testing.T, plan *joinery.Plan, piece, name string) *joinery.Cut {
	t.Helper()
	p := plan.Piece(piece)
	require.NotNil(t, p, piece)
	c := p.Cut(name)
	require.NotNil(t, c, "%s has %v", piece, cutNames(p))
	return c
}

func cutNames(p *joinery.Piece) []string {
	var names []string
	for _, c := range p.Cuts {
		names = append(names, c.Name)
	}
	return names
}

// inches reads a length.
func inches(t *testing.T, text string) measure.Length {
	t.Helper()
	l, err := measure.ParseLength(text, measure.Inches)
	require.NoError(t, err)
	return l
}

// The worked example: a reveal of 1/8 and a front shoulder of 1/4 put the mortise
// 3/8 from the front; 3 1/2 less 1/2 and 1/4 leave a tenon 2 3/4 wide, in a
// mortise from 1/2 to 3 1/4 below the top and 13/16 deep; the back shoulder is
// 7/8 less 1/4 and 3/8. Only the front left leg is named, or both, or all four.
func TestWorkedMortiseAndTenon(t *testing.T) {
	whole := four + frontRail + "joints:" + seatRail
	oneLeg := strings.Replace(strings.Replace(whole, "tenon: front seat rail / left, right", "tenon: front seat rail / left", 1),
		", front right leg / left", "", 1)
	for name, text := range map[string]string{"both": whole, "one": oneLeg} {
		t.Run(name, func(t *testing.T) {
			plan := read(t, "bench.yaml", []byte(text))
			assert.Equal(t, 34*in, plan.Piece("front seat rail").Size[0], "3/4 at either end of 32 1/2")
			assert.Equal(t, 34*in, plan.Piece("back seat rail").Size[0])
			mortise := cutOf(t, plan, "front left leg", "seat rail")
			assert.Equal(t, joinery.Channel{Down: joinery.Right, Near: joinery.Front, Setback: 3 * in / 8, Width: 3 * in / 8,
				Depth: 13 * in / 16, Lo: inches(t, "13 3/4"), Hi: inches(t, "16 1/2")}, mortise.Channels[0])
			assert.True(t, mortise.Square)
			assert.Equal(t, joinery.Mate{Piece: "front seat rail", Cut: "seat rail left"}, mortise.Mates)
			for _, leg := range []string{"front right leg", "back left leg", "back right leg"} {
				assert.Equal(t, []string{"seat rail"}, cutNames(plan.Piece(leg)), leg)
			}
			for _, end := range []joinery.Side{joinery.Left, joinery.Right} {
				tenon := cutOf(t, plan, "front seat rail", "seat rail "+end.String())
				assert.Equal(t, end, tenon.At)
				assert.Equal(t, 3*in/4, tenon.Length)
				assert.Equal(t, []joinery.Cheek{{Side: joinery.Front, Depth: in / 4}, {Side: joinery.Back, Depth: in / 4},
					{Side: joinery.Bottom, Depth: in / 4}, {Side: joinery.Top, Depth: in / 2}}, tenon.Cheeks)
			}
			assert.Len(t, plan.Piece("front seat rail").Cuts, 2, "nothing is made twice")
			assert.Len(t, plan.Piece("back seat rail").Cuts, 2)
		})
	}
}

// board is what a plan of two pieces and one joint comes to.
func joined(t *testing.T, into, part, joint string) *joinery.Plan {
	t.Helper()
	return read(t, "plan.yaml", []byte("unit: in\nwood: white oak\npieces:\n  - {piece: post, "+into+"}\n  - {piece: rail, "+part+"}\njoints:\n  - {"+joint+"}\n"))
}

func boxOf(c *joinery.Cut) string {
	var all []string
	for _, ch := range c.Channels {
		all = append(all, fmt.Sprintf("%s %s+%s wide %s deep %s from %s to %s", ch.Down, ch.Near, text(ch.Setback), text(ch.Width), text(ch.Depth), text(ch.Lo), text(ch.Hi)))
	}
	return strings.Join(all, "; ")
}

func text(l measure.Length) string { return measure.InchScale.Format(l) }

const (
	post   = "size: {left-right: 2, front-back: 2, top-bottom: 20}"
	stick  = "size: {left-right: 12, front-back: 1, top-bottom: 3}"
	board1 = "size: {left-right: 20, front-back: 6, top-bottom: 3/4}"
	side6  = "size: {left-right: 3/4, front-back: 6, top-bottom: 30}"
)

// Each kind by hand: the receiving cut, the entering one, and how far it enters
// where its length is left to the joint. Figures worked out on paper.
func TestJointsByHand(t *testing.T) {
	for _, c := range []struct {
		name, into, part, joint string
		want                    map[string]string // "piece / cut": channels
	}{
		{"centred", post, stick, "mortise and tenon: a, tenon: rail / left, into: post / right, place: centred, thickness: 3/8, length: 1",
			map[string]string{
				"post / a": "right front+13/16 wide 3/8 deep 1 from 8 1/2 to 11 1/2",
				"rail / a": "front left+0 wide 1 deep 5/16 from 0 to 3; back left+0 wide 1 deep 5/16 from 0 to 3",
			}},
		{"proud, from the back", post, stick, "mortise and tenon: a, tenon: rail / left, into: post / right, place: {back: 1/8 proud, bottom: 4 up}, thickness: 3/8, shoulders: {back: 1/4}, length: 1",
			map[string]string{
				"post / a": "right back+1/8 wide 3/8 deep 1 from 4 to 7",
				"rail / a": "front left+0 wide 1 deep 3/8 from 0 to 3; back left+0 wide 1 deep 1/4 from 0 to 3",
			}},
		{"through", post, stick, "mortise and tenon: a, tenon: rail / left, into: post / right, place: {top: 2 down, centred: front-back}, thickness: 1/2, through: yes",
			map[string]string{
				"post / a": "right front+3/4 wide 1/2 deep 2 from 15 to 18",
				"rail / a": "front left+0 wide 2 deep 1/4 from 0 to 3; back left+0 wide 2 deep 1/4 from 0 to 3",
			}},
		{"play", post, stick, "mortise and tenon: a, tenon: rail / left, into: post / right, place: {top: 2 down, centred: front-back}, thickness: 1/2, length: 1, play: 1/32",
			map[string]string{
				"post / a": "right front+3/4 wide 1/2 deep 1 from 15 to 18",
				"rail / a": "front left+0 wide 1 deep 17/64 from 0 to 3; back left+0 wide 1 deep 17/64 from 0 to 3",
			}},
		{"room away from the glue", post, stick, "mortise and tenon: a, tenon: rail / left, into: post / right, place: {top: 2 down, centred: front-back}, thickness: 1/2, length: 1, shoulders: {bottom: 1/2}, room: 1/8, glue: top",
			map[string]string{"post / a": "right front+3/4 wide 1/2 deep 1 from 15 3/8 to 18"}},
		{"room at both ends", post, stick, "mortise and tenon: a, tenon: rail / left, into: post / right, place: {top: 2 down, centred: front-back}, thickness: 1/2, length: 1, shoulders: {bottom: 1/2}, room: 1/8",
			map[string]string{"post / a": "right front+3/4 wide 1/2 deep 1 from 15 7/16 to 18 1/16"}},
		// 2 1/2 in of white oak: 2.5 x 0.00365 x 5.8 = 0.053 in, rounded up to 1/16 (Wood Handbook, table 13-5).
		{"room for the seasons", post, stick, "mortise and tenon: a, tenon: rail / left, into: post / right, place: {top: 2 down, centred: front-back}, thickness: 1/2, length: 1, shoulders: {bottom: 1/2}, room: seasons, glue: top",
			map[string]string{"post / a": "right front+3/4 wide 1/2 deep 1 from 15 7/16 to 18"}},
		{"haunch", post, stick, "mortise and tenon: a, tenon: rail / left, into: post / right, place: {top: flush, centred: front-back}, thickness: 1/2, length: 1, shoulders: {top: 3/4}, haunch: 3/8 at top",
			map[string]string{
				"post / a":        "right front+3/4 wide 1/2 deep 1 from 17 to 19 1/4",
				"post / a haunch": "right front+3/4 wide 1/2 deep 3/8 from 19 1/4 to 20",
				"rail / a":        "front left+0 wide 1 deep 1/4 from 0 to 3; back left+0 wide 1 deep 1/4 from 0 to 3",
				"rail / a haunch": "top left+0 wide 5/8 deep 3/4 from 0 to 1",
			}},
		{"housing", side6, board1, "housing: a, board: rail / left, into: post / right, place: {bottom: 4 up, front: flush}, depth: 1/4",
			map[string]string{"post / a": "right bottom+4 wide 3/4 deep 1/4 from 0 to 6"}},
		{"housing of a narrower board", side6, "size: {left-right: 20, front-back: 5, top-bottom: 3/4}", "housing: a, board: rail / left, into: post / right, place: {top: 4 down, front: 1/2 back}, depth: 1/4",
			map[string]string{"post / a": "right top+4 wide 3/4 deep 1/4 from 1/2 to 5 1/2"}},
		{"stopped housing", side6, board1, "housing: a, board: rail / left, into: post / right, place: {bottom: 4 up, front: flush}, depth: 1/4, stopped: 3/8 from front",
			map[string]string{
				"post / a":       "right bottom+4 wide 3/4 deep 1/4 from 3/8 to 6",
				"rail / a notch": "front left+0 wide 1/4 deep 3/8 from 0 to 3/4",
			}},
		{"stopped and run out", side6, "size: {left-right: 20, front-back: 5, top-bottom: 3/4}", "housing: a, board: rail / left, into: post / right, place: {bottom: 4 up, front: 1/2 back}, depth: 1/4, stopped: [1/2 from front, 0 from back]",
			map[string]string{"post / a": "right bottom+4 wide 3/4 deep 1/4 from 1/2 to 6"}},
		{"tongue", side6, board1, "housing: a, board: rail / left, into: post / right, place: {bottom: 4 up, front: flush}, depth: 1/4, tongue: 1/4 from top",
			map[string]string{
				"post / a": "right bottom+4 1/2 wide 1/4 deep 1/4 from 0 to 6",
				"rail / a": "bottom left+0 wide 1/4 deep 1/2 from 0 to 6",
			}},
		{"panel", post, "size: {left-right: 12, front-back: 3/4, top-bottom: 18}, grain: top-bottom", "panel: a, edges: rail / left, into: post / right, place: {front: 1/4 back}, groove: 1/4, depth: 3/8, tongue: 1/4 from front, stopped: 1",
			map[string]string{
				"post / a": "right front+1/4 wide 1/4 deep 3/8 from 1 to 19",
				"rail / a": "back left+0 wide 3/8 deep 1/2 from 0 to 18",
			}},
		{"corner halving", "size: {left-right: 2, front-back: 3/4, top-bottom: 20}", "size: {left-right: 12, front-back: 3/4, top-bottom: 3}", "halving: a, lap: rail / left, into: post / front, place: {top: flush}",
			map[string]string{
				"post / a": "front top+0 wide 3 deep 3/8 from 0 to 2",
				"rail / a": "back left+0 wide 2 deep 3/8 from 0 to 3",
			}},
		{"tee halving", "size: {left-right: 2, front-back: 1, top-bottom: 20}", "size: {left-right: 12, front-back: 3/4, top-bottom: 3}", "halving: a, lap: rail / left, into: post / front, place: {top: 5 down}, depth: 1/2",
			map[string]string{
				"post / a": "front top+5 wide 3 deep 1/2 from 0 to 2",
				"rail / a": "back left+0 wide 2 deep 1/4 from 0 to 3",
			}},
		{"cross halving", "size: {left-right: 2, front-back: 3/4, top-bottom: 20}", "size: {left-right: 12, front-back: 3/4, top-bottom: 3}", "halving: a, lap: rail, into: post / front, place: {top: 5 down, left: 4 proud}",
			map[string]string{
				"post / a": "front top+5 wide 3 deep 3/8 from 0 to 2",
				"rail / a": "back left+4 wide 2 deep 3/8 from 0 to 3",
			}},
		{"halving short of the far side", "size: {left-right: 2, front-back: 3/4, top-bottom: 20}", "size: {left-right: 12, front-back: 3/4, top-bottom: 3}", "halving: a, lap: rail / left, into: post / front, place: {top: flush, left: 1/2 right}",
			map[string]string{
				"post / a": "front top+0 wide 3 deep 3/8 from 1/2 to 2",
				"rail / a": "back left+0 wide 1 1/2 deep 3/8 from 0 to 3",
			}},
		{"bridle", "size: {left-right: 2, front-back: 3/4, top-bottom: 20}", "size: {left-right: 12, front-back: 3/4, top-bottom: 3}", "bridle: a, tenon: rail / left, into: post / right, place: {top: flush, front: flush}",
			map[string]string{
				"post / a": "right front+1/4 wide 1/4 deep 2 from 17 to 20",
				"rail / a": "front left+0 wide 2 deep 1/4 from 0 to 3; back left+0 wide 2 deep 1/4 from 0 to 3",
			}},
	} {
		t.Run(c.name, func(t *testing.T) {
			plan := joined(t, c.into, c.part, c.joint)
			made := 0
			for where, want := range c.want {
				piece, name, _ := strings.Cut(where, " / ")
				assert.Equal(t, want, boxOf(cutOf(t, plan, piece, name)), where)
			}
			for _, p := range plan.Pieces {
				made += len(p.Cuts)
				for _, cut := range p.Cuts {
					assert.Equal(t, strings.HasSuffix(cut.Name, "haunch") || strings.HasSuffix(cut.Name, "notch"), cut.By != "", cut.Name)
				}
			}
			if len(c.want) > 1 {
				assert.Equal(t, len(c.want), made)
			}
		})
	}
}

// The side that place names goes to the fence; where it is centred, or named
// from both sides, either does.
func TestFenceOfAJoint(t *testing.T) {
	for place, want := range map[string]joinery.Fencing{
		"{top: flush, front: 1/8 back}": {},
		"centred":                       {Either: true},
		"{top: flush, front: 1/2 back, back: 1/2 forward}": {Either: true},
		"{top: flush, front: 1/2 back}, fence: back":       {Side: joinery.Back},
	} {
		plan := joined(t, post, stick, "mortise and tenon: a, tenon: rail / left, into: post / right, place: "+place+", thickness: 3/8, length: 1")
		assert.Equal(t, want, cutOf(t, plan, "post", "a").Fence, place)
	}
}

// A length left to the joints is what stands between the shoulders, and what
// enters at each end.
func TestLengthsLeftToJoints(t *testing.T) {
	for _, c := range []struct{ name, part, joint, want string }{
		{"tenons", "left-right: 30 between shoulders, front-back: 3/4, top-bottom: 3", "mortise and tenon: a, tenon: rail / left, place: centred, thickness: 1/4, length: 5/8", "31 1/4"},
		{"through tenons", "left-right: 30 between shoulders, front-back: 3/4, top-bottom: 3", "mortise and tenon: a, tenon: rail / left, place: centred, thickness: 1/4, through: yes", "34"},
		{"housings", "left-right: 30 between shoulders, front-back: 2, top-bottom: 3/4", "housing: a, board: rail / left, place: {bottom: 4 up, front: flush}, depth: 3/8", "30 3/4"},
		{"grooves", "left-right: 30 between shoulders, front-back: 3/4, top-bottom: 18", "panel: a, edges: rail / left, place: {centred: front-back}, depth: 3/8, room: 1/8", "30 5/8"},
		{"laps", "left-right: 30 between shoulders, front-back: 2, top-bottom: 3", "halving: a, lap: rail / left, place: {top: flush}", "34"},
		{"laps that stop short", "left-right: 30 between shoulders, front-back: 2, top-bottom: 3", "halving: a, lap: rail / left, place: {top: flush, left: 1/2 right}", "33"},
		{"bridles", "left-right: 30 between shoulders, front-back: 2, top-bottom: 3", "bridle: a, tenon: rail / left, place: {top: flush, front: flush}", "34"},
	} {
		t.Run(c.name, func(t *testing.T) {
			side := "right"
			if strings.HasPrefix(c.joint, "halving") {
				side = "front"
			}
			grain := ""
			if c.name == "grooves" {
				grain = ", grain: top-bottom"
			}
			plan := read(t, "plan.yaml", []byte("unit: in\nwood: white oak\npieces:\n  - {piece: post, "+post+"}\n  - {piece: other, mirror: {of: post, across: left-right}}\n"+
				"  - {piece: rail, size: {"+c.part+"}"+grain+"}\njoints:\n  - {"+c.joint+", into: post / "+side+"}\n"))
			assert.Equal(t, c.want, text(plan.Piece("rail").Size[0]))
		})
	}
}

// A panel's room is what the seasons need across its grain, no less and no
// division more; along it there is none.
func TestPanelLeftToJoints(t *testing.T) {
	plan := read(t, "plan.yaml", []byte(`unit: in
wood: white oak
pieces:
  - {piece: stile, size: {left-right: 2, front-back: 3/4, top-bottom: 30}}
  - {piece: right stile, mirror: {of: stile, across: left-right}}
  - {piece: bottom rail, size: {left-right: 20, front-back: 3/4, top-bottom: 3}}
  - {piece: top rail, mirror: {of: bottom rail, across: top-bottom}}
  - {piece: panel, size: {left-right: 18 between shoulders, front-back: 1/2, top-bottom: 24 between shoulders}, grain: top-bottom}
joints:
  - panel: panel
    edges: panel / left, right, bottom, top
    into: stile / right, right stile / left, bottom rail / top, top rail / bottom
    place: {centred: front-back}
    groove: 1/4
    depth: 3/8
    tongue: 1/4 from back
    room: seasons
`))
	panel := plan.Piece("panel")
	assert.Equal(t, "24 3/4", text(panel.Size[2]), "3/8 into either rail")
	room := 18*in + 6*in/8 - panel.Size[0]
	// 18.4 x 0.00365 x 5.8 = 0.389 in (Wood Handbook, table 13-5 and table 4-2)
	assert.InDelta(t, 0.389, room.Inches(), 1.0/64)
	moves, err := panel.Swells(plan.Climate, joinery.LeftRight, panel.Size[0])
	require.NoError(t, err)
	assert.GreaterOrEqual(t, room, moves)
	assert.Less(t, room-moves, in/64)
	assert.Equal(t, []string{"panel left", "panel right", "panel bottom", "panel top"}, cutNames(panel))
	assert.Equal(t, []string{"panel bottom", "panel top"}, cutOf(t, plan, "panel", "panel left").After, "ends before long edges")
	assert.Equal(t, "right front+3/8 wide 1/4 deep 3/8 from 0 to 30", boxOf(cutOf(t, plan, "stile", "panel")), "its back lies 1/8 forward")
}
