package plantext

// Places tells where each key of a piece or cut was written. It is short, and
// not a map, because a plan has thousands of them.
type Places struct {
	in   *Text
	keys []keyPlace
}

// keyPlace is where the value of a key was written.
type keyPlace struct {
	key          string
	line, column int32
}

// PlacesIn returns no places yet, with room for some.
func PlacesIn(text *Text, room int) Places {
	return Places{in: text, keys: make([]keyPlace, 0, room)}
}

// Add keeps where the value of a key was written, counted from 1.
func (p *Places) Add(key string, line, column int) {
	p.keys = append(p.keys, keyPlace{key, int32(line), int32(column)})
}

// At returns the place of the first key that was written, or the fallback.
func (p Places) At(fallback Place, keys ...string) Place {
	for _, key := range keys {
		for _, k := range p.keys {
			if k.key == key {
				return p.in.Place(int(k.line), int(k.column))
			}
		}
	}
	return fallback
}
