package planfile

import (
	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// cutNames are the names of a piece's cuts and which waits for which.
type cutNames struct {
	mirrored *cutNames      // of the piece that this one mirrors, or nil
	number   map[string]int // of each own name in the list
	list     []cutName      // as written
	waitOn   []wait
}

// cutName is the name of a cut, and where it was written.
type cutName struct {
	name string
	at   position
}

// wait is one name after the key after.
type wait struct {
	cut int32 // the number of the one that waits
	at  position
	on  string
}

// place returns where a cut of that name was written.
func (c *cutNames) place(name string) (position, bool) {
	if number, ok := c.number[name]; ok {
		return c.list[number].at, true
	}
	if c.mirrored == nil {
		return position{}, false
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
		fault := joinery.Fault{
			Place:   r.place(n),
			Problem: "two cuts of this piece are named " + quoted(name),
			Remedy:  "give each cut of a piece a name of its own",
			Other:   r.where(first),
			Clash:   "the first one",
		}
		if _, own := c.number[name]; !own {
			fault.Problem = "this piece has the cut " + quoted(name) + " already, from the piece it mirrors"
			fault.Remedy = "leave it out if it is the same cut, mirrored; else give this one a name of its own"
			fault.Clash = "the cut that is mirrored"
		}
		r.add(fault)
		return
	}
	if c.number == nil {
		c.number = map[string]int{}
	}
	c.number[name] = len(c.list)
	c.list = append(c.list, cutName{name, positionOf(n)})
}

// waits keeps that a cut waits for another. One without a name is at fault
// anyway, and nothing waits for it.
func (c *cutNames) waits(cut, on string, n *yaml.Node) {
	number, named := c.number[cut]
	if !named {
		number = -1
	}
	c.waitOn = append(c.waitOn, wait{int32(number), positionOf(n), on})
}

// readAfter reads the cuts that this one must follow.
func (r *planReader) readAfter(f *fields, cut string, b *blank) []string {
	var names []string
	seen := map[string]bool{"": true}
	for _, n := range f.oneOrMore("after") {
		name := oneLine(n.Value)
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
	sound := names.waitOn[:0]
	for _, w := range names.waitOn {
		if r.over() {
			return
		}
		cut := ""
		if w.cut >= 0 {
			cut = names.list[w.cut].name
		}
		_, known := names.place(w.on)
		switch {
		case !known:
			r.faultAt(w.at, "after names a cut of the same piece; "+nearName("cut", w.on, names.all(cut)), "this piece has no cut named %s", quoted(w.on))
		case w.on == cut:
			r.faultAt(w.at, "name the cut that comes first, or take after out", "%s cannot come after itself", quoted(cut))
		case cut != "":
			sound = append(sound, w)
		}
	}
	r.checkCircles(names, sound)
	names.waitOn = nil
}
