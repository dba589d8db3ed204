package joinery

import (
	"slices"
	"strings"
	"unicode"
)

// FindWood looks a wood up by a name as people write it: "white ash",
// "Ash, white", "white-ash", "Fraxinus americana", "hard maple". A maker's own
// woods are looked up first.
//
// Where ok is true, suggestion is "" or a word about a name taken loosely
// ("beech" taken as American beech). Where ok is false, suggestion names the
// woods that could be meant, such as "white oak, northern red oak or European
// oak", or is "" when none is near.
func FindWood(name string, own ...Wood) (w Wood, suggestion string, ok bool) {
	key := woodKey(name)
	if key == "" {
		return Wood{}, "", false
	}
	all := withOwn(own)
	exact := matching(all, func(s species) bool { return s.goesBy(key) })
	if len(exact) == 1 || len(exact) > 1 && exact[0].Group == Own {
		return exact[0], "", true
	}
	if len(exact) > 1 {
		return Wood{}, orList(exact), false
	}
	loose := matching(all, func(s species) bool { return slices.ContainsFunc(s.loosely, hasKey(key)) })
	if len(loose) == 0 {
		loose = matching(all, func(s species) bool { return s.endsIn(key) })
	}
	if len(loose) == 1 {
		return loose[0], name + " is taken as " + loose[0].Name, true
	}
	if len(loose) == 0 {
		loose = nearest(all, key)
	}
	return Wood{}, orList(loose), false
}

// withOwn puts a maker's own woods before the table.
func withOwn(own []Wood) []species {
	var all []species
	for _, w := range own {
		all = append(all, species{Wood: w})
	}
	return append(all, allSpecies()...)
}

// matching lists the woods whose row passes.
func matching(all []species, pass func(species) bool) []Wood {
	var woods []Wood
	for _, s := range all {
		if pass(s) {
			woods = append(woods, s.Wood)
		}
	}
	return woods
}

// names are all names that mean this wood and no other.
func (s species) names() []string {
	names := append([]string{s.Name}, s.also...)
	if s.Botanical != "" {
		names = append(names, s.Botanical)
	}
	return names
}

func (s species) goesBy(key string) bool { return slices.ContainsFunc(s.names(), hasKey(key)) }

// endsIn reports whether a name of the wood ends in the key ("oak" in "white
// oak") or its botanical name begins with it ("Quercus"). Two letters are too
// few to say anything.
func (s species) endsIn(key string) bool {
	if len(key) < 3 {
		return false
	}
	genus, _, _ := strings.Cut(s.Botanical, " ")
	return woodKey(genus) == key || slices.ContainsFunc(append([]string{s.Name}, s.also...), func(name string) bool {
		return strings.HasSuffix(woodKey(name), key)
	})
}

func hasKey(key string) func(string) bool {
	return func(name string) bool { return woodKey(name) == key }
}

// Built once: a replacer costs more than what it replaces.
var (
	brackets  = strings.NewReplacer("(", ", ", ")", "")
	spellings = strings.NewReplacer("grey", "gray", "fibre", "fiber")
)

// woodKey brings the ways of writing a name together: small letters without
// spaces and hyphens, and "ash, white" or "ash (white)" turned round.
func woodKey(name string) string {
	name = brackets.Replace(name)
	if noun, which, ok := strings.Cut(name, ","); ok {
		name = which + noun
	}
	name = spellings.Replace(strings.ToLower(name))
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return r
		}
		return -1
	}, name)
}

// nearest lists the woods with a name a slip or two away from the key, the
// nearest only.
func nearest(all []species, key string) []Wood {
	allowed := max(1, len([]rune(key))/4)
	if len([]rune(key)) < 3 || len(key) > 64 {
		return nil
	}
	best, woods := allowed+1, []Wood(nil)
	for _, s := range all {
		slips := allowed + 1
		for _, name := range append(s.names(), s.loosely...) {
			slips = min(slips, editDistance(woodKey(name), key))
		}
		switch {
		case slips > allowed || slips > best:
			continue
		case slips < best:
			best, woods = slips, nil
		}
		woods = append(woods, s.Wood)
	}
	return woods
}

// editDistance counts the letters to put in, leave out, change or swap with
// their neighbour to make one word of the other (Damerau's distance,
// restricted form).
func editDistance(a, b string) int {
	x, y := []rune(a), []rune(b)
	before, last, row := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := range x {
		row[0] = i + 1
		for j := range y {
			change := 1
			if x[i] == y[j] {
				change = 0
			}
			row[j+1] = min(last[j+1]+1, row[j]+1, last[j]+change)
			if i > 0 && j > 0 && x[i] == y[j-1] && x[i-1] == y[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(y)]
}

// orList joins names as "a, b or c".
func orList(woods []Wood) string {
	var b strings.Builder
	for i, w := range woods {
		switch {
		case i > 0 && i == len(woods)-1:
			b.WriteString(" or ")
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(w.Name)
	}
	return b.String()
}
