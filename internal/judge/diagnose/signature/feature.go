package signature

// A Feature is a reading, or a difference of readings, that tells causes apart.
type Feature int

// The features. Temperatures and their differences are in kelvin.
const (
	// Evaporating is the mean evaporating temperature: dew point less 0.4 of
	// the glide, as evaporation begins at a quality of about 0.2.
	Evaporating Feature = iota
	Superheat
	// CondensingOver is the middle of bubble and dew point at the liquid line
	// pressure over the outdoor air.
	CondensingOver
	Subcooling
	// DischargeOver is the discharge line over the middle condensing temperature.
	DischargeOver
	// Split is return less supply dry bulb, WetBulbSplit the same of wet bulbs.
	Split
	WetBulbSplit
	// CondenserRise is the air leaving the condenser over the outdoor air.
	CondenserRise
	// Airflow and Power are 100 times the natural logarithm of indoor air volume
	// flow over 400 CFM per ton of nominal capacity (or over the rated airflow),
	// and of electric power over nominal capacity; that is, about percent.
	Airflow
	Power

	Features = iota
)

var names = [Features]string{
	"evaporating temperature", "superheat", "condensing over outdoor air", "subcooling",
	"discharge line over condensing", "temperature split", "wet bulb split", "condenser air rise",
	"airflow", "power",
}

// String returns the name of the feature in the trade.
func (f Feature) String() string {
	if f < 0 || f >= Features {
		return "unknown feature"
	}
	return names[f]
}

// Weather is what the machine works against.
type Weather struct {
	Outdoor, ReturnWetBulb, ReturnDryBulb float64 // K
	// Thin is by how much of the standard atmosphere at sea level the air is
	// below it: 0.17 at 5,000 ft. Fans move the same volume everywhere, and so
	// less air.
	Thin float64
}

// Rated is the weather of AHRI 210/240 test A: 95 °F outdoors, 80 °F dry bulb
// and 67 °F wet bulb indoors.
var Rated = Weather{Outdoor: 308.15, ReturnWetBulb: 292.594, ReturnDryBulb: 299.817}

// extreme is 0 in weather in which most machines are measured, 1 well outside it
// (below about 57 °F or above 71 °F wet bulb in the return, or 68 °F outdoors),
// and between the two in between. Machines differ more there: restrictors flood
// and valves run out of their range.
func (w Weather) extreme() float64 {
	const wetLow, wetHigh, wetEdge = 287.0, 295.0, 2.0
	const outdoorLow, outdoorEdge = 293.0, 4.0
	return min(1, max(0, (wetLow-w.ReturnWetBulb)/wetEdge, (w.ReturnWetBulb-wetHigh)/wetEdge,
		(outdoorLow-w.Outdoor)/outdoorEdge))
}

// Terms of the mean of a sound machine, and of a shift.
const (
	meanTerms  = 20
	shiftTerms = 11
)

// A Point is a weather and a refrigerant as the terms of a polynomial of the second degree. The
// first terms are those that shifts use.
type Point [meanTerms]float64

// Each of what a Point is made of is scaled to about 1.
const so, sw, sd, sq, sg, st = 1 / 10.0, 1 / 4.0, 1 / 4.0, 1 / 10.0, 1 / 5.0, 1 / 0.15

func scaled(w Weather, r Fluid) (o, i, d, q, g, t float64) {
	return (w.Outdoor - Rated.Outdoor) * so, (w.ReturnWetBulb - Rated.ReturnWetBulb) * sw,
		(w.ReturnDryBulb - Rated.ReturnDryBulb) * sd,
		(r.Superheat - UsualFluid.Superheat) * sq, r.Glide * sg, w.Thin * st
}

func basis(w Weather, r Fluid) Point {
	o, i, d, q, g, t := scaled(w, r)
	return Point{1, o, i, q, d, o * o, i * i, o * i, q * o, q * i, t, i * d, d * d, o * d, q * q,
		q * d, t * t, t * o, t * i, g}
}

// sloping are the terms of each of the slopes that are not zero.
var sloping = [3][]int{
	{1, 5, 7, 8, 13, 17},
	{2, 6, 7, 9, 11, 18},
	{4, 11, 12, 13, 15},
}

// slopes are the derivatives of basis by outdoor, return wet bulb and return dry bulb; the
// atmosphere is known well enough.
func slopes(w Weather, r Fluid) (slopes [3]Point) {
	o, i, d, q, _, t := scaled(w, r)
	slopes[0] = Point{0, so, 0, 0, 0, 2 * o * so, 0, i * so, q * so, 0, 0, 0, 0, d * so, 0, 0, 0,
		t * so, 0, 0}
	slopes[1] = Point{0, 0, sw, 0, 0, 0, 2 * i * sw, o * sw, 0, q * sw, 0, d * sw, 0, 0, 0, 0, 0, 0,
		t * sw, 0}
	slopes[2] = Point{0, 0, 0, 0, sd, 0, 0, 0, 0, 0, 0, i * sd, 2 * d * sd, o * sd, 0, q * sd, 0, 0,
		0, 0}
	return slopes
}
