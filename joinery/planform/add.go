package planform

import (
	"strings"

	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"
)

// begin writes a plan's or a shop's own keys into a text of which nothing is written yet.
func (w *writer) begin() (string, error) {
	pairs := pairsOf(w.entries("", w.form.Fields), false)
	if len(pairs) == 0 {
		return Top, nil
	}
	w.appendText(strings.Join(pairs, "\n") + "\n")
	return Top, nil
}

// appendText puts lines at the end of a text that has remarks at the most.
func (w *writer) appendText(lines string) {
	if strings.TrimSpace(strings.TrimPrefix(string(w.data), "\ufeff")) != "" {
		lines = "\n" + lines
	}
	w.insertLines(len(w.data), lines)
}

// add writes a new thing behind the others of its kind.
func (w *writer) add() (string, error) {
	switch {
	case w.kind == Shop:
		return shopAt, w.addShop()
	case w.list == "":
		return "", plantext.Fault{Problem: "a text has one " + w.kind, Remedy: "change the one it has"}
	case w.kinds != nil && !w.isKind(w.form.Value(KindKey)):
		return "", w.noKind(w.form.Value(KindKey))
	}
	under := w.form.Under
	if under == "" {
		under = Top
	}
	parent := w.find(under)
	if parent == nil && under == shopAt && kindOver(w.kind, Shop) != "" {
		lines := w.list + ":\n" + w.lines(w.step(), w.step()+2)
		return entryAt(under, w.list, 0), w.putShop(strings.TrimSuffix(lines, "\n"), w.list+": ["+w.braces()+"]")
	}
	if parent == nil || kindOver(w.kind, parent.kind) == "" {
		return "", plantext.Fault{Problem: "there is nothing at " + under + " for a new " + w.kind, Remedy: "read the plan's forms again"}
	}
	list := parent.keys.Pair(w.list)
	number := 0
	switch {
	case parent.keys == nil:
		w.appendText(w.list + ":\n" + w.blankLine(true) + w.lines(2, 4))
	case list == nil:
		w.addList(parent)
	case list.Value.Kind == yamlfile.WrittenNothing, list.Value.Kind == yamlfile.WrittenList:
		number = len(list.Value.Items)
		w.addTo(parent, list)
	default:
		return "", plantext.Fault{Problem: w.list + " is not a list in this plan", Remedy: "mend it in the text first"}
	}
	return entryAt(under, w.list, number), nil
}

// kindOver is the list of a kind in a thing of another, "" where that has none.
func kindOver(kind, parent string) string {
	for _, list := range listsIn(parent) {
		if kindIn(list) == kind {
			return list
		}
	}
	return ""
}

// shopAt is where a shop in the plan itself stands.
const shopAt = "shop"

// addShop writes a shop into the plan itself.
func (w *writer) addShop() error {
	pairs := pairsOf(w.entries("", w.form.Fields), false)
	if len(pairs) == 0 {
		return plantext.Fault{Problem: "nothing is filled in", Remedy: "fill in at least the unit of the shop's numbers"}
	}
	return w.putShop(strings.Join(pairs, "\n"), strings.Join(pairsOf(w.entries("", w.form.Fields), true), ", "))
}

// putShop writes a shop into a plan that has none: lines below its key, or in
// braces.
func (w *writer) putShop(lines, braces string) error {
	plan := w.find(Top)
	switch {
	case plan.kind != Plan:
		return plantext.Fault{Problem: "this is a shop file, which has one shop", Remedy: "change the one it has"}
	case plan.keys == nil:
		w.appendText("shop:\n" + indented(lines, 2) + "\n")
		return nil
	case plan.keys.Value(shopAt) != nil && plan.keys.Value(shopAt).Kind != yamlfile.WrittenNothing:
		return plantext.Fault{Problem: "the plan has a shop already", Remedy: "change that one, or clear the plan's shop first"}
	}
	below := indented(lines, plan.keys.Column+2)
	if p := plan.keys.Pair(shopAt); p != nil && plan.keys.Flow {
		w.exchange(ending(*p), ending(*p), " {"+braces+"}")
	} else if p != nil {
		w.insertLines(w.nextLine(ending(*p)), below+"\n")
	} else {
		w.inserting(plan).insertText(shopAt, func(flow bool) string {
			if flow {
				return "shop: {" + braces + "}"
			}
			return "shop:\n" + below
		})
	}
	return nil
}

// indented sets lines so many characters further in.
func indented(lines string, by int) string {
	indent := strings.Repeat(" ", by)
	return indent + strings.ReplaceAll(lines, "\n", "\n"+indent)
}

// inserting is a change of keys that puts new ones in their places.
func (w *writer) inserting(t *thing) *keysChange {
	return &keysChange{splices: w.splices, keys: t.keys, order: append([]string{t.word()}, t.order(t.word())...)}
}

