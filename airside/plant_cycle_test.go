package airside_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// machine is a model of the whole cycle as a Plant, at sea level.
type machine struct {
	system *cycle.System
	faults cycle.Faults
}

func (m machine) Run(at airside.Conditions) (airside.Running, error) {
	o, err := m.system.Solve(cycle.Conditions{
		OutdoorDryBulb: at.Outdoor, ReturnDryBulb: at.Return.DryBulb(),
		ReturnWetBulb: at.Return.WetBulb(), Airflow: at.Airflow,
	}, m.faults)
	return airside.Running{
		Evaporating: o.Evaporating,
		Surface:     o.CoilSurface,
		Supply:      o.CoilLeaving,
		Capacity:    o.Capacity,
	}, err
}

func residential(t testing.TB, m refrigerant.Metering) *cycle.System {
	r, err := refrigerant.Lookup("R-410A")
	if err != nil {
		t.Fatal(err)
	}
	s, err := cycle.DesignResidential(r, quantity.Tons(3), m)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// A coil and a capacity line, fitted to the whole-cycle model at one condition,
// against that model at others.
func TestCapacityLineAgainstTheWholeCycle(t *testing.T) {
	model := verify.Source{
		Cite: "whole-cycle model of refrigerant/cycle, R-410A, 3 ton",
		Kind: verify.Computed,
	}
	p := quantity.StandardAtmosphere
	air := func(db, wb float64) psychro.Air {
		a, err := psychro.FromWetBulb(quantity.Fahrenheit(db), quantity.Fahrenheit(wb), p)
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	for _, limits := range []struct {
		metering          refrigerant.Metering
		degrees, capacity float64
	}{
		// A valve keeps the coil fed, which is what the line assumes.
		{refrigerant.TXV, 3, 0.05},
		// A fixed restrictor floods or starves it as the weather moves, which the
		// line does not know: it is a rougher guide there, as its comment says.
		{refrigerant.FixedRestrictor, 6, 0.20},
	} {
		metering := limits.metering
		whole := machine{system: residential(t, metering)}
		at := airside.Conditions{
			Return:  air(75, 62),
			Airflow: quantity.CFM(1150),
			Outdoor: quantity.Fahrenheit(82),
		}
		o, err := whole.system.Solve(
			cycle.Conditions{
				OutdoorDryBulb: at.Outdoor,
				ReturnDryBulb:  at.Return.DryBulb(),
				ReturnWetBulb:  at.Return.WetBulb(),
				Airflow:        at.Airflow,
			},
			cycle.Faults{},
		)
		if err != nil {
			t.Fatal(err)
		}
		leaving, err := psychro.FromHumidityRatio(o.CoilLeaving, o.SupplyHumidityRatio, p)
		if err != nil {
			t.Fatal(err)
		}
		coil, err := airside.FitCoil(at.Return, leaving, at.Airflow, o.Evaporating)
		if err != nil {
			t.Fatal(err)
		}
		line, err := airside.NewCapacityLine(coil, at, o.Evaporating)
		if err != nil {
			t.Fatal(err)
		}
		var worst struct {
			at         string
			cycle, got float64
		}
		for _, c := range []struct{ db, wb, outdoor, cfm float64 }{
			{75, 62, 95, 1150}, {75, 62, 60, 1150}, {75, 62, 82, 800}, {75, 62, 82, 500},
			{80, 67, 82, 1150}, {70, 58, 82, 1150}, {72, 58, 65, 700},
		} {
			at := airside.Conditions{
				Return:  air(c.db, c.wb),
				Airflow: quantity.CFM(c.cfm),
				Outdoor: quantity.Fahrenheit(c.outdoor),
			}
			want, err := whole.Run(at)
			if err != nil {
				t.Fatal(err)
			}
			got, err := line.Run(at)
			if err != nil {
				t.Fatal(err)
			}
			for name, v := range map[string][2]quantity.Temperature{"surface": {want.Surface,
				got.Surface}, "evaporating": {want.Evaporating, got.Evaporating}} {
				if d := math.Abs(v[1].Sub(v[0]).Fahrenheit()); d > math.Abs(worst.got-worst.cycle) {
					worst.at, worst.cycle, worst.got = fmt.Sprintf("%s at %+v", name, c),
						v[0].Fahrenheit(), v[1].Fahrenheit()
				}
			}
			if d := float64(got.Capacity/want.Capacity) - 1; math.Abs(d) > limits.capacity {
				t.Errorf("%v, %+v: capacity %.3f of the cycle's", metering, c, 1+d)
			}
		}
		verify.Value(
			t, model, fmt.Sprintf("capacity line with a %v, worst %s", metering, worst.at), "°F",
			worst.cycle, worst.got, limits.degrees,
		)
	}
}

// With a model of the whole cycle as the plant, charge and restriction count too:
// the same machine short of a fifth of its charge freezes at a larger airflow.
func ExampleFindFreezeLimits_cycle() {
	r, _ := refrigerant.Lookup("R-410A")
	system, err := cycle.DesignResidential(r, quantity.Tons(3), refrigerant.FixedRestrictor)
	if err != nil {
		fmt.Println(err)
		return
	}
	air, _ := psychro.FromWetBulb(
		quantity.Fahrenheit(75), quantity.Fahrenheit(62), quantity.StandardAtmosphere,
	)
	at := airside.Conditions{
		Return:  air,
		Airflow: quantity.CFM(1150),
		Outdoor: quantity.Fahrenheit(82),
	}
	var flow [2]quantity.VolumeFlow
	for i, charge := range []float64{0, -0.2} {
		limits, err := airside.FindFreezeLimits(machine{system, cycle.Faults{Charge: charge}}, at)
		if err != nil || limits.Airflow == nil {
			fmt.Println("no limit", err)
			return
		}
		flow[i] = *limits.Airflow
	}
	fmt.Println("freezes sooner when short of charge:", flow[1] > flow[0])
	// Output:
	// freezes sooner when short of charge: true
}
