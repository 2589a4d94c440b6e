package cycle

import (
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func reversed(t testing.TB, fluid string, m refrigerant.Metering) *Reversed {
	t.Helper()
	s := mustDesign(t, Spec{
		Refrigerant: lookup(t, fluid), Capacity: quantity.Tons(3), Metering: m, HeatPump: true,
	})
	h, err := s.Reversed(HeatingSpec{})
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func heat(t testing.TB, h *Reversed, outdoor float64, f Faults) Heating {
	t.Helper()
	c := HeatingRating()
	c.OutdoorDryBulb = quantity.Fahrenheit(outdoor)
	o, err := h.Solve(c, f)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func TestX(t *testing.T) {
	for _, m := range []refrigerant.Metering{refrigerant.TXV, refrigerant.FixedRestrictor} {
		h := reversed(t, "R-410A", m)
		t.Log(m, "total", h.total, "heating", h.plant.correct)
		show := func(name string, to float64, f Faults) {
			o := heat(t, h, to, f)
			t.Logf("%-14s %3.0f te %5.1f tc %5.1f sh %5.1f sc %5.1f dis %5.1f sup %5.1f cap %5.0f W %5.0f cop %.2f surf %4.1f lim %v", name, to,
				o.Evaporating.Fahrenheit(), o.Condensing.Fahrenheit(), o.Superheat.Fahrenheit(), o.Subcooling.Fahrenheit(), o.DischargeLine.Fahrenheit(), o.Supply.Fahrenheit(), o.Capacity.BtuPerHour(), o.Power.Watts(), o.COP, o.CoilSurface.Fahrenheit(), o.Limit)
		}
		for _, to := range []float64{0, 17, 35, 47, 60} {
			show("sound", to, Faults{})
		}
		for _, to := range []float64{17, 47} {
			show("under20", to, Faults{Charge: -.2})
			show("over20", to, Faults{Charge: .2})
			show("indoor-30", to, Faults{IndoorAirflow: -.3})
			show("outdoor-40", to, Faults{OutdoorAirflow: -.4})
			show("leak20", to, Faults{CompressorLeak: .2})
			show("restr", to, Faults{LiquidRestriction: quantity.Bar(4)})
			show("meter-30", to, Faults{MeteringSize: -.5})
			show("meter+30", to, Faults{MeteringSize: .3})
			show("stuck", to, Faults{ValveStuck: true, ValveOpening: 1})
			show("nc", to, Faults{NonCondensables: .3})
		}
	}
}
