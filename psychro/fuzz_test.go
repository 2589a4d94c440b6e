package psychro_test

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// FuzzConstructors gives every constructor any numbers whatever. Each returns air
// whose properties are all finite and in order, or a *RangeError; none panics and
// none runs without end.
func FuzzConstructors(f *testing.F) {
	for _, seed := range [][3]float64{
		{295, 290, 101325}, {273.15, 273.15, 84e3}, {273.16, 273.159, 60e3}, {363, 350, 50e3},
		{213.15, 0, 110e3}, {1e4, 0.007, 70e3}, {0.5, 0.5, 101325}, {math.NaN(), math.Inf(1), -1},
		{473.15, 59, 20e3}, {173.15, 173.15, 200e3}, {273.15, 173.14999999999998, 84082},
		{5e4, 1e-9, 101325}, {-1e5, 0, 101325}, {293.15, 1, 101325}, {303.15, 0.02, 101325},
		{2.6e6, 1, 101325},
	} {
		f.Add(seed[0], seed[1], seed[2])
	}
	f.Fuzz(func(t *testing.T, x, y, pa float64) {
		p := quantity.Pressure(pa)
		tx, ty := quantity.Temperature(x), quantity.Temperature(y)
		hx, hy := quantity.SpecificEnthalpy(x), quantity.SpecificEnthalpy(y)
		for _, m := range models {
			for i, made := range []func() (psychro.Air, error){
				func() (psychro.Air, error) { return m.FromWetBulb(tx, ty, p) },
				func() (psychro.Air, error) { return m.FromDewPoint(tx, ty, p) },
				func() (psychro.Air, error) { return m.FromRelativeHumidity(tx, y, p) },
				func() (psychro.Air, error) { return m.FromHumidityRatio(tx, y, p) },
				func() (psychro.Air, error) { return m.FromEnthalpy(tx, hy, p) },
				func() (psychro.Air, error) { return m.FromWetBulbAndDewPoint(tx, ty, p) },
				func() (psychro.Air, error) { return m.FromWetBulbAndRelativeHumidity(tx, y, p) },
				func() (psychro.Air, error) { return m.FromWetBulbAndHumidityRatio(tx, y, p) },
				func() (psychro.Air, error) { return m.FromDewPointAndRelativeHumidity(tx, y, p) },
				func() (psychro.Air, error) { return m.FromDewPointAndEnthalpy(tx, hy, p) },
				func() (psychro.Air, error) {
					return m.FromHumidityRatioAndRelativeHumidity(x, y, p)
				},
				func() (psychro.Air, error) { return m.FromEnthalpyAndHumidityRatio(hx, y, p) },
				func() (psychro.Air, error) { return m.FromEnthalpyAndRelativeHumidity(hx, y, p) },
			} {
				a, err := made()
				if err != nil {
					var re *psychro.RangeError
					if !errors.As(err, &re) || re.Advice == "" || a.IsValid() {
						t.Fatalf("%v, constructor %d, (%v, %v, %v): %v", m, i, x, y, pa, err)
					}
					_ = err.Error()
					continue
				}
				sound(t, a)
			}
		}
	})
}

// sound checks the properties of an air whatever it was made from.
func sound(t *testing.T, a psychro.Air) {
	t.Helper()
	for _, v := range []float64{
		float64(a.DryBulb()), float64(a.WetBulb()), float64(a.DewPoint()), float64(a.Pressure()),
		a.HumidityRatio(), a.RelativeHumidity(), a.DegreeOfSaturation(), float64(a.VaporPressure()),
		float64(a.Enthalpy()), float64(a.EnthalpyIP()), float64(a.SpecificVolume()),
		float64(a.Density()),
	} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Fatalf("%+v has the property %v", a, v)
		}
	}
	if a.WetBulb() > a.DryBulb() || a.DewPoint() > a.WetBulb()+1e-6 || a.RelativeHumidity() < 0 ||
		a.RelativeHumidity() > 1 ||
		a.VaporPressure() >= a.Pressure() ||
		a.Density() <= 0 {
		t.Fatalf(
			"%+v: dry bulb %v, wet bulb %v, dew point %v, relative humidity %v", a, a.DryBulb(),
			a.WetBulb(), a.DewPoint(), a.RelativeHumidity(),
		)
	}
	if b, ok := a.IcedWetBulb(); ok && !(b <= a.DryBulb() && b > 0) {
		t.Fatalf("%+v: iced wet bulb %v", a, b)
	}
}

