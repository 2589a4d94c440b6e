package refrigerant

import (
	"math"
	"sort"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A StandingFit compares one refrigerant with the pressure of a unit that is off
// and has soaked to one temperature, liquid and vapor together. Its JSON form is for a record
// and is not read back: it names the refrigerant, which may be a blend of the program's own.
type StandingFit struct {
	Refrigerant *Refrigerant `json:"refrigerant"`
	// Dew and Bubble bound the pressure that the refrigerant shows at the
	// temperature: near bubble with much liquid, near dew with little. For a pure
	// fluid they are equal.
	Dew    quantity.Pressure `json:"dew"`
	Bubble quantity.Pressure `json:"bubble"`
	// Over is how far the reading is above Bubble, or, below zero, under Dew;
	// zero between them. A pressure over is the partial pressure of
	// non-condensables if the refrigerant is the right one.
	Over quantity.Pressure `json:"over"`
	// Off is Over as a temperature: how much warmer or colder the unit would
	// have to be for the refrigerant to show the reading.
	Off quantity.TemperatureDelta `json:"off"`
	// Fits reports whether Off is within the tolerance.
	Fits bool `json:"fits"`
}

// Fact is what the comparison means as a fact, "standing-fit.fits", "standing-fit.above" or
// "standing-fit.below", with the refrigerant.
func (f StandingFit) Fact() fact.Fact {
	code := fact.Code("standing-fit.fits")
	switch {
	case f.Fits:
	case f.Over > 0:
		code = "standing-fit.above"
	default:
		code = "standing-fit.below"
	}
	return fact.New(code, fact.Of("fluid", f.Refrigerant.Designation()))
}

// StandingPressure compares the reading p with every candidate at the soaked
// temperature t, the best fit first. Candidates default to All. tolerance is how
// far the temperatures may be apart, thermometer and gauge together: with
// a gauge good to 2 psi and a probe good to 1 °F, 2 °F for R-22 at 70 °F.
//
// Let the unit soak, off, until coil air in and out agree, and put the probe on
// the coldest part that holds liquid, which rules the pressure. A unit that has
// lost all its liquid shows less than any fit. Several refrigerants share
// a pressure: a fit does not prove what is inside, a misfit proves what is not.
//
// Candidates that are nil, or for which t is above the critical temperature or outside
// the limits, are left out. A p that is no pressure, a t that is no temperature and a tolerance
// below zero are a *RangeError.
func StandingPressure(
	p quantity.Pressure, t quantity.Temperature, tolerance quantity.TemperatureDelta,
	candidates ...*Refrigerant,
) ([]StandingFit, error) {
	if !(p > 0 && float64(p) < math.Inf(1)) {
		return nil, &RangeError{
			Quantity: "standing pressure",
			Value:    p,
			Min:      quantity.Pascals(0),
			Advice:   "give an absolute pressure: gauge reading plus the atmosphere at the site",
		}
	}
	if !(t > 0 && float64(t) < math.Inf(1)) {
		return nil, &RangeError{
			Quantity: "temperature of the soaked unit",
			Value:    t,
			Min:      quantity.Kelvin(0),
			Advice:   "read the probe on the coldest part that holds liquid again",
		}
	}
	if !(tolerance >= 0) {
		return nil, &RangeError{
			Quantity: "tolerance of a standing pressure",
			Value:    tolerance,
			Min:      quantity.KelvinDelta(0),
			Advice:   "give how far thermometer and gauge together may be off",
		}
	}
	if len(candidates) == 0 {
		candidates = All()
	}
	var fits []StandingFit
	for _, r := range candidates {
		if f, ok := r.standing(p, t, tolerance); ok {
			fits = append(fits, f)
		}
	}
	sort.SliceStable(fits, func(i, j int) bool {
		return math.Abs(float64(fits[i].Off)) < math.Abs(float64(fits[j].Off))
	})
	return fits, nil
}

func (r *Refrigerant) standing(
	p quantity.Pressure, t quantity.Temperature, tolerance quantity.TemperatureDelta,
) (StandingFit, bool) {
	bubble, err := r.BubblePressure(t)
	if err != nil {
		return StandingFit{}, false
	}
	dew, err := r.DewPressure(t)
	if err != nil {
		return StandingFit{}, false
	}
	f := StandingFit{Refrigerant: r, Dew: dew, Bubble: bubble}
	switch {
	case p > bubble:
		f.Over = p - bubble
		if tb, err := r.BubbleTemperature(p); err == nil {
			f.Off = tb.Sub(t)
		} else {
			f.Off = r.Critical().Temperature.Sub(t)
		}
	case p < dew:
		f.Over = p - dew
		if td, err := r.DewTemperature(p); err == nil {
			f.Off = td.Sub(t)
		} else {
			f.Off = r.Limits().MinTemperature.Sub(t)
		}
	}
	f.Fits = math.Abs(float64(f.Off)) <= float64(tolerance)
	return f, true
}
