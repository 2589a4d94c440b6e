package airside

import (
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
)

// CombinedAirflow is one airflow from several methods.
type CombinedAirflow struct {
	// Standard is the mean of the standard flows, weighted by their
	// uncertainties. Where the methods scatter more than they should, its
	// uncertainty is widened by their Birge ratio.
	Standard quantity.Uncertain[quantity.VolumeFlow] `json:"standard"`
	// Agree says that the methods scatter no more than their uncertainties
	// explain.
	Agree bool `json:"agree"`
	// Odd is the method farthest from the others, where they do not agree.
	Odd AirflowMethod `json:"odd,omitzero"`
	// BirgeRatio is the root of chi-squared per degree of freedom (Birge,
	// Physical Review 40, 1932): near 1 where uncertainties are stated well.
	BirgeRatio float64 `json:"birgeRatio"`
}

// CombineAirflows returns the weighted mean of several airflows, by standard
// flow, since each is counted where it was measured. The error is a *RangeError
// where there is none, or one has no uncertainty.
func CombineAirflows(flows ...Airflow) (CombinedAirflow, error) {
	if len(flows) == 0 {
		return CombinedAirflow{}, &RangeError{
			Quantity: "number of airflows",
			Value:    quantity.Number(0),
			Min:      quantity.Number(1),
			Advice:   "measure one first",
		}
	}
	var weight, sum float64
	for _, f := range flows {
		if !(f.Standard.Std >= 1e-9 && f.Standard.Std <= float64(largestFlow)) {
			return CombinedAirflow{}, &RangeError{
				Quantity: fmt.Sprintf("standard uncertainty of the airflow by %s", f.Method),
				Value:    quantity.VolumeFlow(f.Standard.Std),
				Min:      quantity.VolumeFlow(1e-9),
				Advice: "state the uncertainty of its readings; " +
					"without it no weight can be given",
			}
		}
		if !(f.Standard.Value >= 0 && f.Standard.Value <= largestFlow) {
			return CombinedAirflow{}, &RangeError{
				Quantity: fmt.Sprintf("standard airflow by %s", f.Method),
				Value:    f.Standard.Value,
				Min:      quantity.VolumeFlow(0),
				Max:      largestFlow,
				Advice:   "read it again",
			}
		}
		w := 1 / (f.Standard.Std * f.Standard.Std)
		weight += w
		sum += w * float64(f.Standard.Value)
	}
	mean, std := sum/weight, 1/math.Sqrt(weight)
	chi2, worst, odd := 0.0, 0.0, AirflowMethod("")
	for _, f := range flows {
		z := (float64(f.Standard.Value) - mean) / f.Standard.Std
		chi2 += z * z
		if math.Abs(z) > worst {
			worst, odd = math.Abs(z), f.Method
		}
	}
	c := CombinedAirflow{Agree: true}
	if n := len(flows) - 1; n > 0 {
		c.BirgeRatio = math.Sqrt(chi2 / float64(n))
		// Twice the expected scatter is past chance for two methods at 95 %.
		if c.BirgeRatio > 2 {
			c.Agree, c.Odd = false, odd
		}
		std *= max(1, c.BirgeRatio)
	}
	c.Standard = quantity.VolumeFlow(mean).PlusMinus(quantity.VolumeFlow(std))
	return c, nil
}
