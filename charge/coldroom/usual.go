package coldroom

import (
	"time"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Usual is what is usual for a Room whose machine is sound, with the spread of such machines
// as a standard uncertainty.
type Usual struct {
	// Box is the temperature that it is kept at.
	Box quantity.Uncertain[quantity.Temperature]
	// Difference is from the box to the evaporating temperature. The smaller it is, the
	// moister stays the box.
	Difference quantity.Uncertain[quantity.TemperatureDelta]
	// DifferenceSource is where Difference comes from.
	DifferenceSource fact.Source
	// BulbSuperheat is at the outlet of the evaporator, where the valve's bulb sits, and
	// Superheat at the compressor, to which the suction line has added. Common practice, no
	// source.
	BulbSuperheat, Superheat quantity.Uncertain[quantity.TemperatureDelta]
	// Subcooling is at the condenser, before a receiver where there is one; a condenser that its
	// head-pressure control floods in the cold subcools more. Common practice, no source.
	Subcooling quantity.Uncertain[quantity.TemperatureDelta]
	// Receiver is the chance that the machine has one.
	Receiver float64
	Frozen   bool
}

// A FoodLimit is the temperature above which food is no longer kept as it has to be.
type FoodLimit struct {
	At quantity.Temperature
	// Source of the rule. Of frozen food the code says that it stays frozen, and At is common
	// practice.
	Source fact.Source
}

var (
	practice = fact.Source{Standing: fact.CommonPractice}
	// Walk-in freezers are modeled with air of -26.1 °C over a coil of -31.7 °C.
	walkInData = fact.Source{
		Title:    "NREL, openstudio-standards, refrigerated_walkins.csv",
		Standing: fact.Published,
	}
	// Where about 85 % humidity is wanted 6 K is the guide, for what dehydrates quickly, as most
	// fruit and vegetables do, 4 K.
	coilGuide = fact.Source{
		Title: "Hundy, Trott and Welch, Refrigeration and Air-Conditioning, " +
			"4th edition (2008), page 135",
		Standing: fact.Published,
	}
	// Equipment for a load of 24 h is chosen to carry it in 18 h.
	freezersRun = fact.Source{
		Title:    "Kramer, Defrost load, ASHRAE Journal, February 2001",
		Standing: fact.Published,
	}
	foodCode = fact.Source{
		Title:    "FDA Food Code 3-501.16(A)(2): cold holding at 41 °F (5 °C) or less",
		Standing: fact.Published,
	}
	frozenCode = fact.Source{
		Title:    "FDA Food Code 3-501.11: stored frozen foods shall be maintained frozen",
		Standing: fact.Published,
	}
)

// A row is what is usual for an application.
type row struct {
	box, boxStd, difference, differenceStd float64 // °F
	source                                 fact.Source
	receiver                               float64
	frozen                                 bool
}

var rows = map[Application]row{
	WalkInCooler:   {36, 2, 10.8, 2, coilGuide, 0.85, false},
	WalkInFreezer:  {-5, 4, 10, 1.8, walkInData, 0.9, true},
	ReachInCooler:  {37, 2, 17, 3, practice, 0.25, false},
	ReachInFreezer: {0, 3, 14, 2.5, practice, 0.25, true},
	DisplayCase:    {36, 3, 14, 3, practice, 0.7, false},
	ProduceCooler:  {36, 2.5, 7.2, 1.5, coilGuide, 0.85, false},
	WorkRoom:       {50, 3, 20, 4, practice, 0.85, false},
}

// Rooms of which nobody said what they are for.
var (
	someCooler  = row{37, 2.5, 12.5, 3, practice, 0.7, false}
	someRoom    = row{50, 4, 17, 4, practice, 0.7, false}
	someFreezer = row{-4, 5, 10.5, 2, practice, 0.75, true}
)

// Usual returns what is usual for the room. Where its application is not stated it is taken
// for a cooler or a freezer by its Setpoint, else by the temperature found in it, which may
// be nil. A Setpoint out of its range counts as none. A walk-in that is kept at 32 °F or
// below is a freezer (10 CFR 431.302).
func (r Room) Usual(found *quantity.Temperature) Usual {
	if t := r.Setpoint; t != nil && !(*t >= Coldest && *t <= Warmest) {
		r.Setpoint = nil
	}
	at := r.Setpoint
	if at == nil {
		at = found
	}
	x, ok := rows[r.Application]
	if !ok {
		x = someCooler
		switch {
		case at == nil:
		case *at < quantity.Fahrenheit(27):
			x = someFreezer
		case r.Setpoint != nil && *at > quantity.Fahrenheit(45):
			x = someRoom
		}
	}
	u := Usual{
		Box:              fahrenheit(x.box, x.boxStd),
		Difference:       apart(x.difference, x.differenceStd),
		DifferenceSource: x.source,
		BulbSuperheat:    apart(8, 1.8),
		Superheat:        apart(20, 8),
		Receiver:         x.receiver,
		Frozen:           x.frozen,
	}
	if x.frozen {
		u.BulbSuperheat, u.Superheat = apart(6, 1.5), apart(25, 9)
	}
	if r.Setpoint != nil {
		u.Box = r.Setpoint.PlusMinus(0.7)
	}
	if r.Receiver != nil {
		u.Receiver = 0
		if *r.Receiver {
			u.Receiver = 1
		}
	}
	if u.Subcooling = apart(9, 3.5); u.Receiver >= 0.5 {
		u.Subcooling = apart(6, 3)
	}
	return u
}

// MostRun returns how long of a day is left to run: 20 h where air takes the frost off, common
// practice; 18 h for a freezer, which defrosts with heat.
func (u Usual) MostRun() (time.Duration, fact.Source) {
	if u.Frozen {
		return 18 * time.Hour, freezersRun
	}
	return 20 * time.Hour, practice
}

// FoodLimit returns the temperature above which food in the room is at risk: 41 °F (5 °C) by
// the food code; of frozen food, that stays frozen by the code, 15 °F by common practice.
func (u Usual) FoodLimit() FoodLimit {
	if u.Frozen {
		return FoodLimit{quantity.Fahrenheit(15), frozenCode}
	}
	return FoodLimit{quantity.Fahrenheit(41), foodCode}
}

func fahrenheit(value, std float64) quantity.Uncertain[quantity.Temperature] {
	return quantity.Uncertain[quantity.Temperature]{
		Value: quantity.Fahrenheit(value), Std: std / 1.8,
	}
}

func apart(value, std float64) quantity.Uncertain[quantity.TemperatureDelta] {
	return quantity.Uncertain[quantity.TemperatureDelta]{
		Value: quantity.FahrenheitDelta(value), Std: std / 1.8,
	}
}
