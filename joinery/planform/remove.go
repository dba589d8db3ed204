package planform

import (
	"slices"
	"strings"

	"fencecard/joinery/plantext"
)

// Remove takes out what stands at a place in a text: a piece with its cuts, a
// cut, a joint, the plan's own shop, a bit, a wood. Remarks straight above it, in line with
// its dash, and the blank line that set it off go with it; all else stays byte for byte. What named it
// elsewhere is left for the reader of plans to find. The errors are those of
// [Put].
func Remove(text []byte, at string) ([]byte, error) {
	d, err := open("", text)
	if err != nil {
		return nil, err
	}
	t := d.find(at)
	if t == nil || at == Top {
		return nil, plantext.Fault{Problem: "there is nothing at " + at + " to take out", Remedy: "read the plan's forms again"}
	}
	w := &writer{document: d, splices: splicesOf(text), sort: t.sort}
	parent := d.find(t.under)
	switch {
	case t.list == nil:
		w.removeKey(parent, shopAt)
	case len(t.list.Items) == 1:
		w.removeKey(parent, t.sort.list)
	case t.list.Flow:
		w.removeFlow(t)
	default:
		w.removeLines(t)
	}
	put := w.result()
	after, err := open("", put)
	if err != nil || !slices.Equal(d.without(at).sayings(""), after.sayings("")) {
		return nil, w.cannot("")
	}
	return put, nil
}

// without is a document less one thing and what stands in it.
func (d *document) without(at string) *document {
	left := *d
	left.things = slices.DeleteFunc(slices.Clone(d.things), func(t thing) bool {
		return t.at == at || strings.HasPrefix(t.at, at+"/")
	})
	return &left
}

// removeKey takes a key out with what stands below it.
func (w *writer) removeKey(parent *thing, key string) {
	c := &keysChange{splices: w.splices, keys: parent.keys}
	at := c.pair(key)
	c.removed = []int{at}
	p := parent.keys.Pairs[at]
	if parent.keys.Flow || !w.firstInLine(p.Key.From) {
		c.remove()
		return
	}
	from, to := w.lineStart(p.Key.From), w.behind(ending(p), parent.keys.Column)
	w.close(from, to)
}

// removeFlow takes an entry out of brackets, with a comma.
func (w *writer) removeFlow(t *thing) {
	items := t.list.Items
	if t.number+1 < len(items) {
		w.exchange(items[t.number].From, items[t.number+1].From, "")
		return
	}
	w.exchange(items[t.number-1].To, items[t.number].To, "")
}

// removeLines takes the lines of an entry out.
func (w *writer) removeLines(t *thing) {
	dash := t.list.Items[t.number].Dash
	from := w.lineStart(dash)
	column := dash - from
	to := w.behind(t.keys.To, column)
	for from > 0 {
		above := w.lineBefore(from)
		line := w.lineAt(above)
		word := strings.TrimLeft(line, " ")
		if above == from || !strings.HasPrefix(word, "#") || len(line)-len(word) != column {
			break
		}
		from = above
	}
	w.close(from, to)
}

// close takes lines out, and one of two blank lines that would meet.
func (w *writer) close(from, to int) {
	if before := w.lineBefore(from); before < from && w.blankAt(before) {
		switch {
		case w.blankAt(to):
			to = w.nextLine(to)
		case to == len(w.data):
			from = before
		}
	}
	w.exchange(from, to, "")
}
