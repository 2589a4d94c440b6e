package readcheck

import (
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
)

func gaugesSwapped(in Input, sys quantity.System) (Doubt, bool) {
	s, l := in.SuctionPressure, in.LiquidPressure
	if s == nil || l == nil {
		return Doubt{}, false
	}
	excess, std := float64(s.Value-l.Value), math.Hypot(s.Std, l.Std)
	if excess <= coverage*std {
		return Doubt{}, false
	}
	return Doubt{
		Excess: excess, Std: std,
		Text: fmt.Sprintf("suction pressure %s is above liquid pressure %s: the low and the high side look swapped",
			s.Value.Format(sys), l.Value.Format(sys)),
	}, true
}

// pressuresEqual: a running compressor makes a difference. The smallest ratio
// of pressures of a comfort cooling machine at a low load is well above 1.15
// (common practice, no source).
func pressuresEqual(in Input, sys quantity.System) (Doubt, bool) {
	s, l := in.SuctionPressure, in.LiquidPressure
	if s == nil || l == nil || s.Value <= 0 {
		return Doubt{}, false
	}
	diff, std := float64(l.Value-s.Value), math.Hypot(s.Std, l.Std)
	if math.Abs(diff) > math.Max(coverage*std, 0.1*float64(s.Value)) || diff < -coverage*std {
		return Doubt{}, false
	}
	return Doubt{
		Excess: -diff, Std: std,
		Text: fmt.Sprintf("suction pressure %s and liquid pressure %s are nearly the same: the compressor is not pumping",
			s.Value.Format(sys), l.Value.Format(sys)),
	}, true
}

// returnSaturated: air drawn from a room is below about 85 % relative
// humidity; a wet bulb within 2 °F of the dry bulb is above that at room
// temperature (common practice, no source).
func returnSaturated(in Input, sys quantity.System) (Doubt, bool) {
	wb, db := in.ReturnWetBulb, in.ReturnDryBulb
	if wb == nil || db == nil {
		return Doubt{}, false
	}
	depression, std := float64(db.Value.Sub(wb.Value)), math.Hypot(wb.Std, db.Std)
	if depression >= float64(quantity.FahrenheitDelta(2)) || depression < -coverage*std {
		return Doubt{}, false
	}
	return Doubt{
		Excess: float64(quantity.FahrenheitDelta(2)) - depression, Std: std,
		Text: fmt.Sprintf("return wet bulb %s is nearly the return dry bulb %s: either the wick is dry, or the dry bulb is wet",
			wb.Value.Format(sys), db.Value.Format(sys)),
	}, true
}

// returnDryBulbIsWetBulb: a room is kept at 68 °F or more as a rule; a return
// "dry bulb" below 66 °F together with a split of less than 13 °F is the
// pattern of two wet bulbs, or of a wet bulb in the return, taken for dry ones:
// across a wet coil the wet bulb falls 8 to 12 °F where the dry bulb falls 16 to
// 22 °F (common practice, no source). The suction saturation decides: a coil
// that cold would have cooled dry air further.
func returnDryBulbIsWetBulb(in Input, sys quantity.System) (Doubt, bool) {
	r, s := in.ReturnDryBulb, in.SupplyDryBulb
	if r == nil || s == nil || in.ReturnWetBulb != nil {
		return Doubt{}, false
	}
	split := r.Value.Sub(s.Value)
	if r.Value >= quantity.Fahrenheit(66) || split >= quantity.FahrenheitDelta(13) || split <= 0 {
		return Doubt{}, false
	}
	std := math.Hypot(r.Std, s.Std)
	d := Doubt{
		Excess: float64(quantity.FahrenheitDelta(13) - split), Std: std,
		Text: fmt.Sprintf("a return of %s with a supply of %s is a split of only %s from a cold room: the pattern of a wet bulb taken for a dry bulb",
			r.Value.Format(sys), s.Value.Format(sys), split.Format(sys)),
	}
	if e := in.EvaporatingDew; e != nil {
		if r.Value.Sub(e.Value) < quantity.FahrenheitDelta(15) {
			return Doubt{}, false
		}
		d.Text += fmt.Sprintf(" (the coil, saturated at %s, would cool dry air further)", e.Value.Format(sys))
	}
	return d, true
}

// suctionLineHot: the suction line carries vapor from a coil colder than the
// room; warmer than both the room and the outdoors, it is another pipe.
func suctionLineHot(in Input, sys quantity.System) (Doubt, bool) {
	s, o, r := in.SuctionLine, in.OutdoorDryBulb, in.ReturnDryBulb
	if s == nil || o == nil {
		return Doubt{}, false
	}
	warmest := o
	if r != nil && r.Value > o.Value {
		warmest = r
	}
	excess, std, _ := above(s, warmest)
	if excess <= coverage*std {
		return Doubt{}, false
	}
	return Doubt{
		Excess: excess, Std: std,
		Text: fmt.Sprintf("suction line %s is above both the room and the outdoor air (%s)", s.Value.Format(sys), warmest.Value.Format(sys)),
	}, true
}
