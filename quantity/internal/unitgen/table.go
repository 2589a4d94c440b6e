package main

// A quantityType is a row of the table: a type with all its units.
type quantityType struct {
	Name string
	Noun string // the name in sentences
	Is   string // the doc comment, after "Name is"

	// Units are in the order in which errors list them; MarshalText writes the
	// first. One has scale 1 and no zero: that is the SI unit.
	Units []unit
	// Difference holds, unit by unit, what an uncertainty is written in where that
	// is not the unit of the value: "68.5 psig ± 0.5 psi".
	Difference []unit

	SI, IP   shown  // what Format shows
	Fine     string // below this Format shows FineSI and FineIP
	FineSI   shown
	FineIP   shown
	Close    string // below this, and above Fine, Format shows two decimals more
	Compound bool   // written in two steps and in fractions too: "6 lb 4 oz"

	// Floor says what a value below zero would be, where there can be none.
	Floor string
	// Uncertainty is the type of an uncertainty, where it is another type.
	Uncertainty string
}

// A unit is v of it in SI: (v + Zero) * Scale.
type unit struct {
	Symbol string
	Func   string // constructor and accessor; empty where there is neither
	Words  string // the unit in the comments of the two
	Scale  string
	Zero   string
	// Also holds the other spellings. Those in Spanish are what technicians in the
	// Americas write (from memory).
	Also []string
	In   string // the systems whose users pick it from a list: "SI", "IP", both or none
}

type shown struct {
	Symbol   string
	Decimals int
}

const (
	cubicFoot = "Foot * Foot * Foot"
	btuPerHr  = "BTU / 3600"
)

