package diagnose

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A state that only shifts weighs the same by the factor of sound machines as by its own.
func TestWeighShift(t *testing.T) {
	sound := &signature.For(signature.Valve).Sound
	e := reads(
		signature.Rated, sound.Mean(sound.At(signature.Rated, signature.UsualFluid)),
	)
	r, err := refrigerant.Lookup("R-410A")
	if err != nil {
		t.Fatal(err)
	}
	e.Metering, e.Fluid, e.Atmosphere = refrigerant.TXV, r, quantity.StandardAtmosphere
	e.NoPairs = true
	c := open(&e)
	c.infer()
	weighed := 0
	for a := range c.suspects {
		for k := range c.states[a] {
			s := &c.states[a][k]
			if !s.shifts() {
				continue
			}
			weighed++
			quick := c.weighShift(s)
			c.packState(s, c.packing(a, k))
			whole := c.weigh(component{a: a, b: none, sa: k})
			if math.Abs(quick-whole) > 1e-9*(1+math.Abs(whole)) {
				t.Errorf("%s %v: %v, and %v by its own factor",
					c.suspects[a].signature, s.severity, quick, whole)
			}
		}
	}
	if weighed < 10 {
		t.Errorf("%d states only shift", weighed)
	}
}
