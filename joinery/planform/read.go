package planform

import (
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
)

// Read makes a form of everything in a text, in its order: the plan, its shop where
// that stands in the plan, its pieces, the cuts of each behind it, and the joints. An empty text is
// a plan of which nothing is written yet. The name is the file's, for the
// messages; the error is [plantext.Faults], where the text is not one that forms can be made
// of. A plan with other faults has its forms.
func Read(name string, text []byte) ([]Form, error) {
	d, err := open(name, text)
	if err != nil {
		return nil, err
	}
	forms := make([]Form, 0, len(d.things))
	for i := range d.things {
		forms = append(forms, d.form(&d.things[i]))
	}
	return forms, nil
}

// form makes the form of a thing.
func (d *document) form(t *thing) Form {
	f := Form{Kind: t.kind, At: t.at, Under: t.under, Line: 1, Title: t.named()}
	if t.keys != nil {
		f.Line = t.keys.Line
	}
	word := t.word()
	f.Fields = t.fields(word)
	if t.kinds != nil {
		f.Title = strings.TrimSuffix(word+": "+f.Title, ": ")
		f.Fields[0].Value, f.Fields[1].Value = word, t.named()
	}
	if t.keys == nil {
		return f
	}
	for i := range f.Fields {
		if field := &f.Fields[i]; t.kinds == nil || i > 1 {
			field.Value = t.written(field)
		}
	}
	f.Fields = append(f.Fields, t.unknown(word)...)
	d.settle(&f)
	return f
}

// fields are the empty fields of a sort and kind.
func (s *sort) fields(word string) []Field {
	keys := s.keys(word)
	fields := make([]Field, 0, len(keys)+2)
	if s.kinds != nil {
		kind, name := askedFor(s.kind, KindKey), askedFor(s.kind, NameKey)
		kind.Choices, kind.Needed, name.Needed = s.kinds(), true, true
		fields = append(fields, kind, name)
	}
	for _, k := range keys {
		fields = append(fields, fieldOf(k))
	}
	return fields
}

// askedFor is the field of the kind or the name of something that has kinds.
func askedFor(of, key string) Field {
	return Field{Key: key, Label: keys.Asks(of, key), Missing: keys.Missing(of, key)}
}

func fieldOf(k keys.Key) Field {
	return Field{Key: k.Name, Label: k.Asks, Hint: k.Example, Default: k.LeftOut, Choices: k.Words, Open: k.Open,
		Shape: k.Shape, From: k.From, Needed: k.Needed, Missing: k.Missing}
}

// written is the value of a field in the text. Of a key that has keys inside it is
// empty: they have fields of their own, or a form.
func (t *thing) written(f *Field) string {
	w, inside := t.keys, f.Key
	if outer, inner, dotted := strings.Cut(f.Key, "."); dotted {
		w, inside = w.Value(outer), inner
	}
	found := w.Value(inside)
	if found != nil && found.Kind == yamlfile.WrittenKeys && t.holds(inside) {
		return ""
	}
	return value(found, f.Shape)
}

// holds reports whether a key has keys inside that are asked for.
func (s *sort) holds(key string) bool {
	return keys.Inside(s.of, key) != nil || s.kind == Plan && key == shopAt
}

// unknown are the fields of keys of which nothing is known.
func (t *thing) unknown(word string) []Field {
	var fields []Field
	for _, p := range t.keys.Pairs {
		name := p.Key.Text
		if p.Key.Kind != yamlfile.WrittenText || t.knows(word, name) || strings.Contains(name, ".") || t.keys.Pair(name).Key != p.Key {
			continue
		}
		fields = append(fields, Field{Key: name, Label: "not known here", Value: value(p.Value, keys.OneText), Open: true, Unknown: true})
	}
	return fields
}

// knows reports whether a key is one of the sort and its kind. The keys "kind" and
// "name", which a cut has none of, would be taken for its heading.
func (s *sort) knows(word, key string) bool {
	if _, ok := s.key(word, key); ok {
		return true
	}
	if s.kinds != nil && (s.isKind(key) || key == KindKey || key == NameKey) {
		return true
	}
	return slices.Contains(listsIn(s.kind), key) || keys.Inside(s.of, key) != nil
}

// settle puts in what follows from the rest of the form and the plan.
func (d *document) settle(f *Form) {
	plan := d.find(Top)
	switch f.Kind {
	case Piece:
		mirrors := f.Value("mirror.of") != "" || f.Value("mirror.across") != ""
		var size joinery.Size
		known := true
		for _, dim := range joinery.Dimensions {
			field := f.Field("size." + dim.String())
			if field == nil {
				return
			}
			field.Needed = !mirrors
			length, err := measure.ParseLength(strings.TrimSuffix(field.Value, " between shoulders"), d.unit())
			size[dim], known = length, known && err == nil
		}
		if field := f.Field("grain"); field != nil && known {
			field.Default = size.Longest().String()
		}
		if field := f.Field("wood"); field != nil && plan != nil {
			if wood := value(plan.keys.Value("wood"), keys.OneText); wood != "" {
				field.Default = wood
			}
		}
	case Cut, Joint:
		if f.Value("repeat.times") == "" {
			return
		}
		for _, key := range []string{"setback", "place"} { // the repeat says it
			if field := f.Field(key); field != nil {
				field.Needed = false
			}
		}
	}
}

// unit is the plan's.
func (d *document) unit() measure.Unit {
	if value(d.root.Value("unit"), keys.OneText) == "mm" {
		return measure.Millimetres
	}
	return measure.Inches
}
