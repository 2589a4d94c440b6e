package words

import (
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// The comma is that of a number, and not one for the points of a unit.
func TestShowWithComma(t *testing.T) {
	b := Book{units: quantity.IP, comma: true}
	for _, c := range []struct {
		v    any
		want string
	}{
		{quantity.InchesWater(0.5), "0,50 in. w.c."},
		{quantity.PSIG(68.5).PlusMinus(quantity.PSIG(0.5)), "68,5 psig ± 0,5 psi"},
		{fact.Times(3.1), "3,1:1"},
	} {
		if got := b.Show(c.v); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
