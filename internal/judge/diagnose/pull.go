package diagnose

import "github.com/satline/satline/internal/judge/diagnose/signature"

// A pull is a clamp in poor contact: it reads a fraction of the way from its
// pipe to the outdoor air. The distance between the two is that of the machine
// as it runs, faults and all, so a pull is not a shift but a rule on the
// features:
//
//	feature = feature + fraction · (base + gradient · features)
//
// Where the fraction is near 1 the rule says sharply what the clamp reads: the
// outdoor air.
type pull struct {
	feature       signature.Feature
	fraction, std float64
	base          float64
	gradient      vector
}

// act applies the rule to a mean and a covariance of what the machine does.
func (p *pull) act(mean *vector, cov *matrix) {
	f := p.feature
	distance := p.base
	for g, slope := range p.gradient {
		distance += slope * mean[g]
	}
	mean[f] += p.fraction * distance
	// The row of the feature, then its column; its own entry takes both.
	var row vector
	for g := range features {
		row[g] = cov[f][g]
		for h, slope := range p.gradient {
			if slope != 0 {
				row[g] += p.fraction * slope * cov[h][g]
			}
		}
	}
	own := row[f]
	for h, slope := range p.gradient {
		if slope != 0 {
			own += p.fraction * slope * row[h]
		}
	}
	for g := range features {
		cov[f][g], cov[g][f] = row[g], row[g]
	}
	cov[f][f] = own + p.std*p.std*distance*distance
}

// follow applies the rule to how features follow the machine's own offset.
func (p *pull) follow(m *matrix) {
	row := m[p.feature]
	for h, slope := range p.gradient {
		for g := range row {
			row[g] += p.fraction * slope * m[h][g]
		}
	}
	m[p.feature] = row
}

// suctionPull is a clamp on the suction line. The air around it is warmer, and
// the superheat comes out too high.
func suctionPull(r *readings, fraction float64) (pull, bool) {
	return pull{
		feature: signature.Superheat, fraction: fraction, std: fractionStd,
		base:     r.value[rOutdoor] - r.evapGlide,
		gradient: vector{signature.Evaporating: -1, signature.Superheat: -1},
	}, r.have[rSuctionLine] && r.have[rEvaporating] && r.have[rOutdoor]
}

// dischargePull is a clamp on the discharge line. The air around it is far colder.
func dischargePull(r *readings, fraction float64) (pull, bool) {
	return pull{
		feature: signature.DischargeOver, fraction: fraction, std: fractionStd,
		gradient: vector{signature.CondensingOver: -1, signature.DischargeOver: -1},
	}, r.have[rDischargeLine] && r.have[rCondensing] && r.have[rOutdoor]
}

// liquidPull is a clamp on the liquid line. The air around it is colder, and the
// subcooling comes out too high.
func liquidPull(r *readings, fraction float64) (pull, bool) {
	return pull{
		feature: signature.Subcooling, fraction: fraction, std: fractionStd,
		base:     -r.condGlide,
		gradient: vector{signature.CondensingOver: 1, signature.Subcooling: -1},
	}, r.have[rLiquidLine] && r.have[rCondensing] && r.have[rOutdoor]
}
