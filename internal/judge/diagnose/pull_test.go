package diagnose

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/signature"
)

// A clamp that reads 90 % of the way to the outdoor air leaves a tenth of the
// approach, whatever the machine's own approach is, and its spread shrinks alike.
func TestPullShrinksTheDistance(t *testing.T) {
	r := &readings{condGlide: 1.5}
	p, _ := liquidPull(r, 0.9)
	approach := func(v *vector) float64 {
		return v[signature.CondensingOver] - v[signature.Subcooling] - r.condGlide
	}
	table := signature.For(signature.Fixed)
	scatter := table.Sound.Scatter(signature.Rated)
	mean := table.Sound.Mean(table.Sound.At(signature.Rated, signature.UsualFluid))
	before := approach(&mean)
	own := scatter[signature.CondensingOver][signature.CondensingOver] +
		scatter[signature.Subcooling][signature.Subcooling] -
		2*scatter[signature.CondensingOver][signature.Subcooling]
	p.act(&mean, &scatter)
	if after := approach(&mean); math.Abs(after-0.1*before) > 1e-9 {
		t.Errorf("an approach of %.3f K became %.3f K", before, after)
	}
	left := scatter[signature.CondensingOver][signature.CondensingOver] +
		scatter[signature.Subcooling][signature.Subcooling] -
		2*scatter[signature.CondensingOver][signature.Subcooling]
	if want := 0.01*own + p.std*p.std*before*before; math.Abs(left-want) > 1e-9 {
		t.Errorf("its variance is %.4f K², and should be %.4f K²", left, want)
	}
}

// act on a covariance is follow on both sides of it.
func TestPullActsAsItFollows(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	table := signature.For(signature.Valve)
	r := &readings{evapGlide: 0.3}
	r.value[rOutdoor] = 305
	for range 20 {
		p, _ := suctionPull(r, rng.Float64())
		mean, cov := table.Sound.Mean(table.Sound.At(signature.Rated, signature.UsualFluid)),
			table.Sound.Scatter(signature.Rated)
		p.std = 0
		var follow, want matrix
		for f := range features {
			follow[f][f] = 1
		}
		p.follow(&follow)
		for f := range features {
			for g := range features {
				for h := range features {
					for k := range features {
						want[f][g] += follow[f][h] * cov[h][k] * follow[g][k]
					}
				}
			}
		}
		p.act(&mean, &cov)
		for f := range features {
			for g := range features {
				if math.Abs(cov[f][g]-want[f][g]) > 1e-9*(1+math.Abs(want[f][g])) {
					t.Fatalf(
						"covariance of %d and %d is %v, and should be %v", f, g, cov[f][g],
						want[f][g],
					)
				}
			}
		}
	}
}
