package cycle

import (
	"math"

	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/internal/physics/cyclefluid"
)

// The circuit is closed when four things agree: what the compressor pumps and what the
// device passes are the flow, the refrigerant arrives at the compressor as assumed, and
// the charge is in it. Newton's method on suction pressure, head, flow and enthalpy is
// there in about six rounds from a rough guess. Where it is not, the head is bracketed:
//
//	more head, and the condenser holds more liquid and sends more into the evaporator,
//	so that the circuit holds more;
//	at a head, more flow, and the device passes less than it: its liquid is less
//	subcooled, the line takes more pressure, a valve closes;
//	at a flow, more suction pressure, and the compressor pumps more than it;
//	at those, the enthalpy assumed at the compressor comes around nearly unchanged.
//
// Newton's method takes the place of the inner three wherever it gets there. One thing
// can fold the first: wet suction gas leaves the compressor cooler, so that the condenser
// subcools more and the restrictor passes more, which makes the gas wetter. At one head
// there are then a dry and a wet state, and the charge decides on one between them. There
// the path of states is followed around its bends; see follow.

// An outcome says how a solution ended.
type outcome int

const (
	closed    outcome = iota
	atHighest         // the head would rise past the range: the charge does not close
	atLowest          // the suction would fall past the range: the flow does not close
)

const (
	tolerance     = 1e-10 // of every residual
	mostRounds    = 30
	mostLogStep   = 0.3  // of a pressure or the flow in one round
	mostEnthalpy  = 0.3  // 100 kJ/kg in one round
	difference    = 1e-7 // for the derivatives
	leastFanShare = 0.08 // free convection and wind
	rootTolerance = 1e-11
)

var (
	all    = []int{uSuction, uHead, uFlow, uEnthalpy}
	atHead = []int{uSuction, uFlow, uEnthalpy} // with the head given
)

// closing[i] is the residual that unknown i closes.
var closing = [4]int{uSuction: rPump, uHead: rCharge, uFlow: rDevice, uEnthalpy: rHeat}

// setRange sets the range of the unknowns.
func (t *trial) setRange() {
	var b cyclefluid.Isobar
	t.fluid.Set(&b, t.lowest)
	t.low = unknowns{
		uSuction: math.Log(t.lowest),
		// Below saturation at the outdoor air nothing condenses.
		uHead:     math.Log(max(0.7*t.fluid.BubblePressure(t.outdoorT), 1.1*t.lowest)),
		uFlow:     math.Log(t.rated * 1e-4),
		uEnthalpy: b.Bubble.H / 1e5,
	}
	t.high = unknowns{
		uSuction: math.Log(t.highest),
		uHead:    math.Log(t.highest),
		uFlow:    math.Log(t.rated * 10),
		// Suction gas is no hotter than what surrounds it.
		uEnthalpy: b.VaporAt(max(t.returnT, t.outdoorT)+5).H / 1e5,
	}
	if t.fixedHead > 0 {
		t.low[uHead], t.high[uHead] = math.Log(leastFanShare), 0
	}
}

// newton closes the residuals of the unknowns that move, from the guess y, which it
// changes. It reports whether it did.
func (t *trial) newton(y *unknowns, move []int) bool {
	n := len(move)
	r := t.evaluate(*y)
	for range mostRounds {
		now := largest(&r, move)
		if now < tolerance {
			return true
		}
		var j [4][4]float64
		var step [4]float64
		for c, i := range move {
			d := *y
			d[i] += difference
			rd := t.evaluate(d)
			for k, e := range move {
				j[k][c] = (rd[closing[e]] - r[closing[e]]) / difference
			}
			step[c] = r[closing[i]]
		}
		if !eliminate(&j, &step, n) {
			return false
		}
		scale := 1.0
		for c, i := range move {
			most := mostLogStep
			if i == uEnthalpy {
				most = mostEnthalpy
			}
			if s := math.Abs(step[c]); s > most {
				scale = min(scale, most/s)
			}
		}
		if !t.goDown(y, &r, move, &step, scale) {
			return false
		}
	}
	return false
}

// goDown takes of the step as much as brings the residuals r down, and reports whether any does.
func (t *trial) goDown(
	y *unknowns, r *residuals, move []int, step *[4]float64, scale float64,
) bool {
	now := largest(r, move)
	for range 8 {
		next := *y
		for c, i := range move {
			next[i] = min(max(y[i]-scale*step[c], t.low[i]), t.high[i])
		}
		rn := t.evaluate(next)
		if s := largest(&rn, move); s < now*(1-0.1*scale) || s < tolerance {
			*y, *r = next, rn
			return true
		}
		scale *= 0.4
	}
	return false
}

// largest is the largest residual of the unknowns that move.
func largest(r *residuals, move []int) float64 {
	s := 0.0
	for _, i := range move {
		s = max(s, math.Abs(r[closing[i]]))
	}
	return s
}

