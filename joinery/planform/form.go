package planform

import "fencecard/joinery/planfile/keys"

// The kinds of form.
const (
	Plan  = "plan"
	Piece = "piece"
	Cut   = "cut"
	Joint = "joint"
	Shop  = "shop"
	Bit   = "bit"
	Wood  = "wood"
)

// Top is where the form of a plan, or of a shop in a file of its own, stands.
const Top = "/"

// Form asks for one thing of a plan.
type Form struct {
	Kind string `json:"kind"`
	// At is where it stands in the text, keys and numbers from 0 between strokes:
	// "pieces/2/cuts/0"; [Top]; "" for a new one.
	At string `json:"at"`
	// Under is where the thing stands that has it, or will have a new one: the
	// piece of a cut, the shop of a bit.
	Under  string  `json:"under"`
	Line   int     `json:"line"` // where it begins in the text, from 1; 0 for a new one
	Title  string  `json:"title"`
	Fields []Field `json:"fields"`
}

// Field asks for one value.
type Field struct {
	// Key is the plan's own word, behind a full stop where it stands inside
	// another: "size.left-right". The kind and the name of a cut or a joint, which
	// stand in one line of the plan, are "kind" and "name".
	Key     string `json:"key"`
	Label   string `json:"label"`   // what it is
	Hint    string `json:"hint"`    // a value as a maker would write it
	Value   string `json:"value"`   // as it is written in the plan; "" for a key left out
	Default string `json:"default"` // what holds where it is left out
	// Choices are the words that may stand there; where Open is set, others may as
	// well. Of [keys.Spots] they are the sides.
	Choices []string `json:"choices"`
	Open    bool     `json:"open"`
	// Shape tells how several values are written: of [keys.Names] the value
	// lists names with commas, in double quotes what has a comma itself.
	Shape keys.Shape `json:"shape"`
	// From is the list of names to offer, see [Offers]; of "cuts" that of the piece.
	From string `json:"from"`
	// Needed tells that the thing is none without.
	Needed bool `json:"needed"`
	// Missing is what to say where it is needed and empty.
	Missing string `json:"missing"`
	// Unknown tells that the plan has this key and nothing is known of it.
	Unknown bool `json:"unknown"`
}

// The keys of the kind and the name of a cut or a joint.
const (
	KindKey = "kind"
	NameKey = "name"
)

// Field finds the field of a key, or nil.
func (f *Form) Field(key string) *Field {
	for i := range f.Fields {
		if f.Fields[i].Key == key {
			return &f.Fields[i]
		}
	}
	return nil
}

// Value is the value of a key, "" where there is no such field.
func (f *Form) Value(key string) string {
	if field := f.Field(key); field != nil {
		return field.Value
	}
	return ""
}

// Filled lists the fields that have a value.
func (f *Form) Filled() []Field {
	var filled []Field
	for _, field := range f.Fields {
		if field.Value != "" {
			filled = append(filled, field)
		}
	}
	return filled
}

// Set fills a field in and reports whether the form has it.
func (f *Form) Set(key, value string) bool {
	field := f.Field(key)
	if field != nil {
		field.Value = value
	}
	return field != nil
}
