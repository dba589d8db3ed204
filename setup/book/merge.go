package book

import (
	"slices"
	"strings"
)

// merged writes an entry over the lines of an older one.
func (b *Book) merged(block block, e *Entry) []string {
	var ignored complaints
	own, runs := b.groups(block, &ignored, &reading{})
	m := merger{b: b, margin: "  "}
	if len(own.fields) > 0 {
		m.margin = blanks(b.line(own.fields[0].line))
	}
	m.lines = append(m.lines, b.line(int(block.first)))
	m.overwrite(own.lines, entryKeys, lasting(e.fields(), own), m.margin)
	for i := range e.Setup.Runs {
		fields := e.runFields(i)
		name := clean(e.Setup.Runs[i].Piece.Name)
		m.lines = append(m.lines, m.margin+keyRun+": "+name)
		old := slices.IndexFunc(runs, func(g group) bool { return g.isRun(name, fields) })
		if old < 0 {
			m.overwrite(nil, runKeys, fields, m.margin+"  ")
			continue
		}
		m.overwrite(runs[old].lines, runKeys, lasting(fields, &runs[old]), m.margin+"  ")
		runs = slices.Delete(runs, old, old+1)
	}
	m.leftOver(runs)
	return m.lines
}

// isRun reports whether an old run is that of the same piece, cut and part.
func (g *group) isRun(piece string, fields pairs) bool {
	return g.head.value == piece && g.words(keyCut) == fields.value(keyCut) && g.words(keyPart) == fields.value(keyPart) &&
		g.words(keyPosition) == fields.value(keyPosition)
}

func (ps pairs) value(key string) string {
	for _, p := range ps {
		if p.key == key {
			return p.value
		}
	}
	return ""
}

// lastingKeys are what a maker added; they outlive a new setup that is silent
// on them.
var lastingKeys = []string{keyNote, keyStood, keyHigh, keyBegan, keyEnded}

// lasting adds to new fields what the old ones have and the new do not speak of.
func lasting(fresh pairs, old *group) pairs {
	for _, key := range lastingKeys {
		if fresh.value(key) != "" {
			continue
		}
		for _, f := range old.all(key) {
			value := f.value
			if !free(key) {
				value, _ = withoutComment(value)
			}
			fresh.add(key, value)
		}
	}
	return fresh
}

// merger gathers the lines of an entry that is written over.
type merger struct {
	b      *Book
	margin string // the blanks before the entry's fields
	lines  []string
}

// overwrite goes through old lines: a field of one of the keys is replaced by
// the new one, or dropped where there is none; every other line stays. New
// fields without an old line come behind.
func (m *merger) overwrite(old []int, keys []string, fresh pairs, indent string) {
	written := map[string]bool{}
	put := func(key, indent, comment string) {
		if written[key] {
			return
		}
		written[key] = true
		for _, p := range fresh {
			if p.key == key {
				m.lines = append(m.lines, strings.TrimRight(indent+p.key+": "+p.value+comment, " "))
			}
		}
	}
	for _, i := range old {
		line := m.b.line(i)
		f, ok := m.b.fieldOf(i)
		if blank(line) || !ok || !slices.Contains(keys, f.key) {
			m.lines = append(m.lines, m.deeper(line, indent))
			continue
		}
		comment := ""
		if !free(f.key) {
			if _, comment = withoutComment(f.value); comment != "" {
				comment = "  " + comment
			}
		}
		put(f.key, blanks(m.deeper(line, indent)), comment)
	}
	for _, p := range fresh {
		put(p.key, indent, "")
	}
}

// deeper indents a line that would fall out of its run.
func (m *merger) deeper(line, indent string) string {
	if strings.TrimSpace(line) == "" || indent == m.margin || indentOf(line) > indentOf(m.margin) {
		return line
	}
	return indent + strings.TrimLeft(line, " \t")
}

// leftOver keeps the comments of runs that the new entry does not have.
func (m *merger) leftOver(runs []group) {
	for _, run := range runs {
		for _, i := range run.lines {
			if line := m.b.line(i); blank(line) && strings.TrimSpace(line) != "" {
				m.lines = append(m.lines, m.deeper(line, m.margin+"  "))
			}
		}
	}
}
