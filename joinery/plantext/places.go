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
	word         string // what is written there; "" for the key itself
	said         bool   // otherwise than by a value: nothing that may be written in its stead
	line, column int32
}

// PlacesIn returns no places yet, with room for some.
func PlacesIn(text *Text, room int) Places {
	return Places{in: text, keys: make([]keyPlace, 0, room)}
}

// Add keeps where the value of a key was written, counted from 1.
func (p *Places) Add(key string, line, column int) {
	p.keys = append(p.keys, keyPlace{key: key, line: int32(line), column: int32(column)})
}

// AddAs keeps where something else says what a key would, as the word of a joint does;
// value tells that another value may be written there.
func (p *Places) AddAs(key, word string, value bool, line, column int) {
	p.keys = append(p.keys, keyPlace{key, word, !value, int32(line), int32(column)})
}

// Word is the word of the plan by which a key's value is written, false where the plan
// has none for it.
func (p Places) Word(key string) (word string, ok bool) {
	for _, k := range p.keys {
		switch {
		case k.key != key:
		case k.said:
			return "", false
		case k.word != "":
			return k.word, true
		}
	}
	return key, true
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
