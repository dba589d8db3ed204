package joints

import (
	"fencecard/joinery"
)

// raised returns the raised edge of a panel that stands in the groove, and its cut;
// nil for another part.
func (c *jointCheck) raised() (*joinery.Channel, *joinery.Cut) {
	part := c.joint.Part
	for i := range part.Piece.Cuts {
		cut := &part.Piece.Cuts[i]
		if part.Cut != nil || cut.Moulding == nil || cut.Moulding.Leaves == 0 {
			continue
		}
		for k := range cut.Channels {
			if cut.Channels[k].Near == part.End {
				return &cut.Channels[k], cut
			}
		}
	}
	return nil, nil
}

// raisedEdge holds a raised edge against its groove: it is thin as far as it goes in,
// and the season that dries the panel does not draw it out.
func (c *jointCheck) raisedEdge() {
	edge, cut := c.raised()
	if edge == nil {
		return
	}
	part, into := c.joint.Part, c.joint.Into
	moves, err := part.Piece.Swells(c.climate(), part.End.Dimension(), part.Piece.Size.Between(part.End))
	if err != nil {
		c.warn(part, "movement-unknown", "how %s moves in %s is not known: %v", part, into, err)
		return
	}
	deep, flat := c.channel.Depth-moves/2, edge.Section.Outline.Flat()-edge.Section.Forward
	if flat < deep {
		c.warn(into, "panel-edge-short", "%s is %s deep, and the edge of %s that panel %q leaves is thin only for %s: make it %s deep, or raise the panel with a bit whose outline begins with a reach of %s",
			into, c.text(c.channel.Depth), part, cut.Name, c.text(max(0, flat)), c.scale.Say(c.scale.Floor(max(0, flat)+moves/2)), c.scale.Say(c.scale.Ceil(deep)))
	}
	if moves >= c.channel.Depth {
		c.warn(into, "panel-comes-out", "%s is only %s deep, and %s moves %s from season to season, so that it may come out: make it more than %s deep",
			into, c.text(c.channel.Depth), part, c.text(moves), c.scale.Say(c.scale.Ceil(moves)))
	}
}
