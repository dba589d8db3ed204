package paper

import "strings"

// Framed draws a frame round a block.
func Framed(inner Block, pad Paper, pen Pen) Block {
	w, h := inner.W+2*pad, inner.H+2*pad
	b := Figure("frame", w, h, func(c Canvas, at Point) { c.Stroke(pen, Box{X: at.X, Y: at.Y, W: w, H: h}.Path()...) })
	b.Add(inner, pad, pad)
	return b
}

// Centred puts a block in the middle of a width and height.
func Centred(b Block, w, h Paper) Block {
	in := Block{W: w, H: h}
	in.Add(b, max(0, (w-b.W)/2), max(0, (h-b.H)/2))
	return in
}

// Shortened cuts a text to a width, and shows that it did.
func Shortened(l Letters, text string, w Paper) string {
	if l.Width(text) <= w {
		return text
	}
	runes := []rune(text)
	for len(runes) > 0 && l.Width(string(runes)+"…") > w {
		runes = runes[:len(runes)-1]
	}
	return strings.TrimSpace(string(runes)) + "…"
}
