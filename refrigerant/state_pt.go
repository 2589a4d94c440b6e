package refrigerant

import (
	"math"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/quantity"
)

// SaturatedLiquid returns the state of liquid r at its bubble point at t. The
// range and errors are those of BubblePressure.
func (r *Refrigerant) SaturatedLiquid(t quantity.Temperature) (State, error) {
	return r.saturatedState(table.Bubble, t)
}

// SaturatedVapor returns the state of vapor r at its dew point at t. The range
// and errors are those of DewPressure.
func (r *Refrigerant) SaturatedVapor(t quantity.Temperature) (State, error) {
	return r.saturatedState(table.Dew, t)
}

// saturatedState takes pressure and density from the table and the rest from the
// equation at that density.
func (r *Refrigerant) saturatedState(e table.Edge, t quantity.Temperature) (State, error) {
	q, err := r.equation()
	if err != nil {
		return State{}, err
	}
	p, _ := r.table().At(table.BubblePressure+table.Curve(e), float64(t))
	rho, ok := r.table().At(table.BubbleDensity+table.Curve(e), float64(t))
	v := saturated{temperature: float64(t), pressure: p, density: rho}
	if !ok {
		if v, err = r.solveSaturation(e, t); err != nil {
			return State{}, err
		}
	}
	return q.onEdge(e, &v), nil
}

// onEdge returns the whole state of one edge of the two-phase region.
func (q *equation) onEdge(e table.Edge, v *saturated) State {
	phase, quality := Liquid, 0.0
	if e == table.Dew {
		phase, quality = Vapor, 1
	}
	m := q.model.At(v.temperature, v.density*q.perMass)
	s := q.state(&m, phase, quality)
	s.Pressure = quantity.Pressure(v.pressure)
	if t := s.Temperature; q.isClosed(e, t) {
		s.Cp = q.closingCp(e, t)
	}
	return s
}

// closingCp is the heat capacity on an edge that is closed, where the equation is as
// good as unstable. It goes with the inverse of the distance from the critical point, as
// every analytic equation has it, to a thousand times that where it closes, for at the point
// itself it has no bound.
func (q *equation) closingCp(e table.Edge, t quantity.Temperature) quantity.SpecificHeat {
	ends, err := q.ends[e]()
	if err != nil {
		return 0 // the edge was continued from the same ends
	}
	m := q.model.At(ends.high.temperature, ends.high.density*q.perMass)
	gap := float64(
		q.critical.Temperature-t,
	) / (float64(q.critical.Temperature) - ends.high.temperature)
	return quantity.SpecificHeat(m.Cp * q.perMass / max(gap, 1e-3))
}

// State returns the state of r at pressure p and temperature t, from the
// equation of state itself. On the saturation line of a pure fluid, where p and t
// leave the quality open, it is vapor; StateAtQuality and StateAtEnthalpy say
// more there. So close to its critical point that liquid and vapor of a blend are too
// alike to be solved for, both together lie in a straight line between bubble and dew
// point.
//
// p and t lie within Limits; the error is a *RangeError, or ErrUnsolved where the
// equation of state has no answer.
func (r *Refrigerant) State(p quantity.Pressure, t quantity.Temperature) (State, error) {
	q, err := r.equation()
	if err != nil {
		return State{}, err
	}
	if err := r.checkState(q, p, t); err != nil {
		return State{}, err
	}
	c := &q.critical
	if t < c.Temperature {
		if s, done, err := r.subcritical(q, p, t); done || err != nil {
			return s, err
		}
	} else if p >= c.Pressure {
		if r.Pure() || q.system.BeyondEnvelope(float64(t), float64(p)) {
			return r.single(q, p, t, q.supercriticalDensity(float64(t), float64(p)), vle.Stable)
		}
	} else if r.Pure() || r.pastDew(p, t) {
		return r.single(q, p, t, q.idealDensity(float64(t), float64(p)), vle.Stable)
	}
	f, err := q.system.FlashPT(float64(p), float64(t))
	switch {
	case err == nil:
	case t >= c.Temperature && p >= c.Pressure && p < 1.001*c.Pressure:
		// At the critical pressure no boiling can be solved for; just below and
		// just above none is found.
		return r.single(q, p, t, q.supercriticalDensity(float64(t), float64(p)), vle.Stable)
	default:
		return State{}, r.unsolved("state", err)
	}
	s := q.flashed(p, &f)
	s.Temperature = t // to the last digit
	return s, nil
}

