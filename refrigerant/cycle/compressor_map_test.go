package cycle

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"gonum.org/v1/gonum/mat"
)

// mapOf fits the ten coefficients to the efficiency model of a compressor, as a maker does to
// a calorimeter: 25 points, suction gas with 11.1 K (20 °F) of superheat.
func mapOf(t testing.TB, c Compressor, designation string, units MapUnits) *Map {
	t.Helper()
	r := lookup(t, designation)
	c = c.withDefaults()
	m := &Map{Units: units, RatedSuperheat: quantity.FahrenheitDelta(20)}
	var rows [][]float64
	var flows, powers []float64
	for s := -20.0; s <= 12; s += 4 {
		for d := 30.0; d <= 62; d += 4 {
			ps, _ := r.DewPressure(quantity.Celsius(s))
			pd, _ := r.DewPressure(quantity.Celsius(d))
			gas, err := r.State(ps, quantity.Celsius(s).Add(m.RatedSuperheat))
			if err != nil {
				t.Fatal(err)
			}
			ideal, err := r.StateAtEntropy(pd, gas.Entropy)
			if err != nil {
				t.Fatal(err)
			}
			ratio := float64(pd / ps)
			flow := c.volumetric(ratio) * float64(c.Displacement) * float64(gas.Density)
			power := flow * float64(ideal.Enthalpy-gas.Enthalpy) / c.isentropic(ratio)
			x, y := s, d
			unit := 1e3
			if units == MapIP {
				x, y, unit = s*1.8+32, d*1.8+32, 3600/quantity.Pound
			}
			rows = append(
				rows,
				[]float64{1, x, y, x * x, x * y, y * y, x * x * x, y * x * x, x * y * y, y * y * y},
			)
			flows = append(flows, flow*unit)
			powers = append(powers, power)
		}
	}
	a := mat.NewDense(len(rows), 10, nil)
	for i, row := range rows {
		a.SetRow(i, row)
	}
	var cf, cp mat.VecDense
	if err := cf.SolveVec(a, mat.NewVecDense(len(flows), flows)); err != nil && !conditioned(err) {
		t.Fatal(err)
	}
	if err := cp.SolveVec(a, mat.NewVecDense(len(powers), powers)); err != nil &&
		!conditioned(err) {
		t.Fatal(err)
	}
	for i := range 10 {
		m.Flow[i], m.Power[i] = cf.AtVec(i), cp.AtVec(i)
	}
	return m
}

// conditioned is only a warning about scale.
func conditioned(err error) bool {
	var c mat.Condition
	return errors.As(err, &c)
}

// The polynomial term by term, in both units.
func TestMapPolynomial(t *testing.T) {
	m := Map{Units: MapIP}
	for i := range 10 {
		m.Flow[i], m.Power[i] = float64(i+1), 1
	}
	s, d := 41.0, 110.0
	want := 1 + 2*s + 3*d + 4*s*s + 5*s*d + 6*d*d + 7*s*s*s + 8*d*s*s + 9*s*d*d + 10*d*d*d
	flow, _, err := m.At(quantity.Fahrenheit(s), quantity.Fahrenheit(d))
	if err != nil || math.Abs(flow.PoundsPerHour()/want-1) > 1e-9 {
		t.Errorf("%v lb/h, want %v: %v", flow.PoundsPerHour(), want, err)
	}
	if _, _, err := m.At(quantity.Fahrenheit(80), quantity.Fahrenheit(110)); err == nil {
		t.Error("outside the envelope taken")
	}
	ip, si := mapOf(t, Compressor{Displacement: 2.9e-3}, "R-22", MapIP),
		mapOf(t, Compressor{Displacement: 2.9e-3}, "R-22", MapSI)
	f1, p1, _ := ip.At(quantity.Celsius(5), quantity.Celsius(45))
	f2, p2, _ := si.At(quantity.Celsius(5), quantity.Celsius(45))
	if math.Abs(float64(f1/f2)-1) > 1e-6 || math.Abs(float64(p1/p2)-1) > 1e-6 {
		t.Errorf("in IP %v %v, in SI %v %v", f1, p1, f2, p2)
	}
}

