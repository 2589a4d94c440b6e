package work

import (
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

var (
	smallRule = fact.Source{
		Title: "40 CFR 82.156, small appliances: 90 % of the charge with a running compressor, " +
			"or 4 inches of mercury of vacuum",
		Standing: fact.FromMemory,
	}
	leakingRule = fact.Source{
		Title: "40 CFR 82.156(a): where a leak keeps the level from being reached, " +
			"no higher than 0 psig",
		Standing: fact.Published,
	}
	unitLabel = fact.Source{Title: "the unit's label", Standing: fact.Label}
	practice  = fact.Source{Standing: fact.CommonPractice}
)

// smallAppliance is how much a machine sealed in the factory holds at most to be one by 40 CFR
// 82.152.
var smallAppliance = quantity.Pounds(5)

// recoverTo is the gauge pressure to which the circuit is pulled before it is opened, and the
// rule. It is never above the atmosphere of the site. Where the charge is not known it counts
// as large, for which the rule asks more.
func (j *judge) recoverTo() (quantity.GaugePressure, fact.Source) {
	atmosphere, _ := j.o.Machine.Site.Atmosphere() // known, by checked
	e := j.o.Machine.Equipment
	sealed := e.Arrangement == satline.Package || e.Arrangement == satline.PackageHeatPump ||
		e.Arrangement == satline.WallMounted
	switch {
	case j.o.Recovery != nil && j.o.Recovery.Leaking:
		return 0, leakingRule
	case sealed && j.full > 0 && j.full <= smallAppliance:
		return -quantity.GaugePressure(quantity.InchesHg(4)), smallRule
	}
	whole := j.full
	if whole == 0 {
		whole = quantity.Pounds(200)
	}
	level, err := charge.RecoverTo(j.fluid, whole)
	if err != nil {
		return 0, leakingRule
	}
	return min(level.To.Gauge(atmosphere.Pressure.Value), 0), level.Source
}

// recovery holds the last pressure against the level of the rule.
func (j *judge) recovery() {
	p := j.o.Recovery
	if p == nil {
		return
	}
	const need = "next.recover"
	to, source := j.recoverTo()
	last, least := p.Readings[len(p.Readings)-1], *p.Readings[0].Pressure
	for _, r := range p.Readings {
		least = quantity.Uncertain[quantity.GaugePressure]{Value: min(least.Value,
			r.Pressure.Value)}
	}
	short := Bad
	if j.opened() {
		short = Found // what has been opened since is recovered no more
	}
	slack := satline.DefaultInstruments().Gauge
	values := []fact.Value{fact.Amount("shown", last.Pressure.Value), fact.Amount("to", to)}
	switch {
	case last.Pressure.Value <= to+slack:
		j.result("recovery", need, Good, fact.New("result.recovered", values...), source)
	case source == smallRule && j.r.Recovered >= j.full*9/10:
		j.result("recovery", need, Good, fact.New("result.recovered-share",
			fact.Amount("mass", j.r.Recovered), fact.Amount("charge", j.full)), source)
	case least.Value <= to+slack:
		j.result("recovery", need, short, fact.New("result.recovery-came-back", values...), source)
	default:
		j.result("recovery", need, short, fact.New("result.recovery-short", values...), source)
	}
}

// opened reports whether the circuit was opened after the recovery.
func (j *judge) opened() bool { return len(j.o.Nitrogen)+len(j.o.Evacuations) > 0 }

// leaks lists where one was found; a repair needs one, and each of them mended.
func (j *judge) leaks() {
	mended := len(j.o.Leaks) > 0
	for i, l := range j.o.Leaks {
		part := fmt.Sprintf("leaks[%d]", i)
		j.has["next.find-leak"] = Good
		if l.Mended == "" {
			mended = false
			j.result(part, "", Bad, fact.New("result.leak-open", fact.Of("where", l.Where)),
				fact.Source{})
			continue
		}
		j.result(part, "", Found, fact.New("result.leak-mended",
			fact.Of("where", l.Where), fact.Of("how", l.Mended)), fact.Source{})
	}
	if mended {
		j.has["next.mend-leak"] = Good
	}
}

// nitrogen judges each pressure test by its first and last reading.
func (j *judge) nitrogen() {
	const need = "next.nitrogen"
	atmosphere, _ := j.o.Machine.Site.Atmosphere()
	limit := j.o.Machine.LowSideDesign
	for i, n := range j.o.Nitrogen {
		final := i == len(j.o.Nitrogen)-1
		part := fmt.Sprintf("nitrogen[%d]", i)
		highest := quantity.GaugePressure(0)
		for _, r := range n.Readings {
			highest = max(highest, r.Pressure.Value)
		}
		if limit > 0 && highest > limit {
			j.result(part, need, Dangerous, fact.New("result.pressure-over-limit",
				fact.Amount("shown", highest), fact.Amount("limit", limit)), unitLabel)
			continue
		}
		first, last := n.Readings[0], n.Readings[len(n.Readings)-1]
		switch {
		case len(n.Readings) < 2:
			j.result(part, need, Open, fact.New("result.pressure-once"), fact.Source{})
			continue
		case first.Gas == nil || last.Gas == nil:
			j.result(part, need, Open, fact.New("result.pressure-no-gas"), fact.Source{})
			continue
		}
		test := pressureTest(&first, &last)
		test.Atmosphere = atmosphere.Pressure
		tight, err := test.Judge()
		if err != nil {
			j.problems.because(outOfRange, part, err)
			continue
		}
		standing := map[charge.TestOutcome]Progress{
			charge.Holds: Good, charge.Leaks: Bad, charge.TestOpen: Open,
		}[tight.Outcome]
		if standing == Bad && !final {
			standing = Found // it was mended, and tested again
		}
		j.result(part, need, standing, tight.Fact().With(
			fact.Of("held", test.Held), fact.Amount("start", test.Start.Value),
		), tight.Source)
		if standing == Good && limit == 0 {
			j.result(part, "", Open, fact.New("result.pressure-limit-unknown"), unitLabel)
		}
	}
}

// pressureTest is what two readings of nitrogen hold, each as good as usual instruments where
// it says nothing of that.
func pressureTest(first, last *Reading) charge.PressureTest {
	test := charge.PressureTest{
		Start: *first.Pressure, End: *last.Pressure, StartGas: *first.Gas, EndGas: *last.Gas,
		Held: last.At - first.At,
	}
	in := satline.DefaultInstruments()
	for _, p := range []*quantity.Uncertain[quantity.GaugePressure]{&test.Start, &test.End} {
		if p.Std == 0 {
			p.Std = float64(in.Gauge)
		}
	}
	for _, t := range []*quantity.Uncertain[quantity.Temperature]{&test.StartGas, &test.EndGas} {
		if t.Std == 0 {
			t.Std = float64(in.Clamp)
		}
	}
	return test
}

const secondsPerYear = 365.25 * 24 * 3600

// joints judges the leak tests of joints made on site.
func (j *judge) joints() {
	for i, k := range j.o.Joints {
		part := fmt.Sprintf("joints[%d]", i)
		limit := j.o.Machine.LowSideDesign
		if limit == 0 {
			j.result(part, "next.joints", Open, fact.New("result.joint-limit-unknown"), unitLabel)
			continue
		}
		if k.Applied > limit {
			j.result(part, "next.joints", Dangerous, fact.New("result.pressure-over-limit",
				fact.Amount("shown", k.Applied), fact.Amount("limit", limit)), unitLabel)
			continue
		}
		v, err := charge.JointTest{
			Allowable: limit, Applied: k.Applied, Found: k.Found,
			Sensitivity: quantity.MassFlow(float64(k.PerYear) / secondsPerYear),
		}.Judge()
		if err != nil {
			j.problems.because(outOfRange, part, err)
			continue
		}
		standing := map[charge.TestOutcome]Progress{
			charge.Holds: Good, charge.Leaks: Bad, charge.TestOpen: Open,
		}[v.Outcome]
		j.result(part, "next.joints", standing, v.Fact(), v.Source)
		if standing != Good {
			return
		}
	}
}

// evacuations judges each decay test; one behind a leak that was mended overrules it.
func (j *judge) evacuations() {
	for i, e := range j.o.Evacuations {
		part := fmt.Sprintf("evacuations[%d]", i)
		samples := make([]charge.Sample[quantity.Pressure], len(e.Decay))
		for k, r := range e.Decay {
			samples[k] = charge.Sample[quantity.Pressure]{At: r.At, Value: *r.Vacuum}
		}
		d, err := charge.JudgeDecay(samples, e.Maker)
		if err != nil {
			j.problems.because(outOfRange, part+".decay", err)
			continue
		}
		standing := map[charge.DecayOutcome]Progress{
			charge.Sound: Good, charge.DecayOpen: Open, charge.NotDeepEnough: Bad,
			charge.Moisture: Bad, charge.Leak: Bad,
		}[d.Outcome]
		j.vacuumLeaks = d.Outcome == charge.Leak
		if standing == Bad && i < len(j.o.Evacuations)-1 {
			standing = Found
		}
		f := d.Fact()
		if _, ok := f.Value("time"); !ok {
			f = f.With(fact.Of("time", e.Decay[len(e.Decay)-1].At-e.Decay[0].At))
		}
		j.result(part, "next.evacuate", standing, f, d.Source)
	}
}
