package diagnose

import (
	"math"
	"slices"

	"github.com/satline/satline/internal/judge/diagnose/signature"
)

// A lie is an error of an instrument at some severity: undo takes the readings
// as they were written down and returns what they would be without it; false
// where the reading was not taken.
type lie struct {
	signature Code
	severity  float64 // K, or Pa for gauges, or the fraction toward the wrong temperature
	weight    float64
	undo      func(*readings, *caseFile) bool
	// pull takes the place of undo where the error depends on what the machine
	// does.
	pull func(*readings, float64) (pull, bool)
}

const psi = 6894.757

// lies are the errors that are tried. Their sizes are common practice, no source.
var lies = []lie{
	{signature: SuctionClamp, severity: 0.15, weight: 0.25, pull: suctionPull},
	{signature: SuctionClamp, severity: 0.35, weight: 0.25, pull: suctionPull},
	{signature: SuctionClamp, severity: 0.55, weight: 0.2, pull: suctionPull},
	{signature: SuctionClamp, severity: 0.8, weight: 0.15, pull: suctionPull},
	{signature: SuctionClamp, severity: 1, weight: 0.15, undo: blind(rSuctionLine, 15)},
	{signature: LiquidClamp, severity: 0.35, weight: 0.24, pull: liquidPull},
	{signature: LiquidClamp, severity: 0.65, weight: 0.28, pull: liquidPull},
	{signature: LiquidClamp, severity: 0.9, weight: 0.28, pull: liquidPull},
	{signature: LiquidClamp, severity: 3, weight: 0.03, undo: offset(rLiquidLine, 3)},
	{signature: LiquidClamp, severity: 6, weight: 0.03, undo: offset(rLiquidLine, 6)},
	{signature: LiquidClamp, severity: 1, weight: 0.14, undo: blind(rLiquidLine, 10)},
	{signature: DischargeClamp, severity: 0.25, weight: 0.35, pull: dischargePull},
	{signature: DischargeClamp, severity: 0.6, weight: 0.35, pull: dischargePull},
	{signature: DischargeClamp, severity: 1, weight: 0.3, undo: blind(rDischargeLine, 40)},
	{signature: SuctionGauge, severity: -10 * psi, weight: 0.2, undo: zero(rEvaporating, -10*psi)},
	{signature: SuctionGauge, severity: -4 * psi, weight: 0.3, undo: zero(rEvaporating, -4*psi)},
	{signature: SuctionGauge, severity: 4 * psi, weight: 0.3, undo: zero(rEvaporating, 4*psi)},
	{signature: SuctionGauge, severity: 10 * psi, weight: 0.2, undo: zero(rEvaporating, 10*psi)},
	{signature: LiquidGauge, severity: -25 * psi, weight: 0.2, undo: zero(rCondensing, -25*psi)},
	{signature: LiquidGauge, severity: -10 * psi, weight: 0.3, undo: zero(rCondensing, -10*psi)},
	{signature: LiquidGauge, severity: 10 * psi, weight: 0.3, undo: zero(rCondensing, 10*psi)},
	{signature: LiquidGauge, severity: 25 * psi, weight: 0.2, undo: zero(rCondensing, 25*psi)},
	{signature: SuctionHose, severity: 1, weight: 0.64, undo: shut(rEvaporating, atRest)},
	{signature: SuctionHose, severity: 2, weight: 0.35, undo: shut(rEvaporating, standing)},
	{signature: SuctionHose, severity: 3, weight: 0.01, undo: blind(rEvaporating, 40)},
	{signature: LiquidHose, severity: 1, weight: 0.64, undo: shut(rCondensing, atRest)},
	{signature: LiquidHose, severity: 2, weight: 0.35, undo: shut(rCondensing, standing)},
	{signature: LiquidHose, severity: 3, weight: 0.01, undo: blind(rCondensing, 40)},
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
	{signature: OutdoorSensor, severity: 1, weight: 0.6, undo: outdoorsInCelsius},
	{signature: OutdoorSensor, severity: 2, weight: 0.4, undo: otherOutdoors},
	{signature: SupplySensor, severity: -5, weight: 0.2, undo: offset(rSupplyDryBulb, -5)},
	{signature: SupplySensor, severity: -3, weight: 0.3, undo: offset(rSupplyDryBulb, -3)},
	{signature: SupplySensor, severity: 3, weight: 0.3, undo: offset(rSupplyDryBulb, 3)},
	{signature: SupplySensor, severity: 6, weight: 0.2, undo: offset(rSupplyDryBulb, 6)},
	{
		signature: BulbsSwapped,
		severity:  1,
		weight:    1,
		undo:      exchange(rReturnDryBulb, rReturnWetBulb),
	},
	{signature: ClampsSwapped, severity: 1, weight: 1, undo: exchange(rSuctionLine, rLiquidLine)},
	{
		signature: AirSensorsSwapped,
		severity:  1,
		weight:    1,
		undo:      exchange(rReturnDryBulb, rOutdoor),
	},
	{signature: HosesSwapped, severity: 1, weight: 1, undo: exchange(rEvaporating, rCondensing)},
}

