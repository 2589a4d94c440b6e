package simulate

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// Options of the generator.
type Options struct {
	// Other solves a deliberately different model: other exponents of coils and
	// metering device.
	Other bool
	// Bare leaves out what is not among the eight usual readings: two
	// pressures, two lines, outdoor air, return dry and wet bulb, supply dry bulb.
	Bare bool
	// Full takes every reading on every visit.
	Full bool
	// Class states the year and the efficiency of the machine, its stages, the one it runs
	// in, and its arrangement; Table states a row of its maker's normal pressures.
	Class, Table bool
}

// An Injected fault is the truth about a visit.
type Injected struct {
	Signature diagnose.Code
	Size      float64
}

// A Visit is what was found, with the truth.
type Visit struct {
	Evidence diagnose.Evidence
	Truth    []Injected // in the order of the codes; none on a sound machine
	// Loss is the larger of the fractions of capacity and of efficiency that the
	// faults of the machine cost.
	Loss float64
	// Charge is the relative error of the charge, that of careful work included.
	Charge float64
	// Instrument says that an instrument lies and the machine is sound.
	Instrument bool

	leak     float64 // attic air in the return
	takenFor string
	shows    []string // looks and tests that say yes
	ports    *written
}

// Code names the truth as an explanation does.
func (v *Visit) Code() string {
	if len(v.Truth) == 0 {
		return "sound"
	}
	var codes []string
	for _, x := range v.Truth {
		codes = append(codes, string(x.Signature))
	}
	return strings.Join(codes, "+")
}

// How visits divide: sound, one fault, two faults, a lying instrument.
const (
	soundShare      = 0.28
	singleShare     = 0.52
	pairShare       = 0.10
	instrumentShare = 0.10
)

const attempts = 200

// Draw makes a visit.
func Draw(rng *rand.Rand, o Options) (Visit, error) {
	kind := rng.Float64()
	var last error
	for range attempts {
		v, ok, err := draw(rng, o, kind)
		if err != nil {
			last = err
			continue
		}
		if ok {
			return v, nil
		}
	}
	return Visit{}, fmt.Errorf(
		"no machine that runs in %d attempts: %w", attempts, errors.Join(last, errStopped),
	)
}

var errStopped = errors.New("every one stopped on a pressure control")

// written is what the technician reads before instruments add their error.
type written struct {
	suction, liquid                                         float64 // Pa, gauge
	suctionLine, liquidLine, discharge                      float64
	outdoor, leaving                                        float64
	returnDry, returnWet, supplyDry, supplyWet, flow, power float64
}

func draw(rng *rand.Rand, o Options, kind float64) (v Visit, ok bool, err error) {
	m, err := drawMachine(rng, o)
	if err != nil {
		return v, false, err
	}
	weather := drawWeather(rng)
	faults := m.Own
	v.Evidence = m.evidence()
	var theLie *lie
	switch {
	case kind < soundShare:
	case kind < soundShare+singleShare:
		v.inflict(rng, drawInjury(rng), &faults)
	case kind < soundShare+singleShare+pairShare:
		a, b := drawInjury(rng), drawInjury(rng)
		for !apart(a, b) {
			b = drawInjury(rng)
		}
		v.inflict(rng, a, &faults)
		v.inflict(rng, b, &faults)
	default:
		theLie = &lies[rng.IntN(len(lies))]
		v.Instrument = true
		if theLie.signature == diagnose.Altitude {
			m.elevation = quantity.Feet(2000 + 5000*rng.Float64())
			v.Evidence = m.evidence()
		}
	}
	healthy, err := m.solve(weather, m.Own)
	if err != nil {
		return v, false, err
	}

	v.Charge = faults.Charge
	entering := weather
	if v.leak > 0 {
		if entering, err = leaky(rng, weather, v.leak, v.Evidence.Atmosphere); err != nil {
			return v, false, err
		}
	}
	found, err := m.solve(entering, faults)
	if err != nil {
		return v, false, err
	}
	if healthy.Limit != cycle.NoLimit || found.Limit != cycle.NoLimit {
		return v, false, nil
	}
	v.Loss = max(1-float64(found.NetCapacity/healthy.NetCapacity), 1-found.COP/healthy.COP)
	if v.leak > 0 {
		// The room gets what the supply brings it, less what the attic brought.
		room := func(o *cycle.Operating) float64 {
			return float64(weather.ReturnDryBulb -
				o.Supply)
		}
		v.Loss = max(v.Loss, 1-room(&found)/room(&healthy))
	}

	w, err := readPorts(m, weather, &found, faults)
	if err != nil {
		return v, false, err
	}
	if theLie != nil {
		v.Truth = []Injected{{theLie.signature, theLie.make(rng, &v, w)}}
		v.shows = append(v.shows, theLie.shows)
	}
	slices.SortFunc(
		v.Truth,
		func(a, b Injected) int {
			return strings.Compare(string(a.Signature),
				string(b.Signature))
		},
	)
	if err := v.writeDown(rng, o, m, w); err != nil {
		return v, false, err
	}
	// Near sea level half of the visits do not say how high the site is.
	if m.elevation == 0 && rng.IntN(2) == 0 {
		v.Evidence.AtmosphereAssumed = true
	}
	return v, true, nil
}

