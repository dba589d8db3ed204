package planform

import (
	"fencecard/joinery"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/joinery/timber"
)

// Blank is a form for something new of a kind, in the thing that stands there:
// the piece of a cut, [Top] or "shop" for a bit or a wood. A cut and a joint ask
// for their kind first, see [BlankCut] and [BlankJoint]. A text that cannot be
// read offers no names. It panics where there is no such kind of form.
func Blank(kind, under string, text []byte) Form { return blank(kind, under, "", text) }

// BlankCut is a form for a new cut of a kind, such as mortise, in the piece
// that stands there.
func BlankCut(word, under string, text []byte) Form { return blank(Cut, under, word, text) }

// BlankJoint is a form for a new joint of a kind, such as housing.
func BlankJoint(word string, text []byte) Form { return blank(Joint, Top, word, text) }

func blank(kind, under, word string, text []byte) Form {
	s := sortOf(kind)
	if s == nil {
		panic("planform: no kind of form is called " + kind)
	}
	d, err := open("", text)
	if err != nil {
		d = &document{}
	}
	f := Form{Kind: kind, Under: under, Fields: s.fields(word)}
	switch {
	case kind == Plan:
		f.At, f.Under = Top, ""
	case under == "":
		f.Under = Top
	}
	if s.kinds != nil {
		f.Fields[0].Value = word
	}
	d.settle(&f)
	return f
}

// As makes a form one of another kind of cut or joint. What the two kinds both ask
// keeps its value.
func (f Form) As(word string, text []byte) Form {
	as := blank(f.Kind, f.Under, word, text)
	as.At, as.Line, as.Title = f.At, f.Line, f.Title
	for _, field := range f.Fields {
		if field.Key != KindKey {
			as.Set(field.Key, field.Value)
		}
	}
	return as
}

// Offers are the names that a text and its shop offer for fields that take one, by
// their [Field.From]: pieces, bits and woods. Without a shop, the bits and woods are
// those that the text has itself, or those of the built-in shop. The cuts of the piece at
// "pieces/2", those of the piece it mirrors included, are "cuts pieces/2".
func Offers(text []byte, shop *joinery.Shop) map[string][]string {
	d, err := open("", text)
	if err != nil {
		d = &document{}
	}
	names := map[string][]string{}
	for i := range d.things {
		if name := d.things[i].named(); name != "" {
			switch d.things[i].kind {
			case Piece:
				names[keys.Pieces] = append(names[keys.Pieces], name)
				if cuts := d.cutNames(&d.things[i]); cuts != nil {
					names[keys.Cuts+" "+d.things[i].at] = cuts
				}
			case Bit:
				names[keys.Bits] = append(names[keys.Bits], name)
			case Wood:
				names[keys.Woods] = append(names[keys.Woods], name)
			}
		}
	}
	if shop == nil && names[keys.Bits] == nil {
		builtIn := shopfile.BuiltIn(d.unit())
		shop = &builtIn
	}
	if shop != nil {
		names[keys.Bits], names[keys.Woods] = nil, nil
		for i := range shop.Bits {
			names[keys.Bits] = append(names[keys.Bits], shop.Bits[i].Name)
		}
		for _, w := range shop.Woods {
			names[keys.Woods] = append(names[keys.Woods], w.Name)
		}
	}
	for _, w := range timber.Woods() {
		names[keys.Woods] = append(names[keys.Woods], w.Name)
	}
	return names
}

// cutNames lists the names of a piece's cuts, those of the piece it mirrors first.
func (d *document) cutNames(piece *thing) []string {
	var names []string
	if of := value(piece.keys.Value("mirror").Value("of"), keys.OneText); of != "" {
		for i := range d.things {
			if other := &d.things[i]; other.kind == Piece && other != piece && other.named() == of {
				names = d.ownCuts(other)
				break
			}
		}
	}
	return append(names, d.ownCuts(piece)...)
}

func (d *document) ownCuts(piece *thing) []string {
	cuts := piece.keys.Value("cuts")
	if cuts == nil {
		return nil
	}
	var names []string
	for _, item := range cuts.Items {
		cut := thing{sort: sortOf(Cut), keys: item.Written}
		if name := cut.named(); name != "" {
			names = append(names, name)
		}
	}
	return names
}
