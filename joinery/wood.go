package joinery

// Wood is one species or sheet material, as a row of the embedded table or as
// a maker's own entry in the shop file.
type Wood struct {
	Name     string  // as printed: "white ash"; "" when the plan names none
	Hardness float64 // side hardness in lbf (Janka, at 12 % moisture); 0 when unknown
}

// Known reports whether the wood has a hardness to choose passes by.
func (w Wood) Known() bool { return w.Hardness > 0 }

// String gives the wood's name, or "unknown wood".
func (w Wood) String() string {
	if w.Name == "" {
		return "unknown wood"
	}
	return w.Name
}
