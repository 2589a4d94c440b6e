package cycle

import (
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/physics/coil"
	"github.com/satline/satline/quantity"
)

// Tuning is how a machine differs from the ordinary one of its Spec. Relative changes are
// fractions, −0.1 for 10 % less; the zero Tuning changes nothing. Fit finds one from a
// visit.
type Tuning struct {
	// EvaporatorUA and CondenserUA change the conductance of a coil on both sides.
	EvaporatorUA float64 `json:"evaporatorUA,omitzero"`
	CondenserUA  float64 `json:"condenserUA,omitzero"`
	// CompressorFlow changes what the compressor pumps, and CompressorWork the electric
	// work per mass.
	CompressorFlow float64 `json:"compressorFlow,omitzero"`
	CompressorWork float64 `json:"compressorWork,omitzero"`
	// MeteringSize changes what the expansion device passes.
	MeteringSize float64 `json:"meteringSize,omitzero"`
	// Form changes the laws of the model themselves, to ask how much an answer hangs on
	// them.
	Form Form `json:"form,omitzero"`
}

// A Form has what the laws of the model leave open; zero fields leave them as they are.
type Form struct {
	// AirExponent is the power of the air's flow that the air side of a coil follows, 0.672;
	// RefrigerantExponent that of the refrigerant's flow, 0.8.
	AirExponent         float64 `json:"airExponent,omitzero"`
	RefrigerantExponent float64 `json:"refrigerantExponent,omitzero"`
	// MeteringPressure and MeteringSubcooling are extra powers by which the flow through the
	// device follows the pressure upstream and the subcooling there.
	MeteringPressure   float64 `json:"meteringPressure,omitzero"`
	MeteringSubcooling float64 `json:"meteringSubcooling,omitzero"`
	// LiquidSwept is the share of the liquid in the suction gas that the cylinders take in;
	// the rest boils off in the shell, as all of it does at 0. It is near 1 where the suction
	// line ends at the cylinders.
	LiquidSwept float64 `json:"liquidSwept,omitzero"`
}

// Tuned returns s with a tuning, which adds to what s was tuned by before. Its correct
// charge stays that of s. The error is a *RangeError.
func (s *System) Tuned(t Tuning) (*System, error) {
	if !s.made() {
		return nil, ErrNoSystem
	}
	for _, c := range []struct {
		name         string
		v, low, high float64
	}{
		{"relative change of the evaporator's conductance", t.EvaporatorUA, -0.8, 3},
		{"relative change of the condenser's conductance", t.CondenserUA, -0.8, 3},
		{"relative change of the compressor's flow", t.CompressorFlow, -0.8, 1},
		{"relative change of the compressor's work", t.CompressorWork, -0.6, 2},
		{"relative change of the metering device", t.MeteringSize, -0.9, 3},
		{"exponent of the air's flow", t.Form.AirExponent, 0, 1},
		{"exponent of the refrigerant's flow", t.Form.RefrigerantExponent, 0, 1.2},
		{"exponent of the pressure upstream", t.Form.MeteringPressure, -1, 1},
		{"exponent of the subcooling upstream", t.Form.MeteringSubcooling, -1, 1},
		{"share of liquid swept", t.Form.LiquidSwept, 0, 1},
	} {
		if err := limit.Within(
			c.name, quantity.Number(c.v), quantity.Number(c.low), quantity.Number(c.high),
			"the zero Tuning changes nothing",
		); err != nil {
			return nil, err
		}
	}
	tuned := *s
	tuned.plant.tune(&t)
	return &tuned, nil
}

func (p *plant) tune(t *Tuning) {
	p.evaporator.airUA *= 1 + t.EvaporatorUA
	p.evaporator.refUA *= 1 + t.EvaporatorUA
	p.condenser.airUA *= 1 + t.CondenserUA
	p.condenser.refUA *= 1 + t.CondenserUA
	p.flowScale *= 1 + t.CompressorFlow
	p.workScale *= 1 + t.CompressorWork
	p.device.size *= 1 + t.MeteringSize
	if t.Form.AirExponent != 0 {
		p.airExponent = t.Form.AirExponent
	}
	if t.Form.RefrigerantExponent != 0 {
		p.refExponent = t.Form.RefrigerantExponent
	}
	if t.Form.LiquidSwept != 0 {
		p.compressor.swept = t.Form.LiquidSwept
	}
	p.device.byPressure += t.Form.MeteringPressure
	p.device.bySubcooling += t.Form.MeteringSubcooling
}

// untuned are the figures of an ordinary machine.
func (p *plant) untuned() {
	p.flowScale, p.workScale, p.device.size = 1, 1, 1
	p.airExponent, p.refExponent = coil.AirflowExponent, flowExponent
}
