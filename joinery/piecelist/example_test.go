package piecelist_test

import (
	"fmt"

	"fencecard/joinery/piecelist"
)

// A list that leaves something open is read again with the answers.
func Example() {
	data := []byte("part;qty;length;width;thickness\nleg;4;26;1 1/2;1 1/2\n")
	o := piecelist.Options{Answers: map[string]string{}}
	list, questions, err := piecelist.Read("table.csv", data, o)
	for err == nil && list == nil {
		q := questions[0]
		fmt.Println(q.Asks, q.Default)
		o.Answers[q.Key] = q.Default
		list, questions, err = piecelist.Read("table.csv", data, o)
	}
	for _, c := range list.Pieces[0].Copies {
		fmt.Println(c.Name, c.Across)
	}
	// Output:
	// row 2: which way does "leg" lie? length up
	// row 2: are the 4 of "leg" alike, pair left right, pair front back or corners? corners
	// front left leg []
	// front right leg [left-right]
	// back left leg [front-back]
	// back right leg [left-right front-back]
}
