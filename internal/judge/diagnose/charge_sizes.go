package diagnose

import (
	"math"
)

// mostLevels is room for the severities of a suspect, mostSuspects for the suspects.
const (
	mostLevels   = 12
	mostSuspects = 40
)

// chargeSizes sum up the explanations with a wrong charge and those with none.
type chargeSizes struct {
	// bare are the likelihoods without a wrong charge, by companion, from 0 (none).
	bare [mostSuspects + 1]float64
	// fits and masses are the likelihoods and the weights of too little and of too much,
	// by companion and by size.
	fits, masses [2][mostSuspects + 1][mostLevels]float64
}

// clear makes room for so many companions.
func (z *chargeSizes) clear(companions int) {
	clear(z.bare[:])
	for k := range z.fits {
		clear(z.fits[k][:companions])
		clear(z.masses[k][:companions])
	}
}

// wrongCharge says whether a component has too little refrigerant (0), too much (1), or
// neither, at which size, and which suspect it has beside that, in which state.
func (c *caseFile) wrongCharge(p *component) (which, level, with, state int) {
	for k, a := range [...]int{c.short, c.full} {
		switch {
		case a == none:
		case p.a == a:
			return k, p.sa, p.b, p.sb
		case p.b == a:
			return k, p.sb, p.a, p.sa
		}
	}
	return none, 0, p.a, p.sa
}

// bestFit is the greatest log likelihood of the readings under what was weighed by them alone.
func (c *caseFile) bestFit() float64 {
	best := math.Inf(-1)
	for i := range c.parts {
		if !c.parts[i].followed {
			best = max(best, c.parts[i].fit)
		}
	}
	if math.IsInf(best, -1) {
		return 0
	}
	return best
}

// bySize adds the explanations with a charge that is known to a density, sums those with
// a wrong one up by size, and returns the weight of the rest, which are charged right.
func (c *caseFile) bySize(d *chargeDensity, companions int) (right float64) {
	z, best := &c.work.charges, c.bestFit()
	z.clear(companions)
	for i := range c.parts {
		p := &c.parts[i]
		if p.followed {
			d.spreadAbout(p.charge, followedWithin, p.weight)
			continue
		}
		if p.a != none && c.suspects[p.a].signature == NextToEmpty {
			d.spreadAbout(-c.states[p.a][p.sa].severity, emptyWithin, p.weight)
			continue
		}
		which, level, with, state := c.wrongCharge(p)
		share := 1.0
		if with != none {
			share = c.states[with][state].weight
		}
		switch {
		case which == none:
			right += p.weight
			if p.b == none && with+1 < companions {
				z.bare[with+1] += share * math.Exp(p.fit-best)
			}
		case with+1 < companions && level < mostLevels:
			z.fits[which][with+1][level] += share * math.Exp(p.fit-best)
			z.masses[which][with+1][level] += p.weight
		}
	}
	return right
}

// How far off a charge may be that is known about: one followed from earlier readings, by
// the steps between sizes and the scale, and one with next to nothing in it.
const (
	followedWithin = 0.06
	emptyWithin    = 0.2
)

// spreadSizes adds one explanation: a wrong charge of any size beside one companion. Between
// the levels the log likelihood is a parabola as bent as at the levels around, the prior
// density a line; below the least level the prior falls to nothing at none.
func (c *caseFile) spreadSizes(
	b *ChargeBelief, a int, sign, bare float64, fits, masses *[mostLevels]float64,
) {
	total := 0.0
	for _, m := range masses {
		total += m
	}
	if total <= 0 {
		return
	}
	// Knots, the first at no error; a last one half a step past the gravest.
	var at, log, prior [mostLevels + 2]float64
	n := 1
	const least = 1e-13
	log[0] = math.Log(max(bare, least))
	for k := range min(len(c.states[a]), mostLevels) {
		s := &c.states[a][k]
		if s.weight == 0 {
			break // followed from earlier readings
		}
		at[n], log[n], prior[n] = s.severity, math.Log(max(fits[k], least)), s.weight
		n++
	}
	if n < 2 {
		return
	}
	at[n] = at[n-1] + (at[n-1]-at[n-2])/2
	log[n] = log[n-1]
	n++
	for k := 1; k < n-1; k++ { // weight into density
		prior[k] /= (at[k+1] - at[k-1]) / 2
	}
	prior[n-1] = prior[n-2]
	bend := func(k int) float64 {
		if k > n-3 {
			return 0 // nothing was weighed past it
		}
		left, right := (log[k]-log[k-1])/(at[k]-at[k-1]), (log[k+1]-log[k])/(at[k+1]-at[k])
		return max(0, -(right-left)/(at[k+1]-at[k-1]))
	}
	var cells [chargeCells]float64
	sum := 0.0
	k, step := 0, 0.5*chargeStep
	curve := bend(1)
	for x := step; x < at[n-1]; x += chargeStep {
		for k < n-2 && x > at[k+1] {
			k++
			curve = bend(k)
			if k+1 < n-2 {
				curve = (curve + bend(k+1)) / 2
			}
		}
		t := (x - at[k]) / (at[k+1] - at[k])
		w := (prior[k] + t*(prior[k+1]-prior[k])) *
			math.Exp(log[k]+t*(log[k+1]-log[k])+curve*(x-at[k])*(at[k+1]-x))
		i := chargeCell(sign * x)
		cells[i] += w
		sum += w
	}
	if !(sum > 0) {
		return
	}
	for i, w := range cells {
		if w > 0 {
			b.density[i] += total * w / sum
		}
	}
}
