package coldroom

import (
	"math"
	"time"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// A Box is a cold room by all that brings heat into it, for its Load.
type Box struct {
	// Inside is its air.
	Inside psychro.Air
	Panels []Panel
	Doors  []Door
	Goods  []Goods
	// Respiration is the heat of fruit and vegetables that lie in it.
	Respiration quantity.Power
	// People is how long of a day people are in it, all their times together.
	People time.Duration
	// Appliances are its lights, fans, heaters and motors.
	Appliances []Appliance
}

// A Panel is a wall, the ceiling or the floor.
type Panel struct {
	// Conductance from what is outside to the air in the box, as of Insulation.Conductance.
	Conductance quantity.Conductance
	// Outside is the temperature there, that of the ground under a floor; higher in the sun.
	Outside quantity.Temperature
}

// A Door lets air through while it is open.
type Door struct {
	Width, Height quantity.Length
	Outside       psychro.Air
	// Open is how long of a day it stands open.
	Open time.Duration
	// Guard is the part of the exchange that strips or an air curtain hold back, 0 to 0.98.
	Guard float64
}

// Goods are what comes in on a day and has to be cooled down to the box.
type Goods struct {
	Mass         quantity.Mass
	Enters       quantity.Temperature
	SpecificHeat quantity.SpecificHeat
	// Freezing is what freezing takes out of them besides; zero for goods that do not freeze.
	Freezing quantity.SpecificEnthalpy
}

// An Appliance turns its power into heat in the box.
type Appliance struct {
	Power quantity.Power
	// On is how long of a day it is on.
	On time.Duration
}

// A BoxLoad is what a box takes in, as the mean of a day, by where it comes from.
type BoxLoad struct {
	Panels, Doors, Goods, People, Appliances quantity.Power
	// Total is the sum, a Room's Load.
	Total quantity.Power
}

// Needs returns the capacity that carries a load, the mean of a day up to 1 MW, while the machine
// runs as much of each day as MostRun leaves. The error is a *quantity.RangeError.
func (u Usual) Needs(load quantity.Power) (quantity.Power, error) {
	if err := limit.Within("load", load, 0, mostPower, "give the mean of a day"); err != nil {
		return 0, err
	}
	run, _ := u.MostRun()
	return load * quantity.Power(float64(day)/float64(run)), nil
}

const day = 24 * time.Hour

// Load returns what the box takes in over a day, by the method of ASHRAE Handbook, Refrigeration,
// chapter 24 (from memory): panels by their conductance and the temperatures on either side, doors
// by the exchange of air that differs in weight, goods by what is taken out of them, a person by
// 272 W less 6 W for each °C of the box, and appliances by their power.
//
// Through an open door air flows as Gosney and Olama found, in the form of Jekel, Door
// infiltration estimator, IRC Research and Technology Forum (2017). The evaporator's fans are
// appliances, and its defrosts by the part of their power that stays in the box.
//
// The error is a *quantity.RangeError that names what is out of range.
func (b Box) Load() (BoxLoad, error) {
	inside, err := airOf("air in the box", b.Inside, Coldest, Warmest)
	if err != nil {
		return BoxLoad{}, err
	}
	var out BoxLoad
	for _, p := range b.Panels {
		if err := p.check(); err != nil {
			return BoxLoad{}, err
		}
		out.Panels += quantity.Power(float64(p.Conductance) * float64(p.Outside.Sub(inside)))
	}
	for _, d := range b.Doors {
		q, err := d.load(b.Inside)
		if err != nil {
			return BoxLoad{}, err
		}
		out.Doors += q
	}
	for _, g := range b.Goods {
		q, err := g.load(inside)
		if err != nil {
			return BoxLoad{}, err
		}
		out.Goods += q
	}
	err = limit.Within("respiration", b.Respiration, 0, mostPower, "give its heat, not its gas")
	if err != nil {
		return BoxLoad{}, err
	}
	out.Goods += b.Respiration
	people, err := daysOf("time of people in the box", b.People, 100*day)
	if err != nil {
		return BoxLoad{}, err
	}
	out.People = quantity.Watts(people * (272 - 6*inside.Celsius()))
	for _, e := range b.Appliances {
		on, err := daysOf("time that an appliance is on", e.On, day)
		if err != nil {
			return BoxLoad{}, err
		}
		err = limit.Within("power of an appliance", e.Power, 0, mostPower, "give what it draws")
		if err != nil {
			return BoxLoad{}, err
		}
		out.Appliances += e.Power * quantity.Power(on)
	}
	out.Total = out.Panels + out.Doors + out.Goods + out.People + out.Appliances
	return out, nil
}

// Limits of what a box is made of and stands in.
const (
	mostPower       = quantity.Power(1e6)
	mostConductance = quantity.Conductance(1e5)
	mostArea        = quantity.Area(1e5)
	coldestOutside  = Coldest
	hottestOutside  = quantity.Temperature((180 + 459.67) / 1.8) // of a roof in the sun
)

func airOf(
	name string, air psychro.Air, low, high quantity.Temperature,
) (quantity.Temperature, error) {
	if !air.IsValid() {
		return 0, &quantity.RangeError{
			Quantity: name, Min: low, Max: high, Advice: "make it with package psychro",
		}
	}
	t := air.DryBulb()
	return t, limit.Within(name, t, low, high, "give what its thermometer shows")
}

// daysOf is a time of each day as a part of the day.
func daysOf(name string, d, most time.Duration) (float64, error) {
	err := limit.Within(
		name, quantity.Number(d.Hours()), 0, quantity.Number(most.Hours()), "give hours of a day",
	)
	return d.Hours() / day.Hours(), err
}

func (p Panel) check() error {
	err := limit.Within(
		"conductance of a panel", p.Conductance, 0, mostConductance,
		"give area over thermal resistance",
	)
	if err != nil {
		return err
	}
	return limit.Within(
		"temperature outside a panel", p.Outside, coldestOutside, hottestOutside,
		"give that of the air, or of the ground",
	)
}

// load is the heat of the air that a door lets through. Air falls out below and comes in above, and
// weighs the more the colder it is.
func (d Door) load(inside psychro.Air) (quantity.Power, error) {
	const widest = quantity.Length(20)
	for _, side := range []struct {
		name string
		of   quantity.Length
	}{{"width of a door", d.Width}, {"height of a door", d.Height}} {
		if err := limit.Within(side.name, side.of, 0, widest, "measure the opening"); err != nil {
			return 0, err
		}
	}
	_, err := airOf("air outside a door", d.Outside, coldestOutside, quantity.Fahrenheit(130))
	if err != nil {
		return 0, err
	}
	err = limit.Within(
		"what a curtain holds back", quantity.Number(d.Guard), 0, 0.98, "give a share of one",
	)
	if err != nil {
		return 0, err
	}
	open, err := daysOf("time that a door is open", d.Open, day)
	if err != nil {
		return 0, err
	}
	in, out := float64(inside.Density()), float64(d.Outside.Density())
	if out >= in {
		return 0, nil // no colder inside: nothing pushes the air
	}
	const gravity, gosney = 9.80665, 0.221 // m/s², per s of the opening's area and height
	weight := math.Pow(2/(1+math.Cbrt(in/out)), 1.5)
	flow := gosney * float64(d.Width) * float64(d.Height) *
		math.Sqrt((1-out/in)*gravity*float64(d.Height)) * weight // m³/s of the air in the box
	dry := float64(inside.DryAirFlow(quantity.VolumeFlow(flow)))
	heat := dry * float64(d.Outside.Enthalpy()-inside.Enthalpy())
	return quantity.Power(heat * open * (1 - d.Guard)), nil
}

func (g Goods) load(inside quantity.Temperature) (quantity.Power, error) {
	err := limit.Within("goods of a day", g.Mass, 0, quantity.Mass(1e6), "give what comes in")
	if err != nil {
		return 0, err
	}
	err = limit.Within(
		"temperature of goods", g.Enters, Coldest, quantity.Fahrenheit(212),
		"give that of the goods as they come in",
	)
	if err != nil {
		return 0, err
	}
	err = limit.Within(
		"specific heat of goods", g.SpecificHeat, 0, quantity.SpecificHeat(5000),
		"water has 4.19 kJ/(kg K), and no food more",
	)
	if err != nil {
		return 0, err
	}
	err = limit.Within(
		"heat of freezing", g.Freezing, 0, quantity.SpecificEnthalpy(340e3),
		"water has 334 kJ/kg, and no food more",
	)
	if err != nil {
		return 0, err
	}
	heat := float64(g.SpecificHeat)*float64(g.Enters.Sub(inside)) + float64(g.Freezing)
	return quantity.Power(float64(g.Mass) * max(heat, 0) / day.Seconds()), nil
}

// Insulation is what a panel is filled with.
type Insulation int

// The insulations, with how they conduct in W/(m K) by ASHRAE Handbook, Refrigeration, chapter 24
// (from memory).
const (
	// Polyurethane foam: 0.024.
	Polyurethane Insulation = iota + 1
	// ExtrudedPolystyrene: 0.033.
	ExtrudedPolystyrene
	// ExpandedPolystyrene: 0.037.
	ExpandedPolystyrene
)

var conducts = [...]float64{
	Polyurethane: 0.024, ExtrudedPolystyrene: 0.033, ExpandedPolystyrene: 0.037,
}

// Conductance returns that of a panel by its area, up to 100,000 m², and its thickness, 10 mm to
// 1 m; the air on either side adds 1/9.3 m² K/W (from memory). The error is a *quantity.RangeError,
// also for an insulation that there is not.
func (i Insulation) Conductance(
	area quantity.Area, thickness quantity.Length,
) (quantity.Conductance, error) {
	if i < Polyurethane || i > ExpandedPolystyrene {
		return 0, &quantity.RangeError{
			Quantity: "insulation", Value: quantity.Number(i), Min: quantity.Number(Polyurethane),
			Max: quantity.Number(ExpandedPolystyrene), Advice: "take one of the constants",
		}
	}
	if err := limit.Within("area of a panel", area, 0, mostArea, "measure it inside"); err != nil {
		return 0, err
	}
	err := limit.Within(
		"thickness of a panel", thickness, 0.01, 1, "measure the panel at the door's frame",
	)
	if err != nil {
		return 0, err
	}
	const film = 9.3 // W/(m² K)
	return quantity.Conductance(float64(area) / (2/film + float64(thickness)/conducts[i])), nil
}
