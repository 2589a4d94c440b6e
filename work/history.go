package work

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/internal/page/words"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/report"
)

// HistorySchema names the version of the JSON form of a History.
const HistorySchema = "satline.history/1"

// A History is one machine over time: its jobs, what moved at like conditions, and the
// refrigerant that it took.
type History struct {
	Schema  string  `json:"schema"`
	Machine Machine `json:"machine"`
	// Language and Units are those of the last order.
	Language satline.Language `json:"language,omitzero"`
	Units    quantity.System  `json:"units"`
	// Headline is the whole of it in one sentence.
	Headline fact.Fact `json:"headline"`
	// Jobs in order of time.
	Jobs []Job `json:"jobs"`
	// Drifts compare the last job, as found, with each value that the machine of an earlier
	// job, as left, would show in the same weather.
	Drifts []Drift `json:"drifts,omitempty"`
	// Since is when the machine was left that the last job is compared with.
	Since time.Time `json:"since,omitzero"`
	// Why says what keeps the two from being compared.
	Why *fact.Fact `json:"why,omitempty"`
	// Plain is what the owner is told of the last readings.
	Plain []fact.Fact `json:"plain,omitempty"`
	// Next is what the last job still asks for, and to find the leak where the rate is too high.
	Next []fact.Fact `json:"next,omitempty"`
	// Years holds what was added in each calendar year, less what was taken out the same day.
	Years []Year `json:"years,omitempty"`
	// Leaks holds the leak rate by each method, where refrigerant was added.
	Leaks    []LeakVerdict `json:"leaks,omitempty"`
	Cautions []fact.Fact   `json:"cautions"`
}

// A Job is one order of a history in short.
type Job struct {
	Start    time.Time `json:"start"`
	Number   string    `json:"number,omitzero"`
	Tasks    []Task    `json:"tasks"`
	Headline fact.Fact `json:"headline"`
	Complete bool      `json:"complete"`
	// Reads is what the readings of the job said, as found where they were taken.
	Reads *fact.Fact    `json:"reads,omitempty"`
	Net   quantity.Mass `json:"net,omitzero"` // added less recovered
	// Found and Left hold what followed from the readings before and after.
	Found []fact.Value `json:"found,omitempty"`
	Left  []fact.Value `json:"left,omitempty"`
}

// A Drift is one value now, beside what the machine as it was left would show in today's
// weather.
type Drift struct {
	// Name of the value, as in Derived or Readings: "superheat".
	Name     string     `json:"name"`
	Expected fact.Value `json:"expected"`
	Now      fact.Value `json:"now"`
	// Moved says that it moved by more than both can be off by.
	Moved bool      `json:"moved"`
	Says  fact.Fact `json:"says"`
}

// A Year is a calendar year's refrigerant.
type Year struct {
	Year  int           `json:"year"`
	Added quantity.Mass `json:"added"`
}

// Compare makes the history of one machine from its orders, in any order of time. What moved is
// told at like conditions: a model fitted to the readings as the machine was left answers what
// it would show in the weather of the last visit.
//
// The error is a *Problem, with the place in the list.
func Compare(orders []Order) (History, error) {
	if len(orders) == 0 || len(orders) > longestList {
		return History{}, &Problem{Field: "orders", Kind: missing, Problem: fmt.Sprintf(
			"give the orders of one machine, 1 to %d of them", longestList,
		)}
	}
	index := make([]int, len(orders))
	for i := range index {
		index[i] = i
	}
	slices.SortStableFunc(index,
		func(a, b int) int { return orders[a].Start.Compare(orders[b].Start) })
	last := &orders[index[len(index)-1]]
	h := History{
		Schema: HistorySchema, Machine: last.Machine, Language: last.Language, Units: last.Units,
	}
	book := words.In(tag(h.Language), h.Units)
	var records []Record
	for _, i := range index {
		o := orders[i]
		field := fmt.Sprintf("orders[%d]", i)
		switch a, b := o.Machine.Serial, last.Machine.Serial; {
		case o.Start.IsZero():
			return History{}, &Problem{Field: field + ".start", Kind: missing,
				Problem: `missing; write the date, as in "2026-07-14"`}
		case a != "" && b != "" && a != b:
			return History{}, &Problem{Field: field + ".machine.serial", Kind: contradictory,
				Problem: fmt.Sprintf("%.40q is not the machine %.40q: a history is of one machine",
					a, b)}
		}
		o.Language, o.Units = h.Language, h.Units
		r, err := Judge(o)
		if p, ok := errors.AsType[*Problem](err); ok {
			return History{}, &Problem{Field: field + "." + p.Field, Kind: p.Kind,
				Problem: p.Problem, Err: p}
		}
		records = append(records, r)
		h.Jobs = append(h.Jobs, jobOf(&r))
	}
	h.refrigerant(records, book)
	h.drift(records, book)
	h.conclude(records, book)
	return h, nil
}

