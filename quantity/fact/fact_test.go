package fact_test

import (
	"encoding/json"
	"fmt"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"pgregory.net/rapid"
)

func ExampleNew() {
	f := fact.New(
		"reason.superheat-high",
		fact.Measured(
			"superheat", quantity.FahrenheitDelta(23).PlusMinus(quantity.FahrenheitDelta(1)),
		),
		fact.Amount("target", quantity.FahrenheitDelta(12)),
	)
	if superheat, ok := f.Value("superheat"); ok {
		fmt.Println(f.Code, superheat.Kind())
	}
	// Output: reason.superheat-high temperature difference ±
}

func TestJSONReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.Float64Range(-1e6, 1e6)
		f := fact.New(
			"step.add",
			fact.Amount("mass", quantity.Mass(number.Draw(t, "mass"))),
			fact.Measured(
				"line",
				quantity.Temperature(rapid.Float64Range(0, 1e6).Draw(t, "line")).PlusMinus(1),
			),
			fact.Of("chance", fact.Share(rapid.Float64Range(0, 1).Draw(t, "chance"))),
			fact.Of("ratio", fact.Times(number.Draw(t, "ratio"))),
			fact.Of("number", fact.Number(number.Draw(t, "number"))),
			fact.Of("count", rapid.Int().Draw(t, "count")),
			fact.Of("wait", time.Duration(rapid.Int64().Draw(t, "wait"))),
			fact.Of("cause", fact.Term("cause.undercharge")),
			fact.Of("readings", fact.Terms{"reading.suctionLine", "reading.liquidLine"}),
			fact.Of("title", rapid.String().Draw(t, "title")),
		)
		text, err := json.Marshal(f)
		if err != nil {
			t.Fatal(err)
		}
		var back fact.Fact
		if err := json.Unmarshal(text, &back); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(f, back); diff != "" {
			t.Fatalf("%s (-made +read):\n%s", text, diff)
		}
	})
}

func TestJSONRefuses(t *testing.T) {
	for _, text := range []string{
		`{"name":"x","kind":"weight","value":"1 kg"}`, `{"name":"x","kind":"mass","value":1}`,
		`{"name":"x","kind":"mass","value":"1"}`, `{"name":"x","kind":"count","value":"many"}`,
		`[]`,
	} {
		var v fact.Value
		if err := json.Unmarshal([]byte(text), &v); err == nil {
			t.Errorf("%s reads as %v", text, v)
		}
	}
	if _, err := json.Marshal(fact.Value{Name: "x", Of: 1.5}); err == nil {
		t.Error("a bare number marshals")
	}
}
