package airside

import (
	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/internal/physics/coil"
	"github.com/satline/satline/quantity"
)

// Freezing is the temperature at which water on a coil turns to ice, 32 °F.
const Freezing = quantity.Temperature(273.15)

// FrostReadings are what the margin to freezing is worked out from.
type FrostReadings struct {
	Return AirAt `json:"return"`
	// Airflow through the coil, at the return condition.
	Airflow quantity.Uncertain[quantity.VolumeFlow] `json:"airflow"`
	// Evaporating is the dew temperature at the suction pressure.
	Evaporating quantity.Uncertain[quantity.Temperature] `json:"evaporating"`
	Coil        Coil                                     `json:"coil"`
	// CoilStd is the relative standard uncertainty of the coil's conductances;
	// zero means 0.10 for one that was fitted and 0.20 for one of which
	// something was assumed (common practice, no source).
	CoilStd float64 `json:"coilStd,omitzero"`
}

// FrostOutcome says how a coil stands to freezing.
type FrostOutcome int

// The outcomes.
const (
	// FrostClear: surface and refrigerant are surely above freezing.
	FrostClear FrostOutcome = iota + 1
	// FrostNear: the instruments cannot tell, the margin is below 3 °F, or the
	// refrigerant is below freezing, so that a part of the coil with less air than
	// the rest may freeze.
	FrostNear
	// FrostForming: the surface is below freezing, and there is water to freeze.
	FrostForming
	// FrostDry: below freezing, but the air is too dry to leave water.
	FrostDry
)

var frostOutcomes = []string{"not-judged", "clear", "near", "freezing", "dry"}

// String returns the outcome in words.
func (o FrostOutcome) String() string { return enum.Name(frostOutcomes, o) }

// MarshalText writes the words of String.
func (o FrostOutcome) MarshalText() ([]byte, error) {
	return enum.Text("outcome of a frost margin", frostOutcomes, o)
}

// UnmarshalText reads what MarshalText writes.
func (o *FrostOutcome) UnmarshalText(text []byte) error {
	return enum.Parse("outcome of a frost margin", frostOutcomes, text, o)
}

// Frost is how near a coil is to freezing.
type Frost struct {
	Outcome     FrostOutcome                             `json:"outcome"`
	Evaporating quantity.Uncertain[quantity.Temperature] `json:"evaporating"`
	// Surface is the coldest surface of the coil, where the air leaves.
	Surface quantity.Uncertain[quantity.Temperature] `json:"surface"`
	// Margin is Surface less 32 °F: negative where it freezes.
	Margin quantity.Uncertain[quantity.TemperatureDelta] `json:"margin"`
	// DewPoint of the return air: a surface above it stays dry.
	DewPoint quantity.Uncertain[quantity.Temperature] `json:"dewPoint"`
	// SurfaceChance and EvaporatingChance are the chances that surface and
	// refrigerant are below freezing. A refrigerant below with a surface above
	// is not freezing yet, but has only the air to thank for it.
	SurfaceChance     float64                                    `json:"surfaceChance"`
	EvaporatingChance float64                                    `json:"evaporatingChance"`
	Budget            quantity.Budget[quantity.TemperatureDelta] `json:"budget"`
}

// frostReserve is the margin below which a coil is called near freezing: a
// cooler evening or a filter a month older takes as much. Common practice, no
// source.
const frostReserve = quantity.TemperatureDelta(3 / 1.8)

// JudgeFrost works out the coldest surface of a coil and holds it against 32 °F.
// The error is a *RangeError.
func JudgeFrost(r FrostReadings) (Frost, error) {
	if err := r.Coil.check(); err != nil {
		return Frost{}, err
	}
	if err := r.Return.check("return"); err != nil {
		return Frost{}, err
	}
	if err := limit.Reading(
		"airflow", r.Airflow, 0, largestFlow,
		"it is the flow through the coil at the return condition",
	); err != nil {
		return Frost{}, err
	}
	if err := limit.Reading(
		"evaporating temperature", r.Evaporating, quantity.Celsius(-80), quantity.Celsius(90),
		"take the dew temperature at the suction pressure; "+
			"the pressure counts from the atmosphere of the site",
	); err != nil {
		return Frost{}, err
	}
	coilStd, err := r.Coil.relativeStd(r.CoilStd)
	if err != nil {
		return Frost{}, err
	}
	var x, std inputs
	var names [maxInputs]string
	r.Return.inputs(&x, &std, &names)
	x[3], std[3], names[3] = float64(r.Airflow.Value), r.Airflow.Std, "airflow"
	x[4], std[4], names[4] = float64(r.Evaporating.Value), r.Evaporating.Std, "evaporating"
	x[5], std[5], names[5] = 1, coilStd, "coil"
	y, c, err := propagate(x, std, func(x inputs) (outputs, error) {
		entering, err := r.Return.state(&x)
		if err != nil {
			return outputs{}, err
		}
		in := coil.NewAir(entering)
		dryAir := float64(entering.DryAirFlow(quantity.VolumeFlow(max(0, x[3]))))
		result := r.Coil.scaled(x[5]).solve(&in, dryAir, x[4])
		return outputs{result.Surface, in.DewPoint()}, nil
	})
	if err != nil {
		return Frost{}, err
	}
	f := Frost{
		Evaporating: r.Evaporating,
		Surface:     quantity.Temperature(y[0]).PlusMinus(quantity.TemperatureDelta(c.std(0))),
		Margin: quantity.Temperature(y[0]).
			Sub(Freezing).
			PlusMinus(quantity.TemperatureDelta(c.std(0))),
		DewPoint: quantity.Temperature(y[1]).PlusMinus(quantity.TemperatureDelta(c.std(1))),
		Budget:   budgetOf[quantity.TemperatureDelta](&c, 0, &names),
	}
	f.SurfaceChance, _, _ = normal.Chances(float64(f.Margin.Value), f.Margin.Std, 0)
	f.EvaporatingChance, _, _ = normal.Chances(
		float64(r.Evaporating.Value-Freezing), r.Evaporating.Std, 0,
	)
	wet := f.Surface.Value < f.DewPoint.Value
	switch {
	case f.SurfaceChance >= decisionLevel && !wet:
		f.Outcome = FrostDry
	case f.SurfaceChance >= decisionLevel:
		f.Outcome = FrostForming
	case f.SurfaceChance <= 1-decisionLevel && f.Margin.Value >= frostReserve &&
		f.EvaporatingChance <= 0.5:
		f.Outcome = FrostClear
	default:
		f.Outcome = FrostNear
	}
	return f, nil
}

// relativeStd is the relative standard uncertainty of the conductances: what is
// stated, and the usual figure where nothing is.
func (c Coil) relativeStd(stated float64) (float64, error) {
	switch {
	case !(stated >= 0 && stated <= 1):
		return 0, &RangeError{
			Quantity: "relative standard uncertainty of the coil",
			Value:    quantity.Number(stated),
			Min:      quantity.Number(0),
			Max:      quantity.Number(1),
			Advice:   "10 % is 0.1",
		}
	case stated != 0:
		return stated, nil
	case c.Assumed != "":
		return 0.20, nil
	}
	return 0.10, nil
}

// scaled is the coil with both conductances multiplied.
func (c Coil) scaled(by float64) Coil {
	c.AirSide *= quantity.Conductance(by)
	c.RefrigerantSide *= quantity.Conductance(by)
	return c
}
