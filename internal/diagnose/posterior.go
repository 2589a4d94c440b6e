package diagnose

import (
	"math"
	"slices"

	"github.com/satline/satline/internal/diagnose/signature"
)

// A state is a suspect at one severity, as a shift of the readings.
type state struct {
	severity float64
	weight   float64 // prior among the states of its suspect
	shift    vector
	gain     *matrix // nil: the shift is the same for every machine
	rest     *matrix
	pull     *pull            // nil: no reading is drawn toward the air
	capacity float64          // part of the cooling capacity lost, on average
	fluid    string           // which refrigerant, for OtherRefrigerant
	variant  string           // entry of the table, where it is not the signature's own
	level    *signature.Level // nil for what is not in the table
	// bound is the log likelihood of the air, were this the cause.
	bound float64
}

// A component is one explanation at definite severities: one term of the
// mixture that is the posterior.
type component struct {
	a, b   int     // suspects; none is -1
	sa, sb int     // their states
	fit    float64 // log likelihood of the readings
	log    float64
	weight float64 // posterior, after normalizing
	// followed says that it comes from earlier readings and what was done since, which
	// leaves a relative charge error.
	followed bool
	charge   float64
}

// A case is a visit in the making.
type caseFile struct {
	evidence *Evidence
	table    *signature.Table
	seen     *observation
	clues    []clue
	machine  *machine
	suspects []suspect
	states   [][]state
	prior    []float64
	parts    []component
	// ordinary is the chance that the weather is.
	ordinary float64
	// noDischarge says that the discharge line of this refrigerant is beyond
	// the table.
	noDischarge bool
	// bound is the log likelihood of the air if no instrument lies.
	bound float64

	triangle triangle // scratch
}

const none = -1

// predict returns the mean and covariance of the features, instruments
// included, under a component. Only features marked in want are filled in.
func (c *caseFile) predict(p component, want *[features]bool, noise *matrix) (mean vector, cov matrix) {
	var first, second *state
	if p.a != none {
		first = &c.states[p.a][p.sa]
	}
	if p.b != none {
		second = &c.states[p.b][p.sb]
	}
	var follow matrix // 1 + gains
	for f := range features {
		follow[f][f] = 1
		mean[f] = c.machine.mean[f]
	}
	for _, s := range [...]*state{first, second} {
		if s == nil {
			continue
		}
		for f := range features {
			mean[f] += s.shift[f]
			if s.gain != nil {
				for g := range features {
					follow[f][g] += s.gain[f][g]
				}
			}
		}
	}
	bare := (first == nil || first.gain == nil) && (second == nil || second.gain == nil)
	var half vector
	for f := range features {
		if !want[f] {
			continue
		}
		if bare {
			mean[f] += c.machine.offset[f]
			for g := range f + 1 {
				cov[f][g] = c.machine.scatter[f][g]
			}
		} else {
			for g := range features {
				mean[f] += follow[f][g] * c.machine.offset[g]
				half[g] = 0
			}
			for h := range features {
				x := follow[f][h]
				if x == 0 {
					continue
				}
				for g := range features {
					half[g] += x * c.machine.scatter[h][g]
				}
			}
			for g := range f + 1 {
				if !want[g] {
					continue
				}
				sum := 0.0
				for h := range features {
					sum += half[h] * follow[g][h]
				}
				cov[f][g] = sum
			}
		}
		for g := range f + 1 {
			for _, s := range [...]*state{first, second} {
				if s != nil && s.rest != nil {
					cov[f][g] += s.rest[f][g]
				}
			}
		}
	}
	for f := range features {
		for g := range f {
			cov[g][f] = cov[f][g]
		}
	}
	for _, s := range [...]*state{first, second} {
		if s != nil && s.pull != nil {
			s.pull.act(&mean, &cov)
		}
	}
	for f := range features {
		for g := range features {
			cov[f][g] += noise[f][g]
		}
	}
	return mean, cov
}

// weigh returns the log likelihood of the readings under a component, and the
// squared Mahalanobis distance.
func (c *caseFile) weigh(p component) (log, distance float64) {
	mean, cov := c.predict(p, &c.seen.have, &c.seen.noise)
	n, distance, ok := c.distance(&c.seen.value, &mean, &cov)
	if !ok {
		return math.Inf(-1), math.Inf(1)
	}
	return logStudent(n, c.triangle.logDet(), distance) + c.bounds(p), distance
}

// distance is the squared Mahalanobis distance of v from a mean over the n features that
// were read; false where the covariance is none. It leaves the factor of that in the
// triangle.
func (c *caseFile) distance(v, mean *vector, cov *matrix) (n int, squared float64, ok bool) {
	var x [maxDim]float64
	for f := range features {
		if !c.seen.have[f] {
			continue
		}
		x[n] = v[f] - mean[f]
		k := 0
		for g := range f + 1 {
			if c.seen.have[g] {
				c.triangle.l[n][k] = cov[f][g]
				k++
			}
		}
		n++
	}
	if !c.triangle.factor(n) {
		return n, 0, false
	}
	c.triangle.whiten(x[:n])
	for i := range n {
		squared += x[i] * x[i]
	}
	return n, squared, true
}

