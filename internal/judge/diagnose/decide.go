package diagnose

// An Act is what is done about a machine.
type Act int

// The acts.
const (
	Leave   Act = iota + 1 // leave it as it is
	Add                    // add refrigerant
	Recover                // recover refrigerant
	Mend                   // put right what Signature names
)

// A Decision is what to do by all that is known: the look that is worth its minutes, else
// the act with the least expected loss.
type Decision struct {
	Act Act
	// Signature is what Mend mends, and Chance that it is present.
	Signature Code
	Chance    float64
	// Looks are those worth taking before, the best first; the second is chosen for the case
	// that the first says what is likeliest.
	Looks []*Measurement
	// Loss is what the act is expected to cost, in minutes; Doubt is how much of that knowing
	// everything would save.
	Loss, Doubt float64
}

// leakLook shows a leak, which is looked for before anything is added; after that the machine
// answers better.
const leakLook = "oil-and-leak"

// mostLooks is how many looks are asked for at once.
const mostLooks = 2

// worthLooking is the chance of what a look is after from which it is asked for: a list of
// every small doubt is read by nobody.
const worthLooking = 0.2

// WorthDoubting is that of an instrument before refrigerant is moved: one reading too high or too
// low looks like a wrong charge, and a second thermometer takes three minutes. What the look saves
// has to be worth them as well.
const WorthDoubting = 0.015

// leaning is the chance of too much refrigerant from which what speaks against it is looked at,
// however small each doubt is: more causes read like it than like too little, and what is left
// when they are answered calls the charge.
const leaning = 0.5

// decide chooses by expected loss over the mixture (Raiffa and Schlaifer 1961, Applied
// Statistical Decision Theory, chapters 4 and 5: the value of sample information).
func (c *caseFile) decide(charge *ChargeBelief) Decision {
	call := charge.Call()
	all := c.byExplanation()
	d := c.best(all, call == ChargeLow, call == ChargeHigh)
	worth := [2]float64{worthLooking, worthLooking}
	if (d.Act == Recover || d.Act == Add) && charge.moved == 0 {
		worth[1] = WorthDoubting
	}
	going := charge.moved != 0 && (call == ChargeLow || call == ChargeHigh) &&
		c.besides(all) < leaning
	if going {
		d.goOn(call, charge)
	}
	c.callAt = CallLow
	if call == ChargeOpen && charge.High >= leaning {
		least := worthLooking * (1 - charge.High)
		worth, c.callAt = [2]float64{least, least}, leaning
	}
	taken, now := map[string]bool{leakLook: charge.moved != 0}, all
	if m, then := c.lookAtLie(all); m != nil && charge.moved != 0 {
		d.Looks, taken[m.Code], now, going = append(d.Looks, m), true, then, true
	}
	c.addLooks(&d, now, worth, taken, going)
	c.lookFirst(&d, charge, all)
	return d
}

// besides is the chance of the likeliest cause that no refrigerant puts right.
func (c *caseFile) besides(all []weighted) (most float64) {
	var chance [mostSuspects]float64
	for i := range all {
		for _, a := range all[i].key {
			if a != none && a != c.short && a != c.full {
				chance[a] += all[i].weight
			}
		}
	}
	for _, x := range chance {
		most = max(most, x)
	}
	return most
}

// goOn follows the call of a charge that is being put right: what each dose costs was
// weighed there.
func (d *Decision) goOn(call ChargeCall, charge *ChargeBelief) {
	switch call {
	case ChargeLow:
		d.Act, d.Signature, d.Chance = Add, Undercharge, charge.Low
	case ChargeHigh:
		d.Act, d.Signature, d.Chance = Recover, Overcharge, charge.High
	}
}
