// Package shopfile reads a maker's shop, from a file of its own or from within a
// plan: fence, lift, minutes, bits, woods, rules. What is left out is taken from
// [BuiltIn]. [KeepMeasured] writes a bit's true diameter into it, and nothing else.
package shopfile

import (
	"fmt"
	"math/big"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"

	"go.yaml.in/yaml/v4"
)

const (
	beginShop  = "fencecard new --shop FILE writes a shop file to begin with"
	bitExample = "- {bit: three eighths up-cut, kind: up-cut, diameter: 3/8}"
)

// Read reads a shop file. The unit is the plan's; a key unit in the file
// goes before it for the lengths written there. What the file leaves out is
// taken from [BuiltIn]. The error is [plantext.Faults].
func Read(name string, data []byte, unit measure.Unit) (joinery.Shop, error) {
	return readShop(name, data, unit, BuiltIn(unit))
}

func readShop(name string, data []byte, unit measure.Unit, rest joinery.Shop) (joinery.Shop, error) {
	r := &shopReader{File: yamlfile.New(name, unit, measure.DefaultScale(unit))}
	shop := rest
	if root := r.Tree(data, "the shop file", beginShop); root != nil && r.isShop(root) {
		shop = r.shop(root, rest)
	}
	shop.Name, shop.Place = name, plantext.Place{File: name}
	if err := r.Err(); err != nil {
		return joinery.Shop{}, err
	}
	return shop, nil
}

// shopReader reads one shop.
type shopReader struct {
	*yamlfile.File
	doubts plantext.Faults // see doubt
}

// isShop faults a file of another kind.
func (r *shopReader) isShop(root *yaml.Node) bool {
	if !r.Mapping(root, "this is no shop file", "begin with fence: {infeed: 16, outfeed: 16, reach: 8}; "+beginShop) {
		return false
	}
	if yamlfile.ValueOf(root, "pieces") == nil || yamlfile.ValueOf(root, "bits") != nil {
		return true
	}
	r.Fault(root, "name a shop file here; "+beginShop, "this is a plan, not a shop file")
	return false
}

// InPlan reads a shop that stands in a plan; what is left out stays as in rest.
func InPlan(r *yamlfile.File, n *yaml.Node, rest joinery.Shop) joinery.Shop {
	return (&shopReader{File: r}).shop(n, rest)
}

