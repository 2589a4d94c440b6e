package testbench

import (
	"math"

	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/quantity"
)

// A Machine is one air conditioner with the refrigerant in it and what is wrong with it.
type Machine struct {
	fluid    *fluid
	HeatPump bool
	// Nominal is the capacity on the label, RatedAirflow the flow it is made for.
	Nominal      quantity.Power
	RatedAirflow quantity.VolumeFlow
	// LabelSubcooling is that at rated conditions with the right charge, LabelCharge the
	// right charge, as the label has them.
	LabelSubcooling quantity.TemperatureDelta
	LabelCharge     quantity.Mass

	compressor      compressor
	indoor, outdoor coil
	device          device
	lines           lines
	outdoorFlow     float64 // m³/s
	indoorFan       float64 // W
	outdoorFan      float64 // W
	airflow         float64 // m³/s through the indoor coil when sound
	supplyGain      float64 // K, of cabinet and plenum, before the supply is read

	ratedFlow, ratedLift float64 // kg/s and Pa across the device, at rated conditions
	right, charge        float64 // kg
	ails                 ailments
	rating               vector // solution at rated conditions, sound and right charged
	sound                *climate
}

// lines are the pipes between the two units, and what else holds refrigerant.
type lines struct {
	length                        float64 // m, one way
	suctionBore, liquidBore       float64 // m
	suctionGain, liquidLoss       float64 // W/K
	discharge, drier, accumulator float64 // m³
	bleed                         float64 // kg/s of liquid that the full accumulator lets through
}

// ailments are what is wrong with a machine, as the parts feel it.
type ailments struct {
	indoorAir, outdoorAir   float64 // flow over the right one
	indoorFoul, outdoorFoul float64 // factor on the air side's heat transfer
	recirculation           float64 // share of the outdoor coil's air that it has breathed out
	restriction             float64 // of the rated lift, lost in the liquid line at rated flow
	feed                    feedFault
	leak                    float64 // of the gas moved
	returnLeak              float64 // share of attic air in the return
	gas                     float64 // mol
}

var nothing = ailments{
	indoorAir: 1, outdoorAir: 1, indoorFoul: 1, outdoorFoul: 1, feed: feedFault{area: 1},
}

// toward goes a part of the way from a to b, so that a solution can be followed.
func (a ailments) toward(b ailments, u float64) ailments {
	mix := func(x, y float64) float64 { return x + u*(y-x) }
	return ailments{
		mix(a.indoorAir, b.indoorAir), mix(a.outdoorAir, b.outdoorAir),
		mix(a.indoorFoul, b.indoorFoul), mix(a.outdoorFoul, b.outdoorFoul),
		mix(a.recirculation, b.recirculation), mix(a.restriction, b.restriction),
		feedFault{
			mix(a.feed.area, b.feed.area), b.feed.stuck, mix(a.feed.stick, b.feed.stick),
			mix(a.feed.bulb, b.feed.bulb),
		},
		mix(a.leak, b.leak), mix(a.returnLeak, b.returnLeak), mix(a.gas, b.gas),
	}
}

// Places of the unknowns: logarithms of the pressures into the two coils and of the flow, the
// enthalpy at the device in 10⁵ J/kg, the pressure of foreign gas in 10⁵ Pa.
const (
	xLow = iota
	xHigh
	xFlow
	xLiquid
	xGas
)

// A cycle is everything at one set of unknowns.
type cycle struct {
	residual vector

	indoor, outdoor         pass
	air, coil               draft // into the indoor and the outdoor coil
	compression             compression
	flow, p1, h1, t1        float64 // at the suction port
	p3, superheat           float64 // at the liquid port, foreign gas included; at the evaporator
	gasPressure, dischargeT float64
	mass                    float64
}

// superheated is by how much a state is over its dew point; of a wet state, below zero as
// if the missing heat were vapor's.
func superheated(f *fluid, p, h float64) float64 {
	var b cyclefluid.Isobar
	f.Set(&b, p)
	if h < b.Dew.H {
		return (h - b.Dew.H) / b.DewHeatCapacity()
	}
	return b.AtEnthalpy(h).T - b.Dew.T
}

// tried are the pressures that unknowns stand for, within what the fluid can be asked, the enthalpy
// at the device and the pressure of foreign gas.
func (f *fluid) tried(x *vector, a *ailments) (low, high, h4, gas float64) {
	low = clamp(math.Exp(x[xLow]), 1.1*f.LowPressure(), 0.8*f.pc)
	high = clamp(math.Exp(x[xHigh]), 1.2*f.LowPressure(), 0.95*f.HighPressure())
	if a.gas > 0 {
		gas = 1e5 * x[xGas]
	}
	return low, high, 1e5 * x[xLiquid], gas
}

