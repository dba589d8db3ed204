package solid

import (
	"math"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

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
	area := func(z float64) float64 { return h.Section.Area(measure.FromMillimetres(up - z)) }
	all := make([]carved, 0, layers)
	for i := range layers {
		from, to := up*float64(i)/layers, up*float64(i+1)/layers
		layer := h.layer(size, (area(from)-area(to))/(to-from))
		layer.box[whole.down] = span{from, to}
		if h.Down.High() {
			top := size[whole.down].Millimetres()
			layer.box[whole.down] = span{top - to, top - from}
		}
		all = append(all, layer)
	}
	return all
}

// layer is what a shaped edge takes at a height where it reaches so far: a block from
// end to end, or what a circle about the bit's axis sweeps between its lines.
func (h Hollow) layer(size joinery.Size, wide float64) carved {
	long := size[h.Across].Millimetres()
	low := h.Walls.Lo <= 0 // the fence is at the low side
	centre := (h.Walls.Lo + h.Walls.Hi).Millimetres() / 2
	if !low {
		centre = long - centre
	}
	ends := toSpan(h.Ends)
	layer := carved{shape{axis: [2]joinery.Dimension{h.Across, h.Run()}}, h.Down.Dimension()}
	across := span{0, wide}
	if h.Ends.Lo > 0 || h.Ends.Hi < size[h.Run()] {
		// The axis stops half the chord inside each line; this height's circle is smaller.
		widest := h.Section.Widest(h.Depth)
		layer.r = wide - centre
		inside := math.Sqrt(max(0, widest*(widest-2*centre))) - layer.r
		if h.Ends.Lo > 0 {
			ends.lo += inside
		}
		if h.Ends.Hi < size[h.Run()] {
			ends.hi -= inside
		}
		across.lo = centre - layer.r
	}
	if !low {
		across = span{long - across.hi, long - across.lo}
	}
	for k, in := range []span{across, ends} {
		layer.box[layer.axis[k]] = in
		layer.core[k] = span{in.lo + layer.r, in.hi - layer.r}
	}
	return layer
}

// stairs is into how many blocks a shaped edge is taken apart where it is asked
// what it meets.
const stairs = 16

// Boxes are the blocks around a hollow inside the blank: one, or of a shaped edge
// as many as make stairs close around its section.
func (h Hollow) Boxes(size joinery.Size) []Box {
	whole := h.Box(size)
	if !h.Section.Shaped() {
		return []Box{whole}
	}
	up := h.Depth.Millimetres()
	near := h.Across.Low()
	if h.Walls.Lo > 0 {
		near = h.Across.High()
	}
	var all []Box
	for i := range stairs {
		from, to := up*float64(i)/stairs, up*float64(i+1)/stairs
		reach := max(h.Section.ReachAt(h.Depth, from), h.Section.ReachAt(h.Depth, to))
		if reach == 0 {
			continue
		}
		b := whole
		b[h.Down.Dimension()] = From(h.Down, measure.FromMillimetres(from), measure.FromMillimetres(to), size)
		b[h.Across] = From(near, 0, measure.FromMillimetres(reach), size)
		all = append(all, b.And(whole))
	}
	return all
}
