package cycle

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// Points are what gauges, clamps and meters show of a running machine. Pressures of one
// side at least, suction and one of liquid and discharge, and both line temperatures
// are needed; what else is given adds to the answer. A reading is written
// new(quantity.PSIG(56).PlusMinus(quantity.PSIG(0.6))).
type Points struct {
	Refrigerant *refrigerant.Refrigerant
	// Atmosphere around the gauges; 0 is that of sea level.
	Atmosphere quantity.Pressure

	SuctionPressure   *quantity.Uncertain[quantity.GaugePressure]
	LiquidPressure    *quantity.Uncertain[quantity.GaugePressure]
	DischargePressure *quantity.Uncertain[quantity.GaugePressure]

	SuctionLine   *quantity.Uncertain[quantity.Temperature]
	LiquidLine    *quantity.Uncertain[quantity.Temperature]
	DischargeLine *quantity.Uncertain[quantity.Temperature]

	// Power is the electric power of the compressor alone.
	Power *quantity.Uncertain[quantity.Power]
	// AirCapacity is what the indoor air lost, measured on the air side.
	AirCapacity *quantity.Uncertain[quantity.Power]
	// Compressor gives a map, or a displacement; its HeatLoss counts for the flow by power.
	Compressor *Compressor
}

// Analysis is the cycle through the points. What the points do not tell is nil.
type Analysis struct {
	// The states. EvaporatorIn is liquid expanded at constant enthalpy to the suction
	// pressure; IdealDischarge what a compressor without loss would send out.
	Suction        refrigerant.State  `json:"suction"`
	Liquid         refrigerant.State  `json:"liquid"`
	EvaporatorIn   refrigerant.State  `json:"evaporatorIn"`
	IdealDischarge refrigerant.State  `json:"idealDischarge"`
	Discharge      *refrigerant.State `json:"discharge,omitzero"`

	// Superheat and Subcooling are as measured, and may be negative: a clamp that reads
	// below the dew point tells of a loose clamp, and the state is then taken saturated.
	Superheat  quantity.Uncertain[quantity.TemperatureDelta] `json:"superheat"`
	Subcooling quantity.Uncertain[quantity.TemperatureDelta] `json:"subcooling"`

	// CompressionRatio is absolute discharge over absolute suction pressure.
	CompressionRatio quantity.UncertainNumber `json:"compressionRatio"`
	// HighSideDrop is the pressure between the discharge and the liquid port: measured
	// where both were read, else the correction by which one stood in for the other.
	HighSideDrop quantity.Uncertain[quantity.Pressure] `json:"highSideDrop"`
	// HighSide names the gauges: "both", "liquid", "discharge".
	HighSide string `json:"highSide"`

	// IsentropicEfficiency is ideal over actual rise of enthalpy in the gas, from the
	// discharge temperature. Above 1 the readings contradict each other.
	IsentropicEfficiency *quantity.UncertainNumber `json:"isentropicEfficiency,omitzero"`
	VolumetricEfficiency *quantity.UncertainNumber `json:"volumetricEfficiency,omitzero"`

	// RefrigeratingEffect is the enthalpy at the suction line less that of the liquid.
	RefrigeratingEffect quantity.Uncertain[quantity.SpecificEnthalpy] `json:"refrigeratingEffect"`
	// FlowByMap is from the compressor's map or displacement, FlowByPower from the electric
	// power and the rise of enthalpy, FlowByAir from the capacity on the air side. Flow is
	// the best of them, weighted by their uncertainties.
	FlowByMap   *quantity.Uncertain[quantity.MassFlow] `json:"flowByMap,omitzero"`
	FlowByPower *quantity.Uncertain[quantity.MassFlow] `json:"flowByPower,omitzero"`
	FlowByAir   *quantity.Uncertain[quantity.MassFlow] `json:"flowByAir,omitzero"`
	Flow        *quantity.Uncertain[quantity.MassFlow] `json:"flow,omitzero"`
	// Capacity is that of the refrigerant, by a flow that does not rest on the air's.
	Capacity     *quantity.Uncertain[quantity.Power] `json:"capacity,omitzero"`
	HeatRejected *quantity.Uncertain[quantity.Power] `json:"heatRejected,omitzero"`
	// COP is Capacity over Power.
	COP *quantity.UncertainNumber `json:"cop,omitzero"`
}

