package planfile

import (
	"fmt"
	"math/big"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

const (
	beginShop  = "fencecard new --shop FILE writes a shop file to begin with"
	bitExample = "- {bit: three eighths up-cut, kind: up-cut, diameter: 3/8}"
)

// ReadShop reads a shop file. The unit is the plan's; a key unit in the file
// goes before it for the lengths written there. What the file leaves out is
// taken from [BuiltInShop]. The error is [joinery.Faults].
func ReadShop(name string, data []byte, unit joinery.Unit) (joinery.Shop, error) {
	return readShop(name, data, unit, BuiltInShop(unit))
}

func readShop(name string, data []byte, unit joinery.Unit, rest joinery.Shop) (joinery.Shop, error) {
	r := &shopReader{reader: newReader(name, unit, joinery.DefaultScale(unit))}
	shop := rest
	if root := r.tree(data, "the shop file", beginShop); root != nil && r.isShop(root) {
		shop = r.shop(root, rest)
	}
	shop.Name, shop.Place = name, joinery.Place{File: name}
	if err := r.err(); err != nil {
		return joinery.Shop{}, err
	}
	return shop, nil
}

// shopReader reads one shop.
type shopReader struct {
	*reader
	doubts joinery.Faults // see doubt
}

// isShop faults a file of another kind.
func (r *shopReader) isShop(root *yaml.Node) bool {
	if !r.mapping(root, "this is no shop file", "begin with fence: {infeed: 16, outfeed: 16, reach: 8}; "+beginShop) {
		return false
	}
	if valueOf(root, "pieces") == nil || valueOf(root, "bits") != nil {
		return true
	}
	r.fault(root, "name a shop file here; "+beginShop, "this is a plan, not a shop file")
	return false
}

// inPlan reads a shop that stands in a plan; what is left out stays as in rest.
func inPlan(r *reader, n *yaml.Node, rest joinery.Shop) joinery.Shop {
	return (&shopReader{reader: r}).shop(n, rest)
}

// shop reads the keys of a shop; what is left out stays as in rest.
func (r *shopReader) shop(n *yaml.Node, rest joinery.Shop) joinery.Shop {
	planUnit := r.unit
	defer func() { r.unit = planUnit }()
	f := r.fields(n, "the shop", shopKeys)
	if unit, ok := f.unit(); ok {
		r.unit = unit
	}
	shop := rest
	shop.Place = r.place(n)
	if f.has("fence") {
		shop.Fence = r.readFence(f.value("fence"), rest.Fence)
	}
	replace(f, "lift", &shop.Lift, r.likely)
	shop.Scale = r.readScale(f, rest.Scale)
	if f.has("minutes") {
		shop.Minutes = r.readMinutes(f.value("minutes"), rest.Minutes)
	}
	if f.word("stops", "way to stop a cut", stopsWords) == 1 {
		shop.Stops = joinery.Blocks
	}
	replace(f, "share", &shop.Share, r.share)
	if f.written("bits") {
		shop.Bits = r.readBits(f)
	}
	if f.written("woods") {
		shop.Woods = r.readWoods(f)
	}
	r.readRules(f, &shop)
	r.readWays(f, &shop)
	r.settle(r.wrongUnit(f, &shop))
	return shop
}

// What a router table in use has (common practice, no source); a shop outside
// it was likely typed in the other unit.
const (
	leastLift    = 10 * joinery.Millimetre
	mostLift     = 12 * joinery.Inch
	leastWidest  = 2 * joinery.Millimetre // of the widest bit
	inchesTyped  = "write unit: in if inches are meant"
	metricsTyped = "write unit: mm if millimetres are meant"
)

// wrongUnit faults a shop whose numbers make no sense in its unit, and reports
// whether they do not. A lift of 0 was faulted already.
func (r *shopReader) wrongUnit(f *fields, shop *joinery.Shop) bool {
	remedy, lift, bits := inchesTyped, f.value("lift"), f.value("bits")
	if r.unit == joinery.Inches {
		remedy = metricsTyped
	}
	var widest joinery.Length
	for i := range shop.Bits {
		widest = max(widest, shop.Bits[i].Diameter)
	}
	spell := joinery.DefaultScale(r.unit).Spell
	metric := r.unit == joinery.Millimetres
	switch {
	case lift != nil && shop.Lift > 0 && (metric && shop.Lift < leastLift || !metric && shop.Lift > mostLift):
		r.fault(lift, remedy, "no table lifts a bit by %s", spell(shop.Lift))
		return true
	case len(r.faults) == 0 && bits != nil && metric && widest > 0 && widest < leastWidest:
		r.fault(bits, remedy, "the widest bit of this shop would be %s", spell(widest))
		return true
	}
	return false
}

func (r *shopReader) readFence(n *yaml.Node, fence joinery.FenceReach) joinery.FenceReach {
	if !r.mapping(n, "a fence has a usable length each side of the bit, and a reach", "write fence: {infeed: 16, outfeed: 16, reach: 8}") {
		return fence
	}
	f := r.fields(n, "fence", fenceKeys)
	replace(f, "infeed", &fence.Infeed, r.likely)
	replace(f, "outfeed", &fence.Outfeed, r.likely)
	replace(f, "reach", &fence.Reach, r.likely)
	return fence
}

// readScale reads the smallest division set by eye.
func (r *shopReader) readScale(f *fields, rest joinery.Scale) joinery.Scale {
	text, n, ok := f.scalar("scale")
	if !ok {
		return rest
	}
	scale, err := joinery.ParseScale(text, r.unit)
	if err != nil {
		r.badLength(n, text, err)
		return rest
	}
	return scale
}

func (r *shopReader) readMinutes(n *yaml.Node, m joinery.Minutes) joinery.Minutes {
	if !r.mapping(n, "a change of each kind has its own time in minutes", "write minutes: {bit: 3, fence: 2, height: 0.5}") {
		return m
	}
	f := r.fields(n, "minutes", minutesKeys)
	replace(f, "bit", &m.Bit, r.minutes)
	replace(f, "fence", &m.Fence, r.minutes)
	replace(f, "height", &m.Height, r.minutes)
	replace(f, "stop", &m.Stop, r.minutes)
	replace(f, "run", &m.Run, r.minutes)
	replace(f, "fit", &m.Fit, r.minutes)
	return m
}

// minutes reads a time in minutes, to a thousandth.
func (r *shopReader) minutes(f *fields, key string) joinery.Time {
	const most = 1000
	text, n, ok := f.scalar(key)
	if !ok {
		return 0
	}
	minutes, ok := number(text)
	if !ok || minutes.Sign() < 0 || minutes.Cmp(big.NewRat(most, 1)) > 0 {
		r.fault(n, fmt.Sprintf("write the minutes as a number from 0 to %d, such as 0.5", most), "%s is no time in minutes", quoted(text))
		return 0
	}
	minutes.Mul(minutes, big.NewRat(int64(joinery.Minute), 1))
	if !minutes.IsInt() {
		r.fault(n, "write at most three digits after the point", "%s minutes is finer than a thousandth", short(text))
		return 0
	}
	return joinery.Time(minutes.Num().Int64())
}

// share reads a share of a bit's diameter, above 0 and up to 1.
func (r *shopReader) share(f *fields, key string) joinery.Share {
	text, n, ok := f.scalar(key)
	if !ok {
		return joinery.Share{}
	}
	share, ok := number(text)
	if !ok || share.Sign() <= 0 || share.Cmp(big.NewRat(1, 1)) > 0 {
		r.fault(n, "write a share of the bit's diameter up to 1, such as 1/2", "%s is no share of a bit", quoted(text))
		return joinery.Share{}
	}
	return joinery.Share{Num: share.Num().Int64(), Den: share.Denom().Int64()}
}
