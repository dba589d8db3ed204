package planform_test

import (
	"testing"

	"fencecard/joinery/planform"
	"fencecard/joinery/plantext"

	"github.com/stretchr/testify/require"
)

// Whatever stands in a text and is typed into a form: nothing panics, a form put back
// changes no byte, one with a new value is refused or is what is read afterwards, and
// what is added is taken out or, where another value would not survive that, refused:
// an empty text behind a bar at the end of a plan is such a value.
func FuzzForms(f *testing.F) {
	f.Add([]byte(bench), uint8(3), uint8(2), "a: b")
	f.Add([]byte("pieces: [{piece: a, cuts: [{lap: x}]}]\njoints: []\nshop: {bits: [{bit: b}]}\n"), uint8(1), uint8(0), "3/8 # off")
	f.Add([]byte("\ufeff# mine\r\npieces:\r\n-   piece: |\r\n      a\r\n      b\r\n"), uint8(1), uint8(0), "- x\n- y")
	f.Add([]byte("pieces:\n- : |\n"), uint8(0), uint8(0), "- x - y")
	for _, beginning := range beginnings {
		f.Add([]byte(beginning), uint8(1), uint8(1), `"quoted", 'once'`)
	}
	f.Fuzz(func(t *testing.T, text []byte, which, field uint8, value string) {
		forms, err := planform.Read("plan.yaml", text)
		if err != nil {
			return
		}
		for _, form := range forms {
			again, _, err := planform.Put(text, form)
			require.NoError(t, err, form.At)
			require.Equal(t, string(text), string(again), form.At)
		}
		form := forms[int(which)%len(forms)]
		if len(form.Fields) > 0 {
			changed := form.Fields[int(field)%len(form.Fields)].Key
			form.Set(changed, value)
			if after, at, err := planform.Put(text, form); err == nil {
				_, err := planform.Read("plan.yaml", after)
				require.NoError(t, err, "%q at %s", after, at)
			}
		}
		fresh := planform.Blank(planform.Piece, "", text)
		fresh.Set("piece", value)
		with, at, err := planform.Put(text, fresh)
		if err != nil {
			return
		}
		without, err := planform.Remove(with, at)
		if err != nil {
			require.ErrorAs(t, err, new(plantext.Fault), "%q", with)
			return
		}
		_, err = planform.Read("plan.yaml", without)
		require.NoError(t, err, "%q", without)
	})
}
