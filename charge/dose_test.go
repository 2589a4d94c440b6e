package charge

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"pgregory.net/rapid"
)

func oz(v float64) quantity.Mass { return quantity.Ounces(v) }

func seen(pairs ...[2]float64) []Moved {
	var out []Moved
	for _, p := range pairs {
		out = append(out, Moved{oz(p[0]), df(p[1]).PlusMinus(df(1))})
	}
	return out
}

func next(t testing.TB, d Dosing) Dose {
	t.Helper()
	dose, err := d.Next()
	if err != nil {
		t.Fatal(err)
	}
	return dose
}

// Carbon dioxide, ammonia and the like are never dosed by the tables of comfort cooling.
func TestNoDoseOfUnsuitableFluids(t *testing.T) {
	for _, f := range refrigerant.All() {
		d := Dosing{
			Target:      targetOf(t, Superheat, 14, 1),
			LabelCharge: quantity.Pounds(7),
			History:     seen([2]float64{0, 30}),
			Fluid:       f,
		}
		dose := next(t, d)
		if suits := f.ComfortCooling() == nil; suits != (dose.Action == Add) ||
			!suits && (dose.Reason != "unsuitable-fluid" || dose.Mass != 0) {
			t.Errorf("%v: %+v", f, dose)
		}
	}
}

// Common practice, no source: taking half a pound too much out and adding back
// a touch is normal, and doses are ounces.
func TestHalfAPoundTooMuch(t *testing.T) {
	d := Dosing{Target: targetOf(t, Superheat, 14, 1), LabelCharge: quantity.Pounds(7)}
	d.History = seen([2]float64{0, 4}, [2]float64{-8, 22})
	dose := next(t, d)
	if dose.Action != Add || dose.Mass < oz(1) || dose.Mass > oz(6) {
		t.Errorf("%v %.1f oz (%s)", dose.Action, dose.Mass.Ounces(), dose.Reason)
	}
	if learned := -dose.PerOunce.Value.Fahrenheit(); learned < 1.2 || learned > 3.5 {
		t.Errorf("8 oz moved it by 18 °F, and it is believed to answer %.1f °F per ounce", learned)
	}
}

// A superheat of nothing may hide how far below zero it would be, and no superheat above it.
func TestStartsFitTheFirstReading(t *testing.T) {
	d := Dosing{
		Target: targetOf(t, Superheat, 14, 1), History: []Moved{{Value: df(0).PlusMinus(df(2))}},
	}
	bands := [3]float64{} // within one standard deviation above zero, the next, and below
	for _, n := range newBelief(d, 3, 0.1) {
		switch above := n.x / float64(df(2)); {
		case above < 0:
			bands[2] += n.weight
		default:
			bands[min(int(above), 1)] += n.weight
		}
	}
	if !(bands[1] < bands[0]/2) || !(bands[2] > 0.8) {
		t.Errorf("%.3f just above zero, %.3f further, %.3f below", bands[0], bands[1], bands[2])
	}
}

// What the machine shows counts for more with every move: one that answers
// twice as much gets half the dose.
func TestGainIsLearned(t *testing.T) {
	d := Dosing{Target: targetOf(t, Superheat, 14, 0.5), LabelCharge: quantity.Pounds(8)}
	d.History = seen([2]float64{0, 40}, [2]float64{6, 30})
	lazy := next(t, d)
	d.History = seen([2]float64{0, 50}, [2]float64{6, 30})
	eager := next(t, d)
	if !(eager.Mass < lazy.Mass) || eager.Action != Add || lazy.Action != Add {
		t.Errorf(
			"answering by 10 °F: %v oz, by 20 °F: %v oz", lazy.Mass.Ounces(), eager.Mass.Ounces(),
		)
	}
	first := next(
		t, Dosing{Target: d.Target, LabelCharge: d.LabelCharge, History: seen([2]float64{0, 30})},
	)
	doubt := eager.PerOunce.Std / math.Abs(float64(eager.PerOunce.Value))
	if !(first.PerOunce.Std > doubt*math.Abs(float64(first.PerOunce.Value))) {
		t.Errorf("doubt before %v, after %v", first.PerOunce, eager.PerOunce)
	}
}

