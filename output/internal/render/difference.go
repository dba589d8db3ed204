package render

import (
	"image"
	"image/color"
	"math"
)

// cell is the side of the squares that two pictures are compared by, a few lines
// of small letters high.
const cell = 24

// Difference is the mean difference of two pictures of a size, square by square, 1
// where one is white and the other black. Other words in the same places come to
// 0.02 at the most, a page laid out anew to 0.035 and more.
func Difference(a, b image.Image) float64 {
	sum, n := 0.0, 0
	for y := 0; y < a.Bounds().Dy(); y += cell {
		for x := 0; x < a.Bounds().Dx(); x += cell {
			square := image.Rect(x, y, x+cell, y+cell).Intersect(a.Bounds())
			sum += math.Abs(darkness(a, square) - darkness(b, square))
			n++
		}
	}
	return sum / float64(n)
}

// darkness is the mean shade of a part of a picture, 1 where it is black.
func darkness(p image.Image, part image.Rectangle) float64 {
	sum := 0.0
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			sum += 1 - float64(color.GrayModel.Convert(p.At(x, y)).(color.Gray).Y)/255
		}
	}
	return sum / float64(part.Dx()*part.Dy())
}
