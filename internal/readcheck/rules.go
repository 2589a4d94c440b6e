package readcheck

import (
	"fmt"

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
	a, b        func(Input) Temp
	margin      quantity.TemperatureDelta
	// text gets a, b and the excess, shown with their units.
	text string
	mend string
	// special replaces the comparison of two temperatures.
	special func(Input, quantity.System) (Doubt, bool)
}

func (r *rule) apply(in Input, sys quantity.System) (Doubt, bool) {
	if r.special != nil {
		d, failed := r.special(in, sys)
		d.Code, d.Fields, d.Weight, d.Mend = r.code, r.fields, r.weight, r.mend
		return d, failed
	}
	a, b := r.a(in), r.b(in)
	excess, std, known := above(a, b)
	if !known || excess-float64(r.margin) <= coverage*std {
		return Doubt{}, false
	}
	return Doubt{
		Code: r.code, Fields: r.fields, Weight: r.weight, Mend: r.mend,
		Excess: excess, Std: std,
		Values: []fact.Value{
			fact.Amount("a", a.Value), fact.Amount("b", b.Value), fact.Amount("excess", quantity.KelvinDelta(excess)),
		},
		Text: fmt.Sprintf(r.text, a.Value.Format(sys), b.Value.Format(sys),
			quantity.KelvinDelta(excess).Format(sys), quantity.KelvinDelta(coverage*std).Format(sys)),
	}, true
}

