package testbench

import (
	"math/rand/v2"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
)

// The places of what can be read: temperatures in K, pressures in Pa above the atmosphere,
// m³/s, W.
const (
	suctionPressure = iota
	liquidPressure
	suctionLine
	liquidLine
	dischargeLine
	outdoorDryBulb
	condenserLeaving
	returnDryBulb
	returnWetBulb
	supplyDryBulb
	supplyWetBulb
	airflow
	power
	readable
)

const psi = 6894.757

// stds are standard uncertainties of sound instruments in careful hands, as they are written
// down; of airflow and power as a part of the reading. Common practice, no source.
var stds = [readable]float64{
	0.8 * psi, 1.5 * psi, 0.5, 0.5, 1.1, 0.4, 0.7, 0.35, 0.4, 0.4, 0.45, 0.08, 0.03,
}

// A kit is the instruments of one visit. Each is off by a part that stays and by one that is
// new with every reading.
type kit struct {
	bias [readable]float64 // in standard uncertainties
	lie  *lie
	size float64
}

func newKit(rng *rand.Rand) kit {
	var k kit
	for i := range k.bias {
		k.bias[i] = rng.NormFloat64()
	}
	return k
}

// A lie is an instrument that reads wrong, or is read wrong.
type lie struct {
	signature diagnose.Code
	share     float64
	low, high float64
	// either says that the error goes both ways.
	either bool
	apply  func(r *[readable]float64, size float64)
}

func toward(at, to int) func(*[readable]float64, float64) {
	return func(r *[readable]float64, size float64) { r[at] += size * (r[to] - r[at]) }
}

func off(at int, unit float64) func(*[readable]float64, float64) {
	return func(r *[readable]float64, size float64) { r[at] += size * unit }
}

func exchange(a, b int) func(*[readable]float64, float64) {
	return func(r *[readable]float64, _ float64) { r[a], r[b] = r[b], r[a] }
}

// Instruments that lie, with the range of their errors: shares of the way to the wrong
// temperature, psi, °F. Common practice, no source.
var lies = []lie{
	{diagnose.SuctionClamp, 0.12, 0.15, 0.8, false, toward(suctionLine, outdoorDryBulb)},
	{diagnose.LiquidClamp, 0.1, 0.3, 0.95, false, toward(liquidLine, outdoorDryBulb)},
	{diagnose.SuctionGauge, 0.08, 4, 12, true, off(suctionPressure, psi)},
	{diagnose.LiquidGauge, 0.06, 10, 30, true, off(liquidPressure, psi)},
	{diagnose.DryWick, 0.12, 0.3, 1, false, toward(returnWetBulb, returnDryBulb)},
	{diagnose.SunOnSensor, 0.12, 5, 20, false, off(outdoorDryBulb, degreeF)},
	// Wet, it reads the wet bulb; far down the duct, warm.
	{diagnose.SupplySensor, 0.05, 1, 1, false, toward(supplyDryBulb, supplyWetBulb)},
	{diagnose.SupplySensor, 0.07, 4, 10, true, off(supplyDryBulb, degreeF)},
	{diagnose.BulbsSwapped, 0.06, 0, 0, false, exchange(returnDryBulb, returnWetBulb)},
	{diagnose.HosesSwapped, 0.06, 0, 0, false, exchange(suctionPressure, liquidPressure)},
	{diagnose.ClampsSwapped, 0.05, 0, 0, false, exchange(suctionLine, liquidLine)},
	{diagnose.AirSensorsSwapped, 0.05, 0, 0, false, exchange(returnDryBulb, outdoorDryBulb)},
	// These two are not done to a reading.
	{diagnose.Altitude, 0.08, 3000, 7500, false, func(*[readable]float64, float64) {}},
	{diagnose.OtherRefrigerant, 0.1, 0, 0, false, func(*[readable]float64, float64) {}},
}

func drawLie(rng *rand.Rand) (*lie, float64) {
	sum := 0.0
	for i := range lies {
		sum += lies[i].share
	}
	u := rng.Float64() * sum
	l := &lies[len(lies)-1]
	for i := range lies {
		if u -= lies[i].share; u < 0 {
			l = &lies[i]
			break
		}
	}
	size := uniform(rng, l.low, l.high)
	if l.either && rng.Float64() < 0.5 {
		size = -size
	}
	return l, size
}

// read is what the instruments show of an operation.
func (k *kit) read(rng *rand.Rand, o *Operation, w Weather) [readable]float64 {
	r := [readable]float64{
		float64(o.Suction - w.Atmosphere), float64(o.Liquid - w.Atmosphere),
		float64(o.SuctionLine), float64(o.LiquidLine), float64(o.DischargeLine), float64(w.Outdoor),
		float64(o.CondenserLeaving), float64(w.ReturnDryBulb), float64(w.ReturnWetBulb),
		float64(o.Supply.DryBulb()),
		float64(o.Supply.WetBulb()), float64(o.Airflow), float64(o.Power),
	}
	if k.lie != nil {
		k.lie.apply(&r, k.size)
	}
	for i := range r {
		unit := stds[i]
		if i == airflow || i == power {
			unit *= r[i]
		}
		r[i] += unit * (sqrtStays*k.bias[i] + sqrtNew*rng.NormFloat64())
	}
	return r
}

// Of an instrument's variance, 0.6 is the same all through a visit and 0.4 is new each time.
const sqrtStays, sqrtNew = 0.7745966692414834, 0.6324555320336759

// named is the refrigerant that gauges are set to in place of another.
var named = map[string][]string{
	"R-410A": {"R-22", "R-32", "R-454B"}, "R-22": {"R-410A", "R-407C"},
	"R-454B": {"R-410A", "R-32"}, "R-32": {"R-410A", "R-454B"},
	"R-407C": {"R-22", "R-410A"}, "R-134a": {"R-22"},
}

// saturation returns what an instrument makes of a pressure, with its uncertainty; nil where
// the refrigerant has no such temperature.
func saturation(
	at func(quantity.Pressure) (quantity.Temperature, error),
	gauge *quantity.Uncertain[quantity.GaugePressure], atmosphere quantity.Pressure,
) *quantity.Uncertain[quantity.Temperature] {
	p := gauge.Value.Absolute(atmosphere)
	t, err := at(p)
	if err != nil {
		return nil
	}
	above, err := at(p + quantity.Pressure(gauge.Std))
	if err != nil {
		return nil
	}
	u := t.PlusMinus(above.Sub(t))
	return &u
}
