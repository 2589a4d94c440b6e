package diagnose

import (
	"testing"

	"github.com/satline/satline/internal/diagnose/signature"
	"github.com/satline/satline/refrigerant"
)

func TestAlternativesAreRefrigerants(t *testing.T) {
	for name, others := range confused {
		r, err := refrigerant.Lookup(name)
		if err != nil {
			t.Error(err)
			continue
		}
		if got := Alternatives(r); len(got) != len(others) {
			t.Errorf("%s: %d of %d alternatives are known", name, len(got), len(others))
		}
		q, err := signature.IsentropicSuperheat(r)
		t.Logf("%s %.2f %v", name, q, err)
	}
}

func BenchmarkIsentropicSuperheat(b *testing.B) {
	r, err := refrigerant.Lookup("R-410A")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := signature.IsentropicSuperheat(r); err != nil {
			b.Fatal(err)
		}
	}
}
