package population

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// A Machine is one that was drawn.
type Machine struct {
	Kind        *Kind
	Refrigerant *refrigerant.Refrigerant
	Arrangement Arrangement
	Year        int
	SEER        float64
	// Nominal is the capacity on its label; what it has at the stage
	// it runs in is that of System.
	Nominal quantity.Power
	System  *cycle.System
	// Own is how it is installed and kept: sound, and not to the gram.
	Own cycle.Faults
	// SupplyGain is what the air gains from the cabinet and the plenum before it is read.
	SupplyGain quantity.TemperatureDelta
	// DischargeFall is what the discharge gas loses up to where a clamp fits.
	DischargeFall quantity.TemperatureDelta
}

// Index is that of the kind among Kinds.
func (m *Machine) Index() int {
	return slices.IndexFunc(Kinds, func(k Kind) bool { return k.Code == m.Kind.Code })
}

// Options of a draw. The zero Options draws from all.
type Options struct {
	// Metering is refrigerant.FixedRestrictor or refrigerant.TXV; an electronic valve is one of the
	// latter.
	Metering refrigerant.Metering
	// Refrigerant takes the place of that which the kind holds.
	Refrigerant *refrigerant.Refrigerant
}

// attempts is how often a machine of a kind is drawn before its kind is given up: with little
// air no coil evaporates as warm as some do.
const attempts = 50

// Draw makes a machine that can be.
func Draw(rng *rand.Rand, o Options) (Machine, error) {
	k := &Kinds[pick(rng, len(Kinds), func(i int) float64 {
		switch o.Metering {
		case refrigerant.FixedRestrictor:
			return Kinds[i].Weight * (1 - Kinds[i].valve)
		case refrigerant.TXV:
			return Kinds[i].Weight * Kinds[i].valve
		}
		return Kinds[i].Weight
	})]
	var last error
	for range attempts {
		m, err := k.draw(rng, o)
		if err == nil {
			return m, nil
		}
		last = err
	}
	return Machine{}, fmt.Errorf("no machine of kind %s in %d attempts: %w", k.Code, attempts, last)
}

// latest is the year in which the newest of machines were sold.
const latest = 2026

