package timber

import (
	"slices"
	"strings"
	"sync"
	"unicode"

	"fencecard/joinery/plantext"
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
	exact := matching(all, func(s *spelled) bool { return slices.Contains(s.exact, key) })
	if len(exact) == 1 || len(exact) > 1 && exact[0].Group == Own {
		return exact[0], "", true
	}
	if len(exact) > 1 {
		return Wood{}, orList(exact), false
	}
	loose := matching(all, func(s *spelled) bool { return slices.Contains(s.loose, key) })
	if len(loose) == 0 {
		loose = matching(all, func(s *spelled) bool { return s.endsIn(key) })
	}
	if len(loose) == 1 {
		return loose[0], name + " is taken as " + loose[0].Name, true
	}
	if len(loose) == 0 {
		loose = nearest(all, key)
	}
	return Wood{}, orList(loose), false
}

// spelled is a wood with the keys of its names.
type spelled struct {
	Wood
	exact  []string // of this wood and no other
	common []string // those of them that are not botanical
	loose  []string // taken as this wood with a word about it
	genus  string
}

func spell(s species) spelled {
	common := keys(append([]string{s.Name}, s.also...))
	out := spelled{Wood: s.Wood, exact: common, common: common, loose: keys(s.loosely)}
	if s.Botanical != "" {
		genus, _, _ := strings.Cut(s.Botanical, " ")
		out.genus = woodKey(genus)
		out.exact = append(slices.Clone(common), woodKey(s.Botanical))
	}
	return out
}

func keys(names []string) []string {
	keys := make([]string, len(names))
	for i, name := range names {
		keys[i] = woodKey(name)
	}
	return keys
}

// allSpelled is the embedded table, every name turned into its key once.
var allSpelled = sync.OnceValue(func() []spelled {
	all := make([]spelled, len(allSpecies()))
	for i, s := range allSpecies() {
		all[i] = spell(s)
	}
	return all
})

// withOwn puts a maker's own woods before the table.
func withOwn(own []Wood) []spelled {
	if len(own) == 0 {
		return allSpelled()
	}
	var all []spelled
	for _, w := range own {
		all = append(all, spell(species{Wood: w}))
	}
	return append(all, allSpelled()...)
}

// matching lists the woods whose row passes.
func matching(all []spelled, pass func(*spelled) bool) []Wood {
	var woods []Wood
	for i := range all {
		if pass(&all[i]) {
			woods = append(woods, all[i].Wood)
		}
	}
	return woods
}

// endsIn reports whether a name of the wood ends in the key ("oak" in "white
// oak") or its botanical name begins with it ("Quercus"). Two letters are too
// few to say anything.
func (s *spelled) endsIn(key string) bool {
	if len(key) < 3 {
		return false
	}
	return s.genus == key || slices.ContainsFunc(s.common, func(name string) bool { return strings.HasSuffix(name, key) })
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
func nearest(all []spelled, key string) []Wood {
	allowed := max(1, len([]rune(key))/4)
	if len([]rune(key)) < 3 || len(key) > 64 {
		return nil
	}
	best, woods := allowed+1, []Wood(nil)
	for i := range all {
		slips := allowed + 1
		for _, names := range [][]string{all[i].exact, all[i].loose} {
			for _, name := range names {
				slips = min(slips, plantext.Slips(name, key))
			}
		}
		switch {
		case slips > allowed || slips > best:
			continue
		case slips < best:
			best, woods = slips, nil
		}
		woods = append(woods, all[i].Wood)
	}
	return woods
}

// orList joins names as "a, b or c".
func orList(woods []Wood) string {
	names := make([]string, len(woods))
	for i, w := range woods {
		names[i] = w.Name
	}
	return plantext.List(names, "or")
}
