package diagnose

import (
	"sync"
)

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
