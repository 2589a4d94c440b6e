package satline

import (
	"cmp"
	"slices"

	"github.com/satline/satline/electrical"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity/fact"
)

// stands reports whether a motor is fed or called and does not turn.
func stands(s electrical.MotorState) bool { return s == electrical.Hums || s == electrical.Silent }

// called reports whether power is known to reach the outdoor motors: a compressor that nobody
// calls is not a bad one.
func called(r *electrical.Report) bool {
	reached := r.Compressor == electrical.Hums
	for _, c := range r.Checks {
		if c.Outcome == fact.Wrong && (c.Part == electrical.SupplyPart ||
			c.Part == electrical.ControlPart || c.Part == electrical.ContactorPart) {
			return false
		}
		switch c.Says.Code {
		case "electrical.contactor-in", "electrical.contact-within", "electrical.terminals-fed":
			reached = true
		}
	}
	return reached
}

// seeElectrical makes what the meter showed evidence for the one belief: what turns, and what
// does not though it is fed. A fan that stands beside a compressor that stands tells of neither.
func (p *prepared) seeElectrical(e *diagnose.Evidence) {
	r := p.electrical
	if r == nil {
		return
	}
	works := r.Compressor == electrical.Runs || r.Compressor == electrical.Trips
	e.Seen.CompressorStill = stands(r.Compressor) && called(r)
	e.Seen.CompressorBackwards = r.Compressor == electrical.Backwards
	e.Seen.OutdoorFanStill = stands(r.OutdoorFan) && works
	e.Seen.BlowerStill = stands(r.IndoorFan) && works
	m := &p.visit.Electrical.Compressor
	e.RatedLoadCurrent = cmp.Or(e.RatedLoadCurrent, m.RatedLoad)
	if e.Current == nil && r.Compressor == electrical.Runs && len(m.Currents) == 1 {
		e.Current = &m.Currents[0]
	}
}

// unwell reports whether something electrical is to be put right, or to be found, before
// anything is judged by gauges.
func (p *prepared) unwell() bool {
	r := p.electrical
	return r != nil && (!r.Finding.IsZero() || stands(r.Compressor) || stands(r.OutdoorFan) ||
		stands(r.IndoorFan) || r.Compressor == electrical.Trips)
}

// electricalFirst: what is broken electrically is put right before refrigerant is thought of,
// in every mode.
func (p *prepared) electricalFirst(j *modes.Judgement) {
	if !p.unwell() {
		return
	}
	j.Headline = fact.New("headline.electrical-open")
	if f := p.electrical.Finding; !f.IsZero() {
		j.Headline = fact.New("headline.electrical", f.Values...).
			With(fact.Of("finding", fact.Term(f.Code)))
	}
	j.Charge = modes.Charge{
		Outcome: string(ChargeNotJudged), Reading: j.Charge.Reading, Missing: j.Charge.Missing,
		Why: []fact.Fact{fact.New("charge.electrical-first")},
	}
	j.Steps, j.Dose, j.WeighIn, j.Ask = nil, nil, nil, nil
	r, seen := p.electrical, stands(p.electrical.OutdoorFan) || stands(p.electrical.IndoorFan)
	trips := r.Compressor == electrical.Trips && j.Charge.Reading == nil && !seen
	if trips || stands(r.Compressor) && !called(r) {
		j.Findings = nil // air that no compressor cools for long tells nothing of the refrigerant
	}
	for _, s := range p.electrical.Plan {
		step := modes.Step{Do: s.Do, Effect: modes.Effect{Stops: s.Stops, Starts: s.Starts}}
		if s.Why != nil {
			step.Why = *s.Why
		}
		j.Steps = append(j.Steps, step)
	}
}

// lockedOut puts what to be careful of with a meter before everything else.
func (p *prepared) lockedOut(others []fact.Fact) []fact.Fact {
	if p.electrical == nil {
		return others
	}
	power := func(f fact.Fact) bool { return f.Code == "caution.electricity" }
	return append(slices.Clone(p.electrical.Cautions), slices.DeleteFunc(others, power)...)
}
