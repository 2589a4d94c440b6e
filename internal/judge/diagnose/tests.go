package diagnose

import (
	"math"
	"slices"

	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// A test is something a technician can look at or try that the readings at
// the ports do not show, with a yes or no.
type test struct {
	code string
	// usual is the chance of a yes on any machine; of the chance by fault or
	// signature.
	usual float64
	of    map[Code]float64
	// minutes that it takes; opens says that the circuit has to be opened for it.
	minutes float64
	opens   bool
	// running says that the machine has to run for it.
	running bool
	// fits says that the machine can be tested so; nil means any.
	fits  func(*Evidence) bool
	index int
	// instruments says that it decides about instruments alone.
	instruments bool
}

// chance of a yes where a fault is present.
func (t *test) chance(f *Fault) float64 { return chancesOfTests[t.index][f.index] }

// chancesOfTests are those of every test by every fault.
var chancesOfTests = func() [][]float64 {
	out := make([][]float64, len(tests))
	for i := range tests {
		out[i] = make([]float64, len(library))
		for j := range library {
			k := clue{usual: tests[i].usual, of: tests[i].of}
			out[i][j] = k.chance(&library[j])
		}
	}
	return out
}()

// mostTests is room for the tests.
const mostTests = 64

// decidedBy are by every fault the tests that decide about its signature, a bit for each.
var decidedBy = func() []uint64 {
	out := make([]uint64, len(library))
	for i := range tests {
		for j := range library {
			if tests[i].decides(library[j].Signature) {
				out[j] |= 1 << i
			}
		}
	}
	return out
}()

// answer is the code of an answer.
func (t *test) answer(yes bool) fact.Code {
	if yes {
		return fact.Code("look." + t.code + ".yes")
	}
	return fact.Code("look." + t.code + ".no")
}

// lookupTest returns the test of that code, or nil.
func lookupTest(code string) *test {
	for i := range tests {
		if tests[i].code == code {
			return &tests[i]
		}
	}
	return nil
}

// answered says that a test has been made.
func (e *Evidence) answered(t *test) bool {
	for _, a := range e.Answers {
		if a.Code == t.code {
			return true
		}
	}
	return false
}

// Cleared says that a look at an instrument found it right.
func (e *Evidence) Cleared(signature Code) bool {
	return slices.ContainsFunc(e.Answers, func(a Answer) bool {
		t := lookupTest(a.Code)
		return t != nil && t.instruments && !a.Yes && t.decides(signature)
	})
}

// LookFor is the code of the look that decides soonest about a signature, of those that were not
// taken and that open no circuit; empty where there is none.
func (e *Evidence) LookFor(signature Code) (code string) {
	least := math.Inf(1)
	for i := range tests {
		t := &tests[i]
		if t.decides(signature) && !t.opens && t.minutes < least && !e.answered(t) &&
			(t.fits == nil || t.fits(e)) {
			code, least = t.code, t.minutes
		}
	}
	return code
}

// A Look is a test that a technician can be asked for.
type Look struct {
	Code    string
	Running bool // the machine has to run for it
}

// Looks lists all.
func Looks() []Look {
	out := make([]Look, len(tests))
	for i := range tests {
		out[i] = Look{tests[i].code, tests[i].running}
	}
	return out
}

func isHeatPump(e *Evidence) bool   { return e.HeatPump }
func hasBulb(e *Evidence) bool      { return e.Metering == refrigerant.TXV }
func isElectronic(e *Evidence) bool { return e.Metering == refrigerant.EXV }
func hasFixed(e *Evidence) bool     { return e.Metering.Fixed() }

// tests with their chances; common practice, no source.
var tests = numbered([]test{
	{
		code: "standing-pressure", minutes: 25,
		usual: 0.03,
		of: map[Code]float64{
			NonCondensables:  0.95,
			OtherRefrigerant: 0.6,
			LiquidGauge:      0.4,
			SunOnSensor:      0.02,
		},
	},
	{
		code: "liquid-line-drop", minutes: 6, running: true,
		usual: 0.04,
		of:    map[Code]float64{"liquid-line-restriction": 0.9, Undercharge: 0.07},
	},
	{
		code: "restrictor-number", minutes: 120, opens: true,
		usual: 0.03,
		of:    map[Code]float64{"restrictor-small": 0.95, "restrictor-large": 0.95}, fits: hasFixed,
	},
	{
		code: "valve-bulb", minutes: 6, running: true,
		usual: 0.06,
		of:    map[Code]float64{"valve-overfeeding": 0.8, "valve-starving": 0.75}, fits: hasBulb,
	},
	{
		code: "valve-sensors", minutes: 8, running: true,
		usual: 0.06,
		of: map[Code]float64{
			"electronic-overfeeding": 0.8,
			"electronic-starving":    0.75,
		}, fits: isElectronic,
	},
	{
		code: "indoor-air-path", minutes: 6,
		usual: 0.12,
		of: map[Code]float64{
			"filter":      0.97,
			"indoor-coil": 0.85,
			"ducts":       0.85,
			"blower":      0.55,
			"iced-coil":   0.97,
		},
	},
	{
		code: "static-pressure", minutes: 8, running: true,
		usual: 0.15,
		of: map[Code]float64{
			"filter":      0.75,
			"ducts":       0.9,
			"indoor-coil": 0.4,
			"blower":      0.03,
			"iced-coil":   0.4,
			HighIndoorAir: 0.25,
		},
		fits: func(e *Evidence) bool { return e.ExternalStatic == nil },
	},
	{
		code: "outdoor-coil", minutes: 4,
		usual: 0.12,
		of: map[Code]float64{
			"condenser-coil":          0.93,
			"condenser-fan":           0.85,
			fanDead:                   0.99,
			"condenser-recirculation": 0.2,
		},
		fits: func(e *Evidence) bool { return !e.Seen.OutdoorCoilDirty },
	},
	{
		code: "outdoor-air-at-coil", minutes: 4, running: true,
		usual: 0.05,
		of:    map[Code]float64{"condenser-recirculation": 0.95, SunOnSensor: 0.03},
	},
	{
		code: "outdoor-second", minutes: 3,
		usual: 0.03,
		of:    map[Code]float64{SunOnSensor: 0.95, OutdoorSensor: 0.95},
	},
	{
		code: "coil-inlet-air", minutes: 6, running: true,
		usual: 0.05,
		of:    map[Code]float64{ReturnLeak: 0.95, Economizer: 0.95, DryWick: 0.3},
	},
	{
		code: "wet-bulb-second", minutes: 4,
		usual: 0.05,
		of:    map[Code]float64{DryWick: 0.95},
	},
	{
		code: "suction-clamp-second", minutes: 3, running: true,
		usual: 0.04,
		of:    map[Code]float64{SuctionClamp: 0.95},
	},
	{
		code: "liquid-clamp-second", minutes: 3, running: true,
		usual: 0.04,
		of:    map[Code]float64{LiquidClamp: 0.95},
	},
	{
		code: "discharge-clamp-second", minutes: 3, running: true,
		usual: 0.04,
		of:    map[Code]float64{DischargeClamp: 0.95},
	},
	{
		code: "gauge-zero", minutes: 6,
		usual: 0.03,
		of:    map[Code]float64{SuctionGauge: 0.95, LiquidGauge: 0.95},
	},
	{
		code: "elevation", minutes: 2,
		usual: 0.02, // at 2,000 ft a gauge is off by 1 psi
		of:    map[Code]float64{Altitude: 0.99},
		fits:  func(e *Evidence) bool { return e.AtmosphereAssumed },
	},
	{
		code: "supply-second", minutes: 3, running: true,
		usual: 0.06,
		of:    map[Code]float64{SupplySensor: 0.95},
	},
	{
		code: "refrigerant-label", minutes: 2,
		usual: 1e-9, // an identifier is final
		of:    map[Code]float64{OtherRefrigerant: 0.995},
	},
	{
		code: "pressures-at-stop", minutes: 6, running: true,
		usual: 0.08,
		of:    map[Code]float64{VaporLeak: 0.8, NotPumping: 0.9},
	},
	{
		code: "reversing-valve", minutes: 4, running: true,
		usual: 0.04,
		of:    map[Code]float64{"reversing-valve-leak": 0.93}, fits: isHeatPump,
	},
	{
		code: "condensate-drain", minutes: 4,
		usual: 0.08,
		of: map[Code]float64{
			Drain: 0.97,
		}, fits: func(e *Evidence) bool { return e.Seen.WaterComplaint },
	},
	{
		code: "oil-and-leak", minutes: 15,
		usual: 0.06,
		of:    map[Code]float64{Undercharge: 0.65, NextToEmpty: 0.9},
	},
})

// ofInstruments reports whether it decides about instruments alone.
func (t *test) ofInstruments() bool {
	return !slices.ContainsFunc(library, func(f Fault) bool {
		return f.Kind != Instrument && t.decides(f.Signature)
	})
}

func numbered(all []test) []test {
	for i := range all {
		all[i].index = i
		all[i].instruments = all[i].ofInstruments()
	}
	return all
}
