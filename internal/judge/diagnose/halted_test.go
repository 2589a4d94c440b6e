package diagnose_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/simulate"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// Which readings a visit has.
type coverage int

const (
	eight coverage = iota // the usual ones
	noOutdoor
	four // two pressures and two lines
)

func (c coverage) strip(e *diagnose.Evidence) {
	if c >= noOutdoor {
		e.OutdoorDryBulb = nil
	}
	if c == four {
		e.ReturnDryBulb, e.ReturnWetBulb, e.SupplyDryBulb = nil, nil, nil
	}
}

// write puts gauge readings and what a gauge shows beside them into the evidence.
func write(t *testing.T, rng *rand.Rand, e *diagnose.Evidence, suction, liquid quantity.Pressure) {
	r := e.Fluid.(*refrigerant.Refrigerant)
	gauge := func(p quantity.Pressure) readcheck.Gauge {
		u := p.Gauge(e.Atmosphere).PlusMinus(quantity.PSIG(0.6))
		u.Value += quantity.PSIG(0.6 * rng.NormFloat64())
		return &u
	}
	saturation := func(at func(quantity.Pressure) (quantity.Temperature, error),
		g readcheck.Gauge) readcheck.Temp {
		x, err := at(g.Value.Absolute(e.Atmosphere))
		if err != nil {
			t.Fatal(err)
		}
		return degree(rng, float64(x), 0.3, 0)
	}
	e.SuctionPressure, e.LiquidPressure = gauge(suction), gauge(liquid)
	e.EvaporatingDew = saturation(r.DewTemperature, e.SuctionPressure)
	e.CondensingBubble = saturation(r.BubbleTemperature, e.LiquidPressure)
	e.CondensingDew = saturation(r.DewTemperature, e.LiquidPressure)
}

// degree is a reading off by a normal error.
func degree(rng *rand.Rand, kelvin, std, error float64) readcheck.Temp {
	u := quantity.Temperature(kelvin + error*rng.NormFloat64()).PlusMinus(quantity.KelvinDelta(std))
	return &u
}

// soundVisit is a visit to a sound machine, to write other readings over.
func soundVisit(t *testing.T, seed, i uint64) (*rand.Rand, diagnose.Evidence) {
	rng := rand.New(rand.NewPCG(seed, i))
	for {
		v, err := simulate.Draw(rng, simulate.Options{Bare: true})
		if err != nil {
			t.Fatal(err)
		}
		if len(v.Truth) == 0 {
			return rng, v.Evidence
		}
	}
}

// between draws evenly.
func evenly(rng *rand.Rand, low, high float64) float64 { return low + (high-low)*rng.Float64() }

// firstIs counts how often a signature, alone, is the first explanation.
func firstIs(
	t *testing.T, code diagnose.Code, n int, least float64, draw func(i uint64) diagnose.Evidence,
) {
	t.Helper()
	right, said := 0, 0.0
	others := map[string]int{}
	for i := range n {
		d := diagnose.Infer(draw(uint64(i)))
		said += d.Probability(code)
		if first := d.Explanations[0].Code(); first == string(code) {
			right++
		} else {
			others[first]++
		}
	}
	t.Logf(
		"%s: first in %d of %d, said %.2f on average; else %v", code, right, n, said/float64(n),
		others,
	)
	if float64(right) < least*float64(n) {
		t.Errorf("%s is first in %d of %d", code, right, n)
	}
}

// A circuit with vapor alone: the head is below that of liquid at the outdoor temperature by
// however little is left, the compressor draws the suction down, the air does not change.
func emptied(t *testing.T, i uint64, c coverage) diagnose.Evidence {
	rng, e := soundVisit(t, 41, i)
	outdoor, room := float64(e.OutdoorDryBulb.Value), float64(e.ReturnDryBulb.Value)
	full, err := e.Fluid.(*refrigerant.Refrigerant).BubblePressure(quantity.Temperature(outdoor))
	if err != nil {
		t.Fatal(err)
	}
	write(
		t, rng, &e, quantity.Pressure(evenly(rng, 0.5e5, 2.6e5)),
		full*quantity.Pressure(evenly(rng, 0.4, 0.9)),
	)
	e.SuctionLine = degree(rng, evenly(rng, room-5, max(room, outdoor)+1), 0.5, 0.5)
	e.LiquidLine = degree(rng, outdoor+evenly(rng, -1, 3), 0.5, 0.5)
	e.SupplyDryBulb = degree(rng, room-evenly(rng, 0, 1.6), 0.35, 0.35)
	c.strip(&e)
	return e
}

