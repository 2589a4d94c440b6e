package charge

import (
	"errors"
	"time"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// This file holds every figure and rule of the trade that the package works by,
// each with its source. The settings of a numerical method stand with the
// method, and the table of target superheat in a file of its own.

// The sources.
var (
	// cecTarget was not found in print; it lies within 1 °F of the chart of fieldCharts.
	cecTarget = fact.Source{
		Title:    "California Energy Commission, Reference Appendices, Table RA3.2-2",
		Standing: fact.FromMemory,
	}
	// cecProcedure was read in CEC-400-2008-004-CMF, pages RA3-9 to RA3-16.
	cecProcedure = fact.Source{
		Title:    "California Energy Commission, Reference Appendices 2008, RA3.2.2",
		Standing: fact.Published,
	}
	// fieldCharts are the instructions that come with machines: superheat chart, indoor
	// conditions, adders for the line set.
	fieldCharts = fact.Source{
		Title:    "charging instructions that manufacturers print for their machines",
		Standing: fact.Published,
	}
	recoveryRule = fact.Source{
		Title:    "40 CFR 82.156, Table 1, with the classes of 40 CFR 82.152 (EPA section 608)",
		Standing: fact.Published,
	}
	tubeStandard = fact.Source{
		Title: "ASTM B280, seamless copper tube for air conditioning and refrigeration field " +
			"service",
		Standing: fact.Published,
	}
	computedAdder = fact.Source{
		Title:    "computed from liquid density and tube bore (ASTM B280)",
		Standing: fact.Published,
	}
	nitrogenSource = fact.Source{
		Title: "constant volume, second virial coefficient by Tsonopoulos, " +
			"AIChE Journal 20 (1974) 263",
		Standing: fact.FromMemory,
	}
	fieldTests = fact.Source{
		Title: "IEC 60335-2-40 and UL 60335-2-40, field tests of circuits with flammable " +
			"refrigerant (annex DD), as manufacturers' instructions reprint them",
		Standing: fact.Published,
	}
	federalSpecification = fact.Source{
		Title: "Unified Facilities Guide Specification UFGS-15182, Refrigerant Piping, " +
			"3.3.2 and 3.3.3",
		Standing: fact.Published,
	}
	criticalPoint = fact.Source{
		Title: "critical temperature by the equation of state of the refrigerant, " +
			"against 140 °F",
		Standing: fact.Published,
	}
	safetyClasses = fact.Source{
		Title:    "ANSI/ASHRAE Standard 34, safety groups",
		Standing: fact.FromMemory,
	}
	dischargeLimit = fact.Source{
		Title: "ACHR News, Compressor discharge temperature reflects how equipment is " +
			"operating",
		Standing: fact.Published,
	}
	practice  = fact.Source{Standing: fact.CommonPractice}
	unitLabel = fact.Source{Title: "the unit's label", Standing: fact.Label}
)

// Targets and tolerances.
var (
	// a target superheat below this is not a target: the table has no figure, and liquid could
	// reach the compressor before the charge shows
	targetFloor = figure[quantity.TemperatureDelta]{
		"target-floor", quantity.FahrenheitDelta(5), cecProcedure,
	}
	// a fixed restrictor is in charge within this of its target superheat, either way
	superheatTolerance = figure[quantity.TemperatureDelta]{
		"superheat-tolerance", quantity.FahrenheitDelta(5), cecProcedure,
	}
	// a valve system is in charge within this of its target subcooling, either way
	subcoolingTolerance = figure[quantity.TemperatureDelta]{
		"subcooling-tolerance", quantity.FahrenheitDelta(3), cecProcedure,
	}
	// a system is in charge within this of its label's approach, either way, where the label
	// states no tolerance
	approachTolerance = figure[quantity.TemperatureDelta]{
		"approach-tolerance", quantity.FahrenheitDelta(3), practice,
	}
	// subcooling of a valve system whose label cannot be read; labels range from 6 to 14 °F
	generalSubcooling = figure[quantity.TemperatureDelta]{
		"general-subcooling", quantity.FahrenheitDelta(10), practice,
	}
	// standard uncertainty of the general subcooling: a rectangular spread of 4 °F either way
	// (GUM 4.3.7)
	generalSubcoolingDoubt = figure[quantity.TemperatureDelta]{
		"general-subcooling-doubt", quantity.FahrenheitDelta(2.3), practice,
	}
)

// Verdicts.
var (
	// probability from which a verdict is given; below it the instruments cannot tell
	decisionLevel = figure[float64]{"decision-level", 0.90, practice}
	// a superheat up to this is no superheat, however good the instruments: a wet suction line
	// reads within a degree or two of saturation
	wetLine = figure[quantity.TemperatureDelta]{"wet-line", quantity.FahrenheitDelta(2), practice}
	// a subcooling above this on a fixed restrictor is liquid stacked in the condenser
	stackedSubcooling = figure[quantity.TemperatureDelta]{
		"stacked-subcooling", quantity.FahrenheitDelta(20), practice,
	}
	// the best standard uncertainty that a superheat or a subcooling read in the field can have
	finestField = figure[quantity.TemperatureDelta]{
		"finest-field-reading", quantity.FahrenheitDelta(0.3), practice,
	}
)

// coverage is how many standard uncertainties make a difference certain enough
// to act on: 2, about 95 % (GUM 6.3.3).
const coverage = 2

// Dosing.
var (
	// refrigerant in a comfort cooling machine per ton of nominal capacity, where the label
	// cannot be read; 2 to 4 lb is usual
	chargePerTon = figure[quantity.Mass]{"charge-per-ton", quantity.Pounds(2.8), practice}
	// factor of doubt on the charge per ton, one standard deviation of its logarithm
	chargePerTonFactor = figure[float64]{"charge-per-ton-factor", 1.3, practice}
	// standard uncertainty of what a machine's whole charge is by its label, for the line set
	// and what was done to it since, as a part of the charge
	labelChargeDoubt = figure[float64]{"label-charge-doubt", 0.05, practice}
	// about what the superheat of a starved coil comes to at most: the return air above the coil
	starvedMost = figure[quantity.TemperatureDelta]{
		"starved-most", quantity.FahrenheitDelta(45), practice,
	}
	// a value that moves by less than this part of what its gain leads one to expect does not
	// answer to the charge
	noResponse = figure[float64]{"no-response", 0.25, practice}
	// fall of superheat near its target for one hundredth of the whole charge added, on a fixed
	// restrictor; it grows steeper towards flooding
	superheatGain = figure[quantity.TemperatureDelta]{
		"superheat-gain", quantity.FahrenheitDelta(1), practice,
	}
	// rise of subcooling for one hundredth of the whole charge added, on a valve
	subcoolingGain = figure[quantity.TemperatureDelta]{
		"subcooling-gain", quantity.FahrenheitDelta(0.6), practice,
	}
	// fall of the approach for one hundredth of the whole charge added
	approachGain = figure[quantity.TemperatureDelta]{
		"approach-gain", quantity.FahrenheitDelta(0.5), practice,
	}
	// factor of doubt on the three gains before a machine has shown its own, one standard
	// deviation of the logarithm
	gainFactor = figure[float64]{"gain-factor", 1.8, practice}
	// the most that is moved at once, as a part of the whole charge
	largestStep = figure[float64]{"largest-step", 0.10, practice}
	// net part of the whole charge moved without reaching the band, beyond which the charge is
	// recovered and weighed in
	mostMoved = figure[float64]{"most-moved", 0.30, practice}
	// the same of a machine that answers as it is recovered from: one that was overfilled may hold
	// half as much again, and nothing has leaked from it
	mostRecovered = figure[float64]{"most-recovered", 0.45, practice}
	// moves without reaching the band, after which something else is looked for
	mostMoves = figure[float64]{"most-moves", 6, practice}
	// the least that a charging scale and hoses can dose
	smallestDose = figure[quantity.Mass]{"smallest-dose", quantity.Ounces(0.5), practice}
	// probability accepted for one move to pass the far edge of the band
	overshootRisk = figure[float64]{"overshoot-risk", 0.05, practice}
)

// Weighing in.
var (
	// temperature of the liquid line at which its content is counted, where it is not given
	liquidLineTemperature = figure[quantity.Temperature]{
		"liquid-line-temperature", quantity.Fahrenheit(95), practice,
	}
	// standard uncertainty of the temperature of the liquid line over the season
	liquidLineDoubt = figure[quantity.TemperatureDelta]{
		"liquid-line-doubt", quantity.FahrenheitDelta(10), practice,
	}
	// standard uncertainty of a computed adder, as a part of it: manufacturers print 12 to 30 %
	// more than bore times density for R-22 and R-410A, with tube of thinner wall and the vapor
	// of the other line in it
	adderDoubt = figure[float64]{"adder-doubt", 0.15, fieldCharts}
	// what the small line holds where the metering device stands outdoors, as a part of what it
	// would hold full of liquid: it carries liquid and vapor then; printed adders for both
	// places lie between 0.45 and 0.8
	outdoorDeviceShare = figure[float64]{"outdoor-device-share", 0.6, fieldCharts}
	// standard uncertainty of that part
	outdoorDeviceDoubt = figure[float64]{"outdoor-device-doubt", 0.12, fieldCharts}
	// standard uncertainty of the bore of a tube within the tolerances of its standard
	boreDoubt = figure[quantity.Length]{"bore-doubt", quantity.Millimeters(0.05), tubeStandard}
)

// tubeSizes are the tubes of ASTM B280 in inches; those above 1 3/8 in from memory.
var tubeSizes = [...]tubeSize{
	{1. / 8, 0.030, 0}, {3. / 16, 0.030, 0}, {1. / 4, 0.030, 0.025}, {5. / 16, 0.032, 0},
	{3. / 8, 0.032, 0.030}, {1. / 2, 0.032, 0.035}, {5. / 8, 0.035, 0.040}, {3. / 4, 0.035, 0.042},
	{
		7. / 8, 0.045, 0.045,
	}, {1 + 1./8, 0.050, 0.050}, {1 + 3./8, 0.055, 0.055}, {1 + 5./8, 0.060, 0.060},
	{
		2 + 1./8, 0, 0.070,
	}, {2 + 5./8, 0, 0.080}, {3 + 1./8, 0, 0.090}, {3 + 5./8, 0, 0.100}, {4 + 1./8, 0, 0.110},
}

// A tubeSize has the wall of each temper in which it is made.
type tubeSize struct {
	outside, annealed, drawn float64
}

func (s tubeSize) wall(t Temper) float64 {
	switch t {
	case Annealed:
		return s.annealed
	case Drawn:
		return s.drawn
	}
	return 0
}

// Recovery: the classes, and inches of mercury below the standard atmosphere.
var (
	// the pressure of the saturated liquid at this temperature classes a refrigerant
	classTemperature = figure[quantity.Temperature]{
		"recovery-class-temperature", quantity.Fahrenheit(104), recoveryRule,
	}
	// low-pressure refrigerants are below this
	lowPressureBelow = figure[quantity.Pressure]{
		"low-pressure-below", quantity.PSIA(45), recoveryRule,
	}
	// medium-pressure refrigerants are below this
	mediumPressureBelow = figure[quantity.Pressure]{
		"medium-pressure-below", quantity.PSIA(170), recoveryRule,
	}
	// high-pressure refrigerants are up to this, very-high-pressure ones above
	highPressureBelow = figure[quantity.Pressure]{
		"high-pressure-below", quantity.PSIA(355), recoveryRule,
	}
	// from this whole charge on the deeper vacuum is asked for
	largeCharge = figure[quantity.Mass]{"large-charge", quantity.Pounds(200), recoveryRule}
	// inches of mercury, medium pressure, smaller charge
	mediumVacuum = figure[float64]{"medium-vacuum", 10, recoveryRule}
	// inches of mercury, medium pressure, large charge
	mediumLargeVacuum = figure[float64]{"medium-large-vacuum", 15, recoveryRule}
	// inches of mercury, high pressure, large charge; a smaller one is recovered to 0, and so is
	// very high pressure
	highLargeVacuum = figure[float64]{"high-large-vacuum", 10, recoveryRule}
	// absolute pressure that low-pressure machines are recovered to: 25 mm of mercury
	lowPressureTo = figure[quantity.Pressure]{
		"low-pressure-to", quantity.Microns(25000), recoveryRule,
	}
)

// Evacuation.
var (
	// vacuum at or below which a decay test begins
	decayStart = figure[quantity.Pressure]{"decay-start", quantity.Microns(500), fieldTests}
	// vacuum that a tight and dry circuit stays below; one that levels off above it is wet
	decayLimit = figure[quantity.Pressure]{
		"decay-limit", quantity.Microns(500), federalSpecification,
	}
	// shortest decay test; a rise past 1,500 microns within it fails at once
	decayTime = figure[time.Duration]{"decay-time", 10 * time.Minute, fieldTests}
	// time that a circuit holds the limit without the pump; a shorter test is sound only if no
	// rise that it leaves open would pass the limit by then
	decayHold = figure[time.Duration]{"decay-hold", time.Hour, federalSpecification}
	// difference of two vacuum readings that means nothing
	decayResolution = figure[quantity.Pressure]{"decay-resolution", quantity.Microns(25), practice}
)

// Pressure test.
var (
	// part of the absolute test pressure that a test must be able to show missing, or it shows
	// nothing
	testResolution = figure[float64]{"test-resolution", 0.01, practice}
	// part of the maximum allowable pressure that a joint made on site is tested under at least,
	// where the refrigerant is flammable
	jointPressure = figure[float64]{"joint-pressure", 0.25, fieldTests}
	// grams of refrigerant a year: a leak that the test of such a joint shows
	jointSensitivity = figure[float64]{"joint-sensitivity", 5, fieldTests}
	// shortest time for a pressure test to hold, with every joint made on site tested by bubbles
	// besides; federal specifications and some makers ask for 24 hours
	testTime = figure[time.Duration]{"test-time", time.Hour, fieldTests}
)

// Compressor care. The figures are general; those of the compressor's maker
// come before them.
var (
	leastSuperheat       = quantity.FahrenheitDelta(5)
	leastDischargeExcess = quantity.FahrenheitDelta(20)
	hotDischarge         = quantity.Fahrenheit(200)
	hottestDischarge     = quantity.Fahrenheit(225)
	coldEvaporating      = quantity.Fahrenheit(32)
	coldestEvaporating   = quantity.Fahrenheit(25)

	// Condensing temperatures that no sound machine has in weather for cooling, but on the
	// hottest days: makers' tables of normal pressures end near 130 °F at 115 °F outdoors, and
	// high-pressure switches open near 145 to 155 °F, from cutOut on.
	highCondensing    = quantity.Fahrenheit(130)
	highestCondensing = quantity.Fahrenheit(140)
	cutOut            = quantity.Fahrenheit(145)
)

// How far condensing stands over the outdoor air at most: sound machines run 10 to 30 °F over,
// and on the hottest days up to soundOver. In colder air than heldAgainst a head-pressure control
// holds it up where that air would have it (common practice, no source).
const (
	highestOver = quantity.TemperatureDelta(45 / 1.8)
	highOver    = quantity.TemperatureDelta(35 / 1.8)
	soundOver   = quantity.TemperatureDelta(25 / 1.8)
	heldAgainst = quantity.Temperature((65 + 459.67) / 1.8)
)

const (
	highRatio    fact.Times = 5
	highestRatio fact.Times = 10
)

// fullLoad is the rated-load current of the label: no limit, but worth a look above.
// overload is the most at which a separate overload relay may trip: NEC (NFPA 70)
// 440.52(A)(1), 140 percent of the rated-load current, from memory.
const (
	fullLoad quantity.Ratio = 1
	overload quantity.Ratio = 1.4
)

var necOverload = fact.Source{Title: "NEC (NFPA 70) 440.52(A)(1)", Standing: fact.FromMemory}

// hazards to a compressor, in the order in which they are told: first what stops the
// machine whatever else is found.
var hazards = []*hazard{
	&condensingHighest, &suctionVacuum, &dischargeHottest, &currentHighest, &ratioHighest,
	&evaporatingColdest, &floodback, &slugging, &condensingHigh, &superheatLow, &dischargeCool,
	&dischargeHot, &ratioHigh, &currentHigh, &evaporatingCold,
}

var (
	floodback = hazard{
		code: "floodback", grave: true, limit: wetLine.value,
		source: practice, holds: superheatNone, replaces: "superheat-low",
	}
	slugging = hazard{
		code: "slugging", grave: true, limit: wetLine.value,
		source: practice, holds: dipsToNone, replaces: "superheat-low",
	}
	dischargeHottest = hazard{
		code: "discharge-hottest", grave: true, stops: true, limit: hottestDischarge,
		source: dischargeLimit, holds: dischargeAbove(hottestDischarge), replaces: "discharge-hot",
	}
	ratioHighest = hazard{
		code: "compression-ratio-highest", grave: true, stops: true, limit: highestRatio,
		source: practice, holds: ratioAbove(highestRatio), replaces: "compression-ratio-high",
	}
	condensingHighest = hazard{
		code: "condensing-highest", grave: true, stops: true, limit: highestCondensing,
		source: practice, holds: condensingFar(highestCondensing, cutOut, highestOver),
		replaces: "condensing-high", ofHead: true,
	}
	condensingHigh = hazard{
		code: "condensing-high", limit: highCondensing,
		source: practice, cooling: true,
		holds: condensingFar(highCondensing, highestCondensing, highOver), ofHead: true,
	}
	currentHighest = hazard{
		code: "current-highest", grave: true, stops: true, limit: overload,
		source: necOverload, holds: currentAbove(overload), replaces: "current-high",
	}
	suctionVacuum = hazard{
		code: "suction-in-vacuum", grave: true, stops: true, limit: quantity.StandardAtmosphere,
		source: practice, holds: inVacuum,
	}
	evaporatingColdest = hazard{
		code: "evaporating-coldest", grave: true, limit: coldestEvaporating,
		source: practice, cooling: true, holds: evaporatingBelow(coldestEvaporating),
		replaces: "evaporating-cold",
	}
	superheatLow = hazard{
		code: "superheat-low", limit: leastSuperheat,
		source: practice, holds: superheatBelow(leastSuperheat),
	}
	dischargeCool = hazard{
		code: "discharge-cool", limit: leastDischargeExcess,
		source: practice, holds: dischargeSuperheatBelow(leastDischargeExcess),
	}
	dischargeHot = hazard{
		code: "discharge-hot", limit: hotDischarge,
		source: practice, holds: dischargeAbove(hotDischarge),
	}
	ratioHigh = hazard{
		code: "compression-ratio-high", limit: highRatio,
		source: practice, cooling: true, holds: ratioAbove(highRatio),
	}
	currentHigh = hazard{
		code: "current-high", limit: fullLoad,
		source: practice, holds: currentAbove(fullLoad),
	}
	evaporatingCold = hazard{
		code: "evaporating-cold", limit: coldEvaporating,
		source: practice, cooling: true, holds: evaporatingBelow(coldEvaporating),
	}
)

// Conditions of running.
var (
	// a machine runs this long without a stop before its readings count
	shortestRun = figure[time.Duration]{"shortest-run", 15 * time.Minute, cecProcedure}
	// after refrigerant is added or recovered the machine runs at least this long before the
	// next reading counts, and longer where its own time constant asks for it
	waitAfterMove = figure[time.Duration]{"wait-after-move", 15 * time.Minute, cecProcedure}
	// return air below this loads the coil too little to judge a charge by
	coldestReturn = figure[quantity.Temperature]{
		"coldest-return", quantity.Fahrenheit(70), fieldCharts,
	}
	// CFM of indoor air per ton of nominal capacity, below which the charge must not be judged;
	// later editions of the procedure ask 350 of new systems and 300 of altered ones
	leastAirflow = figure[float64]{"least-airflow", 300, cecProcedure}
	// a superheat above this starves a coil behind a valve, or behind a restrictor whose target
	// is not known; the metering device of a valve system passes from 4 to 25 °F where its maker
	// states no range
	starvedSuperheat = figure[quantity.TemperatureDelta]{
		"starved-superheat", quantity.FahrenheitDelta(25), cecProcedure,
	}
)

var (
	everyReading  = of(Superheat, Subcooling, Approach)
	liquidReading = of(Subcooling, Approach)
)

// Conditions that stand in the way of a method, in the order in which a
// technician would mend them.
var conditions = []*condition{
	&fluidNoLiquid, &fluidInVacuum, &fluidToxic, &heating, &circuitOpened, &coilIced, &panelsOff,
	&runShort, &justMoved, &coilWet, &fanCycling, &economizer, &doorsOpen, &airflowLow,
	&outdoorCold, &returnCold, &outdoorAbove, &wetBulbBelow, &wetBulbAbove, &targetTooLow,
	&targetNearFloor, &noLabelSubcooling, &noLabelApproach, &restriction, &valveFlooding,
	&filterDirty, &outdoorCoilDirty,
}

// unsuitable holds for a refrigerant that is refused for one reason.
func unsuitable(reason refrigerant.UnsuitableReason) func(*Situation) (any, bool) {
	return flag(func(s *Situation) bool {
		var why *refrigerant.UnsuitableError
		return s.Fluid != nil && errors.As(s.Fluid.ComfortCooling(), &why) && why.Reason == reason
	})
}

var (
	fluidNoLiquid = condition{
		code: "fluid-no-liquid-in-summer", spoils: true,
		weighIn: true,
		source:  criticalPoint, forbids: everyReading,
		holds: unsuitable(refrigerant.NoLiquidInSummer),
	}
	fluidInVacuum = condition{
		code: "fluid-in-vacuum", spoils: true,
		weighIn: true,
		source:  practice, forbids: everyReading,
		holds: unsuitable(refrigerant.InVacuum),
	}
	fluidToxic = condition{
		code: "fluid-toxic-indoors", spoils: true,
		weighIn: true,
		source:  safetyClasses, forbids: everyReading,
		holds: unsuitable(refrigerant.ToxicIndoors),
	}
	heating = condition{
		code:    "heating",
		weighIn: true,
		source:  practice, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.Heating }),
	}
	circuitOpened = condition{
		code: "circuit-opened", spoils: true,
		weighIn: true,
		source:  practice, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.SealedSystemOpened }),
	}
	coilIced = condition{
		code: "coil-iced", spoils: true,
		source: practice, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.CoilIced }),
	}
	panelsOff = condition{
		code: "panels-off", spoils: true,
		source: cecProcedure, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.PanelsOff }),
	}
	runShort = condition{
		code: "run-short", spoils: true,
		limit:  shortestRun.value,
		source: shortestRun.source, forbids: everyReading,
		holds: func(s *Situation) (any, bool) { return shorter(s.Running, shortestRun) },
	}
	justMoved = condition{
		code: "just-moved", spoils: true,
		limit:  waitAfterMove.value,
		source: waitAfterMove.source, forbids: everyReading,
		holds: func(s *Situation) (any, bool) { return shorter(s.SinceMove, waitAfterMove) },
	}
	coilWet = condition{
		code: "coil-wet", spoils: true,
		source: practice, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.CoilWet }),
	}
	fanCycling = condition{
		code: "condenser-fan-cycling", spoils: true,
		weighIn: true,
		source:  practice, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.CondenserFanCycling }),
	}
	economizer = condition{
		code: "economizer-open", spoils: true,
		source: practice, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.EconomizerOpen }),
	}
	doorsOpen = condition{
		code: "doors-open", spoils: true,
		source: practice, forbids: of(Superheat), doubts: liquidReading,
		holds: flag(func(s *Situation) bool { return s.DoorsOpen }),
	}
	airflowLow = condition{
		code:   "airflow-low",
		limit:  quantity.CFM(leastAirflow.value),
		source: leastAirflow.source, forbids: of(Superheat), doubts: liquidReading,
		holds: func(s *Situation) (any, bool) {
			if s.Airflow == nil || s.NominalCapacity <= 0 {
				return nil, false
			}
			least := leastAirflow.value * s.NominalCapacity.Tons()
			return s.Airflow.Value, s.Airflow.Value.CFM() < least
		},
	}
	outdoorCold = condition{
		code: "outdoor-cold", spoils: true,
		limit:   quantity.Fahrenheit(tableMinOutdoor),
		weighIn: true,
		source:  cecProcedure, forbids: everyReading,
		holds: func(s *Situation) (any, bool) {
			return measuredBelow(s.OutdoorDryBulb, quantity.Fahrenheit(tableMinOutdoor))
		},
	}
	returnCold = condition{
		code:    "return-cold",
		limit:   coldestReturn.value,
		weighIn: true,
		source:  coldestReturn.source, forbids: of(Superheat), doubts: liquidReading,
		holds: func(s *Situation) (any, bool) {
			return measuredBelow(s.ReturnDryBulb, coldestReturn.value)
		},
	}
	outdoorAbove = condition{
		code:    "outdoor-above-table",
		limit:   quantity.Fahrenheit(tableMaxOutdoor),
		weighIn: true,
		source:  cecTarget, forbids: of(Superheat),
	}
	wetBulbBelow = condition{
		code:    "wet-bulb-below-table",
		limit:   quantity.Fahrenheit(tableMinWetBulb),
		weighIn: true,
		source:  cecTarget, forbids: of(Superheat),
	}
	wetBulbAbove = condition{
		code:    "wet-bulb-above-table",
		limit:   quantity.Fahrenheit(tableMaxWetBulb),
		weighIn: true,
		source:  cecTarget, forbids: of(Superheat),
	}
	targetTooLow = condition{
		code:    "target-below-floor",
		limit:   targetFloor.value,
		weighIn: true,
		source:  cecProcedure, forbids: of(Superheat),
	}
	targetNearFloor = condition{
		code:     "target-near-floor",
		limit:    targetFloor.value,
		ofTarget: true,
		source:   cecTarget, doubts: of(Superheat),
		holds: targetWithinDoubtOfFloor,
	}
	noLabelSubcooling = condition{
		code:     "no-label-subcooling",
		ofTarget: true,
		source:   generalSubcooling.source, doubts: of(Subcooling),
		holds: flag(func(s *Situation) bool { return !s.LabelSubcooling }),
	}
	noLabelApproach = condition{
		code:    "no-label-approach",
		weighIn: true,
		source:  practice, forbids: of(Approach),
		holds: flag(func(s *Situation) bool { return !s.LabelApproach }),
	}
	restriction = condition{
		code:   "restriction-pattern",
		source: practice, forbids: everyReading,
		holds: starvedBesideStackedLiquid,
	}
	valveFlooding = condition{
		code:   "valve-flooding",
		source: practice, doubts: liquidReading,
		holds: func(s *Situation) (any, bool) {
			if MethodFor(s.Metering) != Subcooling || s.Superheat == nil {
				return nil, false
			}
			return s.Superheat.Value, Measurement{
				Method: Superheat,
				Value:  *s.Superheat,
			}.LiquidReturning()
		},
	}
	filterDirty = condition{
		code:   "filter-dirty",
		source: practice, doubts: everyReading,
		holds: flag(func(s *Situation) bool { return s.FilterDirty }),
	}
	outdoorCoilDirty = condition{
		code:   "outdoor-coil-dirty",
		source: practice, doubts: everyReading,
		holds: flag(func(s *Situation) bool { return s.OutdoorCoilDirty }),
	}
)

