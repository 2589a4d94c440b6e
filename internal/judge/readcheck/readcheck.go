package readcheck

import (
	"math"
	"slices"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A Temp is a temperature with standard uncertainty; nil where not known.
type Temp = *quantity.Uncertain[quantity.Temperature]

// A Gauge is a gauge pressure with standard uncertainty; nil where not known.
type Gauge = *quantity.Uncertain[quantity.GaugePressure]

// Input is what the checks look at. Saturation temperatures are those of the
// gauge readings for the refrigerant that the technician named.
type Input struct {
	SuctionPressure, LiquidPressure Gauge
	EvaporatingDew                  Temp // dew temperature at the suction pressure
	CondensingBubble                Temp // bubble temperature at the liquid pressure
	CondensingDew                   Temp // dew temperature at the liquid pressure

	SuctionLine, LiquidLine, DischargeLine Temp
	OutdoorDryBulb, CondenserLeaving       Temp
	ReturnDryBulb, ReturnWetBulb           Temp
	SupplyDryBulb, SupplyWetBulb           Temp

	// Atmosphere around the air that was read; zero for the standard one.
	Atmosphere quantity.Pressure

	// Heating turns off the checks that hold in cooling only.
	Heating bool
}

// Weight says what a doubt does to the conclusions drawn from the readings.
type Weight int

// The weights.
const (
	// Note: unusual, and possible.
	Note Weight = iota
	// Doubtful: conclusions that rest on these readings are held back.
	Doubtful
	// Impossible: the readings cannot be true together.
	Impossible
)

// A Doubt is a check that the readings fail.
type Doubt struct {
	Code   string   // stable name: "suction-below-saturation"
	Fields []string // the readings involved, by their JSON name
	Weight Weight
	// Excess is by how much the check is failed, and Std its standard
	// uncertainty, both in kelvin (in pascal for a pressure check).
	Excess, Std float64
	// Values of the readings involved, as "doubt." and Code words them.
	Values []fact.Value
}

// Check returns the doubts about the readings, the gravest first.
func Check(in *Input) []Doubt {
	var by [Impossible + 1][]Doubt
	for i := range rules {
		if rules[i].coolingOnly && in.Heating {
			continue
		}
		if d, failed := rules[i].apply(in); failed {
			by[d.Weight] = append(by[d.Weight], d)
		}
	}
	return supersede(slices.Concat(by[Impossible], by[Doubtful], by[Note]))
}

// supersede drops doubts that another one explains: with the two hoses
// swapped, every temperature check on saturation fails as well.
func supersede(doubts []Doubt) []Doubt {
	for _, d := range doubts {
		switch d.Code {
		case "gauges-swapped", "pressures-equal":
			return []Doubt{d}
		case LineCannotBe:
			return slices.DeleteFunc(
				doubts, func(x Doubt) bool { return x.Code == "suction-line-below-saturation" },
			)
		}
	}
	return doubts
}

// coverage is how many standard uncertainties a reading must be past a limit
// before it is called wrong: a coverage factor of 2, about 95 % (GUM 6.3.3).
const coverage = 2

// above compares two temperatures: how much a exceeds b, and the standard
// uncertainty of that.
func above(a, b Temp) (excess, std float64, known bool) {
	if a == nil || b == nil {
		return 0, 0, false
	}
	return float64(a.Value.Sub(b.Value)), math.Hypot(a.Std, b.Std), true
}
