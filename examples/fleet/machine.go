package main

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/strictjson"
	"github.com/satline/satline/work"
)

// keyFn gives each order the machine that it was at: by serial, else by where it is.
type keyFn struct{}

// ProcessElement implements the DoFn.
func (*keyFn) ProcessElement(l Line, emit func(string, Line), dead func(Dead)) {
	o, err := work.Decode([]byte(l.Text))
	if err != nil {
		dead(l.dead(err))
		return
	}
	m := o.Machine
	key := strings.ToUpper(strings.TrimSpace(m.Serial))
	if key == "" {
		key = strings.Join([]string{o.Customer, o.Address, m.Name, m.Model}, "\x1f")
	}
	switch {
	case strings.Trim(key, "\x1f ") == "":
		dead(l.dead(&work.Problem{Field: "machine.serial",
			Problem: "missing; a history needs to know the machine"}))
	case o.Start.IsZero():
		dead(l.dead(&work.Problem{Field: "start",
			Problem: `missing; write the date, as in "2026-07-14"`}))
	default:
		emit(key, l)
	}
}

func (l Line) dead(err error) Dead {
	d := Dead{File: l.File, Line: l.Number, Problem: err.Error(), Text: l.Text}
	if p, ok := errors.AsType[*work.Problem](err); ok {
		d.Field, d.Problem = p.Field, p.Problem
	}
	if at, ok := errors.AsType[*strictjson.Error](err); ok {
		at.Line = int(l.Number) // that of the archive: an order is one line
		d.Field, d.Problem = at.Path, at.Error()
	}
	return d
}

// A Row is what an order came to, for other programs.
type Row struct {
	Machine     string `json:"machine" parquet:"machine,dict"`
	Number      string `json:"number,omitzero" parquet:"number"`
	Start       string `json:"start" parquet:"start"`
	Technician  string `json:"technician,omitzero" parquet:"technician,dict"`
	Model       string `json:"model,omitzero" parquet:"model,dict"`
	Refrigerant string `json:"refrigerant" parquet:"refrigerant,dict"`
	// Cause is the likeliest, by the readings as the machine was found.
	Cause  string  `json:"cause,omitzero" parquet:"cause,dict"`
	Chance float64 `json:"chance,omitzero" parquet:"chance"`
	// Low and High are the chances of the charge as it was left.
	Low  float64 `json:"low,omitzero" parquet:"low"`
	High float64 `json:"high,omitzero" parquet:"high"`
	// Added and Recovered are in kilograms.
	Added     float64 `json:"addedKg,omitzero" parquet:"added_kg"`
	Recovered float64 `json:"recoveredKg,omitzero" parquet:"recovered_kg"`
	// Doubted are the readings that are likelier wrong than right, with commas between.
	Doubted  string `json:"doubted,omitzero" parquet:"doubted,dict"`
	Complete bool   `json:"complete" parquet:"complete"`
	Headline string `json:"headline" parquet:"headline"`
}

// judgeFn judges the orders of one machine, in order of time and each once, however
// often it stands in the archive.
type judgeFn struct{}

// ProcessElement implements the DoFn.
func (*judgeFn) ProcessElement(
	key string, lines func(*Line) bool, row func(Row), count func(string, Tally), dead func(Dead),
) {
	jobs, twice, bad := judged(lines)
	sums := tallies{}
	sums.add(Tally{N: twice}, "lines", "twice")
	for _, d := range bad {
		dead(d)
	}
	for i, j := range jobs {
		row(j.row(key))
		sums.faults(j)
		sums.instruments(j)
		sums.overcharge(j)
		sums.callback(jobs[i:])
	}
	sums.refrigerant(jobs)
	for _, k := range slices.Sorted(sums.keys()) {
		count(k, sums[k])
	}
}

// A job is an order and what became of it.
type job struct {
	work.Record
	// found is by the readings before the work, and left by those after it.
	found, left *satline.Assessment
}

func judged(lines func(*Line) bool) (jobs []job, twice int64, dead []Dead) {
	type order struct {
		work.Order
		line Line
	}
	var orders []order
	for l := (Line{}); lines(&l); l = (Line{}) {
		o, err := work.Decode([]byte(l.Text))
		if err != nil { // keyFn has read it
			dead = append(dead, l.dead(err))
			continue
		}
		orders = append(orders, order{o, l})
	}
	slices.SortFunc(orders, func(a, b order) int {
		return cmp.Or(a.Start.Compare(b.Start), cmp.Compare(a.Number, b.Number),
			cmp.Compare(a.line.File, b.line.File), cmp.Compare(a.line.Number, b.line.Number))
	})
	seen := map[string]bool{}
	for _, o := range orders {
		name := o.Start.Format(time.RFC3339Nano) + " " + o.Number
		if o.Number == "" {
			name = o.line.Text
		}
		if seen[name] {
			twice++
			continue
		}
		r, err := work.Judge(o.Order)
		if err != nil {
			dead = append(dead, o.line.dead(err))
			continue
		}
		seen[name] = true
		j := job{Record: r, found: r.Before, left: r.After}
		if j.found == nil {
			j.found = r.After
		}
		jobs = append(jobs, j)
	}
	return jobs, twice, dead
}

func (j job) row(key string) Row {
	o := j.Order
	out := Row{
		Machine: strings.ReplaceAll(key, "\x1f", ", "), Number: o.Number,
		Start: o.Start.Format(time.RFC3339), Technician: o.Technician.Name, Model: o.Machine.Model,
		Refrigerant: o.Machine.Equipment.Refrigerant, Added: j.Added.Kilograms(),
		Recovered: j.Recovered.Kilograms(), Complete: j.Complete, Headline: j.Headline.Text,
	}
	if j.left != nil {
		out.Low, out.High = j.left.Charge.Low, j.left.Charge.High
	}
	if j.found == nil {
		return out
	}
	out.Headline = j.found.Headline.Text
	if len(j.found.Findings) > 0 {
		out.Cause, out.Chance = j.found.Findings[0].Cause, j.found.Findings[0].Chance
	}
	var doubted []string
	for _, r := range j.found.Readings {
		if r.Lies > 0.5 {
			doubted = append(doubted, r.Field)
		}
	}
	out.Doubted = strings.Join(doubted, ",")
	return out
}

// model is by which faults are counted.
func (j job) model() string {
	e := j.Order.Machine.Equipment
	return cmp.Or(j.Order.Machine.Model, fmt.Sprintf("%s, %s", e.Refrigerant, e.Metering))
}

// full is the charge of the whole machine, zero where it is not known.
func (j job) full() quantity.Mass {
	switch m := j.Order.Machine; {
	case m.FullCharge > 0:
		return m.FullCharge
	case j.Weigh != nil:
		return j.Weigh.Total.Value
	default:
		return m.Equipment.Label.Charge
	}
}

// topped is what was added to a machine that had refrigerant: what it had lost.
func (j job) topped() quantity.Mass {
	if slices.Contains(j.Order.Tasks, work.Commission) {
		return 0
	}
	return max(j.Added-j.Recovered, 0)
}
