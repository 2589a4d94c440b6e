package vle

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// A line is a component's vapor pressure as ln(p/pc) = k (1 - Tc/T), exact at
// the critical point and at 0.7 of its temperature. It goes on above Tc.
type line struct{ tc, lnPc, k float64 }

func newLine(f *helmholtz.Fluid) line {
	const at = 0.7
	p := f.VaporPressure.At(at * f.CriticalT)
	return line{f.CriticalT, math.Log(f.CriticalP), math.Log(p/f.CriticalP) / (1 - 1/at)}
}

func (l *line) lnP(t float64) float64 { return l.lnPc + l.k*(1-l.tc/t) }

// raoultT is the pressure of an ideal mixture of these vapor pressures, and the
// trace's composition: Raoult's law.
func (q *incipient) raoultT(t float64) (p float64) {
	sum := 0.0
	for i := range q.n {
		pi := math.Exp(q.s.lines[i].lnP(t))
		if q.vapor {
			q.y[i] = q.z[i] * pi
		} else {
			q.y[i] = q.z[i] / pi
		}
		sum += q.y[i]
	}
	for i := range q.n {
		q.y[i] /= sum
	}
	if q.vapor {
		return sum
	}
	return 1 / sum
}

// raoultP is the temperature of such a mixture at a pressure.
func (q *incipient) raoultP(p float64) (t float64) {
	lnP := math.Log(p)
	inv := 0.0 // 1/T
	for i := range q.n {
		l := &q.s.lines[i]
		inv += q.z[i] * (1 - (lnP-l.lnPc)/l.k) / l.tc
	}
	if !(inv > 0) {
		inv = 1e-3
	}
	for range 12 {
		t = 1 / inv
		d := math.Log(q.raoultT(t)) - lnP
		slope := 0.0 // d ln p / d(1/T) of the trace's mixture
		for i := range q.n {
			w := q.y[i]
			l := &q.s.lines[i]
			slope -= w * l.k * l.tc
		}
		next := inv - d/slope
		if !(next > 0.3*inv && next < 3*inv) {
			next = inv * math.Exp(math.Copysign(0.5, next-inv))
		}
		if math.Abs(next-inv) < 1e-4*inv {
			inv = next
			break
		}
		inv = next
	}
	t = 1 / inv
	q.raoultT(t)
	return t
}

// substitute improves a guess by successive substitution: real fugacity
// coefficients in place of vapor pressures. It leaves the unknowns at the last
// state it could compute.
func (q *incipient) substitute(t, p float64, fixedT bool, rounds int) bool {
	n := q.n
	slope := 0.0
	for i := range n {
		l := &q.s.lines[i]
		slope += q.z[i] * l.k * l.tc
	}
	for k := range rounds {
		if !q.coexist(t, p) {
			return k > 0
		}
		// y φ' z / φ'' of the trace, each fugacity over its mole fraction.
		sum := 0.0
		var y Composition
		for i := range n {
			y[i] = q.y[i] * math.Exp(q.pb.LnF[i]-q.pt.LnF[i])
			sum += y[i]
		}
		if !(sum > 1e-3 && sum < 1e3) {
			return k > 0
		}
		change := 0.0
		for i := range n {
			y[i] /= sum
			change = math.Max(change, math.Abs(y[i]-q.y[i]))
		}
		q.y = y
		if !q.vapor {
			sum = 1 / sum
		}
		if fixedT {
			p *= sum
		} else {
			t = 1 / (1/t + math.Log(sum)/slope)
		}
		if change < 1e-3 && math.Abs(sum-1) < 1e-2 {
			return true
		}
	}
	return true
}

// coexist puts the bulk and the trace at a temperature and a pressure into the potentials and
// the unknowns; false where one of them has no such phase.
func (q *incipient) coexist(t, p float64) bool {
	if q.bulkSet != t {
		q.bulk.SetT(t)
		q.bulkSet = t
	}
	q.trace.SetTX(t, &q.y)
	bulkPhase, tracePhase := Liquid, Vapor
	if !q.vapor {
		bulkPhase, tracePhase = Vapor, Liquid
	}
	rhoB, errB := density(q.bulk, p, bulkPhase)
	rhoT, errT := density(q.trace, p, tracePhase)
	if errB != nil || errT != nil {
		return false
	}
	q.bulk.FugacitiesAt(rhoB, &q.pb)
	q.trace.FugacitiesAt(rhoT, &q.pt)
	for i := range q.n {
		q.u[i] = math.Log(rhoT * q.y[i])
	}
	q.u[q.n], q.u[q.n+1] = math.Log(rhoB), math.Log(t)
	return true
}
