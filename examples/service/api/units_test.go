package api

import (
	"encoding/json"
	"testing"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// Every quantity of the library has a shape, and each kind of a fact finds it.
func TestEveryQuantityIsRewritten(t *testing.T) {
	if len(byKind) != 2*25 {
		t.Errorf("%d kinds, want those of 25 quantities: %v", len(byKind), byKind)
	}
	var description struct {
		Components struct {
			Schemas map[string]struct {
				Units []string `json:"x-units"`
			}
		}
	}
	if err := json.Unmarshal(Description, &description); err != nil {
		t.Fatal(err)
	}
	for name, s := range description.Components.Schemas {
		if (len(s.Units) > 0) != (schemas[name].show != nil) {
			t.Errorf("%s: units %v", name, s.Units)
		}
	}
}

func assessment(t testing.TB) []byte {
	t.Helper()
	v, err := satline.DecodeVisit([]byte(ExampleVisit))
	if err != nil {
		t.Fatal(err)
	}
	a, err := satline.Assess(v)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// An assessment in other units is one still, and in both systems the same but for them.
func TestAnAssessmentReadsBack(t *testing.T) {
	exact := assessment(t)
	for _, system := range []quantity.System{quantity.IP, quantity.SI} {
		text := InUnits("Assessment", exact, system)
		var a satline.Assessment
		if err := json.Unmarshal(text, &a); err != nil {
			t.Fatalf("%v: %v", system, err)
		}
		if again := InUnits("Assessment", text, system); string(again) != string(text) {
			t.Errorf("%v twice is not the same", system)
		}
	}
	if got := InUnits("Problem", exact, quantity.IP); string(got) != string(exact) {
		t.Error("by a schema without quantities it was changed")
	}
}

func BenchmarkInUnits(b *testing.B) {
	exact := assessment(b)
	b.SetBytes(int64(len(exact)))
	for b.Loop() {
		InUnits("Assessment", exact, quantity.IP)
	}
}
