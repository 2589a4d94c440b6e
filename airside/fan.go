package airside

import (
	"slices"
	"sort"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"gonum.org/v1/gonum/interp"
)

// A FanPoint is a state of a fan.
type FanPoint struct {
	Flow   quantity.VolumeFlow     `json:"flow"`
	Static quantity.StaticPressure `json:"static"`
	// Power at the shaft; zero where it is not known.
	Power quantity.Power `json:"power,omitzero"`
}

// FanLaws returns the state of the same fan in the same ducts at another speed
// and density: flow goes with the speed, pressure with its square and the
// density, power with its cube and the density (ANSI/AMCA Standard 210 and ASHRAE
// Handbook HVAC Systems and Equipment, fan laws; from memory). A tenth more speed
// is a third more power: see that the motor's current stays within its label. The
// error is a *RangeError.
func FanLaws(at FanPoint, from, to RPM, densityFrom, densityTo quantity.Density) (FanPoint, error) {
	if err := checkFanPoint(at); err != nil {
		return FanPoint{}, err
	}
	if err := checkSpeed("speed", from); err != nil {
		return FanPoint{}, err
	}
	if err := checkSpeed("new speed", to); err != nil {
		return FanPoint{}, err
	}
	for _, rho := range []quantity.Density{densityFrom, densityTo} {
		if err := limit.Within(
			"density of the air", rho, 0.1, 10,
			"standard air has 0.075 lb/ft³; see psychro.Air.Density",
		); err != nil {
			return FanPoint{}, err
		}
	}
	n, rho := float64(to/from), float64(densityTo/densityFrom)
	return FanPoint{
		Flow:   at.Flow * quantity.VolumeFlow(n),
		Static: at.Static * quantity.StaticPressure(n*n*rho),
		Power:  at.Power * quantity.Power(n*n*n*rho),
	}, nil
}

func checkFanPoint(p FanPoint) error {
	if err := limit.Within(
		"flow of a fan", p.Flow, 0, largestFlow, "it is the volume at the fan's inlet",
	); err != nil {
		return err
	}
	if err := limit.Within(
		"static pressure of a fan", p.Static, 0, 25000, "it is outlet less inlet",
	); err != nil {
		return err
	}
	return limit.Within(
		"power of a fan", p.Power, 0, quantity.Kilowatts(10000), "it is the power at the shaft",
	)
}

// A FanCurve is a blower's table at one speed tap, for standard air: flow at each
// external static pressure. Make one with [NewFanCurve].
type FanCurve struct {
	low, high quantity.StaticPressure
	flow      interp.FritschButland
}

// NewFanCurve returns the curve through the points of a table, with the flow
// falling as the static pressure rises, read between them by monotone cubics
// (Fritsch and Butland, SIAM Journal on Scientific and Statistical Computing 5,
// 1984). It needs two points or more. The error is a *RangeError: among others
// for the part of a fan's curve left of its peak, where one pressure has two
// flows.
func NewFanCurve(points []FanPoint) (*FanCurve, error) {
	if len(points) < 2 || len(points) > 1000 {
		return nil, &RangeError{
			Quantity: "points of a fan curve",
			Value:    quantity.Number(len(points)),
			Min:      quantity.Number(2),
			Max:      quantity.Number(1000),
			Advice:   "copy the row of the speed tap from the blower's table",
		}
	}
	sorted := slices.Clone(points)
	sort.SliceStable(sorted, func(i, j int) bool { return sorted[i].Static < sorted[j].Static })
	x, y := make([]float64, len(sorted)), make([]float64, len(sorted))
	for i, p := range sorted {
		if err := checkFanPoint(p); err != nil {
			return nil, err
		}
		x[i], y[i] = float64(p.Static), float64(p.Flow)
		if i == 0 {
			continue
		}
		if !(x[i] > x[i-1]) {
			return nil, &RangeError{
				Quantity: "static pressure of a fan curve",
				Value:    p.Static,
				Min:      sorted[i-1].Static,
				Advice:   "each static pressure stands once in the table",
			}
		}
		if !(y[i] < y[i-1]) {
			return nil, &RangeError{
				Quantity: "flow of a fan curve",
				Value:    p.Flow,
				Max:      sorted[i-1].Flow,
				Advice: "flow falls as static pressure rises; " +
					"leave out what lies left of the curve's peak",
			}
		}
	}
	c := &FanCurve{low: sorted[0].Static, high: sorted[len(sorted)-1].Static}
	if err := c.flow.Fit(x, y); err != nil {
		return nil, &RangeError{
			Quantity: "points of a fan curve",
			Value:    quantity.Number(len(points)),
			Advice:   err.Error(),
		}
	}
	return c, nil
}

