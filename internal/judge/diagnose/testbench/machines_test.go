package testbench

import (
	"math/rand/v2"
	"sync"
	"testing"

	"github.com/satline/satline/refrigerant"
)

// some are machines drawn once for all tests.
var some = sync.OnceValues(func() ([]*Machine, error) {
	machines := make([]*Machine, 60)
	for i := range machines {
		m, err := Draw(rand.New(rand.NewPCG(77, uint64(i))), nil)
		if err != nil {
			return nil, err
		}
		machines[i] = m
	}
	return machines, nil
})

func machines(t testing.TB, most int, want func(*Machine) bool) []*Machine {
	t.Helper()
	all, err := some()
	if err != nil {
		t.Fatal(err)
	}
	var out []*Machine
	for _, m := range all {
		if len(out) < most && (want == nil || want(m)) {
			out = append(out, m)
		}
	}
	return out
}

func fixed(m *Machine) bool { return m.device.kind == refrigerant.FixedRestrictor }
func valve(m *Machine) bool { return !fixed(m) }
