package readcheck

import (
	"cmp"
	"math"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// pair is a doubt of two readings.
func pair[A, B quantity.Quantity](excess, std float64, a A, b B) (Doubt, bool) {
	return Doubt{
		Excess: excess, Std: std,
		Values: []fact.Value{fact.Amount("a", a), fact.Amount("b", b)},
	}, true
}

func gaugesSwapped(in *Input) (Doubt, bool) {
	s, l := in.SuctionPressure, in.LiquidPressure
	if s == nil || l == nil {
		return Doubt{}, false
	}
	excess, std := float64(s.Value-l.Value), math.Hypot(s.Std, l.Std)
	if excess <= coverage*std {
		return Doubt{}, false
	}
	return pair(excess, std, s.Value, l.Value)
}

// pressuresEqual: a running compressor makes a difference. The smallest ratio
// of pressures of a comfort cooling machine at a low load is well above 1.15
// (common practice, no source).
func pressuresEqual(in *Input) (Doubt, bool) {
	s, l := in.SuctionPressure, in.LiquidPressure
	if s == nil || l == nil || s.Value <= 0 {
		return Doubt{}, false
	}
	diff, std := float64(l.Value-s.Value), math.Hypot(s.Std, l.Std)
	if math.Abs(diff) > math.Max(coverage*std, 0.1*float64(s.Value)) || diff < -coverage*std {
		return Doubt{}, false
	}
	return pair(-diff, std, s.Value, l.Value)
}

// returnDrierThanDry: no air has a wet bulb below that of perfectly dry air.
func returnDrierThanDry(in *Input) (Doubt, bool) {
	wb, db := in.ReturnWetBulb, in.ReturnDryBulb
	if wb == nil || db == nil || wb.Value >= db.Value {
		return Doubt{}, false
	}
	atmosphere := cmp.Or(in.Atmosphere, quantity.StandardAtmosphere)
	if _, err := psychro.FromWetBulb(db.Value, wb.Value, atmosphere); err == nil {
		return Doubt{}, false
	}
	dry, err := psychro.FromRelativeHumidity(db.Value, 0, atmosphere)
	if err != nil {
		return Doubt{}, false
	}
	least := dry.WetBulb()
	excess, std := float64(least.Sub(wb.Value)), math.Hypot(wb.Std, db.Std)
	if excess <= coverage*std {
		return Doubt{}, false
	}
	return pair(excess, std, wb.Value, db.Value)
}

// linesInCelsius: a vapor far colder than it boils beside a liquid far colder than it condenses is
// no machine, and both are what machines read once their figures are taken as °C (common practice,
// no source).
func linesInCelsius(in *Input) (Doubt, bool) {
	dew, bubble := in.EvaporatingDew, in.CondensingBubble
	if dew == nil || bubble == nil || in.SuctionLine == nil || in.LiquidLine == nil {
		return Doubt{}, false
	}
	s, l := in.SuctionLine.Value, in.LiquidLine.Value
	meant := func(t quantity.Temperature) quantity.Temperature {
		return quantity.Celsius(t.Fahrenheit())
	}
	const most = quantity.TemperatureDelta(25)
	below := dew.Value.Sub(s)
	superheat, subcooling := meant(s).Sub(dew.Value), bubble.Value.Sub(meant(l))
	if below < farBelow || bubble.Value.Sub(l) < most ||
		superheat < -2 || superheat > most || subcooling < -3 || subcooling > most {
		return Doubt{}, false
	}
	return pair(float64(below), math.Hypot(dew.Std, in.SuctionLine.Std), s, l)
}

// returnSaturated: air drawn from a room is below about 85 % relative
// humidity; a wet bulb within 2 °F of the dry bulb is above that at room
// temperature (common practice, no source).
func returnSaturated(in *Input) (Doubt, bool) {
	wb, db := in.ReturnWetBulb, in.ReturnDryBulb
	if wb == nil || db == nil {
		return Doubt{}, false
	}
	depression, std := float64(db.Value.Sub(wb.Value)), math.Hypot(wb.Std, db.Std)
	if depression >= float64(quantity.FahrenheitDelta(2)) || depression < -coverage*std {
		return Doubt{}, false
	}
	return pair(float64(quantity.FahrenheitDelta(2))-depression, std, wb.Value, db.Value)
}

// returnDryBulbIsWetBulb: a room is kept at 68 °F or more as a rule; a return
// "dry bulb" below 66 °F together with a split of less than 13 °F is the
// pattern of two wet bulbs, or of a wet bulb in the return, taken for dry ones:
// across a wet coil the wet bulb falls 8 to 12 °F where the dry bulb falls 16 to
// 22 °F (common practice, no source). The suction saturation decides: a coil
// that cold would have cooled dry air further.
//
// The limits are narrower than those of airside.CheckReturn, which only asks: this
// doubt holds back what is concluded from the air.
func returnDryBulbIsWetBulb(in *Input) (Doubt, bool) {
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
		Values: []fact.Value{
			fact.Amount("a", r.Value), fact.Amount("b", s.Value), fact.Amount("split", split),
		},
	}
	if e := in.EvaporatingDew; e != nil {
		if r.Value.Sub(e.Value) < quantity.FahrenheitDelta(15) {
			return Doubt{}, false
		}
	}
	return d, true
}

