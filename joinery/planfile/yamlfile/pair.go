package yamlfile

import "go.yaml.in/yaml/v4"

// Pair is a key and its value, nil where that was faulted already.
type Pair struct{ Key, Value *yaml.Node }

// PairOf returns what a mapping has for a key, read as it stands: nothing is
// faulted, not even a second key of the name. It is empty where the key is not
// there.
func PairOf(n *yaml.Node, key string) Pair {
	if n == nil || n.Kind != yaml.MappingNode {
		return Pair{}
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return Pair{n.Content[i], n.Content[i+1]}
		}
	}
	return Pair{}
}

// ValueOf returns the value of a key, or nil.
func ValueOf(n *yaml.Node, key string) *yaml.Node { return PairOf(n, key).Value }

// held is a pair of a thing, and whether anybody asked for its value.
type held struct {
	Pair
	asked bool
}

// pair returns what was written for a key, or nil. There are few, so that a map
// of them would take longer and more memory.
func (f *Fields) pair(key string) *held {
	for i := range f.pairs {
		if f.pairs[i].Key.Value == key {
			return &f.pairs[i]
		}
	}
	return nil
}

// Key returns a key where it was written, or nil.
func (f *Fields) Key(key string) *yaml.Node {
	if p := f.pair(key); p != nil {
		return p.Key
	}
	return nil
}

// Value returns the value of a key, or nil where the key was not written or its
// value was faulted already.
func (f *Fields) Value(key string) *yaml.Node {
	if p := f.pair(key); p != nil {
		p.asked = true
		return p.Value
	}
	return nil
}

// Unread lists the keys that were written and whose values nobody asked for.
func (f *Fields) Unread() []*yaml.Node {
	var keys []*yaml.Node
	for i := range f.pairs {
		if !f.pairs[i].asked {
			keys = append(keys, f.pairs[i].Key)
		}
	}
	return keys
}

// Written reports whether a key was written.
func (f *Fields) Written(key string) bool { return f.pair(key) != nil }

// Forget drops the value of a key.
func (f *Fields) Forget(key string) {
	if p := f.pair(key); p != nil {
		p.Value = nil
	}
}

// TextOf is the text of a node, "" where there is none.
func TextOf(n *yaml.Node) string {
	if n == nil {
		return ""
	}
	return n.Value
}
