package desk

import (
	"cmp"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/planform"
)

// How the pieces of a joint lie to one another is asked in one row for each direction,
// not by the sides that the plan's place names.

const place = "place"

// What a row may measure from: a side and one of these.
const (
	flush  = "flush"
	inward = "in"
	proud  = "proud"
)

// directions are the rows, and how they are headed.
var directions = []struct {
	joinery.Dimension
	says string
}{
	{joinery.LeftRight, "Left to right"}, {joinery.FrontBack, "Front to back"}, {joinery.TopBottom, "Top to bottom"},
}

// sidesOf are the two sides of a direction as they are named aloud, the top before the
// bottom.
func sidesOf(d joinery.Dimension) [2]joinery.Side {
	if d == joinery.TopBottom {
		return [2]joinery.Side{d.High(), d.Low()}
	}
	return [2]joinery.Side{d.Low(), d.High()}
}

// liesOf takes what a joint says of one direction apart; false where that is more than
// one row can show.
func liesOf(f *planform.Form, d joinery.Dimension) (m distance, ok bool) {
	var all []distance
	switch f.Value(place) {
	case "":
	case "centred":
		all = append(all, distance{From: "centred"})
	default:
		return distance{}, false
	}
	centred := listOf(f.Value(place + ".centred"))
	if slices.Contains(centred, d.String()) {
		all = append(all, distance{From: "centred"})
	}
	for _, s := range sidesOf(d) {
		value := f.Value(place + "." + s.String())
		number, way, two := cutLast(value)
		switch {
		case value == "":
		case value == flush:
			all = append(all, distance{From: s.String() + " " + flush})
		case two && way == joint.Inward(s):
			all = append(all, distance{number, s.String() + " " + inward})
		case two && way == proud:
			all = append(all, distance{number, s.String() + " " + proud})
		default:
			return distance{}, false
		}
	}
	switch len(all) {
	case 0:
		return distance{}, true
	case 1:
		return all[0], true
	}
	return distance{}, false
}

func cutLast(value string) (before, last string, ok bool) {
	at := strings.LastIndexByte(value, ' ')
	if at < 0 {
		return "", "", false
	}
	return strings.TrimSpace(value[:at]), value[at+1:], true
}

// lay puts the rows of a page into a joint's form; what is half filled in is not
// written yet.
func lay(f *planform.Form, given map[string][]string) {
	was := *f
	was.Fields = slices.Clone(f.Fields)
	whole := was.Value(place) == "centred"
	centred := listOf(was.Value(place + ".centred"))
	changed := false
	for _, d := range directions {
		m, ok := distanceIn(given, place+"/"+d.String())
		if !ok {
			continue
		}
		if whole && m.From == "centred" {
			centred = append(centred, d.String()) // spelt out where another row changes
		}
		if now, _ := liesOf(&was, d.Dimension); m == now {
			continue
		}
		changed = true
		for _, s := range sidesOf(d.Dimension) {
			f.Set(place+"."+s.String(), m.lies(s))
		}
		centred = slices.DeleteFunc(centred, func(word string) bool { return word == d.String() })
		if m.From == "centred" {
			centred = append(centred, d.String())
		}
	}
	if changed {
		f.Set(place, "")
		f.Set(place+".centred", strings.Join(centred, ", "))
	}
}

// lies is what the plan says of a side for a row.
func (m distance) lies(s joinery.Side) string {
	side, what, _ := strings.Cut(m.From, " ")
	switch {
	case side != s.String() || m.half():
		return ""
	case what == inward:
		return m.Number + " " + joint.Inward(s)
	case what == proud:
		return m.Number + " " + proud
	}
	return what
}

// lyingRows are the rows of a joint's form, one for each direction that matters, with
// the plan's own fields where a row cannot show what they say; halves are rows that
// are half filled in.
func lyingRows(f planform.Form, halves map[string]distance, wrong map[string]string) []fieldView {
	var rows []fieldView
	raw := func(keys ...string) {
		for _, key := range keys {
			shown := slices.ContainsFunc(rows, func(v fieldView) bool { return v.Key == key })
			if field := f.Field(key); field != nil && !shown {
				v := viewOfField(f, field, nil, nil)
				v.Wrong = wrong[key]
				rows = append(rows, v)
			}
		}
	}
	if said := f.Value(place); said != "" && said != "centred" {
		raw(place)
	}
	across := acrossOf(f)
	for _, d := range directions {
		m, ok := liesOf(&f, d.Dimension)
		name := place + "/" + d.String()
		half, is := halves[name]
		if is {
			m, ok = half, true
		}
		sides := sidesOf(d.Dimension)
		first, second := place+"."+sides[0].String(), place+"."+sides[1].String()
		said := is || f.Value(first) != "" || f.Value(second) != "" || slices.Contains(listOf(f.Value(place+".centred")), d.String())
		switch {
		case !ok:
			raw(first, second)
			if slices.Contains(listOf(f.Value(place+".centred")), d.String()) {
				raw(place + ".centred")
			}
		case said || across[d.Dimension]:
			v := fieldView{Field: planform.Field{Key: place + "." + d.String(), Label: d.says}, Distance: lyingView(name, m, d.Dimension)}
			v.Wrong = cmp.Or(m.asks(), wrong[v.Key], wrong[first], wrong[second])
			if v.Wrong == "" && m.From == "centred" {
				v.Wrong = wrong[place+".centred"]
			}
			rows = append(rows, v)
		}
	}
	return rows
}

// lyingView shows a row.
func lyingView(name string, m distance, d joinery.Dimension) *distanceView {
	v := &distanceView{distance: m, Name: name, Bare: isBare(m.From)}
	add := func(word, says string) {
		v.Choices = append(v.Choices, choiceView{word, says, word == m.From})
	}
	for _, s := range sidesOf(d) {
		add(s.String()+" "+flush, "flush at the "+s.String())
		add(s.String()+" "+inward, joint.From(s))
		add(s.String()+" "+proud, "proud of the "+s.String())
	}
	add("centred", "in the middle")
	return v
}

// acrossOf are the directions in which a joint may lie one way or another: not the one in
// which the one piece goes into the other.
func acrossOf(f planform.Form) [3]bool {
	across := [3]bool{true, true, true}
	enter := func(value string) {
		for _, spot := range spotsOf(value) {
			if s, ok := joinery.ParseSide(spot.Side); ok {
				across[s.Dimension()] = false
			}
		}
	}
	enter(f.Value("into"))
	if k := joint.KindNamed(f.Value(planform.KindKey)); k != nil && !k.Flat {
		enter(f.Value(k.Half))
	}
	return across
}
