package work

import (
	"slices"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/airside/drain"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// Judge holds each part of an order against the rule for it and says what its tasks still
// miss. The error is a *Problem: the first of Order.Validate.
func Judge(o Order) (Record, error) {
	if problems := o.checked(); len(problems) > 0 {
		return Record{}, problems[0]
	}
	j := judgeOf(&o)
	j.visits()
	j.parts()
	if len(j.problems) > 0 {
		return Record{}, j.problems[0]
	}
	j.conclude()
	return j.r, nil
}

// judgeOf is the judge of an order that was checked.
func judgeOf(o *Order) *judge {
	j := judge{o: o, has: map[fact.Code]Progress{}}
	j.book = words.In(tag(o.Language), o.Units)
	j.r = Record{Schema: RecordSchema, Order: *o}
	if name := o.Machine.Equipment.Refrigerant; name != "" {
		j.fluid, _ = refrigerant.Lookup(name) // known, by checked
	}
	return &j
}

// parts judges all but the visits.
func (j *judge) parts() {
	j.weighing()
	for _, part := range []func(){
		j.scale, j.recovery, j.leaks, j.nitrogen, j.joints, j.evacuations, j.weighed, j.cylinders,
		j.meter, j.water, j.air, j.checklist, j.read,
	} {
		part()
	}
}

// A judge fills a record part by part.
type judge struct {
	o *Order
	r Record
	// problems are what only shows as the parts are judged.
	problems checker
	book     *words.Book
	fluid    *refrigerant.Refrigerant // nil where none is stated
	// has is how far the work has come with what a task asks for.
	has map[fact.Code]Progress
	// full is the charge of the whole appliance; zero where it is not known.
	full quantity.Mass
	// cause is what the meter and the looks found first, wrong what they found last; nil where
	// they found nothing.
	cause, wrong *fact.Fact
	// drain is what the last looks at pan and drain show; nil where there were none.
	drain *drain.Report
	// short and over say that less or more came out of the machine than should be in it.
	short, over bool
	// vacuumLeaks says that the last vacuum rose as with a leak.
	vacuumLeaks bool
	// want is what keeps the charge to weigh in from being worked out.
	want fact.Code
	// airs is what the air asks for, minds what to mind with it.
	airs, minds []fact.Fact
	// due is what has to go into the machine by weight; zero for none.
	due quantity.Uncertain[quantity.Mass]
}

// says makes a fact with its sentence.
func (j *judge) says(code fact.Code, values ...fact.Value) fact.Fact {
	f := fact.New(code, values...)
	f.Text = j.book.Say(f)
	return f
}

// result notes how a part stands; what is no good yet overrules what was.
func (j *judge) result(part string, need fact.Code, s Progress, f fact.Fact, source fact.Source) {
	f.Text = j.book.Say(f)
	j.r.Results = append(j.r.Results, Result{part, s, f, source})
	if need != "" {
		j.has[need] = s
	}
}

// is reports whether the order has any of the tasks.
func (j *judge) is(tasks ...Task) bool {
	return slices.ContainsFunc(tasks, func(t Task) bool { return slices.Contains(j.o.Tasks, t) })
}

// weighs reports whether the machine is charged by weight alone, having no port to read its
// liquid by.
func (m *Machine) weighs() bool {
	if m.Ports == 0 {
		return m.Equipment.LineSet.Device == charge.DeviceOutdoors
	}
	return m.Ports != SuctionAndLiquid
}

// visits assesses the readings before and after.
func (j *judge) visits() {
	for _, v := range []struct {
		name string
		of   *satline.Visit
		to   **satline.Assessment
	}{{"before", j.o.Before, &j.r.Before}, {"after", j.o.After, &j.r.After}} {
		if v.of == nil {
			continue
		}
		a, err := satline.Assess(j.o.visit(v.of))
		if err != nil {
			j.problems.because(contradictory, v.name, err)
			continue
		}
		*v.to = &a
	}
	if a := j.r.Before; a != nil && (len(a.Readings) > 0 || len(j.o.Before.Checks) > 0 ||
		a.Electrical != nil) {
		j.has["next.read-before"] = Good
		s := Found
		if stops(a) && j.r.After == nil {
			s = Dangerous
		}
		// What the meter showed has results of its own.
		if !strings.HasPrefix(string(a.Headline.Code), "electrical.") {
			j.result("before", "", s, a.Headline, fact.Source{})
		}
	}
	if j.r.Before != nil && j.r.After != nil {
		j.moved()
	}
}

// stops reports whether the machine has to be stopped before anything else.
func stops(a *satline.Assessment) bool {
	return slices.ContainsFunc(a.Dangers, func(d satline.Danger) bool { return d.Stops })
}

// sound reports whether an assessment found nothing wrong.
func sound(a *satline.Assessment) bool {
	return a != nil && a.Headline.Code == "headline.sound"
}

// read judges the readings after the work.
func (j *judge) read() {
	a := j.r.After
	if a == nil || len(a.Readings) == 0 {
		return
	}
	s := Good
	switch {
	case stops(a):
		s = Dangerous
	case len(a.Dangers) > 0:
		s = Bad
	case a.Charge.Outcome == satline.ChargeInBand, weighs(j):
	case a.Charge.Outcome == satline.ChargeNotJudged && j.has["next.weigh-in"] == Good:
	default:
		s = Open
	}
	says := a.Headline
	switch split := a.Derived.TemperatureSplit; {
	case sound(a) || s != Good:
	case weighs(j) && split != nil:
		says = fact.New("result.after-weighed", fact.Measured("split", *split))
	case a.Charge.Reading != nil:
		says = a.Charge.Reading.Says
	}
	j.result("after", "next.read-after", s, says, fact.Source{})
}

// moved puts what follows from both visits side by side.
func (j *judge) moved() {
	after := j.r.After.Derived.Values()
	for _, b := range j.r.Before.Derived.Values() {
		for _, a := range after {
			if a.Name == b.Name {
				j.r.Moved = append(j.r.Moved, ValueChange{b.Name, b, a})
			}
		}
	}
}

// conclude lists what is next, and says the whole in one sentence.
func (j *judge) conclude() {
	j.r.Next = j.next()
	worst := func(s Progress) *Result {
		for i := range j.r.Results {
			if r := &j.r.Results[i]; r.Standing == s {
				return r
			}
		}
		return nil
	}
	dangers := []Result{}
	j.r.Results = slices.DeleteFunc(j.r.Results, func(r Result) bool {
		if r.Standing == Dangerous {
			dangers = append(dangers, r)
		}
		return r.Standing == Dangerous
	})
	j.r.Results = append(dangers, j.r.Results...)
	j.r.Complete = len(j.r.Next) == 0 && worst(Dangerous) == nil && worst(Bad) == nil
	switch danger, bad := worst(Dangerous), worst(Bad); {
	case j.wrong != nil && (danger == nil || j.has["next.electrical"] == Bad):
		j.r.Headline = j.says(j.wrong.Code, j.wrong.Values...)
	case danger != nil:
		j.r.Headline = danger.Says
	case bad != nil:
		j.r.Headline = bad.Says
	case j.r.Complete && j.cause != nil:
		j.r.Headline = j.says("record.complete-found", fact.Of("found",
			j.says(j.cause.Code, j.cause.Values...).Text))
	case j.r.Complete && sound(j.r.After):
		j.r.Headline = j.says("record.complete-reads", fact.Of("reads", j.r.After.Headline.Text))
	case j.r.Complete && j.r.After == nil && sound(j.r.Before):
		j.r.Headline = j.says("record.complete-reads", fact.Of("reads", j.r.Before.Headline.Text))
	case j.r.Complete:
		j.r.Headline = j.says("record.complete")
	case j.judged() && !sound(j.last()):
		j.r.Headline = j.last().Headline
	default:
		j.r.Headline = j.says("record.open", fact.Of("count", len(j.r.Next)))
	}
	j.r.Cautions = j.cautions()
}

// cautions are those of the refrigerant and of the parts of the work.
func (j *judge) cautions() []fact.Fact {
	out := []fact.Fact{j.says("caution.label-first")}
	add := func(f fact.Fact) { out = append(out, j.says(f.Code, f.Values...)) }
	for _, a := range []*satline.Assessment{j.r.Before, j.r.After} {
		if a != nil && a.Electrical != nil {
			for _, f := range a.Electrical.Cautions {
				add(f)
			}
			break
		}
	}
	for _, f := range j.minds {
		if f.Code != "caution.label-first" {
			add(f)
		}
	}
	if j.drain != nil {
		for _, f := range j.drain.Cautions {
			add(f)
		}
	}
	fluid := j.fluid
	for _, c := range j.o.Cylinders {
		if fluid == nil && c.Refrigerant != "" {
			fluid, _ = refrigerant.Lookup(c.Refrigerant) // known, by checked
		}
	}
	for _, h := range fluid.Hazards() {
		add(h.Fact())
	}
	if j.is(SetCharge, RepairLeak, OpenCircuit, WeighIn, CheckCylinder, Commission) {
		add(fact.New("caution.cylinder"))
	}
	if j.is(RepairLeak, OpenCircuit, Commission) {
		add(fact.New("caution.nitrogen"))
	}
	if !j.is(CheckCylinder) || len(j.o.Tasks) > 1 {
		add(fact.New("caution.electricity"))
	}
	return out
}
