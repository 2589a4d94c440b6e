package coldroom

import (
	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/quantity/fact"
)

// byFault are headlines of faults that are none of the machine's.
var byFault = map[string]fact.Code{
	pullsDown: "headline.cold-pull-down", tooSmall: "headline.cold-too-small",
	defrostHeats: "headline.cold-defrost-heats",
}

// answer is the whole answer in one sentence, from the belief and the plan.
func (p *planner) answer() fact.Fact {
	top := p.ranking[0]
	if low := p.low(); low >= likely {
		top.code, top.chance = undercharge, low
		if p.b.cause(reserve) > p.b.cause(undercharge) {
			top.code = reserve
		}
	}
	switch {
	case top.code == load && top.chance >= likely && p.alone(&top) && !p.stopped() &&
		byFault[faults[top.faults[0]].code] != "":
		return fact.New(
			byFault[faults[top.faults[0]].code], fact.Of("chance", fact.Share(top.chance)),
		)
	case top.code == sound && top.chance >= likely && !p.stopped():
		f := fact.New("headline.cold-sound", fact.Of("chance", fact.Share(top.chance)))
		if t := p.c.ReturnDryBulb; t != nil {
			f = f.With(fact.Amount("box", t.Value))
		}
		return f
	case top.chance >= likely && top.code != sound:
		f := fact.New(
			"headline.cause", fact.Of("cause", fact.Term("cause."+top.code)),
			fact.Of("chance", fact.Share(top.chance)),
		)
		for _, r := range p.ranking[:2] {
			if r.code != top.code && r.chance >= likely && r.code != sound {
				f = f.With(
					fact.Of("second", fact.Term("cause."+r.code)),
					fact.Of("secondChance", fact.Share(r.chance)),
				)
			}
		}
		return f
	case p.stopped():
		return fact.New("headline.stop")
	}
	warm, terms := p.k.value[signature.OverBox] > warmBox, fact.Terms{}
	for _, r := range p.ranking[:2] {
		if r.code != sound || !warm { // a box so warm has a reason
			terms = append(terms, fact.Term("cause."+r.code))
		}
	}
	return fact.New("headline.open", fact.Of("causes", terms))
}
