package desk

import (
	"cmp"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planform"
)

// fieldView is a field as it is shown.
type fieldView struct {
	planform.Field
	ID     string
	Offers []string // names and words that may stand there, besides others
	Select bool     // one of the choices
	Boxes  []boxView
	Spots  []spotView
	Pieces []string // to choose from in a spot
	// Distance is a number and what it is measured from, instead of one value.
	Distance *distanceView
	Wrong    string
	Note     string // what follows from what is filled in
}

// boxView is one of several words, each of which may be chosen.
type boxView struct {
	Word    string
	Checked bool
}

// spotView is a piece and a side of it.
type spotView struct{ Piece, Side string }

// groupView are fields under one heading, or one by itself.
type groupView struct {
	Legend string
	Fields []fieldView
}

// seldom are keys that most pieces, cuts, joints and shops do without.
var seldom = map[string][]string{
	planform.Plan:  {"climate"},
	planform.Piece: {"grain", "sides"},
	planform.Cut:   {"fence", "ends", "after", "note", "mates", "by", "bit", "start", "repeat"},
	planform.Joint: {"deeper", "haunch", "play", "room", "glue", "tongue", "bit", "fence", "by", "start", "after", "note", "repeat", "ends", "through"},
	planform.Shop:  {"unit", "scale", "stops", "minutes", "share", "speed", "clearances", "rules", "base", "crossing", "passes", "raise", "opening", "bite"},
	planform.Bit:   {"measured", "cap", "speed", "radius", "pilot", "outline"},
	planform.Wood:  {"CR", "CT", "share", "moves"},
}

// legends are the headings of keys that have others inside.
var legends = map[string]string{
	"size": "Finished size", "sides": "Pencilled on its sides", "mirror": "As the mirror image of another", "cheeks": "Taken off each side",
	"place": "How the one that goes in lies to the other", "shoulders": "Shoulders", "repeat": "Again and again",
	"climate": "Where the work will live", "fence": "The fence", "minutes": "Minutes that it takes you", "clearances": "Room left in joints",
	"rules": "When you are warned", "shrinkage": "How it shrinks", "crossing": "Cuts across an end",
}

// groups are the fields of a form: those that are always shown, and those that few
// need.
func groups(f planform.Form, halves map[string]distance, offers map[string][]string, wrong map[string]string) (main, more []groupView) {
	last, lies := "", false
	for i := range f.Fields {
		outer, _, dotted := strings.Cut(f.Fields[i].Key, ".")
		if f.Kind == planform.Joint && outer == place {
			if !lies {
				main = append(main, groupView{legends[place], lyingRows(f, halves, wrong)})
			}
			last, lies = "", true
			continue
		}
		field := viewOfField(f, &f.Fields[i], offers, halves)
		field.Wrong = cmp.Or(field.Wrong, wrong[field.Key])
		to := &main
		if slices.Contains(seldom[f.Kind], outer) && !field.Needed {
			to = &more
		}
		switch {
		case dotted && outer == last && len(*to) > 0:
			n := len(*to) - 1
			(*to)[n].Fields = append((*to)[n].Fields, field)
		case dotted:
			*to = append(*to, groupView{legends[outer], []fieldView{field}})
		default:
			*to = append(*to, groupView{"", []fieldView{field}})
		}
		last = ""
		if dotted {
			last = outer
		}
	}
	return main, more
}

// filled reports whether a group holds anything.
func (g groupView) filled() bool {
	return slices.ContainsFunc(g.Fields, func(f fieldView) bool { return f.Value != "" || f.Wrong != "" })
}

// wrong reports whether anything is wrong in a group.
func (g groupView) wrong() bool {
	return slices.ContainsFunc(g.Fields, func(f fieldView) bool { return f.Wrong != "" })
}

func viewOfField(form planform.Form, f *planform.Field, offers map[string][]string, halves map[string]distance) fieldView {
	v := fieldView{Field: *f, ID: "field-" + strings.NewReplacer(".", "-", " ", "-").Replace(f.Key)}
	if v.Hint == v.Default {
		v.Hint = ""
	}
	names := offers[f.From]
	if f.From == keys.Cuts {
		names = offers[keys.Cuts+" "+form.Under]
	}
	switch {
	case f.Shape == keys.FromSide:
		m, ok := fromSide(f.Value)
		if half, is := halves[f.Key]; is {
			m, ok = half, true
		}
		if ok {
			v.Distance, v.Wrong = fromSideView(form, f, m), m.asks()
		}
	case f.Shape == keys.Spots:
		if spots := spotsOf(f.Value); composed(spots) == f.Value {
			v.Spots, v.Pieces = append(spots, spotView{}), names
		}
	case isBoxes(f):
		for _, word := range f.Choices {
			v.Boxes = append(v.Boxes, boxView{word, slices.Contains(listOf(f.Value), word)})
		}
	case len(f.Choices) > 0 && !f.Open:
		v.Select = true
		if f.Value != "" && !slices.Contains(f.Choices, f.Value) {
			v.Choices = append(slices.Clone(f.Choices), f.Value) // a slip is shown as it is written
		}
	default:
		v.Offers = append(slices.Clone(f.Choices), names...)
	}
	return v
}

// isBoxes reports whether several words of a few may be chosen.
func isBoxes(f *planform.Field) bool {
	if f.Shape != keys.Names || len(f.Choices) == 0 || f.Open {
		return false
	}
	return !slices.ContainsFunc(listOf(f.Value), func(word string) bool { return !slices.Contains(f.Choices, word) })
}

func listOf(value string) []string {
	var words []string
	for word := range strings.SplitSeq(value, ",") {
		if word = strings.TrimSpace(word); word != "" {
			words = append(words, word)
		}
	}
	return words
}

// filledIn is what a page gives for a field; false where it does not.
func filledIn(f *planform.Field, given map[string][]string) (string, bool) {
	if pieces := given[f.Key+"/piece"]; pieces != nil {
		sides := given[f.Key+"/side"]
		var spots []spotView
		for i := range min(len(pieces), len(sides)) {
			if pieces[i] != "" || sides[i] != "" {
				spots = append(spots, spotView{pieces[i], sides[i]})
			}
		}
		return composed(spots), true
	}
	if m, ok := distanceIn(given, f.Key); ok {
		if now, written := fromSide(f.Value); written && now == m {
			return f.Value, true // as it is written
		}
		return m.asFromSide(), true
	}
	values, ok := given[f.Key]
	if !ok {
		return "", false
	}
	if len(values) > 1 { // boxes, behind an empty value that is there without them
		return strings.Join(slices.DeleteFunc(values, func(v string) bool { return v == "" }), ", "), true
	}
	return values[0], true
}

// spotsOf takes "PIECE / SIDE, SIDE, PIECE / SIDE" apart, as far as it is written so.
func spotsOf(value string) []spotView {
	var spots []spotView
	piece := ""
	for _, item := range listOf(value) {
		if _, is := joinery.ParseSide(item); is && piece != "" {
			spots = append(spots, spotView{piece, item})
			continue
		}
		name, side, _ := strings.Cut(item, " / ")
		piece = name
		spots = append(spots, spotView{name, side})
	}
	return spots
}

// composed writes spots as a plan has them.
func composed(spots []spotView) string {
	var b strings.Builder
	last := ""
	for i, s := range spots {
		if i > 0 {
			b.WriteString(", ")
		}
		if s.Piece != last || s.Side == "" {
			b.WriteString(s.Piece)
			if s.Side != "" {
				b.WriteString(" / ")
			}
		}
		b.WriteString(s.Side)
		last = s.Piece
	}
	return b.String()
}
