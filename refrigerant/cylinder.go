package refrigerant

import (
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
)

// A Cylinder is a refillable refrigerant cylinder as its collar is stamped.
type Cylinder struct {
	WaterCapacity quantity.Mass `json:"waterCapacity"` // stamped WC: the water it holds, brim-full, at 60 °F
	Tare          quantity.Mass `json:"tare"`          // stamped TW: the empty cylinder with its valve
}

// waterVolume is the volume of water per mass at 60 °F in m³/kg, from the
// 27.737 cubic inches per pound of 49 CFR 173.304a(a)(2), note 1.
const waterVolume = 27.737 * 16.387064e-6 / quantity.Pound

// Full and fillTemperature are the common shipping rule for cylinders of
// refrigerant: at 130 °F, liquid takes no more than 80 % of the volume.
const (
	fillLevel                            = 0.80
	fillTemperature quantity.Temperature = (130 + 459.67) / 1.8
)

// A fillingDensity is the most mass of a gas, as a share of the water capacity,
// that 49 CFR 173.304a(a)(2), table 1, permits for the gas by name.
type fillingDensity struct {
	designation string
	ratio       float64
}

// The figures for R-744 depend on the cylinder; this is that of service
// pressure 1800 psi. R-152a and R-1132a are from memory.
var fillingDensities = [...]fillingDensity{
	{"R-12", 1.19}, {"R-22", 1.05}, {"R-115", 1.10}, {"R-142b", 1.00},
	{"R-152a", 0.79}, {"R-717", 0.54}, {"R-744", 0.68}, {"R-1132a", 0.73},
}

func (r *Refrigerant) fillingDensity() (float64, bool) {
	if r.Pure() {
		for _, f := range fillingDensities {
			if f.designation == r.parts[0].Designation {
				return f.ratio, true
			}
		}
	}
	return 0, false
}

// A Fill is how far a cylinder may be filled, and why no further.
type Fill struct {
	Net   quantity.Mass `json:"net"`   // refrigerant
	Gross quantity.Mass `json:"gross"` // refrigerant and cylinder: what the scale shows
	Rule  string        `json:"rule"`  // the rule that gave Net
	// Cautions are for the person filling it, most urgent first.
	Cautions []string `json:"cautions,omitempty"`
}

// Volume returns the inside volume of c.
func (c Cylinder) Volume() quantity.Volume {
	return quantity.Volume(c.WaterCapacity.Kilograms() * waterVolume)
}

// SafeFill returns the most of r that c may hold. The rule is that at 130 °F
// liquid fills no more than 80 % of the volume: common practice for refillable
// and recovery cylinders, on the safe side of 49 CFR 173.304(b), which forbids
// a cylinder to be liquid-full at 131 °F. Where 49 CFR 173.304a(a)(2) names the
// gas, its filling density holds too, and the lower figure is returned.
//
// Oil, moisture or another refrigerant in a recovery cylinder take room that no
// figure here knows of. What is stamped on the cylinder and the shipper's rules
// outrank this.
//
// A gas whose critical temperature is below 130 °F is never liquid at the
// temperature of the rule: the answer is its filling density where the table
// has one, and a *RangeError where it has none.
func (c Cylinder) SafeFill(r *Refrigerant) (Fill, error) {
	if err := c.check(); err != nil {
		return Fill{}, err
	}
	if len(r.components()) == 0 {
		return Fill{}, ErrNoRefrigerant
	}
	ratio, named := r.fillingDensity()
	byLaw := ratio * c.WaterCapacity.Kilograms()
	f := Fill{Rule: "49 CFR 173.304a(a)(2), filling density of " + r.designation}
	net := byLaw
	if fillTemperature < r.Critical().Temperature {
		level, err := c.ContentsFromLevel(r, fillLevel, fillTemperature)
		if err != nil {
			return Fill{}, err
		}
		if byLevel := level.Kilograms(); !named || byLevel < byLaw {
			f.Rule, net = "80 % liquid by volume at 130 °F (common shipping rule; 49 CFR 173.304(b) forbids liquid-full at 131 °F)", byLevel
		}
	} else if !named {
		return Fill{}, &RangeError{
			Quantity: "80 % liquid rule at 130 °F for " + r.designation,
			Value:    fillTemperature,
			Max:      r.Critical().Temperature,
			Advice:   "above its critical temperature the fluid is no liquid; fill by the density marked on the high-pressure cylinder or as 49 CFR 173.304a and the supplier say",
		}
	}
	f.Net = quantity.Kilograms(net)
	f.Gross = f.Net + c.Tare
	f.Cautions = append(c.cautions(r), r.Cautions()...)
	return f, nil
}

