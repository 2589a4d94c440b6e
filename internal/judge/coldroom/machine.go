package coldroom

import (
	"math"

	"github.com/satline/satline/internal/physics/cyclefluid"
)

// A machine is a compressor with its coils, sized for a design day so that it holds its box:
// K, Pa, W of a machine that moves one watt on that day. Only what differs from machine to
// machine is a field; see sampled.
type machine struct {
	box, difference float64 // K of the box, and from it to evaporating, by design
	// bulb and gain are the superheat at the bulb and what the suction line adds by design.
	bulb, gain float64
	// overOutdoor is from the outdoor air to condensing by design.
	overOutdoor float64
	// air is how much of its difference each coil gives to its air.
	indoorAir, outdoorAir float64
	// floor is the condensing temperature that the head-pressure control holds; 0 for none.
	floor float64
	// subcooling of a condenser that is not flooded.
	subcooling float64
	ideal      float64 // isentropic efficiency
	// open is how far the valve is open by design; drop is from the coil to the compressor, in
	// K of saturation; heatLoss is the part of the compression heat that the shell gives off.
	open, drop, heatLoss float64
	valve                bool
	designDay            float64 // K of the outdoor air
}

// A failing is what is wrong with a machine; the zero failing is nothing.
type failing struct {
	short    float64 // quality of what leaves the receiver or condenser
	dry      float64 // part of the subcooling that is missing
	flooded  float64 // part of the condenser full of liquid
	gas      float64 // K that a gas adds to the condensing temperature
	indoor   float64 // part of the air over the evaporator that is missing
	ice      float64 // part of the evaporator's conductance that is missing
	outdoor  float64 // part of the condenser's conductance that is missing
	choked   float64 // part of the flow area that is missing ahead of the device, flashing
	starving float64 // part of the valve's capacity that is missing
	floods   float64 // K by which the bulb reads too warm
	leaks    float64 // part of the compressor's flow that goes back
	noFloor  bool    // the head-pressure control does not hold
	floor    float64 // K by which it holds too high
}

// A weather is the box and the air that the condenser gives its heat to.
type weather struct{ box, outdoor float64 }

// A state is how a machine runs.
type state struct {
	evaporating, condensing   float64 // dew at the compressor, middle
	condensingDew, bubble     float64
	bulb, suction, discharge  float64 // K of the pipes
	liquid                    float64
	supply, leaving           float64
	power, capacity, pressure float64 // of the design day
	ratio                     float64
	converged                 bool
}

const designOutdoor = 308.15 // K, 95 °F

// sized is a machine with its parts sized.
type sized struct {
	machine
	f                          *cyclefluid.Fluid
	displacement, orifice      float64
	evaporator, indoorFlow     float64 // W/K
	condenser, outdoorFlow     float64
	line                       float64 // W/K of the suction line
	designMass, designPower    float64
	designDrop, designPressure float64
}

func volumetric(ratio float64) float64 {
	return max(0.15, 1-0.05*(math.Pow(ratio, 0.87)-1))
}

// flashing is what is left of the flow through a valve where vapor comes with the liquid: a
// tenth of it by mass leaves about a quarter.
func flashing(quality float64) float64 { return 1 / (1 + 28*max(quality, 0)) }

