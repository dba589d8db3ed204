package planfile

import "go.yaml.in/yaml/v4"

// pair is a key and its value, nil where that was faulted already.
type pair struct{ key, value *yaml.Node }

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
