package population

// A Spread is a normal distribution that is cut off at Low and High.
type Spread struct{ Mean, Std, Low, High float64 }

// Stages is how a compressor varies its capacity.
type Stages int

// The stages. The zero Stages is not stated.
const (
	SingleStage Stages = iota + 1
	TwoStage
	VariableSpeed
)

// Running is what a compressor of more than one stage was running at.
type Running int

// What it runs at. The zero Running is not stated.
const (
	FullCapacity Running = iota + 1
	ReducedCapacity
)

// Arrangement is how the halves of a machine stand.
type Arrangement int

// The arrangements. The zero Arrangement is not stated.
const (
	Split Arrangement = iota + 1
	Packaged
	WallMounted // package machines in or on a wall, and room machines
)

// A share is a thing with its weight among others.
type share[T any] struct {
	of     T
	weight float64
}

// A Kind is a group of machines that are built alike. Temperatures are in °F, at the
// rating conditions and at the service ports. Where a table was found, its spread over sizes
// is widened: makers differ, coils are matched that no table is of, and what technicians hold
// for normal, 35 °F under the return air, is colder than most tables (common practice, no
// source).
type Kind struct {
	Code string
	// Weight is how common the kind is on a service call: judgement from the years in
	// which it was sold and how long machines last, no source.
	Weight float64
	// From and To are the years in which it was sold, LeastSEER and MostSEER its
	// seasonal efficiency (that of SEER2 is about 5 % lower).
	From, To            int
	LeastSEER, MostSEER float64
	Stages              Stages
	Running             Running

	refrigerants []share[string]
	arrangements []share[Arrangement]
	// valve is the share with an expansion valve, the rest has a fixed restrictor.
	valve float64

	// Evaporating is the mean evaporating temperature, and Condensing the middle of
	// bubble and dew point over the outdoor air.
	Evaporating, Condensing Spread
	// capacity is net over nominal, airflow is in CFM per ton of nominal capacity.
	capacity, airflow Spread
	// efficiency is the best isentropic efficiency of the compressor, motor included.
	efficiency Spread
	// microchannel is the share with such a condenser.
	microchannel float64
}

// Capacity and airflow of most machines: AHRI 210/240 ratings are within some percent of the
// nominal size and are taken at up to 450 CFM per ton (from memory). On average makers' catalogs
// rate a single stage at 386 CFM per ton, heat pumps at 394 (NREL/TP-5500-56354, as
// OpenStudio-HPXML has it); installed airflow varies more (common practice, no source).
var (
	usualCapacity = Spread{0.97, 0.035, 0.86, 1.06}
	usualAirflow  = Spread{386, 28, 315, 450}
)

// replaced is the share of refrigerants in kinds that were sold over the years from
// R-410A to its successors.
var replaced = []share[string]{{"R-410A", 0.8}, {"R-454B", 0.12}, {"R-32", 0.08}}

var ducted = []share[Arrangement]{{Split, 0.75}, {Packaged, 0.25}}

