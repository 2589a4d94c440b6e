package satline

import (
	"testing"

	"github.com/satline/satline/refrigerant"
)

func mustFluid(t testing.TB, designation string) *refrigerant.Refrigerant {
	t.Helper()
	f, err := refrigerant.Lookup(designation)
	if err != nil {
		t.Fatal(err)
	}
	return f
}
