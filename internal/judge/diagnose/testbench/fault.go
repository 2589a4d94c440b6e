package testbench

import (
	"math/rand/v2"
	"slices"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/refrigerant"
)

// A fault is one way in which a machine is found wrong.
type fault struct {
	code, signature diagnose.Code
	share           float64 // among single faults; common practice, no source
	low, high       float64 // range of the size
	fits            func(*Machine) bool
	// apply does it to a machine; size is from low to high.
	apply func(rng *rand.Rand, m *Machine, size float64)
}

func hasFixed(m *Machine) bool      { return m.device.kind == refrigerant.FixedRestrictor }
func hasBulb(m *Machine) bool       { return m.device.kind == refrigerant.TXV }
func hasElectronic(m *Machine) bool { return m.device.kind == refrigerant.EXV }
func isHeatPump(m *Machine) bool    { return m.HeatPump }

// Sizes are shares: of the right charge, of the air, of the gas moved. Those of leak, charge,
// restriction and dirt reach about as far as Breuker and Braun 1998, HVAC&R Research
// 4(3):303-318, tested, and beyond.
var faults = []fault{
	{diagnose.Undercharge, diagnose.Undercharge, 0.24, 0.05, 0.4, nil, missing},
	{diagnose.Overcharge, diagnose.Overcharge, 0.12, 0.05, 0.4, nil, tooMuch},
	{"filter", diagnose.LowIndoorAir, 0.1, 0.12, 0.6, nil, lessAir},
	{"blower", diagnose.LowIndoorAir, 0.04, 0.12, 0.5, nil, lessAir},
	{"ducts", diagnose.LowIndoorAir, 0.05, 0.12, 0.45, nil, lessAir},
	{"indoor-coil", diagnose.LowIndoorAir, 0.05, 0.12, 0.55, nil, dirtIndoors},
	{diagnose.HighIndoorAir, diagnose.HighIndoorAir, 0.03, 0.15, 0.5, nil, moreAir},
	{diagnose.ReturnLeak, diagnose.ReturnLeak, 0.055, 0.06, 0.35, nil, leakyReturn},
	{"condenser-coil", diagnose.CondenserAir, 0.12, 0.15, 0.65, nil, dirtOutdoors},
	{"condenser-fan", diagnose.CondenserAir, 0.04, 0.2, 0.9, nil, weakFan},
	{"condenser-recirculation", diagnose.CondenserAir, 0.03, 0.1, 0.5, nil, ownBreath},
	{"liquid-line-restriction", diagnose.Restriction, 0.035, 0.1, 0.8, nil, choke},
	{"restrictor-small", diagnose.Restriction, 0.05, 0.12, 0.5, hasFixed, plug},
	{"valve-starving", diagnose.Restriction, 0.05, 0.1, 0.6, hasBulb, starve},
	{"electronic-starving", diagnose.Restriction, 0.05, 0.1, 0.6, hasElectronic, starve},
	{"restrictor-large", diagnose.Overfeed, 0.05, 0.12, 0.5, hasFixed, tooLarge},
	{"valve-overfeeding", diagnose.Overfeed, 0.05, 0.15, 0.7, hasBulb, overfeed},
	{"electronic-overfeeding", diagnose.Overfeed, 0.05, 0.15, 0.7, hasElectronic, overfeed},
	{diagnose.NonCondensables, diagnose.NonCondensables, 0.035, 0.4, 3, nil, letIn},
	{"compressor-valves", diagnose.VaporLeak, 0.04, 0.06, 0.4, nil, leakWithin},
	{"reversing-valve-leak", diagnose.VaporLeak, 0.02, 0.06, 0.3, isHeatPump, leakWithin},
}

func missing(_ *rand.Rand, m *Machine, size float64) { m.charge *= 1 - size }
func tooMuch(_ *rand.Rand, m *Machine, size float64) { m.charge *= 1 + size }
func lessAir(_ *rand.Rand, m *Machine, size float64) { m.ails.indoorAir *= 1 - size }
func moreAir(_ *rand.Rand, m *Machine, size float64) { m.ails.indoorAir *= 1 + size }

func dirtIndoors(_ *rand.Rand, m *Machine, size float64) {
	m.ails.indoorAir *= 1 - size
	m.ails.indoorFoul *= 1 - 0.3*size
}

func dirtOutdoors(_ *rand.Rand, m *Machine, size float64) {
	m.ails.outdoorAir *= 1 - size
	m.ails.outdoorFoul *= 1 - 0.35*size
}

