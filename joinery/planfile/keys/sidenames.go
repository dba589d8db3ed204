package keys

import (
	"strings"

	"fencecard/joinery"
)

// SideNames are the sides, as they are written.
func SideNames() []string {
	var names []string
	for _, s := range joinery.Sides {
		names = append(names, s.String())
	}
	return names
}

// DimensionNames are the dimensions, as they are written.
func DimensionNames() []string {
	var names []string
	for _, d := range joinery.Dimensions {
		names = append(names, d.String())
	}
	return names
}

// spokenSides are the sides as they are named aloud, the top before the bottom.
func spokenSides() []string {
	var names []string
	for _, d := range joinery.Dimensions {
		names = append(names, strings.Split(d.String(), "-")...)
	}
	return names
}

// arrises are the pairs of sides that meet, the face on the table first.
func arrises() []string {
	var all []string
	for _, face := range joinery.Sides {
		for _, edge := range joinery.Sides {
			if face.Dimension() != edge.Dimension() {
				all = append(all, face.String()+" "+edge.String())
			}
		}
	}
	return all
}
