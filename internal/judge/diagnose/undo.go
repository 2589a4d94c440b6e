package diagnose

import (
	"math"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
)

// Each function here makes one that takes readings as they were written down back
// to what they would be without an error, and says how well that can be known;
// false where the reading was not taken.

// fractionStd is how far a fraction may be off the one that is tried.
const fractionStd = 0.08

// wick undoes a wick that reads a fraction of the way to the dry bulb. What is
// left of the depression is stretched, errors and all; indoor air as it usually
// is tells more of the wet bulb the less the wick does.
func wick(fraction float64) func(*readings, *caseFile) bool {
	return func(r *readings, _ *caseFile) bool {
		if !r.have[rReturnWetBulb] || !r.have[rReturnDryBulb] {
			return false
		}
		read, std := r.depression()
		std = math.Hypot(std, fractionStd*usualDepression)
		shown := 1 - fraction
		// What is read weighs by how little it has to be stretched.
		weight, usual := shown*shown/(std*std), 1/(usualDepressionStd*usualDepressionStd)
		var depression float64
		if shown > 0 {
			depression = read / shown * weight
		}
		depression = (depression + usualDepression*usual) / (weight + usual)
		r.value[rReturnWetBulb] = r.value[rReturnDryBulb] - depression
		r.std[rReturnWetBulb] = 1 / math.Sqrt(weight+usual)
		r.habit = habit(read, std, shown)
		return true
	}
}

// blind undoes an error that leaves nothing of a reading: it may be anything
// within so many kelvin.
func blind(raw int, within float64) func(*readings, *caseFile) bool {
	return func(r *readings, _ *caseFile) bool {
		r.std[raw] = math.Hypot(r.std[raw], within)
		return r.have[raw]
	}
}

// otherOutdoors undoes a reading that is not of the air at the coil: that is as it usually is.
func otherOutdoors(r *readings, _ *caseFile) bool {
	r.value[rOutdoor], r.std[rOutdoor] = usualOutdoor, usualOutdoorStd
	return r.have[rOutdoor]
}

// outdoorsInCelsius undoes an outdoor temperature that was written down in °C and taken for °F.
func outdoorsInCelsius(r *readings, _ *caseFile) bool {
	const ice, iceInFahrenheit, kelvin = 273.15, 32, 1.8
	r.value[rOutdoor] = ice + iceInFahrenheit + kelvin*(r.value[rOutdoor]-ice)
	r.std[rOutdoor] *= kelvin
	return r.have[rOutdoor]
}

// A gauge behind a hose that is shut stands at rest, or shows what stood in the machine: liquid at
// about the air around it. In kelvin, with the standard deviation; common practice, no source.

func atRest(c *caseFile) (shown, std float64) {
	return c.evaporatingAt(c.evidence.Atmosphere), 8
}

func standing(c *caseFile) (shown, std float64) {
	air := &c.seen.weather
	return (air.Outdoor + air.ReturnDryBulb) / 2, math.Hypot(5, (air.Outdoor-air.ReturnDryBulb)/4)
}

// shut undoes a hose that is shut: the port has what sound machines have.
func shut(
	raw int, shows func(*caseFile) (kelvin, std float64),
) func(*readings, *caseFile) bool {
	return func(r *readings, c *caseFile) bool {
		sound := func(f signature.Feature) float64 { return c.machine.mean[f] + c.machine.offset[f] }
		port := sound(signature.Evaporating)
		if raw == rCondensing {
			port = sound(signature.CondensingOver) + c.seen.weather.Outdoor
		}
		shown, std := shows(c)
		r.value[raw] += port - shown
		r.std[raw] = std
		return r.have[raw]
	}
}

func offset(raw int, by float64) func(*readings, *caseFile) bool {
	return func(r *readings, _ *caseFile) bool {
		r.value[raw] -= by
		return r.have[raw]
	}
}

func exchange(a, b int) func(*readings, *caseFile) bool {
	return func(r *readings, _ *caseFile) bool {
		r.value[a], r.value[b] = r.value[b], r.value[a]
		r.habit = r.usualHabit()
		return r.have[a] && r.have[b]
	}
}

// zero undoes a gauge that reads too much by a pressure.
func zero(raw int, by float64) func(*readings, *caseFile) bool {
	return func(r *readings, c *caseFile) bool {
		return r.have[raw] && r.shiftPressure(raw, c.evidence, -by)
	}
}

// atmosphere undoes an atmosphere taken too high.
func atmosphere(by float64) func(*readings, *caseFile) bool {
	return func(r *readings, c *caseFile) bool {
		low := r.have[rEvaporating] && r.shiftPressure(rEvaporating, c.evidence, -by)
		high := r.have[rCondensing] && r.shiftPressure(rCondensing, c.evidence, -by)
		r.thin += by / float64(quantity.StandardAtmosphere)
		return low || high
	}
}

// shiftPressure moves a saturation temperature by what a change of pressure
// makes of it; false where the pressure or the fluid is not known.
func (r *readings) shiftPressure(raw int, e *Evidence, by float64) bool {
	if e.Fluid == nil || e.Atmosphere <= 0 {
		return false
	}
	gauge, saturation := e.SuctionPressure, Fluid.DewTemperature
	if raw == rCondensing {
		gauge, saturation = e.LiquidPressure, Fluid.BubbleTemperature
	}
	if gauge == nil {
		return false
	}
	p := gauge.Value.Absolute(e.Atmosphere)
	was, err := saturation(e.Fluid, p)
	if err != nil {
		return false
	}
	is, err := saturation(e.Fluid, p+quantity.Pressure(by))
	if err != nil {
		return false
	}
	r.value[raw] += float64(is - was)
	return true
}

// asFluid reads the gauges as another refrigerant; false where none was read.
func (r *readings) asFluid(other Fluid, e *Evidence) (read bool) {
	for _, g := range [...]struct {
		raw int
		of  readcheck.Gauge
	}{{rCondensing, e.LiquidPressure}, {rEvaporating, e.SuctionPressure}} {
		if g.of == nil || !r.have[g.raw] || e.Atmosphere <= 0 {
			continue
		}
		p := g.of.Value.Absolute(e.Atmosphere)
		bubble, err := other.BubbleTemperature(p)
		if err != nil {
			return false
		}
		dew, err := other.DewTemperature(p)
		if err != nil {
			return false
		}
		glide := float64(dew - bubble)
		r.fluid.Glide = max(0, glide)
		if g.raw == rEvaporating {
			r.evapGlide = 0.4 * glide
			r.value[g.raw] = float64(dew) - r.evapGlide
		} else {
			r.condGlide = 0.5 * glide
			r.value[g.raw] = float64(bubble) + r.condGlide
		}
		read = true
	}
	superheat, reached := superheatOf(other)
	if r.fluid.Superheat = superheat; !reached {
		const untold = 15
		r.std[rDischargeLine] = math.Hypot(r.std[rDischargeLine], untold)
	}
	return read
}
