package testbench

import (
	"math"
	"math/rand/v2"

	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A HeatPump is a machine of the bench with its reversing valve over: the outdoor coil boils
// behind a device of its own, hot gas goes down the large line to the indoor coil, and what
// that cannot hold of the charge waits in a compensator.
type HeatPump struct {
	*Machine
	outdoorDevice device
	// waits is the charge in the compensator; wrap is what the true suction loses of pressure
	// and gains in temperature through valve and accumulator.
	waits, wrapLoss, wrapGain float64
	lossPerMeter              float64 // W/(m K) of the large line to the outdoor air
	device                    refrigerant.Metering
	start                     vector
	lift, flow                float64 // at the rating
}

// heatingRated is test H1 of AHRI 210/240: 47/43 °F outdoors, 70 °F indoors.
func heatingRated() Weather {
	return Weather{
		Outdoor: quantity.Fahrenheit(47), ReturnDryBulb: quantity.Fahrenheit(70),
		ReturnWetBulb: quantity.Fahrenheit(56), Atmosphere: quantity.StandardAtmosphere,
	}
}

// heatingClimate is that of a weather with the humidity of a winter day.
func heatingClimate(w Weather, humidity float64) (*climate, error) {
	c, err := w.climate()
	if err != nil {
		return nil, err
	}
	c.outdoor, err = psychro.FromRelativeHumidity(w.Outdoor, humidity, w.Atmosphere)
	return c, err
}

// DrawHeatPump makes a sound one, right charged. The spreads are common practice, no source.
func DrawHeatPump(rng *rand.Rand) (*HeatPump, error) {
	for range 60 {
		m, err := Draw(rng, nil)
		if err != nil {
			return nil, err
		}
		h := &HeatPump{
			Machine: m, wrapLoss: uniform(rng, 0.01, 0.045), wrapGain: uniform(rng, 0.3, 2.5),
			lossPerMeter: uniform(rng, 0.12, 0.4),
		}
		m.HeatPump = true
		h.device = refrigerant.TXV
		switch u := rng.Float64(); {
		case m.device.kind == refrigerant.EXV && u < 0.9:
			h.device = refrigerant.EXV
		case m.device.kind == refrigerant.FixedRestrictor && u < 0.8, u < 0.35:
			h.device = refrigerant.FixedRestrictor
		}
		superheat := degreeF * clipped(rng, 9, 2.2)
		subcooling := degreeF * clipped(rng, 12, 3)
		if h.reverse(superheat, subcooling, uniform(rng, 0.45, 0.7), uniform(rng, 1.2, 1.8)) {
			return h, nil
		}
	}
	return nil, errDesign
}

// A heatCycle is everything at one set of unknowns.
type heatCycle struct {
	indoor, outdoor               pass
	room                          draft
	compression                   compression
	p1, h1, t1, p3, t3, hIn, pIn  float64
	flow, felt, dischargeT, mass  float64
	gasPressure, leavingOutdoorDB float64
	residual                      vector
}

// run goes once around; without a charge it leaves out what has to close by device and
// charge.
func (h *HeatPump) run(x *vector, w *climate, a *ailments, charge float64) heatCycle {
	f, l := h.fluid, &h.lines
	var c heatCycle
	low, high, h4, gas := f.tried(x, a)
	c.flow, c.gasPressure = math.Exp(x[xFlow]), gas

	outside := newDraft(w.outdoor, h.outdoorFlow*a.outdoorAir, w.saturated)
	c.outdoor = h.outdoor.run(f, c.flow, low, h4, &outside, true, 1, a.outdoorFoul)
	superheat := superheated(f, c.outdoor.p, c.outdoor.h)
	c.felt = superheat + a.feed.bulb*(float64(w.Outdoor)-c.outdoor.t)
	c.leavingOutdoorDB = outside.t - max(c.outdoor.heat, 0)/(outside.flow*outside.cp) +
		(outside.w-c.outdoor.leavingW)*2.5e6/outside.cp + h.outdoorFan/(outside.flow*outside.cp)

	c.p1 = max(1.05*f.LowPressure(), c.outdoor.p*(1-h.wrapLoss*(c.flow/h.flow)*(c.flow/h.flow)))
	var b cyclefluid.Isobar
	f.Set(&b, c.p1)
	c.h1 = c.outdoor.h + h.wrapGain*b.DewHeatCapacity()
	c.t1 = temperatureOf(&b, c.h1)
	gasIn := b.AtEnthalpy(max(c.h1, b.Dew.H))
	bubbleIn, dewIn := b.Bubble, b.Dew

	c.compression = h.compressor.run(f, c.p1, c.h1, high+gas, a.leak)
	f.Set(&b, high)
	hot := b.AtEnthalpy(c.compression.h)
	c.dischargeT = hot.T
	down := c.compression.h - h.lossPerMeter*l.length*(hot.T-float64(w.Outdoor))/c.flow
	t := f.transport(&b)
	section := math.Pi / 4 * l.suctionBore * l.suctionBore
	vaporDrop := friction((down-b.Bubble.H)/t.latent, c.flow/section, l.suctionBore, &t) * l.length
	vaporMass := section * l.length / max(b.AtEnthalpy(down).V, b.Bubble.V)

	c.room = newDraft(w.room, h.airflow*a.indoorAir, w.saturated)
	hinder := 1 / (1 + 4*gas/high)
	into := max(high-vaporDrop, 0.5*high)
	c.indoor = h.indoor.run(f, c.flow, into, down, &c.room, false, hinder, a.indoorFoul)

	// The liquid goes out into the cold; the gauge stands on the outdoor unit.
	f.Set(&b, c.indoor.p)
	t = f.transport(&b)
	bore := math.Pi / 4 * l.liquidBore * l.liquidBore
	hl := c.indoor.h - l.liquidLoss*(c.indoor.t-float64(w.Outdoor))/c.flow
	p4 := c.indoor.p - friction((hl-b.Bubble.H)/t.latent, c.flow/bore, l.liquidBore, &t)*l.length
	p4 = max(p4, 1.1*f.LowPressure())
	c.p3 = p4 + gas
	f.Set(&b, p4)
	c.t3 = temperatureOf(&b, hl)
	p4 = max(p4-a.restriction*h.lift*(c.flow/h.flow)*(c.flow/h.flow), 1.1*f.LowPressure(),
		0.02*c.p3)
	c.hIn, c.pIn = hl, p4
	in := entering(f, c.indoor.p, hl)
	liquidMass := in.rho * (bore*l.length + l.drier)

	wet := c.flow * max(0, (dewIn.H-c.h1)/(dewIn.H-bubbleIn.H))
	level := wet * wet / (wet*wet + l.bleed*l.bleed)
	c.mass = vaporMass + liquidMass + c.indoor.mass + c.outdoor.mass +
		l.discharge/hot.V + h.indoor.headers*0.5*(1/hot.V+in.rho) +
		h.outdoor.headers/max(b.AtEnthalpy(h4).V, b.Bubble.V) +
		h.compressor.shell/gasIn.V + h.compressor.dissolved(f, c.p1, c.t1) +
		l.accumulator*(level/bubbleIn.V+(1-level)/gasIn.V) + h.waits

	c.residual = vector{math.Log(c.compression.flow / c.flow), 0, 2 * (hl - h4) / 1e5, 0, 0}
	if charge > 0 {
		metered := h.outdoorDevice.flow(f, p4, hl, low, c.felt, &a.feed)
		c.residual[1] = math.Log(metered / c.flow)
		c.residual[3] = math.Log(c.mass / charge)
	}
	if a.gas > 0 {
		space := c.indoor.vapor + l.discharge + section*l.length
		c.residual[4] = (a.gas*gasConstant*0.5*(c.indoor.t+hot.T)/max(space, 1e-5) - gas) / 1e6
	}
	return c
}

var heatMost, heatProbe = vector{0.12, 0.1, 0.2, 0.15, 1}, vector{1e-5, 1e-5, 1e-5, 1e-5, 1e-4}

// reverse balances the coils at the rating, and sizes the device and the compensator by it.
func (h *HeatPump) reverse(superheat, subcooling, static, most float64) bool {
	w, err := heatingClimate(heatingRated(), 0.72)
	if err != nil {
		return false
	}
	f := h.fluid
	te, tc := float64(w.Outdoor)-9, float64(w.ReturnDryBulb)+22
	var b cyclefluid.Isobar
	f.Set(&b, f.BubblePressure(tc))
	h.flow, h.lift = h.ratedFlow, h.ratedLift
	x := vector{
		math.Log(f.DewPressure(te)), math.Log(f.BubblePressure(tc)), math.Log(h.ratedFlow * 0.75),
		b.LiquidAt(tc-subcooling).H / 1e5,
	}
	a := nothing
	ok := newton(4, &x, heatMost, heatProbe, func(x *vector) vector {
		c := h.run(x, w, &a, 0)
		var p1, p3 cyclefluid.Isobar
		f.Set(&p1, c.p1)
		f.Set(&p3, c.p3)
		over := (c.h1 - p1.Dew.H) / p1.DewHeatCapacity()
		r := c.residual
		r[1] = (over - superheat) / 10
		r[3] = (p3.Bubble.T - c.t3 - subcooling) / 10
		return r
	})
	if !ok {
		return false
	}
	c := h.run(&x, w, &a, 0)
	low := math.Exp(x[xLow])
	h.flow, h.lift, h.start = c.flow, c.pIn-low, x
	d := &h.outdoorDevice
	*d = device{kind: h.device, bore: 1e-3, area: 1, least: 0.05, most: most, span: 1}
	if h.device == refrigerant.FixedRestrictor {
		lo, hi := 0.3e-3, 5e-3
		for range 60 {
			d.bore = math.Sqrt(lo * hi)
			if d.flow(f, c.pIn, c.hIn, low, 0, &nothing.feed) > c.flow {
				hi = d.bore
			} else {
				lo = d.bore
			}
		}
	} else {
		at := max(c.felt, 1.5)
		d.static = static * at
		if h.device == refrigerant.EXV {
			d.static = at - 0.5
		}
		d.span = at - d.static
		d.area = c.flow / d.flow(f, c.pIn, c.hIn, low, at, &nothing.feed)
	}
	h.waits = max(h.right-c.mass, 0)
	h.right = c.mass + h.waits
	h.charge = h.right
	h.LabelCharge = quantity.Mass(h.right)
	return true
}

// Heat returns what the machine does in a weather; of an Operation the condenser is the
// outdoor coil still, and the supply the air off the indoor coil.
func (h *HeatPump) Heat(weather Weather, humidity float64) (*Operation, error) {
	return h.heat(weather, humidity, h.ails, h.charge)
}

func (h *HeatPump) heat(
	weather Weather, humidity float64, a ailments, charge float64,
) (*Operation, error) {
	x, n := h.start, 4
	if a.gas > 0 {
		n = 5
		x[xGas] = a.gas * gasConstant * 320 / (h.indoor.volume() * 0.7) / 1e5
	}
	rated := heatingRated()
	solved := false
	var w *climate
	for _, steps := range []int{1, 5, 15} {
		y := x
		solved = true
		for i := 1; i <= steps && solved; i++ {
			u := float64(i) / float64(steps)
			mix := func(p, q float64) float64 { return p + u*(q-p) }
			at := Weather{
				quantity.Temperature(mix(float64(rated.Outdoor), float64(weather.Outdoor))),
				quantity.Temperature(mix(float64(rated.ReturnDryBulb),
					float64(weather.ReturnDryBulb))),
				quantity.Temperature(mix(float64(rated.ReturnWetBulb),
					float64(weather.ReturnWetBulb))),
				quantity.Pressure(mix(float64(rated.Atmosphere), float64(weather.Atmosphere))),
			}
			var err error
			if w, err = heatingClimate(at, mix(0.72, humidity)); err != nil {
				return nil, err
			}
			ails := nothing.toward(a, u)
			if a.gas > 0 {
				ails.gas = max(ails.gas, 0.05*a.gas)
			}
			solved = newton(n, &y, heatMost, heatProbe, func(x *vector) vector {
				return h.run(x, w, &ails, h.right*math.Pow(charge/h.right, u)).residual
			})
		}
		if solved {
			x = y
			break
		}
	}
	if !solved {
		return nil, errUnsolved
	}
	c := h.run(&x, w, &a, charge)
	f := h.fluid
	if math.Exp(x[xLow]) < 1.15*f.LowPressure() ||
		math.Exp(x[xHigh])+c.gasPressure > f.BubblePressure(cutOut) {
		return nil, errStopped
	}
	blower := h.indoorFan * a.indoorAir
	power := c.compression.power + blower + h.outdoorFan
	o := &Operation{
		Suction: quantity.Pressure(c.p1), Liquid: quantity.Pressure(c.p3),
		SuctionLine: quantity.Temperature(c.t1), LiquidLine: quantity.Temperature(c.t3),
		DischargeLine: quantity.Temperature(c.dischargeT - 2),
		Flow:          quantity.MassFlow(c.flow), Power: quantity.Power(power),
		Capacity:         quantity.Power(blower - c.indoor.heat),
		Airflow:          quantity.VolumeFlow(h.airflow * a.indoorAir),
		CondenserLeaving: quantity.Temperature(c.leavingOutdoorDB),
	}
	r := f.refrigerant
	var err error
	if o.Evaporating, err = r.DewTemperature(o.Suction); err != nil {
		return nil, err
	}
	if o.Condensing, err = r.BubbleTemperature(o.Liquid); err != nil {
		return nil, err
	}
	o.Superheat, o.Subcooling = o.SuctionLine.Sub(o.Evaporating), o.Condensing.Sub(o.LiquidLine)
	supply := c.room.t + float64(o.Capacity)/(c.room.flow*c.room.cp)
	o.Supply, err = psychro.FromHumidityRatio(
		quantity.Temperature(supply), c.room.w, weather.Atmosphere,
	)
	return o, err
}