// bounds is the log likelihood of the air as it was read: a lie among the causes
// replaces it by that of the readings without the lie.
func (c *caseFile) bounds(p component) float64 {
	bound := c.bound
	for k, a := range [...]int{p.a, p.b} {
		if a == none {
			continue
		}
		if s := &c.states[a][[...]int{p.sa, p.sb}[k]]; s.level == nil && s.rest != nil {
			bound += s.bound - c.bound
		}
	}
	return bound
}

const (
	// seldom is how much rarer two faults at once are than if faults came
	// independently.
	seldom = 0.5
	// window is how far, in log likelihood, a pair at a first guess of its sizes may be
	// below all single suspects together and still be gone through: Occam's window of
	// Madigan and Raftery 1994, JASA 89:1535-1546. Both figures were chosen on simulated
	// visits, not those of the trial, by the log probability of the truth and by how often
	// both of two faults are named.
	window = 6
)

// infer fills in the mixture.
func (c *caseFile) infer() {
	sound := component{a: none, b: none}
	sound.fit, _ = c.weigh(sound)
	sound.log = math.Log(priorSound*c.ordinary) + sound.fit + c.logClues(nil, nil)
	c.parts = append(c.parts, sound)

	best := make([]float64, len(c.suspects)) // log of the sum over states
	likeliest := make([]int, len(c.suspects))
	for a := range c.suspects {
		best[a] = math.Inf(-1)
		top := math.Inf(-1)
		seen := c.logClues(&c.suspects[a], nil)
		for s := range c.states[a] {
			p := component{a: a, b: none, sa: s}
			p.fit, _ = c.weigh(p)
			p.log = math.Log(c.prior[a]*c.states[a][s].weight) + p.fit + seen
			c.parts = append(c.parts, p)
			best[a] = logAdd(best[a], p.log)
			if p.log > top {
				top, likeliest[a] = p.log, s
			}
		}
	}
	order := make([]int, len(c.suspects))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return compare(best[j], best[i]) })
	least := c.evidenceLog() - window
	for i, a := range order {
		for _, b := range order[:i] {
			if !together(c.suspects[a].signature, c.suspects[b].signature) {
				continue
			}
			prior := math.Log(seldom*c.prior[a]*c.prior[b]) + c.logClues(&c.suspects[a], &c.suspects[b])
			// The one that fits better alone stays at its size for the guess.
			guess := math.Inf(-1)
			for s := range c.states[a] {
				guess = max(guess, c.pair(a, b, s, likeliest[b], prior).log)
			}
			if guess < least {
				continue
			}
			for sa := range c.states[a] {
				for sb := range c.states[b] {
					c.parts = append(c.parts, c.pair(a, b, sa, sb, prior))
				}
			}
		}
	}
	c.normalize()
}

// pair weighs two suspects in two states; prior is that of the two together.
func (c *caseFile) pair(a, b, sa, sb int, prior float64) component {
	if a > b {
		a, b, sa, sb = b, a, sb, sa
	}
	p := component{a: a, b: b, sa: sa, sb: sb}
	p.fit, _ = c.weigh(p)
	p.log = prior + math.Log(c.states[a][sa].weight*c.states[b][sb].weight) + p.fit
	return p
}

func (c *caseFile) normalize() {
	total := c.evidenceLog()
	for i := range c.parts {
		c.parts[i].weight = math.Exp(c.parts[i].log - total)
	}
}

// evidenceLog is the log of the sum of prior times likelihood.
func (c *caseFile) evidenceLog() float64 {
	total := math.Inf(-1)
	for i := range c.parts {
		total = logAdd(total, c.parts[i].log)
	}
	return total
}

// together says whether two suspects make a pair: not both ends of one thing,
// and nothing with 'the readings contradict each other'.
func together(a, b Code) bool {
	opposite := [...][2]Code{{Undercharge, Overcharge}, {LowIndoorAir, HighIndoorAir}, {Restriction, Overfeed}}
	for _, o := range opposite {
		if a == o[0] && b == o[1] || a == o[1] && b == o[0] {
			return false
		}
	}
	for _, x := range [...]Code{a, b} {
		switch x {
		case readingsClash, LowLoad, LowAmbient, Economizer, NoTrap, HosesSwapped, BulbsSwapped:
			return false
		}
	}
	return true
}

func logAdd(a, b float64) float64 {
	if a < b {
		a, b = b, a
	}
	if math.IsInf(a, -1) {
		return a
	}
	return a + math.Log1p(math.Exp(b-a))
}

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}
