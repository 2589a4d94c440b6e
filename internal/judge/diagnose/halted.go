package diagnose

import (
	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/quantity"
)

// Signatures of machines in which no cooling cycle runs: what they read owes nothing to what
// they would read when sound, and much to the air around their pipes.
const (
	NextToEmpty Code = "next-to-empty"
	NotPumping  Code = "not-pumping"
	Heating     Code = "heating"

	lineShut          Code = "liquid-line-shut"
	compressorStopped Code = "compressor-stopped"
)

var haltedTraits = []traits{
	{
		code: NextToEmpty, prior: 0.02,
		cost: cost{120, 260, "a compressor that draws a vacuum, and air with it"},
	},
	{code: NotPumping, prior: 0.012, cost: cost{60, 260, "no cooling at all"}},
	{code: Heating, prior: 0.05, cost: ofInstrument},
}

// An anchor is what a raw reading is counted from.
type anchor int

const (
	fromOutdoor anchor = iota
	fromReturn
	fromReturnWet
	fromMiddle // of return and outdoor air
	fromColder // of return and outdoor air
	fromVacuum // the evaporating temperature at lowSuction
	fromEvaporating
	fromCondensing
	fromSound // what a sound machine reads
)

// lowSuction is a suction pressure of a machine with next to nothing in it: between a deep
// vacuum and three atmospheres.
const lowSuction = quantity.Pressure(1.3e5)

// A guess is how a raw reading is expected to stand to its anchor, with its standard
// deviation, in kelvin (percent for power).
type guess struct {
	from       anchor
	value, std float64
}

// A halt is a way in which no cooling cycle runs.
type halt struct {
	signature Code
	variant   Code
	weight    float64
	lost      float64 // the part of the charge that is gone
	reads     [raws]guess
}