func TestNextToEmptyIsNamed(t *testing.T) {
	for _, c := range []coverage{eight, noOutdoor, four} {
		firstIs(
			t, diagnose.NextToEmpty, 100, 0.95,
			func(i uint64) diagnose.Evidence { return emptied(t, i, c) },
		)
	}
}

// A reading more or less does not change what is said of an empty circuit.
func TestNextToEmptyIsSteady(t *testing.T) {
	for i := range uint64(50) {
		full, less := diagnose.Infer(emptied(t, i, eight)), diagnose.Infer(emptied(t, i, noOutdoor))
		if a, b := full.Charge.Low, less.Charge.Low; math.Abs(a-b) > 0.1 {
			t.Errorf("visit %d: low %.2f with the outdoor air, %.2f without", i, a, b)
		}
	}
}

// A compressor that moves hardly anything, or nothing: the pressures are close together.
func idle(t *testing.T, i uint64, c coverage, current float64) diagnose.Evidence {
	rng, e := soundVisit(t, 43, i)
	r := e.Fluid.(*refrigerant.Refrigerant)
	outdoor, room := float64(e.OutdoorDryBulb.Value), float64(e.ReturnDryBulb.Value)
	at := func(kelvin float64) quantity.Pressure {
		p, err := r.DewPressure(quantity.Temperature(kelvin))
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	evaporating := min(room, outdoor) - evenly(rng, 0.5, 7)
	condensing := evaporating + evenly(rng, 0, 6)
	write(t, rng, &e, at(evaporating), at(condensing))
	e.SuctionLine = degree(rng, evenly(rng, evaporating, max(room, outdoor)), 0.5, 0.5)
	e.LiquidLine = degree(rng, outdoor+evenly(rng, -2, 2), 0.5, 0.5)
	e.SupplyDryBulb = degree(rng, room-evenly(rng, 0, 1.5), 0.35, 0.35)
	if current >= 0 {
		e.RatedLoadCurrent = quantity.Amperes(16)
		e.Current = &quantity.Uncertain[quantity.Current]{
			Value: quantity.Amperes(16 * current),
			Std:   0.3,
		}
	}
	c.strip(&e)
	return e
}

func TestNotPumpingIsNamed(t *testing.T) {
	for _, c := range []coverage{eight, noOutdoor, four} {
		firstIs(
			t, diagnose.NotPumping, 100, 0.95,
			func(i uint64) diagnose.Evidence { return idle(t, i, c, -1) },
		)
	}
}

// No current is a compressor that stands; a low one is that of a compressor that turns and
// moves nothing.
func TestCurrentTellsAStoppedCompressor(t *testing.T) {
	stopped := func(current float64) float64 {
		sum := 0.0
		const n = 40
		for i := range uint64(n) {
			d := diagnose.Infer(idle(t, i, eight, current))
			for _, m := range d.Marginals() {
				for _, f := range m.Faults {
					if m.Signature == diagnose.NotPumping && f.Fault.Code == "compressor-stopped" {
						sum += m.Chance * f.Chance / n
					}
				}
			}
		}
		return sum
	}
	none, low := stopped(0), stopped(0.45)
	t.Logf("stopped: %.2f without current, %.2f with a low one", none, low)
	if none < 0.9 || low > 0.1 {
		t.Errorf("a stopped compressor has %.2f without current, %.2f with a low one", none, low)
	}
}

// A compressor that hardly pumps is told from what else lowers the head by its current.
func TestCurrentIsEvidence(t *testing.T) {
	chance := func(load float64) (sum float64) {
		const n = 60
		for i := range uint64(n) {
			e := broken(
				t, 47, i,
				func(rng *rand.Rand) cycle.Faults {
					return cycle.Faults{CompressorLeak: evenly(rng, 0.55, 0.68)}
				},
			)
			e.RatedLoadCurrent = quantity.Amperes(16)
			e.Current = &quantity.Uncertain[quantity.Current]{
				Value: quantity.Amperes(16 * load),
				Std:   0.3,
			}
			d := diagnose.Infer(e)
			sum += d.Any(diagnose.NotPumping) / n
		}
		return sum
	}
	low, usual := chance(0.45), chance(0.8)
	t.Logf("not pumping: %.2f at a low current, %.2f at a usual one", low, usual)
	if low < usual+0.1 {
		t.Errorf("not pumping has %.2f at a low current, %.2f at a usual one", low, usual)
	}
}

func TestExchangedClampsAreNamed(t *testing.T) {
	firstIs(t, diagnose.ClampsSwapped, 100, 0.95, func(i uint64) diagnose.Evidence {
		_, e := soundVisit(t, 53, i)
		e.SuctionLine, e.LiquidLine = e.LiquidLine, e.SuctionLine
		return e
	})
}

func TestExchangedAirSensorsAreNamed(t *testing.T) {
	firstIs(t, diagnose.AirSensorsSwapped, 100, 0.85, func(i uint64) diagnose.Evidence {
		for ; ; i += 1000 {
			_, e := soundVisit(t, 59, i)
			if e.OutdoorDryBulb.Value-e.ReturnDryBulb.Value > 7 { // else it hardly matters
				e.OutdoorDryBulb, e.ReturnDryBulb = e.ReturnDryBulb, e.OutdoorDryBulb
				return e
			}
		}
	})
}

// broken is a machine of common make as the system model has it with a fault, past where its
// controls would stop it: a machine runs there for the minutes in which it is read.
func broken(t *testing.T, seed, i uint64, faults func(*rand.Rand) cycle.Faults) diagnose.Evidence {
	rng, e := soundVisit(t, seed, i)
	for {
		spec := cycle.Spec{
			Refrigerant: e.Fluid.(*refrigerant.Refrigerant), Capacity: e.NominalCapacity,
			Metering:   refrigerant.FixedRestrictor,
			Condensing: quantity.FahrenheitDelta(evenly(rng, 16, 25)),
			Superheat:  quantity.FahrenheitDelta(evenly(rng, 9, 16)),
			Subcooling: quantity.FahrenheitDelta(evenly(rng, 7, 11)),
		}
		if e.Metering != refrigerant.FixedRestrictor {
			spec.Metering = refrigerant.TXV
		}
		// As machines of the refrigerant are built: see package population.
		spec.Suction = quantity.Fahrenheit(evenly(rng, 48.5, 51.5))
		if name := spec.Refrigerant.Designation(); name == "R-22" || name == "R-134a" {
			spec.Suction = quantity.Fahrenheit(evenly(rng, 44.5, 48))
		}
		system, err := cycle.Design(spec)
		if err != nil {
			continue // a design that cannot be
		}
		o, err := system.Solve(cycle.Conditions{
			OutdoorDryBulb: e.OutdoorDryBulb.Value, ReturnDryBulb: e.ReturnDryBulb.Value,
			ReturnWetBulb: e.ReturnWetBulb.Value,
		}, faults(rng))
		if err != nil {
			continue
		}
		e.Expected = nil
		write(
			t, rng, &e, o.Suction.Pressure+(e.Atmosphere-quantity.StandardAtmosphere),
			o.Liquid.Pressure+(e.Atmosphere-quantity.StandardAtmosphere),
		)
		e.SuctionLine, e.LiquidLine = degree(rng, float64(o.Suction.Temperature), 0.5, 0.5),
			degree(rng, float64(o.Liquid.Temperature), 0.5, 0.5)
		e.SupplyDryBulb = degree(rng, float64(o.Supply), 0.35, 0.35)
		return e
	}
}

// An outdoor fan that does not turn makes a head that no dirt makes; nothing else is
// accused with it.
func TestDeadFanIsNamed(t *testing.T) {
	fan := 0.0
	const n = 60
	firstIs(t, diagnose.CondenserAir, n, 0.85, func(i uint64) diagnose.Evidence {
		e := broken(
			t, 61, i,
			func(rng *rand.Rand) cycle.Faults {
				return cycle.Faults{OutdoorAirflow: -evenly(rng, 0.8, 0.9)}
			},
		)
		d := diagnose.Infer(e)
		for _, m := range d.Marginals() {
			for _, f := range m.Faults {
				if f.Fault.Code == "condenser-fan-dead" {
					fan += m.Chance * f.Chance / n
				}
			}
		}
		return e
	})
	t.Logf("fan not turning: %.2f", fan)
	if fan < 0.5 {
		t.Errorf("a fan that does not turn has %.2f", fan)
	}
}

// A passage that is all but shut is a restriction, and accuses no gauge.
func TestShutValveAccusesNoInstrument(t *testing.T) {
	gauge := 0.0
	const n = 60
	firstIs(t, diagnose.Restriction, n, 0.7, func(i uint64) diagnose.Evidence {
		e := broken(
			t, 67, i,
			func(rng *rand.Rand) cycle.Faults {
				return cycle.Faults{MeteringSize: -evenly(rng, 0.7, 0.88)}
			},
		)
		d := diagnose.Infer(e)
		gauge += d.Any(
			diagnose.SuctionGauge, diagnose.LiquidGauge, diagnose.SuctionClamp,
			diagnose.LiquidClamp,
		) / n
		return e
	})
	t.Logf("an instrument: %.2f", gauge)
	if gauge > 0.05 {
		t.Errorf("an instrument is accused with %.2f", gauge)
	}
}

// A heat pump that heats on a cold day and was not said to.
func TestHeatingIsNamed(t *testing.T) {
	firstIs(t, diagnose.Heating, 100, 0.9, func(i uint64) diagnose.Evidence {
		rng, e := soundVisit(t, 71, i)
		r := e.Fluid.(*refrigerant.Refrigerant)
		at := func(kelvin float64) quantity.Pressure {
			p, err := r.DewPressure(quantity.Temperature(kelvin))
			if err != nil {
				t.Fatal(err)
			}
			return p
		}
		outdoor, room := evenly(rng, 268, 284), evenly(rng, 292, 296)
		evaporating, condensing := outdoor-evenly(rng, 6, 14), room+evenly(rng, 14, 28)
		e.HeatPump = true
		write(t, rng, &e, at(evaporating), at(condensing))
		e.OutdoorDryBulb, e.ReturnDryBulb = degree(rng, outdoor, 0.35, 0.35),
			degree(rng, room, 0.35, 0.35)
		e.ReturnWetBulb = degree(rng, room-evenly(rng, 6, 9), 0.4, 0.4)
		e.SuctionLine = degree(rng, evaporating+evenly(rng, 1, 9), 0.5, 0.5)
		e.LiquidLine = degree(rng, condensing-evenly(rng, 2, 12), 0.5, 0.5)
		e.SupplyDryBulb = degree(rng, room+evenly(rng, 8, 20), 0.35, 0.35)
		return e
	})
}

// Sound machines and those with usual faults are hardly ever taken for one without a cycle.
func TestHaltsAreNotCalledOnRunningMachines(t *testing.T) {
	n := 200
	if testing.Short() {
		n = 60
	}
	for _, a := range run(t, 73, n, simulated(simulate.Options{Bare: true})) {
		if p := a.d.Any(diagnose.NextToEmpty, diagnose.NotPumping, diagnose.Heating,
			diagnose.ClampsSwapped, diagnose.AirSensorsSwapped); p > 0.2 {
			t.Errorf(
				"%s of %.2f: %.2f for one without a cycle or with exchanged readings", a.truth(),
				a.visit.Loss, p,
			)
		}
	}
}
