package psychro_test

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

func TestPerfectGasReference(t *testing.T) {
	source := verify.Source{
		Cite: "ASHRAE Handbook Fundamentals ch. 1, computed by psychrolib 1.1.1; worst of 217 " +
			"states",
		Kind: verify.Computed,
	}
	var w, h, v, rh, dew worst
	for _, row := range readTable(t, "testdata/perfect-gas.csv") {
		a, err := psychro.FromWetBulb(
			quantity.Celsius(row["dryBulb_C"]), quantity.Celsius(row["wetBulb_C"]),
			quantity.Pascals(row["pressure_Pa"]),
		)
		if err != nil {
			t.Errorf("%v: %v", row, err)
			continue
		}
		relative := func(g *worst, name string, computed float64) {
			g.see(computed/row[name]-1, row[name], computed)
		}
		relative(&w, "humidityRatio", a.HumidityRatio())
		relative(&h, "enthalpy_J_per_kg_dry_air", float64(a.Enthalpy()))
		relative(&v, "specificVolume_m3_per_kg_dry_air", float64(a.SpecificVolume()))
		relative(&rh, "relativeHumidity", a.RelativeHumidity())
		d := a.DewPoint().Celsius()
		dew.see(d-row["dewPoint_C"], row["dewPoint_C"], d)
		if b := a.WetBulb().Celsius(); math.Abs(b-row["wetBulb_C"]) > 1e-9 {
			t.Errorf("%v: wet bulb back from the humidity ratio is %v", row, b)
		}
		if a.WetBulbIced() != (row["wetBulb_C"] < 0) {
			t.Errorf("%v: iced %v", row, a.WetBulbIced())
		}
	}
	verify.Relative(
		t, source, "humidity ratio from wet bulb", "kg/kg", w.reference, w.computed, 1e-6,
	)
	verify.Relative(t, source, "enthalpy", "J/kg dry air", h.reference, h.computed, 1e-6)
	verify.Relative(t, source, "specific volume", "m³/kg dry air", v.reference, v.computed, 1e-6)
	verify.Relative(t, source, "relative humidity", "1", rh.reference, rh.computed, 1e-6)
	verify.Value(t, source, "dew point", "°C", dew.reference, dew.computed, 1e-3)
	t.Logf(
		"w %.2g, h %.2g, v %.2g, rh %.2g, dew %.2g K", w.deviation, h.deviation, v.deviation,
		rh.deviation, dew.deviation,
	)
}
