package deckfile

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// No bit climbs in so many heights, nor are there so many cautions; longer lists
// mean harm.
const (
	mostHeights  = 5000
	mostCautions = 1000
)

// Read reads a deck written as JSON. The file's name is for messages; the scale
// is the shop's, by which the texts beside the millimetres are checked. The
// error is [plantext.Faults], each with its line and column.
func Read(file string, data []byte, scale measure.Scale) (*proof.Claims, error) {
	r := reader{document: newDocument(file, data), scale: scale}
	c := r.deck()
	if !r.ended {
		r.end()
	}
	if err := r.faults.Err(); err != nil {
		return nil, err
	}
	return c, nil
}

// reader reads the values of a deck.
type reader struct {
	*document
	scale measure.Scale
	unit  measure.Unit
}

// end faults what stands behind the deck.
func (r *reader) end() {
	if at := r.here(); at < len(r.text) {
		r.fault(at, "something stands behind the end of the deck", "take it away")
	}
}

func sortedKeys(fields map[string]field) []string { return slices.Sorted(maps.Keys(fields)) }

func (r *reader) deck() *proof.Claims {
	c := &proof.Claims{}
	r.object("the deck", map[string]field{
		"format":  {read: r.format},
		"code":    {read: func() { c.Said.Code = r.word("the deck's code") }, optional: true},
		"title":   {read: func() { c.Title = r.word("a title") }},
		"unit":    {read: func() { c.Unit = r.word("in or mm") }},
		"changes": {read: func() { c.Changes = r.changes() }},
		"setups": {read: func() {
			r.list("a list of setups", 0, func() { c.Setups = append(c.Setups, r.setup()) })
		}},
		"cards":    {read: func() { c.Said.Cards = r.entries("a list of cards") }, optional: true},
		"joints":   {read: func() { c.Said.Joints = r.entries("a list of joints") }, optional: true},
		"cautions": {read: func() { c.Said.Cautions = r.entries("a list of cautions") }, optional: true},
		"warnings": {read: func() { c.Said.Warnings = r.entries("a list of warnings") }, optional: true},
	})
	return c
}

func (r *reader) format() {
	at, faults := r.here(), len(r.faults)
	switch got := r.word("the format"); {
	case got == formerFormat:
		r.refuse(at, fmt.Sprintf("this is a %q, which had a card for every run; a %q is read", got, Format), anew)
	case got != Format && len(r.faults) == faults:
		r.refuse(at, fmt.Sprintf("this is %q, not a %q", shorten(got), Format), anew)
	}
}

func (r *reader) changes() proof.Changes {
	var c proof.Changes
	var proved, bound bool // whether they were said
	at, runs, passes := r.here(), 0, -1
	time := func() joinery.Time {
		minutes, _ := r.number("time in minutes")
		return joinery.Time(math.Round(minutes * float64(joinery.Minute)))
	}
	r.object("the changes", map[string]field{
		"bits":    {read: func() { c.Bits = r.whole("a count of bits") }},
		"fences":  {read: func() { c.Fences = r.whole("a count of fence settings") }},
		"heights": {read: func() { c.Heights = r.whole("a count of heights") }},
		"runs":    {read: func() { runs = r.whole("a count of passes") }},
		"passes":  {read: func() { passes = r.whole("a count of passes") }, optional: true},
		"fits":    {read: func() { c.Fits = r.whole("a count of trials of a fit") }},
		"stops":   {read: func() { c.Stops = r.whole("a count of settings of the stop blocks") }, optional: true},
		"minutes": {read: func() { c.Time = time() }},
		"proved":  {read: func() { proved, c.Proved = true, r.truth("whether the changes are proved") }, optional: true},
		"bound":   {read: func() { bound, c.Bound = true, time() }, optional: true},
	})
	c.Passes = runs
	if passes >= 0 && passes != runs {
		r.fault(at, fmt.Sprintf("the changes count %d runs and %d passes, and both are the passes of all pieces", runs, passes), "write the same for both, or "+anew)
	}
	if !bound && c.Proved {
		c.Bound = c.Time
	}
	if !proved {
		c.Proved = c.Bound == c.Time
	}
	return c
}