// addList writes a list that is not there yet, with one entry.
func (w *writer) addList(parent *thing) {
	w.inserting(parent).insertText(w.list, func(flow bool) string {
		if flow {
			return w.list + ": [" + w.braces() + "]"
		}
		before := ""
		if parent.kind == Plan && w.airy(parent) {
			before = "\n"
		}
		return before + strings.TrimSuffix(w.list+":\n"+w.fresh(parent), "\n")
	})
}

// fresh is the first entry of a list below its key.
func (w *writer) fresh(parent *thing) string {
	dash := parent.keys.Column + w.step()
	return w.blankLine(parent.kind == Plan && w.airy(parent)) + w.lines(dash, dash+2)
}

// addTo writes one more entry of a list.
func (w *writer) addTo(parent *thing, p *yamlfile.WrittenPair) {
	list := p.Value
	if list.Flow && len(list.Items) > 0 {
		last := list.Items[len(list.Items)-1]
		w.exchange(last.To, last.To, ", "+w.braces())
		return
	}
	if parent.keys.Flow {
		if list.Kind == yamlfile.WrittenNothing {
			w.exchange(ending(*p), ending(*p), " ["+w.braces()+"]")
		} else {
			w.exchange(list.From+1, list.From+1, w.braces())
		}
		return
	}
	if len(list.Items) == 0 {
		if list.Kind == yamlfile.WrittenList {
			w.exchange(p.Colon, list.To, "")
		}
		w.insertLines(w.nextLine(ending(*p)), w.fresh(parent))
		return
	}
	last := list.Items[len(list.Items)-1]
	dash := list.Items[0].Dash - w.lineStart(list.Items[0].Dash)
	key := dash + 2
	if last.Kind == yamlfile.WrittenKeys && !last.Flow {
		key = max(last.Column, dash+2)
	}
	lines := w.lines(dash, key)
	if last.Flow { // as the others are written
		lines = strings.Repeat(" ", dash) + "- " + w.braces() + "\n"
	}
	w.insertLines(w.behind(last.To, dash), w.blankLine(w.spaced(p))+lines)
}

func (w *writer) blankLine(blank bool) string {
	if blank {
		return "\n"
	}
	return ""
}

// spaced reports whether blank lines stand between the entries of a list.
func (w *writer) spaced(p *yamlfile.WrittenPair) bool {
	items := p.Value.Items
	switch len(items) {
	case 0:
		return false
	case 1:
		return w.blankBetween(p.Colon, items[0].Dash)
	}
	return w.blankBetween(items[len(items)-2].To, items[len(items)-1].Dash)
}

// airy reports whether a plan keeps blank lines between its pieces; one that has
// none yet does, as the examples do.
func (w *writer) airy(plan *thing) bool {
	for _, key := range listsIn(Plan) {
		if p := plan.keys.Pair(key); p != nil && len(p.Value.Items) > 0 && !p.Value.Flow {
			return w.spaced(p)
		}
	}
	return true
}

// step is how far the dashes of a list stand in from their key: as those that
// are there, else two.
func (w *writer) step() int {
	for i := range w.things {
		t := &w.things[i]
		if t.keys == nil || t.keys.Flow {
			continue
		}
		for _, key := range listsIn(t.kind) {
			if p := t.keys.Pair(key); p != nil && len(p.Value.Items) > 0 && !p.Value.Flow {
				if step := p.Value.Items[0].Dash - w.lineStart(p.Value.Items[0].Dash) - t.keys.Column; step >= 0 {
					return step
				}
			}
		}
	}
	return 2
}

// headText is the kind and name of a cut or a joint.
func (w *writer) headText(word, name string, flow bool) string {
	if name == "" {
		return keyText(word) + ":"
	}
	return keyText(word) + ": " + scalar(name, flow, 0)
}

// pairs are the keys and values of the form, its kind and name first.
func (w *writer) pairs(flow bool) []string {
	word := w.form.Value(KindKey)
	pairs := pairsOf(w.entries(word, w.form.Fields), flow)
	if w.kinds != nil {
		pairs = append([]string{w.headText(word, oneLine(w.form.Value(NameKey)), flow)}, pairs...)
	}
	return pairs
}

// braces are the form in one line.
func (w *writer) braces() string { return "{" + strings.Join(w.pairs(true), ", ") + "}" }

// lines are the form as an entry of a list, a line for each key, with its dash and its keys
// so many characters in.
func (w *writer) lines(dash, key int) string {
	pairs := w.pairs(false)
	if len(pairs) == 0 {
		return strings.Repeat(" ", dash) + "- {}\n"
	}
	first := strings.Repeat(" ", dash) + "-" + strings.Repeat(" ", key-dash-1)
	return first + strings.Join(pairs, "\n"+strings.Repeat(" ", key)) + "\n"
}