// halts with what they read: common practice, no source. Vapor alone carries no heat to
// speak of: lines and air stand at the temperatures around them, and the head below that of
// liquid at the outdoor temperature, which is there for as long as any liquid is.
var halts = []halt{
	{signature: NextToEmpty, weight: 0.4, lost: 0.85, reads: [raws]guess{
		rEvaporating: {fromVacuum, 0, 15}, rCondensing: {fromOutdoor, -20, 7},
		rSuctionLine: {fromMiddle, 0, 4}, rLiquidLine: {fromOutdoor, 1, 2},
		rDischargeLine: {fromOutdoor, 35, 22}, rCondenserLeaving: {fromOutdoor, 0.5, 1},
		rSupplyDryBulb: {fromReturn, -0.8, 1}, rSupplyWetBulb: {fromReturnWet, -0.4, 0.8},
		rPower: {fromSound, -50, 30},
	}},
	{signature: NextToEmpty, weight: 0.3, lost: 0.7, reads: [raws]guess{
		rEvaporating: {fromVacuum, 18, 10}, rCondensing: {fromOutdoor, 1.5, 2.5},
		rSuctionLine: {fromMiddle, -10, 8}, rLiquidLine: {fromCondensing, 0, 1.5},
		rDischargeLine: {fromOutdoor, 75, 25}, rCondenserLeaving: {fromOutdoor, 1.5, 1.2},
		rSupplyDryBulb: {fromReturn, -2.2, 1.4}, rSupplyWetBulb: {fromReturnWet, -1.2, 1},
		rPower: {fromSound, -25, 25},
	}},
	{signature: NextToEmpty, weight: 0.3, lost: 0.75, reads: [raws]guess{
		rEvaporating: {fromVacuum, 5, 13}, rCondensing: {fromOutdoor, -8, 4},
		rSuctionLine: {fromMiddle, -1, 4}, rLiquidLine: {fromOutdoor, 1, 2},
		rDischargeLine: {fromOutdoor, 35, 22}, rCondenserLeaving: {fromOutdoor, 0.8, 1},
		rSupplyDryBulb: {fromReturn, -1.2, 1.2}, rSupplyWetBulb: {fromReturnWet, -0.6, 0.8},
		rPower: {fromSound, -40, 30},
	}},
	// Nothing passes to the indoor coil: all liquid stands in the condenser, at the
	// temperature of the air, and the suction is pumped down.
	{signature: Restriction, variant: lineShut, weight: 1, reads: [raws]guess{
		rEvaporating: {fromVacuum, 0, 15}, rCondensing: {fromOutdoor, 4, 3},
		rSuctionLine: {fromMiddle, 0, 4}, rLiquidLine: {fromOutdoor, 0.5, 1.2},
		rDischargeLine: {fromOutdoor, 45, 25}, rCondenserLeaving: {fromOutdoor, 0.8, 1},
		rSupplyDryBulb: {fromReturn, -0.8, 1}, rSupplyWetBulb: {fromReturnWet, -0.4, 0.8},
		rPower: {fromSound, -40, 30},
	}},
	// The compressor turns, and hardly anything moves.
	{signature: NotPumping, weight: 0.45, reads: [raws]guess{
		rEvaporating: {fromReturn, -11, 4}, rCondensing: {fromEvaporating, 16, 5},
		rSuctionLine: {fromEvaporating, 4, 5}, rLiquidLine: {fromOutdoor, 1.5, 2},
		rDischargeLine: {fromOutdoor, 25, 15}, rCondenserLeaving: {fromOutdoor, 1.5, 1.5},
		rSupplyDryBulb: {fromReturn, -4, 2}, rSupplyWetBulb: {fromReturnWet, -2, 1.2},
		rPower: {fromSound, -55, 25},
	}},
	// It turns, and nothing moves.
	{signature: NotPumping, weight: 0.25, reads: [raws]guess{
		rEvaporating: {fromColder, -3, 4}, rCondensing: {fromEvaporating, 3, 2.5},
		rSuctionLine: {fromMiddle, -1, 4}, rLiquidLine: {fromOutdoor, 1, 3},
		rDischargeLine: {fromOutdoor, 12, 12}, rCondenserLeaving: {fromOutdoor, 0.5, 1},
		rSupplyDryBulb: {fromReturn, -0.5, 0.8}, rSupplyWetBulb: {fromReturnWet, -0.3, 0.6},
		rPower: {fromSound, -70, 35},
	}},
	// It stands still.
	{signature: NotPumping, variant: compressorStopped, weight: 0.3, reads: [raws]guess{
		rEvaporating: {fromColder, -2, 4}, rCondensing: {fromEvaporating, 0.5, 1.5},
		rSuctionLine: {fromMiddle, 0, 4}, rLiquidLine: {fromOutdoor, 0.5, 3},
		rDischargeLine: {fromOutdoor, 2, 8}, rCondenserLeaving: {fromOutdoor, 0.2, 0.8},
		rSupplyDryBulb: {fromReturn, -0.2, 0.6}, rSupplyWetBulb: {fromReturnWet, -0.1, 0.5},
		rPower: {fromSound, -326, 60}, // leastLoad of usualLoad
	}},
	// The outdoor coil boils and the indoor coil condenses.
	{signature: Heating, weight: 1, reads: [raws]guess{
		rEvaporating: {fromOutdoor, -11, 4}, rCondensing: {fromReturn, 22, 6},
		rSuctionLine: {fromEvaporating, 6, 4}, rLiquidLine: {fromCondensing, -7, 4},
		rDischargeLine: {fromCondensing, 33, 15}, rCondenserLeaving: {fromOutdoor, -4, 2.5},
		rSupplyDryBulb: {fromReturn, 15, 6}, rSupplyWetBulb: {fromReturnWet, 6, 3},
		rPower: {fromSound, -10, 20},
	}},
}

// addHalts makes suspects of them. A gain of −1 takes all that is the machine's own out of
// the readings.
func (c *caseFile) addHalts() {
	for i := range haltedTraits {
		code, prior := haltedTraits[i].code, haltedTraits[i].prior
		if code == Heating {
			prior *= c.coolDay()
		}
		if prior < leastPrior {
			continue
		}
		for i := range halts {
			if h := &halts[i]; h.signature == code {
				c.tryHalted(h)
			}
		}
		c.add(code, prior)
	}
}