// size makes the parts of a machine such that on its design day it runs as designed.
func size(f *cyclefluid.Fluid, m machine) *sized {
	s := &sized{machine: m, f: f}
	evaporating := m.box - m.difference
	condensing := m.designDay + m.overOutdoor
	low, high := f.At(f.DewPressure(evaporating)), f.At(middlePressure(f, condensing))
	suction := f.At(f.DewPressure(evaporating - m.drop))
	out := low.VaporAt(low.Dew.T + m.bulb)
	in := suction.VaporAt(suction.Dew.T + m.bulb + m.gain)
	liquid := high.LiquidAt(high.Bubble.T - m.subcooling)
	s.designMass = 1 / (out.H - liquid.H)
	s.displacement = s.designMass * in.V / volumetric(high.P/suction.P)
	ideal := high.AtEntropy(in.S).H - in.H
	s.designPower = s.designMass * ideal / m.ideal
	s.designDrop = low.P - suction.P
	s.designPressure = high.P
	s.orifice = s.designMass / (m.open * math.Sqrt((high.P-low.P)/liquid.V))
	// The surface that superheats cools no air.
	wet := 1 - superheating(m.bulb/m.difference)
	s.evaporator = 1 / (wet * m.difference)
	s.indoorFlow = 0.88 / (m.indoorAir * m.difference)
	rejected := s.designMass * (in.H + (1-m.heatLoss)*ideal/m.ideal - liquid.H)
	s.condenser = rejected / m.overOutdoor
	s.outdoorFlow = rejected / (m.outdoorAir * m.overOutdoor)
	if cool := m.designDay - (evaporating + m.bulb); cool > m.gain {
		s.line = s.designMass * suction.DewHeatCapacity() *
			-math.Log(1-m.gain/cool)
	}
	return s
}

// superheating is the part of the coil that it takes to bring vapor a share of the way to the
// temperature of the air: four and a half transfer units over the whole of it.
func superheating(share float64) float64 {
	const units, straight = 4.5, 0.97 // beyond straight it goes on in a straight line
	if share = soft(share, 0.06); share <= straight {
		return -math.Log(1-share) / units
	}
	return (-math.Log(1-straight) + (share-straight)/(1-straight)) / units
}

func middlePressure(f *cyclefluid.Fluid, t float64) float64 {
	a, b := f.BubblePressure(t), f.DewPressure(t)
	return (a + b) / 2
}

// reduced is the conductance of a coil whose air or surface is partly missing, against that
// of the whole: the air flow sets a good part of it.
func reduced(airLeft, surfaceLeft, effect float64) float64 {
	ntu := -math.Log(1 - effect)
	left := 1 - math.Exp(-ntu*surfaceLeft*math.Pow(airLeft, -0.4))
	return airLeft * left / effect
}

// run solves the machine in a weather with something wrong. Where the solver finds no way there
// from a guess it is led: the weather changes from that of the design day in steps.
func (s *sized) run(w weather, x failing, from *unknowns) (state, unknowns) {
	st, u := s.solve(w, x, from)
	if st.converged || from != nil {
		return st, u
	}
	const steps = 8
	start := weather{s.box, s.designDay}
	var led *unknowns
	for i := range steps + 1 {
		part := float64(i) / steps
		at := weather{
			start.box + part*(w.box-start.box), start.outdoor + part*(w.outdoor-start.outdoor),
		}
		st, u = s.solve(at, x, led)
		led = &u
	}
	return st, u
}

// solve is run from one start: for the two pressures and the
// enthalpy at the end of the coil, by Newton's method with differences.
func (s *sized) solve(w weather, x failing, from *unknowns) (state, unknowns) {
	u := unknowns{}
	if from != nil {
		u = *from
	} else {
		u = s.guess(w, x)
	}
	var st state
	r := s.balance(&u, w, x, &st)
	var j [3]residuals
	fresh := false
	for range 40 {
		n := r.norm()
		if n < 1e-4 {
			break
		}
		if !fresh {
			j, fresh = s.slopes(u, r, w, x), true
		}
		d, ok := solve3(j, r)
		if !ok {
			break
		}
		scale := 1.0
		for i, most := range (unknowns{0.35, 0.25, 12000}) {
			if a := math.Abs(d[i]); a*scale > most {
				scale = most / a
			}
		}
		better := false
		for range 8 {
			v := u
			for i := range v {
				v[i] -= scale * d[i]
			}
			var sv state
			rv := s.balance(&v, w, x, &sv)
			if m := rv.norm(); m < n {
				j = learnt(j, u, v, r, rv)
				u, r, st, better, fresh = v, rv, sv, true, m < 0.4*n
				break
			}
			scale *= 0.4
		}
		if !better {
			break
		}
	}
	const near = 0.015 // of the design day: where a corner of the model holds the last steps up
	st.converged = r.norm() < near
	return st, u
}

