package proof_test

import (
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/setup/deck"
	"fencecard/setup/proof"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shelfPlan has a mortise, a dado wider than its bit, a cut that must wait and
// a centred groove that may be turned.
const shelfPlan = `
unit: in
wood: white ash
shop:
  bits:
    - {bit: three eighths, diameter: 3/8, plunges: yes}
    - {bit: half, diameter: 1/2, plunges: no}
pieces:
  - piece: leg
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    cuts:
      - mortise: rail
        in: right
        width: 3/8
        setback: 1/2 from front
        span: 1/2 to 3 from top
        depth: 1
  - piece: shelf
    count: 2
    size: {left-right: 24, front-back: 9, top-bottom: 3/4}
    cuts:
      - dado: divider
        in: top
        width: 3/4
        setback: 6 from left
        depth: 1/4
        after: edge
      - rabbet: edge
        in: bottom
        along: front
        width: 3/8
        depth: 3/8
      - groove: lining
        in: front
        width: 5/8
        setback: 1/16 from top
        depth: 1/4
        fence: either
`

func shelf(t testing.TB) (*joinery.Plan, *proof.Claims) {
	t.Helper()
	plan, err := planfile.Read("shelf.yaml", []byte(shelfPlan), nil)
	require.NoError(t, err)
	return plan, claimsOf(deckOf(t, plan))
}

// runOf finds the nth run of a cut.
func runOf(t testing.TB, c *proof.Claims, cut string, nth int) (*proof.Setup, *proof.Run) {
	t.Helper()
	for i := range c.Setups {
		for j := range c.Setups[i].Runs {
			if claim := &c.Setups[i].Runs[j]; claim.Cut == cut && claim.Position == nth {
				return &c.Setups[i], claim
			}
		}
	}
	t.Fatalf("no run %d of %s", nth, cut)
	return nil, nil
}

// renumber numbers setups and runs anew and counts what is set, as somebody
// would who changes a deck with care.
func renumber(c *proof.Claims, m joinery.Minutes) {
	c.Changes = proof.Changes{Fits: c.Changes.Fits}
	for i := range c.Setups {
		s := &c.Setups[i]
		s.Number = i + 1
		newBit := i == 0 || c.Setups[i-1].Bit.Name != s.Bit.Name
		if newBit {
			c.Changes.Bits++
		}
		if newBit || c.Setups[i-1].Fence != s.Fence {
			c.Changes.Fences++
		}
		c.Changes.Heights += len(s.Heights)
		for j := range s.Runs {
			passes := 1
			if n := s.Runs[j].Nibble; n != nil {
				passes = n.Passes
			}
			c.Changes.Passes += s.Runs[j].Count * passes * len(s.Runs[j].Heights)
			s.Runs[j].Number = (&deck.Run{Setup: i + 1, Index: j + 1}).Number()
		}
	}
	c.Changes.Time = joinery.Time(c.Changes.Bits)*m.Bit + joinery.Time(c.Changes.Fences)*m.Fence + joinery.Time(c.Changes.Heights)*m.Height +
		joinery.Time(c.Changes.Passes)*m.Pass + joinery.Time(c.Changes.Fits)*m.Fit
}

func inch64(n int) measure.Length { return measure.Inch / 64 * measure.Length(n) }

func TestDifferencesInWords(t *testing.T) {
	moveMark := func(m *deck.Mark, by measure.Length) {
		m.Line, m.LeadPastEdge, m.LeadPastCentre = m.Line+by, m.LeadPastEdge+by, m.LeadPastCentre+by
		m.TailBeforeEdge, m.TailBeforeCentre = m.TailBeforeEdge-by, m.TailBeforeCentre-by
	}
	moveFence := func(s *proof.Setup, by measure.Length) {
		s.Fence = deck.Fence{NearEdge: s.Fence.NearEdge + by, Centre: s.Fence.Centre + by, FarEdge: s.Fence.FarEdge + by}
	}
	for _, test := range []struct {
		name   string
		change func(*proof.Claims)
		want   []string
	}{
		{"a stop mark moved", func(c *proof.Claims) {
			_, claim := runOf(t, c, "rail", 1)
			moveMark(claim.Stop, -inch64(2))
		}, []string{"the mortise would end 1/32 too near the top"}},
		{"a start mark moved", func(c *proof.Claims) {
			_, claim := runOf(t, c, "rail", 1)
			moveMark(claim.Start, inch64(1))
		}, []string{"the mortise would begin 1/64 too near the bottom"}},
		{"one number of a mark", func(c *proof.Claims) {
			_, claim := runOf(t, c, "rail", 1)
			claim.Start.TailBeforeCentre += inch64(1)
		}, []string{"set by tail end before the centre, the mortise would begin 1/64 too near the top"}},
		{"a fence moved", func(c *proof.Claims) {
			s, _ := runOf(t, c, "rail", 1)
			moveFence(s, inch64(1))
		}, []string{"the mortise would lie 1/64 too near the back"}},
		{"one number of a fence", func(c *proof.Claims) {
			s, _ := runOf(t, c, "rail", 1)
			s.Fence.FarEdge -= inch64(1)
		}, []string{"the distance to the far edge would set the fence 1/64 too near to the bit for the distance to the near edge"}},
		{"a height", func(c *proof.Claims) {
			s, claim := runOf(t, c, "rail", 1)
			last := len(claim.Heights) - 1
			s.Heights[len(s.Heights)-1] -= inch64(1)
			claim.Heights[last] = s.Heights[len(s.Heights)-1]
		}, []string{"the mortise would be 1/64 too shallow"}},
		{"a pass left out", func(c *proof.Claims) {
			s, claim := runOf(t, c, "rail", 1)
			s.Heights, claim.Heights = s.Heights[1:], claim.Heights[1:]
			renumber(c, shelfMinutes)
		}, []string{"more than the bit may: 5/8 of the bit's diameter in white ash"}},
		{"the other side down", func(c *proof.Claims) {
			_, claim := runOf(t, c, "rail", 1)
			claim.Down, claim.Leads = joinery.Left, joinery.Bottom
		}, []string{"with the left down the mortise would be cut into the left; the plan wants it in the right"}},
		{"turned end for end", func(c *proof.Claims) {
			_, claim := runOf(t, c, "rail", 1)
			claim.Leads = joinery.Bottom
		}, []string{"with the right down and the front to the fence the top end leads, not the bottom"}},
		{"another side to the fence", func(c *proof.Claims) {
			_, claim := runOf(t, c, "rail", 1)
			claim.Fence = joinery.Top
		}, []string{"the walls of the mortise are measured from the front, so the top cannot go to the fence"}},
		{"fed in where it starts stopped", func(c *proof.Claims) {
			_, claim := runOf(t, c, "rail", 1)
			claim.Begin, claim.Start = deck.FeedIn, nil
		}, []string{"fed in, the mortise would run out at the top; the plan wants it to begin 1/2 from there"}},
		{"run out where it stops", func(c *proof.Claims) {
			_, claim := runOf(t, c, "rail", 1)
			claim.End, claim.Stop = deck.RunOut, nil
		}, []string{"run out, the mortise would be open at the bottom; the plan wants it to end 14 from there"}},
		{"positions the wrong way round", func(c *proof.Claims) {
			a, first := runOf(t, c, "divider", 1)
			b, last := runOf(t, c, "divider", first.Positions)
			a.Fence, b.Fence = b.Fence, a.Fence
			_ = last
			renumber(c, shelfMinutes)
		}, []string{"the wood this run cuts lies between the bit and the fence, which is a climb cut: run it before run"}},
		{"positions too far apart", func(c *proof.Claims) {
			s, first := runOf(t, c, "divider", 1)
			require.Equal(t, 2, first.Positions)
			moveFence(s, -inch64(20))
		}, []string{"between this run and the one beside it 1/16 of the dado would be left standing",
			"the left wall of the dado would stand 5/16 too near the left"}},
		{"a cut before the one it waits for", func(c *proof.Claims) {
			s, claim := runOf(t, c, "edge", 1)
			edge := *s
			edge.Runs, s.Runs = []proof.Run{*claim}, nil
			var kept []proof.Setup
			for _, other := range c.Setups {
				if len(other.Runs) > 0 {
					kept = append(kept, other)
				}
			}
			c.Setups = append(kept, edge)
			renumber(c, shelfMinutes)
		}, []string{`the plan wants this cut after "edge"`}},
		{"a run lost", func(c *proof.Claims) {
			s, _ := runOf(t, c, "rail", 1)
			s.Runs, s.Heights = nil, nil
			renumber(c, shelfMinutes)
		}, []string{`no run cuts the mortise "rail" in "leg"`}},
		{"a run of another plan", func(c *proof.Claims) {
			_, claim := runOf(t, c, "rail", 1)
			claim.Piece = "arm"
		}, []string{`the plan has no cut "rail" in a piece "arm"`}},
		{"a bit the shop lacks", func(c *proof.Claims) {
			s, _ := runOf(t, c, "rail", 1)
			s.Bit.Name = "router plane"
		}, []string{`wants the bit "router plane", which the shop does not have`}},
		{"another count of changes", func(c *proof.Claims) { c.Changes.Heights++ },
			[]string{"heights to set, it takes"}},
		{"proved no more", func(c *proof.Claims) { c.Changes.Proved = false },
			[]string{"the deck is not called proved, though it says that nothing takes less than its"}},
		{"a lower bound", func(c *proof.Claims) { c.Changes.Bound /= 2 },
			[]string{"the deck is called proved, but by its own bound another could take"}},
		{"a higher bound", func(c *proof.Claims) { c.Changes.Bound++ },
			[]string{"the deck says that nothing takes less than"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			plan, claims := shelf(t)
			require.Equal(t, shelfMinutes, plan.Shop.Minutes)
			test.change(claims)
			r := proof.Check(plan, claims)
			require.False(t, r.Proved())
			text := r.Err().Error()
			for _, want := range test.want {
				assert.Contains(t, text, want)
			}
		})
	}
}

// shelfMinutes are those of the built-in shop.
var shelfMinutes = shopfile.BuiltIn(measure.Inches).Minutes
