package work

import (
	"slices"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity/fact"
)

// A need is something that tasks ask for: a sentence that says to do it, the tasks, and where
// it is asked for.
type need struct {
	code  fact.Code
	tasks []Task
	asks  func(*judge) bool // nil: always
}

func reads(j *judge) bool  { return !j.o.Machine.weighs() }
func weighs(j *judge) bool { return j.o.Machine.weighs() }
func closed(j *judge) bool { return !j.opened() }

func closedAndWeighs(j *judge) bool { return closed(j) && weighs(j) }

func unfitted(j *judge) bool { return closed(j) && len(j.o.Parts) == 0 }

func flammable(j *judge) bool { return j.fluid.Flammable() }

// needs stand in the order in which the work is done: recovered, mended, tested, evacuated,
// weighed in, run.
var needs = []need{
	{"next.read-cylinder", []Task{CheckCylinder}, nil},
	{"next.read-before", []Task{FindFault, Maintain}, func(j *judge) bool { return !j.evidence() }},
	{"next.read-before", []Task{SetCharge}, reads}, {"next.find-leak", []Task{RepairLeak}, nil},
	{"next.find-leak", []Task{SetCharge}, (*judge).leaked},
	{"next.recover", []Task{RepairLeak, OpenCircuit}, closed},
	{"next.recover", []Task{SetCharge}, closedAndWeighs},
	{"next.weigh-recovered", []Task{RepairLeak, OpenCircuit}, closed},
	{"next.weigh-recovered", []Task{SetCharge}, closedAndWeighs},
	{"next.fit-part", []Task{OpenCircuit}, unfitted}, {"next.mend-leak", []Task{RepairLeak}, nil},
	{"next.mend-leak", []Task{SetCharge}, (*judge).leaked},
	{"next.nitrogen", []Task{RepairLeak, OpenCircuit, Commission}, nil},
	{"next.nitrogen", []Task{SetCharge}, (*judge).leaked},
	{"next.joints", []Task{RepairLeak, OpenCircuit, Commission}, flammable},
	{"next.evacuate", []Task{RepairLeak, OpenCircuit, Commission, WeighIn}, nil},
	{"next.evacuate", []Task{SetCharge}, weighs},
	{"next.label-charge", []Task{RepairLeak, OpenCircuit, Commission, WeighIn}, nil},
	{"next.label-charge", []Task{SetCharge}, weighs},
	{"next.weigh-in", []Task{RepairLeak, OpenCircuit, Commission, WeighIn}, (*judge).owes},
	{"next.weigh-in", []Task{SetCharge}, weighs},
	{"next.electrical", []Task{Commission, Maintain}, nil}, {"next.air", []Task{Commission}, nil},
	{"next.checklist", []Task{Commission, Maintain}, nil},
	{"next.read-after", []Task{SetCharge, Commission}, nil},
	{"next.read-after", []Task{RepairLeak, OpenCircuit, WeighIn}, nil},
	{"next.name-machine", []Task{Commission}, nil},
}

// needs reports whether n is asked for here.
func (j *judge) needs(n need) bool {
	return j.is(n.tasks...) && (n.asks == nil || n.asks(j))
}

// owes reports whether anything has to be weighed in.
func (j *judge) owes() bool { return j.r.Weigh == nil || j.due.Value != 0 }

// leaked reports whether a machine that is charged by weight lacks refrigerant: what came out of
// it was too little, or what was read before says so.
func (j *judge) leaked() bool {
	a := j.r.Before
	return weighs(j) && (j.short || a != nil && a.Charge.Low > 0.5)
}

// evidence reports whether anything was looked at or measured that tells of a fault.
func (j *judge) evidence() bool {
	return j.o.Air != nil || j.drain != nil || len(j.o.Leaks) > 0 ||
		j.has["next.read-before"] == Good
}

// next lists what the tasks ask for and what is not good yet, each once, in the order in which
// it is done. What the last readings ask for comes before they are read again.
func (j *judge) next() []fact.Fact {
	var out []fact.Fact
	asked := func(code fact.Code) bool {
		return slices.ContainsFunc(out, func(f fact.Fact) bool { return f.Code == code })
	}
	// One that runs as it should after the work asks for nothing.
	planned := j.has["next.read-after"] == Good
	plan := func() {
		if !planned {
			steps := append(
				j.waterPlan(), j.plan(j.onCircuit() && (j.r.After == nil || len(out) > 0))...,
			)
			out, planned = append(out, steps...), true
		}
	}
	if j.planComesFirst() {
		plan()
	} else if !j.judged() {
		out = append(out, j.first()...)
	}
	for _, n := range needs {
		if n.code == "next.find-leak" && j.is(FindFault) {
			plan() // the fault comes before the circuit is touched
		}
		if !j.needs(n) || asked(n.code) {
			continue
		}
		s := j.has[n.code]
		if n.code == "next.read-after" && s != Good {
			if plan(); len(out) == 0 || s == "" && (j.onCircuit() || !j.judged()) {
				out = append(out, j.wording(n.code))
			}
		} else if code := stillToDo(n.code, s); code != "" {
			out = append(out, j.wording(code))
		}
	}
	plan()
	return j.inOrder(out)
}

