package cycle

import (
	"encoding/json"
	"errors"
	"math"
	"sync"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"pgregory.net/rapid"
)

// At the rating conditions a machine is what it was designed to.
func TestDesignMeetsSpec(t *testing.T) {
	for _, d := range fluids {
		for m := refrigerant.FixedRestrictor; m <= refrigerant.Capillary; m++ {
			s := machine(t, d, m)
			o := solve(t, s, RatingConditions(), Faults{})
			for _, c := range []struct {
				name          string
				got, want, by float64
			}{
				{"net capacity, tons", o.NetCapacity.Tons(), 3, 5e-6},
				{"suction dew point, °F", o.Evaporating.Fahrenheit(), 45, 1e-3},
				{"condensing, °F", o.Condensing.Fahrenheit(), 115, 1e-3},
				{"superheat, °F", o.Superheat.Fahrenheit(), 12, 1e-3},
				{"subcooling, °F", o.Subcooling.Fahrenheit(), 10, 1e-3},
				{"charge over correct", float64(o.Charge / s.Charge()), 1, 1e-9},
				{"flow over rated", float64(o.Flow / s.RatedFlow()), 1, 2e-6},
			} {
				if math.Abs(c.got-c.want) > c.by {
					t.Errorf("%s, %v: %s = %.9g, want %g", d, m, c.name, c.got, c.want)
				}
			}
		}
	}
}

// A little more of a condition or fault moves the state a little: no jumps where a coil
// floods, liquid stops subcooling, or a valve comes to its stop. At a fixed head a wet and
// a dry state may both exist, so that a machine may jump for real; the sweep stays clear of
// low heads, where that is.
func TestContinuous(t *testing.T) {
	sweeps := []struct {
		name string
		at   func(x float64) (Conditions, Faults)
	}{
		{
			"charge 60 to 140 %",
			func(x float64) (Conditions, Faults) {
				return RatingConditions(), Faults{Charge: -0.4 + 0.8*x}
			},
		},
		{
			"outdoor 75 to 120 °F",
			func(x float64) (Conditions, Faults) { return weather(75+45*x, 80, 67), Faults{} },
		},
		{
			"return wet bulb 55 to 79 °F",
			func(x float64) (Conditions, Faults) { return weather(95, 80, 55+24*x), Faults{} },
		},
		{"airflow 40 to 130 %", func(x float64) (Conditions, Faults) {
			return RatingConditions(), Faults{IndoorAirflow: -0.6 + 0.9*x}
		}},
		{"restriction 0 to 12 bar", func(x float64) (Conditions, Faults) {
			return RatingConditions(), Faults{LiquidRestriction: quantity.Bar(12 * x)}
		}},
		{
			"leak 0 to 40 %",
			func(x float64) (Conditions, Faults) {
				return RatingConditions(), Faults{CompressorLeak: 0.4 * x}
			},
		},
	}
	const steps = 200
	for m := refrigerant.FixedRestrictor; m <= refrigerant.Capillary; m++ {
		s := machine(t, "R-22", m)
		for _, sweep := range sweeps {
			var before Operating
			for i := range steps + 1 {
				c, f := sweep.at(float64(i) / steps)
				o := solve(t, s, c, f)
				if i > 0 {
					if d := math.Abs(float64(o.Evaporating - before.Evaporating)); d > 0.9 {
						t.Errorf(
							"%v, %s: evaporating jumps by %.2f K at step %d", m, sweep.name, d, i,
						)
					}
					if d := math.Abs(float64(o.Condensing - before.Condensing)); d > 0.9 {
						t.Errorf(
							"%v, %s: condensing jumps by %.2f K at step %d", m, sweep.name, d, i,
						)
					}
					if d := math.Abs(float64(o.Capacity/before.Capacity) - 1); d > 0.03 {
						t.Errorf(
							"%v, %s: capacity jumps by %.1f %% at step %d", m, sweep.name, 100*d, i,
						)
					}
				}
				before = o
			}
		}
	}
}

