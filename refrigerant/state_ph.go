package refrigerant

import (
	"errors"
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/quantity"
)

// A caloric is the second coordinate of a state at a pressure: enthalpy or
// entropy.
type caloric uint8

const (
	enthalpy caloric = iota
	entropy
)

func (c caloric) of(s *State) float64 {
	if c == enthalpy {
		return float64(s.Enthalpy)
	}
	return float64(s.Entropy)
}

// at returns the value by mole and its derivatives by temperature at constant
// density and by density at constant temperature.
func (c caloric) at(s *helmholtz.State) (v, byT, byRho float64) {
	if c == enthalpy {
		return s.H, s.DhDT, s.DhDrho
	}
	return s.S, s.Cv / s.T, -s.DpDT / (s.Rho * s.Rho)
}

func (c caloric) ofSaturated(s *saturated) float64 {
	if c == enthalpy {
		return s.enthalpy
	}
	return s.entropy
}

// StateAtEnthalpy returns the state of r at pressure p with enthalpy h: liquid,
// two-phase or vapor as the two require. It is how the state after an expansion
// device is found. One phase takes one to three microseconds, two phases, which
// come from tables, less than one. Of a NewBlend, and in the last few percent
// below the critical temperature of a designated blend, two phases are solved
// for, composition by composition, which takes a hundred times as long.
//
// The error is a *RangeError, or ErrUnsolved where the equation of state has no such
// state.
func (r *Refrigerant) StateAtEnthalpy(
	p quantity.Pressure, h quantity.SpecificEnthalpy,
) (State, error) {
	return r.stateAt(p, enthalpy, float64(h))
}

// StateAtEntropy returns the state of r at pressure p with entropy s. It is how
// the outlet of an ideal compressor is found. The errors are those of StateAtEnthalpy.
func (r *Refrigerant) StateAtEntropy(
	p quantity.Pressure, s quantity.SpecificEntropy,
) (State, error) {
	return r.stateAt(p, entropy, float64(s))
}

// StateAtQuality returns the state of r at pressure p of which the share x of the
// mass, 0 to 1, is vapor. For a blend the temperature lies between bubble and dew
// point as x requires, not in a straight line. The range of p is that of
// BubbleTemperature, and the errors are those of StateAtEnthalpy.
func (r *Refrigerant) StateAtQuality(p quantity.Pressure, x float64) (State, error) {
	if !(x >= 0 && x <= 1) {
		return State{}, fractionError("quality", x, 0, 1, "the share of the mass that is vapor")
	}
	q, err := r.equation()
	if err != nil {
		return State{}, err
	}
	var bubble, dew vle.Point
	liquid, err := r.edge(table.Bubble, p, &bubble)
	if err != nil {
		return State{}, err
	}
	vapor, err := r.edge(table.Dew, p, &dew)
	if err != nil {
		return State{}, err
	}
	switch {
	case x == 0:
		return q.onEdge(table.Bubble, &liquid), nil
	case x == 1:
		return q.onEdge(table.Dew, &vapor), nil
	case r.Pure():
		return between(p, &liquid, &vapor, x), nil
	}
	var b boiling
	if r.boilAt(&b, &liquid, &vapor) {
		return b.state(p, b.shareWhere(table.InnerQuality, x)), nil
	}
	if p == q.critical.Pressure || r.closing(q, p) {
		return r.boilClosingAtQuality(q, p, x, &liquid, &vapor), nil
	}
	if bubble.T > 0 && dew.T > 0 {
		if f, err := q.system.FlashPQBetween(&bubble, &dew, x); err == nil {
			return q.flashed(p, &f), nil
		}
	}
	return r.blendAtQuality(p, x, &liquid, &vapor)
}

// blendAtQuality finds the enthalpy at which the quality is x: the quality rises
// with enthalpy all the way from bubble to dew.
func (r *Refrigerant) blendAtQuality(
	p quantity.Pressure, x float64, liquid, vapor *saturated,
) (State, error) {
	low, high := liquid.enthalpy, vapor.enthalpy
	xLow, xHigh := 0.0, 1.0
	var s State
	for i := range 60 {
		h := low + (high-low)*(x-xLow)/(xHigh-xLow)
		if i%3 == 2 {
			h = (low + high) / 2
		}
		var err error
		if s, err = r.StateAtEnthalpy(p, quantity.SpecificEnthalpy(h)); err != nil {
			return State{}, err
		}
		switch {
		case math.Abs(s.Quality-x) < 1e-10:
			return s, nil
		case s.Quality < x:
			low, xLow = h, s.Quality
		default:
			high, xHigh = h, s.Quality
		}
	}
	return s, nil
}