func jobOf(r *Record) Job {
	out := Job{
		Start: r.Order.Start, Number: r.Order.Number, Tasks: r.Order.Tasks,
		Headline: r.Headline, Complete: r.Complete, Net: r.Added - r.Recovered,
	}
	if r.Before != nil {
		out.Found = r.Before.Derived.Values()
	}
	if r.After != nil {
		out.Left = r.After.Derived.Values()
	}
	if _, a := r.found(); a != nil {
		out.Reads = &a.Headline
	}
	return out
}

// refrigerant adds up what was added, by year and as a leak rate. A charge that is weighed in
// whole at the start of a machine's life makes up for no leak.
func (h *History) refrigerant(records []Record, book *words.Book) {
	var additions []Addition
	full := quantity.Mass(0)
	for i := range records {
		r := &records[i]
		if r.Weigh != nil {
			full = r.Weigh.Total.Value
		}
		if m := r.Order.Machine.FullCharge; m > 0 {
			full = m
		} else if full == 0 {
			full = r.Order.Machine.Equipment.Label.Charge
		}
		net := max(r.Added-r.Recovered, 0)
		if r.is(Commission) || net == 0 {
			continue
		}
		additions = append(additions, Addition{
			On: r.Order.Start, Mass: net, Repaired: r.is(RepairLeak) && r.Complete,
		})
		year := r.Order.Start.Year()
		if n := len(h.Years); n == 0 || h.Years[n-1].Year != year {
			h.Years = append(h.Years, Year{Year: year})
		}
		h.Years[len(h.Years)-1].Added += net
	}
	if full == 0 || len(additions) == 0 {
		return
	}
	for _, m := range []LeakMethod{Annualizing, RollingAverage} {
		v, err := JudgeLeak(h.Machine, full, additions, m)
		if err != nil {
			return // Judge has checked what it is made of
		}
		v.Says.Text = book.Say(v.Says)
		h.Leaks = append(h.Leaks, v)
	}
}

// drift holds the last job, as it was found, against the one before it that was left with
// readings.
func (h *History) drift(records []Record, book *words.Book) {
	says := func(code fact.Code, values ...fact.Value) *fact.Fact {
		f := fact.New(code, values...)
		f.Text = book.Say(f)
		return &f
	}
	now, at := records[len(records)-1].found()
	if now == nil {
		h.Why = says("history.not-read")
		return
	}
	var then *satline.Visit
	var as *satline.Assessment
	for i := len(records) - 2; i >= 0 && then == nil; i-- {
		if v, a := records[i].left(); v != nil && a.Mode.Mode == at.Mode.Mode {
			then, as, h.Since = v, a, records[i].Order.Start
		}
	}
	if then == nil {
		h.Why = says("history.first")
		return
	}
	r := now.Readings
	outdoor, dry, wet := r.OutdoorDryBulb.Get(), r.ReturnDryBulb.Get(), r.ReturnWetBulb.Get()
	if outdoor == nil || dry == nil || wet == nil {
		h.Why = says("history.no-weather")
		return
	}
	looks, err := satline.Forecast(*then, satline.Scenario{
		OutdoorDryBulb: outdoor.Value, ReturnDryBulb: dry.Value, ReturnWetBulb: wet.Value,
	})
	if err != nil {
		h.Why = says("history.no-model", fact.Of("why", err.Error()))
		return
	}
	o, d := looks[0], at.Derived
	h.Drifts = appendDrift(h.Drifts, book, "derived.superheat", o.Superheat, d.Superheat,
		leastDelta)
	h.Drifts = appendDrift(h.Drifts, book, "derived.subcooling", o.Subcooling, d.Subcooling,
		leastDelta)
	h.Drifts = appendDrift(h.Drifts, book, "derived.evaporatingDew", o.Evaporating,
		d.EvaporatingDew, leastMove)
	h.Drifts = appendDrift(h.Drifts, book, "derived.condensingBubble", o.Condensing,
		d.CondensingBubble, leastMove)
	h.Drifts = appendDrift(h.Drifts, book, "reading.supplyDryBulb", o.Supply,
		reading(r.SupplyDryBulb.Get(), at), leastMove)
	h.Drifts = appendDrift(h.Drifts, book, "derived.totalCapacity", o.Capacity, d.TotalCapacity,
		quantity.Watts(500))
	if a, b := as.Charge.Error, at.Charge.Error; a != nil && b != nil {
		now := share(b)
		h.Drifts = appendDrift(h.Drifts, book, "drift.charge", share(a), &now, quantity.Percent(5))
	}
	if a := then.Readings.Airflow.Get(); a != nil {
		h.Drifts = appendDrift(h.Drifts, book, "reading.airflow", *a, r.Airflow.Get(),
			quantity.CFM(50))
	}
	if a := then.Readings.ExternalStatic.Get(); a != nil {
		h.Drifts = appendDrift(h.Drifts, book, "reading.externalStatic", *a, r.ExternalStatic.Get(),
			quantity.InchesWater(0.05))
	}
}

