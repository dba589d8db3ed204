package desk

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planform"
	"fencecard/output/sheets"
	"fencecard/setup/remark/joints"
)

// drawn draws what stands at a place of a text, as it will be; "" while that is not
// known yet. Where something else in the plan is at fault, it is drawn without that.
func (w Work) drawn(plan *joinery.Plan, text []byte, at string, forms []planform.Form) template.HTML {
	i := slices.IndexFunc(forms, func(f planform.Form) bool { return f.At == at })
	if i < 0 || at == "" {
		return ""
	}
	f := forms[i]
	if plan == nil {
		if plan = w.alone(forms, f); plan == nil {
			return ""
		}
	}
	var svg sheets.Drawing
	var err error
	k := sheets.SketchOf(plan)
	switch f.Kind {
	case planform.Piece:
		if p := pieceNamed(plan, f.Value("piece")); p != nil {
			svg, err = k.Piece(p)
		}
	case planform.Cut:
		under := slices.IndexFunc(forms, func(o planform.Form) bool { return o.At == f.Under })
		if under < 0 {
			return ""
		}
		if p := pieceNamed(plan, forms[under].Value("piece")); p != nil {
			if cut := cutNamed(p, f.Value(planform.NameKey)); cut != nil {
				svg, err = k.Cut(p, cut)
			}
		}
	case planform.Joint:
		svg, err = k.Joint(joints.Of(plan), f.Value(planform.NameKey))
	}
	if err != nil {
		return "" // the text is right all the same
	}
	return template.HTML(svg) // made by the canvas, which escapes every word
}

// meetings says where a joint is made, in mirror images too, or what a piece meets.
func meetings(plan *joinery.Plan, f planform.Form) []string {
	if plan == nil {
		return nil
	}
	var said []string
	say := func(format string, words ...any) {
		if text := fmt.Sprintf(format, words...); !slices.Contains(said, text) {
			said = append(said, text)
		}
	}
	all := joints.Of(plan)
	switch name := f.Value("piece"); {
	case f.Kind == planform.Joint:
		for _, j := range sheets.JointsNamed(all, f.Value(planform.NameKey)) {
			say("the %s of %s goes into the %s of %s", j.Part.End, j.Part.Piece.Name, j.Into.Cut.In, j.Into.Piece.Name)
		}
	case f.Kind == planform.Piece && name != "":
		for _, j := range all {
			if j.Part.Piece.Name == name {
				say("its %s goes into the %s of %s: %s “%s”", j.Part.End, j.Into.Cut.In, j.Into.Piece.Name, j.Into.Cut.Kind, j.Into.Cut.Name)
			}
			if j.Into.Piece.Name == name {
				say("the %s of %s goes into its %s: %s “%s”", j.Part.End, j.Part.Piece.Name, j.Into.Cut.In, j.Into.Cut.Kind, j.Into.Cut.Name)
			}
		}
	}
	return said
}

func pieceNamed(plan *joinery.Plan, name string) *joinery.Piece {
	for i := range plan.Pieces {
		if plan.Pieces[i].Name == name {
			return &plan.Pieces[i]
		}
	}
	return nil
}

// cutNamed is the cut of a name, or the first that it repeats as.
func cutNamed(p *joinery.Piece, name string) *joinery.Cut {
	for _, called := range []string{name, name + " 1"} {
		for i := range p.Cuts {
			if p.Cuts[i].Name == called {
				return &p.Cuts[i]
			}
		}
	}
	return nil
}

// alone is a plan of one thing and what it needs, nil where that cannot be read.
func (w Work) alone(forms []planform.Form, f planform.Form) *joinery.Plan {
	for _, shoulders := range []bool{true, false} {
		var text []byte
		for _, other := range forms {
			if !needs(f, other, forms) {
				continue
			}
			if other.At != planform.Top {
				other.At = ""
			}
			other.Fields = slices.Clone(other.Fields)
			for i := range other.Fields {
				switch field := &other.Fields[i]; {
				case field.Key == "after", field.Key == "mates":
					field.Value = "" // what it names is not there
				case !shoulders && strings.HasPrefix(field.Key, "size."):
					field.Value = strings.TrimSuffix(field.Value, " between shoulders")
				}
			}
			if other.Kind == planform.Cut {
				other.Under = lastPiece(text)
			}
			written, _, err := planform.Put(text, other)
			if err != nil {
				return nil
			}
			text = written
		}
		if plan, err := planfile.Read(w.name(), text, w.Open); err == nil {
			return plan
		}
	}
	return nil
}

// lastPiece is where the last piece of a text stands.
func lastPiece(text []byte) string {
	forms, err := planform.Read("", text)
	if err != nil {
		return ""
	}
	at := ""
	for _, f := range forms {
		if f.Kind == planform.Piece {
			at = f.At
		}
	}
	return at
}

// needs reports whether a thing is drawn with another.
func needs(f, other planform.Form, forms []planform.Form) bool {
	switch {
	case other.At == f.At, other.Kind == planform.Plan:
		return true
	case other.Kind != planform.Piece:
		return other.Kind != planform.Cut && other.Kind != planform.Joint
	case f.Kind == planform.Joint:
		return true
	}
	// The piece itself, and those that it mirrors.
	for of, seen := f, 0; seen <= len(forms); seen++ {
		if of.Kind == planform.Cut {
			if other.At == of.Under {
				return true
			}
			i := slices.IndexFunc(forms, func(p planform.Form) bool { return p.At == of.Under })
			if i < 0 {
				return false
			}
			of = forms[i]
		}
		name := of.Value("mirror.of")
		if name == "" {
			return false
		}
		i := slices.IndexFunc(forms, func(p planform.Form) bool { return p.Kind == planform.Piece && p.Value("piece") == name })
		if i < 0 {
			return false
		}
		if of = forms[i]; other.At == of.At {
			return true
		}
	}
	return false
}