// edge returns one edge of the two-phase region at p. Where it had to be solved for,
// the solution is left in point.
func (r *Refrigerant) edge(e table.Edge, p quantity.Pressure, point *vle.Point) (saturated, error) {
	s := r.table()
	t, ok := s.Temperature(e, float64(p))
	if !ok {
		return r.solvePoint(e, p, point)
	}
	var v [3]float64
	for i, c := range [...]table.Curve{
		table.BubbleDensity, table.BubbleEnthalpy, table.BubbleEntropy,
	} {
		if v[i], ok = s.At(c+table.Curve(e), t); !ok {
			return r.solvePoint(e, p, point)
		}
	}
	return saturated{t, float64(p), v[0], v[1], v[2]}, nil
}

// between returns the two-phase state of a pure fluid at quality x.
func between(p quantity.Pressure, liquid, vapor *saturated, x float64) State {
	return State{
		Phase:       TwoPhase,
		Pressure:    p,
		Temperature: quantity.Temperature(liquid.temperature),
		Density:     quantity.Density(1 / (x/vapor.density + (1-x)/liquid.density)),
		Enthalpy: quantity.SpecificEnthalpy(
			liquid.enthalpy + x*(vapor.enthalpy-liquid.enthalpy),
		),
		Entropy: quantity.SpecificEntropy(liquid.entropy + x*(vapor.entropy-liquid.entropy)),
		Quality: x,
	}
}

func (r *Refrigerant) stateAt(p quantity.Pressure, c caloric, value float64) (State, error) {
	q, err := r.equation()
	if err != nil {
		return State{}, err
	}
	if err := r.checkPressure(q, p); err != nil {
		return State{}, err
	}
	if math.IsNaN(value) || math.IsInf(value, 0) {
		return State{}, r.caloricError(p, c, value)
	}
	switch {
	case p >= q.critical.Pressure:
	case !r.Pure() && r.closing(q, p):
		if s, ok := r.atClosing(q, p, c, value); ok {
			return s, nil
		}
	default:
		if s, done, err := r.belowCritical(q, p, c, value); done || err != nil {
			return s, err
		}
	}
	return r.general(q, p, c, value)
}

// slack lets a state through that table and equation put on different sides of
// a limit.
const slack = quantity.Temperature(1e-3)

// belowCritical starts from the edges of the two-phase region at p. It reports
// false where that leads nowhere.
func (r *Refrigerant) belowCritical(
	q *equation, p quantity.Pressure, c caloric, value float64,
) (State, bool, error) {
	var bubble, dew vle.Point
	vapor, err := r.edge(table.Dew, p, &dew)
	if err != nil {
		return State{}, false, nil
	}
	if value >= c.ofSaturated(&vapor) {
		s, ok := q.along(p, c, value, &vapor, r.superheatedStart(q, c, value, &vapor), Vapor)
		return s, ok && s.Temperature <= q.limits.MaxTemperature+slack, nil
	}
	liquid, err := r.edge(table.Bubble, p, &bubble)
	if err != nil {
		return State{}, false, nil
	}
	if value <= c.ofSaturated(&liquid) {
		s, ok := q.along(p, c, value, &liquid, liquid, Liquid)
		return s, ok && s.Temperature >= q.limits.MinTemperature-slack && r.compressed(&s), nil
	}
	if r.Pure() {
		x := (value - c.ofSaturated(&liquid)) / (c.ofSaturated(&vapor) - c.ofSaturated(&liquid))
		return between(p, &liquid, &vapor, x), true, nil
	}
	var b boiling
	if r.boilAt(&b, &liquid, &vapor) {
		return b.state(p, b.shareAt(c, value)), true, nil
	}
	f, err := q.flash(p, c, value/q.perMass, &bubble, &dew)
	if err != nil {
		return State{}, false, nil
	}
	return q.flashed(p, &f), true, nil
}

// compressed reports whether s is as dense as saturated liquid of its temperature, as
// every liquid above its bubble pressure is. What is not lies between the phases,
// where some equations have solutions that mean nothing.
func (r *Refrigerant) compressed(s *State) bool {
	saturated, ok := r.table().At(table.BubbleDensity, float64(s.Temperature))
	return !ok || float64(s.Density) > saturated*(1-1e-4)
}

