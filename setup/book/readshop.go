package book

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
)

// shop reads what is kept of a shop, and with the scale the unit of lengths
// that name none.
func (g *group) shop() joinery.Shop {
	scale := measure.InchScale
	if f, ok := g.one(keyScale); ok {
		scale.Unit = measure.UnitOf(f.value, scale.Unit)
		if l, ok := g.parse(f, f.value); ok && l > 0 {
			scale.Division = l
		} else if ok {
			g.fault(f, "write the smallest division you read, such as 1/64 in", "the scale has no divisions")
		}
	}
	g.unit = scale.Unit
	shop := kept(joinery.Shop{Scale: scale})
	if g.oneOf(keyStops, joinery.Marks.String(), joinery.Blocks.String()) == joinery.Blocks.String() {
		shop.Stops = joinery.Blocks
	}
	switch g.oneOf(keyPushed, joinery.Block.String(), joinery.Gauge.String(), joinery.Carriage.String()) {
	case joinery.Gauge.String():
		shop.Cross.With = joinery.Gauge
	case joinery.Carriage.String():
		shop.Cross.With = joinery.Carriage
	}
	if _, ok := g.one(keyRouter); ok {
		shop.Speed = g.count(keyRouter)
	}
	shop.Minutes = g.minutes()
	if f, ok := g.one(keyUsable); ok {
		shop.Fence = g.usable(f)
	}
	return shop
}

var usableFence = pattern.New(`^(.*\S)\s+infeed\s*,\s*(.*\S)\s+outfeed$`)

func (g *group) usable(f field) joinery.FenceReach {
	m := usableFence.FindStringSubmatch(f.value)
	if m == nil {
		g.fault(f, "write 14 in infeed, 14 in outfeed", "the usable fence cannot be read")
		return joinery.FenceReach{}
	}
	in, _ := g.parse(f, m[1])
	out, _ := g.parse(f, m[2])
	return joinery.FenceReach{Infeed: max(in, 0), Outfeed: max(out, 0)}
}

// minutesText writes what the changes take, "3 bit, 2 fence, 0.5 height, 1 stop" and so on.
func minutesText(m joinery.Minutes) string {
	if m == (joinery.Minutes{}) {
		return ""
	}
	var words []string
	for _, part := range minutesParts(&m) {
		words = append(words, fmt.Sprintf("%g %s", part.time.Minutes(), part.word))
	}
	return strings.Join(words, ", ")
}

type minutesPart struct {
	word string
	time *joinery.Time
}

func minutesParts(m *joinery.Minutes) []minutesPart {
	return []minutesPart{{"bit", &m.Bit}, {"fence", &m.Fence}, {"height", &m.Height}, {"stop", &m.Stop}, {"pass", &m.Pass}, {"fit", &m.Fit}}
}

// mostMinutes bounds the time of one change.
const mostMinutes = 10_000

// minutes reads what minutesText writes; parts may be left out.
func (g *group) minutes() joinery.Minutes {
	var m joinery.Minutes
	f, ok := g.one(keyMinutes)
	if !ok {
		return m
	}
	for word := range strings.SplitSeq(f.value, ",") {
		number, what, _ := strings.Cut(strings.TrimSpace(word), " ")
		if what == "run" { // its word in books kept before
			what = "pass"
		}
		minutes, err := strconv.ParseFloat(number, 64)
		at := slices.IndexFunc(minutesParts(&m), func(p minutesPart) bool { return p.word == what })
		if err != nil || at < 0 || !(minutes >= 0 && minutes <= mostMinutes) {
			g.fault(f, "write 3 bit, 2 fence, 0.5 height", "minutes: %q cannot be read", word)
			return m
		}
		*minutesParts(&m)[at].time = joinery.Time(math.Round(minutes * float64(joinery.Minute)))
	}
	return m
}
