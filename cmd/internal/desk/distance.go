package desk

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/planform"
)

// distance is a number and what it is measured from, as a form asks for both.
type distance struct {
	Number string
	From   string // one of the choices; "" for none yet
}

// distanceView is a distance as it is shown.
type distanceView struct {
	distance
	Name    string // of its two boxes, before "/number" and "/from"
	Bare    bool   // what is chosen needs no number
	Choices []choiceView
}

// choiceView is a word of the plan's and how it is said.
type choiceView struct {
	Word, Says string
	Chosen     bool
}

// half reports whether one of the two is there without the other.
func (m distance) half() bool {
	return m.From == "" && m.Number != "" || m.Number == "" && !isBare(m.From) && m.From != ""
}

// asks says what half a distance lacks.
func (m distance) asks() string {
	switch {
	case !m.half():
		return ""
	case m.From == "":
		return "Choose what it is measured from."
	}
	return "Say how far."
}

// isBare reports whether what is chosen says all by itself.
func isBare(from string) bool {
	return from == "flush" || strings.HasSuffix(from, " flush") || strings.HasPrefix(from, "centred")
}

// distanceIn finds what a page gives for the two boxes of a name; false where it has
// none.
func distanceIn(given map[string][]string, name string) (m distance, ok bool) {
	from, ok := given[name+"/from"]
	return distance{strings.TrimSpace(strings.Join(given[name+"/number"], "")), strings.Join(from, "")}, ok
}

// halvesOf are the distances of which a page gives one half: they cannot be written
// into the plan yet, and are shown again as they are.
func halvesOf(given map[string][]string) map[string]distance {
	halves := map[string]distance{}
	for key := range given {
		if name, is := strings.CutSuffix(key, "/from"); is {
			if m, _ := distanceIn(given, name); m.half() {
				halves[name] = m
			}
		}
	}
	return halves
}

// fromSide takes "1/2 from front", "centred" and "centred from front" apart; false for
// anything else.
func fromSide(value string) (m distance, ok bool) {
	if value == "" || value == "centred" {
		return distance{From: value}, true
	}
	number, from, ok := yamlfile.FromSide(value)
	side, known := joinery.ParseSide(from)
	if !ok || !known {
		return distance{}, false
	}
	if number == "centred" {
		return distance{From: "centred from " + side.String()}, true
	}
	return distance{number, side.String()}, true
}

// asFromSide writes such a distance as a plan has it; a half one is none.
func (m distance) asFromSide() string {
	switch {
	case m.half():
		return ""
	case m.From == "" || isBare(m.From):
		return m.From
	}
	return m.Number + " from " + m.From
}

// fromSideView shows a distance from a side: those beside the one that the bit enters.
func fromSideView(form planform.Form, f *planform.Field, m distance) *distanceView {
	in, known := joinery.ParseSide(form.Value("in"))
	centred := len(f.Choices) > 0
	v := &distanceView{distance: m, Name: f.Key, Bare: isBare(m.From)}
	add := func(word, says string) {
		v.Choices = append(v.Choices, choiceView{word, says, word == m.From})
	}
	var sides []joinery.Side
	for _, s := range joinery.Sides {
		if !known || s.Dimension() != in.Dimension() || s.String() == m.From {
			sides = append(sides, s)
		}
	}
	for _, s := range sides {
		add(s.String(), joint.From(s))
	}
	if centred {
		add("centred", "in the middle")
		for _, s := range sides {
			add("centred from "+s.String(), "in the middle, its "+s.String()+" to the fence")
		}
	}
	return v
}
