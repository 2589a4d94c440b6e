// Package machine is the model of a machine that keeps a cold room: balanced between its
// compressor, its valve or tube and its two coils, with a control of the head pressure, and
// with what may be wrong with it.
package machine

import (
	"math"

	"github.com/satline/satline/internal/physics/cyclefluid"
)

// A Design is a compressor with its coils, sized for a design day so that it holds its box:
// K, Pa, W of a machine that moves one watt on that day. Only what differs from machine to
// machine is a field.
type Design struct {
	Box, Difference float64 // K of the box, and from it to evaporating, by design
	// Bulb and Gain are the superheat at the bulb and what the suction line adds by design.
	Bulb, Gain float64
	// OverOutdoor is from the outdoor air to condensing by design.
	OverOutdoor float64
	// IndoorAir and OutdoorAir are how much of its difference each coil gives to its air.
	IndoorAir, OutdoorAir float64
	// Floor is the condensing temperature that the head-pressure control holds; 0 for none.
	Floor float64
	// Subcooling of a condenser that is not flooded.
	Subcooling float64
	Ideal      float64 // isentropic efficiency
	// Open is how far the valve is open by design; Drop is from the coil to the compressor, in
	// K of saturation; HeatLoss is the part of the compression heat that the shell gives off.
	Open, Drop, HeatLoss float64
	Valve                bool
	DesignDay            float64 // K of the outdoor air
	// DryEnd is how well the end of the evaporator that holds vapor alone takes up heat, as a share
	// of how well its wet part does. The vapor is turbulent, at some 130 to 280 W/(m² K) of its own
	// side, where boiling gives 2000 and the air, over all its fins, 430 to 520: 0.2 to 0.45.
	DryEnd float64
	// Follows is the power of the condenser's difference to its air that the subcooling goes with.
	// Where liquid stands in a fixed part of the condenser, and half of the conductance is lost,
	// the difference doubles and the liquid comes half as many transfer units near to the air:
	// from 0.43 of the difference to 0.25 of it, a power of 0.2. Tests of dirty condensers found
	// it to fall a little (Breuker and Braun, HVAC&R Research 4(3), 1998, from memory).
	Follows float64
}

// A Failing is what is wrong with a machine; the zero Failing is nothing.
type Failing struct {
	Short   float64 // quality of what leaves the receiver or condenser
	Dry     float64 // part of the subcooling that is missing
	Flooded float64 // part of the condenser full of liquid
	// Gas is what a gas adds to the condensing temperature that a gauge shows, K. Its pressure adds
	// to that of the refrigerant, and the compressor works against both.
	Gas      float64
	Indoor   float64 // part of the air over the evaporator that is missing
	Ice      float64 // part of the evaporator's conductance that is missing
	Outdoor  float64 // part of the condenser's conductance that is missing
	Choked   float64 // part of the flow area that is missing ahead of the device, flashing
	Starving float64 // part of the valve's capacity that is missing
	Floods   float64 // K by which the bulb reads too warm
	Leaks    float64 // part of the compressor's flow that goes back
	NoFloor  bool    // the head-pressure control does not hold
	Floor    float64 // K by which it holds too high
}

// A Weather is the box and the air that the condenser gives its heat to.
type Weather struct{ Box, Outdoor float64 }

// A State is how a machine runs.
type State struct {
	Evaporating, Condensing  float64 // dew at the compressor, middle
	CondensingDew, Bubble    float64
	Bulb, Suction, Discharge float64 // K of the pipes
	Liquid                   float64
	Supply, Leaving          float64
	Power, Capacity          float64 // of the design day
	Converged                bool
}

// HotDay is the outdoor air of a design day, 95 °F in K.
const HotDay = 308.15

// A Machine is a Design with its parts sized.
type Machine struct {
	Design
	f                      *cyclefluid.Fluid
	displacement, orifice  float64
	evaporator, indoorFlow float64 // W/K
	condenser, outdoorFlow float64
	line                   float64 // W/K of the suction line
	units                  float64 // transfer units of the evaporator, were all of it dry
	DesignPower            float64
	designMass, designDrop float64
}

func volumetric(ratio float64) float64 {
	return max(0.15, 1-0.05*(math.Pow(ratio, 0.87)-1))
}

