package planfile

import (
	"cmp"
	"slices"
	"strings"
)

// circles looks for cuts that wait for each other, by walking along the waits
// and meeting a cut that is still on the path.
type circles struct {
	r     *planReader
	names *cutNames
	waits []wait // sorted by the cut that waits
	state []walked
	path  []followed
}

// walked is how far a cut was looked at.
type walked uint8

const (
	unseen walked = iota
	onThePath
	walkedOut
)

// followed is a cut on the path, and its waits that were not followed yet.
type followed struct {
	cut  int
	left []wait
}

// checkCircles faults each wait that closes a circle.
func (r *planReader) checkCircles(names *cutNames, waits []wait) {
	slices.SortStableFunc(waits, func(a, b wait) int { return cmp.Compare(a.cut, b.cut) })
	c := circles{r: r, names: names, waits: waits, state: make([]walked, len(names.list))}
	for _, w := range waits {
		c.from(int(w.cut))
	}
}

func (c *circles) from(cut int) {
	c.enter(cut)
	for len(c.path) > 0 && !c.r.over() {
		last := &c.path[len(c.path)-1]
		if len(last.left) == 0 {
			c.state[last.cut] = walkedOut
			c.path = c.path[:len(c.path)-1]
			continue
		}
		w := last.left[0]
		last.left = last.left[1:]
		on, own := c.names.number[w.on]
		if !own {
			continue // what a mirrored cut waits for was looked at with the piece it is of
		}
		if c.state[on] == onThePath {
			c.fault(w, on)
		}
		c.enter(on)
	}
}

// enter puts a cut on the path, unless it was there before.
func (c *circles) enter(cut int) {
	if c.state[cut] != unseen {
		return
	}
	c.state[cut] = onThePath
	from, _ := slices.BinarySearchFunc(c.waits, cut, func(w wait, cut int) int { return cmp.Compare(int(w.cut), cut) })
	to := from
	for to < len(c.waits) && int(c.waits[to].cut) == cut {
		to++
	}
	c.path = append(c.path, followed{cut, c.waits[from:to]})
}

// fault names the whole circle that the last wait closes.
func (c *circles) fault(last wait, on int) {
	begin := len(c.path) - 1
	for c.path[begin].cut != on {
		begin--
	}
	const few = 8
	var names []string
	for _, s := range c.path[begin:] {
		if len(names) == few {
			names = append(names, "...")
			break
		}
		names = append(names, c.names.list[s.cut].name)
	}
	c.r.FaultAt(last.at, "take one of these after lines out",
		"the cuts wait for each other in a circle: %s", strings.Join(names, " after ")+" after "+last.on)
}