func weakFan(_ *rand.Rand, m *Machine, size float64)     { m.ails.outdoorAir *= 1 - size }
func ownBreath(_ *rand.Rand, m *Machine, size float64)   { m.ails.recirculation = size }
func leakyReturn(_ *rand.Rand, m *Machine, size float64) { m.ails.returnLeak = size }
func leakWithin(_ *rand.Rand, m *Machine, size float64)  { m.ails.leak += size }
func choke(_ *rand.Rand, m *Machine, size float64)       { m.ails.restriction += size }
func plug(_ *rand.Rand, m *Machine, size float64)        { m.ails.feed.area *= 1 - size }
func tooLarge(_ *rand.Rand, m *Machine, size float64)    { m.ails.feed.area *= 1 + size }

// starve leaves a valve less than its rated opening at most.
func starve(_ *rand.Rand, m *Machine, size float64) {
	m.ails.feed.area *= (1 - size) / m.device.most
}

// overfeed is a valve stuck open, or a bulb that feels the room.
func overfeed(rng *rand.Rand, m *Machine, size float64) {
	if rng.Float64() < 0.5 {
		m.ails.feed.stick, m.ails.feed.stuck = 1, 1+size
		return
	}
	m.ails.feed.bulb = size
}

// letIn counts gas by what a circuit of 2 L per ton holds when open to the air.
func letIn(_ *rand.Rand, m *Machine, size float64) {
	m.ails.gas += size * openCircuit * float64(m.Nominal) / watts
}

const openCircuit = 0.083 // mol per ton

// drawFault draws one that the machine can have and that does not share a signature with
// the others: nor is a charge off both ways, or the air.
func drawFault(rng *rand.Rand, m *Machine, others ...*fault) *fault {
	fits := func(f *fault) bool {
		if f.fits != nil && !f.fits(m) {
			return false
		}
		same := func(o *fault) bool { return group(o) == group(f) }
		return !slices.ContainsFunc(others, same)
	}
	sum := 0.0
	for i := range faults {
		if fits(&faults[i]) {
			sum += faults[i].share
		}
	}
	u := rng.Float64() * sum
	var last *fault
	for i := range faults {
		if !fits(&faults[i]) {
			continue
		}
		last = &faults[i]
		if u -= last.share; u < 0 {
			break
		}
	}
	return last
}

func group(f *fault) diagnose.Code {
	switch f.signature {
	case diagnose.Overcharge:
		return diagnose.Undercharge
	case diagnose.HighIndoorAir:
		return diagnose.LowIndoorAir
	case diagnose.Overfeed:
		return diagnose.Restriction
	}
	return f.signature
}

// A look shows the faults that it lists, with the chance that it does; it finds them where
// they are not as often as falseLook. Common practice, no source.
const falseLook = 0.05

var looks = map[string]map[diagnose.Code]float64{
	"standing-pressure":    {diagnose.NonCondensables: 0.9, diagnose.OtherRefrigerant: 0.6},
	"liquid-line-drop":     {"liquid-line-restriction": 0.85},
	"restrictor-number":    {"restrictor-small": 0.93, "restrictor-large": 0.93},
	"valve-bulb":           {"valve-overfeeding": 0.75, "valve-starving": 0.7},
	"valve-sensors":        {"electronic-overfeeding": 0.75, "electronic-starving": 0.7},
	"indoor-air-path":      {"filter": 0.95, "indoor-coil": 0.8, "ducts": 0.8, "blower": 0.5},
	"static-pressure":      {"filter": 0.75, "indoor-coil": 0.45, "ducts": 0.85, "blower": 0.03},
	"outdoor-coil":         {"condenser-coil": 0.9, "condenser-fan": 0.85},
	"outdoor-air-at-coil":  {"condenser-recirculation": 0.93},
	"outdoor-second":       {diagnose.SunOnSensor: 0.93},
	"coil-inlet-air":       {diagnose.ReturnLeak: 0.9},
	"wet-bulb-second":      {diagnose.DryWick: 0.93},
	"suction-clamp-second": {diagnose.SuctionClamp: 0.93},
	"liquid-clamp-second":  {diagnose.LiquidClamp: 0.93},
	"gauge-zero":           {diagnose.SuctionGauge: 0.95, diagnose.LiquidGauge: 0.95},
	"supply-second":        {diagnose.SupplySensor: 0.93},
	"refrigerant-label":    {diagnose.OtherRefrigerant: 0.95},
	"pressures-at-stop":    {"compressor-valves": 0.75, "reversing-valve-leak": 0.7},
	"reversing-valve":      {"reversing-valve-leak": 0.9},
	"oil-and-leak":         {diagnose.Undercharge: 0.6},
}