// shop reads the keys of a shop; what is left out stays as in rest.
func (r *shopReader) shop(n *yaml.Node, rest joinery.Shop) joinery.Shop {
	planUnit := r.Unit
	defer func() { r.Unit = planUnit }()
	f := r.Fields(n, "the shop", keys.Shop)
	if unit, ok := f.Unit(); ok {
		r.Unit = unit
	}
	shop := rest
	shop.Place = r.Place(n)
	if f.Has("fence") {
		shop.Fence = r.readFence(f.Value("fence"), rest.Fence)
	}
	replace(f, "lift", &shop.Lift, r.likely)
	shop.Scale = r.readScale(f, rest.Scale)
	if f.Has("minutes") {
		shop.Minutes = r.readMinutes(f.Value("minutes"), rest.Minutes)
	}
	if f.Word("stops", "way to stop a cut", keys.StopsWords) == 1 {
		shop.Stops = joinery.Blocks
	}
	replace(f, "share", &shop.Share, r.share)
	if f.Written("bits") {
		shop.Bits, shop.Example = r.readBits(f), false
	}
	if f.Written("woods") {
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
	leastLift    = 10 * measure.Millimetre
	mostLift     = 12 * measure.Inch
	leastWidest  = 2 * measure.Millimetre // of the widest bit
	inchesTyped  = "write unit: in if inches are meant"
	metricsTyped = "write unit: mm if millimetres are meant"
)

// wrongUnit faults a shop whose numbers make no sense in its unit, and reports
// whether they do not. A lift of 0 was faulted already.
func (r *shopReader) wrongUnit(f *yamlfile.Fields, shop *joinery.Shop) bool {
	remedy, lift, bits := inchesTyped, f.Value("lift"), f.Value("bits")
	if r.Unit == measure.Inches {
		remedy = metricsTyped
	}
	var widest measure.Length
	for i := range shop.Bits {
		widest = max(widest, shop.Bits[i].Diameter)
	}
	spell := measure.DefaultScale(r.Unit).Spell
	metric := r.Unit == measure.Millimetres
	switch {
	case lift != nil && shop.Lift > 0 && (metric && shop.Lift < leastLift || !metric && shop.Lift > mostLift):
		r.Fault(lift, remedy, "no table lifts a bit by %s", spell(shop.Lift))
		return true
	case len(r.Faults) == 0 && bits != nil && metric && widest > 0 && widest < leastWidest:
		r.Fault(bits, remedy, "the widest bit of this shop would be %s", spell(widest))
		return true
	}
	return false
}

func (r *shopReader) readFence(n *yaml.Node, fence joinery.FenceReach) joinery.FenceReach {
	if !r.Mapping(n, "a fence has a usable length each side of the bit, and a reach", "write fence: {infeed: 16, outfeed: 16, reach: 8}") {
		return fence
	}
	f := r.Fields(n, "fence", keys.Fence)
	replace(f, "infeed", &fence.Infeed, r.likely)
	replace(f, "outfeed", &fence.Outfeed, r.likely)
	replace(f, "reach", &fence.Reach, r.likely)
	return fence
}

// readScale reads the smallest division set by eye.
func (r *shopReader) readScale(f *yamlfile.Fields, rest measure.Scale) measure.Scale {
	text, n, ok := f.Scalar("scale")
	if !ok {
		return rest
	}
	scale, err := measure.ParseScale(text, r.Unit)
	if err != nil {
		r.BadLength(n, text, err)
		return rest
	}
	return scale
}

// formerPass is what shop files called a pass when its word was still that of a run.
const formerPass = "run"

func (r *shopReader) readMinutes(n *yaml.Node, m joinery.Minutes) joinery.Minutes {
	if !r.Mapping(n, "a change of each kind has its own time in minutes", "write minutes: {bit: 3, fence: 2, height: 0.5}") {
		return m
	}
	f := r.Fields(n, "minutes", append(slices.Clone(keys.Minutes), formerPass))
	replace(f, "bit", &m.Bit, r.minutes)
	replace(f, "fence", &m.Fence, r.minutes)
	replace(f, "height", &m.Height, r.minutes)
	replace(f, "stop", &m.Stop, r.minutes)
	pass := "pass"
	if f.Written(formerPass) {
		if f.Written(pass) {
			r.Fault(f.Value(formerPass), "take run out", "pass says the same as run, which was its name once")
		}
		pass = formerPass
	}
	replace(f, pass, &m.Pass, r.minutes)
	replace(f, "fit", &m.Fit, r.minutes)
	return m
}

// minutes reads a time in minutes, to a thousandth.
func (r *shopReader) minutes(f *yamlfile.Fields, key string) joinery.Time {
	const most = 1000
	text, n, ok := f.Scalar(key)
	if !ok {
		return 0
	}
	minutes, ok := yamlfile.Number(text)
	if !ok || minutes.Sign() < 0 || minutes.Cmp(big.NewRat(most, 1)) > 0 {
		r.Fault(n, fmt.Sprintf("write the minutes as a number from 0 to %d, such as 0.5", most), "%s is no time in minutes", yamlfile.Quoted(text))
		return 0
	}
	minutes.Mul(minutes, big.NewRat(int64(joinery.Minute), 1))
	if !minutes.IsInt() {
		r.Fault(n, "write at most three digits after the point", "%s minutes is finer than a thousandth", yamlfile.Short(text))
		return 0
	}
	return joinery.Time(minutes.Num().Int64())
}

// share reads a share of a bit's diameter, above 0 and up to 1.
func (r *shopReader) share(f *yamlfile.Fields, key string) timber.Share {
	text, n, ok := f.Scalar(key)
	if !ok {
		return timber.Share{}
	}
	share, ok := yamlfile.Number(text)
	if !ok || share.Sign() <= 0 || share.Cmp(big.NewRat(1, 1)) > 0 {
		r.Fault(n, "write a share of the bit's diameter up to 1, such as 1/2", "%s is no share of a bit", yamlfile.Quoted(text))
		return timber.Share{}
	}
	return timber.Share{Num: share.Num().Int64(), Den: share.Denom().Int64()}
}
