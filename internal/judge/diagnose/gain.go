package diagnose

import (
	"math"

	"github.com/satline/satline/internal/judge/diagnose/signature"
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

// leading returns the heaviest components with what they forecast of the readings untaken.
func (c *caseFile) leading(untaken []scale) []lead {
	parts := c.heaviest()
	out := c.work.leading[:len(parts)]
	want := c.seen.have
	for _, s := range untaken {
		want[s.feature] = true
	}
	for k := range out {
		out[k] = lead{component: parts[k]}
		c.forecast(&out[k], &want)
	}
	return out
}

// forecast fills in the mean and standard deviation of the features wanted under a component,
// given those that were measured.
func (c *caseFile) forecast(p *lead, want *[features]bool) {
	m, cov := c.predict(p.component, want, c.seen.noise)
	var x [features]float64
	var at [features]int
	n := 0
	for a := range features {
		if !c.seen.have[a] {
			continue
		}
		x[n], at[n] = c.seen.value[a]-m[a], a
		for k := range n + 1 {
			c.work.triangle.l[n][k] = cov[a][at[k]]
		}
		n++
	}
	known := c.work.triangle.factor(n)
	if known {
		c.work.triangle.whiten(x[:n])
	}
	for f := range features {
		if c.seen.have[f] || !want[f] {
			continue
		}
		mean, variance := m[f], cov[f][f]
		if known {
			var cross [features]float64
			for k := range n {
				cross[k] = cov[f][at[k]]
			}
			c.work.triangle.whiten(cross[:n])
			for i := range n {
				mean += cross[i] * x[i]
				variance -= cross[i] * cross[i]
			}
		}
		p.mean[f], p.std[f] = mean, math.Sqrt(max(variance, 0.01))
	}
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
