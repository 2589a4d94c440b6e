package main

import (
	"iter"
	"maps"
	"math"
	"strconv"
	"strings"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/work"
)

// A sum is in millionths. Whole numbers come to the same however they are put together, as
// floating ones do not: two runs over one archive make the same tables.
type sum int64

func sumOf(x float64) sum { return sum(math.Round(x * 1e6)) }

func (s sum) value() float64 { return float64(s) / 1e6 }

// A Tally is a count that says how sure it is.
type Tally struct {
	// N things were looked at; P is the sum of the chances that each is one of those
	// counted, and V that of p(1−p), the variance of their number.
	N    int64
	P, V sum
	// Of a share of one mass in another, in kilograms: the sums of both, of their squares and
	// products.
	A, F, AA, AF, FF sum
}

// addTallies is the combiner of tallies.
func addTallies(a, b Tally) Tally {
	return Tally{a.N + b.N, a.P + b.P, a.V + b.V,
		a.A + b.A, a.F + b.F, a.AA + b.AA, a.AF + b.AF, a.FF + b.FF}
}

// chance is one thing that is with chance p one of those counted.
func chance(p float64) Tally { return Tally{N: 1, P: sumOf(p), V: sumOf(p * (1 - p))} }

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

// history counts the visits of one machine, in order of time.
func (t tallies) history(visits []visit) {
	for i, v := range visits {
		t.faults(v)
		t.instruments(v)
		t.overcharge(v)
		t.callback(visits[i:])
	}
	t.refrigerant(visits)
}

func (t tallies) faults(v visit) {
	if !v.Found {
		return
	}
	season := season(v.At)
	t.add(Tally{N: 1}, "faults", v.Kind, season, "")
	for _, f := range v.Findings {
		t.add(chance(f.Chance.value()), "faults", v.Kind, season, f.Name)
	}
}

// instruments counts readings by who took them: the instruments are their own.
func (t tallies) instruments(v visit) {
	if v.Row.Technician == "" {
		return
	}
	for _, r := range v.Lies {
		t.add(chance(r.Chance.value()), "instruments", v.Row.Technician, r.Name)
	}
}

// overcharge counts machines that were left with too much after refrigerant was added.
func (t tallies) overcharge(v visit) {
	if v.Charged && v.Row.Technician != "" {
		t.add(chance(v.Row.High), "overcharges", v.Row.Technician)
	}
}

// callback counts the first visit, where it had a cause, and the chance that the next one
// within the time had the same.
func (t tallies) callback(visits []visit) {
	first := visits[0]
	if len(first.Findings) == 0 {
		return
	}
	top := first.Findings[0]
	if top.Name == "sound" || top.Chance < sumOf(0.5) {
		return
	}
	again := 0.0
	for _, next := range visits[1:] {
		if next.At.Sub(first.At) > callbackDays*24*time.Hour {
			break
		}
		for _, f := range next.Findings {
			if f.Name == top.Name {
				again = max(again, top.Chance.value()*f.Chance.value())
			}
		}
	}
	t.add(chance(again), "callbacks", top.Name)
}

// refrigerant counts, for each year in which the machine was visited, what it had lost,
// and whether by then it leaked more than the rule of 40 CFR 82.157 or 84.106 allows.
func (t tallies) refrigerant(visits []visit) {
	type year struct {
		added, full float64
		over        float64
	}
	years := map[int]year{}
	var additions []work.Addition
	var full quantity.Mass
	for _, v := range visits {
		if v.Full > 0 {
			full = v.Full
		}
		y := years[v.At.Year()]
		y.full = full.Kilograms()
		if v.Topped > 0 {
			y.added += v.Topped.Kilograms()
			additions = append(additions,
				work.Addition{On: v.At, Mass: v.Topped, Repaired: v.Repaired})
			machine := work.Machine{Use: v.Use,
				Equipment: satline.Equipment{Refrigerant: v.Row.Refrigerant}}
			leak, err := work.JudgeLeak(machine, full, additions, work.Annualizing)
			if err == nil && leak.Over {
				y.over = 1
			}
		}
		years[v.At.Year()] = y
	}
	for n, y := range years {
		one := chance(y.over)
		one.A, one.F = sumOf(y.added), sumOf(y.full)
		if y.full > 0 {
			one.AA, one.AF, one.FF =
				sumOf(y.added*y.added), sumOf(y.added*y.full), sumOf(y.full*y.full)
		}
		t.add(one, "refrigerant", strconv.Itoa(n))
	}
}
