package paper_test

import (
	"fmt"

	"fencecard/output/paper"
)

// A line of words knows its size before it is drawn.
func ExamplePhrase() {
	words := paper.Phrase{}.Say(paper.Letters{Height: 3}, "FRONT to the fence")
	block := words.Set(100)
	fmt.Printf("%s: %.0f mm wide\n", block.Parts[0].Says, block.W)
	// Output: FRONT to the fence: 37 mm wide
}