// subcritical is State below the critical temperature, where the saturated states tell whether
// it is vapor or liquid. It is not done where both may be there, which takes a flash.
func (r *Refrigerant) subcritical(
	q *equation, p quantity.Pressure, t quantity.Temperature,
) (s State, done bool, err error) {
	dew, err := r.DewPressure(t)
	if err != nil {
		return State{}, false, err
	}
	if p <= dew {
		saturated, err := r.DewDensity(t)
		if err != nil {
			return State{}, false, err
		}
		// The compressibility falls almost in a straight line from 1 at
		// no pressure to that of saturated vapor.
		z := q.idealDensity(float64(t), float64(dew)) / (float64(saturated) * q.perMass)
		guess := q.idealDensity(float64(t), float64(p)) / (1 - (1-z)*float64(p/dew))
		s, err = r.single(q, p, t, guess, vle.Vapor)
		return s, true, err
	}
	bubble, err := r.BubblePressure(t)
	if err != nil {
		return State{}, false, err
	}
	if p >= bubble {
		saturated, err := r.BubbleDensity(t)
		if err != nil {
			return State{}, false, err
		}
		s, err = r.single(q, p, t, float64(saturated)*q.perMass, vle.Liquid)
		return s, true, err
	}
	if p < q.critical.Pressure && r.closing(q, p) {
		s, done = r.boilClosing(q, p, t)
	}
	return s, done, nil
}

// pastDew reports whether t is above the dew point at p.
func (r *Refrigerant) pastDew(p quantity.Pressure, t quantity.Temperature) bool {
	dew, err := r.DewTemperature(p)
	return err == nil && t >= dew || p < quantity.Pressure(r.table().LowPressure(table.Dew))
}

// single returns the state of one phase, starting at a guess of its density in
// mol/m³.
func (r *Refrigerant) single(
	q *equation, p quantity.Pressure, t quantity.Temperature, guess float64, phase vle.Phase,
) (State, error) {
	e := q.model.Evaluator()
	defer e.Release()
	e.SetT(float64(t))
	m, ok := q.phase(e, float64(p), guess)
	if !ok {
		rho, err := q.system.Density(float64(t), float64(p), phase)
		if err != nil {
			return State{}, r.unsolved("state", err)
		}
		m = e.StateAt(rho)
	}
	name, quality := q.phaseAt(p, t, phase)
	s := q.state(&m, name, quality)
	s.Pressure = p
	return s, nil
}

// phaseAt names a single phase and gives its quality.
func (q *equation) phaseAt(
	p quantity.Pressure, t quantity.Temperature, phase vle.Phase,
) (Phase, float64) {
	c := &q.critical
	switch {
	case phase == vle.Liquid, phase != vle.Vapor && t < c.Temperature && p > c.Pressure:
		return Liquid, 0
	case t >= c.Temperature && p > c.Pressure:
		return Supercritical, 1
	}
	return Vapor, 1
}

// flashed turns a solution of the phase equilibrium at p into a state.
func (q *equation) flashed(p quantity.Pressure, f *vle.Flash) State {
	if f.Phase != vle.TwoPhase {
		m := q.model.At(f.T, f.Rho)
		name, quality := q.phaseAt(p, quantity.Temperature(f.T), f.Phase)
		s := q.state(&m, name, quality)
		s.Pressure = p
		return s
	}
	return State{
		Phase:       TwoPhase,
		Pressure:    p,
		Temperature: quantity.Temperature(f.T),
		Density:     quantity.Density(f.Rho / q.perMass),
		Enthalpy:    quantity.SpecificEnthalpy(f.H * q.perMass),
		Entropy:     quantity.SpecificEntropy(f.S * q.perMass),
		Quality:     f.VaporFraction * q.model.MolarMassOf(&f.Y) * q.perMass,
	}
}

// lowestPressure of a State is a vacuum that no refrigerant system reaches.
const lowestPressure = quantity.Pressure(0.1)

func (r *Refrigerant) checkState(q *equation, p quantity.Pressure, t quantity.Temperature) error {
	if err := r.checkPressure(q, p); err != nil {
		return err
	}
	l := &q.limits
	if t >= l.MinTemperature && t <= l.MaxTemperature {
		return nil
	}
	return &RangeError{
		Quantity: "temperature of " + r.designation,
		Value:    t,
		Min:      l.MinTemperature,
		Max:      l.MaxTemperature,
		Advice:   "outside the range of its equation of state",
	}
}

func (r *Refrigerant) checkPressure(q *equation, p quantity.Pressure) error {
	high := q.limits.MaxPressure
	if p >= lowestPressure && p <= high {
		return nil
	}
	e := &RangeError{
		Quantity: "pressure of " + r.designation,
		Value:    p,
		Min:      lowestPressure,
		Max:      high,
		Advice:   "outside the range of its equation of state",
	}
	if !(float64(p) >= 0) || math.IsNaN(float64(p)) {
		e.Advice = "pressures are absolute: add the atmosphere to a gauge reading"
	}
	return e
}
