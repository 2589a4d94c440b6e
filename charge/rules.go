package charge

import (
	"errors"
	"time"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// This file holds every figure and rule of the trade that the package works by,
// each with its source. The settings of a numerical method stand with the
// method, and the table of target superheat in a file of its own.

// The sources.
var (
	// cecTarget was not found in print; it lies within 1 °F of the chart of fieldCharts.
	cecTarget = Source{"California Energy Commission, Reference Appendices, Table RA3.2-2", FromMemory}
	// cecProcedure was read in CEC-400-2008-004-CMF, pages RA3-9 to RA3-16.
	cecProcedure = Source{"California Energy Commission, Reference Appendices 2008, RA3.2.2", Published}
	// fieldCharts are the instructions that come with machines: superheat chart, indoor
	// conditions, adders for the line set.
	fieldCharts          = Source{"charging instructions that manufacturers print for their machines", Published}
	recoveryRule         = Source{"40 CFR 82.156, Table 1, with the classes of 40 CFR 82.152 (EPA section 608)", Published}
	tubeStandard         = Source{"ASTM B280, seamless copper tube for air conditioning and refrigeration field service", Published}
	computedAdder        = Source{"computed from liquid density and tube bore (ASTM B280)", Published}
	nitrogenSource       = Source{"constant volume, second virial coefficient by Tsonopoulos, AIChE Journal 20 (1974) 263", FromMemory}
	fieldTests           = Source{"IEC 60335-2-40 and UL 60335-2-40, field tests of circuits with flammable refrigerant (annex DD), as manufacturers' instructions reprint them", Published}
	federalSpecification = Source{"Unified Facilities Guide Specification UFGS-15182, Refrigerant Piping, 3.3.2 and 3.3.3", Published}
	criticalPoint        = Source{"critical temperature by the equation of state of the refrigerant, against 140 °F", Published}
	safetyClasses        = Source{"ANSI/ASHRAE Standard 34, safety groups", FromMemory}
	practice             = Source{"", CommonPractice}
	unitLabel            = Source{"the unit's label", Label}
)

// Targets and tolerances.
var (
	targetFloor = figure[quantity.TemperatureDelta]{
		"target-floor", "a target superheat below this is not a target: the table has no figure, and liquid could reach the compressor before the charge shows",
		quantity.FahrenheitDelta(5), cecProcedure,
	}
	superheatTolerance = figure[quantity.TemperatureDelta]{
		"superheat-tolerance", "a fixed restrictor is in charge within this of its target superheat, either way",
		quantity.FahrenheitDelta(5), cecProcedure,
	}
	subcoolingTolerance = figure[quantity.TemperatureDelta]{
		"subcooling-tolerance", "a valve system is in charge within this of its target subcooling, either way",
		quantity.FahrenheitDelta(3), cecProcedure,
	}
	approachTolerance = figure[quantity.TemperatureDelta]{
		"approach-tolerance", "a system is in charge within this of its label's approach, either way, where the label states no tolerance",
		quantity.FahrenheitDelta(3), practice,
	}
	generalSubcooling = figure[quantity.TemperatureDelta]{
		"general-subcooling", "subcooling of a valve system whose label cannot be read; labels range from 6 to 14 °F",
		quantity.FahrenheitDelta(10), practice,
	}
	generalSubcoolingDoubt = figure[quantity.TemperatureDelta]{
		"general-subcooling-doubt", "standard uncertainty of the general subcooling: a rectangular spread of 4 °F either way (GUM 4.3.7)",
		quantity.FahrenheitDelta(2.3), practice,
	}
)

// Verdicts.
var (
	decisionLevel = figure[float64]{
		"decision-level", "probability from which a verdict is given; below it the instruments cannot tell",
		0.90, practice,
	}
	wetLine = figure[quantity.TemperatureDelta]{
		"wet-line", "a superheat up to this is no superheat, however good the instruments: a wet suction line reads within a degree or two of saturation",
		quantity.FahrenheitDelta(2), practice,
	}
	stackedSubcooling = figure[quantity.TemperatureDelta]{
		"stacked-subcooling", "a subcooling above this on a fixed restrictor is liquid stacked in the condenser",
		quantity.FahrenheitDelta(20), practice,
	}
	finestField = figure[quantity.TemperatureDelta]{
		"finest-field-reading", "the best standard uncertainty that a superheat or a subcooling read in the field can have",
		quantity.FahrenheitDelta(0.3), practice,
	}
)

// coverage is how many standard uncertainties make a difference certain enough
// to act on: 2, about 95 % (GUM 6.3.3).
const coverage = 2

// Dosing.
var (
	chargePerTon = figure[quantity.Mass]{
		"charge-per-ton", "refrigerant in a comfort cooling machine per ton of nominal capacity, where the label cannot be read; 2 to 4 lb is usual",
		quantity.Pounds(2.8), practice,
	}
	chargePerTonFactor = figure[float64]{
		"charge-per-ton-factor", "factor of doubt on the charge per ton, one standard deviation of its logarithm",
		1.3, practice,
	}
	labelChargeDoubt = figure[float64]{
		"label-charge-doubt", "standard uncertainty of what a machine's whole charge is by its label, for the line set and what was done to it since, as a part of the charge",
		0.05, practice,
	}
	starvedMost = figure[quantity.TemperatureDelta]{
		"starved-most", "about what the superheat of a starved coil comes to at most: the return air above the coil",
		quantity.FahrenheitDelta(45), practice,
	}
	noResponse = figure[float64]{
		"no-response", "a value that moves by less than this part of what its gain leads one to expect does not answer to the charge",
		0.25, practice,
	}
	superheatGain = figure[quantity.TemperatureDelta]{
		"superheat-gain", "fall of superheat near its target for one hundredth of the whole charge added, on a fixed restrictor; it grows steeper towards flooding",
		quantity.FahrenheitDelta(1), practice,
	}
	subcoolingGain = figure[quantity.TemperatureDelta]{
		"subcooling-gain", "rise of subcooling for one hundredth of the whole charge added, on a valve",
		quantity.FahrenheitDelta(0.6), practice,
	}
	approachGain = figure[quantity.TemperatureDelta]{
		"approach-gain", "fall of the approach for one hundredth of the whole charge added",
		quantity.FahrenheitDelta(0.5), practice,
	}
	gainFactor = figure[float64]{
		"gain-factor", "factor of doubt on the three gains before a machine has shown its own, one standard deviation of the logarithm",
		1.8, practice,
	}
	largestStep = figure[float64]{
		"largest-step", "the most that is moved at once, as a part of the whole charge",
		0.10, practice,
	}
	mostMoved = figure[float64]{
		"most-moved", "net part of the whole charge moved without reaching the band, beyond which the charge is recovered and weighed in",
		0.30, practice,
	}
	mostMoves = figure[float64]{
		"most-moves", "moves without reaching the band, after which something else is looked for",
		6, practice,
	}
	smallestDose = figure[quantity.Mass]{
		"smallest-dose", "the least that a charging scale and hoses can dose",
		quantity.Ounces(0.5), practice,
	}
	overshootRisk = figure[float64]{
		"overshoot-risk", "probability accepted for one move to pass the far edge of the band",
		0.05, practice,
	}
)

// Weighing in.
var (
	liquidLineTemperature = figure[quantity.Temperature]{
		"liquid-line-temperature", "temperature of the liquid line at which its content is counted, where it is not given",
		quantity.Fahrenheit(95), practice,
	}
	liquidLineDoubt = figure[quantity.TemperatureDelta]{
		"liquid-line-doubt", "standard uncertainty of the temperature of the liquid line over the season",
		quantity.FahrenheitDelta(10), practice,
	}
	adderDoubt = figure[float64]{
		"adder-doubt", "standard uncertainty of a computed adder, as a part of it: manufacturers print 12 to 30 % more than bore times density for R-22 and R-410A, with tube of thinner wall and the vapor of the other line in it",
		0.15, fieldCharts,
	}
	outdoorDeviceShare = figure[float64]{
		"outdoor-device-share", "what the small line holds where the metering device stands outdoors, as a part of what it would hold full of liquid: it carries liquid and vapor then; printed adders for both places lie between 0.45 and 0.8",
		0.6, fieldCharts,
	}
	outdoorDeviceDoubt = figure[float64]{
		"outdoor-device-doubt", "standard uncertainty of that part", 0.12, fieldCharts,
	}
	boreDoubt = figure[quantity.Length]{
		"bore-doubt", "standard uncertainty of the bore of a tube within the tolerances of its standard",
		quantity.Millimeters(0.05), tubeStandard,
	}
)

// tubeSizes are the tubes of ASTM B280 in inches; those above 1 3/8 in from memory.
var tubeSizes = [...]tubeSize{
	{1. / 8, 0.030, 0}, {3. / 16, 0.030, 0}, {1. / 4, 0.030, 0.025}, {5. / 16, 0.032, 0},
	{3. / 8, 0.032, 0.030}, {1. / 2, 0.032, 0.035}, {5. / 8, 0.035, 0.040}, {3. / 4, 0.035, 0.042},
	{7. / 8, 0.045, 0.045}, {1 + 1./8, 0.050, 0.050}, {1 + 3./8, 0.055, 0.055}, {1 + 5./8, 0.060, 0.060},
	{2 + 1./8, 0, 0.070}, {2 + 5./8, 0, 0.080}, {3 + 1./8, 0, 0.090}, {3 + 5./8, 0, 0.100}, {4 + 1./8, 0, 0.110},
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
	classTemperature = figure[quantity.Temperature]{
		"recovery-class-temperature", "the pressure of the saturated liquid at this temperature classes a refrigerant",
		quantity.Fahrenheit(104), recoveryRule,
	}
	lowPressureBelow = figure[quantity.Pressure]{
		"low-pressure-below", "low-pressure refrigerants are below this", quantity.PSIA(45), recoveryRule,
	}
	mediumPressureBelow = figure[quantity.Pressure]{
		"medium-pressure-below", "medium-pressure refrigerants are below this", quantity.PSIA(170), recoveryRule,
	}
	highPressureBelow = figure[quantity.Pressure]{
		"high-pressure-below", "high-pressure refrigerants are up to this, very-high-pressure ones above", quantity.PSIA(355), recoveryRule,
	}
	largeCharge = figure[quantity.Mass]{
		"large-charge", "from this whole charge on the deeper vacuum is asked for", quantity.Pounds(200), recoveryRule,
	}
	mediumVacuum = figure[float64]{
		"medium-vacuum", "inches of mercury, medium pressure, smaller charge", 10, recoveryRule,
	}
	mediumLargeVacuum = figure[float64]{
		"medium-large-vacuum", "inches of mercury, medium pressure, large charge", 15, recoveryRule,
	}
	highLargeVacuum = figure[float64]{
		"high-large-vacuum", "inches of mercury, high pressure, large charge; a smaller one is recovered to 0, and so is very high pressure", 10, recoveryRule,
	}
	lowPressureTo = figure[quantity.Pressure]{
		"low-pressure-to", "absolute pressure that low-pressure machines are recovered to: 25 mm of mercury", quantity.Microns(25000), recoveryRule,
	}
)

var recoveryCautions = []string{
	"weigh the tank while filling and never above 80 % liquid; a tank that is full of liquid bursts as it warms",
	"one refrigerant to a tank; the law asks for a certified technician and certified equipment",
}

// Evacuation.
var (
	decayStart = figure[quantity.Pressure]{
		"decay-start", "vacuum at or below which a decay test begins", quantity.Microns(500), fieldTests,
	}
	decayLimit = figure[quantity.Pressure]{
		"decay-limit", "vacuum that a tight and dry circuit stays below; one that levels off above it is wet", quantity.Microns(500), federalSpecification,
	}
	decayTime = figure[time.Duration]{
		"decay-time", "shortest decay test; a rise past 1,500 microns within it fails at once", 10 * time.Minute, fieldTests,
	}
	decayHold = figure[time.Duration]{
		"decay-hold", "time that a circuit holds the limit without the pump; a shorter test is sound only if no rise that it leaves open would pass the limit by then", time.Hour, federalSpecification,
	}
	decayResolution = figure[quantity.Pressure]{
		"decay-resolution", "difference of two vacuum readings that means nothing", quantity.Microns(25), practice,
	}
)

// Pressure test.
var (
	testResolution = figure[float64]{
		"test-resolution", "part of the absolute test pressure that a test must be able to show missing, or it shows nothing",
		0.01, practice,
	}
	jointPressure = figure[float64]{
		"joint-pressure", "part of the maximum allowable pressure that a joint made on site is tested under at least, where the refrigerant is flammable",
		0.25, fieldTests,
	}
	jointSensitivity = figure[float64]{
		"joint-sensitivity", "grams of refrigerant a year: a leak that the test of such a joint shows", 5, fieldTests,
	}
	testTime = figure[time.Duration]{
		"test-time", "shortest time for a pressure test to hold, with every joint made on site tested by bubbles besides; federal specifications and some makers ask for 24 hours",
		time.Hour, fieldTests,
	}
)

var nitrogenCautions = []string{
	"dry nitrogen only, through a regulator and a relief valve: oxygen or compressed air with oil explodes",
	"never above the low-side design pressure on the label; raise it in steps and stand clear",
}

// Compressor care. The figures are general; those of the compressor's maker
// come before them.
var (
	leastSuperheat       = quantity.FahrenheitDelta(5)
	leastDischargeExcess = quantity.FahrenheitDelta(20)
	hotDischarge         = quantity.Fahrenheit(200)
	hottestDischarge     = quantity.Fahrenheit(225)
	coldEvaporating      = quantity.Fahrenheit(32)
	coldestEvaporating   = quantity.Fahrenheit(25)

	// Condensing temperatures that no sound machine has in weather for cooling: makers'
	// tables of normal pressures end near 130 °F at 115 °F outdoors, and high-pressure
	// switches open near 145 to 155 °F.
	highestCondensing = quantity.Fahrenheit(140)
	highCondensing    = quantity.Fahrenheit(130)
)

// How far condensing stands over the outdoor air at most: sound machines run 10 to 30 °F
// over.
const (
	highestOver = quantity.TemperatureDelta(45 / 1.8)
	highOver    = quantity.TemperatureDelta(35 / 1.8)
)

const (
	highRatio    times = 5
	highestRatio times = 10
)

// fullLoad is the rated-load current of the label: no limit, but worth a look above.
// overload is the most at which a separate overload relay may trip: NEC (NFPA 70)
// 440.52(A)(1), 140 percent of the rated-load current, from memory.
const (
	fullLoad part = 1
	overload part = 1.4
)

var necOverload = Source{"NEC (NFPA 70) 440.52(A)(1)", FromMemory}

// hazards to a compressor, in the order in which they are told: first what stops the
// machine whatever else is found.
var hazards = []*hazard{
	&condensingHighest, &suctionVacuum, &dischargeHottest, &currentHighest, &ratioHighest, &evaporatingColdest, &floodback, &slugging,
	&condensingHigh, &superheatLow, &dischargeCool, &dischargeHot, &ratioHigh, &currentHigh, &evaporatingCold,
}

var (
	floodback = hazard{
		code: "floodback", grave: true, limit: wetLine.value,
		text:   "superheat {figure} cannot be told from none (up to {limit}, or twice its uncertainty): liquid is coming back while the compressor runs",
		why:    "liquid washes the oil from the bearings and dilutes it in the sump; the compressor wears out without a warning",
		stop:   "feel the compressor, and stop it if it is cold and sweats down to the sump",
		do:     "add nothing; check airflow, filter, coil and metering device before the charge",
		source: practice, holds: superheatNone, replaces: "superheat-low",
	}
	slugging = hazard{
		code: "slugging", grave: true, limit: wetLine.value,
		text:   "the superheat swings down to {figure}, at or below {limit}: liquid comes in slugs",
		why:    "liquid does not compress: a slug breaks valves, reeds and scrolls at one blow",
		stop:   "listen to the compressor, and stop it if it knocks or rattles",
		do:     "find out why it hunts (valve bulb, airflow, oversized valve, low load) before moving charge; see that the crankcase heater works before a cold start",
		source: practice, holds: dipsToNone, replaces: "superheat-low",
	}
	dischargeHottest = hazard{
		code: "discharge-hottest", grave: true, stops: true, limit: hottestDischarge,
		text:   "discharge line {figure} is above {limit}; the valves inside are 50 to 75 °F (28 to 42 °C) hotter",
		why:    "oil breaks down and carbonizes from about 300 °F (149 °C) at the valves on; with moisture it turns to acid",
		stop:   "stop the machine, and run it again only for as long as a reading takes",
		do:     "look for a low charge, a restriction, a dirty condenser, a dead fan, a high superheat or a high compression ratio; the pipe burns skin",
		source: practice, holds: dischargeAbove(hottestDischarge), replaces: "discharge-hot",
	}
	ratioHighest = hazard{
		code: "compression-ratio-highest", grave: true, stops: true, limit: highestRatio,
		text:   "compression ratio {figure} is above {limit}",
		why:    "the discharge overheats, little vapor is pumped, and the motor is starved of cooling vapor",
		stop:   "stop the machine, and run it again only for as long as a reading takes",
		do:     "find what holds the suction so low or the discharge so high",
		source: practice, holds: ratioAbove(highestRatio), replaces: "compression-ratio-high",
	}
	condensingHighest = hazard{
		code: "condensing-highest", grave: true, stops: true, limit: highestCondensing,
		text:   "condensing temperature {figure}: no sound machine condenses so high ({limit})",
		why:    "the compressor is near its cut-out or its relief, and runs hot",
		stop:   "stop the machine",
		do:     "see that the outdoor fan turns (capacitor, motor, contactor), then the outdoor coil",
		source: practice, holds: condensingFar(highestCondensing, highestOver), replaces: "condensing-high",
	}
	condensingHigh = hazard{
		code: "condensing-high", limit: highCondensing,
		text:   "condensing temperature {figure} is high ({limit})",
		why:    "the head costs capacity and wears the compressor",
		do:     "see the outdoor fan and coil before the charge",
		source: practice, cooling: true, holds: condensingFar(highCondensing, highOver),
	}
	currentHighest = hazard{
		code: "current-highest", grave: true, stops: true, limit: overload,
		text:   "the compressor draws {figure} of its rated-load current, more than {limit}",
		why:    "an overload relay may trip at this current; the windings burn",
		stop:   "stop the machine",
		do:     "measure the voltage at its contactor; live parts: qualified hands only",
		source: necOverload, holds: currentAbove(overload), replaces: "current-high",
	}
	suctionVacuum = hazard{
		code: "suction-in-vacuum", grave: true, stops: true, limit: quantity.StandardAtmosphere,
		text:   "suction pressure {figure} is below the atmosphere around the machine ({limit} at sea level)",
		why:    "every leak on the low side draws in air and moisture, and a scroll in a vacuum can arc at its terminals and overheat within minutes",
		stop:   "stop the machine",
		do:     "open closed valves, and look for a restriction or a lost charge",
		source: practice, holds: inVacuum,
	}
	evaporatingColdest = hazard{
		code: "evaporating-coldest", grave: true, limit: coldestEvaporating,
		text:   "evaporating temperature {figure} is below {limit}",
		why:    "the coil ices over, the air stops, and the liquid that no longer evaporates goes to the compressor",
		stop:   "stop the cooling, and run the blower alone until the coil is clear of ice",
		do:     "check airflow, filter, coil and blower first, then charge and restriction",
		source: practice, cooling: true, holds: evaporatingBelow(coldestEvaporating), replaces: "evaporating-cold",
	}
	superheatLow = hazard{
		code: "superheat-low", limit: leastSuperheat,
		text:   "superheat {figure} is below {limit}",
		why:    "a small fall of load or airflow from here brings liquid to the compressor",
		do:     "watch it through a full run, and check airflow before the charge",
		source: practice, holds: superheatBelow(leastSuperheat),
	}
	dischargeCool = hazard{
		code: "discharge-cool", limit: leastDischargeExcess,
		text:   "the discharge line is only {figure} above the condensing temperature, less than {limit}",
		why:    "vapor that was dry when it was compressed leaves well above condensing: a cool discharge is liquid in the suction, or a clamp that reads low",
		do:     "insulate the clamp and read again; then treat it as liquid coming back",
		source: practice, holds: dischargeSuperheatBelow(leastDischargeExcess),
	}
	dischargeHot = hazard{
		code: "discharge-hot", limit: hotDischarge,
		text:   "discharge line {figure} is above {limit}",
		why:    "it is close to the temperature at which the oil suffers, and a hotter day will bring it there",
		do:     "look at superheat, compression ratio, condenser and charge",
		source: practice, holds: dischargeAbove(hotDischarge),
	}
	ratioHigh = hazard{
		code: "compression-ratio-high", limit: highRatio,
		text:   "compression ratio {figure} is above {limit}",
		why:    "comfort cooling runs at 2.3 to 3.5; above, the compressor runs hot and gives less",
		do:     "look for what lowers the suction (airflow, charge, restriction) or raises the discharge (condenser dirt, fan, air in the circuit, overcharge)",
		source: practice, cooling: true, holds: ratioAbove(highRatio),
	}
	currentHigh = hazard{
		code: "current-high", limit: fullLoad,
		text:   "the compressor draws {figure} of its rated-load current, more than {limit}",
		why:    "the windings run hotter than they are made for, and the overload opens on the next hot day",
		do:     "measure the voltage at its contactor while it runs, never at the terminals of the compressor, then look for what raises the discharge (condenser dirt, fan, air in the circuit, overcharge) and, with neither, for a tight compressor; qualified hands only: the parts are live",
		source: practice, holds: currentAbove(fullLoad),
	}
	evaporatingCold = hazard{
		code: "evaporating-cold", limit: coldEvaporating,
		text:   "evaporating temperature {figure} is below {limit}",
		why:    "the coil surface can freeze, more so on a cool night or with a dirtier filter",
		do:     "check airflow, filter and coil first, then charge and restriction",
		source: practice, cooling: true, holds: evaporatingBelow(coldEvaporating),
	}
)

const blendCaution = "it is a blend: take it from the cylinder as liquid, or its composition changes"

// handlingCaution stands in where the refrigerant, and with it its own cautions,
// is not known.
const handlingCaution = "refrigerant is under pressure and its liquid freezes skin and eyes: wear gloves and eye protection, and never vent it"

var doseCautions = []string{
	"the cylinder and the machine hold one and the same refrigerant; never top up with another",
	"into the suction side of a running compressor only throttled, a little at a time: liquid must not reach it",
	"the unit's own chart, the label and local code come before this figure; the work is for licensed hands",
}

// Conditions of running.
var (
	shortestRun = figure[time.Duration]{
		"shortest-run", "a machine runs this long without a stop before its readings count",
		15 * time.Minute, cecProcedure,
	}
	waitAfterMove = figure[time.Duration]{
		"wait-after-move", "after refrigerant is added or recovered the machine runs at least this long before the next reading counts, and longer where its own time constant asks for it",
		15 * time.Minute, cecProcedure,
	}
	coldestReturn = figure[quantity.Temperature]{
		"coldest-return", "return air below this loads the coil too little to judge a charge by",
		quantity.Fahrenheit(70), fieldCharts,
	}
	leastAirflow = figure[float64]{
		"least-airflow", "CFM of indoor air per ton of nominal capacity, below which the charge must not be judged; later editions of the procedure ask 350 of new systems and 300 of altered ones",
		300, cecProcedure,
	}
	starvedSuperheat = figure[quantity.TemperatureDelta]{
		"starved-superheat", "a superheat above this starves a coil behind a valve, or behind a restrictor whose target is not known; the metering device of a valve system passes from 4 to 25 °F where its maker states no range",
		quantity.FahrenheitDelta(25), cecProcedure,
	}
)

var (
	everyReading  = of(Superheat, Subcooling, Approach)
	liquidReading = of(Subcooling, Approach)
)

// Conditions that stand in the way of a method, in the order in which a
// technician would mend them.
var conditions = []*condition{
	&fluidNoLiquid, &fluidInVacuum, &fluidToxic, &heating, &circuitOpened, &coilIced, &panelsOff, &runShort, &justMoved, &coilWet, &fanCycling, &economizer, &doorsOpen,
	&airflowLow, &outdoorCold, &returnCold, &outdoorAbove, &wetBulbBelow, &wetBulbAbove, &targetTooLow, &targetNearFloor,
	&noLabelSubcooling, &noLabelApproach, &restriction, &valveFlooding, &filterDirty, &outdoorCoilDirty,
}

const ofThatFluid = "use the procedure of the unit's maker, or recover the charge and weigh in what the label says"

// unsuitable holds for a refrigerant that is refused for one reason.
func unsuitable(reason refrigerant.UnsuitableReason) func(*Situation) (formatter, bool) {
	return flag(func(s *Situation) bool {
		var why *refrigerant.UnsuitableError
		return s.Fluid != nil && errors.As(s.Fluid.ComfortCooling(), &why) && why.Reason == reason
	})
}

var (
	fluidNoLiquid = condition{
		code: "fluid-no-liquid-in-summer", spoils: true,
		reason:  "the refrigerant is no liquid at the temperature of a condenser in summer: it has no subcooling there, and its superheat follows the control of the gas cooler, not the charge",
		instead: ofThatFluid,
		weighIn: true,
		source:  criticalPoint, forbids: everyReading,
		holds: unsuitable(refrigerant.NoLiquidInSummer),
	}
	fluidInVacuum = condition{
		code: "fluid-in-vacuum", spoils: true,
		reason:  "the refrigerant boils below atmospheric pressure in an evaporator that cools air: machines that use it are charged by other rules",
		instead: ofThatFluid,
		weighIn: true,
		source:  practice, forbids: everyReading,
		holds: unsuitable(refrigerant.InVacuum),
	}
	fluidToxic = condition{
		code: "fluid-toxic-indoors", spoils: true,
		reason:  "the refrigerant is of higher toxicity (class B) and does not cool the air of a house directly: these targets are not for the machines that use it",
		instead: ofThatFluid,
		weighIn: true,
		source:  safetyClasses, forbids: everyReading,
		holds: unsuitable(refrigerant.ToxicIndoors),
	}
	heating = condition{
		code:    "heating",
		reason:  "the machine is heating: these targets are for cooling",
		instead: "put it into cooling, use the heating chart of the unit's maker, or weigh the charge in",
		weighIn: true,
		source:  practice, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.Heating }),
	}
	circuitOpened = condition{
		code: "circuit-opened", spoils: true,
		reason:  "the circuit has been open to air: air and moisture in it raise the pressures, and the readings are not those of the refrigerant",
		instead: "recover, evacuate with a decay test, and weigh in what the label says",
		weighIn: true,
		source:  practice, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.SealedSystemOpened }),
	}
	coilIced = condition{
		code: "coil-iced", spoils: true,
		reason:  "ice on the indoor coil or suction line blocks the air: superheat and pressures are those of the ice",
		instead: "stop the cooling, and run the blower alone until the coil is clear of ice; find out why it froze, and read again after a full run",
		source:  practice, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.CoilIced }),
	}
	panelsOff = condition{
		code: "panels-off", spoils: true,
		reason:  "panels or doors of the unit are off: the air does not pass through the coils as it should",
		instead: "put the panels on, run again, and read through the service ports",
		source:  cecProcedure, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.PanelsOff }),
	}
	runShort = condition{
		code: "run-short", spoils: true,
		reason:  "the machine has run {measured}, less than {limit}",
		limit:   runTime(shortestRun.value),
		instead: "let it run on without a stop, and read again",
		source:  shortestRun.source, forbids: everyReading,
		holds: func(s *Situation) (formatter, bool) {
			return runTime(s.Running), s.Running > 0 && s.Running < shortestRun.value
		},
	}
	justMoved = condition{
		code: "just-moved", spoils: true,
		reason:  "refrigerant was moved {measured} ago, less than {limit}",
		limit:   runTime(waitAfterMove.value),
		instead: "wait before the next reading: the charge has not settled between condenser and evaporator",
		source:  waitAfterMove.source, forbids: everyReading,
		holds: func(s *Situation) (formatter, bool) {
			return runTime(s.SinceMove), s.SinceMove > 0 && s.SinceMove < waitAfterMove.value
		},
	}
	coilWet = condition{
		code: "coil-wet", spoils: true,
		reason:  "the outdoor coil is wet: evaporation holds the condensing pressure down, and the charge reads low",
		instead: "run until it is dry and the liquid pressure has stopped rising, then read again",
		source:  practice, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.CoilWet }),
	}
	fanCycling = condition{
		code: "condenser-fan-cycling", spoils: true,
		reason:  "a control cycles the condenser fan: pressures and subcooling swing with it",
		instead: "read in weather that keeps the fan on, or hold it on by the procedure of the unit's maker, or weigh the charge in",
		weighIn: true,
		source:  practice, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.CondenserFanCycling }),
	}
	economizer = condition{
		code: "economizer-open", spoils: true,
		reason:  "an economizer draws outdoor air over the indoor coil: the return reading is not the air that the coil sees",
		instead: "close the outdoor air damper, run again, and read",
		source:  practice, forbids: everyReading,
		holds: flag(func(s *Situation) bool { return s.EconomizerOpen }),
	}
	doorsOpen = condition{
		code: "doors-open", spoils: true,
		reason:  "the building stands open: the load on the coil changes while it is read",
		instead: "close the building, run until the return air holds, and read again",
		source:  practice, forbids: of(Superheat), doubts: liquidReading,
		holds: flag(func(s *Situation) bool { return s.DoorsOpen }),
	}
	airflowLow = condition{
		code:    "airflow-low",
		reason:  "indoor airflow {measured} is below {limit} per ton of nominal capacity: the readings then show the air, not the charge",
		limit:   quantity.CFM(leastAirflow.value),
		instead: "mend the airflow first (filter, blower, coil, dampers, ducts), then read again",
		source:  leastAirflow.source, forbids: of(Superheat), doubts: liquidReading,
		holds: func(s *Situation) (formatter, bool) {
			if s.Airflow == nil || s.NominalCapacity <= 0 {
				return nil, false
			}
			return s.Airflow.Value, s.Airflow.Value.CFM() < leastAirflow.value*s.NominalCapacity.Tons()
		},
	}
	outdoorCold = condition{
		code: "outdoor-cold", spoils: true,
		reason:  "outdoor air {measured} is below {limit}: the condenser is so cold that pressures, superheat and subcooling say little about the charge",
		limit:   quantity.Fahrenheit(tableMinOutdoor),
		instead: "wait for warmer air, or recover the charge and weigh in what the label says; a procedure for cold weather from the unit's maker comes before this rule",
		weighIn: true,
		source:  cecProcedure, forbids: everyReading,
		holds: func(s *Situation) (formatter, bool) {
			return measuredBelow(s.OutdoorDryBulb, quantity.Fahrenheit(tableMinOutdoor))
		},
	}
	returnCold = condition{
		code:    "return-cold",
		reason:  "return air {measured} is below {limit}: the indoor load is low",
		limit:   coldestReturn.value,
		instead: "let the building warm up, or add load, and read again; or weigh the charge in",
		weighIn: true,
		source:  coldestReturn.source, forbids: of(Superheat), doubts: liquidReading,
		holds: func(s *Situation) (formatter, bool) { return measuredBelow(s.ReturnDryBulb, coldestReturn.value) },
	}
	outdoorAbove = condition{
		code:    "outdoor-above-table",
		reason:  "outdoor air {measured} is above {limit}, where the table of target superheat ends",
		limit:   quantity.Fahrenheit(tableMaxOutdoor),
		instead: "use the unit's own chart if it goes higher, charge at a cooler hour, or weigh the charge in; is the sensor in the shade and out of the condenser's discharge air?",
		weighIn: true,
		source:  cecTarget, forbids: of(Superheat),
	}
	wetBulbBelow = condition{
		code:    "wet-bulb-below-table",
		reason:  "return wet bulb {measured} is below {limit}, where the table of target superheat ends: the indoor load is too low to charge by superheat",
		limit:   quantity.Fahrenheit(tableMinWetBulb),
		instead: "let the building warm up or add load, or weigh the charge in; is the wick wet and in the air stream, and the return free of supply air?",
		weighIn: true,
		source:  cecTarget, forbids: of(Superheat),
	}
	wetBulbAbove = condition{
		code:    "wet-bulb-above-table",
		reason:  "return wet bulb {measured} is above {limit}, where the table of target superheat ends",
		limit:   quantity.Fahrenheit(tableMaxWetBulb),
		instead: "run the machine until the building is drier, use the unit's own chart if it goes higher, or weigh the charge in; is it the wet bulb, not the dry bulb?",
		weighIn: true,
		source:  cecTarget, forbids: of(Superheat),
	}
	targetTooLow = condition{
		code:    "target-below-floor",
		reason:  "at this return wet bulb and outdoor temperature the target superheat is below {limit}: too close to liquid at the compressor to charge by",
		limit:   targetFloor.value,
		instead: "wait for a cooler outdoor or a more humid indoor hour, or recover the charge and weigh in what the label says; do not add or recover by this superheat",
		weighIn: true,
		source:  cecProcedure, forbids: of(Superheat),
	}
	targetNearFloor = condition{
		code:     "target-near-floor",
		reason:   "the target superheat {measured} stands within its uncertainty of {limit}, below which there is none",
		limit:    targetFloor.value,
		instead:  "take the return wet bulb with care, or charge at an hour with a higher target",
		ofTarget: true,
		source:   cecTarget, doubts: of(Superheat),
		holds: targetWithinDoubtOfFloor,
	}
	noLabelSubcooling = condition{
		code:     "no-label-subcooling",
		reason:   "the label's subcooling is not known: the general figure fits only roughly",
		instead:  "read the label, the data plate inside the panel or the maker's instructions for the figure",
		ofTarget: true,
		source:   generalSubcooling.source, doubts: of(Subcooling),
		holds: flag(func(s *Situation) bool { return !s.LabelSubcooling }),
	}
	noLabelApproach = condition{
		code:    "no-label-approach",
		reason:  "the label gives no approach, and there is no general figure for it",
		instead: "judge the charge by superheat (fixed restrictor) or subcooling (valve), or weigh it in",
		weighIn: true,
		source:  practice, forbids: of(Approach),
		holds: flag(func(s *Situation) bool { return !s.LabelApproach }),
	}
	restriction = condition{
		code:    "restriction-pattern",
		reason:  "superheat {measured} is high while the subcooling is high too: liquid is stacked in the condenser and the coil starves, the pattern of a restriction and not of a low charge",
		instead: "add nothing; look for a temperature drop across the filter drier and the metering device, a kinked line, or a valve that has lost its bulb charge",
		source:  practice, forbids: everyReading,
		holds: starvedBesideStackedLiquid,
	}
	valveFlooding = condition{
		code:    "valve-flooding",
		reason:  "superheat {measured} on a valve system cannot be told from none: the valve is not holding its superheat",
		instead: "check the bulb (tight, insulated, in place), the airflow and the valve before the charge; add nothing",
		source:  practice, doubts: liquidReading,
		holds: func(s *Situation) (formatter, bool) {
			if s.Metering.Method() != Subcooling || s.Superheat == nil {
				return nil, false
			}
			return s.Superheat.Value, Measurement{Method: Superheat, Value: *s.Superheat}.LiquidReturning()
		},
	}
	filterDirty = condition{
		code:    "filter-dirty",
		reason:  "the filter is dirty: the coil gets less air, and superheat reads low",
		instead: "change or clean the filter first, then read again",
		source:  practice, doubts: everyReading,
		holds: flag(func(s *Situation) bool { return s.FilterDirty }),
	}
	outdoorCoilDirty = condition{
		code:    "outdoor-coil-dirty",
		reason:  "the outdoor coil is dirty: the condensing pressure is high, and the charge with it reads high",
		instead: "clean the outdoor coil and let it dry first, then read again",
		source:  practice, doubts: everyReading,
		holds: flag(func(s *Situation) bool { return s.OutdoorCoilDirty }),
	}
)

