package simulate

import (
	"math"
	"math/rand/v2"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/population"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant/cycle"
)

// A machine is one installed unit of the population.
type machine struct {
	population.Machine
	elevation quantity.Length
	// label subcooling, at the rating conditions.
	labelSubcooling quantity.TemperatureDelta
	// known and table are what is stated of it.
	known population.Known
	table []diagnose.NormalReading
}

func drawMachine(rng *rand.Rand, o Options) (*machine, error) {
	m := &machine{}
	var err error
	for {
		if m.Machine, err = population.Draw(rng, population.Options{}); err != nil {
			return nil, err
		}
		// Who does not say the stage has read the machine at full capacity, as a rule.
		if o.Class || m.Kind.Running == population.FullCapacity || rng.Float64() < 0.25 {
			break
		}
	}
	if m.Arrangement == population.WallMounted {
		m.known.Arrangement = m.Arrangement
	}
	if o.Other {
		if m.System, err = m.System.Tuned(cycle.Tuning{Form: other}); err != nil {
			return nil, err
		}
	}
	if rng.IntN(4) == 0 {
		m.elevation = quantity.Feet(7000 * rng.Float64())
	}
	rated, err := m.System.Solve(cycle.RatingConditions(), cycle.Faults{})
	if err != nil {
		return nil, err
	}
	if o.Class {
		m.known = population.Known{
			Year: m.Year, SEER: m.SEER, Stages: m.Kind.Stages, Arrangement: m.Arrangement,
		}
		if m.Kind.Stages > population.SingleStage {
			share := float64(m.System.Spec().Capacity / m.Nominal)
			m.known.Share = min(1, math.Round(10*share)/10)
		}
	}
	if o.Table {
		if m.table, err = m.print(rng); err != nil {
			return nil, err
		}
	}
	m.labelSubcooling = quantity.FahrenheitDelta(math.Round(rated.Subcooling.Fahrenheit()))
	return m, nil
}

// print makes the maker's table of normal operating pressures: of the usual match of coils,
// in whole psi.
func (m *machine) print(rng *rand.Rand) ([]diagnose.NormalReading, error) {
	low, high := 2*rng.NormFloat64(), 4*rng.NormFloat64()
	var out []diagnose.NormalReading
	for _, outdoor := range []float64{65, 75, 85, 95, 105, 115} {
		c := cycle.RatingConditions()
		c.OutdoorDryBulb = quantity.Fahrenheit(outdoor)
		o, err := m.System.Solve(c, cycle.Faults{})
		if err != nil {
			return nil, err
		}
		whole := func(p quantity.Pressure, off float64) quantity.GaugePressure {
			return quantity.PSIG(math.Round(p.Gauge(quantity.StandardAtmosphere).PSIG() + off))
		}
		out = append(out, diagnose.NormalReading{
			Outdoor: c.OutdoorDryBulb, Suction: whole(o.Suction.Pressure, low),
			Liquid: whole(o.Liquid.Pressure, high),
		})
	}
	return out, nil
}

// other is the form of the deliberately different model: coils that follow air
// and refrigerant flow less, a metering device that follows pressure less and
// subcooling more.
var other = cycle.Form{
	AirExponent:         0.42,
	RefrigerantExponent: 0.5,
	MeteringPressure:    -0.2,
	MeteringSubcooling:  0.1,
}

// solve returns the steady state of the machine with faults.
func (m *machine) solve(c cycle.Conditions, f cycle.Faults) (cycle.Operating, error) {
	c.Elevation = m.elevation
	return m.System.Solve(c, f)
}

func clamp(x, low, high float64) float64 { return math.Min(math.Max(x, low), high) }
