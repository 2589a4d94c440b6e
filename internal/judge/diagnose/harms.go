package diagnose

// What an action is worth is counted in minutes: those it takes, and those that its harm
// costs later, to the machine, the customer and whoever comes again. The figures are
// common practice, no source; what matters is their order.

// A cost is what it takes to deal with a signature, and what it costs to leave it.
type cost struct {
	mend, neglect float64
	why           string
}

// ofInstrument is the cost of a reading that is wrong: a second look; what is done by it is
// a harm of what is done.
var ofInstrument = cost{5, 8, "a record that is wrong"}

// costOf a signature.
func costOf(signature Code) cost { return traitsOf[signature].cost }

// Harms of moving refrigerant.
const (
	// addToEnough is adding to a machine that is not short: it has to come out again, and
	// until then the head is high and liquid may reach the compressor.
	addToEnough = 260
	// addToFull comes on top where the machine is overfull already.
	addToFull = 200
	// recoverFromEnough is recovering from a machine that is not overfull: what was right
	// has to be found again.
	recoverFromEnough = 220
	// recoverFromShort comes on top where the machine is short already.
	recoverFromShort = 200
	// openInVain is to recover, evacuate and weigh in what was right.
	openInVain = 120
	// anotherRound is the time to settle and read again after something that was not it.
	anotherRound = 25
)
