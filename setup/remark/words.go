package remark

import "fencecard/joinery"

// limit is one rule of the trade as inch makers and metric makers say it.
type limit struct{ in, mm joinery.Length }

// Limits below which a maker is warned (common practice, no source, unless
// said otherwise).
var (
	thinWall      = limit{joinery.Inch / 4, 6 * joinery.Millimetre} // or a third of the stock, if that is less
	webInLeg      = limit{joinery.Inch / 8, 3 * joinery.Millimetre} // to leave between two tenons
	shortGrain    = limit{joinery.Inch / 2, 12 * joinery.Millimetre}
	narrowOnTable = limit{3 * joinery.Inch / 8, 9 * joinery.Millimetre} // of a piece that stands on its edge
	lowAtFence    = limit{joinery.Inch / 4, 6 * joinery.Millimetre}     // of a board that lies flat
	shortAtFence  = limit{joinery.Inch, 25 * joinery.Millimetre}        // along it
)

// of returns the limit in the unit of a scale.
func (l limit) of(s joinery.Scale) joinery.Length {
	if s.Unit == joinery.Millimetres {
		return l.mm
	}
	return l.in
}

// text is a length with its unit. A hair, which would read as 0+, is said to be
// under what the scale shows.
func (w *work) text(l joinery.Length) string {
	if w.hair(l) {
		return "less than " + w.text(w.scale.Division)
	}
	return w.scale.Format(l) + " " + w.scale.Unit.String()
}

func (w *work) hair(l joinery.Length) bool { return l > 0 && w.scale.Round(l) == 0 }

// only is a length of which there is too little.
func (w *work) only(l joinery.Length) string {
	if w.hair(l) {
		return w.text(l)
	}
	return "only " + w.text(l)
}

// enough is a length to move or to take off, rounded up so that it does.
func (w *work) enough(l joinery.Length) string { return w.text(w.scale.Ceil(l)) }

// wall is the least thickness of a wall in stock that thick: a quarter of an
// inch, or a third of the stock where that is less.
func (w *work) wall(stock joinery.Length) joinery.Length {
	return min(thinWall.of(w.scale), stock/3)
}

// words names the cut, as in: dado "shelf" in the right. A part of a tenon is
// named by its cheek.
func (m *made) words() string {
	name := m.cut.Kind.Name + ` "` + m.cut.Name + `"`
	if m.channel.Part != "" {
		return name + " (" + m.channel.Part + ")"
	}
	return name + " in the " + m.channel.Down.String()
}

// through reports whether the cut comes out at the other side.
func (m *made) through(size joinery.Size) bool {
	return m.channel.Depth == size.Between(m.channel.Down)
}
