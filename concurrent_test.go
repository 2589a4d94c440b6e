package satline

import (
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// Everything exported may be used from many goroutines at once. The race
// detector watches this test in CI: the first use of a refrigerant, which
// decodes its table, happens in all of them together.
func TestConcurrentUse(t *testing.T) {
	v := load(t, "sound-r410a-piston")
	want := assess(t, v)
	var work sync.WaitGroup
	for range 8 {
		work.Go(func() {
			for _, f := range refrigerant.All() {
				p, err := f.DewPressure(quantity.Celsius(5))
				if err != nil {
					continue
				}
				if _, err := f.State(p*0.9, quantity.Celsius(10)); err != nil {
					t.Errorf("%s: %v", f.Designation(), err)
				}
			}
			for range 20 {
				got, err := Assess(v)
				if err != nil {
					t.Error(err)
					return
				}
				if d := cmp.Diff(want.Charge, got.Charge); d != "" {
					t.Errorf("the same visit was judged otherwise:\n%s", d)
				}
			}
		})
	}
	work.Wait()
}
