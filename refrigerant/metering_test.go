package refrigerant_test

import (
	"fmt"
	"testing"

	"github.com/satline/satline/refrigerant"
)

func ExampleMetering_Fixed() {
	fmt.Println(
		refrigerant.FixedRestrictor.Fixed(), refrigerant.Capillary.Fixed(), refrigerant.TXV.Fixed(),
	)
	// Output: true true false
}

func TestMeteringReadsTheNamesOfTheTrade(t *testing.T) {
	for text, want := range map[string]refrigerant.Metering{
		"piston": refrigerant.FixedRestrictor, "Short tube": refrigerant.FixedRestrictor,
		"fixed orifice": refrigerant.FixedRestrictor,
		"fixed":         refrigerant.FixedRestrictor,
		"capillary":     refrigerant.Capillary, "capillary tube": refrigerant.Capillary,
		"tev": refrigerant.TXV, "EEV": refrigerant.EXV,
	} {
		var m refrigerant.Metering
		if err := m.UnmarshalText([]byte(text)); err != nil || m != want {
			t.Errorf("%q reads as %v, %v", text, m, err)
		}
	}
	var m refrigerant.Metering
	if err := m.UnmarshalText([]byte("sponge")); err == nil {
		t.Error("a sponge meters")
	}
}
