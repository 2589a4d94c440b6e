package electrical

import "github.com/satline/satline/quantity/fact"

// A kind is what may be found: what it means, and what is done about it.
type kind struct {
	outcome fact.Outcome
	source  fact.Source
	danger  bool
	grave   bool
	stops   bool
	// leans says that it proves nothing while something before it in the chain is wrong.
	leans bool
	does  []fact.Code
}

// kinds by the code of the check. Sentences have the same code.
var kinds = map[fact.Code]kind{
	"electrical.supply-within": {outcome: fact.Sound, source: voltageBand},
	"electrical.supply-near":   {outcome: fact.CannotTell, source: voltageBand},
	"electrical.supply-dead":   {outcome: fact.Wrong, source: practice, does: steps(findSupply)},
	"electrical.supply-low":    {outcome: fact.Wrong, source: voltageBand, does: steps(mendSupply)},
	"electrical.supply-low-running": {
		outcome: fact.Wrong, source: voltageBand, danger: true, grave: true, stops: true,
		does: steps(mendConnections),
	},
	"electrical.supply-low-starting": {
		outcome: fact.Wrong, source: practice, does: steps(mendConnections),
	},
	"electrical.supply-high": {
		outcome: fact.Wrong, source: voltageBand, danger: true, stops: true, grave: true,
		does: steps(mendSupply),
	},
	"electrical.drop-within": {outcome: fact.Sound, source: dropNote},
	"electrical.drop-large":  {outcome: fact.Wrong, source: dropNote, does: steps(mendConnections)},
	"electrical.phase-lost": {
		outcome: fact.Wrong, source: practice, danger: true, grave: true, stops: true,
		does: steps(findPhase),
	},
	"electrical.unbalance-within": {outcome: fact.Sound, source: unbalanced},
	"electrical.unbalance-high":   {outcome: fact.Watch, source: unbalanced},
	"electrical.unbalance-highest": {
		outcome: fact.Wrong, source: unbalanced, danger: true, grave: true, stops: true,
		does: steps(mendSupply),
	},

	"electrical.control-within": {outcome: fact.Sound, source: coilBand},
	"electrical.control-dead":   {outcome: fact.Wrong, source: practice, does: steps(findControl)},
	"electrical.control-low":    {outcome: fact.Wrong, source: coilBand, does: steps(mendControl)},
	"electrical.control-high": {
		outcome: fact.Wrong, source: classTwo, danger: true, does: steps(mendControl),
	},
	"electrical.switch-closed": {outcome: fact.Sound, source: practice},
	"electrical.switch-poor":   {outcome: fact.Watch, source: practice},
	"electrical.switch-open":   {outcome: fact.Wrong, source: practice},
	"electrical.coil-fed":      {outcome: fact.Sound, source: coilBand},
	"electrical.coil-low":      {outcome: fact.Wrong, source: coilBand, does: steps(mendControl)},
	"electrical.coil-dead": {
		outcome: fact.Wrong, source: practice, leans: true, does: steps(readSwitches),
	},

	"electrical.contactor-in": {outcome: fact.Sound, source: practice},
	"electrical.contactor-out": {
		outcome: fact.Wrong,
		source:  practice,
		does:    steps(mendContactor),
	},
	"electrical.contactor-idle": {outcome: fact.Watch, source: practice},
	"electrical.contactor-stuck": {
		outcome: fact.Wrong, source: practice, danger: true, grave: true, stops: true,
		does: steps(mendContactor),
	},
	"electrical.contactor-pitted": {
		outcome: fact.Wrong,
		source:  practice,
		does:    steps(mendContactor),
	},
	"electrical.contact-within": {outcome: fact.Sound, source: practice},
	"electrical.contact-worn": {
		outcome: fact.Wrong,
		source:  practice,
		does:    steps(mendContactor),
	},
	"electrical.contact-burnt": {
		outcome: fact.Wrong, source: practice, danger: true, grave: true, stops: true,
		does: steps(mendContactor),
	},
	"electrical.contact-open": {outcome: fact.Wrong, source: practice, does: steps(mendContactor)},

	"electrical.capacitor-within": {outcome: fact.Sound, source: label},
	"electrical.capacitor-near":   {outcome: fact.CannotTell, source: label},
	"electrical.capacitor-weak":   {outcome: fact.Wrong, source: label, does: steps(mendCapacitor)},
	"electrical.capacitor-high":   {outcome: fact.Wrong, source: label, does: steps(mendCapacitor)},
	"electrical.capacitor-bulged": {
		outcome: fact.Wrong, source: practice, danger: true, grave: true, stops: true,
		does: steps(mendCapacitor),
	},
	"electrical.capacitor-voltage": {
		outcome: fact.Wrong,
		source:  aboveRated,
		does:    steps(mendCapacitor),
	},

	"electrical.insulation-within": {outcome: fact.Sound, source: insulation},
	"electrical.insulation-low":    {outcome: fact.Watch, source: insulation},
	"electrical.grounded": {
		outcome: fact.Wrong, source: insulation, danger: true, grave: true, stops: true,
		does: steps(proveGround),
	},
	"electrical.windings-within": {outcome: fact.Sound, source: practice},
	"electrical.windings-off":    {outcome: fact.Watch, source: practice},
	"electrical.winding-open": {
		outcome: fact.Wrong,
		source:  practice,
		does:    steps(proveWinding),
	},
	"electrical.overload-open": {outcome: fact.Wrong, source: practice, does: steps(letCool)},
	"electrical.tight":         {outcome: fact.Wrong, source: practice, does: steps(mendMotor)},
	"electrical.terminals-fed": {outcome: fact.Sound, source: practice},
	"electrical.terminals-dead": {
		outcome: fact.Wrong, source: practice, leans: true, does: steps(findOpenWire),
	},
	"electrical.backwards": {
		outcome: fact.Wrong, source: practice, danger: true, grave: true, stops: true,
	},
	"electrical.fan-stands": {
		outcome: fact.Wrong, source: practice, danger: true, grave: true, stops: true, leans: true,
	},
	"electrical.fan-backwards":      {outcome: fact.Wrong, source: practice},
	"electrical.current-within":     {outcome: fact.Sound, source: label},
	"electrical.current-over-rated": {outcome: fact.Watch, source: label},
	"electrical.current-little":     {outcome: fact.Watch, source: practice},
	"electrical.current-none":       {outcome: fact.Watch, source: practice},
	"electrical.current-highest": {
		outcome: fact.Wrong, source: overload, danger: true, grave: true, stops: true, leans: true,
		does: steps(findLoad),
	},
	"electrical.fan-current-highest": {
		outcome: fact.Wrong, source: fanOverload, danger: true, stops: true, leans: true,
		does: steps(findFanLoad),
	},
	"electrical.locked": {
		outcome: fact.Wrong, source: practice, danger: true, grave: true, stops: true, leans: true,
	},
	"electrical.current-balanced": {outcome: fact.Sound, source: practice},
	"electrical.current-unbalanced": {
		outcome: fact.Wrong, source: practice, leans: true, does: steps(findUnbalance),
	},
	"electrical.single-phase": {
		outcome: fact.Wrong, source: practice, danger: true, grave: true, stops: true, leans: true,
		does: steps(findPhase),
	},
}

