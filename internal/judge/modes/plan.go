package modes

import (
	"slices"
	"time"

	"github.com/satline/satline/quantity/fact"
)

// A Plan is steps that can be done one after the other.
type Plan struct {
	Steps []Step
	// stopped says that the last step leaves the machine stopped.
	stopped bool
}

// InOrder puts the steps of a plan in, with what lies between them.
func InOrder(steps []Step) []Step {
	var p Plan
	for _, s := range steps {
		p.Put(s)
	}
	return p.Steps
}

// BeforeMoves is a plan up to its first step that moves refrigerant or opens the circuit, and in
// the place of that step that the whole is to be asked for.
func BeforeMoves(steps []Step) []Step {
	i := slices.IndexFunc(steps, func(s Step) bool { return s.Moves || s.Opens })
	if i < 0 {
		return steps
	}
	return append(slices.Clip(steps[:i]), Do(WholeFirst))
}

// Add puts in the step of a code.
func (p *Plan) Add(code fact.Code, values ...fact.Value) *Step { return p.Put(Do(code, values...)) }

// Put appends a step that is not there yet. A step that needs the machine running starts it
// again first, where it was stopped.
func (p *Plan) Put(s Step) *Step {
	for i := range p.Steps {
		if p.Steps[i].Do.Code == s.Do.Code && s.Do.Code != StartAgain && s.Do.Code != Read {
			return &p.Steps[i]
		}
	}
	if n := len(p.Steps); n > 0 && s.Do.Code == ReadAgain && p.Steps[n-1].Do.Code == Wait {
		return &p.Steps[n-1] // which says so
	}
	if e, known := effects[s.Do.Code]; known {
		s.Effect = e
	}
	if s.Running && p.stopped {
		p.Put(Do(StartAgain))
	}
	p.stopped = s.Stops || p.stopped && !s.Starts
	p.Steps = append(p.Steps, s)
	return &p.Steps[len(p.Steps)-1]
}

// Has reports whether a step of one of the codes is in the plan.
func (p *Plan) Has(codes ...fact.Code) bool { return Has(p.Steps, codes...) }

// Has reports whether a step of one of the codes is among steps.
func Has(steps []Step, codes ...fact.Code) bool {
	return slices.ContainsFunc(
		steps, func(s Step) bool { return slices.Contains(codes, s.Do.Code) },
	)
}

// Stopped says that the last step leaves the machine stopped.
func (p *Plan) Stopped() bool { return p.stopped }

// Minutes is a time to wait as a plan tells it, in whole minutes.
func Minutes(d time.Duration) time.Duration {
	return (max(d, time.Minute) + time.Minute - 1).Truncate(time.Minute)
}

// WaitOf is how long a condition of time still lasts; none for any other condition.
func WaitOf(condition fact.Fact) []fact.Value {
	measured, _ := condition.Value("measured")
	limit, _ := condition.Value("limit")
	from, ok := measured.Of.(time.Duration)
	to, same := limit.Of.(time.Duration)
	if !ok || !same {
		return nil
	}
	return []fact.Value{fact.Of("wait", Minutes(to-from))}
}

// ReadingTerms are the words for readings.
func ReadingTerms(fields []string) fact.Terms {
	var out fact.Terms
	for _, f := range fields {
		out = append(out, fact.Term("reading."+f))
	}
	return out
}