func (c Cylinder) cautions(r *Refrigerant) []string {
	list := []string{
		"weigh while filling and stop at the gross weight; an overfilled cylinder goes liquid-full as it warms and bursts",
		"use a refillable cylinder in test date, rated for the pressure of " + r.designation,
	}
	if p, err := r.BubblePressure(fillTemperature); err == nil {
		list[1] += fmt.Sprintf(", about %.0f psia at 130 °F", p.PSIA())
	}
	list = append(list, "never refill a disposable cylinder (DOT 39)")
	if r.Flammable() {
		list = append(list, "flammable: cylinder with left-hand thread and marking for flammable gas, grounded, no ignition source near")
	}
	return list
}

// Contents returns the refrigerant in c when the scale shows gross. A gross mass
// below the tare is a *RangeError: wrong tare, or scale not zeroed.
func (c Cylinder) Contents(gross quantity.Mass) (quantity.Mass, error) {
	if err := c.checkTare(); err != nil {
		return 0, err
	}
	if !(gross >= c.Tare && float64(gross) < math.Inf(1)) {
		return 0, &RangeError{
			Quantity: "gross mass of the cylinder",
			Value:    gross,
			Min:      c.Tare,
			Advice:   "the scale shows less than the empty cylinder; zero the scale and read the tare (TW) on the collar again",
		}
	}
	return gross - c.Tare, nil
}

// A Room is what a cylinder may still take.
type Room struct {
	// MayTake is the refrigerant that may be added. Below zero the cylinder is
	// overfilled by that much.
	MayTake  quantity.Mass `json:"mayTake"`
	Contents quantity.Mass `json:"contents"` // what is in it
	Safe     quantity.Mass `json:"safe"`     // what may be in it at most
	Cautions []string      `json:"cautions,omitempty"`
}

// RoomFor returns how much more of r may go into c when the scale shows gross
// and what is in it is r too. Never mix refrigerants in a recovery cylinder: the
// mixture has another pressure and cannot be reclaimed. The errors are those of
// SafeFill and Contents.
func (c Cylinder) RoomFor(r *Refrigerant, gross quantity.Mass) (Room, error) {
	safe, err := c.SafeFill(r)
	if err != nil {
		return Room{}, err
	}
	net, err := c.Contents(gross)
	if err != nil {
		return Room{}, err
	}
	room := Room{MayTake: safe.Net - net, Contents: net, Safe: safe.Net, Cautions: safe.Cautions}
	if room.MayTake < 0 {
		room.Cautions = append([]string{"OVERFILLED: add nothing, keep it cool and in the shade, and move liquid to an empty cylinder now"}, room.Cautions...)
	}
	return room, nil
}

// ContentsFromLevel returns the mass of r in c when liquid stands at the given
// share of its volume, 0 to 1, at the temperature t: what the frost line or the
// change from warm to cold on the outside of a cylinder tells. In an upright
// straight cylinder the share of volume is the share of height.
//
// The vapor above is counted as saturated, of the composition of the whole. The
// error is a *RangeError, or ErrNoRefrigerant.
func (c Cylinder) ContentsFromLevel(r *Refrigerant, level float64, t quantity.Temperature) (quantity.Mass, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	if !(level >= 0 && level <= 1) {
		return 0, fractionError("liquid level", level, 0, 1, "give the share of the cylinder that holds liquid, 0 to 1")
	}
	liquid, vapor, err := r.coexisting(t)
	if err != nil {
		return 0, err
	}
	return quantity.Kilograms(float64(c.Volume()) * (level*liquid + (1-level)*vapor)), nil
}