// evidence is what is known of the machine before anything is read.
func (m *machine) evidence() diagnose.Evidence {
	spec := m.System.Spec()
	e := diagnose.Evidence{
		Fluid: m.Refrigerant, Metering: refrigerant.FixedRestrictor, HeatPump: spec.HeatPump,
		NominalCapacity: m.Nominal, Known: m.known, Normal: m.table,
		Atmosphere: quantity.AtmosphereAt(m.elevation),
	}
	if spec.Metering != refrigerant.FixedRestrictor {
		e.Metering = refrigerant.TXV
	}
	return e
}

func (v *Visit) inflict(rng *rand.Rand, x *injury, f *cycle.Faults) {
	size := x.low + (x.high-x.low)*rng.Float64()
	x.impose(rng, size, v, f)
	v.Truth = append(v.Truth, Injected{x.signature, size})
	v.shows = append(v.shows, x.shows...)
}

// drawWeather is a day on which somebody calls: warm as a rule.
func drawWeather(rng *rand.Rand) cycle.Conditions {
	wet := clamp(63.5+3.5*rng.NormFloat64(), 56, 72)
	return cycle.Conditions{
		OutdoorDryBulb: quantity.Fahrenheit(clamp(87+9*rng.NormFloat64(), 60, 113)),
		ReturnWetBulb:  quantity.Fahrenheit(wet),
		ReturnDryBulb: quantity.Fahrenheit(
			clamp(wet+11.5+2.5*rng.NormFloat64(), max(wet+5, 68), 86),
		),
	}
}

// leaky is the air at the coil where attic air joins the return.
func leaky(
	rng *rand.Rand, c cycle.Conditions, share float64, p quantity.Pressure,
) (cycle.Conditions, error) {
	room, err := psychro.FromWetBulb(c.ReturnDryBulb, c.ReturnWetBulb, p)
	if err != nil {
		return c, err
	}
	attic, err := psychro.FromDewPoint(
		quantity.Fahrenheit(105+20*rng.Float64()), quantity.Fahrenheit(55+10*rng.Float64()), p,
	)
	if err != nil {
		return c, err
	}
	t := (1-share)*float64(room.DryBulb()) + share*float64(attic.DryBulb())
	mixed, err := psychro.FromHumidityRatio(
		quantity.Temperature(t), (1-share)*room.HumidityRatio()+share*attic.HumidityRatio(), p,
	)
	if err != nil {
		return c, err
	}
	c.ReturnDryBulb, c.ReturnWetBulb = mixed.DryBulb(), mixed.WetBulb()
	return c, nil
}

