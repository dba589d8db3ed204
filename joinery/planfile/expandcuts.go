package planfile

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
	"fencecard/joinery/planfile/yamlfile"

	"go.yaml.in/yaml/v4"
)

// spelt is a key of a cut and its value, as a plan has them.
type spelt struct{ key, value string }

// spellCut lists the keys of a cut that comes from a joint.
func spellCut(c *joinery.Cut, u measure.Unit) []spelt {
	length := func(l measure.Length) string { return spellBare(l, u) }
	keys := []spelt{{c.Kind.Name, quoteText(c.Name)}}
	add := func(key, value string) {
		if value != "" {
			keys = append(keys, spelt{key, value})
		}
	}
	if c.In != joinery.NoSide {
		add("in", c.In.String())
	}
	add("at", c.At.String())
	add("along", c.Along.String())
	if c.Width > 0 {
		add("width", length(c.Width))
	}
	if c.Kind.Has("setback") {
		add("setback", length(c.Start.Distance)+" from "+c.Start.From.String())
	}
	if !c.Span.Whole() {
		add("span", fmt.Sprintf("%s to %s from %s", length(c.Span.From), length(c.Span.To), c.Span.Side))
	}
	if m := c.Moulding; m != nil {
		if c.In == joinery.NoSide {
			add("on", m.Down.String()+" "+m.Fence.String())
		}
		if c.Bit == "" && m.Outline != nil {
			add("shape", joinery.BitKind(joinery.RoundOver+joinery.BitKind(m.Outline.Shape)).String())
			add("radius", length(m.Outline.Radius))
		}
		if m.Raise > 0 {
			add("raise", length(m.Raise))
		}
		if m.Reach > 0 {
			add("reach", length(m.Reach))
		}
		if m.Leaves > 0 {
			add("leaves", length(m.Leaves))
		}
	}
	if c.Length > 0 {
		add("length", length(c.Length))
	}
	if c.Depth > 0 {
		add("depth", length(c.Depth))
	}
	add("cheeks", spellCheeks(c.Cheeks, length))
	if c.Fence.Either {
		add("fence", "either")
	} else {
		add("fence", c.Fence.Side.String())
	}
	if c.Bit != "" {
		add("bit", quoteText(c.Bit))
	}
	if c.Bored {
		add("start", "hole")
	}
	if c.Square {
		add("ends", "square")
	}
	add("after", spellNames(c.After))
	if c.Note != "" {
		add("note", quoteText(c.Note))
	}
	if c.Mates.Piece != "" {
		mate := c.Mates.Piece
		if c.Mates.Cut != "" {
			mate += " / " + c.Mates.Cut
		}
		add("mates", quoteText(mate))
	}
	if c.By != "" {
		add("by", quoteText(c.By))
	}
	return keys
}

func spellCheeks(cheeks []joinery.Cheek, length func(measure.Length) string) string {
	if len(cheeks) == 0 {
		return ""
	}
	var all []string
	for _, c := range cheeks {
		all = append(all, fmt.Sprintf("%s: %s", c.Side, length(c.Depth)))
	}
	return "{" + strings.Join(all, ", ") + "}"
}

// spellNames writes one name, or a list in brackets.
func spellNames(names []string) string {
	if len(names) == 0 {
		return ""
	}
	var all []string
	for _, name := range names {
		all = append(all, quoteText(name))
	}
	if len(all) == 1 {
		return all[0]
	}
	return "[" + strings.Join(all, ", ") + "]"
}

// spellBare writes a length so that it is read back as the same one, without a
// unit where that is the plan's.
func spellBare(l measure.Length, u measure.Unit) string {
	text := measure.DefaultScale(u).Spell(l)
	return strings.TrimSuffix(text, " "+u.String())
}

// plainText is a text that YAML takes as it stands, inside brackets too.
var plainText = pattern.New(`^[\pL\pN][\pL\pN ._()/+;'½¼¾-]*$`)

// quoteText writes a text as a value, with quotes where it needs them.
func quoteText(text string) string {
	if plainText.MatchString(text) && !strings.HasSuffix(text, " ") {
		return text
	}
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(text) + `"`
}

