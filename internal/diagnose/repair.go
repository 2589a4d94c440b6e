package diagnose

import (
	"slices"

	"github.com/satline/satline/quantity"
)

// A Step is something to do, in its order; see Texts.
type Step struct {
	Do, Why string
	// For names the signatures it is for; empty where it is for the visit.
	For []Code
	// Closing says that it only rounds off the steps before it.
	Closing bool

	next *Measurement // the step is to take it
}

// Stage orders repairs: what spoils the readings by which the later ones are
// judged comes first.
type stage int

const (
	stageSettle stage = iota
	stageThaw
	stageInstruments
	stageMeasure
	stageCircumstances
	stageIndoorAir
	stageOutdoorAir
	stageCircuit // what needs the circuit worked on
	stageProof   // the compressor, proved before it is condemned
	stageCharge
	stageAgain
)

func stageOf(f *Fault) stage {
	switch f.Signature {
	case Undercharge, Overcharge:
		return stageCharge
	case VaporLeak:
		return stageProof
	case CondenserAir:
		return stageOutdoorAir
	}
	switch f.Kind {
	case Instrument:
		return stageInstruments
	case Circumstance:
		return stageCircumstances
	case Air:
		return stageIndoorAir
	}
	return stageCircuit
}

// A rule of order: where it holds, charge is not touched. Common practice and
// ANSI/ACCA 5 QI (from memory), which asks for airflow before charge.
type hold struct {
	when func(*caseFile, *Diagnosis) bool
	why  string
	// general reasons name nothing that could be settled first.
	general bool
}

// doubtful is the probability of a fault from which charge waits for it.
const doubtful = 0.2

var holds = []hold{
	{when: func(c *caseFile, _ *Diagnosis) bool { return c.evidence.Unsteady != "" }, why: "the readings have not settled"},
	{when: func(c *caseFile, _ *Diagnosis) bool { return c.evidence.Seen.CoilIced }, why: "the indoor coil is iced"},
	{when: func(_ *caseFile, d *Diagnosis) bool { return d.Verdict == Contradictory }, why: "the readings contradict each other"},
	{
		when: func(_ *caseFile, d *Diagnosis) bool { return d.Verdict == Sound },
		why:  "nothing that was read is out of what sound machines read", general: true,
	},
	{when: func(c *caseFile, d *Diagnosis) bool { return c.instead(d, instrumentSignatures) > doubtful }, why: "an instrument is in doubt"},
	{
		when: func(_ *caseFile, d *Diagnosis) bool {
			return d.any([]Code{LowIndoorAir, HighIndoorAir, ReturnLeak, Economizer}) > doubtful
		},
		why: "the indoor airflow is in doubt, and every charging target rests on it",
	},
	{
		when: func(c *caseFile, d *Diagnosis) bool {
			return d.marginal[CondenserAir] > doubtful || c.evidence.Seen.OutdoorCoilDirty || c.evidence.Seen.CoilWet
		},
		why: "the outdoor coil must be clean, dry and in free air first",
	},
	{
		when: func(c *caseFile, d *Diagnosis) bool {
			return c.instead(d, []Code{Restriction, Overfeed, NonCondensables, OtherRefrigerant, VaporLeak, NextToEmpty, NotPumping}) > doubtful
		},
		why: "a fault of the circuit would pass for a wrong charge",
	},
	{
		when: func(_ *caseFile, d *Diagnosis) bool { return d.any([]Code{LowLoad, LowAmbient}) > doubtful },
		why:  "no charging target holds in this weather or at this load",
	},
	{when: func(_ *caseFile, d *Diagnosis) bool { return d.Verdict == Unclear }, why: "more than one explanation fits", general: true},
}

// any is the chance that one of the signatures is present, at most their sum.
func (d *Diagnosis) any(signatures []Code) float64 {
	sum := 0.0
	for _, s := range signatures {
		sum += d.marginal[s]
	}
	return min(1, sum)
}

// instead is the chance that one of the signatures is present and the charge is not
// off in the way that is likeliest. Where it is off that way in any case, the other
// changes by how much, and that shows as the charge is moved in small doses.
func (c *caseFile) instead(d *Diagnosis, signatures []Code) float64 {
	way := Undercharge
	if d.marginal[Overcharge] > d.marginal[way] {
		way = Overcharge
	}
	sum := 0.0
	for _, p := range c.parts {
		if !c.has(p, way) && slices.ContainsFunc(signatures, func(s Code) bool { return c.has(p, s) }) {
			sum += p.weight
		}
	}
	return sum
}

func (c *caseFile) has(p component, signature Code) bool {
	return p.a != none && c.suspects[p.a].signature == signature || p.b != none && c.suspects[p.b].signature == signature
}

// worth is the probability from which a cause is worth a step.
const worth = 0.1

// settling is the information, in bits, from which a measurement comes before a
// repair.
const settling = 0.1

