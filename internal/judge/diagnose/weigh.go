package diagnose

import (
	"math"
	"sync"

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

// A workspace is what weighing writes to; it is used again from one visit to the next.
type workspace struct {
	n  int
	at [features]int // features that were read
	in [features]int // their places, by feature
	// off is what was read less what this machine reads when sound.
	off   [features]float64
	sound packing
	noise [packed]float64
	// along is the factor of the scatter of sound machines, and across that transposed.
	along  matrix
	across crossing

	packings  []packing
	joined    [2]packing // of an explanation that earlier readings were followed to
	root      matrix     // of two states
	cov       [packed]float64
	histories []history
	first     []int // of each suspect
	parts     []component

	readings  readings
	seen      observation
	machine   machine
	without   readings // as they would be without a lie
	triangle  triangle
	ranges    ranges
	ends      [2][]weighted
	leading   [terms]lead
	suspects  []suspect
	tried     [][]state
	prior     []float64
	states    []state         // of the suspects, one after the other
	numbers   []float64       // of the suspects
	pulls     [mostPulls]pull // of states
	pulling   int
	charges   chargeSizes
	sizes     [mostSuspects]sizes // of the suspects, as sumBySignature sums them
	explained []weighted
	matrices  [mostMatrices]matrix // of states
	taken     int

	factored
	bySound factored // that of sound machines
}

// factored is a covariance as L·D·Lᵀ, and L⁻¹ times the residual.
type factored struct {
	l               [features][features]float64 // below its diagonal of ones
	inverse         [features]float64           // of D
	x               [features]float64
	logDet, squared float64
}

// step is L⁻¹ times the difference of two vectors; nil is none.
func (f *factored) step(n int, v, less *[features]float64) (y [features]float64) {
	for i := range n {
		x := v[i]
		if less != nil {
			x -= less[i]
		}
		li := f.l[i][:i]
		for k, l := range li {
			x -= l * y[k]
		}
		y[i] = x
	}
	return y
}

// distance is the squared distance that the residual would have, were the mean shifted.
func (f *factored) distance(n int, v, less *[features]float64) (squared float64) {
	y := f.step(n, v, less)
	for i := range n {
		x := f.x[i] - y[i]
		squared += x * x * f.inverse[i]
	}
	return squared
}

// dot is the product of two vectors that L⁻¹ was applied to, by the inverse covariance.
func (f *factored) dot(n int, a, b *[features]float64) (sum float64) {
	for i := range n {
		sum += a[i] * b[i] * f.inverse[i]
	}
	return sum
}

const mostMatrices = 128

// matrix is an empty one.
func (w *workspace) matrix() *matrix {
	if w.taken == mostMatrices {
		return &matrix{}
	}
	m := &w.matrices[w.taken]
	*m = matrix{}
	w.taken++
	return m
}

const mostPulls = 8

// pull keeps one.
func (w *workspace) pull(p pull) *pull {
	if w.pulling == mostPulls {
		more := p
		return &more
	}
	w.pulls[w.pulling] = p
	w.pulling++
	return &w.pulls[w.pulling-1]
}

// number is room for n numbers, all zero.
func (w *workspace) number(n int) []float64 {
	from := len(w.numbers)
	if from+n > cap(w.numbers) { // those that were given stand where they are
		from, w.numbers = 0, make([]float64, 0, 2*cap(w.numbers)+mostSuspects)
	}
	w.numbers = w.numbers[:from+n]
	out := w.numbers[from : from+n : from+n]
	clear(out)
	return out
}

// close gives the workspace back; nothing of the case may be used any more.
func (c *caseFile) close() {
	if c.earlier != nil {
		c.earlier.close()
	}
	w := c.work
	w.parts, w.suspects, w.tried, w.prior = c.parts, c.suspects, c.states, c.prior
	workspaces.Put(w)
	*c = caseFile{}
}

var workspaces = sync.Pool{New: func() any { return new(workspace) }}

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

// whiten factors a covariance with the noise of the instruments, and the residual with it.
func (w *workspace) whiten(cov *[packed]float64) (logDet, squared float64, ok bool) {
	det := 1.0
	var whole [features]float64 // a row of the factor times the variances
	for i := range w.x[:w.n] {
		from, to := place(i, 0), place(i, i)
		row, noise, li := cov[from:to+1], w.noise[from:to+1], w.l[i][:i+1]
		x, own := w.x[i], row[i]+noise[i]
		for j := range i {
			sum := row[j] + noise[j]
			lj := w.l[j][:j]
			for k, y := range whole[:len(lj)] {
				sum -= y * lj[k]
			}
			whole[j] = sum
			l := sum * w.inverse[j]
			li[j] = l
			x -= l * w.x[j]
			own -= l * sum
		}
		if !(own > 0) {
			return 0, 0, false
		}
		det *= own
		w.inverse[i] = 1 / own
		w.x[i] = x
		squared += x * x * w.inverse[i]
	}
	w.logDet, w.squared = helmholtz.Log(det), squared
	return w.logDet, squared, true
}
