package electrical

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// The limits of readings; wide, and what no air conditioner is beyond.
const (
	largestVoltage     = quantity.Voltage(1000)
	largestCurrent     = quantity.Current(2000)
	largestCapacitance = quantity.Capacitance(5e-3)
	largestResistance  = quantity.Resistance(1e13)
)

// CapacitanceUnderLoad returns the capacitance that draws a current at a voltage and
// frequency: C = I / (2π f V), for each ampere 2,653 µF over the voltage at 60 Hz. Both are
// read while the motor runs: the current in the wire to the capacitor, the voltage across it.
// The error is a *RangeError: a current below 0 A or above 2,000 A, a voltage below 10 V or
// above 1,000 V, a frequency below 45 Hz or above 65 Hz.
func CapacitanceUnderLoad(
	current quantity.Uncertain[quantity.Current], voltage quantity.Uncertain[quantity.Voltage],
	frequency quantity.Frequency,
) (quantity.Uncertain[quantity.Capacitance], error) {
	var none quantity.Uncertain[quantity.Capacitance]
	if err := limit.Reading("current of a capacitor", current, 0, largestCurrent,
		"it is that of the one wire to the capacitor"); err != nil {
		return none, err
	}
	if err := limit.Reading("voltage across a capacitor", voltage, 10, largestVoltage,
		"it is read while the motor runs"); err != nil {
		return none, err
	}
	if err := limit.Within("frequency of the supply", frequency, leastFrequency, mostFrequency,
		"it is 50 Hz or 60 Hz"); err != nil {
		return none, err
	}
	slope := 1 / (2 * math.Pi * float64(frequency) * float64(voltage.Value))
	c := float64(current.Value) * slope
	std := math.Hypot(current.Std*slope, c*voltage.Std/float64(voltage.Value))
	return quantity.Farads(c).PlusMinus(quantity.Farads(std)), nil
}

const (
	leastFrequency, mostFrequency = quantity.Frequency(45), quantity.Frequency(65)
	usualFrequency                = quantity.Frequency(60)
)

// tolerance of a capacitor, by its label or as is usual (common practice).
func (c *Capacitor) tolerance(start bool) (below, above quantity.Ratio, from fact.Source) {
	switch {
	case c.Below != 0 || c.Above != 0:
		return c.Below, c.Above, label
	case start:
		return 0, 0.2, practice
	}
	return 0.06, 0.06, practice
}

func (j *judge) capacitor(part string, c *Capacitor, start bool) {
	which := termValue("kind", "capacitor.run")
	if start {
		which = termValue("kind", "capacitor.start")
	}
	rated := fact.Amount("rated", c.Rated)
	if c.Bulged {
		j.add(part, "electrical.capacitor-bulged", which, rated)
		j.does(mendCapacitor, which, rated, partValue(part))
	}
	if c.RatedVoltage > 0 && c.Voltage != nil &&
		sideOf(sureVolts(*c.Voltage), quantity.Voltage(none), c.RatedVoltage*1.1) == above {
		j.add(part, "electrical.capacitor-voltage", which, rated,
			fact.Amount("measured", c.Voltage.Value), fact.Amount("limit", c.RatedVoltage))
		j.does(mendCapacitor, which, rated, partValue(part))
	}
	if c.Measured != nil {
		j.microfarads(part, c, start, which, *c.Measured, "capacitor.by-meter")
	}
	if c.Current == nil || c.Voltage == nil {
		return
	}
	f := j.r.Nameplate.Frequency
	if f == 0 {
		f = usualFrequency
	}
	loaded, err := CapacitanceUnderLoad(sureAmperes(*c.Current), sureVolts(*c.Voltage), f)
	if err == nil {
		j.microfarads(part, c, start, which, loaded, "capacitor.under-load")
	}
}

func (j *judge) microfarads(
	part string, c *Capacitor, start bool, which fact.Value, measured farads, how string,
) {
	less, more, from := c.tolerance(start)
	low, high := c.Rated*quantity.Capacitance(1-less), c.Rated*quantity.Capacitance(1+more)
	code := map[side]fact.Code{
		within: "electrical.capacitor-within", near: "electrical.capacitor-near",
		below: "electrical.capacitor-weak", above: "electrical.capacitor-high",
	}[sideOf(sureFarads(measured), low, high)]
	rated := fact.Amount("rated", c.Rated)
	j.add(part, code, which, rated, termValue("how", how), fact.Amount("measured", measured.Value),
		fact.Amount("low", low), fact.Amount("high", high))
	j.from(from)
	if kinds[code].outcome == fact.Wrong {
		j.does(mendCapacitor, which, rated, partValue(part))
	}
}
