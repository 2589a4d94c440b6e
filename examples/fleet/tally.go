package main

import (
	"iter"
	"maps"
	"strconv"
	"strings"
	"time"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/work"
)

// A Tally is a sum that says how sure it is. It is the same however its parts are put
// together.
type Tally struct {
	// N things were looked at; P is the sum of the chances that each is one of those
	// counted, and V that of p(1−p), the variance of their number.
	N    int64
	P, V float64
	// Of a share of one mass in another: the sums of both, of their squares and products.
	A, F, AA, AF, FF float64
}

// addTallies is the combiner of tallies.
func addTallies(a, b Tally) Tally {
	return Tally{a.N + b.N, a.P + b.P, a.V + b.V,
		a.A + b.A, a.F + b.F, a.AA + b.AA, a.AF + b.AF, a.FF + b.FF}
}

// chance is one thing that is with chance p one of those counted.
func chance(p float64) Tally { return Tally{N: 1, P: p, V: p * (1 - p)} }

// tallies by the table and the row that they go to.
type tallies map[string]Tally

const between = "\x1f"

func (t tallies) add(one Tally, key ...string) {
	k := strings.Join(key, between)
	t[k] = addTallies(t[k], one)
}

func (t tallies) keys() iter.Seq[string] { return maps.Keys(t) }

// callbackDays is within what time a second visit for the same cause is a callback.
const callbackDays = 30

// season of the year, by its months, which are another season in the south.
func season(t time.Time) string {
	return [...]string{"Dec-Feb", "Mar-May", "Jun-Aug", "Sep-Nov"}[int(t.Month())%12/3]
}

func (t tallies) faults(j job) {
	if j.found == nil {
		return
	}
	model, season := j.model(), season(j.Order.Start)
	t.add(Tally{N: 1}, "faults", model, season, "")
	for _, f := range j.found.Findings {
		t.add(chance(f.Chance), "faults", model, season, f.Cause)
	}
}

// instruments counts readings by who took them: the instruments are their own.
func (t tallies) instruments(j job) {
	if j.found == nil || j.Order.Technician.Name == "" {
		return
	}
	for _, r := range j.found.Readings {
		t.add(chance(r.Lies), "instruments", j.Order.Technician.Name, r.Field)
	}
}

// overcharge counts machines that were left with too much after refrigerant was added.
func (t tallies) overcharge(j job) {
	if j.After == nil || j.Added == 0 || j.Order.Technician.Name == "" {
		return
	}
	t.add(chance(j.After.Charge.High), "overcharges", j.Order.Technician.Name)
}

// callback counts the first job, where it had a cause, and the chance that the next one
// within the time had the same.
func (t tallies) callback(jobs []job) {
	first := jobs[0]
	if first.found == nil || len(first.found.Findings) == 0 {
		return
	}
	top := first.found.Findings[0]
	if top.Cause == "sound" || top.Chance < 0.5 {
		return
	}
	again := 0.0
	for _, next := range jobs[1:] {
		if next.Order.Start.Sub(first.Order.Start) > callbackDays*24*time.Hour {
			break
		}
		if next.found != nil {
			for _, f := range next.found.Findings {
				if f.Cause == top.Cause {
					again = max(again, top.Chance*f.Chance)
				}
			}
		}
	}
	t.add(chance(again), "callbacks", top.Cause)
}

// refrigerant counts, for each year in which the machine was visited, what it had lost,
// and whether by then it leaked more than the rule of 40 CFR 82.157 or 84.106 allows.
func (t tallies) refrigerant(jobs []job) {
	type year struct {
		added, full float64
		over        float64
	}
	years := map[int]year{}
	var additions []work.Addition
	var full quantity.Mass
	for _, j := range jobs {
		if f := j.full(); f > 0 {
			full = f
		}
		y := years[j.Order.Start.Year()]
		y.full = full.Kilograms()
		if mass := j.topped(); mass > 0 {
			y.added += mass.Kilograms()
			additions = append(additions, work.Addition{On: j.Order.Start, Mass: mass,
				Repaired: j.Complete && len(j.Order.Leaks) > 0})
			v, err := work.JudgeLeak(j.Order.Machine, full, additions, work.Annualizing)
			if err == nil && v.Over {
				y.over = 1
			}
		}
		years[j.Order.Start.Year()] = y
	}
	for n, y := range years {
		one := chance(y.over)
		if y.full > 0 {
			one.A, one.F = y.added, y.full
			one.AA, one.AF, one.FF = y.added*y.added, y.added*y.full, y.full*y.full
		} else {
			one.A = y.added
		}
		t.add(one, "refrigerant", strconv.Itoa(n))
	}
}
