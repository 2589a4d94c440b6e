package satline

import "github.com/satline/satline/internal/base/visible"

// Assess turns the readings of a visit into an assessment. The error is a
// *VisitError that names the field to mend, the first of Visit.Validate; a machine in a
// bad way is not an error. Assess is a function of the visit alone and safe for concurrent use.
//
// It is a flow of values: the visit is checked, its log settled, what follows from the
// readings derived, all of it weighed into one belief, and a plan made of that; the words
// come last.
func Assess(v Visit) (Assessment, error) {
	p, err := prepare(v)
	if err != nil {
		return Assessment{}, err
	}
	return p.assess()
}

func (p *prepared) assess() (Assessment, error) {
	v := &p.visit
	s, err := settle(p)
	if err != nil {
		return Assessment{}, err
	}
	d, err := derive(p, &s.readings)
	if err != nil {
		return Assessment{}, err
	}
	mode := findMode(p, &s.readings, &d)
	t, err := aim(p, &s, &d, mode.Mode)
	if err != nil {
		return Assessment{}, err
	}
	b, err := believe(p, &s, &d, &t, mode)
	if err != nil {
		return Assessment{}, err
	}
	dangers := append(p.dangersElectrical(), dangersOf(p, &s, &d, &b, mode.Mode)...)
	verdict := chargeVerdict(p, &b, &s, &t, mode, dangers)
	k := planner{p: p, s: &s, d: &d, t: &t, b: &b, mode: mode, charge: &verdict, dangers: dangers}
	j := judged(p, &s, &d, &t, &b, mode, dangers)
	if j != nil {
		k.asJudged(j)
	} else {
		k.plan()
	}
	verdict.Why = append(verdict.Why, k.hold...)

	estimated, _ := p.fluid.Estimated()
	a := Assessment{
		Schema: AssessmentSchema, Title: visible.Line(v.Title), Language: v.Language, Units: v.Units, Scope: v.Scope,
		Headline: k.headline(), Dangers: k.dangers, Plan: k.steps, Dose: k.dose, WeighIn: k.weighIn,
		Mode: mode, Charge: verdict,
		Refrigerant: RefrigerantFacts{
			Designation: p.fluid.Designation(), SafetyGroup: string(p.fluid.SafetyGroup()),
			Flammable: p.fluid.Flammable(), Estimated: estimated,
		},
		Atmosphere: p.atmosphere,
		Readings:   b.judged(&s), Doubts: b.doubtsOf(),
		Derived:    withCapacity(p, &s.readings, d),
		Steadiness: s.steadiness, Valve: s.valve,
		Cautions:   p.lockedOut(cautionsOf(p.fluid, k.steps, k.weighIn)),
		Electrical: p.electrical,
		Notes:      visible.Text(v.Notes),
	}
	if mode.Mode == Cooling {
		a.Air = splitOf(p, &s.readings)
		a.Findings = b.findings()
		a.Change = b.changeVerdict(&s)
		a.Ask = questionOf(&b)
		if v.Scope == Whole {
			a.Freeze = freezeOf(p, &s, &d, &b)
		}
	} else {
		tell(&a, j)
	}
	speak(&a, v.Language.book(v.Units))
	return a, nil
}

// questionOf is the look or reading that comes before anything is done; nil where nothing
// is worth its time.
func questionOf(b *belief) *Question {
	if len(b.Decision.Looks) == 0 || len(b.spoiled) > 0 {
		return nil
	}
	m := b.Decision.Looks[0]
	q := &Question{Look: lookCode(m), Field: m.Field(), Take: m.Fact()}
	for i, f := range m.Facts() {
		o := &m.Outcomes[i]
		q.Outcomes = append(
			q.Outcomes,
			Outcome{Chance: o.Chance, Then: o.Then, ThenChance: o.ThenProbability, Says: f},
		)
	}
	return q
}
