package heatpump

import (
	"math"

	"github.com/satline/satline/internal/judge/heatpump/signature"
)

// together are the causes that a technician finds at once in one heat pump: a charge that is
// wrong beside a coil that is short of air, and both coils short of it. What the second changes
// is added to what the first reads.
var together = [...][2]string{
	{undercharge, outdoorAir}, {undercharge, lowIndoorAir}, {overcharge, lowIndoorAir},
	{overcharge, outdoorAir}, {outdoorAir, lowIndoorAir}, {undercharge, strips},
	{outdoorAir, strips},
}

// seldom is how much rarer two causes are at once than if they came independently, as in
// package diagnose (common practice, no source).
const seldom = 0.7

// A part of an explanation is a cause in one of its faults and sizes; nil where there is none.
type part struct {
	cause *cause
	fault *fault
	size  int
}

// is reports whether a cause is in an atom, alone or beside another.
func (a *atom) is(c *cause) bool { return a.cause == c || a.beside.cause == c }

// each calls do with the parts of an atom.
func (a *atom) each(do func(p part)) {
	do(part{a.cause, a.fault, a.size})
	if a.beside.cause != nil {
		do(a.beside)
	}
}

// pairs adds the atoms of two causes at once, on the scale of atoms whose logarithms were taken
// over base, and scales all to add up to one.
func (b *belief) pairs(base float64) {
	single := len(b.atoms)
	for _, t := range together {
		first, second := causeOf(t[0]), causeOf(t[1])
		for s := range signature.Sizes {
			for u := range signature.Sizes {
				log := b.weighBoth(first, second, s, u) - base +
					math.Log(seldom*ordinary[s]*ordinary[u]*first.prior*second.prior)
				if log < leastPair {
					continue
				}
				for i := range first.faults {
					for k := range second.faults {
						f, g := &first.faults[i], &second.faults[k]
						b.atoms = append(b.atoms, atom{
							cause: first, fault: f, size: s, beside: part{second, g, u},
							chance: log + math.Log(b.shareOf(f)*b.shareOf(g)),
						})
					}
				}
			}
		}
	}
	both := b.atoms[single:]
	see(b.c, both)
	sum := 0.0
	for i := range both {
		both[i].chance = math.Exp(both[i].chance)
		sum += both[i].chance
	}
	for i := range b.atoms {
		b.atoms[i].chance /= 1 + sum
	}
}

// leastPair is the logarithm of the chance below which a pair is left out before anything was
// seen.
const leastPair = -16

func causeOf(code string) *cause {
	for i := range causes {
		if causes[i].code == code {
			return &causes[i]
		}
	}
	return nil
}

// weighBoth is the logarithm of the likelihood of two causes of some sizes at once. That two
// changes add up is off by a quarter of the second (common practice, no source).
func (b *belief) weighBoth(first, second *cause, size, beside int) float64 {
	const off = 0.25
	out := math.Inf(-1)
	var by [signature.Devices][signature.Features]float64
	for d := range signature.Device(signature.Devices) {
		with := signature.Mean(second.signature, beside, d, b.seen.weather)
		without := signature.Mean(0, 0, d, b.seen.weather)
		for f := range with {
			by[d][f] = with[f] - without[f]
		}
	}
	add := func(r *signature.Row, d signature.Device, share float64) {
		for _, s := range b.speeds {
			slow, m := *r, r.Mean(b.seen.weather)
			s.slow(&slow, &m)
			cov := slow.Covariance
			for f := range m {
				m[f] += by[d][f] + b.shift[f]
				for g := range m {
					cov[f][g] += off * off * by[d][f] * by[d][g]
				}
			}
			out = sumLog(out, b.seen.likelihood(m, &cov)+math.Log(share*s.chance))
		}
	}
	eachRow(first.signature, size, b.by, b.seen.weather, add)
	return out
}

func sumLog(x, y float64) float64 {
	high, low := max(x, y), min(x, y)
	if math.IsInf(low, -1) {
		return high
	}
	return high + math.Log1p(math.Exp(low-high))
}
