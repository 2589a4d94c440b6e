package refrigerant

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

func anyRefrigerant() *rapid.Generator[*Refrigerant] { return rapid.SampledFrom(All()) }

// saturationTemperature draws a temperature at which r is saturated.
func saturationTemperature(t *rapid.T, r *Refrigerant) quantity.Temperature {
	low, high := r.Limits().MinTemperature, r.Critical().Temperature
	u := rapid.Float64Range(0, 0.999).Draw(t, "place")
	return low + quantity.Temperature(u)*(high-low)
}

// Pressure rises with temperature, liquid thins and vapor thickens.
func TestSaturationIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRefrigerant().Draw(t, "refrigerant")
		s := r.table()
		at := func(name string) float64 {
			return s.Low + (s.High-s.Low)*rapid.Float64Range(0, 1).Draw(t, name)
		}
		a, b := at("a"), at("b")
		if a > b {
			a, b = b, a
		}
		if b-a < 1e-9*a {
			return
		}
		for c, rises := range map[table.Curve]bool{
			table.BubblePressure: true, table.DewPressure: true, table.DewDensity: true,
			table.BubbleEnthalpy: true, table.BubbleEntropy: true, table.BubbleDensity: false,
		} {
			va, ok1 := s.At(c, a)
			vb, ok2 := s.At(c, b)
			if r.Designation() == "R-718" && c == table.BubbleDensity && a < 278 {
				continue // water is densest at 4 °C
			}
			if ok1 && ok2 && (va < vb) != rises {
				t.Errorf("%v: curve %d goes from %v at %v K to %v at %v K", r, c, va, a, vb, b)
			}
		}
		for e := range table.Edges {
			pa, ok1 := s.At(table.BubblePressure+table.Curve(e), a)
			pb, ok2 := s.At(table.BubblePressure+table.Curve(e), b)
			ta, ok3 := s.Temperature(e, pa)
			tb, ok4 := s.Temperature(e, pb)
			if ok1 && ok2 && ok3 && ok4 && !(ta < tb) {
				t.Errorf("%v: edge %d is %v K at %v Pa and %v K at %v Pa", r, e, ta, pa, tb, pb)
			}
		}
	})
}

// From temperature to pressure and back, in the table and past its end.
func TestSaturationRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRefrigerant().Draw(t, "refrigerant")
		temp := saturationTemperature(t, r)
		for _, edge := range []struct {
			pressure    func(quantity.Temperature) (quantity.Pressure, error)
			temperature func(quantity.Pressure) (quantity.Temperature, error)
		}{{r.BubblePressure, r.BubbleTemperature}, {r.DewPressure, r.DewTemperature}} {
			p, err := edge.pressure(temp)
			if err != nil {
				t.Fatalf("%v at %v K: %v", r, float64(temp), err)
			}
			if p > r.Critical().Pressure {
				continue // retrograde
			}
			back, err := edge.temperature(p)
			if err != nil || math.Abs(float64(back-temp)) > 1e-3 {
				t.Fatalf(
					"%v: %v K has %v Pa, which has %v K, %v", r, float64(temp), float64(p),
					float64(back), err,
				)
			}
		}
	})
}

// Liquid boils before vapor stops condensing: bubble pressure is above dew
// pressure, and the glide is not negative.
func TestDewIsAboveBubble(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRefrigerant().Draw(t, "refrigerant")
		temp := saturationTemperature(t, r)
		bubble, err1 := r.BubblePressure(temp)
		dew, err2 := r.DewPressure(temp)
		if err1 != nil || err2 != nil || float64(dew) > float64(bubble)*(1+tableRelative) {
			t.Fatalf("%v at %v: bubble %v, dew %v, %v, %v", r, temp, bubble, dew, err1, err2)
		}
		if glide, err := r.Glide(bubble); err == nil && glide < -2*tableKelvin {
			t.Errorf("%v: glide %v at %v", r, float64(glide), bubble)
		}
	})
}

