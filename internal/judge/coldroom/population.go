package coldroom

import (
	"math"
	"math/rand/v2"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/physics/cyclefluid"
)

// samples is how many machines stand for all of a kind: enough for the spread of ten features,
// few enough to be solved while a technician waits.
const samples = 24

// parameters of a machine that differ from one to the next.
const parameters = 13

// draws are the same standard normal numbers for every cause, so that two causes differ by
// what fails and not by chance. Each parameter takes evenly spread quantiles in an order of
// its own (a Latin hypercube; McKay, Beckman and Conover, Technometrics 21 (1979) 239).
var draws = func() (out [samples][parameters]float64) {
	rng := rand.New(rand.NewPCG(7, 19))
	for p := range parameters {
		for i, k := range rng.Perm(samples) {
			out[i][p] = math.Sqrt2 * math.Erfinv(2*(float64(k)+0.5)/samples-1)
		}
	}
	return out
}()

// sampled is machine i of those that are like the one at hand: spreads are common practice,
// no source.
func sampled(i int, u *coldroom.Usual, valve, receiver bool) machine {
	z, td := &draws[i], float64(u.Difference.Value)
	m := machine{
		box:        float64(u.Box.Value),
		difference: td * math.Exp(z[0]*u.Difference.Std/td),
		bulb:       max(1.5, float64(u.BulbSuperheat.Value)+z[1]*u.BulbSuperheat.Std),
		gain:       6 * math.Exp(0.5*z[2]),
		// Freezers are made with a smaller difference at the condenser.
		overOutdoor: 11.5 * math.Exp(0.2*z[3]),
		indoorAir:   min(0.75, max(0.3, 0.5+0.08*z[4])),
		outdoorAir:  min(0.75, max(0.3, 0.5+0.08*z[5])),
		floor:       301 + 4*z[6],
		subcooling:  3.2 * math.Exp(0.45*z[7]),
		ideal:       0.6 + 0.045*z[8],
		open:        0.58 + 0.09*z[9],
		drop:        0.8 * math.Exp(0.5*z[10]),
		heatLoss:    max(0, 0.1+0.06*z[11]),
		valve:       valve,
		designDay:   designOutdoor,
	}
	if u.Frozen {
		m.overOutdoor, m.gain = 9.5*math.Exp(0.2*z[3]), 13*math.Exp(0.45*z[2])
	}
	if !receiver {
		m.subcooling = 5 * math.Exp(0.4*z[7])
	}
	if !valve {
		// A tube feeds right on one day only, and which that is is the maker's choice.
		m.floor, m.designDay = 0, 304+5*z[9]
		m.bulb = max(1.5, 4+2*z[1])
	}
	m.bulb = min(m.bulb, 0.85*m.difference)
	if m.difference < 3 {
		m.difference = 3
	}
	return m
}

// Features of a machine, in K but for the current, which is a share of the rated.
const (
	difference = iota // box less evaporating
	superheat         // at the compressor
	bulbSuperheat
	split // box less supply
	overOutdoor
	subcooling
	hot // discharge line over condensing
	rise
	overBox // box over what it is kept at
	current
	features
)

type vector [features]float64

// modelError is how far off the model is by itself, each feature for itself.
var modelError = vector{0.7, 1.8, 0.9, 0.9, 1.05, 0.7, 4.5, 1.3, 1.3, 0.1}

// seen is what would be read of a machine.
func (s *state) seen(w weather, z *[parameters]float64, clampOff float64, x *sized) vector {
	suction := s.suction + clampOff*(w.outdoor-s.suction)
	return vector{
		difference:    w.box - s.evaporating,
		superheat:     suction - s.evaporating,
		bulbSuperheat: s.bulb - s.evaporating,
		split:         w.box - s.supply,
		overOutdoor:   s.condensing - w.outdoor,
		subcooling:    s.bubble - s.liquid,
		hot:           s.discharge - s.condensingDew,
		rise:          s.leaving - w.outdoor,
		current:       (0.72 + 0.09*z[12]) * (0.3 + 0.7*s.power/x.designPower),
	}
}

// A cluster is a cause at one size, as what its machines would read.
type cluster struct {
	cause, size int
	mean        vector
	spread      [features][features]float64
	// loss of capacity against the sound machine.
	loss float64
}

// clusters solves the machines for every cause in the weather of the visit.
func clusters(
	f *cyclefluid.Fluid, u *coldroom.Usual, valve bool, w weather, doubt weather,
) []cluster {
	var machines [samples]*sized
	var weathers [samples]weather
	var starts [samples]unknowns
	var base [samples]state
	held := make([]bool, samples)
	for i := range samples {
		held[i] = (float64(i%12)+0.5)/12 < u.Receiver
		machines[i] = size(f, sampled(i, u, valve, held[i]))
		z := draws[(i+7)%samples]
		weathers[i] = weather{w.box + doubt.box*z[3], w.outdoor + doubt.outdoor*z[5]}
		base[i], starts[i] = machines[i].run(weathers[i], failing{}, nil)
	}
	var out []cluster
	for c := range causes {
		k := &causes[c]
		if k.valveOnly && !valve || k.receiverOnly && u.Receiver == 0 ||
			k.coldOnly && w.outdoor > coolWeather {
			continue
		}
		for n := range k.sizes {
			out = append(out, clusterOf(c, n, machines[:], weathers[:], starts[:], base[:], held))
		}
	}
	return out
}

func clusterOf(
	c, n int, machines []*sized, weathers []weather, starts []unknowns, base []state, held []bool,
) cluster {
	k := &causes[c]
	out := cluster{cause: c, size: n}
	var rows []vector
	for i, m := range machines {
		x := k.sizes[n]
		if !held[i] && k.withoutReceiver != nil {
			x = k.withoutReceiver[n]
		}
		st := base[i]
		if x != (failing{}) {
			if st, _ = m.run(weathers[i], x, &starts[i]); !st.converged {
				continue
			}
		}
		off := 0.0
		if k.clamp != nil {
			off = k.clamp[n]
		}
		v := st.seen(weathers[i], &draws[i], off, m)
		lost := max(0, 1-st.capacity/base[i].capacity)
		out.loss += lost
		v[overBox] = 0.3 + 14*max(0, lost-0.08) + 0.5*draws[i][11]
		if k.over != nil {
			v[overBox] += k.over[n]
		}
		rows = append(rows, v)
	}
	count := float64(max(len(rows), 1))
	out.loss /= count
	for _, v := range rows {
		for a := range v {
			out.mean[a] += v[a] / count
		}
	}
	for _, v := range rows {
		for a := range v {
			for b := range v {
				out.spread[a][b] += (v[a] - out.mean[a]) * (v[b] - out.mean[b]) / max(count-1, 1)
			}
		}
	}
	lag := 5 * out.loss // how far the box has warmed takes time
	if k.over != nil {
		lag = 1.2
	}
	for a := range features {
		out.spread[a][a] += sq(modelError[a])
	}
	out.spread[overBox][overBox] += sq(lag)
	return out
}
