package book

import (
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/plantext"
)

// reading is what reading one entry leaves to the next: the room for its groups,
// and what is the same in many entries.
type reading struct {
	lengths   memory
	shop      *joinery.Shop
	own, runs room
	groups    []group
}

// room holds the lines and fields of one group after another.
type room struct {
	lines  []int
	fields []field
}

// same returns the shop of the entry before where it is the same.
func (r *reading) same(shop joinery.Shop) *joinery.Shop {
	if r.shop == nil || r.shop.Scale != shop.Scale || r.shop.Fence != shop.Fence || r.shop.Stops != shop.Stops || r.shop.Cross != shop.Cross || r.shop.Minutes != shop.Minutes {
		r.shop = &shop
	}
	return r.shop
}

// groups divides a block into the entry's own fields and its runs'. A line
// indented further than its run's belongs to the run. The groups hold until the
// next block is divided in the same room.
func (b *Book) groups(block block, faults *complaints, r *reading) (entry *group, runs []group) {
	lines := int(block.last - block.first) // room for all, or the runs' groups would move while they grow
	r.runs = room{slices.Grow(r.runs.lines[:0], lines), slices.Grow(r.runs.fields[:0], lines)}
	r.groups = r.groups[:0]
	entry = &group{text: &b.text, faults: faults, lines: r.own.lines[:0], fields: r.own.fields[:0]}
	entry.head, _ = b.fieldOf(int(block.first))
	current, inset := entry, 0 // who gets the lines, and its own line's indent
	for i := int(block.first) + 1; i < int(block.last); i++ {
		line := b.line(i)
		f, ok := b.fieldOf(i)
		switch {
		case blank(line):
			current.lines = append(current.lines, i)
			continue
		case current != entry && indentOf(line) > inset:
		case ok && f.key == keyRun:
			free := r.runs
			if n := len(r.groups); n > 0 { // behind the run before, whose room has an end now
				last := &r.groups[n-1]
				free = room{lines: last.lines[len(last.lines):], fields: last.fields[len(last.fields):]}
			}
			r.groups = append(r.groups, group{text: &b.text, head: f, faults: faults, lines: free.lines, fields: free.fields})
			current, inset = &r.groups[len(r.groups)-1], indentOf(line)
			continue
		default:
			current = entry
		}
		current.lines = append(current.lines, i)
		if ok {
			current.fields = append(current.fields, f)
			continue
		}
		faults.add(plantext.Fault{Place: b.place(i, len(blanks(line))),
			Problem: "this line is no field", Remedy: "write KEY: VALUE, or # before a comment"})
	}
	r.own = room{entry.lines, entry.fields}
	return entry, r.groups
}