func (r *reader) setup() proof.Setup {
	s := proof.Setup{Place: r.place(r.here())}
	var check func()
	r.object("a setup", map[string]field{
		"number":      {read: func() { s.Number = r.whole("a setup's number") }},
		"bit":         {read: func() { s.Bit = r.bit() }},
		"fence":       {read: func() { s.Fence = r.fence() }},
		"heights":     {read: func() { s.Heights = r.lengths() }},
		"carriage":    {read: func() { s.Carriage = r.length() }, optional: true},
		"bit_heights": {read: func() { s.BitHeights = r.lengths() }, optional: true},
		"kept":        {read: func() { check = r.kept(&s) }, optional: true},
		"marks":       {read: func() { s.Marks = r.entries("a list of pairs of marks") }, optional: true},
		"runs":        {read: func() { r.list("a list of runs", 0, func() { s.Runs = append(s.Runs, r.run()) }) }},
	})
	if check != nil {
		check()
	}
	return s
}

func (r *reader) bit() proof.Bit {
	var b proof.Bit
	r.object("the bit", map[string]field{
		"name":     {read: func() { b.Name = r.word("a bit's name") }},
		"kind":     {read: func() { b.Kind = r.word("a kind of bit") }, optional: true},
		"diameter": {read: func() { b.Diameter = r.length() }},
	})
	return b
}

func (r *reader) fence() deck.Fence {
	var f deck.Fence
	r.object("the fence", map[string]field{
		"to_near_edge": r.lengthInto(&f.NearEdge),
		"to_centre":    r.lengthInto(&f.Centre),
		"to_far_edge":  r.lengthInto(&f.FarEdge),
	})
	return f
}

func (r *reader) run() proof.Run {
	c := proof.Run{Place: r.place(r.here()), Silent: proof.AllSilent}
	word := func(to *string, what string) field { return field{read: func() { *to = r.word(what) }} }
	side := func(to *joinery.Side) field { return field{read: func() { *to = r.side() }} }
	extra := func(which proof.Silence, read func()) field {
		return field{optional: true, read: func() { c.Silent &^= which; read() }}
	}
	towardYou := field{optional: true, read: func() { c.Said.TowardYou = append(c.Said.TowardYou, r.word("a side")) }}
	r.object("a run", map[string]field{
		"number":     word(&c.Number, "a run's number"),
		"piece":      word(&c.Piece, "a piece's name"),
		"count":      {read: func() { c.Count = r.whole("a count of pieces") }},
		"cut":        word(&c.Cut, "a cut's name"),
		"kind":       word(&c.Kind, "a kind of cut"),
		"down":       side(&c.Down),
		"fence":      side(&c.Fence),
		"leads":      side(&c.Leads),
		"card":       {read: func() { c.Said.Card = r.whole("a card's number") }, optional: true},
		"marks":      {read: func() { c.Said.Pair = r.wordOrNull("a letter") }, optional: true},
		"up":         {read: func() { c.Said.Up = r.word("a side") }, optional: true},
		"toward_you": towardYou,
		"near":       towardYou,
		"pivot":      extra(proof.NoPivot, func() { c.Pivot = r.pivot() }),
		"begin":      {read: func() { c.Begin = oneOf(r, deck.FeedIn, deck.Drop) }},
		"end":        {read: func() { c.End = oneOf(r, deck.RunOut, deck.Lift) }},
		"start":      {read: func() { c.Start = r.mark("trailing", &c.Said.StartGuide) }},
		"stop":       {read: func() { c.Stop = r.mark("leading", &c.Said.StopGuide) }},
		"heights":    {read: func() { c.Heights = r.lengths() }},
		"part":       {read: func() { c.Part = r.word("a part of a cut") }, optional: true},
		"cautions":   {read: func() { c.Said.Cautions = r.cautions() }, optional: true},
		"turned":     {read: func() { c.Turned = r.truth("whether the piece is turned") }, optional: true},
		"start_hole": {read: func() { c.Hole = r.hole() }, optional: true},
		"screw":      {read: func() { c.Screw = r.screw() }, optional: true},
		"raised":     {read: func() { c.Raised = r.truth("whether the bit is raised") }, optional: true},
		"nibble":     {read: func() { c.Nibble = r.nibble() }, optional: true},
		"guided":     extra(proof.NoGuided, func() { c.Guided = r.truth("whether the work is guided") }),
		"climb":      extra(proof.NoClimb, func() { c.Climb = r.whole("a climb's number") }),
		"wood":       extra(proof.NoWood, func() { c.Wood = r.word("a wood") }),
		"position":   extra(proof.NoPosition, func() { c.Position = r.whole("a run's number") }),
		"positions":  extra(proof.NoPositions, func() { c.Positions = r.whole("a count of runs") }),
		"length":     extra(proof.NoLength, func() { c.Length = r.length() }),
		"areas":      {read: func() { c.Areas = r.areas() }, optional: true},
		"bite": extra(proof.NoCap, func() {
			area, _ := r.number("an area in mm2")
			c.Cap = measure.Strip(min(max(area, 0), mostArea))
		}),
		"cap":      extra(proof.NoCap, func() { c.Cap = r.length() }),
		"cap_rule": extra(proof.NoCapRule, func() { c.CapRule = r.word("a rule") }),
		"ends":     extra(proof.NoEnds, func() { c.Ends = r.word("round or square") }),
		"note":     extra(proof.NoNote, func() { c.Note = r.word("a note") }),
	})
	return c
}

