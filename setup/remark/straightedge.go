package remark

import (
	"fmt"

	"fencecard/joinery"
)

// Straightedge says where to clamp a straightedge for the edge of a hand-held
// router's base, between the side the channel is measured from and the channel,
// and how far to move it for a channel wider than the bit.
func Straightedge(ch joinery.Channel, bit *joinery.Bit, shop *joinery.Shop) string {
	d, text := bit.True(), shop.Scale.Say
	aside := (shop.Base - d) / 2
	from := fmt.Sprintf("%s from the %s", text(ch.Setback-aside), ch.Near)
	if ch.Setback < aside {
		from = fmt.Sprintf("on scrap %s outside the %s", text(aside-ch.Setback), ch.Near)
	}
	words := fmt.Sprintf("clamp a straightedge %s, which is %s from the near wall, for a base of %s and the %s bit",
		from, text(aside), text(shop.Base), bit.Name)
	if ch.Width > d {
		words += fmt.Sprintf("; then move it %s away for the far wall", text(ch.Width-d))
	}
	return words
}

// beyond says how a channel made by hand is guided that the fence does not reach,
// where the shop has the base of a hand-held router: with the widest bit that goes
// in. It is "" elsewhere.
func (w *work) beyond(ch joinery.Channel) string {
	shop, size := w.shop, w.piece.Size
	if shop.Base == 0 || shop.Fence.Reach == 0 {
		return ""
	}
	var widest *joinery.Bit
	for i := range shop.Bits {
		bit := &shop.Bits[i]
		deep := bit.Cutting == 0 || bit.Cutting >= ch.Depth
		if deep && bit.True() <= ch.Width && (widest == nil || bit.True() > widest.True()) {
			widest = bit
		}
	}
	if widest == nil || min(ch.Setback, ch.Reversed(size).Setback)+ch.Width-widest.True()/2 <= shop.Fence.Reach {
		return ""
	}
	return Straightedge(ch, widest, shop)
}