// A high side between its two ports: a condenser costs about 1.1 K (2 °F) of saturation
// temperature, and within half of that again (common practice, no source). A gauge on
// one port stands in for the other with this correction and that uncertainty.
const (
	highSideDrop    = 1.1 // K
	highSideDropStd = 0.6 // K
)

// Analyze returns the cycle through p. Uncertainties are carried from the readings to
// first order (JCGM 100:2008, 5.1.2), each reading varied by its own. The error is a
// *RangeError for a reading that is missing or cannot be, or
// refrigerant.ErrNoRefrigerant.
func (p *Points) Analyze() (Analysis, error) {
	switch {
	case p == nil || len(p.Refrigerant.Composition()) == 0:
		return Analysis{}, refrigerant.ErrNoRefrigerant
	case p.SuctionPressure == nil || p.SuctionLine == nil:
		return Analysis{}, &RangeError{
			Quantity: "suction pressure or suction line temperature",
			Advice:   "a cycle needs both",
		}
	case p.LiquidPressure == nil && p.DischargePressure == nil, p.LiquidLine == nil:
		return Analysis{}, &RangeError{
			Quantity: "pressure on the high side or liquid line temperature",
			Advice:   "a cycle needs both, the pressure at the liquid or at the discharge port",
		}
	}
	if err := p.check(); err != nil {
		return Analysis{}, err
	}
	if p.DischargeLine != nil && p.DischargeLine.Value <= p.SuctionLine.Value {
		return Analysis{}, &RangeError{
			Quantity: "discharge line temperature",
			Value:    p.DischargeLine.Value,
			Min:      p.SuctionLine.Value,
			Advice:   "colder than the suction line it cannot be: one of the clamps is misplaced",
		}
	}
	in, std := p.readings()
	base, err := p.compute(in)
	if err != nil {
		return Analysis{}, err
	}
	// The variance of every result, reading by reading.
	var variance results
	for i, u := range std {
		if u == 0 || math.IsNaN(in[i]) {
			continue
		}
		moved := in
		moved[i] += u
		r, err := p.compute(moved)
		if err != nil {
			moved[i] = in[i] - u
			if r, err = p.compute(moved); err != nil {
				return Analysis{}, err
			}
		}
		for k := range variance {
			d := r.values[k] - base.values[k]
			variance[k] += d * d
		}
	}
	return p.analysis(&base, &variance), nil
}

// Readings by place; NaN where there is none. iDrop is the correction of the high side.
const (
	iSuctionP = iota
	iLiquidP
	iDischargeP
	iSuctionT
	iLiquidT
	iDischargeT
	iPower
	iAir
	iDrop
	readingCount
)

// Results by place.
const (
	oSuperheat = iota
	oSubcooling
	oRatio
	oDrop
	oIsentropic
	oVolumetric
	oEffect
	oFlowMap
	oFlowPower
	oFlowAir
	oRejected // per mass
	resultCount
)

type (
	readings [readingCount]float64
	results  [resultCount]float64
)

// check refuses what no instrument shows.
func (p *Points) check() error {
	const advice = "read it again, in the unit it was read in"
	if p.Atmosphere != 0 {
		if err := limit.Within(
			"atmosphere around the gauges", p.Atmosphere, quantity.Kilopascals(40),
			quantity.Kilopascals(120),
			"read a barometer at the site, take quantity.AtmosphereAt its elevation, "+
				"or leave it at 0 for sea level",
		); err != nil {
			return err
		}
	}
	for _, r := range []struct {
		name string
		u    *quantity.Uncertain[quantity.GaugePressure]
	}{
		{"suction pressure", p.SuctionPressure}, {"liquid pressure", p.LiquidPressure},
		{"discharge pressure", p.DischargePressure},
	} {
		if err := readable(
			r.name, r.u, quantity.BarGauge(-1), quantity.BarGauge(150), advice,
		); err != nil {
			return err
		}
	}
	for _, r := range []struct {
		name string
		u    *quantity.Uncertain[quantity.Temperature]
	}{
		{"suction line temperature", p.SuctionLine}, {"liquid line temperature", p.LiquidLine},
		{"discharge line temperature", p.DischargeLine},
	} {
		if err := readable(
			r.name, r.u, quantity.Celsius(-100), quantity.Celsius(250), advice,
		); err != nil {
			return err
		}
	}
	if err := readable(
		"electric power of the compressor", p.Power, quantity.Watts(1), quantity.Kilowatts(10000),
		"leave it out where the meter shows nothing",
	); err != nil {
		return err
	}
	if err := readable(
		"capacity on the air side", p.AirCapacity, quantity.Kilowatts(-10000),
		quantity.Kilowatts(10000), advice,
	); err != nil {
		return err
	}
	if k := p.Compressor; k != nil {
		if err := limit.Within(
			"displacement of the compressor", k.Displacement, 0, 10,
			"the volume that it sweeps in a second; 0 where it is not known",
		); err != nil {
			return err
		}
		return k.withDefaults().check()
	}
	return nil
}

