package psychro_test

import (
	"errors"
	"math"
	"testing"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// conserved checks the two balances of a process to rounding: the enthalpies
// are sums of terms up to |h|, so 1e-12 of those is let off.
func conserved(t *rapid.T, c psychro.Process) {
	t.Helper()
	near(
		t, "water", c.Start.HumidityRatio()+c.Water, c.End.HumidityRatio(),
		1e-14*(1+c.Start.HumidityRatio()),
	)
	carried := c.Water * float64(c.WaterEnthalpy)
	scale := math.Abs(float64(c.Start.Enthalpy())) + math.Abs(float64(c.End.Enthalpy())) +
		math.Abs(carried) + 1e5
	near(
		t, "energy", float64(c.Start.Enthalpy()+c.Heat)+carried, float64(c.End.Enthalpy()),
		1e-12*scale,
	)
	possible(t, c.End)
}

// possible checks that an air is one that a constructor would let through.
func possible(t *rapid.T, a psychro.Air) {
	t.Helper()
	if _, err := a.Model().FromHumidityRatio(a.DryBulb(), a.HumidityRatio(),
		a.Pressure()); err != nil {
		t.Fatalf("no air: %v", err)
	}
}

// refused accepts an error only where it is a *RangeError with advice.
func refused(t *rapid.T, err error) {
	t.Helper()
	var re *psychro.RangeError
	if !errors.As(err, &re) || re.Advice == "" {
		t.Fatalf("error %v is no *RangeError with advice", err)
	}
}

func testSensible(t *testing.T, m psychro.Model) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAir(t, m)
		to := rapid.Float64Range(-100, 200).Draw(t, "to °C")
		if c, err := psychro.SensibleHeatCool(a, quantity.Celsius(to)); err == nil {
			conserved(t, c)
			if c.Water != 0 {
				t.Fatalf("sensible, and %v of water", c.Water)
			}
			near(t, "dry bulb", c.End.DryBulb().Celsius(), to, 1e-9)
			if c.End.DryBulb() > a.DryBulb() != (c.Heat > 0) {
				t.Fatalf("%v of heat from %v to %v", c.Heat, a.DryBulb(), c.End.DryBulb())
			}
			again, err := psychro.AddHeat(a, c.Heat)
			if err != nil {
				t.Fatal(err)
			}
			conserved(t, again)
			near(t, "dry bulb again", float64(again.End.DryBulb()), float64(c.End.DryBulb()), 1e-8)
		} else {
			refused(t, err)
		}
	})
}

func testCoil(t *testing.T, m psychro.Model) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAir(t, m)
		adp := a.DryBulb() - quantity.Temperature(
			rapid.Float64Range(0, 40).Draw(t, "below dry bulb"),
		)
		bypass := rapid.Float64Range(0, 1).Draw(t, "bypass")
		c, err := psychro.CoolAndDehumidify(a, adp, bypass)
		if err != nil {
			refused(t, err)
			return
		}
		conserved(t, c)
		if c.Heat > 1e-6 || c.Water > 1e-15 {
			t.Fatalf("a cold coil gave %v of heat and %v of water", c.Heat, c.Water)
		}
		if c.Water > -1e-6 {
			return
		}
		s, b, err := psychro.ApparatusDewPoint(c.Start, c.End)
		if err != nil {
			t.Fatal(err)
		}
		// Where the line of the coil meets the curve twice, the warmer meeting is
		// the one that the air comes to first.
		if s < adp-1e-6 {
			t.Fatalf("apparatus dew point %v, made with %v", s, adp)
		}
		if c.End.RelativeHumidity() < 0.999 && bypass > 0.01 && s < adp+1e-3 {
			near(t, "bypass", b, bypass, 1e-4)
		}
	})
}

func testMix(t *testing.T, m psychro.Model) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAir(t, m)
		w := rapid.Float64Range(0, 1).Draw(t, "rh of b")
		b, err := m.FromRelativeHumidity(drawDryBulb.Draw(t, "b"), w, a.Pressure())
		if err != nil {
			t.Skip()
		}
		x := rapid.Float64Range(0, 1).Draw(t, "share")
		mixed, err := psychro.Mix(
			psychro.Stream{Air: a, DryAir: quantity.MassFlow(x)},
			psychro.Stream{Air: b, DryAir: quantity.MassFlow(1 - x)},
		)
		if err != nil {
			t.Fatal(err)
		}
		possible(t, mixed.Air)
		water := x*a.HumidityRatio() + (1-x)*b.HumidityRatio()
		near(t, "water", mixed.Air.HumidityRatio()+mixed.Fog, water, 1e-14*(1+water))
		ha, hb := x*float64(a.Enthalpy()), (1-x)*float64(b.Enthalpy())
		near(
			t, "energy", float64(mixed.Air.Enthalpy())+mixed.Fog*float64(mixed.FogEnthalpy), ha+hb,
			1e-12*(math.Abs(ha)+math.Abs(hb)+1e6),
		)
		// Real gases of one temperature change it as they mix: room air by
		// microkelvins, dry air and steam of 90 °C by tenths of a kelvin.
		slack := quantity.Temperature(1e-9)
		if m == psychro.RealGas {
			slack = 1
		}
		if low, high := min(a.DryBulb(), b.DryBulb()),
			max(a.DryBulb(), b.DryBulb()); mixed.Fog == 0 &&
			(mixed.Air.DryBulb() < low-slack || mixed.Air.DryBulb() > high+slack) {
			t.Fatalf("mixed of %v and %v is at %v", low, high, mixed.Air.DryBulb())
		}
	})
}

