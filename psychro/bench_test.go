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
		sink += float64(a.DryBulb()) + float64(a.Pressure()) + a.HumidityRatio() + float64(a.WetBulb()) +
			float64(a.DewPoint()) + a.RelativeHumidity() + a.DegreeOfSaturation() + float64(a.VaporPressure()) +
			float64(a.Enthalpy()) + float64(a.SpecificVolume()) + float64(a.Density())
	}
}
