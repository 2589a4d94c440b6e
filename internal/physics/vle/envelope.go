package vle

import "math"

// An envelope is the phase envelope of a blend as two lists of nodes, both from
// the critical point outward to low temperature, in σ = ln(ρ of the trace / ρ of
// the bulk): negative along the bubble line, positive along the dew line. Unlike
// temperature or pressure, σ never turns back along the line, not even where a
// line has its highest temperature or pressure.
type envelope struct {
	critical    CriticalPoint
	bubble, dew []node
	// hottest and highest are the cricondentherm and the cricondenbar, and highestBubble is
	// the highest pressure of the bubble line.
	hottest, highest, highestBubble float64
	// whole says that both lines have been followed down to pressures where
	// they cannot turn up again, so that nothing boils beyond these two.
	whole bool
	err   error
}

// A node is a solution and how it changes along the line.
type node struct {
	sigma float64
	u, du vector
	lnP   float64
	dLnP  float64
}

// coldest is how far down the envelope is traced, as a part of the critical
// temperature.
const coldest = 0.5

func (s *System) trace() {
	c, st, err := s.solveCritical()
	s.envelope.critical, s.envelope.err = c, err
	if err != nil {
		return
	}
	s.envelope.bubble = s.traceBranch(&c, &st, true)
	s.envelope.dew = s.traceBranch(&c, &st, false)
	s.envelope.findExtremes(s.m.Components() + 1)
}

// traceBranch starts at the critical point in the direction of the eigenvector,
// in which the two phases part, and continues with a predictor along the
// tangent and Newton's method as the corrector.
func (s *System) traceBranch(c *CriticalPoint, st *stability, vapor bool) []node {
	var q incipient
	s.start(&q, vapor)
	defer q.release()
	n := q.n
	sign := 1.0
	if vapor {
		sign = -1
	}
	nodes := []node{q.originAt(c, st)}
	step := 0.1 * sign
	for len(nodes) < 400 {
		last := &nodes[len(nodes)-1]
		sigma := last.sigma + step
		for i := range n + 2 {
			q.u[i] = last.u[i] + step*last.du[i]
		}
		if len(nodes) == 1 {
			// The bulk stays on its composition, so that the trace alone takes
			// the eigenvector's direction; both densities part from the middle.
			q.u[n] -= step / 2
			for i := range n {
				q.u[i] -= step / 2
			}
		}
		ok := q.newton(specification{kind: specSigma, value: sigma}, 25)
		if ok {
			ok = math.Abs(q.u[n+1]-last.u[n+1]) < 0.1
		}
		if !ok {
			if step /= 2; len(nodes) == 1 {
				// So near to the critical point the equations are all but
				// singular: the first step is better too long than too short.
				step *= 2.6
			}
			if s := math.Abs(step); s < 1e-3 || s > 0.6 {
				break
			}
			continue
		}
		next := node{sigma: sigma, u: q.u}
		if !q.tangent(&next) {
			break
		}
		nodes = append(nodes, next)
		if math.Exp(next.u[n+1]) < coldest*c.T {
			break
		}
		step = sign * math.Min(1.5*math.Abs(step), 0.5)
	}
	q.slopeAtOrigin(nodes)
	return nodes
}

// slopeAtOrigin fills the derivatives at the critical point, once there is a neighbor.
func (q *incipient) slopeAtOrigin(nodes []node) {
	if len(nodes) < 2 {
		return
	}
	origin, first, h := &nodes[0], &nodes[1], nodes[1].sigma
	for i := range q.n + 2 {
		origin.du[i] = 2*(first.u[i]-origin.u[i])/h - first.du[i]
	}
	origin.dLnP = 2*(first.lnP-origin.lnP)/h - first.dLnP
}

// originAt is the node at the critical point, from which both branches start.
func (q *incipient) originAt(c *CriticalPoint, st *stability) node {
	n := q.n
	origin := node{lnP: math.Log(c.P)}
	length := 0.0 // of the eigenvector in total density
	for i := range n {
		length += math.Sqrt(q.z[i]) * st.v[i]
	}
	for i := range n {
		origin.u[i] = math.Log(q.z[i] * c.Rho)
		origin.du[i] = st.v[i] / math.Sqrt(q.z[i]) / length
	}
	origin.u[n], origin.u[n+1] = math.Log(c.Rho), math.Log(c.T)
	return origin
}

// tangent fills a node's derivatives at the unknowns.
func (q *incipient) tangent(nd *node) bool {
	n := q.n
	q.u = nd.u
	q.evaluate()
	size := q.system(specification{kind: specSigma, value: nd.sigma})
	for r := range size {
		q.jac[r][size] = 0
	}
	q.jac[n+1][size] = 1
	if !q.jac.solve(size, &nd.du) {
		return false
	}
	t := q.bulk.T
	p, dp := q.pb.P, t*q.pb.DPDT*nd.du[n+1]
	if q.vapor {
		p, dp = q.pt.P, t*q.pt.DPDT*nd.du[n+1]
		for j := range n {
			dp += q.pt.PLnRho[j] * nd.du[j]
		}
	} else {
		for j := range n {
			dp += q.pb.PLnRho[j] * nd.du[n]
		}
	}
	nd.lnP, nd.dLnP = math.Log(p), dp/p
	return p > 0
}

