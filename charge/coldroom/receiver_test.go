package coldroom_test

import (
	"math"
	"testing"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"pgregory.net/rapid"
)

// A lying receiver holds half at its middle and all at its top, as much as one that stands, and the
// higher its level the more.
func TestReceiver(t *testing.T) {
	fluid, err := refrigerant.Lookup("R-449A")
	if err != nil {
		t.Fatal(err)
	}
	holds := func(t rapid.TB, r coldroom.Receiver, level float64) float64 {
		m, err := r.Holds(fluid, quantity.Celsius(35), quantity.Length(level))
		if err != nil {
			t.Fatal(err)
		}
		return float64(m)
	}
	rapid.Check(t, func(t *rapid.T) {
		wide := rapid.Float64Range(0.05, 1.9).Draw(t, "diameter")
		long := rapid.Float64Range(0.1, 9).Draw(t, "length")
		lying := coldroom.Receiver{
			Diameter: quantity.Length(wide), Length: quantity.Length(long),
		}
		stands := lying
		stands.Upright = true
		full := holds(t, lying, wide)
		if half := holds(t, lying, wide/2); math.Abs(2*half-full) > 1e-9*full {
			t.Fatalf("%v at the middle, %v at the top", half, full)
		}
		if same := holds(t, stands, long); math.Abs(same-full) > 1e-9*full {
			t.Fatalf("%v lying, %v standing", full, same)
		}
		part := rapid.Float64Range(0, 0.98).Draw(t, "level")
		for _, r := range []coldroom.Receiver{lying, stands} {
			top := wide
			if r.Upright {
				top = long
			}
			if low, high := holds(t, r, part*top), holds(t, r, (part+0.02)*top); !(high > low) {
				t.Fatalf("%v of %v: %v, above it %v", part, r, low, high)
			}
		}
	})
	for _, r := range []coldroom.Receiver{
		{}, {Diameter: 0.2}, {Diameter: 3, Length: 1}, {Diameter: 0.2, Length: 0.4},
	} {
		if m, err := r.Holds(fluid, quantity.Celsius(35), 0.3); err == nil {
			t.Errorf("%v holds %v", r, m)
		}
	}
}
