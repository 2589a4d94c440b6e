package refrigerant

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// What is left and what has leaked add up to the charge, component by component.
func TestLeakConservesMass(t *testing.T) {
	for _, designation := range []string{"R-407C", "R-454B", "R-448A", "R-410A", "R-455A"} {
		r := mustLookup(t, designation)
		for _, from := range []Phase{Vapor, Liquid} {
			steps, err := r.Leak(
				LeakCase{
					Temperature: quantity.Fahrenheit(70),
					From:        from,
					Lost:        []float64{0, 0.1, 0.5, 0.9},
				},
			)
			if err != nil {
				t.Fatalf("%v, %s: %v", r, from, err)
			}
			for _, s := range steps {
				left, gone := s.Remaining.Composition(), s.Leaked
				for i, c := range r.Composition() {
					sum := (1 - s.Lost) * left[i].MassFraction
					if s.Lost > 0 {
						sum += s.Lost * gone[i].MassFraction
					}
					if math.Abs(sum-c.MassFraction) > 1e-12 {
						t.Errorf(
							"%v, %s, %v lost: %s adds up to %v of %v", r, from, s.Lost,
							c.Designation, sum, c.MassFraction,
						)
					}
				}
			}
		}
	}
}

// Vapor that leaks is richer in what boils first, so what stays boils higher:
// R-407C loses and keeps R-134a. An azeotrope and a pure fluid stay
// what they are.
func TestVaporLeakOfZeotrope(t *testing.T) {
	r := mustLookup(t, "R-407C")
	steps, err := r.Leak(
		LeakCase{
			Temperature: quantity.Fahrenheit(75),
			From:        Vapor,
			Lost:        []float64{0, 0.2, 0.4, 0.6},
		},
	)
	if err != nil {
		t.Fatal(err)
	}
	for i, s := range steps {
		if i == 0 {
			if math.Abs(float64(s.BubbleShift))+math.Abs(float64(s.DewShift)) > 1e-3 {
				t.Errorf("shift before any loss: %+v", s)
			}
			continue
		}
		before := steps[i-1].Remaining.Composition()
		now := s.Remaining.Composition()
		if !(now[0].MassFraction < before[0].MassFraction &&
			now[2].MassFraction > before[2].MassFraction) {
			t.Errorf(
				"%v lost: %s after %s", s.Lost, s.Remaining.Name(), steps[i-1].Remaining.Name(),
			)
		}
		if !(s.BubbleShift > steps[i-1].BubbleShift && s.Pressure < steps[i-1].Pressure) {
			t.Errorf("%v lost: shift %v, pressure %v", s.Lost, s.BubbleShift, s.Pressure)
		}
	}
	for designation, shift := range map[string]float64{"R-507A": 0.2, "R-22": 1e-3} {
		r := mustLookup(t, designation)
		steps, err := r.Leak(LeakCase{Temperature: 295, From: Vapor, Lost: []float64{0.5}})
		if err != nil {
			t.Fatal(err)
		}
		if s := steps[0]; math.Abs(float64(s.BubbleShift)) > shift {
			t.Errorf("%v: bubble point shifts by %v", r, s.BubbleShift)
		}
	}
}

// Halving the stride changes next to nothing: the distillation has converged.
func TestLeakConverges(t *testing.T) {
	r := mustLookup(t, "R-407C")
	coarse, err := r.Leak(LeakCase{Temperature: 295, From: Vapor, Lost: []float64{0.6}})
	if err != nil {
		t.Fatal(err)
	}
	// Reports at every half stride force strides of that length.
	var often []float64
	for x := leakStride / 2; x < 0.6; x += leakStride / 2 {
		often = append(often, x)
	}
	fine, err := r.Leak(LeakCase{Temperature: 295, From: Vapor, Lost: append(often, 0.6)})
	if err != nil {
		t.Fatal(err)
	}
	a, b := coarse[0].Remaining.Composition(), fine[len(fine)-1].Remaining.Composition()
	for i := range a {
		if d := math.Abs(a[i].MassFraction - b[i].MassFraction); d > 2e-5 {
			t.Errorf("%s: %v or %v", a[i].Designation, a[i].MassFraction, b[i].MassFraction)
		}
	}
}

