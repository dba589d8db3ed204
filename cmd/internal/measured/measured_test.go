package measured_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/cmd/internal/measured"
	"fencecard/joinery/measure"
	"fencecard/setup/proof/attable"
)

// given is what was typed as flags, in inches.
func given(values map[string]string) measured.Given {
	return measured.Given{Values: values, Unit: measure.Inches, Called: func(name string) string { return "--" + name }}
}

// A bare number is in the shop's unit; what was not typed is not measured.
func ExampleGiven_Settings() {
	s, err := given(map[string]string{"near": "1/2", "back-stop": "419.1 mm"}).Settings()
	fmt.Println(measure.InchScale.Say(*s.Near), measure.InchScale.Say(*s.BackStop), s.Height == nil, err)
	_, err = given(map[string]string{"start": "half"}).Settings()
	fmt.Println(err)
	// Output:
	// 1/2 in 16 1/2 in true <nil>
	// --start: "half" is not a length
	//   write a length as 3, 3/8, 1 3/8 or 0.375, with in or mm if it is not the plan's unit
}

// Every measure that is offered is read, each into a place of its own: a name in the
// tables that nobody reads would be measured for nothing.
func TestEveryMeasureIsRead(t *testing.T) {
	places := map[string]bool{}
	for _, m := range measured.Table() {
		s, err := given(map[string]string{m.Name: "1"}).Settings()
		require.NoError(t, err, m.Name)
		assert.NotZero(t, s, m.Name)
		places[fmt.Sprint(s.Near != nil, s.Centre != nil, s.Far != nil, s.Start != nil, s.Stop != nil, s.BackStop != nil, s.Height != nil)] = true
	}
	assert.Len(t, places, len(measured.Table()))
	cuts := map[attable.TestCut]bool{}
	for _, m := range measured.Cut() {
		cut, err := given(map[string]string{m.Name: "1"}).TestCut()
		require.NoError(t, err, m.Name)
		assert.NotZero(t, cut, m.Name)
		cuts[cut] = true
	}
	assert.Len(t, cuts, len(measured.Cut()))
}

// On the table a bit may stand behind the fence face; a cut has no width below 0. All
// that is wrong is said at once, each as it is called to whoever typed it.
func TestWhatCannotBeMeasured(t *testing.T) {
	s, err := given(map[string]string{"near": "-1/4"}).Settings()
	require.NoError(t, err)
	assert.Equal(t, -measure.Inch/4, *s.Near)

	_, err = given(map[string]string{"width": "0", "depth": "-1/4"}).TestCut()
	assert.ErrorContains(t, err, "--width: a test cut measures more than 0")
	assert.ErrorContains(t, err, "leave --depth out")

	_, err = given(map[string]string{"width": "x", "depth": "y"}).TestCut()
	assert.ErrorContains(t, err, "--width")
	assert.ErrorContains(t, err, "--depth")
}
