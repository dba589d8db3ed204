package where

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
)

// Fence reads which side runs along the fence, or that either may.
func Fence(f *yamlfile.Fields) joinery.Fencing {
	text, n, ok := f.Scalar("fence")
	switch {
	case !ok:
		return joinery.Fencing{}
	case strings.EqualFold(text, "either"):
		return joinery.Fencing{Either: true}
	}
	if side, ok := joinery.ParseSide(strings.ToLower(text)); ok {
		return joinery.Fencing{Side: side}
	}
	f.File.Choice(f.File.Place(n), "side", text, append(keys.SideNames(), "either")...)
	return joinery.Fencing{}
}
