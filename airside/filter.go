package airside

import (
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// FilterVelocity is the face velocity to size a pleated filter for: 300 ft/min
// or less keeps its drop low. Common practice, no source; the filter's own table
// outranks it.
const FilterVelocity = quantity.Velocity(300 * quantity.Foot / 60)

// FaceVelocity returns the velocity of a flow over a filter's or coil's face. The
// error is a *RangeError.
func FaceVelocity(flow quantity.VolumeFlow, face quantity.Area) (quantity.Velocity, error) {
	if err := limit.Within(
		"airflow", flow, 0, largestFlow, "it is the flow through the filter",
	); err != nil {
		return 0, err
	}
	if err := limit.Within(
		"face area", face, quantity.SquareInches(1), quantity.SquareMeters(1000),
		"it is the free height times width",
	); err != nil {
		return 0, err
	}
	return quantity.Velocity(float64(flow) / float64(face)), nil
}

// FilterArea returns the face that a flow needs at a face velocity;
// [FilterVelocity] is the usual one. The error is a *RangeError.
func FilterArea(flow quantity.VolumeFlow, velocity quantity.Velocity) (quantity.Area, error) {
	if err := limit.Within(
		"airflow", flow, 0, largestFlow, "it is the flow through the filter",
	); err != nil {
		return 0, err
	}
	if err := limit.Within(
		"face velocity", velocity, quantity.FeetPerMinute(10), quantity.FeetPerMinute(2000),
		"filters are sized for 150 to 500 ft/min",
	); err != nil {
		return 0, err
	}
	return quantity.Area(float64(flow) / float64(velocity)), nil
}

// A FilterChoice is a set of filters of one nominal size.
type FilterChoice struct {
	Count    int               `json:"count"`
	Width    quantity.Length   `json:"width"`
	Height   quantity.Length   `json:"height"`
	Velocity quantity.Velocity `json:"velocity"`
}

// nominalSizes of filters on the shelf, inches, by their face. Common practice, no
// source.
var nominalSizes = [][2]float64{
	{14, 20}, {16, 20}, {14, 25}, {16, 25}, {20, 20}, {20, 25}, {24, 24}, {20, 30},
}

// edge is how much smaller the open face is than the nominal size, each way: half
// an inch. Common practice, no source.
const edge = quantity.Length(0.5 * quantity.Foot / 12)

// FilterChoices returns the sets of up to four filters of a usual size that keep
// a flow at a face velocity or below, the fewest filters first and of those the
// smallest. The error is a *RangeError.
func FilterChoices(flow quantity.VolumeFlow, velocity quantity.Velocity) ([]FilterChoice, error) {
	need, err := FilterArea(flow, velocity)
	if err != nil {
		return nil, err
	}
	var out []FilterChoice
	for count := 1; count <= 4; count++ {
		for _, size := range nominalSizes {
			w, h := quantity.Inches(size[0]), quantity.Inches(size[1])
			one := quantity.Area((w - edge) * (h - edge))
			if face := quantity.Area(count) * one; face >= need &&
				(count == 1 || quantity.Area(count-1)*one < need) {
				out = append(
					out,
					FilterChoice{count, w, h, quantity.Velocity(float64(flow) / float64(face))},
				)
			}
		}
	}
	if len(out) == 0 {
		return nil, &RangeError{
			Quantity: "airflow for four filters",
			Value:    flow,
			Advice:   "it asks for a filter bank: size it by FilterArea",
		}
	}
	return out, nil
}