// Cooling is what a compressor does for each volume that it sweeps, J/m³, between evaporating and
// condensing temperatures, K: its vapor comes with a superheat, its liquid with a subcooling.
func Cooling(f *cyclefluid.Fluid, evaporating, condensing, superheat, subcooling float64) float64 {
	low, high := f.At(f.DewPressure(evaporating)), f.At(middlePressure(f, condensing))
	in := low.VaporAt(low.Dew.T + superheat)
	liquid := high.LiquidAt(high.Bubble.T - subcooling)
	return volumetric(high.P/low.P) / in.V * (low.Dew.H - liquid.H)
}

// flashing is what is left of the flow through a valve where vapor comes with the liquid: a
// tenth of it by mass leaves about a quarter.
func flashing(quality float64) float64 { return 1 / (1 + 28*max(quality, 0)) }

// New makes the parts of a machine such that on its design day it runs as designed.
func New(f *cyclefluid.Fluid, m Design) *Machine {
	s := &Machine{Design: m, f: f}
	evaporating := m.Box - m.Difference
	condensing := m.DesignDay + m.OverOutdoor
	low, high := f.At(f.DewPressure(evaporating)), f.At(middlePressure(f, condensing))
	suction := f.At(f.DewPressure(evaporating - m.Drop))
	out := low.VaporAt(low.Dew.T + m.Bulb)
	in := suction.VaporAt(suction.Dew.T + m.Bulb + m.Gain)
	liquid := high.LiquidAt(high.Bubble.T - m.Subcooling)
	s.designMass = 1 / (out.H - liquid.H)
	s.displacement = s.designMass * in.V / volumetric(high.P/suction.P)
	ideal := high.AtEntropy(in.S).H - in.H
	s.DesignPower = s.designMass * ideal / m.Ideal
	s.designDrop = low.P - suction.P
	s.orifice = s.designMass / (m.Open * math.Sqrt((high.P-low.P)/liquid.V))
	// The surface that superheats cools no air.
	wet, apart := 1.0, m.Box-boiling(&low)
	for range 20 {
		s.units = m.DryEnd * (out.H - liquid.H) / low.DewHeatCapacity() / (wet * apart)
		wet = 1 - s.superheating(m.Bulb/m.Difference)
	}
	s.evaporator = 1 / (wet * apart)
	s.indoorFlow = 0.88 / (m.IndoorAir * m.Difference)
	rejected := s.designMass * (in.H + (1-m.HeatLoss)*ideal/m.Ideal - liquid.H)
	s.condenser = rejected / m.OverOutdoor
	s.outdoorFlow = rejected / (m.OutdoorAir * m.OverOutdoor)
	if cool := m.DesignDay - (evaporating + m.Bulb); cool > m.Gain {
		s.line = s.designMass * suction.DewHeatCapacity() *
			-math.Log(1-m.Gain/cool)
	}
	return s
}

// superheating is the part of the coil that it takes to bring vapor a share of the way to the
// temperature of the air.
func (s *Machine) superheating(share float64) float64 {
	const straight = 0.97 // beyond which it goes on in a straight line
	if share = soft(share, 0.06); share <= straight {
		return -math.Log(1-share) / s.units
	}
	return (-math.Log(1-straight) + (share-straight)/(1-straight)) / s.units
}