// Rules lists every figure and condition of the package with its source, in the
// order in which they are written down.
func Rules() []Rule {
	rules := []Rule{
		targetFloor.rule(), superheatTolerance.rule(), subcoolingTolerance.rule(), approachTolerance.rule(),
		generalSubcooling.rule(), generalSubcoolingDoubt.rule(),
		decisionLevel.rule(), wetLine.rule(), stackedSubcooling.rule(), finestField.rule(),
		chargePerTon.rule(), chargePerTonFactor.rule(), labelChargeDoubt.rule(), starvedMost.rule(), noResponse.rule(), superheatGain.rule(), subcoolingGain.rule(), approachGain.rule(), gainFactor.rule(),
		largestStep.rule(), mostMoved.rule(), mostMoves.rule(), smallestDose.rule(), overshootRisk.rule(),
		liquidLineTemperature.rule(), liquidLineDoubt.rule(), adderDoubt.rule(), outdoorDeviceShare.rule(), outdoorDeviceDoubt.rule(), boreDoubt.rule(),
		classTemperature.rule(), lowPressureBelow.rule(), mediumPressureBelow.rule(), highPressureBelow.rule(), largeCharge.rule(),
		mediumVacuum.rule(), mediumLargeVacuum.rule(), highLargeVacuum.rule(), lowPressureTo.rule(),
		decayStart.rule(), decayLimit.rule(), decayTime.rule(), decayHold.rule(), decayResolution.rule(), testResolution.rule(), testTime.rule(), jointPressure.rule(), jointSensitivity.rule(),
		shortestRun.rule(), waitAfterMove.rule(), coldestReturn.rule(), leastAirflow.rule(), starvedSuperheat.rule(),
	}
	for _, c := range conditions {
		rules = append(rules, c.rule())
	}
	for _, h := range hazards {
		rules = append(rules, h.rule())
	}
	return rules
}
