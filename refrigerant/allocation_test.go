//go:build !race

package refrigerant

import "testing"

// The race detector empties pools at random, so this holds without it.

// What is asked in loops allocates nothing.
func TestNoAllocation(t *testing.T) {
	r := mustLookup(t, "R-454B")
	leaked, err := NewBlend("leaked", []Component{{"R-32", 0.6}, {"R-1234yf", 0.4}})
	if err != nil {
		t.Fatal(err)
	}
	states, err := r.StateTable()
	if err != nil {
		t.Fatal(err)
	}
	line, err := states.Isobar(8e5)
	if err != nil {
		t.Fatal(err)
	}
	for name, f := range map[string]func() error{
		"DewTemperature":             func() error { return second(r.DewTemperature(8e5)) },
		"BubblePressure":             func() error { return second(r.BubblePressure(290)) },
		"Superheat":                  func() error { return second(r.Superheat(8e5, 290)) },
		"State of vapor":             func() error { return second(r.State(5e5, 300)) },
		"State of liquid":            func() error { return second(r.State(3e6, 300)) },
		"State above the envelope":   func() error { return second(r.State(9e6, 400)) },
		"StateAtEnthalpy":            func() error { return second(r.StateAtEnthalpy(5e5, 560e3)) },
		"StateAtEntropy":             func() error { return second(r.StateAtEntropy(5e5, 2.2e3)) },
		"vapor from the table":       func() error { return second(states.At(5e5, 300)) },
		"an isobar":                  func() error { return second(states.Isobar(5e5)) },
		"an isobar at an enthalpy":   func() error { return second(line.AtEnthalpy(560e3)) },
		"an isobar at an entropy":    func() error { return second(line.AtEntropy(2.2e3)) },
		"two phases at an enthalpy":  func() error { return second(r.StateAtEnthalpy(8e5, 300e3)) },
		"two phases at an entropy":   func() error { return second(r.StateAtEntropy(8e5, 1.4e3)) },
		"two phases at a quality":    func() error { return second(r.StateAtQuality(8e5, 0.3)) },
		"dew point of a blend":       func() error { return second(leaked.DewTemperature(8e5)) },
		"bubble pressure of a blend": func() error { return second(leaked.BubblePressure(290)) },
	} {
		if err := f(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		// Pools may be emptied by the collector between runs, so the mean counts.
		if n := testing.AllocsPerRun(200, func() { f() }); n >= 1 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}
