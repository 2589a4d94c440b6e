package diagnose

import (
	"math"

	"github.com/satline/satline/internal/diagnose/signature"
	"github.com/satline/satline/quantity"
)

// A lie is an error of an instrument at some severity: undo takes the readings
// as they were written down and returns what they would be without it; false
// where the reading was not taken.
type lie struct {
	signature Code
	severity  float64 // K, or Pa for gauges, or the fraction toward the wrong temperature
	weight    float64
	undo      func(*readings, *Evidence) bool
	// pull takes the place of undo where the error depends on what the machine
	// does.
	pull  func(*readings, float64) (*pull, bool)
	fluid string
}

const psi = 6894.757

// lies are the errors that are tried. Their sizes are common practice, no source.
var lies = []lie{
	{signature: SuctionClamp, severity: 0.15, weight: 0.25, pull: suctionPull},
	{signature: SuctionClamp, severity: 0.35, weight: 0.25, pull: suctionPull},
	{signature: SuctionClamp, severity: 0.55, weight: 0.2, pull: suctionPull},
	{signature: SuctionClamp, severity: 0.8, weight: 0.15, pull: suctionPull},
	{signature: SuctionClamp, severity: 1, weight: 0.15, undo: blind(rSuctionLine, 15)},
	{signature: LiquidClamp, severity: 0.35, weight: 0.25, pull: liquidPull},
	{signature: LiquidClamp, severity: 0.65, weight: 0.3, pull: liquidPull},
	{signature: LiquidClamp, severity: 0.9, weight: 0.3, pull: liquidPull},
	{signature: LiquidClamp, severity: 1, weight: 0.15, undo: blind(rLiquidLine, 10)},
	{signature: SuctionGauge, severity: -10 * psi, weight: 0.2, undo: zero(rEvaporating, -10*psi)},
	{signature: SuctionGauge, severity: -4 * psi, weight: 0.3, undo: zero(rEvaporating, -4*psi)},
	{signature: SuctionGauge, severity: 4 * psi, weight: 0.3, undo: zero(rEvaporating, 4*psi)},
	{signature: SuctionGauge, severity: 10 * psi, weight: 0.2, undo: zero(rEvaporating, 10*psi)},
	{signature: LiquidGauge, severity: -25 * psi, weight: 0.2, undo: zero(rCondensing, -25*psi)},
	{signature: LiquidGauge, severity: -10 * psi, weight: 0.3, undo: zero(rCondensing, -10*psi)},
	{signature: LiquidGauge, severity: 10 * psi, weight: 0.3, undo: zero(rCondensing, 10*psi)},
	{signature: LiquidGauge, severity: 25 * psi, weight: 0.2, undo: zero(rCondensing, 25*psi)},
	{signature: Altitude, severity: 1 * psi, weight: 0.4, undo: atmosphere(1 * psi)},
	{signature: Altitude, severity: 2 * psi, weight: 0.35, undo: atmosphere(2 * psi)},
	{signature: Altitude, severity: 3.2 * psi, weight: 0.25, undo: atmosphere(3.2 * psi)},
	{signature: DryWick, severity: 0.3, weight: 0.25, undo: wick(0.3)},
	{signature: DryWick, severity: 0.5, weight: 0.25, undo: wick(0.5)},
	{signature: DryWick, severity: 0.7, weight: 0.25, undo: wick(0.7)},
	{signature: DryWick, severity: 1, weight: 0.25, undo: wick(1)},
	{signature: SunOnSensor, severity: 3, weight: 0.4, undo: offset(rOutdoor, 3)},
	{signature: SunOnSensor, severity: 6, weight: 0.35, undo: offset(rOutdoor, 6)},
	{signature: SunOnSensor, severity: 11, weight: 0.25, undo: offset(rOutdoor, 11)},
	{signature: SupplySensor, severity: -5, weight: 0.2, undo: offset(rSupplyDryBulb, -5)},
	{signature: SupplySensor, severity: -3, weight: 0.3, undo: offset(rSupplyDryBulb, -3)},
	{signature: SupplySensor, severity: 3, weight: 0.3, undo: offset(rSupplyDryBulb, 3)},
	{signature: SupplySensor, severity: 6, weight: 0.2, undo: offset(rSupplyDryBulb, 6)},
	{signature: BulbsSwapped, severity: 1, weight: 1, undo: exchange(rReturnDryBulb, rReturnWetBulb)},
	{signature: HosesSwapped, severity: 1, weight: 1, undo: exchange(rEvaporating, rCondensing)},
}

// fractionStd is how far a fraction may be off the one that is tried.
const fractionStd = 0.08