// boiling is the mean temperature at which a refrigerant boils that comes with a third of it
// evaporated.
func boiling(low *cyclefluid.Isobar) float64 {
	return low.Dew.T - 0.35*(low.Dew.T-low.Bubble.T)
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

// balance is what goes in less what comes out: of the valve, of each coil, as shares of the
// design day.
func (s *Machine) balance(u *Unknowns, w Weather, x Failing, st *State) residuals {
	low, high := s.f.At(math.Exp(u[0])), s.f.At(math.Exp(u[1]))
	against := high // what the compressor works against: a gas adds its pressure
	if x.Gas > 0 {
		against = s.f.At(middlePressure(s.f, (high.Bubble.T+high.Dew.T)/2+x.Gas))
	}
	out := low.AtEnthalpy(u[2])
	suctionP := max(low.P-s.designDrop, 0.4*low.P)
	suction := s.f.At(suctionP)
	ratio := max(against.P/suction.P, 1.01)

	// The suction line warms what comes; the compressor takes its volume.
	in := suction.AtEnthalpy(u[2])
	mass := s.displacement * volumetric(ratio) * (1 - x.Leaks) / in.V
	flow := max(mass, 0.02*s.designMass)
	cp := suction.DewHeatCapacity()
	warm := max(w.Outdoor-in.T, 0) * (1 - math.Exp(-s.line/(flow*cp)))
	in = suction.AtEnthalpy(u[2] + cp*warm)
	mass = s.displacement * volumetric(ratio) * (1 - x.Leaks) / in.V
	flow = max(mass, 0.02*s.designMass)
	ideal := against.AtEntropy(in.S).H - in.H
	work := ideal / s.Ideal / (1 - 0.6*x.Leaks) // what leaks back is compressed again
	discharge := against.AtEnthalpy(in.H + (1-s.HeatLoss)*work)

	// Liquid.
	middle := (high.Bubble.T + high.Dew.T) / 2
	warmer := max(0.01, (middle-w.Outdoor)/s.OverOutdoor)
	sub := s.Subcooling * (1 - x.Dry) * math.Pow(warmer, s.Follows)
	sub += max(0, middle-w.Outdoor-sub) * (1 - math.Exp(-3.2*x.Flooded))
	liquid := high.LiquidAt(high.Bubble.T - sub)
	h := liquid.H
	if x.Short > 0 {
		liquid = high.AtEnthalpy(high.Bubble.H + x.Short*(high.Dew.H-high.Bubble.H))
		h = liquid.H
		liquid.T = high.Bubble.T - 0.3
	}

	// The metering device.
	ahead, quality := against.P, max(x.Short, 0)
	if x.Choked > 0 {
		left := 1 - x.Choked
		drop := 0.35 * (against.P - low.P) * sq(flow/s.designMass) * (1/(left*left) - 1) * 0.12
		ahead = max(against.P-drop, low.P*1.02)
		q := s.f.At(ahead)
		quality = max(quality, q.Quality(h))
	}
	superheat := (u[2] - low.Dew.H) / low.DewHeatCapacity()
	open := s.Open
	if s.Valve {
		static := 0.6 * s.Bulb
		open = s.Open * (superheat + x.Floods - static) / (s.Bulb - static)
		open = smooth(open, 0.04, 1)
	} else if x.Floods > 0 {
		open *= 1 + x.Floods/8
	}
	through := s.orifice * open * (1 - x.Starving) * flashing(quality) *
		math.Sqrt(max(ahead-low.P, 1e3)/liquid.V)

	// The coils.
	left := reduced(1-x.Indoor, 1-x.Ice, s.IndoorAir)
	share := superheat / max(w.Box-low.Dew.T, 0.5)
	absorbs := s.evaporator * left * (1 - s.superheating(share)) * (w.Box - boiling(&low))
	absorbed := flow * (u[2] - h)
	rejected := flow * (discharge.H - h)
	room := max(1-x.Flooded, 0.1) * reduced(1-0.7*x.Outdoor, 1-x.Outdoor, s.OutdoorAir)
	rejects := s.condenser * room * (middle - w.Outdoor)
	if floor := s.Floor + x.Floor; !x.NoFloor && s.Floor > 0 || x.Floor > 0 {
		// The control takes room or air from the condenser until it holds.
		rejects = min(rejects, rejected*math.Exp((middle-floor)/1.2))
	}

	st.Evaporating, st.Condensing = suction.Dew.T, middle+x.Gas
	st.Bubble, st.CondensingDew = high.Bubble.T+x.Gas, high.Dew.T+x.Gas
	st.Bulb, st.Suction = out.T, in.T
	st.Discharge, st.Liquid = discharge.T, liquid.T
	st.Capacity, st.Power = absorbed, flow*work
	air := s.indoorFlow * (1 - x.Indoor)
	st.Supply = w.Box - 0.88*absorbed/max(air, 1e-3)
	st.Leaving = w.Outdoor + rejected/(s.outdoorFlow*max(1-0.7*x.Outdoor, 0.05))
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
