package testbench

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// An Injected fault is the truth about a visit. Fault names it, Signature is the group of
// faults that read like it.
type Injected struct {
	Signature, Fault diagnose.Code
	Size             float64
}

// Options of the visits drawn, as in the other generators.
type Options struct {
	// Bare leaves out what is not among the eight usual readings; Full takes all.
	Bare, Full bool
	// Tally counts what was drawn again, where it is given. It is not for several goroutines
	// at once.
	Tally *Tally
}

// A Visit is a technician with instruments at a machine.
type Visit struct {
	Machine  *Machine
	Weather  Weather
	Evidence diagnose.Evidence
	Truth    []Injected // in the order of the codes; none on a sound machine
	// Loss is the larger of the fractions of capacity and of efficiency that the faults cost.
	Loss float64
	// Instrument says that an instrument lies and the machine is sound.
	Instrument bool
	// LabelSubcooling is what the label says; nil where it says nothing or was not read.
	LabelSubcooling *quantity.Uncertain[quantity.TemperatureDelta]

	kit       kit
	operation *Operation
	taken     [readable]bool
	done      []diagnose.Action
}

// Shares of visits with one fault of the machine, with an instrument that lies, and with two
// faults; the rest is sound. Common practice, no source.
const shareOne, shareLie, shareTwo = 0.5, 0.1, 0.1

// iced is the evaporating temperature below which a coil takes on ice, and no reading of it
// is one of the machine: 28 °F, common practice, no source.
var iced = quantity.Fahrenheit(28)

// DrawVisit makes a visit. Where what is drawn has no steady state (a cut-out, ice), size and
// weather are drawn anew with the same fault, and counted.
func DrawVisit(rng *rand.Rand, o Options) (*Visit, error) {
	u := rng.Float64()
	for range 60 {
		v, err := tryVisit(rng, u, o)
		if err == nil {
			return v, nil
		}
		if !errors.Is(err, ErrNoOperation) {
			return nil, err
		}
		if t := o.Tally; t != nil {
			switch {
			case errors.Is(err, errStopped):
				t.Stopped++
			case errors.Is(err, errIced):
				t.Iced++
			default:
				t.Unsolved++
			}
		}
	}
	return nil, ErrNoOperation
}

func tryVisit(rng *rand.Rand, u float64, o Options) (*Visit, error) {
	m, err := Draw(rng, o.Tally)
	if err != nil {
		return nil, err
	}
	v := &Visit{Machine: m, Weather: DrawWeather(rng), kit: newKit(rng)}
	m.asFound(rng)
	before := *m
	switch {
	case u < shareOne:
		v.inject(rng, drawFault(rng, m))
	case u < shareOne+shareLie:
		v.Instrument = true
		v.kit.lie, v.kit.size = drawLie(rng)
		if v.kit.lie.signature == diagnose.Altitude {
			v.Weather.Atmosphere = quantity.AtmosphereAt(quantity.Feet(v.kit.size))
		}
		v.Truth = []Injected{{v.kit.lie.signature, v.kit.lie.signature, v.kit.size}}
	case u < shareOne+shareLie+shareTwo:
		a := drawFault(rng, m)
		v.inject(rng, a)
		v.inject(rng, drawFault(rng, m, a))
	}
	if v.operation, err = m.Operate(v.Weather); err != nil {
		return nil, err
	}
	if v.operation.Coldest < iced {
		return nil, errIced
	}
	if len(v.Truth) > 0 && !v.Instrument {
		sound, err := before.Operate(v.Weather)
		if err != nil {
			return nil, err
		}
		is := v.operation
		v.Loss = max(1-float64(is.Capacity/sound.Capacity),
			1-float64(is.Capacity/sound.Capacity)*float64(sound.Power/is.Power))
	}
	slices.SortFunc(v.Truth, func(a, b Injected) int {
		return strings.Compare(string(a.Signature), string(b.Signature))
	})
	v.write(rng, o)
	return v, nil
}