// LiquidLevel returns the share of the volume of c, 0 to 1, that is liquid when
// it holds net of r at the temperature t. Above the temperature at which it is
// liquid-full the answer is a *RangeError: there is no vapor left, and every
// further degree raises the pressure by many bars. So it is from the critical
// temperature on, where no liquid is.
func (c Cylinder) LiquidLevel(r *Refrigerant, net quantity.Mass, t quantity.Temperature) (float64, error) {
	density, err := c.density(net)
	if err != nil {
		return 0, err
	}
	liquid, vapor, err := r.coexisting(t)
	if err != nil {
		return 0, err
	}
	if density > liquid {
		full, err := c.LiquidFullTemperature(r, net)
		if err != nil {
			return 0, err
		}
		return 0, &RangeError{
			Quantity: "temperature of a cylinder with " + net.String() + " of " + r.designation,
			Value:    t,
			Max:      full,
			Advice:   "the cylinder is liquid-full there and will burst or vent; take refrigerant out before it warms",
		}
	}
	if liquid <= vapor {
		return 0, &RangeError{
			Quantity: "temperature of a liquid level of " + r.designation,
			Value:    t,
			Max:      r.Critical().Temperature,
			Advice:   "at its critical temperature liquid and vapor are one and there is no level; weigh the cylinder",
		}
	}
	return max((density-vapor)/(liquid-vapor), 0), nil
}

// LiquidFullTemperature returns the temperature at which net of r fills c with
// liquid. From there on warming raises the pressure by many bars per degree
// until the relief opens or the shell bursts. A cylinder that holds too little
// ever to be liquid-full gives a *RangeError that says so.
func (c Cylinder) LiquidFullTemperature(r *Refrigerant, net quantity.Mass) (quantity.Temperature, error) {
	density, err := c.density(net)
	if err != nil {
		return 0, err
	}
	low, high := r.Limits().MinTemperature, r.Critical().Temperature
	dense, err := r.BubbleDensity(low)
	if err != nil {
		return 0, err
	}
	if critical := r.Critical().Density; density <= float64(critical) {
		return 0, &RangeError{
			Quantity: "contents of the cylinder for a liquid-full temperature of " + r.designation,
			Value:    net,
			Min:      quantity.Kilograms(float64(critical) * float64(c.Volume())),
			Advice:   "so little never fills the cylinder with liquid at any temperature",
		}
	}
	if density > float64(dense) {
		return 0, &RangeError{
			Quantity: "contents of the cylinder",
			Value:    net,
			Max:      quantity.Kilograms(float64(dense) * float64(c.Volume())),
			Advice:   "so much does not fit as liquid at any temperature; check water capacity, tare and scale",
		}
	}
	for range 60 {
		t := low + (high-low)/2
		d, err := r.BubbleDensity(t)
		if err != nil {
			return 0, err
		}
		if float64(d) > density {
			low = t
		} else {
			high = t
		}
	}
	return low, nil
}

// coexisting returns the densities of saturated liquid and vapor of r at t.
func (r *Refrigerant) coexisting(t quantity.Temperature) (liquid, vapor float64, err error) {
	l, err := r.BubbleDensity(t)
	if err != nil {
		return 0, 0, err
	}
	v, err := r.DewDensity(t)
	return float64(l), float64(v), err
}

func (c Cylinder) check() error {
	if w := float64(c.WaterCapacity); !(w > 0 && w < 1e5) {
		return &RangeError{
			Quantity: "water capacity of the cylinder",
			Value:    c.WaterCapacity,
			Min:      quantity.Kilograms(0),
			Max:      quantity.Kilograms(1e5),
			Advice:   "read WC on the collar",
		}
	}
	return c.checkTare()
}

func (c Cylinder) checkTare() error {
	if w := float64(c.Tare); !(w >= 0 && w < 1e5) {
		return &RangeError{
			Quantity: "tare of the cylinder",
			Value:    c.Tare,
			Min:      quantity.Kilograms(0),
			Max:      quantity.Kilograms(1e5),
			Advice:   "read TW on the collar",
		}
	}
	return nil
}

// density returns the mass per volume of net in c.
func (c Cylinder) density(net quantity.Mass) (float64, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	if !(net >= 0 && float64(net) < 1e6) {
		return 0, &RangeError{
			Quantity: "contents of the cylinder",
			Value:    net,
			Min:      quantity.Kilograms(0),
			Max:      quantity.Kilograms(1e6),
			Advice:   "give the mass of refrigerant, gross less tare",
		}
	}
	return float64(net) / float64(c.Volume()), nil
}
