package desk

import (
	"regexp"
	"strings"

	"fencecard/joinery/pattern"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planform"
	"fencecard/joinery/plantext"
)

// What is wrong with a thing is told in its form beside the box that it is about,
// without the plan's keys and lines: one who fills a form in sees neither.

// lacks reports whether a field is needed, and neither it nor what stands inside it is
// filled in.
func lacks(f *planform.Form, field *planform.Field) bool {
	if !field.Needed || field.Value != "" {
		return false
	}
	for i := range f.Fields {
		if strings.HasPrefix(f.Fields[i].Key, field.Key+".") && f.Fields[i].Value != "" {
			return false
		}
	}
	return true
}

// missing says of each field that is needed and empty what to fill in.
func missing(f *planform.Form) map[string]string {
	say := map[string]string{}
	for i := range f.Fields {
		if field := &f.Fields[i]; lacks(f, field) {
			say[field.Key] = field.Missing
		}
	}
	if say[place] != "" { // told in a row
		for _, d := range directions {
			if acrossOf(*f)[d.Dimension] {
				say[place+"."+d.String()] = rowSays(place + "." + d.String())
				break
			}
		}
	}
	return say
}

// followsFrom reports whether a fault at a key is told already by what is missing: at the
// thing itself, at the missing key, or at what that stands in.
func followsFrom(missing map[string]string, key string) bool {
	for lacking := range missing {
		outer, _, _ := strings.Cut(lacking, ".")
		if key == "" || key == lacking || key == outer || key == planform.NameKey || key == "piece" {
			return true
		}
	}
	return false
}

// tradeWords tells a fault without the keys of the plan: that of its own box is left out,
// and another is called by its label.
func tradeWords(f *planform.Form, key string, fault plantext.Fault) string {
	if f.Kind == planform.Piece && strings.HasPrefix(fault.Problem, "two pieces are named") {
		return plantext.Printable(twoCalled(f.Value("piece")))
	}
	words := fault.Problem
	if fault.Remedy != "" {
		words += "; " + fault.Remedy
	}
	if fault.Clash != "" {
		words += " (" + fault.Clash + ")"
	}
	words = inForms(f, words)
	_, own, dotted := strings.Cut(key, ".")
	if !dotted {
		own = key
	}
	for i := range f.Fields {
		_, name, dotted := strings.Cut(f.Fields[i].Key, ".")
		if !dotted {
			name = f.Fields[i].Key
		}
		if !strings.Contains(words, name+": ") {
			continue
		}
		label := ""
		if name != own {
			label = "“" + brief(f.Fields[i].Label) + "” "
		}
		words = asKey(name).ReplaceAllString(words, "${1}"+strings.ReplaceAll(label, "$", "$$"))
	}
	words = strings.NewReplacer("{", "", "}", "").Replace(words)
	return plantext.Printable(sentence(words))
}

// theShop and thePlan are what the forms of the shop and of the plan's own keys are
// called, where something is to be mended in them.
const (
	theShop = "table and fence"
	thePlan = "title, unit, wood"
)

var (
	shopKey  = pattern.New(`\b(?:write|correct) ([a-z]+):?((?: [^ ,;()]+)*?) in the shop file`)
	keyAside = pattern.New(`\(([a-z]+): in the shop file\)`)
	ofWood   = pattern.New(`\bwrite wood: ([^,]+),(?: or yours from fencecard wood,)?`)
	lineToo  = pattern.New(`, line \d+\b`)
	planKey  = pattern.New(`\bwrite ([a-z]+): ((?:[^ ,;()]+)(?: [^ ,;()]+)*)`)
	// A value ends before one of these.
	valueEnds = pattern.New(` (?:and|or|so|where|if) `)
)

// inForms says what is to be written into a file as what is to be chosen or filled in, in
// which form. f is the form that it is said in, nil for none.
func inForms(f *planform.Form, words string) string {
	words = lineToo.ReplaceAllString(words, "")
	words = ofWood.ReplaceAllString(words, "choose the wood, such as $1,")
	words = strings.ReplaceAll(words, "at the top of the plan", "under "+thePlan)
	words = shopKey.ReplaceEach(words, func(m []string) string {
		box := "“" + keys.Asks(planform.Shop, shopBox(m[1])) + "”, under " + theShop
		switch {
		case strings.HasPrefix(m[0], "correct"):
			return "correct " + box
		case m[2] == "":
			return "fill in " + box
		}
		return "put" + m[2] + " into " + box
	})
	words = keyAside.ReplaceEach(words, func(m []string) string {
		return "(“" + keys.Asks(planform.Shop, shopBox(m[1])) + "”, under " + theShop + ")"
	})
	words = strings.ReplaceAll(words, "in the shop file", "under "+theShop)
	return planKey.ReplaceEach(words, func(m []string) string {
		value, rest := m[2], ""
		if at := valueEnds.FindStringSubmatchIndex(value); at != nil {
			value, rest = value[:at[0]], value[at[0]:]
		}
		label := ""
		if f != nil && f.Field(m[1]) != nil {
			label = f.Field(m[1]).Label
		} else if label = keys.Asks(planform.Cut, m[1]); label == m[1] {
			label = keys.Asks(planform.Joint, m[1])
		}
		return "choose " + value + " at “" + brief(label) + "”" + rest
	})
}

// shopBox is the key of the box of a shop that is meant by a key, which may stand inside
// another.
func shopBox(key string) string {
	switch key {
	case "reach", "infeed", "outfeed":
		return "fence." + key
	case "crossing":
		return "crossing.carriage"
	}
	return key
}

// boxOf is the key whose box a fault is told beside: of how a joint lies, the row that the
// fault speaks of.
func boxOf(key string, fault plantext.Fault) string {
	if key != place {
		return key
	}
	for _, d := range directions {
		if strings.Contains(fault.Problem, d.String()) {
			return place + "." + d.String()
		}
	}
	return key
}

// rowSays is what is said of a row of how a joint lies that is empty.
func rowSays(box string) string {
	for _, d := range directions {
		if box == place+"."+d.String() {
			return "Choose how it lies, " + strings.ToLower(d.says) + "."
		}
	}
	return ""
}

// asKey finds a key with its colon.
func asKey(name string) *regexp.Regexp {
	return regexp.MustCompile(`(^|[^\w-])` + regexp.QuoteMeta(name) + `: `)
}

// brief is a label as far as its first comma or colon.
func brief(label string) string {
	if at := strings.IndexAny(label, ",:"); at > 0 {
		return label[:at]
	}
	return label
}

// sentence begins words large and ends them with a full stop.
func sentence(words string) string {
	if words == "" {
		return ""
	}
	first := strings.ToUpper(words[:1])
	if words[0] >= 0x80 {
		first = words[:1]
	}
	words = first + words[1:]
	if !strings.HasSuffix(words, ".") {
		words += "."
	}
	return words
}