func steps(codes ...fact.Code) []fact.Code { return codes }

// Codes of the steps.
const (
	lockOut         fact.Code = "electrical.do.lock-out"
	findSupply      fact.Code = "electrical.do.find-supply"
	mendSupply      fact.Code = "electrical.do.mend-supply"
	mendConnections fact.Code = "electrical.do.mend-connections"
	findPhase       fact.Code = "electrical.do.find-phase"
	findControl     fact.Code = "electrical.do.find-control"
	mendControl     fact.Code = "electrical.do.mend-control"
	mendContactor   fact.Code = "electrical.do.mend-contactor"
	mendCapacitor   fact.Code = "electrical.do.mend-capacitor"
	proveGround     fact.Code = "electrical.do.prove-ground"
	proveWinding    fact.Code = "electrical.do.prove-winding"
	letCool         fact.Code = "electrical.do.let-cool"
	whyTripped      fact.Code = "electrical.do.why-tripped"
	mendMotor       fact.Code = "electrical.do.mend-motor"
	findOpenWire    fact.Code = "electrical.do.find-open-wire"
	swapLines       fact.Code = "electrical.do.swap-lines"
	swapLeads       fact.Code = "electrical.do.swap-leads"
	proveLocked     fact.Code = "electrical.do.prove-locked"
	turnFan         fact.Code = "electrical.do.turn-fan"
	findLoad        fact.Code = "electrical.do.find-load"
	findFanLoad     fact.Code = "electrical.do.find-fan-load"
	findUnbalance   fact.Code = "electrical.do.find-unbalance"
	freeCompressor  fact.Code = "electrical.do.free-compressor"
	readSupply      fact.Code = "electrical.do.read-supply"
	readControl     fact.Code = "electrical.do.read-control"
	readSwitches    fact.Code = "electrical.do.read-switches"
	seeContactor    fact.Code = "electrical.do.see-contactor"
	readTerminals   fact.Code = "electrical.do.read-terminals"
	readCapacitor   fact.Code = "electrical.do.read-capacitor"
	readFan         fact.Code = "electrical.do.read-fan"
	readBoard       fact.Code = "electrical.do.read-board"
	readWindings    fact.Code = "electrical.do.read-windings"
	readGround      fact.Code = "electrical.do.read-ground"
	readCurrents    fact.Code = "electrical.do.read-currents"
	startAndRead    fact.Code = "electrical.do.start-and-read"
	goOn            fact.Code = "electrical.do.go-on"
)

