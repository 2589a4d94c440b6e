package diagnose

import (
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

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

var circuitTraits = []traits{
	{
		code: Undercharge, prior: 0.13, size: asShare, tabled: true, further: []further{
			{steps: 1.4, severity: 0.55},
		},
		cost:     cost{40, 220, "a coil that freezes, a compressor that runs hot, a leak that goes on"},
		opposite: Overcharge,
	},
	{
		code: Overcharge, prior: 0.06, size: asShare, tabled: true, further: []further{
			{steps: 1, severity: 0.55},
		},
		cost:     cost{30, 160, "a high head, and liquid at the compressor on a fixed restrictor"},
		opposite: Undercharge,
	},
	{
		code: NonCondensables, prior: 0.02, tabled: true,
		cost: cost{180, 160, "a high head and acid; only a new charge ends it"},
	},
	{
		code: Restriction, prior: 0.045, size: asShare, tabled: true, further: []further{
			{steps: 1, severity: 0.76}, {steps: 3, severity: 0.9},
		},
		cost:     cost{120, 260, "a starved coil and a hot compressor at any charge"},
		opposite: Overfeed,
	},
	{
		code: Overfeed, prior: 0.03, size: asShare, tabled: true,
		cost:     cost{45, 260, "liquid washes the oil out of the compressor"},
		opposite: Restriction,
	},
	{
		code: VaporLeak, prior: 0.025, size: asShare, tabled: true, further: []further{
			{steps: 1.2, severity: 0.55},
		},
		cost: cost{60, 160, "no capacity; the dearest part is proved before it is condemned"},
	},
	{
		code: OtherRefrigerant, prior: 0.006,
		cost: cost{4, 260, "every figure is of another fluid"},
	},
}

// ofFlow are the dangers of what a compressor draws in: nothing, where it does not pump.
var ofFlow = []string{"floodback", "superheat-low", "slugging", "discharge-cool"}

var circuitFaults = []Fault{
	// refrigerant undercharge: too little refrigerant leaves the condenser with little or no
	// liquid and the evaporator starved: less of it boils, at a lower pressure, and what boils
	// is superheated early. A TXV opens to hold the superheat until it is fully open; on it
	// the subcooling falls first.
	{
		Code: Undercharge, Kind: Circuit, Signature: Undercharge, Share: 1,
		Sources: []fact.Source{rossiBraun, breukerBraun, farzadONeal, kim},
	},
	// refrigerant overcharge: liquid backs up in the condenser, leaving less of it to condense
	// with: condensing pressure and subcooling rise. A fixed restrictor passes more at the
	// higher pressure and floods the evaporator; a TXV closes and holds the superheat.
	{
		Code: Overcharge, Kind: Circuit, Signature: Overcharge, Share: 1,
		Sources: []fact.Source{farzadONeal, kim, breukerBraun},
	},
	// non-condensable gas in the circuit: air or nitrogen gathers in the condenser. Its
	// pressure adds to that of the refrigerant (Dalton), so the gauge reads a condensing
	// temperature that is not there, and its film hinders condensation.
	{
		Code: NonCondensables, Kind: Circuit, Opens: true, Signature: NonCondensables, Share: 1,
		Sources: []fact.Source{kim, liBraun},
	},
	// restricted liquid line or filter drier: a pressure drop ahead of the metering device
	// takes from the pressure that drives it: the evaporator starves while the liquid backs up
	// in the condenser.
	{
		Code: "liquid-line-restriction", Kind: Circuit, Running: true, Opens: true,
		Signature: Restriction, Share: 0.45,
		Sources: []fact.Source{rossiBraun, breukerBraun, kim},
	},
	// liquid line shut (service valve, solenoid valve): where nothing passes, the compressor
	// pumps the indoor side down and all liquid stands in the condenser at the temperature of
	// the air.
	{
		Code: lineShut, Kind: Circuit, Signature: Restriction, Variant: string(lineShut),
		Share:   0.06,
		Sources: []fact.Source{practice},
	},
	// restrictor too small or plugged: the fixed opening is smaller than the machine needs, by
	// a wrong part or by dirt; downstream of the liquid line it acts as a restriction in it.
	{
		Code: "restrictor-small", Kind: Circuit, Opens: true, Signature: Restriction, Share: 0.3,
		Devices: []refrigerant.Metering{refrigerant.FixedRestrictor},
		Sources: []fact.Source{acca, practice},
	},
	// expansion valve starving the coil: a valve that cannot open (a bulb that lost its
	// charge, a plugged screen, a stuck stem, a superheat set too high) passes too little;
	// liquid backs up in the condenser.
	{
		Code: "valve-starving", Kind: Circuit, Running: true, Signature: Restriction, Share: 0.4,
		Devices: []refrigerant.Metering{refrigerant.TXV},
		Sources: []fact.Source{kim, practice},
	},
	// electronic expansion valve starving the coil: a valve that does not open (a sensor that
	// reads low, a plugged screen, a motor that lost its steps, a superheat set too high)
	// passes too little; liquid backs up in the condenser.
	{
		Code: "electronic-starving", Kind: Circuit, Running: true,
		Signature: Restriction, Share: 0.4,
		Devices: []refrigerant.Metering{refrigerant.EXV},
		Sources: []fact.Source{practice},
	},
	// restrictor too large or not seated: too large an opening (a wrong part, or a piston held
	// off its seat by dirt) passes liquid faster than the coil can boil it and empties the
	// condenser.
	{
		Code: "restrictor-large", Kind: Circuit, Opens: true, Signature: Overfeed, Share: 1,
		Devices: []refrigerant.Metering{refrigerant.FixedRestrictor},
		Sources: []fact.Source{acca, practice},
	},
	// TXV bulb loose or valve overfeeding: a bulb that feels warmer than the pipe (loose, not
	// insulated, in a warm place), a superheat set too low, or a valve stuck open feeds more
	// than the coil can boil.
	{
		Code: "valve-overfeeding", Kind: Circuit, Signature: Overfeed, Share: 1,
		Devices: []refrigerant.Metering{refrigerant.TXV},
		Sources: []fact.Source{kim, practice},
	},
	// electronic expansion valve overfeeding: a sensor that feels warmer than the pipe, a
	// superheat set too low, or a valve that lost its steps or stuck open feeds more than the
	// coil can boil.
	{
		Code: "electronic-overfeeding", Kind: Circuit, Signature: Overfeed, Share: 1,
		Devices: []refrigerant.Metering{refrigerant.EXV},
		Sources: []fact.Source{practice},
	},
	// compressor leaking within (valves or scroll): hot discharge gas leaks back to the
	// suction side: the compressor moves less refrigerant and heats what it moves.
	{
		Code: "compressor-valves", Kind: Circuit, Running: true, Signature: VaporLeak, Share: 0.8,
		Sources: []fact.Source{rossiBraun, breukerBraun, kim},
	},
	// reversing valve leaking: hot gas crosses the slide of the reversing valve into the
	// suction passage: to the gauges it is a compressor that leaks within.
	{
		Code: "reversing-valve-leak", Kind: Circuit, Running: true,
		Signature: VaporLeak, Share: 0.35,
		HeatPump: true,
		Sources:  []fact.Source{kim, practice},
	},
	// next to no refrigerant in the circuit: where no liquid is left, nothing boils and
	// nothing condenses: the head falls below the pressure of liquid at the outdoor
	// temperature, the suction toward or into a vacuum, and the lines stand at the temperature
	// of the air around them.
	{
		Code: NextToEmpty, Kind: Circuit, Signature: NextToEmpty, Share: 1,
		Sources: []fact.Source{practice},
	},
	// compressor running without pumping: broken valves, a sheared shaft or a scroll held
	// apart pass all gas back: both pressures stand close together while the motor turns with
	// little load.
	{
		Code: "compressor-runs-idle", Kind: Circuit, Signature: NotPumping, Share: 0.6,
		Seems:   ofFlow,
		Sources: []fact.Source{practice},
	},
	// compressor turning backwards (three phases): a scroll or screw that turns the wrong way
	// moves nothing, and is loud; it happens where two of three phases were exchanged.
	{
		Code: "compressor-backwards", Kind: Circuit, Signature: NotPumping, Share: 0.15,
		Seems:   ofFlow,
		Sources: []fact.Source{practice},
	},
	// compressor not running: a compressor that stands still lets the pressures equalize, at
	// that of the colder coil.
	{
		Code: compressorStopped, Kind: Circuit, Signature: NotPumping,
		Variant: string(compressorStopped), Share: 0.25,
		Seems:   ofFlow,
		Sources: []fact.Source{practice},
	},
	// gauges set to another refrigerant: the saturation temperatures shown belong to another
	// fluid.
	{
		Code: "refrigerant-selected", Kind: Instrument, Signature: OtherRefrigerant, Share: 0.6,
		Seems:   ofSaturation,
		Sources: []fact.Source{practice},
	},
	// another or a mixed refrigerant in the machine: the fluid boils at other pressures than
	// the one named; a mixture at pressures of its own.
	{
		Code: "wrong-refrigerant", Kind: Circuit, Opens: true, Signature: OtherRefrigerant,
		Share:   0.4,
		Seems:   ofSaturation,
		Sources: []fact.Source{practice},
	},
}