func (c *caseFile) tryHalted(h *halt) *state {
	s := c.try()
	s.severity, s.weight, s.variant = h.lost, h.weight, string(h.variant)
	s.bounded, s.bound = true, c.bound
	s.gain, s.rest = &nothingOfItsOwn, c.work.matrix()
	s.shift = c.halted(h, s.rest)
	return s
}

// leastPrior is that of a suspect that is not worth weighing.
const leastPrior = 1e-6

// coolDay is the chance that a heat pump that nobody said heats is at it, of that on a cold
// day: nobody heats on a warm one. None for a machine that only cools.
func (c *caseFile) coolDay() float64 {
	const balance, within = 286, 4 // K outdoors; common practice
	if !c.evidence.HeatPump || !c.seen.raw.have[rOutdoor] {
		return 0
	}
	return normal.Below((balance - c.seen.weather.Outdoor) / within)
}

var nothingOfItsOwn = func() (m matrix) {
	for f := range m {
		m[f][f] = -1
	}
	return m
}()

// halted returns the shift of the features from those of sound machines and fills in how
// they scatter.
func (c *caseFile) halted(h *halt, scatter *matrix) (shift vector) {
	air := &c.seen.weather
	var mean [raws]float64
	var cov [raws][raws]float64
	mean[rOutdoor] = air.Outdoor
	mean[rReturnDryBulb], mean[rReturnWetBulb] = air.ReturnDryBulb, air.ReturnWetBulb
	mean[rAirflow] = c.machine.mean[signature.Airflow] + c.machine.offset[signature.Airflow]
	cov[rAirflow][rAirflow] = c.machine.scatter[signature.Airflow][signature.Airflow]
	for r := range raws {
		g := &h.reads[r]
		if g.std == 0 {
			continue
		}
		cov[r][r] = g.std * g.std
		switch g.from {
		case fromOutdoor:
			mean[r] = air.Outdoor
		case fromReturn:
			mean[r] = air.ReturnDryBulb
		case fromReturnWet:
			mean[r] = air.ReturnWetBulb
		case fromMiddle:
			mean[r] = (air.ReturnDryBulb + air.Outdoor) / 2
			far := (air.ReturnDryBulb - air.Outdoor) / 4
			cov[r][r] += far * far
		case fromColder:
			mean[r] = min(air.ReturnDryBulb, air.Outdoor)
		case fromVacuum:
			mean[r] = c.evaporatingAt(lowSuction)
		case fromEvaporating, fromCondensing:
			of := rEvaporating
			if g.from == fromCondensing {
				of = rCondensing
			}
			mean[r] = mean[of]
			for i := range r {
				cov[r][i], cov[i][r] = cov[of][i], cov[of][i]
			}
			cov[r][r] += cov[of][of]
		case fromSound:
			mean[r] = c.machine.mean[signature.Power] + c.machine.offset[signature.Power]
			cov[r][r] += c.machine.scatter[signature.Power][signature.Power]
		}
		mean[r] += g.value
	}
	for f := range parts {
		for _, p := range parts[f] {
			shift[f] += p.sign * mean[p.raw]
			for g := range f + 1 {
				for _, q := range parts[g] {
					scatter[f][g] += p.sign * q.sign * cov[p.raw][q.raw]
				}
			}
		}
	}
	shift[signature.Superheat] -= c.seen.raw.evapGlide
	shift[signature.Subcooling] -= c.seen.raw.condGlide
	for f := range features {
		shift[f] -= c.machine.mean[f]
		for g := range f {
			scatter[g][f] = scatter[f][g]
		}
	}
	return shift
}

// evaporatingAt is the mean evaporating temperature at a pressure, that of R-410A where the
// refrigerant has none there.
func (c *caseFile) evaporatingAt(p quantity.Pressure) float64 {
	if f := c.evidence.Fluid; f != nil {
		if t, err := f.DewTemperature(p); err == nil {
			return float64(t) - c.seen.raw.evapGlide
		}
	}
	return 227
}