// StandardFlow returns the flow of standard air against a static pressure. The
// error is a *RangeError off the table.
func (c *FanCurve) StandardFlow(static quantity.StaticPressure) (quantity.VolumeFlow, error) {
	if c.missing() {
		return 0, errNoFanCurve()
	}
	if err := limit.Within(
		"external static pressure", static, c.low, c.high,
		"the table ends there: is the reading right, "+
			"and the table that of the unit and its speed tap?",
	); err != nil {
		return 0, err
	}
	return quantity.VolumeFlow(c.flow.Predict(float64(static))), nil
}

// Airflow returns the flow of the fan against an external static pressure that
// was measured, in air as it is: a fan moves the same volume against a pressure
// that goes with the density, so the table is entered at the pressure times
// standard over actual density. Tables are good to about 5 % (tableStd, relative,
// zero for 0.05; common practice, no source). The error is a *RangeError off the
// table.
func (c *FanCurve) Airflow(
	static quantity.Uncertain[quantity.StaticPressure], air AirAt, tableStd float64,
) (Airflow, error) {
	if err := air.check("duct"); err != nil {
		return Airflow{}, err
	}
	if err := limit.Reading(
		"external static pressure", static, 0, 25000,
		"it is leaving less entering, see JudgeStatic",
	); err != nil {
		return Airflow{}, err
	}
	if tableStd == 0 {
		tableStd = 0.05
	}
	if !(tableStd > 0 && tableStd <= 1) {
		return Airflow{}, &RangeError{
			Quantity: "relative standard uncertainty of the table",
			Value:    quantity.Number(tableStd),
			Min:      quantity.Number(0),
			Max:      quantity.Number(1),
			Advice:   "5 % is 0.05",
		}
	}
	var x, std inputs
	var names [maxInputs]string
	air.inputs(&x, &std, &names)
	x[3], std[3], names[3] = float64(static.Value), static.Std, "externalStatic"
	x[4], std[4], names[4] = 1, tableStd, "table"
	return measureAirflow(ByFanCurve, x, std, &names, func(x inputs) (float64, psychro.Air, error) {
		a, err := air.state(&x)
		if err != nil {
			return 0, a, err
		}
		flow, err := c.StandardFlow(
			quantity.StaticPressure(x[3] * float64(standardDensity()/a.Density())),
		)
		return x[4] * float64(flow), a, err
	})
}

// Meets returns where the fan and a duct system settle: the system's static
// pressure goes with the square of the flow through a point that is known. The
// error is a *RangeError where they meet off the table.
func (c *FanCurve) Meets(system FanPoint) (FanPoint, error) {
	if c.missing() {
		return FanPoint{}, errNoFanCurve()
	}
	if err := checkFanPoint(system); err != nil {
		return FanPoint{}, err
	}
	if system.Flow == 0 || system.Static == 0 {
		return FanPoint{}, &RangeError{
			Quantity: "known point of the system",
			Value:    system.Static,
			Min:      quantity.StaticPressure(0),
			Advice:   "give one flow and the static pressure it took",
		}
	}
	need := func(static float64) float64 {
		q := c.flow.Predict(static) / float64(system.Flow)
		return static - float64(system.Static)*q*q
	}
	s, ok := rising(need, 0, float64(c.low), float64(c.high), 1e-9*float64(c.high))
	if !ok {
		return FanPoint{}, &RangeError{
			Quantity: "static pressure where fan and system meet",
			Value:    system.Static,
			Min:      c.low,
			Max:      c.high,
			Advice:   "they meet off the table: take the row of another speed tap",
		}
	}
	return FanPoint{
		Flow:   quantity.VolumeFlow(c.flow.Predict(s)),
		Static: quantity.StaticPressure(s),
	}, nil
}

// missing holds for what NewFanCurve did not make: a curve goes up to some pressure.
func (c *FanCurve) missing() bool { return c == nil || c.high == 0 }

func errNoFanCurve() error {
	return &RangeError{
		Quantity: "fan curve",
		Advice:   "make it with NewFanCurve from the blower's table",
	}
}
