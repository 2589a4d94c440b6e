package diagnose

import (
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
	// blind is the standard deviation of the reading where the error leaves
	// nothing of it, in kelvin.
	blind float64
	raw   int
	fluid string
}

const psi = 6894.757

// lies are the errors that are tried. Their sizes are common practice, no source.
var lies = []lie{
	{signature: SuctionClamp, severity: 0.15, weight: 0.35, undo: toward(rSuctionLine, rOutdoor, 0.15)},
	{signature: SuctionClamp, severity: 0.35, weight: 0.3, undo: toward(rSuctionLine, rOutdoor, 0.35)},
	{signature: SuctionClamp, severity: 0.6, weight: 0.2, undo: toward(rSuctionLine, rOutdoor, 0.6)},
	{signature: SuctionClamp, severity: 1, weight: 0.15, undo: keep(rSuctionLine), raw: rSuctionLine, blind: 15},
	{signature: LiquidClamp, severity: 0.3, weight: 0.35, undo: toward(rLiquidLine, rOutdoor, 0.3)},
	{signature: LiquidClamp, severity: 0.6, weight: 0.35, undo: toward(rLiquidLine, rOutdoor, 0.6)},
	{signature: LiquidClamp, severity: 1, weight: 0.3, undo: keep(rLiquidLine), raw: rLiquidLine, blind: 10},
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
	{signature: DryWick, severity: 0.3, weight: 0.4, undo: toward(rReturnWetBulb, rReturnDryBulb, 0.3)},
	{signature: DryWick, severity: 0.6, weight: 0.4, undo: toward(rReturnWetBulb, rReturnDryBulb, 0.6)},
	{signature: DryWick, severity: 1, weight: 0.2, undo: keep(rReturnWetBulb), raw: rReturnWetBulb, blind: 5},
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

// toward undoes a sensor that reads a fraction of the way to another temperature.
func toward(raw, other int, fraction float64) func(*readings, *Evidence) bool {
	return func(r *readings, _ *Evidence) bool {
		if !r.have[raw] || !r.have[other] {
			return false
		}
		r.value[raw] = (r.value[raw] - fraction*r.value[other]) / (1 - fraction)
		return true
	}
}

// keep leaves a reading that says nothing; the error is in lie.blind.
func keep(raw int) func(*readings, *Evidence) bool {
	return func(r *readings, _ *Evidence) bool { return r.have[raw] }
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
	if !l.undo(&r, c.evidence) {
		return state{}, false
	}
	truth := observe(&r, &c.table.Sound, c.q)
	meant := c.table.Sound.Mean(truth.weather, c.q)
	s := state{severity: l.severity, weight: l.weight, rest: &matrix{}, fluid: l.fluid, bound: r.bound()}
	for f := range features {
		s.shift[f] = (c.seen.value[f] - c.machine.mean[f]) - (truth.value[f] - meant[f])
	}
	around := spread
	if l.fluid != "" || l.signature == BulbsSwapped || l.signature == HosesSwapped {
		around = 0.05
	}
	for f := range features {
		for g := range features {
			s.rest[f][g] = around * around * s.shift[f] * s.shift[g]
		}
	}
	if l.blind > 0 {
		var slope vector // of the features by the reading that says nothing
		for f := range parts {
			for _, p := range parts[f] {
				if p.raw == l.raw {
					slope[f] += p.sign
				}
			}
		}
		if l.raw == rReturnWetBulb {
			d := c.table.Sound.Slopes(c.seen.weather, c.q)
			for f := range slope {
				slope[f] -= d[1][f]
			}
		}
		for f := range features {
			for g := range features {
				s.rest[f][g] += l.blind * l.blind * slope[f] * slope[g]
			}
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
func clashState() state {
	s := state{weight: 1, rest: &matrix{}, bound: 0}
	for f, d := range usualOffset {
		s.rest[f][f] = d * d
	}
	return s
}
