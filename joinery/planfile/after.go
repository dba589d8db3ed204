package planfile

import (
	"slices"

	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

// cutNames are the names of a piece's cuts and which waits for which.
type cutNames struct {
	mirrored *cutNames           // of the piece that this one mirrors, or nil
	number   map[string]int      // of each own name in the list
	list     []cutName           // as written
	several  map[string][]string // names that stand for several cuts: of a joint, of a repeat
	waitOn   []wait
}

// cutName is the name of a cut, and where it was written.
type cutName struct {
	name string
	at   yamlfile.Position
}

// wait is one name after the key after.
type wait struct {
	cut int32 // the number of the one that waits
	at  yamlfile.Position
	on  string
}

// place returns where a cut of that name was written.
func (c *cutNames) place(name string) (yamlfile.Position, bool) {
	if number, ok := c.number[name]; ok {
		return c.list[number].at, true
	}
	if c.mirrored == nil {
		return yamlfile.Position{}, false
	}
	return c.mirrored.place(name)
}

// all lists the names, those of the mirrored piece first, except one.
func (c *cutNames) all(but string) []string {
	var names []string
	if c.mirrored != nil {
		names = c.mirrored.all(but)
	}
	for _, cut := range c.list {
		if cut.name != but {
			names = append(names, cut.name)
		}
	}
	return names
}

// see keeps a cut's name and faults a second cut of that name.
func (c *cutNames) see(r *planReader, name string, n *yaml.Node) {
	if name == "" {
		return
	}
	if first, again := c.place(name); again {
		fault := plantext.Fault{
			Place:   r.Place(n),
			Problem: "two cuts of this piece are named " + yamlfile.Quoted(name),
			Remedy:  "give each cut of a piece a name of its own",
			Other:   r.Where(first),
			Clash:   "the first one",
		}
		if _, own := c.number[name]; !own {
			fault.Problem = "this piece has the cut " + yamlfile.Quoted(name) + " already, from the piece it mirrors"
			fault.Remedy = "leave it out if it is the same cut, mirrored; else give this one a name of its own"
			fault.Clash = "the cut that is mirrored"
		}
		r.Add(fault)
		return
	}
	if c.number == nil {
		c.number = map[string]int{}
	}
	c.number[name] = len(c.list)
	c.list = append(c.list, cutName{name, yamlfile.PositionOf(n)})
}

// stand lets a name stand for one more cut.
func (c *cutNames) stand(name, cut string) {
	if c.several == nil {
		c.several = map[string][]string{}
	}
	c.several[name] = append(c.several[name], cut)
}

// stands lists the cuts that a name stands for: the cut of that name, or all those
// of a joint or a repeat.
func (c *cutNames) stands(name string) []string {
	if _, known := c.place(name); known {
		return []string{name}
	}
	for at := c; at != nil; at = at.mirrored {
		if cuts := at.several[name]; cuts != nil {
			return cuts
		}
	}
	return nil
}

// waits keeps that a cut waits for another. One without a name is at fault
// anyway, and nothing waits for it.
func (c *cutNames) waits(cut, on string, n *yaml.Node) {
	number, named := c.number[cut]
	if !named {
		number = -1
	}
	c.waitOn = append(c.waitOn, wait{int32(number), yamlfile.PositionOf(n), on})
}

// readAfter reads the cuts that this one must follow.
func (r *planReader) readAfter(f *yamlfile.Fields, cut string, b *blank) []string {
	var names []string
	seen := map[string]bool{"": true}
	for _, n := range f.OneOrMore("after") {
		name := yamlfile.OneLine(n.Value)
		if seen[name] {
			continue
		}
		seen[name] = true
		names = append(names, name)
		b.cuts.waits(cut, name, n)
	}
	return names
}

// checkAfter faults waits on unknown cuts and circles of waits.
func (r *planReader) checkAfter(b *blank) {
	names := &b.cuts
	var sound []wait
	for _, w := range names.waitOn {
		if r.over() {
			return
		}
		cut := ""
		if w.cut >= 0 {
			cut = names.list[w.cut].name
		}
		on := names.stands(w.on)
		switch {
		case on == nil && r.mayJoin(w.on):
		case on == nil:
			r.FaultAt(w.at, "after names a cut of the same piece; "+yamlfile.NearName("cut", w.on, names.all(cut)), "this piece has no cut named %s", yamlfile.Quoted(w.on))
		case w.on == cut:
			r.FaultAt(w.at, "name the cut that comes first, or take after out", "%s cannot come after itself", yamlfile.Quoted(cut))
		case cut != "":
			for _, one := range on {
				if one != cut {
					sound = append(sound, wait{w.cut, w.at, one})
				}
			}
		}
	}
	b.spellAfter()
	r.checkCircles(names, sound)
	names.waitOn = nil
}

// spellAfter names every cut that a name after the key after stands for.
func (b *blank) spellAfter() {
	for i := range b.Cuts {
		c := &b.Cuts[i]
		var after []string
		for _, name := range c.After {
			for _, one := range b.cuts.stands(name) {
				if one != c.Name && !slices.Contains(after, one) {
					after = append(after, one)
				}
			}
		}
		c.After = after
	}
}
