package diagnose

// ChargeBand is the relative charge error up to which a charge is in band: half of what a
// technician can hit with a scale and a target; common practice, no source.
const ChargeBand = 0.05

// A Spread is a mean with its standard deviation.
type Spread struct{ Mean, Std float64 }

// A ChargeBelief is the chance of every relative charge error: −0.2 is a fifth of the right
// charge missing. It is one with the chances of the explanations: every term of the mixture
// that has too little or too much refrigerant adds to it at its size, and every other at the
// scatter of machines that are charged right.
type ChargeBelief struct {
	// Low is the chance of less than the band, High that of more; with InBand they add to 1.
	Low, InBand, High float64
	// Error is of the charge as it is, ErrorGivenLow where it is below the band.
	Error, ErrorGivenLow Spread

	density chargeDensity
	fixed   bool  // it has a fixed restrictor
	moved   int   // the last move: 1 in, -1 out, 0 none
	ways    []way // how the machine may answer to the next
}

// Quantile is the relative charge error that the charge stays below with the chance p.
func (b *ChargeBelief) Quantile(p float64) float64 {
	sum := 0.0
	for i, w := range b.density {
		if w > 0 && sum+w >= p {
			return chargeLeast + (float64(i)+max(0, p-sum)/w)*chargeStep
		}
		sum += w
	}
	return chargeMost
}

// sumUp derives everything from the density.
func (b *ChargeBelief) sumUp() {
	total := 0.0
	for _, w := range b.density {
		total += w
	}
	if !(total > 0) {
		b.density, total = rightly, 1
	}
	low, high := bandCells()
	var below, above, all moments
	for i := range b.density {
		b.density[i] /= total
		w, x := b.density[i], chargeAt(i)
		all.take(w, x)
		switch {
		case i < low:
			below.take(w, x)
		case i >= high:
			above.take(w, x)
		}
	}
	b.Low, b.High = min(below.weight, 1), min(above.weight, 1)
	b.InBand = max(0, 1-b.Low-b.High)
	b.Error, b.ErrorGivenLow = all.spread(), below.spread()
}

// chargeBelief spreads each explanation with a wrong charge over its sizes: between those
// that were weighed, the likelihood is interpolated, down to that of the same explanation
// without it.
func (c *caseFile) chargeBelief() ChargeBelief {
	b := ChargeBelief{
		fixed: c.evidence.Metering.Fixed(), moved: c.evidence.moved(), ways: c.evidence.ways(),
	}
	companions := len(c.suspects) + 1
	if c.evidence.NoPairs {
		companions = 1
	}
	right := c.bySize(&b.density, companions)
	for i, w := range rightly {
		b.density[i] += right * w
	}
	z := &c.work.charges
	for k, a := range [...]int{c.short, c.full} {
		if a == none {
			continue
		}
		sign := [...]float64{-1, 1}[k]
		for with := range companions {
			c.spreadSizes(&b, a, sign, z.bare[with], &z.fits[k][with], &z.masses[k][with])
		}
	}
	if off, ok := c.byResponse(); ok && off.Std > 0 {
		b.density.narrow(off)
		c.weighBy(off)
	}
	b.sumUp()
	return b
}

// suspect is the index of a signature among the suspects; none where it is not.
func (c *caseFile) suspect(code Code) int {
	for a := range c.suspects {
		if c.suspects[a].signature == code {
			return a
		}
	}
	return none
}
