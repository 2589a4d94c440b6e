package psychro_test

import (
	"errors"
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"golang.org/x/text/language"
	"pgregory.net/rapid"
)

func celsius(v, std float64) quantity.Uncertain[quantity.Temperature] {
	return quantity.Celsius(v).PlusMinus(quantity.CelsiusDelta(std))
}

var seaLevel = quantity.StandardAtmosphere.PlusMinus(0)

// A probe with a wet sock in a slow duct reads high; the same numbers from a
// sling are drier air.
func ExamplePsychrometer_Measure() {
	duct, err := psychro.InAirSpeed(quantity.MetersPerSecond(0.5))
	if err != nil {
		fmt.Println(err)
		return
	}
	reading := psychro.Reading{
		DryBulb:  quantity.Fahrenheit(75).PlusMinus(quantity.FahrenheitDelta(0.5)),
		WetBulb:  quantity.Fahrenheit(63).PlusMinus(quantity.FahrenheitDelta(0.5)),
		Pressure: quantity.AtmosphereAt(quantity.Feet(6000)).PlusMinus(quantity.Kilopascals(1)),
	}
	for _, ps := range []psychro.Psychrometer{psychro.Sling(), duct} {
		m, err := ps.Measure(reading)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf(
			"wet bulb %s, relative humidity %.0f ± %.0f %%\n", m.WetBulb.Format(quantity.IP),
			100*m.RelativeHumidity.Value, 100*m.RelativeHumidity.Std,
		)
	}
	// Output:
	// wet bulb 62.8 °F ± 0.5 °F, relative humidity 54 ± 2 %
	// wet bulb 62.2 °F ± 0.7 °F, relative humidity 52 ± 3 %
}

func ExamplePsychrometer_Doubts() {
	swapped := psychro.Reading{
		DryBulb:  celsius(17.2, 0.3),
		WetBulb:  celsius(26.7, 0.3),
		Pressure: seaLevel,
	}
	for _, d := range psychro.Sling().Doubts(swapped) {
		fmt.Println(d.Says().Code, d.Reading.Format(quantity.SI), d.Against.Format(quantity.SI))
		fmt.Println(d.Mend().Code)
	}
	// Output:
	// doubt.wet-bulb-above-dry-bulb 26.7 °C 17.2 °C
	// doubt.wet-bulb-above-dry-bulb.mend
}

func ExampleWickDoubts() {
	var series []psychro.WickSample
	for i, wet := range []float64{62.1, 62.2, 62.6, 63.3, 64.5, 66.2} {
		series = append(
			series,
			psychro.WickSample{
				At:      time.Duration(i) * time.Minute,
				DryBulb: quantity.Fahrenheit(78),
				WetBulb: quantity.Fahrenheit(wet),
			},
		)
	}
	for _, d := range psychro.WickDoubts(series) {
		fmt.Println(d.Says().Code, d.Reading.Format(quantity.IP), d.Against.Format(quantity.IP))
	}
	// Output: doubt.wick-drying 66.2 °F 62.1 °F
}

func TestCoefficients(t *testing.T) {
	fao := verify.Source{
		Cite: "FAO Irrigation and Drainage Paper 56 (1998), equation 16",
		Kind: verify.FromMemory,
	}
	for _, c := range []struct{ speed, coefficient float64 }{{5, 6.62e-4}, {1, 8.0e-4},
		{0.13, 12e-4}} {
		ps, err := psychro.InAirSpeed(quantity.MetersPerSecond(c.speed))
		if err != nil {
			t.Fatal(err)
		}
		verify.Relative(
			t, fao, fmt.Sprintf("psychrometer coefficient at %g m/s", c.speed), "1/K",
			c.coefficient, ps.Coefficient, 0.11,
		)
	}
	if _, err := psychro.InAirSpeed(0); err == nil {
		t.Error("still air has a coefficient")
	}
}

