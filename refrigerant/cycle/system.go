package cycle

import (
	"errors"
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/physics/coil"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A System is a whole machine: compressor, coils, lines, expansion device and the
// charge in them. Get one from DesignResidential or Design: nil and the zero value are no
// machine, of which everything is zero and nothing can be solved. It is immutable and
// safe for concurrent use.
type System struct {
	plant plant
	spec  Spec
	r     *refrigerant.Refrigerant
}

// ErrNoSystem is the error where a System or Fitted is nil or the zero one.
var ErrNoSystem = errors.New(
	"no machine; make one with cycle.DesignResidential or cycle.Design, and fit it with cycle.Fit",
)

func (s *System) made() bool { return s != nil && s.plant.fluid != nil }

// orZero lets a nil System answer as the zero one does.
func (s *System) orZero() *System {
	if s == nil {
		return new(System)
	}
	return s
}

// Spec returns what s was designed to, with the defaults filled in.
func (s *System) Spec() Spec { return s.orZero().spec }

// Refrigerant returns the refrigerant of s.
func (s *System) Refrigerant() *refrigerant.Refrigerant { return s.orZero().r }

// Charge returns the correct charge by the model's count, which runs low: oil holds none,
// and Zivi's void fraction holds little liquid. Compare shares of it rather than kilograms.
func (s *System) Charge() quantity.Mass { return quantity.Mass(s.orZero().plant.correct) }

// RatedFlow returns the flow of refrigerant at the rating conditions.
func (s *System) RatedFlow() quantity.MassFlow { return quantity.MassFlow(s.orZero().plant.rated) }

// Compressor returns the compressor.
func (s *System) Compressor() Compressor { return s.orZero().plant.compressor }

// ShortTube returns the restrictor, the zero one where there is none.
func (s *System) ShortTube() ShortTube { return s.orZero().plant.device.tube }

// ExpansionValve returns the valve, the zero one where there is none.
func (s *System) ExpansionValve() ExpansionValve { return s.orZero().plant.device.valve }

// CapillaryTube returns the capillary, the zero one where there is none.
func (s *System) CapillaryTube() CapillaryTube { return s.orZero().plant.device.capillary }

// Solve returns the steady state of s under conditions and with faults. It allocates
// nothing. The error is a *RangeError: a condition or a fault is outside its range.
// There is always a state; where it is none that the machine runs on in, as one at which
// it stops on a pressure control, Operating.Limit says so.
func (s *System) Solve(c Conditions, f Faults) (Operating, error) {
	o, _, err := s.solve(c, f)
	return o, err
}

// solve does that and tells in how many rounds of the circuit.
func (s *System) solve(c Conditions, f Faults) (Operating, int, error) {
	if !s.made() {
		return Operating{}, 0, ErrNoSystem
	}
	t := trial{plant: &s.plant}
	if err := s.ask(&t.question, c, f); err != nil {
		return Operating{}, 0, err
	}
	o := t.operating(t.close())
	return o, t.work, nil
}

// ask puts conditions and faults into numbers.
func (s *System) ask(q *question, c Conditions, f Faults) error {
	if err := c.check(); err != nil {
		return err
	}
	if err := f.check(); err != nil {
		return err
	}
	air, err := c.air()
	if err != nil {
		return err
	}
	p := &s.plant
	flow := c.Airflow
	if flow == 0 {
		flow = s.spec.Airflow
	}
	if err := limit.Within(
		"airflow", flow, s.spec.Airflow/20, s.spec.Airflow*3,
		"near the rated airflow of the machine",
	); err != nil {
		return err
	}
	v := float64(flow) * (1 + f.IndoorAirflow)
	q.air = coil.NewAir(air)
	q.returnT, q.returnW = float64(c.ReturnDryBulb), air.HumidityRatio()
	q.dryAir = float64(air.DryAirFlow(quantity.VolumeFlow(v)))
	q.airUA = p.evaporator.at(q.dryAir, p.airExponent) * (1 - f.EvaporatorFouling)
	q.refUA = p.evaporator.refUA
	// Against a blocked filter a blower takes less power, but less so than it moves less air.
	q.blower = p.blower * math.Sqrt(v/float64(s.spec.Airflow))

	q.outdoorT = float64(c.OutdoorDryBulb.Add(f.Recirculation))
	// The fan moves a volume; its mass thins with heat and height.
	density := outdoorDensity(q.outdoorT, float64(air.Pressure())) /
		outdoorDensity(ratedOutdoor, float64(quantity.StandardAtmosphere))
	outdoor := p.condenser.air * density * (1 + f.OutdoorAirflow)
	q.outdoorAir = outdoor * outdoorHeatCapacity
	q.outdoorUA = p.condenser.at(outdoor, p.airExponent) * (1 - f.CondenserFouling)
	q.outdoorRefUA = p.condenser.refUA
	q.outdoorFanW = p.fan

	q.leak = f.CompressorLeak
	q.size = 1 + f.MeteringSize
	q.stuck = -1
	if f.ValveStuck {
		q.stuck = f.ValveOpening
	}
	q.bulb = f.BulbOff
	q.setting = float64(f.ValveSetting)
	q.liquidDrop = p.liquid.drop + float64(f.LiquidRestriction)/(p.rated*p.rated)*p.ratedLiquid
	q.suctionDrop = p.suction.drop + float64(f.SuctionRestriction)/(p.rated*p.rated)*p.ratedGas
	q.nonCondensable = p.otherGas(f.NonCondensables, q.outdoorT)
	q.charge = p.correct * (1 + f.Charge)
	q.lowest = p.fluid.LowPressure() * 1.05
	q.highest = p.fluid.HighPressure() * 0.995
	return nil
}

const (
	outdoorHeatCapacity = 1012.0 // J/(kg K), air with some moisture
	ratedOutdoor        = 308.15 // K
)

func outdoorDensity(t, p float64) float64 { return p / (287.05 * t) }

// otherGas is the pressure that other gas takes up in the condenser, where the
// liquid seal of the outlet keeps it: the amount by the ideal-gas law in the share of
// the condenser that is not liquid, about 0.8, at about the condensing temperature.
func (p *plant) otherGas(share, outdoorT float64) float64 {
	const (
		gasSpace = 0.8
		filledAt = 294.26 // 70 °F
		above    = 12     // K, condensing over outdoor air
	)
	return share * float64(
		quantity.StandardAtmosphere,
	) * p.volume / (gasSpace * p.condenser.volume) * (outdoorT + above) / filledAt
}
