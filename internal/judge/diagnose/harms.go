package diagnose

// What an action is worth is counted in minutes: those it takes, and those that its harm
// costs later, to the machine, the customer and whoever comes again. The figures are
// common practice, no source; what matters is their order.

// A cost is what it takes to deal with a signature, and what it costs to leave it.
type cost struct {
	mend, neglect float64
	why           string
}

var costs = map[Code]cost{
	Undercharge: {
		40, 220, "a coil that freezes, a compressor that runs hot, a leak that goes on",
	},
	Overcharge:       {30, 160, "a high head, and liquid at the compressor on a fixed restrictor"},
	NonCondensables:  {180, 160, "a high head and acid; only a new charge ends it"},
	Restriction:      {120, 260, "a starved coil and a hot compressor at any charge"},
	Overfeed:         {45, 260, "liquid washes the oil out of the compressor"},
	VaporLeak:        {60, 160, "no capacity; the dearest part is proved before it is condemned"},
	NextToEmpty:      {120, 260, "a compressor that draws a vacuum, and air with it"},
	NotPumping:       {60, 260, "no cooling at all"},
	OtherRefrigerant: {4, 260, "every figure is of another fluid"},
	LowIndoorAir:     {20, 220, "a coil that freezes, and every target off"},
	HighIndoorAir:    {20, 50, "little water is taken out of the air"},
	ReturnLeak:       {45, 110, "hot attic air is cooled in place of the room's"},
	CondenserAir:     {25, 220, "a high head wears the compressor and the bill"},
	LowLoad:          {5, 0, "nothing is wrong with the machine"},
	LowAmbient:       {5, 0, "nothing is wrong with the machine"},
	Economizer:       {5, 30, "outdoor air is cooled in place of the room's"},
	Drain:            {20, 90, "water where it does not belong"},
}

// ofInstrument is the cost of a reading that is wrong: a second look; what is done by it is
// a harm of what is done.
var ofInstrument = cost{5, 8, "a record that is wrong"}

func costOf(signature Code) cost {
	if c, ok := costs[signature]; ok {
		return c
	}
	return ofInstrument
}

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
	// anotherRound is the time to settle and read again after something that was not it.
	anotherRound = 25
)