// asFound leaves a sound machine as sound machines are found: not quite clean, and charged
// within the 3 °F of subcooling or 5 °F of superheat that ANSI/ACCA 5 QI allows (from memory);
// a per cent of the charge is worth up to 1.4 °F of the one and 1.9 °F of the other here.
func (m *Machine) asFound(rng *rand.Rand) {
	m.charge *= 1 + 0.012*clamp(rng.NormFloat64(), -2, 2)
	m.ails.indoorAir *= 1 + 0.03*clamp(rng.NormFloat64(), -2, 2)
	m.ails.outdoorAir *= uniform(rng, 0.94, 1.02)
}

func (v *Visit) inject(rng *rand.Rand, f *fault) {
	size := uniform(rng, f.low, f.high)
	f.apply(rng, v.Machine, size)
	v.Truth = append(v.Truth, Injected{f.signature, f.code, size})
}

// write notes what the technician would.
func (v *Visit) write(rng *rand.Rand, o Options) {
	m, e := v.Machine, &v.Evidence
	for i := range v.taken {
		v.taken[i] = true
	}
	chance := map[int]float64{
		dischargeLine: 0.5, condenserLeaving: 0.35, supplyWetBulb: 0.5, airflow: 0.35, power: 0.35,
	}
	for _, i := range []int{dischargeLine, condenserLeaving, supplyWetBulb, airflow, power} {
		v.taken[i] = o.Full || !o.Bare && rng.Float64() < chance[i]
	}
	e.Metering, e.HeatPump, e.NominalCapacity = m.device.kind, m.HeatPump, m.Nominal
	if rng.Float64() < 0.4 {
		e.RatedAirflow = m.RatedAirflow
	}
	if rng.Float64() < 0.5 {
		e.Charge = m.LabelCharge
	}
	if !hasFixed(m) && rng.Float64() < 0.85 {
		label := m.LabelSubcooling + quantity.TemperatureDelta(0.4*rng.NormFloat64())
		printed := quantity.FahrenheitDelta(math.Round(label.Fahrenheit()))
		whole := printed.PlusMinus(quantity.KelvinDelta(0.6))
		v.LabelSubcooling = &whole
	}
	gauges := m.fluid.refrigerant
	lies := v.lies()
	if lies == diagnose.OtherRefrigerant {
		others := named[m.fluid.Designation]
		if r, err := refrigerant.Lookup(others[rng.IntN(len(others))]); err == nil {
			gauges = r
		}
	}
	e.Fluid, e.Others = gauges, diagnose.Alternatives(gauges)
	e.Atmosphere = v.Weather.Atmosphere
	low := v.Weather.Atmosphere > quantity.AtmosphereAt(quantity.Feet(500))
	if lies == diagnose.Altitude || low && rng.Float64() < 0.5 {
		e.Atmosphere, e.AtmosphereAssumed = quantity.StandardAtmosphere, true
	}
	e.Input.Atmosphere = e.Atmosphere
	v.see(rng)
	v.note(v.kit.read(rng, v.operation, v.Weather))
}

// lies names what an instrument does wrong; empty where none does.
func (v *Visit) lies() diagnose.Code {
	if v.kit.lie == nil {
		return ""
	}
	return v.kit.lie.signature
}

// see is what catches the eye without looking for it. Common practice, no source.
func (v *Visit) see(rng *rand.Rand) {
	s := &v.Evidence.Seen
	has := func(codes ...diagnose.Code) bool {
		return slices.ContainsFunc(v.Truth, func(x Injected) bool {
			return slices.Contains(codes, x.Fault) || slices.Contains(codes, x.Signature)
		})
	}
	flag := func(there bool, hit, usual float64) bool {
		if there {
			return rng.Float64() < hit
		}
		return rng.Float64() < usual
	}
	s.FilterDirty = flag(has("filter"), 0.6, 0.07)
	s.OutdoorCoilDirty = flag(has("condenser-coil"), 0.55, 0.07)
	opened := has(diagnose.NonCondensables, "restrictor-large", "restrictor-small")
	s.SealedSystemOpened = flag(opened, 0.5, 0.06)
	s.OilStains = flag(has(diagnose.Undercharge), 0.3, 0.03)
	s.NotCoolingComplaint = flag(v.Loss > 0.15, 0.5, 0.25)
}

