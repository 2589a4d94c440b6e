package work

import (
	"fmt"
	"math"
	"slices"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/quantity/fact"
)

// airflowBand is how far from the design airflow may be.
const airflowBand = 0.15

var airflowRule = fact.Source{
	Title:    "ANSI/ACCA 5 QI, airflow within 15 % of the design",
	Standing: fact.FromMemory,
}

// air judges the static pressure and the airflow.
func (j *judge) air() error {
	a := j.o.Air
	if a == nil {
		return nil
	}
	label := j.o.Machine.Equipment.Label
	if a.Supply != nil && a.Return != nil {
		v, err := airside.JudgeStatic(airside.StaticReadings{
			Entering: *a.Return, Leaving: *a.Supply, Maximum: label.MaxExternalStatic,
		})
		if err != nil {
			return &Problem{Field: "air", Kind: outOfRange, Problem: err.Error(), Err: err}
		}
		code, s := fact.Code("result.static-within"), Good
		switch v.Outcome {
		case airside.StaticHigh:
			code, s = "result.static-high", Bad
		case airside.StaticLow:
			code, s = "result.static-low", Open
		case airside.StaticCannotTell:
			code, s = "result.static-edge", Open
		}
		side := fact.Term("side.supply")
		if v.ReturnShare > 0.5 {
			side = "side.return"
		}
		j.result("air", "next.air", s, fact.New(code, fact.Amount("static", v.External.Value),
			fact.Amount("most", v.Maximum), fact.Of("side", side)), v.MaximumSource)
	}
	if a.Airflow == nil {
		return nil
	}
	flow := a.Airflow.Value
	if label.RatedAirflow == 0 {
		j.result("air", "next.air", Good, fact.New("result.airflow", fact.Amount("flow", flow)),
			fact.Source{})
		return nil
	}
	off := float64(flow-label.RatedAirflow) / float64(label.RatedAirflow)
	code, s := fact.Code("result.airflow-right"), Good
	switch {
	case off < -airflowBand:
		code, s = "result.airflow-low", Bad
	case off > airflowBand:
		code, s = "result.airflow-high", Bad
	}
	if j.has["next.air"] == Bad {
		s = Bad
	}
	j.result("air", "next.air", s, fact.New(code, fact.Amount("flow", flow),
		fact.Amount("design", label.RatedAirflow), fact.Of("off",
			fact.Share(math.Abs(off)))), airflowRule)
	return nil
}

// checklist tells what was found not to be right on the round.
func (j *judge) checklist() error {
	for i, c := range j.o.Checklist {
		if c.NotHere || c.Good && c.Note == "" {
			continue
		}
		if c.Good {
			j.result(fmt.Sprintf("checklist[%d]", i), "", Found, fact.New("result.check-note",
				fact.Of("check", fact.Term("check."+c.Check)), fact.Of("note",
					c.Note)), fact.Source{})
			continue
		}
		f := fact.New("result.check-bad", fact.Of("check", fact.Term("check."+c.Check)))
		if c.Note != "" {
			f = f.With(fact.Of("note", c.Note))
		}
		j.result(fmt.Sprintf("checklist[%d]", i), "", Bad, f, practice)
	}
	if len(j.unchecked()) == 0 {
		j.has["next.checklist"] = Good
	}
	m := &j.o.Machine
	if m.Make != "" && m.Model != "" && m.Serial != "" {
		j.has["next.name-machine"] = Good
	}
	return nil
}

// said reports whether the checklist has an answer to a check.
func (j *judge) said(c Check) bool {
	return slices.ContainsFunc(j.o.Checklist, func(k Checked) bool { return k.Check == c })
}

// unchecked are the lines of the lists of the tasks that nothing is said of.
func (j *judge) unchecked() fact.Terms {
	var out fact.Terms
	for _, t := range j.o.Tasks {
		for _, c := range checklists[t] {
			asks := c != FlammableMarked || j.fluid.Flammable()
			if term := fact.Term("check." + c); !j.said(c) && asks && !slices.Contains(out, term) {
				out = append(out, term)
			}
		}
	}
	return out
}
