package airside

import (
	"math"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// Part is a part in the air stream whose pressure drop at one flow is known: a
// coil or filter with its table, or a calibrated flow grid.
type Part int

// The parts.
const (
	// CoilPart is a finned coil: its drop rises with the flow to the power 1.8 ± 0.1.
	CoilPart Part = iota + 1
	// FilterPart is a pleated or panel filter: 1.5 ± 0.2.
	FilterPart
	// GridPart is a flow grid or an orifice: 2, as its calibration says.
	GridPart
)

var partNames = []string{"not-stated", "coil", "filter", "grid"}

// String returns "coil", "filter" or "grid".
func (p Part) String() string { return enum.Name(partNames, p) }

// MarshalText writes the name of String.
func (p Part) MarshalText() ([]byte, error) {
	return enum.Text("part of the air path", partNames, p)
}

// UnmarshalText reads what MarshalText writes.
func (p *Part) UnmarshalText(text []byte) error {
	return enum.Parse("part of the air path", partNames, text, p)
}

// check refuses a part that is none, its air, and a rated drop that cannot be.
func (p Part) check(air AirAt, rated quantity.StaticPressure) error {
	if err := air.check("duct"); err != nil {
		return err
	}
	if p < CoilPart || p > GridPart {
		return &RangeError{
			Quantity: "part", Value: p, Advice: "it is CoilPart, FilterPart or GridPart",
		}
	}
	return limit.Within("rated drop", rated, 0.1, 5000, "take it from the table of the part")
}

// exponent of the flow in the drop, common practice, no source: orifices are
// turbulent, the narrow channels of coils less so, and the creeping flow in a
// filter's paper least.
func (p Part) exponent() (n, std float64) {
	switch p {
	case CoilPart:
		return 1.8, 0.1
	case FilterPart:
		return 1.5, 0.2
	}
	return 2, 0
}

// DropReading is a static pressure drop over a part that is known and clean.
type DropReading struct {
	Part Part `json:"part"`
	// Rated is the drop at RatedFlow of standard air, from the maker's table for
	// the very part; a coil's is wet or dry as it is now. Take the row nearest to
	// the reading.
	Rated     quantity.StaticPressure                     `json:"rated"`
	RatedFlow quantity.Uncertain[quantity.VolumeFlow]     `json:"ratedFlow"`
	Drop      quantity.Uncertain[quantity.StaticPressure] `json:"drop"`
	// WithGrid and Normal are the supply static pressure with the grid in place
	// of the filter and without it; zero where the grid changes nothing. The flow
	// is corrected to the normal state: it goes with the root of the pressure.
	WithGrid quantity.Uncertain[quantity.StaticPressure] `json:"withGrid,omitzero"`
	Normal   quantity.Uncertain[quantity.StaticPressure] `json:"normal,omitzero"`
	Air      AirAt                                       `json:"air"`
}

// Airflow returns the flow through the part: its rated flow times the drop over
// the rated drop to the power 1/n, corrected for density. A drop goes with the
// density to the power n − 1, so thinner air flows faster at the same drop. A
// part that is not clean shows a larger drop and would be read as more air; use
// it the other way round, see [PartDrop]. The error is a *RangeError.
func (d DropReading) Airflow() (Airflow, error) {
	if err := d.Part.check(d.Air, d.Rated); err != nil {
		return Airflow{}, err
	}
	if err := limit.Reading(
		"rated flow", d.RatedFlow, quantity.CFM(1), largestFlow,
		"take it from the same row as the drop",
	); err != nil {
		return Airflow{}, err
	}
	if err := limit.Reading(
		"static pressure drop", d.Drop, 0.1, 5000,
		"it is the pressure before the part less that after it",
	); err != nil {
		return Airflow{}, err
	}
	corrected := d.WithGrid.Value != 0 || d.Normal.Value != 0
	if corrected {
		for _, s := range []quantity.Uncertain[quantity.StaticPressure]{d.WithGrid, d.Normal} {
			if err := limit.Reading(
				"supply static pressure", s, 0.5, 5000,
				"read both at the same hole with the blower at the same speed, or leave both out",
			); err != nil {
				return Airflow{}, err
			}
		}
	}
	method := ByDrop
	if d.Part == GridPart {
		method = ByGrid
	}
	n, nStd := d.Part.exponent()
	var x, std inputs
	var names [maxInputs]string
	d.Air.inputs(&x, &std, &names)
	x[3], std[3], names[3] = float64(d.RatedFlow.Value), d.RatedFlow.Std, "ratedFlow"
	x[4], std[4], names[4] = float64(d.Drop.Value), d.Drop.Std, "drop"
	x[5], std[5], names[5] = n, nStd, "exponent"
	if corrected {
		x[6], std[6], names[6] = float64(d.WithGrid.Value), d.WithGrid.Std, "withGrid"
		x[7], std[7], names[7] = float64(d.Normal.Value), d.Normal.Std, "normal"
	}
	return measureAirflow(method, x, std, &names, func(x inputs) (float64, psychro.Air, error) {
		air, err := d.Air.state(&x)
		if err != nil {
			return 0, air, err
		}
		thin := float64(standardDensity() / air.Density())
		flow := x[3] * math.Pow(x[4]/float64(d.Rated), 1/x[5]) * math.Pow(thin, 1-1/x[5])
		if corrected {
			flow *= math.Sqrt(x[7] / x[6])
		}
		return flow, air, nil
	})
}