func (p *Points) readings() (v, std readings) {
	atm := p.Atmosphere
	if atm == 0 {
		atm = quantity.StandardAtmosphere
	}
	for i := range v {
		v[i] = math.NaN()
	}
	gauge := func(i int, u *quantity.Uncertain[quantity.GaugePressure]) {
		if u != nil {
			v[i], std[i] = float64(u.Value.Absolute(atm)), u.Std
		}
	}
	clamp := func(i int, u *quantity.Uncertain[quantity.Temperature]) {
		if u != nil {
			v[i], std[i] = float64(u.Value), u.Std
		}
	}
	meter := func(i int, u *quantity.Uncertain[quantity.Power]) {
		if u != nil {
			v[i], std[i] = float64(u.Value), u.Std
		}
	}
	gauge(iSuctionP, p.SuctionPressure)
	gauge(iLiquidP, p.LiquidPressure)
	gauge(iDischargeP, p.DischargePressure)
	clamp(iSuctionT, p.SuctionLine)
	clamp(iLiquidT, p.LiquidLine)
	clamp(iDischargeT, p.DischargeLine)
	meter(iPower, p.Power)
	meter(iAir, p.AirCapacity)
	v[iDrop] = 0
	if p.LiquidPressure == nil || p.DischargePressure == nil {
		v[iDrop], std[iDrop] = highSideDrop, highSideDropStd
	}
	return v, std
}

// leastRise of enthalpy in a compressor, J/kg: less is no compression.
const leastRise quantity.SpecificEnthalpy = 100

// computed are the states and results of one set of readings.
type computed struct {
	suction, liquid, expanded, ideal, discharge refrigerant.State
	values                                      results
}

func (p *Points) compute(in readings) (c computed, err error) {
	r := p.Refrigerant
	for k := range c.values {
		c.values[k] = math.NaN()
	}
	suctionP := quantity.Pressure(in[iSuctionP])
	liquidP, dischargeP := quantity.Pressure(in[iLiquidP]), quantity.Pressure(in[iDischargeP])
	switch {
	case p.LiquidPressure == nil:
		if liquidP, err = otherPort(r, dischargeP, -in[iDrop]); err != nil {
			return c, err
		}
	case p.DischargePressure == nil:
		if dischargeP, err = otherPort(r, liquidP, in[iDrop]); err != nil {
			return c, err
		}
	}
	if dischargeP <= suctionP {
		return c, &RangeError{
			Quantity: "pressure on the high side", Value: dischargeP, Min: suctionP,
			Advice: "it is not above the suction pressure: the hoses are swapped, " +
				"or the machine does not run",
		}
	}

	suctionT, liquidT := quantity.Temperature(in[iSuctionT]), quantity.Temperature(in[iLiquidT])
	superheat, err := r.Superheat(suctionP, suctionT)
	if err != nil {
		return c, err
	}
	subcooling, err := r.Subcooling(liquidP, liquidT)
	if err != nil {
		return c, err
	}
	if c.suction, err = vaporAt(r, suctionP, suctionT, superheat); err != nil {
		return c, err
	}
	if subcooling > 0 {
		c.liquid, err = r.State(liquidP, liquidT)
	} else {
		c.liquid, err = r.SaturatedLiquid(liquidT.Add(subcooling))
	}
	if err != nil {
		return c, err
	}
	if c.expanded, err = r.StateAtEnthalpy(suctionP, c.liquid.Enthalpy); err != nil {
		return c, err
	}
	if c.ideal, err = r.StateAtEntropy(dischargeP, c.suction.Entropy); err != nil {
		return c, err
	}
	h1, h3 := float64(c.suction.Enthalpy), float64(c.liquid.Enthalpy)
	v := &c.values
	v[oSuperheat], v[oSubcooling] = float64(superheat), float64(subcooling)
	v[oRatio] = float64(dischargeP / suctionP)
	v[oDrop] = float64(dischargeP - liquidP)
	v[oEffect] = h1 - h3
	v[oFlowAir] = in[iAir] / (h1 - h3)

	rise := math.NaN()
	if p.DischargeLine != nil {
		c.discharge, err = r.State(dischargeP, quantity.Temperature(in[iDischargeT]))
		if err != nil {
			return c, err
		}
		rise = float64(c.discharge.Enthalpy) - h1
		if !(rise > float64(leastRise)) {
			return c, tooCold(
				r, dischargeP, c.suction.Enthalpy+leastRise, quantity.Temperature(in[iDischargeT]),
			)
		}
		v[oIsentropic] = float64(c.ideal.Enthalpy-c.suction.Enthalpy) / rise
		v[oRejected] = float64(c.discharge.Enthalpy) - h3
	}
	return c, p.flows(&c, in[iPower], rise, dischargeP)
}

