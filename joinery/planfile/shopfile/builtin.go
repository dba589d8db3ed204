package shopfile

import (
	_ "embed"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

//go:embed builtin.yaml
var builtIn []byte

// BuiltInName is the name of the shop of a plan that names none.
const BuiltInName = "built-in shop"

// BuiltIn is an example of a small table with six inch and six metric
// bits, for plans that name no shop and for what a shop file leaves out. Its
// scale is 1/64 in or 0.1 mm, as the unit.
func BuiltIn(unit measure.Unit) joinery.Shop {
	shop, err := readShop(BuiltInName, builtIn, unit, joinery.Shop{
		Scale:     measure.DefaultScale(unit),
		Clearance: joinery.DefaultClearance(unit),
		Rules:     joinery.DefaultRules(unit),
	})
	if err != nil {
		panic(err) // the file is compiled in, and a test reads it
	}
	shop.Example = true
	return shop
}
