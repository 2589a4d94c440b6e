package charge

import "github.com/satline/satline/quantity"

// This file holds every figure and rule that the package works by, each with
// its source. Nothing elsewhere decides by a number of its own.

// The sources.
var (
	cecTarget    = Source{"California Energy Commission, Reference Residential Appendix RA3.2, Table RA3.2-2", FromMemory}
	cecProcedure = Source{"California Energy Commission, Reference Residential Appendix RA3.2.2, standard charge verification procedure", FromMemory}
	accaQI       = Source{"ANSI/ACCA 5 QI, HVAC Quality Installation Specification, refrigerant charge", FromMemory}
	practice     = Source{"", CommonPractice}
	unitLabel    = Source{"the unit's label", Label}
)

// Targets and tolerances.
var (
	targetFloor = figure[quantity.TemperatureDelta]{
		"target-floor", "a target superheat below this is not a target: the table has no figure, and liquid could reach the compressor before the charge shows",
		quantity.FahrenheitDelta(5), cecTarget,
	}
	superheatTolerance = figure[quantity.TemperatureDelta]{
		"superheat-tolerance", "a fixed restrictor is in charge within this of its target superheat, either way",
		quantity.FahrenheitDelta(5), accaQI,
	}
	subcoolingTolerance = figure[quantity.TemperatureDelta]{
		"subcooling-tolerance", "a valve system is in charge within this of its target subcooling, either way",
		quantity.FahrenheitDelta(3), accaQI,
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

// Conditions under which a target does not exist.
var (
	outdoorCold = condition{
		"outdoor-cold", "outdoor air {measured} is below {limit}: the condenser is so cold that pressures, superheat and subcooling say little about the charge",
		quantity.Fahrenheit(tableMinOutdoor),
		"wait for warmer air, or recover the charge and weigh in what the label says; a procedure for cold weather from the unit's maker comes before this rule", cecProcedure,
	}
	outdoorAbove = condition{
		"outdoor-above-table", "outdoor air {measured} is above {limit}, where the table of target superheat ends",
		quantity.Fahrenheit(tableMaxOutdoor),
		"use the unit's own chart if it goes higher, charge at a cooler hour, or weigh the charge in; is the sensor in the shade and out of the condenser's discharge air?", cecTarget,
	}
	wetBulbBelow = condition{
		"wet-bulb-below-table", "return wet bulb {measured} is below {limit}, where the table of target superheat ends: the indoor load is too low to charge by superheat",
		quantity.Fahrenheit(tableMinWetBulb),
		"let the building warm up or add load, or weigh the charge in; is the wick wet and in the air stream, and the return free of supply air?", cecTarget,
	}
	wetBulbAbove = condition{
		"wet-bulb-above-table", "return wet bulb {measured} is above {limit}, where the table of target superheat ends",
		quantity.Fahrenheit(tableMaxWetBulb),
		"run the machine until the building is drier, use the unit's own chart if it goes higher, or weigh the charge in; is it the wet bulb, not the dry bulb?", cecTarget,
	}
	targetTooLow = condition{
		"target-below-floor", "at this return wet bulb and outdoor temperature the target superheat is below {limit}: too close to liquid at the compressor to charge by",
		targetFloor.value,
		"wait for a cooler outdoor or a more humid indoor hour, or recover the charge and weigh in what the label says; do not add or recover by this superheat", cecTarget,
	}
	noLabelApproach = condition{
		"no-label-approach", "the label gives no approach, and there is no general figure for it",
		nil,
		"judge the charge by superheat (fixed restrictor) or subcooling (valve), or weigh it in", practice,
	}
)

// Rules lists every figure and condition of the package with its source, in the
// order in which they are written down.
func Rules() []Rule {
	return []Rule{
		targetFloor.rule(), superheatTolerance.rule(), subcoolingTolerance.rule(), approachTolerance.rule(),
		generalSubcooling.rule(), generalSubcoolingDoubt.rule(),
		outdoorCold.rule(), outdoorAbove.rule(), wetBulbBelow.rule(), wetBulbAbove.rule(), targetTooLow.rule(), noLabelApproach.rule(),
	}
}
