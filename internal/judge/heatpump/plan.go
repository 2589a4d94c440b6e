package heatpump

import (
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// A planner puts the steps in order.
type planner struct {
	c      *modes.Case
	b      *belief
	j      *modes.Judgement
	ranked []standing
	// why nothing is judged, zero where something is; blind that the readings tell nothing.
	why   fact.Fact
	blind bool
	// secured is the cause that the steps about a danger look for.
	secured string
}

func (p *planner) add(steps ...modes.Step) { p.j.Steps = append(p.j.Steps, steps...) }

// has reports whether a step is in the plan.
func (p *planner) has(codes ...fact.Code) bool { return modes.Has(p.j.Steps, codes...) }

func (p *planner) plan() {
	p.secure()
	// Readings that are not those of the machine as it runs tell nothing of it.
	p.blind = p.b.seen.count() < least || p.c.Seen.SealedSystemOpened || p.c.ReadBeforeMove ||
		!p.c.Moving.IsZero()
	switch {
	case p.c.Seen.SealedSystemOpened:
		p.why = fact.New("condition.circuit-opened")
		p.add(modes.Do(modes.Nitrogen), modes.Do(modes.Evacuate), p.c.WeighIn())
		p.j.WeighIn = p.c.Weighing
	case p.spoiled():
	case p.c.ReadBeforeMove:
		p.why = fact.New("charge.read-before-move")
		wait := fact.Of("wait", charge.WaitAfterMove())
		p.add(modes.Do(modes.Wait, wait).Because(p.why), modes.Do(modes.ReadAgain))
	case !p.c.Moving.IsZero():
		p.why = p.c.Moving
		values := []fact.Value{}
		if w, ok := p.c.Moving.Value("wait"); ok {
			values = append(values, w)
		}
		p.add(modes.Do(modes.Settle, values...).Because(p.why))
	case p.notARoom() || p.notHeating():
	case p.blind:
		p.readFirst()
	case p.movedMuch():
	case p.contradicted():
	default:
		p.byBelief()
	}
}

// contradicted: nothing gives these readings. What is likely beside that, and costs a look, is put
// right all the same.
func (p *planner) contradicted() bool {
	if p.b.of(contradiction) < likely {
		return false
	}
	p.why = fact.New("charge.contradictory")
	// Refrigerant that boils warmer than the air that is to heat it tells of °C typed for °F.
	const warmer = quantity.TemperatureDelta(5 / 1.8)
	if o, e := p.c.OutdoorDryBulb, p.c.EvaporatingDew; o != nil && e != nil &&
		e.Value.Sub(o.Value) > warmer {
		p.why = fact.New("charge.heating-cold-outdoors", fact.Amount("outdoor", o.Value),
			fact.Amount("evaporating", e.Value))
	}
	p.dirt()
	for i := range p.ranked {
		s := &p.ranked[i]
		if s.chance >= worth && s.code != sound && !ofCharge(s.code) {
			p.mend(s.code)
		}
	}
	p.whyStopped()
	p.thaw()
	if p.has(modes.Stop, "step.heating-thaw") {
		p.add(modes.Do(modes.ReadAgain))
	} else {
		p.add(modes.Do(modes.Reread))
	}
	return true
}

// whyStopped: a machine that was stopped is searched for what drives it there, where no step does.
func (p *planner) whyStopped() {
	if len(p.j.Steps) == 1 && p.has(modes.Stop) {
		p.add(modes.Do("step.heating-why-stopped"))
	}
}

func (p *planner) byBelief() {
	d := p.b.decide(p.has(modes.FeelCompressor))
	before := len(p.j.Steps)
	p.dirt()
	dirty := p.c.Seen.CoilIced || p.has(modes.CleanFilter, modes.CleanOutdoor)
	p.lookFirst(d)
	looking := dirty || len(d.looks) > 0
	waits := !ofCharge(d.mend) && d.mend != ""
	if waits && ofCharge(p.ranked[0].code) {
		p.leakFirst()
	}
	p.act(d, looking, before)
	p.mendBeside(d)
	if waits && (p.leakFirst() || p.b.of(overcharge) >= likely && len(p.j.Steps) > before) {
		p.add(modes.Do(modes.LeaveCharge))
	}
	p.instrumentsFirst()
	p.putRight()
	if !looking && len(p.j.Steps) == before {
		p.withoutMend()
	}
	p.whyStopped()
	if !p.has(modes.Evacuate) {
		p.thaw() // after what can be done while it is stopped
	}
	stays := p.has(modes.ChargeStays) && !p.has(modes.Stop)
	if !stays && !p.has(modes.Leave, modes.Evacuate) {
		p.add(modes.Do(modes.ReadAgain))
	}
}

// act does what the belief decides on; looking says that something is looked at first, and before
// how many steps stood already.
func (p *planner) act(d decision, looking bool, before int) {
	switch {
	case ofCharge(d.mend) && looking:
		if d.mend != overcharge {
			p.leakFirst()
		}
		if len(p.j.Steps) == before {
			p.chargeStays()
		} else {
			p.add(modes.Do(modes.LeaveCharge))
		}
	case ofCharge(d.mend):
		p.recharge(d.mend)
	case d.mend != "" && p.b.of(d.mend) >= worth && p.b.of(d.mend) > p.b.of(sound):
		// To look at an instrument is to put it right, and a hand on the reversing valve is its
		// proof.
		s := p.standing(d.mend)
		if byLook := s.ofInstrument || s.code == reversing; !byLook || !s.lookedAt(d.looks) {
			p.mend(d.mend)
		}
	}
}
