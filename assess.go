package satline

// Assess turns the readings of a visit into an assessment. The error is a
// *VisitError that names the field to mend; a machine in a bad way is not an
// error. Assess is a function of the visit alone and safe for concurrent use.
func Assess(v Visit) (Assessment, error) {
	j, err := prepare(v)
	if err != nil {
		return Assessment{}, err
	}
	if err := j.takeSettled(); err != nil {
		return Assessment{}, err
	}
	if err := j.derive(); err != nil {
		return Assessment{}, err
	}
	j.showDerived()
	j.doubt()
	if err := j.judgeCharge(); err != nil {
		return Assessment{}, err
	}
	j.judgeAir()
	j.judgeRisks()
	if v.Scope == Whole {
		j.judgeFindings()
		j.judgeFreeze()
	}
	j.reconcile()
	j.charge.Hold = j.held()
	next := j.next()
	estimated, why := j.fluid.Estimated()
	if !estimated {
		why = ""
	}
	a := Assessment{
		Schema: AssessmentSchema,
		Title:  v.Title,
		Units:  v.Units,
		Refrigerant: RefrigerantFacts{
			Designation: j.fluid.Designation(),
			SafetyGroup: string(j.fluid.SafetyGroup()),
			Flammable:   j.fluid.Flammable(),
			Estimated:   why,
		},
		Atmosphere: j.atmosphere,
		Readings:   j.judged(),
		Doubts:     j.doubts,
		Derived:    j.derived,
		Steadiness: j.steadiness,
		Valve:      j.valve,
		Charge:     j.charge,
		Air:        j.air,
		Freeze:     j.freeze,
		Findings:   j.findings,
		Change:     j.change,
		Settle:     j.settle,
		Risks:      j.risks,
		Next:       next,
		Dose:       j.nextDose,
		WeighIn:    j.weighing,
		Headline:   j.headline(),
		Cautions:   j.cautions(),
		Notes:      v.Notes,
	}
	a.tidy()
	return a, nil
}
