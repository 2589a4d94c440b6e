package psychro

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"

	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// An Air written as JSON reads back equal, model and iced wick with it.
func TestAirJSON(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		model := rapid.SampledFrom([]Model{PerfectGas, PerfectGasIAPWS, RealGas}).Draw(t, "model")
		air, err := model.FromRelativeHumidity(
			quantity.Celsius(rapid.Float64Range(-60, 120).Draw(t, "dry bulb")),
			rapid.Float64Range(0, 1).Draw(t, "relative humidity"),
			quantity.Kilopascals(rapid.Float64Range(50, 110).Draw(t, "pressure")))
		if err != nil {
			t.Skip(err)
		}
		sameAsJSON(t, air)
	})
	for _, wet := range []float64{2.8, 7, 14} {
		air, err := FromWetBulb(
			quantity.Celsius(14), quantity.Celsius(wet), quantity.StandardAtmosphere,
		)
		if err != nil {
			t.Fatal(err)
		}
		sameAsJSON(t, air)
	}
	// Around 0 °C one air has two wet bulbs, and remembers which was read.
	for _, wet := range []float64{-0.3, 0.2} {
		air, err := FromWetBulb(
			quantity.Celsius(4), quantity.Celsius(wet), quantity.StandardAtmosphere,
		)
		if err != nil {
			t.Fatal(err)
		}
		sameAsJSON(t, air)
	}
	sameAsJSON(t, Air{})
}

func sameAsJSON(t interface{ Fatalf(string, ...any) }, air Air) {
	text, err := json.Marshal(air)
	if err != nil {
		t.Fatalf("%v: %v", air, err)
	}
	var back Air
	if err := json.Unmarshal(text, &back); err != nil || back != air {
		t.Fatalf("%s reads back as %+v, was %+v, %v", text, back, air, err)
	}
}

func TestAirJSONRefusesWhatIsNoAir(t *testing.T) {
	for _, text := range []string{
		`{"dryBulb": "20 °C", "humidityRatio": 0.5, "pressure": "101.325 kPa"}`,
		`{"dryBulb": "20 °C", "humidityRatio": 0.005}`, `{}`,
	} {
		var air Air
		err := json.Unmarshal([]byte(text), &air)
		var out *RangeError
		if !errors.As(err, &out) || air.IsValid() {
			t.Errorf("%s: %v, %v", text, air, err)
		}
	}
	var air Air
	bare := []byte(`{"dryBulb": 20, "humidityRatio": 0.005, "pressure": "101.325 kPa"}`)
	if err := json.Unmarshal(bare, &air); err == nil {
		t.Error("a number without its unit is taken")
	}
}

func ExampleAir_MarshalJSON() {
	air, err := FromRelativeHumidity(quantity.Celsius(25), 0.5, quantity.StandardAtmosphere)
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := json.Marshal(air)
	if err != nil {
		fmt.Println(err)
		return
	}
	var back Air
	err = json.Unmarshal(text, &back)
	fmt.Println(back, back == air, err)
	// Output:
	// 25.0 °C dry bulb, 17.9 °C wet bulb, 101.3 kPa true <nil>
}