func TestDosingStops(t *testing.T) {
	none, little := quantity.Mass(0), oz(3)
	for name, c := range map[string]struct {
		d      Dosing
		action Action
		reason string
	}{
		"in band":        {Dosing{History: seen([2]float64{0, 15})}, Leave, "in-band"},
		"within, unsure": {Dosing{History: seen([2]float64{0, 17.8})}, Leave, "cannot-tell"},
		"no answer": {Dosing{History: seen([2]float64{0, 35}, [2]float64{10, 34.8},
			[2]float64{20, 34.5})}, Halt, "no-response"},
		"wrong way": {Dosing{History: seen([2]float64{0, 30}, [2]float64{8, 36})}, Halt,
			"wrong-way"},
		"a third moved": {Dosing{History: seen([2]float64{0, 45}, [2]float64{40, 26})}, Halt,
			"moved-much"},
		"a third recovered, with an answer": {
			Dosing{History: seen([2]float64{0, 0}, [2]float64{-20, 4}, [2]float64{-40, 8})}, Recover,
			"towards-target"},
		"a third recovered, flooded still": {
			Dosing{History: seen([2]float64{0, 0}, [2]float64{-20, 0}, [2]float64{-40, 0})}, Halt,
			"moved-much"},
		"half recovered": {
			Dosing{History: seen([2]float64{0, 0}, [2]float64{-30, 5}, [2]float64{-55, 8})}, Halt,
			"moved-much"},
		"too many moves": {Dosing{History: seen([2]float64{0, 46}, [2]float64{3, 42},
			[2]float64{6, 38}, [2]float64{9, 34}, [2]float64{12, 31}, [2]float64{15, 28},
			[2]float64{18, 25})}, Halt, "many-moves"},
		"empty cylinder": {Dosing{History: seen([2]float64{0, 35}), Cylinder: &none}, Halt,
			"cylinder-empty"},
		"full tank": {Dosing{History: seen([2]float64{0, 0}), Tank: &none}, Halt,
			"tank-full"},
		"little left": {Dosing{History: seen([2]float64{0, 35}), Cylinder: &little}, Add,
			"towards-target"},
		"starved":          {Dosing{History: seen([2]float64{0, 35})}, Add, "towards-target"},
		"flooded":          {Dosing{History: seen([2]float64{0, 0})}, Recover, "towards-target"},
		"a negative value": {Dosing{History: seen([2]float64{0, -4})}, Recover, "towards-target"},
	} {
		c.d.Target, c.d.LabelCharge = targetOf(t, Superheat, 14, 0.5), quantity.Pounds(7)
		dose := next(t, c.d)
		if dose.Action != c.action || dose.Reason != c.reason {
			t.Errorf(
				"%s: %v (%s), want %v (%s)", name, dose.Action, dose.Reason, c.action, c.reason,
			)
		}
	}
	d := Dosing{
		Target:      targetOf(t, Superheat, 14, 0.5),
		LabelCharge: quantity.Pounds(7),
		History:     seen([2]float64{0, 45}),
		Cylinder:    &little,
	}
	if dose := next(t, d); dose.Mass > little || dose.LimitedBy != "cylinder" {
		t.Errorf("%v oz, limited by %q", dose.Mass.Ounces(), dose.LimitedBy)
	}
	d.Cylinder, d.Most = nil, oz(3)
	if dose := next(t, d); dose.Mass > d.Most || dose.LimitedBy != "most" {
		t.Errorf("%v oz of at most 3, limited by %q", dose.Mass.Ounces(), dose.LimitedBy)
	}
}

// What forbids the method forbids the dose, and a flooding valve is given nothing.
func TestObstaclesHaltDosing(t *testing.T) {
	s := sound(refrigerant.TXV)
	s.CoilWet = true
	d := Dosing{
		Target:      targetOf(t, Subcooling, 10, 0),
		LabelCharge: quantity.Pounds(7),
		History:     seen([2]float64{0, 4}),
		Obstacles:   Obstacles(s, Subcooling),
	}
	if dose := next(t, d); dose.Action != Halt || dose.Reason != "forbidden" {
		t.Errorf("coil wet: %v %s", dose.Action, dose.Reason)
	}
	for i := range d.Obstacles {
		d.Obstacles[i].Method = Superheat
	}
	if dose := next(t, d); dose.Action != Add {
		t.Errorf("an obstacle of another method: %v %s", dose.Action, dose.Reason)
	}
	s = sound(refrigerant.TXV)
	s.Superheat = about(0)
	d.Obstacles = Obstacles(s, Subcooling)
	if dose := next(t, d); dose.Action != Halt || dose.Reason != "valve-flooding" {
		t.Errorf("flooding valve, low: %v %s", dose.Action, dose.Reason)
	}
	d.History = seen([2]float64{0, 18})
	if dose := next(t, d); dose.Action != Recover {
		t.Errorf("flooding valve, high: %v %s", dose.Action, dose.Reason)
	}
}