// fromEnvelope puts the point of a line with a given ln T, or ln p, into the
// unknowns and says at which σ it is. It looks from the cold end, where there is
// one such point.
func (q *incipient) fromEnvelope(
	nodes []node, value float64, pressure bool,
) (sigma float64, ok bool) {
	n := q.n
	for k := len(nodes) - 1; k > 0; k-- {
		a, b := &nodes[k], &nodes[k-1]
		ya, da, yb, db := a.u[n+1], a.du[n+1], b.u[n+1], b.du[n+1]
		if pressure {
			ya, da, yb, db = a.lnP, a.dLnP, b.lnP, b.dLnP
		}
		h := b.sigma - a.sigma
		top := turningPoint(ya, da, yb, db, h)
		if hermite(ya, da, yb, db, h, top) < value {
			continue
		}
		if ya > value {
			break // colder than the whole line
		}
		left, right := 0.0, top
		for range 50 {
			mid := 0.5 * (left + right)
			if hermite(ya, da, yb, db, h, mid) < value {
				left = mid
			} else {
				right = mid
			}
		}
		for j := range n + 2 {
			q.u[j] = hermite(a.u[j], a.du[j], b.u[j], b.du[j], h, left)
		}
		return a.sigma + h*left, true
	}
	return 0, false
}

// atSigma is Newton's method in σ around solutions at given σ. Next to the
// critical point, where temperature and pressure hardly change, it is the better
// posed problem.
func (q *incipient) atSigma(spec specification, sigma float64) bool {
	for range 12 {
		if !q.newton(specification{kind: specSigma, value: sigma}, 20) {
			return false
		}
		nd := node{sigma: sigma, u: q.u}
		if !q.tangent(&nd) {
			return false
		}
		d, slope := nd.u[q.n+1]-spec.value, nd.du[q.n+1]
		if spec.kind == specP {
			d, slope = nd.lnP-math.Log(spec.value), nd.dLnP
		}
		if math.Abs(d) < 1e-11 {
			return true
		}
		step := d / slope
		if limit := 0.5 * math.Abs(sigma); !(math.Abs(step) < limit) {
			step = math.Copysign(limit, step)
		}
		sigma -= step
	}
	return false
}

// turningPoint is where in a rising interval the cubic turns back, or its end.
func turningPoint(ya, da, yb, db, h float64) float64 {
	if db*h >= 0 {
		return 1
	}
	left, right := 0.0, 1.0
	for range 40 {
		mid := 0.5 * (left + right)
		if hermite(ya, da, yb, db, h, mid+1e-6) > hermite(ya, da, yb, db, h, mid) {
			left = mid
		} else {
			right = mid
		}
	}
	return left
}

// hermite is the cubic through two values with two slopes.
func hermite(ya, da, yb, db, h, x float64) float64 {
	y := 1 - x
	return ya*y*y*(1+2*x) + yb*x*x*(1+2*y) + h*x*y*(da*y-db*x)
}

// Extremes is the highest temperature at which the blend can have two phases,
// the cricondentherm, and the highest pressure, the cricondenbar, each to about
// 1e-5 of itself. A pure fluid's are both its critical point.
func (s *System) Extremes() (cricondentherm, cricondenbar float64, err error) {
	c, err := s.Critical()
	if err != nil || s.pure() {
		return c.T, c.P, err
	}
	return s.envelope.hottest, s.envelope.highest, nil
}

// HighestBubble is the highest pressure at which liquid begins to boil, to about 1e-5 of
// itself. It is above the critical pressure where the bubble line turns back before the
// critical point.
func (s *System) HighestBubble() (float64, error) {
	c, err := s.Critical()
	if err != nil || s.pure() {
		return c.P, err
	}
	return s.envelope.highestBubble, nil
}

// BeyondEnvelope reports whether a temperature or a pressure is so high that
// liquid and vapor cannot exist together. Where an envelope could not be
// followed far enough to tell, it reports false.
func (s *System) BeyondEnvelope(t, p float64) bool {
	const margin = 1 + 1e-4 // what Extremes may be off by, and more
	hottest, highest, err := s.Extremes()
	return err == nil && (s.pure() || s.envelope.whole) &&
		(t > hottest*margin || p > highest*margin)
}

// findExtremes looks for the turning points of both lines, in whose unknowns
// ln T has the index t.
func (env *envelope) findExtremes(t int) {
	c := &env.critical
	lnT, lnP := math.Log(c.T), math.Log(c.P)
	env.whole = true
	for i, nodes := range [2][]node{env.bubble, env.dew} {
		for k := len(nodes) - 1; k > 0; k-- {
			a, b := &nodes[k], &nodes[k-1]
			h := b.sigma - a.sigma
			at := turningPoint(a.u[t], a.du[t], b.u[t], b.du[t], h)
			lnT = math.Max(lnT, hermite(a.u[t], a.du[t], b.u[t], b.du[t], h, at))
			at = turningPoint(a.lnP, a.dLnP, b.lnP, b.dLnP, h)
			lnP = math.Max(lnP, hermite(a.lnP, a.dLnP, b.lnP, b.dLnP, h, at))
		}
		last := &nodes[len(nodes)-1]
		if i == 0 {
			env.highestBubble = math.Max(c.P, math.Exp(lnP))
		}
		env.whole = env.whole && last.lnP < math.Log(0.5*c.P) && last.u[t] < math.Log(0.95*c.T)
	}
	env.hottest, env.highest = math.Max(c.T, math.Exp(lnT)), math.Max(c.P, math.Exp(lnP))
}
