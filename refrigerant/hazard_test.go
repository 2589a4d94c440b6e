package refrigerant

import (
	"slices"
	"testing"

	"golang.org/x/text/language"

	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

func hazardCodes(r *Refrigerant) []HazardCode {
	var codes []HazardCode
	for _, h := range r.Hazards() {
		codes = append(codes, h.Code)
	}
	return codes
}

func TestHazards(t *testing.T) {
	for _, tc := range []struct {
		designation string
		has, lacks  []HazardCode
	}{
		{"R-410A", []HazardCode{PressureAndCold, CollectsLow, NoVenting},
			[]HazardCode{BurnsSlowly, Toxic, HighAtRest, PoisonsBreath}},
		{"R-32", []HazardCode{BurnsSlowly, NoVenting}, []HazardCode{BurnsReadily}},
		{"R-290", []HazardCode{BurnsReadily, CollectsLow, VentingInNamedUses},
			[]HazardCode{NoVenting}},
		{"R-1270", []HazardCode{BurnsReadily, NoVenting}, nil},
		{"R-436A", []HazardCode{NoVenting}, []HazardCode{VentingInNamedUses}},
		{"R-441A", []HazardCode{VentingInNamedUses}, nil},
		{"R-E170", []HazardCode{BurnsReadily, NoVenting}, nil},
		{"R-717", []HazardCode{BurnsSlowly, Toxic, RisesHigh, VentingInNamedUses},
			[]HazardCode{CollectsLow}},
		{"R-718", []HazardCode{RisesHigh}, []HazardCode{CollectsLow, PressureAndCold, NoVenting,
			VentingInNamedUses}},
		{"R-744", []HazardCode{PoisonsBreath, HighAtRest, TrappedLiquid, DryIce, CollectsLow},
			[]HazardCode{NoVenting, VentingInNamedUses, Toxic}},
		{"R-472A", []HazardCode{PoisonsBreath, HighAtRest, DryIce, NoVenting}, nil},
		{"R-23", []HazardCode{HighAtRest, TrappedLiquid, NoVenting},
			[]HazardCode{DryIce, PoisonsBreath}},
		{"R-123", []HazardCode{Toxic, NoVenting}, nil}, {"R-13I1", []HazardCode{NoVenting}, nil},
	} {
		codes := hazardCodes(mustLookup(t, tc.designation))
		for _, c := range tc.has {
			if !slices.Contains(codes, c) {
				t.Errorf("%s: %v lacks %s", tc.designation, codes, c)
			}
		}
		for _, c := range tc.lacks {
			if slices.Contains(codes, c) {
				t.Errorf("%s: %v has %s", tc.designation, codes, c)
			}
		}
	}
	for _, unknown := range []*Refrigerant{nil, {}} {
		if codes := hazardCodes(unknown); codes[0] != UnknownFluid ||
			!slices.Contains(codes, NoVenting) {
			t.Errorf("nothing known: %v", codes)
		}
	}
}

// spoken holds that the catalogue has a sentence for f.
func spoken(t *testing.T, f fact.Fact) {
	t.Helper()
	if _, ok := words.Shapes(language.English)[string(f.Code)]; !ok {
		t.Errorf("no words for %s", f.Code)
	}
}

// What is said of supply, of rooms and of cylinders has its words.
func TestFactsHaveWords(t *testing.T) {
	for _, c := range []Control{CFC, HCFC, HFC, NotControlled} {
		spoken(t, c.Fact())
	}
	for _, fit := range []StandingFit{{Fits: true}, {Over: 1}, {Over: -1}} {
		spoken(t, fit.Fact())
	}
	for _, rule := range []RoomRule{AnyRoom, ByArea, ByMeasures} {
		spoken(t, RoomLimit{Rule: rule}.Fact())
	}
	for _, designation := range []string{"R-134a", "R-290", "R-744"} {
		r := mustLookup(t, designation)
		c := fiftyPound
		if designation == "R-744" {
			c.Service = quantity.PSIG(2400)
		}
		room, err := c.RoomFor(r, c.Tare+quantity.Pounds(60))
		if err != nil || room.MayTake >= 0 {
			t.Fatal(r, room, err)
		}
		for _, f := range room.Cautions {
			spoken(t, f)
		}
	}
}

// Fire comes first of all, every hazard has a sentence, and what burns says so.
func TestHazardsOfAll(t *testing.T) {
	for _, r := range All() {
		list := r.Hazards()
		burns := list[0].Code == BurnsSlowly || list[0].Code == BurnsReadily
		if burns != r.Flammable() {
			t.Errorf("%v: flammable %v, told first %s", r, r.Flammable(), list[0].Code)
		}
		for _, h := range list {
			spoken(t, h.Fact())
		}
	}
}

func TestPressureAtRest(t *testing.T) {
	source := verify.Source{
		Cite: "a gas supplier's data sheet of carbon dioxide in cylinders: 838 psig at 70 °F",
		Kind: verify.Published,
	}
	for _, h := range mustLookup(t, "R-744").Hazards() {
		if h.Code == HighAtRest {
			verify.Value(
				t, source, "pressure of R-744 at rest, 70 °F", "psig", 838,
				h.Pressure.Gauge(quantity.StandardAtmosphere).PSIG(), 2,
			)
		}
	}
}

func TestComfortCooling(t *testing.T) {
	for designation, want := range map[string]UnsuitableReason{
		"R-744": NoLiquidInSummer, "R-23": NoLiquidInSummer, "R-473A": NoLiquidInSummer,
		"R-469A": NoLiquidInSummer,
		"R-717":  ToxicIndoors, "R-123": ToxicIndoors, "R-718": InVacuum, "R-11": InVacuum,
		"R-601a": InVacuum,
		"R-22":   "", "R-410A": "", "R-32": "", "R-454B": "", "R-290": "", "R-134a": "",
		"R-407C": "", "R-600a": "", "R-502": "", "R-1234ze(E)": "",
	} {
		err := mustLookup(t, designation).ComfortCooling()
		unsuitable, _ := err.(*UnsuitableError)
		switch {
		case want == "" && err != nil:
			t.Errorf("%s: %v", designation, err)
		case want != "" && (unsuitable == nil || unsuitable.Reason != want ||
			unsuitable.Designation != designation):
			t.Errorf("%s: %v, want %s", designation, err, want)
		}
	}
	if err := (*Refrigerant)(nil).ComfortCooling(); err != ErrNoRefrigerant {
		t.Error(err)
	}
}

// No flame meets a circuit before it was emptied, evacuated and is under nitrogen.
func TestOpeningSteps(t *testing.T) {
	for _, r := range All() {
		for _, flame := range []bool{false, true} {
			steps := r.OpeningSteps(flame)
			if !r.Flammable() {
				if steps != nil {
					t.Errorf("%v does not burn: %v", r, steps)
				}
				continue
			}
			at := map[WorkCode]int{}
			for i, s := range steps {
				if _, seen := at[s.Code]; !seen {
					at[s.Code] = i + 1
				}
				if spoken(t, s.Fact()); s.Source == "" {
					t.Errorf("%v: %+v", r, s)
				}
			}
			if !(at[Detector] < at[RemoveAll] && at[RemoveAll] < at[Evacuate] &&
				at[Evacuate] < at[Sweep] && at[Sweep] < at[Open] && at[Open] < at[PressureTest]) {
				t.Errorf("%v: %v", r, steps)
			}
			if flame != (at[NitrogenFlowing] > 0) || flame && at[NitrogenFlowing] > at[Open] {
				t.Errorf("%v, flame %v: %v", r, flame, steps)
			}
			for _, s := range steps {
				if s.Optional &&
					(s.Code != Sweep && s.Code != Evacuate || r.SafetyGroup() != A2L &&
						r.SafetyGroup() != B2L) {
					t.Errorf("%v: %s is not left to choice", r, s.Code)
				}
			}
		}
	}
}
