package refrigerant

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// A blend of the roster made again at run time is the same fluid.
func TestNewBlendMatchesRoster(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRefrigerant().Draw(t, "refrigerant")
		b, err := NewBlend("again", r.Composition())
		if err != nil {
			t.Fatal(err)
		}
		p := r.Critical().Pressure * quantity.Pressure(
			rapid.Float64Range(0.05, 0.8).Draw(t, "pressure"),
		)
		for _, pair := range [][2]func(quantity.Pressure) (quantity.Temperature, error){
			{r.BubbleTemperature, b.BubbleTemperature}, {r.DewTemperature, b.DewTemperature},
		} {
			table, err1 := pair[0](p)
			solved, err2 := pair[1](p)
			if (err1 == nil) != (err2 == nil) || math.Abs(float64(table-solved)) > tableKelvin {
				t.Errorf(
					"%v at %v: %v and %v, %v, %v", r, p, float64(table), float64(solved), err1,
					err2,
				)
			}
		}
		hot := quantity.Celsius(60)
		s, err1 := r.State(1e5, hot)
		u, err2 := b.State(1e5, hot)
		if err1 != nil || err2 != nil || math.Abs(float64(s.Enthalpy-u.Enthalpy)) > 2e-5*200e3 {
			t.Errorf("%v: enthalpy %v and %v, %v, %v", r, s.Enthalpy, u.Enthalpy, err1, err2)
		}
	})
}

// Topping off with one of the components shifts the dew point toward that
// component's own.
func TestToppingOffShiftsTowardWhatIsAdded(t *testing.T) {
	last := math.Inf(1)
	for _, added := range []float64{0, 0.1, 0.2, 0.4} {
		b, err := NewBlend(
			"topped off with R-134a", []Component{{"R-407C", 1 - added}, {"R-134a", added}},
		)
		if err != nil {
			t.Fatal(err)
		}
		p, err := b.BubblePressure(quantity.Fahrenheit(75))
		if err != nil {
			t.Fatal(err)
		}
		if float64(p) >= last {
			t.Errorf("bubble pressure %v with %v added is not below %v", p, added, last)
		}
		last = float64(p)
	}
}

// What is less than the rounding of the rest is not there, and what is more has next to no
// effect, so that nothing happens between the two.
func TestNewBlendWithNextToNothing(t *testing.T) {
	pure := mustLookup(t, "R-134a")
	want, err := pure.DewTemperature(6e5)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		share float64
		parts int
	}{{math.SmallestNonzeroFloat64, 1}, {1e-300, 1}, {9e-16, 1}, {1.1e-15, 2}, {1e-12, 2}} {
		for _, other := range []string{"R-718", "R-23", "R-32"} {
			b, err := NewBlend("traces", []Component{{other, c.share}, {"R-134a", 1}})
			if err != nil {
				t.Errorf("%v of %s: %v", c.share, other, err)
				continue
			}
			if parts := b.Composition(); len(parts) != c.parts {
				t.Errorf("%v of %s: %v", c.share, other, parts)
			}
			if dew, err := b.DewTemperature(6e5); err != nil ||
				math.Abs(float64(dew-want)) > tableKelvin {
				t.Errorf("%v of %s: dew point %v, want %v, %v", c.share, other, dew, want, err)
			}
		}
	}
	// Nor does it count as a ninth component.
	nine := []Component{{"R-32", 1}}
	for _, r := range All()[:12] {
		if r.Pure() {
			nine = append(nine, Component{r.Designation(), 1e-300})
		}
	}
	if len(nine) < 9 {
		t.Fatal("not enough pure refrigerants at the head of the roster")
	}
	if b, err := NewBlend("traces", nine); err != nil || !b.Pure() {
		t.Errorf("%v, %v", b, err)
	}
	if _, err := NewBlend("nothing", []Component{{"R-32", 1e-300}}); err == nil {
		t.Error("a blend of next to nothing")
	}
}

// Water hardly mixes with hydrocarbons, nor much ammonia with propane at 0 °C and below:
// there is nothing for enthalpy to count from, and an error that says so instead of
// a figure. The critical point of either is not missing.
func TestNewBlendThatDoesNotMix(t *testing.T) {
	for _, c := range []struct {
		parts []Component
		name  string
	}{
		{[]Component{{"R-718", 0.3}, {"R-290", 0.7}}, "R-718/R-290 (30/70)"},
		{[]Component{{"R-718", 0.99}, {"R-290", 0.01}}, "R-718/R-290 (99/1)"},
		{[]Component{{"R-717", 0.5}, {"R-290", 0.5}}, "R-717/R-290 (50/50)"},
	} {
		b, err := NewBlend("wet", c.parts)
		if !errors.Is(err, ErrUnsolved) || !strings.HasPrefix(err.Error(), c.name) ||
			!strings.Contains(err.Error(), "0 °C") ||
			!strings.Contains(err.Error(), "leave out") {
			t.Errorf("%v, %v", b, err)
		}
	}
	for _, part := range []Component{{"R-718", 0.001}, {"R-717", 0.1}, {"R-717", 0.9}} {
		if _, err := NewBlend("wet", []Component{part,
			{"R-290", 1 - part.MassFraction}}); err != nil {
			t.Error(err)
		}
	}
}

