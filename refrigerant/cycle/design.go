package cycle

import (
	"fmt"
	"math"

	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/internal/physics/coil"
	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// Design figures of ordinary residential machines: common practice, no source. Pressure
// drops are as the saturation temperature they cost, K.
const (
	condenserVolume   = 1.45e-3 // m³ per ton, of tubes and fins
	microchannel      = 0.4     // of it, where the condenser is of flat multiport tubes
	evaporatorVolume  = 1.00e-3
	shellVolume       = 1.00e-3
	accumulatorVolume = 1.20e-3

	condenserDrop  = 1.0
	evaporatorDrop = 1.2
	fittingDrop    = 0.3  // of the suction line: its valve and bends
	suctionDrop    = 0.8  // of 25 ft of it
	liquidLineDrop = 2e4  // Pa, of 25 ft
	suctionGainPer = 2.0  // K, of 25 ft
	ordinaryLine   = 7.62 // m

	// Conductances of the two sides of a coil, refrigerant over air. Boiling in grooved
	// tubes takes 3 to 5 kW/(m² K), condensing 2 to 3, and fins have some 20 times the
	// tube's area with 50 to 70 W/(m² K).
	condenserSides  = 2.5
	evaporatorSides = 4.0
	tubeLength      = 12.7  // mm, of a piston
	capillaryBore   = 1.4   // mm
	capillaryFlow   = 0.011 // kg/s per tube
)

// Design returns the machine that meets spec: at RatingConditions it has the spec's
// capacity, superheat, subcooling, suction and condensing temperatures, and its coils,
// displacement, restrictor and charge are what that takes. The error is a *RangeError or
// refrigerant.ErrNoRefrigerant, or says that no coil or device can do it.
func Design(spec Spec) (*System, error) {
	spec = spec.withDefaults()
	if err := spec.check(); err != nil {
		return nil, err
	}
	f, err := cyclefluid.New(spec.Refrigerant)
	if err != nil {
		return nil, err
	}
	s := &System{spec: spec, r: spec.Refrigerant}
	d := designer{System: s, t: trial{plant: &s.plant}, f: f}
	if err := d.design(); err != nil {
		return nil, fmt.Errorf("design of a %v machine: %w", spec.Metering, err)
	}
	return s, nil
}

type designer struct {
	*System
	t trial
	f *cyclefluid.Fluid
}

func (d *designer) design() error {
	p, t, f, spec := &d.plant, &d.t, d.f, &d.spec
	rating := RatingConditions()
	tons := spec.Capacity.Tons()
	p.fluid, p.compressor = f, spec.Compressor
	p.untuned()
	p.blower, p.fan = float64(spec.BlowerPower), float64(spec.FanPower)
	p.highCutout = f.BubblePressure(float64(spec.HighCutout))
	p.lowCutout = f.DewPressure(float64(spec.LowCutout))
	if spec.HeadPressure > 0 {
		p.headPressure = f.BubblePressure(float64(spec.HeadPressure))
	}

	// Pressures, from suction port to suction port.
	outdoor := float64(rating.OutdoorDryBulb)
	suctionT := float64(spec.Suction)
	t.suctionP = f.DewPressure(suctionT)
	lineScale := float64(spec.LineSet) / ordinaryLine
	lineDrop := fittingDrop + suctionDrop*lineScale
	evaporatorP := f.DewPressure(suctionT + lineDrop)
	coilP := f.DewPressure(suctionT + lineDrop + evaporatorDrop)
	liquidT := outdoor + float64(spec.Condensing)
	t.liquidP = f.BubblePressure(liquidT)
	t.dischargeP = f.BubblePressure(liquidT + condenserDrop)
	t.valveP = t.liquidP - liquidLineDrop*lineScale
	f.Set(&t.in, t.suctionP)
	f.Set(&t.out, t.dischargeP)
	f.Set(&t.evap, evaporatorP)
	f.Set(&t.cond, (t.dischargeP+t.liquidP)/2)
	f.Set(&t.enter, t.valveP)

	// States and flow.
	t.gas = t.in.VaporAt(suctionT + float64(spec.Superheat))
	t.suctionH = t.gas.H
	gain := min(suctionGainPer*lineScale, float64(spec.Superheat)/2)
	leaving := t.evap.VaporAt(t.gas.T - gain)
	line := f.At(t.liquidP)
	liquid := line.LiquidAt(liquidT - float64(spec.Subcooling))
	m := float64(spec.Capacity+spec.BlowerPower) / (leaving.H - liquid.H)
	p.rated = m
	cp := m * t.evap.DewHeatCapacity()
	p.suction.ua = -cp * math.Log(1-m*(t.gas.H-leaving.H)/(cp*(outdoor-leaving.T)))
	p.ratedLiquid, p.ratedGas = 1/liquid.V, 1/t.gas.V
	p.suction.drop = (evaporatorP - t.suctionP) / (m * m * t.gas.V)
	p.evaporator.drop = (coilP - evaporatorP) / (m * m * t.gas.V)

	// Compressor.
	if c := &p.compressor; c.Map == nil {
		c.Displacement = quantity.VolumeFlow(m * t.gas.V / c.volumetric(t.out.P/t.in.P))
	} else {
		flow, power := c.Map.polynomials(c.Map.inside(t.in.Dew.T, t.out.Dew.T))
		if !(flow > 0 && power > 0) {
			return c.Map.none(flow)
		}
		// The map's machine is scaled to the capacity: a maker's line of frame sizes.
		mapped := c.pump(f, &t.in, &t.out, &t.gas, 1, 1, 0)
		c.Map = c.Map.scaled(m / mapped.flow)
	}
	t.pump = p.compressor.pump(f, &t.in, &t.out, &t.gas, 1, 1, 0)
	t.hot = t.out.AtEnthalpy(t.pump.discharge)
	p.condenser.drop = (t.dischargeP - t.liquidP) / (m * m * t.hot.V)

	// Volumes.
	p.condenser.volume = condenserVolume * tons
	if spec.Microchannel {
		p.condenser.volume *= microchannel
	}
	p.evaporator.volume = evaporatorVolume * tons
	p.shell = shellVolume * tons
	if spec.HeatPump || spec.Accumulator {
		p.accumulator = accumulatorVolume * tons
	}
	p.liquid.volume = math.Pi / 4 * sq(liquidLineBore(tons)) * float64(spec.LineSet)
	p.suction.volume = math.Pi / 4 * sq(suctionLineBore(tons)) * float64(spec.LineSet)
	p.volume = p.condenser.volume + p.evaporator.volume + p.shell + p.accumulator +
		p.liquid.volume + p.suction.volume

	// Coils.
	air, err := rating.air()
	if err != nil {
		return err
	}
	if err := d.sizeCondenser(m, liquid.H, outdoor, air); err != nil {
		return err
	}
	p.liquid.drop = (t.liquidP - t.valveP) / (m * m * t.condensed.v)
	if err := d.sizeEvaporator(m, liquid.H, leaving.T, air); err != nil {
		return err
	}
	t.meet(liquid.H)
	if err := d.sizeDevice(m, leaving.T-t.evap.Dew.T); err != nil {
		return err
	}

	// The charge is what the circuit holds in this state.
	t.condense(m, t.outdoorAir, t.outdoorUA, t.outdoorRefUA)
	t.evaporate(m, liquid.H, t.refUA)
	p.correct = t.contents(liquid.H)
	return nil
}

func sq(x float64) float64 { return x * x }

// Bores of the usual line sets: 3/8 in liquid line, 1/2 in above 5 tons; 3/4 in suction
// line up to 3 tons, 7/8 in up to 5 tons, 1-1/8 in above.
func liquidLineBore(tons float64) float64 {
	if tons > 5 {
		return 11.1e-3
	}
	return 8.0e-3
}

func suctionLineBore(tons float64) float64 {
	switch {
	case tons > 5:
		return 26.0e-3
	case tons > 3:
		return 20.0e-3
	}
	return 17.3e-3
}

func (d *designer) sizeCondenser(m, h3, outdoor float64, air psychro.Air) error {
	p, t := &d.plant, &d.t
	p.condenser.air = float64(d.spec.OutdoorAirflow) *
		outdoorDensity(outdoor, float64(air.Pressure()))
	t.outdoorT = outdoor
	t.outdoorAir = p.condenser.air * outdoorHeatCapacity
	over := func(logUA float64) float64 {
		ua := math.Exp(logUA)
		t.condense(m, t.outdoorAir, ua, ua*condenserSides)
		return t.condensed.h - h3
	}
	low, high := math.Log(10.0), math.Log(1e6)
	fl, fh := over(low), over(high)
	if !(fl > 0 && fh < 0) {
		return &RangeError{
			Quantity: "airflow of the condenser", Value: d.spec.OutdoorAirflow,
			Advice: "no coil rejects that heat to so little air at this condensing temperature " +
				"and subcooling: more air, or condense higher",
		}
	}
	ua := math.Exp(root.Find(over, low, high, fl, fh, 1e-14, 0))
	p.condenser.airUA, p.condenser.refUA = ua, ua*condenserSides
	t.outdoorUA, t.outdoorRefUA = p.condenser.airUA, p.condenser.refUA
	return nil
}

func (d *designer) sizeEvaporator(m, h3, leaving float64, air psychro.Air) error {
	p, t := &d.plant, &d.t
	t.air = coil.NewAir(air)
	t.returnT = float64(air.DryBulb())
	t.dryAir = float64(air.DryAirFlow(d.spec.Airflow))
	p.evaporator.air = t.dryAir
	cold := func(logUA float64) float64 {
		t.airUA = math.Exp(logUA)
		t.refUA = t.airUA * evaporatorSides
		t.evaporate(m, h3, t.refUA)
		if t.evaporated.x < 1 {
			return t.evaporated.x - 1 + t.evap.Dew.T - leaving
		}
		return t.evaporated.t - leaving
	}
	low, high := math.Log(10.0), math.Log(1e6)
	fl, fh := cold(low), cold(high)
	if !(fl < 0 && fh > 0) {
		return &RangeError{
			Quantity: "rated airflow", Value: d.spec.Airflow,
			Advice: "no coil takes that heat from so little air at this suction temperature: " +
				"more air, or a colder suction",
		}
	}
	ua := math.Exp(root.Find(cold, low, high, fl, fh, 1e-14, 0))
	p.evaporator.airUA, p.evaporator.refUA = ua, ua*evaporatorSides
	t.airUA, t.refUA = p.evaporator.airUA, p.evaporator.refUA
	return nil
}

func (d *designer) sizeDevice(m, superheat float64) error {
	v, in, spec := &d.plant.device, &d.t.inlet, &d.spec
	v.kind = spec.Metering
	downstream := d.t.evap.P
	v.ratedPressure, v.ratedSubcooling = in.pressure, in.subcooling
	switch v.kind {
	case refrigerant.FixedRestrictor:
		v.tube.Length = quantity.Millimeters(tubeLength)
		short := func(diameter float64) float64 {
			v.tube.Diameter = quantity.Length(diameter)
			return v.tube.area()*shortTubeFlux(in, math.Log(float64(v.tube.Length)/diameter)) - m
		}
		low, high := 0.3e-3, 6e-3
		fl, fh := short(low), short(high)
		if !(fl < 0 && fh > 0) {
			return fmt.Errorf(
				"no piston of %v to %v passes %v", quantity.Length(low), quantity.Length(high),
				quantity.MassFlow(m),
			)
		}
		short(root.Find(short, low, high, fl, fh, 1e-15, 0))
		v.area = v.tube.area()
		v.perLength = math.Log(float64(v.tube.Length / v.tube.Diameter))
		// What is left of the last digits goes into the area.
		v.area *= m / (v.area * shortTubeFlux(in, v.perLength))
	case refrigerant.Capillary:
		c := &v.capillary
		c.Diameter = quantity.Millimeters(capillaryBore)
		c.Count = max(1, int(math.Round(m/capillaryFlow)))
		long := func(logL float64) float64 {
			c.Length = quantity.Length(math.Exp(logL))
			return c.flow(in, downstream) - m
		}
		low, high := math.Log(0.07), math.Log(14.0)
		fl, fh := long(low), long(high)
		if !(fl > 0 && fh < 0) {
			return fmt.Errorf(
				"no capillary of %v bore passes %v", c.Diameter,
				quantity.MassFlow(m/float64(c.Count)),
			)
		}
		long(root.Find(long, low, high, fl, fh, 1e-14, 0))
	default:
		x := &v.valve
		x.Superheat = quantity.TemperatureDelta(superheat)
		x.Gradient = min(spec.ValveGradient, x.Superheat)
		x.Rated = 1 / spec.ValveSize
		if spec.MaxOperating > 0 {
			x.MaxOperating = quantity.Pressure(d.f.DewPressure(float64(spec.MaxOperating)))
		}
		x.FullArea = 1
		x.FullArea = quantity.Area(m / x.flow(in, x.Rated, downstream))
	}
	return nil
}
