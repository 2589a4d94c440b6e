package airside

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/internal/tool/verify"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/strictjson"
	"golang.org/x/text/language"
	"pgregory.net/rapid"
)

func readSurvey(t testing.TB, text string) Survey {
	t.Helper()
	var s Survey
	err := strictjson.Decode(
		[]byte(text), &s, strictjson.Limits{Bytes: 1 << 14, Depth: 5, Items: 50},
	)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Calls about air, as a technician would take them: the plan in its order, by codes.
func TestSurveyCalls(t *testing.T) {
	for _, c := range []struct {
		name, read string
		plan       []fact.Code
	}{
		{"dirty filter before a furnace", `{"return": "-0.48 in. w.c.", "supply": "0.28 in. w.c.",
			"maxExternal": "0.5 in. w.c.", "filterDrop": "0.38 in. w.c.",
			"coilDrop": "0.2 in. w.c.",
			"cleanFilter": {"drop": "0.14 in. w.c.", "flow": "1200 CFM"},
			"airflow": "1010 CFM", "ratedAirflow": "1200 CFM"}`,
			[]fact.Code{"air.do.filter", "air.do.read-again"}},
		{"dirty filter, and small ducts", `{"return": "-0.72 in. w.c.", "supply": "0.55 in. w.c.",
			"filterDrop": "0.38 in. w.c.", "coilDrop": "0.2 in. w.c.", "airflow": "1010 CFM",
			"cleanFilter": {"drop": "0.14 in. w.c.", "flow": "1200 CFM"},
			"ratedAirflow": "1200 CFM"}`,
			[]fact.Code{"air.do.filter", "air.do.supply", "air.do.return", "air.do.read-again"}},
		{"too little return", `{"return": "-0.45 in. w.c.", "supply": "0.3 in. w.c.",
			"filterDrop": "0.1 in. w.c.", "coilDrop": "0.2 in. w.c.", "airflow": "900 CFM",
			"capacity": "3 ton"}`, []fact.Code{"air.do.return", "air.do.read-again"}},
		{"wheel full of dirt", `{"return": "-0.06 in. w.c.", "supply": "0.05 in. w.c.",
			"airflow": "800 CFM", "ratedAirflow": "1200 CFM"}`,
			[]fact.Code{"air.do.blower", "air.do.read-again"}},
		{"overfired at 6,000 ft", `{"returnAir": "68 °F", "supplyAir": "142 °F", "minRise": "35 °F",
			"maxRise": "65 °F", "elevation": "6000 ft", "ratedInput": "100000 Btu/h",
			"gas": {"metered": "2 ft³", "elapsed": "75s", "heatingValue": "1000 Btu/ft³",
				"efficiency": 0.8}}`,
			[]fact.Code{"air.do.heat-off", "air.do.blower", "air.do.input", "air.do.read-again"}},
		{"sound electric heat", `{"returnAir": "70 °F", "supplyAir": "98 °F", "minRise": "20 °F",
			"maxRise": "50 °F", "electric": {"voltage": "238 V", "current": "42 A"},
			"ratedAirflow": "1150 CFM"}`,
			[]fact.Code{"air.do.go-on"}},
		{"too much air", `{"return": "-0.1 in. w.c.", "supply": "0.12 in. w.c.",
			"airflow": "1600 CFM", "capacity": "3 ton"}`,
			[]fact.Code{"air.do.slow-down", "air.do.read-again"}},
	} {
		got, err := JudgeSurvey(readSurvey(t, c.read))
		if err != nil {
			t.Fatal(c.name, err)
		}
		var plan []fact.Code
		for _, f := range got.Plan {
			plan = append(plan, f.Code)
		}
		if !slices.Equal(plan, c.plan) {
			t.Errorf("%s: %v, want %v; %v", c.name, plan, c.plan, got.Checks)
		}
	}
}

// A burner at 5,000 ft takes 20 % less than its label says (NFPA 54).
func TestThinGas(t *testing.T) {
	s := readSurvey(t, `{"returnAir": "68 °F", "supplyAir": "110 °F", "elevation": "5000 ft",
		"ratedInput": "100000 Btu/h", "gas": {"metered": "2 ft³", "elapsed": "90s",
		"heatingValue": "1000 Btu/ft³", "efficiency": 0.8}}`)
	got, err := JudgeSurvey(s)
	if err != nil {
		t.Fatal(err)
	}
	most, _ := got.Checks[0].Says.Value("limit")
	verify.Relative(
		t, verify.Source{Cite: "NFPA 54: 4 % for each 1,000 ft", Kind: verify.Published},
		"input of a burner at 5,000 ft", "Btu/h", 80000, most.Of.(quantity.Power).BtuPerHour(),
		1e-9,
	)
}

// The trade's figure: 34,120 Btu/h over 1.08 and 30 °F are 1,053 CFM at sea level.
func TestSurveyFlowByHeat(t *testing.T) {
	s := readSurvey(t, `{"returnAir": "70 °F ± 0.1 °F", "supplyAir": "100 °F ± 0.1 °F",
		"elevation": "0 ft", "electric": {"voltage": "250 V", "current": "40 A"}}`)
	got, err := JudgeSurvey(s)
	if err != nil {
		t.Fatal(err)
	}
	verify.Relative(
		t, verify.Source{Cite: "CFM = Btu/h / (1.08 ΔT)", Kind: verify.CommonPractice},
		"airflow by 10 kW of electric heat", "CFM", 34120/1.08/30, got.Airflow.Standard.Value.CFM(),
		0.01,
	)
	*s.Elevation = quantity.Feet(7000)
	thin, err := JudgeSurvey(s)
	if err != nil || thin.Airflow.Flow.Value < got.Airflow.Flow.Value*6/5 {
		t.Errorf("%v at 7,000 ft, %v at sea level, %v", thin.Airflow.Flow, got.Airflow.Flow, err)
	}
}

// Whatever is read, there is a plan, nothing is sped up against too high a pressure, and every
// code has its words.
func TestSurveyProperties(t *testing.T) {
	spoken := words.Shapes(language.English)
	rapid.Check(t, func(t *rapid.T) {
		static := func(n string, low, high float64) *staticReading {
			if rapid.Bool().Draw(t, n+" read") {
				return new(
					quantity.InchesWater(rapid.Float64Range(low, high).Draw(t, n)).PlusMinus(0),
				)
			}
			return nil
		}
		air := func(n string, low, high float64) *temperatureReading {
			return new(quantity.Celsius(rapid.Float64Range(low, high).Draw(t, n)).PlusMinus(0))
		}
		s := Survey{
			Return: static("return", -1, 0), Supply: static("supply", 0, 1),
			FilterDrop: static("filter", 0, 0.6), CoilDrop: static("coil", 0, 0.6),
			FilterInside: rapid.Bool().Draw(t, "in"), CoilInside: rapid.Bool().Draw(t, "inside"),
			Airflow: new(quantity.CFM(rapid.Float64Range(300, 2000).Draw(t,
				"flow")).PlusMinus(0)),
			RatedAirflow: quantity.CFM(1200),
			ReturnAir:    air("back", 15, 25), SupplyAir: air("out", 26, 70),
			MinRise: quantity.KelvinDelta(15), MaxRise: quantity.KelvinDelta(35),
		}
		got, err := JudgeSurvey(s)
		if err != nil {
			t.Fatal(err)
		}
		if len(got.Plan) == 0 || got.Finding.IsZero() != !slices.ContainsFunc(got.Checks,
			func(c fact.Check) bool { return c.Outcome == fact.Wrong }) {
			t.Fatal(got)
		}
		high := got.Static != nil && got.Static.Outcome == StaticHigh
		for _, f := range slices.Concat(got.Plan, got.Cautions) {
			if _, ok := spoken[string(f.Code)]; !ok {
				t.Fatalf("no words for %s", f.Code)
			}
			if high && f.Code == "air.do.blower" {
				t.Fatal("sped up against a high pressure")
			}
		}
		for _, c := range got.Checks {
			if _, ok := spoken[string(c.Says.Code)]; !ok {
				t.Fatalf("no words for %s", c.Says.Code)
			}
		}
	})
}

func TestImpossibleSurvey(t *testing.T) {
	nan := quantity.StaticPressure(math.NaN()).PlusMinus(0)
	for name, s := range map[string]Survey{
		"no number": {FilterDrop: &nan},
		"return pushes": {Return: new(quantity.PascalsStatic(50).PlusMinus(0)),
			Supply: new(quantity.PascalsStatic(50).PlusMinus(0))},
		"no gas":        {Gas: &GasInput{Elapsed: time.Second}},
		"on a mountain": {Elevation: new(quantity.Meters(9000))},
		"rise upside down": {ReturnAir: new(quantity.Celsius(20).PlusMinus(0)),
			SupplyAir: new(quantity.Celsius(50).PlusMinus(0)), MinRise: 40, MaxRise: 20},
	} {
		var out *RangeError
		if _, err := JudgeSurvey(s); !errors.As(err, &out) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func FuzzSurvey(f *testing.F) {
	f.Add([]byte(`{"return": "-0.52 in. w.c.", "supply": "0.34 in. w.c.", "airflow": "900 CFM"}`))
	f.Add([]byte(`{"returnAir": "70 °F", "supplyAir": "98 °F",
		"electric": {"voltage": "238 V", "current": "42 A"}}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		var s Survey
		if strictjson.Decode(text, &s, strictjson.Limits{Bytes: 4096, Depth: 5, Items: 40}) != nil {
			return
		}
		got, err := JudgeSurvey(s)
		if err != nil {
			return
		}
		for _, c := range got.Checks {
			if s := c.Says.String(); strings.Contains(s, "NaN") || strings.Contains(s, "Inf") {
				t.Fatal(s)
			}
		}
	})
}
