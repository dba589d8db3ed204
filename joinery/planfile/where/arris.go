package where

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
)

// Arris reads the two sides that meet at an arris: "top front".
func Arris(f *yamlfile.Fields) (down, fence joinery.Side) {
	text, n, ok := f.Scalar("on")
	if !ok {
		return joinery.NoSide, joinery.NoSide
	}
	words := strings.Fields(strings.ReplaceAll(strings.ReplaceAll(text, "/", " "), ",", " "))
	if len(words) != 2 {
		f.File.Fault(n, "write the face that lies on the table and the edge at the fence, such as "+keys.Example("on")+
			"; an edge that is curved, or run along a pilot, is not for a fence and gets no sheet", "%s names no arris", yamlfile.Quoted(text))
		return joinery.NoSide, joinery.NoSide
	}
	return f.File.Side(n, words[0]), f.File.Side(n, words[1])
}
