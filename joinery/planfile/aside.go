package planfile

import (
	"iter"
	"slices"

	"go.yaml.in/yaml/v4"
)

// innerList is the list in an entry of another that may be too heavy for one
// tree; that in the file itself stands under "".
var innerList = map[string]string{"": "pieces", "pieces": "cuts"}

// setAside puts a list that was left out of the tree in its place, to be read by
// each.
func (r *reader) setAside(root *yaml.Node, l listing) {
	if root.Kind == yaml.SequenceNode && len(root.Content) == 1 {
		root = root.Content[0] // the one entry of a list
	}
	line, column := r.text.Position(l.key)
	for i := 0; root.Kind == yaml.MappingNode && i+1 < len(root.Content); i += 2 {
		key, value := root.Content[i], root.Content[i+1]
		if key.Line != line || key.Column != column {
			continue
		}
		if null(value) || value.Kind == yaml.SequenceNode && len(value.Content) == 0 {
			if value.Kind = yaml.SequenceNode; !l.flow {
				value.Line, value.Column = r.text.Position(word(r.text.String(), l.inner.from))
			}
			r.lists[value] = l
			return
		}
	}
	r.unclear(r.at(line, column))
}

// each gives the entries of a list. One that was set aside is parsed again each
// time, and no further than it is asked for or a part of it is broken.
func (r *reader) each(n *yaml.Node, key, what string) iter.Seq[*yaml.Node] {
	l, aside := r.lists[n]
	if !aside {
		return slices.Values(n.Content)
	}
	return func(yield func(*yaml.Node) bool) {
		for batch := range l.batches(r.text.String(), r.most/batchShare) {
			root := r.load(part{stretch: batch, entries: true, flow: l.flow, what: "this " + what, list: innerList[key]})
			if r.broken {
				return
			}
			if root == nil || root.Kind != yaml.SequenceNode {
				line, column := r.text.Position(batch.from)
				r.unclear(r.at(line, column))
				return
			}
			for _, entry := range root.Content {
				if !yield(entry) {
					return
				}
			}
		}
	}
}

// leastEntry is the shortest a piece or cut can be written, or nearly, in bytes.
const leastEntry = 40

// size is how many pieces or cuts may stand in the list under a key, for the
// room they need.
func (f *fields) size(key string) int {
	n := f.value(key)
	if n == nil {
		return 0
	}
	l, aside := f.r.lists[n]
	if !aside {
		return len(n.Content)
	}
	count := 0
	for range l.entries(f.r.text.String()) {
		count++
	}
	return min(count, (l.inner.to-l.inner.from)/leastEntry)
}
