package cycle

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/base/nearest"
	"github.com/satline/satline/quantity"
)

// HeatingReadings are what was read of a machine that heats, each with its standard
// uncertainty; what was not read is nil.
type HeatingReadings struct {
	Evaporating, Condensing *quantity.Uncertain[quantity.Temperature]
	Superheat, Subcooling   *quantity.Uncertain[quantity.TemperatureDelta]
	Supply                  *quantity.Uncertain[quantity.Temperature]
	Power                   *quantity.Uncertain[quantity.Power]
}

// What a machine may differ in from the one of its spec, as natural logarithms, and by how
// much one of its kind does, one standard deviation: common practice, no source.
var heatingSpreads = [...]float64{
	0.25, // conductance of the outdoor coil
	0.20, // of the indoor coil
	0.10, // what the compressor pumps
	0.12, // the charge
	0.10, // the work of the compressor
	0.20, // the size of the metering device
}

// Fit returns the machine that comes nearest to what was read under conditions c, held
// towards the ordinary one by how much machines of a kind differ.
// Solve of it tells what that machine does in other weather. The more was read the better;
// without any reading it is h. The error is a *RangeError or ErrNoSystem.
func (h *Reversed) Fit(c HeatingConditions, r HeatingReadings) (*Reversed, error) {
	if h == nil || h.plant.fluid == nil {
		return nil, ErrNoSystem
	}
	misses := func(by []float64) ([]float64, error) { return h.misses(by, c, r) }
	most := make([]float64, len(heatingSpreads))
	for i, spread := range heatingSpreads {
		most[i] = 2.5 * spread
	}
	by, err := nearest.Find(misses, most)
	if err != nil {
		return nil, err
	}
	out := h.differing(by)
	others, err := nearest.Around(misses, by)
	for _, other := range others {
		out.others = append(out.others, h.differing(other))
	}
	return out, err
}

// differing is h with its differences.
func (h *Reversed) differing(by []float64) *Reversed {
	out := *h
	out.others = nil
	p := &out.plant
	p.evaporator.airUA *= math.Exp(by[0])
	p.evaporator.refUA *= math.Exp(by[0])
	p.condenser.airUA *= math.Exp(by[1])
	p.condenser.refUA *= math.Exp(by[1])
	p.flowScale *= math.Exp(by[2])
	p.correct += h.total * math.Expm1(by[3])
	p.workScale *= math.Exp(by[4])
	p.device.size *= math.Exp(by[5])
	return &out
}

// misses is by how many standard deviations the machine misses each reading, and each
// difference the ordinary machine.
func (h *Reversed) misses(
	by []float64, c HeatingConditions, r HeatingReadings,
) ([]float64, error) {
	o, err := h.differing(by).Solve(c, Faults{})
	if err != nil {
		return nil, err
	}
	var out []float64
	add := func(is, read, std, least float64) { out = append(out, (is-read)/math.Max(std, least)) }
	for _, x := range []struct {
		is quantity.Temperature
		of *quantity.Uncertain[quantity.Temperature]
	}{{o.Evaporating, r.Evaporating}, {o.Condensing, r.Condensing}, {o.Supply, r.Supply}} {
		if x.of == nil {
			continue
		}
		if err := limit.Within(
			"temperature read", x.of.Value, quantity.Fahrenheit(-60), quantity.Fahrenheit(200),
			"in heating",
		); err != nil {
			return nil, err
		}
		add(float64(x.is), float64(x.of.Value), x.of.Std, 0.2)
	}
	for _, x := range []struct {
		is quantity.TemperatureDelta
		of *quantity.Uncertain[quantity.TemperatureDelta]
	}{{o.Superheat, r.Superheat}, {o.Subcooling, r.Subcooling}} {
		if x.of == nil {
			continue
		}
		if err := limit.Within(
			"superheat or subcooling read", x.of.Value, quantity.FahrenheitDelta(-40),
			quantity.FahrenheitDelta(120), "in heating",
		); err != nil {
			return nil, err
		}
		add(float64(x.is), float64(x.of.Value), x.of.Std, 0.2)
	}
	if r.Power != nil {
		if err := limit.Within(
			"power read", r.Power.Value, quantity.Watts(10), quantity.Kilowatts(1000),
			"of compressor and fans",
		); err != nil {
			return nil, err
		}
		add(float64(o.Power), float64(r.Power.Value), r.Power.Std, 0.01*float64(r.Power.Value))
	}
	for i, spread := range heatingSpreads {
		out = append(out, by[i]/spread)
	}
	return out, nil
}
