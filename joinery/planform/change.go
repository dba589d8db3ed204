package planform

import (
	"slices"
	"strings"

	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"
)

// entry is a value for a key of something, "" for none.
type entry struct {
	key   string
	value string
	shape keys.Shape
	inner []entry // of a key with keys inside

	holds   bool // it has keys inside, or a form of its own
	either  bool // it has keys inside or one value instead
	cleared bool // the one value is to go
}

// gone reports whether nothing is left to write.
func (e entry) gone() bool {
	return e.value == "" && !slices.ContainsFunc(e.inner, func(i entry) bool { return !i.gone() })
}

// entries gathers fields with their values by their outer keys, in the order in
// which they are written. A heading, the kind and name, is not among them.
func (s *sort) entries(word string, fields []Field) []entry {
	var all []entry
	for _, f := range fields {
		if s.kinds != nil && (f.Key == KindKey || f.Key == NameKey) {
			continue
		}
		outer, inner, dotted := strings.Cut(f.Key, ".")
		i := slices.IndexFunc(all, func(e entry) bool { return e.key == outer })
		if i < 0 {
			i = len(all)
			_, plain := s.key(word, outer)
			all = append(all, entry{key: outer, holds: s.holds(outer), either: plain && s.holds(outer)})
		}
		if dotted {
			all[i].inner = append(all[i].inner, entry{key: inner, value: oneLine(f.Value), shape: f.Shape})
		} else {
			all[i].value, all[i].shape = oneLine(f.Value), f.Shape
			all[i].cleared = all[i].value == ""
		}
	}
	order := s.order(word)
	rank := func(e entry) int {
		if at := slices.Index(order, e.key); at >= 0 {
			return at
		}
		return len(order)
	}
	slices.SortStableFunc(all, func(a, b entry) int { return rank(a) - rank(b) })
	return all
}

// text is what is written behind the key of an entry.
func (e entry) text(flow bool, quote byte) string {
	if e.value != "" || len(e.inner) == 0 {
		return encoded(e.value, e.shape, flow, quote)
	}
	return "{" + strings.Join(pairsOf(e.inner, true), ", ") + "}"
}

// pairsOf writes each entry that has a value as its key and value.
func pairsOf(all []entry, flow bool) []string {
	var pairs []string
	for _, e := range all {
		if !e.gone() {
			pairs = append(pairs, keyText(e.key)+": "+e.text(flow, 0))
		}
	}
	return pairs
}

func keyText(key string) string { return scalar(key, true, 0) }

// both is the fault of a key that takes one value or keys inside, and got both.
func both(key string) error {
	return plantext.Fault{Problem: key + " is one value for all, or has values of its own for each", Remedy: "clear the one or the others"}
}

// keysChange changes keys of one mapping. Its entries are those that change.
type keysChange struct {
	*splices
	keys    *yamlfile.Written
	order   []string
	removed []int // numbers of pairs
}

// change writes the entries and reports whether nothing is left of the mapping.
func (s *splices) change(keys *yamlfile.Written, entries []entry, order []string) (emptied bool, err error) {
	c := &keysChange{splices: s, keys: keys, order: order}
	var fresh []entry
	for _, e := range entries {
		at := c.pair(e.key)
		if at < 0 {
			if !e.gone() {
				fresh = append(fresh, e)
			}
			continue
		}
		if err := c.exchangeValue(at, e); err != nil {
			return false, err
		}
	}
	if len(c.removed) == len(keys.Pairs) && len(fresh) == 0 {
		return true, nil
	}
	c.remove()
	for _, e := range fresh {
		c.insert(e)
	}
	return false, nil
}

// pair is the number of the first pair of a key, -1 for none.
func (c *keysChange) pair(key string) int {
	return slices.IndexFunc(c.keys.Pairs, func(p yamlfile.WrittenPair) bool {
		return p.Key.Kind == yamlfile.WrittenText && p.Key.Text == key
	})
}

// exchangeValue changes the value of a key that is there.
func (c *keysChange) exchangeValue(at int, e entry) error {
	p := c.keys.Pairs[at]
	if e.holds && p.Value.Kind == yamlfile.WrittenKeys && !e.cleared || len(e.inner) > 0 && p.Value.Kind == yamlfile.WrittenKeys {
		return c.exchangeInner(at, e)
	}
	if e.gone() {
		c.removed = append(c.removed, at)
		return nil
	}
	filled := slices.ContainsFunc(e.inner, func(i entry) bool { return i.value != "" })
	if e.value != "" && filled || filled && e.either && !e.cleared && p.Value.Kind != yamlfile.WrittenNothing {
		return both(e.key)
	}
	c.set(p, e.text(c.keys.Flow, p.Value.Quote))
	return nil
}

