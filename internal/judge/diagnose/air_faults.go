package diagnose

import (
	"github.com/satline/satline/quantity/fact"
)

// Signatures of the air side.
const (
	LowIndoorAir  Code = "low-indoor-airflow"
	HighIndoorAir Code = "high-indoor-airflow"
	ReturnLeak    Code = "return-duct-leak"
	CondenserAir  Code = "condenser-heat-rejection"
)

var airTraits = []traits{
	{
		code: LowIndoorAir, prior: 0.13, size: asShare, tabled: true, further: []further{
			{steps: 1, severity: 0.79},
		},
		cost:     cost{20, 220, "a coil that freezes, and every target off"},
		opposite: HighIndoorAir,
	},
	{
		code: HighIndoorAir, prior: 0.02, size: asShare, tabled: true,
		cost:     cost{20, 50, "little water is taken out of the air"},
		opposite: LowIndoorAir,
	},
	{
		code: ReturnLeak, prior: 0.03, size: asShare, tabled: true,
		cost: cost{45, 110, "hot attic air is cooled in place of the room's"},
	},
	{
		code: CondenserAir, prior: 0.11, size: asShare, tabled: true, further: []further{
			{fanDead, 2.2, 0.88, still}, {fanDead, 3.5, 0.95, still},
		},
		cost: cost{25, 220, "a high head wears the compressor and the bill"},
	},
}

var airFaults = []Fault{
	// dirty filter: less air brings less heat to the coil: it runs colder and drier inside,
	// the split grows while the capacity falls.
	{
		Code: "filter", Kind: Air, Signature: LowIndoorAir, Share: 0.35,
		Sources: []fact.Source{rossiBraun, breukerBraun, kim, acca},
	},
	// blower slow, dirty or turning backwards: as a dirty filter, by the fan itself: a low
	// speed tap, a loose belt, a failing capacitor, a loaded wheel.
	{
		Code: "blower", Kind: Air, Signature: LowIndoorAir, Share: 0.15,
		Sources: []fact.Source{acca, practice},
	},
	// indoor coil dirty: dirt on the coil hinders the air and the heat.
	{
		Code: "indoor-coil", Kind: Air, Signature: LowIndoorAir, Share: 0.2,
		Sources: []fact.Source{rossiBraun, breukerBraun, kim},
	},
	// ice on the indoor coil: ice hinders the air, which makes the coil colder still. It
	// follows from low air, low charge, low load or a cold night, and reads as low air
	// whatever began it.
	{
		Code: "iced-coil", Kind: Air, Signature: LowIndoorAir, Share: 0.1,
		Sources: []fact.Source{practice},
	},
	// closed dampers or too little duct or return: the duct system passes less than the blower
	// would move.
	{
		Code: "ducts", Kind: Air, Signature: LowIndoorAir, Share: 0.2,
		Sources: []fact.Source{acca, practice},
	},
	// too much indoor air: more air keeps the coil warm: it dries the air little.
	{
		Code: HighIndoorAir, Kind: Air, Signature: HighIndoorAir, Share: 1,
		Sources: []fact.Source{acca, practice},
	},
	// hot air leaking into the return duct: attic or outdoor air joins the return past the
	// point where it was read: the coil gets hotter, more humid air than the reading says.
	{
		Code: ReturnLeak, Kind: Air, Signature: ReturnLeak, Share: 1,
		Sources: []fact.Source{acca, practice},
	},
	// dirty or blocked outdoor coil: less outdoor air, or a coat of dirt, needs a larger
	// temperature difference to reject the heat.
	{
		Code: "condenser-coil", Kind: Air, Signature: CondenserAir, Share: 0.62,
		Sources: []fact.Source{rossiBraun, breukerBraun, kim},
	},
	// outdoor fan not turning: without its fan the outdoor coil rejects what still air takes:
	// the head rises until a control or the compressor stops.
	{
		Code: fanDead, Kind: Air, Signature: CondenserAir, Variant: string(fanDead), Share: 0.08,
		Sources: []fact.Source{practice},
	},
	// outdoor fan slow or turning backwards: the fan moves less air over a clean coil.
	{
		Code: "condenser-fan", Kind: Air, Signature: CondenserAir, Share: 0.2,
		Sources: []fact.Source{kim, practice},
	},
	// outdoor unit breathing its own air: discharge air returns to the coil: it sees warmer
	// air than the thermometer in the shade.
	{
		Code: "condenser-recirculation", Kind: Air, Signature: CondenserAir,
		Variant: "condenser-recirculation", Share: 0.18,
		Sources: []fact.Source{practice},
	},
}

// Circumstances: the machine is sound, and the day or the use is not ordinary.
const (
	LowLoad    Code = "low-load"
	LowAmbient Code = "low-ambient"
	Economizer Code = "economizer-open"
	Drain      Code = "drain"
)

// circumstanceTraits have no chance of their own: what is seen, and the weather, make them.
var circumstanceTraits = []traits{
	{code: LowLoad, cost: cost{5, 0, "nothing is wrong with the machine"}},
	{code: LowAmbient, cost: cost{5, 0, "nothing is wrong with the machine"}},
	{code: Economizer, cost: cost{5, 30, "outdoor air is cooled in place of the room's"}},
	{code: Drain, cost: cost{20, 90, "water where it does not belong"}},
}

var circumstances = []Fault{
	// low load or a low set-point: cool or dry return air has little heat to give: the coil
	// runs cold, below freezing in the end, with every part sound.
	{
		Code: LowLoad, Kind: Circumstance, Signature: LowLoad, Share: 1,
		Sources: []fact.Source{practice},
	},
	// cool weather without head-pressure control: cool outdoor air lowers the condensing
	// pressure and so the pressure that drives the metering device: the coil starves and
	// freezes.
	{
		Code: LowAmbient, Kind: Circumstance, Signature: LowAmbient, Share: 1,
		Sources: []fact.Source{practice},
	},
	// economizer open: outdoor air joins the return: the coil does not see the return that was
	// read.
	{
		Code: Economizer, Kind: Circumstance, Signature: Economizer, Share: 1,
		Sources: []fact.Source{practice},
	},
	// drain clogged: slime and rust stop pan, trap or line; the usual cause of water.
	{
		Code: "drain-clogged", Kind: Air, Signature: Drain, Share: 0.75,
		Sources: []fact.Source{practice},
	},
	// condensate trap missing or dry: on a drain at negative pressure air is drawn in through
	// the pipe and holds the water back until it blows off the pan. The circuit reads as
	// sound.
	{
		Code: "missing-trap", Kind: Air, Signature: Drain, Share: 0.25,
		Sources: []fact.Source{practice},
	},
}
