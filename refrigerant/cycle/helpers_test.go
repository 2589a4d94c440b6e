package cycle

import (
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func lookup(t testing.TB, designation string) *refrigerant.Refrigerant {
	t.Helper()
	r, err := refrigerant.Lookup(designation)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func mustDesign(t testing.TB, s Spec) *System {
	t.Helper()
	m, err := Design(s)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// machine returns an ordinary three-ton machine.
func machine(t testing.TB, designation string, m refrigerant.Metering) *System {
	t.Helper()
	return mustDesign(
		t, Spec{Refrigerant: lookup(t, designation), Capacity: quantity.Tons(3), Metering: m},
	)
}

func solve(t testing.TB, s *System, c Conditions, f Faults) Operating {
	t.Helper()
	o, err := s.Solve(c, f)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// weather returns conditions in °F.
func weather(outdoor, returnDry, returnWet float64) Conditions {
	return Conditions{
		OutdoorDryBulb: quantity.Fahrenheit(outdoor),
		ReturnDryBulb:  quantity.Fahrenheit(returnDry),
		ReturnWetBulb:  quantity.Fahrenheit(returnWet),
	}
}

// fluids are those that the tests go over.
var fluids = []string{"R-22", "R-134a", "R-290", "R-32", "R-410A", "R-454B", "R-407C"}