// What every technician knows of the direction of things, at any ordinary condition.
func TestDirections(t *testing.T) {
	for m := refrigerant.FixedRestrictor; m <= refrigerant.Capillary; m++ {
		s := machine(t, "R-22", m)
		rapid.Check(t, func(t *rapid.T) {
			c := weather(
				rapid.Float64Range(75, 115).Draw(t, "outdoor"),
				rapid.Float64Range(75, 85).Draw(t, "return dry bulb"),
				rapid.Float64Range(60, 71).Draw(t, "return wet bulb"))
			o, err := s.Solve(c, Faults{})
			if err != nil {
				t.Fatal(err)
			}
			warmer := c
			warmer.OutdoorDryBulb += 2
			w, _ := s.Solve(warmer, Faults{})
			if !(w.Condensing > o.Condensing && w.CompressorPower > o.CompressorPower &&
				w.EER < o.EER) {
				t.Errorf("%v: warmer outdoors must raise head and power and lower the EER", m)
			}
			wetter := c
			wetter.ReturnWetBulb += 1
			w, _ = s.Solve(wetter, Faults{})
			if o.CoilWet > 0 && !(w.Evaporating > o.Evaporating && w.Capacity > o.Capacity) {
				t.Errorf("%v: wetter return air over a wet coil must raise suction and capacity", m)
			}
			w, _ = s.Solve(c, Faults{IndoorAirflow: -0.1})
			if !(w.Evaporating < o.Evaporating && w.CoilLeaving < o.CoilLeaving &&
				w.Superheat <= o.Superheat+1) {
				t.Errorf("%v: less airflow must lower suction and supply temperature", m)
			}
			w, _ = s.Solve(c, Faults{Charge: 0.05})
			if !(w.Subcooling > o.Subcooling && (w.LiquidReturns() ||
				w.Condensing > o.Condensing) &&
				w.EvaporatorSuperheat <= o.EvaporatorSuperheat+0.05) {
				t.Errorf(
					"%v: more charge must raise subcooling (%v, %v) and head (%v, %v), and not "+
						"superheat (%v, %v)",
					m, o.Subcooling, w.Subcooling, o.Condensing, w.Condensing, o.Superheat,
					w.Superheat,
				)
			}
		})
	}
}

func TestHeadPressureControl(t *testing.T) {
	spec := Spec{
		Refrigerant: lookup(t, "R-22"),
		Capacity:    quantity.Tons(3),
		Metering:    refrigerant.FixedRestrictor,
	}
	plain := mustDesign(t, spec)
	spec.HeadPressure = quantity.Fahrenheit(90)
	held := mustDesign(t, spec)
	cold := weather(60, 75, 62)
	a, b := solve(t, plain, cold, Faults{}), solve(t, held, cold, Faults{})
	if headF(plain, &a) > 85 || math.Abs(headF(held, &b)-90) > 0.01 {
		t.Errorf(
			"head at 60 °F outdoors: %.1f °F without and %.2f °F with control at 90 °F",
			headF(plain, &a), headF(held, &b),
		)
	}
	if !(b.FanShare < 1 && a.FanShare == 1 && b.CoilSurface > a.CoilSurface) {
		t.Errorf(
			"holding the head must slow the fan (%.2f) and warm the coil (%.1f from %.1f °F)",
			b.FanShare, b.CoilSurface.Fahrenheit(), a.CoilSurface.Fahrenheit(),
		)
	}
	hot := solve(t, held, RatingConditions(), Faults{})
	if hot.FanShare != 1 {
		t.Errorf("fan share %.2f at 95 °F", hot.FanShare)
	}
}

// headF is the bubble point of the discharge pressure, in °F.
func headF(s *System, o *Operating) float64 {
	b := s.plant.fluid.At(float64(o.Discharge.Pressure))
	return quantity.Temperature(b.Bubble.T).Fahrenheit()
}

