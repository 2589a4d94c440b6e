package cycle

import (
	"math"

	"github.com/satline/satline/internal/base/root"
)

// follow closes the circuit by following the path of states in which all but the charge
// closes, from a low head and little refrigerant, until the circuit holds the charge. The
// length along the path is the parameter, not the head, so that it goes around bends:
// Keller's pseudo-arclength continuation ("Numerical solution of bifurcation and nonlinear
// eigenvalue problems", 1977). It reports whether it got there.
func (t *trial) follow(y *unknowns) bool {
	const (
		longest  = 0.12
		shortest = 1e-6
		steps    = 400
	)
	if !t.startPath(y) {
		return false
	}
	along, ok := t.tangent(y, unknowns{uHead: 1})
	if !ok {
		return false
	}
	length := 0.02
	for range steps {
		next, ok := t.stepAlong(y, &along, length)
		if !ok {
			if length /= 3; length >= shortest {
				continue
			}
			if along, ok = t.turn(y, along); !ok {
				return false
			}
			length = shortest * 100
			continue
		}
		if t.evaluate(next)[rCharge] <= 0 {
			return t.closeBetween(y, &along, length)
		}
		if next[uHead] > t.high[uHead] || next[uSuction] < t.low[uSuction] {
			return false
		}
		turned, ok := t.tangent(&next, along)
		if !ok {
			return false
		}
		*y, along = next, turned
		length = min(length*1.6, longest)
	}
	return false
}

// turn finds the direction in which the path goes on from a corner at y, where a zone of
// a coil appears or a valve comes to its stop. The tangent is that of a point a little
// further on, over the corner, and either sense of it may be right: the wrong one leads back.
func (t *trial) turn(y *unknowns, along unknowns) (unknowns, bool) {
	for _, over := range [...]float64{1e-5, 1e-4, 1e-3} {
		beyond := *y
		for i := range beyond {
			beyond[i] += over * along[i]
		}
		tangent, ok := t.tangent(&beyond, along)
		if !ok {
			continue
		}
		for range 2 {
			if next, ok := t.stepAlong(y, &tangent, over); ok {
				if went, onward := wentTo(&next, y, &along); onward {
					return went, true
				}
			}
			for i := range tangent {
				tangent[i] = -tangent[i]
			}
		}
	}
	return along, false
}

// wentTo returns the direction from y to next, and whether it does not lead back along.
func wentTo(next, y, along *unknowns) (went unknowns, onward bool) {
	length, back := 0.0, 0.0
	for i := range went {
		went[i] = next[i] - y[i]
		length += went[i] * went[i]
		back -= went[i] * along[i]
	}
	length = math.Sqrt(length)
	if !(back < 0.9*length) {
		return went, false
	}
	for i := range went {
		went[i] /= length
	}
	return went, true
}

// startPath finds a state with room for more refrigerant, at a head as low as it takes.
func (t *trial) startPath(y *unknowns) bool {
	for y[uHead] > t.low[uHead] {
		try := *y
		if t.newton(&try, atHead) && t.evaluate(try)[rCharge] > 0 {
			*y = try
			return true
		}
		y[uHead] -= 0.1
	}
	return false
}

// jacobian returns the derivatives of the three residuals of the path, and the residuals.
func (t *trial) jacobian(y *unknowns) (j [4][4]float64, r residuals) {
	r = t.evaluate(*y)
	for c := range y {
		d := *y
		d[c] += difference
		rd := t.evaluate(d)
		for k, e := range [3]int{rPump, rDevice, rHeat} {
			j[k][c] = (rd[e] - r[e]) / difference
		}
	}
	return j, r
}

// tangent returns the direction of the path at y that goes on in the direction before.
func (t *trial) tangent(y *unknowns, before unknowns) (unknowns, bool) {
	j, _ := t.jacobian(y)
	j[3] = before
	x := [4]float64{3: 1}
	if !eliminate(&j, &x, 4) {
		return before, false
	}
	norm := math.Sqrt(x[0]*x[0] + x[1]*x[1] + x[2]*x[2] + x[3]*x[3])
	for i := range x {
		x[i] /= norm
	}
	return x, true
}

// stepAlong returns the state of the path that lies length ahead of y along a tangent.
func (t *trial) stepAlong(y, along *unknowns, length float64) (unknowns, bool) {
	next := *y
	for i := range next {
		next[i] += length * along[i]
	}
	for range 12 {
		j, r := t.jacobian(&next)
		ahead := -length
		for i := range next {
			ahead += along[i] * (next[i] - y[i])
		}
		if max(
			math.Abs(r[rPump]), math.Abs(r[rDevice]), math.Abs(r[rHeat]), math.Abs(ahead),
		) < tolerance {
			return next, true
		}
		j[3] = *along
		x := [4]float64{r[rPump], r[rDevice], r[rHeat], ahead}
		if !eliminate(&j, &x, 4) {
			return next, false
		}
		for i := range next {
			if math.Abs(x[i]) > 2*length+0.02 {
				return next, false
			}
			next[i] -= x[i]
		}
	}
	return next, false
}

// closeBetween closes the charge between y and the state length ahead of it.
func (t *trial) closeBetween(y, along *unknowns, length float64) bool {
	reached := true
	at := *y
	missing := func(s float64) float64 {
		next, ok := t.stepAlong(y, along, s)
		reached = reached && ok
		at = next
		return t.evaluate(next)[rCharge]
	}
	missing(root.Find(missing, 0, length, missing(0), missing(length), rootTolerance, 0))
	polished := at
	if t.newton(&polished, all) {
		at = polished
	} else {
		t.evaluate(at)
	}
	*y = at
	r := t.evaluate(at)
	return reached && largest(&r, all) < looseTolerance
}
