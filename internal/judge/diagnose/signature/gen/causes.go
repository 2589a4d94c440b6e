package main

import (
	"math/rand/v2"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A cause is a signature with the severities at which it is solved, and how it
// is imposed on the model. Severities are drawn evenly between the midpoints
// to their neighbours.
type cause struct {
	code   string
	levels []float64
	impose func(*rand.Rand, *sample)
}

// apart are the causes that are learnt of heat pumps by themselves: their accumulator takes up
// what a flooded coil sends on, so that an excess hardly shows.
var apart = map[string]bool{"overcharge": true}

func (c *cause) near(rng *rand.Rand, k int) float64 {
	l := c.levels
	low, high := l[k]-(l[min(k+1, len(l)-1)]-l[k])/2, l[k]+(l[k]-l[max(k-1, 0)])/2
	if k > 0 {
		low = (l[k-1] + l[k]) / 2
	}
	if k < len(l)-1 {
		high = (l[k] + l[k+1]) / 2
	}
	return low + (high-low)*rng.Float64()
}

// fullDrop is about the pressure across a metering device at rated conditions,
// by which a restriction in the liquid line compares with a smaller opening: in
// series, an opening reduced by s passes what a line does that drops
// fullDrop·(1/(1−s)² − 1).
const fullDrop = 1.4e6

var causes = []cause{
	{
		"undercharge", []float64{0.08, 0.16, 0.24, 0.32, 0.42, 0.54, 0.68},
		func(_ *rand.Rand, s *sample) { s.faults.Charge = -s.severity },
	},
	{
		"overcharge", []float64{0.08, 0.16, 0.25, 0.4},
		func(_ *rand.Rand, s *sample) { s.faults.Charge = s.severity },
	},
	{
		"non-condensables", []float64{0.15, 0.35, 0.6, 0.9},
		func(_ *rand.Rand, s *sample) { s.faults.NonCondensables = s.severity },
	},
	{"restriction", []float64{0.12, 0.22, 0.34, 0.48, 0.62}, func(rng *rand.Rand, s *sample) {
		if rng.IntN(2) == 0 {
			s.faults.MeteringSize = -s.severity
			return
		}
		s.faults.LiquidRestriction = quantity.Pressure(
			min(5.9e6, fullDrop*(1/((1-s.severity)*(1-s.severity))-1)),
		)
	}},
	{"overfeed", []float64{0.12, 0.25, 0.45, 0.7}, func(rng *rand.Rand, s *sample) {
		if s.system.Spec().Metering == refrigerant.FixedRestrictor {
			s.faults.MeteringSize = s.severity
			return
		}
		switch rng.IntN(3) {
		case 0:
			s.faults.BulbOff = min(1, 1.3*s.severity)
		case 1:
			s.faults.ValveSetting = quantity.KelvinDelta(-12 * s.severity)
		default:
			s.faults.ValveStuck, s.faults.ValveOpening = true, min(1, 0.75+0.4*s.severity)
		}
	}},
	{
		"vapor-leak", []float64{0.07, 0.15, 0.25, 0.38},
		func(_ *rand.Rand, s *sample) { s.faults.CompressorLeak = s.severity },
	},
	{"low-indoor-airflow", []float64{0.15, 0.27, 0.4, 0.53, 0.66}, func(rng *rand.Rand, s *sample) {
		s.faults.IndoorAirflow = -s.severity
		if rng.IntN(4) == 0 {
			s.faults.EvaporatorFouling = s.severity / 2
		}
	}},
	{
		"high-indoor-airflow", []float64{0.15, 0.27, 0.42},
		func(_ *rand.Rand, s *sample) { s.faults.IndoorAirflow = s.severity },
	},
	{
		"return-duct-leak", []float64{0.07, 0.14, 0.22, 0.32},
		func(_ *rand.Rand, s *sample) { s.leak = s.severity },
	},
	{
		"condenser-heat-rejection",
		[]float64{0.2, 0.34, 0.48, 0.62, 0.74},
		func(rng *rand.Rand, s *sample) {
			// Dirt hinders the air and the heat; a slow fan the air alone.
			switch rng.IntN(3) {
			case 0:
				s.faults.OutdoorAirflow = -s.severity
			case 1:
				s.faults.CondenserFouling = s.severity
			default:
				s.faults.OutdoorAirflow, s.faults.CondenserFouling = -0.8*s.severity, 0.4*s.severity
			}
		},
	},
	{
		"condenser-recirculation", []float64{3, 5.5, 8.5, 12},
		func(_ *rand.Rand, s *sample) { s.faults.Recirculation = quantity.KelvinDelta(s.severity) },
	},
}