// share is how much of the whole charge there is too much, as a quantity.
func share(r *quantity.UncertainNumber) quantity.Uncertain[quantity.Ratio] {
	return quantity.Uncertain[quantity.Ratio]{Value: quantity.Ratio(r.Value), Std: r.Std}
}

// reading is one with the uncertainty that it was assessed with.
func reading(u *quantity.Uncertain[quantity.Temperature],
	a *satline.Assessment) *quantity.Uncertain[quantity.Temperature] {
	if u == nil || u.Std > 0 {
		return u
	}
	out := u.Value.PlusMinus(satline.DefaultInstruments().Thermometer)
	return &out
}

// Less than these no technician calls a change, whatever the instruments could tell (common
// practice, no source).
var (
	leastDelta = quantity.FahrenheitDelta(2)
	leastMove  = quantity.Temperature(quantity.FahrenheitDelta(2))
)

// appendDrift compares a value with what was to be expected of it.
func appendDrift[T quantity.Quantity](
	list []Drift, book *words.Book, name string, expected quantity.Uncertain[T],
	now *quantity.Uncertain[T], least T,
) []Drift {
	if now == nil {
		return list
	}
	const coverage = 2
	by := float64(now.Value) - float64(expected.Value)
	d := Drift{
		Name: name, Expected: fact.Measured("expected", expected), Now: fact.Measured("now", *now),
		Moved: math.Abs(by) > coverage*math.Hypot(now.Std, expected.Std) &&
			math.Abs(by) >= float64(least),
	}
	code := fact.Code("drift.same")
	switch {
	case d.Moved && by > 0:
		code = "drift.up"
	case d.Moved:
		code = "drift.down"
	}
	d.Says = fact.New(code, fact.Of("name", fact.Term(name)),
		fact.Amount("now", now.Value), fact.Amount("expected", expected.Value))
	d.Says.Text = book.Say(d.Says)
	return append(list, d)
}

// An assessed visit is one of a job, with its assessment.
type assessed struct {
	of *satline.Visit
	at *satline.Assessment
}

// found is the machine as the job found it, with its assessment; nil where nothing was read.
func (r *Record) found() (*satline.Visit, *satline.Assessment) {
	return r.firstRead(assessed{r.Order.Before, r.Before}, assessed{r.Order.After, r.After})
}

// left is the machine as the job left it, with its assessment; nil where nothing was read.
func (r *Record) left() (*satline.Visit, *satline.Assessment) {
	return r.firstRead(assessed{r.Order.After, r.After}, assessed{r.Order.Before, r.Before})
}

func (r *Record) firstRead(visits ...assessed) (*satline.Visit, *satline.Assessment) {
	for _, v := range visits {
		if v.at != nil && len(v.at.Readings) > 0 {
			out := r.Order.visit(v.of)
			return &out, v.at
		}
	}
	return nil, nil
}

func (h *History) conclude(records []Record, book *words.Book) {
	say := func(code fact.Code, values ...fact.Value) fact.Fact {
		f := fact.New(code, values...)
		f.Text = book.Say(f)
		return f
	}
	moved := slices.IndexFunc(h.Drifts, func(d Drift) bool { return d.Moved })
	over := slices.IndexFunc(h.Leaks, func(v LeakVerdict) bool { return v.Over || v.Chronic })
	since := fact.Of("since", h.Since.Format(time.DateOnly))
	switch {
	case over >= 0:
		h.Headline = h.Leaks[over].Says
	case moved >= 0:
		h.Headline = say("history.moved", since, fact.Of("what", h.Drifts[moved].Says.Text))
	case h.Why != nil:
		h.Headline = *h.Why
	default:
		h.Headline = say("history.same", since)
	}
	last := &records[len(records)-1]
	if _, a := last.found(); a != nil {
		found, _, next := report.OwnerFacts(*a)
		for _, f := range append(found, next...) {
			h.Plain = append(h.Plain, say(f.Code, f.Values...))
		}
	}
	h.Next = slices.Clone(last.Next)
	is := func(code fact.Code) func(fact.Fact) bool {
		return func(f fact.Fact) bool { return f.Code == code }
	}
	mended := last.is(RepairLeak) && last.Complete
	if over >= 0 && !mended && !slices.ContainsFunc(h.Next, is("next.find-leak")) {
		after := slices.IndexFunc(h.Next, is("next.read-before")) + 1
		h.Next = append(append(h.Next[:after:after], say("next.find-leak")), h.Next[after:]...)
	}
	h.Cautions = last.Cautions
}
