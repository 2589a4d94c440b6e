package diagnose

import (
	"math"

	"github.com/satline/satline/internal/base/normal"
)

// ChargeBand is the relative charge error up to which a charge is in band: half of what a
// technician can hit with a scale and a target; common practice, no source.
const ChargeBand = 0.05

// A ChargeCall is what is said of the charge.
type ChargeCall int

// The calls.
const (
	ChargeOpen   ChargeCall = iota // more than one answer is left
	ChargeLow                      // below the band
	ChargeInBand                   // leave it alone
	ChargeHigh                     // above the band
)

// The chances from which the charge is called. A call moves refrigerant or says that none
// needs to be moved, and the sides differ in what gives the same readings: nothing but
// a restriction looks like too little, while gas in the circuit or a loose clamp on the
// liquid line looks like too much. The ladder of thresholds in testdata/trial.md shows what
// each would give; these were chosen on other visits. A fixed restrictor shows a shortage twice,
// by its superheat and by its subcooling: what it says with a chance of 0.70 to 0.85 was right in
// 86 % of 73 visits to the model's own machines, and in 93 % of 60 on the bench.
const (
	CallLow        = 0.85
	callLowOfFixed = 0.70
	CallHigh       = 0.85
	CallInBand     = 0.85
)

// callLow is the chance from which a machine is called short.
func callLow(fixed bool) float64 {
	if fixed {
		return callLowOfFixed
	}
	return CallLow
}

// Call is what is said of the charge by these chances. Once refrigerant was moved the machine
// stands on the scale, the next dose shows whether the last was right, and what it would
// cost to leave the charge as it is or to move more decides.
func (b *ChargeBelief) Call() ChargeCall {
	if b.moved != 0 {
		return b.callMoved()
	}
	switch {
	case b.Low >= callLow(b.fixed):
		return ChargeLow
	case b.High >= CallHigh:
		return ChargeHigh
	case b.InBand >= CallInBand:
		return ChargeInBand
	}
	return ChargeOpen
}

// callMoved calls what another dose is expected to cost less than to leave; nobody adds two
// ounces to what is likely to be right. To turn round costs what undoing costs besides, and is
// not done while the charge may be off the other way. Nothing is recovered from a charge that is
// in band with a chance of 0.6: of 31 such doses on the bench 30 came out of charges in band.
func (b *ChargeBelief) callMoved() ChargeCall {
	const hardly, likely, likelier = 0.05, 0.6, 0.8
	leave := b.Low*costOf(Undercharge).neglect + b.High*costOf(Overcharge).neglect
	_, add := b.dose(1)
	_, recover := b.dose(-1)
	if b.moved < 0 {
		add += costOf(Undercharge).mend + anotherRound
	} else {
		recover += costOf(Overcharge).mend + anotherRound
	}
	switch {
	case b.InBand >= likelier:
		return ChargeInBand
	case b.Low >= CallLow || add < leave && (b.moved > 0 || b.High < hardly):
		return ChargeLow
	case b.High >= CallHigh ||
		recover < leave && b.InBand < likely && (b.moved < 0 || b.Low < hardly):
		return ChargeHigh
	}
	return ChargeOpen
}

// A dose is at most a tenth of the charge, in steps, and at least what a scale can show.
const leastDose, mostDose = 3, 10

// Dose is the part of the charge to add, or to recover, next: the one with the least expected
// loss.
func (b *ChargeBelief) Dose(add bool) float64 {
	sign := 1
	if !add {
		sign = -1
	}
	share, _ := b.dose(sign)
	return share
}

// perRound is how much of the charge beyond the band costs another round.
const perRound = 0.04

// dose weighs what every dose leads to: what is left costs further rounds, too much has to be
// undone.
func (b *ChargeBelief) dose(sign int) (share, loss float64) {
	undone := float64(addToEnough)
	if sign < 0 {
		undone = recoverFromEnough
	}
	// Weights and moments of the cells before each.
	var weight, moment [chargeCells + 1]float64
	for i, w := range b.density {
		weight[i+1], moment[i+1] = weight[i]+w, moment[i]+w*chargeAt(i)
	}
	low, high := bandCells()
	share, loss = 0, math.Inf(1)
	for k := leastDose; k <= mostDose; k++ {
		left, past := 0.0, 0.0
		for _, w := range b.ways {
			n := int(math.Round(w.mass * float64(k)))
			short := ChargeBand + float64(n)*chargeStep
			if sign > 0 {
				left -= w.chance * (weight[low-n]*short + moment[low-n])
				past += w.chance * (weight[chargeCells] - weight[high-n])
				continue
			}
			left += w.chance *
				(moment[chargeCells] - moment[high+n] - (weight[chargeCells]-weight[high+n])*short)
			past += w.chance * weight[low+n]
		}
		if l := anotherRound*(1+left/perRound) + undone*past; l < loss {
			share, loss = float64(k)*chargeStep, l
		}
	}
	return share, loss
}

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

// A chargeDensity is the chance of each cell.
type chargeDensity [chargeCells]float64

// The cells of a belief: even steps of the relative error from empty to far too much. The
// edges of the band are edges of cells.
const (
	chargeStep  = 0.01
	chargeLeast = -1.0
	chargeMost  = 0.7
	chargeCells = 170
)

// middle of a cell.
func chargeAt(cell int) float64 { return chargeLeast + (float64(cell)+0.5)*chargeStep }

func chargeCell(x float64) int {
	return min(max(int((x-chargeLeast)/chargeStep), 0), chargeCells-1)
}

// bandCells are the first cell of the band, and the first past it.
func bandCells() (low, high int) {
	return chargeCell(-ChargeBand + chargeStep/2), chargeCell(ChargeBand + chargeStep/2)
}

// ownCharge is the standard deviation of the charge of machines that are charged right:
// a scale, the line set estimated, what was lost at the hoses. Common practice.
const ownCharge = 0.02

var rightly = func() (w chargeDensity) {
	for i := range w {
		edge := chargeLeast + float64(i)*chargeStep
		w[i] = normal.Below((edge+chargeStep)/ownCharge) - normal.Below(edge/ownCharge)
	}
	return w
}()

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

// moments of weighted values.
type moments struct{ weight, sum, square float64 }

func (m *moments) take(weight, x float64) {
	m.weight += weight
	m.sum += weight * x
	m.square += weight * x * x
}

func (m *moments) spread() Spread {
	if m.weight <= 0 {
		return Spread{}
	}
	mean := m.sum / m.weight
	return Spread{mean, math.Sqrt(max(0, m.square/m.weight-mean*mean))}
}

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

// suspect is the index of a signature among the suspects; none where it is not.
func (c *caseFile) suspect(code Code) int {
	for a := range c.suspects {
		if c.suspects[a].signature == code {
			return a
		}
	}
	return none
}

// How far off a charge may be that is known about: one followed from earlier readings, by
// the steps between sizes and the scale, and one with next to nothing in it.
const (
	followedWithin = 0.06
	emptyWithin    = 0.2
)

// spreadAbout adds a triangle about a charge.
func (d *chargeDensity) spreadAbout(charge, within, weight float64) {
	sum := 0.0
	from, to := chargeCell(charge-within), chargeCell(charge+within)
	for i := from; i <= to; i++ {
		sum += max(0, within-math.Abs(chargeAt(i)-charge))
	}
	for i := from; i <= to && sum > 0; i++ {
		d[i] += weight * max(0, within-math.Abs(chargeAt(i)-charge)) / sum
	}
}

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