// Kinds lists the kinds. The comment of each says what its levels rest on.
var Kinds = []Kind{
	{
		// Installation instructions of 10 SEER split machines: nine sizes, with a valve and
		// with an orifice, evaporate at 45.8 °F (sd 1.8) and condense 21.2 °F (sd 3.7) over
		// outdoors.
		Code: "r22-to-11", Weight: 0.08, From: 1980, To: 2005, LeastSEER: 8, MostSEER: 11.5,
		Stages: SingleStage, Running: FullCapacity,
		refrigerants: []share[string]{{"R-22", 1}}, arrangements: ducted, valve: 0.35,
		Evaporating: Spread{45.8, 1.9, 41, 51}, Condensing: Spread{21.2, 4.2, 12, 34},
		capacity: usualCapacity, airflow: usualAirflow, efficiency: Spread{0.60, 0.03, 0.5, 0.7},
	},
	{
		// No table found; between the R-22 machines before and the R-410A machines after it.
		Code: "r22-12-up", Weight: 0.08, From: 1994, To: 2010, LeastSEER: 11.5, MostSEER: 15,
		Stages: SingleStage, Running: FullCapacity,
		refrigerants: []share[string]{{"R-22", 1}}, arrangements: ducted, valve: 0.55,
		Evaporating: Spread{47, 2, 42, 52}, Condensing: Spread{18, 3.5, 10, 30},
		capacity: usualCapacity, airflow: usualAirflow, efficiency: Spread{0.66, 0.03, 0.56, 0.74},
	},
	{
		// No table found; refilled or delivered with what replaced R-22, and built like it.
		Code: "r22-replaced", Weight: 0.05, From: 1996, To: 2016, LeastSEER: 9, MostSEER: 14,
		Stages: SingleStage, Running: FullCapacity,
		refrigerants: []share[string]{
			{"R-407C", 0.8}, {"R-134a", 0.2},
		}, arrangements: ducted, valve: 0.5,
		Evaporating: Spread{45.5, 2.2, 40, 51}, Condensing: Spread{20, 3.5, 12, 30},
		capacity: usualCapacity, airflow: usualAirflow, efficiency: Spread{0.64, 0.03, 0.54, 0.73},
	},
	{
		// Installation instructions of 13 SEER split machines of 2008: four sizes with a
		// valve evaporate at 50.0 °F (sd 1.1) and condense 15.3 °F over outdoors. A maker's
		// chart of a package machine of the kind has it at 47 °F and 14 °F.
		Code: "r410a-13", Weight: 0.22, From: 2003, To: 2015, LeastSEER: 12.5, MostSEER: 14,
		Stages: SingleStage, Running: FullCapacity,
		refrigerants: []share[string]{{"R-410A", 1}}, arrangements: ducted, valve: 0.6,
		Evaporating: Spread{48.8, 3.2, 40.5, 54}, Condensing: Spread{16, 3.7, 10, 28},
		capacity: usualCapacity, airflow: usualAirflow, efficiency: Spread{0.68, 0.03, 0.58, 0.75},
		microchannel: 0.1,
	},
	{
		// Unit information of 14 SEER package machines: twelve, air conditioners and heat
		// pumps, evaporate at 51.4 °F (sd 1.3) and condense 17.9 °F (sd 2.4) over outdoors,
		// with a spread of 3.2 °F at 65 °F outdoors.
		Code: "r410a-14", Weight: 0.25, From: 2006, To: 2024, LeastSEER: 14, MostSEER: 16,
		Stages: SingleStage, Running: FullCapacity,
		refrigerants: []share[string]{{"R-410A", 1}}, arrangements: ducted, valve: 0.75,
		Evaporating: Spread{51.3, 3.2, 41.5, 56.5}, Condensing: Spread{17.5, 3.7, 10, 29},
		capacity: usualCapacity, airflow: usualAirflow, efficiency: Spread{0.70, 0.03, 0.6, 0.77},
		microchannel: 0.2,
	},
	{
		// No table found: the same standards of efficiency as the kind before, SEER2.
		Code: "a2l-14", Weight: 0.12, From: 2022, To: 2100, LeastSEER: 13.4, MostSEER: 16.5,
		Stages: SingleStage, Running: FullCapacity,
		refrigerants: []share[string]{
			{"R-454B", 0.65}, {"R-32", 0.35},
		}, arrangements: ducted, valve: 0.85,
		Evaporating: Spread{49.4, 3.2, 41, 55}, Condensing: Spread{16, 3.5, 9.5, 26},
		capacity: usualCapacity, airflow: usualAirflow, efficiency: Spread{0.70, 0.03, 0.6, 0.77},
		microchannel: 0.3,
	},
	{
		// Installation instructions of 16 SEER two-stage split heat pumps: four sizes
		// evaporate at 50.5 °F (sd 0.8) and condense 14.8 °F (sd 2.8) over outdoors.
		Code: "two-stage-full", Weight: 0.07, From: 2004, To: 2100, LeastSEER: 15.5, MostSEER: 19,
		Stages: TwoStage, Running: FullCapacity,
		refrigerants: replaced, arrangements: ducted, valve: 0.97,
		Evaporating: Spread{50.2, 2.5, 43, 55}, Condensing: Spread{14.6, 3.4, 8.5, 24},
		capacity: usualCapacity, airflow: usualAirflow, efficiency: Spread{0.71, 0.03, 0.62, 0.78},
		microchannel: 0.1,
	},
	{
		// The same machines in their first stage, of about 70 % of the capacity: 52.0 °F
		// (sd 0.4) and 11.0 °F over outdoors.
		Code: "two-stage-low", Weight: 0.02, From: 2004, To: 2100, LeastSEER: 15.5, MostSEER: 19,
		Stages: TwoStage, Running: ReducedCapacity,
		refrigerants: replaced, arrangements: ducted, valve: 0.97,
		Evaporating: Spread{51.8, 1.3, 47.5, 55}, Condensing: Spread{11.3, 2.2, 8, 17},
		capacity: Spread{
			0.71, 0.03, 0.62, 0.8,
		}, airflow: Spread{305, 25, 240, 370}, efficiency: Spread{0.69, 0.03, 0.6, 0.76},
		microchannel: 0.1,
	},
	{
		// No table found for machines of variable speed; at full speed their coils work as
		// those of a single stage do, and at reduced speed more gently than a first stage.
		Code: "variable-full", Weight: 0.03, From: 2008, To: 2100, LeastSEER: 17, MostSEER: 26,
		Stages: VariableSpeed, Running: FullCapacity,
		refrigerants: replaced, arrangements: ducted, valve: 1,
		Evaporating: Spread{49.5, 2.8, 42, 55}, Condensing: Spread{15, 3, 9, 23},
		capacity: usualCapacity, airflow: usualAirflow, efficiency: Spread{0.70, 0.03, 0.6, 0.77},
		microchannel: 0.1,
	},
	{
		Code: "variable-low", Weight: 0.02, From: 2008, To: 2100, LeastSEER: 17, MostSEER: 26,
		Stages: VariableSpeed, Running: ReducedCapacity,
		refrigerants: replaced, arrangements: ducted, valve: 1,
		Evaporating: Spread{52.5, 2, 47, 56}, Condensing: Spread{9.5, 1.8, 7.5, 15},
		capacity: Spread{
			0.55, 0.1, 0.35, 0.75,
		}, airflow: Spread{270, 40, 180, 360}, efficiency: Spread{0.67, 0.04, 0.55, 0.76},
		microchannel: 0.1,
	},
	{
		// Installation instructions of wall-mounted package machines: two sizes evaporate at
		// 49.8 °F and condense 30.9 °F over outdoors.
		Code: "wall-mounted", Weight: 0.03, From: 1985, To: 2100, LeastSEER: 8, MostSEER: 12,
		Stages: SingleStage, Running: FullCapacity,
		refrigerants: []share[string]{
			{"R-410A", 0.8}, {"R-32", 0.2},
		}, arrangements: []share[Arrangement]{{WallMounted, 1}}, valve: 0.5,
		Evaporating: Spread{49.3, 2, 43, 53}, Condensing: Spread{30, 3.5, 20, 38},
		capacity: usualCapacity, airflow: Spread{380, 30, 310, 440},
		efficiency: Spread{0.66, 0.03, 0.56, 0.74},
	},
}