// block writes a cut as an entry of a list, its dash so far in.
func block(keys []spelt, indent string) string {
	var b strings.Builder
	for i, k := range keys {
		lead := indent + "  "
		if i == 0 {
			lead = indent + "- "
		}
		b.WriteString(lead + k.key + ": " + k.value + "\n")
	}
	return b.String()
}

// flow writes a cut in braces.
func flow(keys []spelt) string {
	var all []string
	for _, k := range keys {
		all = append(all, k.key+": "+k.value)
	}
	return "{" + strings.Join(all, ", ") + "}"
}

// flowText writes a value on one line.
func flowText(n *yaml.Node) string {
	var all []string
	switch n.Kind {
	case yaml.SequenceNode:
		for _, inner := range n.Content {
			all = append(all, flowText(inner))
		}
		return "[" + strings.Join(all, ", ") + "]"
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			all = append(all, n.Content[i].Value+": "+flowText(n.Content[i+1]))
		}
		return "{" + strings.Join(all, ", ") + "}"
	}
	return quoteText(n.Value)
}

// addJoined puts the cuts that joints make behind those of the piece.
func (e *expansion) addJoined(b *blank, cuts *yaml.Node) {
	made := b.Cuts[len(b.Cuts)-len(b.joined):]
	inBraces := b.f.Node.Style&yaml.FlowStyle != 0 || cuts != nil && cuts.Style&yaml.FlowStyle != 0
	switch {
	case inBraces:
		e.addInBraces(b, cuts, made)
	case cuts != nil:
		line := e.below(nextKey(b.f.Node, b.f.Key("cuts").Line, e.end(b)))
		e.insert(line, e.joinedBlock(b, made, e.dash(cuts)))
	default:
		line := e.below(e.end(b))
		indent := strings.Repeat(" ", b.f.Key("piece").Column-1)
		e.insert(line, indent+"cuts:\n"+e.joinedBlock(b, made, indent+"  "))
	}
}

// insert puts lines above a line.
func (e *expansion) insert(line int, lines string) {
	at := e.r.Text.Start(line)
	if at > 0 && e.text[at-1] != '\n' {
		lines = "\n" + lines
	}
	e.exchange(at, at, lines)
}

// dash is what stands before the dashes of a list.
func (e *expansion) dash(list *yaml.Node) string {
	line := e.r.Text.Line(list.Content[0].Line)
	return line[:len(line)-len(strings.TrimLeft(line, " "))]
}

func (e *expansion) joinedBlock(b *blank, made []joinery.Cut, indent string) string {
	var s strings.Builder
	for i := range made {
		s.WriteString(indent + "# " + b.joined[i].j.remark() + "\n")
		s.WriteString(block(spellCut(&made[i], e.r.plan.Unit), indent))
	}
	return s.String()
}

// remark names the joint above a cut that comes from it.
func (j *jointWish) remark() string { return fmt.Sprintf("%s: %s", j.kind, j.name) }

// addInBraces puts them into a piece, or a list of cuts, that stands in braces.
func (e *expansion) addInBraces(b *blank, cuts *yaml.Node, made []joinery.Cut) {
	indent := strings.Repeat(" ", b.f.Node.Column+1)
	var s strings.Builder
	for i := range made {
		s.WriteString("\n" + indent + "# " + b.joined[i].j.remark() + "\n" + indent + flow(spellCut(&made[i], e.r.plan.Unit)))
		if i < len(made)-1 {
			s.WriteByte(',')
		}
	}
	switch {
	case cuts == nil:
		at := e.closing(e.offset(b.f.Node))
		e.exchange(at, at, ", cuts: ["+s.String()+"]")
	default:
		at := e.closing(e.offset(cuts))
		e.exchange(at, at, ","+s.String())
	}
}

