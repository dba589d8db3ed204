package sheets

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/views"
	"fencecard/setup/deck"
)

// TestJointPages lays the joints of every plan out on every paper: nothing runs
// into anything else or off the page, and each page has something to read.
func TestJointPages(t *testing.T) {
	joints := 0
	for i, d := range realDecks(t) {
		for _, p := range allPapers() {
			o := Pages{Paper: p, Units: Units((i + int(p)) % 4)}
			pages := slices.Collect(newSetter(d.deck, o).jointPages(d.deck))
			checkPages(t, fmt.Sprintf("joints of %s on %s, units %d", d.Name, o.Paper, o.Units), pages, p.margin())
			assert.Equal(t, len(d.deck.Joints) > 0, len(pages) > 0, d.Name)
		}
		joints += len(d.deck.Joints)
	}
	assert.Greater(t, joints, 40)
}

// TestJointNumbers holds what is written at the figures of every joint to the
// plan: each measure of the channel, the tenon and the reveals is there, and
// nothing that is not a measure of the two.
func TestJointNumbers(t *testing.T) {
	for _, d := range realDecks(t) {
		s := newSetter(d.deck, Pages{})
		for i := range d.deck.Joints {
			j := &d.deck.Joints[i]
			figures, _ := views.Joint(s.Setter, j, s.Frame.W/2, 52)
			drawn := map[string]bool{}
			for _, f := range figures {
				texts := f.Parts[:slices.IndexFunc(f.Parts, func(p paper.Part) bool {
					return strings.Contains(p.Says, "een from") || strings.HasPrefix(p.Says, "together") || strings.HasPrefix(p.Says, j.Into.Piece.Name+",") || strings.HasPrefix(p.Says, j.Part.Piece.Name+",")
				})]
				for _, p := range texts {
					if toRead(p) {
						drawn[p.Says] = true
					}
				}
			}
			must, may := measuresOf(j)
			for _, l := range must {
				assert.True(t, drawn[s.Plain(l)], "%s: %s into %s: %s is not drawn in %v", d.Name, j.Part, j.Into, s.Plain(l), drawn)
			}
			for text := range drawn {
				assert.True(t, slices.ContainsFunc(append(must, may...), func(l measure.Length) bool { return s.Plain(l) == text }),
					"%s: %s into %s: %s is none of its measures", d.Name, j.Part, j.Into, text)
			}
		}
	}
}

// measuresOf are the measures of a joint that its drawing must have, and those
// that it may have.
func measuresOf(j *deck.Joint) (must, may []measure.Length) {
	half := func(h deck.Half) {
		c, size := h.Cut.Channels[0], h.Piece.Size
		must = append(must, c.Width, c.Hi-c.Lo)
		may = append(may, c.Depth, c.Lo, size[c.Run()]-c.Hi, c.Setback, size.Between(c.Near)-c.Setback-c.Width)
	}
	half(j.Into)
	must = append(must, j.Into.Cut.Channels[0].Depth)
	may = append(may, j.Part.Piece.Size[:]...)
	may = append(may, j.Part.Enters)
	for _, f := range j.Fits {
		may = append(may, f.Part, f.Room)
	}
	for _, r := range j.Reveals {
		if r.Distance != 0 && j.Into.Cut.Kind.Receives {
			must = append(must, max(r.Distance, -r.Distance))
		}
	}
	switch c := j.Part.Cut; {
	case c == nil:
	case c.Kind.Laps:
		half(j.Part)
	default:
		must = append(must, j.Fits[0].Part)
		low := [3]measure.Length(j.Part.Piece.Size)
		for _, k := range c.Cheeks {
			low[k.Side.Dimension()] -= k.Depth
			if k.Depth > 0 {
				may = append(may, k.Depth)
			}
		}
		may = append(may, low[:]...)
	}
	return must, may
}

// TestJointDrawn reads a drawing as a maker does: the plan's own numbers, once
// for each joint and its mirror images.
func TestJointDrawn(t *testing.T) {
	d := planDeck(t, examples.BootBench)
	var b bytes.Buffer
	require.NoError(t, JointSVG(&b, d, " Seat Rail", Pages{}))
	assert.Equal(t, 1, strings.Count(b.String(), "scale 1:1"), "the four legs are mirror images")
	assert.Contains(t, b.String(), "4 times")

	groups := alikeJoints(d.Joints)
	assert.Less(t, len(groups), len(d.Joints))
	for _, all := range groups {
		for _, j := range all {
			assert.Equal(t, all[0].Fits, j.Fits)
		}
	}

	err := JointSVG(io.Discard, d, "saet rail", Pages{})
	assert.ErrorContains(t, err, `did you mean "seat rail"?`)
	assert.ErrorContains(t, JointSVG(io.Discard, d, "", Pages{}), "it has ")
}

// TestLappedJointDrawn draws two laps, which lie in each other and go into
// nothing: both from the side they are cut in, and one section.
func TestLappedJointDrawn(t *testing.T) {
	d := planDeck(t, []byte(`unit: in
pieces:
  - piece: stretcher
    size: {left-right: 30, front-back: 1 1/2, top-bottom: 3/4}
    cuts:
      - {lap: cross, in: top, at: left, length: 1 3/8, depth: 5/16, mates: post / cross}
  - piece: post
    size: {left-right: 1 3/8, front-back: 20, top-bottom: 3/4}
    cuts:
      - {lap: cross, in: bottom, at: front, length: 1 1/2, depth: 7/16}
`))
	s := newSetter(d, Pages{})
	require.Len(t, d.Joints, 1)
	figures, scale := views.Joint(s.Setter, &d.Joints[0], s.Frame.W/2, 52)
	require.Len(t, figures, 3)
	assert.Equal(t, "scale 1:1", scale)
	assert.Equal(t, "1 1/2|1 3/8|post, seen from its bottom, its front up", saidIn(figures[0]))
	assert.Equal(t, "1 1/2|1 3/8|stretcher, seen from its top, its back up", saidIn(figures[1]))
	assert.Equal(t, "7/16|together, cut through, seen from the right, the top up", saidIn(figures[2]))
}
