package main

import (
	"cmp"
	"crypto/sha256"
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

// A visit is all of an order and its assessments that is still needed once it is judged: it
// goes through the shuffle in their place.
type visit struct {
	// Key is of the machine: what is alike in it is one machine.
	Key  string
	File string
	Line int64
	At   time.Time
	// Text is the hash of the line, where the order has no number to be known by.
	Text [sha256.Size]byte
	Row  Row
	// Kind of machine, by which faults are counted.
	Kind string
	Use  work.Use
	// Full is the charge of the whole machine, zero where it is not known; Topped is what was
	// added to a machine that had refrigerant: what it had lost.
	Full, Topped quantity.Mass
	Repaired     bool
	// Findings and Lies are by the readings as the machine was found, where Found says that
	// there are any.
	Found          bool
	Findings, Lies []likely
	// Charged says that refrigerant was added and the charge judged thereafter.
	Charged bool
}

// A likely is a name, of a cause or a reading, and how likely it is that one.
type likely struct {
	Name   string
	Chance sum
}

// judgeFn judges orders and gives each to the file that its machine goes to.
type judgeFn struct {
	Shards int

	visits batcher[visit]
	dead   batcher[Dead]
}

// StartBundle implements the DoFn: what a bundle that failed had gathered is dropped.
func (f *judgeFn) StartBundle(_, _ func(int, []byte)) {
	f.visits, f.dead = batcher[visit]{most: visitsBytes}, batcher[Dead]{most: lineBytes}
}

// ProcessElement implements the DoFn.
func (f *judgeFn) ProcessElement(packed []byte, visits, dead func(int, []byte)) error {
	lines, err := unpack[Line](packed)
	if err != nil {
		return err
	}
	for _, l := range lines {
		v, err := l.judge()
		if err != nil {
			err = f.dead.add(shardOf(l.File, f.Shards), len(l.Text), l.dead(err), dead)
		} else {
			err = f.visits.add(shardOf(v.Key, f.Shards), visitBytes, v, visits)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

const (
	// visitBytes is about what a visit takes in memory.
	visitBytes = 2000
	// visitsBytes is of visits so much that the batch of each file has some tens of them: one
	// of few is packed half as well.
	visitsBytes = 8 << 20
)

// FinishBundle implements the DoFn.
func (f *judgeFn) FinishBundle(visits, dead func(int, []byte)) error {
	return errors.Join(f.visits.flush(visits), f.dead.flush(dead))
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

// judge reads a line and judges its order.
func (l Line) judge() (visit, error) {
	o, err := work.Decode([]byte(l.Text))
	if err != nil {
		return visit{}, err
	}
	key, err := machineOf(o)
	if err != nil {
		return visit{}, err
	}
	r, err := work.Judge(o)
	if err != nil {
		return visit{}, err
	}
	found := cmp.Or(r.Before, r.After)
	v := visit{
		Key: key, File: l.File, Line: l.Number, At: o.Start, Row: rowOf(key, r, found),
		Kind: kindOf(o.Machine), Use: o.Machine.Use, Full: full(r), Topped: topped(r),
		Repaired: r.Complete && len(o.Leaks) > 0, Charged: r.After != nil && r.Added != 0,
		Found: found != nil,
	}
	if o.Number == "" {
		v.Text = sha256.Sum256([]byte(l.Text))
	}
	if found != nil {
		for _, f := range found.Findings {
			v.Findings = append(v.Findings, likely{f.Cause, sumOf(f.Chance)})
		}
		for _, r := range found.Readings {
			v.Lies = append(v.Lies, likely{r.Field, sumOf(r.Lies)})
		}
	}
	return v, nil
}

// machineOf is the machine that an order was at: by serial, else by where it is.
func machineOf(o work.Order) (string, error) {
	m := o.Machine
	key := strings.ToUpper(strings.TrimSpace(m.Serial))
	if key == "" {
		key = strings.Join([]string{o.Customer, o.Address, m.Name, m.Model}, "\x1f")
	}
	switch {
	case strings.Trim(key, "\x1f ") == "":
		return "", &work.Problem{Field: "machine.serial",
			Problem: "missing; a history needs to know the machine"}
	case o.Start.IsZero():
		return "", &work.Problem{Field: "start",
			Problem: `missing; write the date, as in "2026-07-14"`}
	default:
		return key, nil
	}
}

func rowOf(key string, r work.Record, found *satline.Assessment) Row {
	o := r.Order
	out := Row{
		Machine: strings.ReplaceAll(key, "\x1f", ", "), Number: o.Number,
		Start: o.Start.Format(time.RFC3339), Technician: o.Technician.Name, Model: o.Machine.Model,
		Refrigerant: o.Machine.Equipment.Refrigerant, Added: r.Added.Kilograms(),
		Recovered: r.Recovered.Kilograms(), Complete: r.Complete, Headline: r.Headline.Text,
	}
	if r.After != nil {
		out.Low, out.High = r.After.Charge.Low, r.After.Charge.High
	}
	if found == nil {
		return out
	}
	out.Headline = found.Headline.Text
	if len(found.Findings) > 0 {
		out.Cause, out.Chance = found.Findings[0].Cause, found.Findings[0].Chance
	}
	var doubted []string
	for _, r := range found.Readings {
		if r.Lies > 0.5 {
			doubted = append(doubted, r.Field)
		}
	}
	out.Doubted = strings.Join(doubted, ",")
	return out
}

func kindOf(m work.Machine) string {
	return cmp.Or(m.Model, fmt.Sprintf("%s, %s", m.Equipment.Refrigerant, m.Equipment.Metering))
}

func full(r work.Record) quantity.Mass {
	switch m := r.Order.Machine; {
	case m.FullCharge > 0:
		return m.FullCharge
	case r.Weigh != nil:
		return r.Weigh.Total.Value
	default:
		return m.Equipment.Label.Charge
	}
}

func topped(r work.Record) quantity.Mass {
	if slices.Contains(r.Order.Tasks, work.Commission) {
		return 0
	}
	return max(r.Added-r.Recovered, 0)
}