// Whatever the history: the direction is right, the dose is within every limit,
// the chances are chances, and nothing is NaN.
func TestDosingProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		m := rapid.SampledFrom(methods).Draw(rt, "method")
		d := Dosing{
			Target: targetOf(
				t, m, rapid.Float64Range(5, 30).Draw(rt, "target"),
				rapid.Float64Range(0, 2).Draw(rt, "target std"),
			),
			NominalCapacity: quantity.Tons(rapid.Float64Range(1, 10).Draw(rt, "tons")),
		}
		if rapid.Bool().Draw(rt, "label") {
			d.LabelCharge = quantity.Pounds(rapid.Float64Range(2, 30).Draw(rt, "charge"))
		}
		cylinder, tank := oz(rapid.Float64Range(0, 400).Draw(rt, "cylinder")),
			oz(rapid.Float64Range(0, 400).Draw(rt, "tank"))
		d.Cylinder, d.Tank = &cylinder, &tank
		net := 0.0
		for range rapid.IntRange(1, 8).Draw(rt, "readings") {
			d.History = append(
				d.History,
				Moved{
					oz(net),
					df(
						rapid.Float64Range(-10, 60).Draw(rt, "value"),
					).PlusMinus(df(rapid.Float64Range(0, 4).Draw(rt, "std"))),
				},
			)
			net += rapid.Float64Range(-20, 20).Draw(rt, "moved")
		}
		dose, err := d.Next()
		if err != nil {
			rt.Fatal(err)
		}
		checkDirection(t, d, dose)
		moves := dose.Action == Add || dose.Action == Recover
		whole, _ := d.wholeCharge()
		if moves != (dose.Mass > 0) || float64(dose.Mass) > largestStep.value*float64(whole)+1e-9 ||
			dose.Mass < 0 {
			rt.Fatalf("%v %v", dose.Action, dose.Mass)
		}
		if dose.Action == Add && dose.Mass > cylinder+1e-9 ||
			dose.Action == Recover && dose.Mass > tank+1e-9 {
			rt.Fatalf("%v %v of %v and %v", dose.Action, dose.Mass, cylinder, tank)
		}
		for _, v := range []float64{dose.InBand, dose.PastBand, float64(dose.After.Value),
			dose.After.Std, float64(dose.PerOunce.Value), dose.PerOunce.Std} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				rt.Fatalf("%+v", dose)
			}
		}
		if dose.InBand < 0 || dose.InBand > 1+1e-9 || dose.PastBand < 0 ||
			dose.PastBand > overshootRisk.value+1e-6 {
			rt.Fatalf("in band %v, past %v", dose.InBand, dose.PastBand)
		}
	})
}

func TestDosingRefusesNonsense(t *testing.T) {
	target := targetOf(t, Superheat, 14, 0.5)
	good := seen([2]float64{0, 30})
	negative := quantity.Mass(-1)
	var r *RangeError
	for name, d := range map[string]Dosing{
		"nothing":           {},
		"no history":        {Target: target, LabelCharge: 3},
		"no charge":         {Target: target, History: good},
		"negative charge":   {Target: target, History: good, LabelCharge: -3},
		"negative cylinder": {Target: target, History: good, LabelCharge: 3, Cylinder: &negative},
		"not a number": {Target: target, LabelCharge: 3,
			History: []Moved{{quantity.Mass(math.NaN()), about(3).Value.PlusMinus(0)}}},
		"value far out": {Target: target, LabelCharge: 3,
			History: []Moved{{0, delta{Value: 500}}}},
		"capacity infinite": {Target: target, History: good,
			NominalCapacity: quantity.Power(math.Inf(1))},
	} {
		if dose, err := d.Next(); !errors.As(err, &r) || dose.Action != 0 {
			t.Errorf("%s: %v, %v", name, dose.Action, err)
		}
	}
}

func BenchmarkNextDose(b *testing.B) {
	b.ReportAllocs()
	d := Dosing{
		Target:      targetOf(b, Superheat, 14, 0.5),
		LabelCharge: quantity.Pounds(7),
		History:     seen([2]float64{0, 30}, [2]float64{6, 21}),
	}
	for b.Loop() {
		if _, err := d.Next(); err != nil {
			b.Fatal(err)
		}
	}
}
