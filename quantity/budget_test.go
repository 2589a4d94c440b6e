package quantity

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Independent terms add as squares (GUM 5.1.2, equation 10), and are read back as written.
func TestBudget(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		var b, rest Budget[TemperatureDelta]
		sum, most := 0.0, 0.0
		for i, c := range rapid.SliceOfN(rapid.Float64Range(-9, 9), 0, 8).Draw(rt, "terms") {
			to := &b
			if i%2 == 1 {
				to = &rest
			}
			to.Add(fmt.Sprint(i), TemperatureDelta(c))
			sum, most = sum+c*c, max(most, math.Abs(c))
		}
		b.Join(rest)
		if got := float64(b.Std()); math.Abs(got-math.Sqrt(sum)) > 1e-12*(1+got) {
			rt.Errorf("std %g, want %g", got, math.Sqrt(sum))
		}
		if largest, ok := b.Largest(); ok != (most > 0) || float64(largest.Contribution) != most {
			rt.Errorf("largest %v, %v; want %g", largest, ok, most)
		}
		text, err := json.Marshal(b)
		var back Budget[TemperatureDelta]
		if err == nil {
			err = json.Unmarshal(text, &back)
		}
		if d := cmp.Diff(b.Terms(), back.Terms()); d != "" || err != nil {
			rt.Error(err, d)
		}
	})
}

func TestBudgetHasBounds(t *testing.T) {
	var b Budget[Pressure]
	for _, c := range []Pressure{0, Pressure(math.NaN()), Pressure(math.Inf(1))} {
		b.Add("x", c)
	}
	if len(b.Terms()) > 0 {
		t.Errorf("%v", b.Terms())
	}
	for range 20 {
		b.Add("x", math.MaxFloat64)
	}
	if len(b.Terms()) != 8 || math.IsInf(float64(b.Std()), 0) {
		t.Errorf("%d terms, %g", len(b.Terms()), float64(b.Std()))
	}
	text := "[" + strings.Repeat(`{"reading": "x", "contribution": "1 kPa"},`, 8) +
		`{"reading": "x", "contribution": "1 kPa"}]`
	if err := json.Unmarshal([]byte(text), &b); !errors.As(err, new(*RangeError)) {
		t.Errorf("nine terms: %v", err)
	}
}
