package airside

import (
	"errors"
	"testing"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// A fan curve or an air that no constructor made is missing, and said to be.
func TestMissing(t *testing.T) {
	known := FanPoint{Flow: quantity.CFM(1000), Static: quantity.InchesWater(0.5)}
	var problems []error
	for _, c := range []*FanCurve{nil, {}} {
		_, err := c.Meets(known)
		problems = append(problems, err)
		_, err = c.StandardFlow(known.Static)
		problems = append(problems, err)
	}
	_, err := FactorsOf(psychro.Air{})
	problems = append(problems, err)
	for _, err := range problems {
		var out *RangeError
		if !errors.As(err, &out) || out.Value != nil || out.Advice == "" {
			t.Errorf("%v", err)
		}
	}
}

// Weights that run off to infinity are no weights.
func TestCombineWithoutDoubt(t *testing.T) {
	flow := Airflow{Method: ByGrid}
	flow.Standard.Value, flow.Standard.Std = quantity.CFM(1000), 5e-324
	_, err := CombineAirflows(flow)
	var out *RangeError
	if !errors.As(err, &out) {
		t.Error(err)
	}
}