// Along the saturation line of a pure fluid dp/dT is Δh/(T Δv) (Clapeyron).
// The derivative is taken numerically on the equation itself.
func TestClapeyron(t *testing.T) {
	for _, r := range All() {
		if !r.Pure() {
			continue
		}
		exact := untabulated(t, r)
		low, high := r.Limits().MinTemperature, r.Critical().Temperature
		for i := 1; i < 20; i++ {
			temp := low + (high-low)*quantity.Temperature(i)/20
			pressure := func(k float64) float64 {
				p, err := exact.BubblePressure(temp + quantity.Temperature(k*0.05))
				if err != nil {
					t.Fatal(err)
				}
				return math.Log(float64(p))
			}
			slope := (8*(pressure(1)-pressure(-1)) - (pressure(2) - pressure(-2))) / (12 * 0.05)
			l, _ := exact.SaturatedLiquid(temp)
			v, _ := exact.SaturatedVapor(temp)
			want := float64(
				v.Enthalpy-l.Enthalpy,
			) / (float64(temp) * (1/float64(v.Density) - 1/float64(l.Density)) *
				float64(v.Pressure))
			if e := math.Abs(slope/want - 1); e > 1e-6 {
				t.Errorf(
					"%v at %v K: d ln p/dT %v, Clapeyron %v, off by %.1e", r, float64(temp), slope,
					want, e,
				)
			}
			// Equal Gibbs energy says the same of entropy.
			if e := float64(v.Enthalpy-l.Enthalpy)/float64(temp)/float64(v.Entropy-l.Entropy) -
				1; math.Abs(
				e,
			) > 1e-8 {
				t.Errorf("%v at %v K: Δh/T is off Δs by %.1e", r, float64(temp), e)
			}
		}
	}
}

// A state found by (p,T) is found again by (p,h) and (p,s).
func TestStateRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRefrigerant().Draw(t, "refrigerant")
		l := r.Limits()
		temp := l.MinTemperature + quantity.Temperature(
			rapid.Float64Range(0.001, 0.999).Draw(t, "T"),
		)*(l.MaxTemperature-l.MinTemperature)
		high := min(float64(l.MaxPressure), 2*float64(r.Critical().Pressure))
		p := quantity.Pressure(
			min(high, math.Exp(rapid.Float64Range(math.Log(1e3), math.Log(high)).Draw(t, "ln p"))),
		)
		s, err := r.State(p, temp)
		if err != nil {
			t.Fatalf("%v at %v, %v: %v", r, p, temp, err)
		}
		checkState(t, r, s)
		byH, err := r.StateAtEnthalpy(p, s.Enthalpy)
		if err != nil {
			t.Fatalf("%v at %v Pa, h %v: %v", r, float64(p), float64(s.Enthalpy), err)
		}
		byS, err := r.StateAtEntropy(p, s.Entropy)
		if err != nil {
			t.Fatalf("%v at %v Pa, s %v: %v", r, float64(p), float64(s.Entropy), err)
		}
		for _, again := range []State{byH, byS} {
			if math.Abs(float64(again.Temperature-temp)) > 2e-3 {
				t.Errorf(
					"%v at %v Pa: %v K leads back to %v K (%s, %s)", r, float64(p), float64(temp),
					float64(again.Temperature), s.Phase, again.Phase,
				)
			}
		}
	})
}

// Far above its dew point vapor of R-744 has the entropy of a solution of its
// equation far below the triple point.
func TestStateAtEntropyKeepsToTheVapor(t *testing.T) {
	r := mustLookup(t, "R-744")
	s, err := r.State(1.0121209e6, 730.83378)
	if err != nil {
		t.Fatal(err)
	}
	again, err := r.StateAtEntropy(s.Pressure, s.Entropy)
	if err != nil || math.Abs(float64(again.Temperature-s.Temperature)) > 1e-6 {
		t.Errorf("%v leads back to %v, %v", s, again, err)
	}
}

func checkState(t rapid.TB, r *Refrigerant, s State) {
	t.Helper()
	for name, v := range map[string]float64{
		"pressure": float64(s.Pressure), "temperature": float64(s.Temperature),
		"density": float64(s.Density),
	} {
		if !(v > 0) || math.IsInf(v, 0) {
			t.Errorf("%v: %s %v in %+v", r, name, v, s)
		}
	}
	for name, v := range map[string]float64{"enthalpy": float64(s.Enthalpy),
		"entropy": float64(s.Entropy)} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Errorf("%v: %s %v in %+v", r, name, v, s)
		}
	}
	if !(s.Quality >= 0 && s.Quality <= 1) {
		t.Errorf("%v: quality %v", r, s.Quality)
	}
	if single := s.Phase != TwoPhase; single != (s.Cp > 0) || single != (s.SpeedOfSound > 0) {
		t.Errorf("%v: %s with cp %v, speed of sound %v", r, s.Phase, s.Cp, s.SpeedOfSound)
	}
}

// Two-phase states lie where their quality says.
func TestStateAtQuality(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRefrigerant().Draw(t, "refrigerant")
		temp := saturationTemperature(t, r)
		p, err := r.BubblePressure(min(temp, 0.97*r.Critical().Temperature))
		if err != nil {
			t.Fatal(err)
		}
		x := rapid.Float64Range(0, 1).Draw(t, "x")
		s, err := r.StateAtQuality(p, x)
		if err != nil {
			t.Fatalf("%v at %v Pa, x %v: %v", r, float64(p), x, err)
		}
		again, err := r.StateAtEnthalpy(p, s.Enthalpy)
		if err != nil || math.Abs(again.Quality-x) > 1e-4 {
			t.Errorf("%v at %v Pa: quality %v becomes %v, %v", r, float64(p), x, again.Quality, err)
		}
	})
}

