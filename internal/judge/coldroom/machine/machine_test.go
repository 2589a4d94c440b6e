package machine

import (
	"math"
	"testing"

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

func typical(t testing.TB, designation string) *Machine {
	return New(fluid(t, designation), Design{
		Box: 275.4, Difference: 6, Bulb: 4.5, Gain: 7, OverOutdoor: 12, IndoorAir: 0.5,
		OutdoorAir: 0.5, Floor: 300, Subcooling: 3, Ideal: 0.62, Open: 0.6, Drop: 0,
		HeatLoss: 0.1, Valve: true, DesignDay: HotDay, DryEnd: 0.3, Follows: 0.2,
	})
}

// On its design day a machine runs as it was designed, also with a blend whose dew point is some K
// over the mean temperature at which it boils.
func TestDesignDay(t *testing.T) {
	for _, designation := range []string{"R-404A", "R-448A", "R-407A", "R-290"} {
		s := typical(t, designation)
		st, _ := s.Run(Weather{275.4, HotDay}, Failing{}, nil)
		for _, x := range []struct {
			name            string
			got, want, near float64
		}{
			{"difference", 275.4 - st.Evaporating, 6, 0.3},
			{"superheat at the bulb", st.Bulb - st.Evaporating, 4.5, 0.3},
			{"superheat at the compressor", st.Suction - st.Evaporating, 11.5, 0.7},
			{"condensing over outdoors", st.Condensing - HotDay, 12, 0.3},
			{"capacity", st.Capacity, 1, 0.02},
		} {
			if math.Abs(x.got-x.want) > x.near {
				t.Errorf("%s: %s %.2f, designed for %.2f", designation, x.name, x.got, x.want)
			}
		}
	}
}

// Each fault moves the readings the way that every technician knows (common practice, no
// source).
func TestFaultsMoveReadings(t *testing.T) {
	s := typical(t, "R-404A")
	w := Weather{276, 304}
	base, _ := s.Run(w, Failing{}, nil)
	evaporating := func(s *State) float64 { return s.Evaporating }
	condensing := func(s *State) float64 { return s.Condensing }
	superheat := func(s *State) float64 { return s.Suction - s.Evaporating }
	hot := func(s *State) float64 { return s.Discharge }
	below := func(s *State) float64 { return s.Bubble - s.Liquid }
	capacity := func(s *State) float64 { return s.Capacity }
	for _, x := range []struct {
		name  string
		fails Failing
		of    func(*State) float64
		up    bool
	}{
		{"short: evaporating", Failing{Dry: 1, Short: 0.05}, evaporating, false},
		{"short: superheat", Failing{Dry: 1, Short: 0.05}, superheat, true},
		{"short: subcooling", Failing{Dry: 1, Short: 0.05}, below, false},
		{"flooded: condensing", Failing{Flooded: 0.4}, condensing, true},
		{"flooded: subcooling", Failing{Flooded: 0.4}, below, true},
		{"gas: condensing", Failing{Gas: 6}, condensing, true},
		{"gas: discharge", Failing{Gas: 6}, hot, true},
		{"gas: capacity", Failing{Gas: 6}, capacity, false},
		{"dirty condenser: condensing", Failing{Outdoor: 0.5}, condensing, true},
		{"ice: evaporating", Failing{Indoor: 0.5, Ice: 0.4}, evaporating, false},
		{"choked: superheat", Failing{Choked: 0.75}, superheat, true},
		{"choked: evaporating", Failing{Choked: 0.75}, evaporating, false},
		{"starving: capacity", Failing{Starving: 0.6}, capacity, false},
		{"floods: superheat", Failing{Floods: 6}, superheat, false},
		{"leaks: evaporating", Failing{Leaks: 0.4}, evaporating, true},
		{"leaks: capacity", Failing{Leaks: 0.4}, capacity, false},
		{"leaks: condensing", Failing{Leaks: 0.4}, condensing, false},
	} {
		st, _ := s.Run(w, x.fails, nil)
		if !st.Converged {
			t.Errorf("%s: not solved", x.name)
		}
		if up := x.of(&st) > x.of(&base); up != x.up {
			t.Errorf("%s: %.2f after %.2f", x.name, x.of(&st), x.of(&base))
		}
	}
}

// In the cold the control holds the head, and without it the head falls.
func TestHeadPressureControl(t *testing.T) {
	s := typical(t, "R-404A")
	held, _ := s.Run(Weather{275.4, 272}, Failing{}, nil)
	if math.Abs(held.Condensing-300) > 2 {
		t.Errorf("held at %.1f K, set at 300 K", held.Condensing)
	}
	free, _ := s.Run(Weather{275.4, 272}, Failing{NoFloor: true}, nil)
	if free.Condensing > held.Condensing-5 {
		t.Errorf("%.1f K without a control, %.1f K with it", free.Condensing, held.Condensing)
	}
}
