package refrigerant

import (
	"errors"
	"math"
	"slices"

	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/quantity"
)

// A LeakCase is a charge that leaks while it stands at one temperature.
type LeakCase struct {
	Temperature quantity.Temperature `json:"temperature"`
	// From is what escapes: Vapor, as from a fitting above the liquid or a unit
	// that is off, or Liquid.
	From Phase `json:"from"`
	// Level is the share of the volume that liquid fills before the leak, above
	// 0 and below 1. Zero stands for one half.
	Level float64 `json:"level,omitzero"`
	// Lost are the shares of the charge at which to report, ascending, from 0
	// up to 0.99.
	Lost []float64 `json:"lost,omitempty"`
}

// A LeakStep is a charge after part of it has leaked. Its JSON form is for a record and is
// not read back: what remains is a fluid that has no designation to look up. Run the
// LeakCase again, which does read back.
type LeakStep struct {
	Lost float64 `json:"lost"` // share of the mass of the charge
	// Remaining is what is left, liquid and vapor together, as a fluid of its
	// own.
	Remaining *Refrigerant `json:"remaining"`
	// Leaked is the mean composition of what has escaped; empty where nothing
	// has.
	Leaked []Component `json:"leaked,omitempty"`
	// Pressure is what a gauge shows at the temperature of the case.
	Pressure quantity.Pressure `json:"pressure"`
	// BubbleShift and DewShift are how far the saturation temperatures of what
	// remains are from those of the fresh blend at the pressures that the fresh
	// one has at the temperature of the case: the error of subcooling and
	// superheat read from the chart of the fresh blend.
	BubbleShift quantity.TemperatureDelta `json:"bubbleShift"`
	DewShift    quantity.TemperatureDelta `json:"dewShift"`
}

// ErrLeakPhase is returned for a LeakCase that leaks from neither Liquid nor
// Vapor.
var ErrLeakPhase = errors.New("a leak is from refrigerant.Liquid or refrigerant.Vapor")

// leakStride is the largest share of the charge removed before equilibrium is
// found anew, and componentStride the largest share of what is left of any one
// component: of carbon dioxide little is left long before the charge is gone.
// Removal follows the midpoint rule, so the error in a mass fraction falls with the
// square of the stride. Of less than trace nobody keeps account, but vestige stays, in
// shares of the charge: the solvers know no component that is not there.
const (
	leakStride      = 0.01
	componentStride = 0.3
	trace           = 1e-8
	vestige         = 1e-12
)

// Leak follows the composition of a charge as it leaks: differential
// distillation (Lord Rayleigh, "On the distillation of binary mixtures",
// Phil. Mag. 4 (1902) 521-537) in a vessel of constant volume and temperature,
// in which liquid and vapor stay in equilibrium and one of them escapes. Vapor
// that leaves a zeotropic blend is richer in the volatile components, so what
// stays behind boils at a lower pressure, and a flammable component may gather.
//
// A leak while the unit runs, or from a place that sees liquid and vapor in turn,
// lies between the two cases. What a technician can take from this: after a large
// vapor loss, recover what is left and weigh in a fresh charge instead of
// topping off. The unit's manual decides.
//
// Errors are *RangeError, ErrLeakPhase, or within a degree of the critical
// temperature ErrUnsolved.
func (r *Refrigerant) Leak(c LeakCase) ([]LeakStep, error) {
	if c.From != Liquid && c.From != Vapor {
		return nil, ErrLeakPhase
	}
	level := c.Level
	if level == 0 {
		level = 0.5
	}
	if !(level > 0 && level < 1) {
		return nil, fractionError(
			"liquid level before the leak", level, 0, 1,
			"give the share of the volume that is liquid",
		)
	}
	last := 0.0
	for _, lost := range c.Lost {
		if !(lost >= last && lost <= 0.99) {
			return nil, fractionError(
				"share of the charge lost", lost, last, 0.99,
				"give shares in ascending order, up to 0.99",
			)
		}
		last = lost
	}
	fresh, err := r.freshSaturation(c.Temperature)
	if err != nil {
		return nil, err
	}
	v, err := newVessel(r, float64(c.Temperature), level)
	if err != nil {
		return nil, err
	}
	steps := make([]LeakStep, 0, len(c.Lost))
	lost := 0.0
	for _, target := range c.Lost {
		for lost < target {
			strides := math.Ceil((target - lost) / v.stride(c.From))
			next := lost + (target-lost)/strides
			if err := v.lose(next-lost, c.From); err != nil {
				return nil, r.unsolved("leak", err)
			}
			lost = next
		}
		step, err := v.report(r, target, fresh)
		if err != nil {
			return nil, err
		}
		steps = append(steps, step)
	}
	return steps, nil
}

