package main

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// safetyTopic is about safety groups and how much of a flammable refrigerant a
// room may have.
var safetyTopic = topic{name: "safety", forms: []form{
	{"group", safetyGroup},
	{"most", func(g *generator, d *draft) error { return roomForm(d, "most") }},
	{"floor", func(g *generator, d *draft) error { return roomForm(d, "floor") }},
	{"least", safetyLeast},
}}

// safetyGroup asks what a group says, of the refrigerants of the set and of
// others, so that every group comes.
func safetyGroup(g *generator, d *draft) error {
	examples := map[string][]string{"A1": {"R-410A", "R-22", "R-407C", "R-134a"},
		"A2L": {"R-32", "R-454B"}, "A3": {"R-290"}, "B2L": {"R-717"}}
	group := g.one("A1", "A2L", "A3", "B2L")
	f, err := refrigerant.Lookup(g.one(examples[group]...))
	if err != nil {
		return err
	}
	if string(f.SafetyGroup()) != group {
		return errAgain
	}
	d.giveText("refrigerant", f.Designation())
	d.giveText("group", group)
	d.noise("label-charge", "outdoor-air")
	d.choice(group, "A1", "A2L", "A3", "B2L")
	return nil
}

// flammable is a refrigerant that burns: one of the set, or else a common one.
func (g *generator) flammable() (*refrigerant.Refrigerant, error) {
	var burn []*refrigerant.Refrigerant
	for _, f := range g.fluids {
		if _, err := f.FlammabilityLimit(); err == nil && f.Flammable() &&
			!f.SafetyGroup().HigherToxicity() {
			burn = append(burn, f)
		}
	}
	if len(burn) == 0 {
		return refrigerant.Lookup(g.one("R-32", "R-454B"))
	}
	return burn[g.rng.IntN(len(burn))], nil
}

func (g *generator) area(v float64) quantity.Area {
	if g.ip() {
		return quantity.SquareFeet(v)
	}
	return quantity.SquareMeters(v)
}

// roomForm reads the rule of the largest charge off a table by floor area.
func roomForm(d *draft, ask string) error {
	g := d.g
	f, err := g.flammable()
	if err != nil {
		return err
	}
	d.giveText("refrigerant", f.Designation())
	height := d.give("height", g.among(6, 8, 1, 1.8, 2.4, 0.2), g.u.length)
	u := unit{g.u.mass.symbol, 2, false}
	t := grid{d: d, units: []unit{g.u.floor.with(1), u}}
	step := g.either(50, 5)
	first := step * g.pick(5, 9, 1)
	for i := range 8 {
		floor := first + step*float64(i)
		limit, err := f.RoomCharge(g.area(floor), g.length(height))
		if err != nil {
			return errAgain
		}
		t.rows = append(t.rows, []float64{floor,
			rounded(float64(limit.Most)/float64(g.mass(1)), 2)})
	}
	if t.rows[0][1] >= t.rows[7][1]-0.05 || t.rows[1][1] <= t.rows[0][1] ||
		t.rows[7][1] <= t.rows[6][1] {
		return errAgain // no part of the table where the floor decides
	}
	floorHead, _ := d.word("head-floor")
	mostHead, _ := d.word("head-most")
	caption, _ := d.word("caption")
	t.print(f.Designation()+caption, []string{
		floorHead + " (" + g.u.floor.symbol + ")", mostHead + " (" + u.symbol + ")",
	})
	floor := first + step*g.pick(2, 5, 1)
	if g.atLeast(2) {
		floor += step * g.pick(0.2, 0.8, 0.1)
	}
	if ask == "most" {
		if g.atLeast(3) { // the room is given by its sides
			side := g.among(12, 20, 1, 3, 5, 0.5)
			d.give("side", side, g.u.length)
			other := d.give("other-side", floor/side, g.u.length.with(1))
			floor = d.set("floor", side*other, g.u.floor.with(1))
			d.bound["floor-sum"] = d.bound["side"] + " × " + d.bound["other-side"] + " = " +
				d.bound["floor"]
		} else {
			floor = d.give("floor", floor, g.u.floor.with(1))
		}
		d.noise("outdoor-air", "label-charge")
		most := t.between(0, 1, floor, 0)
		if math.IsNaN(most) {
			return errAgain
		}
		t.how("most", 0, 1, floor)
		d.answer(most, 0.01*most, u)
		limit, err := f.RoomCharge(g.area(floor), g.length(height))
		if err != nil {
			return err
		}
		d.again = float64(limit.Most) / float64(g.mass(1))
		for key, slip := range map[string]int{"row-below": 1, "row-above": -1, "two-rows-below": 2,
			"two-rows-above": -2} {
			d.wrongLater(key, t.between(0, 1, floor, slip))
		}
		d.wrongLater("half", most/2)
		d.wrongLater("twice", 2*most)
		d.wrongLater("less-a-quarter", most*0.75)
		d.later()
		return nil
	}
	charge := d.give("charge", t.between(0, 1, floor, 0), u)
	d.noise("outdoor-air", "voltage")
	need := t.between(1, 0, charge, 0)
	if math.IsNaN(need) {
		return errAgain
	}
	t.how("need", 1, 0, charge)
	d.answer(need, 0.012*need, unit{g.u.floor.symbol, int(g.either(0, 1)), false})
	limit, err := f.RoomFloor(g.mass(charge), g.length(height))
	if err != nil {
		return err
	}
	d.again = limit.Floor.SquareMeters()
	if g.ip() {
		d.again = limit.Floor.SquareFeet()
	}
	for key, slip := range map[string]int{"row-below": 1, "row-above": -1, "two-rows-below": 2,
		"two-rows-above": -2} {
		d.wrongLater(key, t.between(1, 0, charge, slip))
	}
	d.wrongLater("half", need/2)
	d.wrongLater("twice", 2*need)
	d.wrongLater("in-proportion", t.rows[0][0]*charge/t.rows[0][1])
	d.later()
	return nil
}

