package satline

import (
	"fmt"
	"slices"
	"strings"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/diagnose"
	"github.com/satline/satline/internal/diagnose/signature"
	"github.com/satline/satline/quantity"
)

// judgeFindings weighs everything together: what it may be, what one reading
// would settle it, and in which order to mend.
func (j *job) judgeFindings() {
	if j.visit.Conditions.Heating {
		return
	}
	sys := j.visit.Units
	d := diagnose.Infer(j.evidence())
	if d.Change != nil && !j.forbidden("just-moved") && j.unsettled() == "" { // else it has not answered yet
		j.change = &ChangeVerdict{AsExpected: d.Change.AsSaid, Chance: d.Change.Chance, Revised: d.Change.Revised, Text: d.Change.Texts(sys)}
	}
	j.frozen = d.Freeze
	if d.Verdict == diagnose.NotEnough {
		j.settle = measurement(d.Next, sys)
		return
	}
	if !j.canDiagnose(&d) {
		return
	}
	j.diagnosis = &d
	for i := range d.Explanations {
		x := &d.Explanations[i]
		if x.Probability < leastFinding {
			continue
		}
		f := Finding{Code: x.Code(), Cause: x.Title(sys), Probability: x.Probability, For: x.For(sys), Against: x.Against(sys)}
		j.findings = append(j.findings, f)
	}
	if j.unsettled() == "" && !j.forbidden("circuit-opened") { // else the log, run on, settles most, or nothing does
		j.settle = measurement(d.Next, sys)
	}
}

// leastFinding is the probability below which a cause is not worth a line.
const leastFinding = 0.005

// canDiagnose says whether the readings are those of a machine that runs as it
// usually does. Where the technician says that they are not, or where they
// contradict each other and no fault of an instrument explains it, a diagnosis
// would explain the circumstance and not the machine.
func (j *job) canDiagnose(d *diagnose.Diagnosis) bool {
	if j.situationSpoiled() && !j.visit.Conditions.SealedSystemOpened || j.visit.Conditions.CondenserFanCycling || j.forbidden("run-short") || j.forbidden("just-moved") {
		return false
	}
	for _, c := range d.Explanations[0].Causes {
		instrument := slices.ContainsFunc(c.Faults, func(f diagnose.FaultChance) bool { return f.Fault.Kind == diagnose.Instrument })
		if instrument && d.Verdict != diagnose.Contradictory {
			return true
		}
	}
	return !slices.ContainsFunc(j.doubts, func(d Doubt) bool {
		return d.Belief == Impossible || d.Belief == Doubted && slices.ContainsFunc(d.Fields, isIndoorAir)
	})
}

func isIndoorAir(field string) bool {
	return slices.Contains([]string{"returnDryBulb", "returnWetBulb", "supplyDryBulb", "supplyWetBulb"}, field)
}

// forbidden says whether the obstacle of that code rules the method out.
func (j *job) forbidden(code string) bool {
	return slices.ContainsFunc(j.obstacles, func(o charge.Obstacle) bool { return o.Code == code && o.Forbids })
}

// mendFirst says that a verdict on the charge waits for another cause that is
// likelier than a wrong charge.
func (j *job) mendFirst() (cause string, chance float64, waits bool) {
	if d := j.diagnosis; d != nil && d.Verdict == diagnose.Faulty && !d.Explanations[0].OfCharge() {
		return d.Explanations[0].Title(j.visit.Units), d.Sureness(), true
	}
	return "", 0, false
}

// reconcile holds the verdict on the charge against what everything together
// says. A charge that reads off because of something else is not to be moved.
func (j *job) reconcile() {
	c := &j.charge
	undecided := c.Outcome == ChargeCannotTell && !j.readingsContradict
	if c.Outcome != ChargeLow && c.Outcome != ChargeHigh && !undecided {
		return
	}
	cause, chance, waits := j.mendFirst()
	dirt, dirty := j.dirt()
	switch {
	case waits:
		c.Reasons = append([]string{fmt.Sprintf("%s is likelier (%.0f %%) than a wrong charge, and moves the %s by itself", cause, 100*chance, c.Method)}, c.Reasons...)
		c.Low, c.High = j.diagnosis.Probability(diagnose.Undercharge), j.diagnosis.Probability(diagnose.Overcharge)
		c.InBand = max(0, 1-c.Low-c.High)
	case dirty:
		c.Reasons = append([]string{dirt.Reason}, slices.DeleteFunc(c.Reasons, func(r string) bool { return r == dirt.Reason })...)
	case j.air != nil && j.air.Do != "" && !j.liquidStacked && !undecided:
		c.Reasons = append([]string{"the temperature split says to see to the air first, and air moves the " + c.Method + " by itself"}, c.Reasons...)
	default:
		return
	}
	c.Reasons = slices.DeleteFunc(c.Reasons, func(r string) bool { return strings.HasPrefix(r, "chance that the charge is") })
	c.Outcome = ChargeNotNow
	c.Instead = []string{"mend that first, let the machine settle, and judge the charge again"}
	j.mendedFirst = true
}