// wick undoes a wick that reads a fraction of the way to the dry bulb. What is
// left of the depression is stretched, errors and all; indoor air as it usually
// is tells more of the wet bulb the less the wick does.
func wick(fraction float64) func(*readings, *Evidence) bool {
	return func(r *readings, _ *Evidence) bool {
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
func blind(raw int, within float64) func(*readings, *Evidence) bool {
	return func(r *readings, _ *Evidence) bool {
		r.std[raw] = math.Hypot(r.std[raw], within)
		return r.have[raw]
	}
}

func offset(raw int, by float64) func(*readings, *Evidence) bool {
	return func(r *readings, _ *Evidence) bool {
		r.value[raw] -= by
		return r.have[raw]
	}
}

func exchange(a, b int) func(*readings, *Evidence) bool {
	return func(r *readings, _ *Evidence) bool {
		r.value[a], r.value[b] = r.value[b], r.value[a]
		r.habit = r.usualHabit()
		return r.have[a] && r.have[b]
	}
}

// zero undoes a gauge that reads too much by a pressure.
func zero(raw int, by float64) func(*readings, *Evidence) bool {
	return func(r *readings, e *Evidence) bool { return r.have[raw] && r.shiftPressure(raw, e, -by) }
}

// atmosphere undoes an atmosphere taken too high.
func atmosphere(by float64) func(*readings, *Evidence) bool {
	return func(r *readings, e *Evidence) bool {
		low := r.have[rEvaporating] && r.shiftPressure(rEvaporating, e, -by)
		high := r.have[rCondensing] && r.shiftPressure(rCondensing, e, -by)
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

// asFluid reads both gauges as another refrigerant.
func asFluid(other Fluid) func(*readings, *Evidence) bool {
	return func(r *readings, e *Evidence) bool {
		if e.Atmosphere <= 0 || e.SuctionPressure == nil || e.LiquidPressure == nil || !r.have[rEvaporating] || !r.have[rCondensing] {
			return false
		}
		low, high := e.SuctionPressure.Value.Absolute(e.Atmosphere), e.LiquidPressure.Value.Absolute(e.Atmosphere)
		var t [4]float64
		for i, f := range [...]func(quantity.Pressure) (quantity.Temperature, error){other.BubbleTemperature, other.DewTemperature} {
			a, err := f(low)
			if err != nil {
				return false
			}
			b, err := f(high)
			if err != nil {
				return false
			}
			t[i], t[2+i] = float64(a), float64(b)
		}
		r.fluid.Glide = max(0, t[1]-t[0])
		superheat, reached := superheatOf(other)
		if r.fluid.Superheat = superheat; !reached {
			const untold = 15
			r.std[rDischargeLine] = math.Hypot(r.std[rDischargeLine], untold)
		}
		r.evapGlide = 0.4 * (t[1] - t[0])
		r.condGlide = 0.5 * (t[3] - t[2])
		r.value[rEvaporating] = t[1] - r.evapGlide
		r.value[rCondensing] = t[2] + r.condGlide
		return true
	}
}

// spread is how far an error of about a severity may be off that severity, as
// a fraction.
const spread = 0.3

// state turns a lie into a shift of the features: what they are less what they
// would be without it.
func (c *caseFile) lieState(l *lie) (state, bool) {
	r := *c.seen.raw
	if l.pull != nil {
		p, ok := l.pull(&r, l.severity)
		return state{severity: l.severity, weight: l.weight, rest: &matrix{}, pull: p, bound: r.bound()}, ok
	}
	if !l.undo(&r, c.evidence) {
		return state{}, false
	}
	truth := observe(&r, &c.table.Sound)
	meant := c.table.Sound.Mean(truth.weather, truth.fluid)
	s := state{severity: l.severity, weight: l.weight, rest: &matrix{}, fluid: l.fluid, bound: r.bound()}
	for f := range features {
		s.shift[f] = (c.seen.value[f] - c.machine.mean[f]) - (truth.value[f] - meant[f])
	}
	around := spread
	switch {
	case l.signature == DryWick:
		around = 0 // in the uncertainty of the wet bulb
	case l.fluid != "" || l.signature == BulbsSwapped || l.signature == HosesSwapped:
		around = 0.05
	}
	for f := range features {
		for g := range features {
			s.rest[f][g] = around*around*s.shift[f]*s.shift[g] + truth.noise[f][g] - c.seen.noise[f][g]
		}
	}
	return s, true
}

// usualOffset says how far off readings are that nothing explains.
var usualOffset = vector{
	signature.Evaporating: 8, signature.Superheat: 10, signature.CondensingOver: 8, signature.Subcooling: 8,
	signature.DischargeOver: 18, signature.Split: 6, signature.WetBulbSplit: 5, signature.CondenserRise: 6,
	signature.Airflow: 40, signature.Power: 35,
}

// clashState stands for readings that no cause explains: anywhere about the
// sound ones.
func (c *caseFile) clashState() state {
	s := state{weight: 1, rest: &matrix{}}
	if r := c.seen.raw; r.have[rReturnDryBulb] && r.have[rReturnWetBulb] {
		read, std := r.depression()
		s.bound = habit(read, math.Hypot(std, usualOffset[signature.WetBulbSplit]), 1)
	}
	for f, d := range usualOffset {
		s.rest[f][f] = d * d
	}
	return s
}