// pivot reads what a drop takes, or nil for null.
func (r *reader) pivot() *deck.Pivot {
	if r.null() {
		return nil
	}
	var p deck.Pivot
	r.object("a pivot", map[string]field{
		"tilt_degrees": {read: func() { p.Tilt, _ = r.number("an angle in degrees") }},
		"early":        r.lengthInto(&p.Early),
	})
	return &p
}

// hole reads where a start hole is bored, or nil for null.
func (r *reader) hole() *deck.Hole {
	if r.null() {
		return nil
	}
	var h deck.Hole
	r.object("the start hole", map[string]field{
		"from_leads": r.lengthInto(&h.FromLead),
		"from_fence": r.lengthInto(&h.FromFence),
	})
	return &h
}

// screw reads where a screw goes in its slot, or nil for null.
func (r *reader) screw() *deck.Screw {
	if r.null() {
		return nil
	}
	var s deck.Screw
	r.object("the screw", map[string]field{"from_middle": r.lengthInto(&s.FromMiddle)})
	return &s
}

// nibble reads how the waste at an end is taken, or nil for null.
func (r *reader) nibble() *deck.Nibble {
	if r.null() {
		return nil
	}
	var n deck.Nibble
	r.object("the nibbling", map[string]field{
		"passes":    {read: func() { n.Passes = r.whole("a count of passes") }},
		"draw_back": r.lengthInto(&n.DrawBack),
	})
	return &n
}

// wordOrNull reads a text, or nil for null.
func (r *reader) wordOrNull(what string) *string {
	if r.null() {
		return nil
	}
	text := r.word(what)
	return &text
}

// cautions reads the numbers of a run's cautions; a list of none is not nil.
func (r *reader) cautions() []int {
	all := []int{}
	r.list("a list of cautions", mostCautions, func() { all = append(all, r.whole("a caution's number")) })
	return all
}

