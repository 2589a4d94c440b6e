package testbench

import (
	"errors"
	"fmt"
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// An Operation is what a machine does in a weather once it has settled.
type Operation struct {
	Suction, Liquid                        quantity.Pressure    // at the ports
	SuctionLine, LiquidLine, DischargeLine quantity.Temperature // at the outdoor unit
	Superheat, Subcooling                  quantity.TemperatureDelta
	Evaporating, Condensing                quantity.Temperature // dew and bubble at the ports
	CondenserEntering, CondenserLeaving    quantity.Temperature
	Supply                                 psychro.Air
	Airflow                                quantity.VolumeFlow
	// Capacity is net of the blower, Power that of the whole machine.
	Capacity, Power quantity.Power
	Flow            quantity.MassFlow
	// Coldest is the evaporating temperature in the coil.
	Coldest quantity.Temperature
}

// ErrNoOperation says that no steady state was found. It wraps which way: the machine would
// stop on a control or take on ice, or the solver gave up.
var ErrNoOperation = errors.New("no steady operation")

var (
	errStopped  = fmt.Errorf("%w: a pressure switch would stop it", ErrNoOperation)
	errIced     = fmt.Errorf("%w: the coil would ice", ErrNoOperation)
	errUnsolved = fmt.Errorf("%w: not solved", ErrNoOperation)
)

// solve finds the cycle in a weather with ailments and a charge: from the rated one straight
// away, or else by following it there.
func (m *Machine) solve(w *climate, a *ailments, charge float64) (cycle, vector, error) {
	n := 4
	if a.gas > 0 {
		n = 5
	}
	most := vector{0.15, 0.12, 0.25, 0.15, 1}
	probe := vector{1e-5, 1e-5, 1e-5, 1e-5, 1e-4}
	try := func(x vector, w *climate, a *ailments, charge float64) (vector, bool) {
		ok := newton(n, &x, most, probe, func(x *vector) vector {
			return m.evaluate(x, w, a, charge).residual
		})
		return x, ok
	}
	start := m.rating
	if a.gas > 0 {
		start[xGas] = a.gas * gasConstant * 320 / (m.outdoor.volume() * 0.7) / 1e5
	}
	x, ok := try(start, w, a, charge)
	for _, steps := range []int{4, 12} {
		if ok {
			break
		}
		x, ok = start, true
		for i := 1; i <= steps && ok; i++ {
			u := float64(i) / float64(steps)
			between, err := m.sound.toward(w, u)
			if err != nil {
				return cycle{}, x, err
			}
			ails := nothing.toward(*a, u)
			x, ok = try(x, between, &ails, m.right*math.Pow(charge/m.right, u))
		}
	}
	if !ok {
		return cycle{}, x, errUnsolved
	}
	c := m.evaluate(&x, w, a, charge)
	if !m.runs(&x, &c) {
		return cycle{}, x, errStopped
	}
	return c, x, nil
}

// cutOut is the condensing temperature about which a high-pressure switch opens: 610 psig of
// R-410A, 400 psig of R-22, both near 149 °F; from memory.
var cutOut = float64(quantity.Fahrenheit(149))

// runs says whether a control would let the machine run on.
func (m *Machine) runs(x *vector, c *cycle) bool {
	return math.Exp(x[xLow]) > 1.15*m.fluid.LowPressure() &&
		math.Exp(x[xHigh])+c.gasPressure < m.fluid.BubblePressure(cutOut)
}

// toward is the weather a part of the way from one to another.
func (c *climate) toward(to *climate, u float64) (*climate, error) {
	if u == 1 {
		return to, nil
	}
	mix := func(a, b quantity.Temperature) quantity.Temperature {
		return a + quantity.Temperature(u)*(b-a)
	}
	return Weather{
		mix(c.Outdoor, to.Outdoor), mix(c.ReturnDryBulb, to.ReturnDryBulb),
		mix(c.ReturnWetBulb, to.ReturnWetBulb),
		c.Atmosphere + quantity.Pressure(u)*(to.Atmosphere-c.Atmosphere),
	}.climate()
}

// Operate returns what the machine does in a weather, as it stands. The error is
// ErrNoOperation where it finds no steady state.
func (m *Machine) Operate(w Weather) (*Operation, error) {
	return m.operate(w, m.ails, m.charge)
}

// OperateSound is Operate of the same machine with nothing wrong and its right charge.
func (m *Machine) OperateSound(w Weather) (*Operation, error) {
	return m.operate(w, nothing, m.right)
}

func (m *Machine) operate(weather Weather, a ailments, charge float64) (*Operation, error) {
	w, err := weather.climate()
	if err != nil {
		return nil, err
	}
	c, x, err := m.solve(w, &a, charge)
	if err != nil {
		return nil, err
	}
	r := m.fluid.refrigerant
	o := &Operation{
		Suction: quantity.Pressure(c.p1), Liquid: quantity.Pressure(c.p3),
		SuctionLine: quantity.Temperature(c.t1), LiquidLine: quantity.Temperature(c.outdoor.t),
		Flow: quantity.MassFlow(c.flow),
		// A clamp some inches off the shell meets gas that has cooled a little: common
		// practice, no source.
		DischargeLine: quantity.Temperature(c.dischargeT - 2),
		Power:         quantity.Power(c.compression.power + m.indoorFan*a.indoorAir + m.outdoorFan),
	}
	if o.Evaporating, err = r.DewTemperature(o.Suction); err != nil {
		return nil, err
	}
	if o.Condensing, err = r.BubbleTemperature(o.Liquid); err != nil {
		return nil, err
	}
	if o.Coldest, err = r.DewTemperature(quantity.Pressure(math.Exp(x[xLow]))); err != nil {
		return nil, err
	}
	o.Superheat, o.Subcooling = o.SuctionLine.Sub(o.Evaporating), o.Condensing.Sub(o.LiquidLine)

	blower := m.indoorFan * a.indoorAir
	const heat = 1006 // J/(kg K), of air
	leavingH := c.indoor.leavingH + blower/c.air.flow + heat*m.supplyGain
	coil, err := leaving(leavingH, c.indoor.leavingW, weather.Atmosphere)
	if err != nil {
		return nil, err
	}
	o.Supply = coil
	o.Airflow = quantity.VolumeFlow(m.airflow * a.indoorAir)
	o.Capacity = quantity.Power(c.indoor.heat - blower)
	o.CondenserEntering = quantity.Temperature(c.coil.t)
	rise := (m.outdoorFan - c.outdoor.heat) / (c.coil.flow * c.coil.cp)
	o.CondenserLeaving = quantity.Temperature(c.coil.t + rise)
	return o, nil
}
