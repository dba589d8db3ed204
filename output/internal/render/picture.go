package render

import (
	"image"
	"math"
	"slices"

	"github.com/klippa-app/go-pdfium/requests"
	"github.com/stretchr/testify/require"
)

// Picture is a part of a page as it is rendered, in shades of grey.
type Picture struct {
	at    image.Point // the dot of the whole page its top left dot is
	w, h  float64     // of a dot
	image *image.Gray
}

// Picture renders a part of a page, from 0, at so many dots per inch.
func (d *Document) Picture(page, dpi int, part Box) *Picture {
	d.t.Helper()
	perMM := float64(dpi) / 25.4
	from := image.Pt(int(math.Floor(part.Left*perMM)), int(math.Floor(part.Top*perMM)))
	to := image.Pt(int(math.Ceil(part.Right*perMM)), int(math.Ceil(part.Bottom*perMM)))
	points := 72 / float64(dpi)
	r, err := d.pdf.RenderPageInDPI(&requests.RenderPageInDPI{
		Page: d.page(page), DPI: dpi, ImageFormat: requests.RenderImageFormatGrayscale,
		Crop: &requests.RenderPageCrop{
			X: float64(from.X) * points, Y: float64(from.Y) * points,
			Width: float64(to.X-from.X) * points, Height: float64(to.Y-from.Y) * points,
		},
	})
	require.NoError(d.t, err)
	defer r.Cleanup()
	drawn := r.Result.RenderedImage.(*image.Gray)
	// The renderer takes its picture back, so keep a copy.
	kept := &image.Gray{Pix: slices.Clone(drawn.Pix), Stride: drawn.Stride, Rect: drawn.Rect}
	width, height := d.Size(page)
	return &Picture{from, width / dots(width, dpi), height / dots(height, dpi), kept}
}

// dots is how many dots the renderer stretches a width of a page to: a whole
// number, worked out with its own rounding, which makes 1,801 of 6 in at 300.
func dots(mm float64, dpi int) float64 { return math.Ceil(mm / mmPerPoint * (float64(dpi) / 72)) }

// WholePage is the box of a page, from 0.
func (d *Document) WholePage(page int) Box {
	w, h := d.Size(page)
	return Box{Right: w, Bottom: h}
}

// dot finds the dot at a place.
func (p *Picture) dot(x, y float64) (int, int) {
	return int(math.Floor(x/p.w)) - p.at.X, int(math.Floor(y/p.h)) - p.at.Y
}

// Ink is how dark a place is: 0 white, 1 black. Places outside are white.
func (p *Picture) Ink(x, y float64) float64 {
	i, j := p.dot(x, y)
	return p.ink(i, j)
}

func (p *Picture) ink(i, j int) float64 {
	if !(image.Point{i, j}).In(p.image.Rect) {
		return 0
	}
	return 1 - float64(p.image.GrayAt(i, j).Y)/255
}

// Stroke is where a line or an edge of something dark crosses a scan line.
type Stroke struct {
	Middle   float64 // the centre of the ink
	From, To float64 // its edges
}

// Across gives the strokes met from left to right along a scan line at y,
// between two places. Strokes are parted by white dots; their middles are the
// centres of gravity of the ink, so that they are finer than a dot.
func (p *Picture) Across(y, left, right float64) []Stroke {
	i, j := p.dot(left, y)
	last, _ := p.dot(right, y)
	return strokes(p.at.X, p.w, i, last, func(i int) float64 { return p.ink(i, j) })
}

// Down gives the strokes met from top to bottom along a scan line at x,
// between two places.
func (p *Picture) Down(x, top, bottom float64) []Stroke {
	i, j := p.dot(x, top)
	_, last := p.dot(x, bottom)
	return strokes(p.at.Y, p.h, j, last, func(j int) float64 { return p.ink(i, j) })
}

// strokes reads one scan line. The picture's first dot is the page's dot
// origin; a dot is mm wide along the line.
func strokes(origin int, mm float64, first, last int, ink func(int) float64) []Stroke {
	const white = 0.02
	var found []Stroke
	var mass, moment, before, from float64
	for i := first; i <= last+1; i++ {
		k := 0.0
		if i <= last {
			k = ink(i)
		}
		at := float64(origin + i)
		switch {
		case k > white:
			if mass == 0 {
				from = at + 1 - k
			}
			mass += k
			moment += k * (at + 0.5)
			before = k
		case mass > 0:
			found = append(found, Stroke{moment / mass * mm, from * mm, (at - 1 + before) * mm})
			mass, moment = 0, 0
		}
	}
	return found
}

// Image is the picture itself.
func (p *Picture) Image() *image.Gray { return p.image }
