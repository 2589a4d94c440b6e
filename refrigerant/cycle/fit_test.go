package cycle

import (
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// visitTo reads a machine with field instruments: noise of the standard uncertainties that
// it states, or none where r is nil.
func visitTo(r *rand.Rand, c Conditions, o *Operating) Readings {
	noise := func(std float64) float64 {
		if r == nil {
			return 0
		}
		return std * r.NormFloat64()
	}
	atm := quantity.AtmosphereAt(c.Elevation)
	gauge := func(p quantity.Pressure) *quantity.Uncertain[quantity.GaugePressure] {
		const std = 4e3
		return &quantity.Uncertain[quantity.GaugePressure]{
			Value: p.Gauge(atm) + quantity.GaugePressure(noise(std)),
			Std:   std,
		}
	}
	clamp := func(t quantity.Temperature) *quantity.Uncertain[quantity.Temperature] {
		const std = 0.5
		return &quantity.Uncertain[quantity.Temperature]{
			Value: t + quantity.Temperature(noise(std)),
			Std:   std,
		}
	}
	read := c
	read.OutdoorDryBulb += quantity.Temperature(noise(0.4))
	read.ReturnDryBulb += quantity.Temperature(noise(0.4))
	read.ReturnWetBulb = min(
		read.ReturnWetBulb+quantity.Temperature(noise(0.4)), read.ReturnDryBulb,
	)
	return Readings{
		Conditions:      read,
		SuctionPressure: gauge(o.Suction.Pressure), LiquidPressure: gauge(o.Liquid.Pressure),
		SuctionLine: clamp(o.Suction.Temperature), LiquidLine: clamp(o.Liquid.Temperature),
		DischargeLine: clamp(o.Discharge.Temperature),
		Supply:        clamp(o.Supply), CondenserLeaving: clamp(o.CondenserLeaving),
		Power: &quantity.Uncertain[quantity.Power]{
			Value: o.Power * quantity.Power(1+noise(0.015)),
			Std:   0.015 * float64(o.Power),
		},
	}
}

// A starved coil beside liquid that stacks in the condenser is read as that and not as a
// loss of charge, which would leave the condenser without liquid.
func TestFitFindsLiquidBehindARestriction(t *testing.T) {
	s := machine(t, "R-410A", refrigerant.TXV)
	c := weather(85, 76, 64)
	o := solve(t, s, c, Faults{})
	v := visitTo(nil, c, &o)
	r := s.Refrigerant()
	reading := func(at func(quantity.Temperature) (quantity.Pressure, error),
		f float64) *quantity.Uncertain[quantity.GaugePressure] {
		p, err := at(quantity.Fahrenheit(f))
		if err != nil {
			t.Fatal(err)
		}
		return &quantity.Uncertain[quantity.GaugePressure]{
			Value: p.Gauge(quantity.StandardAtmosphere),
			Std:   4e3,
		}
	}
	line := func(f float64) *quantity.Uncertain[quantity.Temperature] {
		return &quantity.Uncertain[quantity.Temperature]{Value: quantity.Fahrenheit(f), Std: 0.5}
	}
	v.SuctionPressure, v.LiquidPressure = reading(r.DewPressure, 24), reading(r.BubblePressure, 104)
	v.SuctionLine, v.LiquidLine, v.DischargeLine, v.Supply = line(62), line(87), line(185), line(65)
	v.CondenserLeaving, v.Power = nil, nil
	f, err := Fit(s, v)
	if err != nil {
		t.Fatal(err)
	}
	p, err := f.Predict(c, Faults{})
	if err != nil {
		t.Fatal(err)
	}
	if d := p.Subcooling.Value.Fahrenheit() - 17; math.Abs(d) > 3 || f.Misfit() > 1.5 {
		t.Errorf("subcooling %v of 17 °F, misfit %g", p.Subcooling, f.Misfit())
	}
	for _, u := range f.Unknowns() {
		if u.Name == "metering" && u.Value > -0.2 {
			t.Errorf("metering %g: nothing closed", u.Value)
		}
	}
}

// Exact readings of the ordinary machine leave it as it is.
func TestFitOfTheOrdinaryMachine(t *testing.T) {
	for m := refrigerant.FixedRestrictor; m <= refrigerant.Capillary; m++ {
		s := machine(t, "R-22", m)
		c := weather(92, 78, 65)
		o := solve(t, s, c, Faults{})
		f, err := Fit(s, visitTo(nil, c, &o))
		if err != nil {
			t.Fatal(err)
		}
		for _, u := range f.Unknowns() {
			if math.Abs(u.Value) > 1e-3*u.Prior {
				t.Errorf("%v: %s moved by %g", m, u.Name, u.Value)
			}
			if u.Std > u.Prior*1.0001 {
				t.Errorf(
					"%v: %s more doubtful after the fit: %g from %g", m, u.Name, u.Std, u.Prior,
				)
			}
		}
		if f.Misfit() > 1e-3 {
			t.Errorf("%v: misfit %g", m, f.Misfit())
		}
		p, err := f.Predict(c, Faults{})
		if err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(float64(p.Superheat.Value - o.Superheat)); d > 0.01 ||
			len(p.Extrapolating) > 0 {
			t.Errorf(
				"%v: predicts superheat off by %g K where it was fitted, %v", m, d, p.Extrapolating,
			)
		}
	}
}

// otherMachine is one that differs from the ordinary in size, charge and airflow, and whose
// laws are not those of the model.
func otherMachine(t testing.TB, r *rand.Rand, s *System) (*System, Faults) {
	t.Helper()
	tuned, err := s.Tuned(Tuning{
		EvaporatorUA: 0.10 * r.NormFloat64(), CondenserUA: 0.12 * r.NormFloat64(),
		CompressorFlow: 0.04 * r.NormFloat64(), CompressorWork: 0.05 * r.NormFloat64(),
		MeteringSize: 0.05 * r.NormFloat64(),
		Form: Form{
			AirExponent:         0.672 + 0.12*r.NormFloat64(),
			RefrigerantExponent: 0.8 + 0.12*r.NormFloat64(),
			MeteringPressure:    0.08 * r.NormFloat64(), MeteringSubcooling: 0.08 * r.NormFloat64(),
		},
	})
	if err != nil {
		t.Fatal(err)
	}
	return tuned, Faults{Charge: 0.08 * r.NormFloat64(), IndoorAirflow: 0.10 * r.NormFloat64()}
}

// The 95 % bands of predictions at other weather, airflow and charge cover machines with
// other laws, read with noisy instruments.
func TestBandsCover(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	n := 60
	if testing.Short() {
		n = 15
	}
	type count struct{ in, all int }
	cover := map[string]*count{}
	names := []string{
		"superheat", "subcooling", "evaporating", "condensing", "coil surface", "capacity", "power",
	}
	for _, k := range names {
		cover[k] = &count{}
	}
	for i := range n {
		m := refrigerant.FixedRestrictor + refrigerant.Metering(i%2)
		s := machine(t, "R-22", m)
		truth, faults := otherMachine(t, r, s)
		c := weather(85+10*r.Float64(), 77, 64+4*r.Float64())
		o := solve(t, truth, c, faults)
		f, err := Fit(s, visitTo(r, c, &o))
		if err != nil {
			t.Fatal(err)
		}
		for range 4 {
			there := weather(60+50*r.Float64(), 76, 58+11*r.Float64())
			change := Faults{
				IndoorAirflow: -0.2 + 0.3*r.Float64(),
				Charge:        -0.06 + 0.12*r.Float64(),
			}
			p, err := f.Predict(there, change)
			if err != nil {
				t.Fatal(err)
			}
			both := change
			both.Charge += faults.Charge
			both.IndoorAirflow = (1+change.IndoorAirflow)*(1+faults.IndoorAirflow) - 1
			is := solve(t, truth, there, both)
			want, got := outputs(&is), outputs(&p.Operating)
			for k, x := range map[string]struct {
				i   int
				std float64
			}{
				"superheat":    {outSuperheat, p.Superheat.Std},
				"subcooling":   {outSubcooling, p.Subcooling.Std},
				"evaporating":  {outEvaporating, p.Evaporating.Std},
				"condensing":   {outCondensing, p.Condensing.Std},
				"coil surface": {outSurface, p.CoilSurface.Std},
				"capacity":     {outCapacity, p.NetCapacity.Std},
				"power":        {outPower, p.Power.Std},
			} {
				cover[k].all++
				if math.Abs(want[x.i]-got[x.i]) <= 1.96*x.std {
					cover[k].in++
				}
			}
		}
	}
	for _, k := range names {
		share := float64(cover[k].in) / float64(cover[k].all)
		t.Logf("%-13s %.1f %% of %d inside the 95 %% band", k, 100*share, cover[k].all)
		if share < 0.90 {
			t.Errorf("%s: only %.1f %% inside the 95 %% band", k, 100*share)
		}
	}
}

// A fit finds a charge that is off, and says that it learned it.
func TestFitFindsTheCharge(t *testing.T) {
	s := machine(t, "R-22", refrigerant.FixedRestrictor)
	c := weather(95, 78, 66)
	for _, charge := range []float64{-0.2, -0.1, 0.1} {
		o := solve(t, s, c, Faults{Charge: charge})
		f, err := Fit(s, visitTo(nil, c, &o))
		if err != nil {
			t.Fatal(err)
		}
		u := f.Unknowns()[0]
		if u.Name != "charge" || math.Abs(u.Value-charge) > 2*u.Std || !u.Learned() ||
			u.Value*charge <= 0 {
			t.Errorf(
				"charge %+.2f found as %+.3f ± %.3f (prior %.2f)", charge, u.Value, u.Std, u.Prior,
			)
		}
	}
}

// Readings that contradict the machine show as a misfit, and widen the bands.
func TestMisfit(t *testing.T) {
	s := machine(t, "R-22", refrigerant.TXV)
	c := weather(95, 78, 66)
	o := solve(t, s, c, Faults{})
	good, err := Fit(s, visitTo(nil, c, &o))
	if err != nil {
		t.Fatal(err)
	}
	v := visitTo(nil, c, &o)
	v.LiquidLine.Value += 15 // a clamp in the sun
	bad, err := Fit(s, v)
	if err != nil {
		t.Fatal(err)
	}
	a, _ := good.Predict(c, Faults{})
	b, _ := bad.Predict(c, Faults{})
	if !(bad.Misfit() > 2 && b.Superheat.Std >= a.Superheat.Std &&
		b.Subcooling.Std > a.Subcooling.Std) {
		t.Errorf(
			"misfit %.2f, subcooling ± %.2f from ± %.2f K", bad.Misfit(), b.Subcooling.Std,
			a.Subcooling.Std,
		)
	}
}

// Further from the visit a band is wider, and says what it is far from.
func TestBandsGrow(t *testing.T) {
	s := machine(t, "R-22", refrigerant.FixedRestrictor)
	c := weather(92, 77, 65)
	o := solve(t, s, c, Faults{})
	f, err := Fit(s, visitTo(nil, c, &o))
	if err != nil {
		t.Fatal(err)
	}
	near, _ := f.Predict(weather(90, 77, 65), Faults{})
	far, _ := f.Predict(weather(60, 72, 58), Faults{})
	if !(far.Evaporating.Std > near.Evaporating.Std && len(near.Extrapolating) == 0 &&
		len(far.Extrapolating) >= 2) {
		t.Errorf(
			"near ± %.2f K %v, far ± %.2f K %v", near.Evaporating.Std, near.Extrapolating,
			far.Evaporating.Std, far.Extrapolating,
		)
	}
}

// No change of the machine is far from the visit without the prediction saying so.
func TestEveryChangeIsAnExtrapolation(t *testing.T) {
	s := machine(t, "R-410A", refrigerant.TXV)
	c := weather(92, 77, 65)
	o := solve(t, s, c, Faults{})
	f, err := Fit(s, visitTo(nil, c, &o))
	if err != nil {
		t.Fatal(err)
	}
	near, err := f.Predict(c, Faults{})
	if err != nil {
		t.Fatal(err)
	}
	changes := map[string]Faults{
		"Charge": {
			Charge: -0.2,
		}, "IndoorAirflow": {IndoorAirflow: -0.4}, "OutdoorAirflow": {OutdoorAirflow: -0.5},
		"EvaporatorFouling": {
			EvaporatorFouling: 0.4,
		}, "CondenserFouling": {CondenserFouling: 0.4}, "Recirculation": {Recirculation: 12},
		"LiquidRestriction": {
			LiquidRestriction: quantity.Bar(8),
		}, "SuctionRestriction": {SuctionRestriction: quantity.Bar(1)},
		"CompressorLeak": {
			CompressorLeak: 0.2,
		}, "NonCondensables": {NonCondensables: 0.6}, "MeteringSize": {MeteringSize: -0.4},
		"BulbOff": {
			BulbOff: 0.7,
		}, "ValveSetting": {ValveSetting: 7}, "ValveStuck": {ValveStuck: true, ValveOpening: 0.3},
		"ValveOpening": {},
	}
	for i := range reflect.TypeFor[Faults]().NumField() {
		name := reflect.TypeFor[Faults]().Field(i).Name
		change, ok := changes[name]
		if !ok {
			t.Errorf("no prediction with a change of %s is tried", name)
		}
		if change == (Faults{}) {
			continue // goes with another
		}
		far, err := f.Predict(c, change)
		if err != nil {
			t.Fatal(err)
		}
		if len(far.Extrapolating) != 1 || far.Evaporating.Std <= near.Evaporating.Std {
			t.Errorf(
				"%s: %v, ± %.2f K from ± %.2f K", name, far.Extrapolating, far.Evaporating.Std,
				near.Evaporating.Std,
			)
		}
	}
}

func TestFreezeForecast(t *testing.T) {
	s := machine(t, "R-22", refrigerant.FixedRestrictor)
	c := weather(88, 75, 62)
	o := solve(t, s, c, Faults{Charge: -0.31, IndoorAirflow: -0.4})
	f, err := Fit(s, visitTo(nil, c, &o))
	if err != nil {
		t.Fatal(err)
	}
	day, err := f.Freeze(c, Faults{})
	if err != nil {
		t.Fatal(err)
	}
	night, err := f.Freeze(weather(62, 70, 57), Faults{})
	if err != nil {
		t.Fatal(err)
	}
	if !(night.Probability > day.Probability && night.Surface.Value < day.Surface.Value) {
		t.Errorf("day %+v, night %+v", day, night)
	}
	if day.WetBulb == nil || day.Airflow == nil {
		t.Fatalf("neither drier air nor less of it freezes it: %+v", day)
	}
	at := c
	at.ReturnWetBulb = *day.WetBulb
	p, err := f.Predict(at, Faults{})
	if err != nil || math.Abs(p.CoilSurface.Value.Fahrenheit()-32) > 0.1 {
		t.Errorf(
			"at the wet bulb of frost the surface is %.2f °F", p.CoilSurface.Value.Fahrenheit(),
		)
	}
	// A fan that holds the head keeps the coil warmer on a cool night, and the more so the
	// more liquid there is to feed it.
	sound := solve(t, s, c, Faults{})
	g, err := Fit(s, visitTo(nil, c, &sound))
	if err != nil {
		t.Fatal(err)
	}
	gain := func(f *Fitted) float64 {
		cool := weather(62, 70, 57)
		free, err1 := f.Freeze(cool, Faults{})
		held, err2 := f.WithHeadPressure(quantity.Fahrenheit(95)).Freeze(cool, Faults{})
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		return float64(held.Surface.Value - free.Surface.Value)
	}
	if charged, short := gain(g), gain(f); charged < 0.5 || short < 0 || short > charged {
		t.Errorf(
			"holding the head warms the coil by %.2f K charged, and by %.2f K short of charge",
			charged, short,
		)
	}
}

func TestFitErrors(t *testing.T) {
	s := machine(t, "R-22", refrigerant.FixedRestrictor)
	c := RatingConditions()
	o := solve(t, s, c, Faults{})
	v := visitTo(nil, c, &o)
	v.SuctionLine, v.LiquidLine, v.DischargeLine, v.Supply, v.CondenserLeaving, v.Power = nil, nil,
		nil, nil, nil, nil
	var re *RangeError
	if _, err := Fit(s, v); !errors.As(err, &re) || re.Value != quantity.Number(2) ||
		re.Min != quantity.Number(4) {
		t.Errorf("two gauges alone: %v", err)
	}
	v = visitTo(nil, c, &o)
	v.Conditions.OutdoorDryBulb = quantity.Fahrenheit(0)
	if _, err := Fit(s, v); !errors.As(err, &re) {
		t.Errorf("winter fitted: %v", err)
	}
	v = visitTo(nil, c, &o)
	v.SuctionLine.Value = quantity.Temperature(math.NaN())
	if _, err := Fit(s, v); err == nil {
		t.Error("NaN fitted")
	}
}

func BenchmarkFit(b *testing.B) {
	r := rand.New(rand.NewPCG(3, 4))
	for m := refrigerant.FixedRestrictor; m <= refrigerant.TXV; m++ {
		b.Run(m.String(), func(b *testing.B) {
			s := machine(b, "R-22", m)
			truth, faults := otherMachine(b, r, s)
			c := weather(92, 77, 65)
			o := solve(b, truth, c, faults)
			v := visitTo(r, c, &o)
			for b.Loop() {
				if _, err := Fit(s, v); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkPredict(b *testing.B) {
	s := machine(b, "R-22", refrigerant.FixedRestrictor)
	c := weather(92, 77, 65)
	o := solve(b, s, c, Faults{})
	f, err := Fit(s, visitTo(nil, c, &o))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := f.Predict(weather(70, 72, 60), Faults{}); err != nil {
			b.Fatal(err)
		}
	}
}
