package screen

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/setup"
)

// Woods writes the table of woods, to be read on a screen of 80 columns.
func Woods(w io.Writer, woods []timber.Wood) error {
	t := &textWriter{}
	t.line(0, "WOODS")
	t.line(0, "Side hardness in lbf at 12 %% moisture; shrinkage from green to ovendry in")
	t.line(0, "percent; CR and CT: change of dimension for 1 %% of moisture from 6 to 14 %%,")
	t.line(0, "radial and tangential.  p: published, read in the Wood Handbook's tables.")
	t.line(0, "m: from memory.  s: your shop file.  -: not known.  Sheet materials stay.")
	t.line(0, "")
	t.line(0, "%-*s %10s  %15s  %21s", woodColumn, "", "hardness", "shrinkage", "CR / CT")
	for _, wood := range woods {
		name := wood.Name
		if utf8.RuneCountInString(name) > woodColumn {
			t.wrapped("", name)
			name = ""
		}
		t.line(0, "%-*s %10s  %15s  %21s", woodColumn, name,
			cell(wood.HardnessFrom, value(wood.Hardness)),
			cell(wood.ShrinkFrom, value(wood.ShrinkR), value(wood.ShrinkT)),
			cell(wood.CFrom, coefficient(wood.CR), coefficient(wood.CT)))
	}
	t.line(0, "")
	t.line(0, "fencecard wood NAME shows one of them with its caps for each bit.")
	_, err := io.WriteString(w, t.String())
	return err
}

// woodColumn is the width of the column of names.
const woodColumn = 22

// cell is one cell of the table: figures and the letter of their origin.
func cell(from timber.Origin, figures ...string) string {
	text := strings.Join(figures, " / ")
	switch {
	case from == "":
		return "-"
	case from.Published():
		return text + " p"
	case from == timber.Memory:
		return text + " m"
	}
	return text + " s"
}

// value writes a figure as short as it is, "-" for one that is not known.
func value(f float64) string {
	if f == 0 {
		return "-"
	}
	if f > 100 {
		return strconv.FormatFloat(f, 'f', 0, 64)
	}
	return strconv.FormatFloat(f, 'f', -1, 64)
}

func coefficient(f float64) string {
	if f == 0 {
		return "-"
	}
	return strconv.FormatFloat(f, 'f', 5, 64)
}

// origin says where figures come from.
func origin(from timber.Origin) string {
	switch {
	case from.Published():
		return "published: Wood Handbook, " + string(from)
	case from == timber.Memory:
		return "from memory"
	}
	return "from your " + string(from)
}

// Wood writes one wood with its caps for each bit of a shop. The remark says
// how its name was taken; it may be empty.
func Wood(w io.Writer, wood timber.Wood, shop *joinery.Shop, remark string) error {
	t := &textWriter{scale: shop.Scale}
	t.wrapped("", strings.ToUpper(wood.Name))
	if remark != "" {
		t.wrapped("", remark)
	}
	if wood.Botanical != "" {
		t.line(0, "%s, %s", wood.Botanical, wood.Group)
	}
	t.figures(wood)
	if wood.Note != "" {
		t.wrapped("note        ", wood.Note)
	}
	t.line(0, "")
	t.wrapped("", "ONE PASS, with the bits of the "+shop.Name)
	for _, a := range setup.Allowances(shop, []timber.Wood{wood}) {
		t.wrapped(fmt.Sprintf("%8s  ", t.most(a.Bit, a.Caps[0].Depth)), a.Bit.Name+": "+strings.TrimSuffix(a.Caps[0].Rule, " in "+wood.Name))
	}
	_, err := io.WriteString(w, t.String())
	return err
}

func (t *textWriter) figures(wood timber.Wood) {
	if wood.Known() {
		t.wrapped("hardness    ", fmt.Sprintf("%s lbf at the side (%s)", value(wood.Hardness), origin(wood.HardnessFrom)))
	} else if wood.Share.Num == 0 {
		t.line(0, "hardness    not known: the shallowest passes")
	}
	if !wood.Moves() {
		t.line(0, "movement    none to speak of")
	}
	if wood.ShrinkFrom != "" {
		t.wrapped("shrinkage   ", fmt.Sprintf("radial %s %%, tangential %s %%, from green to ovendry (%s)",
			value(wood.ShrinkR), value(wood.ShrinkT), origin(wood.ShrinkFrom)))
	}
	if wood.CFrom != "" {
		t.wrapped("change      ", fmt.Sprintf("radial CR %s, tangential CT %s, for 1 %% of moisture from 6 to 14 %% (%s)",
			coefficient(wood.CR), coefficient(wood.CT), origin(wood.CFrom)))
	}
}

// WoodChange is how a width of wood changes between two moisture contents, in
// percent.
type WoodChange struct {
	Wood               timber.Wood
	Unit               measure.Unit
	Width              measure.Length
	From, To           float64
	Tangential, Radial *timber.Movement // nil where the wood has no figure for it
}

// scale prints changes finer than a rule can be read.
func (c WoodChange) scale() measure.Scale {
	if c.Unit == measure.Millimetres {
		return measure.Scale{Unit: measure.Millimetres, Division: measure.Millimetre / 100}
	}
	return measure.Scale{Unit: measure.Inches, Division: measure.Inch / 1000}
}

// Text is a computed length, rounded.
func (c WoodChange) Text(l measure.Length) string {
	s := c.scale()
	return s.Format(s.Round(l))
}

// Change writes a change of width.
func Change(w io.Writer, c WoodChange) error {
	t := &textWriter{}
	t.line(0, "%s, %s %s wide, from %.4g to %.4g %% moisture", c.Wood.Name, c.Text(c.Width), c.Unit, c.From, c.To)
	for _, way := range []struct {
		label string
		moved *timber.Movement
	}{{"tangential (flat-sawn)     ", c.Tangential}, {"radial (quarter-sawn)      ", c.Radial}} {
		if way.moved == nil {
			t.line(0, "%snot known", way.label)
			continue
		}
		t.wrapped(way.label, c.sentence(way.moved))
	}
	_, err := io.WriteString(w, t.String())
	return err
}

func (c WoodChange) sentence(m *timber.Movement) string {
	by := m.By + " " + value(m.Figure)
	switch m.By {
	case "sheet":
		return "none: a sheet material"
	case "coefficient":
		by = m.By + " " + coefficient(m.Figure)
	}
	word := "wider"
	if m.Change < 0 {
		word = "narrower"
	}
	return fmt.Sprintf("%s %s %s, then %s %s (by the %s, %s)", c.Text(m.Change.Abs()), c.Unit, word,
		c.Text(c.Width+m.Change), c.Unit, by, origin(m.From))
}

// EMC writes the moisture content that wood comes to in some air.
func EMC(w io.Writer, air timber.Temperature, humidity, moisture float64) error {
	_, err := fmt.Fprintf(w, "In air of %s and %g %% humidity wood comes to %.1f %% moisture.\n", air, humidity, moisture)
	return err
}