// mark reads a mark, or nil for null, and what is brought to it. Its edge is the
// bit's trailing or leading one.
func (r *reader) mark(edge string, guide *string) *deck.Mark {
	if r.null() {
		return nil
	}
	var m deck.Mark
	r.object("a mark", map[string]field{
		"guide":                         {read: func() { *guide = r.word("line, lead or tail") }, optional: true},
		"line":                          r.lengthInto(&m.Line),
		"lead_past_" + edge + "_edge":   r.lengthInto(&m.LeadPastEdge),
		"lead_past_centre":              r.lengthInto(&m.LeadPastCentre),
		"tail_before_" + edge + "_edge": r.lengthInto(&m.TailBeforeEdge),
		"tail_before_centre":            r.lengthInto(&m.TailBeforeCentre),
	})
	return &m
}

func (r *reader) side() joinery.Side {
	at := r.here()
	text := r.word("a side")
	side, ok := joinery.ParseSide(text)
	if !ok {
		r.fault(at, fmt.Sprintf("%q is not a side", shorten(text)), "a side is left, right, front, back, bottom or top")
	}
	return side
}

// oneOf reads one of two words and returns what it stands for.
func oneOf[T fmt.Stringer](r *reader, a, b T) T {
	at := r.here()
	text := r.word("a word")
	switch text {
	case a.String():
		return a
	case b.String():
		return b
	}
	r.fault(at, fmt.Sprintf("%q is neither %s nor %s", shorten(text), a, b), "write one of the two")
	return a
}

func (r *reader) lengthInto(to *measure.Length) field {
	return field{read: func() { *to = r.length() }}
}

// mostArea is more wood in mm2 than any pass takes.
const mostArea = 100_000

func (r *reader) areas() []float64 {
	var all []float64
	r.list("a list of areas", mostHeights, func() {
		area, _ := r.number("an area in mm2")
		all = append(all, area)
	})
	return all
}

func (r *reader) lengths() []measure.Length {
	var all []measure.Length
	r.list("a list of heights", mostHeights, func() { all = append(all, r.length()) })
	return all
}

// length reads a length, whose text must say what its millimetres say.
func (r *reader) length() measure.Length {
	at := r.here()
	var mm float64
	var text string
	faults := len(r.faults)
	r.object("a length", map[string]field{
		"mm":   {read: func() { mm, _ = r.number("length in mm") }},
		"text": {read: func() { text = r.word("a length's text") }},
	})
	l := measure.FromMillimetres(mm)
	switch {
	case len(r.faults) > faults || r.ended:
	case l.Abs() > measure.MaxLength:
		r.fault(at, fmt.Sprintf("%v mm is longer than 100 m", mm), "check the number")
	case !saysSo(text, l, r.scale):
		r.fault(at, fmt.Sprintf("the text says %q, but %s mm is %q", shorten(text), l.MM(), r.scale.Format(l)), "change one of the two")
	}
	return l
}

// saysSo reports whether a text is the reading of a length, by the shop's rule
// or by another that is in use.
func saysSo(text string, l measure.Length, scale measure.Scale) bool {
	if text == scale.Format(l) {
		return true
	}
	return slices.ContainsFunc(otherRules, func(s measure.Scale) bool { return text == s.Format(l) })
}

// otherRules are the rules a deck may have been printed by.
var otherRules = []measure.Scale{
	{Unit: measure.Inches, Division: measure.Inch / 16},
	{Unit: measure.Inches, Division: measure.Inch / 32},
	{Unit: measure.Inches, Division: measure.Inch / 64},
	{Unit: measure.Inches, Division: measure.Inch / 128},
	{Unit: measure.Inches, Division: measure.Inch / 1000},
	{Unit: measure.Millimetres, Division: measure.Millimetre},
	{Unit: measure.Millimetres, Division: measure.Millimetre / 2},
	{Unit: measure.Millimetres, Division: measure.Millimetre / 10},
	{Unit: measure.Millimetres, Division: measure.Millimetre / 20},
}