// Fractions stay fractions and pressures stay between dew and bubble.
func TestLeakBounds(t *testing.T) {
	zeotropes := []string{
		"R-407C", "R-454B", "R-454C", "R-448A", "R-422D", "R-438A", "R-401A", "R-444B",
	}
	rapid.Check(t, func(t *rapid.T) {
		r, err := Lookup(rapid.SampledFrom(zeotropes).Draw(t, "refrigerant"))
		if err != nil {
			t.Fatal(err)
		}
		c := LeakCase{
			Temperature: quantity.Celsius(rapid.Float64Range(-20, 40).Draw(t, "°C")),
			From:        rapid.SampledFrom([]Phase{Liquid, Vapor}).Draw(t, "from"),
			Level:       rapid.Float64Range(0.05, 0.9).Draw(t, "level"),
			Lost:        []float64{rapid.Float64Range(0, 0.2).Draw(t, "lost")},
		}
		steps, err := r.Leak(c)
		if err != nil {
			t.Fatal(err)
		}
		s := steps[0]
		sum := 0.0
		for _, p := range s.Remaining.Composition() {
			if !(p.MassFraction >= 0 && p.MassFraction <= 1) {
				t.Errorf("%s: %v", p.Designation, p.MassFraction)
			}
			sum += p.MassFraction
		}
		if math.Abs(sum-1) > 1e-12 {
			t.Errorf("fractions sum to %v", sum)
		}
		bubble, err := s.Remaining.BubblePressure(c.Temperature)
		if err != nil || s.Pressure > bubble*(1+1e-6) {
			t.Errorf("pressure %v above the bubble pressure %v, %v", s.Pressure, bubble, err)
		}
	})
}

func TestLeakRefusals(t *testing.T) {
	r := mustLookup(t, "R-407C")
	if _, err := r.Leak(LeakCase{Temperature: 295, From: TwoPhase}); !errors.Is(err, ErrLeakPhase) {
		t.Error(err)
	}
	for _, c := range []LeakCase{
		{Temperature: 1000, From: Vapor},
		{Temperature: quantity.Temperature(math.NaN()), From: Vapor},
		{Temperature: 295, From: Vapor, Level: 1},
		{Temperature: 295, From: Vapor, Level: math.NaN()},
		{Temperature: 295, From: Vapor, Lost: []float64{0.5, 0.2}},
		{Temperature: 295, From: Vapor, Lost: []float64{1}},
		{Temperature: 295, From: Vapor, Lost: []float64{math.NaN()}},
	} {
		var out *RangeError
		if _, err := r.Leak(c); !errors.As(err, &out) {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

// No case makes a panic, a hang or a NaN.
func FuzzLeak(f *testing.F) {
	f.Add(uint8(37), 297.0, "vapor", 0.5, 0.0, 0.5)
	f.Add(uint8(130), 250.0, "liquid", 0.01, 0.2, 0.99)
	f.Add(uint8(31), math.NaN(), "gas", -1.0, 0.9, 0.1)
	f.Fuzz(func(t *testing.T, i uint8, temp float64, from string, level, first, second float64) {
		r := &roster[int(i)%len(roster)]
		steps, err := r.Leak(
			LeakCase{
				Temperature: quantity.Temperature(temp),
				From:        Phase(from),
				Level:       level,
				Lost:        []float64{first, second},
			},
		)
		if err != nil {
			return
		}
		for _, s := range steps {
			for _, v := range []float64{s.Lost, float64(s.Pressure), float64(s.BubbleShift),
				float64(s.DewShift)} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%v at %v K from %s: %+v", r, temp, from, s)
				}
			}
		}
	})
}

// In the cold hardly any carbon dioxide is left in the liquid long before the charge is
// gone, and the last of it leaves in less than one stride of the others.
func TestLeakOfTheLastInTheCold(t *testing.T) {
	leaking := []string{"R-444B", "R-455A", "R-457A", "R-470A"}
	if testing.Short() {
		leaking = leaking[:1]
	}
	for _, d := range leaking {
		r := mustLookup(t, d)
		for _, celsius := range []float64{-40, -20, 0} {
			for _, level := range []float64{0.1, 0.5, 0.95} {
				steps, err := r.Leak(
					LeakCase{
						Temperature: quantity.Celsius(celsius),
						From:        Vapor,
						Level:       level,
						Lost:        []float64{0.5, 0.9, 0.95, 0.98, 0.99},
					},
				)
				if err != nil {
					t.Errorf("%s at %g °C, level %g: %v", d, celsius, level, err)
					continue
				}
				last := math.Inf(1)
				for _, s := range steps {
					if s.Pressure >= quantity.Pressure(last) {
						t.Errorf(
							"%s at %g °C, level %g, %g lost: %v after %v", d, celsius, level,
							s.Lost, s.Pressure, quantity.Pressure(last),
						)
					}
					last = float64(s.Pressure)
					left := s.Remaining.Composition()
					for i, c := range r.Composition() {
						sum := s.Lost*s.Leaked[i].MassFraction + (1-s.Lost)*left[i].MassFraction
						if math.Abs(sum-c.MassFraction) > 1e-9 || left[i].MassFraction <= 0 {
							t.Errorf(
								"%s at %g °C, level %g, %g lost: %s left %g and lost %g do not "+
									"add up to %g",
								d, celsius, level, s.Lost, c.Designation, left[i].MassFraction,
								s.Leaked[i].MassFraction, c.MassFraction,
							)
						}
					}
				}
			}
		}
	}
}