// Rules lists every figure and condition of the package with its source, in the
// order in which they are written down.
func Rules() []Rule {
	rules := []Rule{
		targetFloor.rule(), superheatTolerance.rule(), subcoolingTolerance.rule(),
		approachTolerance.rule(), generalSubcooling.rule(), generalSubcoolingDoubt.rule(),
		decisionLevel.rule(), wetLine.rule(), stackedSubcooling.rule(), finestField.rule(),
		chargePerTon.rule(), chargePerTonFactor.rule(), labelChargeDoubt.rule(), starvedMost.rule(),
		noResponse.rule(), superheatGain.rule(), subcoolingGain.rule(), approachGain.rule(),
		gainFactor.rule(), largestStep.rule(), mostMoved.rule(), mostRecovered.rule(),
		mostMoves.rule(),
		smallestDose.rule(), overshootRisk.rule(), liquidLineTemperature.rule(),
		liquidLineDoubt.rule(), adderDoubt.rule(), outdoorDeviceShare.rule(),
		outdoorDeviceDoubt.rule(), boreDoubt.rule(), classTemperature.rule(),
		lowPressureBelow.rule(), mediumPressureBelow.rule(), highPressureBelow.rule(),
		largeCharge.rule(), mediumVacuum.rule(), mediumLargeVacuum.rule(), highLargeVacuum.rule(),
		lowPressureTo.rule(), decayStart.rule(), decayLimit.rule(), decayTime.rule(),
		decayHold.rule(), decayResolution.rule(), testResolution.rule(), testTime.rule(),
		jointPressure.rule(), jointSensitivity.rule(), shortestRun.rule(), waitAfterMove.rule(),
		coldestReturn.rule(), leastAirflow.rule(), starvedSuperheat.rule(),
	}
	for _, c := range conditions {
		rules = append(rules, c.rule())
	}
	for _, h := range hazards {
		rules = append(rules, h.rule())
	}
	return rules
}
