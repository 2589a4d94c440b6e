package cooling

import (
	"math"
	"slices"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A device is a machine judged as with one of the metering devices that it may have.
type device struct {
	modes.Judgement
	*belief
	share float64 // the chance that it has this one
	word  fact.Term
}

// eitherOf are a machine with the likelier device, and with the other.
type eitherOf [2]*device

// either judges a machine whose metering device nobody told, as with each of two, and weighs them
// by how many machines like it have which, and by how well each gives what was read. What both
// come to is done; where they part, and before any dose, the device is looked at.
func either(c *modes.Case) modes.Judgement {
	e := eitherOf{withDevice(c, "device.valve"), withDevice(c.Other, "device.fixed")}
	e[0].share = 1 / (1 + math.Exp(e[1].Weight-e[0].Weight))
	e[1].share = 1 - e[0].share
	if e[1].share > e[0].share {
		e[0], e[1] = e[1], e[0]
	}
	j := &e[0].Judgement
	if !stopsFirst(j.Steps) && stopsFirst(e[1].Steps) {
		j.Dangers = e[1].Dangers
	}
	j.Findings = e.findings()
	e.weighCharge()
	if e.decides() {
		j.Headline = e.headline()
		j.Steps, j.Dose, j.WeighIn, j.Ask = e.steps(), nil, nil, e.ask()
		j.Charge.Why = append(j.Charge.Why, fact.New("charge.device-first"))
	}
	return *j
}

func withDevice(c *modes.Case, word fact.Term) *device {
	compared := *c
	compared.Other, compared.Compared = nil, true
	j, b := judge(&compared)
	return &device{Judgement: j, belief: b, word: word}
}

func stopsFirst(steps []modes.Step) bool { return steps[0].Stops }

// chance of a cause, "sound" that nothing is wrong.
func (d *device) chance(cause string) float64 {
	if cause == "sound" {
		return d.Healthy
	}
	return d.Probability(diagnose.Code(cause))
}

// times is how many times as likely a cause is with either device as it is with the likelier.
func (e *eitherOf) times(cause string) float64 {
	one := e[0].chance(cause)
	if one == 0 {
		return 1
	}
	return e[0].share + e[1].share*e[1].chance(cause)/one
}

// decides says that it has to be known which device it is: before refrigerant is moved by a
// target, and where the plans part.
func (e *eitherOf) decides() bool {
	if len(e[0].Steps) != len(e[1].Steps) {
		return true
	}
	for i := range e[0].Steps {
		switch code := e[0].Steps[i].Do.Code; code {
		case modes.Add, modes.AddLittle, modes.Recover, modes.RecoverLittle:
			return true
		default:
			if code != e[1].Steps[i].Do.Code {
				return true
			}
		}
	}
	return false
}

// steps are those that make the machine safe, the look at the device, and then what is looked at
// with either.
func (e *eitherOf) steps() []modes.Step {
	var p modes.Plan
	if steps := e[1].Steps; stopsFirst(steps) {
		p.Put(steps[0])
	}
	for i := range e[0].Steps {
		s := e[0].Steps[i]
		shared := modes.Has(e[1].Steps, s.Do.Code)
		if secures := p.Stopped() || s.Stops || s.Do.Code == modes.FeelCompressor; !secures || !shared {
			p.Add(modes.AskDevice)
		}
		if s.Cause != "" {
			times := e.times(s.Cause)
			s.Chance = min(s.Chance*times, 1)
			s.Do = scaled(s.Do, times)
		}
		hangs := s.Moves || s.Opens || s.Waits || s.Starts || s.Cause != "" && s.Chance < worth
		if shared && !hangs && !slices.Contains(ends, s.Do.Code) {
			p.Put(s)
		}
	}
	p.Add(modes.AskDevice)
	p.Add(modes.LeaveCharge)
	return p.Steps
}

// ends are the steps that end a plan, which goes on once the device is known.
var ends = []fact.Code{
	modes.LeaveCharge, modes.ChargeStays, modes.WholeFirst, modes.Leave, modes.ReadAgain,
	modes.Reread, modes.Nitrogen, modes.Evacuate,
}

// scaled is a fact with its chance so many times as large.
func scaled(f fact.Fact, times float64) fact.Fact {
	f.Values = slices.Clone(f.Values)
	for i := range f.Values {
		v := &f.Values[i]
		if was, is := v.Of.(fact.Share); is && v.Name == "chance" {
			v.Of = min(was*fact.Share(times), 1)
		}
	}
	return f
}

// findings are those with the likelier device, each with the chance that it has with either.
func (e *eitherOf) findings() []modes.Finding {
	var out []modes.Finding
	for i := range e[0].Findings {
		f := e[0].Findings[i]
		times := e.times(f.Cause)
		f.Chance = min(f.Chance*times, 1)
		f.Says = scaled(f.Says, times)
		out = append(out, f)
	}
	likeliestFirst(out)
	return out
}

// weighCharge is what both believe of it; no target is known before the device is.
func (e *eitherOf) weighCharge() {
	v, other := &e[0].Charge, &e[1].Charge
	v.Reading, v.Missing = nil, nil
	if v.Error == nil || other.Error == nil {
		return
	}
	if v.Outcome != other.Outcome {
		v.Outcome = modes.ChargeOpen
	}
	mean := func(x, y float64) float64 { return e[0].share*x + e[1].share*y }
	v.Low, v.High = mean(v.Low, other.Low), mean(v.High, other.High)
	v.InBand = 1 - v.Low - v.High
	apart := v.Error.Value - other.Error.Value
	v.Error = &quantity.UncertainNumber{
		Value: mean(v.Error.Value, other.Error.Value),
		Std: math.Sqrt(mean(v.Error.Std*v.Error.Std, other.Error.Std*other.Error.Std) +
			e[0].share*e[1].share*apart*apart),
	}
}

// headline names what is likely with either device, else what is likeliest.
func (e *eitherOf) headline() fact.Fact {
	one, found := e[0].Headline, e[0].Findings
	switch {
	case one.Code == e[1].Headline.Code && one.Code != "headline.cause", len(found) == 0:
		return scaled(one, e.times("sound"))
	case found[0].Chance < likely:
		causes := fact.Terms{fact.Term("cause." + found[0].Cause)}
		if len(found) > 1 && found[1].Chance >= worth/2 {
			causes = append(causes, fact.Term("cause."+found[1].Cause))
		}
		return fact.New("headline.open", fact.Of("causes", causes))
	case found[0].Cause == "sound":
		return fact.New("headline.sound-likely", fact.Of("chance", fact.Share(found[0].Chance)))
	}
	says := found[0].Says.With(fact.Of("cause", fact.Term("cause."+found[0].Cause)))
	says.Code = "headline.cause"
	return says
}

// ask is the look at the device, with what is likeliest by each.
func (e *eitherOf) ask() *modes.Question {
	q := &modes.Question{Take: fact.New(modes.AskDevice)}
	for _, d := range e {
		then, chance := sound, d.Healthy
		if m := d.Marginals(); len(m) > 0 && m[0].Chance > chance {
			then, chance = causeTerm(m[0].Signature), m[0].Chance
		}
		q.Outcomes = append(q.Outcomes, modes.Outcome{
			Chance: d.share, Then: string(then[len("cause."):]), ThenChance: chance,
			Says: fact.New(
				"outcome.look", fact.Of("answer", d.word), fact.Of("chance", fact.Share(d.share)),
				fact.Of("then", then), fact.Of("thenChance", fact.Share(chance)),
			),
		})
	}
	return q
}
