package satline

import (
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

func says(o Outlook, code fact.Code) bool {
	for _, f := range o.Says {
		if f.Code == code {
			return true
		}
	}
	return false
}

// A heat pump gives less in the cold, at a smaller COP; and a house that loses more than that
// wants auxiliary heat, from a balance point between the two.
func TestForecastOfHeating(t *testing.T) {
	v := load(t, "heating-sound-47")
	out, err := Forecast(
		v, Scenario{Name: "as it is"},
		Scenario{
			Name: "a cold night", OutdoorDryBulb: quantity.Fahrenheit(17),
			Load: quantity.BtuPerHour(33000),
		},
	)
	if err != nil {
		t.Fatal(err)
	}
	now, cold := out[0], out[1]
	if d := float64(now.Condensing.Value.Sub(assess(t,
		v).Derived.CondensingBubble.Value)); math.Abs(
		d,
	) > 3 {
		t.Errorf("condensing %v foretold for now, %.1f K off", now.Condensing, d)
	}
	ratio := float64(cold.Capacity.Value / now.Capacity.Value)
	// AHRI 210/240 heat pumps give 0.55 to 0.75 of H1 at H3, from memory.
	if ratio < 0.5 || ratio > 0.8 || cold.COP.Value >= now.COP.Value || cold.COP.Value < 1.5 {
		t.Errorf("%.2f of the capacity, COP %.1f after %.1f", ratio, cold.COP.Value, now.COP.Value)
	}
	if !says(cold, "forecast.heating-short") || !says(cold, "forecast.heating-balance") {
		t.Errorf("no word of the house: %v", cold.Says)
	}
}

// Readings that contradict each other are no ground for a forecast, and it is said so.
func TestForecastOfContradiction(t *testing.T) {
	v := caseOfName(t, "heating-outdoors-in-celsius")
	out, err := Forecast(v, Scenario{OutdoorDryBulb: quantity.Fahrenheit(17)})
	if err != nil {
		t.Fatal(err)
	}
	if first := out[0].Believe[0]; first.Code != "forecast.do-not-build" {
		t.Errorf("%v", first)
	}
}

// A machine that may run slowly is foretold at full speed, and it is said so.
func TestForecastOfSlowHeating(t *testing.T) {
	out, err := Forecast(
		load(t, "heating-inverter-slow"), Scenario{OutdoorDryBulb: quantity.Fahrenheit(17)},
	)
	if err != nil {
		t.Fatal(err)
	}
	if len(out[0].Believe) != 1 || out[0].Believe[0].Code != "forecast.full-speed" {
		t.Errorf("believed: %v", out[0].Believe)
	}
	if c := out[0].Capacity; !(c.Std > 0.08*float64(c.Value)) {
		t.Errorf("of an unknown machine it is too sure: %v", c)
	}
}

// What would be answered by leaving it out is refused.
func TestForecastOfOtherModesRefuses(t *testing.T) {
	for _, s := range []Scenario{
		{Added: quantity.Ounces(8)}, {HeadPressure: quantity.Fahrenheit(95)},
	} {
		for _, name := range []string{"heating-sound-47", "cold-walk-in-sound"} {
			var problem *VisitError
			if _, err := Forecast(load(t, name), s); !errors.As(err, &problem) ||
				problem.Field != "scenario 1" {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	box := Scenario{ReturnDryBulb: quantity.Fahrenheit(75)}
	if _, err := Forecast(load(t, "cold-walk-in-sound"), box); err == nil {
		t.Error("a cold room of 75 °F is foretold")
	}
}

// Every heating and cold-room visit is foretold, or refused with what it lacks.
func TestForecastOfEveryMode(t *testing.T) {
	for _, glob := range []string{"heating-*", "cold-*"} {
		paths, err := filepath.Glob("testdata/visits/" + glob + ".json")
		if err != nil || len(paths) == 0 {
			t.Fatal(err, paths)
		}
		for _, path := range paths {
			name := strings.TrimSuffix(filepath.Base(path), ".json")
			out, err := Forecast(load(t, name), Scenario{OutdoorDryBulb: quantity.Fahrenheit(50)})
			var refused *VisitError
			if err != nil && !errors.As(err, &refused) {
				t.Errorf("%s: %v", name, err)
				continue
			}
			for _, o := range out {
				for _, x := range []float64{
					float64(o.Condensing.Value), o.Condensing.Std, float64(o.Capacity.Value),
					o.Superheat.Std,
				} {
					if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
						t.Errorf("%s: %+v", name, o)
					}
				}
				if len(o.Says) == 0 || len(o.Believe) == 0 {
					t.Errorf("%s says nothing", name)
				}
			}
		}
	}
}

// A hot day raises the head and takes capacity; a load beyond it warms the box.
func TestForecastOfAColdRoom(t *testing.T) {
	v := load(t, "cold-walk-in-sound")
	v.Equipment.NominalCapacity = quantity.BtuPerHour(9000)
	hot := Scenario{OutdoorDryBulb: quantity.Fahrenheit(110)}
	little, much := hot, hot
	little.Load, much.Load = quantity.BtuPerHour(4000), quantity.BtuPerHour(8000)
	out, err := Forecast(v, Scenario{}, hot, little, much)
	if err != nil {
		t.Fatal(err)
	}
	now, there := out[0], out[1]
	if there.Condensing.Value.Sub(now.Condensing.Value) < quantity.FahrenheitDelta(10) ||
		there.Capacity.Value >= now.Capacity.Value {
		t.Errorf("%v, %v on a hot day after %v, %v",
			there.Condensing, there.Capacity, now.Condensing, now.Capacity)
	}
	if !says(out[2], "forecast.cold-carries") || !says(out[3], "forecast.cold-short") ||
		out[3].Box.Value <= out[2].Box.Value {
		t.Errorf("%v\n%v", out[2].Says, out[3].Says)
	}
}

// What will this heat pump do at 17 °F, in a house that loses 33,000 Btu/h then?
func ExampleForecast_heating() {
	f := quantity.Fahrenheit
	measured := func(t float64) Reading[quantity.Temperature] {
		return ReadingOf(f(t).PlusMinus(quantity.FahrenheitDelta(1)))
	}
	gauge := func(p float64) Reading[quantity.GaugePressure] {
		return ReadingOf(quantity.PSIG(p).PlusMinus(quantity.PSIG(1)))
	}
	v := Visit{
		Equipment: Equipment{
			Refrigerant: "R-410A", NominalCapacity: quantity.Tons(3), Metering: refrigerant.TXV,
		},
		Readings: Readings{
			SuctionPressure: gauge(107), LiquidPressure: gauge(345),
			SuctionLine: measured(42), LiquidLine: measured(97), OutdoorDryBulb: measured(47),
			ReturnDryBulb: measured(70), SupplyDryBulb: measured(100),
		},
	}
	v.Conditions.Mode = Heating
	out, err := Forecast(v, Scenario{
		OutdoorDryBulb: f(17), Load: quantity.BtuPerHour(33000),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, x := range out[0].Says {
		fmt.Println(x.Text)
	}
	// Output:
	// It gives 26500 Btu/h ± 1500 Btu/h at a COP of 2.8, supply air 90.3 °F ± 1.4 °F.
	// Condensing 97.5 °F ± 1.3 °F, evaporating 8.2 °F ± 1.4 °F, discharge line 186 °F ± 11 °F.
	// The outdoor coil frosts there: defrosts take some of that.
	// The house loses 33000 Btu/h: auxiliary heat has to give 6500 Btu/h.
	// Balance point about 23.0 °F: auxiliary heat belongs on below it, not above.
}
