package proof

import (
	"fmt"
	"strconv"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
)

// hair is how far two lengths may differ and still be called equal: a deck
// that went through a file with three decimals of a millimetre is still right.
const hair = measure.Millimetre / 1000

// Check proves the claims of a deck against its plan. The report has a result
// for every run; it has no warnings, which come from the deck's maker.
func Check(plan *joinery.Plan, claims *Claims) Report {
	p := newProver(plan, claims)
	p.results = make([]Result, 0, claims.Runs())
	p.heading()
	p.stock()
	for i := range claims.Setups {
		p.setup(i)
	}
	for i := range p.wants.pieces {
		p.piece(&p.wants.pieces[i])
	}
	p.changes()
	return p.report()
}

// prover proves one deck.
type prover struct {
	plan    *joinery.Plan
	claims  *Claims
	scale   measure.Scale
	bits    map[string]*joinery.Bit
	tools   []tool // of each setup
	wants   wants
	room    []run // for the runs of one piece
	spare   []run // to sort the runs of one channel
	fits    map[fit]bool
	results []Result
	deck    []Difference
}

// run is a run put on the table.
type run struct {
	table
	dealt
	fence deck.Fence
}

func newProver(plan *joinery.Plan, claims *Claims) *prover {
	p := &prover{
		plan: plan, claims: claims, scale: plan.Shop.Scale, fits: map[fit]bool{},
		bits:  make(map[string]*joinery.Bit, len(plan.Shop.Bits)),
		wants: wantsOf(plan),
	}
	for i := range plan.Shop.Bits {
		b := &plan.Shop.Bits[i]
		p.bits[b.Name] = b
	}
	return p
}

func (p *prover) report() Report {
	r := Report{Results: p.results}
	for _, result := range p.results {
		r.Faults = append(r.Faults, result.Faults...)
	}
	r.Faults = append(r.Faults, p.deck...)
	return r
}

// wrong notes a difference of the deck as a whole.
func (p *prover) wrong(field, text string, args ...any) {
	p.deck = append(p.deck, Difference{Field: field, Text: fmt.Sprintf(text, briefly(args)...)})
}

// mostQuoted is how much of a name or a word a message quotes, in characters.
const mostQuoted = 200

// briefly cuts the texts that a message quotes.
func briefly(args []any) []any {
	for i, arg := range args {
		if text, ok := arg.(string); ok {
			args[i] = plantext.Brief(text, mostQuoted)
		}
	}
	return args
}

// wrongRun notes a difference of one run.
func (p *prover) wrongRun(result int, field string, off measure.Length, text string, args ...any) {
	r := &p.results[result]
	r.Faults = append(r.Faults, Difference{
		Run: plantext.Brief(r.Claimed.Number, mostQuoted), Piece: plantext.Brief(r.Claimed.Piece, mostQuoted), Cut: plantext.Brief(r.Claimed.Cut, mostQuoted),
		Place: r.Claimed.Place, Field: field, Off: off, Text: fmt.Sprintf(text, briefly(args)...),
	})
}

// heading compares what stands above the setups.
func (p *prover) heading() {
	if p.claims.Title != p.plan.Title {
		p.wrong("title", "the deck is titled %q, the plan %q", p.claims.Title, p.plan.Title)
	}
	if p.claims.Unit != p.plan.Unit.String() {
		p.wrong("unit", "the deck is in %s, the plan in %s", p.claims.Unit, p.plan.Unit)
	}
}

// setup proves one setup, and hands its runs to their pieces.
func (p *prover) setup(i int) {
	s := &p.claims.Setups[i]
	if s.Number != i+1 && !p.claims.Part {
		p.wrong("number", "the setup that comes %s in the deck is numbered %d", ordinal(i+1), s.Number)
	}
	p.tools = append(p.tools, tool{bit: p.bit(s)})
	p.fence(s)
	p.ladder(s)
	p.bitHeights(s)
	for j := range s.Runs {
		c := &s.Runs[j]
		p.results = append(p.results, Result{Claimed: c})
		at := len(p.results) - 1
		if !p.claims.Part && !numbered(c.Number, i+1, j+1) {
			p.wrongRun(at, "number", 0, "the run that comes %s in setup %d must be numbered %d.%d", ordinal(j+1), i+1, i+1, j+1)
		}
		var before *Run
		if j > 0 {
			before = &s.Runs[j-1]
		}
		if !p.claims.Part {
			p.climb(at, c, before)
		}
		if piece := p.wants.named[c.Piece]; piece != nil {
			piece.runs = append(piece.runs, dealt{i, at})
		} else {
			p.unknown(at, c)
		}
	}
}

// numbered reports whether a run's number is that of its setup and its place.
func numbered(number string, setup, claim int) bool {
	var room [40]byte
	want := strconv.AppendInt(room[:0], int64(setup), 10)
	want = append(want, '.')
	want = strconv.AppendInt(want, int64(claim), 10)
	return number == string(want)
}

// bit looks up a setup's bit in the shop; it is nil where the shop has none.
func (p *prover) bit(s *Setup) *joinery.Bit {
	bit := p.bits[s.Bit.Name]
	switch {
	case bit == nil:
		p.wrong("bit", "setup %d wants the bit %q, which the shop does not have", s.Number, s.Bit.Name)
	case differ(bit.True(), s.Bit.Diameter):
		p.wrong("bit diameter", "setup %d says that the %s bit measures %s, the shop says %s",
			s.Number, bit.Name, p.text(s.Bit.Diameter), p.text(bit.True()))
	case s.Bit.Kind != bit.Kind.String():
		p.wrong("bit kind", "setup %d says that the %s bit is %s, the shop says %s", s.Number, bit.Name, s.Bit.Kind, bit.Kind)
	}
	return bit
}

// fence checks that the three distances set one and the same fence.
func (p *prover) fence(s *Setup) {
	numbers := table{bit: s.Bit.Diameter}.fenceNumbers(s.Fence)
	for _, n := range numbers[1:] {
		if off := n.near - numbers[0].near; off.Abs() > hair {
			p.wrong("fence, "+n.name, "setup %d: the distance %s would set the fence %s too %s the bit for the distance to the near edge",
				s.Number, n.name, p.text(off.Abs()), nearOrFar(off))
		}
	}
}

// ladder checks that the heights climb and that each is of use.
func (p *prover) ladder(s *Setup) {
	if h, ok := ascend(s.Heights); !ok {
		p.wrong("heights", "setup %d: the height %s does not climb above the one before it", s.Number, p.text(h))
	}
	used := map[measure.Length]bool{}
	for i := range s.Runs {
		for _, h := range s.Runs[i].Heights {
			used[h] = true
		}
	}
	unused, first := 0, measure.Length(0)
	for _, h := range s.Heights {
		if !used[h] {
			if unused++; unused == 1 {
				first = h
			}
		}
	}
	if unused > 0 {
		p.wrong("heights", "setup %d: no run uses the height %s%s", s.Number, p.text(first), andMore(unused, "nor"))
	}
}

// andMore says in words that something told once is so of n in all.
func andMore(n int, so string) string {
	if n == 1 {
		return ""
	}
	return fmt.Sprintf(", %s %d more", so, n-1)
}

// ascend returns the first height that is not above the one before it.
func ascend(heights []measure.Length) (measure.Length, bool) {
	last := measure.Length(0)
	for _, h := range heights {
		if h <= last {
			return h, false
		}
		last = h
	}
	return 0, true
}

func differ(a, b measure.Length) bool { return (a - b).Abs() > hair }

func nearOrFar(off measure.Length) string {
	if off < 0 {
		return "near to"
	}
	return "far from"
}
