package planfile

import (
	"slices"
	"strings"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// cutNames are the names of a piece's cuts and which waits for which.
type cutNames struct {
	mirrored *cutNames // of the piece that this one mirrors, or nil
	places   map[string]position
	order    []string // as written
	waitOn   []wait
}

// place returns where a cut of that name was written.
func (c *cutNames) place(name string) (position, bool) {
	if p, ok := c.places[name]; ok || c.mirrored == nil {
		return p, ok
	}
	return c.mirrored.place(name)
}

// all lists the names, those of the mirrored piece first.
func (c *cutNames) all() []string {
	if c.mirrored == nil {
		return c.order
	}
	return slices.Concat(c.mirrored.all(), c.order)
}

// wait is one name after the key after.
type wait struct {
	cut, on string
	at      position
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
		if _, own := c.places[name]; !own {
			fault.Problem = "this piece has the cut " + quoted(name) + " already, from the piece it mirrors"
			fault.Remedy = "leave it out if it is the same cut, mirrored; else give this one a name of its own"
			fault.Clash = "the cut that is mirrored"
		}
		r.add(fault)
		return
	}
	if c.places == nil {
		c.places = map[string]position{}
	}
	c.places[name] = positionOf(n)
	c.order = append(c.order, name)
}

func (c *cutNames) waits(cut, on string, n *yaml.Node) {
	c.waitOn = append(c.waitOn, wait{cut, on, positionOf(n)})
}

// checkAfter faults waits on unknown cuts and circles of waits.
func (r *planReader) checkAfter(b *blank) {
	next := map[string][]wait{}
	for _, w := range b.cuts.waitOn {
		if r.over() {
			return
		}
		_, known := b.cuts.place(w.on)
		switch {
		case !known:
			r.faultAt(w.at, "after names a cut of the same piece; "+nearName("cut", w.on, b.cuts.but(w.cut)), "this piece has no cut named %s", quoted(w.on))
		case w.on == w.cut:
			r.faultAt(w.at, "name the cut that comes first, or take after out", "%s cannot come after itself", quoted(w.cut))
		case w.cut != "":
			next[w.cut] = append(next[w.cut], w)
		}
	}
	search := circles{r: r, next: next, state: map[string]walked{}}
	for _, w := range b.cuts.waitOn {
		search.from(w.cut)
	}
	b.cuts.waitOn = nil
}

// but lists the names except one.
func (c *cutNames) but(name string) []string {
	var others []string
	for _, other := range c.all() {
		if other != name {
			others = append(others, other)
		}
	}
	return others
}

// walked is how far a cut was looked at for circles.
type walked uint8

const (
	unseen walked = iota
	onTheWay
	walkedOut
)

// circles looks for cuts that wait for each other, by walking along the waits
// and meeting a cut that is still on the way.
type circles struct {
	r     *planReader
	next  map[string][]wait
	state map[string]walked
	way   []step
}

// step is a cut on the way, and its waits that were not followed yet.
type step struct {
	cut  string
	left []wait
}

func (c *circles) from(name string) {
	c.enter(name)
	for len(c.way) > 0 && !c.r.over() {
		last := &c.way[len(c.way)-1]
		if len(last.left) == 0 {
			c.state[last.cut] = walkedOut
			c.way = c.way[:len(c.way)-1]
			continue
		}
		w := last.left[0]
		last.left = last.left[1:]
		if c.state[w.on] == onTheWay {
			c.fault(w)
		}
		c.enter(w.on)
	}
}

// enter puts a cut on the way, unless it was there before.
func (c *circles) enter(name string) {
	if c.state[name] == unseen {
		c.state[name] = onTheWay
		c.way = append(c.way, step{name, c.next[name]})
	}
}

// fault names the whole circle that the last wait closes.
func (c *circles) fault(last wait) {
	begin := len(c.way) - 1
	for c.way[begin].cut != last.on {
		begin--
	}
	const few = 8
	var names []string
	for _, s := range c.way[begin:] {
		if len(names) == few {
			names = append(names, "...")
			break
		}
		names = append(names, s.cut)
	}
	c.r.faultAt(last.at, "take one of these after lines out",
		"the cuts wait for each other in a circle: %s", strings.Join(names, " after ")+" after "+last.on)
}
