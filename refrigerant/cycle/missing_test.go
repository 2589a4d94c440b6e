package cycle

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func TestNoSystem(t *testing.T) {
	at := RatingConditions()
	for _, s := range []*System{nil, {}} {
		if _, err := s.Solve(at, Faults{}); !errors.Is(err, ErrNoSystem) {
			t.Errorf("Solve: %v", err)
		}
		if _, err := s.Tuned(Tuning{}); !errors.Is(err, ErrNoSystem) {
			t.Errorf("Tuned: %v", err)
		}
		if _, err := Fit(s, Readings{}); !errors.Is(err, ErrNoSystem) {
			t.Errorf("Fit: %v", err)
		}
		if _, err := s.WithHeadPressure(300).Solve(at, Faults{}); !errors.Is(err, ErrNoSystem) {
			t.Errorf("WithHeadPressure: %v", err)
		}
		if s.Refrigerant() != nil || s.Charge() != 0 || s.RatedFlow() != 0 ||
			s.Spec() != (Spec{}) || s.Compressor() != (Compressor{}) ||
			s.ShortTube() != (ShortTube{}) ||
			s.ExpansionValve() != (ExpansionValve{}) ||
			s.CapillaryTube() != (CapillaryTube{}) {
			t.Errorf("no machine has parts: %+v", s.Spec())
		}
	}
	for _, f := range []*Fitted{nil, {}} {
		if _, err := f.WithHeadPressure(300).Predict(at, Faults{}); !errors.Is(err, ErrNoSystem) {
			t.Errorf("Predict: %v", err)
		}
		if _, err := f.Freeze(at, Faults{}); !errors.Is(err, ErrNoSystem) {
			t.Errorf("Freeze: %v", err)
		}
		if got := f.ChargeChange(1, 0); got != 0 {
			t.Errorf("ChargeChange %g", got)
		}
		if f.Unknowns() != nil || f.Misfit() != 0 ||
			f.Operating() != (Operating{}) {
			t.Error("no machine was fitted, and yet has something to say")
		}
	}
	for _, p := range []*Points{nil, {}, {Refrigerant: new(refrigerant.Refrigerant)}} {
		if _, err := p.Analyze(); !errors.Is(err, refrigerant.ErrNoRefrigerant) {
			t.Errorf("Analyze: %v", err)
		}
	}
	for _, o := range []*Operating{nil, {}} {
		if got := o.PressureRatio(); got != 0 || o.LiquidReturns() {
			t.Errorf("PressureRatio %g, liquid returns %v", got, o.LiquidReturns())
		}
	}
}

// A control may be told to hold a head that no refrigerant has; the machine still has
// a state.
func TestHeadPressureBeyondTheCurve(t *testing.T) {
	s := machine(t, "R-410A", refrigerant.FixedRestrictor)
	for _, hold := range []float64{math.Inf(1), math.NaN(), 1e308, 400, 1, -5} {
		o, err := s.WithHeadPressure(quantity.Temperature(hold)).Solve(RatingConditions(), Faults{})
		if err != nil || !(o.Capacity > 0) || math.IsInf(float64(o.Capacity), 0) ||
			math.IsNaN(float64(o.Power)) {
			t.Errorf("head held at %g K: capacity %v, power %v, %v", hold, o.Capacity, o.Power, err)
		}
	}
}

