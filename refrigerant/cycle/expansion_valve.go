package cycle

import (
	"math"

	"github.com/satline/satline/quantity"
)

// An ExpansionValve opens with the superheat that its bulb feels. From where the
// bulb's charge lifts the needle off its seat, Superheat less Gradient, the port
// opens in proportion, is at the share Rated at Superheat, and is fully open
// shortly above: the proportional valve of every text on refrigerant control
// (ASHRAE Handbook Refrigeration, refrigerant-control devices).
//
// Through the port goes what the difference of pressures drives, with the density
// of what arrives; flash gas in a starved liquid line takes the room of liquid.
type ExpansionValve struct {
	// Superheat is the operating superheat at the bulb that the valve is set for.
	Superheat quantity.TemperatureDelta
	// Gradient is how far the superheat rises from the closed port to Superheat:
	// 3 to 4 K for a thermostatic valve, little for an electronic one.
	Gradient quantity.TemperatureDelta
	// FullArea is the area of the open port, its discharge coefficient included.
	FullArea quantity.Area
	// Rated is the share of FullArea that is open at Superheat; 0 takes 0.7.
	Rated float64
	// MaxOperating is the evaporator pressure above which a limited bulb charge
	// (MOP) holds the port closed; 0 is no limit.
	MaxOperating quantity.Pressure
}

const (
	// A port never closes to the last drop: seats leak, and many have a bleed.
	leastOpening = 0.01
	// The pressure over which MOP closes the port, as a share of MaxOperating.
	mopBand = 0.05
)

// Opening returns the share of the port that is open, 0.01 to 1, when the bulb feels
// a superheat with the evaporator at a pressure. A Gradient not above 0 stands for that
// of an electronic valve, 1 °F.
func (v ExpansionValve) Opening(
	superheat quantity.TemperatureDelta, evaporator quantity.Pressure,
) float64 {
	if !(v.Gradient > 0) {
		v.Gradient = quantity.FahrenheitDelta(1)
	}
	if o := v.opening(float64(superheat), float64(evaporator)); o > leastOpening {
		return o
	}
	return leastOpening // also where a reading is no number
}

func (v *ExpansionValve) opening(superheat, pressure float64) float64 {
	rated := v.Rated
	if rated == 0 {
		rated = 0.7
	}
	o := rated * (1 + (superheat-float64(v.Superheat))/float64(v.Gradient))
	if v.MaxOperating > 0 {
		band := mopBand * float64(v.MaxOperating)
		o = min(o, (float64(v.MaxOperating)+band-pressure)/band)
	}
	return min(max(o, leastOpening), 1)
}

// flow returns kg/s through the share open of the port.
func (v *ExpansionValve) flow(in *inlet, open, downstream float64) float64 {
	return open * float64(v.FullArea) * math.Sqrt(2*max(0, in.pressure-downstream)/in.volume)
}
