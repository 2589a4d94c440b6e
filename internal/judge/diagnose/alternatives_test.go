package diagnose

import (
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/refrigerant"
)

func TestAlternativesAreRefrigerants(t *testing.T) {
	for name, others := range confused {
		r, err := refrigerant.Lookup(name)
		if err != nil {
			t.Error(err)
			continue
		}
		got := Alternatives(r)
		for i, other := range others {
			if i >= len(got) || got[i].Designation() != other {
				t.Errorf("%s could be taken for %s, which is not among %v", name, other, got)
			}
		}
		seen := map[string]bool{name: true}
		for _, f := range got {
			if seen[f.Designation()] {
				t.Errorf("%s could be taken for %s twice, or for itself", name, f.Designation())
			}
			seen[f.Designation()] = true
		}
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