// An instrument that is none is refused, and the error names what is wrong with it.
func TestPsychrometerThatIsNone(t *testing.T) {
	air, err := psychro.FromRelativeHumidity(quantity.Celsius(25), 0.5, quantity.StandardAtmosphere)
	if err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(*psychro.Psychrometer){
		"psychrometer coefficient": func(ps *psychro.Psychrometer) {
			*ps = psychro.Psychrometer{}
		},
		"psychrometer coefficient of an iced wick": func(ps *psychro.Psychrometer) {
			ps.Iced = math.Inf(1)
		},
		"growth of the psychrometer coefficient": func(ps *psychro.Psychrometer) {
			ps.Growth = -1
		},
		"spread of the psychrometer coefficient": func(ps *psychro.Psychrometer) {
			ps.Spread = math.NaN()
		},
	} {
		ps := psychro.Sling()
		spoil(&ps)
		_, err1 := ps.Measure(
			psychro.Reading{
				DryBulb:  celsius(25, 0.3),
				WetBulb:  celsius(18, 0.3),
				Pressure: seaLevel,
			},
		)
		_, err2 := ps.WetBulbIn(air)
		for _, err := range []error{err1, err2} {
			var re *psychro.RangeError
			if !errors.As(err, &re) || re.Quantity != name {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}

// Ventilated well, a wick comes to the thermodynamic wet bulb within what the
// coefficient is known to.
func TestAspiratedIsNearlyThermodynamic(t *testing.T) {
	for _, c := range []struct{ dry, wet float64 }{{25, 18}, {35, 22}, {45, 24}, {20, 19}} {
		m, err := psychro.Aspirated().
			Measure(psychro.Reading{DryBulb: celsius(c.dry, 0), WetBulb: celsius(c.wet, 0),
				Pressure: seaLevel})
		if err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(float64(m.Correction)); d > 0.03*(c.dry-c.wet) {
			t.Errorf("%v: corrected by %v K", c, d)
		}
	}
}

func TestSupercooledWick(t *testing.T) {
	// Saturated over water at −10 °C: the vapor pressure is that of the wick.
	r := psychro.Reading{
		DryBulb:  celsius(-9.99, 0),
		WetBulb:  celsius(-10, 0),
		Pressure: seaLevel,
		Wick:     psychro.WickWet,
	}
	if _, err := psychro.Sling().Measure(r); err == nil {
		t.Error("air as moist as water of −10 °C is above saturation over ice")
	}
	r.DryBulb = celsius(-8, 0)
	wet, err := psychro.Sling().Measure(r)
	if err != nil {
		t.Fatal(err)
	}
	r.Wick = psychro.WickIced
	iced, err := psychro.Sling().Measure(r)
	if err != nil {
		t.Fatal(err)
	}
	// e = 286.27 − 6.60e-4 (1 − 0.0115) 101325·2 and 259.88 − 5.82e-4·101325·2.
	source := verify.Source{
		Cite: "Smithsonian Meteorological Tables, 6th ed., tables 94 and 96: 286.27 and 259.7 " +
			"Pa at −10 °C over water and ice",
		Kind: verify.FromMemory,
	}
	verify.Value(
		t, source, "vapor pressure, wick of supercooled water at −10 °C, air −8 °C", "Pa",
		286.27-6.60e-4*(1-0.0115)*101325*2, float64(wet.Air.VaporPressure()), 0.5,
	)
	verify.Value(
		t, source, "vapor pressure, iced wick at −10 °C, air −8 °C", "Pa", 259.7-5.82e-4*101325*2,
		float64(iced.Air.VaporPressure()), 0.5,
	)
}

func TestPsychrometerRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAir(t, psychro.PerfectGas)
		for _, ps := range []psychro.Psychrometer{psychro.Sling(), psychro.Aspirated()} {
			shown, err := ps.WetBulbIn(a)
			if err != nil {
				t.Fatal(err)
			}
			m, err := ps.Measure(psychro.Reading{
				DryBulb:  quantity.Uncertain[quantity.Temperature]{Value: a.DryBulb(), Std: 0.2},
				WetBulb:  quantity.Uncertain[quantity.Temperature]{Value: shown, Std: 0.2},
				Pressure: quantity.Uncertain[quantity.Pressure]{Value: a.Pressure(), Std: 500},
			})
			if err != nil {
				refused(t, err)
				if a.HumidityRatio() > 1e-6 && shown > quantity.Celsius(-90) {
					t.Fatalf("%v shows %v: %v", a, shown, err)
				}
				continue
			}
			if math.Abs(shown.Celsius()) > 1e-6 {
				near(
					t, "humidity ratio", m.Air.HumidityRatio(), a.HumidityRatio(),
					1e-8*a.HumidityRatio()+1e-12,
				)
			}
			for _, std := range []float64{m.WetBulb.Std, m.DewPoint.Std, m.RelativeHumidity.Std,
				m.HumidityRatio.Std, m.Enthalpy.Std, m.SpecificVolume.Std} {
				if !(std >= 0) || math.IsInf(std, 0) {
					t.Fatalf("uncertainty %v of %+v", std, m)
				}
			}
		}
	})
}

func TestSaturatedWithinTheThermometers(t *testing.T) {
	r := psychro.Reading{DryBulb: celsius(10, 0.2), WetBulb: celsius(10.4, 0.2), Pressure: seaLevel}
	m, err := psychro.Sling().Measure(r)
	if err != nil || !m.Saturated || m.Air.RelativeHumidity() < 1-1e-9 ||
		math.Abs(m.Air.DryBulb().Celsius()-10.2) > 1e-9 {
		t.Errorf("%+v, %v", m, err)
	}
	r.WetBulb.Value = quantity.Celsius(10.7)
	var re *psychro.RangeError
	if _, err := psychro.Sling().Measure(r); !errors.As(err, &re) {
		t.Errorf("0.7 K above: %v", err)
	}
	r = psychro.Reading{DryBulb: celsius(10, 0), WetBulb: celsius(10.001, 0), Pressure: seaLevel}
	if _, err := psychro.Sling().Measure(r); !errors.As(err, &re) {
		t.Errorf("without stated uncertainty: %v", err)
	}
}