// The physics of each row is elementary and has no one source; the margins of
// the rows marked "common practice" are judgements of the trade.
var rules = []rule{
	{
		code: "gauges-swapped", weight: Impossible,
		fields:  []string{"suctionPressure", "liquidPressure"},
		special: gaugesSwapped,
		mend:    "see which hose is on which port, and that none is on the discharge port in place of another: the suction line is the larger, cold pipe",
	},
	{
		code: "pressures-equal", weight: Impossible,
		fields:  []string{"suctionPressure", "liquidPressure"},
		special: pressuresEqual,
		mend:    "is the compressor running? Read again after it has run 15 minutes; equal pressures in operation mean it does not pump",
	},
	{
		code: "return-wet-bulb-above-dry-bulb", weight: Impossible,
		fields: []string{"returnWetBulb", "returnDryBulb"},
		a:      func(in Input) Temp { return in.ReturnWetBulb },
		b:      func(in Input) Temp { return in.ReturnDryBulb },
		text:   "return wet bulb %s is above the return dry bulb %s, by %s; instruments explain %s",
		mend:   "a wet bulb cannot be above its dry bulb: are the two swapped, or is the wick dry or the dry bulb in another place?",
	},
	{
		code: "supply-wet-bulb-above-dry-bulb", weight: Impossible,
		fields: []string{"supplyWetBulb", "supplyDryBulb"},
		a:      func(in Input) Temp { return in.SupplyWetBulb },
		b:      func(in Input) Temp { return in.SupplyDryBulb },
		text:   "supply wet bulb %s is above the supply dry bulb %s, by %s; instruments explain %s",
		mend:   "a wet bulb cannot be above its dry bulb: are the two swapped, or is the dry bulb wetted by carry-over?",
	},
	{
		code: "return-saturated", weight: Doubtful, coolingOnly: true,
		fields:  []string{"returnWetBulb", "returnDryBulb"},
		special: returnSaturated,
		mend:    "indoor air is seldom saturated: wet the wick, give it moving air for two minutes, and read the dry bulb with a dry sensor",
	},
	{
		code: "return-dry-bulb-is-a-wet-bulb", weight: Doubtful, coolingOnly: true,
		fields:  []string{"returnDryBulb", "supplyDryBulb"},
		special: returnDryBulbIsWetBulb,
		mend:    "read the return with a dry sensor and, separately, with a wetted wick; until then charge by neither",
	},
	{
		code: "supply-dry-bulb-is-a-wet-bulb", weight: Note, coolingOnly: true,
		fields:  []string{"supplyDryBulb"},
		special: supplyDryBulbIsWetBulb,
		mend:    "read the supply again with a sensor that has stayed dry, out of sight of the coil; too little air would make the supply as cold, so look at the airflow if it still reads so",
	},
	{
		code: "suction-line-below-saturation", weight: Note, coolingOnly: true,
		fields: []string{"suctionLine", "suctionPressure"},
		a:      func(in Input) Temp { return in.EvaporatingDew },
		b:      func(in Input) Temp { return in.SuctionLine },
		text:   "suction saturation %s is above the suction line %s, by %s; instruments explain %s: liquid is coming back, or a reading is wrong",
		mend:   "clean the pipe, tighten and insulate the clamp, check the gauge zero, the altitude and the refrigerant; if it still reads so, liquid is reaching the compressor",
	},
	{
		code: "liquid-line-below-outdoor", weight: Doubtful, coolingOnly: true,
		fields: []string{"liquidLine", "outdoorDryBulb"},
		a:      func(in Input) Temp { return in.OutdoorDryBulb },
		b:      func(in Input) Temp { return in.LiquidLine },
		text:   "outdoor air %s is above the liquid line %s, by %s; instruments explain %s: outdoor air cannot cool a pipe below itself",
		mend:   "is the outdoor sensor in the sun or in discharge air, or the clamp loose or past a restriction (frosted drier, half-shut valve)? A coil wet from washing also does this: let it dry",
	},
	{
		code: "liquid-line-above-saturation", weight: Doubtful, coolingOnly: true,
		fields: []string{"liquidLine", "liquidPressure"},
		a:      func(in Input) Temp { return in.LiquidLine },
		b:      func(in Input) Temp { return in.CondensingDew },
		text:   "liquid line %s is above the condensing temperature %s, by %s; instruments explain %s",
		mend:   "vapor leaves the condenser, or the clamp is on the wrong pipe, or the gauge or the refrigerant is not what it is taken for",
	},
	{
		code: "condensing-below-outdoor", weight: Impossible, coolingOnly: true,
		fields: []string{"liquidPressure", "outdoorDryBulb"},
		a:      func(in Input) Temp { return in.OutdoorDryBulb },
		b:      func(in Input) Temp { return in.CondensingDew },
		text:   "outdoor air %s is above the condensing temperature %s, by %s; instruments explain %s: heat does not flow that way",
		mend:   "check the refrigerant named, the gauge and its zero, and that the outdoor sensor is in the shade at the coil inlet",
	},
	{
		code: "evaporating-above-return", weight: Impossible, coolingOnly: true,
		fields: []string{"suctionPressure", "returnDryBulb"},
		a:      func(in Input) Temp { return in.EvaporatingDew },
		b:      func(in Input) Temp { return in.ReturnDryBulb },
		text:   "suction saturation %s is above the return air %s, by %s; instruments explain %s: such a coil cannot cool",
		mend:   "check the refrigerant named, the gauge and its zero, and that the compressor runs",
	},
	{
		code: "evaporating-above-supply", weight: Doubtful, coolingOnly: true,
		fields: []string{"suctionPressure", "supplyDryBulb"},
		a:      func(in Input) Temp { return in.EvaporatingDew },
		b:      func(in Input) Temp { return in.SupplyDryBulb },
		text:   "suction saturation %s is above the supply air %s, by %s; instruments explain %s: air leaves no colder than the coil",
		mend:   "check the refrigerant named, the gauge and its zero; is the supply sensor wet and reading a wet bulb?",
	},
	{
		code: "suction-line-above-outdoor-and-return", weight: Doubtful, coolingOnly: true,
		fields:  []string{"suctionLine"},
		special: suctionLineHot,
		mend:    "is the clamp on the suction line, or on the liquid or discharge line?",
	},
	{
		code: "discharge-line-below-condensing", weight: Doubtful, coolingOnly: true,
		fields: []string{"dischargeLine", "liquidPressure"},
		a:      func(in Input) Temp { return in.CondensingBubble },
		b:      func(in Input) Temp { return in.DischargeLine },
		text:   "condensing temperature %s is above the discharge line %s, by %s; instruments explain %s",
		mend:   "is the clamp on the discharge line and insulated? If it is, the compressor is pumping liquid",
	},
	{
		code: "supply-above-return", weight: Doubtful, coolingOnly: true,
		fields: []string{"supplyDryBulb", "returnDryBulb"},
		a:      func(in Input) Temp { return in.SupplyDryBulb },
		b:      func(in Input) Temp { return in.ReturnDryBulb },
		text:   "supply air %s is above the return air %s, by %s; instruments explain %s: the machine is not cooling, or the two are swapped",
		mend:   "see which sensor is in which duct, and that the machine is in cooling",
	},
	{
		code: "condenser-leaving-below-entering", weight: Doubtful, coolingOnly: true,
		fields: []string{"condenserLeaving", "outdoorDryBulb"},
		a:      func(in Input) Temp { return in.OutdoorDryBulb },
		b:      func(in Input) Temp { return in.CondenserLeaving },
		text:   "outdoor air %s is above the air leaving the condenser %s, by %s; instruments explain %s",
		mend:   "is the outdoor sensor in the sun or in discharge air, or the coil wet from washing?",
	},
}
