package cycle

import (
	"math"

	"github.com/satline/satline/internal/physics/coil"
	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/refrigerant"
)

// A plant is a machine in SI numbers, as the solver sees it. It is immutable.
type plant struct {
	fluid      *cyclefluid.Fluid
	compressor Compressor
	device     device
	condenser  exchanger
	evaporator exchanger
	suction    line
	liquid     line

	flowScale, workScale     float64 // of the compressor
	airExponent, refExponent float64 // of the flows in the conductances of the coils

	rated                 float64 // refrigerant flow, kg/s
	ratedLiquid, ratedGas float64 // densities in the lines at rating, kg/m³

	shell       float64 // gas space of the compressor, m³
	accumulator float64 // m³
	correct     float64 // the correct charge, kg
	volume      float64 // of the whole circuit, m³

	blower, fan  float64 // W at rated airflow
	headPressure float64 // Pa that the outdoor fan holds; 0 without control
	highCutout   float64 // Pa
	lowCutout    float64 // Pa
}

// An exchanger is a coil between refrigerant and air.
type exchanger struct {
	airUA, refUA float64 // W/K at rated flows; refUA where two phases flow
	air          float64 // rated air: kg/s of dry air
	volume       float64 // m³ of refrigerant side
	drop         float64 // pressure drop over m²·v
}

// at is the air-side conductance at a flow of air.
func (e *exchanger) at(air, exponent float64) float64 {
	return e.airUA * math.Pow(air/e.air, exponent)
}

// A line joins two components.
type line struct {
	volume float64 // m³
	drop   float64 // pressure drop over m²·v
	ua     float64 // W/K to its surroundings
}

// A single phase carries heat worse than two do. Ratios of the refrigerant-side
// conductance to that of two phases, from Dittus and Boelter against usual
// condensing and boiling coefficients of residential coils (common practice, no
// source).
const (
	vaporInCondenser  = 0.30
	liquidInCondenser = 0.30
	vaporInEvaporator = 0.05
)

// flowExponent is the power of the refrigerant flow that its side of a coil follows:
// Dittus and Boelter's 0.8.
const flowExponent = 0.8

// A device is the expansion device of a plant.
type device struct {
	kind      refrigerant.Metering
	tube      ShortTube
	area      float64 // of the tube or tubes
	perLength float64 // ln(L/D)
	valve     ExpansionValve
	capillary CapillaryTube

	size                     float64 // factor
	byPressure, bySubcooling float64 // see Form
	ratedPressure            float64
	ratedSubcooling          float64
}

// flow returns kg/s from in to the evaporator, and how far open the device is.
// superheat is what a bulb feels; a valve is stuck at the opening stuck where that is
// not negative.
func (d *device) flow(in *inlet, superheat, downstream, size, stuck float64) (flow, open float64) {
	size *= d.size
	if d.byPressure != 0 {
		size *= math.Pow(in.pressure/d.ratedPressure, d.byPressure)
	}
	if d.bySubcooling != 0 {
		const ordinary = 10.0 // K, keeps the power finite without subcooling
		size *= math.Pow((ordinary+in.subcooling)/(ordinary+d.ratedSubcooling), d.bySubcooling)
	}
	switch d.kind {
	case refrigerant.FixedRestrictor:
		return size * d.area * shortTubeFlux(in, d.perLength) * unchoked(in, downstream), 1
	case refrigerant.Capillary:
		return size * d.capillary.flow(in, downstream), 1
	}
	open = stuck
	if stuck < 0 {
		open = d.valve.opening(superheat, downstream)
	}
	return size * d.valve.flow(in, open, downstream), open
}

