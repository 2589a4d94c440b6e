package testbench

import (
	"errors"
	"fmt"
	"math"

	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A design says what a machine should do at rated conditions, and of what kind its parts
// are; their sizes follow.
type design struct {
	designation           string
	metering              refrigerant.Metering
	heatPump              bool
	label, nominal        float64 // W: on the label; in truth, net of the blower
	airflow               float64 // m³/s
	evaporating           float64 // K, dew at the suction port
	condensing            float64 // K, bubble at the liquid port
	superheat, subcooling float64 // K at these ports
	compressor            compressor
	indoor, outdoor       coil
	indoorFlux            float64 // kg/(m² s) in a circuit
	outdoorFlux           float64
	reach                 float64 // rise of the outdoor air over condensing less outdoor
	lines                 lines
	accumulator           float64 // of the right charge that it can hold
	indoorFan             float64 // W
	outdoorFan            float64 // W per kg/s of air
	supplyGain            float64 // K, of cabinet and plenum, before the supply is read
	staticShare           float64 // of the rated superheat, at which a valve begins to open
	leastOpening          float64
	mostOpening           float64
	springSpan            float64 // K, of an electronic valve
}

var errDesign = errors.New("no machine of usual size does that")

// build sizes the parts. It fails where one would come out of a size that nobody makes.
func (d *design) build() (*Machine, error) {
	f, err := fluidOf(d.designation)
	if err != nil {
		return nil, err
	}
	w, err := Rated().climate()
	if err != nil {
		return nil, err
	}
	m := &Machine{
		fluid: f, HeatPump: d.heatPump,
		Nominal: quantity.Power(d.label), RatedAirflow: quantity.VolumeFlow(d.airflow),
		LabelSubcooling: quantity.TemperatureDelta(d.subcooling),
		compressor:      d.compressor, indoor: d.indoor, outdoor: d.outdoor, lines: d.lines,
		ails: nothing, indoorFan: d.indoorFan, airflow: d.airflow, supplyGain: d.supplyGain,
		sound: w,
	}
	var b cyclefluid.Isobar
	p1 := f.DewPressure(d.evaporating)
	f.Set(&b, p1)
	t1 := d.evaporating + d.superheat
	h1 := b.VaporAt(t1).H
	p3 := f.BubblePressure(d.condensing)
	t3 := d.condensing - d.subcooling
	f.Set(&b, p3)
	h3 := b.LiquidAt(t3).H

	outside := float64(w.Outdoor)
	flow := d.nominal / (h1 - h3)
	h4, h5 := h3, h1
	for range 10 {
		h4 = h3 - m.lines.liquidLoss*(t3-outside)/flow
		h5 = h1 - m.lines.suctionGain*(outside-t1)/flow
		flow = (d.nominal + d.indoorFan) / (h5 - h4)
	}
	m.ratedFlow = flow

	low, err := m.sizeIndoor(w, d, flow, h4, p1, h1)
	if err != nil {
		return nil, err
	}
	high, err := m.sizeOutdoor(w, d, flow, p1, h1, p3, h3)
	if err != nil {
		return nil, err
	}
	m.rating = vector{math.Log(low), math.Log(high), math.Log(flow), h4 / 1e5}
	m.device = device{
		kind: d.metering, bore: 1e-3, area: 1, least: d.leastOpening, most: d.mostOpening, span: 1,
	}
	c := m.evaluate(&m.rating, w, &nothing, 1)
	m.ratedLift = c.p3 - low
	if err := m.sizeDevice(d, &c, low, h4); err != nil {
		return nil, err
	}
	m.lines.accumulator = d.accumulator * c.mass * 1e-3 // kg to m³ of liquid, about
	m.lines.bleed = 0.03 * flow
	c = m.evaluate(&m.rating, w, &nothing, 1)
	m.right, m.charge = c.mass, c.mass
	m.LabelCharge = quantity.Mass(c.mass)
	c = m.evaluate(&m.rating, w, &nothing, m.right)
	if r := norm(4, &c.residual); r > 1e-3 {
		return nil, fmt.Errorf("%w: off by %.3g at its own rating", errDesign, r)
	}
	return m, nil
}

// Inner surface of the coils that are made, m² per kW of nominal capacity; beyond it a design
// is refused. Common practice, no source.
const leastSurface, mostSurface = 0.05, 1.0

func (m *Machine) refuse(c *coil, what string) error {
	surface := math.Pi * c.bore * c.length * c.circuits / (float64(m.Nominal) / 1000)
	if !(surface > leastSurface && surface < mostSurface) {
		return fmt.Errorf("%w: %s of %.2f m² per kW", errDesign, what, surface)
	}
	return nil
}

// divide splits a flow into circuits, whole ones.
func (c *coil) divide(flow, flux float64) {
	c.circuits = max(1, math.Round(flow/(flux*math.Pi/4*c.bore*c.bore)))
}

// guess is the length of a circuit from which a size is sought: 0.25 m² per kW.
func (c *coil) guess(nominal float64) float64 {
	return 0.25 * nominal / 1000 / (math.Pi * c.bore * c.circuits)
}

func (m *Machine) sizeIndoor(
	w *climate, d *design, flow, h4, p1, h1 float64,
) (low float64, err error) {
	air := m.indoorDraft(w, &nothing)
	m.indoor.ratedAir = air.flow
	m.indoor.divide(flow, d.indoorFlux)
	x := vector{math.Log(m.indoor.guess(d.nominal)), math.Log(1.06 * p1)}
	most, probe := vector{0.4, 0.05}, vector{1e-4, 1e-5}
	ok := newton(2, &x, most, probe, func(x *vector) vector {
		m.indoor.length = math.Exp(x[0])
		c := cycle{flow: flow}
		c.indoor = m.indoor.run(m.fluid, flow, math.Exp(x[1]), h4, &air, true, 1, 1)
		m.suctionLine(&c, w)
		return vector{(c.h1 - h1) / 1e5, math.Log(c.p1 / p1)}
	})
	m.indoor.length = math.Exp(x[0])
	if !ok {
		return 0, fmt.Errorf("%w: no indoor coil", errDesign)
	}
	return math.Exp(x[1]), m.refuse(&m.indoor, "indoor coil")
}

func (m *Machine) sizeOutdoor(
	w *climate, d *design, flow, p1, h1, p3, h3 float64,
) (high float64, err error) {
	f := m.fluid
	m.outdoor.divide(flow, d.outdoorFlux)
	size := func(high float64) compression {
		m.compressor.displacement = 1e-3
		unit := m.compressor.run(f, p1, h1, high, 0)
		m.compressor.displacement *= flow / unit.flow
		return m.compressor.run(f, p1, h1, high, 0)
	}
	x := vector{math.Log(m.outdoor.guess(d.nominal)), math.Log(1.02 * p3)}
	most, probe := vector{0.4, 0.05}, vector{1e-4, 1e-5}
	ok := newton(2, &x, most, probe, func(x *vector) vector {
		m.outdoor.length = math.Exp(x[0])
		high := min(math.Exp(x[1]), 0.95*f.HighPressure())
		in := size(high)
		cp := 1030.0 // J/(kg K) of dry air with its water, for the size of the fan alone
		air := flow * (in.h - h3) / (cp * d.reach * (d.condensing - float64(w.Outdoor)))
		m.outdoor.ratedAir = air
		m.outdoorFlow = air * float64(w.outdoor.SpecificVolume())
		m.outdoorFan = d.outdoorFan * air
		stream := newDraft(w.outdoor, m.outdoorFlow, w.saturated)
		out := m.outdoor.run(f, flow, high, in.h, &stream, false, 1, 1)
		return vector{(out.h - h3) / 1e5, math.Log(out.p / p3)}
	})
	m.outdoor.length = math.Exp(x[0])
	if !ok {
		return 0, fmt.Errorf("%w: no outdoor coil", errDesign)
	}
	high = math.Exp(x[1])
	size(high)
	return high, m.refuse(&m.outdoor, "outdoor coil")
}

// sizeDevice gives a valve its rated opening, and a fixed tube its bore, at the rating.
func (m *Machine) sizeDevice(d *design, c *cycle, low, h4 float64) error {
	_, up, _ := m.liquidLine(c, m.sound, &nothing)
	v := &m.device
	if d.metering == refrigerant.FixedRestrictor {
		off := func(bore float64) float64 {
			return m.fluid.tube.flow(m.fluid, bore, up, h4, low) - c.flow
		}
		least, most := 0.4e-3, 5e-3
		if off(least) > 0 || off(most) < 0 {
			return fmt.Errorf("%w: no restrictor", errDesign)
		}
		v.bore = root.Find(off, least, most, off(least), off(most), 1e-9, 1e-9*c.flow)
		return nil
	}
	if c.superheat < 1.5 {
		return fmt.Errorf("%w: superheat of %.1f K for a valve", errDesign, c.superheat)
	}
	v.static = d.staticShare * c.superheat
	if d.metering == refrigerant.EXV {
		v.static = c.superheat - d.springSpan
	}
	v.span = c.superheat - v.static
	v.area = 1
	v.area = c.flow / v.flow(m.fluid, up, h4, low, c.superheat, &nothing.feed)
	return nil
}

// leaving is the air that a draft becomes.
func leaving(h, ratio float64, p quantity.Pressure) (psychro.Air, error) {
	a, err := psychro.FromEnthalpyAndHumidityRatio(quantity.SpecificEnthalpy(h), ratio, p)
	if err == nil {
		return a, nil
	}
	// The mean of parts may be a hair over saturation, as fog would be.
	return psychro.FromEnthalpyAndRelativeHumidity(quantity.SpecificEnthalpy(h), 0.999, p)
}
