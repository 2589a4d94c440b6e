package satline

import "github.com/satline/satline/internal/judge/modes"

// Codes of the steps of a plan. The words of a step have the same code; what a step does to
// the machine stands in its Effect.
const (
	StepAskMode        = modes.AskMode
	StepAskDevice      = modes.AskDevice
	StepMakersChart    = modes.MakersChart
	StepStop           = modes.Stop
	StepStartAgain     = modes.StartAgain
	StepOutdoorFan     = modes.OutdoorFan
	StepOutdoorCoil    = modes.OutdoorCoil
	StepOpenValves     = modes.OpenValves
	StepSeeRuns        = modes.SeeRuns
	StepClearDrain     = modes.ClearDrain
	StepPourWater      = modes.PourWater
	StepOtherWater     = modes.OtherWater
	StepVoltage        = modes.Voltage
	StepFeelCompressor = modes.FeelCompressor
	StepThaw           = modes.Thaw
	StepWhyFroze       = modes.WhyFroze
	StepPanelsOn       = modes.PanelsOn
	StepRunOn          = modes.RunOn
	StepWait           = modes.Wait
	StepDryCoil        = modes.DryCoil
	StepHoldFan        = modes.HoldFan
	StepCloseDamper    = modes.CloseDamper
	StepCloseDoors     = modes.CloseDoors
	StepWarmerDay      = modes.WarmerDay
	StepHouseRule      = modes.HouseRule
	StepSettle         = modes.Settle
	StepRead           = modes.Read
	StepReadAgain      = modes.ReadAgain
	StepReread         = modes.Reread
	StepCleanFilter    = modes.CleanFilter
	StepCleanOutdoor   = modes.CleanOutdoor
	StepLeave          = modes.Leave
	StepAskUse         = modes.AskUse
	StepWhyLiquid      = modes.WhyLiquid
	StepLeaveCharge    = modes.LeaveCharge
	StepChargeStays    = modes.ChargeStays
	StepWholeFirst     = modes.WholeFirst
	StepAdd            = modes.Add
	StepAddLittle      = modes.AddLittle
	StepRecover        = modes.Recover
	StepRecoverLittle  = modes.RecoverLittle
	StepFindLeak       = modes.FindLeak
	StepRecoverRest    = modes.RecoverRest
	StepRecoverWeigh   = modes.RecoverWeigh
	StepMendLeak       = modes.MendLeak
	StepNitrogen       = modes.Nitrogen
	StepEvacuate       = modes.Evacuate
	StepWeighIn        = modes.WeighIn
	StepWeighInLabel   = modes.WeighInLabel
	StepMeasureLine    = modes.MeasureLine
	StepHalt           = modes.Halt
	StepValveHunts     = modes.ValveHunts
	StepReadLabel      = modes.ReadLabel
)
