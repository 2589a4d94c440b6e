package bench

import (
	"math"
	"math/rand/v2"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A machine is a set of parts that hold a box. Temperatures in K.
type machine struct {
	app                        coldroom.Application
	fluid                      string
	frozen, valve, receiver    bool
	box, difference            float64 // of the box, and to evaporating, by design
	designOutdoor, overOutdoor float64
	// capacity and power per K of evaporating, and per K of condensing.
	byEvaporating, byCondensing float64
	cop                         float64
	staticSuperheat, gradient   float64
	valveMargin                 float64
	// dry is how many times the superheated end of the coil nears the air.
	dry          float64
	gain         float64
	floor        float64 // K; 0 without a control
	floods       bool    // the control floods the condenser
	subcooling   float64
	polytropic   float64
	airShare     float64 // of the difference that the air gives
	outdoorShare float64
	lineDrop     float64
	reserve      float64 // charge in the receiver beyond what runs, share of all
	rated        float64 // share of the rated current at design
	setpoint     float64
	// evaporatorHolds and needed are shares of the charge: in the coil, and in all that runs.
	evaporatorHolds, needed float64
}

// exponents of compression: (n-1)/n of a real compressor, by refrigerant.
var exponents = map[string]float64{
	"R-404A": 0.158, "R-507A": 0.157, "R-448A": 0.18, "R-449A": 0.178, "R-134a": 0.15,
	"R-513A": 0.143, "R-22": 0.2, "R-290": 0.158,
}

func fahrenheit(t float64) float64 { return float64(quantity.Fahrenheit(t)) }

// drawn makes a machine that is sound.
func drawn(rng *rand.Rand) machine {
	normal := func(mean, std float64) float64 { return mean + std*rng.NormFloat64() }
	spread := func(mean, share float64) float64 { return mean * math.Exp(share*rng.NormFloat64()) }
	m := machine{valve: true}
	switch r := rng.Float64(); {
	case r < 0.42:
		m.app, m.setpoint, m.difference = coldroom.WalkInCooler, normal(36, 1.6), normal(11, 1.8)
	case r < 0.7:
		m.app, m.setpoint, m.difference = coldroom.WalkInFreezer, normal(-5, 4), normal(10, 1.6)
		m.frozen = true
	case r < 0.82:
		m.app, m.setpoint, m.difference = coldroom.ReachInCooler, normal(37, 1.5), normal(17, 2.5)
	case r < 0.88:
		m.app, m.setpoint, m.difference = coldroom.ReachInFreezer, normal(0, 2), normal(14, 2)
		m.frozen = true
	case r < 0.95:
		m.app, m.setpoint, m.difference = coldroom.DisplayCase, normal(35, 2), normal(14, 2.5)
	default:
		m.app, m.setpoint, m.difference = coldroom.ProduceCooler, normal(36, 2), normal(8.5, 1.2)
	}
	small := m.app == coldroom.ReachInCooler || m.app == coldroom.ReachInFreezer
	m.box, m.difference = fahrenheit(m.setpoint), max(m.difference, 5.5)/1.8
	m.receiver = rng.Float64() < 0.92
	if small {
		m.receiver = rng.Float64() < 0.2
		m.valve = rng.Float64() < 0.35
	}
	fluids := []string{"R-404A", "R-404A", "R-448A", "R-449A", "R-507A"}
	if !m.frozen {
		fluids = append(fluids, "R-134a", "R-22", "R-513A")
	}
	if small {
		fluids = append(fluids, "R-290", "R-290")
	}
	m.fluid = fluids[rng.IntN(len(fluids))]
	m.designOutdoor = fahrenheit(95)
	m.overOutdoor, m.cop = spread(11.5, 0.17), spread(2.5, 0.1)
	m.gain = spread(6, 0.45)
	if m.frozen {
		m.overOutdoor, m.cop, m.gain = spread(9, 0.17), spread(1.45, 0.1), spread(12, 0.4)
	}
	m.byEvaporating, m.byCondensing = normal(0.037, 0.003), normal(0.011, 0.0015)
	m.staticSuperheat, m.gradient = max(1.5, normal(3, 0.7)), max(1.2, normal(2.4, 0.5))
	if m.frozen {
		m.staticSuperheat = max(1.2, normal(2.4, 0.6))
	}
	m.valveMargin = max(1.25, normal(1.65, 0.22))
	m.dry = normal(5.2, 0.7)
	if m.valve && rng.Float64() < 0.85 {
		m.floor = normal(300.5, 3.5)
		m.floods = m.receiver && rng.Float64() < 0.45
	}
	m.subcooling = max(0.6, normal(3, 1.4))
	if !m.receiver {
		m.subcooling = max(1.5, normal(5, 1.8))
	}
	m.polytropic = exponents[m.fluid] * math.Exp(0.05*rng.NormFloat64())
	m.airShare, m.outdoorShare = normal(0.5, 0.07), normal(0.5, 0.07)
	m.lineDrop = spread(0.8, 0.4)
	m.reserve = normal(0.3, 0.08)
	m.rated = normal(0.72, 0.08)
	m.evaporatorHolds, m.needed = normal(0.3, 0.05), 0.7
	return m
}

// A wrong is what is wrong with a machine.
type wrong struct {
	lost, excess    float64 // share of the charge
	gas             float64 // K at the condenser
	condenser       float64
	evaporator, air float64
	feed            float64
	bulb            float64 // K
	pumping         float64
	noFloor         bool
	floor           float64
	warm            float64 // K of the box
	clamp           float64
	glass           bool
}

// A reading is what could be read without an error. Temperatures in K.
type reading struct {
	box, outdoor, evaporating, suction, bulb float64
	condensing                               float64 // middle, as the gauge shows it
	liquidBelow, discharge, supply, leaving  float64
	current, capacity, level                 float64
	covered                                  float64
}

// charge is where it lies at a condensing temperature, as shares of the whole: the level of the
// receiver, what the evaporator is short of, and the part of the condenser that liquid takes
// up besides what a floor of the pressure floods.
func (m *machine) charge(condensing, outdoor float64, x *wrong) (level, short, room float64) {
	needs := m.needed
	if m.floods && !x.noFloor && condensing > outdoor+m.overOutdoor+1 {
		needs += 0.22 * min(0.75, 1-m.overOutdoor/max(condensing-outdoor, 1))
	}
	there := m.needed + m.reserve - x.lost + x.excess
	level, short = there-needs, max(0, needs-there)
	if !m.receiver {
		short = max(0, x.lost-0.04)
	}
	if spare := there - needs; m.receiver && spare > 1.25*m.reserve+0.1 {
		room = min(0.7, (spare-1.25*m.reserve-0.1)*3)
	} else if !m.receiver && x.excess > 0 {
		room = min(0.7, x.excess*1.6)
	}
	return level, short, room
}

// run balances the machine in a weather.
func (m *machine) run(box, outdoor float64, x wrong) reading {
	designEvaporating := m.box - m.difference
	designCondensing := m.designOutdoor + m.overOutdoor
	full := 1 / m.difference
	coil := full * (1 - x.evaporator)
	gives := (1 + 1/m.cop) / m.overOutdoor * (1 - x.condenser)
	low, high := saturation(m.fluid)
	designDrop := high(designCondensing) - low(designEvaporating)

	condensing := max(outdoor+m.overOutdoor, m.floor)
	evaporating := box - 1.1*m.difference
	r := reading{box: box, outdoor: outdoor, level: m.reserve}
	sub, starved := m.subcooling, false
	for range 60 {
		var short, room float64
		r.level, short, room = m.charge(condensing, outdoor, &x)
		reach := max(0.08, 1-short/m.evaporatorHolds)

		compressor := func(te float64) float64 {
			return math.Exp(m.byEvaporating*(te-designEvaporating)) *
				(1 - m.byCondensing*(condensing-designCondensing)) * (1 - x.pumping)
		}
		orifice := func(te float64) float64 {
			drop := max(high(condensing)-low(te), 1e4)
			return m.valveMargin * math.Sqrt(drop/designDrop) * (1 - x.feed)
		}
		// Wetted share of the coil where all that comes through is evaporated.
		target := m.staticSuperheat + m.gradient/m.valveMargin - x.bulb
		te := bisect(func(te float64) float64 {
			td := box - te
			wet := m.wet(target/td) * reach
			absorbed := coil * wet * td
			if !m.valve {
				absorbed = math.Min(coil*td*m.wet(0.05)*reach, m.tube(orifice(te)))
			} else {
				absorbed = min(absorbed, orifice(te))
			}
			return compressor(te) - absorbed
		}, box-60, box-0.5)
		evaporating = te
		td := box - te
		starved = orifice(te) < coil*td*m.wet(target/td)*reach || reach < 1
		r.capacity = compressor(te)
		r.covered = min(1, r.capacity/max(coil*td, 1e-9))
		heat := r.capacity * (1 + m.power(te, condensing, x))
		held := gives * (1 - room)
		tc := outdoor + heat/held
		floor := m.floor + x.floor
		if m.floor == 0 && x.floor > 0 {
			floor = outdoor + m.overOutdoor + x.floor
		}
		if !x.noFloor && floor > 0 {
			tc = max(tc, floor)
		}
		sub = m.subcooling*max(0, 1-6*short) + chilled(room)*(tc-outdoor)
		if !m.receiver {
			sub = m.subcooling * max(0, 1-7*x.lost)
			sub += chilled(room) * (tc - outdoor)
		}
		if math.Abs(tc-condensing) < 0.01 {
			break
		}
		condensing += 0.5 * (tc - condensing)
		r.evaporating = te
	}
	td := box - evaporating
	r.evaporating = evaporating - m.lineDrop
	// The dry end warms its vapor towards the air.
	dryEnd := max(0, td*(1-math.Exp(-m.dry*(1-r.covered))))
	if m.valve {
		least := m.staticSuperheat + m.gradient/m.valveMargin - x.bulb
		if !starved {
			dryEnd = least
		}
		dryEnd = max(dryEnd, least)
	}
	wetReturn := min(0, dryEnd)
	dryEnd = max(dryEnd, 0)
	r.bulb = evaporating + dryEnd
	gain := m.gain * math.Pow(1/max(r.capacity, 0.15), 0.75) *
		max(0, outdoor-r.bulb) / max(5, m.designOutdoor-(m.box-m.difference))
	gain = min(gain, 0.8*max(0, outdoor-r.bulb)) + 2*wetReturn
	suction := max(r.bulb+gain, r.evaporating)
	ratio := high(condensing+x.gas) / low(r.evaporating) // a gas adds its pressure
	r.discharge = suction * math.Pow(max(ratio, 1.1), m.polytropic*(1+0.35*x.pumping))
	r.discharge -= 0.06 * (r.discharge - outdoor)
	r.suction = suction + x.clamp*(outdoor-suction)
	r.condensing = condensing + x.gas
	r.liquidBelow = sub + x.gas
	r.supply = max(box-m.airShare*m.difference*r.capacity/max(1-x.air, 0.08), evaporating)
	r.leaving = outdoor + m.outdoorShare*m.overOutdoor*r.capacity*
		(1+m.power(evaporating, condensing, x))/(1+1/m.cop)/max(1-0.8*x.condenser, 0.15)
	r.current = m.rated * (0.35 + 0.65*r.capacity*m.power(evaporating, condensing, x)*m.cop)
	return r
}

// power is the electric power for each watt of cooling.
func (m *machine) power(te, tc float64, x wrong) float64 {
	lift := (tc - te) / (m.designOutdoor + m.overOutdoor - m.box + m.difference)
	return max(0.05, lift) / m.cop * (1 - 0.4*x.pumping) / (1 - x.pumping)
}

// wet is the capacity of a coil at a superheat that is a share of its difference, against
// that at 0.65 of it.
func (m *machine) wet(share float64) float64 {
	share = max(share, 0)
	if share <= 0.65 {
		return 1 + 0.06*(0.65-share)
	}
	off := min((share-0.65)/0.35, 1)
	return 1 - 0.95*off*off
}

// tube is what a capillary tube passes: it has no margin, and more pressure brings more.
func (m *machine) tube(orifice float64) float64 { return orifice / m.valveMargin * 1.02 }

// chilled is how far liquid that stands in a share of the condenser comes to its air. Of a
// condenser, watts per degree are some 13 kJ/(kg K) of its flow; to liquid of 1.6 kJ/(kg K) it
// gives a third as well: 2.7 transfer units.
func chilled(share float64) float64 { return 1 - math.Exp(-2.7*share) }

func bisect(f func(float64) float64, low, high float64) float64 {
	for range 44 {
		middle := (low + high) / 2
		if f(middle) > 0 { // the compressor takes more than comes: colder
			high = middle
		} else {
			low = middle
		}
	}
	return (low + high) / 2
}

// saturation returns the pressures of a refrigerant by temperature, as straight lines of the
// logarithm over 1/T through two points each.
func saturation(designation string) (low, high func(float64) float64) {
	r, err := refrigerant.Lookup(designation)
	if err != nil {
		panic(err)
	}
	const a, b = 245., 315.
	line := func(at func(quantity.Temperature) (quantity.Pressure, error)) func(float64) float64 {
		p, _ := at(a)
		q, _ := at(b)
		slope := math.Log(float64(q/p)) / (1/a - 1/b)
		return func(t float64) float64 { return float64(p) * math.Exp(slope*(1/a-1/t)) }
	}
	return line(r.DewPressure), line(r.BubblePressure)
}
