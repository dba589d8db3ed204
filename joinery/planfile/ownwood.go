package planfile

import (
	"strings"

	"fencecard/joinery"
)

const woodExample = "- {wood: bog oak, hardness: 1500}"

// Bounds on a wood's figures; what lies outside is a slip of the finger.
const (
	hardest         = 6000 // lbf; no wood known is over 5000
	mostShrinkage   = 30   // percent
	mostCoefficient = 0.02 // for 1 % of moisture
)

// readWoods reads the maker's own woods.
func (r *shopReader) readWoods(f *fields) []joinery.Wood {
	var woods []joinery.Wood
	named := map[string]joinery.Place{}
	for _, n := range f.entries("woods", "wood", woodExample) {
		if r.full || !r.mapping(n, "a wood has a name and its figures", "write "+woodExample) {
			continue
		}
		before := len(r.faults)
		g := r.fields(n, "the wood", woodKeys)
		g.need("wood")
		wood := r.ownWood(g)
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
func (r *shopReader) ownWood(f *fields) joinery.Wood {
	w := joinery.Wood{Name: f.name("wood"), Group: joinery.Own}
	if w.Hardness = r.hardness(f); w.Hardness > 0 {
		w.HardnessFrom = joinery.ShopFile
	}
	if f.has("shrinkage") && r.mapping(f.value("shrinkage"), "shrinkage is radial and tangential", "write "+example("shrinkage")) {
		g := r.fields(f.value("shrinkage"), "the shrinkage", shrinkageKeys)
		g.need(shrinkageKeys...)
		w.ShrinkR, w.ShrinkT = g.figure("radial", mostShrinkage), g.figure("tangential", mostShrinkage)
		w.ShrinkFrom = joinery.ShopFile
	}
	w.CR, w.CT = f.figure("CR", mostCoefficient), f.figure("CT", mostCoefficient)
	if w.CR > 0 || w.CT > 0 {
		w.CFrom = joinery.ShopFile
	}
	w.Share = r.share(f, "share")
	w.Still = f.answer("moves") == joinery.No
	return w
}

// poundForce is one lbf in newtons.
const poundForce = 4.4482216

// hardness reads a side hardness in lbf, or in newtons with N behind it.
func (r *shopReader) hardness(f *fields) float64 {
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
		r.fault(n, "write the side hardness in lbf, or in newtons as 6000 N; leave it out for the shallowest passes",
			"%s is no hardness of a wood", quoted(text))
		return 0
	}
	return value / per
}
