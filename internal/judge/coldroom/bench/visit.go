package bench

import (
	"math"
	"math/rand/v2"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A Visit is a machine with at most one thing wrong, or a pair, as a technician with
// instruments finds it. What was not read is nil.
type Visit struct {
	Truth string // the cause, by the judge's code
	Fault string
	// Second and SecondFault are those of a pair; empty without.
	Second, SecondFault string
	// Strong says that what is wrong shows: a tenth of the capacity, or its like.
	Strong bool

	Fluid    *refrigerant.Refrigerant
	Valve    bool
	Room     coldroom.Room
	Charge   quantity.Mass // of the label
	Suction  *quantity.Uncertain[quantity.GaugePressure]
	Liquid   *quantity.Uncertain[quantity.GaugePressure]
	Readings map[string]*quantity.Uncertain[quantity.Temperature]
	// Current as a share of the rated one; zero where not read.
	Current float64
	// Answers to what was looked at without being asked.
	Answers map[string]bool

	m       machine
	x       wrong
	outdoor float64
	box     float64         // as it was found
	taken   map[string]bool // the readings that the technician takes
	rng     *rand.Rand
}

// faulty are the causes and faults that are drawn, each with how often.
var faulty = []struct {
	cause, fault string
	share        float64
}{
	{"cold-undercharge", "cold-leak", 14}, {"cold-overcharge", "cold-too-much", 4},
	{"cold-gas", "cold-air-inside", 3}, {"cold-condenser", "cold-condenser-dirty", 9},
	{"cold-condenser", "cold-condenser-fan", 4}, {"cold-evaporator", "cold-defrost", 9},
	{"cold-evaporator", "cold-evaporator-fan", 6}, {"cold-restriction", "cold-drier", 5},
	{"cold-starving", "cold-valve-starves", 6}, {"cold-flooding", "cold-bulb-loose", 4},
	{"cold-compressor", "cold-compressor-valves", 5},
	{"cold-head-low", "cold-head-control-open", 4}, {"cold-head-high", "cold-head-control-shut", 3},
	{"cold-load", "cold-door", 7}, {"cold-short-cycle", "cold-pressure-control", 2},
	{"cold-clamp", "cold-suction-clamp", 3},
}

// Draw makes a visit; a share of them is to sound machines.
func Draw(rng *rand.Rand, sound float64) *Visit {
	for {
		v := &Visit{m: drawn(rng), rng: rng, Truth: "cold-sound", Fault: "cold-sound"}
		v.outdoor = v.weather()
		if cold := fahrenheit(60); v.outdoor < cold && v.m.floor == 0 {
			v.m.floor = fahrenheit(82 + 6*rng.NormFloat64()) // without it none runs in the cold
		}
		// A machine that starves in that weather with nothing wrong is none that is sound.
		if r := v.m.run(v.m.box, v.outdoor, wrong{}); v.m.box-r.evaporating > 1.35*v.m.difference {
			continue
		}
		if rng.Float64() > sound && !v.spoil() {
			continue
		}
		if v.read() {
			return v
		}
	}
}

// together are the faults that are drawn two at a time.
var together = [...]struct{ cause, fault, second, secondFault string }{
	{"cold-undercharge", "cold-leak", "cold-evaporator", "cold-defrost"},
	{"cold-undercharge", "cold-leak", "cold-condenser", "cold-condenser-dirty"},
	{"cold-overcharge", "cold-too-much", "cold-condenser", "cold-condenser-dirty"},
	{"cold-condenser", "cold-condenser-dirty", "cold-evaporator", "cold-defrost"},
	{"cold-condenser", "cold-condenser-dirty", "cold-evaporator", "cold-evaporator-fan"},
}

// DrawPair makes a visit to a machine that has two things wrong, each of which shows by itself.
func DrawPair(rng *rand.Rand) *Visit {
	for {
		v := &Visit{m: drawn(rng), rng: rng}
		v.outdoor = v.weather()
		if cold := fahrenheit(60); v.outdoor < cold && v.m.floor == 0 {
			v.m.floor = fahrenheit(82 + 6*rng.NormFloat64())
		}
		base := v.m.run(v.m.box, v.outdoor, wrong{})
		if v.m.box-base.evaporating > 1.35*v.m.difference {
			continue
		}
		p := &together[rng.IntN(len(together))]
		v.Truth, v.Fault, v.Second, v.SecondFault = p.cause, p.fault, p.second, p.secondFault
		shows := true
		var both wrong
		for _, fault := range []string{v.Fault, v.SecondFault} {
			v.x = wrong{}
			shows = shows && v.have(fault)
			r := v.m.run(v.m.box, v.outdoor, v.x)
			shows = shows && (r.capacity < 0.9*base.capacity || r.condensing > base.condensing+5 ||
				r.evaporating < base.evaporating-3)
			both = v.x.and(both)
		}
		if v.x = both; shows && v.read() && v.Truth == p.cause {
			return v
		}
	}
}

// and is what is wrong where two things are; no two of a pair are of one part.
func (x wrong) and(y wrong) wrong {
	x.lost, x.excess = x.lost+y.lost, x.excess+y.excess
	x.condenser, x.evaporator = x.condenser+y.condenser, x.evaporator+y.evaporator
	x.air += y.air
	return x
}

func (v *Visit) weather() float64 {
	small := !v.m.valve || v.m.app == coldroom.ReachInCooler || v.m.app == coldroom.ReachInFreezer
	if small || v.rng.Float64() < 0.25 {
		return fahrenheit(74 + 8*v.rng.NormFloat64()) // kitchens and machine rooms
	}
	return fahrenheit(min(108, max(10, 68+20*v.rng.NormFloat64())))
}

// spoil puts something wrong with the machine; false where it cannot have that.
func (v *Visit) spoil() bool {
	sum := 0.0
	for _, f := range faulty {
		sum += f.share
	}
	at := v.rng.Float64() * sum
	i := 0
	for at > faulty[i].share {
		at -= faulty[i].share
		i++
	}
	v.Truth, v.Fault = faulty[i].cause, faulty[i].fault
	return v.have(v.Fault)
}

// have gives the machine a fault; false where it cannot have that.
func (v *Visit) have(fault string) bool {
	between := func(low, high float64) float64 { return low + (high-low)*v.rng.Float64() }
	x, m := &v.x, &v.m
	switch fault {
	case "cold-leak":
		x.lost = between(0.08, 0.62)
		if !m.receiver {
			x.lost = between(0.05, 0.35)
		}
	case "cold-too-much":
		x.excess = between(0.1, 0.55)
	case "cold-air-inside":
		x.gas = between(2, 12)
	case "cold-condenser-dirty":
		x.condenser = between(0.15, 0.65)
	case "cold-condenser-fan":
		x.condenser = between(0.45, 0.8)
	case "cold-defrost":
		x.evaporator = between(0.25, 0.8)
		x.air = x.evaporator * between(0.7, 1.05)
		x.air = min(x.air, 0.85)
	case "cold-evaporator-fan":
		x.air = []float64{0.33, 0.5, 0.5, 0.9}[v.rng.IntN(4)]
		x.evaporator = x.air * between(0.7, 0.85)
	case "cold-drier":
		x.feed, x.glass = between(0.4, 0.85), true
	case "cold-valve-starves":
		if !m.valve {
			return false
		}
		x.feed = between(0.4, 0.85)
	case "cold-bulb-loose":
		if !m.valve {
			return false
		}
		x.bulb = between(2, 8)
	case "cold-compressor-valves":
		x.pumping = between(0.12, 0.65)
	case "cold-head-control-open":
		if m.floor == 0 || v.outdoor+m.overOutdoor > m.floor-4 {
			return false
		}
		x.noFloor = true
	case "cold-head-control-shut":
		if !m.valve {
			return false
		}
		x.floor = between(6, 22)
	case "cold-door":
		x.warm = between(1.5, 9)
	case "cold-suction-clamp":
		x.clamp = between(0.15, 0.55)
	}
	return true
}

// read takes the readings with instruments, and leaves some out; false where a pressure
// control would have stopped the machine long before.
func (v *Visit) read() bool {
	r := v.runs()
	v.knows()
	if !v.note(r) {
		return false
	}
	v.Answers = map[string]bool{}
	for _, l := range seen {
		look, often := l.look, l.often
		if look == "cold-glass" && (!v.m.receiver || !v.m.valve) {
			continue
		}
		if v.rng.Float64() < often {
			v.Answers[look] = v.Look(look)
		}
	}
	return true
}

// runs is what the machine comes to, in a box that is the warmer the less it gives.
func (v *Visit) runs() reading {
	m := &v.m
	base := m.run(m.box+0.5*v.rng.NormFloat64(), v.outdoor, wrong{})
	cold := m.box + 0.3 + 0.6*v.rng.NormFloat64()
	r := m.run(cold, v.outdoor, v.x)
	lost := 1 - r.capacity/base.capacity
	warm := v.x.warm + max(0, (lost-0.1)*16*math.Exp(0.35*v.rng.NormFloat64()))
	v.box = cold + min(warm, 14)
	r = m.run(v.box, v.outdoor, v.x)
	v.Strong = lost >= 0.1
	if v.Truth == "cold-undercharge" && m.receiver && r.level > 0 {
		v.Truth, v.Strong = "cold-reserve", false // nothing shows yet but the level
	}
	switch v.Truth {
	case "cold-flooding":
		v.Strong = r.bulb-r.evaporating < 3
	case "cold-gas", "cold-overcharge", "cold-condenser", "cold-head-high":
		v.Strong = v.Strong || r.condensing-base.condensing > 5
	case "cold-head-low":
		v.Strong = base.condensing-r.condensing > 5
	case "cold-load":
		v.Strong = v.x.warm > 3
	case "cold-clamp":
		v.Strong = v.x.clamp*(v.outdoor-r.suction) > 8
	case "cold-short-cycle":
		v.Strong = true
	case "cold-evaporator":
		v.Strong = v.Strong || r.evaporating < base.evaporating-3
	}
	return r
}

// knows is what the technician knows of the machine. Who stands before a cold room knows what it
// is for; the thermostat shows what it is set to.
func (v *Visit) knows() {
	m := &v.m
	fluid, err := refrigerant.Lookup(m.fluid)
	if err != nil {
		panic(err)
	}
	v.Fluid, v.Valve = fluid, m.valve
	if v.rng.Float64() < 0.95 {
		v.Room.Application = m.app
	}
	if v.rng.Float64() < 0.85 {
		set := quantity.Fahrenheit(math.Round(m.setpoint))
		v.Room.Setpoint = &set
	}
	if v.rng.Float64() < 0.9 {
		v.Room.Receiver = &m.receiver
	}
	v.Charge = quantity.Pounds(3 + 12*v.rng.Float64())
}

// temperature is one that a clamp or a thermometer shows, with its standard uncertainty in K, and
// how often it is read.
type temperature struct {
	name           string
	at, std, often float64
}

func (v *Visit) temperatures(r *reading) []temperature {
	high, _ := v.high(r)
	liquid, _ := v.Fluid.BubbleTemperature(high)
	return []temperature{
		{"suctionLine", r.suction, 0.5, 0.98},
		{"liquidLine", float64(liquid) - r.liquidBelow, 0.5, 0.97},
		{"bulbLine", r.bulb, 0.5, 0.5},
		{"dischargeLine", r.discharge, 0.8, 0.6},
		{"returnDryBulb", r.box, 0.33, 0.99},
		{"supplyDryBulb", r.supply, 0.5, 0.6},
		{"outdoorDryBulb", v.outdoor, 0.4, 0.97},
		{"condenserLeaving", r.leaving, 0.7, 0.35},
	}
}

// high is the pressure in the middle of condensing.
func (v *Visit) high(r *reading) (quantity.Pressure, error) {
	bubble, err := v.Fluid.BubblePressure(quantity.Temperature(r.condensing))
	if err != nil {
		return 0, err
	}
	dew, err := v.Fluid.DewPressure(quantity.Temperature(r.condensing))
	return (bubble + dew) / 2, err
}

// note writes down what the instruments show; false where a control would have stopped the machine.
func (v *Visit) note(r reading) bool {
	noise := func(std float64) float64 { return std * v.rng.NormFloat64() }
	gauge := func(p quantity.Pressure) *quantity.Uncertain[quantity.GaugePressure] {
		off := quantity.PSIG(noise(0.6))
		return &quantity.Uncertain[quantity.GaugePressure]{
			Value: p.Gauge(quantity.StandardAtmosphere) + off, Std: float64(quantity.PSIG(0.6)),
		}
	}
	low, err := v.Fluid.DewPressure(quantity.Temperature(r.evaporating))
	if err != nil || low < 0.7*quantity.StandardAtmosphere || r.condensing > 338 ||
		r.discharge > 450 {
		return false
	}
	v.Suction = gauge(low)
	high, err := v.high(&r)
	if err != nil {
		return false
	}
	v.Liquid = gauge(high)
	first := v.taken == nil
	if first {
		v.taken = map[string]bool{}
	}
	takes := func(name string, often float64) bool {
		if first {
			v.taken[name] = v.rng.Float64() < often
		}
		return v.taken[name]
	}
	v.Readings = map[string]*quantity.Uncertain[quantity.Temperature]{}
	for _, t := range v.temperatures(&r) {
		if takes(t.name, t.often) {
			v.Readings[t.name] = &quantity.Uncertain[quantity.Temperature]{
				Value: quantity.Temperature(t.at + noise(t.std)), Std: t.std,
			}
		}
	}
	if takes("current", 0.5) {
		v.Current = r.current * (1 + noise(0.03))
	}
	return true
}

// seen are the looks that are made before anybody asks, with how often they come onto the sheet:
// who reads the air of a box stands in it, before its coil and its fans, and came through its
// door, whose gasket not everyone follows round; who connects gauges stands at the condenser and
// its fan, with the glass of the liquid line before him, unless that is behind a panel; short runs
// show in half of the visits. Common practice, no source.
var seen = []struct {
	look  string
	often float64
}{
	{"cold-glass", 0.9}, {"cold-coil-iced", 0.95}, {"cold-evaporator-fans", 0.95},
	{"cold-condenser-dirt", 0.9}, {"cold-condenser-fan-stands", 0.95}, {"cold-door-leaks", 0.7},
	{"cold-cycles", 0.5},
}

// shows are the faults that a look finds, with how often.
var shows = map[string]map[string]float64{
	"cold-coil-iced": {
		"cold-defrost": 0.95, "cold-evaporator-fan": 0.3, "cold-door": 0.2,
	},
	"cold-evaporator-fans":      {"cold-evaporator-fan": 0.97},
	"cold-defrost-works":        {"cold-defrost": 0.92},
	"cold-condenser-dirt":       {"cold-condenser-dirty": 0.93},
	"cold-condenser-fan-stands": {"cold-condenser-fan": 0.97},
	"cold-drier-drop":           {"cold-drier": 0.93},
	"cold-bulb-warm":            {"cold-valve-starves": 0.9, "cold-drier": 0.4, "cold-leak": 0.3},
	"cold-bulb-off":             {"cold-bulb-loose": 0.95},
	"cold-pump-down":            {"cold-compressor-valves": 0.93},
	"cold-standing":             {"cold-air-inside": 0.93},
	"cold-door-leaks":           {"cold-door": 0.93},
	"cold-cycles":               {"cold-pressure-control": 0.97, "cold-leak": 0.15},
	"cold-head-holds":           {"cold-head-control-open": 0.93, "cold-head-control-shut": 0.93},
	"cold-second-clamp":         {"cold-suction-clamp": 0.95},
}

// Look is what a look finds; it misses what is there, and finds what is not, now and then.
func (v *Visit) Look(code string) bool {
	const falsely = 0.04
	r := v.m.run(v.m.box, v.outdoor, v.x)
	chance := falsely
	switch code {
	case "cold-glass":
		if v.m.receiver && r.level < 0 || v.x.glass {
			chance = 0.93
		}
	case "cold-receiver-low":
		if v.m.receiver && r.level < 0.5*v.m.reserve {
			chance = 0.93
		}
	default:
		for _, fault := range []string{v.Fault, v.SecondFault} {
			if c, ok := shows[code][fault]; ok {
				chance = max(chance, c)
			}
		}
	}
	return v.rng.Float64() < chance
}

// Read takes a reading that was left out; false where it was taken, or is none.
func (v *Visit) Read(name string) bool {
	r := v.m.run(v.box, v.outdoor, v.x)
	for _, t := range v.temperatures(&r) {
		if t.name == name && v.Readings[name] == nil {
			v.taken[name] = true
			v.Readings[name] = &quantity.Uncertain[quantity.Temperature]{
				Value: quantity.Temperature(t.at + t.std*v.rng.NormFloat64()), Std: t.std,
			}
			return true
		}
	}
	return false
}

// Again reads the machine anew once it has settled; false where it does not run any more.
func (v *Visit) Again() bool { return v.note(v.runs()) }

// Add puts a mass into the machine, or takes it out, and takes its readings again once it has
// settled; false where it does not run any more.
func (v *Visit) Add(m quantity.Mass) bool {
	more := v.x.excess - v.x.lost + float64(m/v.Charge)
	v.x.excess, v.x.lost = max(more, 0), max(-more, 0)
	return v.Again()
}

// WeighIn leaves the right charge in an evacuated circuit, without the gas that was in it.
func (v *Visit) WeighIn() {
	for _, cause := range [...]string{
		"cold-undercharge", "cold-reserve", "cold-overcharge", "cold-gas",
	} {
		v.Mend(cause)
	}
	v.x.lost, v.x.excess = 0, 0
}

// Mend puts a cause right; false where the visit has no such cause. What else is wrong stays, and
// so does the charge.
func (v *Visit) Mend(cause string) bool {
	switch cause {
	case v.Truth:
		v.Truth, v.Fault = v.Second, v.SecondFault
	case v.Second:
	default:
		return false
	}
	if v.Second, v.SecondFault = "", ""; v.Truth == "" {
		v.Truth, v.Fault = "cold-sound", "cold-sound"
	}
	x := &v.x
	switch cause {
	case "cold-gas":
		x.gas = 0
	case "cold-condenser":
		x.condenser = 0
	case "cold-evaporator":
		x.evaporator, x.air = 0, 0
	case "cold-restriction", "cold-starving":
		x.feed, x.glass = 0, false
	case "cold-flooding":
		x.bulb = 0
	case "cold-compressor":
		x.pumping = 0
	case "cold-head-low":
		x.noFloor = false
	case "cold-head-high":
		x.floor = 0
	case "cold-load":
		x.warm = 0
	case "cold-clamp":
		x.clamp = 0
	}
	return true
}

// ChargeError is by what share of the whole charge the machine holds too much.
func (v *Visit) ChargeError() float64 { return v.x.excess - v.x.lost }

// Charged reports whether the charge does what it has to. Without a receiver it is within 5 %; with
// one, half of what it should hold beyond what runs is there, and liquid that backs up behind it
// fills no more than a tenth of the condenser.
func (v *Visit) Charged() bool {
	m, x := &v.m, &v.x
	if !m.receiver {
		return max(x.lost, x.excess) <= 0.05
	}
	_, _, room := m.charge(m.designOutdoor+m.overOutdoor, m.designOutdoor, x)
	return x.lost <= m.reserve/2 && room <= 0.1
}

// Spare is what the receiver holds beyond what runs, as a share of the whole charge, and
// Full what it holds when rightly charged.
func (v *Visit) Spare() (now, full float64) {
	return v.m.run(v.m.box, v.outdoor, v.x).level, v.m.reserve
}

// At is what the machine comes to in other outdoor air with its box where it belongs: the
// condensing temperature, and its capacity as a part of that in the air of the visit.
func (v *Visit) At(outdoor quantity.Temperature) (condensing quantity.Temperature, part float64) {
	there, here := v.m.run(v.m.box, float64(outdoor), v.x), v.m.run(v.m.box, v.outdoor, v.x)
	return quantity.Temperature(there.condensing), there.capacity / here.capacity
}