// What cannot be answered is refused with the range.
func TestOutOfRange(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, r := range All() {
		c := r.Critical()
		for name, err := range map[string]error{
			"bubble above critical pressure": second(r.BubbleTemperature(c.Pressure * 1.01)),
			"dew above critical pressure":    second(r.DewTemperature(c.Pressure * 1.01)),
			"above critical temperature":     second(r.BubblePressure(c.Temperature + 1)),
			"below the lowest":               second(r.DewPressure(r.Limits().MinTemperature - 1)),
			"no pressure":                    second(r.BubbleTemperature(0)),
			"negative pressure":              second(r.DewTemperature(-1)),
			"NaN":                            second(r.DewTemperature(quantity.Pressure(nan))),
			"NaN temperature":                second(r.BubbleDensity(quantity.Temperature(nan))),
			"infinite":                       second(r.DewPressure(quantity.Temperature(inf))),
			"state at NaN":                   second(r.State(quantity.Pressure(nan), 300)),
			"state too hot":                  second(r.State(1e5, 5000)),
			"state too dense":                second(r.State(1e12, 300)),
			"enthalpy":                       second(r.StateAtEnthalpy(1e5, 1e9)),
			"entropy": second(r.StateAtEntropy(1e5,
				quantity.SpecificEntropy(math.Inf(-1)))),
			"quality": second(r.StateAtQuality(1e5, 1.5)),
			"line": second(r.Superheat(c.Pressure/2,
				quantity.Temperature(nan))),
		} {
			var out *RangeError
			if !errors.As(err, &out) {
				t.Errorf("%v, %s: %v", r, name, err)
			}
		}
	}
}

func second[T any](_ T, err error) error { return err }

// No input makes a panic, a hang or a NaN.
func FuzzState(f *testing.F) {
	f.Add(uint8(3), 5e5, 290.0, 420e3)
	f.Add(uint8(31), 1e7, 310.0, 300e3)
	f.Add(uint8(0), 0.0, -1.0, math.Inf(1))
	f.Add(
		uint8('º'), 2.2542735e+06, 160.58333333333331, 0.1340395061728394,
	) // R-113, colder than all liquid
	f.Fuzz(func(t *testing.T, i uint8, p, temp, v float64) {
		r := &roster[int(i)%len(roster)]
		states := []func() (State, error){
			func() (State, error) {
				return r.State(quantity.Pressure(p), quantity.Temperature(temp))
			},
			func() (State, error) {
				return r.StateAtEnthalpy(quantity.Pressure(p), quantity.SpecificEnthalpy(v))
			},
			func() (State, error) {
				return r.StateAtEntropy(quantity.Pressure(p), quantity.SpecificEntropy(v))
			},
			func() (State, error) { return r.StateAtQuality(quantity.Pressure(p), v) },
			func() (State, error) { return r.SaturatedLiquid(quantity.Temperature(temp)) },
			func() (State, error) { return r.SaturatedVapor(quantity.Temperature(temp)) },
		}
		for _, f := range states {
			if s, err := f(); err == nil {
				checkState(t, r, s)
			}
		}
		for _, f := range []func() (float64, error){
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
			func() (float64, error) {
				v, err := r.Superheat(quantity.Pressure(p), quantity.Temperature(temp))
				return float64(v), err
			},
			func() (float64, error) {
				v, err := r.Subcooling(quantity.Pressure(p), quantity.Temperature(temp))
				return float64(v), err
			},
		} {
			if v, err := f(); err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
				t.Errorf("%v: %v at p %v, T %v", r, v, p, temp)
			}
		}
	})
}

// Up to the critical point itself there is an answer, and it closes in on the
// critical point.
func TestUpToTheCriticalPoint(t *testing.T) {
	for _, r := range All() {
		c := r.Critical()
		for e := range table.Edges {
			last := math.Inf(1)
			for _, gap := range []float64{2e-3, 1e-4, 0} {
				at := c.Temperature * quantity.Temperature(1-gap)
				s, err := r.solveSaturation(e, at)
				if err != nil {
					t.Fatalf("%v: %v", r, err)
				}
				away := math.Abs(s.density/float64(c.Density) - 1)
				if away > last {
					t.Errorf(
						"%v: edge %d is %v of the critical density away at %v, after %v", r, e,
						away, at, last,
					)
				}
				last = away
				if _, err := r.solveSaturationAt(e,
					c.Pressure*quantity.Pressure(1-gap)); err != nil {
					t.Fatalf("%v: %v", r, err)
				}
			}
			if last > 1e-9 {
				t.Errorf("%v: edge %d ends %v of the critical density away from it", r, e, last)
			}
		}
	}
}

