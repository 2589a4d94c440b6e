package satline

import (
	"math"
	"slices"
	"testing"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/refrigerant/cycle"
)

// What a forecast cannot tell it does not call likely, and the narrow ones answer.
func TestForecastSaysWhatIsTooWide(t *testing.T) {
	wide := map[fact.Code]int{}
	for _, name := range []string{
		"sound-r410a-piston", "sound-r22-piston", "coil-iced-unexplained", "outdoor-coil-dirty",
	} {
		out, err := Forecast(load(t, name), Scenario{Name: "now"}, CoolNight())
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range out {
			for _, c := range []struct {
				code fact.Code
				std  float64
				none fact.Code
			}{
				{"forecast.superheat-too-wide", o.Superheat.Std, "forecast.liquid"},
				{"forecast.ice-too-wide", o.CoilSurface.Std, "forecast.ice-likely"},
			} {
				says := func(code fact.Code) bool {
					return slices.ContainsFunc(
						o.Says, func(f fact.Fact) bool { return f.Code == code },
					)
				}
				if c.std >= 9/1.8 && !says(c.code) || says(c.code) && says(c.none) {
					t.Errorf("%s, %s: ± %.1f K says %v", name, o.Scenario.Name, c.std, o.Says)
				}
				if says(c.code) {
					wide[c.code]++
				}
			}
		}
	}
	if wide["forecast.superheat-too-wide"] == 0 {
		t.Error("nothing tries a forecast that is too wide")
	}
}

// By the charging table of a fixed restrictor (see charge.SuperheatTarget for its source)
// a machine in charge reads more superheat the milder it is outdoors and the more
// humid it is indoors. So does the model, over the range of the table.
func TestModelTrendsAsTheTable(t *testing.T) {
	fluid, err := refrigerant.Lookup("R-410A")
	if err != nil {
		t.Fatal(err)
	}
	system, err := cycle.Design(cycle.Spec{
		Refrigerant: fluid, Capacity: quantity.Tons(3), Metering: refrigerant.FixedRestrictor,
	})
	if err != nil {
		t.Fatal(err)
	}
	reads := func(wet, outdoor float64) float64 {
		op, err := system.Solve(cycle.Conditions{
			OutdoorDryBulb: quantity.Fahrenheit(outdoor),
			ReturnDryBulb:  quantity.Fahrenheit(wet + 12), ReturnWetBulb: quantity.Fahrenheit(wet),
		}, cycle.Faults{})
		if err != nil {
			t.Fatal(wet, outdoor, err)
		}
		return op.Superheat.Fahrenheit()
	}
	n, off, modelPer, tablePer := 0.0, 0.0, 0.0, 0.0
	for wet := 54.0; wet <= 76; wet += 2 {
		before, tableBefore, has := 0.0, 0.0, false
		for outdoor := 60.0; outdoor <= 110; outdoor += 10 {
			model := reads(wet, outdoor)
			target, err := charge.SuperheatTarget(
				nil,
				quantity.Fahrenheit(wet).
					PlusMinus(0.3),
				quantity.Fahrenheit(outdoor).PlusMinus(0.3),
			)
			if err != nil {
				break // the table has no figure on so hot a day
			}
			table := target.Value.Value.Fahrenheit()
			if has {
				if model > before+0.5 {
					t.Errorf(
						"wet bulb %.0f °F: %.1f °F of superheat at %.0f °F outdoors, %.1f °F "+
							"ten degrees cooler",
						wet, model, outdoor, before,
					)
				}
				modelPer, tablePer = modelPer+before-model, tablePer+tableBefore-table
			}
			if wet > 54 && outdoor >= 80 {
				if drier := reads(wet-2, outdoor); drier > model+0.5 {
					t.Errorf(
						"outdoors %.0f °F: %.1f °F of superheat at a wet bulb of %.0f °F, %.1f "+
							"°F two degrees drier",
						outdoor, model, wet, drier,
					)
				}
			}
			before, tableBefore, has = model, table, true
			n, off = n+1, off+(model-table)*(model-table)
		}
	}
	t.Logf(
		"%.0f cells, %.1f °F apart in the mean square; as it cools outdoors the model gains "+
			"%.2f of what the table does",
		n, math.Sqrt(off/n), modelPer/tablePer,
	)
}
