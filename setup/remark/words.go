package remark

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/remark/trade"
)

// text is a length with its unit. A hair, which would read as 0+, is said to be
// under what the scale shows.
func (w *work) text(l measure.Length) string {
	if w.hair(l) {
		return "less than " + w.text(w.scale.Division)
	}
	return w.scale.Format(l) + " " + w.scale.Unit.String()
}

func (w *work) hair(l measure.Length) bool { return l > 0 && w.scale.Round(l) == 0 }

// only is a length of which there is too little.
func (w *work) only(l measure.Length) string {
	if w.hair(l) {
		return w.text(l)
	}
	return "only " + w.text(l)
}

// enough is a length to move or to take off, rounded up so that it does.
func (w *work) enough(l measure.Length) string { return w.text(w.scale.Ceil(l)) }

// wall is the least thickness of a wall in stock that thick.
func (w *work) wall(stock measure.Length) measure.Length { return trade.Wall(stock, w.scale) }

// words names the cut, as in: dado "shelf" in the right. A part of a tenon is
// named by its cheek.
func (m *made) words() string {
	name := m.cut.Kind.Name + ` "` + m.cut.Name + `"`
	if m.channel.Part != "" {
		return name + " (" + m.channel.Part + ")"
	}
	return name + " in the " + m.channel.Down.String()
}

// goesOn reports whether the channel only goes on from the floor of a wider one of
// its own cut, of which the same is true and is told.
func (m *made) goesOn() bool { return m.cut.Slot != nil && m.channel.Recess.Depth > 0 }

// through reports whether the cut comes out at the other side.
func (m *made) through(size joinery.Size) bool {
	return m.channel.Depth == size.Between(m.channel.Down)
}