// flash solves both phases of a blend, between the bubble and the dew point where
// these are known.
func (q *equation) flash(
	p quantity.Pressure, c caloric, perMole float64, bubble, dew *vle.Point,
) (vle.Flash, error) {
	switch known := bubble.T > 0 && dew.T > 0; {
	case known && c == enthalpy:
		return q.system.FlashPHBetween(bubble, dew, perMole)
	case known:
		return q.system.FlashPSBetween(bubble, dew, perMole)
	case c == enthalpy:
		return q.system.FlashPH(float64(p), perMole)
	}
	return q.system.FlashPS(float64(p), perMole)
}

// superheatedStart guesses temperature and density of vapor with the given value
// on the isobar of edge, from the table alone. The heat capacity of saturated vapor
// follows from the slopes of its enthalpy and pressure (along saturation
// dh = cp dT + (v − T ∂v/∂T) dp) and ∂v/∂T from the compressibility z; that the
// departure from the ideal gas goes with 2.35/(z − 0.407), and how it fades with
// superheat, was fitted to this roster. It saves one evaluation of the equation in
// four and has no part in the result.
func (r *Refrigerant) superheatedStart(
	q *equation, c caloric, value float64, edge *saturated,
) saturated {
	t, curves := edge.temperature, r.table()
	slope := func(curve table.Curve) (float64, bool) {
		a, ok1 := curves.At(curve, t-0.5)
		b, ok2 := curves.At(curve, t+0.5)
		return b - a, ok1 && ok2
	}
	dh, ok1 := slope(table.DewEnthalpy)
	dp, ok2 := slope(table.DewPressure)
	z := q.idealDensity(t, edge.pressure) / (edge.density * q.perMass)
	if !ok1 || !ok2 || z < 0.5 {
		return *edge
	}
	departure := 2.35 / (z - 0.407) * (1 - z)
	cp := dh + departure*dp/edge.density
	heat := value - c.ofSaturated(edge)
	if c == entropy {
		heat *= t * (1 + heat/(2*cp))
	}
	rise := heat / cp
	x := rise / t
	rise *= 1 + 0.8*departure*x - 0.8*x*x
	if !(cp > 0) || !(rise < 0.5*t) {
		return *edge
	}
	start := *edge
	start.temperature += rise
	start.density /= 1 + (1+0.75*departure)*rise/t
	return start
}

// onBranch reports whether t is on the vapor's or the liquid's side of the edge.
// Some equations have further solutions in the cold, where they mean nothing.
func onBranch(t, edge float64, phase Phase) bool {
	const slack = 1e-6
	return phase == Vapor && t > edge*(1-slack) || phase == Liquid && t < edge*(1+slack)
}

// closeT and closeRho are how near, in proportion, temperature and density must be
// for the rest of the way to be taken along the derivatives. Heat capacity and
// speed of sound are those of the start of it, and so within some 1e-5.
const (
	closeT   = 1e-5
	closeRho = 1e-6
)

// along follows the isobar from start to the state with the given value, by
// Newton's method in temperature and density together. It reports false where that
// does not converge on the branch that begins at edge.
func (q *equation) along(
	p quantity.Pressure, c caloric, value float64, edge *saturated, start saturated, phase Phase,
) (State, bool) {
	e := q.model.Evaluator()
	defer e.Release()
	target := value / q.perMass
	quality := 0.0
	if phase == Vapor {
		quality = 1
	}
	t, rho := start.temperature, start.density*q.perMass
	end := edge.density * q.perMass
	e.SetT(t)
	for range 20 {
		s := e.StateAt(rho)
		v, vT, vRho := c.at(&s)
		dp, dv := float64(p)-s.P, target-v
		det := s.DpDT*vRho - s.DpDrho*vT
		dT := (dp*vRho - s.DpDrho*dv) / det
		dRho := (s.DpDT*dv - vT*dp) / det
		if !(s.DpDrho > 0) || math.IsNaN(dT) || math.IsNaN(dRho) {
			return State{}, false
		}
		if math.Abs(dT) < closeT*t {
			if math.Abs(dRho) < closeRho*rho {
				// The next step would be the square of this one; the state's own
				// derivatives take this one without an evaluation.
				s.H += s.DhDT*dT + s.DhDrho*dRho
				s.S += s.Cv/t*dT - s.DpDT/(rho*rho)*dRho
				s.T, s.Rho, s.P = t+dT, rho+dRho, float64(p)
				return q.state(&s, phase, quality), onBranch(s.T, edge.temperature, phase)
			}
			if math.Abs(dRho) < 1e-3*rho {
				// What depends on temperature is most of an evaluation, and is
				// kept for the density to be mended at.
				rho += dRho
				continue
			}
		}
		// Longer steps are cut: the density of vapor falls by half for each doubling
		// of temperature.
		if cut := max(math.Abs(dT)/(0.3*t), math.Abs(dRho)/(0.4*rho)); cut > 1 {
			dT, dRho = dT/cut, dRho/cut
		}
		t, rho = t+dT, rho+dRho
		e.SetT(t)
		if phase == Vapor && rho > 1.001*end || phase == Liquid && rho < 0.999*end {
			return State{}, false
		}
	}
	return State{}, false
}

