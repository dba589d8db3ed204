package wording

import "fencecard/joinery"

// ExampleShop is a sentence, after a blank, where the bits are those of the shop that
// the program carries: a maker who named no bits has others. Else it is empty.
func ExampleShop(shop *joinery.Shop) string {
	if !shop.Example {
		return ""
	}
	return " Bits, fence and speeds that the plan does not name are an example: compare with yours."
}