// exchangeInner changes keys inside a key, or puts one value in their place.
func (c *keysChange) exchangeInner(at int, e entry) error {
	p := c.keys.Pairs[at]
	if e.value != "" {
		for _, inner := range p.Value.Pairs {
			i := slices.IndexFunc(e.inner, func(i entry) bool { return i.key == inner.Key.Text })
			if i < 0 || e.inner[i].value != "" {
				return both(e.key)
			}
		}
		c.set(p, e.text(c.keys.Flow, 0))
		return nil
	}
	var order []string
	for _, i := range e.inner {
		order = append(order, i.key)
	}
	emptied, err := c.change(p.Value, e.inner, order)
	if emptied {
		c.removed = append(c.removed, at)
	}
	return err
}

// set puts a text in the place of a value.
func (c *keysChange) set(p yamlfile.WrittenPair, text string) {
	v := p.Value
	block := !v.Flow && (v.Kind == yamlfile.WrittenKeys || v.Kind == yamlfile.WrittenList) || v.Quote == '|' || v.Quote == '>'
	switch {
	case p.Colon == 0:
		c.exchange(p.Key.To, p.Key.To, ": "+text)
	case v.Kind == yamlfile.WrittenNothing:
		c.exchange(p.Colon, p.Colon, " "+text)
	case block:
		c.exchange(p.Colon, v.To, " "+text)
	default:
		c.exchange(v.From, v.To, text)
	}
}

// kept is the number of the nearest pair that stays, from one backwards or
// forwards; -1 for none.
func (c *keysChange) kept(at, step int) int {
	for ; at >= 0 && at < len(c.keys.Pairs); at += step {
		if !slices.Contains(c.removed, at) {
			return at
		}
	}
	return -1
}

// remove takes pairs out.
func (c *keysChange) remove() {
	pairs := c.keys.Pairs
	for _, at := range c.removed {
		before, after := c.kept(at, -1), c.kept(at, 1)
		switch {
		case c.keys.Flow && after >= 0: // up to the next key, which may go as well
			c.exchange(pairs[at].Key.From, pairs[at+1].Key.From, "")
		case c.keys.Flow && before >= 0 && slices.Contains(c.removed, at-1): // goes with the one before it
		case c.keys.Flow && before >= 0:
			c.exchange(ending(pairs[before]), ending(pairs[len(pairs)-1]), "")
		case c.keys.Flow: // new keys come in its place
			c.exchange(pairs[at].Key.From, ending(pairs[len(pairs)-1]), "")
		case c.firstInLine(pairs[at].Key.From):
			c.exchange(c.lineStart(pairs[at].Key.From), c.nextLine(ending(pairs[at])), "")
		case after >= 0: // behind a dash: the next key comes up to it
			c.exchange(pairs[at].Key.From, pairs[after].Key.From, "")
		default:
			c.exchange(pairs[at].Key.From, ending(pairs[at]), "")
		}
	}
}

// ending is where a pair ends.
func ending(p yamlfile.WrittenPair) int { return max(p.Key.To, p.Colon, p.Value.To) }

// insert puts a new key where it belongs: behind those that come before it.
func (c *keysChange) insert(e entry) {
	c.insertText(e.key, func(flow bool) string { return keyText(e.key) + ": " + e.text(flow, 0) })
}

func (c *keysChange) insertText(key string, text func(flow bool) string) {
	pairs := c.keys.Pairs
	before := c.before(key)
	indent := strings.Repeat(" ", c.keys.Column)
	switch {
	case c.keys.Flow && before >= 0:
		c.exchange(ending(pairs[before]), ending(pairs[before]), ", "+text(true))
	case c.keys.Flow && c.kept(0, 1) >= 0:
		at := pairs[c.kept(0, 1)].Key.From
		c.exchange(at, at, text(true)+", ")
	case c.keys.Flow:
		c.exchange(c.keys.From+1, c.keys.From+1, text(true))
	case before >= 0:
		c.insertLines(c.behind(ending(pairs[before]), c.keys.Column), indent+text(false)+"\n")
	case c.firstInLine(c.keys.From):
		c.insertLines(c.lineStart(c.keys.From), indent+text(false)+"\n")
	default:
		c.exchange(c.keys.From, c.keys.From, text(false)+"\n"+indent)
	}
}

// before is the number of the pair behind which a new key belongs; -1 for the
// beginning. Behind a dash, what stands first stays first.
func (c *keysChange) before(key string) int {
	rank := func(key string) int {
		if at := slices.Index(c.order, key); at >= 0 {
			return at
		}
		return len(c.order)
	}
	best := -1
	for i, p := range c.keys.Pairs {
		if !slices.Contains(c.removed, i) && rank(p.Key.Text) <= rank(key) && rank(p.Key.Text) < len(c.order) {
			best = i
		}
	}
	if best < 0 && !c.keys.Flow && !c.firstInLine(c.keys.From) {
		return c.kept(0, 1)
	}
	return best
}