// wettestSupply is the relative humidity that air leaving a wet coil seldom
// passes: some of it goes by without touching a fin. Common practice, no source.
const wettestSupply = 0.9

// supplyDryBulbIsWetBulb: dry return air is cooled with little or no water taken
// out, so the wet bulb of the supply is well below its dry bulb. A supply "dry
// bulb" that is too cold for the target split, and is what a wet bulb would read
// there, may be one. From a wet coil the two are nearly the same, and there is
// nothing to tell.
func supplyDryBulbIsWetBulb(in *Input) (Doubt, bool) {
	db, wb, s := in.ReturnDryBulb, in.ReturnWetBulb, in.SupplyDryBulb
	if db == nil || wb == nil || s == nil {
		return Doubt{}, false
	}
	atmosphere := cmp.Or(in.Atmosphere, quantity.StandardAtmosphere)
	target, err := airside.TargetSplit(db.Value, wb.Value)
	if err != nil {
		return Doubt{}, false
	}
	dry := db.Value.Add(-target)
	wet, ok := supplyWetBulb(*db, *wb, dry, atmosphere)
	if !ok {
		return Doubt{}, false
	}
	std := math.Hypot(s.Std, math.Hypot(db.Std, wb.Std))
	below := float64(dry.Sub(s.Value))
	const near = quantity.TemperatureDelta(1.5 / 1.8)
	if below <= math.Max(float64(airside.SplitTolerance), coverage*math.Hypot(s.Std, db.Std)) ||
		math.Abs(float64(s.Value.Sub(wet))) > float64(near)+coverage*std {
		return Doubt{}, false
	}
	return pair(below, std, s.Value, wet)
}

// supplyWetBulb is the wet bulb of return air that was cooled to a dry bulb and
// has kept its water, as far as it could.
func supplyWetBulb(
	db, wb quantity.Uncertain[quantity.Temperature], dry quantity.Temperature,
	atmosphere quantity.Pressure,
) (quantity.Temperature, bool) {
	before, err := psychro.FromWetBulb(db.Value, wb.Value, atmosphere)
	if err != nil {
		return 0, false
	}
	after, err := psychro.FromRelativeHumidity(dry, wettestSupply, atmosphere)
	if err != nil {
		return 0, false
	}
	if before.HumidityRatio() < after.HumidityRatio() {
		after, err = psychro.FromHumidityRatio(dry, before.HumidityRatio(), atmosphere)
		if err != nil {
			return 0, false
		}
	}
	return after.WetBulb(), true
}
