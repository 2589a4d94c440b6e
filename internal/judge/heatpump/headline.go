package heatpump

import "github.com/satline/satline/quantity/fact"

// headline is the whole answer in one sentence, from the belief and the plan.
func (p *planner) headline() fact.Fact {
	stop := p.has("step.stop")
	top := &p.ranked[0]
	if top.code == sound {
		top = &p.ranked[1]
	}
	nothing := p.b.of(sound)
	// What the gauges show of a coil that lacks its air, or is iced, is that first.
	if s := p.shortage(); s != nil && !(top.code == outdoorAir && top.chance > s.chance) {
		top = s
	}
	found := !p.blind && p.why.IsZero() && top.chance >= likely && top.code != contradiction
	switch {
	case p.has("step.halt"):
		return fact.New("headline.moved-much")
	case p.c.Seen.SealedSystemOpened && p.c.Weighing != nil:
		f := p.c.WeighIn().Do
		f.Code = "headline.weigh-in"
		return f
	case found:
		f := fact.New("headline.cause", fact.Of("cause", top.term()),
			fact.Of("chance", fact.Share(top.chance)))
		if size, ok := top.share(); ok {
			f = f.With(size)
		}
		for i := range p.ranked {
			s := &p.ranked[i]
			if s.code != top.code && s.code != sound && s.chance >= likely &&
				!(s.code == nextToEmpty && top.code == undercharge) {
				return f.With(
					fact.Of("second", fact.Term("cause."+s.code)),
					fact.Of("secondChance", fact.Share(s.chance)),
				)
			}
		}
		return f
	case stop:
		return fact.New("headline.stop")
	case !p.why.IsZero():
		return fact.New("headline.not-judged", p.why.Values...).
			With(fact.Of("why", fact.Term(p.why.Code)))
	case nothing >= likely && !p.has("step.feel-compressor"):
		return fact.New("headline.heating-sound", fact.Of("chance", fact.Share(nothing)))
	}
	if p.has("step.leave") {
		return fact.New("headline.sound-likely", fact.Of("chance", fact.Share(nothing)))
	}
	// Where liquid comes back, nothing wrong is no answer.
	wet := p.has("step.feel-compressor")
	causes := fact.Terms{}
	for i := range p.ranked {
		s := &p.ranked[i]
		if s.chance >= worth/2 && len(causes) < 2 && !(wet && s.code == sound) {
			causes = append(causes, fact.Term("cause."+s.code))
		}
	}
	if len(causes) == 0 {
		return fact.New("headline.sound-likely", fact.Of("chance", fact.Share(nothing)))
	}
	return fact.New("headline.open", fact.Of("causes", causes))
}

// term is the word for a cause, or for its fault where that is known and says more.
func (s *standing) term() fact.Term {
	const midway = "reversing-valve-midway"
	if len(s.faults) > 0 && s.faults[0].Fault == midway && s.faults[0].Chance >= 0.7 {
		return "cause." + midway
	}
	if s.code == notPumping && len(s.faults) > 0 && s.faults[0].Chance < 0.7 {
		return "cause.not-pumping-or-midway" // either reads so: no compressor is accused
	}
	return fact.Term("cause." + s.code)
}

// surelyEmpty is the chance from which next to nothing is said to be left in a machine that is
// short of refrigerant (common practice, no source).
const surelyEmpty = 0.8

// shortage is what is missing, much or little, where that is likely and how much is not known:
// by what there is at least. Otherwise nil.
func (p *planner) shortage() *standing {
	empty, short := p.b.of(nextToEmpty), p.b.of(undercharge, nextToEmpty)
	if short < likely || empty >= surelyEmpty*short || p.b.of(undercharge) < worth {
		return nil
	}
	s := *p.standing(undercharge)
	s.chance = short
	return &s
}
