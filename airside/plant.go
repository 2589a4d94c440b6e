package airside

import (
	"cmp"
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/internal/physics/coil"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// Conditions are what a cooling machine runs in.
type Conditions struct {
	Return psychro.Air
	// Airflow is counted at the return condition.
	Airflow quantity.VolumeFlow
	Outdoor quantity.Temperature
}

// Running is what a machine settles at.
type Running struct {
	// Evaporating is the dew temperature at the suction pressure.
	Evaporating quantity.Temperature `json:"evaporating"`
	// Surface is the coldest surface of the indoor coil.
	Surface quantity.Temperature `json:"surface"`
	// Supply is the dry bulb of the air that leaves the coil.
	Supply   quantity.Temperature `json:"supply"`
	Capacity quantity.Power       `json:"capacity"`
}

// A Plant says where a machine settles. [CapacityLine] is the simple one; a model
// of the whole refrigerant cycle is the better one.
type Plant interface {
	Run(Conditions) (Running, error)
}

// checkPlant refuses no plant, and conditions in which none runs.
func checkPlant(plant Plant, at Conditions) error {
	if plant == nil {
		return &RangeError{
			Quantity: "plant",
			Advice: "give a CapacityLine, as NewCapacityLine makes one, " +
				"or a model of the whole machine",
		}
	}
	return checkPass(at.Return, at.Airflow, Freezing)
}

// CapacityLine is a Plant of a coil and a compressor whose capacity changes in
// straight lines, always fed with liquid throughout: a fixed-speed machine of the
// right charge near the condition it was seen at. With an expansion valve it
// follows the whole-cycle model within 3 °F and 5 % of capacity from 65 to 95 °F
// outdoors and 43 to 100 % of the airflow; with a fixed restrictor, which floods
// or starves the coil as the weather moves, within 6 °F and 20 %.
type CapacityLine struct {
	Coil Coil `json:"coil"`
	// Capacity, Evaporating and Outdoor are the condition it was seen at.
	Capacity    quantity.Power       `json:"capacity"`
	Evaporating quantity.Temperature `json:"evaporating"`
	Outdoor     quantity.Temperature `json:"outdoor"`
	// PerEvaporating and PerOutdoor are the relative changes of capacity per
	// kelvin; zero stands for 0.036 and −0.009 (common practice, no source): 2 %
	// per °F of evaporating and −½ % per °F of outdoor temperature.
	PerEvaporating float64 `json:"perEvaporating,omitzero"`
	PerOutdoor     float64 `json:"perOutdoor,omitzero"`
}

const (
	usualPerEvaporating = 0.036
	usualPerOutdoor     = -0.009
)

// coldest and warmest are the evaporating temperatures that a plant is looked for between.
const coldest, warmest = quantity.Temperature(233.15), quantity.Temperature(313.15)

// NewCapacityLine returns the plant of a coil that was seen running at a condition, with
// refrigerant evaporating at a dew temperature. The error is a *RangeError.
func NewCapacityLine(
	c Coil, at Conditions, evaporating quantity.Temperature,
) (CapacityLine, error) {
	if err := checkOutdoor(at.Outdoor); err != nil {
		return CapacityLine{}, err
	}
	pass, err := c.Through(at.Return, at.Airflow, evaporating)
	if err != nil {
		return CapacityLine{}, err
	}
	capacity := pass.Capacity.Total.Value
	if err := limit.Within(
		"capacity of the coil as seen", capacity, quantity.Watts(10), quantity.Kilowatts(10000),
		"the coil does not cool: is the evaporating temperature above the return air?",
	); err != nil {
		return CapacityLine{}, err
	}
	return CapacityLine{
		Coil:        c,
		Capacity:    capacity,
		Evaporating: evaporating,
		Outdoor:     at.Outdoor,
	}, nil
}

func checkOutdoor(t quantity.Temperature) error {
	return limit.Within(
		"outdoor temperature", t, quantity.Celsius(-60), quantity.Celsius(70),
		"it is the dry bulb of the air entering the condenser",
	)
}

// Run finds the evaporating temperature at which coil and compressor move the
// same heat. The error is a *RangeError where there is none above −40 °C: with no
// air or no load a machine goes off on its low pressure.
func (l CapacityLine) Run(at Conditions) (Running, error) {
	if err := l.Coil.check(); err != nil {
		return Running{}, err
	}
	if err := checkPass(at.Return, at.Airflow, coldest); err != nil {
		return Running{}, err
	}
	if err := checkOutdoor(at.Outdoor); err != nil {
		return Running{}, err
	}
	if err := limit.Within(
		"capacity", l.Capacity, quantity.Watts(10), quantity.Kilowatts(10000),
		"make the plant with NewCapacityLine",
	); err != nil {
		return Running{}, err
	}
	perEvaporating, perOutdoor := l.slopes()
	if !(perEvaporating > 0 && perEvaporating < 1 && perOutdoor > -0.1 && perOutdoor < 0.1) {
		return Running{}, &RangeError{
			Quantity: "change of capacity per kelvin",
			Value:    quantity.Number(perEvaporating),
			Min:      quantity.Number(0),
			Max:      quantity.Number(1),
			Advice: "it is a share per kelvin, and capacity rises with the evaporating " +
				"temperature",
		}
	}
	m := l.matchIn(at)
	var last coil.Result
	lastAt := math.NaN()
	excess := func(t float64) (e float64) {
		last, e = m.at(t)
		lastAt = t
		return e
	}
	t, ok := risingFrom(
		float64(l.Evaporating), excess, float64(coldest),
		min(float64(warmest), float64(at.Return.DryBulb())), 1e-10*float64(l.Capacity),
	)
	if !ok {
		return Running{}, &RangeError{
			Quantity: "evaporating temperature",
			Value:    coldest,
			Min:      coldest,
			Max:      warmest,
			Advice: "coil and compressor do not balance there: " +
				"with so little air or load the machine would go off on its low-pressure control",
		}
	}
	if lastAt != t {
		excess(t)
	}
	if math.IsNaN(last.Heat) {
		return Running{}, &RangeError{
			Quantity: "airflow of the plant",
			Value:    at.Airflow,
			Min:      quantity.VolumeFlow(0),
			Max:      largestFlow,
			Advice:   "coil and air are too far apart in size for an answer",
		}
	}
	return Running{
		Evaporating: quantity.Temperature(t), Surface: quantity.Temperature(last.Surface),
		Supply: quantity.Temperature(last.T), Capacity: quantity.Power(last.Heat),
	}, nil
}

// slopes of the capacity, the usual ones where none are stated.
func (l CapacityLine) slopes() (perEvaporating, perOutdoor float64) {
	return cmp.Or(l.PerEvaporating, usualPerEvaporating), cmp.Or(l.PerOutdoor, usualPerOutdoor)
}

// A match is the coil of a line and its compressor in a condition.
type match struct {
	line    CapacityLine
	outdoor quantity.Temperature
	air     coil.Air
	dryAir  float64
	airUA   float64
}

func (l CapacityLine) matchIn(at Conditions) match {
	dryAir := float64(at.Return.DryAirFlow(at.Airflow))
	return match{l, at.Outdoor, coil.NewAir(at.Return), dryAir, l.Coil.airUA(dryAir)}
}

// at is what the coil does at an evaporating temperature, and by how much the compressor
// takes more heat than it gives.
func (m *match) at(t float64) (coil.Result, float64) {
	r := m.air.Through(m.dryAir, t, m.airUA, float64(m.line.Coil.RefrigerantSide))
	perEvaporating, perOutdoor := m.line.slopes()
	share := 1 + perEvaporating*(t-float64(m.line.Evaporating)) +
		perOutdoor*float64(m.outdoor-m.line.Outdoor)
	return r, max(0, share*float64(m.line.Capacity)) - r.Heat
}
