package coldroom

import (
	"math"

	"github.com/satline/satline/internal/judge/coldroom/signature"
)

// together are the causes that a technician finds at once in one machine: an iced coil or a
// dirty condenser beside a charge that is wrong, and dirt at both coils. What the second
// changes is added to what the first reads.
var together = [...][2]string{
	{undercharge, evaporator}, {undercharge, condenser}, {overcharge, condenser},
	{condenser, evaporator},
}

// seldom is how much rarer two faults are at once than if they came independently, as in
// package diagnose (common practice, no source).
const seldom = 0.7

// A pair is two faults at once, by their places in faults.
type pair struct {
	first, second int
	chance        float64
}

// A coupling is two causes at once, with the likelihood of the readings over their sizes.
type coupling struct {
	causes     [2]string
	likelihood float64 // over that of top
}

// couplings weighs the readings by the pairs of causes; likelihoods are over exp(top).
func (k *known) couplings(of []cluster, top float64) []coupling {
	var out []coupling
	for _, t := range together {
		c := coupling{causes: t}
		first, second := causeIndex(t[0]), causeIndex(t[1])
		for i := range of {
			a := &of[i]
			if a.cause != first {
				continue
			}
			without := soundOf(of, a)
			for j := range of {
				b := &of[j]
				if b.cause != second || b.kind != a.kind {
					continue
				}
				both := beside(a, b, without)
				fits := math.Exp(k.likelihood(&both) - top)
				// The share of the kind is in both.
				c.likelihood += fits * a.share * b.share / without.share
			}
		}
		out = append(out, c)
	}
	return out
}

// soundOf is the sound machine of the kind of a cluster.
func soundOf(of []cluster, a *cluster) *cluster {
	for i := range of {
		if of[i].kind == a.kind && signature.Causes[of[i].cause].Code == sound {
			return &of[i]
		}
	}
	return a
}

// beside is a cluster whose machines have what another has as well. That two changes add up
// is off by a quarter of the second (common practice, no source).
func beside(a, b, without *cluster) cluster {
	const off = 0.25
	out := *a
	var by signature.Vector
	for f := range by {
		by[f] = b.mean[f] - without.mean[f]
		out.mean[f] += by[f]
	}
	for _, f := range []int{signature.Superheat, signature.BulbSuperheat, signature.Subcooling} {
		out.mean[f] = max(out.mean[f], 0)
	}
	for f := range by {
		for g := range by {
			out.spread[f][g] += off * off * by[f] * by[g]
		}
	}
	return out
}

// chanceOfBoth is the chance of a yes where two faults are: either brings it about.
func (l *look) chanceOfBoth(first, second *fault) float64 {
	p := 1 - (1-l.chance(first))*(1-l.chance(second))/(1-l.usual)
	return min(max(p, 0.002), 0.998)
}
