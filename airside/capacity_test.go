package airside

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// drawAir draws air of a building or of the outdoors at a pressure.
func drawAir(t *rapid.T, name string, p quantity.Pressure) psychro.Air {
	db := rapid.Float64Range(-10, 45).Draw(t, name+" dry bulb")
	rh := rapid.Float64Range(0, 1).Draw(t, name+" humidity")
	a, err := psychro.FromRelativeHumidity(quantity.Celsius(db), rh, p)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Energy and water balance to 1e-9, whatever the two states are.
func TestCapacityConserves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := quantity.Kilopascals(rapid.Float64Range(70, 105).Draw(t, "pressure"))
		in, out := drawAir(t, "entering", p), drawAir(t, "leaving", p)
		flow := quantity.CFM(rapid.Float64Range(0, 4000).Draw(t, "flow"))
		c, err := CapacityOf(in, out, flow)
		if err != nil {
			t.Fatal(err)
		}
		m := float64(c.DryAir.Value)
		water := float64(c.Condensate.Value)
		scale := 1e-9 * m * 1e5
		if d := m*in.HumidityRatio() - m*out.HumidityRatio() - water; math.Abs(d) > 1e-9*m {
			t.Fatalf("water does not balance: %v kg/s", d)
		}
		heat := m*float64(in.Enthalpy()-out.Enthalpy()) -
			water*4186*math.Max(0, out.DryBulb().Celsius())
		if d := heat - float64(c.Total.Value); math.Abs(d) > scale {
			t.Fatalf("energy does not balance: %v W", d)
		}
		if d := float64(c.Sensible.Value + c.Latent.Value - c.Total.Value); math.Abs(d) > scale {
			t.Fatalf("sensible and latent miss the total by %v W", d)
		}
		if in.DryBulb() > out.DryBulb() != (c.Sensible.Value > 0) && m > 0 &&
			in.DryBulb() != out.DryBulb() {
			t.Fatalf("cooling has sensible capacity %v", c.Sensible.Value)
		}
	})
}

// The balance is that of psychro's processes: one physics, not two.
func TestCapacityIsPsychrosProcess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := quantity.Kilopascals(rapid.Float64Range(70, 105).Draw(t, "pressure"))
		in := drawAir(t, "entering", p)
		flow := quantity.CFM(rapid.Float64Range(10, 4000).Draw(t, "flow"))
		m := in.DryAirFlow(flow)
		cooled, err := psychro.CoolAndDehumidify(
			in, in.DryBulb()-quantity.Temperature(rapid.Float64Range(0, 30).Draw(t, "depth")),
			rapid.Float64Range(0, 1).Draw(t, "bypass"),
		)
		if err != nil {
			t.Fatal(err)
		}
		warmed, err := psychro.SensibleHeatCool(
			in, in.DryBulb()+quantity.Temperature(rapid.Float64Range(0, 30).Draw(t, "rise")),
		)
		if err != nil {
			t.Fatal(err)
		}
		for _, process := range []psychro.Process{cooled, warmed} {
			c, err := capacityOfProcess(process, flow)
			if err != nil {
				t.Fatal(err)
			}
			scale := 1e-12 * float64(m) * 1e5
			if d := float64(c.Total.Value + process.HeatRate(m)); math.Abs(d) > scale {
				t.Fatalf("%v W off the process", d)
			}
			if d := float64(c.Sensible.Value + c.Latent.Value - c.Total.Value); math.Abs(
				d,
			) > 1e3*scale {
				t.Fatalf("sensible and latent miss the total by %v W", d)
			}
			if d := float64(c.Condensate.Value + process.WaterRate(m)); math.Abs(d) > 1e-15 {
				t.Fatalf("%v kg/s of water off the process", d)
			}
		}
	})
}

