package charge

import (
	"math"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// LineCharge returns the liquid that a length of liquid line holds: its volume
// times the density of saturated liquid at the temperature of the line. The
// liquid is a little denser for being subcooled and under pressure, by less
// than 1 %.
//
// Errors are *RangeError, and refrigerant.ErrNoRefrigerant.
func LineCharge(
	fluid *refrigerant.Refrigerant, tube Tube, length quantity.Length, liquid quantity.Temperature,
) (quantity.Mass, error) {
	if err := checkFluid(fluid); err != nil {
		return 0, err
	}
	if err := tube.check(); err != nil {
		return 0, err
	}
	if err := checkLength("liquid line", length); err != nil {
		return 0, err
	}
	density, err := fluid.BubbleDensity(liquid)
	if err != nil {
		return 0, err
	}
	return quantity.Mass(float64(density) * float64(tube.VolumeOf(length))), nil
}

func checkFluid(fluid *refrigerant.Refrigerant) error {
	if fluid.MolarMass() == 0 {
		return refrigerant.ErrNoRefrigerant
	}
	return nil
}

func checkLength(what string, l quantity.Length) error {
	const longest = quantity.Length(500)
	if !(l >= 0 && l <= longest) {
		return &RangeError{
			Quantity: "length of the " + what,
			Value:    l,
			Min:      quantity.Length(0),
			Max:      longest,
			Advice:   "give the length of one pipe of the pair",
		}
	}
	return nil
}

// An Adder is refrigerant per length of line, as a label states it: 0.6 oz per
// foot.
type Adder struct {
	Mass quantity.Mass   `json:"mass"`
	Per  quantity.Length `json:"per"`
}

// An Accessory is a part that holds refrigerant of its own, such as a filter
// drier or an accumulator, with the figure of its maker.
type Accessory struct {
	Name string        `json:"name"`
	Mass quantity.Mass `json:"mass"`
}

// A DevicePlace is the end of the line set at which the refrigerant expands in cooling.
type DevicePlace int

// The places.
const (
	// DeviceIndoors: the small line is full of liquid, as in ducted split systems.
	DeviceIndoors DevicePlace = iota + 1
	// DeviceOutdoors: the small line carries liquid and vapor, as in most systems without
	// ducts, and holds about half as much.
	DeviceOutdoors
)

var devicePlaceNames = []string{"not-stated", "indoors", "outdoors"}

// String returns "indoors" or "outdoors".
func (p DevicePlace) String() string { return enum.Name(devicePlaceNames, p) }

// MarshalText writes the name of the place.
func (p DevicePlace) MarshalText() ([]byte, error) {
	return enum.Text("place of the metering device", devicePlaceNames, p)
}

// UnmarshalText reads what MarshalText writes.
func (p *DevicePlace) UnmarshalText(text []byte) error {
	return enum.Parse("place of the metering device", devicePlaceNames, text, p)
}

// A WeighedCharge is what is known of a machine whose charge is weighed in.
type WeighedCharge struct {
	Fluid *refrigerant.Refrigerant
	// Label is the charge on the label, which holds enough for FactoryLength
	// of liquid line (zero: for none) in FactoryTube (zero: the tube installed).
	Label         quantity.Mass
	FactoryLength quantity.Length
	FactoryTube   Tube
	// Length and Tube of the liquid line as installed; both zero for a machine
	// in one housing, whose label holds all of it.
	Length quantity.Uncertain[quantity.Length]
	Tube   Tube
	// Adder is the label's own figure, which outranks what is computed; nil
	// where the label has none.
	Adder *Adder
	// Device is where the refrigerant expands. Where it is not stated the line is counted as
	// full of liquid, and the doubt holds that it may not be.
	Device DevicePlace
	// LiquidTemperature of the line in running; zero takes 95 °F.
	LiquidTemperature quantity.Temperature
	Accessories       []Accessory
}

// A Weighing is what to weigh in.
type Weighing struct {
	// Total is the charge to weigh in, with its standard uncertainty.
	Total quantity.Uncertain[quantity.Mass] `json:"total"`
	Label quantity.Mass                     `json:"label"`
	// Line is what the line set adds to the label charge; below zero where it is shorter than the
	// factory's allowance, but for a device outdoors: there makers state a length up to which the
	// label holds, and what to add beyond it, never what to take away (common practice, no
	// source).
	Line        quantity.Mass `json:"line"`
	Accessories quantity.Mass `json:"accessories"`
	// PerFoot is the adder that was used, per foot of liquid line.
	PerFoot quantity.Mass `json:"perFoot"`
	// Source of the adder: the label, or computed from density and bore.
	Source fact.Source `json:"source"`
	// AskDevice says that the place of the metering device is not known and matters.
	AskDevice bool `json:"askDevice,omitzero"`
}

// Weigh returns the charge to weigh in: label, plus liquid line beyond the
// factory's allowance, plus accessories. Weighing in needs a circuit that is
// empty, tight and evacuated.
//
// The label's own adder comes first. One that is computed holds the doubt of the length,
// the bore, the liquid temperature, the place of the metering device and of how far adders
// that manufacturers print differ from bore times density. Errors are *RangeError, and
// refrigerant.ErrNoRefrigerant.
func (w WeighedCharge) Weigh() (Weighing, error) {
	if err := checkFluid(w.Fluid); err != nil {
		return Weighing{}, err
	}
	const most = quantity.Mass(1000)
	if !(w.Label > 0 && w.Label <= most) {
		return Weighing{}, &RangeError{
			Quantity: "label charge",
			Value:    w.Label,
			Max:      most,
			Advice: "it is above zero: read it on the unit's label; " +
				"without it a charge cannot be weighed in",
		}
	}
	if err := checkLength("liquid line", w.Length.Value); err != nil {
		return Weighing{}, err
	}
	if err := checkLength("factory line set", w.FactoryLength); err != nil {
		return Weighing{}, err
	}
	if !(w.Length.Std >= 0 && w.Length.Std <= 100) {
		return Weighing{}, &RangeError{
			Quantity: "standard uncertainty of the length of the liquid line",
			Value:    quantity.Length(w.Length.Std),
			Min:      quantity.Length(0),
			Max:      quantity.Length(100),
			Advice:   "give one standard deviation",
		}
	}
	out := Weighing{Label: w.Label, AskDevice: w.asksDevice()}
	variance := 0.0
	switch {
	case w.Length.Value == 0 && w.Tube == (Tube{}):
		out.Source = unitLabel
	case w.Adder != nil:
		const shortest, longest = quantity.Length(0.01), quantity.Length(100)
		if !(w.Adder.Mass >= 0 && w.Adder.Mass <= most &&
			w.Adder.Per >= shortest && w.Adder.Per <= longest) {
			return Weighing{}, &RangeError{
				Quantity: "label's adder",
				Value:    w.Adder.Mass,
				Min:      quantity.Mass(0),
				Max:      most,
				Advice: "give a mass and the length that it is for, 0.4 in to 328 ft, " +
					"as 0.6 oz per 1 ft",
			}
		}
		perMeter := float64(w.Adder.Mass) / float64(w.Adder.Per)
		out.Line = quantity.Mass(perMeter * float64(w.Length.Value-w.FactoryLength))
		out.PerFoot = quantity.Mass(perMeter * quantity.Foot)
		out.Source = unitLabel
		variance = square(perMeter * w.Length.Std)
	default:
		if err := w.computeLine(&out, &variance); err != nil {
			return Weighing{}, err
		}
	}
	if w.shorter() && w.Device == DeviceOutdoors {
		out.Line, variance = 0, 0
	}
	for _, a := range w.Accessories {
		if !(a.Mass >= 0 && a.Mass <= most) {
			return Weighing{}, &RangeError{
				Quantity: "charge of " + a.Name,
				Value:    a.Mass,
				Min:      quantity.Mass(0),
				Max:      most,
				Advice:   "take the figure of the part's maker",
			}
		}
		out.Accessories += a.Mass
	}
	variance += square(float64(smallestDose.value) / math.Sqrt(3))
	total := out.Label + out.Line + out.Accessories
	if !(total > 0) {
		return Weighing{}, &RangeError{
			Quantity: "charge to weigh in",
			Value:    total,
			Advice: "it is above zero: a line so much shorter than the label allows for leaves " +
				"nothing of the label charge: check that charge, both lengths and the adder",
		}
	}
	out.Total = quantity.Uncertain[quantity.Mass]{Value: total, Std: math.Sqrt(variance)}
	return out, nil
}

// Fact is the result for a record, "result.weigh-in": total, label, and what line and parts
// make it "more".
func (w Weighing) Fact() fact.Fact {
	return fact.New("result.weigh-in", fact.Measured("total", w.Total),
		fact.Amount("label", w.Label), fact.Amount("more", w.Line+w.Accessories))
}

// computeLine works the adder out from the density of the liquid and the bore.
func (w WeighedCharge) computeLine(out *Weighing, variance *float64) error {
	t := w.LiquidTemperature
	if t == 0 {
		t = liquidLineTemperature.value
	}
	factory := w.FactoryTube
	if factory == (Tube{}) {
		factory = w.Tube
	}
	const foot = quantity.Length(quantity.Foot)
	perFoot, err := LineCharge(w.Fluid, w.Tube, foot, t)
	if err != nil {
		return err
	}
	factoryPerFoot, err := LineCharge(w.Fluid, factory, foot, t)
	if err != nil {
		return err
	}
	doubt := quantity.Temperature(liquidLineDoubt.value)
	warmer, err := LineCharge(w.Fluid, w.Tube, foot, t+doubt)
	if err != nil {
		return err
	}
	feet := w.Length.Value.Feet()
	share, shareDoubt := w.lineShare()
	liquid := float64(perFoot)
	out.PerFoot = quantity.Mass(share * liquid)
	out.Line = quantity.Mass(share * (feet*liquid - w.FactoryLength.Feet()*float64(factoryPerFoot)))
	out.Source = computedAdder
	beyond := math.Abs(feet - w.FactoryLength.Feet())
	bore := 2 * float64(boreDoubt.value) / float64(w.Tube.Bore())
	*variance = square(share*liquid/quantity.Foot*w.Length.Std) +
		square(beyond*share*float64(warmer-perFoot)) + square(beyond*share*liquid*bore) +
		square(beyond*share*liquid*adderDoubt.value) + square(beyond*liquid*shareDoubt)
	return nil
}

// asksDevice reports whether the charge depends on a place that is not stated.
func (w WeighedCharge) asksDevice() bool {
	if w.Adder != nil {
		return w.Device == 0 && w.shorter()
	}
	return w.Device == 0 && w.Tube != (Tube{}) && w.Length.Value != w.FactoryLength
}

// shorter reports whether the line is shorter than the label allows for.
func (w WeighedCharge) shorter() bool { return w.Length.Value < w.FactoryLength }

// lineShare is how much of the small line counts as liquid, with its standard uncertainty.
func (w WeighedCharge) lineShare() (share, std float64) {
	switch w.Device {
	case DeviceIndoors:
		return 1, 0
	case DeviceOutdoors:
		return outdoorDeviceShare.value, outdoorDeviceDoubt.value
	}
	other := outdoorDeviceShare.value
	if w.shorter() {
		other = 0
	}
	return 1, (1 - other) / math.Sqrt(3) // full, or like one outdoors (GUM 4.3.7)
}

func square(x float64) float64 { return x * x }