// eliminate solves the first n rows of j·x = x by elimination with partial pivoting, in
// place.
func eliminate(j *[4][4]float64, x *[4]float64, n int) bool {
	for c := range n {
		p := c
		for k := c + 1; k < n; k++ {
			if math.Abs(j[k][c]) > math.Abs(j[p][c]) {
				p = k
			}
		}
		j[c], j[p] = j[p], j[c]
		x[c], x[p] = x[p], x[c]
		if !(math.Abs(j[c][c]) > 1e-13) {
			return false
		}
		for k := c + 1; k < n; k++ {
			f := j[k][c] / j[c][c]
			for l := c; l < n; l++ {
				j[k][l] -= f * j[c][l]
			}
			x[k] -= f * x[c]
		}
	}
	for c := n - 1; c >= 0; c-- {
		for l := c + 1; l < n; l++ {
			x[c] -= j[c][l] * x[l]
		}
		x[c] /= j[c][c]
		if math.IsNaN(x[c]) {
			return false
		}
	}
	return true
}

// close finds the state of t.
func (t *trial) close() outcome {
	y := t.guess()
	v := t.closeFrom(&y)
	if t.headPressure > 0 && v == closed && t.dischargeP < t.headPressure {
		v = t.closeWithHead(y)
	}
	return v
}

func (t *trial) closeFrom(y *unknowns) outcome {
	t.setRange()
	if t.newton(y, all) {
		return closed
	}
	*y = t.guess()
	v := t.bracketHead(y)
	if v == closed {
		return v
	}
	path := t.guess()
	if t.follow(&path) {
		*y = path
		return closed
	}
	t.evaluate(*y)
	return v
}

// bracketHead closes the charge by the head, and at every head the rest.
func (t *trial) bracketHead(y *unknowns) outcome {
	search(func(x float64) float64 {
		y[uHead] = x
		t.closeAtHead(y)
		return t.evaluate(*y)[rCharge]
	}, y[uHead], 0.1, t.low[uHead], t.high[uHead])
	r := t.evaluate(*y)
	if largest(&r, all) < looseTolerance {
		// Newton takes off the last digits where it can.
		polished := *y
		if t.newton(&polished, all) {
			*y = polished
		} else {
			t.evaluate(*y)
		}
		return closed
	}
	if y[uHead] > t.high[uHead]-1e-9 && t.fixedHead == 0 {
		return atHighest
	}
	return atLowest
}

// looseTolerance tells a root from an end of the range.
const looseTolerance = 1e-7

// closeAtHead closes all but the charge.
func (t *trial) closeAtHead(y *unknowns) {
	try := *y
	if t.newton(&try, atHead) {
		*y = try
		return
	}
	search(func(x float64) float64 {
		y[uFlow] = x
		t.closeAtFlow(y)
		return t.evaluate(*y)[rDevice]
	}, y[uFlow], 0.2, t.low[uFlow], t.high[uFlow])
}

// closeAtFlow closes the compressor by the suction pressure, and the enthalpy.
func (t *trial) closeAtFlow(y *unknowns) {
	low, high := t.low[uSuction], math.Log(t.headAt(y)/1.02)
	search(func(x float64) float64 {
		y[uSuction] = x
		t.closeEnthalpy(y)
		return t.evaluate(*y)[rPump]
	}, y[uSuction], 0.1, low, high)
}

// closeEnthalpy closes the enthalpy at the compressor.
func (t *trial) closeEnthalpy(y *unknowns) {
	// It comes around nearly unchanged: a secant from there is mostly enough.
	around := func(x float64) float64 {
		y[uEnthalpy] = x
		return t.evaluate(*y)[rHeat]
	}
	latent := (t.evap.Dew.H - t.evap.Bubble.H) / 1e5
	x0 := y[uEnthalpy]
	r0 := around(x0)
	x1 := x0 + r0*latent
	for range 6 {
		r1 := around(x1)
		if math.Abs(r1) < rootTolerance {
			return
		}
		if r1 == r0 {
			break
		}
		x0, x1, r0 = x1, x1-r1*(x1-x0)/(r1-r0), r1
		if !(x1 > t.low[uEnthalpy] && x1 < t.high[uEnthalpy]) {
			break
		}
	}
	search(around, (t.low[uEnthalpy]+t.high[uEnthalpy])/2, 1, t.low[uEnthalpy], t.high[uEnthalpy])
}

// headAt is the discharge pressure at y.
func (t *trial) headAt(y *unknowns) float64 {
	if t.fixedHead > 0 {
		return t.fixedHead
	}
	return math.Exp(y[uHead])
}

// search evaluates f last where it crosses zero, looking from x outwards in growing
// steps between low and high, or, where it does not, at the end towards which it nears
// zero. It returns the last value.
func search(f func(float64) float64, x, step, low, high float64) float64 {
	a := min(max(x, low), high)
	fa := f(a)
	b, fb := a, fa
	// Which way? A small step tells.
	b = a + 0.1*step
	if b > high {
		b = a - 0.1*step
	}
	fb = f(b)
	if math.Abs(fb) > math.Abs(fa) && (fa > 0) == (fb > 0) {
		a, b, fa, fb = b, a, fb, fa
	}
	for (fa > 0) == (fb > 0) && fb != 0 {
		next := b + math.Copysign(step, b-a)
		next = min(max(next, low), high)
		if next == b {
			return f(b)
		}
		a, fa = b, fb
		b, fb = next, f(next)
		step *= 2
	}
	return f(root.Find(f, a, b, fa, fb, rootTolerance, 0))
}