// A machine with the map of a compressor works as one with the compressor, in the map and a
// little beyond.
func TestMapInTheMachine(t *testing.T) {
	plain := machine(t, "R-410A", refrigerant.TXV)
	spec := plain.Spec()
	spec.Compressor = Compressor{Map: mapOf(t, plain.Compressor(), "R-410A", MapIP)}
	mapped := mustDesign(t, spec)
	for _, c := range []Conditions{RatingConditions(), weather(82, 78, 65), weather(115, 80, 67),
		weather(70, 72, 60)} {
		a, b := solve(t, plain, c, Faults{}), solve(t, mapped, c, Faults{})
		if d := math.Abs(float64(b.Capacity/a.Capacity) - 1); d > 0.01 {
			t.Errorf(
				"%v: capacity %v with map, %v without", c.OutdoorDryBulb, b.Capacity, a.Capacity,
			)
		}
		if d := math.Abs(float64(b.CompressorPower/a.CompressorPower) - 1); d > 0.03 {
			t.Errorf(
				"%v: power %v with map, %v without", c.OutdoorDryBulb, b.CompressorPower,
				a.CompressorPower,
			)
		}
		if w := imbalance(t, mapped, c, Faults{}, &b); w.by > 1e-6 {
			t.Errorf("%s off by %.2g", w.of, w.by)
		}
	}
	o := solve(t, mapped, weather(45, 70, 58), Faults{})
	if !(o.Flow > 0 && o.CompressorPower > 0) {
		t.Errorf("outside the map: %v %v", o.Flow, o.CompressorPower)
	}
}

// Dabiri and Rice's correction: a gas 10 % less dense flows 7.5 % less.
func TestMapSuperheatCorrection(t *testing.T) {
	r := lookup(t, "R-22")
	m := mapOf(t, Compressor{Displacement: 2.9e-3}, "R-22", MapSI)
	ps, _ := r.DewPressure(quantity.Celsius(5))
	pd, _ := r.DewPressure(quantity.Celsius(45))
	rated, _ := r.State(ps, quantity.Celsius(5).Add(m.RatedSuperheat))
	hot, _ := r.State(ps, quantity.Celsius(45))
	atRated, w0, err := m.AtState(r, rated, pd)
	if err != nil {
		t.Fatal(err)
	}
	flow, w1, err := m.AtState(r, hot, pd)
	if err != nil {
		t.Fatal(err)
	}
	want := 1 + 0.75*(float64(hot.Density/rated.Density)-1)
	if math.Abs(float64(flow/atRated)-want) > 1e-9 {
		t.Errorf("flow factor %.6f, want %.6f", float64(flow/atRated), want)
	}
	if !(w1 > w0*quantity.Power(want)) {
		t.Errorf("hot gas must take more work per mass: %v from %v", w1, w0)
	}
}

func TestCompressorEfficiencies(t *testing.T) {
	var c Compressor
	if !(c.VolumetricEfficiency(2) > c.VolumetricEfficiency(4) &&
		c.VolumetricEfficiency(4) > c.VolumetricEfficiency(8) && c.VolumetricEfficiency(100) > 0) {
		t.Error("volumetric efficiency must fall with the pressure ratio and stay above 0")
	}
	for _, ratio := range []float64{math.NaN(), -3, 0.5} {
		if c.VolumetricEfficiency(ratio) != c.VolumetricEfficiency(1) ||
			c.IsentropicEfficiency(ratio) != c.IsentropicEfficiency(1) {
			t.Errorf(
				"efficiencies %v and %v at a ratio of %v", c.VolumetricEfficiency(ratio),
				c.IsentropicEfficiency(ratio), ratio,
			)
		}
	}
	if best := c.IsentropicEfficiency(2.8); best != 0.68 ||
		!(c.IsentropicEfficiency(1.5) < best && c.IsentropicEfficiency(6) < best &&
			c.IsentropicEfficiency(50) > 0) {
		t.Errorf("isentropic efficiency %v at its best ratio", best)
	}
}
