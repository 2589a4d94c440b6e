package diagnose

import (
	"slices"
	"testing"

	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/refrigerant"
)

// Every fault says who says so, and is weighed by a signature that inference knows.
func TestLibraryIsComplete(t *testing.T) {
	codes := map[Code]bool{}
	signatures := map[Code]bool{
		readingsClash:    true,
		OtherRefrigerant: true,
		LowLoad:          true,
		LowAmbient:       true,
		Economizer:       true,
		Drain:            true,
		NextToEmpty:      true,
		NotPumping:       true,
		Heating:          true,
	}
	for _, c := range tabled {
		signatures[c] = true
		entries := []string{string(c)}
		for _, v := range variantsOf[c] {
			if !slices.ContainsFunc(
				furtherOf(c), func(x further) bool { return x.variant == v.name },
			) &&
				!slices.ContainsFunc(halts, func(h halt) bool { return h.variant == v.name }) {
				entries = append(entries, string(v.name))
			}
		}
		for _, entry := range entries {
			for d := range signature.Device(signature.Devices) {
				if signature.For(d).Cause(entry) == nil {
					t.Errorf("the table has no %s for device %d", entry, d)
				}
			}
		}
	}
	for _, c := range instrumentSignatures {
		signatures[c] = true
	}
	for _, f := range Library() {
		if codes[f.Code] {
			t.Errorf("%s stands twice", f.Code)
		}
		codes[f.Code] = true
		if len(f.Sources) == 0 || f.Share <= 0 {
			t.Errorf("%s is incomplete", f.Code)
		}
		if !signatures[f.Signature] {
			t.Errorf("%s has signature %s, which nothing weighs", f.Code, f.Signature)
		}
	}
	for s := range signatures {
		for _, m := range []refrigerant.Metering{refrigerant.FixedRestrictor, refrigerant.TXV,
			refrigerant.EXV} {
			if len(faultsOf(s, &Evidence{Metering: m, HeatPump: true})) == 0 {
				t.Errorf("no fault of signature %s for metering %d", s, m)
			}
		}
	}
	for s, row := range traitsOf {
		if !signatures[s] || row.prior == 0 && !slices.ContainsFunc(
			circumstanceTraits, func(x traits) bool { return x.code == s },
		) {
			t.Errorf("prior %v of signature %s", row.prior, s)
		}
	}
}

// Sights and tests name only what is in the library.
func TestChancesNameFaults(t *testing.T) {
	known := map[Code]bool{}
	for _, f := range Library() {
		known[f.Code], known[f.Signature] = true, true
	}
	check := func(what string, usual float64, of map[Code]float64) {
		if usual <= 0 || usual >= 1 {
			t.Errorf("%s: usual chance %v", what, usual)
		}
		for code, p := range of {
			if !known[code] || p <= 0 || p >= 1 {
				t.Errorf("%s: %s with chance %v", what, code, p)
			}
		}
	}
	for _, s := range sights {
		check(s.code, s.usual, s.of)
	}
	codes := map[string]bool{}
	for i := range tests {
		check(tests[i].code, tests[i].usual, tests[i].of)
		if codes[tests[i].code] {
			t.Errorf("test %s stands twice", tests[i].code)
		}
		codes[tests[i].code] = true
	}
}
