package proof_test

import (
	"fmt"
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// A mutation changes one thing in the claims of a deck and puts it back.

const smallest = measure.Inch / 64

// mutant visits every single change of the claims.
type mutant struct {
	count int
	try   func(what string)
}

// set tries one value in place of another.
func (m *mutant) set(what string, v reflect.Value, to any) {
	old := reflect.ValueOf(v.Interface())
	v.Set(reflect.ValueOf(to).Convert(v.Type()))
	m.count++
	m.try(fmt.Sprintf("%s: %v for %v", what, to, old))
	v.Set(old)
}

// skipped are fields that are not claims: where a deck was read, and what is
// passed on.
var skipped = []string{"Part", "FromBook", "Kept", "Marks", "Place", "Silent", "Said"}

func (m *mutant) walk(what string, v reflect.Value) {
	switch old := v.Interface().(type) {
	case measure.Length:
		for _, by := range []measure.Length{smallest, -smallest, measure.Inch} {
			m.set(what, v, old+by)
		}
		return
	case joinery.Side:
		for _, side := range joinery.Sides {
			if side != old {
				m.set(what, v, side)
			}
		}
		return
	case deck.Begin:
		m.set(what, v, 1-old)
		return
	case deck.End:
		m.set(what, v, 1-old)
		return
	case *deck.Nibble:
		if old == nil {
			m.set(what, v, &deck.Nibble{})
			m.set(what, v, &deck.Nibble{Passes: 2, DrawBack: measure.Inch / 4})
			return
		}
		m.set(what, v, (*deck.Nibble)(nil))
		m.walk(what, v.Elem())
		return
	case *deck.Hole:
		if old == nil {
			m.set(what, v, &deck.Hole{})
			return
		}
		m.set(what, v, (*deck.Hole)(nil))
		m.walk(what, v.Elem())
		return
	case *deck.Screw:
		if old == nil {
			m.set(what, v, &deck.Screw{})
			return
		}
		m.set(what, v, (*deck.Screw)(nil))
		m.walk(what, v.Elem())
		return
	case *deck.Pivot:
		if old == nil {
			m.set(what, v, &deck.Pivot{Tilt: 10})
			return
		}
		m.set(what, v, (*deck.Pivot)(nil))
		m.walk(what, v.Elem())
		return
	case float64:
		m.set(what, v, old+1)
		m.set(what, v, old-1)
		return
	case *deck.Mark:
		if old == nil {
			m.set(what, v, &deck.Mark{})
			return
		}
		m.set(what, v, (*deck.Mark)(nil))
		m.walk(what, v.Elem())
		return
	}
	switch v.Kind() {
	case reflect.Int, reflect.Int64:
		m.set(what, v, v.Int()+1)
		m.set(what, v, v.Int()-1)
	case reflect.String:
		m.set(what, v, v.String()+"x")
	case reflect.Bool:
		m.set(what, v, !v.Bool())
	case reflect.Struct:
		for i := range v.NumField() {
			if name := v.Type().Field(i).Name; !slices.Contains(skipped, name) {
				m.walk(what+"."+name, v.Field(i))
			}
		}
	case reflect.Slice:
		m.slice(what, v)
	default:
		panic("a field of a kind that is not mutated: " + what)
	}
}

// slice drops, doubles and swaps elements, and mutates each.
func (m *mutant) slice(what string, v reflect.Value) {
	whole := reflect.ValueOf(v.Interface())
	n := whole.Len()
	without := func(lo, hi int) reflect.Value {
		part := reflect.AppendSlice(reflect.MakeSlice(v.Type(), 0, n), whole.Slice(0, lo))
		return reflect.AppendSlice(part, whole.Slice(hi, n))
	}
	for i := range n {
		m.set(fmt.Sprintf("%s without %d", what, i), v, without(i, i+1).Interface())
		m.set(fmt.Sprintf("%s with %d twice", what, i), v, without(i+1, i).Interface())
		if i+1 < n {
			swapped := reflect.AppendSlice(reflect.MakeSlice(v.Type(), 0, n), whole)
			reflect.Swapper(swapped.Interface())(i, i+1)
			m.set(fmt.Sprintf("%s with %d and %d swapped", what, i, i+1), v, swapped.Interface())
		}
	}
	for i := range n {
		m.walk(fmt.Sprintf("%s[%d]", what, i), v.Index(i))
	}
}

func TestEveryMutationIsFound(t *testing.T) {
	t.Parallel()
	plans := bothExamples(t)
	plans["shelf"], _ = shelf(t)
	blocks := *plans["shelf"]
	blocks.Shop.Stops = joinery.Blocks
	plans["shelf between blocks"] = &blocks
	plans["rail on a carriage"] = railPlan(t)
	plans["rail on a carriage"].Shop.Cross = joinery.Crossing{With: joinery.Carriage, Base: measure.Inch / 2}
	plans["slot with a start hole"] = twoSlots(t, "raise: no", ", start: hole")
	plans["slot over a raised bit"] = twoSlots(t, "raise: yes", "")
	plans["slots for screws"] = screwSlots(t, "")
	plans["slots for screws with start holes"] = screwSlots(t, ", start: hole")
	plans["shaped edges"] = edgedPlan(t, "grain: top-bottom", "wood: eastern white pine") // no two passes alike
	plans["stopped edges"] = stoppedEdges(t)
	for name, plan := range plans {
		t.Run(name, func(t *testing.T) {
			claims := claimsOf(deckOf(t, plan))
			before := claimsOf(deckOf(t, plan))
			var missed []string
			m := mutant{try: func(what string) {
				if r := proof.Check(plan, claims); r.Proved() {
					missed = append(missed, what)
				}
			}}
			m.walk("deck", reflect.ValueOf(claims).Elem())
			// Where nothing was proved, a bound over nothing is a claim that no proof can
			// doubt: what takes less, if anything does, is not known.
			missed = slices.DeleteFunc(missed, func(m string) bool { return m == "deck.Changes.Bound: 1 for 0" })
			assert.Empty(t, missed, "of %d mutations", m.count)
			assert.Greater(t, m.count, 50*claims.Runs())
			require.Equal(t, before, claims, "every mutation was put back")
			t.Logf("%d mutations of %d runs", m.count, claims.Runs())
		})
	}
}
