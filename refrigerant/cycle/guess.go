package cycle

import "math"

// guess is a state near those of every machine, with the head on the high side: there the
// condenser fills with liquid and every unknown acts on every residual.
func (t *trial) guess() unknowns {
	te := min(280+0.4*(t.air.DewPoint()-287)+0.3*(t.returnT-300)+0.12*(t.outdoorT-308), t.returnT-8)
	t.fluid.Set(&t.out, t.highest)
	tc := min(t.outdoorT+14, t.out.Bubble.T-3)
	ps := max(t.fluid.DewPressure(te), t.lowest)
	ph := min(max(t.fluid.DewPressure(tc), 1.3*ps), t.highest)
	if t.fixedHead > 0 {
		ph = t.fixedHead
	}
	t.fluid.Set(&t.in, ps)
	t.fluid.Set(&t.out, ph)
	gas := t.in.VaporAt(te + 6)
	m := t.compressor.pump(t.fluid, &t.in, &t.out, &gas, t.flowScale, 1, t.leak).flow
	y := unknowns{math.Log(ps), math.Log(ph), math.Log(m), gas.H / 1e5}
	if t.fixedHead > 0 {
		y[uHead] = math.Log(0.4)
	}
	return y
}
