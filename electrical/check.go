package electrical

import (
	"fmt"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// check refuses what no meter shows on such a machine.
func (r *Readings) check() error {
	var c checker
	c.nameplate(&r.Nameplate)
	for _, s := range []struct {
		name string
		of   []volts
	}{
		{"supply voltage at rest", r.Supply.AtRest}, {"supply voltage running", r.Supply.Running},
		{"supply voltage starting", r.Supply.Starting},
	} {
		phases(&c, s.name, s.of, r.Nameplate.Phases, largestVoltage,
			"give one, or with three phases L1-L2, L2-L3 and L3-L1")
	}
	stated(&c, "rated control voltage", r.Control.Rated, 5, 250, "it is usually 24 V")
	const atCoil = "it is the voltage of the control circuit"
	taken(&c, "voltage of the transformer", r.Control.Transformer, 300, atCoil)
	taken(&c, "voltage at the contactor's coil", r.Control.Coil, 300, atCoil)
	c.count("switches", len(r.Control.Across), 50)
	for i := range r.Control.Across {
		s := &r.Control.Across[i]
		if _, err := s.Switch.MarshalText(); err != nil {
			c.fail(err)
		}
		if s.Switch == 0 {
			c.fail(&RangeError{Quantity: "switch", Value: s.Switch, Advice: "name the switch"})
		}
		taken(&c, "voltage across a switch", &s.Voltage, 300, atCoil)
	}
	c.count("poles of the contactor", len(r.Contactor.Drops), 4)
	for i := range r.Contactor.Drops {
		taken(&c, "drop across a contact", &r.Contactor.Drops[i], largestVoltage,
			"it is read from line to load of one pole")
	}
	c.motor("compressor", &r.Compressor, r.Nameplate.Phases)
	c.motor("outdoor fan", &r.OutdoorFan, r.Nameplate.Phases)
	c.motor("indoor fan", &r.IndoorFan, r.Nameplate.Phases)
	return c.err
}

// A checker keeps the first thing that is wrong.
type checker struct{ err error }

func (c *checker) fail(err error) {
	if c.err == nil {
		c.err = err
	}
}

func (c *checker) count(name string, n, most int) {
	if n > most {
		c.fail(&RangeError{Quantity: "number of " + name, Value: quantity.Number(n),
			Min: quantity.Number(0), Max: quantity.Number(most), Advice: "leave out the rest"})
	}
}

func (c *checker) nameplate(n *Nameplate) {
	const advice = "read it on the unit's label, or leave it out"
	stated(c, "rated voltage", n.Voltage, 100, 700, advice)
	stated(c, "higher rated voltage", n.HighVoltage, 100, 700, advice)
	stated(c, "lowest voltage of the label", n.MinVoltage, 80, 700, advice)
	stated(c, "highest voltage of the label", n.MaxVoltage, 100, 800, advice)
	if n.MinVoltage > 0 && n.MaxVoltage > 0 && n.MinVoltage >= n.MaxVoltage {
		c.fail(&RangeError{Quantity: "lowest voltage of the label", Value: n.MinVoltage,
			Max: n.MaxVoltage, Advice: "it lies below the highest one"})
	}
	stated(c, "frequency of the supply", n.Frequency, leastFrequency, mostFrequency,
		"it is 50 Hz or 60 Hz")
	if n.Phases != 0 && n.Phases != 1 && n.Phases != 3 {
		c.fail(&RangeError{Quantity: "number of phases", Value: quantity.Number(n.Phases),
			Min: quantity.Number(1), Max: quantity.Number(3), Advice: "it is 1 or 3"})
	}
}

func (c *checker) motor(name string, m *Motor, ph int) {
	if _, err := m.State.MarshalText(); err != nil {
		c.fail(err)
	}
	taken(c, "voltage at the terminals of the "+name, m.AtTerminals, largestVoltage,
		"it is read at the wires of the motor")
	if name != "compressor" && len(m.Currents) == 1 {
		ph = 0 // a fan of one phase in a machine of three
	}
	phases(c, "current of the "+name, m.Currents, ph, largestCurrent,
		"give one, or those of the three lines")
	const advice = "read it on the label, or leave it out"
	stated(c, "rated current of the "+name, m.RatedLoad, 0.05, 1000, advice)
	stated(c, "largest continuous current of the "+name, m.MaxContinuous, 0.05, 1500, advice)
	stated(c, "locked-rotor current of the "+name, m.LockedRotor, 0.1, 10000, advice)
	c.capacitor(name, m.RunCapacitor)
	c.capacitor(name, m.StartCapacitor)
	const atTerminal = "for an open line write the end of the meter's range"
	taken(c, "insulation of the "+name, m.ToGround, largestResistance, atTerminal)
	if w := m.Windings; w != nil {
		for _, u := range []*ohms{w.CommonRun, w.CommonStart, w.StartRun} {
			taken(c, "winding of the "+name, u, largestResistance, atTerminal)
		}
		if n := len(w.Lines); n != 0 && n != 3 {
			c.fail(&RangeError{Quantity: "number of windings between lines",
				Value: quantity.Number(n), Min: quantity.Number(3), Max: quantity.Number(3),
				Advice: "give T1-T2, T2-T3 and T3-T1, or none"})
		}
		for i := range w.Lines {
			taken(c, "winding of the "+name, &w.Lines[i], largestResistance, atTerminal)
		}
	}
}

func (c *checker) capacitor(name string, p *Capacitor) {
	if p == nil {
		return
	}
	within := func(err error) {
		if err != nil {
			c.fail(err)
		}
	}
	within(limit.Within("rated capacitance for the "+name, p.Rated, 1e-7, largestCapacitance,
		"read it on the capacitor's label, the section of this motor"))
	within(limit.Within("tolerance below", p.Below, 0, 0.5, "6 % is written \"6 %\""))
	within(limit.Within("tolerance above", p.Above, 0, 0.5, "6 % is written \"6 %\""))
	stated(c, "rated voltage of the capacitor", p.RatedVoltage, 50, 1000, "read it on its label")
	taken(c, "capacitance for the "+name, p.Measured, largestCapacitance,
		"read it discharged, its wires off")
	taken(c, "current of the capacitor", p.Current, largestCurrent,
		"it is that of the one wire to the capacitor")
	if p.Voltage != nil {
		within(limit.Reading("voltage across the capacitor", *p.Voltage, 10, largestVoltage,
			"it is read while the motor runs"))
	}
}

// stated checks a figure of a label; zero is not stated.
func stated[T quantity.Quantity](c *checker, name string, v, low, high T, advice string) {
	if v != 0 {
		if err := limit.Within(name, v, low, high, advice); err != nil {
			c.fail(err)
		}
	}
}

// taken checks a reading that may not have been taken.
func taken[T quantity.Quantity](
	c *checker, name string, u *quantity.Uncertain[T], high T, advice string,
) {
	if u != nil {
		if err := limit.Reading(name, *u, 0, high, advice); err != nil {
			c.fail(err)
		}
	}
}

// phases checks the readings of one or three phases.
func phases[T quantity.Quantity](
	c *checker, name string, of []quantity.Uncertain[T], ph int, high T, advice string,
) {
	want := ph
	if ph == 0 && len(of) != 3 {
		want = 1
	}
	if n := len(of); n != 0 && n != want && !(ph == 0 && n == 3) {
		c.fail(&RangeError{Quantity: fmt.Sprintf("number of readings of %s", name),
			Value: quantity.Number(n), Min: quantity.Number(want), Max: quantity.Number(want),
			Advice: advice})
	}
	for i := range of {
		taken(c, name, &of[i], high, advice)
	}
}
