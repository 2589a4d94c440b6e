package cycle

import "math"

// The condenser is an air-cooled coil in three zones: vapor above the dew point, two
// phases, liquid below the bubble point. Air passes all of them side by side, each its
// share. Where refrigerant flows across unmixed air, the air over a short piece of
// tube takes
//
//	dq = ε·C·(T − Ta)·dx,   ε = 1 − exp(−UA/C),
//
// with C the heat capacity of all the air and UA that of all the coil at the zone's
// conductance: the one-row cross-flow exchanger of Kays and London, "Compact heat
// exchangers", in closed form for each zone. The shares of the zones follow one
// after the other, and what is left of the coil subcools.

// condensed is what leaves the condenser.
type condensed struct {
	h, t, v float64
	x       float64 // quality at the outlet: 0 at the bubble point and below
	startX  float64 // where two phases begin

	vapor, twoPhase, liquid float64 // shares of the coil
	heat                    float64 // W to the air
	airC                    float64 // W/K of the air
}

// condense cools the flow m to the outdoor air.
func (t *trial) condense(m, airC, airUA, refUA float64) {
	b := &t.cond
	ta := t.outdoorT
	h2 := t.pump.discharge
	part := func(ratio float64) float64 {
		ua := 1 / (1/airUA + 1/(refUA*ratio))
		return airC * -math.Expm1(-ua/airC)
	}
	c := condensed{startX: 1, airC: airC}
	rest := 1.0
	start := h2
	if h2 > b.Dew.H {
		s := b.AtEnthalpy(h2)
		start = b.Dew.H
		q := part(vaporInCondenser) / m
		cp := (h2 - b.Dew.H) / max(s.T-b.Dew.T, 1e-9)
		if over := (b.Dew.T - ta) / (s.T - ta); over > 0 && s.T > ta {
			c.vapor = cp / q * -math.Log(over)
		} else {
			c.vapor = math.Inf(1)
		}
		if c.vapor >= 1 {
			// Nothing condenses.
			out := b.VaporAt(ta + (s.T-ta)*math.Exp(-q/cp))
			c.vapor, c.h, c.t, c.v, c.x = 1, out.H, out.T, out.V, out.X
			c.heat = m * (h2 - c.h)
			t.condensed = c
			return
		}
		rest -= c.vapor
	} else {
		c.startX = b.Quality(h2)
	}

	q := part(1) / m * ((b.Bubble.T+b.Dew.T)/2 - ta)
	need := start - b.Bubble.H
	if q*rest <= need {
		out := b.AtEnthalpy(start - q*rest)
		c.twoPhase, c.h, c.t, c.v, c.x = rest, out.H, out.T, out.V, out.X
		c.heat = m * (h2 - c.h)
		t.condensed = c
		return
	}
	c.twoPhase = max(need, 0) / q
	c.liquid = rest - c.twoPhase

	const near = 10.0 // K
	cp := (b.Bubble.H - b.LiquidAt(b.Bubble.T-near).H) / near
	c.t = ta + (b.Bubble.T-ta)*math.Exp(-part(liquidInCondenser)*c.liquid/(m*cp))
	c.t = min(c.t, b.Bubble.T)
	l := b.LiquidAt(c.t)
	c.h, c.v, c.x = l.H, l.V, 0
	c.heat = m * (h2 - c.h)
	t.condensed = c
}
