package satline

import "github.com/satline/satline/internal/judge/modes"

// Codes of the steps that a program may act on. The words of every step have its code; what it
// does to the machine stands in its Effect.
const (
	StepAskMode       = modes.AskMode
	StepAskDevice     = modes.AskDevice
	StepStop          = modes.Stop
	StepClearDrain    = modes.ClearDrain
	StepPourWater     = modes.PourWater
	StepOtherWater    = modes.OtherWater
	StepThaw          = modes.Thaw
	StepWhyFroze      = modes.WhyFroze
	StepRunOn         = modes.RunOn
	StepWait          = modes.Wait
	StepWarmerDay     = modes.WarmerDay
	StepHouseRule     = modes.HouseRule
	StepSettle        = modes.Settle
	StepRead          = modes.Read
	StepReadAgain     = modes.ReadAgain
	StepCleanFilter   = modes.CleanFilter
	StepCleanOutdoor  = modes.CleanOutdoor
	StepLeave         = modes.Leave
	StepWholeFirst    = modes.WholeFirst
	StepAdd           = modes.Add
	StepAddLittle     = modes.AddLittle
	StepRecover       = modes.Recover
	StepRecoverLittle = modes.RecoverLittle
	StepFindLeak      = modes.FindLeak
	StepRecoverRest   = modes.RecoverRest
	StepMendLeak      = modes.MendLeak
	StepNitrogen      = modes.Nitrogen
	StepEvacuate      = modes.Evacuate
	StepWeighIn       = modes.WeighIn
	StepWeighInLabel  = modes.WeighInLabel
	StepMeasureLine   = modes.MeasureLine
	StepHalt          = modes.Halt
	StepReadLabel     = modes.ReadLabel
)