var table = []quantityType{
	{
		Name: "Temperature", Noun: "temperature",
		Is: "a thermodynamic temperature in kelvin. Nothing is below absolute zero.",
		Units: []unit{
			{Symbol: "°C", Func: "Celsius", Words: "degrees Celsius", Scale: "1",
				Zero: "273.15", Also: []string{"C", "degC", "deg C", "℃"}, In: "SI"},
			{Symbol: "°F", Func: "Fahrenheit", Words: "degrees Fahrenheit", Scale: "5.0 / 9",
				Zero: "459.67", Also: []string{"F", "degF", "deg F", "℉"}, In: "IP"},
			{Symbol: "K", Func: "Kelvin", Words: "kelvin", Scale: "1", Also: []string{"kelvin"}},
		},
		SI: shown{"°C", 1}, IP: shown{"°F", 1},
		Floor: "below absolute zero", Uncertainty: "TemperatureDelta",
	},
	{
		Name: "TemperatureDelta", Noun: "temperature difference",
		Is: "a difference of two temperatures in kelvin: a superheat, a split, an error.",
		Units: []unit{
			{Symbol: "K", Func: "KelvinDelta", Words: "kelvin", Scale: "1",
				Also: []string{"kelvin"}, In: "SI"},
			{Symbol: "°F", Func: "FahrenheitDelta", Words: "degrees Fahrenheit",
				Scale: "5.0 / 9", Also: []string{"F", "degF", "Δ°F", "F°", "R"}, In: "IP"},
			{Symbol: "°C", Func: "CelsiusDelta", Words: "degrees Celsius", Scale: "1",
				Also: []string{"C", "degC", "Δ°C", "C°"}},
		},
		SI: shown{"K", 1}, IP: shown{"°F", 1},
	},
	{
		Name: "Pressure", Noun: "absolute pressure",
		Is: "an absolute pressure in pascals. Nothing is below a perfect vacuum.",
		Units: []unit{
			{Symbol: "kPa", Func: "Kilopascals", Words: "kilopascals", Scale: "1e3",
				Also: []string{"kPa abs", "kPaa"}, In: "SI"},
			{Symbol: "psia", Func: "PSIA", Words: "pounds-force per square inch absolute",
				Scale: "PSI", Also: []string{"psi abs"}, In: "IP"},
			{Symbol: "bar", Func: "Bar", Words: "bars", Scale: "1e5",
				Also: []string{"bara", "bar abs"}, In: "SI"},
			{Symbol: "inHg", Func: "InchesHg", Words: "inches of mercury (conventional)",
				Scale: "inchMercury", Also: []string{"in Hg", "in.Hg", "\"Hg"}, In: "IP"},
			{Symbol: "micron", Func: "Microns",
				Words: "microns of mercury, the measure of a deep vacuum",
				Scale: "micronMercury",
				Also: []string{"microns", "µmHg", "umHg", "µm Hg", "mTorr", "micra",
					"micras"}, In: "IP"},
			{Symbol: "MPa", Scale: "1e6", Also: []string{"MPa abs"}},
			{Symbol: "atm", Scale: "101325"},
			{Symbol: "Pa", Func: "Pascals", Words: "pascals", Scale: "1", In: "SI"},
		},
		Difference: []unit{
			{Symbol: "kPa", Scale: "1e3"}, {Symbol: "psi", Scale: "PSI", Also: []string{"psid"}},
			{Symbol: "bar", Scale: "1e5"}, {Symbol: "inHg", Scale: "inchMercury"},
			{Symbol: "micron", Scale: "micronMercury", Also: []string{"microns"}},
			{Symbol: "MPa", Scale: "1e6"}, {Symbol: "atm", Scale: "101325"},
			{Symbol: "Pa", Scale: "1"},
		},
		// A deep vacuum reads in pascals and microns, the pressure of water in air closely.
		SI: shown{"kPa", 1}, IP: shown{"psia", 1},
		Fine: "500", FineSI: shown{"Pa", 1}, FineIP: shown{"micron", 0},
		Close: "1e4",
		Floor: "below a perfect vacuum",
	},
	{
		Name: "GaugePressure", Noun: "gauge pressure",
		Is: "a pressure above the atmosphere around the gauge, in pascals. A negative one is " +
			"a vacuum.",
		Units: []unit{
			{Symbol: "psig", Func: "PSIG", Words: "pounds-force per square inch gauge",
				Scale: "PSI", Also: []string{"psi g", "psi(g)", "psi gauge"}, In: "IP"},
			{Symbol: "kPag", Func: "KilopascalsGauge", Words: "kilopascals gauge", Scale: "1e3",
				Also: []string{"kPa gauge", "kPa(g)", "kPa g"}, In: "SI"},
			{Symbol: "barg", Func: "BarGauge", Words: "bars gauge", Scale: "1e5",
				Also: []string{"bar gauge", "bar(g)", "bar g"}, In: "SI"},
			{Symbol: "inHg vac", Scale: "-inchMercury",
				Also: []string{"inHg vacuum", "in Hg vac", "in. Hg vac"}},
			{Symbol: "Pag", Scale: "1", Also: []string{"Pa gauge", "Pa(g)"}},
		},
		Difference: []unit{
			{Symbol: "psi", Scale: "PSI", Also: []string{"psid"}}, {Symbol: "kPa", Scale: "1e3"},
			{Symbol: "bar", Scale: "1e5"}, {Symbol: "inHg", Scale: "inchMercury"},
			{Symbol: "Pa", Scale: "1"},
		},
		SI: shown{"kPag", 1}, IP: shown{"psig", 1},
	},
	{
		Name: "StaticPressure", Noun: "static pressure",
		Is: "the pressure of air in a duct against the room, in pascals. Return ducts are " +
			"negative.",
		Units: []unit{
			{Symbol: "in. w.c.", Func: "InchesWater",
				Words: "inches of water column (conventional)", Scale: "inchWater",
				Also: []string{"in.w.c.", "inWC", "in wc", "in. wc", "in w.c.", "inwg",
					"in. w.g.", "inH2O", "in H2O", "iwc", "pulg c.a.", "pulg. " +
						"c.a.", "\"wc"}, In: "IP"},
			{Symbol: "Pa", Func: "PascalsStatic", Words: "pascals", Scale: "1", In: "SI"},
		},
		SI: shown{"Pa", 1}, IP: shown{"in. w.c.", 2},
	},
	{
		Name: "Mass", Noun: "mass", Is: "a mass in kilograms.",
		Units: []unit{
			{Symbol: "kg", Func: "Kilograms", Words: "kilograms", Scale: "1", In: "SI"},
			{Symbol: "lb", Func: "Pounds", Words: "avoirdupois pounds", Scale: "Pound",
				Also: []string{"lbs", "lbm", "pound", "pounds", "libra", "libras"}, In: "IP"},
			{Symbol: "oz", Func: "Ounces", Words: "avoirdupois ounces", Scale: "Pound / 16",
				Also: []string{"ounce", "ounces", "onza", "onzas"}, In: "IP"},
			{Symbol: "g", Func: "Grams", Words: "grams", Scale: "1e-3",
				Also: []string{"gram", "grams", "gramo", "gramos"}, In: "SI"},
		},
		SI: shown{"kg", 3}, IP: shown{"lb", 2},
		Fine: "Pound", FineSI: shown{"g", 0}, FineIP: shown{"oz", 1},
		Compound: true,
	},
	{
		Name: "MassFlow", Noun: "mass flow", Is: "a mass flow in kilograms per second.",
		Units: []unit{
			{Symbol: "g/s", Func: "GramsPerSecond", Words: "grams per second", Scale: "1e-3",
				In: "SI"},
			{Symbol: "lb/h", Func: "PoundsPerHour", Words: "pounds per hour",
				Scale: "Pound / 3600", Also: []string{"lb/hr", "lbm/h", "pph"}, In: "IP"},
			{Symbol: "lb/min", Scale: "Pound / 60", Also: []string{"lbm/min"}, In: "IP"},
			{Symbol: "kg/h", Scale: "1.0 / 3600", Also: []string{"kg/hr"}, In: "SI"},
			{Symbol: "kg/s", Func: "KilogramsPerSecond", Words: "kilograms per second", Scale: "1"},
		},
		SI: shown{"g/s", 2}, IP: shown{"lb/h", 0},
	},
	{
		Name: "Volume", Noun: "volume", Is: "a volume in cubic meters.",
		Units: []unit{
			{Symbol: "L", Func: "Liters", Words: "liters", Scale: "1e-3",
				Also: []string{"liter", "liters", "litre", "litres", "litro", "litros"}, In: "SI"},
			{Symbol: "ft³", Func: "CubicFeet", Words: "cubic feet", Scale: cubicFoot,
				Also: []string{"ft3", "cu ft", "cf"}, In: "IP"},
			{Symbol: "in³", Func: "CubicInches", Words: "cubic inches",
				Scale: cubicFoot + " / 1728",
				Also:  []string{"in3", "cu in"}, In: "IP"},
			{Symbol: "gal", Scale: "231 * " + cubicFoot + " / 1728",
				Also: []string{"gallon", "gallons", "galón", "galones"}, In: "IP"},
			{Symbol: "mL", Scale: "1e-6", Also: []string{"ml", "cm³", "cm3", "cc"}, In: "SI"},
			{Symbol: "m³", Func: "CubicMeters", Words: "cubic meters", Scale: "1",
				Also: []string{"m3"}, In: "SI"},
		},
		SI: shown{"L", 2}, IP: shown{"ft³", 3},
	},
	{
		Name: "VolumeFlow", Noun: "volume flow", Is: "a volume flow in cubic meters per second.",
		Units: []unit{
			{Symbol: "L/s", Func: "LitersPerSecond", Words: "liters per second", Scale: "1e-3",
				Also: []string{"l/s"}, In: "SI"},
			{Symbol: "CFM", Func: "CFM",
				Words: "cubic feet per minute at the condition of the air itself",
				Scale: cubicFoot + " / 60", Also: []string{"cfm", "ft3/min", "ft³/min",
					"pcm"}, In: "IP"},
			{Symbol: "m³/h", Func: "CubicMetersPerHour", Words: "cubic meters per hour",
				Scale: "1.0 / 3600", Also: []string{"m3/h", "m3/hr"}, In: "SI"},
			{Symbol: "m³/s", Func: "CubicMetersPerSecond", Words: "cubic meters per second",
				Scale: "1", Also: []string{"m3/s"}},
		},
		SI: shown{"L/s", 0}, IP: shown{"CFM", 0},
	},
	{
		Name: "Power", Noun: "power",
		Is: "a rate of energy in watts: heat moved or electricity used.",
		Units: []unit{
			{Symbol: "kW", Func: "Kilowatts", Words: "kilowatts", Scale: "1e3",
				Also: []string{"kilowatt", "kilowatts"}, In: "SI"},
			{Symbol: "Btu/h", Func: "BtuPerHour", Words: "British thermal units per hour",
				Scale: btuPerHr, Also: []string{"Btu/hr", "Btuh", "Btu per hour"}, In: "IP"},
			{Symbol: "ton", Func: "Tons", Words: "tons of refrigeration, 12,000 Btu/h each",
				Scale: "12000 * " + btuPerHr,
				Also: []string{"tons", "TR", "ton of refrigeration", "tons of refrigeration",
					"tonelada", "toneladas"},
				In: "IP"},
			{Symbol: "kBtu/h", Scale: "1000 * " + btuPerHr,
				Also: []string{"kBtuh", "kBtu/hr", "MBH", "mbh"}, In: "IP"},
			{Symbol: "hp", Scale: "745.69987158227022", In: "IP"},
			{Symbol: "W", Func: "Watts", Words: "watts", Scale: "1",
				Also: []string{"watt", "watts"}, In: "SI"},
		},
		SI: shown{"kW", 2}, IP: shown{"Btu/h", 0},
	},
	{
		Name: "SpecificEnthalpy", Noun: "specific enthalpy",
		Is: "an enthalpy per mass in joules per kilogram, from the datum that the package " +
			"returning it names.",
		Units: []unit{
			{Symbol: "kJ/kg", Func: "KilojoulesPerKilogram", Words: "kilojoules per kilogram",
				Scale: "1e3", In: "SI"},
			{Symbol: "Btu/lb", Func: "BtuPerPound", Words: "British thermal units per pound",
				Scale: "2326", Also: []string{"Btu/lbm"}, In: "IP"},
			{Symbol: "J/kg", Func: "JoulesPerKilogram", Words: "joules per kilogram", Scale: "1"},
		},
		SI: shown{"kJ/kg", 2}, IP: shown{"Btu/lb", 2},
	},
	{
		Name: "SpecificEntropy", Noun: "specific entropy",
		Is: "an entropy per mass in joules per kilogram and kelvin. Specific heat has the " +
			"same unit.",
		Units: []unit{
			{Symbol: "kJ/(kg·K)", Func: "KilojoulesPerKilogramKelvin",
				Words: "kilojoules per kilogram and kelvin", Scale: "1e3",
				Also: []string{"kJ/(kg K)", "kJ/kg-K", "kJ/kgK"}, In: "SI"},
			{Symbol: "Btu/(lb·°R)", Func: "BtuPerPoundRankine",
				Words: "British thermal units per pound and degree Rankine", Scale: "4186.8",
				Also: []string{"Btu/(lb R)", "Btu/lb-R", "Btu/(lb·R)", "Btu/(lb °F)",
					"Btu/lb-F"}, In: "IP"},
			{Symbol: "J/(kg·K)", Func: "JoulesPerKilogramKelvin",
				Words: "joules per kilogram and kelvin", Scale: "1",
				Also: []string{"J/(kg K)", "J/kg-K", "J/kgK"}},
		},
		SI: shown{"kJ/(kg·K)", 4}, IP: shown{"Btu/(lb·°R)", 4},
	},
	{
		Name: "Density", Noun: "density", Is: "a mass per volume in kilograms per cubic meter.",
		Units: []unit{
			{Symbol: "kg/m³", Func: "KilogramsPerCubicMeter",
				Words: "kilograms per cubic meter", Scale: "1", Also: []string{"kg/m3"},
				In: "SI"},
			{Symbol: "lb/ft³", Func: "PoundsPerCubicFoot", Words: "pounds per cubic foot",
				Scale: "Pound / (" + cubicFoot + ")",
				Also:  []string{"lb/ft3", "lbm/ft3", "pcf"}, In: "IP"},
			{Symbol: "kg/L", Scale: "1e3", Also: []string{"kg/l"}, In: "SI"},
		},
		SI: shown{"kg/m³", 3}, IP: shown{"lb/ft³", 4},
	},
	{
		Name: "SpecificVolume", Noun: "specific volume",
		Is: "a volume per mass in cubic meters per kilogram. For moist air the mass is that " +
			"of the dry air.",
		Units: []unit{
			{Symbol: "m³/kg", Func: "CubicMetersPerKilogram",
				Words: "cubic meters per kilogram", Scale: "1", Also: []string{"m3/kg"},
				In: "SI"},
			{Symbol: "ft³/lb", Func: "CubicFeetPerPound", Words: "cubic feet per pound",
				Scale: cubicFoot + " / Pound", Also: []string{"ft3/lb", "ft3/lbm"}, In: "IP"},
		},
		SI: shown{"m³/kg", 4}, IP: shown{"ft³/lb", 3},
	},
	{
		Name: "Velocity", Noun: "velocity", Is: "a speed in meters per second.",
		Units: []unit{
			{Symbol: "m/s", Func: "MetersPerSecond", Words: "meters per second", Scale: "1",
				In: "SI"},
			{Symbol: "ft/min", Func: "FeetPerMinute", Words: "feet per minute",
				Scale: "Foot / 60", Also: []string{"fpm"}, In: "IP"},
		},
		SI: shown{"m/s", 2}, IP: shown{"ft/min", 0},
	},
	{
		Name: "Area", Noun: "area", Is: "an area in square meters.",
		Units: []unit{
			{Symbol: "m²", Func: "SquareMeters", Words: "square meters", Scale: "1",
				Also: []string{"m2"}, In: "SI"},
			{Symbol: "ft²", Func: "SquareFeet", Words: "square feet", Scale: "Foot * Foot",
				Also: []string{"ft2", "sq ft", "sqft"}, In: "IP"},
			{Symbol: "in²", Func: "SquareInches", Words: "square inches",
				Scale: "Foot * Foot / 144", Also: []string{"in2", "sq in"}, In: "IP"},
			{Symbol: "cm²", Scale: "1e-4", Also: []string{"cm2"}, In: "SI"},
		},
		SI: shown{"m²", 3}, IP: shown{"ft²", 2},
	},
	{
		Name: "Length", Noun: "length",
		Is: "a length in meters; an elevation is one above sea level.",
		Units: []unit{
			{Symbol: "m", Func: "Meters", Words: "meters", Scale: "1",
				Also: []string{"meter", "meters", "metre", "metres", "metro", "metros"}, In: "SI"},
			{Symbol: "ft", Func: "Feet", Words: "feet", Scale: "Foot",
				Also: []string{"'", "foot", "feet", "pie", "pies"}, In: "IP"},
			{Symbol: "in", Func: "Inches", Words: "inches", Scale: "Foot / 12",
				Also: []string{"\"", "in.", "inch", "inches", "pulg", "pulg.", "pulgada",
					"pulgadas"}, In: "IP"},
			{Symbol: "mm", Func: "Millimeters", Words: "millimeters", Scale: "1e-3", In: "SI"},
			{Symbol: "cm", Scale: "1e-2"},
		},
		// Bores and diameters read in millimeters and inches.
		SI: shown{"m", 2}, IP: shown{"ft", 1},
		Fine: "Foot", FineSI: shown{"mm", 1}, FineIP: shown{"in", 3},
		Compound: true,
	},
	{
		Name: "Current", Noun: "current", Is: "an electric current in amperes.",
		Units: []unit{
			{Symbol: "A", Func: "Amperes", Words: "amperes", Scale: "1",
				Also: []string{"amp", "amps", "ampere", "amperes", "amperio",
					"amperios"}, In: "SI IP"},
		},
		SI: shown{"A", 1}, IP: shown{"A", 1},
	},
	{
		Name: "Voltage", Noun: "voltage", Is: "an electric potential difference in volts.",
		Units: []unit{
			{Symbol: "V", Func: "Volts", Words: "volts", Scale: "1",
				Also: []string{"volt", "volts", "voltio", "voltios"}, In: "SI IP"},
			{Symbol: "kV", Scale: "1e3"},
		},
		SI: shown{"V", 1}, IP: shown{"V", 1},
	},
	{
		Name: "Frequency", Noun: "frequency", Is: "a frequency in hertz: that of the supply.",
		Units: []unit{
			{Symbol: "Hz", Func: "Hertz", Words: "hertz", Scale: "1",
				Also: []string{"hertz", "cps"}, In: "SI IP"},
			{Symbol: "kHz", Scale: "1e3"},
		},
		SI: shown{"Hz", 1}, IP: shown{"Hz", 1},
	},
	{
		Name: "Resistance", Noun: "resistance",
		Is: "an electric resistance in ohms: of a winding, or of its insulation against " +
			"earth.",
		Units: []unit{
			{Symbol: "Ω", Func: "Ohms", Words: "ohms", Scale: "1",
				Also: []string{"ohm", "ohms", "ohmio", "ohmios"}, In: "SI IP"},
			{Symbol: "kΩ", Scale: "1e3", Also: []string{"kohm", "kilohm", "kilohms"}, In: "SI IP"},
			{Symbol: "MΩ", Func: "Megohms", Words: "megohms, the measure of insulation",
				Scale: "1e6", Also: []string{"megohm", "megohms", "megohmio", "megohmios",
					"Mohm"}, In: "SI IP"},
		},
		// A winding reads in ohms; above a thousand it is a sensor or insulation.
		SI: shown{"MΩ", 2}, IP: shown{"MΩ", 2},
		Fine: "1e4", FineSI: shown{"Ω", 2}, FineIP: shown{"Ω", 2},
	},
	{
		Name: "Capacitance", Noun: "capacitance", Is: "an electric capacitance in farads.",
		Units: []unit{
			{Symbol: "µF", Func: "Microfarads",
				Words: "microfarads, the measure of a run capacitor", Scale: "1e-6",
				Also: []string{"uF", "mfd", "microfarad", "microfarads", "microfaradio",
					"microfaradios"}, In: "SI IP"},
			{Symbol: "F", Func: "Farads", Words: "farads", Scale: "1",
				Also: []string{"farad", "farads"}},
		},
		SI: shown{"µF", 1}, IP: shown{"µF", 1},
	},
	{
		Name: "Conductance", Noun: "conductance",
		Is: "the heat flow of a heat exchanger per degree between its two sides, UA, in watts " +
			"per kelvin.",
		Units: []unit{
			{Symbol: "W/K", Func: "WattsPerKelvin", Words: "watts per kelvin", Scale: "1",
				In: "SI"},
			{Symbol: "Btu/(h·°F)", Func: "BtuPerHourFahrenheit",
				Words: "British thermal units per hour and degree Fahrenheit",
				Scale: btuPerHr + " * 1.8", Also: []string{"Btu/h/F", "Btu/(h F)"}, In: "IP"},
			{Symbol: "kW/K", Scale: "1e3", In: "SI"},
		},
		SI: shown{"W/K", 0}, IP: shown{"Btu/(h·°F)", 0},
	},
	{
		Name: "HeatingValue", Noun: "heating value",
		Is: "the heat that a volume of fuel gas gives when it burns, in joules per cubic " +
			"meter. The gas utility states it for the gas as it is metered.",
		Units: []unit{
			{Symbol: "MJ/m³", Func: "MegajoulesPerCubicMeter",
				Words: "megajoules per cubic meter", Scale: "1e6", Also: []string{"MJ/m3"},
				In: "SI"},
			{Symbol: "Btu/ft³", Func: "BtuPerCubicFoot",
				Words: "British thermal units per cubic foot",
				Scale: "BTU / (" + cubicFoot + ")", Also: []string{"Btu/ft3", "Btu/cu ft"},
				In: "IP"},
			{Symbol: "J/m³", Scale: "1", Also: []string{"J/m3"}},
		},
		SI: shown{"MJ/m³", 2}, IP: shown{"Btu/ft³", 0},
	},
	{
		Name: "Ratio", Noun: "ratio",
		Is: "a plain ratio that people write in percent: a relative humidity, a share, a " +
			"chance. A ratio of 1 is 100 %.",
		Units: []unit{
			{Symbol: "%", Func: "Percent", Words: "percent", Scale: "1e-2",
				Also: []string{"percent", "pct", "per cent", "por ciento"}, In: "SI IP"},
			{Symbol: "of 1", Scale: "1"},
		},
		// An unbalance of two percent is not one of one.
		SI: shown{"%", 0}, IP: shown{"%", 0},
		Fine: "0.1", FineSI: shown{"%", 1}, FineIP: shown{"%", 1},
	},
}
