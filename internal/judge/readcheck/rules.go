package readcheck

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A rule states what holds on any working machine as "a is not above b by more
// than margin". It fails where the readings exceed that by more than their
// uncertainty allows.
type rule struct {
	code        string
	fields      []string
	weight      Weight
	coolingOnly bool
	a, b        func(*Input) Temp
	margin      quantity.TemperatureDelta
	// far is the excess from which what is doubtful cannot be; 0 where it always may.
	far quantity.TemperatureDelta
	// special replaces the comparison of two temperatures.
	special func(*Input) (Doubt, bool)
}

func (r *rule) apply(in *Input) (Doubt, bool) {
	if r.special != nil {
		d, failed := r.special(in)
		d.Code, d.Fields, d.Weight = r.code, r.fields, r.weight
		return d, failed
	}
	a, b := r.a(in), r.b(in)
	excess, std, known := above(a, b)
	if !known || excess-float64(r.margin) <= coverage*std {
		return Doubt{}, false
	}
	weight := r.weight
	if r.far > 0 && excess > float64(r.far) {
		weight = Impossible
	}
	return Doubt{
		Code: r.code, Fields: r.fields, Weight: weight,
		Excess: excess, Std: std,
		Values: []fact.Value{
			fact.Amount("a", a.Value),
			fact.Amount("b", b.Value), fact.Amount("excess", quantity.KelvinDelta(excess)),
		},
	}, true
}

// LineCannotBe is the code of a suction line that is too cold for what boils in it.
const LineCannotBe = "suction-line-cannot-be"

// farBelow is how far under its saturation no clamp on a suction line reads, however loose and
// wet: then the gauge is set to another refrigerant or on another port, or the clamp on another
// pipe. Common practice, no source.
const farBelow = quantity.TemperatureDelta(6)

// The physics of each row is elementary and has no one source; the margins of
// the rows marked "common practice" are judgements of the trade.
var rules = []rule{
	{
		code: "gauges-swapped", weight: Impossible,
		fields:  []string{"suctionPressure", "liquidPressure"},
		special: gaugesSwapped,
	},
	{
		code: "pressures-equal", weight: Impossible,
		fields:  []string{"suctionPressure", "liquidPressure"},
		special: pressuresEqual,
	},
	{
		code: "return-wet-bulb-above-dry-bulb", weight: Impossible,
		fields: []string{"returnWetBulb", "returnDryBulb"},
		a:      func(in *Input) Temp { return in.ReturnWetBulb },
		b:      func(in *Input) Temp { return in.ReturnDryBulb },
	},
	{
		code: "return-drier-than-dry", weight: Impossible,
		fields:  []string{"returnWetBulb", "returnDryBulb"},
		special: returnDrierThanDry,
	},
	{
		code: "supply-wet-bulb-above-dry-bulb", weight: Impossible,
		fields: []string{"supplyWetBulb", "supplyDryBulb"},
		a:      func(in *Input) Temp { return in.SupplyWetBulb },
		b:      func(in *Input) Temp { return in.SupplyDryBulb },
	},
	{
		code: "return-saturated", weight: Doubtful, coolingOnly: true,
		fields:  []string{"returnWetBulb", "returnDryBulb"},
		special: returnSaturated,
	},
	{
		code: "return-dry-bulb-is-a-wet-bulb", weight: Doubtful, coolingOnly: true,
		fields:  []string{"returnDryBulb", "supplyDryBulb"},
		special: returnDryBulbIsWetBulb,
	},
	{
		code: "supply-dry-bulb-is-a-wet-bulb", weight: Note, coolingOnly: true,
		fields:  []string{"supplyDryBulb"},
		special: supplyDryBulbIsWetBulb,
	},
	{
		code: "lines-in-celsius", weight: Impossible,
		fields:  []string{"suctionLine", "liquidLine"},
		special: linesInCelsius,
	},
	{
		code: LineCannotBe, weight: Impossible,
		fields: []string{"suctionLine", "suctionPressure"},
		a:      func(in *Input) Temp { return in.EvaporatingDew },
		b:      func(in *Input) Temp { return in.SuctionLine },
		margin: farBelow,
	},
	{
		code: "suction-line-below-saturation", weight: Note, coolingOnly: true,
		fields: []string{"suctionLine", "suctionPressure"},
		a:      func(in *Input) Temp { return in.EvaporatingDew },
		b:      func(in *Input) Temp { return in.SuctionLine },
	},
	{
		code: "liquid-line-below-outdoor", weight: Doubtful, coolingOnly: true,
		fields: []string{"liquidLine", "outdoorDryBulb"},
		a:      func(in *Input) Temp { return in.OutdoorDryBulb },
		b:      func(in *Input) Temp { return in.LiquidLine },
	},
	{
		code: "liquid-line-above-saturation", weight: Doubtful, coolingOnly: true,
		fields: []string{"liquidLine", "liquidPressure"},
		a:      func(in *Input) Temp { return in.LiquidLine },
		b:      func(in *Input) Temp { return in.CondensingDew },
	},
	{
		code: "condensing-below-outdoor", weight: Impossible, coolingOnly: true,
		fields: []string{"liquidPressure", "outdoorDryBulb"},
		a:      func(in *Input) Temp { return in.OutdoorDryBulb },
		b:      func(in *Input) Temp { return in.CondensingDew },
	},
	{
		code: "evaporating-above-return", weight: Impossible, coolingOnly: true,
		fields: []string{"suctionPressure", "returnDryBulb"},
		a:      func(in *Input) Temp { return in.EvaporatingDew },
		b:      func(in *Input) Temp { return in.ReturnDryBulb },
	},
	{
		code: "evaporating-above-supply", weight: Doubtful, coolingOnly: true,
		fields: []string{"suctionPressure", "supplyDryBulb"},
		a:      func(in *Input) Temp { return in.EvaporatingDew },
		b:      func(in *Input) Temp { return in.SupplyDryBulb },
		far:    8, // more than any glide leaves of it in the coil
	},
	{
		// It carries vapor from a coil colder than the room; what is warmer than room and
		// outdoors is another pipe.
		code: "suction-line-above-outdoor-and-return", weight: Doubtful, coolingOnly: true,
		fields: []string{"suctionLine"},
		a:      func(in *Input) Temp { return in.SuctionLine },
		b: func(in *Input) Temp {
			if o, r := in.OutdoorDryBulb, in.ReturnDryBulb; o == nil || r == nil || r.Value <= o.Value {
				return o
			}
			return in.ReturnDryBulb
		},
	},
	{
		code: "discharge-line-below-condensing", weight: Doubtful, coolingOnly: true,
		fields: []string{"dischargeLine", "liquidPressure"},
		a:      func(in *Input) Temp { return in.CondensingBubble },
		b:      func(in *Input) Temp { return in.DischargeLine },
	},
	{
		code: "supply-above-return", weight: Doubtful, coolingOnly: true,
		fields: []string{"supplyDryBulb", "returnDryBulb"},
		a:      func(in *Input) Temp { return in.SupplyDryBulb },
		b:      func(in *Input) Temp { return in.ReturnDryBulb },
	},
	{
		code: "condenser-leaving-below-entering", weight: Doubtful, coolingOnly: true,
		fields: []string{"condenserLeaving", "outdoorDryBulb"},
		a:      func(in *Input) Temp { return in.OutdoorDryBulb },
		b:      func(in *Input) Temp { return in.CondenserLeaving },
	},
}
