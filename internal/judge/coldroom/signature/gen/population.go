package main

import (
	"math"
	"math/rand/v2"

	"github.com/satline/satline/internal/judge/coldroom/machine"
	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/internal/physics/cyclefluid"
)

// Refrigerants that such machines run on.
var (
	coolers = []string{
		"R-404A", "R-448A", "R-449A", "R-134a", "R-513A", "R-22", "R-507A", "R-407A",
	}
	freezers = []string{"R-404A", "R-448A", "R-449A", "R-507A", "R-407A", "R-22"}
	small    = []string{"R-290", "R-134a", "R-404A"}
)

// A built machine of a kind.
type built struct {
	*machine.Machine
	fluid     *cyclefluid.Fluid
	superheat float64 // at the compressor, usual for the kind
	rated     float64 // share of the rated current on the design day
	// idle is the share of the design day's current that a motor draws at no load: 40 % of the rated
	// one by the curves of the U.S. Department of Energy for determining a motor's load, less for
	// one whose load is not full on that day (from memory).
	idle float64
}

// drawn is one of the machines of a kind: spreads are common practice, no source. All are narrower
// by the factor apart, which was chosen on visits of the bench that no trial uses: its machines lie
// nearer to each other than that practice says.
func drawn(
	rng *rand.Rand, k signature.Kind, fluids map[string]*cyclefluid.Fluid,
) *built {
	const apart = 0.85
	z := func() float64 { return apart * rng.NormFloat64() }
	uniform := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	frozen, device := k >= signature.Freezer, k%signature.Freezer
	names := coolers
	d := machine.Design{
		Box: uniform(273.5, 279), Difference: uniform(3.6, 11), Bulb: 4.4 + z(),
		Gain:        6 * math.Exp(0.5*z()),
		OverOutdoor: 11.5 * math.Exp(0.2*z()),
		IndoorAir:   min(0.75, max(0.3, 0.5+0.08*z())),
		OutdoorAir:  min(0.75, max(0.3, 0.5+0.08*z())),
		Floor:       301 + 4*z(),
		Subcooling:  3.2 * math.Exp(0.45*z()),
		Ideal:       0.6 + 0.045*z(),
		Open:        0.58 + 0.09*z(),
		Drop:        0.8 * math.Exp(0.5*z()),
		HeatLoss:    max(0, 0.1+0.06*z()),
		DryEnd:      0.3 * math.Exp(0.35*z()), Follows: 0.2 + 0.2*z(),
		Valve: device != signature.Tube, DesignDay: machine.HotDay,
	}
	m := &built{superheat: 11, rated: 0.72 + 0.09*z(), idle: min(0.5, max(0.2, 0.35+0.07*z()))}
	if frozen {
		// Freezers are made with a smaller difference at the condenser.
		d.Box, d.Difference, d.Bulb = uniform(244, 262), uniform(3.6, 9), 3.3+0.83*z()
		d.OverOutdoor, d.Gain = 9.5*math.Exp(0.2*z()), 13*math.Exp(0.45*z())
		names, m.superheat = freezers, 14
	} else if rng.IntN(12) == 0 { // rooms that people work in
		d.Box, d.Difference = uniform(279, 285), uniform(8, 13)
	}
	if device != signature.Receiver {
		d.Subcooling = 5 * math.Exp(0.4*z())
	}
	if device == signature.Tube {
		// A tube feeds right on one day only, and which that is is the maker's choice.
		d.Floor, d.DesignDay, d.Bulb = 0, 304+5*z(), 4+2*z()
		// Most are soldered to the suction line, which comes back nearly as warm as the room:
		// compressors for cabinets are rated with such return gas.
		d.Gain = 18 * math.Exp(0.4*z())
		names = small
	}
	d.Bulb = min(max(d.Bulb, 1.5), 0.85*d.Difference)
	m.fluid = fluids[names[rng.IntN(len(names))]]
	m.Machine = machine.New(m.fluid, d)
	return m
}

// What fails at a size of a cause: in the machine, or how much warmer the box is, in K, by the
// cause alone and not by lost capacity, or how far the suction clamp reads towards the air.
type fails struct {
	machine.Failing
	over, clamp float64
}

