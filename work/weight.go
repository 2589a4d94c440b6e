package work

import (
	"errors"
	"fmt"
	"math"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// scaleStd is the standard uncertainty of a difference of two readings of a scale that shows
// half an ounce, each a rectangular distribution (GUM 4.3.7). Common practice, no source.
var scaleStd = quantity.Ounces(0.5 / math.Sqrt(3) * math.Sqrt2)

// cylinderTest is how long the test of a recovery cylinder is good for.
const cylinderTest = 5 // years

var (
	cylinderRule = fact.Source{
		Title:    "49 CFR 173.304a and 80 % liquid at 130 °F",
		Standing: fact.Published,
	}
	retestRule = fact.Source{Title: "49 CFR 180.209", Standing: fact.FromMemory}
)

// weighing works out the charge by label, line and parts, and the whole charge.
func (j *judge) weighing() {
	if j.fluid == nil {
		return
	}
	e := j.o.Machine.Equipment
	j.full = j.o.Machine.FullCharge
	c, err := e.WeighedCharge()
	var w charge.Weighing
	if err == nil {
		w, err = c.Weigh()
	}
	if err != nil {
		j.want = "next.label-charge"
		if at, ok := errors.AsType[*satline.VisitError](err); ok &&
			at.Field != "equipment.label.charge" {
			j.want = "next.measure-line"
		}
		if j.full == 0 {
			j.full = e.Label.Charge
		}
		return
	}
	j.r.Weigh = &w
	j.has["next.label-charge"] = Good
	if j.full == 0 {
		j.full = w.Total.Value
	}
	j.due = w.Total
	if j.o.Machine.Precharged && j.is(Commission) {
		j.due.Value = w.Line + w.Accessories
	}
	if math.Abs(float64(j.due.Value)) < float64(scaleStd) {
		j.due.Value = 0
	}
}

// weighValues are the one figure and what it is made of.
func (j *judge) weighValues() []fact.Value {
	w := j.r.Weigh
	out := []fact.Value{fact.Amount("due", quantity.Mass(math.Abs(float64(j.due.Value)))),
		fact.Amount("total", w.Total.Value), fact.Amount("label", w.Label)}
	if w.Line != 0 {
		out = append(out, fact.Amount("line", w.Line))
	}
	if w.Accessories != 0 {
		out = append(out, fact.Amount("parts", w.Accessories))
	}
	if j.o.Machine.Precharged && j.is(Commission) {
		out = append(out, fact.Of("precharged", fact.Term("weigh.precharged")))
	}
	return out
}

// scale adds up what went out of the cylinders and into them.
func (j *judge) scale() {
	for _, c := range j.o.Cylinders {
		if m := c.moved(); m > 0 {
			j.r.Added += m
		} else {
			j.r.Recovered -= m
		}
		if c.Before+c.After > 0 && c.Tare > 0 && c.WaterCapacity > 0 &&
			(c.Refrigerant != "" || j.fluid != nil) {
			j.has["next.read-cylinder"] = Good
		}
	}
	if j.r.Recovered > 0 {
		j.has["next.weigh-recovered"] = Good
	}
	if w := j.r.Weigh; w != nil && j.emptied() {
		doubt := quantity.Mass(2 * math.Hypot(w.Total.Std, float64(scaleStd)))
		// What stays behind in oil and vapor is a few percent (common practice, no source).
		j.short = w.Total.Value-j.r.Recovered > doubt+w.Total.Value/20
		j.over = w.Total.Value-j.r.Recovered < -doubt
	}
}

// cylinders tells what went out of and into each, and the room that is left.
func (j *judge) cylinders() {
	for i, c := range j.o.Cylinders {
		part := fmt.Sprintf("cylinders[%d]", i)
		add := func(s Progress, f fact.Fact, source fact.Source) {
			j.result(part, "", s, f, source)
		}
		name, moved := fact.Of("name", c.Name), c.moved()
		holds := (*refrigerant.Refrigerant)(nil)
		if c.Refrigerant != "" {
			holds, _ = refrigerant.Lookup(c.Refrigerant) // known, by checked
		}
		if moved != 0 && holds != nil && j.fluid != nil &&
			holds.Designation() != j.fluid.Designation() {
			add(Dangerous, fact.New("cylinder.mixed", name, fact.Of("holds", holds.Designation()),
				fact.Of("machine", j.fluid.Designation())), practice)
		}
		if moved < 0 && c.Kind == Disposable {
			add(Dangerous, fact.New("cylinder.disposable", name), cylinderRule)
		}
		if moved > 0 && c.Tare > 0 {
			add(Good, fact.New("cylinder.out", name, fact.Amount("mass", moved),
				fact.Amount("left", c.After-c.Tare)), fact.Source{})
		}
		if holds == nil {
			holds = j.fluid
		}
		j.room(part, &c, holds, moved < 0)
	}
}

// room tells what a cylinder may still take, where it may take anything.
func (j *judge) room(part string, c *Cylinder, holds *refrigerant.Refrigerant, filled bool) {
	gross := c.After
	if gross == 0 {
		gross = c.Before
	}
	if holds == nil || c.Kind == Disposable || gross == 0 || c.Tare == 0 || c.WaterCapacity == 0 {
		if filled && c.Kind != Disposable {
			j.result(part, "", Open, fact.New("cylinder.no-collar", fact.Of("name", c.Name)),
				cylinderRule)
		}
		return
	}
	name := fact.Of("name", c.Name)
	room, err := c.collar().RoomFor(holds, gross)
	if err != nil {
		j.result(part, "", Dangerous, fact.New("cylinder.not-for-it", name,
			fact.Of("why", err.Error())), cylinderRule)
		return
	}
	defer j.tested(part, c)
	contents, most := fact.Amount("contents", room.Contents), fact.Amount("most", room.Safe)
	if room.MayTake < 0 {
		j.result(part, "", Dangerous, fact.New("cylinder.overfilled", name, contents, most,
			fact.Amount("over", -room.MayTake)), cylinderRule)
		return
	}
	j.result(part, "", Good, fact.New("cylinder.room", name, contents, most,
		fact.Amount("room", room.MayTake), fact.Amount("gross", c.Tare+room.Safe)), cylinderRule)
}

// tested tells whether the test of a cylinder is over.
func (j *judge) tested(part string, c *Cylinder) {
	name := fact.Of("name", c.Name)
	if !c.Tested.IsZero() && !j.o.Start.IsZero() && j.o.Start.After(c.Tested.AddDate(cylinderTest,
		0, 0)) {
		j.result(part, "", Dangerous, fact.New("cylinder.test-over", name,
			fact.Of("tested", c.Tested.Format("2006-01"))), retestRule)
	} else if c.Kind == Recovery && c.Tested.IsZero() {
		j.result(part, "", Open, fact.New("cylinder.test-unknown", name), retestRule)
	}
}

// emptied reports whether all of the charge was recovered, and weighed.
func (j *judge) emptied() bool { return j.o.Recovery != nil && j.r.Recovered > 0 }

// came holds what came out of the machine against what should have been in it.
func (j *judge) came() {
	if j.r.Weigh == nil || !j.emptied() {
		return
	}
	total := j.r.Weigh.Total.Value
	code, s := fact.Code("result.recovered-mass"), Good
	off := fact.Amount("off", quantity.Mass(math.Abs(float64(total-j.r.Recovered))))
	switch {
	case j.short:
		code, s = "result.recovered-less", Found
	case j.over:
		code, s = "result.recovered-more", Found
	}
	j.result("cylinders", "", s, fact.New(code, fact.Amount("mass", j.r.Recovered),
		fact.Amount("charge", total), off), unitLabel)
}

// weighed holds what went in against the one figure.
func (j *judge) weighed() {
	const need = "next.weigh-in"
	j.came()
	if j.r.Weigh == nil || !j.is(RepairLeak, OpenCircuit, WeighIn, Commission) &&
		!(j.is(SetCharge) && weighs(j)) {
		return
	}
	source := j.r.Weigh.Source
	j.result("machine", "", Found, fact.New("result.weigh-figure", j.weighValues()[1:]...), source)
	moved := j.r.Added
	if j.o.Machine.Precharged {
		moved -= j.r.Recovered
	}
	if moved == 0 {
		return
	}
	off := moved - j.due.Value
	doubt := quantity.Mass(2 * math.Hypot(j.due.Std, float64(scaleStd)))
	code, s := fact.Code("result.charged-right"), Good
	switch {
	case off > doubt:
		code, s = "result.charged-over", Bad
	case off < -doubt:
		code, s = "result.charged-short", Bad
	}
	if j.due.Value < 0 {
		code, moved, j.due.Value = "result.taken-out", -moved, -j.due.Value
	}
	j.result("cylinders", need, s, fact.New(code, fact.Amount("mass", moved),
		fact.Amount("due", j.due.Value), fact.Amount("off",
			quantity.Mass(math.Abs(float64(off))))), source)
	if vacuum := j.has["next.evacuate"]; vacuum != Good &&
		!(j.o.Machine.Precharged && len(j.o.Evacuations) == 0) {
		j.result("cylinders", "", Bad, fact.New("result.charged-unproved"), practice)
	}
}
