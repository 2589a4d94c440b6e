package refrigerant

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/tool/verify"
	"pgregory.net/rapid"
)

func mustLookup(t testing.TB, designation string) *Refrigerant {
	t.Helper()
	r, err := Lookup(designation)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestRoster(t *testing.T) {
	pure, blends := 0, 0
	for _, r := range All() {
		if r.Pure() {
			pure++
		} else {
			blends++
		}
		sum := 0.0
		for _, c := range r.parts {
			if pureFactOf(c.Designation) == nil {
				t.Errorf("%v: no facts of %s", r, c.Designation)
			}
			sum += c.MassFraction
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Errorf("%v: mass fractions sum to %v", r, sum)
		}
		if again := mustLookup(t, r.Designation()); again != r {
			t.Errorf("Lookup(%q) = %v", r.Designation(), again)
		}
		if r.Pure() &&
			(r.Name() == "" || r.Formula() == "" || r.parts[0].Designation != r.designation) {
			t.Errorf("%v: name %q, formula %q", r, r.Name(), r.Formula())
		}
	}
	if pure != 42 || blends != 139 {
		t.Errorf("%d pure and %d blends, want 42 and 139", pure, blends)
	}
}

func TestLookupSpellings(t *testing.T) {
	for _, tc := range []struct{ text, want string }{
		{"R-22", "R-22"}, {"R22", "R-22"}, {"r22", "R-22"}, {"22", "R-22"}, {"HCFC-22", "R-22"},
		{" R 22 ", "R-22"}, {"r454b", "R-454B"}, {"454B", "R-454B"}, {"R-454b", "R-454B"},
		{"R-1234ze(E)", "R-1234ze(E)"}, {"R1234zeE", "R-1234ze(E)"}, {"R-1234ze", "R-1234ze(E)"},
		{"HFO-1234ze(E)", "R-1234ze(E)"}, {"HFC-134a", "R-134a"}, {"R134A", "R-134a"},
		{"R-E170", "R-E170"}, {"RE170", "R-E170"}, {"e170", "R-E170"}, {"R-507", "R-507A"},
		{"CO2", "R-744"}, {"propane", "R-290"}, {"Propylene", "R-1270"}, {"n-butane", "R-600"},
		{"DME", "R-E170"}, {"CF3I", "R-13I1"}, {"Ammonia", "R-717"}, {"carbon dioxide", "R-744"},
		{"hcfo-1233zd(e)", "R-1233zd(E)"}, {"R-600a", "R-600a"}, {"R-600", "R-600"},
		{"R-1132a", "R-1132a"}, {"R-1132(E)", "R-1132(E)"},
	} {
		r, err := Lookup(tc.text)
		if err != nil || r.Designation() != tc.want {
			t.Errorf("Lookup(%q) = %v, %v; want %s", tc.text, r, err, tc.want)
		}
	}
}

func TestLookupUnknown(t *testing.T) {
	for _, tc := range []struct {
		text string
		want []string
	}{
		{"R-410", []string{"R-410A", "R-410B"}}, {"R-401", []string{"R-401A", "R-401B", "R-401C"}},
		{"R-145A", []string{"R-415A"}}, {"", nil}, {"R-", nil}, {"bananas of the world", nil},
		{strings.Repeat("9", 1<<20), nil}, {"R-410Ä", nil},
	} {
		r, err := Lookup(tc.text)
		var unknown *UnknownError
		if r != nil || !errors.Is(err, ErrUnknownRefrigerant) || !errors.As(err, &unknown) {
			t.Fatalf("Lookup(%.20q) = %v, %v", tc.text, r, err)
		}
		for _, s := range tc.want {
			if !slices.Contains(unknown.Suggestions, s) {
				t.Errorf("Lookup(%q) suggests %v, want %v", tc.text, unknown.Suggestions, tc.want)
			}
		}
	}
	_, err := Lookup("R-22a")
	if err == nil || !strings.Contains(err.Error(), "flammable") {
		t.Errorf("R-22a: %v", err)
	}
}

func TestGWP(t *testing.T) {
	pure := verify.Source{
		Cite: "GHG Protocol, Global Warming Potential Values (February 2016), after IPCC AR4 " +
			"and AR5, as the open dataset globalwarmingpotentials reprints it",
		Kind: verify.Published,
	}
	blends := [2]verify.Source{
		{
			Cite: "the components' GWPs of IPCC AR4, as above, weighted by mass by hand",
			Kind: verify.Published,
		},
		{
			Cite: "the components' GWPs of IPCC AR5, as above, weighted by mass by hand",
			Kind: verify.Published,
		},
	}
	// AR4 does not list R-1234yf and R-1234ze(E); AR5 does as below 1, less than the tolerance,
	// and they are left out by hand.
	olefins := []string{"R-454B", "R-448A", "R-513A", "R-452A", "R-515B"}
	recalled := verify.Source{
		Cite: "blends' data sheets, by AR4 and 4 for R-1234yf, 7 for R-1234ze(E)",
		Kind: verify.FromMemory,
	}
	for _, tc := range []struct {
		designation string
		ar4, ar5    float64
	}{
		{"R-11", 4750, 4660}, {"R-12", 10900, 10200}, {"R-113", 6130, 5820}, {"R-114", 10000, 8590},
		{"R-115", 7370, 7670}, {"R-22", 1810, 1760}, {"R-123", 77, 79}, {"R-124", 609, 527},
		{"R-141b", 725, 782}, {"R-142b", 2310, 1980}, {"R-23", 14800, 12400}, {"R-32", 675, 677},
		{"R-125", 3500, 3170}, {"R-134a", 1430, 1300}, {"R-143a", 4470, 4800}, {"R-152a", 124, 138},
		{"R-227ea", 3220, 3350}, {"R-236fa", 9810, 8060}, {"R-245fa", 1030, 858},
		{"R-116", 12200, 11100}, {"R-218", 8830, 8900},
	} {
		g := mustLookup(t, tc.designation).GWP()
		verify.Value(t, pure, tc.designation+" GWP, AR4", "", tc.ar4, g.AR4.Value, 0)
		verify.Value(t, pure, tc.designation+" GWP, AR5", "", tc.ar5, g.AR5.Value, 0)
		if g.AR4.Note != "" || g.AR5.Note != "" {
			t.Errorf("%s is listed: notes %q, %q", tc.designation, g.AR4.Note, g.AR5.Note)
		}
	}
	for _, tc := range []struct {
		designation string
		ar4, ar5    float64
	}{
		{"R-410A", 2087.5, 1923.5}, {"R-404A", 3921.6, 3942.8}, {"R-407C", 1773.85, 1624.21},
		{"R-507A", 3985, 3985}, {"R-502", 4656.72, 4785.92},
		{"R-454B", 466, 466.453}, {"R-448A", 1387, 1273.22}, {"R-513A", 631, 572},
		{"R-452A", 2140, 1944.77},
		{"R-515B", 293, 298.15},
	} {
		g := mustLookup(t, tc.designation).GWP()
		source := blends[0]
		if slices.Contains(olefins, tc.designation) {
			source = recalled
		}
		verify.Value(t, source, tc.designation+" GWP, AR4", "", tc.ar4, g.AR4.Value, 1)
		verify.Value(t, blends[1], tc.designation+" GWP, AR5", "", tc.ar5, g.AR5.Value, 1)
		if !strings.Contains(g.AR4.Source, "2.14") || !strings.Contains(g.AR5.Source, "8.A.1") {
			t.Errorf("%s: sources %q, %q", tc.designation, g.AR4.Source, g.AR5.Source)
		}
	}
	for designation, want := range map[string]float64{"R-744": 1, "R-717": 0, "R-718": 0} {
		if g := mustLookup(t, designation).GWP(); g.AR4.Value != want || g.AR5.Value != want {
			t.Errorf("%s: %+v", designation, g)
		}
	}
	if note := mustLookup(t, "R-454B").GWP().AR4.Note; !strings.Contains(note, "R-1234yf") {
		t.Errorf("R-454B: note %q does not name the unlisted component", note)
	}
}

// The law of the United States takes AR4's figures for what it regulates.
func TestExchangeValues(t *testing.T) {
	source := verify.Source{
		Cite: "42 U.S.C. 7675(c)(1) (American Innovation and Manufacturing Act of 2020), " +
			"exchange values",
		Kind: verify.Published,
	}
	for designation, value := range map[string]float64{
		"R-23": 14800, "R-32": 675, "R-125": 3500, "R-134a": 1430, "R-143a": 4470,
		"R-152a": 124, "R-227ea": 3220, "R-236fa": 9810, "R-245fa": 1030,
	} {
		g := mustLookup(t, designation).GWP()
		verify.Value(t, source, designation+" GWP, AR4", "", value, g.AR4.Value, 0)
		if g.US == nil || g.US.Value != value || g.US.Note != "" {
			t.Errorf("%s: %+v", designation, g.US)
		}
	}
	blends := verify.Source{
		Cite: "40 CFR 84.64(b), table 1, with the exchange values of 42 U.S.C. 7675(c)(1), " +
			"weighted by mass by hand",
		Kind: verify.Published,
	}
	for designation, value := range map[string]float64{
		"R-410A": 2087.5, "R-404A": 3921.6, "R-454B": 465.386, "R-454A": 236.9, "R-454C": 145.91,
		"R-455A": 145.91, "R-513A": 629.76, "R-448A": 1386.07, "R-408A": 2301.2,
	} {
		verify.Value(
			t,
			blends,
			designation+" GWP, United States",
			"",
			value,
			mustLookup(t, designation).GWP().US.Value,
			0.001,
		)
	}
	for _, designation := range []string{"R-22", "R-290", "R-744", "R-502"} {
		if g := mustLookup(t, designation).GWP(); g.US != nil {
			t.Errorf("%s holds nothing that the Act regulates: %+v", designation, *g.US)
		}
	}
}

func TestMolarMass(t *testing.T) {
	source := verify.Source{
		Cite: "Atomic weights of the elements 2013 (IUPAC Technical Report), " +
			"doi:10.1515/pac-2015-0305, conventional values, summed by hand",
		Kind: verify.Published,
	}
	for _, tc := range []struct {
		designation string
		grams       float64
	}{
		{"R-22", 86.465}, {"R-32", 52.023}, {"R-134a", 102.030}, {"R-404A", 97.603},
		{"R-407C", 86.202}, {"R-410A", 72.584}, {"R-502", 111.624}, {"R-507A", 98.858},
		{"R-290", 44.097}, {"R-454B", 62.613},
	} {
		verify.Value(
			t, source, tc.designation+" molar mass", "g/mol", tc.grams,
			1000*mustLookup(t, tc.designation).MolarMass(), 0.006,
		)
	}
}

func TestSafety(t *testing.T) {
	for _, tc := range []struct {
		designation string
		group       SafetyGroup
		flammable   bool
		control     Control
	}{
		{"R-22", A1, false, HCFC}, {"R-12", A1, false, CFC}, {"R-410A", A1, false, HFC},
		{"R-32", A2L, true, HFC}, {"R-454B", A2L, true, HFC}, {"R-290", A3, true, NotControlled},
		{"R-717", B2L, true, NotControlled}, {"R-123", B1, false, HCFC}, {"R-152a", A2, true, HFC},
		{"R-141b", Unclassified, true, HCFC}, {"R-401A", A1, false, HCFC},
		{"R-502", A1, false, CFC}, {"R-744", A1, false, NotControlled},
	} {
		r := mustLookup(t, tc.designation)
		if r.SafetyGroup() != tc.group || r.Flammable() != tc.flammable ||
			r.Control() != tc.control {
			t.Errorf("%v: %v, flammable %v, %v", r, r.SafetyGroup(), r.Flammable(), r.Control())
		}
	}
}

func TestGlideClass(t *testing.T) {
	for _, tc := range []struct {
		designation string
		class       GlideClass
	}{
		{"R-22", PureFluid}, {"R-507A", Azeotropic}, {"R-502", Azeotropic},
		{"R-410A", NearAzeotropic}, {"R-404A", NearAzeotropic}, {"R-454B", Zeotropic},
		{"R-407C", Zeotropic}, {"R-473A", Zeotropic},
	} {
		class, err := mustLookup(t, tc.designation).GlideClass()
		if err != nil || class != tc.class {
			t.Errorf("%s: %s, %v; want %s", tc.designation, class, err, tc.class)
		}
	}
}

// Estimates are named with the pair at fault, and of every component and pair of which
// anything is known there is a source.
func TestEstimated(t *testing.T) {
	count := 0
	for _, r := range All() {
		estimated, why := r.Estimated()
		if estimated {
			count++
		}
		if estimated != strings.Contains(why, " with ") {
			t.Errorf("%v: %v, %q", r, estimated, why)
		}
		want := len(r.parts) * (len(r.parts) + 1) / 2
		r.unfitted(func(first, second string) {
			if fluiddata.EstimateOf(first, second).Pair == nil {
				want--
			}
		})
		if got := len(r.Sources()); got != want {
			t.Errorf("%v: %d sources, want %d", r, got, want)
		}
	}
	if count != 29 {
		t.Errorf("%d refrigerants are estimated, want 29", count)
	}
}

func TestNewBlend(t *testing.T) {
	// R-22 topped off onto R-407C: two designations, four components.
	r, err := NewBlend("topped off", []Component{{"R407C", 0.8}, {"R-22", 0.2}})
	if err != nil {
		t.Fatal(err)
	}
	want := "R-32/R-125/R-134a/R-22 (18.4/20/41.6/20)"
	if r.Name() != want || r.SafetyGroup() != Unclassified || !r.Flammable() {
		t.Errorf("%v: %s, %v", r, r.Name(), r.SafetyGroup())
	}
	for _, bad := range [][]Component{
		nil, {{"R-32", 0}}, {{"R-32", 50}, {"R-125", 50}}, {{"R-32", 0.5}}, {{"R-32", math.NaN()}},
		{{"R-32", -0.5}, {"R-125", 1.5}}, {{"R-9", 1}},
	} {
		if r, err := NewBlend("bad", bad); err == nil || r != nil {
			t.Errorf("NewBlend(%v) = %v", bad, r)
		}
	}
}

func TestEditsIsAMetric(t *testing.T) {
	word := rapid.StringMatching(`[0-9a-c]{0,8}`)
	rapid.Check(t, func(t *rapid.T) {
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		d := edits(a, b)
		if d != edits(b, a) || (d == 0) != (a == b) || d > max(len(a), len(b)) {
			t.Errorf("edits(%q, %q) = %d", a, b, d)
		}
	})
}

func FuzzLookup(f *testing.F) {
	for _, s := range []string{"R-22", "r454b", "R-1234ze(E)", "", "\xff", "R-410"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		r, err := Lookup(s)
		if (r == nil) == (err == nil) {
			t.Fatalf("Lookup(%q) = %v, %v", s, r, err)
		}
	})
}
