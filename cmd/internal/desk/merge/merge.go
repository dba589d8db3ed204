// Package merge puts together what two editors made of one text.
package merge

import (
	"slices"
	"strings"
)

// mostCells bounds the table that lines are compared in. What differs over more
// counts as one change, which is asked about sooner and never wrong.
const mostCells = 1 << 24

// Lines puts together what two editors made of a text, line by line, and reports
// whether it could: it cannot where both changed the same lines, or lines without
// one between them that both left, in different ways. How a line ends is no change;
// a line that only one editor left keeps the other's end.
func Lines(base, mine, theirs string) (text string, ok bool) {
	was, here, there := lines(base), lines(mine), lines(theirs)
	inMine, inTheirs := match(was, here), match(was, there)
	var out strings.Builder
	b, m, t := 0, 0, 0
	for {
		// The next line that both left.
		next := b
		for next < len(was) && (inMine[next] < 0 || inTheirs[next] < 0) {
			next++
		}
		m1, t1 := len(here), len(there)
		if next < len(was) {
			m1, t1 = inMine[next], inTheirs[next]
		}
		old, my, their := was[b:next], here[m:m1], there[t:t1]
		switch {
		case same(my, their), same(old, my):
			write(&out, their)
		case same(old, their):
			write(&out, endedLike(my, theirs))
		default:
			return "", false
		}
		if next == len(was) {
			return out.String(), true
		}
		write(&out, there[t1:t1+1])
		b, m, t = next+1, m1+1, t1+1
	}
}

// Same reports whether two texts have the same lines, however those end.
func Same(a, b string) bool { return same(lines(a), lines(b)) }

// lines splits a text behind every line feed; a last line may have none.
func lines(text string) []string { return slices.Collect(strings.Lines(text)) }

// bare is a line without its end. A last line without one differs from the same
// line with one only in that, which nobody is asked about.
func bare(line string) string { return strings.TrimRight(line, "\r\n") }

func same(a, b []string) bool {
	return slices.EqualFunc(a, b, func(a, b string) bool { return bare(a) == bare(b) })
}

func write(out *strings.Builder, lines []string) {
	for _, line := range lines {
		if n := out.Len(); n > 0 && !strings.HasSuffix(out.String(), "\n") {
			out.WriteByte('\n')
		}
		out.WriteString(line)
	}
}

// endedLike gives lines the ends that a text has, which an editor in a browser
// forgets.
func endedLike(lines []string, text string) []string {
	if !strings.Contains(text, "\r\n") {
		return lines
	}
	ended := make([]string, len(lines))
	for i, line := range lines {
		ended[i] = bare(line)
		if strings.HasSuffix(line, "\n") {
			ended[i] += "\r\n"
		}
	}
	return ended
}

// match tells for each line of a where it stands in b, -1 for nowhere: the longest
// run of lines that both have in the same order.
func match(a, b []string) []int {
	at := make([]int, len(a))
	for i := range at {
		at[i] = -1
	}
	head := 0
	for head < len(a) && head < len(b) && bare(a[head]) == bare(b[head]) {
		at[head] = head
		head++
	}
	tail := 0
	for tail < len(a)-head && tail < len(b)-head && bare(a[len(a)-1-tail]) == bare(b[len(b)-1-tail]) {
		at[len(a)-1-tail] = len(b) - 1 - tail
		tail++
	}
	rows, columns := len(a)-head-tail, len(b)-head-tail
	if rows == 0 || columns == 0 || rows > mostCells/columns {
		return at
	}
	// longest[i][j]: how many lines a[head+i:] and b[head+j:] have in common.
	width := columns + 1
	longest := make([]int32, (rows+1)*width)
	for i := rows - 1; i >= 0; i-- {
		for j := columns - 1; j >= 0; j-- {
			if bare(a[head+i]) == bare(b[head+j]) {
				longest[i*width+j] = longest[(i+1)*width+j+1] + 1
			} else {
				longest[i*width+j] = max(longest[(i+1)*width+j], longest[i*width+j+1])
			}
		}
	}
	for i, j := 0, 0; i < rows && j < columns; {
		switch {
		case bare(a[head+i]) == bare(b[head+j]):
			at[head+i] = head + j
			i, j = i+1, j+1
		case longest[(i+1)*width+j] >= longest[i*width+j+1]:
			i++
		default:
			j++
		}
	}
	return at
}
