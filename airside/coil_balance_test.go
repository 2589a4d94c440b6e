package airside

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/physics/coil"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// What the coil model takes from the air is the capacity between its two states,
// which is psychro's process between them: energy and water to 1e-9.
func TestCoilBalanceIsThatOfItsStates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := quantity.Kilopascals(rapid.Float64Range(70, 105).Draw(t, "pressure"))
		in := drawAir(t, "entering", p)
		c := Coil{
			AirSide: quantity.Conductance(math.Exp(rapid.Float64Range(3, 9).Draw(t, "ln UAa"))),
			RefrigerantSide: quantity.Conductance(
				math.Exp(rapid.Float64Range(3, 9).Draw(t, "ln UAr")),
			),
			RatedDryAir: 0.6,
		}
		flow := quantity.CFM(rapid.Float64Range(50, 3000).Draw(t, "flow"))
		ref := quantity.Celsius(rapid.Float64Range(-20, 60).Draw(t, "refrigerant"))
		pass, err := c.Through(in, flow, ref)
		if err != nil {
			t.Fatal(err)
		}
		air := coil.NewAir(in)
		m := float64(in.DryAirFlow(flow))
		r := c.solve(&air, m, float64(ref))
		if d := r.Heat - float64(pass.Capacity.Total.Value); math.Abs(d) > 1e-9*m*1e5 {
			t.Fatalf("heat of the coil and of its states are %v W apart", d)
		}
		if d := r.Sensible - float64(pass.Capacity.Sensible.Value); math.Abs(d) > 1e-9*m*1e5 {
			t.Fatalf("sensible heat of the coil and of its states are %v W apart", d)
		}
		if d := r.Condensate - float64(pass.Capacity.Condensate.Value); math.Abs(d) > 1e-9*m {
			t.Fatalf("water of the coil and of its states are %v kg/s apart", d)
		}
		if d := float64(pass.Capacity.Total.Value + coolingProcess(in,
			pass.Leaving).HeatRate(in.DryAirFlow(flow))); math.Abs(
			d,
		) > 1e-9*m*1e5 {
			t.Fatalf("%v W off psychro's process", d)
		}
		// Air that enters saturated meets the saturation curve again, to rounding.
		if d := in.HumidityRatio() - pass.Leaving.HumidityRatio(); pass.WetShare == 0 &&
			math.Abs(d) > 1e-15 {
			t.Fatalf("a dry coil took %v of water", d)
		}
	})
}

func TestCoilLimits(t *testing.T) {
	in := mustAir(t, 80, 67, quantity.StandardAtmosphere)
	c, err := RatedCoil(quantity.Tons(3), quantity.CFM(1200))
	if err != nil {
		t.Fatal(err)
	}
	still, err := c.Through(in, 0, quantity.Fahrenheit(45))
	if err != nil || still.Capacity.Total.Value != 0 {
		t.Errorf("no flow: %v, %v", still.Capacity.Total.Value, err)
	}
	if psychroEqual(still.Leaving, in) {
		t.Error("air that stands over a coil keeps its state")
	}
	same, err := c.Through(in, quantity.CFM(1200), in.DryBulb())
	if err != nil || math.Abs(float64(same.Capacity.Total.Value)) > 1e-6 ||
		!psychroEqual(same.Leaving, in) {
		t.Errorf("refrigerant as warm as the air: %+v, %v", same, err)
	}
	heated, err := c.Through(in, quantity.CFM(1200), quantity.Fahrenheit(120))
	if err != nil || heated.Capacity.Total.Value >= 0 || heated.Capacity.Latent.Value != 0 {
		t.Errorf("a heating coil: %+v, %v", heated.Capacity, err)
	}
}

func psychroEqual(a, b psychro.Air) bool {
	return math.Abs(float64(a.DryBulb()-b.DryBulb())) < 1e-9 &&
		math.Abs(a.HumidityRatio()-b.HumidityRatio()) < 1e-12
}
