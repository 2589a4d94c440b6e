package refrigerant

import (
	"math"

	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A Cylinder is a refillable refrigerant cylinder as its collar is stamped.
type Cylinder struct {
	// WaterCapacity is stamped WC: the water that it holds, brim-full, at 60 °F.
	WaterCapacity quantity.Mass `json:"waterCapacity"`
	// Tare is stamped TW: the empty cylinder with its valve.
	Tare quantity.Mass `json:"tare"`
	// Service is the service pressure stamped behind the specification, 400 psig in
	// DOT-4BA400 and 1800 psig in DOT-3AA1800; zero where it cannot be read.
	Service quantity.GaugePressure `json:"service,omitzero"`
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
// that 49 CFR 173.304a(a)(2), table 1, permits for the gas by name, in a cylinder of
// a service pressure or higher.
type fillingDensity struct {
	designation string
	service     float64 // psig
	ratio       float64
}

// fillingDensities are in the order of the service pressure for each gas. The service
// pressures of R-152a and R-1132a are from memory.
var fillingDensities = [...]fillingDensity{
	{
		"R-12", 225, 1.19,
	}, {"R-22", 240, 1.05}, {"R-115", 225, 1.10}, {"R-142b", 150, 1.00}, {"R-152a", 150, 0.79},
	{
		"R-717", 480, 0.54,
	}, {"R-744", 1800, 0.68}, {"R-744", 2000, 0.703}, {"R-744", 2265, 0.732},
	{"R-744", 2400, 0.745},
	{"R-1132a", 2200, 0.73},
}

// fillingDensity returns the figure of r for a cylinder of a service pressure, the
// lowest for zero, and the least service pressure that the table asks for.
func (r *Refrigerant) fillingDensity(
	service quantity.GaugePressure,
) (ratio float64, least quantity.GaugePressure, named bool) {
	if !r.Pure() {
		return 0, 0, false
	}
	for _, f := range fillingDensities {
		if f.designation != r.parts[0].Designation {
			continue
		}
		stamped := quantity.PSIG(f.service)
		if !named {
			ratio, least, named = f.ratio, stamped, true
		}
		if service >= stamped*(1-1e-9) {
			ratio = f.ratio
		}
	}
	return ratio, least, named
}

// leastService is the lowest service pressure of a cylinder for r: that of the table
// where it names the gas, and else what holds the pressure at 131 °F to 5/4 of it, 49 CFR
// 173.301a(d).
func (r *Refrigerant) leastService() (quantity.GaugePressure, error) {
	if _, least, named := r.fillingDensity(0); named {
		return least, nil
	}
	const warmest quantity.Temperature = (131 + 459.67) / 1.8
	p, err := r.BubblePressure(min(warmest, r.Critical().Temperature))
	return max(p.Gauge(quantity.StandardAtmosphere)/1.25, 0), err
}

// checkService refuses a cylinder that is too weak for r, or of which that is not known
// where r is a gas of high-pressure cylinders.
func (c Cylinder) checkService(r *Refrigerant, least quantity.GaugePressure) error {
	advice := "the pressure stamped behind DOT is too low for this refrigerant: " +
		"use another cylinder"
	if r.supercriticalInSummer() {
		advice = "only a high-pressure cylinder (DOT-3A, 3AA, 3AL and the like) may take this " +
			"gas, never a recovery cylinder of an air conditioner; " +
			"give the pressure stamped behind its specification"
		if c.Service == 0 {
			return &RangeError{
				Quantity: "service pressure of the cylinder for " + r.designation,
				Value:    c.Service,
				Min:      least,
				Advice:   advice,
			}
		}
	}
	if c.Service != 0 && !(c.Service >= least*(1-1e-9)) {
		return &RangeError{
			Quantity: "service pressure of the cylinder for " + r.designation,
			Value:    c.Service,
			Min:      least,
			Advice:   advice,
		}
	}
	return nil
}

// A FillRule is what bounds how far a cylinder is filled.
type FillRule string

// The rules of filling.
const (
	// ByLevel: at 130 °F liquid fills no more than 80 % of the volume.
	ByLevel FillRule = "liquid-level"
	// ByDensity: so much mass for the water that the cylinder holds.
	ByDensity FillRule = "filling-density"
)

const (
	levelSource = "common shipping practice; 49 CFR 173.304(b) forbids liquid-full at 131 °F"
	densityLaw  = "49 CFR 173.304a(a)(2)"
)

// A Fill is how far a cylinder may be filled, and why no further.
type Fill struct {
	Net    quantity.Mass `json:"net"`   // refrigerant
	Gross  quantity.Mass `json:"gross"` // refrigerant and cylinder: what the scale shows
	Rule   FillRule      `json:"rule"`  // the rule that gave Net
	Source string        `json:"source"`
	// Service is the lowest service pressure that a cylinder for it is stamped with.
	Service quantity.GaugePressure `json:"service"`
	// LiquidFull is the temperature at which Net fills the cylinder with liquid; zero
	// where it never does. What it lies above 131 °F is all the margin there is.
	LiquidFull quantity.Temperature `json:"liquidFull,omitzero"`
	// Cautions are for the person filling it, most urgent first.
	Cautions []fact.Fact `json:"cautions,omitempty"`
}

// Volume returns the inside volume of c, and 0 of a water capacity that is no number.
func (c Cylinder) Volume() quantity.Volume {
	return finite.OrZero(quantity.Volume(c.WaterCapacity.Kilograms() * waterVolume))
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
// has one for the cylinder's service pressure, and a *RangeError where it has none
// or the service pressure is not known. A cylinder stamped for less than the gas needs
// is a *RangeError too.
func (c Cylinder) SafeFill(r *Refrigerant) (Fill, error) {
	if err := c.check(); err != nil {
		return Fill{}, err
	}
	if len(r.components()) == 0 {
		return Fill{}, ErrNoRefrigerant
	}
	least, err := r.leastService()
	if err != nil {
		return Fill{}, err
	}
	ratio, _, named := r.fillingDensity(c.Service)
	byLaw := ratio * c.WaterCapacity.Kilograms()
	f := Fill{Rule: ByDensity, Source: densityLaw, Service: least}
	net := byLaw
	if !r.supercriticalInSummer() {
		level, err := c.ContentsFromLevel(r, fillLevel, fillTemperature)
		if err != nil {
			return Fill{}, err
		}
		if byLevel := level.Kilograms(); !named || byLevel < byLaw {
			f.Rule, f.Source = ByLevel, levelSource
			net = byLevel
		}
	} else if !named {
		return Fill{}, &RangeError{
			Quantity: "80 % liquid rule at 130 °F for " + r.designation,
			Value:    fillTemperature,
			Max:      r.Critical().Temperature,
			Advice: "above its critical temperature the fluid is no liquid; " +
				"fill by the density marked on the high-pressure cylinder or as 49 CFR 173.304a " +
				"and the supplier say",
		}
	}
	if err := c.checkService(r, least); err != nil {
		return Fill{}, err
	}
	f.Net = quantity.Kilograms(net)
	f.Gross = f.Net + c.Tare
	if full, err := c.LiquidFullTemperature(r, f.Net); err == nil {
		f.LiquidFull = full
	}
	f.Cautions = c.cautions(r, f)
	for _, h := range r.Hazards() {
		f.Cautions = append(f.Cautions, h.Fact())
	}
	return f, nil
}

// thinMargin is how near to 131 °F a fill may be liquid-full without being told so.
const thinMargin quantity.Temperature = 5

func (c Cylinder) cautions(r *Refrigerant, f Fill) []fact.Fact {
	const warmest quantity.Temperature = (131 + 459.67) / 1.8
	rated := fact.Code("caution.cylinder-for")
	if r.supercriticalInSummer() {
		rated = "caution.high-pressure-cylinder"
	}
	list := []fact.Fact{
		fact.New(rated, fact.Amount("service", f.Service), fact.Of("fluid", r.designation)),
		fact.New("caution.weigh-while-filling"),
	}
	if !r.supercriticalInSummer() && f.LiquidFull > 0 && f.LiquidFull < warmest+thinMargin {
		list = append(list, fact.New(
			"caution.liquid-full", fact.Amount("at", f.LiquidFull),
			fact.Amount("margin", f.LiquidFull.Sub(warmest)),
		))
	}
	list = append(list, fact.New("caution.disposable"))
	if r.Flammable() {
		list = append(list, fact.New("caution.flammable-cylinder"))
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
			Advice: "the scale shows less than the empty cylinder; " +
				"zero the scale and read the tare (TW) on the collar again",
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
	Cautions []fact.Fact   `json:"cautions,omitempty"`
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
		room.Cautions = append([]fact.Fact{fact.New("caution.overfilled")}, room.Cautions...)
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
func (c Cylinder) ContentsFromLevel(
	r *Refrigerant, level float64, t quantity.Temperature,
) (quantity.Mass, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	if !(level >= 0 && level <= 1) {
		return 0, fractionError(
			"liquid level", level, 0, 1, "give the share of the cylinder that holds liquid, 0 to 1",
		)
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
func (c Cylinder) LiquidLevel(
	r *Refrigerant, net quantity.Mass, t quantity.Temperature,
) (float64, error) {
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
			Advice: "the cylinder is liquid-full there and will burst or vent; " +
				"take refrigerant out before it warms",
		}
	}
	if liquid <= vapor {
		return 0, &RangeError{
			Quantity: "temperature of a liquid level of " + r.designation,
			Value:    t,
			Max:      r.Critical().Temperature,
			Advice: "at its critical temperature liquid and vapor are one and there is no " +
				"level; weigh the cylinder",
		}
	}
	return max((density-vapor)/(liquid-vapor), 0), nil
}

// LiquidFullTemperature returns the temperature at which net of r fills c with
// liquid. From there on warming raises the pressure by many bars per degree
// until the relief opens or the shell bursts. A cylinder that holds too little
// ever to be liquid-full gives a *RangeError that says so.
func (c Cylinder) LiquidFullTemperature(
	r *Refrigerant, net quantity.Mass,
) (quantity.Temperature, error) {
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
			Advice: "so much does not fit as liquid at any temperature; check water capacity, " +
				"tare and scale",
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
	const least = 1e-3 // kg: no cylinder is smaller
	if w := float64(c.WaterCapacity); !(w >= least && w < 1e5) {
		return &RangeError{
			Quantity: "water capacity of the cylinder",
			Value:    c.WaterCapacity,
			Min:      quantity.Kilograms(least),
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