// A question is a plant at one condition with its faults, in SI numbers.
type question struct {
	air                 coil.Air
	returnT, returnW    float64
	dryAir              float64 // kg/s indoors
	airUA, refUA        float64 // indoor coil
	outdoorT            float64
	outdoorAir          float64 // W/K at full fan
	outdoorUA           float64 // air side at full fan
	outdoorRefUA        float64
	leak                float64
	size                float64 // of the metering device
	stuck               float64 // opening of a valve, or −1
	bulb                float64 // share of the surroundings that a bulb feels
	setting             float64 // K added to the superheat setting
	liquidDrop          float64 // of the liquid line, restriction included
	suctionDrop         float64
	nonCondensable      float64 // Pa in the condenser
	charge              float64 // kg
	fixedHead           float64 // Pa that the fan holds in this solution, or 0
	lowest, highest     float64 // Pa, the range of the solution
	blower, outdoorFanW float64
}

// A trial is one evaluation of the circuit: everything that follows from a guess of
// its unknowns.
type trial struct {
	*plant
	question

	low, high unknowns // the range
	work      int      // evaluations so far

	suctionP, dischargeP, flow, suctionH float64

	in, out, cond, enter, evap cyclefluid.Isobar

	gas         cyclefluid.State // at the compressor
	pump        pumped
	hot         cyclefluid.State // at the discharge port
	condensed   condensed
	liquidP     float64 // at its outlet
	valveP      float64
	inlet       inlet
	open        float64
	metered     float64 // flow through the device
	evaporated  evaporated
	suctionGain float64 // W
	fanShare    float64

	// mass by place, kg
	inCondenser, inLiquidLine, inEvaporator, inSuction float64
}

// The unknowns of the circuit, and what must close.
type (
	unknowns  [4]float64
	residuals [4]float64
)

const (
	uSuction  = iota // ln Pa
	uHead            // ln Pa, or ln of the fan's share where the head is held
	uFlow            // ln kg/s
	uEnthalpy        // at the compressor, 100 kJ/kg
)

const (
	rPump   = iota // what the compressor pumps, less the flow
	rCharge        // the charge, less what the circuit holds
	rDevice        // what the device passes, less the flow
	rHeat          // enthalpy arriving at the compressor, less that assumed
)

// evaluate runs once around the circuit from the guess y and returns what does not
// close, each relative to its rated figure.
func (t *trial) evaluate(y unknowns) (r residuals) {
	t.work++
	f := t.fluid
	t.suctionP = math.Exp(y[uSuction])
	t.fanShare = 1
	outdoorAir, outdoorUA := t.outdoorAir, t.outdoorUA
	if t.fixedHead > 0 {
		t.dischargeP = t.fixedHead
		t.fanShare = math.Exp(y[uHead])
		outdoorAir *= t.fanShare
		outdoorUA *= math.Pow(t.fanShare, t.airExponent)
	} else {
		t.dischargeP = math.Exp(y[uHead])
	}
	m := math.Exp(y[uFlow])
	t.flow = m
	t.suctionH = y[uEnthalpy] * 1e5

	f.Set(&t.in, t.suctionP)
	f.Set(&t.out, t.dischargeP)
	t.gas = t.in.AtEnthalpy(t.suctionH)
	t.pump = t.compressor.pump(f, &t.in, &t.out, &t.gas, t.flowScale, t.workScale, t.leak)
	t.hot = t.out.AtEnthalpy(t.pump.discharge)

	// Condenser: saturation at the mean pressure, less what other gas holds of it.
	drop := drained(t.dischargeP, t.condenser.drop*m*m*t.hot.V)
	t.liquidP = t.dischargeP - drop
	f.Set(&t.cond, max(t.dischargeP-drop/2-t.nonCondensable, 0.2*t.dischargeP))
	scale := math.Pow(m/t.rated, t.refExponent)
	t.condense(m, outdoorAir, outdoorUA, t.outdoorRefUA*scale)

	// Liquid line and device.
	h3 := t.condensed.h
	t.valveP = max(t.liquidP-drained(t.liquidP, t.liquidDrop*m*m*t.condensed.v), t.lowest)
	f.Set(&t.enter, t.valveP)
	t.meet(h3)

	evaporatorP := t.suctionP + t.suctionDrop*m*m*t.gas.V
	f.Set(&t.evap, evaporatorP)
	t.evaporate(m, h3, t.refUA*scale)

	leaving := &t.evaporated
	bulb := leaving.t + t.bulb*(t.returnT-leaving.t)
	t.metered, t.open = t.device.flow(
		&t.inlet, bulb-t.evap.Dew.T-t.setting, evaporatorP, t.size, t.stuck,
	)

	// The suction line warms towards the outdoor air.
	cp := t.evap.DewHeatCapacity()
	t.suctionGain = m * cp * (t.outdoorT - leaving.t) * -math.Expm1(-t.suction.ua/(m*cp))
	r[rPump] = (t.pump.flow - m) / t.rated
	r[rDevice] = (t.metered - m) / t.rated
	r[rHeat] = (leaving.h + t.suctionGain/m - t.suctionH) / (t.evap.Dew.H - t.evap.Bubble.H)
	r[rCharge] = (t.charge - t.contents(h3)) / t.correct
	return r
}