// between is a failing that is nearer to size n than to its neighbors, by u from 0 to 1.
func between(sizes []fails, n int, u float64) fails {
	x := sizes[n]
	other, part := fails{}, 0.5-u
	switch {
	case len(sizes) == 1:
		return x
	case u > 0.5 && n == len(sizes)-1:
		return x
	case u > 0.5:
		other, part = sizes[n+1], u-0.5
	case n > 0:
		other = sizes[n-1]
	}
	to := func(a *float64, b float64) { *a += part * (b - *a) }
	to(&x.Short, other.Short)
	to(&x.Dry, other.Dry)
	to(&x.Flooded, other.Flooded)
	to(&x.Gas, other.Gas)
	to(&x.Indoor, other.Indoor)
	to(&x.Ice, other.Ice)
	to(&x.Outdoor, other.Outdoor)
	to(&x.Choked, other.Choked)
	to(&x.Starving, other.Starving)
	to(&x.Failing.Floods, other.Failing.Floods)
	to(&x.Leaks, other.Leaks)
	to(&x.Floor, other.Floor)
	to(&x.over, other.over)
	to(&x.clamp, other.clamp)
	return x
}

// sizes of a cause in machines of a kind.
func sizes(code string, k signature.Kind) []fails {
	of := func(list ...machine.Failing) (out []fails) {
		for _, x := range list {
			out = append(out, fails{Failing: x})
		}
		return out
	}
	type f = machine.Failing
	switch code {
	case signature.Undercharge:
		if k%signature.Freezer != signature.Receiver {
			// The condenser itself holds the spare charge.
			return of(
				f{Dry: 0.7}, f{Dry: 1, Short: 0.025}, f{Dry: 1, Short: 0.07},
				f{Dry: 1, Short: 0.13}, f{Dry: 1, Short: 0.24},
			)
		}
		return of(
			f{Dry: 0.5, Short: 0.01}, f{Dry: 0.9, Short: 0.03}, f{Dry: 1, Short: 0.07},
			f{Dry: 1, Short: 0.13}, f{Dry: 1, Short: 0.24},
		)
	case signature.Overcharge:
		if k%signature.Freezer == signature.Receiver {
			// A receiver takes up the first of it, which nothing shows.
			return of(f{}, f{Flooded: 0.25}, f{Flooded: 0.45}, f{Flooded: 0.62})
		}
		return of(f{Flooded: 0.15}, f{Flooded: 0.3}, f{Flooded: 0.45}, f{Flooded: 0.62})
	case signature.Gas:
		return of(f{Gas: 3.5}, f{Gas: 6.5}, f{Gas: 11})
	case signature.Condenser:
		return of(f{Outdoor: 0.3}, f{Outdoor: 0.5}, f{Outdoor: 0.68}, f{Outdoor: 0.82})
	case signature.Evaporator:
		return of(
			f{Indoor: 0.3, Ice: 0.15}, f{Indoor: 0.5}, f{Indoor: 0.5, Ice: 0.4},
			f{Indoor: 0.7, Ice: 0.5}, f{Indoor: 0.88, Ice: 0.6}, f{Indoor: 0.94, Ice: 0.85},
		)
	case signature.Restriction:
		return of(
			f{Choked: 0.6}, f{Choked: 0.72}, f{Choked: 0.8}, f{Choked: 0.87}, f{Choked: 0.93},
			f{Choked: 0.965},
		)
	case signature.Starving:
		return of(
			f{Starving: 0.5}, f{Starving: 0.62}, f{Starving: 0.74}, f{Starving: 0.85},
			f{Starving: 0.92},
		)
	case signature.Flooding:
		return of(f{Floods: 2.5}, f{Floods: 4}, f{Floods: 7})
	case signature.Compressor:
		return of(f{Leaks: 0.2}, f{Leaks: 0.35}, f{Leaks: 0.5}, f{Leaks: 0.65})
	case signature.HeadLow:
		return of(f{Floor: -11}, f{NoFloor: true, Floor: -17})
	case signature.HeadHigh:
		return of(f{Floor: 6}, f{Floor: 12}, f{Floor: 20})
	case signature.Load:
		return []fails{{over: 3}, {over: 5.5}, {over: 9}}
	case signature.Clamp:
		return []fails{{clamp: 0.25}, {clamp: 0.5}}
	}
	return of(f{})
}
