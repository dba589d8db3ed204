package timber

import (
	_ "embed"
	"fmt"
	"strconv"
	"strings"
	"sync"
)

//go:embed species.tsv
var speciesTable string

// species is a row of the table: a wood and the other names it goes by.
type species struct {
	Wood
	also    []string // names of this wood and no other
	loosely []string // names taken as this wood with a word about it
}

// allSpecies is the embedded table. A row that cannot be read is an error of
// whoever edited it, caught by the tests.
var allSpecies = sync.OnceValue(func() []species {
	rows, err := readSpecies(speciesTable)
	if err != nil {
		panic(err)
	}
	return rows
})

// Woods lists the woods and sheet materials of the embedded table: hardwoods,
// softwoods, imported woods, sheet materials, each by name.
func Woods() []Wood {
	woods := make([]Wood, len(allSpecies()))
	for i, s := range allSpecies() {
		woods[i] = s.Wood
	}
	return woods
}

// speciesColumns are the columns of the table, in order.
const speciesColumns = "name\tbotanical\tgroup\talso\tloosely\thardness\thardness_from\t" +
	"shrink_radial\tshrink_tangential\tshrink_from\tCR\tCT\tC_from\tshare\tnote"

// readSpecies reads the table: comments behind "#", one line of column names,
// then a wood a line.
func readSpecies(table string) ([]species, error) {
	var rows []species
	headed := false
	for i, line := range strings.Split(table, "\n") {
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		if !headed {
			if line != speciesColumns {
				return nil, fmt.Errorf("species table, line %d: the columns must be %q", i+1, speciesColumns)
			}
			headed = true
			continue
		}
		row, err := readSpeciesRow(strings.Split(line, "\t"))
		if err != nil {
			return nil, fmt.Errorf("species table, line %d: %w", i+1, err)
		}
		rows = append(rows, row)
	}
	return rows, nil
}

func readSpeciesRow(cells []string) (species, error) {
	if want := strings.Count(speciesColumns, "\t") + 1; len(cells) != want {
		return species{}, fmt.Errorf("has %d cells, not %d", len(cells), want)
	}
	s := species{also: splitNames(cells[3]), loosely: splitNames(cells[4])}
	s.Name, s.Botanical, s.Group, s.Note = cells[0], cells[1], WoodGroup(cells[2]), cells[14]
	s.Still = s.Group == Sheet
	s.HardnessFrom, s.ShrinkFrom, s.CFrom = Origin(cells[6]), Origin(cells[9]), Origin(cells[12])
	for _, figure := range []struct {
		cell  string
		value *float64
	}{{cells[5], &s.Hardness}, {cells[7], &s.ShrinkR}, {cells[8], &s.ShrinkT}, {cells[10], &s.CR}, {cells[11], &s.CT}} {
		if figure.cell == "" {
			continue
		}
		value, err := strconv.ParseFloat(figure.cell, 64)
		if err != nil || !(value > 0) {
			return species{}, fmt.Errorf("%q is not a number above 0", figure.cell)
		}
		*figure.value = value
	}
	if cells[13] != "" {
		if _, err := fmt.Sscanf(cells[13], "%d/%d", &s.Share.Num, &s.Share.Den); err != nil || s.Share.Den <= 0 {
			return species{}, fmt.Errorf("%q is not a share such as 5/8", cells[13])
		}
	}
	return s, nil
}

func splitNames(cell string) []string {
	if cell == "" {
		return nil
	}
	return strings.Split(cell, ", ")
}