// general halves the range of temperature, with Newton's steps where they stay
// inside: supercritical pressures, two phases of a blend, and what the short ways
// did not find. Enthalpy and entropy rise all along an isobar.
func (r *Refrigerant) general(
	q *equation, p quantity.Pressure, c caloric, value float64,
) (State, error) {
	low, high, err := r.isobarEnds(q, p, c, value)
	if err != nil {
		return State{}, err
	}
	a, b := low.Temperature, high.Temperature
	fa, fb := c.of(&low)-value, c.of(&high)-value
	reach := fb - fa
	t := a + quantity.Temperature(fa/(fa-fb))*(b-a)
	before := [2]float64{math.Inf(1), math.Inf(1)} // |f| of the last two steps
	for i := range 200 {
		s, err := r.State(p, t)
		if err != nil {
			return State{}, err
		}
		f := c.of(&s) - value
		if math.Abs(f) <= 1e-12*reach {
			return s, nil
		}
		if f > 0 {
			b, fb, high = t, f, s
		} else {
			a, fa, low = t, f, s
		}
		if b-a <= 1e-12*b {
			break
		}
		slope := float64(s.Cp)
		if c == entropy {
			slope /= float64(t)
		}
		switch next := t - quantity.Temperature(f/slope); {
		case math.Abs(f) > before[i%2]/2:
			// Near the critical point the curve is so steep between two flat ends
			// that Newton's steps go to and fro between them.
			t = a + (b-a)/2
		case slope > 0 && next > a && next < b:
			t = next
		default:
			t = a + quantity.Temperature(fa/(fa-fb))*(b-a)
		}
		before[i%2] = math.Abs(f)
	}
	return r.atJump(q, c, value, &low, &high, reach)
}

// atJump returns the state with the given value between two neighbors at one pressure
// that lie on either side of it, of an isobar on which the value gains reach. Where
// they are no nearer to each other than that, liquid turns into vapor between them.
func (r *Refrigerant) atJump(
	q *equation, c caloric, value float64, low, high *State, reach float64,
) (State, error) {
	for _, s := range [...]*State{low, high} {
		if math.Abs(c.of(s)-value) <= 1e-9*reach {
			return *s, nil
		}
	}
	if low.Pressure > q.critical.Pressure && low.Pressure > q.highestBubble() {
		return State{}, r.unsolved("state", errJump)
	}
	s := between(
		low.Pressure, low.saturated(), high.saturated(), (value-c.of(low))/(c.of(high)-c.of(low)),
	)
	s.Quality = low.Quality + s.Quality*(high.Quality-low.Quality)
	return s, nil
}

// errJump is the cause where no temperature has the value asked for.
var errJump = errors.New(
	"enthalpy and entropy jump there, above the critical pressure: " +
		"the equation boils on past its stated critical point",
)

// isobarEnds returns the coldest and the hottest state at p, and refuses a value
// beyond them.
func (r *Refrigerant) isobarEnds(
	q *equation, p quantity.Pressure, c caloric, value float64,
) (low, high State, err error) {
	if low, err = r.State(p, q.limits.MinTemperature); err != nil {
		return
	}
	if high, err = r.State(p, q.limits.MaxTemperature); err != nil {
		return
	}
	if value >= c.of(&low) && value <= c.of(&high) {
		return
	}
	e := r.caloricError(p, c, value)
	if c == enthalpy {
		e.Min, e.Max = low.Enthalpy, high.Enthalpy
	} else {
		e.Min, e.Max = low.Entropy, high.Entropy
	}
	return low, high, e
}

func (r *Refrigerant) caloricError(p quantity.Pressure, c caloric, value float64) *RangeError {
	e := &RangeError{
		Quantity: "enthalpy of " + r.designation + " at " + p.String(),
		Value:    quantity.SpecificEnthalpy(value),
		Advice: "outside the temperatures of its equation of state; mind the datum, " +
			"200 kJ/kg for saturated liquid at 0 °C",
	}
	if c == entropy {
		e.Quantity = "entropy of " + r.designation + " at " + p.String()
		e.Value = quantity.SpecificEntropy(value)
		e.Advice = "outside the temperatures of its equation of state; mind the datum, " +
			"1 kJ/(kg·K) for saturated liquid at 0 °C"
	}
	return e
}
