package shopfile

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"
)

const woodExample = "- {wood: bog oak, hardness: 1500}"

// Bounds on a wood's figures; what lies outside is a slip of the finger.
const (
	hardest         = 6000 // lbf; no wood known is over 5000
	mostShrinkage   = 30   // percent
	mostCoefficient = 0.02 // for 1 % of moisture
)

// readWoods reads the maker's own woods.
func (r *shopReader) readWoods(f *yamlfile.Fields) []timber.Wood {
	var woods []timber.Wood
	named := map[string]plantext.Place{}
	for _, n := range f.Entries("woods", "wood", woodExample) {
		if r.Full || !r.Mapping(n, "a wood has a name and its figures", "write "+woodExample) {
			continue
		}
		before := len(r.Faults)
		g := r.Fields(n, "the wood", keys.Wood)
		g.Need("wood")
		wood := r.ownWood(g)
		if len(r.Faults) > before {
			continue
		}
		if first, again := named[strings.ToLower(wood.Name)]; again {
			r.Add(plantext.Fault{
				Place: r.Place(g.Value("wood")), Problem: "two woods are named " + yamlfile.Quoted(wood.Name),
				Remedy: "give each wood a name of its own", Other: first, Clash: "the first one",
			})
			continue
		}
		named[strings.ToLower(wood.Name)] = r.Place(g.Value("wood"))
		woods = append(woods, wood)
	}
	return woods
}

// ownWood reads one wood; every figure is the shop file's.
func (r *shopReader) ownWood(f *yamlfile.Fields) timber.Wood {
	w := timber.Wood{Name: f.Name("wood"), Group: timber.Own}
	if w.Hardness = r.hardness(f); w.Hardness > 0 {
		w.HardnessFrom = timber.ShopFile
	}
	if f.Has("shrinkage") && r.Mapping(f.Value("shrinkage"), "shrinkage is radial and tangential", "write "+keys.Example("shrinkage")) {
		g := r.Fields(f.Value("shrinkage"), "the shrinkage", keys.Shrinkage)
		g.Need(keys.Shrinkage...)
		w.ShrinkR, w.ShrinkT = g.Figure("radial", mostShrinkage), g.Figure("tangential", mostShrinkage)
		w.ShrinkFrom = timber.ShopFile
	}
	w.CR, w.CT = f.Figure("CR", mostCoefficient), f.Figure("CT", mostCoefficient)
	if w.CR > 0 || w.CT > 0 {
		w.CFrom = timber.ShopFile
	}
	w.Share = r.share(f, "share")
	w.Still = f.Answer("moves") == joinery.No
	return w
}

// poundForce is one lbf in newtons.
const poundForce = 4.4482216

// hardness reads a side hardness in lbf, or in newtons with N behind it.
func (r *shopReader) hardness(f *yamlfile.Fields) float64 {
	text, n, ok := f.Scalar("hardness")
	if !ok {
		return 0
	}
	per := 1.0
	word := strings.TrimSpace(strings.TrimSuffix(text, "lbf"))
	if newtons, ok := strings.CutSuffix(text, "N"); ok {
		word, per = strings.TrimSpace(newtons), poundForce
	}
	value, ok := yamlfile.Figure(word)
	if !ok || value <= 0 || value/per > hardest {
		r.Fault(n, "write the side hardness in lbf, or in newtons as 6000 N; leave it out for the shallowest passes",
			"%s is no hardness of a wood", yamlfile.Quoted(text))
		return 0
	}
	return value / per
}
