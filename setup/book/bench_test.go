package book

import (
	"fmt"
	"testing"
)

// BenchmarkRead reads a book of 400 setups of a card or two each.
func BenchmarkRead(b *testing.B) {
	d := deckOf(b, bench(b))
	grown := read(b, "")
	for i := range 400 {
		next, err := grown.Put(keepAs(b, d, 1+i%len(d.Setups), fmt.Sprint("setup ", i)), false)
		if err != nil {
			b.Fatal(err)
		}
		grown = next
	}
	data := grown.Bytes()
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		kept, err := Read("book.txt", data)
		if err != nil || len(kept.Entries()) != 400 {
			b.Fatal(err)
		}
	}
}