// order lists what to do, each with its reason.
func (c *caseFile) order(d *Diagnosis) []Step {
	type staged struct {
		stage  stage
		chance float64
		step   Step
	}
	var all []staged
	put := func(s stage, chance float64, step Step) { all = append(all, staged{s, chance, step}) }
	if why := c.evidence.Unsteady; why != "" {
		put(stageSettle, 1, Step{Do: "let it run until the readings hold still, then take them again", Why: why})
	}
	if c.evidence.Seen.CoilIced {
		f := lookup("iced-coil")
		put(stageThaw, 1, Step{Do: f.Repair, Why: f.Why, For: []Code{LowIndoorAir}})
	}
	if d.Verdict == Contradictory {
		put(stageInstruments, 1, Step{Do: c.rereading(), Why: "no cause, and no two causes, give these readings together"})
	}
	if d.Verdict == Unclear && d.Next != nil && d.Next.Gain > settling {
		put(stageMeasure, 1, Step{next: d.Next})
	}
	var held string
	for _, h := range holds {
		if !h.when(c, d) {
			continue
		}
		if held == "" {
			held = h.why
		}
		if d.Hold == "" && !h.general {
			d.Hold = h.why
		}
	}
	// A circuit is not opened for an unlikely cause while a small dose may end it.
	charged := held == "" && d.Verdict == Faulty && d.Explanations[0].OfCharge()
	for i := range c.suspects {
		s := &c.suspects[i]
		chance := d.marginal[s.signature]
		if chance < worth || d.Verdict == Sound && s.faults[0].Kind != Circumstance {
			continue
		}
		for j, f := range s.faults {
			if s.share[j] < 0.25 && len(s.faults) > 1 || f.Code == "iced-coil" {
				continue
			}
			at := stageOf(f)
			if at == stageCharge && held != "" || (at == stageProof || at == stageCircuit && charged) && chance < doubtful {
				continue
			}
			if at == stageOutdoorAir && chance >= present && d.any([]Code{LowIndoorAir, HighIndoorAir, ReturnLeak}) < present {
				at = stageCircumstances // what is there almost surely, before indoor air that is only in doubt
			}
			put(at, chance*s.share[j], Step{Do: f.Repair, Why: f.Why, For: []Code{s.signature}})
		}
	}
	slices.SortStableFunc(all, func(x, y staged) int {
		if x.stage != y.stage {
			return int(x.stage - y.stage)
		}
		return compare(y.chance, x.chance)
	})
	if held != "" && d.Verdict != Sound && d.any([]Code{Undercharge, Overcharge}) >= worth {
		all = append(all, staged{step: Step{
			Do: "leave the charge alone until this is settled, then take all readings again", Why: held, For: []Code{Undercharge, Overcharge},
		}})
	}
	var steps []Step
	for _, s := range all {
		steps = append(steps, s.step)
	}
	if len(steps) > 1 {
		steps = append(steps, Step{Do: "take all readings again after each step, once they have settled", Why: "one change at a time shows whether the cause was the one", Closing: true})
	}
	return steps
}

// rereading names the readings that are furthest from any explanation.
func (c *caseFile) rereading() string {
	best := component{a: none, b: none}
	weight := -1.0
	for _, p := range c.parts {
		if (p.a == none || c.suspects[p.a].signature != readingsClash) && p.weight > weight {
			best, weight = p, p.weight
		}
	}
	mean, cov := c.predict(best, &c.seen.have, &c.seen.noise)
	worst, at := 0.0, -1
	for f := range features {
		if !c.seen.have[f] {
			continue
		}
		d := c.seen.value[f] - mean[f]
		if z := d * d / cov[f][f]; z > worst {
			worst, at = z, f
		}
	}
	text := "take all readings again, with the instruments compared among themselves"
	if at >= 0 {
		text += ", first those of the " + namesOf[at]
	}
	return text
}

var namesOf = [features]string{
	"suction pressure", "suction line and suction pressure", "liquid pressure and outdoor air", "liquid line and liquid pressure",
	"discharge line", "return and supply dry bulb", "return and supply wet bulb", "air entering and leaving the outdoor unit",
	"airflow", "power",
}

// OfCharge reports whether the step is to set the charge.
func (s *Step) OfCharge() bool {
	return slices.Contains(s.For, Undercharge) || slices.Contains(s.For, Overcharge)
}

// Outside reports whether the step is to look at the air or at an instrument,
// with the circuit closed.
func (s *Step) Outside() bool {
	return slices.ContainsFunc(s.For, func(c Code) bool {
		return c == LowIndoorAir || c == ReturnLeak || c == CondenserAir || slices.Contains(instrumentSignatures, c)
	})
}

// Measures reports whether the step is to take the reading that tells most.
func (s *Step) Measures() bool { return s.next != nil }

// Settles reports whether m is what the step has done anyway: a look at the same
// instrument.
func (s *Step) Settles(m *Measurement) bool {
	return m.test != nil && slices.ContainsFunc(s.For, func(c Code) bool { return m.test.of[c] >= 0.9 })
}

// Texts returns the step in the units of sys.
func (s *Step) Texts(sys quantity.System) (do, why string) {
	if s.next != nil {
		return "take " + s.next.Take(sys), s.next.Why(sys)
	}
	return inUnits(s.Do, sys), inUnits(s.Why, sys)
}
