package joints

import "fencecard/setup/deck"

// lap checks two laps against each other: each takes away what the other
// leaves standing, as long as the other piece is wide.
func (c *jointCheck) lap() {
	one, other := c.joint.Into, c.joint.Part
	for _, h := range [][2]deck.Half{{one, other}, {other, one}} {
		cut, mate := h[0], h[1]
		left := mate.Piece.Size.Between(mate.Cut.In) - mate.Cut.Depth
		deep := deck.Fit{Of: "thickness", Room: cut.Cut.Depth, Part: left, Wants: 0}
		long := deck.Fit{Of: "length", Room: cut.Cut.Length, Part: mate.Piece.Size.Between(cut.Cut.At), Wants: 0}
		c.joint.Fits = append(c.joint.Fits, deep, long)
		if deep.Gap() != 0 {
			c.warn(cut, "laps-not-flush", "%s is %s deep, but %s leaves %s: make it %s deep to lie flush",
				cut, c.text(deep.Room), mate, c.text(deep.Part), c.text(deep.Part))
		}
		if long.Gap() != 0 {
			c.warn(cut, "lap-length", "%s is %s long, but %q measures %s there: make it %s long",
				cut, c.text(long.Room), mate.Piece.Name, c.text(long.Part), c.text(long.Part))
		}
	}
}
