package diagnose

// A ChargeCall is what is said of the charge.
type ChargeCall int

// The calls.
const (
	ChargeOpen   ChargeCall = iota // more than one answer is left
	ChargeLow                      // below the band
	ChargeInBand                   // leave it alone
	ChargeHigh                     // above the band
)

// The chances from which the charge is called. A call moves refrigerant or says that none
// needs to be moved, and the sides differ in what gives the same readings: nothing but
// a restriction looks like too little, while gas in the circuit or a loose clamp on the
// liquid line looks like too much. The ladder of thresholds in testdata/trial.md shows what
// each would give; these were chosen on other visits. A fixed restrictor shows a shortage twice,
// by its superheat and by its subcooling: what it says with a chance of 0.70 to 0.85 was right in
// 86 % of 73 visits to the model's own machines, and in 93 % of 60 on the bench.
const (
	CallLow        = 0.85
	callLowOfFixed = 0.70
	CallHigh       = 0.85
	CallInBand     = 0.85
)

// callLow is the chance from which a machine is called short.
func callLow(fixed bool) float64 {
	if fixed {
		return callLowOfFixed
	}
	return CallLow
}

// Call is what is said of the charge by these chances. Once refrigerant was moved the machine
// stands on the scale, the next dose shows whether the last was right, and what it would
// cost to leave the charge as it is or to move more decides.
func (b *ChargeBelief) Call() ChargeCall {
	if b.moved != 0 {
		return b.callMoved()
	}
	switch {
	case b.Low >= callLow(b.fixed):
		return ChargeLow
	case b.High >= CallHigh:
		return ChargeHigh
	case b.InBand >= CallInBand:
		return ChargeInBand
	}
	return ChargeOpen
}

// callMoved calls what another dose is expected to cost less than to leave; nobody adds two
// ounces to what is likely to be right. To turn round costs what undoing costs besides, and is
// not done while the charge may be off the other way. Nothing is recovered from a charge that is
// in band with a chance of 0.6: of 31 such doses on the bench 30 came out of charges in band.
func (b *ChargeBelief) callMoved() ChargeCall {
	const hardly, likely, likelier = 0.05, 0.6, 0.8
	leave := b.Low*costOf(Undercharge).neglect + b.High*costOf(Overcharge).neglect
	_, add := b.dose(1)
	_, recover := b.dose(-1)
	if b.moved < 0 {
		add += costOf(Undercharge).mend + anotherRound
	} else {
		recover += costOf(Overcharge).mend + anotherRound
	}
	switch {
	case b.InBand >= likelier:
		return ChargeInBand
	case b.Low >= CallLow || add < leave && (b.moved > 0 || b.High < hardly):
		return ChargeLow
	case b.High >= CallHigh ||
		recover < leave && b.InBand < likely && (b.moved < 0 || b.Low < hardly):
		return ChargeHigh
	}
	return ChargeOpen
}
