package diagnose

import (
	"cmp"
	"slices"
)

// A Marginal is a signature with the chance that it is present, alone or with another: the
// sum over all explanations that hold it.
type Marginal struct {
	Signature Code
	Chance    float64
	// Severity is in the unit of the signature, where it is present; see Cause.Size.
	Severity Spread
	// Faults that make the signature, the likeliest first; their chances, given the
	// signature, add to 1.
	Faults []FaultChance
}

// Named is the fault that the signature is put right by the name of: the only one, or one that is
// likeliest by far; nil where there is none.
func (m *Marginal) Named() *FaultChance {
	const byFar = 0.7
	if len(m.Faults) > 0 && (m.Faults[0].Chance >= byFar || len(m.Faults) == 1) {
		return &m.Faults[0]
	}
	return nil
}

// Marginals returns every signature with a chance worth a figure, the likeliest first. Their
// chances add to more than 1 where two may be present at once.
func (d *Diagnosis) Marginals() []Marginal { return d.marginals }

// Any is the chance that at least one of the signatures is present: that of a repair which
// puts all of them right.
func (d *Diagnosis) Any(signatures ...Code) float64 {
	sum := 0.0
	for _, s := range d.sums {
		if slices.ContainsFunc(
			s.signatures[:], func(c Code) bool { return c != "" && slices.Contains(signatures, c) },
		) {
			sum += s.weight
		}
	}
	return min(1, sum)
}

// summed is the chance of an explanation, whatever its sizes; an empty signature is none.
type summed struct {
	signatures [2]Code
	weight     float64
}

// leastMarginal is the chance below which a signature is not worth a figure.
const leastMarginal = 1e-3

// sumBySignature sums the mixture up by signature.
func (c *caseFile) sumBySignature(chance *[mostSuspects]float64) []Marginal {
	all, order := &c.work.sizes, make([]int, 0, mostSuspects)
	for a := range c.suspects {
		if chance[a] >= leastMarginal {
			all[a] = c.sizesTried(a)
			order = append(order, a)
		}
	}
	for i := range c.parts {
		p := &c.parts[i]
		if p.a != none && chance[p.a] >= leastMarginal {
			all[p.a].take(p.weight, &c.states[p.a][p.sa])
		}
		if p.b != none && chance[p.b] >= leastMarginal {
			all[p.b].take(p.weight, &c.states[p.b][p.sb])
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(min(1, chance[b]), min(1, chance[a]))
	})
	out := make([]Marginal, 0, len(order))
	for _, a := range order {
		out = append(out, Marginal{
			Signature: c.suspects[a].signature, Chance: min(1, chance[a]),
			Severity: all[a].main().posterior.spread(), Faults: c.faultChances(a, &all[a]),
		})
	}
	return out
}

// sizes are the severities of a suspect by variant, whose units differ.
type sizes struct {
	n  int
	of [mostVariants]variantSizes
}

// variantSizes are those of one variant.
type variantSizes struct {
	name      string
	posterior moments
	prior     float64
}

const mostVariants = 4

// index of a variant; what is past the room for them counts with the first.
func (s *sizes) index(variant string) int {
	for i := range s.n {
		if s.of[i].name == variant {
			return i
		}
	}
	if s.n == mostVariants {
		return 0
	}
	s.of[s.n].name = variant
	s.n++
	return s.n - 1
}

// main is the likeliest variant.
func (s *sizes) main() *variantSizes {
	best := &s.of[0]
	for i := range s.n {
		if s.of[i].posterior.weight > best.posterior.weight {
			best = &s.of[i]
		}
	}
	return best
}

// sizesTried are the variants of suspect a before anything is summed.
func (c *caseFile) sizesTried(a int) (s sizes) {
	for k := range c.states[a] {
		s.of[s.index(c.states[a][k].variant)].prior += c.states[a][k].weight
	}
	return s
}

func (s *sizes) take(weight float64, t *state) {
	s.of[s.index(t.variant)].posterior.take(weight, t.severity)
}

// faultChances splits a suspect by its faults: by what was seen, and by the variants that
// the readings are nearer to.
func (c *caseFile) faultChances(a int, s *sizes) []FaultChance {
	suspect := &c.suspects[a]
	from := len(c.chances)
	for range suspect.faults {
		c.chances = append(c.chances, FaultChance{})
	}
	out := c.chances[from:len(c.chances):len(c.chances)]
	sum := 0.0
	for i, f := range suspect.faults {
		chance := suspect.share[i]
		if v := &s.of[s.index(f.Variant)]; v.prior > 0 {
			chance *= v.posterior.weight / v.prior
		}
		sum += chance
		out[i] = FaultChance{f, chance}
	}
	for i := range out {
		if sum > 0 {
			out[i].Chance /= sum
		}
	}
	for i := range out { // a handful, in place
		for ; i > 0 && out[i].Chance > out[i-1].Chance; i-- {
			out[i], out[i-1] = out[i-1], out[i]
		}
	}
	return out
}