func (m *Machine) evaluate(x *vector, w *climate, a *ailments, charge float64) cycle {
	f := m.fluid
	var c cycle
	low, high, h4, gas := f.tried(x, a)
	c.flow, c.gasPressure = math.Exp(x[xFlow]), gas

	c.air = m.indoorDraft(w, a)
	c.indoor = m.indoor.run(f, c.flow, low, h4, &c.air, true, 1, a.indoorFoul)
	c.superheat = superheated(f, c.indoor.p, c.indoor.h)
	felt := c.superheat + a.feed.bulb*(float64(w.ReturnDryBulb)-c.indoor.t)

	suction := m.suctionLine(&c, w)
	c.compression = m.compressor.run(f, c.p1, c.h1, high+gas, a.leak)
	outdoorIn := c.compression.h

	// Gas gathers as a film before the liquid; the loss of heat transfer with its share is
	// common practice, no source.
	hinder := 1 / (1 + 4*gas/high)
	c.coil = newDraft(w.outdoor, m.outdoorFlow*a.outdoorAir, w.saturated)
	fresh := c.coil
	for range 3 {
		c.outdoor = m.outdoor.run(f, c.flow, high, outdoorIn, &c.coil, false, hinder, a.outdoorFoul)
		if a.recirculation == 0 {
			break
		}
		rise := -c.outdoor.heat/(fresh.flow*fresh.cp) + m.outdoorFan/(fresh.flow*fresh.cp)
		c.coil.t = fresh.t + a.recirculation/(1-a.recirculation)*rise
		c.coil.h = fresh.h + fresh.cp*(c.coil.t-fresh.t)
	}
	c.p3 = c.outdoor.p + gas

	h, p4, liquid := m.liquidLine(&c, w, a)
	metered := m.device.flow(f, p4, h, low, felt, &a.feed)
	c.mass = suction + liquid + c.indoor.mass + c.outdoor.mass + m.held(&c, high, low, h4)

	c.residual = vector{
		math.Log(c.compression.flow / c.flow), math.Log(metered / c.flow), 2 * (h - h4) / 1e5, 0, 0,
	}
	c.residual[3] = math.Log(c.mass / charge)
	if a.gas > 0 {
		space := c.outdoor.vapor + m.lines.discharge
		c.residual[4] = (a.gas*gasConstant*0.5*(c.outdoor.t+c.dischargeT)/max(space, 1e-5) - gas) /
			1e6
	}
	return c
}

func clamp(x, low, high float64) float64 { return min(max(x, low), high) }

// indoorDraft is the air at the indoor coil, with what joins the return on the way: attic
// air 15 K over outdoors with the water of outdoor air.
func (m *Machine) indoorDraft(w *climate, a *ailments) draft {
	d := newDraft(w.room, m.airflow*a.indoorAir, w.saturated)
	if a.returnLeak > 0 {
		attic := newDraft(w.outdoor, 1, w.saturated)
		attic.h += 15 * attic.cp
		d.t += a.returnLeak * (attic.t + 15 - d.t)
		d.h += a.returnLeak * (attic.h - d.h)
		d.w += a.returnLeak * (attic.w - d.w)
		d.wetBulb = w.saturated.temperature(d.h)
	}
	return d
}

// suctionLine carries the gas to the port at the outdoor unit, and returns the refrigerant
// in the line.
func (m *Machine) suctionLine(c *cycle, w *climate) float64 {
	f, l := m.fluid, &m.lines
	var b cyclefluid.Isobar
	f.Set(&b, c.indoor.p)
	t := f.transport(&b)
	section := math.Pi / 4 * l.suctionBore * l.suctionBore
	x := (c.indoor.h - b.Bubble.H) / t.latent
	drop := friction(x, c.flow/section, l.suctionBore, &t) * l.length
	c.p1 = max(1.05*f.LowPressure(), c.indoor.p-drop)
	c.h1 = c.indoor.h + l.suctionGain*(float64(w.Outdoor)-c.indoor.t)/c.flow
	f.Set(&b, c.p1)
	s := b.AtEnthalpy(c.h1)
	c.t1 = temperatureOf(&b, c.h1)
	return section * l.length / max(s.V, b.Bubble.V)
}

// liquidLine carries the liquid to the device, and returns its enthalpy and pressure there
// and the refrigerant in the line.
func (m *Machine) liquidLine(c *cycle, w *climate, a *ailments) (h, p, mass float64) {
	f, l := m.fluid, &m.lines
	h = c.outdoor.h - l.liquidLoss*(c.outdoor.t-float64(w.Outdoor))/c.flow
	var b cyclefluid.Isobar
	f.Set(&b, c.p3)
	t := f.transport(&b)
	section := math.Pi / 4 * l.liquidBore * l.liquidBore
	x := (h - b.Bubble.H) / t.latent
	p = c.p3 - friction(x, c.flow/section, l.liquidBore, &t)*l.length
	p -= a.restriction * m.ratedLift * (c.flow / m.ratedFlow) * (c.flow / m.ratedFlow)
	p = max(p, 1.1*f.LowPressure(), 0.02*c.p3)
	in := entering(f, c.p3, h)
	rho := in.rho
	if in.quality > 0 {
		alpha := m.outdoor.slip.void(in.quality, c.flow/section, l.liquidBore, &t)
		rho = alpha*in.rhoV + (1-alpha)*in.rhoL
	}
	return h, p, rho * (section*l.length + l.drier)
}

// held is the refrigerant in what is neither coil nor line: discharge pipe, headers, shell,
// oil, accumulator.
func (m *Machine) held(c *cycle, high, low, h4 float64) float64 {
	f, l := m.fluid, &m.lines
	var b cyclefluid.Isobar
	f.Set(&b, high)
	hot := b.AtEnthalpy(c.compression.h)
	c.dischargeT = hot.T
	in := entering(f, high, c.outdoor.h)
	mass := l.discharge/hot.V + m.outdoor.headers*0.5*(1/hot.V+in.rho)
	f.Set(&b, low)
	mass += m.indoor.headers / max(b.AtEnthalpy(h4).V, b.Bubble.V)
	f.Set(&b, c.p1)
	gas := b.AtEnthalpy(max(c.h1, b.Dew.H))
	mass += m.compressor.shell/gas.V + m.compressor.dissolved(f, c.p1, c.t1)
	if l.accumulator > 0 {
		wet := c.flow * max(0, (b.Dew.H-c.h1)/(b.Dew.H-b.Bubble.H))
		// The head of liquid over the bleed goes with the square of the flow through it.
		level := wet * wet / (wet*wet + l.bleed*l.bleed)
		mass += l.accumulator * (level/b.Bubble.V + (1-level)/gas.V)
	}
	return mass
}
