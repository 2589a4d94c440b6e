package cycle

import (
	"fmt"
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/base/root"
	"github.com/satline/satline/internal/physics/coil"
	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// HeatingConditions are what a heat pump meets that heats.
type HeatingConditions struct {
	// OutdoorDryBulb is −20 to 75 °F, OutdoorHumidity the relative humidity, 0.05 to 1; 0 is
	// the 0.72 of 47 °F dry and 43 °F wet bulb.
	OutdoorDryBulb  quantity.Temperature `json:"outdoorDryBulb"`
	OutdoorHumidity float64              `json:"outdoorHumidity,omitzero"`
	// ReturnDryBulb is the air entering the indoor coil: 40 to 95 °F.
	ReturnDryBulb quantity.Temperature `json:"returnDryBulb"`
	// Airflow through the indoor coil; 0 is the rated airflow.
	Airflow   quantity.VolumeFlow `json:"airflow,omitzero"`
	Elevation quantity.Length     `json:"elevation,omitzero"`
	// Frost is the share of the way of the outdoor air that frost has closed, 0 to 0.9.
	Frost float64 `json:"frost,omitzero"`
}

// HeatingRatingConditions returns the conditions of the rating test for heating, AHRI 210/240
// test H1: 47 °F dry and 43 °F wet bulb outdoors, 70 °F indoors, at sea level.
func HeatingRatingConditions() HeatingConditions {
	return HeatingConditions{
		OutdoorDryBulb: quantity.Fahrenheit(47), OutdoorHumidity: ratedHumidity,
		ReturnDryBulb: quantity.Fahrenheit(70),
	}
}

const ratedHumidity = 0.72

func (c HeatingConditions) check() error {
	if err := limit.Within(
		"outdoor dry bulb", c.OutdoorDryBulb, quantity.Fahrenheit(-20), quantity.Fahrenheit(75),
		"the model is of a heat pump in heating",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"relative humidity outdoors", quantity.Number(c.OutdoorHumidity), 0, 1,
		"a fraction: 0.7 is 70 %",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"return dry bulb", c.ReturnDryBulb, quantity.Fahrenheit(40), quantity.Fahrenheit(95),
		"the air entering the indoor coil",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"frost", quantity.Number(c.Frost), 0, 0.9,
		"the share of the way of the air that it has closed",
	); err != nil {
		return err
	}
	return limit.Within(
		"elevation", c.Elevation, quantity.Feet(-1500), quantity.Feet(16000),
		"feet or meters above sea level",
	)
}

// A HeatingSpec is what a heat pump is set to in heating, at HeatingRatingConditions. Zero
// fields take usual figures: 8 °F of superheat at the compressor, 12 °F of subcooling.
type HeatingSpec struct {
	Superheat, Subcooling quantity.TemperatureDelta
	// Metering is the device at the outdoor coil; zero takes that of the indoor coil.
	Metering refrigerant.Metering
}

// A Reversed is a machine with its reversing valve over: the indoor coil condenses, the
// outdoor coil evaporates through a metering device of its own, and what the smaller
// condenser cannot hold of the charge waits in a charge compensator or the accumulator. Get
// one from System.Reversed; the zero value is no machine. It is immutable and safe for
// concurrent use.
type Reversed struct {
	plant      plant
	airflow    float64 // m³/s, rated
	outdoorAir float64 // kg/s, rated
	total      float64 // kg, the whole charge

	// others are the machines that it may be as well, where it was fitted: each is one
	// standard deviation away in a way that has nothing to do with that of the rest.
	others []*Reversed
}

// Design figures of the heating side: common practice, no source.
const (
	heatingSuperheat  = 8.0 / 1.8  // K
	heatingSubcooling = 12.0 / 1.8 // K
	valveAndAccum     = 1.2        // K that reversing valve and accumulator cost the suction
	valveGain         = 1.5        // K that the hot half of the reversing valve gives the suction
	circuitsDrop      = 1.5        // K, of the outdoor coil
)

// Reversed returns s in heating. The error is a *RangeError or ErrNoSystem, or says that its
// coils do not balance at the rating.
func (s *System) Reversed(spec HeatingSpec) (*Reversed, error) {
	if !s.made() {
		return nil, ErrNoSystem
	}
	if spec.Superheat == 0 {
		spec.Superheat = heatingSuperheat
	}
	if spec.Subcooling == 0 {
		spec.Subcooling = heatingSubcooling
	}
	if spec.Metering == 0 {
		spec.Metering = s.spec.Metering
	}
	if err := limit.Within(
		"superheat at rating", spec.Superheat, quantity.FahrenheitDelta(3),
		quantity.FahrenheitDelta(25), "at the compressor",
	); err != nil {
		return nil, err
	}
	if err := limit.Within(
		"subcooling at rating", spec.Subcooling, quantity.FahrenheitDelta(2),
		quantity.FahrenheitDelta(30), "leaving the indoor coil",
	); err != nil {
		return nil, err
	}
	if spec.Metering < refrigerant.FixedRestrictor || spec.Metering > refrigerant.Capillary {
		return nil, &RangeError{
			Quantity: "metering device", Value: spec.Metering,
			Advice: "name it: FixedRestrictor, TXV, EXV or Capillary",
		}
	}
	h := &Reversed{
		plant: s.plant, airflow: float64(s.spec.Airflow), outdoorAir: s.plant.condenser.air,
		total: s.plant.correct,
	}
	p := &h.plant
	p.condenser, p.evaporator = s.plant.evaporator, s.plant.condenser
	p.condenser.refUA = p.condenser.airUA * condenserSides
	// The vapor line holds hot gas now, and the liquid line is full as before.
	p.condenser.volume += s.plant.suction.volume / 8
	p.suction.volume = 0
	p.lowCutout = p.fluid.DewPressure(float64(quantity.Fahrenheit(-35)))
	p.highCutout = p.fluid.BubblePressure(float64(quantity.Fahrenheit(150)))
	p.headPressure = 0
	sys := *s
	sys.plant = *p
	sys.spec.Metering, sys.spec.MaxOperating = spec.Metering, 0
	d := designer{System: &sys, f: p.fluid}
	d.t.plant = &sys.plant
	if err := d.reverse(h, float64(spec.Superheat), float64(spec.Subcooling)); err != nil {
		return nil, err
	}
	h.plant = sys.plant
	return h, nil
}

// reverse balances the coils at the rating and sizes the device and the charge for it.
func (d *designer) reverse(h *Reversed, superheat, subcooling float64) error {
	p, t, f := &d.plant, &d.t, d.f
	h.plant = *p
	if err := h.ask(&t.question, HeatingRatingConditions(), Faults{}); err != nil {
		return err
	}
	t.evap, t.suctionDrop = cyclefluid.Isobar{}, 0
	var flow, h3 float64
	at := func(te, tc float64) {
		t.suctionP = f.DewPressure(te)
		t.dischargeP = f.BubblePressure(tc + condenserDrop)
		t.liquidP = f.BubblePressure(tc)
		f.Set(&t.in, t.suctionP)
		f.Set(&t.out, t.dischargeP)
		f.Set(&t.cond, (t.dischargeP+t.liquidP)/2)
		t.gas = t.in.VaporAt(te + superheat)
		t.pump = p.compressor.pump(f, &t.in, &t.out, &t.gas, p.flowScale, p.workScale, 0)
		flow = t.pump.flow
		t.hot = t.out.AtEnthalpy(t.pump.discharge)
		line := f.At(t.liquidP)
		h3 = line.LiquidAt(tc - subcooling).H
	}
	room, outdoor := t.outdoorT, t.returnT
	head := func(te float64) float64 {
		over := func(tc float64) float64 {
			at(te, tc)
			scale := math.Pow(flow/p.rated, p.refExponent)
			t.condense(flow, t.outdoorAir, t.outdoorUA, t.outdoorRefUA*scale)
			return t.condensed.h - h3
		}
		low, high := room+1.02*subcooling+0.5, room+55
		return root.Find(over, low, high, over(low), over(high), 1e-9, 0)
	}
	starved := func(te float64) float64 {
		at(te, head(te))
		f.Set(&t.evap, f.DewPressure(te+valveAndAccum))
		p.evaporator.drop = (f.DewPressure(te+valveAndAccum+circuitsDrop) - t.evap.P) /
			(flow * flow * t.gas.V)
		t.evaporate(flow, h3, t.refUA*math.Pow(flow/p.rated, p.refExponent))
		x := &t.evaporated
		if x.x < 1 {
			return x.x - 1
		}
		return (x.t - t.evap.Dew.T - (superheat - valveGain - valveAndAccum)) / 100
	}
	low, high := outdoor-30, outdoor-2
	fl, fh := starved(low), starved(high)
	if !(fl > 0 && fh < 0) {
		return fmt.Errorf("cycle: the coils do not balance in heating at the rating")
	}
	te := root.Find(starved, low, high, fl, fh, 1e-10, 0)
	starved(te)
	p.rated = flow
	p.ratedLiquid, p.ratedGas = 1/t.condensed.v, 1/t.gas.V
	gain := max(superheat+te-t.evaporated.t, 0)
	cp := flow * t.evap.DewHeatCapacity()
	p.suction.ua = -cp * math.Log(1-gain/(room-t.evaporated.t))
	p.suction.drop = (t.evap.P - t.suctionP) / (flow * flow * t.gas.V)
	p.condenser.drop = (t.dischargeP - t.liquidP) / (flow * flow * t.hot.V)
	t.valveP = t.liquidP - p.liquid.drop*flow*flow*t.condensed.v
	f.Set(&t.enter, t.valveP)
	t.meet(h3)
	p.device.size = 1
	if err := d.sizeDevice(flow, max(t.evaporated.t-t.evap.Dew.T, 1)); err != nil {
		return err
	}
	p.correct = t.contents(h3)
	return nil
}

// ask puts conditions and faults into numbers: what the solver calls outdoors is the air of
// the room, and its return air that of the outdoors.
func (h *Reversed) ask(q *question, c HeatingConditions, f Faults) error {
	if err := c.check(); err != nil {
		return err
	}
	if err := f.check(); err != nil {
		return err
	}
	humidity := c.OutdoorHumidity
	if humidity == 0 {
		humidity = ratedHumidity
	}
	atmosphere := quantity.AtmosphereAt(c.Elevation)
	air, err := psychro.FromRelativeHumidity(c.OutdoorDryBulb, max(humidity, 0.05), atmosphere)
	if err != nil {
		return err
	}
	flow := c.Airflow
	rated := quantity.VolumeFlow(h.airflow)
	if flow == 0 {
		flow = rated
	}
	if err := limit.Within(
		"airflow", flow, rated/20, rated*3, "near the rated airflow of the machine",
	); err != nil {
		return err
	}
	p := &h.plant
	*q = question{}
	q.air = coil.NewAir(air)
	q.returnT, q.returnW = float64(c.OutdoorDryBulb), air.HumidityRatio()
	// Frost closes the way of the air, and the fan gives way; it insulates but little.
	open := 1 - c.Frost
	density := outdoorDensity(q.returnT, float64(atmosphere)) /
		outdoorDensity(ratedOutdoor, float64(quantity.StandardAtmosphere))
	q.dryAir = h.outdoorAir * density * open * (1 + f.OutdoorAirflow)
	q.airUA = p.evaporator.at(q.dryAir, p.airExponent) * (1 - f.EvaporatorFouling)
	q.refUA = p.evaporator.refUA
	q.blower = p.blower * math.Sqrt(float64(flow)*(1+f.IndoorAirflow)/h.airflow)

	q.outdoorT = float64(c.ReturnDryBulb)
	indoor := float64(flow) * (1 + f.IndoorAirflow) *
		outdoorDensity(q.outdoorT, float64(atmosphere))
	q.outdoorAir = indoor * outdoorHeatCapacity
	q.outdoorUA = p.condenser.at(indoor, p.airExponent) * (1 - f.CondenserFouling)
	q.outdoorRefUA = p.condenser.refUA
	q.outdoorFanW = p.fan

	q.leak, q.size, q.stuck = f.CompressorLeak, 1+f.MeteringSize, -1
	if f.ValveStuck {
		q.stuck = f.ValveOpening
	}
	q.bulb, q.setting = f.BulbOff, float64(f.ValveSetting)
	q.liquidDrop = p.liquid.drop + float64(f.LiquidRestriction)/(p.rated*p.rated)*p.ratedLiquid
	q.suctionDrop = p.suction.drop + float64(f.SuctionRestriction)/(p.rated*p.rated)*p.ratedGas
	q.nonCondensable = p.otherGas(f.NonCondensables, q.outdoorT)
	// What the compensator holds stays there: what is missing is missing of the rest.
	q.charge = max(p.correct+f.Charge*h.total, 0.05*h.total)
	q.lowest = p.fluid.LowPressure() * 1.05
	q.highest = p.fluid.HighPressure() * 0.995
	return nil
}

// A Heating is the steady state of a machine that heats.
type Heating struct {
	// Evaporating and Condensing are what gauges at the true suction port and on the liquid
	// line show: dew point and bubble point.
	Evaporating     quantity.Temperature `json:"evaporating"`
	Condensing      quantity.Temperature `json:"condensing"`
	SuctionPressure quantity.Pressure    `json:"suctionPressure"`
	LiquidPressure  quantity.Pressure    `json:"liquidPressure"`
	// SuctionLine is at the compressor, LiquidLine leaves the indoor coil.
	SuctionLine   quantity.Temperature      `json:"suctionLine"`
	LiquidLine    quantity.Temperature      `json:"liquidLine"`
	DischargeLine quantity.Temperature      `json:"dischargeLine"`
	Superheat     quantity.TemperatureDelta `json:"superheat"`
	Subcooling    quantity.TemperatureDelta `json:"subcooling"`
	Supply        quantity.Temperature      `json:"supply"`
	// OutdoorLeaving is the air that leaves the outdoor coil, CoilSurface that coil's
	// coldest surface.
	OutdoorLeaving quantity.Temperature `json:"outdoorLeaving"`
	CoilSurface    quantity.Temperature `json:"coilSurface"`
	// Capacity is what the room gets, the blower's heat in it; Power that of compressor and
	// both fans, and COP the one over the other.
	Capacity        quantity.Power `json:"capacity"`
	Power           quantity.Power `json:"power"`
	CompressorPower quantity.Power `json:"compressorPower"`
	COP             float64        `json:"cop"`
	// Frost is the water that the outdoor coil takes from the air; below 32 °F it stays.
	Frost quantity.MassFlow `json:"frost"`
	Limit Limit             `json:"limit"`
}

// Solve returns the steady state under conditions and with faults; of those Faults speaks of
// the evaporator, which is outdoors now, and of the condenser, which is indoors. The error
// is a *RangeError or ErrNoSystem.
func (h *Reversed) Solve(c HeatingConditions, f Faults) (Heating, error) {
	if h == nil || h.plant.fluid == nil {
		return Heating{}, ErrNoSystem
	}
	t := trial{plant: &h.plant}
	if err := h.ask(&t.question, c, f); err != nil {
		return Heating{}, err
	}
	o := t.operating(t.close())
	out := Heating{
		Evaporating: o.Evaporating, Condensing: o.Condensing,
		SuctionPressure: o.Suction.Pressure, LiquidPressure: o.Liquid.Pressure,
		SuctionLine: o.Suction.Temperature, LiquidLine: o.Liquid.Temperature,
		DischargeLine: o.Discharge.Temperature,
		Superheat:     o.Superheat, Subcooling: o.Subcooling,
		OutdoorLeaving: o.CoilLeaving, CoilSurface: o.CoilSurface, Frost: o.Condensate,
		Capacity: o.HeatRejected + o.BlowerPower, Power: o.Power,
		CompressorPower: o.CompressorPower,
		Limit:           o.Limit,
	}
	rise := quantity.TemperatureDelta(float64(out.Capacity) / t.outdoorAir)
	out.Supply = c.ReturnDryBulb.Add(rise)
	if out.COP = float64(out.Capacity / out.Power); out.Limit == NotCooling {
		out.Limit = NoLimit // of the outdoor air it may take less than the fans give
	}
	return out, nil
}

// Airflow returns the rated airflow through the indoor coil.
func (h *Reversed) Airflow() quantity.VolumeFlow {
	if h == nil {
		return 0
	}
	return quantity.VolumeFlow(h.airflow)
}
