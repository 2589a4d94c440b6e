package airside

import (
	"fmt"
	"math"
	"slices"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Traverse is a set of readings over a duct's section. [TraversePoints] says
// where to take them.
type Traverse struct {
	// One of the two is given. A vane or hot-wire instrument reads velocity, a
	// Pitot tube velocity pressure, which becomes velocity through the density of
	// the air: the 4005·√VP of the trade is for standard air.
	Velocities        []quantity.Velocity       `json:"velocities,omitempty"`
	VelocityPressures []quantity.StaticPressure `json:"velocityPressures,omitempty"`
	// InstrumentStd is the relative standard uncertainty that all readings have
	// in common: 0.02 is 2 %. It does not average out.
	InstrumentStd float64 `json:"instrumentStd"`
	// Area is the free area of the section.
	Area quantity.Uncertain[quantity.Area] `json:"area"`
	Air  AirAt                             `json:"air"`
}

// Airflow returns the flow of the traverse: mean velocity times area. Readings
// below zero, where air runs back, count as zero (ANSI/ASHRAE Standard 111; from
// memory). The scatter of the readings over the root of their number is counted
// as uncertainty; it holds the true variation over the duct as well, so it errs
// on the large side. The error is a *RangeError.
func (v Traverse) Airflow() (Airflow, error) {
	if err := v.Air.check("duct"); err != nil {
		return Airflow{}, err
	}
	if err := limit.Reading(
		"duct area", v.Area, quantity.SquareInches(1), quantity.SquareMeters(100),
		"it is the inside area of the section",
	); err != nil {
		return Airflow{}, err
	}
	if !(v.InstrumentStd >= 0 && v.InstrumentStd <= 1) {
		return Airflow{}, &RangeError{
			Quantity: "relative standard uncertainty of the instrument",
			Value:    quantity.Number(v.InstrumentStd),
			Min:      quantity.Number(0),
			Max:      quantity.Number(1),
			Advice:   "2 % is 0.02",
		}
	}
	n := len(v.Velocities) + len(v.VelocityPressures)
	pitot := len(v.VelocityPressures) > 0
	if pitot == (len(v.Velocities) > 0) {
		return Airflow{}, &RangeError{
			Quantity: "readings of a traverse",
			Value:    quantity.Number(n),
			Min:      quantity.Number(1),
			Advice:   "give velocities or velocity pressures, not both and not neither",
		}
	}
	method := ByVelocity
	if pitot {
		method = ByPitot
	}
	mean, scatter, back, err := v.average()
	if err != nil {
		return Airflow{}, err
	}
	if back == n {
		var highest fmt.Stringer
		if pitot {
			highest = slices.Max(v.VelocityPressures)
		} else {
			highest = slices.Max(v.Velocities)
		}
		return Airflow{}, &RangeError{
			Quantity: "highest reading of a traverse",
			Value:    highest,
			Advice: "no reading is above zero: turn the instrument into the stream, " +
				"or exchange the two hoses of the Pitot tube",
		}
	}
	var x, std inputs
	var names [maxInputs]string
	v.Air.inputs(&x, &std, &names)
	x[3], std[3], names[3] = float64(v.Area.Value), v.Area.Std, "area"
	x[4], std[4], names[4] = mean, scatter, "scatter"
	x[5], std[5], names[5] = 1, v.InstrumentStd, "instrument"
	a, err := measureAirflow(method, x, std, &names, func(x inputs) (float64, psychro.Air, error) {
		air, err := v.Air.state(&x)
		if err != nil {
			return 0, air, err
		}
		velocity := x[4] * x[5]
		if pitot {
			velocity = x[4] * math.Sqrt(2*x[5]/float64(air.Density()))
		}
		return velocity * x[3], air, nil
	})
	if err == nil && n < 10 {
		a.Notes = append(a.Notes, fact.New("note.few-readings", fact.Of("count", n)))
	}
	if err == nil && back > 0 {
		a.Notes = append(
			a.Notes, fact.New("note.readings-run-back", fact.Of("count", back), fact.Of("of", n)),
		)
	}
	return a, err
}

// average returns the mean of the velocities, or of the roots of the velocity
// pressures, with what the scatter of the readings leaves of doubt, and how many
// are not above zero.
func (v Traverse) average() (mean, scatter float64, back int, err error) {
	var m2 float64
	n := 0
	count := func(r float64) {
		n++
		if r == 0 {
			back++
		}
		d := r - mean
		mean += d / float64(n)
		m2 += d * (r - mean)
	}
	for i, u := range v.Velocities {
		if err := limit.Within(
			fmt.Sprintf("velocity %d", i+1), u, -100, 100, "it is the velocity along the duct",
		); err != nil {
			return 0, 0, 0, err
		}
		count(max(0, float64(u)))
	}
	for i, p := range v.VelocityPressures {
		if err := limit.Within(
			fmt.Sprintf("velocity pressure %d", i+1), p, -5000, 5000,
			"it is the difference between the two ports of the Pitot tube",
		); err != nil {
			return 0, 0, 0, err
		}
		count(math.Sqrt(max(0, float64(p))))
	}
	if n > 1 {
		scatter = math.Sqrt(m2 / float64(n-1) / float64(n))
	}
	return mean, scatter, back, nil
}
