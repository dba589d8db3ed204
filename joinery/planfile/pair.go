package planfile

import "go.yaml.in/yaml/v4"

// pair is a key and its value, nil where that was faulted already.
type pair struct{ key, value *yaml.Node }

// pairOf returns what a mapping has for a key, read as it stands: nothing is
// faulted, not even a second key of the name. It is empty where the key is not
// there.
func pairOf(n *yaml.Node, key string) pair {
	if n == nil || n.Kind != yaml.MappingNode {
		return pair{}
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return pair{n.Content[i], n.Content[i+1]}
		}
	}
	return pair{}
}

// valueOf returns the value of a key, or nil.
func valueOf(n *yaml.Node, key string) *yaml.Node { return pairOf(n, key).value }

// pair returns what was written for a key, or nil. There are few, so that a map
// of them would take longer and more memory.
func (f *fields) pair(key string) *pair {
	for i := range f.pairs {
		if f.pairs[i].key.Value == key {
			return &f.pairs[i]
		}
	}
	return nil
}

// key returns a key where it was written, or nil.
func (f *fields) key(key string) *yaml.Node {
	if p := f.pair(key); p != nil {
		return p.key
	}
	return nil
}

// value returns the value of a key, or nil where the key was not written or its
// value was faulted already.
func (f *fields) value(key string) *yaml.Node {
	if p := f.pair(key); p != nil {
		return p.value
	}
	return nil
}

// written reports whether a key was written.
func (f *fields) written(key string) bool { return f.pair(key) != nil }

// forget drops the value of a key.
func (f *fields) forget(key string) {
	if p := f.pair(key); p != nil {
		p.value = nil
	}
}

// textOf is the text of a node, "" where there is none.
func textOf(n *yaml.Node) string {
	if n == nil {
		return ""
	}
	return n.Value
}