// flows works out the flow by the compressor, that by the electric power, which gives the vapor
// the rise of enthalpy, and how well the compressor fills.
func (p *Points) flows(c *computed, power, rise float64, dischargeP quantity.Pressure) error {
	v := &c.values
	heatLoss := Compressor{}.withDefaults().HeatLoss
	if p.Compressor != nil {
		k := p.Compressor.withDefaults()
		heatLoss = k.HeatLoss
		switch {
		case k.Map != nil:
			flow, _, err := k.Map.AtState(p.Refrigerant, c.suction, dischargeP)
			if err != nil {
				return err
			}
			v[oFlowMap] = float64(flow)
		case k.Displacement > 0:
			swept := k.volumetric(v[oRatio]) * float64(k.Displacement)
			v[oFlowMap] = swept * float64(c.suction.Density)
		}
	}
	v[oFlowPower] = power * (1 - heatLoss) / rise
	if p.Compressor != nil && p.Compressor.Displacement > 0 {
		flow := v[oFlowPower]
		if math.IsNaN(flow) {
			flow = v[oFlowAir]
		}
		v[oVolumetric] = flow / (float64(p.Compressor.Displacement) * float64(c.suction.Density))
	}
	return nil
}

// tooCold is the error of a discharge line at which the gas would have gained nothing: at
// the pressure there it has the enthalpy least in hotter gas only.
func tooCold(
	r *refrigerant.Refrigerant, p quantity.Pressure, least quantity.SpecificEnthalpy,
	t quantity.Temperature,
) error {
	hotter, err := r.StateAtEnthalpy(p, least)
	if err != nil {
		return &RangeError{
			Quantity: "discharge line temperature",
			Value:    t,
			Advice: "at this discharge pressure the gas would hold less heat than it came in " +
				"with: one of the clamps is misplaced",
		}
	}
	return &RangeError{
		Quantity: "discharge line temperature", Value: t, Min: hotter.Temperature,
		Advice: "colder at this discharge pressure the gas would hold less heat than it came in " +
			"with: the clamp is loose or misplaced, or the pressure is not this machine's",
	}
}

// otherPort moves a high-side pressure by kelvins of saturation temperature.
func otherPort(
	r *refrigerant.Refrigerant, p quantity.Pressure, kelvins float64,
) (quantity.Pressure, error) {
	t, err := r.BubbleTemperature(p)
	if err != nil {
		return 0, err
	}
	return r.BubblePressure(t + quantity.Temperature(kelvins))
}

// vaporAt is the state of suction gas, saturated where the clamp reads below the dew
// point.
func vaporAt(
	r *refrigerant.Refrigerant, p quantity.Pressure, t quantity.Temperature,
	superheat quantity.TemperatureDelta,
) (refrigerant.State, error) {
	if superheat > 0 {
		return r.State(p, t)
	}
	return r.SaturatedVapor(t.Add(-superheat))
}

