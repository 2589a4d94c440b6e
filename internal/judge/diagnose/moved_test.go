package diagnose

import (
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// Whoever adds refrigerant has read that it is short: a machine that still reads a little short
// after a tenth of its charge is not one that was full before.
func TestMovesWereAskedFor(t *testing.T) {
	sound := &signature.For(deviceOf(refrigerant.TXV)).Sound
	v := sound.Mean(sound.At(signature.Rated, signature.UsualFluid))
	v[signature.Evaporating] -= 0.8
	v[signature.CondensingOver] -= 1.5
	v[signature.Subcooling] -= 1.5
	e := reads(signature.Rated, v)
	e.Metering, e.Charge, e.Moved = refrigerant.TXV, quantity.Pounds(7), quantity.Ounces(11)
	d := Infer(e)
	over, short := d.Probability(Overcharge), d.Probability(Undercharge)
	if over > 0.2 || short < 0.4 {
		t.Errorf("overcharge %.2f, undercharge %.2f", over, short)
	}
}
