package planfile

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/pattern"

	"go.yaml.in/yaml/v4"
)

var (
	lineText   = pattern.New(`(?i)^(.+?)\s+(?:from|at)\s+(?:the\s+)?(\S+)$`)
	seasonText = pattern.New(`(?i)^(?:the\s+)?seasons?$`)
)

// readJointWords reads the words of a joint's own kind.
func (r *planReader) readJointWords(j *jointWish) {
	f, w := j.f, &j.words
	w.Thickness, w.Length, w.Depth = f.positive("thickness"), f.positive("length"), f.positive("depth")
	w.Deeper, w.Play, w.Groove = f.positive("deeper"), f.positive("play"), f.positive("groove")
	w.Through = f.answer("through") == joinery.Yes
	w.Shoulders = r.readShoulders(j)
	w.Haunch = r.readLine(f, "haunch")
	w.Tongue = r.readLine(f, "tongue")
	w.Glue = f.side("glue")
	r.readStops(j)
	if text, n, ok := f.scalar("room"); ok {
		w.Seasons = seasonText.MatchString(text)
		switch {
		case w.Seasons:
		case strings.ContainsAny(text, "0123456789"):
			w.Room, _ = r.length(n, text)
		default:
			r.fault(n, "write "+f.example("room"), "%s is no room", quoted(text))
		}
	}
	switch f.word("ends", "way to leave ends", endsWords) {
	case 0:
		w.Rounded = true
	case 1:
		w.Square = true
	}
}

// readShoulders reads how far each side of a tenon stands back.
func (r *planReader) readShoulders(j *jointWish) []joinery.Cheek {
	if !j.f.has("shoulders") {
		return nil
	}
	n := j.f.value("shoulders")
	if !r.mapping(n, "each shoulder has its own depth", "write "+example("shoulders")) {
		return nil
	}
	sides := r.fields(n, "shoulders", sideNames())
	var shoulders []joinery.Cheek
	for _, s := range joinery.Sides {
		if sides.written(s.String()) {
			j.nodes["shoulders "+s.String()] = sides.value(s.String())
			shoulders = append(shoulders, joinery.Cheek{Side: s, Depth: sides.length(s.String())})
		}
	}
	return shoulders
}

// readLine reads a length and a side: "3/8 at top", "1/4 from front".
func (r *planReader) readLine(f *fields, key string) joint.Line {
	text, n, ok := f.scalar(key)
	if !ok {
		return joint.Line{}
	}
	return r.lineOf(n, key, text)
}

// lineOf reads a part of a node's text as a length and a side.
func (r *planReader) lineOf(n *yaml.Node, key, text string) joint.Line {
	m := lineText.FindStringSubmatch(text)
	if m == nil {
		problem := quoted(text) + " is no length from a side"
		if r.isLength(text) {
			problem = key + " does not say at which side"
		}
		r.fault(n, "write "+example(key), "%s", problem)
		return joint.Line{}
	}
	length, ok := r.length(n, m[1])
	side := r.side(n, m[2])
	if ok && length == 0 && key != "stopped" {
		r.fault(n, "write a length above 0, such as "+example(key), "%s is 0", key)
	}
	return joint.Line{Distance: length, From: side}
}

// readStops reads where a dado or a groove is stopped: "3/8 from front", several
// of them, or for a groove one length for both its ends.
func (r *planReader) readStops(j *jointWish) {
	for _, n := range j.f.oneOrMore("stopped") {
		for _, text := range strings.Split(n.Value, ",") {
			text = strings.TrimSpace(text)
			if j.kind.Framed && r.isLength(text) {
				j.words.Short, _ = r.length(n, text)
				continue
			}
			line := r.lineOf(n, "stopped", text)
			for _, other := range j.words.Stopped {
				if other.From == line.From && line.From != joinery.NoSide {
					r.fault(n, "keep one of the two", "stopped names the %s twice", line.From)
				}
			}
			j.words.Stopped = append(j.words.Stopped, line)
		}
	}
}
