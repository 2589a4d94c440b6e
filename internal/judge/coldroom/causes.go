package coldroom

import (
	"slices"

	"github.com/satline/satline/internal/judge/coldroom/signature"
)

// Causes that the judge has a word of its own for.
const (
	sound       = signature.Sound
	undercharge = signature.Undercharge
	reserve     = signature.Reserve
	overcharge  = signature.Overcharge
	gas         = signature.Gas
	condenser   = signature.Condenser
	evaporator  = signature.Evaporator
	restriction = signature.Restriction
	starving    = signature.Starving
	flooding    = signature.Flooding
	compressor  = signature.Compressor
	headLow     = signature.HeadLow
	headHigh    = signature.HeadHigh
	load        = signature.Load
	shortCycle  = signature.ShortCycle
	clamp       = signature.Clamp
)

// Faults that not every machine can have. defrostHeats is a defrost too often or too long, on
// coils that are heated; tooSmall is a load by its sheet that the machine cannot carry.
const (
	defrostHeats = "cold-defrost-heats"
	tooSmall     = "cold-too-small"
	// pullsDown is a box that is warm from what went into it or from a stop; nothing is broken.
	pullsDown = "cold-product"
)

// A fault is one of the things that make a cause; faults of one cause read alike, and looks
// tell them apart.
type fault struct {
	code, cause string
	// share is how often it is what a technician finds, of a hundred visits (common practice,
	// no source).
	share float64
	// opens says that the circuit is opened to mend it.
	opens bool
}

var faults = []fault{
	{sound, sound, 22, false}, {"cold-leak", undercharge, 13, true},
	{"cold-receiver-empties", reserve, 2, true}, {"cold-too-much", overcharge, 3, false},
	{"cold-air-inside", gas, 2, true}, {"cold-condenser-dirty", condenser, 8, false},
	{"cold-condenser-fan", condenser, 3, false}, {"cold-condenser-hot-air", condenser, 1, false},
	{"cold-defrost", evaporator, 7, false}, {"cold-evaporator-fan", evaporator, 4, false},
	{"cold-evaporator-dirty", evaporator, 1.5, false}, {"cold-drier", restriction, 3, true},
	{"cold-liquid-valve", restriction, 1, false}, {"cold-valve-starves", starving, 4, false},
	{"cold-bulb-loose", flooding, 2, false}, {"cold-valve-floods", flooding, 2, false},
	{"cold-compressor-valves", compressor, 4.5, false},
	{"cold-head-control-open", headLow, 4, false}, {"cold-head-control-shut", headHigh, 2.5, false},
	{"cold-door", load, 5.5, false}, {pullsDown, load, 3.5, false},
	{defrostHeats, load, 1.5, false}, {tooSmall, load, 40, false},
	{"cold-pressure-control", shortCycle, 2, false}, {"cold-suction-clamp", clamp, 2, false},
}

// begins is the smallest of its cause's sizes in which a fault comes, where that is not the first:
// a fan that stands takes a third of the air or more, and ice that takes hardly any is frost, as
// every coil has (common practice, no source).
var begins = map[string]int{
	"cold-defrost": 1, "cold-evaporator-fan": 1, "cold-condenser-fan": 1,
}

// A look is what a technician can see or try, with a yes or no.
type look struct {
	code  string
	usual float64 // chance of a yes on a machine without what it is after
	// of is the chance of a yes by fault, else by cause.
	of      map[string]float64
	minutes float64
	running bool
	// receiver, valve, heated: it is on machines with one only, or with a heated defrost; vacuum:
	// asked by heldUp alone, where suction was pulled into one.
	receiver, valve, heated, vacuum bool
}

