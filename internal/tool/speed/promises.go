package main

import "time"

// A promise is a speed figure and the benchmark that measures it.
type promise struct {
	what   string
	pkg    string
	bench  string // without "Benchmark", with the name of a part behind a slash
	within time.Duration
}

const (
	nano  = time.Nanosecond
	micro = time.Microsecond
	milli = time.Millisecond
)

var promises = []promise{
	{
		"dew temperature at a pressure, R-410A, table", "refrigerant", "TableDewTemperature",
		15 * nano,
	},
	{"bubble temperature at a pressure, table", "refrigerant", "TableBubbleTemperature", 15 * nano},
	{"dew pressure at a temperature, table", "refrigerant", "TableDewPressure", 15 * nano},
	{"vapor state at (p, T), R-22", "refrigerant", "StatePT/R-22", 700 * nano},
	{"vapor state at (p, T), R-134a", "refrigerant", "StatePT/R-134a", 700 * nano},
	{"vapor state at (p, T), five components, R-448A", "refrigerant", "StatePT/R-448A", 3 * micro},
	{"vapor at (p, T) from a state table, R-22", "refrigerant", "StateTable/vapor/R-22", 80 * nano},
	{
		"vapor at (p, T) from a state table, R-448A", "refrigerant", "StateTable/vapor/R-448A",
		80 * nano,
	},
	{
		"liquid at (p, T) from a state table, R-22", "refrigerant", "StateTable/liquid/R-22",
		80 * nano,
	},
	{"vapor at (p, h) from a state table, R-22", "refrigerant", "Isobar/AtEnthalpy", 400 * nano},
	{"a state table made, R-22", "refrigerant", "MakeStateTable/R-22", 10 * milli},
	{"state at (p, h), R-22", "refrigerant", "StatePH/R-22", 3 * micro},
	{"state at (p, h), five components, R-448A", "refrigerant", "StatePH/R-448A", 3 * micro},
	{"two-phase state at (p, h), R-407C", "refrigerant", "StatePHTwoPhase/R-407C", 3 * micro},
	{
		"two-phase state at (p, h), five components, R-448A", "refrigerant",
		"StatePHTwoPhase/R-448A", 3 * micro,
	},
	{"two-phase state at (p, s), R-448A", "refrigerant", "StatePSTwoPhase", 3 * micro},
	{
		"dew temperature of a run-time blend", "refrigerant", "RunTimeBlend/DewTemperature",
		60 * micro,
	},
	{"humidity ratio from wet bulb", "psychro", "HumidityRatioFromWetBulb", 40 * nano},
	{"wet bulb from humidity ratio", "psychro", "WetBulbFromHumidityRatio", 150 * nano},
	{"every property of moist air from wet bulb", "psychro", "FullStateFromWetBulb", 250 * nano},
	{
		"the whole machine solved once, fixed restrictor", "refrigerant/cycle",
		"Solve/fixed_restrictor", 2 * milli,
	},
	{"the whole machine solved once, TXV", "refrigerant/cycle", "Solve/TXV", 2 * milli},
	{"the whole machine solved once, EXV", "refrigerant/cycle", "Solve/EXV", 2 * milli},
	{
		"the whole machine solved once, capillary tube", "refrigerant/cycle",
		"Solve/capillary_tube", 2 * milli,
	},
	{
		"the machine fitted to a visit, fixed restrictor", "refrigerant/cycle",
		"Fit/fixed_restrictor", 300 * milli,
	},
	{"the machine fitted to a visit, TXV", "refrigerant/cycle", "Fit/TXV", 300 * milli},
	{"a reading taken by a watch over a log", "charge", "WatchTake", 100 * nano},
	{"a reading taken, and the log of a day judged", "charge", "WatchJudged", 100 * micro},
	{"a log of 180 readings judged at once", "charge", "SteadinessOf", 100 * micro},
	{"a visit assessed, verdicts only", ".", "AssessVerdict", 100 * micro},
	{"a visit assessed, with dose and freezing", ".", "Assess", 500 * micro},
}
