package satline

import (
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity/fact"
)

// Codes of the steps of a plan. The words of a step have the same code; what a step does to
// the machine stands in its row.
const (
	StepAskMode        fact.Code = "step.ask-mode"
	StepMakersChart    fact.Code = "step.makers-chart"
	StepColdRoomFirst  fact.Code = "step.cold-room-first"
	StepStop           fact.Code = "step.stop"
	StepStartAgain     fact.Code = "step.start-again"
	StepOutdoorFan     fact.Code = "step.outdoor-fan"
	StepOutdoorCoil    fact.Code = "step.outdoor-coil"
	StepOpenValves     fact.Code = "step.open-valves"
	StepSeeRuns        fact.Code = "step.see-runs"
	StepClearDrain     fact.Code = "drain.do.clear"
	StepPourWater      fact.Code = "drain.do.pour"
	StepOtherWater     fact.Code = "step.other-water"
	StepVoltage        fact.Code = "step.voltage"
	StepFeelCompressor fact.Code = "step.feel-compressor"
	StepThaw           fact.Code = "step.thaw"
	StepWhyFroze       fact.Code = "step.why-froze"
	StepPanelsOn       fact.Code = "step.panels-on"
	StepRunOn          fact.Code = "step.run-on"
	StepWait           fact.Code = "step.wait"
	StepDryCoil        fact.Code = "step.dry-coil"
	StepHoldFan        fact.Code = "step.hold-fan"
	StepCloseDamper    fact.Code = "step.close-damper"
	StepCloseDoors     fact.Code = "step.close-doors"
	StepWarmerDay      fact.Code = "step.warmer-day"
	StepHouseRule      fact.Code = "step.house-rule"
	StepSettle         fact.Code = "step.settle"
	StepRead           fact.Code = "step.read"
	StepReadAgain      fact.Code = "step.read-again"
	StepReread         fact.Code = "step.reread"
	StepCleanFilter    fact.Code = "step.clean-filter"
	StepCleanOutdoor   fact.Code = "step.clean-outdoor"
	StepLeave          fact.Code = "step.leave"
	StepWhyLiquid      fact.Code = "step.why-liquid"
	StepLeaveCharge    fact.Code = "step.leave-charge"
	StepAdd            fact.Code = "step.add"
	StepAddLittle      fact.Code = "step.add-little"
	StepRecover        fact.Code = "step.recover"
	StepRecoverLittle  fact.Code = "step.recover-little"
	StepFindLeak       fact.Code = "step.find-leak"
	StepRecoverRest    fact.Code = "step.recover-rest"
	StepMendLeak       fact.Code = "step.mend-leak"
	StepNitrogen       fact.Code = "step.nitrogen"
	StepEvacuate       fact.Code = "step.evacuate"
	StepWeighIn        fact.Code = "step.weigh-in"
	StepWeighInLabel   fact.Code = "step.weigh-in-label"
	StepMeasureLine    fact.Code = "step.measure-line"
	StepHalt           fact.Code = "step.halt"
	StepValveHunts     fact.Code = "step.valve-hunts"
	StepBackToTarget   fact.Code = "step.read-label"
)

// effects says what each step does to the machine; those not named do nothing to it.
var effects = map[fact.Code]Effect{
	StepStop:           {Stops: true},
	StepThaw:           {Stops: true},
	StepStartAgain:     {Starts: true},
	StepRunOn:          {Running: true, Waits: true},
	StepWait:           {Running: true, Waits: true},
	StepSettle:         {Running: true, Waits: true},
	StepDryCoil:        {Running: true, Waits: true},
	StepRead:           {Running: true},
	StepReadAgain:      {Running: true},
	StepReread:         {Running: true},
	StepHoldFan:        {Running: true},
	StepFeelCompressor: {Running: true},
	StepAdd:            {Running: true, Moves: true},
	StepAddLittle:      {Running: true, Moves: true},
	StepRecover:        {Running: true, Moves: true},
	StepRecoverLittle:  {Running: true, Moves: true},
	StepRecoverRest:    {Moves: true, Stops: true},
	StepMendLeak:       {Opens: true},
	StepWeighIn:        {Moves: true},
	StepWeighInLabel:   {Moves: true},
}

// A way is what is done about a condition that spoils the readings.
var ways = map[string]fact.Code{
	"fluid-no-liquid-in-summer": StepMakersChart,
	"fluid-in-vacuum":           StepMakersChart,
	"fluid-toxic-indoors":       StepMakersChart,
	"coil-iced":                 StepThaw,
	"panels-off":                StepPanelsOn,
	"run-short":                 StepRunOn,
	"just-moved":                StepWait,
	"coil-wet":                  StepDryCoil,
	"condenser-fan-cycling":     StepHoldFan,
	"economizer-open":           StepCloseDamper,
	"doors-open":                StepCloseDoors,
	"outdoor-cold":              StepWarmerDay,
	"house":                     StepHouseRule,
}

// cleans is what takes away the dirt of a cause.
var cleans = map[diagnose.Code]fact.Code{
	diagnose.LowIndoorAir: StepCleanFilter,
	diagnose.CondenserAir: StepCleanOutdoor,
}

// secures is what is looked at, with the machine stopped, about a danger.
var secures = map[string][]fact.Code{
	"condensing-highest": {StepOutdoorFan, StepOutdoorCoil},
	"suction-in-vacuum":  {StepOpenValves},
	"current-highest":    {StepVoltage},
}

// secured is the cause that these steps look for.
var secured = map[string]diagnose.Code{"condensing-highest": diagnose.CondenserAir}