func TestCapacityLimits(t *testing.T) {
	p := quantity.StandardAtmosphere
	in, _ := psychro.FromWetBulb(quantity.Fahrenheit(80), quantity.Fahrenheit(67), p)
	for name, c := range map[string]struct {
		out  psychro.Air
		flow quantity.VolumeFlow
	}{"no flow": {psychro.Air{}, 0}, "all bypass": {in, quantity.CFM(1200)}} {
		if c.out == (psychro.Air{}) {
			c.out, _ = psychro.FromWetBulb(quantity.Fahrenheit(58), quantity.Fahrenheit(57), p)
		}
		got, err := CapacityOf(in, c.out, c.flow)
		if err != nil || got.Total.Value != 0 || got.SensibleHeatRatio != 0 ||
			got.Condensate.Value != 0 {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
}

// The trade's own arithmetic, 1.08·CFM·ΔT and 4.5·CFM·Δh, at sea level.
func TestCapacityAgainstTheTradesArithmetic(t *testing.T) {
	practice := verify.Source{
		Cite: "1.08·CFM·ΔT and 4.5·CFM·Δh with standard air",
		Kind: verify.CommonPractice,
	}
	in, _ := psychro.FromWetBulb(
		quantity.Fahrenheit(80), quantity.Fahrenheit(67), quantity.StandardAtmosphere,
	)
	out, _ := psychro.FromWetBulb(
		quantity.Fahrenheit(58), quantity.Fahrenheit(56.5), quantity.StandardAtmosphere,
	)
	// 1200 CFM of standard air is this many CFM of the return air.
	m := StandardAir().DryAirFlow(quantity.CFM(1200))
	c, err := CapacityOf(in, out, quantity.VolumeFlow(float64(m)*float64(in.SpecificVolume())))
	if err != nil {
		t.Fatal(err)
	}
	verify.Relative(
		t, practice, "sensible capacity, 1200 CFM from 80 to 58 °F", "Btu/h", 1.08*1200*22,
		c.Sensible.Value.BtuPerHour(), 0.025,
	)
	dh := (in.Enthalpy() - out.Enthalpy()).BtuPerPound()
	verify.Relative(
		t, practice, "total capacity, 1200 CFM", "Btu/h", 4.5*1200*dh, c.Total.Value.BtuPerHour(),
		0.02,
	)
}

func TestFactors(t *testing.T) {
	practice := verify.Source{
		Cite: "multipliers of the trade for standard air",
		Kind: verify.CommonPractice,
	}
	f, err := FactorsOf(StandardAir())
	if err != nil {
		t.Fatal(err)
	}
	verify.Value(
		t, practice, "sensible factor of standard air", "Btu/(h·CFM·°F)", 1.08, f.Sensible, 0.005,
	)
	verify.Value(
		t, practice, "latent factor of standard air", "Btu·lb/(h·CFM·gr)", 0.68, f.Latent, 0.005,
	)
	verify.Value(t, practice, "total factor of standard air", "lb/(h·CFM)", 4.5, f.Total, 0.05)
	verify.Value(
		t,
		verify.Source{
			Cite: "Process Heating, Fan Laws and Formulas: fan ratings are based on standard " +
				"air of 0.075 lb/ft³",
			Kind: verify.Published,
		},
		"density of standard air",
		"lb/ft³",
		0.075,
		StandardAir().Density().PoundsPerCubicFoot(),
		0.0002,
	)

	high, _ := psychro.FromHumidityRatio(
		quantity.Fahrenheit(70), 0, quantity.AtmosphereAt(quantity.Feet(6000)),
	)
	g, err := FactorsOf(high)
	if err != nil {
		t.Fatal(err)
	}
	ratio := float64(quantity.AtmosphereAt(quantity.Feet(6000))) /
		float64(quantity.StandardAtmosphere)
	for _, r := range []float64{g.Sensible / f.Sensible, g.Latent / f.Latent, g.Total / f.Total} {
		if math.Abs(r-ratio) > 1e-9 {
			t.Errorf("at 6,000 ft a factor is %.6f of sea level; the density is %.6f", r, ratio)
		}
	}
	if _, err := FactorsOf(psychro.Air{}); err == nil {
		t.Error("no air has factors")
	}
}

func capacityExample() CapacityReadings {
	return CapacityReadings{
		Return:     AirReading{fahrenheit(75, 0.6), fahrenheit(62, 0.7)},
		Supply:     AirReading{fahrenheit(56, 0.6), fahrenheit(53.5, 0.7)},
		Airflow:    quantity.CFM(1150).PlusMinus(quantity.CFM(60)),
		Atmosphere: quantity.AtmosphereAt(quantity.Feet(6000)).PlusMinus(quantity.Pascals(400)),
	}
}

// First-order propagation against the spread of many draws of the same readings.
func TestCapacityUncertaintyAgainstMonteCarlo(t *testing.T) {
	r := capacityExample()
	for _, u := range []*quantity.Uncertain[quantity.Temperature]{&r.Return.DryBulb,
		&r.Return.WetBulb, &r.Supply.DryBulb, &r.Supply.WetBulb} {
		u.Std /= 2 // so that no draw has a wet bulb above its dry bulb
	}
	c, err := MeasureCapacity(r)
	if err != nil {
		t.Fatal(err)
	}
	rng := newRand(7)
	var n, mean, m2 float64
	for range 4000 {
		draw := func(u *quantity.Uncertain[quantity.Temperature]) {
			u.Value += quantity.Temperature(u.Std * rng.NormFloat64())
			u.Std = 0
		}
		q := r
		draw(&q.Return.DryBulb)
		draw(&q.Return.WetBulb)
		draw(&q.Supply.DryBulb)
		draw(&q.Supply.WetBulb)
		q.Airflow.Value += quantity.VolumeFlow(q.Airflow.Std * rng.NormFloat64())
		q.Atmosphere.Value += quantity.Pressure(q.Atmosphere.Std * rng.NormFloat64())
		got, err := MeasureCapacity(q)
		if err != nil {
			t.Fatal(err)
		}
		n++
		d := float64(got.Total.Value) - mean
		mean += d / n
		m2 += d * (float64(got.Total.Value) - mean)
	}
	verify.Relative(
		t,
		verify.Source{
			Cite: "spread of 4000 Monte Carlo draws (JCGM 101:2008)",
			Kind: verify.Computed,
		},
		"standard uncertainty of a total capacity",
		"W",
		math.Sqrt(m2/(n-1)),
		c.Total.Std,
		0.05,
	)
}

func TestMeasureCapacityTakesASaturatedSupply(t *testing.T) {
	r := capacityExample()
	r.Supply.WetBulb = fahrenheit(56.8, 0.7)
	if _, err := MeasureCapacity(r); err != nil {
		t.Errorf("0.8 °F is within two thermometers: %v", err)
	}
	r.Supply.WetBulb = fahrenheit(60, 0.7)
	if _, err := MeasureCapacity(r); err == nil {
		t.Error("4 °F is not")
	}
}

func TestCapacityJSON(t *testing.T) {
	c, err := MeasureCapacity(capacityExample())
	if err != nil {
		t.Fatal(err)
	}
	b, err := json.Marshal(c)
	if err != nil {
		t.Fatal(err)
	}
	var m map[string]any
	if err := json.Unmarshal(b, &m); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"total", "sensible", "latent", "sensibleHeatRatio",
		"sensibleHeatRatioStd", "condensate", "dryAir", "budget"} {
		if _, ok := m[name]; !ok {
			t.Errorf("no %q in %s", name, b)
		}
	}
	if term, ok := c.Budget.Largest(); !ok ||
		term.Reading != "returnWetBulb" && term.Reading != "supplyWetBulb" {
		t.Errorf("the wet bulbs weigh most, not %+v of %+v", term, c.Budget.Terms())
	}
}

func BenchmarkMeasureCapacity(b *testing.B) {
	b.ReportAllocs()
	r := capacityExample()
	for b.Loop() {
		if _, err := MeasureCapacity(r); err != nil {
			b.Fatal(err)
		}
	}
}
