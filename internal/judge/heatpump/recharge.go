package heatpump

import (
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// leakFirst has the leak looked for where refrigerant is likely to be missing, and reports
// whether it is: nothing is added before the other causes are put right.
func (p *planner) leakFirst() bool {
	short := p.b.of(undercharge, nextToEmpty) >= likely
	if short && !answered(p.c, "oil-and-leak") && !p.has(modes.FindLeak) {
		p.add(modes.Do(modes.FindLeak))
	}
	return short
}

// recharge: in heating no charge is tuned by pressures; it is weighed in.
func (p *planner) recharge(code string) {
	all := modes.Do("step.heating-recover-all").Because(fact.New("charge.heating-no-tuning"))
	all.Effect = modes.Effect{Moves: true, Stops: true}
	switch {
	case code == overcharge:
		p.add(all, modes.Do(modes.Evacuate), p.c.WeighIn())
	case answered(p.c, "oil-and-leak") && p.b.of(nextToEmpty) < likely && !p.leakFound():
		p.add(all, modes.Do(modes.Nitrogen), modes.Do(modes.Evacuate), p.c.WeighIn())
	case p.leakFound():
		p.add(p.c.LeakPath()[1:]...) // it is not searched for again
	default:
		p.add(p.c.LeakPath()...)
	}
	p.j.WeighIn = p.c.Weighing
}

// leakFound says that a search found a leak.
func (p *planner) leakFound() bool {
	return slices.Contains(p.c.Answers, diagnose.Answer{Code: "oil-and-leak", Yes: true})
}

// chargeStays leaves the charge as it is, and says how likely it is to be wrong all the same.
func (p *planner) chargeStays() {
	step := modes.Do(modes.ChargeStays)
	for _, code := range [...]string{undercharge, overcharge} {
		if chance := p.b.of(code); chance >= likely || p.ranked[0].code == code {
			step.Cause, step.Chance = code, chance
			step.Do = step.Do.With(fact.Of("chance", fact.Share(chance)))
		}
	}
	p.add(step)
}

// movedMuch: a good part of the whole charge has been moved, and it is still not right.
func (p *planner) movedMuch() bool {
	if p.c.WholeCharge <= 0 || p.b.of(sound) >= likely {
		return false
	}
	share := float64(p.c.Moved / p.c.WholeCharge)
	if max(share, -share) <= charge.MostMoved() {
		return false
	}
	p.why = fact.New("charge.moved-much", fact.Of("share", fact.Share(max(share, -share))))
	p.add(modes.Do(modes.Halt, p.why.Values...))
	p.recharge(undercharge)
	return true
}
