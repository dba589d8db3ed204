package piecelist

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
	"fencecard/joinery/piecelist/spreadsheet"
	"fencecard/joinery/plantext"
)

// Plan writes the list as a plan to which only joints must be added. Beside
// every piece stand the text of its row and what was asked about it.
func (l *List) Plan() []byte {
	var b bytes.Buffer
	wood := l.commonWood()
	fmt.Fprintf(&b, "# From %s: %s.\n", l.base(), counted(len(l.Pieces), "row"))
	remark(&b, "", l.Remarks...)
	fmt.Fprintf(&b, "\ntitle: %s\nunit: %s\n", scalar(l.title()), l.Unit)
	if wood != "" {
		fmt.Fprintf(&b, "wood: %s\n", scalar(wood))
	}
	b.WriteString("pieces:\n")
	heading := ""
	for i := range l.Pieces {
		p := &l.Pieces[i]
		b.WriteByte('\n')
		if p.Heading != heading {
			heading = p.Heading
			remark(&b, "  ", heading, "")
		}
		remark(&b, "  ", fmt.Sprintf("row %d: %s", p.Row, p.Text))
		remark(&b, "  ", p.Remarks...)
		p.write(&b, l.Unit, wood)
	}
	if len(l.Left) > 0 {
		b.WriteString("\n# Left out of the list:\n")
		remark(&b, "", l.Left...)
	}
	b.WriteByte('\n')
	b.WriteString(l.toCome())
	return b.Bytes()
}

// base is the list's name without its folder.
func (l *List) base() string { return spreadsheet.Tidy(l.File[strings.LastIndexAny(l.File, `/\`)+1:]) }

func (l *List) title() string {
	if l.Title != "" {
		return l.Title
	}
	name := l.base()
	if dot := strings.LastIndexByte(name, '.'); dot > 0 {
		name = name[:dot]
	}
	if name == "" || name == "stdin" {
		return "Pieces"
	}
	return plantext.Brief(name, 90)
}

// commonWood is the wood of most pieces, where every piece has one.
func (l *List) commonWood() string {
	count, most := map[string]int{}, ""
	for i := range l.Pieces {
		wood := l.Pieces[i].Wood
		if wood == "" {
			return ""
		}
		if count[wood]++; count[wood] > count[most] {
			most = wood
		}
	}
	return most
}

// write writes a piece and its mirror images.
func (p *Piece) write(b *bytes.Buffer, unit measure.Unit, common string) {
	text := [3]string{}
	text[p.Lies.Length], text[p.Lies.Thickness], text[p.Lies.Width()] = p.Length.Text, p.Thickness.Text, p.Width.Text
	count := p.Count / len(p.Copies)
	for _, c := range p.Copies {
		fmt.Fprintf(b, "  - piece: %s\n", scalar(c.Name))
		if count > 1 {
			fmt.Fprintf(b, "    count: %d\n", count)
		}
		if c.Across != nil {
			fmt.Fprintf(b, "    mirror: {of: %s, across: %s}\n", scalar(c.Of), acrossList(c.Across))
			continue
		}
		fmt.Fprintf(b, "    size: {left-right: %s, front-back: %s, top-bottom: %s}\n", text[joinery.LeftRight], text[joinery.FrontBack], text[joinery.TopBottom])
		if size := p.Size(); size.Longest() != p.Lies.Length {
			fmt.Fprintf(b, "    grain: %s\n", p.Lies.Length)
		}
		if p.Wood != "" && p.Wood != common {
			fmt.Fprintf(b, "    wood: %s\n", scalar(p.Wood))
		}
	}
}

func acrossList(across []joinery.Dimension) string {
	if len(across) == 1 {
		return across[0].String()
	}
	var names []string
	for _, d := range across {
		names = append(names, d.String())
	}
	return "[" + strings.Join(names, ", ") + "]"
}

// remark writes lines behind a "#".
func remark(b *bytes.Buffer, indent string, lines ...string) {
	for _, line := range lines {
		b.WriteString(strings.TrimRight(indent+"# "+line, " ") + "\n")
	}
}

var (
	plainText = pattern.New(`^\p{L}(?:[\p{L}\p{M}\p{N} ._()+/&'-]*[\p{L}\p{M}\p{N}.)])?$`)
	yamlWords = []string{"null", "true", "false", "yes", "no", "on", "off", "y", "n"}
)

// scalar writes a text so that YAML reads back the same text: as it is, or in
// single quotes.
func scalar(text string) string {
	if plainText.MatchString(text) && !slices.Contains(yamlWords, strings.ToLower(text)) {
		return text
	}
	return "'" + strings.ReplaceAll(text, "'", "''") + "'"
}

// counted writes a number of things: 1 row, 9 rows.
func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