// safetyLeast asks for the charge up to which a room is not asked for: six times
// the limit of flammability of a refrigerant that burns slowly, four times that of
// one that burns readily.
func safetyLeast(g *generator, d *draft) error {
	f, err := refrigerant.Lookup(g.one("R-32", "R-454B", "R-290"))
	if err != nil {
		return err
	}
	limit, err := f.FlammabilityLimit()
	if err != nil {
		return err
	}
	d.giveText("refrigerant", f.Designation())
	d.giveText("group", string(f.SafetyGroup()))
	lfl := d.give("limit", limit.Density.KilogramsPerCubicMeter(), unit{"kg/m³", 3, false})
	slow := d.give("slow-volume", 6, unit{"m³", 0, true})
	fast := d.give("fast-volume", 4, unit{"m³", 0, true})
	times, other := slow, fast
	if f.SafetyGroup() == refrigerant.A3 {
		times, other = fast, slow
	}
	d.set("volume", times, unit{"m³", 0, true})
	less := times * limit.Density.KilogramsPerCubicMeter() * 0.999
	least, err := f.RoomFloor(quantity.Kilograms(less), quantity.Meters(1.8))
	if err != nil {
		return err
	}
	u := unit{"kg", 3, false}
	var work func(v float64) float64
	if g.atLeast(2) { // of a charge that is a little more
		charge := d.give("charge", times*lfl*g.pick(1.4, 2.2, 0.05), unit{"kg", 2, false})
		d.noise("outdoor-air", "voltage")
		work = func(v float64) float64 { return charge - v }
		d.phrase("asked", "asked-over")
		d.bound["asked-sum"] = d.bound["charge"] + " − " + d.bound["volume"] + " × " +
			d.bound["limit"]
	} else {
		work = func(v float64) float64 { return v }
		d.phrase("asked", "asked-most")
		d.bound["asked-sum"] = d.bound["volume"] + " × " + d.bound["limit"]
	}
	d.answer(work(times*lfl), 0.01*times*lfl, u)
	d.again = work(float64(least.Most))
	if !(least.Most > 0) || least.Rule != refrigerant.AnyRoom {
		return errAgain
	}
	d.wrong("other-volume", work(other*lfl))
	d.wrong("both-volumes", work((slow+fast)*lfl))
	d.wrong("difference-volumes", work((slow-fast)*lfl))
	d.wrong("half-volume", work(times*lfl/2))
	d.wrong("volume-twice", work(2*times*lfl))
	d.wrong("mean-volume", work(5*lfl))
	d.wrong("quarter-less", work(0.75*times*lfl))
	d.wrong("quarter-more", work(1.25*times*lfl))
	d.wrong("half", work(times*lfl)/2)
	return nil
}