// A fit refuses readings that no instrument shows, and says which.
func TestFitRefusesWhatNoInstrumentShows(t *testing.T) {
	s := machine(t, "R-410A", refrigerant.FixedRestrictor)
	good := func() Readings {
		p := func(v float64) *quantity.Uncertain[quantity.GaugePressure] {
			return new(quantity.PSIG(v).PlusMinus(quantity.PSIG(1)))
		}
		l := func(v float64) *quantity.Uncertain[quantity.Temperature] {
			return new(quantity.Fahrenheit(v).PlusMinus(quantity.FahrenheitDelta(1)))
		}
		return Readings{
			Conditions:      RatingConditions(),
			SuctionPressure: p(130),
			LiquidPressure:  p(400),
			SuctionLine:     l(60),
			LiquidLine:      l(105),
		}
	}
	if _, err := Fit(s, good()); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(*Readings){
		"suction pressure": func(v *Readings) {
			v.SuctionPressure.Value = quantity.GaugePressure(math.NaN())
		},
		"liquid pressure": func(v *Readings) {
			v.LiquidPressure.Value = 1e300
		},
		"suction line temperature": func(v *Readings) {
			v.SuctionLine.Value = 0
		},
		"standard uncertainty of the suction pressure": func(v *Readings) {
			v.SuctionPressure.Std = math.Inf(1)
		},
		"standard uncertainty of the liquid line temperature": func(v *Readings) {
			v.LiquidLine.Std = -1
		},
		"discharge pressure": func(v *Readings) {
			v.DischargePressure = new(quantity.PSIG(-14.7).PlusMinus(quantity.PSIG(1)))
		},
		"electric power": func(v *Readings) {
			v.Power = new(quantity.Watts(0).PlusMinus(quantity.Watts(50)))
		},
		"standard uncertainty of an air temperature": func(v *Readings) {
			v.WetBulbStd = quantity.TemperatureDelta(math.Inf(1))
		},
		"relative standard uncertainty of the airflow": func(v *Readings) {
			v.AirflowStd = math.NaN()
		},
	} {
		v := good()
		spoil(&v)
		_, err := Fit(s, v)
		var out *RangeError
		if !errors.As(err, &out) || out.Quantity != name {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Readings that contradict each other leave the unknowns open far beyond what machines
// are. The prediction still ends, in numbers.
func TestPredictionFromContradictions(t *testing.T) {
	s := machine(t, "R-410A", refrigerant.FixedRestrictor)
	gauge := func(v float64) *quantity.Uncertain[quantity.GaugePressure] {
		return new(quantity.PSIG(v).PlusMinus(quantity.PSIG(0.5)))
	}
	clamp := func(v float64) *quantity.Uncertain[quantity.Temperature] {
		return new(quantity.Fahrenheit(v).PlusMinus(quantity.FahrenheitDelta(0.5)))
	}
	for _, v := range []Readings{
		{SuctionPressure: gauge(300), LiquidPressure: gauge(118), SuctionLine: clamp(40),
			LiquidLine: clamp(170)},
		{SuctionPressure: gauge(118), LiquidPressure: gauge(118), SuctionLine: clamp(62),
			LiquidLine: clamp(95)},
		{SuctionPressure: gauge(10), LiquidPressure: gauge(600), SuctionLine: clamp(170),
			LiquidLine: clamp(40), Supply: clamp(105)},
	} {
		v.Conditions = RatingConditions()
		f, err := Fit(s, v)
		if err != nil {
			continue
		}
		p, err := f.Predict(RatingConditions(), Faults{})
		if err != nil {
			t.Error(err)
			continue
		}
		for _, x := range []float64{float64(p.NetCapacity.Value), p.NetCapacity.Std,
			float64(p.Superheat.Value), p.Superheat.Std, p.SuctionPressure.Std} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Errorf(
					"misfit %.0f: capacity %v, superheat %v", f.Misfit(), p.NetCapacity,
					p.Superheat,
				)
			}
		}
		if _, err := f.Freeze(RatingConditions(), Faults{}); err != nil {
			t.Error(err)
		}
	}
}

func TestMapThatIsNone(t *testing.T) {
	for _, m := range []*Map{nil, {}, {Flow: [10]float64{math.Inf(1)}, Power: [10]float64{1}}} {
		_, _, err := m.At(quantity.Fahrenheit(45), quantity.Fahrenheit(110))
		var out *RangeError
		if !errors.As(err, &out) {
			t.Errorf("%+v: %v", m, err)
		}
	}
}

// A machine is not built around a map that was filled in wrongly, and the error names what
// is wrong with it.
func TestMapFilledInWrongly(t *testing.T) {
	nan := math.NaN()
	for name, spoil := range map[string]func(*Map){
		"flow of a compressor map": func(m *Map) {
			m.Flow = [10]float64{-300}
		},
		"units of a compressor map": func(m *Map) { m.Units = 7 },
		"superheat of a compressor map's tests": func(m *Map) {
			m.RatedSuperheat = quantity.TemperatureDelta(nan)
		},
		"return gas of a compressor map's tests": func(m *Map) {
			m.RatedReturnGas = quantity.Fahrenheit(650)
		},
		"lowest suction of a compressor map's envelope": func(m *Map) {
			m.Envelope.LowSuction = quantity.Temperature(nan)
		},
		"highest suction of a compressor map's envelope": func(m *Map) {
			m.Envelope.HighSuction = quantity.Celsius(-30)
		},
		"highest discharge of a compressor map's envelope": func(m *Map) {
			m.Envelope.HighDischarge = quantity.Temperature(math.Inf(1))
		},
		"coefficient of a compressor map": func(m *Map) { m.Power[3] = nan },
	} {
		m := Map{
			Flow:           [10]float64{300, 5},
			Power:          [10]float64{500, 0, 20},
			RatedSuperheat: quantity.FahrenheitDelta(20),
		}
		spoil(&m)
		_, err := Design(
			Spec{
				Refrigerant: lookup(t, "R-410A"),
				Capacity:    quantity.Tons(3),
				Metering:    refrigerant.TXV,
				Compressor:  Compressor{Map: &m},
			},
		)
		var out *RangeError
		if !errors.As(err, &out) || out.Quantity != name {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A valve is open by some share whatever its bulb feels.
func TestOpeningIsAShare(t *testing.T) {
	v := ExpansionValve{Superheat: 5, Gradient: 3, MaxOperating: quantity.Kilopascals(700)}
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -300} {
		for _, p := range []float64{6e5, 8e5, 0, math.NaN(), math.Inf(1)} {
			if o := v.Opening(quantity.TemperatureDelta(x),
				quantity.Pressure(p)); !(o >= 0.01 && o <= 1) {
				t.Errorf("open by %v at %v K and %v Pa", o, x, p)
			}
		}
	}
}
