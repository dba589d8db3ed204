package book_test

import (
	"fmt"

	"fencecard/joinery/measure"
	"fencecard/setup/book"
)

func Example() {
	b, err := book.Read("setup-book.txt", []byte(`fencecard setup book 1

# the spring batch
setup: seat rail mortises
  bit: three eighths up-cut
  kind: up-cut
  diameter: 3/8 in
  fence to near edge: 1/2 in
  fence stood: 33/64 in

setup: panel grooves
  diameter: a quarter
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range b.Damage() {
		fmt.Println(f)
	}
	e, err := b.NamedOrCoded("Seat rail mortises")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(e.Code, e.Learnt(measure.InchScale))
	rest, err := b.Forget("panel grooves")
	fmt.Println(len(rest.Damage()), err)
	// Output:
	// setup-book.txt:11:8: setup "panel grooves" has no "fence to near edge"; add a line below it, such as fence to near edge: 1/2 in
	// setup-book.txt:12:13: diameter: "a quarter" is not a length; write a length as 3, 3/8, 1 3/8 or 0.375, with in or mm if it is not the plan's unit
	// 2cr0-y9h5 [after the test cut the fence stood at 33/64]
	// 0 <nil>
}
