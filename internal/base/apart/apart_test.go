package apart

import (
	"reflect"
	"testing"
)

type leaf struct {
	Number *float64
	words  []string // of a type that keeps it to itself
}

type tree struct {
	Leaves []leaf
	Up     *leaf
	Any    any
	None   *leaf
	Empty  []leaf
}

// A copy is equal, and nothing that is written to it shows in what it was made of.
func TestFrom(t *testing.T) {
	one, two := 1.0, 2.0
	of := func() tree {
		return tree{
			Leaves: []leaf{{Number: &one}}, Up: &leaf{Number: &two, words: []string{"x"}},
			Any: []string{"a", "b"}, Empty: []leaf{},
		}
	}
	from := of()
	to := From(from)
	if !reflect.DeepEqual(from, to) {
		t.Fatalf("%+v of %+v", to, from)
	}
	*to.Leaves[0].Number, *to.Up.Number = 7, 8
	to.Leaves[0] = leaf{}
	to.Any.([]string)[0] = "c"
	if !reflect.DeepEqual(from, of()) || one != 1 || two != 2 {
		t.Errorf("%+v was changed", from)
	}
}