var looks = []look{
	{
		code: "cold-glass", usual: 0.07, minutes: 1, running: true, receiver: true,
		of: map[string]float64{
			undercharge: 0.93, restriction: 0.85, headLow: 0.6, "cold-liquid-valve": 0.6,
		},
	},
	{
		code: "cold-receiver-low", usual: 0.05, minutes: 4, running: true, receiver: true,
		of: map[string]float64{undercharge: 0.92, reserve: 0.9, headLow: 0.25, overcharge: 0.01},
	},
	{
		code: "cold-coil-iced", usual: 0.03, minutes: 3,
		of: map[string]float64{
			"cold-defrost": 0.93, "cold-evaporator-fan": 0.35, "cold-evaporator-dirty": 0.3,
			undercharge: 0.12, restriction: 0.12, starving: 0.12, "cold-door": 0.25,
		},
	},
	{
		code: "cold-evaporator-fans", usual: 0.02, minutes: 2, running: true,
		of: map[string]float64{"cold-evaporator-fan": 0.96, "cold-defrost": 0.04},
	},
	{
		code: "cold-defrost-works", usual: 0.04, minutes: 10,
		of: map[string]float64{"cold-defrost": 0.9},
	},
	{
		code: "cold-defrost-often", minutes: 2, usual: 0.06, heated: true,
		of: map[string]float64{defrostHeats: 0.6},
	},
	{
		code: "cold-defrost-by-clock", minutes: 8, usual: 0.08, heated: true,
		of: map[string]float64{defrostHeats: 0.75, "cold-defrost": 0.2},
	},
	{
		code: "cold-condenser-dirt", usual: 0.06, minutes: 2,
		of: map[string]float64{"cold-condenser-dirty": 0.94, "cold-condenser-hot-air": 0.1},
	},
	{
		code: "cold-condenser-fan-stands", usual: 0.02, minutes: 1, running: true,
		of: map[string]float64{"cold-condenser-fan": 0.95},
	},
	{
		code: "cold-drier-drop", usual: 0.03, minutes: 3, running: true,
		of: map[string]float64{"cold-drier": 0.92, "cold-liquid-valve": 0.6},
	},
	{
		code: "cold-bulb-warm", usual: 0.04, minutes: 6, running: true, valve: true,
		of: map[string]float64{
			"cold-valve-starves": 0.88, undercharge: 0.35, restriction: 0.5,
			"cold-valve-floods": 0.3,
		},
	},
	{
		code: "cold-bulb-off", usual: 0.03, minutes: 4, valve: true,
		of: map[string]float64{"cold-bulb-loose": 0.95},
	},
	{
		// A valve that works opens as its bulb warms; behind one that stays shut, or a solenoid
		// valve or drier, the liquid stands in the high side.
		code: "cold-apart", usual: 0.05, minutes: 5, valve: true, vacuum: true,
		of: map[string]float64{
			"cold-valve-starves": 0.9, "cold-liquid-valve": 0.93, "cold-drier": 0.6,
		},
	},
	{
		code: "cold-pump-down", usual: 0.04, minutes: 8, running: true, receiver: true,
		of: map[string]float64{compressor: 0.92},
	},
	{
		code: "cold-standing", usual: 0.03, minutes: 25, of: map[string]float64{gas: 0.92},
	},
	{
		code: "cold-door-leaks", usual: 0.07, minutes: 2,
		of: map[string]float64{"cold-door": 0.93, "cold-defrost": 0.15, "cold-product": 0.1},
	},
	{
		code: "cold-warm-product", usual: 0.04, minutes: 2,
		of: map[string]float64{"cold-product": 0.93, "cold-door": 0.08},
	},
	{
		code: "cold-cycles", usual: 0.03, minutes: 5, running: true,
		of: map[string]float64{shortCycle: 0.95, undercharge: 0.2, restriction: 0.15, headLow: 0.3},
	},
	{
		code: "cold-head-holds", usual: 0.04, minutes: 5, running: true,
		of: map[string]float64{headLow: 0.92, headHigh: 0.92},
	},
	{
		code: "cold-second-clamp", usual: 0.05, minutes: 3, running: true,
		of: map[string]float64{clamp: 0.93},
	},
}

// chance of a yes where a fault is.
func (l *look) chance(f *fault) float64 {
	if c, ok := l.of[f.code]; ok {
		return c
	}
	if c, ok := l.of[f.cause]; ok {
		return c
	}
	return l.usual
}

// after reports whether a look would find some fault of a cause.
func (l *look) after(cause string) bool {
	return slices.ContainsFunc(
		faults, func(f fault) bool { return f.cause == cause && l.chance(&f) >= likely },
	)
}
