package solid

import "fencecard/joinery"

// layers is into how many layers a shaped edge is cut for its volume; each is as
// wide as the edge is on the mean, so that edges which meet no other are exact.
const layers = 24

// carved is the hollow as shapes: itself, or the layers of a shaped edge.
func (h Hollow) carved(size joinery.Size) []carved {
	whole := carved{h.shape(size), h.Down.Dimension()}
	if !h.Section.Shaped() {
		return []carved{whole}
	}
	up := h.Depth.Millimetres()
	low := h.Walls.Lo <= 0 // the fence is at the low side
	across, long := h.Across, size[h.Across].Millimetres()
	area := func(z float64) float64 { return h.Section.Area(joinery.FromMillimetres(up - z)) }
	all := make([]carved, 0, layers)
	for i := range layers {
		from, to := up*float64(i)/layers, up*float64(i+1)/layers
		wide := (area(from) - area(to)) / (to - from)
		block := Hollow{Down: h.Down, Depth: h.Depth, Across: across, Walls: h.Walls, Ends: h.Ends}
		layer := carved{block.shape(size), whole.down}
		layer.box[across] = span{0, wide}
		if !low {
			layer.box[across] = span{long - wide, long}
		}
		layer.box[whole.down] = span{from, to}
		if h.Down.High() {
			top := size[whole.down].Millimetres()
			layer.box[whole.down] = span{top - to, top - from}
		}
		for k, d := range layer.axis {
			layer.core[k] = layer.box[d]
		}
		all = append(all, layer)
	}
	return all
}
