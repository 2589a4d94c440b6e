package diagnose

import (
	"slices"

	"github.com/satline/satline/internal/judge/diagnose/signature"
)

// parts says of which raw readings each feature is the signed sum, besides the
// glides, which are constants here.
var parts = [features][]struct {
	raw  int
	sign float64
}{
	signature.Evaporating:    {{rEvaporating, 1}},
	signature.Superheat:      {{rSuctionLine, 1}, {rEvaporating, -1}},
	signature.CondensingOver: {{rCondensing, 1}, {rOutdoor, -1}},
	signature.Subcooling:     {{rCondensing, 1}, {rLiquidLine, -1}},
	signature.DischargeOver:  {{rDischargeLine, 1}, {rCondensing, -1}},
	signature.Split:          {{rReturnDryBulb, 1}, {rSupplyDryBulb, -1}},
	signature.WetBulbSplit:   {{rReturnWetBulb, 1}, {rSupplyWetBulb, -1}},
	signature.CondenserRise:  {{rCondenserLeaving, 1}, {rOutdoor, -1}},
	signature.Airflow:        {{rAirflow, 1}},
	signature.Power:          {{rPower, 1}},
}

// observation is the features that were measured.
type observation struct {
	raw *readings
	conditions
	value vector
	have  [features]bool
	// noise is the covariance of value less the mean for the weather, by the
	// instruments alone.
	noise *matrix
	own   matrix
	n     int
	// meant is what machines of the kind read when sound, at that weather and fluid.
	at    signature.Point
	meant vector
}

// take fills the observation in.
func (o *observation) take(r *readings, sound *signature.Sound) {
	o.raw, o.value, o.n = r, vector{}, 0
	o.conditions = r.conditions()
	o.at = sound.At(o.weather, o.fluid)
	o.meant = sound.Mean(o.at)
	values := r.value
	values[rOutdoor] = o.weather.Outdoor
	values[rReturnWetBulb] = o.weather.ReturnWetBulb
	values[rReturnDryBulb] = o.weather.ReturnDryBulb
	for f := range parts {
		known := true
		for _, p := range parts[f] {
			o.value[f] += p.sign * values[p.raw]
			// A condition of the air may be filled in; what makes the feature
			// itself may not.
			known = known && (r.have[p.raw] || p.raw == rOutdoor || p.raw == rReturnDryBulb)
		}
		switch signature.Feature(f) {
		case signature.Superheat:
			o.value[f] -= r.evapGlide
		case signature.Subcooling:
			o.value[f] -= r.condGlide
		}
		o.have[f] = known
		if known {
			o.n++
		}
	}
	o.noise = &o.own
	r.noise(o.noise, &o.conditions, sound)
}

// less is by how much the features by these readings are above those by others, of each less
// what sound machines read then; the air that was not read is filled in alike.
func (o *observation) less(r *readings, c *conditions, sound *signature.Sound) (v vector) {
	for f := range parts {
		for _, p := range parts[f] {
			v[f] += p.sign * (o.raw.value[p.raw] - r.value[p.raw])
		}
	}
	v[signature.Superheat] -= o.raw.evapGlide - r.evapGlide
	v[signature.Subcooling] -= o.raw.condGlide - r.condGlide
	if c != &o.conditions {
		for f, meant := range sound.Mean(sound.At(c.weather, c.fluid)) {
			v[f] += meant - o.meant[f]
		}
	}
	return v
}

// makes are the features that a raw reading is a part of.
var makes = func() (out [raws][]struct {
	feature int
	sign    float64
}) {
	for f := range parts {
		for _, p := range parts[f] {
			out[p.raw] = append(out[p.raw], struct {
				feature int
				sign    float64
			}{f, p.sign})
		}
	}
	return out
}()

// noise is that of the features less their mean, by the standard uncertainties of the raw
// readings.
func (r *readings) noise(noise *matrix, c *conditions, sound *signature.Sound) {
	// How the features follow the errors of the air, each in its standard deviation.
	var follow [features][3]float64
	for i, slopes := range sound.Slopes(c.weather, c.fluid) {
		for f := range follow {
			follow[f][i] = -slopes[f] * c.airStd[i]
		}
		for _, p := range makes[air[i]] {
			follow[p.feature][i] += p.sign * c.airStd[i]
		}
	}
	for a := range follow {
		for b := range a + 1 {
			x, y := &follow[a], &follow[b]
			both := x[0]*y[0] + x[1]*y[1] + x[2]*y[2]
			noise[a][b], noise[b][a] = both, both
		}
	}
	r.addNoise(noise, &[raws]float64{})
}

// addNoise adds that of the readings other than the air, less what it is by other standard
// uncertainties.
func (r *readings) addNoise(noise *matrix, less *[raws]float64) {
	for raw, all := range &makes {
		by := r.std[raw]*r.std[raw] - less[raw]*less[raw]
		if by == 0 || slices.Contains(air[:], raw) {
			continue
		}
		for _, p := range all {
			for _, q := range all {
				noise[p.feature][q.feature] += p.sign * q.sign * by
			}
		}
	}
}