// What an error gives as the lowest wet bulb is one that has air, and what is
// refused lies below it.
func TestLowestWetBulb(t *testing.T) {
	eachModel(t, func(t *testing.T, m psychro.Model) {
		for dry := -20.0; dry <= 80; dry += 1.7 {
			for depression := 0.5; depression < 60; depression += 0.3 {
				db, p := quantity.Celsius(dry), quantity.Kilopascals(90)
				wet := db - quantity.Temperature(depression)
				_, err := m.FromWetBulb(db, wet, p)
				var re *psychro.RangeError
				if !errors.As(err, &re) || re.Quantity != "wet bulb" || re.Max == nil {
					continue
				}
				lowest, ok := re.Min.(quantity.Temperature)
				if !ok || wet >= lowest {
					t.Fatalf("%v, %v: %v", db, wet, err)
				}
				a, err := m.FromWetBulb(db, lowest+1e-6, p)
				if err != nil || a.HumidityRatio() > 1e-6 {
					t.Fatalf("%v, lowest %v: %v, %v", db, lowest, a, err)
				}
			}
		}
	})
}

func TestZeroAir(t *testing.T) {
	var a psychro.Air
	if a.IsValid() {
		t.Error("the zero Air is valid")
	}
	for _, v := range []float64{
		float64(a.DryBulb()), float64(a.WetBulb()), float64(a.DewPoint()), float64(a.Pressure()),
		a.HumidityRatio(), a.RelativeHumidity(), a.DegreeOfSaturation(), float64(a.VaporPressure()),
		float64(a.Enthalpy()), float64(a.EnthalpyIP()), float64(a.SpecificVolume()),
		float64(a.Density()), float64(a.DryAirFlow(1)),
	} {
		if v != 0 {
			t.Errorf("the zero Air has the property %v", v)
		}
	}
	if a.WetBulbIced() {
		t.Error("the zero Air has an iced wick")
	}
	var re *psychro.RangeError
	if _, err := psychro.Model(9).FromWetBulb(300, 290, 101325); !errors.As(err, &re) {
		t.Errorf("a model that is none: %v", err)
	}
	for i, err := range []error{
		second(psychro.SensibleHeatCool(a, 300)), second(psychro.AddHeat(a, 1)),
		second(psychro.AddWater(a, 0, 0)), second(psychro.HumidifyAdiabatic(a, 0.5)),
		second(psychro.CoolAndDehumidify(a, 280, 0.1)),
	} {
		if !errors.As(err, &re) {
			t.Errorf("process %d of the zero Air: %v", i, err)
		}
	}
}

func second(_ psychro.Process, err error) error { return err }

// FuzzMeasure reads a psychrometer with any numbers whatever.
func FuzzMeasure(f *testing.F) {
	f.Add(298.15, 0.3, 291.15, 0.3, 101325.0, 100.0, 1.0, uint8(0))
	f.Add(291.15, 0.3, 291.35, 0.3, 84e3, 0.0, 0.2, uint8(1))
	f.Add(263.15, 0.1, 262.15, 0.1, 101325.0, 0.0, 5.0, uint8(2))
	f.Add(math.NaN(), -1.0, math.Inf(1), 0.0, 0.0, math.NaN(), -1.0, uint8(9))
	f.Fuzz(func(t *testing.T, dry, dryStd, wet, wetStd, pa, paStd, speed float64, wick uint8) {
		instruments := []psychro.Psychrometer{psychro.Sling(), psychro.Aspirated(), {}}
		if ps, err := psychro.InAirSpeed(quantity.Velocity(speed)); err == nil {
			instruments = append(instruments, ps)
		}
		r := psychro.Reading{
			DryBulb: quantity.Uncertain[quantity.Temperature]{
				Value: quantity.Temperature(dry),
				Std:   dryStd,
			},
			WetBulb: quantity.Uncertain[quantity.Temperature]{
				Value: quantity.Temperature(wet),
				Std:   wetStd,
			},
			Pressure: quantity.Uncertain[quantity.Pressure]{
				Value: quantity.Pressure(pa),
				Std:   paStd,
			},
			Wick: psychro.Wick(wick),
		}
		for _, ps := range instruments {
			ps.Doubts(r)
			ps.CoilDoubts(r, r, quantity.Temperature(wet))
			m, err := ps.Measure(r)
			if err != nil {
				var re *psychro.RangeError
				if !errors.As(err, &re) || re.Advice == "" {
					t.Fatalf("%v", err)
				}
				continue
			}
			sound(t, m.Air)
			for _, v := range []float64{m.WetBulb.Std, m.DewPoint.Std, m.RelativeHumidity.Std,
				m.HumidityRatio.Std, m.Enthalpy.Std, m.SpecificVolume.Std, float64(m.Correction)} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%+v", m)
				}
			}
		}
	})
}
