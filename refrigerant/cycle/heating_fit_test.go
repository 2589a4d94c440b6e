package cycle

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"pgregory.net/rapid"
)

// A machine that differs from the ordinary one, read at 47 °F, gives at 17 °F what its fit says
// within 3 %; the ordinary one would be off by more on the whole.
func TestFitOfHeatingForetells(t *testing.T) {
	h := reversed(t, "R-410A", refrigerant.TXV)
	cold := HeatingRatingConditions()
	cold.OutdoorDryBulb = quantity.Fahrenheit(17)
	fitted, plain, n := 0.0, 0.0, 0
	rapid.Check(t, func(t *rapid.T) {
		by := make([]float64, len(heatingSpreads))
		for i, s := range heatingSpreads {
			by[i] = s * rapid.Float64Range(-1.5, 1.5).Draw(t, "difference")
		}
		truth := h.differing(by)
		o, err := truth.Solve(HeatingRatingConditions(), Faults{})
		if err != nil || o.Limit != NoLimit || o.Superheat < 0.5 {
			t.Skip("it does not run so")
		}
		later, err := truth.Solve(cold, Faults{})
		if err != nil || later.Limit != NoLimit {
			t.Skip("it does not run so in the cold")
		}
		kelvin := func(v quantity.Temperature) *quantity.Uncertain[quantity.Temperature] {
			u := v.PlusMinus(0.3)
			return &u
		}
		delta := func(v quantity.TemperatureDelta) *quantity.Uncertain[quantity.TemperatureDelta] {
			u := v.PlusMinus(0.5)
			return &u
		}
		power := o.Power.PlusMinus(o.Power / 50)
		fit, err := h.Fit(HeatingRatingConditions(), HeatingReadings{
			Evaporating: kelvin(o.Evaporating), Condensing: kelvin(o.Condensing),
			Superheat: delta(o.Superheat), Subcooling: delta(o.Subcooling),
			Supply: kelvin(o.Supply), Power: &power,
		})
		if err != nil {
			t.Fatal(err)
		}
		said, err := fit.Solve(cold, Faults{})
		if err != nil {
			t.Fatal(err)
		}
		ordinary, err := h.Solve(cold, Faults{})
		if err != nil {
			t.Fatal(err)
		}
		off := math.Abs(float64(said.Capacity/later.Capacity) - 1)
		fitted += off
		plain += math.Abs(float64(ordinary.Capacity/later.Capacity) - 1)
		n++
		if off > 0.06 {
			t.Fatalf("%v said, %v is; %v", said.Capacity, later.Capacity, by)
		}
	})
	t.Logf("mean error of the capacity at 17 °F: fitted %.4f, ordinary %.4f",
		fitted/float64(n), plain/float64(n))
	if fitted > 0.03*float64(n) || fitted > plain/2 {
		t.Errorf("fitted %.4f, ordinary %.4f", fitted/float64(n), plain/float64(n))
	}
}

func TestFitOfHeatingRefuses(t *testing.T) {
	h := reversed(t, "R-410A", refrigerant.TXV)
	bad := quantity.Temperature(math.NaN()).PlusMinus(1)
	if _, err := h.Fit(HeatingRatingConditions(), HeatingReadings{Evaporating: &bad}); err == nil {
		t.Error("no number is taken")
	}
	if _, err := new(Reversed).Fit(HeatingRatingConditions(),
		HeatingReadings{}); err != ErrNoSystem {
		t.Error(err)
	}
}

// What a fit leaves open holds what the machine does later: in two of three machines within one
// standard uncertainty, and in hardly any beyond three. Readings narrow it.
func TestHeatingPredictionIsAsWideAsItIsOff(t *testing.T) {
	h := reversed(t, "R-410A", refrigerant.TXV)
	cold := HeatingRatingConditions()
	cold.OutdoorDryBulb = quantity.Fahrenheit(17)
	ordinary, err := h.Predict(cold, Faults{})
	if err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(3, 17))
	n, sum, far := 0, 0.0, 0
	for range 60 {
		by := make([]float64, len(heatingSpreads))
		for i, s := range heatingSpreads {
			by[i] = s * rng.NormFloat64()
		}
		truth := h.differing(by)
		o, err := truth.Solve(HeatingRatingConditions(), Faults{})
		later, err2 := truth.Solve(cold, Faults{})
		if err != nil || err2 != nil || o.Limit != NoLimit || later.Limit != NoLimit {
			continue
		}
		near := func(v quantity.Temperature) *quantity.Uncertain[quantity.Temperature] {
			return new((v + quantity.Temperature(0.4*rng.NormFloat64())).PlusMinus(0.4))
		}
		fit, err := h.Fit(HeatingRatingConditions(), HeatingReadings{
			Evaporating: near(o.Evaporating), Condensing: near(o.Condensing),
			Supply: near(o.Supply),
		})
		if err != nil {
			t.Fatal(err)
		}
		p, err := fit.Predict(cold, Faults{})
		if err != nil {
			t.Fatal(err)
		}
		if p.Capacity.Std >= ordinary.Capacity.Std {
			t.Errorf("readings made it wider: %v, %v", p.Capacity, ordinary.Capacity)
		}
		z := float64(p.Capacity.Value-later.Capacity) / p.Capacity.Std
		n, sum = n+1, sum+z*z
		if math.Abs(z) > 3 {
			far++
		}
	}
	if rms := math.Sqrt(sum / float64(n)); rms < 0.5 || rms > 1.5 || far > 2 {
		t.Errorf("off by %.2f standard uncertainties, %d of %d beyond three", rms, far, n)
	}
}
