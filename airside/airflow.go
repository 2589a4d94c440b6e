package airside

import (
	"fmt"
	"sync"

	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// AirflowMethod names how an airflow was found.
type AirflowMethod string

// The methods.
const (
	ByHeat        AirflowMethod = "heat"        // temperature rise over measured heat
	ByVelocity    AirflowMethod = "velocity"    // velocity traverse
	ByPitot       AirflowMethod = "pitot"       // velocity pressure traverse
	ByGrid        AirflowMethod = "grid"        // flow grid
	ByDrop        AirflowMethod = "drop"        // static pressure drop over a known part
	ByFanSpeed    AirflowMethod = "fan-speed"   // fan laws from a known point
	ByFanCurve    AirflowMethod = "fan-curve"   // blower table at the measured static pressure
	ByRefrigerant AirflowMethod = "refrigerant" // refrigerant-side energy balance
	BySplit       AirflowMethod = "split"       // temperature split solved backwards
)

// Cautions are what to mind while measuring so. They do not stand in for the
// unit's label, local codes and licensed practice.
func (m AirflowMethod) Cautions() []fact.Fact {
	var codes []fact.Code
	switch m {
	case ByHeat:
		codes = []fact.Code{"caution.live-parts", "caution.gas-heat", "caution.radiation"}
	case ByVelocity, ByPitot, ByDrop, ByFanCurve:
		codes = []fact.Code{"caution.drilling"}
	case ByFanSpeed:
		codes = []fact.Code{"caution.belts"}
	case ByRefrigerant:
		codes = []fact.Code{"caution.pressure-and-cold"}
	}
	var out []fact.Fact
	for _, c := range append(codes, "caution.label-first") {
		out = append(out, fact.New(c))
	}
	return out
}

// An Airflow is a measured flow of air.
type Airflow struct {
	Method AirflowMethod `json:"method"`
	// Flow is counted at the condition of the air where it was measured, which
	// is what a duct or a coil sees.
	Flow quantity.Uncertain[quantity.VolumeFlow] `json:"flow"`
	// Standard is the same mass of air at 0.075 lb/ft³, which is what labels and
	// fan tables state.
	Standard quantity.Uncertain[quantity.VolumeFlow] `json:"standard"`
	DryAir   quantity.Uncertain[quantity.MassFlow]   `json:"dryAir"`
	// Density of the air where Flow is counted.
	Density quantity.Density `json:"density"`
	// Budget says where the uncertainty of Flow comes from.
	Budget quantity.Budget[quantity.VolumeFlow] `json:"budget"`
	// Notes say what was assumed.
	Notes []fact.Fact `json:"notes,omitempty"`
}

// PerTon returns the flow in CFM per ton of a capacity; zero where that is not above
// zero, or too small for the flow to be counted by it.
func (a Airflow) PerTon(capacity quantity.Power) float64 {
	if !(capacity > 0) {
		return 0
	}
	return finite.OrZero(a.Flow.Value.CFM() / capacity.Tons())
}

// standardDensity is 0.075 lb/ft³, to the digits that dry air of 70 °F has.
var standardDensity = sync.OnceValue(func() quantity.Density { return StandardAir().Density() })

// measureAirflow evaluates f, which gives a flow and the air it is counted at,
// with its uncertainties.
func measureAirflow(
	method AirflowMethod, x, std inputs, names *[maxInputs]string,
	f func(inputs) (float64, psychro.Air, error),
) (Airflow, error) {
	y, c, err := propagate(x, std, func(x inputs) (outputs, error) {
		flow, air, err := f(x)
		if err != nil {
			return outputs{}, err
		}
		if !(flow >= 0 && flow <= float64(largestFlow)) {
			return outputs{}, limit.Within(
				"airflow", quantity.VolumeFlow(flow), 0, largestFlow,
				"the readings do not make a flow: are they of one moment, "+
					"and in the units they were read in?",
			)
		}
		rho := air.Density()
		return outputs{
			flow, flow * float64(rho/standardDensity()),
			float64(air.DryAirFlow(quantity.VolumeFlow(flow))), float64(rho),
		}, nil
	})
	if err != nil {
		return Airflow{}, fmt.Errorf("airflow by %s: %w", method, err)
	}
	return Airflow{
		Method:   method,
		Flow:     quantity.VolumeFlow(y[0]).PlusMinus(quantity.VolumeFlow(c.std(0))),
		Standard: quantity.VolumeFlow(y[1]).PlusMinus(quantity.VolumeFlow(c.std(1))),
		DryAir:   quantity.MassFlow(y[2]).PlusMinus(quantity.MassFlow(c.std(2))),
		Density:  quantity.Density(y[3]),
		Budget:   budgetOf[quantity.VolumeFlow](&c, 0, names),
	}, nil
}
