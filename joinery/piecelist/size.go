package piecelist

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/joinery/piecelist/spreadsheet"
	"fencecard/joinery/plantext"
)

// orderKey tells cells with several lengths by what they may be.
type orderKey struct {
	column  int
	missing string // the fields that no cell of the row has
}

// orders are the fields of the lengths in such cells, in their order; nil where
// it is still asked.
type orders map[orderKey][]Field

// missing lists the lengths that no cell of a row has for itself: those are in
// the cell at hand.
func (r *reader) missing(w *row, at *column) []Field {
	var fields []Field
	for _, f := range []Field{Length, Width, Thickness} {
		if c := r.column(f); c == nil || c == at || w.Cell(c.index) == "" {
			fields = append(fields, f)
		}
	}
	return fields
}

// several parts a cell that holds as many lengths as the row has none for; the
// name of a rough section stays one.
func (r *reader) several(w *row, c *column) ([]string, []Field) {
	text := w.Cell(c.index)
	if !timesSign.MatchString(text) || rough(text, r.unitIn(c)) {
		return nil, nil
	}
	parts := timesSign.Split(text, -1)
	missing := r.missing(w, c)
	if len(c.order) == len(parts) {
		return parts, c.order
	}
	if len(parts) != len(missing) {
		return nil, nil
	}
	return parts, missing
}

// readOrders decides in which order the lengths stand in cells of several: as
// the head says, else as the maker confirms for the whole column.
func (r *reader) readOrders() {
	r.orders = orders{}
	type group struct {
		c       *column
		first   *row
		missing []Field
		rows    [][]measure.Length
	}
	var groups []*group
	byKey := map[orderKey]*group{}
	for w := range r.body() {
		for i := range r.columns {
			c := &r.columns[i]
			if c.field < Length || c.field > Size {
				continue
			}
			parts, missing := r.several(w, c)
			if parts == nil {
				continue
			}
			key := orderKey{c.index, fieldList(missing)}
			if len(c.order) == len(parts) {
				r.orders[key] = c.order
				continue
			}
			g := byKey[key]
			if g == nil {
				g = &group{c: c, first: w, missing: missing}
				byKey[key], groups = g, append(groups, g)
			}
			g.rows = append(g.rows, r.lengths(parts, c))
		}
	}
	for _, g := range groups {
		order, ok := r.askOrder(g.c, g.first, g.missing, g.rows)
		if ok {
			r.orders[orderKey{g.c.index, fieldList(g.missing)}] = order
		}
	}
}

// lengths reads the parts of a cell as well as it can, to compare them.
func (r *reader) lengths(parts []string, c *column) []measure.Length {
	all := make([]measure.Length, len(parts))
	for i, part := range parts {
		clean, _ := r.style.Plain(part, r.unitIn(c))
		if l, err := r.length(clean, c.unit); err == nil {
			all[i] = l.Length
		}
	}
	return all
}

// askOrder asks for the order of the lengths in a column's cells. The one that
// is offered has the thickness where every row has its smallest length.
func (r *reader) askOrder(c *column, first *row, missing []Field, rows [][]measure.Length) ([]Field, bool) {
	forward, backward := slices.Clone(missing), slices.Clone(missing)
	slices.Reverse(backward)
	q := Question{
		Key:     fmt.Sprintf("order %s %s", spreadsheet.Letters(c.index), fieldList(missing)),
		Place:   r.place(first, c.index),
		About:   fmt.Sprintf("the lengths in column %s are", spreadsheet.Letters(c.index)),
		Asks:    fmt.Sprintf("column %s: in which order do %s give %s?", spreadsheet.Letters(c.index), quoted(first.Cell(c.index)), plantext.List(fieldNamesOf(missing), "and")),
		Choices: []string{fieldList(forward), fieldList(backward)},
		Problem: fmt.Sprintf("%s has several lengths in one cell", quoted(first.Cell(c.index))),
		Remedy:  "write the order into the head, such as " + fieldList(forward) + ", or each length into a column of its own",
	}
	last := len(missing) - 1
	smallest := func(at int) bool {
		return !slices.ContainsFunc(rows, func(row []measure.Length) bool { return row[at] > slices.Min(row) })
	}
	switch {
	case smallest(last):
		q.Default, q.Why = fieldList(forward), "the last is the smallest"
	case smallest(0):
		q.Default, q.Why = fieldList(backward), "the first is the smallest"
	}
	return ask(r, q, func(answer string) ([]Field, string) {
		order := orderOf(headKey(answer))
		sorted := slices.Sorted(slices.Values(order))
		if !slices.Equal(sorted, missing) {
			return nil, quoted(answer) + " is no order of these lengths; write " + fieldList(forward) + ", or another order of them"
		}
		return order, ""
	})
}

func fieldNamesOf(fields []Field) []string {
	var names []string
	for _, f := range fields {
		names = append(names, f.String())
	}
	return names
}

func fieldList(fields []Field) string { return strings.Join(fieldNamesOf(fields), " x ") }

// readWhole asks once for a thickness that no column holds, for the whole list.
func (r *reader) readWhole() {
	if r.column(Thickness) != nil || r.column(Size) != nil || !r.settled() {
		return
	}
	for w := range r.body() {
		if !r.thicknessInOther(w) {
			heads := &r.rows[r.head]
			q := Question{
				Key:     "thickness",
				Place:   r.place(heads, len(heads.Cells)),
				About:   "thickness",
				Asks:    "no column says the thickness; what is it for every piece?",
				Problem: "no column says the thickness",
				Remedy:  "add a column with the head thickness",
			}
			r.thickness, _ = ask(r, q, r.lengthAnswer(measured{}))
			return
		}
	}
}

// thicknessInOther reports whether another column's cell holds the thickness
// too.
func (r *reader) thicknessInOther(w *row) bool {
	for i := range r.columns {
		c := &r.columns[i]
		if c.field < Length || c.field > Size {
			continue
		}
		if parts, missing := r.several(w, c); parts != nil && slices.Contains(missing, Thickness) {
			return true
		}
	}
	return false
}

// readSize reads the three lengths of a row.
func (r *reader) readSize(w *row, p *Piece) {
	found := map[Field]measured{}
	for _, f := range []Field{Length, Width, Thickness} {
		c := r.column(f)
		m := measured{row: w, at: c, field: f, name: p.Name}
		if c != nil {
			m.text = w.Cell(c.index)
		}
		found[f] = m
	}
	for i := range r.columns {
		c := &r.columns[i]
		if c.field < Length || c.field > Size {
			continue
		}
		parts, missing := r.several(w, c)
		order := r.orders[orderKey{c.index, fieldList(missing)}]
		for j := range order {
			if len(order) == len(parts) {
				found[order[j]] = measured{row: w, at: c, field: order[j], name: p.Name, text: strings.TrimSpace(parts[j])}
			}
		}
		if text := w.Cell(c.index); parts == nil && text != "" && (c.field == Size || rough(text, r.unitIn(c)) && timesSign.MatchString(text)) {
			for _, f := range r.missing(w, c) {
				found[f] = measured{row: w, at: c, field: f, name: p.Name, text: text}
			}
		}
	}
	p.Length, p.Width = r.read(found[Length]), r.read(found[Width])
	if p.Thickness = r.thickness; found[Thickness].text != "" || p.Thickness.Length == 0 {
		p.Thickness = r.read(found[Thickness])
	}
}
