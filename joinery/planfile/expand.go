package planfile

import (
	"cmp"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"unicode/utf8"

	"fencecard/joinery"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

// Expand spells a plan out: every joint and every repeat as cuts, and every
// length that was left to joints. It is the same plan, and makes the same deck.
// Remarks stay where they were, and one above each cut of a joint names the joint.
// The error is [plantext.Faults], those of the plan or one that says what cannot be
// written into it.
func Expand(name string, data []byte, open func(path string) ([]byte, error)) ([]byte, error) {
	r := newPlanReader(name, open)
	plan, err := r.readAll(data)
	if err != nil {
		return nil, err
	}
	e := expansion{r: r, text: r.Text.String()}
	e.joints()
	for _, b := range r.blanks {
		e.piece(b)
	}
	text := e.edited()
	if end := yamlfile.LineEnd(data); end != "\n" {
		text = strings.ReplaceAll(text, "\n", end)
	}
	again, err := Read(name, []byte(text), open)
	if err != nil || !samePlan(plan, again) {
		return nil, e.cannot(err)
	}
	return []byte(text), nil
}

// expansion is a plan while it is spelt out.
type expansion struct {
	r     *planReader
	text  string
	edits []edit
}

// edit exchanges a part of the text.
type edit struct {
	from, to int
	by       string
}

func (e *expansion) exchange(from, to int, by string) {
	e.edits = append(e.edits, edit{from, to, by})
}

// edited is the text with all its edits.
func (e *expansion) edited() string {
	slices.SortStableFunc(e.edits, func(a, b edit) int { return cmp.Or(a.from-b.from, a.to-b.to) })
	var b strings.Builder
	at := 0
	for _, change := range e.edits {
		if change.from < at {
			continue // inside one that was exchanged as a whole; the result is read again
		}
		b.WriteString(e.text[at:change.from])
		b.WriteString(change.by)
		at = change.to
	}
	b.WriteString(e.text[at:])
	return b.String()
}

// cannot is the fault of a plan whose layout the edits do not fit.
func (e *expansion) cannot(err error) error {
	f := plantext.Fault{
		Place:   plantext.Place{File: e.r.Name},
		Problem: "the plan cannot be spelt out as it is laid out",
		Remedy:  "write each piece, each cut and each joint on lines of its own, begun with a dash, and joints: as a key of the plan below pieces",
	}
	var faults plantext.Faults
	if errors.As(err, &faults) && len(faults) > 0 {
		f.Problem += fmt.Sprintf("; line %d would say: %s", faults[0].Line, faults[0].Problem)
	}
	return plantext.Faults{f}
}

// offset is where a node begins in the text.
func (e *expansion) offset(n *yaml.Node) int {
	at := e.r.Text.Start(n.Line)
	for column := 1; column < n.Column && at < len(e.text); column++ {
		_, size := utf8.DecodeRuneInString(e.text[at:])
		at += size
	}
	return at
}

// below is the line behind what stands under a key that is followed by another
// line: blank lines and remarks above that belong to it.
func (e *expansion) below(next int) int {
	for next > 1 {
		line := strings.TrimSpace(e.r.Text.Line(next - 1))
		if line != "" && line[0] != '#' {
			break
		}
		next--
	}
	return next
}

// nextKey is the line of the first key of a mapping behind a line, or the
// fallback.
func nextKey(n *yaml.Node, line, fallback int) int {
	next := fallback
	for i := 0; i < len(n.Content); i += 2 {
		if at := n.Content[i].Line; at > line && at < next {
			next = at
		}
	}
	return next
}

// joints takes the joints out and leaves their remarks.
func (e *expansion) joints() {
	root := e.r.root
	key := yamlfile.PairOf(root, "joints").Key
	if key == nil {
		return
	}
	end := nextKey(root, key.Line, e.r.Text.Count()+1)
	e.exchange(e.r.Text.Start(key.Line), e.r.Text.Start(end), e.remarks(key.Line, end))
}

// remarks are the blank lines and the remarks of some lines, each on a line of
// its own.
func (e *expansion) remarks(from, to int) string {
	var b strings.Builder
	for n := from; n < to; n++ {
		line := e.r.Text.Line(n)
		at := remarkIn(line)
		switch {
		case strings.TrimSpace(line) == "" && n == e.r.Text.Count():
		case strings.TrimSpace(line) == "":
			b.WriteByte('\n')
		case at >= 0:
			indent := len(line) - len(strings.TrimLeft(line, " -"))
			b.WriteString(strings.Repeat(" ", indent) + line[at:] + "\n")
		}
	}
	return b.String()
}

// remarkIn is where a remark begins in a line, -1 where there is none. Quotes that
// go on over several lines are not seen; then the result does not read.
func remarkIn(line string) int {
	quote := byte(0)
	for i := range len(line) {
		c := line[i]
		switch {
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case c == '"' || c == '\'':
			if before := strings.TrimRight(line[:i], " "); before == "" || strings.ContainsAny(before[len(before)-1:], ":-[{,") {
				quote = c
			}
		case c == '#' && (i == 0 || line[i-1] == ' ' || line[i-1] == '\t'):
			return i
		}
	}
	return -1
}

// piece spells out what a piece has from joints and repeats.
func (e *expansion) piece(b *blank) {
	for d, n := range b.between {
		if n == nil {
			continue
		}
		from := e.offset(n)
		if strings.HasPrefix(e.text[from:], n.Value) {
			e.exchange(from, from+len(n.Value), spellBare(b.Size[d], e.r.plan.Unit))
		}
	}
	cuts := b.f.Value("cuts")
	if cuts != nil {
		for i, n := range cuts.Content {
			e.after(b, n)
			if yamlfile.PairOf(n, "repeat").Key != nil {
				e.repeat(b, cuts, i)
			}
		}
	}
	if len(b.joined) > 0 {
		e.addJoined(b, cuts)
	}
}

// end is the line behind a piece.
func (e *expansion) end(b *blank) int {
	pieces := yamlfile.ValueOf(e.r.root, "pieces")
	next := nextKey(e.r.root, b.f.Node.Line, e.r.Text.Count()+1)
	for _, other := range pieces.Content {
		if other.Line > b.f.Node.Line {
			return min(next, other.Line)
		}
	}
	return next
}

// samePlan reports whether two plans have the same pieces with the same cuts.
func samePlan(a, b *joinery.Plan) bool {
	return slices.EqualFunc(a.Pieces, b.Pieces, func(p, q joinery.Piece) bool {
		if !slices.EqualFunc(p.Cuts, q.Cuts, func(c, d joinery.Cut) bool { return c.Kind == d.Kind }) {
			return false
		}
		p, q = withoutPlaces(p), withoutPlaces(q)
		return reflect.DeepEqual(p, q)
	})
}

// withoutPlaces is a piece less where and how it was written.
func withoutPlaces(p joinery.Piece) joinery.Piece {
	p.Place, p.Places, p.Opening = plantext.Place{}, plantext.Places{}, joinery.Size{}
	p.Cuts = slices.Clone(p.Cuts)
	for i := range p.Cuts {
		c := &p.Cuts[i]
		c.Place, c.Places, c.Kind, c.OfJoint = plantext.Place{}, plantext.Places{}, nil, false
		if len(c.After) == 0 {
			c.After = nil
		}
		if len(c.Cheeks) == 0 {
			c.Cheeks = nil
		}
	}
	return p
}
