package diagnose

import (
	"math"

	"github.com/satline/satline/internal/physics/helmholtz"
)

// packed is room for the lower triangle of a covariance of the features, row by row.
const packed = features * (features + 1) / 2

// A packing is a state in the space of the features that were read: what weighing it, alone
// or with another, needs over and over.
type packing struct {
	by [features]float64 // what it adds to the mean
	// root times its transpose is the covariance of the machine under it, and rest what
	// comes on top; all is their sum.
	root      matrix
	rooted    bool // root is not that of a sound machine
	rest, all [packed]float64
	pull      *pull
	bound     float64 // what it adds to the log likelihood of the air
	log       float64 // of its weight among the states of its suspect
}

// pack makes room for all states; they are packed one by one.
func (c *caseFile) pack() {
	w := c.work
	w.n = 0
	for f := range features {
		if c.seen.have[f] {
			w.at[w.n], w.in[f] = f, w.n
			w.n++
		}
	}
	// The factor of the scatter of sound machines.
	for f := range features {
		copy(c.work.triangle.l[f][:f+1], c.machine.scatter[f][:f+1])
	}
	for f := range features {
		c.work.triangle.l[f][f] += leastScatter
	}
	if !c.work.triangle.factor(features) {
		for f := range features {
			clear(c.work.triangle.l[f][:])
			c.work.triangle.l[f][f] = math.Sqrt(max(c.machine.scatter[f][f], leastScatter))
		}
	}
	w.along, w.across = matrix{}, crossing{}
	for f := range features {
		for g := range f + 1 {
			w.along[f][g], w.across[g][f] = c.work.triangle.l[f][g], c.work.triangle.l[f][g]
		}
	}
	w.sound = packing{}
	for i := range w.n {
		f := w.at[i]
		w.off[i] = c.seen.value[f] - c.machine.mean[f] - c.machine.offset[f]
		w.sound.root[i] = w.along[f]
		for j := range i + 1 {
			w.noise[place(i, j)] = c.seen.noise[f][w.at[j]]
		}
	}
	w.square(&w.sound.root, &w.sound.all)
	total := 0
	w.first = w.first[:0]
	for a := range c.states {
		w.first = append(w.first, total)
		total += len(c.states[a])
	}
	if cap(w.packings) < total {
		w.packings = make([]packing, total+total/4)
	}
	w.packings = w.packings[:total]
}

// leastScatter, in K² or %², keeps the factor of the scatter from failing by rounding.
const leastScatter = 1e-9

func place(i, j int) int { return i*(i+1)/2 + j }

// packing is the room of a state. Single ones are weighed one after the other in the same room.
func (c *caseFile) packing(a, k int) *packing {
	if c.evidence.NoPairs {
		return &c.work.packings[0]
	}
	return &c.work.packings[c.work.first[a]+k]
}

func (c *caseFile) packState(s *state, p *packing) {
	w := c.work
	p.pull, p.rooted, p.bound, p.log = s.pull, s.gain != nil, 0, helmholtz.Log(s.weight)
	if s.bounded {
		p.bound = s.bound - c.bound
	}
	for i := range w.n {
		f := w.at[i]
		p.by[i] = s.shift[f]
		switch s.gain {
		case nil:
		case &nothingOfItsOwn:
			p.by[i] -= c.machine.offset[f]
			p.root[i] = vector{}
		default:
			p.by[i] += dot(&s.gain[f], &c.machine.offset)
			w.across.from(&s.gain[f], &w.sound.root[i], &p.root[i])
		}
		s.takeLeft(p.rest[place(i, 0):place(i, i)+1], f, &w.at)
	}
	switch s.gain {
	case nil:
		p.all = w.sound.all
	case &nothingOfItsOwn:
		p.all = [packed]float64{}
	default:
		w.square(&p.root, &p.all)
	}
	for i := range place(w.n, 0) {
		p.all[i] += p.rest[i]
	}
}

// square fills in root times its transpose.
func (w *workspace) square(root *matrix, all *[packed]float64) {
	to := 0
	for i := range root[:w.n] {
		a := &root[i]
		a0, a1, a2, a3, a4, a5, a6, a7, a8, a9 :=
			a[0], a[1], a[2], a[3], a[4], a[5], a[6], a[7], a[8], a[9]
		for j := range root[:i+1] {
			b := &root[j]
			all[to] = a0*b[0] + a1*b[1] + a2*b[2] + a3*b[3] + a4*b[4] +
				a5*b[5] + a6*b[6] + a7*b[7] + a8*b[8] + a9*b[9]
			to++
		}
	}
}

// A crossing is the factor of the scatter of sound machines, transposed.
type crossing matrix

// from fills in v times the factor, without its zeros, and u.
func (x *crossing) from(v, u, to *vector) {
	var _ [features]struct{} = [10]struct{}{}
	v0, v1, v2, v3, v4, v5, v6, v7, v8, v9 :=
		v[0], v[1], v[2], v[3], v[4], v[5], v[6], v[7], v[8], v[9]
	a, b, c, d, e, f, g := &x[0], &x[1], &x[2], &x[3], &x[4], &x[5], &x[6]
	to[0] = u[0] + (v0*a[0] + v1*a[1] + v2*a[2] + v3*a[3] + v4*a[4] +
		v5*a[5] + v6*a[6] + v7*a[7] + v8*a[8] + v9*a[9])
	to[1] = u[1] + v1*b[1] + v2*b[2] + v3*b[3] + v4*b[4] + v5*b[5] + v6*b[6] + v7*b[7] +
		v8*b[8] + v9*b[9]
	to[2] = u[2] + v2*c[2] + v3*c[3] + v4*c[4] + v5*c[5] + v6*c[6] + v7*c[7] + v8*c[8] + v9*c[9]
	to[3] = u[3] + v3*d[3] + v4*d[4] + v5*d[5] + v6*d[6] + v7*d[7] + v8*d[8] + v9*d[9]
	to[4] = u[4] + v4*e[4] + v5*e[5] + v6*e[6] + v7*e[7] + v8*e[8] + v9*e[9]
	to[5] = u[5] + v5*f[5] + v6*f[6] + v7*f[7] + v8*f[8] + v9*f[9]
	to[6] = u[6] + v6*g[6] + v7*g[7] + v8*g[8] + v9*g[9]
	to[7] = u[7] + v7*x[7][7] + v8*x[7][8] + v9*x[7][9]
	to[8] = u[8] + v8*x[8][8] + v9*x[8][9]
	to[9] = u[9] + v9*x[9][9]
}

// What is written out here is where most of the time of an inference is spent.
func dot(a, b *vector) float64 {
	var _ [features]struct{} = [10]struct{}{}
	return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] + a[3]*b[3] + a[4]*b[4] +
		a[5]*b[5] + a[6]*b[6] + a[7]*b[7] + a[8]*b[8] + a[9]*b[9]
}
