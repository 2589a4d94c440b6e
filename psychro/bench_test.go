package psychro_test

import (
	"testing"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// The arguments vary so that no branch and no cache line is learned by heart.
func dryBulbs() (t [64]quantity.Temperature) {
	for i := range t {
		t[i] = quantity.Celsius(14 + float64(i*37%64)/2)
	}
	return t
}

var sink float64

func BenchmarkHumidityRatioFromWetBulb(b *testing.B) {
	t, p := dryBulbs(), quantity.Kilopascals(84.3)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		a, _ := psychro.FromWetBulb(t[i&63], t[i&63]-6, p)
		sink += a.HumidityRatio()
	}
}

func BenchmarkWetBulbFromHumidityRatio(b *testing.B) {
	t, p := dryBulbs(), quantity.Kilopascals(84.3)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		a, _ := psychro.FromHumidityRatio(t[i&63], 0.007, p)
		sink += float64(a.WetBulb())
	}
}

func BenchmarkDewPoint(b *testing.B) {
	t, p := dryBulbs(), quantity.Kilopascals(84.3)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		a, _ := psychro.FromWetBulb(t[i&63], t[i&63]-6, p)
		sink += float64(a.DewPoint())
	}
}

func BenchmarkFullStateFromWetBulb(b *testing.B) {
	t, p := dryBulbs(), quantity.Kilopascals(84.3)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		a, _ := psychro.FromWetBulb(t[i&63], t[i&63]-6, p)
		sink += float64(a.DryBulb()) + float64(a.Pressure()) + a.HumidityRatio() +
			float64(a.WetBulb()) +
			float64(a.DewPoint()) + a.RelativeHumidity() + a.DegreeOfSaturation() +
			float64(a.VaporPressure()) +
			float64(a.Enthalpy()) + float64(a.SpecificVolume()) + float64(a.Density())
	}
}

func BenchmarkRealGasFromWetBulb(b *testing.B) {
	t, p := dryBulbs(), quantity.Kilopascals(84.3)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		a, _ := psychro.RealGas.FromWetBulb(t[i&63], t[i&63]-6, p)
		sink += a.HumidityRatio()
	}
}

func BenchmarkRealGasWetBulb(b *testing.B) {
	t, p := dryBulbs(), quantity.Kilopascals(84.3)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		a, _ := psychro.RealGas.FromHumidityRatio(t[i&63], 0.007, p)
		sink += float64(a.WetBulb())
	}
}

func BenchmarkRealGasFullStateFromWetBulb(b *testing.B) {
	t, p := dryBulbs(), quantity.Kilopascals(84.3)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		a, _ := psychro.RealGas.FromWetBulb(t[i&63], t[i&63]-6, p)
		sink += a.HumidityRatio() + float64(a.WetBulb()) + float64(a.DewPoint()) +
			a.RelativeHumidity() +
			a.DegreeOfSaturation() + float64(a.Enthalpy()) + float64(a.SpecificVolume()) +
			float64(a.Density())
	}
}

func BenchmarkCoolAndDehumidify(b *testing.B) {
	a, _ := psychro.FromRelativeHumidity(quantity.Celsius(27), 0.5, quantity.Kilopascals(84.3))
	b.ReportAllocs()
	for b.Loop() {
		c, _ := psychro.CoolAndDehumidify(a, quantity.Celsius(9), 0.12)
		sink += c.Water
	}
}

func BenchmarkMix(b *testing.B) {
	a, _ := psychro.FromRelativeHumidity(quantity.Celsius(27), 0.5, quantity.Kilopascals(84.3))
	c, _ := psychro.FromRelativeHumidity(quantity.Celsius(4), 0.8, quantity.Kilopascals(84.3))
	b.ReportAllocs()
	for b.Loop() {
		m, _ := psychro.Mix(psychro.Stream{Air: a, DryAir: 1}, psychro.Stream{Air: c, DryAir: 0.2})
		sink += m.Air.HumidityRatio()
	}
}

func BenchmarkMeasure(b *testing.B) {
	ps := psychro.Sling()
	r := psychro.Reading{DryBulb: celsius(25, 0.3), WetBulb: celsius(18, 0.3), Pressure: seaLevel}
	b.ReportAllocs()
	for b.Loop() {
		m, _ := ps.Measure(r)
		sink += m.RelativeHumidity.Std
	}
}

// What a loop over thousands of readings calls takes no memory.
func TestNoAllocation(t *testing.T) {
	p := quantity.Kilopascals(84.3)
	for _, m := range models {
		a, err := m.FromWetBulb(quantity.Celsius(27), quantity.Celsius(19), p)
		if err != nil {
			t.Fatal(err)
		}
		for name, f := range map[string]func(){
			"from wet bulb": func() {
				b, _ := m.FromWetBulb(300, 292, p)
				sink += b.HumidityRatio()
			},
			"from wet bulb and relative humidity": func() {
				b, _ := m.FromWetBulbAndRelativeHumidity(292, 0.5, p)
				sink += b.HumidityRatio()
			},
			"from enthalpy and relative humidity": func() {
				b, _ := m.FromEnthalpyAndRelativeHumidity(6e4, 0.5, p)
				sink += b.HumidityRatio()
			},
			"wet bulb":  func() { sink += float64(a.WetBulb()) },
			"dew point": func() { sink += float64(a.DewPoint()) },
			"coil": func() {
				c, _ := psychro.CoolAndDehumidify(a, 283, 0.1)
				sink += c.Water
			},
			"mix": func() {
				x, _ := psychro.Mix(psychro.Stream{Air: a, DryAir: 1},
					psychro.Stream{Air: a, DryAir: 2})
				sink += x.Fog
			},
		} {
			if n := testing.AllocsPerRun(20, f); n != 0 {
				t.Errorf("%v, %s: %v allocations", m, name, n)
			}
		}
	}
}
