package testbench

import (
	"errors"
	"math"
	"math/rand/v2"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A class is machines of one refrigerant and generation: how cold they evaporate and how far
// over outdoors they condense at 95 °F outdoors and 80/67 °F indoors, in °F, with standard
// deviations; and how they meter.
type class struct {
	designation                string
	share                      float64
	evaporating, evaporatingSD float64
	over, overSD               float64
	fixed, electronic          float64 // shares; the rest has a thermostatic valve
	piston                     float64 // share of piston compressors
	microchannel               float64
}

// classes as makers' tables of normal operating pressures have them: R-410A of 14 SEER
// evaporates at 51 °F (sd 1.3) and condenses 12 to 20 °F over outdoors, R-22 of 10 SEER at
// 46 °F (2.3) and 21 °F (4.6). The other classes lean on these by their time and efficiency;
// those and all shares are common practice, no source.
var classes = []class{
	{"R-410A", 0.31, 51, 1.3, 16.5, 2.3, 0.4, 0.04, 0, 0.25},
	{"R-410A", 0.12, 52.3, 1.5, 12.5, 1.8, 0.1, 0.25, 0, 0.3},
	{"R-410A", 0.07, 46.5, 1.6, 21, 2.5, 0.5, 0, 0.1, 0.05},
	{"R-22", 0.16, 45.8, 2, 21, 3.6, 0.6, 0, 0.5, 0},
	{"R-22", 0.06, 48, 1.5, 18, 2.5, 0.35, 0, 0.2, 0},
	{"R-454B", 0.1, 51, 1.5, 15, 2.3, 0.15, 0.25, 0, 0.35},
	{"R-32", 0.08, 51, 1.5, 15, 2.3, 0.1, 0.35, 0, 0.35},
	{"R-407C", 0.05, 46.5, 1.8, 19, 2.8, 0.35, 0, 0.2, 0},
	{"R-134a", 0.05, 45.5, 1.8, 20, 2.8, 0.4, 0.05, 0.5, 0.05},
}

func uniform(rng *rand.Rand, low, high float64) float64 { return low + (high-low)*rng.Float64() }

// clipped draws about a mean, at most twice the deviation off.
func clipped(rng *rand.Rand, mean, sd float64) float64 {
	return mean + sd*clamp(rng.NormFloat64(), -2, 2)
}

const (
	foot    = 0.3048                        // m
	watts   = 3516.8528                     // a ton of refrigeration
	cfm     = 0.3048 * 0.3048 * 0.3048 / 60 // m³/s
	degreeF = 5.0 / 9                       // K
)

func drawDesign(rng *rand.Rand) *design {
	u := rng.Float64()
	k := &classes[0]
	for i := range classes {
		k = &classes[i]
		if u -= k.share; u < 0 {
			break
		}
	}
	return k.draw(rng)
}

func (k *class) draw(rng *rand.Rand) *design {
	d := &design{designation: k.designation, metering: refrigerant.TXV}
	d.heatPump = rng.Float64() < 0.3
	switch u := rng.Float64(); {
	case u < k.fixed:
		d.metering = refrigerant.FixedRestrictor
	case u < k.fixed+k.electronic:
		d.metering = refrigerant.EXV
	}
	tons := []float64{1.5, 2, 2.5, 3, 3.5, 4, 5}[rng.IntN(7)]
	d.label = watts * tons
	d.nominal = d.label * uniform(rng, 0.97, 1.03)
	d.airflow = cfm * tons * uniform(rng, 325, 450)
	fahrenheit := func(f float64) float64 { return float64(quantity.Fahrenheit(f)) }
	d.evaporating = fahrenheit(clipped(rng, k.evaporating, k.evaporatingSD))
	d.condensing = fahrenheit(95 + clipped(rng, k.over, k.overSD))
	// The chart of superheat asks for some 11 °F in this weather (California Energy Commission,
	// Residential Alternative Calculation, table RA3.2-2, from memory); valves hold 8 to 14 °F
	// at the outdoor unit.
	d.superheat = degreeF * clipped(rng, 11, 1.3)
	d.subcooling = degreeF * clipped(rng, 9.7, 1.7)

	d.compressor = compressor{
		scroll:    rng.Float64() >= k.piston,
		tightness: uniform(rng, 0.94, 1), peak: uniform(rng, 0.66, 0.73),
		clearance: uniform(rng, 0.03, 0.055), shellLoss: uniform(rng, 0.04, 0.14),
		oil: 0.3 * tons * uniform(rng, 0.85, 1.3), shell: 1.2e-3 * tons,
	}
	if !d.compressor.scroll {
		d.compressor.tightness = uniform(rng, 0.86, 0.94)
		d.compressor.peak = uniform(rng, 0.6, 0.68)
	}
	s := slip(rng.IntN(int(slips)))
	d.indoor = coil{
		bore: []float64{6.5e-3, 8.5e-3, 8.9e-3}[rng.IntN(3)], enhancement: uniform(rng, 1.3, 1.9),
		outer: uniform(rng, 22, 32), headers: 3e-5 * tons * uniform(rng, 0.7, 1.5), slip: s,
	}
	d.indoorFlux = uniform(rng, 90, 160)
	if rng.Float64() < k.microchannel {
		d.outdoor = coil{
			bore: uniform(rng, 0.9e-3, 1.4e-3), enhancement: 1, outer: uniform(rng, 1.3, 2.2),
			headers: 1e-4 * tons * uniform(rng, 0.7, 1.4), slip: s,
		}
		d.outdoorFlux = uniform(rng, 180, 320)
	} else {
		d.outdoor = coil{
			bore:        []float64{4.6e-3, 6.5e-3, 8.5e-3}[rng.IntN(3)],
			enhancement: uniform(rng, 1.3, 1.9),
			outer:       uniform(rng, 13, 22), headers: 4e-5 * tons, slip: s,
		}
		d.outdoorFlux = uniform(rng, 180, 330)
	}
	d.reach = uniform(rng, 0.6, 0.78)
	d.lines = lines{
		length: foot * uniform(rng, 15, 50), suctionBore: suctionBore(tons), liquidBore: 7.9e-3,
		liquidLoss: uniform(rng, 0.5, 2), discharge: 1e-4 * tons, drier: 1.5e-4,
	}
	d.lines.suctionGain = d.lines.length * uniform(rng, 0.12, 0.3)
	if d.heatPump || rng.Float64() < 0.08 {
		d.accumulator = uniform(rng, 0.4, 0.7)
	}
	d.indoorFan = d.airflow / cfm * uniform(rng, 0.25, 0.42) // W per CFM; 0.365 in AHRI 210/240
	d.outdoorFan = uniform(rng, 70, 130)
	d.staticShare = uniform(rng, 0.45, 0.7)
	d.leastOpening, d.mostOpening = 0.05, uniform(rng, 1.15, 1.7)
	d.springSpan = 0.5
	if d.metering == refrigerant.EXV {
		d.mostOpening = uniform(rng, 1.3, 2.4)
	}
	// As package population has it.
	d.supplyGain = degreeF * clamp(0.7+0.6*rng.NormFloat64(), 0, 2.5)
	return d
}

// suctionBore is that of the usual suction lines, 5/8 to 1 1/8 in: common practice, no
// source.
func suctionBore(tons float64) float64 {
	switch {
	case tons <= 1.5:
		return 14.1e-3
	case tons <= 3:
		return 17.3e-3
	case tons <= 4:
		return 20.6e-3
	}
	return 26.8e-3
}

// A Tally counts what was drawn again, and why: a size that nobody makes, a machine that a
// control would stop, one that would ice, one that was not solved.
type Tally struct{ Designs, Stopped, Iced, Unsolved int }

// Draw makes a sound machine, right charged. Designs that no machine of usual size
// answers are drawn anew, and counted in tally where one is given.
func Draw(rng *rand.Rand, tally *Tally) (*Machine, error) {
	for range 100 {
		d := drawDesign(rng)
		m, err := d.build()
		if err == nil {
			return m, nil
		}
		if !errors.Is(err, errDesign) {
			return nil, err
		}
		if tally != nil {
			tally.Designs++
		}
	}
	return nil, errDesign
}

// DrawWeather makes a day on which people call: 65 to 112 °F outdoors, rooms of 70 to 82 °F.
func DrawWeather(rng *rand.Rand) Weather {
	elevation := uniform(rng, 0, 1500)
	if rng.Float64() < 0.15 {
		elevation = uniform(rng, 1500, 7000)
	}
	dry := 76 + 2.5*clamp(rng.NormFloat64(), -2.4, 2.4)
	// From 43 to 67 % relative humidity a room's wet bulb is 12.5 to 7 °F below.
	wet := dry - clamp(11.5+2.5*rng.NormFloat64(), 6, 19)
	return Weather{
		Outdoor:       quantity.Fahrenheit(clamp(88+9.5*rng.NormFloat64(), 65, 112)),
		ReturnDryBulb: quantity.Fahrenheit(dry), ReturnWetBulb: quantity.Fahrenheit(wet),
		Atmosphere: quantity.AtmosphereAt(quantity.Feet(math.Round(elevation))),
	}
}

// Designation names the refrigerant.
func (m *Machine) Designation() string { return m.fluid.Designation }

// Metering is the kind of expansion device.
func (m *Machine) Metering() refrigerant.Metering { return m.device.kind }
