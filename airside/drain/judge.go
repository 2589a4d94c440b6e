package drain

import (
	"slices"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// RangeError is the error of every value the package refuses.
type RangeError = quantity.RangeError

var (
	practice = fact.Source{Standing: fact.CommonPractice}
	// slopeRule: one eighth of an inch in a foot.
	slopeRule = fact.Source{
		Title:    "International Mechanical Code, 307.2.1",
		Standing: fact.Published,
	}
	// overflowRule: a second drain, a pan or a switch where an overflow does harm.
	overflowRule = fact.Source{
		Title: "International Mechanical Code, 307.2.3", Standing: fact.Published,
	}
)

// moreSeal is what a trap needs beyond the pressure drawn on it, one inch (common practice, as
// makers of draw-through units ask).
var moreSeal = quantity.Inches(1)

const leastSlope = quantity.Ratio(1.0 / 96)

// SealFor returns how far below the outlet of the pan that of the trap has to lie where the
// blower draws that much on it: as many inches of water, and one more (common practice). The
// error is a *RangeError below 0 Pa and above 2500 Pa.
func SealFor(negative quantity.StaticPressure) (quantity.Length, error) {
	if err := limit.Within("negative static pressure at the pan", negative, 0, 2500,
		"write it as a positive figure, below that of the room"); err != nil {
		return 0, err
	}
	return quantity.Inches(max(0, negative.InchesWater())) + moreSeal, nil
}

const thaw fact.Code = "drain.do.thaw"

// A look is one thing to look at, in the order in which it is asked for.
type look struct {
	name string
	of   func(*Readings) Answer
	// bad is the answer that finds something; mended what is done about it.
	bad    Answer
	mend   fact.Code
	source *fact.Source
	// ask says whether it is worth asking for where it was not looked at.
	ask func(*Readings) bool
}

// looks, the likeliest first. The order is common practice.
var looks = []look{
	{
		name: "pan-full",
		of:   func(r *Readings) Answer { return r.PanFull },
		bad:  Yes,
		mend: "drain.do.clear",
	},
	{name: "runs", of: func(r *Readings) Answer { return r.Runs }, bad: No, mend: "drain.do.clear"},
	{
		name: "trapped",
		of:   func(r *Readings) Answer { return r.Trapped },
		bad:  No,
		mend: "drain.do.trap",
	},
	{name: "iced", of: func(r *Readings) Answer { return r.Iced }, bad: Yes, mend: thaw},
	{
		name: "pan-sound",
		of:   func(r *Readings) Answer { return r.PanSound },
		bad:  No,
		mend: "drain.do.pan",
	},
	{
		name: "level",
		of:   func(r *Readings) Answer { return r.Level },
		bad:  No,
		mend: "drain.do.level",
	},
	{name: "insulated", of: func(r *Readings) Answer { return r.Insulated }, bad: No,
		mend: "drain.do.insulate"},
	{name: "above", of: func(r *Readings) Answer { return r.Above }},
	{
		name:   "float",
		of:     func(r *Readings) Answer { return r.Float },
		bad:    No,
		mend:   "drain.do.float",
		source: &overflowRule,
		ask:    func(r *Readings) bool { return r.Above != No },
	},
}

// Judge puts the looks in their order. The error is a *RangeError, or a *quantity.NameError
// for an answer that is none.
func Judge(r Readings) (Report, error) {
	if err := r.check(); err != nil {
		return Report{}, err
	}
	j := judge{r: &r}
	for i := range looks {
		j.look(&looks[i])
		if looks[i].name == "trapped" {
			if err := j.seal(); err != nil {
				return Report{}, err
			}
			j.slope()
		}
	}
	if j.rep.Finding.IsZero() {
		j.next()
	} else if !slices.Contains(dry, j.rep.Plan[0].Code) {
		j.step("drain.do.pour")
	}
	if r.Above == Yes && (r.PanFull == Yes || r.Runs == No) {
		j.caution("drain.caution.ceiling")
	}
	j.caution("drain.caution.wet")
	return j.rep, nil
}

// dry are the steps that water poured in does not prove.
var dry = []fact.Code{"drain.do.float", "drain.do.insulate"}

type judge struct {
	r   *Readings
	rep Report
}

func (j *judge) caution(code fact.Code) {
	j.rep.Cautions = append(j.rep.Cautions, fact.New(code))
}

func (j *judge) step(code fact.Code) {
	for _, s := range j.rep.Plan {
		if s.Code == code {
			return
		}
	}
	j.rep.Plan = append(j.rep.Plan, fact.New(code))
}

func (j *judge) add(says fact.Fact, from fact.Source, wrong bool, mend fact.Code) {
	c := fact.Check{Part: "drain", Outcome: fact.Sound, Says: says, Source: from}
	if wrong {
		c.Outcome = fact.Wrong
		j.step(mend)
		if j.rep.Finding.IsZero() {
			j.rep.Finding = says
		}
	}
	if mend == thaw && wrong {
		// The ice is gone first, whatever else is wrong.
		plan := j.rep.Plan
		melt := plan[len(plan)-1]
		copy(plan[1:], plan)
		j.rep.Finding, plan[0] = says, melt
	}
	j.rep.Checks = append(j.rep.Checks, c)
}

func (j *judge) look(l *look) {
	a := l.of(j.r)
	if a == 0 || l.bad == 0 || l.name == "float" && j.r.Above == No {
		return
	}
	from := practice
	if l.source != nil {
		from = *l.source
	}
	code := fact.Code("drain." + l.name + "." + a.String())
	j.add(fact.New(code), from, a == l.bad, l.mend)
}

// seal judges the trap against what the blower draws on it.
func (j *judge) seal() error {
	if j.r.Seal == nil || j.r.Negative == nil {
		return nil
	}
	need, err := SealFor(*j.r.Negative)
	if err != nil {
		return err
	}
	code := fact.Code("drain.seal.within")
	if *j.r.Seal < need {
		code = "drain.seal.short"
	}
	j.add(fact.New(code, fact.Amount("seal", *j.r.Seal), fact.Amount("need", need),
		fact.Amount("negative", *j.r.Negative)), practice, *j.r.Seal < need, "drain.do.trap")
	return nil
}

func (j *judge) slope() {
	if j.r.Fall == nil || j.r.Run == nil {
		return
	}
	slope := quantity.Ratio(*j.r.Fall / *j.r.Run)
	code, flat := fact.Code("drain.slope.within"), slope < leastSlope*(1-1e-9)
	if flat {
		code = "drain.slope.flat"
	}
	j.add(fact.New(code, fact.Amount("slope", slope), fact.Amount("least", leastSlope)), slopeRule,
		flat, "drain.do.slope")
}

// next asks for the look that comes next.
func (j *judge) next() {
	for i := range looks {
		l := &looks[i]
		if l.of(j.r) == 0 && (l.ask == nil || l.ask(j.r)) {
			j.step(fact.Code("drain.look." + l.name))
			return
		}
		if l.name == "trapped" && j.r.Seal == nil && j.r.Negative == nil {
			j.step("drain.look.seal")
			return
		}
	}
	j.step("drain.do.watch")
}

func (r *Readings) check() error {
	for i := range looks {
		if _, err := looks[i].of(r).MarshalText(); err != nil {
			return err
		}
	}
	for _, l := range []struct {
		name      string
		of        *quantity.Length
		low, high quantity.Length
		advice    string
	}{
		{"seal of the trap", r.Seal, 0, quantity.Meters(1), "it is the fall from pan to outlet"},
		{
			"fall of the drain", r.Fall, quantity.Meters(-10), quantity.Meters(100),
			"write a rise as a minus",
		},
		{
			"run of the drain", r.Run, quantity.Millimeters(10), quantity.Meters(300),
			"measure along the line",
		},
	} {
		if l.of != nil {
			if err := limit.Within(l.name, *l.of, l.low, l.high, l.advice); err != nil {
				return err
			}
		}
	}
	if r.Negative != nil {
		_, err := SealFor(*r.Negative)
		return err
	}
	return nil
}
