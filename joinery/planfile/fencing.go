package planfile

import (
	"strings"

	"fencecard/joinery"
)

// readFencing reads which side runs along the fence, or that either may.
func readFencing(f *fields) joinery.Fencing {
	text, n, ok := f.scalar("fence")
	switch {
	case !ok:
		return joinery.Fencing{}
	case strings.EqualFold(text, "either"):
		return joinery.Fencing{Either: true}
	}
	if side, ok := joinery.ParseSide(strings.ToLower(text)); ok {
		return joinery.Fencing{Side: side}
	}
	f.r.choice(f.r.place(n), "side", text, append(sideNames(), "either")...)
	return joinery.Fencing{}
}
