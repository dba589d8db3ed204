package book

import (
	"fencecard/joinery/plantext"
)

// mostDamage bounds the faults that are listed of one entry and of the book; a
// file with more of them is no book.
const mostDamage = 100

// complaints gathers faults. It lists the first hundred and counts them all, so
// that a file of nothing but faults takes no more room than a book.
type complaints struct {
	listed plantext.Faults
	count  int
}

func (c *complaints) add(f plantext.Fault) {
	if c.count++; c.count <= mostDamage {
		c.listed.Add(f)
	}
}