// On both edges up to the critical point a state is a state, and its heat capacity grows
// towards it.
func TestStatesUpToTheCriticalPoint(t *testing.T) {
	for _, r := range All() {
		for _, saturated := range []func(quantity.Temperature) (State, error){r.SaturatedLiquid,
			r.SaturatedVapor} {
			var last quantity.SpecificHeat
			for _, gap := range []float64{6e-4, 4e-4, 1e-4, 1e-6, 0} {
				s, err := saturated(r.Critical().Temperature * quantity.Temperature(1-gap))
				if err != nil {
					t.Fatalf("%v: %v", r, err)
				}
				checkState(t, r, s)
				if s.Cp < last {
					t.Errorf(
						"%v: the heat capacity of %s falls to %v at %v of the critical temperature",
						r, s.Phase, s.Cp, 1-gap,
					)
				}
				last = s.Cp
			}
		}
	}
}

// Just above the critical pressure, where enthalpy and entropy are steep in temperature
// between two flat ends, a state leads back.
func TestStatesOverTheCriticalPoint(t *testing.T) {
	for i, r := range All() {
		if !r.Pure() && i%8 != 0 {
			continue // a state of a blend takes long there
		}
		c := r.Critical()
		for _, over := range []float64{1.01, 1.06} {
			p := c.Pressure * quantity.Pressure(over)
			for _, part := range []float64{0.99, 0.997, 0.9995, 1.0005, 1.003, 1.01} {
				s, err := r.State(p, c.Temperature*quantity.Temperature(part))
				if err != nil {
					t.Errorf(
						"%v at %v of its critical pressure and %v of its temperature: %v", r, over,
						part, err,
					)
					continue
				}
				byH, err1 := r.StateAtEnthalpy(p, s.Enthalpy)
				byS, err2 := r.StateAtEntropy(p, s.Entropy)
				if err1 != nil || err2 != nil ||
					math.Abs(float64(byH.Temperature-s.Temperature)) > 1e-6 ||
					math.Abs(float64(byS.Temperature-s.Temperature)) > 1e-6 {
					t.Errorf(
						"%v at %v of its critical pressure, %v: enthalpy leads back to %v, %v, "+
							"entropy to %v, %v",
						r, over, s.Temperature, byH.Temperature, err1, byS.Temperature, err2,
					)
				}
			}
		}
	}
}

// A state of two phases is at the pressure and temperature that it was asked at, so that
// the coldest there is leads back from its enthalpy.
func TestColdestStateLeadsBack(t *testing.T) {
	for _, r := range All() {
		cold := r.Limits().MinTemperature
		p, err := r.BubblePressure(cold)
		if err != nil {
			t.Fatal(err)
		}
		p *= 0.999
		s, err := r.State(p, cold)
		if err != nil || s.Temperature != cold || s.Pressure != p {
			t.Errorf("%v at %v and %v: %+v, %v", r, p, cold, s, err)
		}
		again, err := r.StateAtEnthalpy(p, s.Enthalpy)
		if err != nil || math.Abs(float64(again.Temperature-cold)) > 1e-3 {
			t.Errorf("%v at %v and %v: %v, %v", r, p, s.Enthalpy, again.Temperature, err)
		}
	}
}

// A superheat is counted from the dew point and a subcooling from the bubble
// point, above and below it alike.
func TestSuperheatAndSubcoolingAreSigned(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRefrigerant().Draw(t, "refrigerant")
		p, err := r.DewPressure(saturationTemperature(t, r))
		if err != nil || p > r.Critical().Pressure {
			t.Skip("retrograde")
		}
		off := quantity.KelvinDelta(rapid.Float64Range(-20, 40).Draw(t, "off"))
		dew, err1 := r.DewTemperature(p)
		superheat, err2 := r.Superheat(p, dew.Add(off))
		if err1 != nil || err2 != nil || math.Abs(float64(superheat-off)) > 1e-9 {
			t.Errorf("%v: superheat %v, want %v, %v, %v", r, superheat, off, err1, err2)
		}
		bubble, err := r.BubbleTemperature(p)
		if err != nil {
			return // below the coldest bubble point
		}
		subcooling, err := r.Subcooling(p, bubble.Add(-off))
		if err != nil || math.Abs(float64(subcooling-off)) > 1e-9 {
			t.Errorf("%v: subcooling %v, want %v, %v", r, subcooling, off, err)
		}
	})
}
