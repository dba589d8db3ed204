package planfile

import (
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/pattern"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"

	"go.yaml.in/yaml/v4"
)

var (
	lineText   = pattern.New(`(?i)^(.+?)\s+(?:from|at)\s+(?:the\s+)?(\S+)$`)
	seasonText = pattern.New(`(?i)^(?:the\s+)?seasons?$`)
)

// readJointWords reads the words of a joint's own kind.
func (r *planReader) readJointWords(j *jointWish) {
	f, w := j.f, &j.words
	w.Thickness, w.Length, w.Depth = f.Positive("thickness"), f.Positive("length"), f.Positive("depth")
	w.Deeper, w.Play, w.Groove = f.Positive("deeper"), f.Positive("play"), f.Positive("groove")
	w.Through = f.Answer("through") == joinery.Yes
	w.Shoulders = r.readShoulders(j)
	w.Haunch = r.readLine(f, "haunch")
	w.Tongue = r.readLine(f, "tongue")
	w.Glue = f.Side("glue")
	r.readStops(j)
	if text, n, ok := f.Scalar("room"); ok {
		w.Seasons = seasonText.MatchString(text)
		switch {
		case w.Seasons:
		case strings.ContainsAny(text, "0123456789"):
			w.Room, _ = r.Length(n, text)
		default:
			r.Fault(n, "write "+f.Example("room"), "%s is no room", yamlfile.Quoted(text))
		}
	}
	switch f.Word("ends", "way to leave ends", keys.EndsWords) {
	case 0:
		w.Rounded = true
	case 1:
		w.Square = true
	}
}

// readShoulders reads how far each side of a tenon stands back.
func (r *planReader) readShoulders(j *jointWish) []joinery.Cheek {
	if !j.f.Has("shoulders") {
		return nil
	}
	n := j.f.Value("shoulders")
	if !r.Mapping(n, "each shoulder has its own depth", "write "+keys.Example("shoulders")) {
		return nil
	}
	sides := r.Fields(n, "shoulders", keys.SideNames())
	var shoulders []joinery.Cheek
	for _, s := range joinery.Sides {
		if sides.Written(s.String()) {
			j.nodes["shoulders "+s.String()] = sides.Value(s.String())
			shoulders = append(shoulders, joinery.Cheek{Side: s, Depth: sides.Length(s.String())})
		}
	}
	return shoulders
}

// readLine reads a length and a side: "3/8 at top", "1/4 from front".
func (r *planReader) readLine(f *yamlfile.Fields, key string) joint.Line {
	text, n, ok := f.Scalar(key)
	if !ok {
		return joint.Line{}
	}
	return r.lineOf(n, key, text)
}

// lineOf reads a part of a node's text as a length and a side.
func (r *planReader) lineOf(n *yaml.Node, key, text string) joint.Line {
	m := lineText.FindStringSubmatch(text)
	if m == nil {
		problem, meant := r.brokenLine(key, text)
		r.Fault(n, "write "+meant, "%s", problem)
		return joint.Line{}
	}
	length, ok := r.Length(n, m[1])
	side := r.Side(n, m[2])
	if ok && length == 0 && key != "stopped" {
		r.Fault(n, "write a length above 0, such as "+keys.Example(key), "%s is 0", key)
	}
	return joint.Line{Distance: length, From: side}
}

// brokenLine says what a text lacks to be a length and a side, and what was likely meant,
// with those of the two that it has.
func (r *planReader) brokenLine(key, text string) (problem, meant string) {
	example := keys.Example(key)
	length, end, _ := strings.Cut(strings.TrimPrefix(example, key+": "), " ")
	word, side, _ := strings.Cut(end, " ")
	var others []string
	named := ""
	for _, w := range strings.Fields(text) {
		switch w := strings.ToLower(w); {
		case slices.Contains(keys.SideNames(), w) && named == "":
			named = w
		case w != "from" && w != "at" && w != "the":
			others = append(others, w)
		}
	}
	rest := strings.Join(others, " ")
	switch isLength := r.IsLength(rest); {
	case isLength && named == "":
		return key + " does not say at which side", key + ": " + rest + " " + word + " " + side
	case isLength:
		return yamlfile.Quoted(text) + " is no length from a side", key + ": " + rest + " " + word + " " + named
	case named != "" && rest == "":
		return key + " does not say how far from the " + named, key + ": " + length + " " + word + " " + named
	}
	return yamlfile.Quoted(text) + " is no length from a side", example
}

// readStops reads where a dado or a groove is stopped: "3/8 from front", several
// of them, or for a groove one length for both its ends.
func (r *planReader) readStops(j *jointWish) {
	for _, n := range j.f.OneOrMore("stopped") {
		for _, text := range strings.Split(n.Value, ",") {
			text = strings.TrimSpace(text)
			if j.kind.Framed && r.IsLength(text) {
				j.words.Short, _ = r.Length(n, text)
				continue
			}
			line := r.lineOf(n, "stopped", text)
			for _, other := range j.words.Stopped {
				if other.From == line.From && line.From != joinery.NoSide {
					r.Fault(n, "keep one of the two", "stopped names the %s twice", line.From)
				}
			}
			j.words.Stopped = append(j.words.Stopped, line)
		}
	}
}
