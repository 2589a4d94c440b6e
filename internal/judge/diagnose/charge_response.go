package diagnose

import (
	"math"
)

// strays is the chance that a machine is not charged right where its reading meets the
// target: another fault, a target that is not its own.
const strays = 0.1

// byResponse is the charge error by how far a reading is from what this machine would read if it
// were charged right, and by how it has answered so far; false where it is not known.
func (c *caseFile) byResponse() (off Spread, ok bool) {
	r := c.evidence.Response
	if r == nil || r.PerCharge.Mean == 0 {
		return off, false
	}
	of, _ := readingOf(r.Feature)
	mean, cov := c.predict(component{a: none, b: none}, &c.seen.have, c.seen.noise)
	from, variance := 0.0, 0.0
	for f, w := range of {
		if w == 0 {
			continue
		}
		if !c.seen.have[f] {
			return off, false
		}
		from += w * (c.seen.value[f] - mean[f])
		variance += w * dot(&of, &cov[f])
	}
	off.Mean = from / r.PerCharge.Mean
	off.Std = math.Hypot(math.Sqrt(variance), off.Mean*r.PerCharge.Std) / math.Abs(r.PerCharge.Mean)
	return off, true
}

// narrow takes in what the answer of the machine says of the charge.
func (d *chargeDensity) narrow(to Spread) {
	for i := range d {
		z := (chargeAt(i) - to.Mean) / to.Std
		d[i] *= (1-strays)*math.Exp(-z*z/2) + strays
	}
}

// weighBy takes it in for every explanation, by the charge that it has.
func (c *caseFile) weighBy(to Spread) {
	total := 0.0
	for i := range c.parts {
		p := &c.parts[i]
		at, within := p.charge, followedWithin/math.Sqrt(6) // as a triangle has it
		if !p.followed {
			at, within = c.chargeOf(p)
		}
		std := math.Hypot(to.Std, within)
		z := (at - to.Mean) / std
		p.weight *= (1-strays)*to.Std/std*math.Exp(-z*z/2) + strays
		total += p.weight
	}
	for i := range c.parts {
		c.parts[i].weight /= total
	}
}

// chargeOf is the relative charge error that an explanation has by itself, with its standard
// deviation.
func (c *caseFile) chargeOf(p *component) (off, within float64) {
	if p.a != none && c.suspects[p.a].signature == NextToEmpty {
		return -c.states[p.a][p.sa].severity, emptyWithin / math.Sqrt(6)
	}
	const betweenLevels = 0.03
	switch which, level, _, _ := c.wrongCharge(p); which {
	case 0:
		return -c.states[c.short][level].severity, betweenLevels
	case 1:
		return c.states[c.full][level].severity, betweenLevels
	}
	return 0, ownCharge
}
