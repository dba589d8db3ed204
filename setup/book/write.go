package book

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// The keys of an entry and of a run, in the order they are written.
const (
	keyCode     = "code"
	keyDate     = "kept"
	keyFrom     = "from"
	keyNote     = "note"
	keyScale    = "scale"
	keyBit      = "bit"
	keyKind     = "kind"
	keyDiameter = "diameter"
	keyMeasured = "measured"
	keyCutting  = "cutting"
	keyShank    = "shank"
	keyPlunges  = "plunges"
	keySpeed    = "speed"
	keyPilot    = "pilot"
	keyRadius   = "radius"
	keyOutline  = "outline"
	keyFence    = "fence to near edge"
	keyStood    = "fence stood"
	keyHeights  = "heights"
	keyHigh     = "full height stood"
	keyUsable   = "usable fence"
	keyStops    = "stops"
	keyCarriage = "carriage"
	keyPushed   = "pushed by"
	keyRouter   = "router speed"
	keyMinutes  = "minutes"
	keyRun      = "run"

	keyCut      = "cut"
	keyPart     = "part"
	keyCount    = "count"
	keyWood     = "wood"
	keySize     = "size"
	keyGrain    = "grain"
	keyMirror   = "mirror of"
	keyDown     = "down"
	keyToFence  = "to fence"
	keyLeads    = "leads"
	keySetback  = "setback"
	keyWidth    = "width"
	keyDepth    = "depth"
	keyRecess   = "recess"
	keyHole     = "start hole"
	keyRaised   = "raised into it"
	keyStart    = "start"
	keyStop     = "stop"
	keyBegan    = "start stood"
	keyEnded    = "stop stood"
	keyPosition = "position"
	keyBefore   = "fence before"
	keyAtLast   = "fence at last"
	keyTurned   = "turned"
	keyClimb    = "climb"
	keyEnds     = "ends"
	keyCap      = "cap"
	keyScrew    = "screw from the middle"
)

var (
	entryKeys = []string{keyCode, keyDate, keyFrom, keyNote, keyScale, keyBit, keyKind, keyDiameter, keyMeasured, keyCutting,
		keyShank, keyPlunges, keySpeed, keyPilot, keyRadius, keyOutline, keyFence, keyStood, keyHeights, keyHigh, keyUsable, keyStops, keyPushed, keyRouter, keyCarriage, keyMinutes, keyRun}
	runKeys = []string{keyCut, keyKind, keyPart, keyCount, keyWood, keySize, keyGrain, keyMirror, keyDown, keyToFence, keyLeads,
		keySetback, keyWidth, keyDepth, keyRecess, keyHole, keyRaised, keyStart, keyBegan, keyStop, keyEnded, keyScrew, keyHeights,
		keyPosition, keyBefore, keyAtLast, keyTurned, keyClimb, keyEnds, keyCap, keyNote}
	// A # in free text is no comment.
	freeText = []string{"setup", keyFrom, keyNote, keyBit, keyRun, keyCut, keyPart, keyWood, keyMirror, keyCap}
)

// pair is a field to be written.
type pair struct{ key, value string }

// pairs are the fields of an entry or a run; those without a value are left out.
type pairs []pair

func (ps *pairs) add(key, value string) {
	if value != "" {
		*ps = append(*ps, pair{key, value})
	}
}

// speller writes lengths as the entry's shop reads them.
type speller struct{ measure.Scale }

// some spells a length that may be unknown, which is 0.
func (s speller) some(l measure.Length) string {
	if l == 0 {
		return ""
	}
	return s.Spell(l)
}

func (s speller) stood(l *measure.Length) string {
	if l == nil {
		return ""
	}
	return s.Spell(*l)
}

func (s speller) list(ls []measure.Length) string {
	var words []string
	for _, l := range ls {
		words = append(words, s.Spell(l))
	}
	return strings.Join(words, ", ")
}

// fields returns the fields of the entry itself.
func (e *Entry) fields() pairs {
	var ps pairs
	s, bit := speller{e.Shop.Scale}, e.Setup.Bit
	ps.add(keyCode, e.Code)
	ps.add(keyDate, e.Date)
	ps.add(keyFrom, e.From)
	for _, note := range e.Notes {
		ps.add(keyNote, note)
	}
	ps.add(keyScale, s.Spell(s.Division))
	ps.add(keyBit, clean(bit.Name))
	ps.add(keyKind, bit.Kind.String())
	ps.add(keyDiameter, s.some(bit.Diameter))
	ps.add(keyMeasured, s.some(bit.Measured))
	ps.add(keyCutting, s.some(bit.Cutting))
	ps.add(keyShank, s.some(bit.Shank))
	ps.add(keyPlunges, answers[bit.Plunges])
	if bit.Speed > 0 {
		ps.add(keySpeed, strconv.Itoa(bit.Speed))
	}
	if o := bit.Outline; o != nil {
		ps.add(keyPilot, s.some(bit.Pilot))
		ps.add(keyRadius, s.some(o.Radius))
		ps.add(keyOutline, outlineText(o, s))
	}
	ps.add(keyFence, s.Spell(e.Setup.Fence.NearEdge))
	ps.add(keyStood, s.stood(e.Stood.Fence))
	ps.add(keyHeights, s.list(e.Setup.Heights))
	ps.add(keyHigh, s.stood(e.Stood.Height))
	if f := e.Shop.Fence; f.Infeed > 0 || f.Outfeed > 0 {
		ps.add(keyUsable, s.Spell(f.Infeed)+" infeed, "+s.Spell(f.Outfeed)+" outfeed")
	}
	if e.Shop.Stops == joinery.Blocks {
		ps.add(keyStops, e.Shop.Stops.String())
	}
	if push := e.Shop.Cross.With; push != joinery.Block {
		ps.add(keyPushed, push.String())
	}
	if e.Shop.Speed > 0 {
		ps.add(keyRouter, strconv.Itoa(e.Shop.Speed))
	}
	ps.add(keyCarriage, s.some(e.Setup.Carriage))
	ps.add(keyMinutes, minutesText(e.Shop.Minutes))
	return ps
}