// Where the limit of one component's equation lies below the critical temperature of the
// blend, State answers wherever saturation does.
func TestStateReachesTheCriticalTemperature(t *testing.T) {
	for _, c := range []struct {
		low, high string
		share     float64
	}{
		{"R-13I1", "R-11", 0.1}, {"R-E170", "R-718", 0.1}, {"R-1336mzz(Z)", "R-1336mzz(E)", 0.9},
		{"R-32", "R-113", 0.1},
	} {
		b, err := NewBlend("hot", []Component{{c.low, c.share}, {c.high, 1 - c.share}})
		if err != nil {
			t.Error(err)
			continue
		}
		critical := b.Critical().Temperature
		if max := b.Limits().MaxTemperature; max != critical {
			t.Errorf("%s: up to %v, critical at %v", b.Name(), max, critical)
		}
		for _, share := range []quantity.Temperature{0.9, 0.98, 0.999} {
			vapor, err := b.SaturatedVapor(share * critical)
			if err != nil {
				t.Errorf("%s: %v", b.Name(), err)
				continue
			}
			s, err := b.State(0.999*vapor.Pressure, vapor.Temperature)
			if err != nil || s.Phase != Vapor ||
				!(s.Density < vapor.Density && s.Density > 0.95*vapor.Density) {
				t.Errorf("%s at %v: %+v, %v", b.Name(), share*critical, s, err)
			}
		}
		if s, err := b.State(b.Critical().Pressure*1.1, critical); err != nil ||
			s.Phase != Supercritical {
			t.Errorf("%s above the critical pressure: %+v, %v", b.Name(), s, err)
		}
	}
}

// No composition makes a panic, a hang or a NaN.
func FuzzNewBlend(f *testing.F) {
	f.Add(uint8(5), uint8(12), uint8(13), 0.23, 0.25, 0.52, 6e5, 290.0)
	f.Add(uint8(31), uint8(30), uint8(0), 0.5, 0.5, 0.0, 1e6, 300.0)
	f.Add(
		uint8(6), uint8(31), uint8(30), 0.23, 0.25, 0.52, 150061.0, -39.34375,
	) // splits up to 280 °C
	f.Fuzz(func(t *testing.T, i, j, k uint8, a, b, c, p, temp float64) {
		name := func(i uint8) string { return pureFacts[int(i)%len(pureFacts)].designation }
		r, err := NewBlend("fuzzed", []Component{{name(i), a}, {name(j), b}, {name(k), c}})
		if err != nil {
			return
		}
		for _, v := range []func() (float64, error){
			func() (float64, error) {
				v, err := r.BubbleTemperature(quantity.Pressure(p))
				return float64(v), err
			},
			func() (float64, error) {
				v, err := r.DewTemperature(quantity.Pressure(p))
				return float64(v), err
			},
			func() (float64, error) {
				v, err := r.BubblePressure(quantity.Temperature(temp))
				return float64(v), err
			},
			func() (float64, error) {
				v, err := r.DewPressure(quantity.Temperature(temp))
				return float64(v), err
			},
		} {
			if x, err := v(); err == nil && (math.IsNaN(x) || math.IsInf(x, 0) || x <= 0) {
				t.Errorf("%s: %v at %v Pa, %v K", r.Name(), x, p, temp)
			}
		}
		if s, err := r.State(quantity.Pressure(p), quantity.Temperature(temp)); err == nil {
			checkState(t, r, s)
		}
	})
}

// With water a dissolved gas can need pressures beyond the critical one in the cold:
// that is no bubble point to count from.
func TestBlendWhoseGasHardlyDissolves(t *testing.T) {
	r, err := NewBlend("wet", []Component{{"R-113", 0.23}, {"R-744", 0.25}, {"R-718", 0.52}})
	if err == nil || !strings.Contains(err.Error(), "no bubble point") {
		t.Errorf("%v, %v", r, err)
	}
}

// Where one component boils far below the other, the solver ends farther below the
// critical point than elsewhere. Pressure and temperature of saturation lead to each other
// even so, and the bubble line has no step up to the critical point.
func TestBlendThatBoilsOverAWideRange(t *testing.T) {
	for _, c := range []struct {
		heavy, light string
		share        float64
	}{
		{"R-601", "R-744", 0.5}, {"R-113", "R-744", 0.5}, {"R-113", "R-23", 0.5},
		{"R-601a", "R-170", 0.5}, {"R-601a", "R-116", 0.1}, {"R-718", "R-22", 0.1},
		{"R-718", "R-32", 0.1}, {"R-123", "R-1132a", 0.5},
	} {
		r, err := NewBlend("wide", []Component{{c.heavy, c.share}, {c.light, 1 - c.share}})
		if err != nil {
			t.Errorf("%s/%s: %v", c.heavy, c.light, err)
			continue
		}
		critical := r.Critical()
		for _, at := range []quantity.Temperature{280, 0.8 * critical.Temperature,
			0.9 * critical.Temperature} {
			p, err := r.BubblePressure(at)
			if err != nil {
				t.Errorf("%s/%s: bubble pressure at %v: %v", c.heavy, c.light, at, err)
				continue
			}
			back, err := r.BubbleTemperature(p)
			if err != nil || math.Abs(float64(back-at)) > 1e-6 {
				t.Errorf(
					"%s/%s: bubble temperature at %v: %v, %v, want %v", c.heavy, c.light, p, back,
					err, at,
				)
			}
		}
		last := critical.Pressure
		for below := range 60 {
			at := critical.Temperature * quantity.Temperature(1-1e-4*float64(below))
			p, err := r.BubblePressure(at)
			if err != nil || math.Abs(float64(p/last)-1) > 1e-3 {
				t.Errorf(
					"%s/%s: bubble pressure at %v: %v, %v, after %v", c.heavy, c.light, at, p, err,
					last,
				)
				break
			}
			last = p
		}
	}
}
