package planfile

import (
	"fmt"
	"strconv"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/pattern"
)

// mostRepeats is more than any piece has slats.
const mostRepeats = 500

var betweenText = pattern.New(`(?i)^(?:between\s+)?(.+?)\s+(?:and|to)\s+(.+?)\s+from\s+(?:the\s+)?(\S+)$`)

// repeat is where the near walls of cuts that repeat lie, from one side.
type repeat struct {
	from    joinery.Side
	at      []joinery.Length
	rounded bool // some lie on the nearest division of the scale only
}

// readRepeat reads how often a cut repeats and where; nil with a fault.
func (r *planReader) readRepeat(f *fields) *repeat {
	if !f.has("repeat") {
		return nil
	}
	n := f.value("repeat")
	if !r.mapping(n, "a repeat says how many times and where", "write "+example("repeat")) {
		return nil
	}
	before := len(r.faults)
	g := r.fields(n, "repeat", repeatKeys)
	g.need("times")
	times := r.times(g)
	switch {
	case g.written("between") && (g.written("first") || g.written("every")):
		r.fault(n, "write between for even spacing, or first and every", "between says where all of them lie, and first or every says it again")
	case g.written("between"):
		return r.evenly(g, times, before)
	case !g.written("first") || !g.written("every"):
		if len(r.faults) == before {
			r.fault(n, "write first: 3 from left, every: 2 1/2; or between: 3 and 31 from left", "the repeat does not say where all of them lie")
		}
	default:
		line := r.distance(g, "first")
		every := g.positive("every")
		if len(r.faults) > before {
			return nil
		}
		rep := &repeat{from: line.From}
		for i := range times {
			rep.at = append(rep.at, line.Distance+joinery.Length(i)*every)
		}
		return rep
	}
	return nil
}

// times reads how often.
func (r *planReader) times(f *fields) int {
	text, n, ok := f.scalar("times")
	if !ok {
		return 0
	}
	times, err := strconv.Atoi(text)
	switch {
	case err != nil || times < 1:
		r.fault(n, "write how many there are, such as times: 12", "%s is not a whole number above 0", quoted(text))
	case times > mostRepeats:
		r.fault(n, fmt.Sprintf("write %d at the most", mostRepeats), "%s times are too many for one piece", short(text))
	default:
		return times
	}
	return 0
}

// distance reads a distance, which may be 0, from a side.
func (r *planReader) distance(f *fields, key string) (line joint.Line) {
	text, n, ok := f.scalar(key)
	if !ok {
		return line
	}
	written, side, ok := fromSide(text)
	if !ok {
		r.fault(n, "write "+key+": 3 from left", "%s is no distance from a side", quoted(text))
		return line
	}
	line.Distance, _ = r.length(n, written)
	line.From = r.side(n, side)
	return line
}

// evenly spaces the cuts between the first and the last.
func (r *planReader) evenly(f *fields, times, before int) *repeat {
	text, n, ok := f.scalar("between")
	if !ok {
		return nil
	}
	m := betweenText.FindStringSubmatch(text)
	if m == nil {
		r.fault(n, "write "+example("between"), "%s does not say where the first and the last lie", quoted(text))
		return nil
	}
	first, _ := r.length(n, m[1])
	last, _ := r.length(n, m[2])
	rep := &repeat{from: r.side(n, m[3])}
	switch {
	case len(r.faults) > before:
		return nil
	case times < 2:
		r.fault(n, "write first: "+m[1]+" from "+m[3]+", or times: 2", "one cut cannot lie at two places")
		return nil
	case first >= last:
		r.fault(n, fmt.Sprintf("write the nearer first: between: %s and %s from %s", m[2], m[1], m[3]), "the last lies no further from the %s than the first", m[3])
		return nil
	}
	for i := range joinery.Length(times) {
		exact := (last - first) * i
		at := first + exact/joinery.Length(times-1)
		if i > 0 && int(i) < times-1 && (exact%joinery.Length(times-1) != 0 || !r.scale.On(at)) {
			at, rep.rounded = r.scale.Round(at), true
		}
		rep.at = append(rep.at, at)
	}
	return rep
}

// note adds to a note that the places were rounded.
func (p *repeat) note(note string, s joinery.Scale) string {
	if !p.rounded {
		return note
	}
	told := "evenly spaced, each to the nearest " + s.Say(s.Division)
	if note != "" {
		told = note + "; " + told
	}
	return told
}
