package modes

import "github.com/satline/satline/quantity/fact"

// Codes of the steps of a plan. The words of a step have the same code.
const (
	AskMode        fact.Code = "step.ask-mode"
	AskDevice      fact.Code = "step.ask-device"
	MakersChart    fact.Code = "step.makers-chart"
	Stop           fact.Code = "step.stop"
	StartAgain     fact.Code = "step.start-again"
	OutdoorFan     fact.Code = "step.outdoor-fan"
	OutdoorCoil    fact.Code = "step.outdoor-coil"
	OpenValves     fact.Code = "step.open-valves"
	SeeRuns        fact.Code = "step.see-runs"
	ClearDrain     fact.Code = "drain.do.clear"
	PourWater      fact.Code = "drain.do.pour"
	OtherWater     fact.Code = "step.other-water"
	Voltage        fact.Code = "step.voltage"
	FeelCompressor fact.Code = "step.feel-compressor"
	Thaw           fact.Code = "step.thaw"
	WhyFroze       fact.Code = "step.why-froze"
	WhyFrozeBeside fact.Code = "step.why-froze-beside"
	PanelsOn       fact.Code = "step.panels-on"
	RunOn          fact.Code = "step.run-on"
	Wait           fact.Code = "step.wait"
	DryCoil        fact.Code = "step.dry-coil"
	HoldFan        fact.Code = "step.hold-fan"
	CloseDamper    fact.Code = "step.close-damper"
	WhyRuns        fact.Code = "step.why-runs"
	FullCapacity   fact.Code = "step.full-capacity"
	CloseDoors     fact.Code = "step.close-doors"
	WarmerDay      fact.Code = "step.warmer-day"
	HouseRule      fact.Code = "step.house-rule"
	Settle         fact.Code = "step.settle"
	Read           fact.Code = "step.read"
	ReadAgain      fact.Code = "step.read-again"
	Reread         fact.Code = "step.reread"
	CleanFilter    fact.Code = "step.clean-filter"
	CleanOutdoor   fact.Code = "step.clean-outdoor"
	Leave          fact.Code = "step.leave"
	WhyCurrent     fact.Code = "step.why-current"
	FindNoise      fact.Code = "step.find-noise"
	AskUse         fact.Code = "step.ask-use"
	WhyLiquid      fact.Code = "step.why-liquid"
	LeaveCharge    fact.Code = "step.leave-charge"
	ChargeStays    fact.Code = "step.charge-stays"
	WholeFirst     fact.Code = "step.whole-first"
	Add            fact.Code = "step.add"
	AddLittle      fact.Code = "step.add-little"
	Recover        fact.Code = "step.recover"
	RecoverLittle  fact.Code = "step.recover-little"
	FindLeak       fact.Code = "step.find-leak"
	RecoverRest    fact.Code = "step.recover-rest"
	RecoverWeigh   fact.Code = "step.recover-weigh"
	MendLeak       fact.Code = "step.mend-leak"
	Nitrogen       fact.Code = "step.nitrogen"
	Evacuate       fact.Code = "step.evacuate"
	WeighIn        fact.Code = "step.weigh-in"
	WeighInLabel   fact.Code = "step.weigh-in-label"
	MeasureLine    fact.Code = "step.measure-line"
	Halt           fact.Code = "step.halt"
	ValveHunts     fact.Code = "step.valve-hunts"
	ReadLabel      fact.Code = "step.read-label"
)

// effects says what each step does to the machine; those not named do nothing to it.
var effects = map[fact.Code]Effect{
	Stop:           {Stops: true},
	Thaw:           {Stops: true},
	StartAgain:     {Starts: true},
	RunOn:          {Running: true, Waits: true},
	Wait:           {Running: true, Waits: true},
	Settle:         {Running: true, Waits: true},
	DryCoil:        {Running: true, Waits: true},
	Read:           {Running: true},
	ReadAgain:      {Running: true},
	Reread:         {Running: true},
	HoldFan:        {Running: true},
	FullCapacity:   {Running: true},
	FeelCompressor: {Running: true},
	Add:            {Running: true, Moves: true, Adds: true},
	AddLittle:      {Running: true, Moves: true, Adds: true},
	Recover:        {Running: true, Moves: true},
	RecoverLittle:  {Running: true, Moves: true},
	RecoverRest:    {Moves: true, Stops: true},
	RecoverWeigh:   {Moves: true, Stops: true},
	MendLeak:       {Opens: true},
	WeighIn:        {Moves: true, Adds: true},
	WeighInLabel:   {Moves: true, Adds: true},
}
