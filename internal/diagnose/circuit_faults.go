package diagnose

// Signatures of the refrigerant circuit.
const (
	Undercharge      Code = "undercharge"
	Overcharge       Code = "overcharge"
	NonCondensables  Code = "non-condensables"
	Restriction      Code = "restriction"
	Overfeed         Code = "overfeed"
	VaporLeak        Code = "vapor-leak"
	OtherRefrigerant Code = "other-refrigerant"
)

var circuitFaults = []Fault{
	{
		Code: Undercharge, Name: "refrigerant undercharge", Kind: Circuit, Signature: Undercharge, Share: 1,
		Physics:  "Too little refrigerant leaves the condenser with little or no liquid and the evaporator starved: less of it boils, at a lower pressure, and what boils is superheated early. A TXV opens to hold the superheat until it is fully open; on it the subcooling falls first.",
		Symptoms: "high superheat (late on a TXV), low subcooling, low suction and condensing pressure, hot discharge, small split; oil at a leak",
		Repair:   "find and mend the leak, then weigh refrigerant in or add it in small steps by the target",
		Why:      "charge is set last: every other fault moves the readings it is set by",
		Sources:  []Source{rossiBraun, breukerBraun, farzadONeal, kim},
	},
	{
		Code: Overcharge, Name: "refrigerant overcharge", Kind: Circuit, Signature: Overcharge, Share: 1,
		Physics:  "Liquid backs up in the condenser, leaving less of it to condense with: condensing pressure and subcooling rise. A fixed restrictor passes more at the higher pressure and floods the evaporator; a TXV closes and holds the superheat.",
		Symptoms: "high subcooling, high condensing pressure, low superheat on a fixed restrictor, high power",
		Repair:   "recover refrigerant in small steps by the target, or recover all and weigh the label charge in",
		Why:      "charge is set last: every other fault moves the readings it is set by",
		Sources:  []Source{farzadONeal, kim, breukerBraun},
	},
	{
		Code: NonCondensables, Name: "non-condensable gas in the circuit", Kind: Circuit, Opens: true, Signature: NonCondensables, Share: 1,
		Physics:  "Air or nitrogen gathers in the condenser. Its pressure adds to that of the refrigerant (Dalton), so the gauge reads a condensing temperature that is not there, and its film hinders condensation.",
		Symptoms: "high condensing pressure with an apparently high subcooling, though the liquid line is not cold; hot discharge, high power; the circuit was open lately",
		Repair:   "prove the gas by the standing pressure; only then recover the charge, evacuate with a decay test, weigh in new refrigerant; renew the drier",
		Why:      "gas cannot be separated from the charge in the field",
		Sources:  []Source{kim, liBraun},
	},
	{
		Code: "liquid-line-restriction", Name: "restricted liquid line or filter drier", Kind: Circuit, Opens: true, Signature: Restriction, Share: 0.45,
		Physics:  "A pressure drop ahead of the metering device takes from the pressure that drives it: the evaporator starves while the liquid backs up in the condenser.",
		Symptoms: "high superheat beside a normal or high subcooling, low suction pressure, a cold or sweating spot on the liquid line or drier",
		Repair:   "find the temperature drop along the liquid line; open the valve, or renew the drier or the kinked tube",
		Why:      "added refrigerant only backs up behind a restriction",
		Sources:  []Source{rossiBraun, breukerBraun, kim},
	},
	{
		Code: lineShut, Name: "liquid line shut (service valve, solenoid valve)", Kind: Circuit, Signature: Restriction, Variant: string(lineShut), Share: 0.06,
		Physics:  "Where nothing passes, the compressor pumps the indoor side down and all liquid stands in the condenser at the temperature of the air.",
		Symptoms: "suction very low or in vacuum, hardly any split, a liquid line as warm as the air with liquid in it",
		Repair:   "see that the service valves are open and that a solenoid valve opens; then look for what is plugged",
		Why:      "a valve costs nothing to open, and added refrigerant only backs up behind it",
		Sources:  []Source{practice},
	},
	{
		Code: "restrictor-small", Name: "restrictor too small or plugged", Kind: Circuit, Opens: true, Signature: Restriction, Share: 0.3,
		Devices:  []Metering{FixedRestrictor},
		Physics:  "The fixed opening is smaller than the machine needs, by a wrong part or by dirt; downstream of the liquid line it acts as a restriction in it.",
		Symptoms: "as a restricted liquid line, without the cold spot ahead of the device; after a change of the outdoor unit, or of the refrigerant",
		Repair:   "compare the number on the restrictor with the outdoor unit's label; clean or change it",
		Why:      "too small an opening starves the coil at any charge, and added refrigerant only backs up behind it",
		Sources:  []Source{acca, practice},
	},
	{
		Code: "valve-starving", Name: "expansion valve starving the coil", Kind: Circuit, Signature: Restriction, Share: 0.4,
		Devices:  []Metering{Thermostatic},
		Physics:  "A valve that cannot open (a bulb that lost its charge, a plugged screen, a stuck stem, a superheat set too high) passes too little; liquid backs up in the condenser.",
		Symptoms: "high superheat on a TXV beside a normal or high subcooling; warming the bulb by hand changes nothing",
		Repair:   "warm the bulb and watch the suction pressure; clean the screen, then set, or change, the valve or its power head",
		Why:      "a valve that does not open starves the coil at any charge, and added refrigerant only backs up behind it",
		Sources:  []Source{kim, practice},
	},
	{
		Code: "electronic-starving", Name: "electronic expansion valve starving the coil", Kind: Circuit, Signature: Restriction, Share: 0.4,
		Devices:  []Metering{Electronic},
		Physics:  "A valve that does not open (a sensor that reads low, a plugged screen, a motor that lost its steps, a superheat set too high) passes too little; liquid backs up in the condenser.",
		Symptoms: "high superheat beside a normal or high subcooling; the controller shows another superheat than the gauges",
		Repair:   "compare the controller's pressure and temperature with the gauges; drive the valve by hand; clean the screen, then change the sensor or the valve",
		Why:      "a valve that does not open starves the coil at any charge, and added refrigerant only backs up behind it",
		Sources:  []Source{practice},
	},
	{
		Code: "restrictor-large", Name: "restrictor too large or not seated", Kind: Circuit, Opens: true, Signature: Overfeed, Share: 1,
		Devices:  []Metering{FixedRestrictor},
		Physics:  "Too large an opening (a wrong part, or a piston held off its seat by dirt) passes liquid faster than the coil can boil it and empties the condenser.",
		Symptoms: "low or no superheat together with a low subcooling; suction pressure high, condensing pressure not high; frost or sweat back to the compressor",
		Repair:   "compare the number on the restrictor with the outdoor unit's label; clean the seat or change it",
		Why:      "liquid is reaching the compressor",
		Sources:  []Source{acca, practice},
	},
	{
		Code: "valve-overfeeding", Name: "TXV bulb loose or valve overfeeding", Kind: Circuit, Signature: Overfeed, Share: 1,
		Devices:  []Metering{Thermostatic},
		Physics:  "A bulb that feels warmer than the pipe (loose, not insulated, in a warm place), a superheat set too low, or a valve stuck open feeds more than the coil can boil.",
		Symptoms: "low or no superheat on a TXV, subcooling below the label, suction pressure high; hunting",
		Repair:   "strap the bulb on clean pipe, at 4 or 8 o'clock, and insulate it; then see the setting; then change the valve",
		Why:      "liquid is reaching the compressor, and the bulb costs nothing to mend",
		Sources:  []Source{kim, practice},
	},
	{
		Code: "electronic-overfeeding", Name: "electronic expansion valve overfeeding", Kind: Circuit, Signature: Overfeed, Share: 1,
		Devices:  []Metering{Electronic},
		Physics:  "A sensor that feels warmer than the pipe, a superheat set too low, or a valve that lost its steps or stuck open feeds more than the coil can boil.",
		Symptoms: "low or no superheat, subcooling below the label, suction pressure high; the controller shows another superheat than the gauges",
		Repair:   "strap the valve's sensor on clean pipe and insulate it; compare what the controller reads with the gauges; then drive the valve by hand, and change it if it does not close",
		Why:      "liquid is reaching the compressor, and the sensor costs nothing to mend",
		Sources:  []Source{practice},
	},
	{
		Code: "compressor-valves", Name: "compressor leaking within (valves or scroll)", Kind: Circuit, Signature: VaporLeak, Share: 0.8,
		Physics:  "Hot discharge gas leaks back to the suction side: the compressor moves less refrigerant and heats what it moves.",
		Symptoms: "high suction pressure with a low condensing pressure, low current, little capacity; the pressures equalize at once when it stops",
		Repair:   "prove the leak (capacity, current, how fast the pressures equalize at a stop) before condemning the compressor",
		Why:      "the dearest repair is proved first, and after everything cheaper",
		Sources:  []Source{rossiBraun, breukerBraun, kim},
	},
	{
		Code: "reversing-valve-leak", Name: "reversing valve leaking", Kind: Circuit, Signature: VaporLeak, Share: 0.35, HeatPump: true,
		Physics:  "Hot gas crosses the slide of the reversing valve into the suction passage: to the gauges it is a compressor that leaks within.",
		Symptoms: "as a leaking compressor, with the suction pipe warmer past the reversing valve than before it",
		Repair:   "compare the suction pipe before and after the reversing valve; cycle it; change it if it still leaks",
		Why:      "to the gauges it is a compressor that leaks within, and it costs less",
		Sources:  []Source{kim, practice},
	},
	{
		Code: NextToEmpty, Name: "next to no refrigerant in the circuit", Kind: Circuit, Signature: NextToEmpty, Share: 1,
		Physics:  "Where no liquid is left, nothing boils and nothing condenses: the head falls below the pressure of liquid at the outdoor temperature, the suction toward or into a vacuum, and the lines stand at the temperature of the air around them.",
		Symptoms: "head below the saturation of the outdoor air, suction very low or in vacuum, hardly any split, no subcooling, a suction line as warm as the room",
		Repair:   "stop the compressor; find and mend the leak, pressure-test with nitrogen, evacuate with a decay test, weigh the label charge in",
		Why:      "a compressor without refrigerant has no cooling and may draw in air through the leak",
		Sources:  []Source{practice},
	},
	{
		Code: "compressor-runs-idle", Name: "compressor running without pumping", Kind: Circuit, Signature: NotPumping, Share: 0.6,
		Physics:  "Broken valves, a sheared shaft or a scroll held apart pass all gas back: both pressures stand close together while the motor turns with little load.",
		Symptoms: "suction and head close together, low current, no split, lines at the temperature of the air",
		Repair:   "prove it (current, pressures at start and stop, an unloading solenoid that is open, the reversing valve) before condemning the compressor",
		Why:      "the dearest repair is proved first",
		Sources:  []Source{practice},
	},
	{
		Code: "compressor-backwards", Name: "compressor turning backwards (three phases)", Kind: Circuit, Signature: NotPumping, Share: 0.15,
		Physics:  "A scroll or screw that turns the wrong way moves nothing, and is loud; it happens where two of three phases were exchanged.",
		Symptoms: "pressures that do not move apart after the start, noise, low current, after work on the supply",
		Repair:   "stop it; on three phases have two of them exchanged by qualified hands, and see the phase monitor",
		Why:      "a compressor that turns backwards ruins itself, and only the wiring is wrong",
		Sources:  []Source{practice},
	},
	{
		Code: compressorStopped, Name: "compressor not running", Kind: Circuit, Signature: NotPumping, Variant: string(compressorStopped), Share: 0.25,
		Physics:  "A compressor that stands still lets the pressures equalize, at that of the colder coil.",
		Symptoms: "no current, both pressures equal, no split",
		Repair:   "find what keeps it from running: thermostat, pressure and safety controls, contactor, capacitor, overload, windings (live parts: qualified hands only)",
		Why:      "nothing can be read at the ports of a machine that stands",
		Sources:  []Source{practice},
	},
	{
		Code: "refrigerant-selected", Name: "gauges set to another refrigerant", Kind: Instrument, Signature: OtherRefrigerant, Share: 0.6,
		Physics:  "The saturation temperatures shown belong to another fluid.",
		Symptoms: "superheat and subcooling both far off, in the sense of the pressure curves, on a machine that cools well",
		Repair:   "read the refrigerant from the unit's label and set the gauges to it",
		Why:      "a setting, mended in a second, before the machine is judged",
		Sources:  []Source{practice},
	},
	{
		Code: "wrong-refrigerant", Name: "another or a mixed refrigerant in the machine", Kind: Circuit, Opens: true, Signature: OtherRefrigerant, Share: 0.4,
		Physics:  "The fluid boils at other pressures than the one named; a mixture at pressures of its own.",
		Symptoms: "pressures off for the temperatures found, at rest as in operation; an earlier repair of unknown origin",
		Repair:   "if the gauges are set as the label says: identify the refrigerant; recover it into a tank of its own, evacuate, renew the drier, weigh in what the label says",
		Why:      "a charge of unknown make cannot be adjusted",
		Sources:  []Source{practice},
	},
}
