package satline

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/testbench"
	"github.com/satline/satline/quantity"
)

// A wholeVisit is a visit that is worked through to its end, as the plan says, step by step.
type wholeVisit struct {
	*benchVisit
	rng *rand.Rand
	// stale says that the machine has to be read again.
	stale bool
	done  tasks
}

// act takes the first step of a plan that tells something or changes something; false where there
// is none, and the visit has ended.
func (v *wholeVisit) act(a *Assessment) bool {
	for i := range a.Plan {
		s := &a.Plan[i]
		if v.looks(s) || v.reads(a, s) || v.cleans(s) || v.doses(a, s) || v.weighsIn(s) || v.mends(s) {
			return true
		}
	}
	if v.stale = waits(a); v.stale {
		v.at += 10 * time.Minute
	}
	return v.stale
}

// looks answers a look, or searches for the leak.
func (v *wholeVisit) looks(s *Step) bool {
	look := s.Look
	if s.Do.Code == StepFindLeak {
		look = "oil-and-leak"
	}
	if look == "" || v.answered(look) {
		return false
	}
	v.done.looks++
	found := look != "indoor-ice" && v.bench.Look(v.rng, look) // no coil of the bench is iced
	v.visit.Checks = append(v.visit.Checks, Check{Look: look, Found: found})
	return true
}

func (v *wholeVisit) answered(look string) bool {
	return slices.ContainsFunc(v.visit.Checks, func(c Check) bool { return c.Look == look })
}

// onTheBench is what the bench calls the readings that a plan may ask for.
var onTheBench = map[string]string{
	"suctionPressure": "suction-pressure", "suctionLine": "suction-line",
	"liquidLine": "liquid-line", "dischargeLine": "discharge-line",
	"condenserLeaving": "condenser-leaving", "supplyDryBulb": "supply-dry-bulb",
	"supplyWetBulb": "supply-wet-bulb", "airflow": "airflow", "power": "power",
}

// reads takes a reading that was not taken yet, or reads the label.
func (v *wholeVisit) reads(a *Assessment, s *Step) bool {
	if s.Do.Code == StepReadLabel {
		return v.readLabel(v.rng, a)
	}
	e, taken := v.bench.Read(v.rng, onTheBench[s.Field])
	if !taken {
		return false
	}
	v.done.readings++
	v.bench.Evidence = e
	v.visit.Readings = readingsIn(&e)
	for i := range v.visit.Log {
		v.visit.Log[i].Readings = v.visit.Readings
	}
	return true
}

// cleans takes away dirt that was seen, or says how the machine runs.
func (v *wholeVisit) cleans(s *Step) bool {
	c := &v.visit.Conditions
	switch s.Do.Code {
	case StepCleanFilter:
		c.FilterDirty = false
		v.mendFault("filter")
	case StepCleanOutdoor:
		c.OutdoorCoilDirty = false
		v.mendFault("condenser-coil")
	case "step.full-capacity": // as all of the bench run
		was := c.CapacityShare
		c.CapacityShare = 1
		return was == 0
	case "step.seen-indoor":
		v.bench.Mend(diagnose.LowIndoorAir)
	case "step.seen-outdoor":
		v.bench.Mend(diagnose.CondenserAir)
	default:
		return false
	}
	v.anew()
	return true
}

func (v *wholeVisit) mendFault(fault diagnose.Code) {
	for _, x := range v.bench.Truth {
		if x.Fault == fault {
			v.bench.Mend(x.Signature)
			return
		}
	}
}

// anew starts over at a machine that was changed, with what was not found where it was looked for.
func (v *wholeVisit) anew() {
	v.stale, v.at = true, 20*time.Minute
	v.visit.Log, v.visit.Moves = nil, nil
	v.visit.Checks = slices.DeleteFunc(v.visit.Checks, func(c Check) bool { return c.Found })
}

// doses moves what the plan says.
func (v *wholeVisit) doses(a *Assessment, s *Step) bool {
	if !s.Moves || a.Dose == nil || a.Dose.Mass == 0 {
		return false
	}
	v.done.doses++
	if off := v.bench.Machine.ChargeError(); s.Adds && off > 0.1 || !s.Adds && off < -0.1 {
		v.done.wrongWay++
	}
	v.stale = true
	return v.move(a.Dose) == nil
}

// weighsIn empties the circuit, mends its leak and weighs the right charge in, of what the label
// names.
func (v *wholeVisit) weighsIn(s *Step) bool {
	if s.Do.Code != StepEvacuate && s.Do.Code != "mend.gas-proved" {
		return false
	}
	if v.bench.Mend(diagnose.OtherRefrigerant) {
		v.visit.Equipment.Refrigerant = v.bench.Evidence.Fluid.Designation()
	}
	before := len(v.bench.Truth)
	v.bench.Mend(diagnose.NonCondensables)
	v.bench.Truth = slices.DeleteFunc(v.bench.Truth, func(x testbench.Injected) bool {
		return x.Signature == diagnose.Undercharge || x.Signature == diagnose.Overcharge
	})
	m := v.bench.Machine
	off := m.ChargeError()
	if len(v.bench.Truth) == before && math.Abs(off) <= diagnose.ChargeBand {
		v.done.needless++
	}
	v.visit.Conditions.OilStains, v.visit.Conditions.ChargeWeighed = false, true
	v.anew()
	return v.bench.Add(quantity.Mass(-off*float64(m.LabelCharge))) == nil
}