// freshSaturation is what the chart of the unleaked blend says at one
// temperature.
type freshSaturation struct {
	temperature quantity.Temperature
	bubble, dew quantity.Pressure
}

func (r *Refrigerant) freshSaturation(t quantity.Temperature) (freshSaturation, error) {
	bubble, err := r.BubblePressure(t)
	if err != nil {
		return freshSaturation{}, err
	}
	dew, err := r.DewPressure(t)
	return freshSaturation{t, bubble, dew}, err
}

// A vessel holds what is left of one kilogram of charge in a constant volume.
type vessel struct {
	q           *equation
	temperature float64
	molarMass   []float64 // kg/mol, of each component
	volume      float64   // m³
	mass, start []float64 // of each component
	now         vle.Vessel
}

func newVessel(r *Refrigerant, t, level float64) (*vessel, error) {
	q, err := r.equation()
	if err != nil {
		return nil, err
	}
	v := &vessel{q: q, temperature: t}
	for i, c := range r.parts {
		v.molarMass = append(v.molarMass, q.model.Fluid(i).MolarMass)
		v.mass = append(v.mass, c.MassFraction)
	}
	v.start = slices.Clone(v.mass)
	if v.now, err = q.system.FillVessel(t, level); err != nil {
		return nil, r.unsolved("leak", err)
	}
	held := 0.0 // per m³
	for i, m := range v.molarMass {
		held += m * (v.now.LiquidShare*v.now.Liquid[i] + (1-v.now.LiquidShare)*v.now.Vapor[i])
	}
	v.volume = 1 / held
	return v, nil
}

// leaving is the share of each component in the mass of what escapes now.
func (v *vessel) leaving(from Phase) vle.Composition {
	escaping := v.now.Vapor
	if from == Liquid && v.now.LiquidShare > 0 {
		escaping = v.now.Liquid
	}
	sum := 0.0
	for i, m := range v.molarMass {
		escaping[i] *= m
		sum += escaping[i]
	}
	for i := range escaping {
		escaping[i] /= sum
	}
	return escaping
}

// stride is the largest share of the charge to let escape at once.
func (v *vessel) stride(from Phase) float64 {
	most := leakStride
	escaping := v.leaving(from)
	for i, m := range v.mass {
		if m > trace {
			most = min(most, componentStride*m/escaping[i])
		}
	}
	return most
}

// lose lets the share of the charge escape, by the midpoint rule: what leaves has
// the composition found when half of it has left.
func (v *vessel) lose(share float64, from Phase) error {
	before := slices.Clone(v.mass)
	for _, part := range [...]float64{share / 2, share} {
		escaping := v.leaving(from)
		var contents vle.Composition
		for i, m := range v.molarMass {
			v.mass[i] = max(before[i]-part*escaping[i], min(before[i], vestige))
			contents[i] = v.mass[i] / m / v.volume
		}
		now, err := v.q.system.SettleVessel(v.temperature, contents, v.now)
		if err != nil {
			return err
		}
		v.now = now
	}
	return nil
}

// report describes what is left.
func (v *vessel) report(r *Refrigerant, lost float64, fresh freshSaturation) (LeakStep, error) {
	s := LeakStep{Lost: lost, Pressure: quantity.Pascals(v.now.P)}
	left, gone := make([]Component, len(v.mass)), make([]Component, len(v.mass))
	for i, c := range r.parts {
		left[i] = Component{c.Designation, v.mass[i]}
		gone[i] = Component{c.Designation, v.start[i] - v.mass[i]}
	}
	if lost > 0 {
		for i := range gone {
			gone[i].MassFraction /= lost
		}
		s.Leaked = gone
	}
	var err error
	if s.Remaining, err = newMixture("what is left of "+r.designation, left); err != nil {
		return s, err
	}
	bubble, err := s.Remaining.BubbleTemperature(fresh.bubble)
	if err != nil {
		return s, err
	}
	dew, err := s.Remaining.DewTemperature(fresh.dew)
	if err != nil {
		return s, err
	}
	s.BubbleShift, s.DewShift = bubble.Sub(fresh.temperature), dew.Sub(fresh.temperature)
	return s, nil
}
