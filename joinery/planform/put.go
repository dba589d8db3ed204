package planform

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"
)

// Put writes a form into a text and tells where it stands there. A form that has a
// place changes what is there, and only the values that differ; one that has none is added
// behind the others of its kind. Remarks, order, blank lines and the writing of all
// that the form does not change stay byte for byte, so that a form put back as
// it was read changes nothing. A value is written as typed, with quotes where YAML needs
// them; an empty one takes its key out, with the remark behind it. A cut or joint that became one of
// another kind loses the keys which that kind has not.
//
// The error is [plantext.Faults] where the text cannot be read, and a
// [plantext.Fault] where the form cannot be written into it: then the text is
// as it was.
func Put(text []byte, f Form) (put []byte, at string, err error) {
	d, err := open("", text)
	if err != nil {
		return nil, "", err
	}
	s := sortOf(f.Kind)
	if s == nil {
		return nil, "", plantext.Fault{Problem: "there is no form for a " + f.Kind}
	}
	w := &writer{document: d, splices: splicesOf(text), sort: s, form: f}
	switch {
	case f.At == "":
		at, err = w.add()
	case d.root == nil && f.At == Top && (f.Kind == Plan || f.Kind == Shop):
		at, err = w.begin()
	default:
		at, err = f.At, w.change()
	}
	if err != nil {
		return nil, "", err
	}
	if len(w.made) == 0 {
		return text, at, nil
	}
	put = w.result()
	if err := w.check(put, at); err != nil {
		return nil, "", err
	}
	return put, at, nil
}

// writer writes one form into a text.
type writer struct {
	*document
	*splices
	*sort
	form Form
}

// change changes what stands at the form's place.
func (w *writer) change() error {
	t := w.find(w.form.At)
	if t == nil || t.kind != w.kind || t.keys == nil {
		return plantext.Fault{Problem: fmt.Sprintf("the %s that this form is for is not in the plan any more", w.kind), Remedy: "read the plan's forms again"}
	}
	now := w.document.form(t)
	var changed []Field
	for _, field := range w.form.Fields {
		if !same(field, now.Value(field.Key)) {
			changed = append(changed, field)
		}
	}
	word, old := w.form.Value(KindKey), t.word()
	entries := w.entries(word, changed)
	if w.kinds != nil {
		if err := w.head(t, word); err != nil {
			return err
		}
		if word != old {
			lost := w.lost(t, old, word, entries)
			entries = append(entries, lost...)
			w.form.Fields = slices.DeleteFunc(slices.Clone(w.form.Fields), func(f Field) bool {
				outer, _, _ := strings.Cut(f.Key, ".")
				return slices.ContainsFunc(lost, func(e entry) bool { return e.key == outer })
			})
		}
	}
	emptied, err := w.splices.change(t.keys, entries, append([]string{old}, w.order(word)...))
	if err == nil && emptied && len(entries) > 0 {
		return plantext.Fault{Problem: "nothing of the " + w.kind + " would be left", Remedy: "fill something in, or take the " + w.kind + " out"}
	}
	return err
}

// same reports whether a field says what is written.
func same(f Field, now string) bool {
	value := oneLine(f.Value)
	switch f.Shape {
	case keys.Names:
		value = joinNames(splitNames(value))
	case keys.Brackets:
		value, now = strings.ReplaceAll(value, " ", ""), strings.ReplaceAll(now, " ", "")
	}
	return value == now
}

// head writes the kind and the name of a cut or a joint.
func (w *writer) head(t *thing, word string) error {
	name := oneLine(w.form.Value(NameKey))
	h := t.heading()
	if !w.isKind(word) {
		if word == "" && name == "" && h == nil {
			return nil // not yet
		}
		return w.noKind(word)
	}
	if h == nil {
		between := "\n" + strings.Repeat(" ", t.keys.Column)
		if t.keys.Flow {
			w.exchange(t.keys.From+1, t.keys.From+1, w.headText(word, name, true)+", ")
			return nil
		}
		w.exchange(t.keys.From, t.keys.From, w.headText(word, name, false)+between)
		return nil
	}
	if word != h.Key.Text {
		w.exchange(h.Key.From, h.Key.To, keyText(word))
	}
	switch now := value(h.Value, keys.OneText); {
	case name == now:
	case name == "":
		w.exchange(max(h.Colon, h.Key.To), h.Value.To, "")
	default:
		(&keysChange{splices: w.splices, keys: t.keys}).set(*h, scalar(name, t.keys.Flow, h.Value.Quote))
	}
	return nil
}

// noKind is the fault of a form that does not say what kind it is of.
func (w *writer) noKind(word string) error {
	remedy := "choose " + plantext.List(w.kinds(), "or")
	if word == "" {
		return plantext.Fault{Problem: "the form does not say what kind of " + w.kind + " it is", Remedy: remedy}
	}
	return plantext.Fault{Problem: fmt.Sprintf("%q is no kind of %s", word, w.kind), Remedy: remedy}
}

// lost are the keys that the old kind has and the new one has not.
func (w *writer) lost(t *thing, old, word string, changed []entry) []entry {
	var lost []entry
	for _, p := range t.keys.Pairs {
		key := p.Key.Text
		if w.isKind(key) || !w.knows(old, key) || w.asks(word, key) ||
			slices.ContainsFunc(changed, func(e entry) bool { return e.key == key }) {
			continue
		}
		lost = append(lost, entry{key: key, cleared: true})
	}
	return lost
}

// asks reports whether a kind asks for a key, or for keys inside it.
func (s *sort) asks(word, key string) bool { return slices.Contains(s.order(word), key) }

// check reads the new text and makes sure that it says what the form says, and
// of all else what the old one said.
func (w *writer) check(put []byte, at string) error {
	after, err := open("", put)
	if err != nil {
		var faults plantext.Faults
		if errors.As(err, &faults) && len(faults) > 0 {
			return w.cannot(faults[0].Problem)
		}
		return w.cannot(err.Error())
	}
	t := after.find(at)
	if t == nil || t.kind != w.kind {
		return w.cannot("")
	}
	form := after.form(t)
	for _, field := range w.form.Fields {
		if !same(field, form.Value(field.Key)) {
			return w.cannot("")
		}
	}
	if !slices.Equal(w.sayings(at), after.sayings(at)) {
		return w.cannot("")
	}
	return nil
}

// cannot is the fault of a text whose layout the form does not fit.
func (w *writer) cannot(why string) error {
	if why != "" {
		why = ": " + why
	}
	return plantext.Fault{Problem: "this cannot be written into the plan as it is laid out" + why,
		Remedy: "write it into the text by hand, or give each key there a line of its own"}
}

// sayings are what each thing says of its own, but one.
func (d *document) sayings(but string) []string {
	var all []string
	for i := range d.things {
		t := &d.things[i]
		if t.keys == nil || t.at == but {
			continue
		}
		var b strings.Builder
		b.WriteString(t.kind)
		for _, p := range t.keys.Pairs {
			if own := slices.Contains(listsIn(t.kind), p.Key.Text) || t.kind == Plan && p.Key.Text == shopAt && p.Value.Kind == yamlfile.WrittenKeys; !own {
				b.WriteString("\n" + inFlow(p.Key) + ": " + inFlow(p.Value))
			}
		}
		if b.Len() > len(t.kind) { // a plan or shop that has no keys of its own says nothing
			all = append(all, b.String())
		}
	}
	return all
}
