package diagnose

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// weigh returns the log likelihood of the readings under a component. The factor of its
// covariance and the whitened residual stay in the workspace.
func (c *caseFile) weigh(p component) float64 {
	w := c.work
	first, second := &w.sound, &w.sound
	if p.a != none {
		first = c.packing(p.a, p.sa)
	}
	if p.b != none {
		second = c.packing(p.b, p.sb)
	}
	logDet, squared, ok := w.whiten(c.covariance(first, second))
	if !ok {
		return math.Inf(-1)
	}
	return logStudent(w.n, logDet, squared) + c.bound + first.bound + second.bound
}

// weighShift is weigh of a state that only shifts. Its covariance is that of sound machines and
// the square of a part of the shift, whose factor follows from that of the first (Sherman and
// Morrison 1950, Annals of Mathematical Statistics 21:124-127).
func (c *caseFile) weighShift(s *state) float64 {
	w := c.work
	var by [features]float64
	for i, f := range w.at[:w.n] {
		by[i] = s.shift[f]
	}
	step := w.bySound.step(w.n, &by, nil)
	var along, length, squared float64
	for i, y := range step[:w.n] {
		x, inverse := w.bySound.x[i]-y, w.bySound.inverse[i]
		squared += x * x * inverse
		along += x * y * inverse
		length += y * y * inverse
	}
	wider := 1 + s.around*length
	bound := c.bound
	if s.bounded {
		bound = s.bound
	}
	return logStudent(
		w.n, w.bySound.logDet+helmholtz.Log(wider), squared-s.around*along*along/wider,
	) + bound
}

// covariance of the readings under two states, without the noise of the instruments; the
// residual is left in the workspace. The next call may write over it.
func (c *caseFile) covariance(first, second *packing) (cov *[packed]float64) {
	w := c.work
	for i := range w.n {
		w.x[i] = w.off[i] - first.by[i] - second.by[i]
	}
	if second == &w.sound && first.pull == nil {
		return &first.all
	}
	cov = &w.cov
	size := place(w.n, 0)
	switch {
	case second.rooted && first.rooted:
		for i := range w.n {
			w.root[i] = w.rootOf(first, second, i)
		}
		w.square(&w.root, cov)
		for i := range size {
			cov[i] += first.rest[i] + second.rest[i]
		}
	case second.rooted:
		for i := range size {
			cov[i] = second.all[i] + first.rest[i]
		}
	default:
		for i := range size {
			cov[i] = first.all[i] + second.rest[i]
		}
	}
	for _, s := range [...]*packing{first, second} {
		if s.pull != nil {
			c.pullPacked(s.pull, cov)
		}
	}
	return cov
}

// rootOf is a row of the root under two states.
func (w *workspace) rootOf(first, second *packing, i int) vector {
	switch {
	case first.rooted && second.rooted:
		row := first.root[i]
		for h := range row {
			row[h] += second.root[i][h] - w.sound.root[i][h]
		}
		return row
	case second.rooted:
		return second.root[i]
	case first.rooted:
		return first.root[i]
	}
	return w.sound.root[i]
}

// pullPacked applies a pull to the residual and the covariance, as act does to mean and
// covariance.
func (c *caseFile) pullPacked(p *pull, cov *[packed]float64) {
	w := c.work
	f := w.in[p.feature]
	distance := p.base
	var row [features]float64
	at := func(i, j int) float64 {
		if i < j {
			i, j = j, i
		}
		return cov[place(i, j)]
	}
	for g := range w.n {
		row[g] = at(f, g)
	}
	for h, slope := range p.gradient {
		if slope == 0 {
			continue
		}
		k := w.in[h]
		distance += slope * (c.seen.value[h] - w.x[k])
		for g := range w.n {
			row[g] += p.fraction * slope * at(k, g)
		}
	}
	w.x[f] -= p.fraction * distance
	own := row[f]
	for h, slope := range p.gradient {
		if slope != 0 {
			own += p.fraction * slope * row[w.in[h]]
		}
	}
	for g := range w.n {
		if g <= f {
			cov[place(f, g)] = row[g]
		} else {
			cov[place(g, f)] = row[g]
		}
	}
	cov[place(f, f)] = own + p.std*p.std*distance*distance
}
