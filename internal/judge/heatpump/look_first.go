package heatpump

import (
	"slices"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
)

// lookFirst asks for the looks that were decided on.
func (p *planner) lookFirst(d decision) {
	for _, l := range d.looks {
		p.addLook(l)
	}
}

func (p *planner) addLook(l *look) {
	if p.j.Ask == nil {
		p.j.Ask = p.b.question(l)
	}
	if slices.ContainsFunc(p.j.Steps, func(s modes.Step) bool { return s.Look == l.code }) {
		return
	}
	p.add(modes.Step{
		Do: lookFact(l.code, ""), Look: l.code, Effect: modes.Effect{Running: l.running},
	})
}

// askFor asks for a look, and reports whether the machine has what it looks at and nobody looked.
func (p *planner) askFor(code string) bool {
	i := slices.IndexFunc(looks, func(l look) bool { return l.code == code })
	l := &looks[i]
	if answered(p.c, code) || l.fits != nil && !l.fits(p.c) {
		return false
	}
	p.addLook(l)
	return true
}

// complaintLooks are the looks at what a customer complained of.
var complaintLooks = map[string][]string{
	"frozen coil": {"outdoor-ice", "defrost-test"}, "high bill": {"strips-current"},
}

// complained asks for the looks at what was complained of, and reports whether any is left.
func (p *planner) complained() bool {
	any := false
	for _, code := range complaintLooks[p.c.Complaint] {
		any = p.askFor(code) || any
	}
	return any
}

// seeOthers looks for the likeliest cause that nobody has looked for, where it is nearly as likely
// as not, or worth a look in a machine that is hardly sound, and no reading alone is wrong by it;
// false where none is left.
func (p *planner) seeOthers() bool {
	least := 2 * worth
	if p.ranked[0].code != sound || p.odd() {
		least = worth
	}
	for i := range p.ranked {
		s := &p.ranked[i]
		for k := range looks {
			if s.chance >= least && !s.ofInstrument && s.lookedAt([]*look{&looks[k]}) &&
				p.askFor(looks[k].code) {
				return true
			}
		}
	}
	return false
}

// lookedAt reports whether a look of the plan answers for a cause.
func (s *standing) lookedAt(looks []*look) bool {
	return slices.ContainsFunc(looks, func(l *look) bool {
		return slices.ContainsFunc(s.cause.faults, func(f fault) bool {
			return l.chance(&atom{cause: s.cause, fault: &f}) >= 0.5
		})
	})
}

// denied reports whether a look that was taken was after a cause and did not find it.
func (s *standing) denied(c *modes.Case) bool {
	var taken []*look
	for i := range looks {
		if slices.Contains(c.Answers, diagnose.Answer{Code: looks[i].code}) {
			taken = append(taken, &looks[i])
		}
	}
	return s.lookedAt(taken)
}
