package diagnose

import (
	"math"

	"github.com/satline/satline/internal/diagnose/signature"
	"github.com/satline/satline/internal/normal"
)

// What a measurement is expected to tell, without what would follow from each outcome: that
// is worked out for the one that is asked for.

// A lead is a heavy component with what it expects each feature to read.
type lead struct {
	component
	mean, std vector
}

// heaviest returns the heaviest components, whose weights add to 1, the heaviest first.
func (c *caseFile) heaviest() []component {
	var heaviest [terms]int
	n := 0
	for i := range c.parts {
		w := c.parts[i].weight
		if n == terms && w <= c.parts[heaviest[n-1]].weight {
			continue
		}
		if n < terms {
			n++
		}
		k := n - 1
		for ; k > 0 && c.parts[heaviest[k-1]].weight < w; k-- {
			heaviest[k] = heaviest[k-1]
		}
		heaviest[k] = i
	}
	out := make([]component, n)
	sum := 0.0
	for k, i := range heaviest[:n] {
		out[k] = c.parts[i]
		sum += c.parts[i].weight
	}
	for k := range out {
		out[k].weight /= sum
	}
	return out
}

// leading returns the heaviest components with what they forecast.
func (c *caseFile) leading() []lead {
	parts := c.heaviest()
	out := make([]lead, len(parts))
	var all [features]bool
	for f := range all {
		all[f] = true
	}
	for k := range out {
		out[k].component = parts[k]
		c.forecast(&out[k], &all)
	}
	return out
}

// forecast fills in the mean and standard deviation of every feature under a component,
// given those that were measured.
func (c *caseFile) forecast(p *lead, all *[features]bool) {
	m, cov := c.predict(p.component, all, &c.seen.noise)
	var x [maxDim]float64
	var at [features]int
	n := 0
	for a := range features {
		if !c.seen.have[a] {
			continue
		}
		x[n], at[n] = c.seen.value[a]-m[a], a
		for k := range n + 1 {
			c.triangle.l[n][k] = cov[a][at[k]]
		}
		n++
	}
	known := c.triangle.factor(n)
	if known {
		c.triangle.whiten(x[:n])
	}
	for f := range features {
		if c.seen.have[f] {
			continue
		}
		mean, variance := m[f], cov[f][f]
		if known {
			var cross [maxDim]float64
			for k := range n {
				cross[k] = cov[f][at[k]]
			}
			c.triangle.whiten(cross[:n])
			for i := range n {
				mean += cross[i] * x[i]
				variance -= cross[i] * cross[i]
			}
		}
		p.mean[f], p.std[f] = mean, math.Sqrt(max(variance, 0.01))
	}
}

// An uncertainty sums weights up to their entropy in bits; they need not add to 1.
type uncertainty struct{ sum, logs float64 }

func (u *uncertainty) add(w float64) {
	if w > 0 {
		u.sum += w
		u.logs += w * math.Log(w)
	}
}

// bits is the entropy times the sum of the weights.
func (u *uncertainty) bits() float64 {
	if u.sum <= 0 {
		return 0
	}
	return (u.sum*math.Log(u.sum) - u.logs) / math.Ln2
}

// gainOfTest is what a yes-or-no test is expected to tell of the explanations, and of single
// faults.
func (c *caseFile) gainOfTest(t *test, all []weighted) (byCause, byFault float64) {
	var cause, fault [3]uncertainty // before, after a yes, after a no
	chances := chancesOfTests[t.index()]
	for _, x := range all {
		q := 0.0
		if b := x.key[1]; b != none {
			for j, f := range c.suspects[b].faults {
				q += c.suspects[b].share[j] * chances[f.index]
			}
		}
		yes := 0.0
		each := func(share, p float64) {
			if x.key[1] != none {
				p = max(p, q, 1-(1-p)*(1-q)/(1-t.usual))
			}
			w := x.weight * share
			fault[0].add(w)
			fault[1].add(w * p)
			fault[2].add(w * (1 - p))
			yes += w * p
		}
		if a := x.key[0]; a == none {
			each(1, t.usual)
		} else {
			for i, f := range c.suspects[a].faults {
				each(c.suspects[a].share[i], chances[f.index])
			}
		}
		cause[0].add(x.weight)
		cause[1].add(yes)
		cause[2].add(x.weight - yes)
	}
	gain := func(u *[3]uncertainty) float64 {
		if u[0].sum <= 0 {
			return 0
		}
		return (u[0].bits() - u[1].bits() - u[2].bits()) / u[0].sum
	}
	return gain(&cause), gain(&fault)
}

// gainOfReading is what a reading is expected to tell: the entropy of the mixture that
// predicts it less the mean entropy of its parts by cause.
func (c *caseFile) gainOfReading(f signature.Feature, leading []lead) float64 {
	low, high := reach(f, leading)
	var group [terms]int
	var keys [terms][2]int
	n := 0
	var before uncertainty
	var prior [terms]float64
	for i := range leading {
		k := [2]int{leading[i].a, leading[i].b}
		g := 0
		for g < n && keys[g] != k {
			g++
		}
		if g == n {
			keys[n] = k
			n++
		}
		group[i] = g
		prior[g] += leading[i].weight
	}
	for _, w := range prior[:n] {
		before.add(w)
	}
	var cells [grid][terms]float64
	step := (high - low) / grid
	for i := range leading {
		p := &leading[i]
		scale := 1 / p.std[f]
		below := quickBelow((low - p.mean[f]) * scale)
		for g := range grid {
			upTo := quickBelow((low + float64(g+1)*step - p.mean[f]) * scale)
			cells[g][group[i]] += p.weight * (upTo - below)
			below = upTo
		}
	}
	after := 0.0
	for g := range grid {
		var u uncertainty
		for _, w := range cells[g][:n] {
			u.add(w)
		}
		after += u.bits()
	}
	return max(0, before.bits()-after)
}

// reach is where a feature may be.
func reach(f signature.Feature, leading []lead) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for i := range leading {
		p := &leading[i]
		low, high = min(low, p.mean[f]-3.5*p.std[f]), max(high, p.mean[f]+3.5*p.std[f])
	}
	return low, high
}

// The normal distribution as a table, within 1e-5.
const (
	quickReach = 5
	quickSteps = 100 // per unit
)

var quickNormal = func() (t [2*quickReach*quickSteps + 2]float64) {
	for i := range t {
		t[i] = normal.Below(float64(i)/quickSteps - quickReach)
	}
	return t
}()

func quickBelow(z float64) float64 {
	x := (z + quickReach) * quickSteps
	if !(x > 0) {
		return 0
	}
	i := int(min(x, 2*quickReach*quickSteps))
	t := min(x-float64(i), 1)
	return quickNormal[i] + t*(quickNormal[i+1]-quickNormal[i])
}
