package simulate

import (
	"math/rand/v2"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// An injury is a fault of the machine as the generator imposes it.
type injury struct {
	signature diagnose.Code
	weight    float64
	low, high float64 // of the size
	// shows are the looks and tests that find it, by the code of the measurement.
	shows  []string
	impose func(rng *rand.Rand, size float64, v *Visit, f *cycle.Faults)
}

// injuries of the trial; sizes from slight to grave. Common practice.
var injuries = []injury{
	{
		diagnose.Undercharge, 0.24, 0.08, 0.42, []string{"oil-and-leak"},
		func(_ *rand.Rand, s float64, _ *Visit, f *cycle.Faults) { f.Charge -= s },
	},
	{
		diagnose.Overcharge, 0.12, 0.1, 0.4, nil,
		func(_ *rand.Rand, s float64, _ *Visit, f *cycle.Faults) { f.Charge += s },
	},
	{
		diagnose.NonCondensables, 0.05, 0.2, 0.9, []string{"standing-pressure"},
		func(_ *rand.Rand, s float64, _ *Visit, f *cycle.Faults) { f.NonCondensables = s },
	},
	{
		diagnose.Restriction,
		0.09,
		0.15,
		0.6,
		nil,
		func(rng *rand.Rand, s float64, v *Visit, f *cycle.Faults) {
			if rng.IntN(2) == 0 {
				f.MeteringSize = -s
				v.shows = append(v.shows, "restrictor-number", "valve-bulb")
				return
			}
			v.shows = append(v.shows, "liquid-line-drop")
			f.LiquidRestriction = quantity.Bar(min(59, 14*(1/((1-s)*(1-s))-1)))
		},
	},
	{
		diagnose.Overfeed,
		0.06,
		0.15,
		0.7,
		[]string{"restrictor-number", "valve-bulb"},
		func(rng *rand.Rand, s float64, v *Visit, f *cycle.Faults) {
			switch {
			case v.Evidence.Metering == refrigerant.FixedRestrictor:
				f.MeteringSize = s
			case rng.IntN(2) == 0:
				f.BulbOff = 0.3 + s
			default:
				f.ValveSetting = quantity.KelvinDelta(-10 * (0.3 + s))
			}
		},
	},
	{
		diagnose.VaporLeak, 0.06, 0.07, 0.35, []string{"pressures-at-stop"},
		func(_ *rand.Rand, s float64, _ *Visit, f *cycle.Faults) { f.CompressorLeak = s },
	},
	{
		diagnose.LowIndoorAir,
		0.22,
		0.15,
		0.6,
		[]string{"indoor-air-path", "static-pressure"},
		func(rng *rand.Rand, s float64, _ *Visit, f *cycle.Faults) {
			f.IndoorAirflow = (1+f.IndoorAirflow)*(1-s) - 1
			if rng.IntN(4) == 0 {
				f.EvaporatorFouling = 0.4 * s
			}
		},
	},
	{
		diagnose.HighIndoorAir,
		0.03,
		0.15,
		0.4,
		nil,
		func(_ *rand.Rand, s float64, _ *Visit, f *cycle.Faults) {
			f.IndoorAirflow = (1+f.IndoorAirflow)*(1+s) - 1
		},
	},
	{
		diagnose.ReturnLeak, 0.05, 0.06, 0.3, []string{"coil-inlet-air"},
		func(_ *rand.Rand, s float64, v *Visit, _ *cycle.Faults) { v.leak = s },
	},
	{
		diagnose.CondenserAir,
		0.17,
		0.2,
		0.72,
		[]string{"outdoor-coil"},
		func(rng *rand.Rand, s float64, _ *Visit, f *cycle.Faults) {
			if rng.IntN(2) == 0 {
				f.OutdoorAirflow = (1+f.OutdoorAirflow)*(1-s) - 1
				return
			}
			f.OutdoorAirflow = (1+f.OutdoorAirflow)*(1-0.7*s) - 1
			f.CondenserFouling = 0.5 * s
		},
	},
	{
		diagnose.CondenserAir, 0.04, 3, 11, []string{"outdoor-air-at-coil"},
		func(_ *rand.Rand, s float64, _ *Visit,
			f *cycle.Faults) {
			f.Recirculation = quantity.KelvinDelta(s)
		},
	},
}

func drawInjury(rng *rand.Rand) *injury {
	total := 0.0
	for i := range injuries {
		total += injuries[i].weight
	}
	x := rng.Float64() * total
	for i := range injuries {
		if x < injuries[i].weight {
			return &injuries[i]
		}
		x -= injuries[i].weight
	}
	return &injuries[0]
}

// impose does the injury of a signature to a machine and its visit.
func impose(rng *rand.Rand, signature diagnose.Code, size float64, v *Visit, f *cycle.Faults) {
	for i := range injuries {
		if injuries[i].signature == signature {
			injuries[i].impose(rng, size, v, f)
			return
		}
	}
}

// apart keeps pairs to faults that do not undo or repeat each other.
func apart(a, b *injury) bool {
	if a.signature == b.signature {
		return false
	}
	opposite := map[diagnose.Code]diagnose.Code{
		diagnose.Undercharge: diagnose.Overcharge, diagnose.LowIndoorAir: diagnose.HighIndoorAir,
		diagnose.Restriction: diagnose.Overfeed,
	}
	return opposite[a.signature] != b.signature && opposite[b.signature] != a.signature
}

// A lie is an error of an instrument as the generator makes it.
type lie struct {
	signature diagnose.Code
	// shows is the look or test that finds it; empty where its readings do.
	shows string
	make  func(rng *rand.Rand, v *Visit, w *written) (size float64)
}

var lies = []lie{
	{
		diagnose.SuctionClamp,
		"suction-clamp-second",
		func(rng *rand.Rand, _ *Visit, w *written) float64 {
			s := 0.2 + 0.6*rng.Float64()
			w.suctionLine += s * (w.outdoor - w.suctionLine)
			return s
		},
	},
	{
		diagnose.LiquidClamp,
		"liquid-clamp-second",
		func(rng *rand.Rand, _ *Visit, w *written) float64 {
			s := 0.5 + 0.5*rng.Float64()
			w.liquidLine += s * (w.outdoor - w.liquidLine)
			return s
		},
	},
	{diagnose.SuctionGauge, "gauge-zero", func(rng *rand.Rand, _ *Visit, w *written) float64 {
		s := sign(rng) * (6 + 8*rng.Float64())
		w.suction += float64(quantity.PSIG(s))
		return s
	}},
	{diagnose.LiquidGauge, "gauge-zero", func(rng *rand.Rand, _ *Visit, w *written) float64 {
		s := sign(rng) * (15 + 20*rng.Float64())
		w.liquid += float64(quantity.PSIG(s))
		return s
	}},
	{diagnose.DryWick, "wet-bulb-second", func(rng *rand.Rand, _ *Visit, w *written) float64 {
		s := 0.35 + 0.5*rng.Float64()
		w.returnWet += s * (w.returnDry - w.returnWet)
		return s
	}},
	{diagnose.SunOnSensor, "outdoor-second", func(rng *rand.Rand, _ *Visit, w *written) float64 {
		s := 3 + 8*rng.Float64()
		w.outdoor += s
		return s
	}},
	{diagnose.SupplySensor, "supply-second", func(rng *rand.Rand, _ *Visit, w *written) float64 {
		s := sign(rng) * (3 + 3.5*rng.Float64())
		w.supplyDry += s
		return s
	}},
	{diagnose.HosesSwapped, "", func(_ *rand.Rand, _ *Visit, w *written) float64 {
		w.suction, w.liquid = w.liquid, w.suction
		return 1
	}},
	{diagnose.BulbsSwapped, "", func(_ *rand.Rand, _ *Visit, w *written) float64 {
		w.returnDry, w.returnWet = w.returnWet, w.returnDry
		return 1
	}},
	{
		diagnose.OtherRefrigerant,
		"refrigerant-label",
		func(rng *rand.Rand, v *Visit, _ *written) float64 {
			names := mistaken[v.Evidence.Fluid.Designation()]
			v.takenFor = names[rng.IntN(len(names))]
			return 1
		},
	},
	// The machine stands high, and nobody said so: see draw.
	{diagnose.Altitude, "elevation", func(_ *rand.Rand, v *Visit, _ *written) float64 {
		high := v.Evidence.Atmosphere
		v.Evidence.Atmosphere, v.Evidence.AtmosphereAssumed = quantity.StandardAtmosphere, true
		return float64(quantity.StandardAtmosphere - high)
	}},
}

// mistaken is which refrigerant the gauges were set to instead.
var mistaken = map[string][]string{
	"R-410A": {
		"R-32", "R-22", "R-454B",
	}, "R-22": {"R-407C", "R-410A", "R-422D"}, "R-454B": {"R-410A", "R-32"},
	"R-32": {"R-410A", "R-454B"}, "R-407C": {"R-22", "R-410A"}, "R-134a": {"R-22", "R-1234yf"},
}

func sign(rng *rand.Rand) float64 {
	if rng.IntN(2) == 0 {
		return -1
	}
	return 1
}
