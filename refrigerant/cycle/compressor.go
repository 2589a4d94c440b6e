package cycle

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/quantity"
)

// A Compressor pumps a volume of suction gas. Where the maker's map is known it
// gives flow and power; elsewhere they follow from two efficiencies over the
// pressure ratio r:
//
//	volumetric  ηv = full·(1 − clearance·(r^(1/1.2) − 1))
//	isentropic  ηs = best·(1 − falloff·ln²(r/bestRatio))
//
// The first is the re-expansion of the gas left in the clearance (ASHRAE Handbook
// HVAC Systems and Equipment, positive displacement compressors; exponent of a
// typical refrigerant). The second has the shape of every published curve, a peak
// and a fall to both sides, motor included. The figures of the zero fields are
// those of a residential hermetic compressor: common practice, no source.
type Compressor struct {
	// Displacement is what it would pump in a second without any loss.
	Displacement quantity.VolumeFlow
	// Full and Clearance shape the volumetric efficiency; 0 takes 0.97 and 0.03.
	Full, Clearance float64
	// Best, BestRatio and Falloff shape the isentropic efficiency; 0 takes 0.68,
	// 2.8 and 0.22.
	Best, BestRatio, Falloff float64
	// HeatLoss is the share of the power that the shell gives to its surroundings;
	// 0 takes 0.06.
	HeatLoss float64
	// Map, where there is one, takes the place of all but HeatLoss.
	Map *Map

	swept float64 // as Form.LiquidSwept
}

func (c Compressor) withDefaults() Compressor {
	for _, f := range []struct {
		field *float64
		value float64
	}{
		{&c.Full, 0.97}, {&c.Clearance, 0.03}, {&c.Best, 0.68}, {&c.BestRatio, 2.8},
		{&c.Falloff, 0.22}, {&c.HeatLoss, 0.06},
	} {
		if *f.field == 0 {
			*f.field = f.value
		}
	}
	return c
}

func (c Compressor) check() error {
	for _, f := range []struct {
		name      string
		v         float64
		low, high float64
	}{
		{"volumetric efficiency without pressure ratio", c.Full, 0.3, 1},
		{"clearance of a compressor", c.Clearance, 0.001, 0.2},
		{"best isentropic efficiency", c.Best, 0.2, 0.95},
		{"pressure ratio of best efficiency", c.BestRatio, 1.2, 8},
		{"fall-off of the isentropic efficiency", c.Falloff, 0.01, 1},
		{"share of the power lost as heat", c.HeatLoss, 0, 0.5},
	} {
		if err := limit.Within(
			f.name, quantity.Number(f.v), quantity.Number(f.low), quantity.Number(f.high),
			"0 takes the usual one",
		); err != nil {
			return err
		}
	}
	if c.Map != nil {
		return c.Map.check()
	}
	return nil
}

// VolumetricEfficiency returns ηv at a ratio of discharge to suction pressure. A ratio
// below 1, or that is no number, counts as 1. Of what Design would refuse it is 0.
func (c Compressor) VolumetricEfficiency(ratio float64) float64 {
	if c = c.withDefaults(); c.check() != nil {
		return 0
	}
	return c.volumetric(ratio)
}

// IsentropicEfficiency returns ηs at a ratio of discharge to suction pressure:
// ideal work over electric work. A ratio below 1, or that is no number, counts as 1. Of
// what Design would refuse it is 0.
func (c Compressor) IsentropicEfficiency(ratio float64) float64 {
	if c = c.withDefaults(); c.check() != nil {
		return 0
	}
	return c.isentropic(ratio)
}

const (
	reexpansion       = 1 / 1.2
	leastVolumetric   = 0.05
	leastIsentropic   = 0.15
	leastPressureRise = 1.001
)

func (c *Compressor) volumetric(ratio float64) float64 {
	return c.Full * softFloor(
		1-c.Clearance*(math.Pow(compressing(ratio), reexpansion)-1), leastVolumetric,
	)
}

func (c *Compressor) isentropic(ratio float64) float64 {
	l := math.Log(compressing(ratio) / c.BestRatio)
	return c.Best * softFloor(1-c.Falloff*l*l, leastIsentropic)
}

// compressing is a ratio of pressures at which a compressor compresses at all.
func compressing(ratio float64) float64 {
	if !(ratio > leastPressureRise) {
		return leastPressureRise
	}
	return ratio
}

// softFloor is v where that is well above floor and never below it, with a
// continuous slope between.
func softFloor(v, floor float64) float64 {
	if bend := 2 * floor; v < bend {
		return floor + (bend-floor)*math.Exp((v-bend)/(bend-floor))
	}
	return v
}

// A pumped is what a compressor does at a suction state, in SI units.
type pumped struct {
	flow      float64 // leaving to the condenser, kg/s
	work      float64 // electric, J per kg of that flow
	discharge float64 // enthalpy
}

// pump runs c from the suction state s at the pressure of in to that of out. scale and
// workScale are factors on its flow and its work. leak is the share of what it sweeps that
// slips back through its valves: hot gas that mixes with the suction gas, takes room from
// it, and is pumped again.
func (c *Compressor) pump(
	f *cyclefluid.Fluid, in, out *cyclefluid.Isobar, s *cyclefluid.State,
	scale, workScale, leak float64,
) pumped {
	taken := *s
	p := c.sweep(f, in, out, &taken, workScale)
	if leak > 0 {
		// The gas taken in is the mixture: h = h1 + leak·(h2 − h1), h2 = h + work. A large
		// leak at a large ratio of pressures has no solution, every round hotter than the
		// last, until the motor's protector opens: the gas is taken no hotter than the
		// isobar knows.
		hottest := max(in.End(), s.H)
		for range 4 {
			taken = in.AtEnthalpy(min(s.H+leak/(1-leak)*p.work*(1-c.HeatLoss), hottest))
			p = c.sweep(f, in, out, &taken, workScale)
		}
	}
	p.flow *= scale * (1 - leak)
	p.work /= 1 - leak
	p.discharge = s.H + p.work*(1-c.HeatLoss)
	return p
}

// sweep is pump without a leak. Liquid in the suction gas boils off in the shell, on the
// motor, so that what the cylinders take in is vapor, at the dew point then: it costs
// capacity and cools the discharge, but does not add to the flow. What is swept of it
// instead adds to the flow.
func (c *Compressor) sweep(
	f *cyclefluid.Fluid, in, out *cyclefluid.Isobar, s *cyclefluid.State, workScale float64,
) pumped {
	if s.H < in.Dew.H {
		taken := in.AtEnthalpy(in.Dew.H - c.swept*(in.Dew.H-s.H))
		s = &taken
	}
	ratio := out.P / in.P
	ideal := 0.0
	if ratio > leastPressureRise {
		ideal = out.AtEntropy(s.S).H - s.H
	}
	var p pumped
	if c.Map != nil {
		p.flow, p.work = c.Map.at(f, in, out, s, ideal)
	} else {
		p.flow = c.volumetric(ratio) * float64(c.Displacement) / s.V
		p.work = ideal / c.isentropic(ratio)
	}
	p.work *= workScale
	return p
}