// Above the line, the bottle of the machine: an accumulator takes what a short one sends
// back.
func TestAccumulatorHoldsLiquid(t *testing.T) {
	spec := Spec{
		Refrigerant: lookup(t, "R-22"),
		Capacity:    quantity.Tons(3),
		Metering:    refrigerant.FixedRestrictor,
	}
	bare := mustDesign(t, spec)
	spec.HeatPump = true
	bottled := mustDesign(t, spec)
	over := Faults{Charge: 0.2}
	a, b := solve(t, bare, RatingConditions(), over), solve(t, bottled, RatingConditions(), over)
	if !(b.Suction.Quality > a.Suction.Quality && b.Subcooling < a.Subcooling) {
		t.Errorf(
			"20 %% over: quality %.3f and subcooling %.1f K without accumulator, %.3f and %.1f "+
				"K with",
			a.Suction.Quality, float64(a.Subcooling), b.Suction.Quality, float64(b.Subcooling),
		)
	}
}

func TestPressureLimits(t *testing.T) {
	s := machine(t, "R-22", refrigerant.TXV)
	o := solve(t, s, weather(120, 80, 67), Faults{OutdoorAirflow: -0.7})
	if o.Limit != HighPressure {
		t.Errorf("a blocked condenser at 120 °F: limit %v at %v", o.Limit, o.Discharge.Pressure)
	}
	o = solve(t, s, RatingConditions(), Faults{ValveStuck: true})
	if o.Limit != LowPressure {
		t.Errorf("a closed valve: limit %v at %v", o.Limit, o.Suction.Pressure)
	}
}

func TestRangeErrors(t *testing.T) {
	s := machine(t, "R-22", refrigerant.FixedRestrictor)
	nan := quantity.Temperature(math.NaN())
	for _, c := range []Conditions{
		weather(20, 80, 67), weather(140, 80, 67), weather(95, 80, 85), weather(95, 40, 38),
		{OutdoorDryBulb: nan, ReturnDryBulb: 300, ReturnWetBulb: 290},
		{OutdoorDryBulb: 300, ReturnDryBulb: nan, ReturnWetBulb: 290},
		{OutdoorDryBulb: 300, ReturnDryBulb: 300, ReturnWetBulb: 290, Airflow: quantity.CFM(10)},
	} {
		var re *RangeError
		if _, err := s.Solve(c, Faults{}); !errors.As(err, &re) {
			t.Errorf("%+v: error %v, want a *RangeError", c, err)
		}
	}
	// 50 °F is the limit, and 10 °C is 50 °F.
	if _, err := s.Solve(Conditions{OutdoorDryBulb: quantity.Celsius(35),
		ReturnDryBulb: quantity.Celsius(10), ReturnWetBulb: quantity.Celsius(8)},
		Faults{}); err != nil {
		t.Errorf("return air at the limit: %v", err)
	}
	for _, f := range []Faults{
		{Charge: -0.9}, {Charge: math.NaN()}, {IndoorAirflow: -1}, {CompressorLeak: 1},
		{BulbOff: 2}, {LiquidRestriction: -1}, {ValveSetting: 100}, {NonCondensables: math.Inf(1)},
		{MeteringSize: -1},
	} {
		var re *RangeError
		if _, err := s.Solve(RatingConditions(), f); !errors.As(err, &re) {
			t.Errorf("%+v: error %v, want a *RangeError", f, err)
		}
	}
	for _, spec := range []Spec{
		{}, {Refrigerant: lookup(t, "R-22")},
		{Refrigerant: lookup(t, "R-22"), Metering: refrigerant.TXV, Capacity: quantity.Tons(100)},
		{Refrigerant: lookup(t, "R-22"), Metering: refrigerant.TXV, Capacity: quantity.Tons(3),
			Airflow: quantity.CFM(100)},
		{Refrigerant: lookup(t, "R-22"), Metering: refrigerant.TXV, Capacity: quantity.Tons(3),
			Subcooling: 15},
		{Refrigerant: lookup(t, "R-744"), Metering: refrigerant.TXV, Capacity: quantity.Tons(3)},
	} {
		if _, err := Design(spec); err == nil {
			t.Errorf("%+v: designed", spec)
		}
	}
}