// planComesFirst reports whether what the readings ask for is done before anything else is
// looked at.
func (j *judge) planComesFirst() bool {
	return j.judged() && (stops(j.last()) || j.is(Maintain) && j.r.After == nil)
}

// stillToDo is the step that a need comes to, empty where it asks for nothing more.
func stillToDo(need fact.Code, s Progress) fact.Code {
	switch {
	case need == "next.electrical" && s != "": // its plan stands above
		return ""
	case need == "next.air" && s == Bad: // what mends it does
		return ""
	case s == Good:
		return ""
	case s == "" || s == Open && need != "next.evacuate":
		return need
	case s == Open:
		return "next.evacuate-longer"
	}
	return need + "-again"
}

// first are the steps of the readings that come before everything else, whatever the task: a
// machine in danger is stopped, and food is seen to.
func (j *judge) first() []fact.Fact {
	a := j.last()
	if a == nil {
		return nil
	}
	var out []fact.Fact
	danger := stops(a)
	for _, s := range a.Plan {
		if s.Stops && danger {
			out, danger = append(out, s.Do), false
		} else if strings.HasPrefix(string(s.Do.Code), "step.cold-food") {
			out = append(out, s.Do)
		}
	}
	return out
}

// wording puts into the sentence of a step what it speaks of.
func (j *judge) wording(code fact.Code) fact.Fact {
	switch code {
	case "next.weigh-in", "next.weigh-in-again":
		if j.r.Weigh == nil {
			return j.says("next.weigh-in-open")
		}
		if j.due.Value < 0 {
			code = "next.take-out"
		}
		return j.says(code, j.weighValues()...)
	case "next.evacuate-again":
		if j.vacuumLeaks {
			code = "next.evacuate-leak"
		}
	case "next.label-charge":
		return j.says(j.want)
	case "next.recover", "next.recover-again":
		to, _ := j.recoverTo()
		return j.says(code, fact.Amount("to", to))
	case "next.nitrogen", "next.nitrogen-again":
		if limit := j.o.Machine.LowSideDesign; limit > 0 {
			return j.says(code, fact.Amount("limit", limit))
		}
		return j.says("next.nitrogen-by-label")
	case "next.read-before", "next.read-after":
		if weighs(j) {
			code += "-air"
		}
	case "next.checklist", "next.checklist-again":
		return j.says(code, fact.Of("checks", j.unchecked()))
	}
	return j.says(code)
}

// onCircuit reports whether the circuit itself is worked on.
func (j *judge) onCircuit() bool {
	return j.is(RepairLeak, OpenCircuit, WeighIn, Commission) || j.is(SetCharge) && weighs(j)
}

// judged reports whether the plan of the last readings is to be followed: not where the work on
// the circuit comes before what was read before it, unless the fault is still looked for.
func (j *judge) judged() bool {
	if j.r.After != nil {
		return len(j.r.After.Readings) > 0
	}
	begun := j.o.Recovery != nil || len(j.o.Nitrogen)+len(j.o.Evacuations)+len(j.o.Leaks) > 0
	return j.r.Before != nil && (!j.onCircuit() || j.is(FindFault) && !begun)
}

// last is the assessment of the last readings; nil where there are none.
func (j *judge) last() *satline.Assessment {
	if j.r.After != nil {
		return j.r.After
	}
	return j.r.Before
}

// plan is what the last readings ask for, without the steps on the circuit where the tasks have
// those. A machine that is charged by weight is not asked for the pressure of its
// liquid.
func (j *judge) plan(tasksHave bool) []fact.Fact {
	if !j.judged() {
		return nil
	}
	var out []fact.Fact
	for _, s := range j.last().Plan {
		f := s.Do
		switch f.Code {
		case satline.StepLeave:
			continue // the headline says so
		case "look.condensate-drain", "mend.drain", "mend.drain-clogged", "mend.missing-trap",
			satline.StepClearDrain, satline.StepPourWater:
			if j.said(DrainFlows) || j.drain != nil {
				continue
			}
		case "look.indoor-air-path":
			if j.said(FilterClean) && j.said(IndoorCoilClean) {
				continue
			}
		case satline.StepNitrogen, satline.StepEvacuate, satline.StepReadAgain,
			satline.StepFindLeak, satline.StepMendLeak, satline.StepMeasureLine,
			"look.oil-and-leak":
			if tasksHave {
				continue
			}
		}
		if (s.Moves || s.Opens) && tasksHave {
			continue
		}
		if weighs(j) {
			f = j.withoutPort(f)
		}
		if !f.IsZero() {
			out = append(out, f)
		}
	}
	if len(out) == 1 && out[0].Code == satline.StepReadAgain {
		return nil // nothing was done before it
	}
	return out
}

// withoutPort is a step without the readings that take a port on the liquid side; none where
// nothing is left of it.
func (j *judge) withoutPort(f fact.Fact) fact.Fact {
	v, ok := f.Value("readings")
	terms, is := v.Of.(fact.Terms)
	if !ok || !is {
		return f
	}
	left := slices.DeleteFunc(slices.Clone(terms), func(t fact.Term) bool {
		return t == "reading.liquidPressure" || t == "reading.dischargePressure" ||
			t == "reading.suctionPressure" && j.o.Machine.Ports == NoPorts
	})
	if len(left) == 0 {
		return fact.Fact{}
	}
	return j.says(f.Code, fact.Of("readings", left))
}