func testHumidify(t *testing.T, m psychro.Model) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAir(t, m)
		e := rapid.Float64Range(0, 1).Draw(t, "effectiveness")
		if c, err := psychro.HumidifyAdiabatic(a, e); err == nil {
			conserved(t, c)
			if c.Heat != 0 || c.Water < 0 {
				t.Fatalf("%v of heat, %v of water", c.Heat, c.Water)
			}
			near(t, "wet bulb", float64(c.End.WetBulb()), float64(a.WetBulb()), 1e-8)
		} else {
			refused(t, err)
		}
		w := rapid.Float64Range(0, 0.05).Draw(t, "water")
		h := quantity.KilojoulesPerKilogram(rapid.Float64Range(0, 2800).Draw(t, "kJ/kg"))
		if c, err := psychro.AddWater(a, w, h); err == nil {
			conserved(t, c)
			if c.Heat != 0 || c.Water != w {
				t.Fatalf("%v of heat, %v of water", c.Heat, c.Water)
			}
		} else {
			refused(t, err)
		}
	})
}

func TestProcesses(t *testing.T) {
	eachModel(t, func(t *testing.T, m psychro.Model) {
		t.Run("sensible", func(t *testing.T) { testSensible(t, m) })
		t.Run("coil", func(t *testing.T) { testCoil(t, m) })
		t.Run("mix", func(t *testing.T) { testMix(t, m) })
		t.Run("humidify", func(t *testing.T) { testHumidify(t, m) })
	})
}

// Saturated streams of 30 °C and 0 °C make fog, for the saturation curve lies
// below the line between any two of its points.
func TestMixMakesFog(t *testing.T) {
	warm, err := psychro.Saturated(quantity.Celsius(30), quantity.StandardAtmosphere)
	if err != nil {
		t.Fatal(err)
	}
	cold, err := psychro.Saturated(quantity.Celsius(0), quantity.StandardAtmosphere)
	if err != nil {
		t.Fatal(err)
	}
	m, err := psychro.Mix(
		psychro.Stream{Air: warm, DryAir: 1}, psychro.Stream{Air: cold, DryAir: 1},
	)
	if err != nil {
		t.Fatal(err)
	}
	if m.Fog < 1e-3 || m.Air.RelativeHumidity() < 1-1e-9 ||
		m.Air.DryBulb() <= quantity.Celsius(15) {
		t.Errorf("%+v", m)
	}
}

func TestSupersaturatedAndMismatched(t *testing.T) {
	a, _ := psychro.Saturated(quantity.Celsius(20), quantity.StandardAtmosphere)
	b, _ := psychro.Saturated(quantity.Celsius(20), quantity.Kilopascals(80))
	var re *psychro.RangeError
	if _, err := psychro.Mix(psychro.Stream{Air: a, DryAir: 1},
		psychro.Stream{Air: b, DryAir: 1}); !errors.As(
		err, &re,
	) {
		t.Errorf("two pressures: %v", err)
	}
	if _, err := psychro.Mix(psychro.Stream{}); !errors.As(err, &re) {
		t.Errorf("zero Air: %v", err)
	}
	if _, err := psychro.Mix(); !errors.As(err, &re) {
		t.Errorf("no streams: %v", err)
	}
	if _, err := psychro.AddWater(a, 0.001, 0); !errors.As(err, &re) {
		t.Errorf("spray into saturated air: %v", err)
	}
	if _, err := psychro.SensibleHeatCool(a, quantity.Celsius(15)); !errors.As(err, &re) {
		t.Errorf("cooling saturated air: %v", err)
	}
	if _, _, err := psychro.ApparatusDewPoint(a, a); !errors.As(err, &re) {
		t.Errorf("dry coil: %v", err)
	}
	// The leaving air holds no water at all, and the range stated is one all the same.
	none, err := psychro.FromHumidityRatio(a.DryBulb(), 0, a.Pressure())
	if err != nil {
		t.Fatal(err)
	}
	if _, _, err := psychro.ApparatusDewPoint(a, none); !errors.As(err, &re) || re.Min == nil ||
		re.Max != nil {
		t.Errorf("perfectly dry air left a coil: %v", err)
	}
}