// slopes are the residuals by each unknown, by differences.
func (s *sized) slopes(u unknowns, r residuals, w weather, x failing) (j [3]residuals) {
	step := unknowns{1e-5, 1e-5, 20}
	for i := range u {
		v := u
		v[i] += step[i]
		rv := s.balance(&v, w, x, &state{})
		for k := range rv {
			j[i][k] = (rv[k] - r[k]) / step[i]
		}
	}
	return j
}

// learnt is a matrix of slopes after a step, by Broyden's first update, in the units in which
// the unknowns are of one size.
func learnt(j [3]residuals, u, v unknowns, r, rv residuals) [3]residuals {
	size := unknowns{1, 1, 30000}
	var d unknowns
	whole := 0.0
	for i := range d {
		d[i] = (v[i] - u[i]) / size[i]
		whole += d[i] * d[i]
	}
	for k := range r {
		miss := rv[k] - r[k]
		for i := range d {
			miss -= j[i][k] * d[i] * size[i]
		}
		for i := range d {
			j[i][k] += miss * d[i] / whole / size[i]
		}
	}
	return j
}

// unknowns are the logarithms of the pressures in the coils and the enthalpy at the end of
// the evaporator.
type unknowns [3]float64

type residuals [3]float64

func (r residuals) norm() float64 { return math.Sqrt(r[0]*r[0] + r[1]*r[1] + r[2]*r[2]) }

func (s *sized) guess(w weather, x failing) unknowns {
	low := s.f.At(s.f.DewPressure(w.box - 1.1*s.difference))
	c := w.outdoor + s.overOutdoor
	if !x.noFloor {
		c = max(c, s.floor+x.floor)
	}
	return unknowns{
		math.Log(low.P), math.Log(middlePressure(s.f, c)), low.VaporAt(low.Dew.T + s.bulb).H,
	}
}

