package joinery

import "fencecard/joinery/timber"

// RaisedPanel shapes all four edges of a panel, so that they go into the grooves
// of a frame and the field stands out.
var RaisedPanel = Kind{
	Name:     "panel",
	Says:     "the edges of a panel, raised by a bit with an outline",
	Required: []string{"in", "bit", "leaves"},
	Optional: []string{},
	Example:  "in: front, bit: table panel, leaves: 1/4",
	Refuses: map[string]Refusal{
		"fence":  {Why: "each edge goes to the fence once"},
		"ends":   {Why: "its edges run from end to end"},
		"start":  {Why: "its edges run from end to end"},
		"repeat": {Why: "it shapes all four edges at once"},
	},
	Shapes:  true,
	Deepest: timber.Share{Num: 1, Den: 1},
	lay:     layPanel,
}

// layPanel lays a shaped edge on each side of the face.
func layPanel(l *layout) {
	c := l.cut
	if c.Moulding == nil || c.Moulding.Outline == nil || c.In == NoSide {
		return
	}
	thick := l.piece.Size.Between(c.In)
	if c.Moulding.Leaves >= thick {
		l.fault("leave less than "+l.text(thick)+l.orMetric(c.Moulding.Leaves, thick), []string{"leaves"},
			"it leaves %s of a panel %s thick, so nothing is raised", l.text(c.Moulding.Leaves), l.text(thick))
		return
	}
	for _, side := range Sides {
		if side.Dimension() == c.In.Dimension() {
			continue
		}
		channel, ok := l.shaped(side.String()+" edge", c.In, side, thick-c.Moulding.Leaves, 0)
		if !ok {
			return
		}
		l.channels = append(l.channels, channel)
	}
}
