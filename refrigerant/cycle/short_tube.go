package cycle

import (
	"math"

	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A ShortTube is a fixed restrictor: a piston or an orifice a few diameters long,
// in which the flow chokes, so that the suction pressure hardly acts on it.
//
// The flow is that of Payne and O'Neal, "A mass flow rate correlation for
// refrigerants and refrigerant mixtures flowing through short tubes", HVAC&R
// Research 10(1), 2004, pp. 73-87, fitted to more than 1,200 measurements with
// R-134a, R-407C, R-410A and R-502, lengths of 9.5 to 25.4 mm and
// diameters of 1.09 to 1.94 mm.
type ShortTube struct {
	Diameter quantity.Length
	Length   quantity.Length
}

// area returns the cross section in m².
func (s ShortTube) area() float64 {
	d := float64(s.Diameter)
	return math.Pi / 4 * d * d
}

// Flow returns what passes from a state upstream to a pressure downstream. The
// upstream state is subcooled liquid or has a quality up to 0.5. The error is a
// *RangeError, or refrigerant.ErrNoRefrigerant.
func (s ShortTube) Flow(
	r *refrigerant.Refrigerant, upstream refrigerant.State, downstream quantity.Pressure,
) (quantity.MassFlow, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	in, err := inletOf(r, upstream)
	if err != nil {
		return 0, err
	}
	if !(downstream >= 0) || !finite.Is(downstream) {
		return 0, &RangeError{
			Quantity: "pressure downstream of an expansion device",
			Value:    downstream,
			Min:      quantity.Pressure(0),
			Max:      upstream.Pressure,
			Advice:   "it is absolute: add the atmosphere to a gauge reading",
		}
	}
	g := shortTubeFlux(&in, math.Log(float64(s.Length/s.Diameter)))
	return quantity.MassFlow(g * s.area() * unchoked(&in, float64(downstream))), nil
}

func (s ShortTube) check() error {
	if err := limit.Within(
		"diameter of a short tube", s.Diameter, quantity.Millimeters(0.3), quantity.Millimeters(6),
		"it is the bore, stamped on a piston in thousandths of an inch",
	); err != nil {
		return err
	}
	return limit.Within(
		"length of a short tube", s.Length, s.Diameter*3, s.Diameter*30,
		"a restrictor much longer than wide is a capillary tube",
	)
}

// An inlet is what an expansion device meets upstream, in SI units.
type inlet struct {
	pressure         float64 // upstream
	bubbleT          float64 // bubble temperature at that pressure
	bubble           float64 // bubble pressure at the liquid's temperature
	subcooling       float64 // K, 0 in two phases
	quality          float64 // 0 for liquid
	liquid, vapor    float64 // densities on the saturation line at the pressure
	criticalT, critP float64
	volume           float64 // of what enters, m³/kg
}

func inletOf(r *refrigerant.Refrigerant, s refrigerant.State) (inlet, error) {
	c := r.Critical()
	if !(s.Quality >= 0 && s.Quality <= 0.5) || s.Phase == refrigerant.Supercritical {
		return inlet{}, &RangeError{
			Quantity: "quality upstream of an expansion device",
			Value:    quantity.Number(s.Quality), Min: quantity.Number(0),
			Max:    quantity.Number(0.5),
			Advice: "the correlation is of liquid with some flash gas",
		}
	}
	if !(s.Density > 0) || !finite.Is(s.Density) || !(s.Temperature > 0) {
		return inlet{}, &RangeError{
			Quantity: "density upstream of an expansion device", Value: s.Density,
			Min:    quantity.Density(0),
			Advice: "take a state that a Refrigerant returned",
		}
	}
	tb, err := r.BubbleTemperature(s.Pressure)
	if err != nil {
		return inlet{}, err
	}
	liquid, err := r.BubbleDensity(tb)
	if err != nil {
		return inlet{}, err
	}
	td, err := r.DewTemperature(s.Pressure)
	if err != nil {
		return inlet{}, err
	}
	vapor, err := r.DewDensity(td)
	if err != nil {
		return inlet{}, err
	}
	in := inlet{
		pressure: float64(s.Pressure), bubbleT: float64(tb), bubble: float64(s.Pressure),
		quality: s.Quality,
		liquid:  float64(liquid), vapor: float64(vapor),
		criticalT: float64(c.Temperature), critP: float64(c.Pressure),
		volume: 1 / float64(s.Density),
	}
	if s.Quality == 0 && s.Temperature < tb {
		b, err := r.BubblePressure(s.Temperature)
		if err != nil {
			return inlet{}, err
		}
		in.bubble, in.subcooling = float64(b), float64(tb-s.Temperature)
	}
	return in, nil
}

// The coefficients of Payne and O'Neal (2004).
var (
	payneSingle = [7]float64{
		3.8811e-1, 1.1427e1, -1.4194e1, 1.0703, -9.1928e-2, 2.1425e1, -5.8195e2,
	}
	payneTwoPhase = [9]float64{
		1.1831, -1.4680, -1.5285e-1, -1.4639e1, 9.8401, -1.9798e-2, -1.5348, -2.0533, -1.7195e1,
	}
)

// mostSubcooling is as far as the correlation is followed, as a share of the
// critical temperature: about 18 K. Its denominator falls with the square of the
// subcooling and turns the flow up steeply beyond the data. From there on the
// flow follows the square root of the pressure above the bubble point, as a
// liquid does that flashes at the throat.
const mostSubcooling = 0.05

// shortTubeFlux returns the choked flow per area in kg/(s·m²) of a tube with the
// logarithm of length over diameter.
func shortTubeFlux(in *inlet, logL float64) float64 {
	scale := math.Sqrt(in.liquid*in.critP) * payneLiquid(in, 0, 0, logL) * coolFlow(in)
	if in.quality > 0 {
		return scale * payneFlash(in, logL)
	}
	sub := in.subcooling / in.criticalT
	if sub <= 0 {
		return scale
	}
	share := withinData(in)
	factor := 0.0
	if share > 0 {
		above := (in.pressure - in.bubble) / in.critP
		factor = share * payneSubcooled(in, above, sub, logL)
	}
	if share < 1 {
		// The pressure above the bubble point drives the flow; the middling state has as much.
		middle := *in
		middle.vapor = in.liquid * middleDensityRatio
		above := (in.pressure - in.bubble) / in.critP
		like := above / middleSlope * (1 + 2.5*above/middleSlope)
		factor += (1 - share) * payneSubcooled(&middle, above, like, logL)
	}
	return scale * factor
}

// The measurements have upstream pressures of about 0.27 to 0.65 of the critical one.
// Outside, the correlation misleads: its terms of opposite sign make the flow fall with
// subcooling, and at low pressure numerator and denominator of the factor for flash gas
// vanish together. There it is left for the growth of the flow with subcooling of a middling
// state with the same pressure above its bubble point, which falls with temperature there as
// middleSlope says for all refrigerants alike.
const (
	lowPressure, leastLowPressure  = 0.27, 0.22
	highPressure, mostHighPressure = 0.65, 0.75
	middleSlope                    = 2.9  // d(p/pc)/d(T/Tc)
	middleDensityRatio             = 0.05 // of vapor to liquid
)

// withinData is 1 where the correlation holds, and 0 well outside its pressures.
func withinData(in *inlet) float64 {
	pr := in.pressure / in.critP
	return max(min((pr-leastLowPressure)/(lowPressure-leastLowPressure),
		(mostHighPressure-pr)/(mostHighPressure-highPressure), 1), 0)
}

// leastTested is the bubble temperature upstream of the coolest measurements, 35 °C:
// condensing on a day of about 80 °F.
const leastTested = 308.15 // K

// coolFlow is by how much less than the correlation says passes where it is cooler upstream
// than in any measurement. What drives a liquid through the tube there is its pressure, so
// that the flow goes with the square root of the pressure over that at leastTested, found
// on the straight line of ln p over 1/T to the critical point. Against the superheat that
// unit labels ask for on cool days and makers' tables of suction pressures: see
// TestRestrictorOnACoolDay.
func coolFlow(in *inlet) float64 {
	if !(in.bubbleT < leastTested) {
		return 1
	}
	slope := -math.Log(in.pressure/in.critP) / (in.criticalT/in.bubbleT - 1)
	return math.Exp(slope / 2 * (in.criticalT/leastTested - in.criticalT/in.bubbleT))
}

// payneSubcooled is the flow over that at the bubble point.
func payneSubcooled(in *inlet, above, sub, logL float64) float64 {
	more := 1.0
	if sub > mostSubcooling {
		// On the way from the bubble point the pressure above it has grown nearly in
		// proportion.
		more = math.Sqrt(sub / mostSubcooling)
		above, sub = above*mostSubcooling/sub, mostSubcooling
	}
	return more * payneLiquid(in, above, sub, logL) / payneLiquid(in, 0, 0, logL)
}

// payneLiquid is the dimensionless flow of subcooled liquid.
func payneLiquid(in *inlet, above, sub, logL float64) float64 {
	a := &payneSingle
	return (a[0] + a[1]*above + a[2]*sub + a[3]*in.vapor/in.liquid + a[4]*logL) /
		(1 + a[5]*above + a[6]*sub*sub)
}

// mostQuality is where payneFlash stops following the published factor: beyond it there
// are hardly data. From there, and outside the pressures of the data, the flow goes with
// the square root of the density of the mixture, which the factor follows within 3 % in
// its middle.
const mostQuality = 0.15

// payneFlash is the factor for flash gas upstream. It is scaled to be 1 at the
// bubble point, where the published factor is up to 7 % off at the ends of the
// range of lengths, so that the flow has no step there.
func payneFlash(in *inlet, logL float64) float64 {
	mixture := math.Sqrt(mixtureDensity(in, in.quality))
	share := withinData(in)
	if share == 0 {
		return mixture
	}
	published := payneQuality(in, min(in.quality, mostQuality), logL) / payneQuality(in, 0, logL)
	if in.quality > mostQuality {
		published *= mixture / math.Sqrt(mixtureDensity(in, mostQuality))
	}
	return share*published + (1-share)*mixture
}

// mixtureDensity is that of liquid and vapor at quality x without slip, over that
// of the liquid.
func mixtureDensity(in *inlet, x float64) float64 { return 1 / (1 - x + x*in.liquid/in.vapor) }

// payneQuality is the published factor for flash gas. Its fourth coefficient goes with the
// pressure of saturation and its fifth with that upstream, which are one where there is
// flash gas.
func payneQuality(in *inlet, x, logL float64) float64 {
	b := &payneTwoPhase
	ratio := in.vapor / in.liquid
	mean := mixtureDensity(in, x)
	pr := in.pressure / in.critP
	short := math.Log(1 - pr)
	logMean := math.Log(mean)
	lockhart := x / (1 - x) / math.Sqrt(ratio)
	return (b[0]*mean + b[1]*mean*mean + b[2]*logMean*logMean +
		(b[3]+b[4])*short*short + b[5]*logL*logL) /
		(1 + b[6]*mean + b[7]*lockhart + b[8]*pr*pr*pr)
}

// unchoked is the factor by which a downstream pressure near the upstream one
// holds back the flow. A normal machine runs choked, and the correlation has no
// data beyond it: the form is the square root of the pressure difference over
// that at which choking starts, taken at 0.8 of the bubble pressure.
func unchoked(in *inlet, downstream float64) float64 {
	choking := 0.8 * in.bubble
	if downstream <= choking {
		return 1
	}
	return math.Sqrt(max(0, in.pressure-downstream) / (in.pressure - choking))
}