// balance is what goes in less what comes out: of the valve, of each coil, as shares of the
// design day.
func (s *sized) balance(u *unknowns, w weather, x failing, st *state) residuals {
	low, high := s.f.At(math.Exp(u[0])), s.f.At(math.Exp(u[1]))
	out := low.AtEnthalpy(u[2])
	suctionP := max(low.P-s.designDrop, 0.4*low.P)
	suction := s.f.At(suctionP)
	ratio := max(high.P/suction.P, 1.01)

	// The suction line warms what comes; the compressor takes its volume.
	in := suction.AtEnthalpy(u[2])
	mass := s.displacement * volumetric(ratio) * (1 - x.leaks) / in.V
	flow := max(mass, 0.02*s.designMass)
	cp := suction.DewHeatCapacity()
	warm := max(w.outdoor-in.T, 0) * (1 - math.Exp(-s.line/(flow*cp)))
	in = suction.AtEnthalpy(u[2] + cp*warm)
	mass = s.displacement * volumetric(ratio) * (1 - x.leaks) / in.V
	flow = max(mass, 0.02*s.designMass)
	ideal := high.AtEntropy(in.S).H - in.H
	work := ideal / s.ideal / (1 - 0.6*x.leaks) // what leaks back is compressed again
	discharge := high.AtEnthalpy(in.H + (1-s.heatLoss)*work)

	// Liquid.
	middle := (high.Bubble.T + high.Dew.T) / 2
	sub := s.subcooling * (1 - x.dry) * math.Sqrt(max(0, (middle-w.outdoor)/s.overOutdoor))
	sub += max(0, middle-w.outdoor-sub) * (1 - math.Exp(-3.2*x.flooded))
	liquid := high.LiquidAt(high.Bubble.T - sub)
	h := liquid.H
	if x.short > 0 {
		liquid = high.AtEnthalpy(high.Bubble.H + x.short*(high.Dew.H-high.Bubble.H))
		h = liquid.H
		liquid.T = high.Bubble.T - 0.3
	}

	// The metering device.
	ahead, quality := high.P, max(x.short, 0)
	if x.choked > 0 {
		left := 1 - x.choked
		drop := 0.35 * (high.P - low.P) * sq(flow/s.designMass) * (1/(left*left) - 1) * 0.12
		ahead = max(high.P-drop, low.P*1.02)
		q := s.f.At(ahead)
		quality = max(quality, q.Quality(h))
	}
	superheat := (u[2] - low.Dew.H) / low.DewHeatCapacity()
	open := s.open
	if s.valve {
		static := 0.6 * s.bulb
		open = s.open * (superheat + x.floods - static) / (s.bulb - static)
		open = smooth(open, 0.04, 1)
	} else if x.floods > 0 {
		open *= 1 + x.floods/8
	}
	through := s.orifice * open * (1 - x.starving) * flashing(quality) *
		math.Sqrt(max(ahead-low.P, 1e3)/liquid.V)

	// The coils.
	left := reduced(1-x.indoor, 1-x.ice, s.indoorAir)
	share := superheat / max(w.box-low.Dew.T, 0.5)
	meanDrop := low.Dew.T - (low.Dew.T-low.Bubble.T)*0.35
	absorbs := s.evaporator * left * (1 - superheating(share)) * (w.box - meanDrop)
	absorbed := flow * (u[2] - h)
	rejected := flow * (discharge.H - h)
	room := max(1-x.flooded, 0.1) * reduced(1-0.7*x.outdoor, 1-x.outdoor, s.outdoorAir)
	rejects := s.condenser * room * (middle - w.outdoor)
	if floor := s.floor + x.floor; !x.noFloor && s.floor > 0 || x.floor > 0 {
		// The control takes room or air from the condenser until it holds.
		rejects = min(rejects, rejected*math.Exp((middle-floor)/1.2))
	}

	st.evaporating, st.condensing = suction.Dew.T, middle+x.gas
	st.bubble, st.condensingDew = high.Bubble.T+x.gas, high.Dew.T+x.gas
	st.bulb, st.suction = out.T, in.T
	st.discharge, st.liquid = discharge.T+0.6*x.gas, liquid.T
	st.capacity, st.power = absorbed, flow*work
	st.pressure, st.ratio = suction.P, ratio
	air := s.indoorFlow * (1 - x.indoor)
	st.supply = w.box - 0.88*absorbed/max(air, 1e-3)
	st.leaving = w.outdoor + rejected/(s.outdoorFlow*max(1-0.7*x.outdoor, 0.05))
	return residuals{(flow - through) / s.designMass, absorbed - absorbs, rejected - rejects}
}

func sq(x float64) float64 { return x * x }

// smooth keeps v within low and top without a corner.
func smooth(v, low, top float64) float64 {
	const k = 0.06
	v = low + soft(v-low, k)
	return top - soft(top-v, k)
}

// soft is max(x, 0) without a corner.
func soft(x, k float64) float64 { return (x + math.Sqrt(x*x+k*k)) / 2 }

func solve3(j [3]residuals, r residuals) (unknowns, bool) {
	a := [3][4]float64{}
	for i := range 3 {
		for k := range 3 {
			a[k][i] = j[i][k]
		}
	}
	for k := range 3 {
		a[k][3] = r[k]
	}
	for c := range 3 {
		p := c
		for k := c + 1; k < 3; k++ {
			if math.Abs(a[k][c]) > math.Abs(a[p][c]) {
				p = k
			}
		}
		if math.Abs(a[p][c]) < 1e-12 {
			return unknowns{}, false
		}
		a[c], a[p] = a[p], a[c]
		for k := range 3 {
			if k == c {
				continue
			}
			q := a[k][c] / a[c][c]
			for i := c; i < 4; i++ {
				a[k][i] -= q * a[c][i]
			}
		}
	}
	return unknowns{a[0][3] / a[0][0], a[1][3] / a[1][1], a[2][3] / a[2][2]}, true
}
