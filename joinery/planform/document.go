package planform

import (
	"strconv"
	"strings"

	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
)

// document is a text taken apart into the things that have forms.
type document struct {
	root   *yamlfile.Written // nil where nothing is written yet
	things []thing
}

// thing is one of them, in the order of the text.
type thing struct {
	*sort
	at, under string
	keys      *yamlfile.Written // nil for a plan of which nothing is written
	list      *yamlfile.Written // the list it stands in, or nil
	number    int               // in that list
}

// open takes a text apart. The error is [plantext.Faults].
func open(name string, data []byte) (*document, error) {
	root, err := yamlfile.ReadWritten(name, data)
	if err != nil {
		return nil, err
	}
	d := &document{root: root}
	if isShop(root) {
		d.add(Shop, Top, "", root)
	} else {
		d.add(Plan, Top, "", root)
	}
	return d, nil
}

// isShop reports whether a text is a shop file.
func isShop(root *yamlfile.Written) bool {
	return root != nil && root.Pair("pieces") == nil && (root.Pair("bits") != nil || root.Pair("fence") != nil || root.Pair("lift") != nil)
}

// add adds a thing and what stands in it.
func (d *document) add(kind, at, under string, keys *yamlfile.Written) {
	d.things = append(d.things, thing{sort: sortOf(kind), at: at, under: under, keys: keys})
	if kind == Plan && keys != nil {
		if shop := keys.Value(shopAt); shop != nil && shop.Kind == yamlfile.WrittenKeys {
			d.add(Shop, shopAt, Top, shop)
		}
	}
	for _, list := range listsIn(kind) {
		d.addAll(list, at, keys.Value(list))
	}
}

// addAll adds the entries of a list.
func (d *document) addAll(list, under string, w *yamlfile.Written) {
	if w == nil {
		return
	}
	for i, item := range w.Items {
		if item.Kind != yamlfile.WrittenKeys {
			continue
		}
		first := len(d.things)
		d.add(kindIn(list), entryAt(under, list, i), under, item.Written)
		d.things[first].list, d.things[first].number = w, i
	}
}

// kindIn is the kind of form of the entries of a list.
func kindIn(list string) string {
	for _, s := range sorts {
		if s.list == list {
			return s.kind
		}
	}
	return ""
}

// entryAt is where an entry of a list stands.
func entryAt(under, list string, number int) string {
	return strings.TrimPrefix(under+"/", Top+"/") + list + "/" + strconv.Itoa(number)
}

// find finds a thing by its place, or nil.
func (d *document) find(at string) *thing {
	for i := range d.things {
		if d.things[i].at == at {
			return &d.things[i]
		}
	}
	return nil
}

// heading is the pair of a cut or a joint whose key is its kind, or nil.
func (t *thing) heading() *yamlfile.WrittenPair {
	if t.isKind == nil || t.keys == nil {
		return nil
	}
	for i := range t.keys.Pairs {
		if k := t.keys.Pairs[i].Key; k.Kind == yamlfile.WrittenText && t.isKind(k.Text) {
			return &t.keys.Pairs[i]
		}
	}
	return nil
}

// word is the kind of a cut or a joint as it is written, or "".
func (t *thing) word() string {
	if h := t.heading(); h != nil {
		return h.Key.Text
	}
	return ""
}

// named is the name of a thing, "" where it has none.
func (t *thing) named() string {
	if h := t.heading(); h != nil {
		return value(h.Value, keys.OneText)
	}
	if t.name == "" {
		return ""
	}
	return value(t.keys.Value(t.name), keys.OneText)
}