// closing is where the brace or bracket stands that ends what begins at the
// offset.
func (e *expansion) closing(at int) int {
	depth, quote := 0, byte(0)
	for i := at; i < len(e.text); i++ {
		c := e.text[i]
		switch {
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case (c == '"' || c == '\'') && i > 0 && strings.IndexByte(" [{,:", e.text[i-1]) >= 0:
			quote = c
		case c == '#' && i > 0 && (e.text[i-1] == ' ' || e.text[i-1] == '\n'):
			for i+1 < len(e.text) && e.text[i+1] != '\n' {
				i++
			}
		case c == '{' || c == '[':
			depth++
		case c == '}' || c == ']':
			if depth--; depth == 0 {
				return i
			}
		}
	}
	return len(e.text)
}

// repeat spells out one cut that repeats.
func (e *expansion) repeat(b *blank, cuts *yaml.Node, number int) {
	n := cuts.Content[number]
	var made []*joinery.Cut
	names := b.cuts.several[yamlfile.OneLine(n.Content[e.kindAt(n)+1].Value)]
	for i := range b.Cuts {
		if slices.Contains(names, b.Cuts[i].Name) {
			made = append(made, &b.Cuts[i])
		}
	}
	if cuts.Style&yaml.FlowStyle != 0 || b.f.Node.Style&yaml.FlowStyle != 0 {
		var all []string
		for _, c := range made {
			all = append(all, flow(e.repeated(n, c)))
		}
		from := e.offset(n)
		e.exchange(from, e.closing(from)+1, strings.Join(all, ", "))
		return
	}
	next := nextKey(b.f.Node, b.f.Key("cuts").Line, e.end(b))
	if number+1 < len(cuts.Content) {
		next = cuts.Content[number+1].Line
	}
	next = e.below(next)
	indent := e.dash(cuts)
	text := e.remarks(n.Line, next)
	for _, c := range made {
		text += block(e.repeated(n, c), indent)
	}
	e.exchange(e.r.Text.Start(n.Line), e.r.Text.Start(next), text)
}

// kindAt is where the kind of a cut stands among its keys.
func (e *expansion) kindAt(n *yaml.Node) int {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if joinery.KindNamed(n.Content[i].Value) != nil {
			return i
		}
	}
	return 0
}

// repeated lists the keys of one of a repeat: as written, but for its name and
// where it lies.
func (e *expansion) repeated(n *yaml.Node, c *joinery.Cut) []spelt {
	var keys []spelt
	kind := e.kindAt(n)
	length := func(l measure.Length) string { return spellBare(l, e.r.plan.Unit) }
	along := false
	noted := false
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i].Value, flowText(n.Content[i+1])
		switch {
		case i == kind:
			value = quoteText(c.Name)
		case key == "repeat":
			continue
		case key == "span" && e.r.IsLength(n.Content[i+1].Value):
			value, along = fmt.Sprintf("%s to %s from %s", length(c.Span.From), length(c.Span.To), c.Span.Side), true
		case key == "note":
			value, noted = quoteText(c.Note), true
		case key == "after":
			value = spellNames(c.After)
		}
		keys = append(keys, spelt{key, value})
	}
	if !along {
		keys = append(keys, spelt{"setback", length(c.Start.Distance) + " from " + c.Start.From.String()})
	}
	if c.Note != "" && !noted {
		keys = append(keys, spelt{"note", quoteText(c.Note)})
	}
	return keys
}

// after writes the names of all cuts where one name stands for several.
func (e *expansion) after(b *blank, n *yaml.Node) {
	value := yamlfile.ValueOf(n, "after")
	if value == nil {
		return
	}
	items := []*yaml.Node{value}
	if value.Kind == yaml.SequenceNode {
		items = value.Content
	}
	for _, item := range items {
		names := b.cuts.stands(yamlfile.OneLine(item.Value))
		from := e.offset(item)
		if len(names) < 2 || !strings.HasPrefix(e.text[from:], item.Value) {
			continue
		}
		text := spellNames(names)
		switch {
		case item == value:
		case value.Style&yaml.FlowStyle != 0:
			text = text[1 : len(text)-1]
		default:
			text = strings.ReplaceAll(text[1:len(text)-1], ", ", "\n"+strings.Repeat(" ", item.Column-3)+"- ")
		}
		e.exchange(from, from+len(item.Value), text)
	}
}
