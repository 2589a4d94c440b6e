package diagnose

import (
	"math"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
)

const features = signature.Features

type (
	vector = signature.Vector
	matrix = signature.Matrix
)

// The raw readings that features are made of. Their errors are independent;
// those of features are not, since one gauge serves several.
const (
	rEvaporating = iota // mean evaporating temperature
	rCondensing         // middle of bubble and dew
	rSuctionLine
	rLiquidLine
	rDischargeLine
	rOutdoor
	rCondenserLeaving
	rReturnDryBulb
	rReturnWetBulb
	rSupplyDryBulb
	rSupplyWetBulb
	rAirflow
	rPower
	raws
)

// readings are raw values in kelvin (percent for the last two) with standard
// uncertainty; std is that of a usual instrument where the reading is missing.
type readings struct {
	value, std [raws]float64
	have       [raws]bool
	// evapGlide is dew less mean evaporating temperature, condGlide middle
	// condensing less bubble temperature.
	evapGlide, condGlide float64
	// fluid is the refrigerant, as far as the table tells it from others.
	fluid signature.Fluid
	// thin is by how much of the standard atmosphere the air is below it.
	thin float64
	// byCurrent says that the power is that by the compressor's current, and ratedPower what
	// a sound machine has at rated conditions.
	byCurrent  bool
	ratedPower float64
	// habit is the log likelihood of the return air, as rooms are kept.
	habit float64
}

// usualStd are the standard uncertainties of sound field instruments, for
// readings that were not taken; common practice, no source.
var usualStd = [raws]float64{
	rEvaporating: 0.3, rCondensing: 0.25, rSuctionLine: 0.5, rLiquidLine: 0.5, rDischargeLine: 1,
	rOutdoor: 0.35, rCondenserLeaving: 0.6, rReturnDryBulb: 0.35, rReturnWetBulb: 0.4,
	rSupplyDryBulb: 0.35, rSupplyWetBulb: 0.4, rAirflow: 6, rPower: 2,
}

// streamStd is how far one thermometer in the stream of the outdoor fan is from the mean of what
// leaves the coil, whatever its maker says of it: common practice, no source.
const streamStd = 0.5

func newReadings(
	in *readcheck.Input, flow *quantity.Uncertain[quantity.VolumeFlow],
	power *quantity.Uncertain[quantity.Power], e *Evidence,
) (r readings) {
	r.std = usualStd
	temp := func(i int, t readcheck.Temp) {
		if t != nil && plausible(float64(t.Value)) {
			r.value[i], r.have[i] = float64(t.Value), true
			if t.Std > 0 {
				r.std[i] = t.Std
			}
		}
	}
	temp(rSuctionLine, in.SuctionLine)
	temp(rLiquidLine, in.LiquidLine)
	temp(rDischargeLine, in.DischargeLine)
	temp(rOutdoor, in.OutdoorDryBulb)
	temp(rCondenserLeaving, in.CondenserLeaving)
	r.std[rCondenserLeaving] = math.Hypot(r.std[rCondenserLeaving], streamStd)
	temp(rReturnDryBulb, in.ReturnDryBulb)
	temp(rReturnWetBulb, in.ReturnWetBulb)
	temp(rSupplyDryBulb, in.SupplyDryBulb)
	temp(rSupplyWetBulb, in.SupplyWetBulb)
	temp(rEvaporating, in.EvaporatingDew)
	temp(rCondensing, in.CondensingBubble)
	if r.have[rCondensing] && in.CondensingDew != nil {
		r.condGlide = max(0, float64(in.CondensingDew.Value-in.CondensingBubble.Value)) / 2
		r.value[rCondensing] += r.condGlide
		r.fluid.Glide = 2 * r.condGlide
	}
	if r.have[rEvaporating] {
		glide := 2 * r.condGlide
		if e.Fluid != nil && in.SuctionPressure != nil && e.Atmosphere > 0 {
			low := in.SuctionPressure.Value.Absolute(e.Atmosphere)
			if b, err := e.Fluid.BubbleTemperature(low); err == nil {
				glide = max(0, float64(in.EvaporatingDew.Value-b))
			}
		}
		r.fluid.Glide = glide
		r.evapGlide = 0.4 * glide
		r.value[rEvaporating] -= r.evapGlide
	}
	if e.Atmosphere > 0 {
		r.thin = 1 - float64(e.Atmosphere/quantity.StandardAtmosphere)
	}
	r.habit = r.usualHabit()
	tons := float64(e.NominalCapacity) / wattsPerTon
	rated := tons * flowPerTon
	if rated <= 0 {
		rated = float64(e.RatedAirflow)
	}
	if flow != nil && flow.Value > 0 && rated > 0 {
		r.value[rAirflow], r.have[rAirflow] = 100*math.Log(float64(flow.Value)/rated), true
		if flow.Std > 0 {
			r.std[rAirflow] = 100 * flow.Std / float64(flow.Value)
		}
	}
	if power != nil && power.Value > 0 && tons > 0 {
		r.value[rPower], r.have[rPower] = 100*math.Log(
			float64(power.Value)/float64(e.NominalCapacity),
		), true
		if power.Std > 0 {
			r.std[rPower] = 100 * power.Std / float64(power.Value)
		}
	}
	return r
}

const (
	wattsPerTon = 3516.8528
	flowPerTon  = 400 * 0.3048 * 0.3048 * 0.3048 / 60 // m³/s: 400 CFM
)

func plausible(kelvin float64) bool { return kelvin > 150 && kelvin < 600 }