var answers = [...]string{joinery.NotSaid: "", joinery.Yes: "yes", joinery.No: "no"}

// runFields returns the fields of the entry's run i.
func (e *Entry) runFields(i int) pairs {
	var ps pairs
	r, s := &e.Setup.Runs[i], speller{e.Shop.Scale}
	ps.add(keyCut, clean(r.Cut.Name))
	ps.add(keyKind, r.Cut.Kind.Common())
	ps.add(keyPart, clean(r.Channel.Part))
	ps.add(keyCount, strconv.Itoa(r.Piece.Count))
	ps.add(keyWood, clean(r.Piece.Wood.Name))
	ps.add(keySize, sizeText(r.Piece.Size, s))
	ps.add(keyGrain, r.Piece.Grain.String())
	ps.add(keyMirror, clean(r.Piece.MirrorOf))
	ps.add(keyDown, r.Step.Down.String())
	ps.add(keyToFence, r.Step.Fence.String())
	ps.add(keyLeads, r.Leads.String())
	ps.add(keySetback, s.Spell(r.Channel.Setback)+" from "+r.Channel.Near.String())
	section := r.Channel.Section
	if !section.Shaped() {
		ps.add(keyWidth, s.Spell(r.Channel.Width))
	}
	ps.add(keyDepth, s.Spell(r.Channel.Depth))
	ps.add(keyRecess, recessText(r.Channel.Recess, s))
	if r.Hole != nil {
		ps.add(keyHole, "yes")
	}
	if r.Raised {
		ps.add(keyRaised, "yes")
	}
	if r.Start != nil {
		ps.add(keyStart, s.Spell(r.A))
	}
	ps.add(keyBegan, s.stood(e.Marks[i].Start))
	if r.Stop != nil {
		ps.add(keyStop, s.Spell(r.B))
	}
	ps.add(keyEnded, s.stood(e.Marks[i].Stop))
	if r.Screw != nil {
		ps.add(keyScrew, s.Spell(r.Screw.FromMiddle))
	}
	ps.add(keyHeights, s.list(r.Heights))
	if r.Step.Of > 1 {
		ps.add(keyPosition, fmt.Sprintf("%d of %d", r.Step.Position, r.Step.Of))
	}
	if r.Step.Position > 1 && section.Shaped() {
		ps.add(keyBefore, s.Spell(r.Step.Before))
	}
	if r.Step.Position < r.Step.Of && section.Shaped() {
		ps.add(keyAtLast, s.Spell(r.Step.NearEdge+deck.SectionAt(r.Step, r.Channel).Forward-section.Forward))
	}
	if r.Step.Turned {
		ps.add(keyTurned, "yes")
	}
	if r.Climb > 0 {
		ps.add(keyClimb, strconv.Itoa(r.Climb+1))
	}
	if r.Cut.Square {
		ps.add(keyEnds, "square")
	}
	ps.add(keyCap, capText(r.Cap, section.Shaped(), s))
	for line := range strings.Lines(r.Cut.Note) {
		ps.add(keyNote, clean(line))
	}
	return ps
}

func sizeText(size joinery.Size, s speller) string {
	var words []string
	for _, d := range joinery.Dimensions {
		words = append(words, s.Spell(size[d])+" "+d.String())
	}
	return strings.Join(words, ", ")
}

// lines writes the entry as a new block.
func (e *Entry) lines() []string {
	lines := []string{"setup: " + e.Name}
	for _, p := range e.fields() {
		lines = append(lines, "  "+p.key+": "+p.value)
	}
	for i := range e.Setup.Runs {
		lines = append(lines, "  "+keyRun+": "+clean(e.Setup.Runs[i].Piece.Name))
		for _, p := range e.runFields(i) {
			lines = append(lines, "    "+p.key+": "+p.value)
		}
	}
	return lines
}

// free reports whether a key's value is free text.
func free(key string) bool { return slices.Contains(freeText, key) }
