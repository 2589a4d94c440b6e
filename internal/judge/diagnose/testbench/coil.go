package testbench

import (
	"math"

	"github.com/satline/satline/internal/physics/cyclefluid"
)

// segments a coil is marched along in, besides those that end at a change of phase.
const segments = 16

// A coil is parallel circuits of tube with fins, each part of which meets its share of the
// entering air.
type coil struct {
	bore, length float64 // m, of a circuit
	circuits     float64
	enhancement  float64 // of the heat transfer of a smooth tube, by grooves
	outer        float64 // W/K on the air side per m of tube, at the rated air
	ratedAir     float64 // kg/s
	headers      float64 // m³ of headers and distributor tubes
	slip         slip
}

// airExponent is how the air side follows the air: j falls with the 0.4th power of the
// Reynolds number on louvers, about as Wang, Lee and Chang 1999, International Journal of
// Heat and Mass Transfer 42:1-17, have it (from memory).
const airExponent = 0.6

func (c *coil) section() float64 { return math.Pi / 4 * c.bore * c.bore * c.circuits }
func (c *coil) volume() float64  { return c.section() * c.length }

// A pass is what comes of refrigerant that went through a coil.
type pass struct {
	h, p, t            float64 // J/kg, Pa, K, at the outlet
	heat               float64 // W, into the refrigerant
	mass, vapor        float64 // kg; m³ of vapor
	leavingH, leavingW float64 // of the air, mean
}

// run marches m kg/s that enter at p and h through the coil. hinder is by what the inner
// heat transfer of two phases is lowered, as by gas; foul the same of the air side.
func (c *coil) run(
	f *fluid, m, p, h float64, air *draft, evaporates bool, hinder, foul float64,
) pass {
	g := m / c.section()
	wetted := math.Pi * c.bore * c.length * c.circuits
	outer := c.outer * foul * c.length * c.circuits * math.Pow(air.flow/c.ratedAir, airExponent)
	flux := 3000.0
	entered := h
	var out pass
	var b cyclefluid.Isobar
	left := 1.0
	lowest := 1.05 * f.LowPressure()
	for step := 0; left > 1e-9 && step < 4*segments; step++ {
		f.Set(&b, max(p, lowest))
		tr := f.transport(&b)
		x := (h - b.Bubble.H) / tr.latent
		t, inner, cr, target := c.film(&b, &tr, h, m, x, flux, evaporates, hinder)
		inside := inner * wetted
		var q, leavingH, leavingW float64
		if evaporates {
			q, leavingH, leavingW = air.through(t, outer, inside)
		} else {
			q = air.dry(t, 1/(1/inside+1/outer))
		}
		flux = max(500, math.Abs(q)/wetted)
		size := min(left, 1.0/segments)
		gap := air.t - t
		dh, changes := 0.0, false
		if math.Abs(gap) > 1e-9 {
			reach := cr * gap // J/s until the refrigerant is as warm as the air
			k := q / gap
			dh = reach * (1 - math.Exp(-k*size/cr)) / m
			// End the segment where the phase changes.
			if to := target - h; dh*to > 0 && math.Abs(dh) > math.Abs(to) {
				share := m * to / reach
				size = min(size, max(1e-6, -math.Log(max(1e-12, 1-share))*cr/k))
				dh, changes = to, true
			}
		}
		quality := min(max((h+dh/2-b.Bubble.H)/tr.latent, 0), 1)
		volume := c.volume() * size
		alpha := c.slip.void(quality, g, c.bore, &tr)
		rhoL, rhoV := tr.rhoL, tr.rhoV
		if x < 0 {
			rhoL = 1 / b.LiquidAtEnthalpy(h+dh/2).V
		}
		if x > 1 {
			rhoV = 1 / b.AtEnthalpy(h+dh/2).V
		}
		out.mass += volume * (alpha*rhoV + (1-alpha)*rhoL)
		out.vapor += volume * alpha
		// The air of the segment changes as much as its mean heat asks for.
		share := 0.0
		if q != 0 {
			share = m * dh / q
		}
		out.leavingH += size*air.h + share*(leavingH-air.h)
		out.leavingW += size*air.w + share*(leavingW-air.w)
		p = max(lowest, p-friction(quality, g, c.bore, &tr)*c.length*size)
		left -= size
		h += dh
		if changes {
			// The edge at the pressure behind the segment, and a hair past it.
			f.Set(&b, p)
			edge := b.Bubble.H
			if x > 1 || evaporates && x >= 0 {
				edge = b.Dew.H
			}
			h = edge + math.Copysign(1e-9*tr.latent, dh)
		}
	}
	out.h, out.p, out.heat = h, p, m*(h-entered)
	f.Set(&b, p)
	out.t = temperatureOf(&b, h)
	return out
}

// film is the refrigerant at h in a segment: its temperature, the inner heat transfer, W/(m² K),
// the heat that warms it by a kelvin, W/K, and the enthalpy at which its phase changes.
func (c *coil) film(
	b *cyclefluid.Isobar, tr *transport, h, m, x, flux float64, evaporates bool, hinder float64,
) (t, inner, cr, target float64) {
	g := m / c.section()
	switch {
	case x < 0:
		inner = c.enhancedSingle(singlePhase(g, c.bore, tr.muL, tr.kL, tr.prL))
		return b.LiquidAtEnthalpy(h).T, inner, m * tr.cpL, b.Bubble.H
	case x > 1:
		inner = c.enhancedSingle(singlePhase(g, c.bore, tr.muV, tr.kV, tr.prV))
		return b.AtEnthalpy(h).T, inner, m * tr.cpV, b.Dew.H
	}
	t = b.AtEnthalpy(h).T
	cr = m * tr.latent / max(b.Dew.T-b.Bubble.T, 0.05)
	if evaporates {
		return t, boiling(x, g, c.bore, flux, tr) * c.enhancement, cr, b.Dew.H
	}
	return t, condensing(x, g, c.bore, tr) * c.enhancement * hinder, cr, b.Bubble.H
}

// enhancedSingle is the gain of grooves in single-phase flow, less than in boiling; common
// practice, no source.
func (c *coil) enhancedSingle(h float64) float64 { return h * (1 + 0.5*(c.enhancement-1)) }

func temperatureOf(b *cyclefluid.Isobar, h float64) float64 {
	if h < b.Bubble.H {
		return b.LiquidAtEnthalpy(h).T
	}
	return b.AtEnthalpy(h).T
}
