package live

import (
	"strings"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/report"
	"github.com/satline/satline/work"
)

// A jobInput is what a record of the whole job says beside the visit and the other tasks.
type jobInput struct {
	Task       work.Task `json:"task" strict:"required"`
	Technician string    `json:"technician"`
	License    string    `json:"license"`
	Customer   string    `json:"customer"`
	Address    string    `json:"address"`
	Number     string    `json:"number"`
	Serial     string    `json:"serial"`
	Done       string    `json:"done"`
	Left       string    `json:"left"`

	Checklist []work.Checked `json:"checklist"`
}

// order is the job made of everything that was entered; an error where no job was named.
func order(v satline.Visit, all Inputs) (work.Order, error) {
	var in jobInput
	if err := all.decode("job", &in); err != nil {
		return work.Order{}, err
	}
	o := work.Order{
		Title: v.Title, Number: in.Number, Units: v.Units, Language: v.Language,
		Technician: work.Technician{Name: in.Technician, License: in.License},
		Customer:   in.Customer, Address: in.Address, Complaint: v.Complaint,
		Machine: work.Machine{
			Name: v.Title, Serial: in.Serial, Equipment: v.Equipment, Site: v.Site,
		},
		Tasks: []work.Task{in.Task}, Checklist: in.Checklist, Notes: v.Notes,
		Done: lines(in.Done), Left: lines(in.Left),
	}
	if v.Electrical != nil || len(v.Log) > 0 || v.Readings != (satline.Readings{}) {
		read := v
		read.Equipment, read.Site, read.Notes = satline.Equipment{}, satline.Site{}, ""
		o.Before = &read
	}
	var n nitrogenInput
	if all.decode("nitrogen", &n) == nil {
		o.Machine.LowSideDesign = n.Limit
		o.Nitrogen = []work.NitrogenPart{{Readings: []work.Reading{
			{Pressure: gauge(n.Start), Gas: pipe(n.StartGas)},
			{At: n.Held, Pressure: gauge(n.End), Gas: pipe(n.EndGas)},
		}}}
	}
	var vac vacuumInput
	if all.decode("vacuum", &vac) == nil {
		part := work.EvacuationPart{
			Maker: charge.DecayLimits{Start: vac.Start, Level: vac.Level},
		}
		for _, r := range vac.Readings {
			part.Decay = append(part.Decay, work.Reading{At: r.At, Vacuum: &r.Value})
		}
		o.Evacuations = []work.EvacuationPart{part}
	}
	var c cylinderInput
	if all.decode("cylinder", &c) == nil {
		o.Cylinders = []work.Cylinder{{
			Name: "1", Refrigerant: c.Holds, Kind: c.Kind, Before: c.Gross, After: c.After,
			WaterCapacity: c.WaterCapacity, Tare: c.Tare, Service: c.Service,
		}}
	}
	return o, nil
}

func gauge(p quantity.GaugePressure) *quantity.Uncertain[quantity.GaugePressure] {
	return new(p.PlusMinus(satline.DefaultInstruments().Gauge))
}

func pipe(t quantity.Temperature) *quantity.Uncertain[quantity.Temperature] {
	return new(t.PlusMinus(satline.DefaultInstruments().Clamp))
}

func lines(text string) []string {
	if text = strings.TrimSpace(text); text == "" {
		return nil
	}
	return strings.Split(text, "\n")
}

// job judges the whole job: what was done well and badly, and what its task still asks for.
func job(v satline.Visit, all Inputs) ([]fact.Fact, error) {
	o, err := order(v, all)
	if err != nil {
		return nil, err
	}
	r, err := work.Judge(o)
	if err != nil {
		return nil, err
	}
	out := []fact.Fact{r.Headline}
	for _, result := range r.Results {
		out = append(out, result.Says)
	}
	return append(out, r.Next...), nil
}

// Record is the record as a page that stands by itself and prints on one sheet: that of the
// job where one is named, else that of the visit. The day is that of the clock.
func Record(visit, inputs []byte, day time.Time) (string, error) {
	v, err := reading(visit)
	if err != nil {
		return "", err
	}
	v.Scope = satline.Whole
	var page strings.Builder
	if o, err := order(v, inputsOf(inputs)); err == nil {
		o.Start = day
		r, err := work.Judge(o)
		if err != nil {
			return "", err
		}
		err = r.WriteHTML(&page, report.File)
		return page.String(), err
	}
	a, err := satline.Assess(v)
	if err != nil {
		return "", err
	}
	err = report.HTML(&page, a, report.File)
	return page.String(), err
}