func (p *Points) analysis(c *computed, variance *results) Analysis {
	v := &c.values
	std := func(i int) float64 { return math.Sqrt(variance[i]) }
	ratio := func(i int) *quantity.UncertainNumber {
		if math.IsNaN(v[i]) {
			return nil
		}
		return &quantity.UncertainNumber{Value: v[i], Std: std(i)}
	}
	a := Analysis{
		Suction: c.suction, Liquid: c.liquid, EvaporatorIn: c.expanded, IdealDischarge: c.ideal,
		Superheat: quantity.Uncertain[quantity.TemperatureDelta]{
			Value: quantity.TemperatureDelta(v[oSuperheat]),
			Std:   std(oSuperheat),
		},
		Subcooling: quantity.Uncertain[quantity.TemperatureDelta]{
			Value: quantity.TemperatureDelta(v[oSubcooling]),
			Std:   std(oSubcooling),
		},
		CompressionRatio: quantity.UncertainNumber{Value: v[oRatio], Std: std(oRatio)},
		HighSideDrop: quantity.Uncertain[quantity.Pressure]{
			Value: quantity.Pressure(v[oDrop]),
			Std:   std(oDrop),
		},
		IsentropicEfficiency: ratio(oIsentropic),
		VolumetricEfficiency: ratio(oVolumetric),
		RefrigeratingEffect: quantity.Uncertain[quantity.SpecificEnthalpy]{
			Value: quantity.SpecificEnthalpy(v[oEffect]),
			Std:   std(oEffect),
		},
		HighSide: "both",
	}
	switch {
	case p.LiquidPressure == nil:
		a.HighSide = "discharge"
	case p.DischargePressure == nil:
		a.HighSide = "liquid"
	}
	if p.DischargeLine != nil {
		a.Discharge = &c.discharge
	}

	// Beyond the readings, every way to the flow has a doubt of its own: of a map or a
	// displacement about 5 %, of the power 3 % for the heat that the shell loses. Air
	// brings its own with the capacity.
	flow := func(i int, own float64) *quantity.Uncertain[quantity.MassFlow] {
		if math.IsNaN(v[i]) {
			return nil
		}
		return &quantity.Uncertain[quantity.MassFlow]{
			Value: quantity.MassFlow(v[i]),
			Std:   math.Hypot(std(i), own*v[i]),
		}
	}
	a.FlowByMap, a.FlowByPower = flow(oFlowMap, 0.05), flow(oFlowPower, 0.03)
	a.FlowByAir = flow(oFlowAir, 0)
	a.Flow = weighted(a.FlowByMap, a.FlowByPower, a.FlowByAir)
	if own := weighted(a.FlowByMap, a.FlowByPower); own != nil {
		a.Capacity = times(own, v[oEffect], std(oEffect))
		if !math.IsNaN(v[oRejected]) {
			a.HeatRejected = times(own, v[oRejected], std(oRejected))
		}
		if p.Power != nil {
			cop := float64(a.Capacity.Value / p.Power.Value)
			a.COP = &quantity.UncertainNumber{
				Value: cop,
				Std: cop * math.Hypot(
					a.Capacity.Std/float64(a.Capacity.Value), p.Power.Std/float64(p.Power.Value),
				),
			}
		}
	}
	return a
}

// weighted is the mean of the flows by the inverse of their variances.
func weighted(
	flows ...*quantity.Uncertain[quantity.MassFlow],
) *quantity.Uncertain[quantity.MassFlow] {
	sum, weight := 0.0, 0.0
	for _, f := range flows {
		if f != nil && f.Std > 0 {
			w := 1 / (f.Std * f.Std)
			sum += w * float64(f.Value)
			weight += w
		}
	}
	if weight == 0 {
		for _, f := range flows {
			if f != nil {
				return f
			}
		}
		return nil
	}
	return &quantity.Uncertain[quantity.MassFlow]{
		Value: quantity.MassFlow(sum / weight),
		Std:   1 / math.Sqrt(weight),
	}
}

func times(
	flow *quantity.Uncertain[quantity.MassFlow], perMass, std float64,
) *quantity.Uncertain[quantity.Power] {
	w := float64(flow.Value) * perMass
	return &quantity.Uncertain[quantity.Power]{
		Value: quantity.Power(w),
		Std:   math.Abs(w) * math.Hypot(flow.Std/float64(flow.Value), std/perMass),
	}
}
