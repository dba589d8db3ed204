package joinery

import (
	_ "embed"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"fencecard/joinery/measure"
)

//go:embed speeds.tsv
var speedTable string

type speedRow struct {
	diameter measure.Length
	rpm      int
}

// allSpeeds is the embedded table, least diameter first.
var allSpeeds = sync.OnceValue(func() []speedRow {
	rows, err := readSpeeds(speedTable)
	if err != nil {
		panic(err)
	}
	return rows
})

// readSpeeds reads the table: comments behind "#", one line of column names,
// then a diameter in inches and a speed a line, climbing.
func readSpeeds(table string) ([]speedRow, error) {
	var rows []speedRow
	for i, line := range strings.Split(table, "\n") {
		if line == "" || line[0] == '#' || line == "diameter_in\trpm" {
			continue
		}
		diameter, rpm, _ := strings.Cut(line, "\t")
		d, err := measure.ParseLength(diameter, measure.Inches)
		if err != nil {
			return nil, fmt.Errorf("speed table, line %d: %w", i+1, err)
		}
		n, err := strconv.Atoi(rpm)
		if err != nil || n <= 0 {
			return nil, fmt.Errorf("speed table, line %d: %q is not a speed in rpm", i+1, rpm)
		}
		if len(rows) > 0 && d <= rows[len(rows)-1].diameter {
			return nil, fmt.Errorf("speed table, line %d: the diameters must climb", i+1)
		}
		rows = append(rows, speedRow{d, n})
	}
	return rows, nil
}

// TopSpeed is the highest speed of a bit in rpm, 0 where nothing says one, and
// the rule it came from.
type TopSpeed struct {
	RPM      int
	Rule     string
	Cautious int // what a more cautious chart says, where that is less; else 0
}

// String says the speed, as "up to 24000 rpm, by its diameter; more cautious:
// 18000".
func (t TopSpeed) String() string {
	if t.RPM == 0 {
		return t.Rule
	}
	text := fmt.Sprintf("up to %d rpm, %s", t.RPM, t.Rule)
	if t.Cautious > 0 {
		text += fmt.Sprintf("; more cautious: %d", t.Cautious)
	}
	return text
}

// A more cautious chart of speeds has one figure for bits from an inch to two
// (common practice, no source).
const (
	cautiousFrom, cautiousTo = measure.Inch, 2 * measure.Inch
	cautiousRPM              = 18000
)

// TopSpeed gives the lowest of the bit's own figure, the table's for its
// diameter, and the router's own speed (0 when not known).
func (b Bit) TopSpeed(router int) TopSpeed {
	top := TopSpeed{Rule: "wider than the table of speeds: ask its maker"}
	for _, row := range allSpeeds() {
		if b.True() <= row.diameter {
			top = TopSpeed{RPM: row.rpm, Rule: "by its diameter"}
			break
		}
	}
	if b.IsPanelBit() && (top.RPM == 0 || top.RPM > panelRPM) {
		top = TopSpeed{RPM: panelRPM, Rule: "the most for a panel bit"}
	}
	if b.Speed > 0 && (top.RPM == 0 || b.Speed < top.RPM) {
		top = TopSpeed{RPM: b.Speed, Rule: "the figure on the bit"}
	}
	if router > 0 && top.RPM > router {
		top = TopSpeed{RPM: router, Rule: "the router's own"}
	}
	if d := b.True(); d >= cautiousFrom && d <= cautiousTo && top.RPM > cautiousRPM {
		top.Cautious = cautiousRPM
	}
	return top
}

// RimSpeed gives the speed of the bit's rim in metres a second: pi x D x n,
// as any machining handbook has it.
func (b Bit) RimSpeed(rpm int) float64 {
	return math.Pi * b.True().Millimetres() / 1000 * float64(rpm) / 60
}

// A bit that shapes edges is a panel bit from 50 mm (2 in is as good as that), and
// turns no faster than this (common practice, no source).
const (
	panelBit = 50 * measure.Millimetre
	panelRPM = 12000
)

// IsPanelBit reports whether a bit that shapes edges is so wide that it is a panel
// bit, with its speed and its cautions.
func (b Bit) IsPanelBit() bool { return b.Outline != nil && b.Diameter >= panelBit }
