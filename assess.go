package satline

import (
	"github.com/satline/satline/internal/base/visible"
	"github.com/satline/satline/internal/judge/modes"
)

// Assess turns the readings of a visit into an assessment. The error is a
// *VisitError that names the field to mend, the first of Visit.Validate; a machine in a
// bad way is not an error. Assess is a function of the visit alone and safe for concurrent use.
//
// It is a flow of values: the visit is checked, its log settled, what follows from the
// readings derived, and the judge of the mode weighs all of it into one belief and makes a
// plan of that; the words come last.
func Assess(v Visit) (Assessment, error) {
	p, err := prepare(v)
	if err != nil {
		return Assessment{}, err
	}
	return p.assess()
}

func (p *prepared) assess() (Assessment, error) {
	v := &p.visit
	s, d, c, mode, err := p.toJudge()
	if err != nil {
		return Assessment{}, err
	}
	j := judges[mode.Mode](c)
	p.electricalFirst(&j)

	estimated, _ := p.fluid.Estimated()
	a := Assessment{
		Schema: AssessmentSchema, Title: visible.Line(v.Title), Language: v.Language,
		Units: v.Units, Scope: v.Scope, Mode: mode,
		Refrigerant: RefrigerantFacts{
			Designation: p.fluid.Designation(), SafetyGroup: string(p.fluid.SafetyGroup()),
			Flammable: p.fluid.Flammable(), Estimated: estimated,
		},
		Atmosphere: p.atmosphere,
		Readings:   judged(s, c, j.Lies), Doubts: doubtsOf(c.Doubts),
		Derived:    withCapacity(p, &s.readings, *d).in(mode.Mode),
		Steadiness: s.steadiness, Valve: s.valve,
		Electrical: p.electrical,
		Notes:      visible.Text(v.Notes),
	}
	tell(&a, &j)
	a.Cautions = p.lockedOut(cautionsOf(p.fluid, a.Plan, a.WeighIn))
	v.Language.book(v.Units).Fill(&a)
	return a, nil
}

// toJudge is what is known of a machine before anything is judged: where its readings come to
// rest, what follows from them, and the case for the judge of its mode.
func (p *prepared) toJudge() (*settled, *Derived, *modes.Case, ModeFound, error) {
	s, err := settle(p)
	if err != nil {
		return nil, nil, nil, ModeFound{}, err
	}
	d, err := derive(p, &s.readings)
	if err != nil {
		return nil, nil, nil, ModeFound{}, err
	}
	mode := findMode(p, &s.readings, &d)
	if mode.Mode == Cooling && p.visit.Equipment.Metering == 0 {
		return p.withEither()
	}
	t, err := aim(p, &s, &d, mode.Mode)
	if err != nil {
		return nil, nil, nil, ModeFound{}, err
	}
	c, err := caseOf(p, &s, &d, &t, mode)
	return &s, &d, c, mode, err
}

// withEither is toJudge of a machine whose metering device nobody told: what it is with a valve,
// and beside that its case with a fixed device.
func (p *prepared) withEither() (*settled, *Derived, *modes.Case, ModeFound, error) {
	valve, fixed := *p, *p
	valve.before, fixed.before = nil, nil // which are of one device
	e := &p.visit.Equipment
	valve.visit.Equipment.Metering, fixed.visit.Equipment.Metering = e.mayMeter()
	_, _, other, _, err := fixed.toJudge()
	if err != nil {
		return nil, nil, nil, ModeFound{}, err
	}
	s, d, c, mode, err := valve.toJudge()
	if err == nil {
		c.Other = other
	}
	return s, d, c, mode, err
}