// spread is how far an error of about a severity may be off that severity, as
// a fraction, and nearly that of one that has no sizes.
const spread, nearly = 0.3, 0.05

// exchanged are two readings that were taken for each other.
var exchanged = []Code{BulbsSwapped, HosesSwapped, ClampsSwapped, AirSensorsSwapped}

func isExchange(c Code) bool { return slices.Contains(exchanged, c) }

// liesOf are the lies by their signature.
var liesOf = func() map[Code][]*lie {
	out := map[Code][]*lie{}
	for i := range lies {
		l := &lies[i]
		out[l.signature] = append(out[l.signature], l)
	}
	return out
}()

// tryLie turns a lie into a shift of the features: what they are less what they
// would be without it.
func (c *caseFile) tryLie(l *lie) {
	if l.pull != nil {
		if p, ok := l.pull(c.seen.raw, l.severity); ok {
			s := c.try()
			s.severity, s.weight, s.pull = l.severity, l.weight, c.work.pull(p)
			s.bounded, s.bound = true, c.bound
		}
		return
	}
	r := &c.work.without
	*r = *c.seen.raw
	if !l.undo(r, c) {
		return
	}
	around := spread
	switch {
	case l.signature == DryWick, l.signature == OutdoorSensor:
		around = 0 // in the uncertainty of the air
	case isExchange(l.signature):
		around = nearly
	}
	s := c.tryWithout(r, around)
	s.severity, s.weight = l.severity, l.weight
}

// tryOther turns another refrigerant, in so many of the machines, into a shift.
func (c *caseFile) tryOther(other Fluid, share float64) {
	r := &c.work.without
	*r = *c.seen.raw
	if r.asFluid(other, c.evidence) {
		s := c.tryWithout(r, nearly)
		s.weight, s.fluid = share, other.Designation()
	}
}

// tryWithout tries a state in which the readings would be these, within a part of what they are
// off.
func (c *caseFile) tryWithout(r *readings, around float64) *state {
	s, now := c.try(), &c.seen.conditions
	var other conditions
	if !r.inSameAir(c.seen.raw) {
		other = r.conditions()
		now = &other
	}
	s.bounded, s.bound, s.around = true, r.bound(), around*around
	s.shift = c.seen.less(r, now, &c.table.Sound)
	if r.std == c.seen.raw.std {
		return s
	}
	s.rest = c.work.matrix()
	if now == &c.seen.conditions {
		r.addNoise(s.rest, &c.seen.raw.std)
		return s
	}
	r.noise(s.rest, now, &c.table.Sound)
	for f := range features {
		for g := range features {
			s.rest[f][g] -= c.seen.noise[f][g]
		}
	}
	return s
}

// usualOffset says how far off readings are that nothing explains.
var usualOffset = vector{
	signature.Evaporating: 8, signature.Superheat: 10, signature.CondensingOver: 8,
	signature.Subcooling:    8,
	signature.DischargeOver: 18, signature.Split: 6, signature.WetBulbSplit: 5,
	signature.CondenserRise: 6,
	signature.Airflow:       40, signature.Power: 35,
}

// tryClash stands for readings that no cause explains: anywhere about the
// sound ones.
func (c *caseFile) tryClash() *state {
	s := c.try()
	s.weight, s.rest, s.bounded = 1, c.work.matrix(), true
	if r := c.seen.raw; r.have[rReturnDryBulb] && r.have[rReturnWetBulb] {
		read, std := r.depression()
		s.bound = habit(read, math.Hypot(std, usualOffset[signature.WetBulbSplit]), 1)
	}
	for f, d := range usualOffset {
		s.rest[f][f] = d * d
	}
	return s
}
