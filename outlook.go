package satline

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A Scenario is weather, use or work to ask about. What is left zero stays as
// in the visit.
type Scenario struct {
	Name           string               `json:"name"`
	OutdoorDryBulb quantity.Temperature `json:"outdoorDryBulb,omitzero"`
	ReturnDryBulb  quantity.Temperature `json:"returnDryBulb,omitzero"`
	ReturnWetBulb  quantity.Temperature `json:"returnWetBulb,omitzero"`
	// Airflow through the indoor coil: what a new filter would give.
	Airflow quantity.VolumeFlow `json:"airflow,omitzero"`
	// Added is refrigerant moved before, up to as much again as the machine holds; what
	// is recovered is negative, and at most 80 % of it.
	Added quantity.Mass `json:"added,omitzero"`
	// HeadPressure is the condensing temperature that a fan-cycling or
	// head-pressure control holds, 50 to 150 °F; zero for none.
	HeadPressure quantity.Temperature `json:"headPressure,omitzero"`
	// Load is what the house loses in heating, or a cold room takes in; zero where it is not
	// known. Added, HeadPressure and ReturnWetBulb are of cooling alone.
	Load quantity.Power `json:"load,omitzero"`
}

// CoolNight is the question a frozen coil asks: 60 °F outdoors, and a house
// that has cooled down to 70 °F with a 58 °F wet bulb.
func CoolNight() Scenario {
	return Scenario{
		Name:           "a cool night",
		OutdoorDryBulb: quantity.Fahrenheit(60),
		ReturnDryBulb:  quantity.Fahrenheit(70),
		ReturnWetBulb:  quantity.Fahrenheit(58),
	}
}

// An Outlook is what the machine of a visit will do in a Scenario, by a model
// of the whole machine that was fitted to the visit. Every value has its
// standard uncertainty.
type Outlook struct {
	Scenario    Scenario                                      `json:"scenario"`
	Superheat   quantity.Uncertain[quantity.TemperatureDelta] `json:"superheat"`
	Subcooling  quantity.Uncertain[quantity.TemperatureDelta] `json:"subcooling"`
	Evaporating quantity.Uncertain[quantity.Temperature]      `json:"evaporating"`
	Condensing  quantity.Uncertain[quantity.Temperature]      `json:"condensing"`
	CoilSurface quantity.Uncertain[quantity.Temperature]      `json:"coilSurface"`
	Supply      quantity.Uncertain[quantity.Temperature]      `json:"supply"`
	// Capacity in heating is without what defrosts take. Of a cold room it is zero where the
	// visit has no nominal capacity.
	Capacity quantity.Uncertain[quantity.Power] `json:"capacity"`
	// COP is of heating, Box where a cold room comes to rest; nil in other modes.
	COP *quantity.UncertainNumber                 `json:"cop,omitempty"`
	Box *quantity.Uncertain[quantity.Temperature] `json:"box,omitempty"`
	// FreezeChance is the probability that the coil grows ice: that by its coldest
	// surface or that by airside.IcingChance, whichever is larger; of cooling alone.
	FreezeChance float64 `json:"freezeChance"`
	// Extrapolating lists what is further from the visit than it can speak for.
	Extrapolating []fact.Fact `json:"extrapolating,omitempty"`
	// Says is the outlook in facts, worded as the visit is; the first is whether the coil
	// freezes.
	Says []fact.Fact `json:"says"`
	// Believe says how far to believe it: what forbids to build on it first, then where the
	// fitted model misses the visit. It is the same for all scenarios of a visit.
	Believe []fact.Fact `json:"believe"`
}
