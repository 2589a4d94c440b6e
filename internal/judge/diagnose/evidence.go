package diagnose

import (
	"math"
	"slices"

	"github.com/satline/satline/internal/judge/diagnose/population"
	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func deviceOf(m refrigerant.Metering) signature.Device {
	if m == refrigerant.TXV || m == refrigerant.EXV {
		return signature.Valve
	}
	return signature.Fixed
}

// A Fluid turns pressures into saturation temperatures; a
// *refrigerant.Refrigerant is one.
type Fluid interface {
	BubbleTemperature(quantity.Pressure) (quantity.Temperature, error)
	DewTemperature(quantity.Pressure) (quantity.Temperature, error)
	Designation() string
}

// Evidence is what is known of a machine. Whatever is not known is left out.
type Evidence struct {
	// Input holds the readings and the saturation temperatures that follow
	// from the gauges, each with standard uncertainty.
	readcheck.Input
	Airflow        *quantity.Uncertain[quantity.VolumeFlow]
	Power          *quantity.Uncertain[quantity.Power]
	ExternalStatic *quantity.Uncertain[quantity.StaticPressure]
	// Current is that of the compressor alone; it is judged against RatedLoadCurrent of
	// the label, and not at all without it.
	Current          *quantity.Uncertain[quantity.Current]
	RatedLoadCurrent quantity.Current

	// Fluid is the refrigerant named; Others are those it could be taken for.
	Fluid  Fluid
	Others []Fluid
	// Atmosphere that the gauges were taken to count from; AtmosphereAssumed
	// says that nobody stated it.
	Atmosphere        quantity.Pressure
	AtmosphereAssumed bool

	Metering          refrigerant.Metering
	HeatPump          bool
	NominalCapacity   quantity.Power
	RatedAirflow      quantity.VolumeFlow
	MaxExternalStatic quantity.StaticPressure
	// Bore is that of the fixed restrictor that is fitted, RatedBore that of the label.
	Bore, RatedBore quantity.Length
	// Charge of the label.
	Charge quantity.Mass

	// Expected is what this very machine should read when sound, by its label,
	// by a rule, or by a model fitted to it.
	Expected []Expectation

	// Known is what is known of how it is built, besides refrigerant and metering.
	Known population.Known
	// Normal holds rows of the maker's table of normal operating pressures. They outrank
	// what machines of its kind read.
	Normal []NormalReading

	Seen Sights
	// Answers to looks and tests, each at most once.
	Answers []Answer
	Doubts  []readcheck.Doubt

	// Moved is the net mass of refrigerant added in this visit before the readings, and
	// before those of Earlier where there are such; negative where more was recovered.
	Moved quantity.Mass

	// Response is that of this machine to what was moved; nil before anything was.
	Response *Response

	// Earlier holds the readings before something was done in this visit.
	Earlier *Earlier
	// House are faults of somebody's own beside those of the library.
	House []HouseFault
	// Compared says that it is one of several cases that may be so; see Diagnosis.Weight.
	Compared bool
	// NoPairs weighs single causes only, and does not ask what a reading that was not taken
	// would be worth.
	NoPairs bool
}

// An Answer is what a look or test said of the machine and of the instruments that
// the readings were taken with. Code is that of the Measurement that asked.
type Answer struct {
	Code string
	Yes  bool
}

// An Expectation is what a sound machine should read.
type Expectation struct {
	Feature signature.Feature
	Value   float64 // as the feature: K, or percent
	Std     float64
	// AtRated says that Value holds at the rated conditions, as a label's
	// subcooling does, not in the weather of the visit.
	AtRated bool
	// Rule says that it is a rule for machines of any make, not a statement of this one.
	Rule bool
	// Weather in which Value holds, where it is stated and is neither of these.
	Weather *signature.Weather
}

// Earlier is the state before a change.
type Earlier struct {
	readcheck.Input
	Airflow *quantity.Uncertain[quantity.VolumeFlow]
	Power   *quantity.Uncertain[quantity.Power]
	// ExternalStatic, Current and Expected are as now where they are nil.
	ExternalStatic *quantity.Uncertain[quantity.StaticPressure]
	Current        *quantity.Uncertain[quantity.Current]
	Expected       []Expectation
	// Done since then.
	Done []Action
	// Kept may be nil.
	Kept *Kept
}

// An Action is something done to the machine during the visit.
type Action struct {
	Kind ActionKind
	// Mass moved, for the two kinds that move refrigerant.
	Mass quantity.Mass
}

// ActionKind is what was done.
type ActionKind int

// The actions.
const (
	ChargeAdded ActionKind = iota + 1
	ChargeRecovered
	IndoorAirRestored   // filter changed, coil cleaned, damper opened
	OutdoorCoilCleaned  // or fan mended
	RestrictionRemoved  // drier changed, valve opened, device cleaned
	FeedReduced         // bulb strapped on, restrictor seated or changed
	CircuitRecharged    // recovered, evacuated, weighed in anew
	InstrumentCorrected // a clamp, gauge or wick put right
)

// Sights are what was seen and heard. False means no, or not looked at.
type Sights struct {
	FilterDirty, OutdoorCoilDirty   bool
	CoilIced, CoilWet               bool
	PanelsOff, DoorsOpen            bool
	EconomizerOpen                  bool
	SealedSystemOpened, OilStains   bool
	ChargeWeighed                   bool // the whole of it, into an evacuated circuit
	FrozenComplaint, WaterComplaint bool
	NotCoolingComplaint             bool
	// CompressorStill, OutdoorFanStill and BlowerStill are fed and do not turn.
	CompressorStill, OutdoorFanStill, BlowerStill, CompressorBackwards bool
}

// turns reports whether what turns and what does not was seen, which tells by itself.
func (s *Sights) turns() bool {
	return s.CompressorStill || s.OutdoorFanStill || s.BlowerStill || s.CompressorBackwards
}

// setAirflow is how far, in percent, the airflow of a sound machine is off the rated one of
// its label: a speed tap, a duct system; common practice, no source.
const setAirflow = 6

// asCharged is how far, in kelvin, a machine that is charged right reads from the subcooling or
// approach of its label: a charge within some per cent, at 0.4 K for each. ANSI/ACCA 5 QI allows
// 3 °F (from memory).
const asCharged = 0.6

// expected adds what the label says of the airflow: a machine made for 350 CFM per ton is not
// short of air. What it says of the charge is meant of the right one.
func (e *Evidence) expected() []Expectation {
	out := slices.Clone(e.Expected)
	for i := range out {
		if x := &out[i]; x.AtRated && (x.Feature == signature.Subcooling || x.Feature == Approach) {
			x.Std = math.Hypot(x.Std, asCharged)
		}
	}
	if e.RatedAirflow > 0 && e.NominalCapacity > 0 {
		usual := float64(e.NominalCapacity) / wattsPerTon * flowPerTon
		out = append(out, Expectation{
			Feature: signature.Airflow,
			Value:   100 * math.Log(float64(e.RatedAirflow)/usual), Std: setAirflow,
		})
	}
	return out
}

// A Response is by how many kelvin a whole charge would change what the charge is read from, by
// how the machine has answered so far.
type Response struct {
	Feature   signature.Feature
	PerCharge Spread
}
