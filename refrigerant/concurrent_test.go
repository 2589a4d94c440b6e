package refrigerant

import (
	"sync"
	"testing"
)

// The first use of a refrigerant may come from many goroutines at once. All get
// the same answer; the race detector watches.
func TestConcurrentFirstUse(t *testing.T) {
	for _, designation := range []string{"R-32", "R-449A", "R-744"} {
		r := mustLookup(t, designation)
		fresh := &Refrigerant{designation: r.designation, group: r.group, parts: r.parts}
		var wait sync.WaitGroup
		states := make([]State, 8)
		tabulated := make([]TableState, 8)
		for i := range states {
			wait.Go(func() {
				p, err := fresh.DewPressure(270)
				if err != nil {
					t.Error(err)
					return
				}
				states[i], err = fresh.State(p/2, 280)
				if err != nil {
					t.Error(err)
				}
				table, err := fresh.StateTable()
				if err != nil {
					t.Error(err)
					return
				}
				if tabulated[i], err = table.At(p/2, 280); err != nil {
					t.Error(err)
				}
			})
		}
		wait.Wait()
		for i := range states {
			if states[i] != states[0] || tabulated[i] != tabulated[0] {
				t.Errorf(
					"%v: %+v and %+v, %+v and %+v", r, states[i], states[0], tabulated[i],
					tabulated[0],
				)
			}
		}
	}
}
