package coldroom_test

import (
	"testing"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func TestPublishedDifferences(t *testing.T) {
	source := verify.Source{
		Cite: "Hundy, Trott and Welch, Refrigeration and Air-Conditioning, 4th edition (2008), " +
			"page 135: guide to the difference at the coil",
		Kind: verify.Published,
	}
	for _, c := range []struct {
		application coldroom.Application
		kelvin      float64
	}{{coldroom.ProduceCooler, 4}, {coldroom.WalkInCooler, 6}} {
		u := coldroom.Room{Application: c.application}.Usual(nil)
		verify.Value(t, source, "difference of a "+c.application.String(), "K", c.kelvin,
			float64(u.Difference.Value), 0.1)
	}
}

func TestPublishedWalkIns(t *testing.T) {
	source := verify.Source{
		Cite: "NREL, openstudio-standards, refrigerated_walkins.csv: operating temperature less " +
			"rated cooling source temperature",
		Kind: verify.Published,
	}
	for _, c := range []struct {
		application         coldroom.Application
		kept, coil, atMostK float64 // °C, K
	}{
		{coldroom.WalkInFreezer, -26.1, -31.7, 0.1},
		{coldroom.WalkInCooler, 1.7, -3.9, 0.5}, // whose row is that of a handbook
	} {
		u := coldroom.Room{Application: c.application}.Usual(nil)
		verify.Value(t, source, "difference of a "+c.application.String(), "K", c.kept-c.coil,
			float64(u.Difference.Value), c.atMostK)
	}
}

func TestPublishedPressureControl(t *testing.T) {
	fluid, err := refrigerant.Lookup("R-134a")
	if err != nil {
		t.Fatal(err)
	}
	// A cooler of R-134a kept at 35 °F.
	source := verify.Source{
		Cite: "ACHR News, Understanding low-pressure controls in refrigeration systems",
		Kind: verify.Published,
	}
	box := coldroom.Room{Application: coldroom.ReachInCooler}
	set, err := box.PressureControl(fluid, quantity.Fahrenheit(35), quantity.StandardAtmosphere)
	if err != nil {
		t.Fatal(err)
	}
	verify.Value(t, source, "cut-in of a cooler of R-134a", "psig", 33, set.CutIn.PSIG(), 0.5)
	// The print has a difference of 20 °F, the usual one of a reach-in is 17 °F.
	verify.Value(t, source, "cut-out of a cooler of R-134a", "psig", 15, set.CutOut.PSIG(), 1.5)

	source.Cite = "ACHR News, Verifying a proper pump-down: most cut out at 5 to 10 psig"
	for _, designation := range []string{"R-404A", "R-449A", "R-134a"} {
		fluid, err := refrigerant.Lookup(designation)
		if err != nil {
			t.Fatal(err)
		}
		room := coldroom.Room{Application: coldroom.WalkInCooler, PumpDown: true}
		set, err := room.PressureControl(
			fluid, quantity.Fahrenheit(36), quantity.StandardAtmosphere,
		)
		if err != nil {
			t.Fatal(err)
		}
		verify.Value(t, source, "cut-out of a pump-down, "+designation, "psig", 7.5,
			set.CutOut.PSIG(), 2.5)
	}
}