// note writes readings down as evidence, those that were taken.
func (v *Visit) note(r [readable]float64) {
	e := &v.Evidence
	temp := func(i int) *quantity.Uncertain[quantity.Temperature] {
		if !v.taken[i] {
			return nil
		}
		t := quantity.Temperature(r[i]).PlusMinus(quantity.TemperatureDelta(stds[i]))
		return &t
	}
	gauge := func(i int) *quantity.Uncertain[quantity.GaugePressure] {
		p := quantity.GaugePressure(r[i]).PlusMinus(quantity.GaugePressure(stds[i]))
		return &p
	}
	e.SuctionPressure, e.LiquidPressure = gauge(suctionPressure), gauge(liquidPressure)
	e.EvaporatingDew = saturation(e.Fluid.DewTemperature, e.SuctionPressure, e.Atmosphere)
	e.CondensingBubble = saturation(e.Fluid.BubbleTemperature, e.LiquidPressure, e.Atmosphere)
	e.CondensingDew = saturation(e.Fluid.DewTemperature, e.LiquidPressure, e.Atmosphere)
	e.SuctionLine, e.LiquidLine = temp(suctionLine), temp(liquidLine)
	e.DischargeLine = temp(dischargeLine)
	e.OutdoorDryBulb, e.CondenserLeaving = temp(outdoorDryBulb), temp(condenserLeaving)
	e.ReturnDryBulb, e.ReturnWetBulb = temp(returnDryBulb), temp(returnWetBulb)
	e.SupplyDryBulb, e.SupplyWetBulb = temp(supplyDryBulb), temp(supplyWetBulb)
	e.Airflow, e.Power = nil, nil
	if v.taken[airflow] {
		q := quantity.VolumeFlow(r[airflow])
		u := q.PlusMinus(quantity.VolumeFlow(stds[airflow] * r[airflow]))
		e.Airflow = &u
	}
	if v.taken[power] {
		q := quantity.Power(r[power])
		u := q.PlusMinus(quantity.Power(stds[power] * r[power]))
		e.Power = &u
	}
}

// Code names the truth as an explanation does.
func (v *Visit) Code() string {
	if len(v.Truth) == 0 {
		return "sound"
	}
	codes := make([]string, len(v.Truth))
	for i, x := range v.Truth {
		codes[i] = string(x.Signature)
	}
	return strings.Join(codes, "+")
}

// Look returns what a look or test says: yes or no.
func (v *Visit) Look(rng *rand.Rand, code string) bool {
	if code == "elevation" {
		return v.Weather.Atmosphere < quantity.AtmosphereAt(quantity.Feet(2000))
	}
	chance := falseLook
	for _, x := range v.Truth {
		chance = max(chance, looks[code][x.Fault])
	}
	return rng.Float64() < chance
}

var readingCodes = map[string]int{
	"suction-pressure": suctionPressure, "suction-line": suctionLine, "liquid-line": liquidLine,
	"discharge-line": dischargeLine, "condenser-leaving": condenserLeaving,
	"supply-dry-bulb": supplyDryBulb, "supply-wet-bulb": supplyWetBulb,
	"airflow": airflow, "power": power,
}

// Read returns the evidence with one more reading, named by the code of the measurement that
// asks for it; false where it is no reading but a look or a test.
func (v *Visit) Read(rng *rand.Rand, code string) (diagnose.Evidence, bool) {
	i, ok := readingCodes[code]
	if !ok || v.taken[i] {
		return v.Evidence, false
	}
	w := *v
	w.taken[i] = true
	all := v.kit.read(rng, v.operation, v.Weather)
	w.note(all)
	// What was read before stays as it was written down.
	e := v.Evidence
	switch i {
	case dischargeLine:
		e.DischargeLine = w.Evidence.DischargeLine
	case condenserLeaving:
		e.CondenserLeaving = w.Evidence.CondenserLeaving
	case supplyWetBulb:
		e.SupplyWetBulb = w.Evidence.SupplyWetBulb
	case airflow:
		e.Airflow = w.Evidence.Airflow
	case power:
		e.Power = w.Evidence.Power
	}
	return e, true
}