func TestSolveIsSafeForConcurrentUse(t *testing.T) {
	s := machine(t, "R-22", refrigerant.TXV)
	want := solve(t, s, weather(88, 78, 65), Faults{Charge: -0.1})
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			for range 20 {
				if o, err := s.Solve(weather(88, 78, 65), Faults{Charge: -0.1}); err != nil ||
					o != want {
					t.Errorf("differs: %v", err)
				}
			}
		})
	}
	group.Wait()
}

func TestSolveDoesNotAllocate(t *testing.T) {
	s := machine(t, "R-22", refrigerant.FixedRestrictor)
	if n := testing.AllocsPerRun(10,
		func() { _, _ = s.Solve(weather(88, 78, 65), Faults{Charge: -0.1}) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func TestMeteringText(t *testing.T) {
	for m := refrigerant.FixedRestrictor; m <= refrigerant.Capillary; m++ {
		text, _ := m.MarshalText()
		var back refrigerant.Metering
		if err := back.UnmarshalText(text); err != nil || back != m {
			t.Errorf("%v back as %v, %v", m, back, err)
		}
	}
	var m refrigerant.Metering
	if err := m.UnmarshalText([]byte("tap")); err == nil ||
		refrigerant.Metering(9).String() != "not stated" {
		t.Errorf("unknown device taken: %v", err)
	}
}

// A tuning is undone by its inverse, and each part of it moves what it should.
func TestTuned(t *testing.T) {
	s := machine(t, "R-22", refrigerant.FixedRestrictor)
	c := weather(88, 78, 65)
	base := solve(t, s, c, Faults{})
	for _, x := range []struct {
		name   string
		tuning Tuning
		moved  func(o Operating) bool
	}{
		{"evaporator", Tuning{EvaporatorUA: 0.1}, func(o Operating) bool {
			return o.Evaporating > base.Evaporating
		}},
		{"condenser", Tuning{CondenserUA: 0.1}, func(o Operating) bool {
			return o.Condensing < base.Condensing
		}},
		{"compressor flow", Tuning{CompressorFlow: 0.1}, func(o Operating) bool {
			return o.Evaporating < base.Evaporating
		}},
		{"compressor work", Tuning{CompressorWork: 0.1}, func(o Operating) bool {
			return o.Discharge.Temperature > base.Discharge.Temperature
		}},
		{"metering", Tuning{MeteringSize: 0.05}, func(o Operating) bool {
			return o.Superheat < base.Superheat
		}},
	} {
		tuned, err := s.Tuned(x.tuning)
		if err != nil {
			t.Fatal(err)
		}
		if o := solve(t, tuned, c, Faults{}); !x.moved(o) {
			t.Errorf("%s: %+v from %+v", x.name, o, base)
		}
	}
	same, err := s.Tuned(Tuning{Form: Form{AirExponent: 0.672, RefrigerantExponent: 0.8}})
	if err != nil {
		t.Fatal(err)
	}
	if o := solve(t, same, c, Faults{}); math.Abs(float64(o.Capacity/base.Capacity)-1) > 1e-9 {
		t.Errorf("the usual exponents change the machine")
	}
	if _, err := s.Tuned(Tuning{EvaporatorUA: -1}); err == nil {
		t.Errorf("a coil without conductance taken")
	}
}

func TestOperatingJSON(t *testing.T) {
	o := solve(
		t, machine(t, "R-22", refrigerant.FixedRestrictor), weather(118, 80, 67),
		Faults{OutdoorAirflow: -0.7},
	)
	text, err := json.Marshal(o)
	if err != nil {
		t.Fatal(err)
	}
	var back Operating
	if err := json.Unmarshal(text, &back); err != nil || back != o {
		t.Errorf("back as another state: %v", err)
	}
	var l Limit
	if l.UnmarshalText([]byte("speed")) == nil {
		t.Error("unknown limit taken")
	}
}