func (k *Kind) draw(rng *rand.Rand, o Options) (m Machine, err error) {
	m.Kind, m.Refrigerant, m.Arrangement = k, o.Refrigerant, choose(rng, k.arrangements)
	if m.Refrigerant == nil {
		if m.Refrigerant, err = refrigerant.Lookup(choose(rng, k.refrigerants)); err != nil {
			return m, err
		}
	}
	m.Year = k.From + int(float64(min(k.To, latest)-k.From)*rng.Float64())
	m.SEER = math.Round(2*(k.LeastSEER+(k.MostSEER-k.LeastSEER)*rng.Float64())) / 2
	tons := []float64{1.5, 2, 2.5, 3, 3, 3.5, 4, 5}[rng.IntN(8)]
	m.Nominal = quantity.Tons(tons)
	spec := cycle.Spec{
		Refrigerant: m.Refrigerant, Metering: o.Metering,
		Capacity:    m.Nominal * quantity.Power(k.capacity.draw(rng)),
		Airflow:     quantity.CFM(tons * k.airflow.draw(rng)),
		LineSet:     quantity.Feet(Spread{28, 12, 8, 75}.draw(rng)),
		HeatPump:    rng.Float64() < 0.35,
		Accumulator: rng.Float64() < 0.05, Microchannel: rng.Float64() < k.microchannel,
		Superheat: quantity.FahrenheitDelta(Spread{12, 2, 7, 17}.draw(rng)),
		Compressor: cycle.Compressor{
			Best: k.efficiency.draw(rng), BestRatio: Spread{2.8, 0.2, 2.3, 3.3}.draw(rng),
			HeatLoss:  Spread{0.07, 0.025, 0.02, 0.14}.draw(rng),
			Clearance: Spread{0.033, 0.008, 0.02, 0.05}.draw(rng),
		},
	}
	if spec.Metering == 0 {
		spec.Metering = refrigerant.FixedRestrictor
		if rng.Float64() < k.valve {
			spec.Metering = refrigerant.TXV
		}
	}
	if spec.Metering == refrigerant.TXV {
		spec.Superheat = quantity.FahrenheitDelta(Spread{11, 2.3, 6, 17}.draw(rng))
		spec.ValveGradient = quantity.FahrenheitDelta(Spread{6, 1.2, 3, 9}.draw(rng))
		spec.ValveSize = Spread{1.45, 0.16, 1.15, 1.9}.draw(rng)
		if rng.Float64() < 0.15 {
			spec.Metering, spec.ValveGradient = refrigerant.EXV, 0
		}
	}
	if m.Arrangement != Split {
		spec.Packaged, spec.LineSet = true, quantity.Feet(5)
	}
	// The default of AHRI 210/240 is 365 W per 1000 CFM; what is installed takes more as
	// often as less.
	spec.BlowerPower = quantity.Power(spec.Airflow.CFM() * Spread{0.38, 0.08, 0.2, 0.55}.draw(rng))
	evaporating, condensing := k.Evaporating.draw(rng), k.Condensing.draw(rng)
	// The air leaves the condenser with 0.6 to 0.8 of the difference to where it condenses;
	// it takes some 1.25 times the capacity.
	rise := condensing * Spread{0.7, 0.05, 0.58, 0.8}.draw(rng)
	spec.OutdoorAirflow = quantity.CFM(spec.Capacity.Tons() * min(2400, 1.25*12000/(1.05*rise)))
	spec.Subcooling = quantity.FahrenheitDelta(Spread{9.5, 2, 5, 14}.draw(rng))
	if err := place(&spec, evaporating, condensing); err != nil {
		return m, err
	}
	m.Own = cycle.Faults{
		Charge: 0.025 * rng.NormFloat64(), IndoorAirflow: 0.05 * rng.NormFloat64(),
		OutdoorAirflow:   0.04 * rng.NormFloat64(),
		CondenserFouling: 0.08 * rng.Float64(), EvaporatorFouling: 0.06 * rng.Float64(),
	}
	m.SupplyGain = quantity.FahrenheitDelta(Spread{0.7, 0.6, 0, 2.5}.draw(rng))
	// Some inches off the shell: common practice, no source.
	m.DischargeFall = quantity.FahrenheitDelta(Spread{2.5, 1.5, 0, 6}.draw(rng))
	m.System, err = cycle.Design(spec)
	return m, err
}

// place sets dew and bubble point so that the means are those of the kind, in °F and °F over
// the rated outdoor air: the first 0.4 of the glide below the dew point, as evaporation
// begins at a quality of about 0.2.
func place(s *cycle.Spec, evaporating, condensing float64) error {
	glide := func(t quantity.Temperature) (quantity.TemperatureDelta, error) {
		p, err := s.Refrigerant.DewPressure(t)
		if err != nil {
			return 0, err
		}
		return s.Refrigerant.Glide(p)
	}
	low, err := glide(quantity.Fahrenheit(evaporating))
	if err != nil {
		return err
	}
	outdoor := cycle.RatingConditions().OutdoorDryBulb
	high, err := glide(outdoor.Add(quantity.FahrenheitDelta(condensing)))
	if err != nil {
		return err
	}
	s.Suction = quantity.Fahrenheit(evaporating).Add(0.4 * low)
	s.Condensing = quantity.FahrenheitDelta(condensing) - high/2
	s.Subcooling = min(s.Subcooling, 0.65*s.Condensing)
	return nil
}

func (s Spread) draw(rng *rand.Rand) float64 {
	return min(max(s.Mean+s.Std*rng.NormFloat64(), s.Low), s.High)
}

func choose[T any](rng *rand.Rand, of []share[T]) T {
	return of[pick(rng, len(of), func(i int) float64 { return of[i].weight })].of
}

// pick draws an index by its weight.
func pick(rng *rand.Rand, n int, weight func(int) float64) int {
	total := 0.0
	for i := range n {
		total += weight(i)
	}
	x := rng.Float64() * total
	for i := range n {
		if x -= weight(i); x < 0 {
			return i
		}
	}
	return n - 1
}