// mends puts a cause right. Where it is not there, that is what its look finds, and the machine is
// as it was; false where that was known.
func (v *wholeVisit) mends(s *Step) bool {
	cause := diagnose.Code(s.Cause)
	if cause == "" || !strings.HasPrefix(string(s.Do.Code), "mend.") {
		return false
	}
	if s.Do.Code == "mend.non-condensables" { // which is proved first
		return v.looks(&Step{Look: "standing-pressure"})
	}
	e := &v.bench.Evidence
	if v.bench.Mend(cause) {
		v.done.mends++
		v.visit.Equipment.Refrigerant = e.Fluid.Designation()
		if !e.AtmosphereAssumed {
			v.visit.Site.Barometer = &e.Atmosphere
		}
		v.seenClean(cause)
		v.anew()
		return true
	}
	v.done.inVain++
	v.seenClean(cause)
	if s.Opens {
		v.done.needless++
		if e.Metering.Fixed() && !v.answered("restrictor-number") {
			v.visit.Checks = append(v.visit.Checks, Check{Look: "restrictor-number"})
			return true
		}
	}
	return v.finds(e, cause)
}

// seenClean takes back that dirt was seen where a cause was gone after.
func (v *wholeVisit) seenClean(cause diagnose.Code) {
	switch c := &v.visit.Conditions; cause {
	case diagnose.LowIndoorAir:
		c.FilterDirty = false
	case diagnose.CondenserAir:
		c.OutdoorCoilDirty = false
	}
}

// finds says by the next look of a cause that it is not there; false where all of them have.
func (v *wholeVisit) finds(e *diagnose.Evidence, cause diagnose.Code) bool {
	told := *e
	told.Answers = nil
	for _, c := range v.visit.Checks {
		if !c.Found {
			told.Answers = append(told.Answers, diagnose.Answer{Code: c.Look})
		}
	}
	look := told.LookFor(cause)
	if look == "" {
		return false
	}
	writeDown(&v.visit, look, false)
	return true
}

// ready reads the machine anew where that is due; false where it does not run any more.
func (v *wholeVisit) ready() (bool, error) {
	if !v.stale {
		return true, nil
	}
	v.stale = false
	err := v.settle(v.rng)
	if errors.Is(err, testbench.ErrNoOperation) {
		return false, nil
	}
	return true, err
}

// putRight reports whether nothing is wrong any more that Mend knows, with the charge in band.
func (v *wholeVisit) putRight() bool {
	charged := func(x testbench.Injected) bool {
		return x.Signature == diagnose.Undercharge || x.Signature == diagnose.Overcharge
	}
	return math.Abs(v.bench.Machine.ChargeError()) <= diagnose.ChargeBand &&
		!slices.ContainsFunc(
			v.bench.Truth, func(x testbench.Injected) bool { return !charged(x) },
		)
}

func newWholeVisit(t *testing.T, rng *rand.Rand) *wholeVisit {
	b, err := testbench.DrawVisit(rng, testbench.Options{})
	if err != nil {
		t.Fatal(err)
	}
	v := &wholeVisit{benchVisit: newBenchVisit(b), rng: rng, stale: true}
	seen, c := b.Evidence.Seen, &v.visit.Conditions
	c.FilterDirty, c.OutdoorCoilDirty, c.OilStains =
		seen.FilterDirty, seen.OutdoorCoilDirty, seen.OilStains
	if seen.NotCoolingComplaint {
		v.visit.Complaint = NotCooling
	}
	return v
}

// Visits to machines of the bench are worked through to their end, by somebody who does what the
// plan says and no more. Of 3,000 by three seeds each came to one; 867 of 870 sound machines ended
// as they were, and 534 of 565 with a fault of 10 % or more put right. The floors are three
// standard deviations of the sample under 99 and 93 %.
func TestWholeVisitsOnTheBench(t *testing.T) {
	begin := func(_ int, rng *rand.Rand) workedVisit {
		v := newWholeVisit(t, rng)
		kind := "slight"
		switch truth := v.bench.Truth; {
		case len(truth) == 0:
			kind = "sound"
		case v.bench.Instrument:
			kind = "instrument"
		case len(truth) == 2:
			kind = "two faults"
		case v.bench.Loss >= 0.1:
			kind = "one fault"
		}
		return workedVisit{
			kind: kind, name: v.bench.Code(), visit: &v.visit, done: &v.done, ready: v.ready,
			act: v.act, right: v.putRight, chargeError: v.bench.Machine.ChargeError,
		}
	}
	groups, n := workThrough(t, visits{short: 15, usual: 60, full: 1000}, begin)
	groups.hold(t, "sound", 0.99)
	groups.hold(t, "one fault", 0.93)
	if wrong := groups.all().wrongWay; wrong > 1+n/500 {
		t.Errorf("%d doses the wrong way", wrong)
	}
}
