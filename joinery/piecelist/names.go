package piecelist

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"fencecard/joinery/piecelist/spreadsheet"
)

// longestName is a little less than a plan takes, since a corner may come
// before it.
const longestName = 80

// mostCopies is the most mirror images that a plan takes.
const mostCopies = 15_000

// nameAll gives every piece of the plan a name of its own. Where a row's name is
// taken already, it is asked for another.
func (r *reader) nameAll() {
	taken := map[string]int{} // the row that has a name
	last := map[string]int{}  // the last number behind a name
	mirrored := 0
	for i := range r.list.Pieces {
		p := &r.list.Pieces[i]
		clash := func(name string) (string, int) {
			for _, c := range p.copies(name, r.list.german) {
				if at, is := taken[nameKey(c.Name)]; is {
					return c.Name, at
				}
			}
			return "", 0
		}
		p.Copies = p.copies(p.Name, r.list.german)
		if name, at := clash(p.Name); name != "" {
			r.rename(p, name, at, clash, last)
		}
		for _, c := range p.Copies {
			taken[nameKey(c.Name)] = p.Row
		}
		if mirrored += len(p.Copies) - 1; mirrored > mostCopies {
			r.fault(p.place, fmt.Sprintf("with this row there are more than %d mirror images", mostCopies), "make several lists and plans of it")
			return
		}
	}
}

// rename asks for another name, until one is free.
func (r *reader) rename(p *Piece, name string, at int, clash func(string) (string, int), last map[string]int) {
	q := Question{
		Key:     fmt.Sprintf("name %d", p.Row),
		Place:   p.place,
		About:   "named",
		Asks:    fmt.Sprintf("rows %d and %d are both named %s: what is the one in row %[2]d called?", at, p.Row, quoted(name)),
		Problem: fmt.Sprintf("rows %d and %d are both named %s", at, p.Row, quoted(name)),
		Remedy:  "give each a name of its own, or put them into one row where they are alike",
	}
	if p.Heading != "" && !r.list.german && !strings.Contains(nameKey(p.Name), nameKey(p.Heading)) {
		q.Default, q.Why = strings.Join(slices.Concat(small(strings.Fields(p.Heading)), small(strings.Fields(p.Name))), " "), "it stands below "+quoted(p.Heading)
		if taken, _ := clash(q.Default); taken != "" || utf8.RuneCountInString(q.Default) > longestName {
			q.Default = ""
		}
	}
	for n := max(2, last[nameKey(p.Name)]+1); q.Default == ""; n++ {
		numbered := fmt.Sprintf("%s %d", p.Name, n)
		if taken, _ := clash(numbered); taken == "" {
			q.Default, q.Why = numbered, "a plan has no name twice"
			last[nameKey(p.Name)] = n
		}
	}
	answer, ok := ask(r, q, func(answer string) (string, string) {
		answer = spreadsheet.Tidy(answer)
		if taken, at := clash(answer); taken != "" {
			return "", fmt.Sprintf("%s is the name of row %d already", quoted(taken), at)
		}
		return answer, tooLong(answer)
	})
	if ok {
		p.Copies = p.copies(answer, r.list.german)
		p.Remarks = append(p.Remarks, r.taken()...)
	}
}

func tooLong(name string) string {
	if n := utf8.RuneCountInString(name); n > longestName {
		return fmt.Sprintf("the name is %d characters long; shorten it to %d", n, longestName)
	}
	return ""
}
