package cycle

import (
	"math"

	"github.com/satline/satline/quantity"
)

// WithHeadPressure returns f with a control that slows or cycles the outdoor fan to hold
// the discharge pressure at the bubble point t, or none at 0.
func (f *Fitted) WithHeadPressure(t quantity.Temperature) *Fitted {
	if !f.made() {
		return new(Fitted)
	}
	g := *f
	g.system = f.system.WithHeadPressure(t)
	return &g
}

// WithHeadPressure returns s with a control that slows or cycles the outdoor fan to hold
// the discharge pressure at the bubble point t, or none at 0. Beyond the saturation curve
// t counts as the end of it.
func (s *System) WithHeadPressure(t quantity.Temperature) *System {
	if !s.made() {
		return new(System)
	}
	held := *s
	held.spec.HeadPressure = t
	held.plant.headPressure = 0
	if t > 0 {
		t = min(max(t, s.r.Limits().MinTemperature), s.r.Critical().Temperature)
		held.plant.headPressure = held.plant.fluid.BubblePressure(float64(t))
	}
	return &held
}

// closeWithHead lets the outdoor fan slow until the head is held, or stand still.
func (t *trial) closeWithHead(y unknowns) outcome {
	t.fixedHead = t.headPressure
	y[uHead] = math.Log(0.4)
	v := t.closeFrom(&y)
	if t.fanShare > leastFanShare*1.001 {
		return v
	}
	// The fan stands still and the head is still below: solve with that.
	t.fixedHead = 0
	t.outdoorAir *= leastFanShare
	t.outdoorUA *= math.Pow(leastFanShare, t.airExponent)
	y = t.guess()
	v = t.closeFrom(&y)
	t.fanShare = leastFanShare
	return v
}