func codes(d []psychro.Doubt) (c []psychro.DoubtCode) {
	for _, x := range d {
		c = append(c, x.Code)
		for _, f := range []fact.Fact{x.Says(), x.Mend()} {
			if _, ok := words.Shapes(language.English)[string(f.Code)]; !ok {
				panic("a doubt without words: " + string(f.Code))
			}
		}
	}
	return c
}

func TestDoubts(t *testing.T) {
	sling := psychro.Sling()
	reading := func(dry, wet float64) psychro.Reading {
		return psychro.Reading{
			DryBulb:  celsius(dry, 0.3),
			WetBulb:  celsius(wet, 0.3),
			Pressure: seaLevel,
		}
	}
	for _, c := range []struct {
		what string
		got  []psychro.Doubt
		want string
	}{
		{"sound", sling.Doubts(reading(25, 18)), "[]"},
		{"swapped", sling.Doubts(reading(18, 25)), "[wet-bulb-above-dry-bulb]"},
		{"equal", sling.Doubts(reading(20, 20.2)), "[wet-bulb-at-dry-bulb]"},
		{"too low", sling.Doubts(reading(25, 4)), "[wet-bulb-too-low]"},
		{"freezing", sling.Doubts(reading(4, 0.1)), "[wick-freezing]"},
		{"sound coil", sling.CoilDoubts(reading(25, 18), reading(14, 13), quantity.Celsius(6)),
			"[]"},
		{"dry coil", sling.CoilDoubts(reading(30, 15), reading(20, 11), quantity.Celsius(8)), "[]"},
		{"wick left on", sling.CoilDoubts(reading(25, 18), reading(13, 13), quantity.Celsius(6)),
			"[supply-reads-saturated]"},
		{"colder than coil", sling.CoilDoubts(reading(25, 18), reading(11, 9),
			quantity.Celsius(13)), "[supply-colder-than-coil]"},
		{"wetter", sling.CoilDoubts(reading(25, 14), reading(14, 13), 0),
			"[supply-wetter-than-return]"},
	} {
		if got := fmt.Sprint(codes(c.got)); got != c.want {
			t.Errorf("%s: %s, want %s", c.what, got, c.want)
		}
	}
}

func TestWickDoubts(t *testing.T) {
	series := func(dryEnd float64, wet ...float64) (s []psychro.WickSample) {
		for i, w := range wet {
			s = append(
				s,
				psychro.WickSample{
					At:      time.Duration(i) * 30 * time.Second,
					DryBulb: quantity.Celsius(25 + dryEnd*float64(i)/float64(len(wet)-1)),
					WetBulb: quantity.Celsius(w),
				},
			)
		}
		return s
	}
	for _, c := range []struct {
		what string
		got  []psychro.Doubt
		want string
	}{
		{"steady", psychro.WickDoubts(series(0, 18, 18.1, 17.9, 18, 18.1, 17.9)), "[]"},
		{"drying", psychro.WickDoubts(series(0, 18, 18.1, 18.4, 18.9, 19.6, 20.5)),
			"[wick-drying]"},
		{"settling", psychro.WickDoubts(series(0, 23, 21, 19.8, 19, 18.6, 18.4)),
			"[wick-settling]"},
		{"room warming", psychro.WickDoubts(series(3, 18, 18.5, 19, 19.5, 20, 20.5)), "[]"},
		{"too short", psychro.WickDoubts(series(0, 18, 20)), "[]"},
		{"one time", psychro.WickDoubts(make([]psychro.WickSample, 6)), "[]"},
	} {
		if got := fmt.Sprint(codes(c.got)); got != c.want {
			t.Errorf("%s: %s, want %s", c.what, got, c.want)
		}
	}
}

// The same air on three instruments: the less it is fanned, the more the wet
// thermometer stands above the thermodynamic wet bulb.
func ExampleInAirSpeed() {
	air, err := psychro.FromWetBulb(
		quantity.Celsius(27), quantity.Celsius(19), quantity.StandardAtmosphere,
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	still, err := psychro.InAirSpeed(0.5)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, ps := range []psychro.Psychrometer{psychro.Aspirated(), psychro.Sling(), still} {
		shown, err := ps.WetBulbIn(air)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf(
			"coefficient %.2e/K: the wet thermometer shows %.1f °C\n", ps.Coefficient,
			shown.Celsius(),
		)
	}
	// Output:
	// coefficient 6.53e-04/K: the wet thermometer shows 19.1 °C
	// coefficient 6.60e-04/K: the wet thermometer shows 19.1 °C
	// coefficient 7.85e-04/K: the wet thermometer shows 19.5 °C
}
