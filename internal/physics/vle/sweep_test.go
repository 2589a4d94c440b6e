package vle_test

import (
	"math"
	"os"
	"testing"

	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/internal/tool/verify"
)

// dense asks for the sweep at two hundred temperatures for each blend in place of
// eighteen: SATLINE_DENSE=1 go test ./internal/physics/vle
var dense = os.Getenv("SATLINE_DENSE") != ""

// Every blend has its bubble and dew point everywhere from -60 °C to 0.97 of its
// critical temperature and on to 0.995; both are equilibria, rise with
// temperature, stand in order, and lead back from the pressure.
func TestEveryBlendOverItsRange(t *testing.T) {
	steps := 14
	if dense {
		steps = 200
	}
	systems, order := blendSystems(t)
	if len(order) != 138 {
		t.Fatalf("%d blends", len(order))
	}
	for _, name := range order {
		s := systems[name]
		c, err := s.Critical()
		if err != nil {
			t.Errorf("%s critical point: %v", name, err)
			continue
		}
		temps := []float64{}
		for k := 0; k <= steps; k++ {
			temps = append(temps, 213.15+(0.97*c.T-213.15)*float64(k)/float64(steps))
		}
		temps = append(temps, 0.98*c.T, 0.99*c.T, 0.995*c.T)
		lastBubble, lastDew := 0.0, 0.0
		for _, temp := range temps {
			b, err := s.BubbleT(temp)
			if err != nil {
				t.Errorf("%s bubble at %g of critical: %v", name, temp/c.T, err)
				continue
			}
			d, err := s.DewT(temp)
			if err != nil {
				t.Errorf("%s dew at %g of critical: %v", name, temp/c.T, err)
				continue
			}
			checkEquilibrium(t, name+" bubble", s, b)
			checkEquilibrium(t, name+" dew", s, d)
			if !(d.P > lastDew) || !(b.P > lastBubble || temp > 0.98*c.T) || b.P < d.P*(1-1e-8) {
				t.Errorf(
					"%s at %g K: bubble %g after %g, dew %g after %g", name, temp, b.P, lastBubble,
					d.P, lastDew,
				)
			}
			if s.BeyondEnvelope(temp, b.P) {
				t.Errorf(
					"%s boils at %g K and %g Pa, said to be beyond its envelope", name, temp, b.P,
				)
			}
			lastBubble, lastDew = b.P, d.P
			if temp > 0.985*c.T {
				continue // a pressure past the highest one has two bubble temperatures
			}
			if back, err := s.BubbleP(b.P); err != nil || relative(back.T, temp) > 1e-9 {
				t.Errorf("%s bubble at %g Pa: %g K for %g, %v", name, b.P, back.T, temp, err)
			}
			if back, err := s.DewP(d.P); err != nil || relative(back.T, temp) > 1e-9 {
				t.Errorf("%s dew at %g Pa: %g K for %g, %v", name, d.P, back.T, temp, err)
			}
		}
		hottest, highest, err := s.Extremes()
		if err != nil || hottest < c.T || hottest > 1.01*c.T || highest < c.P ||
			highest > 1.05*c.P {
			t.Errorf("%s: critical %+v, extremes %g K, %g Pa, %v", name, c, hottest, highest, err)
		}
		for _, c := range []struct {
			t, p float64
			want bool
		}{
			{1.001 * hottest, 1e3, true}, {200, 1.001 * highest, true}, {hottest, highest, false},
			{0.8 * c.T, lastBubble, false},
		} {
			if got := s.BeyondEnvelope(c.t, c.p); got != c.want {
				t.Errorf("%s at %g K and %g Pa is beyond its envelope: %v", name, c.t, c.p, got)
			}
		}
		if _, err := s.BubbleT(1.01 * hottest); err != vle.ErrAboveCritical {
			t.Errorf("%s bubble above the two-phase region: %v", name, err)
		}
		if _, err := s.DewP(1.01 * highest); err != vle.ErrAboveCritical {
			t.Errorf("%s dew above the two-phase region: %v", name, err)
		}
	}
}

func TestCriticalPointsOfBlends(t *testing.T) {
	source := verify.Source{
		Cite: "E. W. Lemmon, Int. J. Thermophys. 24, 2003, pp. 991-1006 (maxcondentherm of the " +
			"mixture model of Lemmon and Jacobsen), as reprinted in the fluid files of CoolProp",
		Kind: verify.Published,
	}
	systems, _ := blendSystems(t)
	for _, want := range []struct {
		name string
		t, p float64
	}{{"R-404A", 345.270, 3.7348e6}, {"R-410A", 344.494, 4.9012e6}, {"R-507A", 343.765, 3.7049e6}} {
		c, err := systems[want.name].Critical()
		if err != nil {
			t.Errorf("%s: %v", want.name, err)
			continue
		}
		verify.Value(t, source, want.name+" critical temperature", "K", want.t, c.T, 0.01)
		verify.Relative(t, source, want.name+" critical pressure", "Pa", want.p, c.P, 2e-4)
	}
}

// Towards the critical point the two phases of bubble and dew point become one,
// and their mean density that of the critical point.
func TestPhasesMeetAtCriticalPoint(t *testing.T) {
	systems, order := blendSystems(t)
	for _, name := range order {
		s := systems[name]
		c, err := s.Critical()
		if err != nil {
			t.Fatal(err)
		}
		temp := 0.998 * c.T
		for _, find := range []func(float64) (vle.Point, error){s.BubbleT, s.DewT} {
			pt, err := find(temp)
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			mean := (pt.RhoLiquid + pt.RhoVapor) / 2
			if relative(mean, c.Rho) > 0.1 || math.Log(pt.RhoLiquid/pt.RhoVapor) > 1 {
				t.Errorf(
					"%s at 0.998 of critical: %g and %g mol/m³, critical %g", name, pt.RhoLiquid,
					pt.RhoVapor, c.Rho,
				)
			}
		}
	}
}

// The same by pressure, from that of -60 °C or of what is cold for a blend of a
// low critical temperature: boiling temperatures rise with pressure, and the dew
// point is never below the bubble point.
func TestEveryBlendOverItsPressures(t *testing.T) {
	steps := 20
	if dense {
		steps = 400
	}
	systems, order := blendSystems(t)
	for _, name := range order {
		s := systems[name]
		c, err := s.Critical()
		if err != nil {
			t.Fatal(err)
		}
		cold, err := s.DewT(math.Min(213.15, 0.65*c.T))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		lastBubble, lastDew := 0.0, 0.0
		for k := 0; k <= steps; k++ {
			p := cold.P * math.Pow(0.97*c.P/cold.P, float64(k)/float64(steps))
			b, err := s.BubbleP(p)
			if err != nil {
				t.Errorf("%s bubble at %g Pa: %v", name, p, err)
				continue
			}
			d, err := s.DewP(p)
			if err != nil {
				t.Errorf("%s dew at %g Pa: %v", name, p, err)
				continue
			}
			if !(b.T > lastBubble && d.T > lastDew && d.T >= b.T-1e-6) {
				t.Errorf(
					"%s at %g Pa: bubble %g K after %g, dew %g K after %g", name, p, b.T,
					lastBubble, d.T, lastDew,
				)
			}
			lastBubble, lastDew = b.T, d.T
		}
	}
}
