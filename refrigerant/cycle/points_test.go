package cycle

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// pointsOf is what perfect instruments would read of a machine of the model.
func pointsOf(s *System, o *Operating) Points {
	gauge := func(p quantity.Pressure, std float64) *quantity.Uncertain[quantity.GaugePressure] {
		return &quantity.Uncertain[quantity.GaugePressure]{
			Value: p.Gauge(quantity.StandardAtmosphere),
			Std:   std,
		}
	}
	clamp := func(t quantity.Temperature) *quantity.Uncertain[quantity.Temperature] {
		return &quantity.Uncertain[quantity.Temperature]{Value: t, Std: 0.4}
	}
	k := s.Compressor()
	return Points{
		Refrigerant:       s.Refrigerant(),
		SuctionPressure:   gauge(o.Suction.Pressure, 3e3),
		LiquidPressure:    gauge(o.Liquid.Pressure, 6e3),
		DischargePressure: gauge(o.Discharge.Pressure, 6e3),
		SuctionLine:       clamp(o.Suction.Temperature),
		LiquidLine:        clamp(o.Liquid.Temperature),
		DischargeLine:     clamp(o.Discharge.Temperature),
		Power:             &quantity.Uncertain[quantity.Power]{Value: o.CompressorPower, Std: 30},
		AirCapacity: &quantity.Uncertain[quantity.Power]{
			Value: o.Capacity + o.LineGain, Std: 500,
		},
		Compressor: &k,
	}
}

// The analysis of a machine of the model finds the machine.
func TestAnalyzeFindsTheMachine(t *testing.T) {
	for _, d := range fluids {
		s := machine(t, d, refrigerant.TXV)
		o := solve(t, s, weather(90, 78, 65), Faults{})
		p := pointsOf(s, &o)
		a, err := p.Analyze()
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			name          string
			got, want, by float64
		}{
			{"superheat", float64(a.Superheat.Value), float64(o.Superheat), 0.02},
			{"subcooling", float64(a.Subcooling.Value), float64(o.Subcooling), 0.02},
			{"flow by power", float64(a.FlowByPower.Value / o.Flow), 1, 2e-3},
			{"flow by displacement", float64(a.FlowByMap.Value / o.Flow), 1, 1e-3},
			{"flow by air", float64(a.FlowByAir.Value / o.Flow), 1, 2e-3},
			{"capacity", float64(a.Capacity.Value / (o.Capacity + o.LineGain)), 1, 3e-3},
			{"heat rejected", float64(a.HeatRejected.Value / o.HeatRejected), 1, 3e-3},
			{"drop", float64(a.HighSideDrop.Value),
				float64(o.Discharge.Pressure - o.Liquid.Pressure), 1},
			{"volumetric efficiency", a.VolumetricEfficiency.Value,
				s.Compressor().VolumetricEfficiency(o.PressureRatio()), 2e-3},
		} {
			if math.Abs(c.got-c.want) > c.by {
				t.Errorf("%s: %s %.6g, want %.6g", d, c.name, c.got, c.want)
			}
		}
		// The electric efficiency of the model is the gas's, less the shell's loss.
		want := s.Compressor().
			IsentropicEfficiency(o.PressureRatio()) /
			(1 - s.Compressor().HeatLoss)
		if math.Abs(a.IsentropicEfficiency.Value-want) > 2e-3 {
			t.Errorf(
				"%s: isentropic efficiency %.4f, want %.4f", d, a.IsentropicEfficiency.Value, want,
			)
		}
	}
}

// One gauge on the high side stands in for the other, with more doubt.
func TestOneGaugeOnTheHighSide(t *testing.T) {
	s := machine(t, "R-22", refrigerant.FixedRestrictor)
	o := solve(t, s, RatingConditions(), Faults{})
	p := pointsOf(s, &o)
	both, err := p.Analyze()
	if err != nil {
		t.Fatal(err)
	}
	p.LiquidPressure = nil
	one, err := p.Analyze()
	if err != nil {
		t.Fatal(err)
	}
	if one.HighSide != "discharge" || !(one.Subcooling.Std > 1.3*both.Subcooling.Std) {
		t.Errorf(
			"%s: subcooling ± %.2f K, with both ± %.2f K", one.HighSide, one.Subcooling.Std,
			both.Subcooling.Std,
		)
	}
	if d := math.Abs(float64(one.Subcooling.Value -
		both.Subcooling.Value)); d > 2*one.Subcooling.Std {
		t.Errorf("subcooling off by %.2f K", d)
	}
	p = pointsOf(s, &o)
	p.DischargePressure = nil
	if one, err = p.Analyze(); err != nil || one.HighSide != "liquid" ||
		one.Subcooling.Std != both.Subcooling.Std {
		t.Errorf("liquid gauge alone: %v, %+v", err, one.Subcooling)
	}
}

func TestAnalyzeErrors(t *testing.T) {
	s := machine(t, "R-22", refrigerant.FixedRestrictor)
	o := solve(t, s, RatingConditions(), Faults{})
	break1 := func(f func(*Points)) error {
		p := pointsOf(s, &o)
		f(&p)
		_, err := p.Analyze()
		return err
	}
	if err := break1(func(p *Points) {
		p.SuctionPressure, p.LiquidPressure = p.LiquidPressure, p.SuctionPressure
		p.DischargePressure = nil
	}); err == nil {
		t.Error("swapped hoses taken")
	}
	var re *RangeError
	for _, f := range []func(*Points){
		func(p *Points) { p.Refrigerant = nil }, func(p *Points) { p.SuctionLine = nil },
		func(p *Points) { p.LiquidPressure, p.DischargePressure = nil, nil },
		func(p *Points) { p.DischargeLine = p.SuctionLine },
	} {
		err := break1(f)
		if !errors.As(err, &re) && !errors.Is(err, refrigerant.ErrNoRefrigerant) {
			t.Errorf("too few points: %v", err)
		}
	}
	if err := break1(func(p *Points) {
		p.LiquidPressure.Value = quantity.PSIG(900)
		p.DischargePressure = nil
	}); !errors.As(
		err, &re,
	) {
		t.Errorf("above the critical pressure: %v", err)
	}
	// Warmer than the suction line, and still too cold for its pressure: the error says how
	// hot it must be at least, and there the analysis goes through.
	tepid := func(t quantity.Temperature) error {
		return break1(func(p *Points) { p.DischargeLine.Value, p.DischargeLine.Std = t, 0 })
	}
	if err := tepid(o.Suction.Temperature + 5); !errors.As(err, &re) ||
		re.Quantity != "discharge line temperature" {
		t.Errorf("tepid discharge: %v", err)
	} else if least := re.Min.(quantity.Temperature); least < o.Suction.Temperature+5 ||
		tepid(least+2) != nil {
		t.Errorf("at %v: %v, 2 K hotter: %v", o.Suction.Temperature+5, err, tepid(least+2))
	}
	// A clamp below the dew point is taken saturated, and the superheat says so.
	p := pointsOf(s, &o)
	p.SuctionLine.Value = o.Evaporating - 1
	if a, err := p.Analyze(); err != nil || a.Superheat.Value > -0.9 || a.Suction.Quality != 1 {
		t.Errorf("cold clamp: %v %+v", err, a.Superheat)
	}
}
