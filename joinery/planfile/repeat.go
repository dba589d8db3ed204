package planfile

import (
	"fmt"
	"strconv"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
)

// mostRepeats is more than any piece has slats.
const mostRepeats = 500

var betweenText = pattern.New(`(?i)^(?:between\s+)?(.+?)\s+(?:and|to)\s+(.+?)\s+from\s+(?:the\s+)?(\S+)$`)

// repeat is where the near walls of cuts that repeat lie, from one side.
type repeat struct {
	from    joinery.Side
	at      []measure.Length
	rounded bool // some lie on the nearest division of the scale only
}

// readRepeat reads how often a cut repeats and where; nil with a fault.
func (r *planReader) readRepeat(f *yamlfile.Fields) *repeat {
	if !f.Has("repeat") {
		return nil
	}
	n := f.Value("repeat")
	if !r.Mapping(n, "a repeat says how many times and where", "write "+keys.Example("repeat")) {
		return nil
	}
	before := len(r.Faults)
	g := r.Fields(n, "repeat", keys.Repeat)
	g.Need("times")
	times := r.times(g)
	switch {
	case g.Written("between") && (g.Written("first") || g.Written("every")):
		r.Fault(n, "write between for even spacing, or first and every", "between says where all of them lie, and first or every says it again")
	case g.Written("between"):
		return r.evenly(g, times, before)
	case !g.Written("first") || !g.Written("every"):
		if len(r.Faults) == before {
			r.Fault(n, "write first: 3 from left, every: 2 1/2; or between: 3 and 31 from left", "the repeat does not say where all of them lie")
		}
	default:
		line := r.distance(g, "first")
		every := g.Positive("every")
		if len(r.Faults) > before {
			return nil
		}
		rep := &repeat{from: line.From}
		for i := range times {
			rep.at = append(rep.at, line.Distance+measure.Length(i)*every)
		}
		return rep
	}
	return nil
}

// times reads how often.
func (r *planReader) times(f *yamlfile.Fields) int {
	text, n, ok := f.Scalar("times")
	if !ok {
		return 0
	}
	times, err := strconv.Atoi(text)
	switch {
	case err != nil || times < 1:
		r.Fault(n, "write how many there are, such as times: 12", "%s is not a whole number above 0", yamlfile.Quoted(text))
	case times > mostRepeats:
		r.Fault(n, fmt.Sprintf("write %d at the most", mostRepeats), "%s times are too many for one piece", yamlfile.Short(text))
	default:
		return times
	}
	return 0
}

// distance reads a distance, which may be 0, from a side.
func (r *planReader) distance(f *yamlfile.Fields, key string) (line joint.Line) {
	text, n, ok := f.Scalar(key)
	if !ok {
		return line
	}
	written, side, ok := yamlfile.FromSide(text)
	if !ok {
		r.Fault(n, "write "+key+": 3 from left", "%s is no distance from a side", yamlfile.Quoted(text))
		return line
	}
	line.Distance, _ = r.Length(n, written)
	line.From = r.Side(n, side)
	return line
}

// evenly spaces the cuts between the first and the last.
func (r *planReader) evenly(f *yamlfile.Fields, times, before int) *repeat {
	text, n, ok := f.Scalar("between")
	if !ok {
		return nil
	}
	m := betweenText.FindStringSubmatch(text)
	if m == nil {
		r.Fault(n, "write "+keys.Example("between"), "%s does not say where the first and the last lie", yamlfile.Quoted(text))
		return nil
	}
	first, _ := r.Length(n, m[1])
	last, _ := r.Length(n, m[2])
	rep := &repeat{from: r.Side(n, m[3])}
	switch {
	case len(r.Faults) > before:
		return nil
	case times < 2:
		r.Fault(n, "write first: "+m[1]+" from "+m[3]+", or times: 2", "one cut cannot lie at two places")
		return nil
	case first >= last:
		r.Fault(n, fmt.Sprintf("write the nearer first: between: %s and %s from %s", m[2], m[1], m[3]), "the last lies no further from the %s than the first", m[3])
		return nil
	}
	for i := range measure.Length(times) {
		exact := (last - first) * i
		at := first + exact/measure.Length(times-1)
		if i > 0 && int(i) < times-1 && (exact%measure.Length(times-1) != 0 || !r.Scale.On(at)) {
			at, rep.rounded = r.Scale.Round(at), true
		}
		rep.at = append(rep.at, at)
	}
	return rep
}

// note adds to a note that the places were rounded.
func (p *repeat) note(note string, s measure.Scale) string {
	if !p.rounded {
		return note
	}
	told := "evenly spaced, each to the nearest " + s.Say(s.Division)
	if note != "" {
		told = note + "; " + told
	}
	return told
}
