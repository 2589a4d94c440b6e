package diagnose

import (
	"strings"

	"github.com/satline/satline/quantity/fact"
)

// A test is something a technician can look at or try that the readings at
// the ports do not show, with a yes or no.
type test struct {
	code, take, why string
	yes, no         string
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
	fits func(*Evidence) bool
}

// chance of a yes where a fault is present.
func (t *test) chance(f *Fault) float64 { return chancesOfTests[t.index()][f.index] }

func (t *test) index() int {
	for i := range tests {
		if &tests[i] == t {
			return i
		}
	}
	return 0
}

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

// said is an answer as a sentence about the machine.
func (t *test) said(yes bool) string {
	if yes {
		return t.name() + ": " + t.yes
	}
	return t.name() + ": " + t.no
}

// answer is the code of an answer.
func (t *test) answer(yes bool) fact.Code {
	if yes {
		return fact.Code("look." + t.code + ".yes")
	}
	return fact.Code("look." + t.code + ".no")
}

// name is what is looked at, without how.
func (t *test) name() string {
	about, _, _ := strings.Cut(t.take, ": ")
	about, _, _ = strings.Cut(about, ", ")
	return about
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
func hasBulb(e *Evidence) bool      { return e.Metering == Thermostatic }
func isElectronic(e *Evidence) bool { return e.Metering == Electronic }
func hasFixed(e *Evidence) bool     { return e.Metering == FixedRestrictor }

// tests with their chances; common practice, no source.
var tests = []test{
	{
		code: "standing-pressure", minutes: 25, take: "the standing pressure: stop the compressor, let the outdoor fan run until the coil is at outdoor temperature, and compare its saturation temperature with the outdoor air",
		why: "at rest a pure charge stands at the pressure of its temperature; gas in it adds its own",
		yes: "above that of the outdoor temperature", no: "equal to that of the outdoor temperature", usual: 0.03,
		of: map[Code]float64{NonCondensables: 0.95, OtherRefrigerant: 0.6, LiquidGauge: 0.4, SunOnSensor: 0.02},
	},
	{
		code: "liquid-line-drop", minutes: 6, running: true, take: "the temperature along the liquid line, before and after the filter drier and each valve, down to the metering device",
		why: "liquid does not cool by itself on the way: a drop marks the restriction",
		yes: "a drop of {3 °F} or more across something", no: "the same all along", usual: 0.04,
		of: map[Code]float64{"liquid-line-restriction": 0.9, Undercharge: 0.07},
	},
	{
		code: "restrictor-number", minutes: 120, opens: true, take: "the size marked on the restrictor, and its seat, against the outdoor unit's label (with the charge pumped down or recovered)",
		why: "a part of another size, or one that is dirty or off its seat, starves or floods the coil at any charge",
		yes: "another size, dirty or off its seat", no: "the right one, clean and seated", usual: 0.03,
		of: map[Code]float64{"restrictor-small": 0.95, "restrictor-large": 0.95}, fits: hasFixed,
	},
	{
		code: "valve-bulb", minutes: 6, running: true, take: "the expansion valve's bulb: is it tight on clean pipe and insulated, and does warming it by hand raise the suction pressure?",
		why: "a bulb that does not feel the pipe overfeeds; one that has lost its charge starves the coil",
		yes: "loose or not insulated, or the pressure does not answer", no: "tight, and the pressure answers", usual: 0.06,
		of: map[Code]float64{"valve-overfeeding": 0.8, "valve-starving": 0.75}, fits: hasBulb,
	},
	{
		code: "valve-sensors", minutes: 8, running: true, take: "the electronic valve's sensors and coil: are the sensors tight on clean pipe and insulated, does the controller show what they read, and does the valve move when it is driven by hand?",
		why: "a sensor that does not feel the pipe overfeeds or starves the coil; a motor that does not step leaves the valve where it is",
		yes: "loose, off, or the valve does not move", no: "tight and right, and the valve moves", usual: 0.06,
		of: map[Code]float64{"electronic-overfeeding": 0.8, "electronic-starving": 0.75}, fits: isElectronic,
	},
	{
		code: "indoor-air-path", minutes: 6, take: "a look at the filter, the blower wheel, the indoor coil, the dampers and the registers",
		why: "low air shows there",
		yes: "something blocks the air", no: "all clear", usual: 0.12,
		of: map[Code]float64{"filter": 0.97, "indoor-coil": 0.85, "ducts": 0.85, "blower": 0.55, "iced-coil": 0.97},
	},
	{
		code: "static-pressure", minutes: 8, running: true, take: "the total external static pressure, against the blower's limit",
		why: "a blocked path raises it, a weak blower lowers it",
		yes: "above the limit", no: "within the limit", usual: 0.15,
		of:   map[Code]float64{"filter": 0.75, "ducts": 0.9, "indoor-coil": 0.4, "blower": 0.03, "iced-coil": 0.4, HighIndoorAir: 0.25},
		fits: func(e *Evidence) bool { return e.ExternalStatic == nil },
	},
	{
		code: "outdoor-coil", minutes: 4, take: "a look at the outdoor coil, through its depth with a light, and at its fan",
		why: "dirt sits inside the coil, and a slow fan is felt by hand",
		yes: "dirty, blocked, or the fan is not right", no: "clean, and the fan is right", usual: 0.12,
		of:   map[Code]float64{"condenser-coil": 0.93, "condenser-fan": 0.85, fanDead: 0.99, "condenser-recirculation": 0.2},
		fits: func(e *Evidence) bool { return !e.Seen.OutdoorCoilDirty },
	},
	{
		code: "outdoor-air-at-coil", minutes: 4, running: true, take: "the air at the face of the outdoor coil, all round, with a shaded sensor",
		why: "the machine answers to the air that enters it, not to the reading in the sun or across the yard",
		yes: "warmer than the outdoor reading by {3 °F} or more", no: "the same as the outdoor reading", usual: 0.05,
		of: map[Code]float64{"condenser-recirculation": 0.95, SunOnSensor: 0.03},
	},
	{
		code: "outdoor-second", minutes: 3, take: "the outdoor air again, with a second thermometer in the shade at the coil inlet",
		why: "the sun warms a bare sensor by {5 °F} to {20 °F}",
		yes: "colder than the first reading by {3 °F} or more", no: "the same", usual: 0.03,
		of: map[Code]float64{SunOnSensor: 0.95},
	},
	{
		code: "coil-inlet-air", minutes: 6, running: true, take: "dry and wet bulb at the inlet of the indoor coil, beside those at the return grille",
		why: "what joins the return on the way is seen there",
		yes: "warmer or more humid at the coil", no: "the same", usual: 0.05,
		of: map[Code]float64{ReturnLeak: 0.95, Economizer: 0.95, DryWick: 0.3},
	},
	{
		code: "wet-bulb-second", minutes: 4, take: "the return wet bulb again, with a clean wick, well wetted, in moving air",
		why: "a dry wick reads high, and {1 °F} moves the target superheat by {1.5 °F}",
		yes: "lower by {1.5 °F} or more", no: "the same", usual: 0.05,
		of: map[Code]float64{DryWick: 0.95},
	},
	{
		code: "suction-clamp-second", minutes: 3, running: true, take: "the suction line again, on cleaned pipe, with a second, insulated clamp",
		why: "a loose clamp reads toward the air around it",
		yes: "colder by {3 °F} or more", no: "the same", usual: 0.04,
		of: map[Code]float64{SuctionClamp: 0.95},
	},
	{
		code: "liquid-clamp-second", minutes: 3, running: true, take: "the liquid line again, on cleaned pipe at the condenser outlet, with a second, insulated clamp",
		why: "a loose clamp reads toward the outdoor air",
		yes: "warmer by {3 °F} or more", no: "the same", usual: 0.04,
		of: map[Code]float64{LiquidClamp: 0.95},
	},
	{
		code: "gauge-zero", minutes: 6, take: "the zero of both gauges, open to the air",
		why: "a gauge off zero is off by as much everywhere",
		yes: "off zero", no: "at zero", usual: 0.03,
		of: map[Code]float64{SuctionGauge: 0.95, LiquidGauge: 0.95},
	},
	{
		code: "elevation", minutes: 2, take: "the elevation of the site, from a map, or a barometer there",
		why: "a gauge counts from the atmosphere around it",
		yes: "{2000 ft} or more", no: "below {2000 ft}", usual: 0.02, // at 2,000 ft a gauge is off by 1 psi
		of:   map[Code]float64{Altitude: 0.99},
		fits: func(e *Evidence) bool { return e.AtmosphereAssumed },
	},
	{
		code: "supply-second", minutes: 3, running: true, take: "the supply air again, at several points out of sight of the coil, with a dry sensor",
		why: "a wet sensor, or one that sees the coil, reads cold",
		yes: "off by {3 °F} or more", no: "the same", usual: 0.06,
		of: map[Code]float64{SupplySensor: 0.95},
	},
	{
		code: "refrigerant-label", minutes: 2, take: "the refrigerant: the unit's label, the gauges' setting, and an identifier at the port",
		why: "every saturation temperature rests on it",
		yes: "not the one named", no: "the one named", usual: 1e-9, // an identifier is final
		of: map[Code]float64{OtherRefrigerant: 0.995},
	},
	{
		code: "pressures-at-stop", minutes: 6, running: true, take: "how fast the pressures equalize when the compressor stops, with its current while it runs",
		why: "a compressor that leaks within equalizes at once and draws little",
		yes: "at once, and the current was low", no: "slowly, or the current was normal", usual: 0.08,
		of: map[Code]float64{VaporLeak: 0.8, NotPumping: 0.9},
	},
	{
		code: "reversing-valve", minutes: 4, running: true, take: "the suction pipe just before and just after the reversing valve",
		why: "hot gas that crosses the slide warms it",
		yes: "warmer after the valve by {5 °F} or more", no: "the same", usual: 0.04,
		of: map[Code]float64{"reversing-valve-leak": 0.93}, fits: isHeatPump,
	},
	{
		code: "condensate-drain", minutes: 4, take: "the condensate drain: is there a trap, does it hold water, is the pan full?",
		why: "without a trap air holds the water back",
		yes: "no trap, or a dry one", no: "a trap that holds water", usual: 0.08,
		of: map[Code]float64{NoTrap: 0.97}, fits: func(e *Evidence) bool { return e.Seen.WaterComplaint },
	},
	{
		code: "oil-and-leak", minutes: 15, take: "an electronic leak search, from the joints and valves down",
		why: "refrigerant that is missing has gone somewhere",
		yes: "a leak", no: "none found", usual: 0.06,
		of: map[Code]float64{Undercharge: 0.65, NextToEmpty: 0.9},
	},
}
