package coldroom

import (
	"math"
	"testing"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/refrigerant"
)

func fluid(t testing.TB, designation string) *cyclefluid.Fluid {
	t.Helper()
	r, err := refrigerant.Lookup(designation)
	if err != nil {
		t.Fatal(err)
	}
	f, err := cyclefluid.New(r)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func typical(t testing.TB) *sized {
	return size(fluid(t, "R-404A"), machine{
		box: 275.4, difference: 6, bulb: 4.5, gain: 7, overOutdoor: 12, indoorAir: 0.5,
		outdoorAir: 0.5, floor: 300, subcooling: 3, ideal: 0.62, open: 0.6, drop: 0,
		heatLoss: 0.1, valve: true, designDay: designOutdoor,
	})
}

// On its design day a machine runs as it was designed.
func TestDesignDay(t *testing.T) {
	s := typical(t)
	st, _ := s.run(weather{275.4, designOutdoor}, failing{}, nil)
	for _, x := range []struct {
		name            string
		got, want, near float64
	}{
		{"difference", 275.4 - st.evaporating, 6, 0.3},
		{"superheat at the bulb", st.bulb - st.evaporating, 4.5, 0.3},
		{"superheat at the compressor", st.suction - st.evaporating, 11.5, 0.7},
		{"condensing over outdoors", st.condensing - designOutdoor, 12, 0.3},
		{"capacity", st.capacity, 1, 0.02},
	} {
		if math.Abs(x.got-x.want) > x.near {
			t.Errorf("%s %.2f, designed for %.2f", x.name, x.got, x.want)
		}
	}
}

// Each fault moves the readings the way that every technician knows (common practice, no
// source).
func TestFaultsMoveReadings(t *testing.T) {
	s := typical(t)
	w := weather{276, 304}
	base, _ := s.run(w, failing{}, nil)
	evaporating := func(s *state) float64 { return s.evaporating }
	condensing := func(s *state) float64 { return s.condensing }
	superheat := func(s *state) float64 { return s.suction - s.evaporating }
	below := func(s *state) float64 { return s.bubble - s.liquid }
	capacity := func(s *state) float64 { return s.capacity }
	for _, x := range []struct {
		name  string
		fails failing
		of    func(*state) float64
		up    bool
	}{
		{"short: evaporating", failing{dry: 1, short: 0.05}, evaporating, false},
		{"short: superheat", failing{dry: 1, short: 0.05}, superheat, true},
		{"short: subcooling", failing{dry: 1, short: 0.05}, below, false},
		{"flooded: condensing", failing{flooded: 0.4}, condensing, true},
		{"flooded: subcooling", failing{flooded: 0.4}, below, true},
		{"gas: condensing", failing{gas: 6}, condensing, true},
		{"dirty condenser: condensing", failing{outdoor: 0.5}, condensing, true},
		{"ice: evaporating", failing{indoor: 0.5, ice: 0.4}, evaporating, false},
		{"choked: superheat", failing{choked: 0.75}, superheat, true},
		{"choked: evaporating", failing{choked: 0.75}, evaporating, false},
		{"starving: capacity", failing{starving: 0.6}, capacity, false},
		{"floods: superheat", failing{floods: 6}, superheat, false},
		{"leaks: evaporating", failing{leaks: 0.4}, evaporating, true},
		{"leaks: capacity", failing{leaks: 0.4}, capacity, false},
		{"leaks: condensing", failing{leaks: 0.4}, condensing, false},
	} {
		st, _ := s.run(w, x.fails, nil)
		if !st.converged {
			t.Errorf("%s: not solved", x.name)
		}
		if up := x.of(&st) > x.of(&base); up != x.up {
			t.Errorf("%s: %.2f after %.2f", x.name, x.of(&st), x.of(&base))
		}
	}
}

// In the cold the control holds the head, and without it the head falls.
func TestHeadPressureControl(t *testing.T) {
	s := typical(t)
	held, _ := s.run(weather{275.4, 272}, failing{}, nil)
	if math.Abs(held.condensing-300) > 2 {
		t.Errorf("held at %.1f K, set at 300 K", held.condensing)
	}
	free, _ := s.run(weather{275.4, 272}, failing{noFloor: true}, nil)
	if free.condensing > held.condensing-5 {
		t.Errorf("%.1f K without a control, %.1f K with it", free.condensing, held.condensing)
	}
}

// Nearly every machine of every cause is solved, in every application and weather.
func TestEveryMachineIsSolved(t *testing.T) {
	fluids := []string{"R-404A", "R-449A", "R-134a", "R-290"}
	if testing.Short() {
		fluids = fluids[:1]
	}
	for _, designation := range fluids {
		f := fluid(t, designation)
		for a := coldroom.WalkInCooler; a <= coldroom.WorkRoom; a++ {
			u := coldroom.Room{Application: a}.Usual(nil)
			for _, outdoor := range []float64{262, 288, 312} {
				solved, all := 0, 0
				for i := range samples {
					m := size(f, sampled(i, &u, i%2 == 0, true))
					w := weather{m.box, outdoor}
					base, start := m.run(w, failing{}, nil)
					for _, c := range causes {
						for _, x := range c.sizes {
							st, _ := m.run(w, x, &start)
							all++
							solved += one(st.converged && base.converged)
						}
					}
				}
				if solved < all*97/100 {
					t.Errorf("%s, %v, %.0f K: %d of %d solved", designation, a, outdoor, solved, all)
				}
			}
		}
	}
}

func BenchmarkJudge(b *testing.B) {
	f := fluid(b, "R-404A")
	u := coldroom.Room{Application: coldroom.WalkInCooler}.Usual(nil)
	for b.Loop() {
		clusters(f, &u, true, weather{276, 304}, weather{0.3, 0.3})
	}
}
