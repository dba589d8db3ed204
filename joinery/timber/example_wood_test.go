package timber_test

import (
	"fmt"

	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

func ExampleWood_Change() {
	oak, _, _ := timber.FindWood("oak, white")
	summer, _ := timber.Moisture(timber.Temperature{Degrees: 70, Fahrenheit: true}, 65)
	winter, _ := timber.Moisture(timber.Temperature{Degrees: 70, Fahrenheit: true}, 30)
	m, err := oak.Change(9*measure.Inch, winter, summer, timber.Tangential)
	fmt.Printf("%.1f %% to %.1f %%: %.1f mm wider %v\n", winter, summer, m.Change.Millimetres(), err)
	// Output: 6.2 % to 12.0 %: 4.8 mm wider <nil>
}

func ExampleFindWood() {
	_, suggestion, ok := timber.FindWood("oak")
	fmt.Println(ok, suggestion)
	// Output: false northern red oak, white oak or European oak
}
