package coldroom

import (
	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// iced: the coil is freed first; what is found of it by the gauges is that of the ice.
func (p *planner) iced() bool {
	yes, asked := p.k.answers["cold-coil-iced"]
	if !p.c.Seen.CoilIced && !(asked && yes) || p.stopped() {
		return false
	}
	p.unjudged = fact.New("charge.cold-iced")
	p.add("step.cold-defrost-now")
	// What the gauges show is that of the ice.
	p.look("cold-evaporator-fans", "cold-defrost-works", "cold-door-leaks")
	why := fact.Of("defrost", p.defrost())
	r := p.rank(evaporator)
	if r.chance < likely {
		p.headline = fact.New("headline.cold-iced")
	}
	switch {
	case p.k.answers["cold-defrost-works"]:
		s := p.add("step.cold-seen-defrost", why)
		s.Cause, s.Chance = r.code, r.chance
	case r.chance < likely:
		p.add("step.cold-why-iced", why)
	case faults[r.faults[0]].code == "cold-defrost": // the ice itself is seen to already
		s := p.add("step.cold-why-iced", why)
		s.Cause, s.Chance = r.code, r.chance
	default:
		p.mend(r)
	}
	for i := range p.ranking {
		r := &p.ranking[i]
		if r.chance >= likely && r.code != sound && r.code != evaporator && !p.ofCharge(r) {
			p.mend(r)
		}
	}
	p.putRight()
	if p.low() >= likely { // a coil that is short of refrigerant ices where it is fed
		p.add(modes.FindLeak)
	}
	p.watch()
	return true
}

func (p *planner) defrost() fact.Term {
	d := p.c.Room.Defrost
	if d == 0 {
		d = coldroom.OffCycle
		if p.k.usual.Frozen {
			d = coldroom.Electric
		}
	}
	return fact.Term("defrost." + d.String())
}
