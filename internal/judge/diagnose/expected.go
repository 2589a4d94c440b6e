package diagnose

import "github.com/satline/satline/internal/judge/diagnose/signature"

// Approach names the liquid line over the outdoor air in an Expectation; to
// inference it is condensing over outdoor air less subcooling.
const Approach signature.Feature = signature.Features

// AnyMake is how far a machine that is charged right reads from a rule for machines of any make,
// which knows neither its coil nor its restrictor, in kelvin: common practice, no source.
const AnyMake = 3.0

// machine is what is known of the machine at hand as a sound one: the readings
// it should give in the weather of the visit.
type machine struct {
	mean    vector // of machines of the kind, in this weather
	offset  vector // of this machine from the mean
	scatter matrix // what is not known of the offset
}

// expect starts from the kinds of machines that this one may be of, in the weather that was
// seen, and takes in each expectation for it, one at a time. A rule for machines of any make
// is a measurement of the offset (Kalman's update). What label or maker state is what this
// machine was built to, and Std how far such machines are from it: it takes the place of what
// the kind says of the same reading, and the others follow (Jeffrey 1965, The Logic of
// Decision, chapter 11).
func expect(
	table *signature.Table, kinds []float64, seen *observation, expected []Expectation,
) (m machine) {
	m.mean = seen.meant
	m.offset, m.scatter = table.Sound.Among(kinds, seen.weather)
	for _, x := range expected {
		at := seen.at
		switch {
		case x.Weather != nil:
			at = table.Sound.At(*x.Weather, seen.fluid)
		case x.AtRated:
			at = table.Sound.At(signature.Rated, seen.fluid)
		}
		mean := table.Sound.Mean(at)
		h, ok := readingOf(x.Feature)
		if !ok {
			continue
		}
		value := x.Value
		if x.Feature == Approach {
			value += seen.raw.condGlide
		}
		if !(x.Std > 0) {
			continue
		}
		surprise := value
		for f := range h {
			surprise -= h[f] * (mean[f] + m.offset[f])
		}
		var cross vector // scatter·h
		variance := 0.0
		for a := range cross {
			for b := range h {
				cross[a] += m.scatter[a][b] * h[b]
			}
			variance += h[a] * cross[a]
		}
		gain, known := 1/variance, max(0, 1-x.Std*x.Std/variance)/variance
		if x.Rule {
			gain = 1 / (variance + x.Std*x.Std + AnyMake*AnyMake)
			known = gain
		}
		for a := range cross {
			m.offset[a] += cross[a] * surprise * gain
			for b := range cross {
				m.scatter[a][b] -= cross[a] * cross[b] * known
			}
		}
	}
	return m
}

// readingOf is a reading as a sum of features; false for one that there is none of.
func readingOf(f signature.Feature) (weights vector, ok bool) {
	switch {
	case f == Approach:
		weights[signature.CondensingOver], weights[signature.Subcooling] = 1, -1
	case f >= 0 && f < features:
		weights[f] = 1
	default:
		return weights, false
	}
	return weights, true
}
