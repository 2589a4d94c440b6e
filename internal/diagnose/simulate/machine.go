package simulate

import (
	"math"
	"math/rand/v2"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// A machine is one installed unit.
type machine struct {
	system    *cycle.System
	r         *refrigerant.Refrigerant
	elevation quantity.Length
	// own is how it is installed and kept: sound, and not to the gram.
	own cycle.Faults
	// label subcooling, at the rating conditions.
	labelSubcooling quantity.TemperatureDelta
}

var fluids = []struct {
	name   string
	weight float64
}{{"R-410A", 0.5}, {"R-22", 0.15}, {"R-454B", 0.15}, {"R-32", 0.1}, {"R-407C", 0.1}}

func drawMachine(rng *rand.Rand, o Options) (*machine, error) {
	normal := func(mean, std float64) float64 { return mean + std*rng.NormFloat64() }
	x, name := rng.Float64(), fluids[0].name
	for _, f := range fluids {
		if x < f.weight {
			name = f.name
			break
		}
		x -= f.weight
	}
	m := &machine{}
	var err error
	if m.r, err = refrigerant.Lookup(name); err != nil {
		return nil, err
	}
	tons := []float64{1.5, 2, 2.5, 3, 3, 3.5, 4, 5}[rng.IntN(8)]
	spec := cycle.Spec{
		Refrigerant: m.r, Capacity: quantity.Tons(tons), Metering: cycle.FixedRestrictor,
		Airflow:        quantity.CFM(tons * clamp(normal(400, 20), 350, 450)),
		OutdoorAirflow: quantity.CFM(tons * clamp(normal(930, 110), 700, 1200)),
		Suction:        quantity.Fahrenheit(clamp(normal(45, 1.5), 41, 49)),
		Condensing:     quantity.FahrenheitDelta(clamp(normal(20.5, 3), 14, 28)),
		Superheat:      quantity.FahrenheitDelta(clamp(normal(12, 1.8), 8, 17)),
		Subcooling:     quantity.FahrenheitDelta(clamp(normal(10, 1.6), 6, 12)),
		LineSet:        quantity.Feet(clamp(normal(28, 12), 8, 75)),
		HeatPump:       rng.Float64() < 0.35,
		Compressor: cycle.Compressor{
			Best: clamp(normal(0.68, 0.03), 0.58, 0.76), BestRatio: normal(2.8, 0.15), HeatLoss: clamp(normal(0.06, 0.015), 0.02, 0.12),
		},
	}
	if rng.IntN(2) == 0 {
		spec.Metering = cycle.TXV
		spec.ValveGradient = quantity.FahrenheitDelta(clamp(normal(6, 1), 3, 9))
		spec.ValveSize = clamp(normal(1.45, 0.15), 1.15, 1.9)
	}
	m.own = cycle.Faults{
		Charge: normal(0, 0.02), IndoorAirflow: normal(0, 0.04), OutdoorAirflow: normal(0, 0.03),
		CondenserFouling: 0.06 * rng.Float64(), EvaporatorFouling: 0.04 * rng.Float64(),
	}
	if m.system, err = cycle.Design(spec); err != nil {
		return nil, err
	}
	if o.Other {
		if m.system, err = m.system.Tuned(cycle.Tuning{Form: other}); err != nil {
			return nil, err
		}
	}
	if rng.IntN(4) == 0 {
		m.elevation = quantity.Feet(7000 * rng.Float64())
	}
	rated, err := m.solve(cycle.RatingConditions(), cycle.Faults{})
	if err != nil {
		return nil, err
	}
	m.labelSubcooling = quantity.FahrenheitDelta(math.Round(rated.Subcooling.Fahrenheit()))
	return m, nil
}

// other is the form of the deliberately different model: coils that follow air
// and refrigerant flow less, a metering device that follows pressure less and
// subcooling more.
var other = cycle.Form{AirExponent: 0.42, RefrigerantExponent: 0.5, MeteringPressure: -0.2, MeteringSubcooling: 0.1}

// solve returns the steady state of the machine with faults.
func (m *machine) solve(c cycle.Conditions, f cycle.Faults) (cycle.Operating, error) {
	c.Elevation = m.elevation
	return m.system.Solve(c, f)
}

func clamp(x, low, high float64) float64 { return math.Min(math.Max(x, low), high) }
