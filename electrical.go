package satline

import (
	"slices"

	"github.com/satline/satline/electrical"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity/fact"
)

// stands reports whether a motor is fed or called and does not turn.
func stands(s electrical.State) bool { return s == electrical.Hums || s == electrical.Silent }

// called reports whether power is known to reach the outdoor motors: a compressor that nobody
// calls is not a bad one.
func called(r *electrical.Report) bool {
	reached := r.Compressor == electrical.Hums
	for _, c := range r.Checks {
		switch c.Part {
		case electrical.SupplyPart, electrical.ControlPart, electrical.ContactorPart:
			if c.Outcome == fact.Wrong {
				return false
			}
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
	if e.RatedLoadCurrent == 0 {
		e.RatedLoadCurrent = m.RatedLoad
	}
	if e.Current == nil && r.Compressor == electrical.Runs && len(m.Currents) == 1 {
		e.Current = &m.Currents[0]
	}
}

// dangersElectrical come before those of the circuit.
func (p *prepared) dangersElectrical() []Danger {
	var out []Danger
	if p.electrical != nil {
		for _, d := range p.electrical.Dangers {
			out = append(out, Danger(d))
		}
	}
	return out
}

// unwell reports whether something electrical is to be put right, or to be found, before
// anything is judged by gauges.
func (p *prepared) unwell() bool {
	r := p.electrical
	return r != nil && (!r.Finding.IsZero() || stands(r.Compressor) || stands(r.OutdoorFan) ||
		stands(r.IndoorFan) || r.Compressor == electrical.Trips)
}

// electricalHeadline is what was found first on the way from the supply to the motor.
func (p *prepared) electricalHeadline() fact.Fact {
	f := p.electrical.Finding
	if f.IsZero() {
		return fact.New("headline.electrical-open")
	}
	return fact.New("headline.electrical", f.Values...).
		With(fact.Of("finding", fact.Term(f.Code)))
}

// lockedOut puts what to be careful of with a meter before everything else.
func (p *prepared) lockedOut(others []fact.Fact) []fact.Fact {
	if p.electrical == nil {
		return others
	}
	return append(slices.Clone(p.electrical.Cautions),
		slices.DeleteFunc(others, func(f fact.Fact) bool { return f.Code == "caution.electricity" })...)
}
