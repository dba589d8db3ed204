package planfile

import (
	"math/big"
	"strings"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

var (
	woodKeys      = []string{"wood", "hardness", "shrinkage", "CR", "CT", "share", "moves"}
	shrinkageKeys = []string{"radial", "tangential"}
)

const woodExample = "- {wood: bog oak, hardness: 1500}"

// Bounds on a wood's figures; what lies outside is a slip of the finger.
const (
	hardest         = 6000 // lbf; no wood known is over 5000
	mostShrinkage   = 30   // percent
	mostCoefficient = 0.02 // for 1 % of moisture
)

// readWoods reads the maker's own woods.
func (r *reader) readWoods(f *fields) []joinery.Wood {
	var woods []joinery.Wood
	named := map[string]joinery.Place{}
	for _, n := range f.entries("woods", "wood", woodExample) {
		if r.full || !r.mapping(n, "a wood has a name and its figures", "write "+woodExample) {
			continue
		}
		before := len(r.faults)
		g := r.fields(n, "the wood", woodKeys)
		g.need("wood")
		wood := g.ownWood()
		if len(r.faults) > before {
			continue
		}
		if first, again := named[strings.ToLower(wood.Name)]; again {
			r.add(joinery.Fault{
				Place: r.place(g.value("wood")), Problem: "two woods are named " + quoted(wood.Name),
				Remedy: "give each wood a name of its own", Other: first, Clash: "the first one",
			})
			continue
		}
		named[strings.ToLower(wood.Name)] = r.place(g.value("wood"))
		woods = append(woods, wood)
	}
	return woods
}

// ownWood reads one wood; every figure is the shop file's.
func (f *fields) ownWood() joinery.Wood {
	w := joinery.Wood{Name: f.name("wood"), Group: joinery.Own}
	if w.Hardness = f.hardness(); w.Hardness > 0 {
		w.HardnessFrom = joinery.ShopFile
	}
	if f.has("shrinkage") && f.r.mapping(f.value("shrinkage"), "shrinkage is radial and tangential", "write "+example("shrinkage")) {
		g := f.r.fields(f.value("shrinkage"), "the shrinkage", shrinkageKeys)
		g.need(shrinkageKeys...)
		w.ShrinkR, w.ShrinkT = g.figure("radial", mostShrinkage), g.figure("tangential", mostShrinkage)
		w.ShrinkFrom = joinery.ShopFile
	}
	w.CR, w.CT = f.figure("CR", mostCoefficient), f.figure("CT", mostCoefficient)
	if w.CR > 0 || w.CT > 0 {
		w.CFrom = joinery.ShopFile
	}
	w.Share = f.share("share")
	w.Still = f.answer("moves") == joinery.No
	return w
}

// poundForce is one lbf in newtons.
const poundForce = 4.4482216

// hardness reads a side hardness in lbf, or in newtons with N behind it.
func (f *fields) hardness() float64 {
	text, n, ok := f.scalar("hardness")
	if !ok {
		return 0
	}
	per := 1.0
	word := strings.TrimSpace(strings.TrimSuffix(text, "lbf"))
	if newtons, ok := strings.CutSuffix(text, "N"); ok {
		word, per = strings.TrimSpace(newtons), poundForce
	}
	value, ok := figure(word)
	if !ok || value <= 0 || value/per > hardest {
		f.r.fault(n, "write the side hardness in lbf, or in newtons as 6000 N; leave it out for the shallowest passes",
			"%s is no hardness of a wood", quoted(text))
		return 0
	}
	return value / per
}

// figure reads a number above 0 and up to most; 0 where it was not written.
func (f *fields) figure(key string, most float64) float64 {
	text, n, ok := f.scalar(key)
	if !ok {
		return 0
	}
	value, ok := figure(text)
	if !ok || value <= 0 || value > most {
		f.r.fault(n, "write a number above 0, such as "+example(key), "%s cannot be the %s", quoted(text), key)
		return 0
	}
	return value
}

// figure reads a plain decimal.
func figure(text string) (float64, bool) {
	const longest = 10
	if text == "" || len(text) > longest || strings.Trim(text, "0123456789.") != "" {
		return 0, false
	}
	number, ok := new(big.Rat).SetString(text)
	if !ok {
		return 0, false
	}
	value, _ := number.Float64()
	return value, true
}

// readClimate reads the air the work will live in; what is left out stays as
// in a heated house.
func (r *planReader) readClimate(f *fields) {
	if !f.has("climate") || !r.mapping(f.value("climate"), "a climate has a dry and a damp season", "write "+example("climate")) {
		return
	}
	before, climate := len(r.faults), joinery.DefaultClimate
	g := r.fields(f.value("climate"), "the climate", climateKeys)
	for _, part := range []struct {
		key   string
		value *float64
	}{{"dry", &climate.Dry}, {"damp", &climate.Damp}} {
		if g.written(part.key) {
			*part.value = g.figure(part.key, 100)
		}
	}
	if text, n, ok := g.scalar("temp"); ok {
		t, err := joinery.ParseTemperature(text)
		if climate.Temperature = t; err != nil {
			r.because(n, err)
		}
	}
	climate.Assembly = g.moisture("assembly")
	if len(r.faults) == before {
		r.checkClimate(f.value("climate"), climate)
	}
}

func (r *planReader) checkClimate(n *yaml.Node, climate joinery.Climate) {
	for _, humidity := range []float64{climate.Dry, climate.Damp} {
		if _, err := joinery.Moisture(climate.Temperature, humidity); err != nil {
			r.because(n, err)
			return
		}
	}
	if climate.Dry >= climate.Damp {
		r.fault(n, "write the drier humidity as dry: and the damper as damp:", "the dry season is no drier than the damp one")
		return
	}
	r.plan.Climate = climate
}