// drained is a pressure drop that cannot use up the pressure: the drop itself up to
// 0.6 of it, and less and less of what would lie beyond.
func drained(pressure, drop float64) float64 {
	const straight = 0.6
	if drop <= straight*pressure {
		return drop
	}
	rest := (1 - straight) * pressure
	return pressure - rest*math.Exp(-(drop-straight*pressure)/rest)
}

// meet sets what arrives at the device.
func (t *trial) meet(h float64) {
	b := &t.enter
	in := &t.inlet
	*in = inlet{
		pressure: b.P, bubbleT: b.Bubble.T, bubble: b.P,
		liquid: 1 / b.Bubble.V, vapor: 1 / b.Dew.V,
		criticalT: t.fluid.CriticalTemperature, critP: t.fluid.CriticalPressure,
	}
	if h < b.Bubble.H {
		l := b.LiquidAtEnthalpy(h)
		in.bubble = min(t.fluid.BubblePressure(l.T), b.P)
		in.subcooling, in.volume = max(b.Bubble.T-l.T, 0), l.V
		return
	}
	s := b.AtEnthalpy(h)
	in.quality = min(s.X, 1-1e-6)
	in.volume = s.V
}

// contents counts the refrigerant of the whole circuit.
func (t *trial) contents(h3 float64) float64 {
	c, e := &t.condensed, &t.evaporated
	b := &t.cond
	gas := 2 / (t.hot.V + b.Dew.V)
	if c.x > 1 {
		gas = 2 / (t.hot.V + c.v)
	}
	two := twoPhaseDensity(c.x, min(c.startX, 1), 1/b.Bubble.V, 1/b.Dew.V)
	t.inCondenser = t.condenser.volume * (c.vapor*gas + c.twoPhase*two + c.liquid/c.v)

	in := &t.inlet
	t.inLiquidLine = t.plant.liquid.volume / in.volume
	if in.quality > 0 {
		t.inLiquidLine = t.plant.liquid.volume * twoPhaseDensity(
			in.quality, in.quality, in.liquid, in.vapor,
		)
	}

	b = &t.evap
	two = twoPhaseDensity(b.Quality(h3), min(e.x, 1), 1/b.Bubble.V, 1/b.Dew.V)
	t.inEvaporator = t.evaporator.volume * (e.twoPhase*two + (1-e.twoPhase)*2/(b.Dew.V+e.v))

	b = &t.in
	liquid, vapor := 1/b.Bubble.V, 1/b.Dew.V
	x := t.gas.X
	density, held := 1/t.gas.V, 0.0
	if x < 1 {
		density = twoPhaseDensity(x, x, liquid, vapor)
		held = min((1-max(x, 0))/fullAccumulator, 1)
	}
	t.inSuction = t.suction.volume*density + t.shell*min(1/t.gas.V, vapor) +
		t.accumulator*(held*liquid+(1-held)*vapor)
	return t.inCondenser + t.inLiquidLine + t.inEvaporator + t.inSuction
}

// fullAccumulator is the share of liquid in what returns at which an accumulator is
// full. Its bleed passes the more the higher it stands, so that in the steady state
// its level follows what arrives (common practice, no source for the figure).
const fullAccumulator = 0.10