// switchSteps are what is done about an open switch. None is bridged to make it run.
var switchSteps = map[Switch]fact.Code{
	OtherSwitch:        "electrical.do.switch-other",
	FloatSwitch:        "electrical.do.switch-float",
	HighPressureSwitch: "electrical.do.switch-high-pressure",
	LowPressureSwitch:  "electrical.do.switch-low-pressure",
	ThermostatContact:  "electrical.do.switch-thermostat",
	DelayTimer:         "electrical.do.switch-delay",
	ControlFuse:        "electrical.do.switch-fuse",
	DoorSwitch:         "electrical.do.switch-door",
}

// ways in which steps are done.
var ways = map[fact.Code]Step{
	lockOut:         {Stops: true},
	findSupply:      {Live: true},
	mendConnections: {Locked: true},
	findPhase:       {Locked: true},
	findControl:     {Live: true},
	mendControl:     {Live: true},
	mendContactor:   {Locked: true},
	mendCapacitor:   {Locked: true},
	proveGround:     {Locked: true},
	proveWinding:    {Locked: true},
	letCool:         {Locked: true},
	mendMotor:       {Locked: true},
	findOpenWire:    {Locked: true},
	swapLines:       {Locked: true},
	swapLeads:       {Locked: true},
	proveLocked:     {Locked: true},
	turnFan:         {Locked: true},
	findFanLoad:     {Locked: true},
	findUnbalance:   {Locked: true},
	freeCompressor:  {Locked: true},
	readSupply:      {Live: true},
	readControl:     {Live: true},
	readSwitches:    {Live: true},
	readTerminals:   {Live: true},
	readCapacitor:   {Locked: true},
	readFan:         {Locked: true},
	readBoard:       {Live: true},
	readWindings:    {Locked: true},
	readGround:      {Locked: true},
	readCurrents:    {Live: true},
	startAndRead:    {Starts: true, Live: true},
}