func readPorts(
	m *machine, c cycle.Conditions, o *cycle.Operating, f cycle.Faults,
) (*written, error) {
	p := quantity.AtmosphereAt(m.elevation)
	supply, err := psychro.FromHumidityRatio(o.Supply.Add(m.SupplyGain), o.SupplyHumidityRatio, p)
	if err != nil {
		return nil, err
	}
	return &written{
		suction: float64(o.Suction.Pressure - p), liquid: float64(o.Liquid.Pressure - p),
		suctionLine: float64(o.Suction.Temperature),
		liquidLine:  float64(o.Liquid.Temperature),
		discharge:   float64(o.Discharge.Temperature.Add(-m.DischargeFall)),
		outdoor:     float64(c.OutdoorDryBulb), leaving: float64(o.CondenserLeaving),
		returnDry: float64(c.ReturnDryBulb), returnWet: float64(c.ReturnWetBulb),
		supplyDry: float64(supply.DryBulb()), supplyWet: float64(supply.WetBulb()),
		flow: float64(m.System.Spec().Airflow) * (1 + f.IndoorAirflow), power: float64(o.Power),
	}, nil
}

// Standard uncertainties of the instruments of the trial: those that the
// evidence states, and that their errors are drawn with.
const (
	gaugeStd = 0.6 * 6894.757
	clampStd = 0.5
	airStd   = 0.35
	wetStd   = 0.4
	hotStd   = 1.0
	leaveStd = 0.6
	flowStd  = 0.07
	powerStd = 0.03
)

// writeDown adds instrument errors, leaves out what was not read, and adds
// what label and chart say.
func (v *Visit) writeDown(rng *rand.Rand, o Options, m *machine, w *written) error {
	e := &v.Evidence
	v.ports = w
	if v.takenFor != "" {
		other, err := refrigerant.Lookup(v.takenFor)
		if err != nil {
			return err
		}
		e.Fluid = other
	}
	named := e.Fluid.(*refrigerant.Refrigerant)
	e.Others = diagnose.Alternatives(named)
	var err error

	temp := func(x, std float64) readcheck.Temp { return thermometer(rng, x, std) }
	gauge := func(x float64) readcheck.Gauge {
		return &quantity.Uncertain[quantity.GaugePressure]{
			Value: quantity.GaugePressure(x + gaugeStd*rng.NormFloat64()),
			Std:   gaugeStd,
		}
	}
	sometimes := func(share float64) bool { return rng.Float64() < share && !o.Bare || o.Full }

	e.SuctionPressure, e.LiquidPressure = gauge(w.suction), gauge(w.liquid)
	e.EvaporatingDew, err = saturation(named.DewTemperature, e.SuctionPressure, e.Atmosphere)
	if err != nil {
		return err
	}
	e.CondensingBubble, err = saturation(named.BubbleTemperature, e.LiquidPressure, e.Atmosphere)
	if err != nil {
		return err
	}
	e.CondensingDew, err = saturation(named.DewTemperature, e.LiquidPressure, e.Atmosphere)
	if err != nil {
		return err
	}
	e.SuctionLine, e.LiquidLine = temp(w.suctionLine, clampStd), temp(w.liquidLine, clampStd)
	e.OutdoorDryBulb = temp(w.outdoor, airStd)
	e.ReturnDryBulb, e.ReturnWetBulb = temp(w.returnDry, airStd), temp(w.returnWet, wetStd)
	e.SupplyDryBulb = temp(w.supplyDry, airStd)
	for _, x := range extras {
		if sometimes(x.share) {
			x.take(rng, e, w)
		}
	}
	if rng.IntN(2) == 0 {
		e.RatedAirflow = m.System.Spec().Airflow
	}
	if e.Metering == refrigerant.TXV && rng.IntN(4) != 0 {
		e.Expected = append(e.Expected, diagnose.Expectation{
			Feature: signature.Subcooling, Value: float64(m.labelSubcooling), Std: 0.8,
			AtRated: true,
		})
	}
	return nil
}

// saturation is what a gauge shows beside the pressure, with the uncertainty
// that follows from it.
func saturation(
	at func(quantity.Pressure) (quantity.Temperature, error), g readcheck.Gauge,
	atmosphere quantity.Pressure,
) (readcheck.Temp, error) {
	p := g.Value.Absolute(atmosphere)
	t, err := at(p)
	if err != nil {
		return nil, err
	}
	above, err := at(p + quantity.Pressure(g.Std))
	if err != nil {
		return nil, err
	}
	u := t.PlusMinus(above.Sub(t))
	return &u, nil
}