// dirt is the first of what was seen dirty: cleaning it moves every reading that
// the charge is judged by.
func (j *job) dirt() (charge.Obstacle, bool) {
	for _, o := range j.obstacles {
		if isDirt(o) {
			return o, true
		}
	}
	return charge.Obstacle{}, false
}

func measurement(m *diagnose.Measurement, sys quantity.System) *Measurement {
	if m == nil {
		return nil
	}
	out := &Measurement{Take: m.Take(sys), Why: m.Why(sys), Outcomes: m.Texts(sys)}
	if m.Look() {
		out.Look = m.Code
		return out
	}
	for _, f := range readingFields {
		if strings.EqualFold(f.name, strings.ReplaceAll(m.Code, "-", "")) {
			out.Field = f.name
		}
	}
	return out
}

func (j *job) evidence() diagnose.Evidence {
	v, r, c, e := &j.visit, &j.readings, &j.visit.Conditions, &j.visit.Equipment
	out := diagnose.Evidence{
		Input:             j.checkInput(),
		Airflow:           r.Airflow,
		Power:             r.Power,
		ExternalStatic:    r.ExternalStatic,
		Fluid:             j.fluid,
		Others:            diagnose.Alternatives(j.fluid),
		Atmosphere:        j.atmosphere.Pressure.Value,
		AtmosphereAssumed: v.Site.Barometer == nil && v.Site.Elevation == nil,
		Metering:          diagnose.Metering(e.Metering),
		HeatPump:          e.Arrangement == SplitHeatPump || e.Arrangement == PackageHeatPump,
		NominalCapacity:   e.NominalCapacity,
		RatedAirflow:      e.Label.RatedAirflow,
		MaxExternalStatic: e.Label.MaxExternalStatic,
		Charge:            e.Label.Charge,
		Expected:          j.expected(),
		Unsteady:          j.unsettled(),
		Doubts:            j.rawDoubts,
		Seen: diagnose.Sights{
			FilterDirty: c.FilterDirty, OutdoorCoilDirty: c.OutdoorCoilDirty, CoilIced: c.CoilIced, CoilWet: c.CoilWet,
			PanelsOff: c.PanelsOff, DoorsOpen: c.DoorsOpen, EconomizerOpen: c.EconomizerOpen, FanCycling: c.CondenserFanCycling,
			SealedSystemOpened: c.SealedSystemOpened, OilStains: c.OilStains,
			FrozenComplaint: v.Complaint == FrozenCoil, WaterComplaint: v.Complaint == WaterLeak, NotCoolingComplaint: v.Complaint == NotCooling,
		},
		Answers: v.answers(),
		Earlier: j.earlier(),
	}
	return out
}

// expected is what this machine should read when sound, by label and table.
func (j *job) expected() []diagnose.Expectation {
	var out []diagnose.Expectation
	if t := j.charge.Target; t != nil && j.charge.Method == "superheat" {
		out = append(out, diagnose.Expectation{Feature: signature.Superheat, Value: float64(t.Value), Std: t.Std, Source: "the target"})
	}
	if s := j.visit.Equipment.Label.Subcooling; s != nil {
		out = append(out, diagnose.Expectation{Feature: signature.Subcooling, Value: float64(s.Value), Std: max(s.Std, 1), AtRated: true, Source: "the label"})
	}
	return out
}

// earlier are the settled readings before the last move, and the move.
func (j *job) earlier() *diagnose.Earlier {
	if len(j.visit.Moves) == 0 || len(j.log) == 0 {
		return nil
	}
	last := j.visit.Moves[len(j.visit.Moves)-1]
	var before []LogEntry
	for i := range j.log {
		if j.log[i].At <= last.At {
			before = j.log[:i+1]
		}
	}
	if len(before) == 0 {
		return nil
	}
	past := *j
	past.readings = Readings{}
	before = thinned(before)
	course, _, err := j.course(before)
	if err != nil {
		return nil
	}
	takeStretch(&past.readings, before, course, deltaCourse{})
	past.derived, past.condensingDew = Derived{}, nil
	if past.derive() != nil {
		return nil
	}
	action := diagnose.Action{Kind: diagnose.ChargeAdded, Mass: last.Added}
	if last.Recovered > 0 {
		action = diagnose.Action{Kind: diagnose.ChargeRecovered, Mass: last.Recovered}
	}
	return &diagnose.Earlier{Input: past.checkInput(), Airflow: past.readings.Airflow, Power: past.readings.Power, Done: []diagnose.Action{action}}
}
