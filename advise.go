package satline

import (
	"fmt"
	"slices"
	"strings"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/diagnose"
)

// headline is the whole answer in one sentence.
func (j *job) headline() string {
	sys := j.visit.Units
	switch c := j.charge; c.Outcome {
	case ChargeInBand, ChargeLow, ChargeHigh:
		_, chance := j.likeliest()
		if c.Target == nil {
			return fmt.Sprintf("%s: %s %s beside stacked liquid, %s.", sentence(string(c.Outcome)), c.Method, c.Measured.Format(sys), sure(chance))
		}
		if first := j.first(); first != "" {
			return fmt.Sprintf("%s as it stands: %s %s against a target of %s (band ±%s), %s. %s",
				sentence(string(c.Outcome)), c.Method, c.Measured.Format(sys), c.Target.Value.Format(sys), c.Tolerance.Format(sys), sure(chance), first)
		}
		if hold := j.held(); hold != "" {
			return fmt.Sprintf("It reads %s, %s %s against a target of %s (band ±%s), but move no refrigerant yet: %s.",
				c.Outcome, c.Method, c.Measured.Format(sys), c.Target.Value.Format(sys), c.Tolerance.Format(sys), hold)
		}
		return fmt.Sprintf("%s: %s %s against a target of %s (band ±%s), %s.",
			sentence(string(c.Outcome)), c.Method, c.Measured.Format(sys), c.Target.Value.Format(sys), c.Tolerance.Format(sys), sure(chance))
	case ChargeCannotTell:
		if j.readingsContradict {
			return "The charge cannot be judged: " + j.charge.Reasons[0] + "."
		}
		likely, chance := j.likeliest()
		return fmt.Sprintf("These instruments cannot tell for certain; %s is likeliest (%.0f %%): %s %s against a target of %s (band ±%s).",
			likely, 100*chance, c.Method, c.Measured.Format(sys), c.Target.Value.Format(sys), c.Tolerance.Format(sys))
	case ChargeNotNow:
		if cause, chance, waits := j.mendFirst(); waits && j.unsettled() == "" && (j.mendedFirst || !j.situationSpoiled()) {
			return fmt.Sprintf("%s (%s); the charge cannot be judged before that is mended.", sentence(cause), sure(chance))
		}
		return fmt.Sprintf("Do not charge by %s now: %s.", c.Method, c.Reasons[0])
	}
	return "The charge was not judged: " + j.charge.Reasons[0] + "."
}

// likelyElsewhere is the probability from which a cause that is not the charge is seen
// to although the charge reads in band, and tellElsewhere that from which the headline
// says so.
const likelyElsewhere, tellElsewhere = 0.4, 0.5

// first is what comes before the charge where that reads in band; empty where nothing
// does.
func (j *job) first() string {
	if j.charge.Outcome != ChargeInBand {
		return ""
	}
	if cause, chance, waits := j.mendFirst(); waits {
		return fmt.Sprintf("%s (%s) is to be mended first.", sentence(cause), sure(chance))
	}
	if o, ok := j.dirt(); ok {
		return closed(sentence(o.Instead))
	}
	if d := j.diagnosis; d != nil && d.Verdict == diagnose.Unclear {
		if cause, chance := d.Elsewhere(tellElsewhere); cause != "" {
			return fmt.Sprintf("%s (%s) is to be looked into first.", sentence(cause), sure(chance))
		}
	}
	return ""
}

// next orders what to do: first the machine is secured where it may harm itself,
// then instruments, then the causes in the order of repair, then the charge.
func (j *job) next() []Step {
	var out []Step
	add := func(do, why string) {
		do = closed(sentence(do))
		if !slices.ContainsFunc(out, func(s Step) bool { return s.Do == do }) {
			out = append(out, Step{Do: do, Why: why})
		}
	}
	for _, d := range j.doubts {
		if grave(d) && !j.explained(d) {
			add(d.Mend, d.Text)
		}
	}
	if other := j.otherSide(); other != "" {
		add("read the "+other+" as well", "superheat alone does not tell a wrong charge from a restriction or a metering device of the wrong size; the subcooling beside it does")
	}
	why := ""
	if len(out) == 0 && (j.diagnosis == nil || j.diagnosis.Verdict != diagnose.Faulty) {
		why = j.hold(add)
	}
	j.mendDirt(add)
	elsewhere := j.mend(add)
	if j.charge.Outcome != ChargeNotNow || j.mendedFirst {
		j.mendDoubts(add)
	}
	switch c := j.charge; c.Outcome {
	case ChargeNotMeasured, ChargeNotNow:
		if j.mendedFirst && len(out) > 0 {
			add("let the machine settle, take all readings again, and judge the charge again", "the steps above move the "+c.Method+" by themselves")
			break
		}
		for i, s := range c.Instead {
			add(j.afterThaw(s), c.Reasons[min(i, len(c.Reasons)-1)])
		}
		if c.Outcome == ChargeNotNow {
			j.mendDoubts(add)
		}
		if o, ok := j.forbiddenButWeighable(); ok {
			out = append(out, j.weighInSteps(o.Reason)...)
		}
	case ChargeCannotTell:
		if !j.readingsContradict {
			likely, chance := j.likeliest()
			add("leave the charge as it is until a better reading decides", fmt.Sprintf("%s is likeliest, and at %.0f %% not sure enough to move refrigerant by", likely, 100*chance))
		}
		for _, s := range c.Instead {
			why := "the uncertainty of the readings is as wide as the band they are to be judged by"
			if j.readingsContradict {
				why = "a charge moved by a wrong reading is a wrong charge"
			}
			add(s, why)
		}
	case ChargeInBand:
		if len(out) == 0 {
			add("leave the charge as it is; write the readings down", "the charge is in band")
		}
	case ChargeLow, ChargeHigh:
		if why != "" {
			add("leave the charge alone until this is settled, then take all readings again", why)
			break
		}
		waits := len(out) > 0
		if air := j.airUnproven(); air != "" && !waits {
			add("see that filter, indoor coil, blower and registers are clean and open before refrigerant is moved; measure the airflow if you can", air)
		}
		out = append(out, j.dose(waits)...)
	}
	if c := j.charge.Outcome; !elsewhere && (c == ChargeInBand || c == ChargeCannotTell) {
		j.watch(add)
	}
	if s, ok := j.secured(); ok {
		out = append([]Step{s}, out...)
	}
	return out
}

// explained says that what the technician sees explains a doubt: the readings are
// taken anew anyway.
func (j *job) explained(d Doubt) bool {
	return j.visit.Conditions.CoilIced || j.visit.Conditions.CoilWet && d.Code == "liquid-line-below-outdoor"
}

// watch adds what is to be done about lesser dangers to the compressor, where
// neither a repair nor a dose is due that would change them.
func (j *job) watch(add func(do, why string)) {
	if j.diagnosis != nil && j.diagnosis.Verdict == diagnose.Faulty {
		return
	}
	for _, r := range j.risks {
		if !r.Grave {
			add(r.Do, r.Text)
		}
	}
}

// hold says why refrigerant must not be moved yet although nothing is certain
// enough to be mended first, and adds what can be looked at without opening the
// circuit, or else the measurement that settles it.
func (j *job) hold(add func(do, why string)) string {
	hold := j.held()
	if hold == "" {
		return ""
	}
	looked, settled := false, false
	for i := range j.diagnosis.Order {
		if s := &j.diagnosis.Order[i]; s.Outside() {
			do, why := s.Texts(j.visit.Units)
			add(do, why)
			looked = true
			settled = settled || j.diagnosis.Next != nil && s.Settles(j.diagnosis.Next)
		}
	}
	if j.settle != nil && !settled && !(looked && j.diagnosis.Next.OpensCircuit()) {
		add("take "+j.settle.Take, j.settle.Why)
	}
	return hold
}

// held is why the diagnosis would not have refrigerant moved, where the charge
// reads out of band.
func (j *job) held() string {
	if j.diagnosis == nil || j.charge.Outcome != ChargeLow && j.charge.Outcome != ChargeHigh {
		return ""
	}
	return j.diagnosis.Hold
}

// mend adds the repairs that come before the charge: those of the diagnosis, or
// without one what endangers the compressor most and what the air side needs. It
// reports whether the diagnosis had any.
func (j *job) mend(add func(do, why string)) (elsewhere bool) {
	d, c := j.diagnosis, j.charge.Outcome
	if d != nil && d.Verdict == diagnose.Faulty {
		if j.unsettled() != "" || c == ChargeNotMeasured || j.otherSide() != "" || j.forbidden("circuit-opened") {
			return false // nothing is mended by readings that still move, are missing, or are those of air in the circuit
		}
		for i := range d.Order {
			s := &d.Order[i]
			if s.OfCharge() || s.Measures() || s.Closing && c != ChargeInBand && c != ChargeCannotTell || slices.ContainsFunc(s.For, j.seenDirty) || slices.ContainsFunc(s.For, j.saidByDoubt) {
				continue
			}
			add(s.Texts(j.visit.Units))
		}
		j.mendValve(add)
		return true
	}
	for _, r := range j.risks {
		if r.Grave && !(r.Code == "evaporating-coldest" && j.visit.Conditions.CoilIced) {
			add(r.then(), r.Text)
			break // the others stand under the dangers
		}
	}
	lowAir := false
	if d != nil && (c == ChargeInBand || c == ChargeCannotTell && !j.readingsContradict) {
		for i := range d.Order {
			s := &d.Order[i]
			likely := slices.ContainsFunc(s.For, func(code diagnose.Code) bool { return d.Probability(code) >= likelyElsewhere })
			if !likely || s.OfCharge() || slices.ContainsFunc(s.For, j.seenDirty) {
				continue
			}
			add(s.Texts(j.visit.Units))
			elsewhere = true
			lowAir = lowAir || slices.Contains(s.For, diagnose.LowIndoorAir)
		}
	}
	if !slices.ContainsFunc(j.risks, func(r Risk) bool { return r.Code == "slugging" }) {
		j.mendValve(add)
	}
	if j.air != nil && j.air.Do != "" && !lowAir {
		add(j.air.Do, j.air.Why)
	}
	return elsewhere
}

// mendValve adds what is to be looked at where the superheat of a valve hunts.
func (j *job) mendValve(add func(do, why string)) {
	if j.valve != nil {
		feels := "its bulb (tight, insulated, on clean pipe)"
		if j.visit.Equipment.Metering == EXV {
			feels = "its sensors (tight, insulated, on clean pipe) and their wiring"
		}
		add("see why the valve hunts: "+feels+", the airflow and the load, before the valve itself", j.valve.Text)
	}
}

// mendDirt adds the cleaning of what was seen dirty: there is nothing to find
// out about it.
func (j *job) mendDirt(add func(do, why string)) {
	for _, o := range j.obstacles {
		if isDirt(o) {
			add(o.Instead, o.Reason)
		}
	}
}

func isDirt(o charge.Obstacle) bool {
	return o.Code == "filter-dirty" || o.Code == "outdoor-coil-dirty"
}

// seenDirty says that a finding is what was seen dirty.
func (j *job) seenDirty(code diagnose.Code) bool {
	return slices.ContainsFunc(j.obstacles, func(o charge.Obstacle) bool { return isDirt(o) && diagnosedAs[o.Code] == code })
}

// mendDoubts adds what moves the reading that the charge is judged by and can be
// mended: a dirty filter, an open door. The charge waits for it.
func (j *job) mendDoubts(add func(do, why string)) {
	for _, o := range j.obstacles {
		if !o.MendFirst || o.Forbids || isDirt(o) || j.diagnosisMends(diagnosedAs[o.Code]) ||
			o.Code == "valve-flooding" && gravest(j.doubts, "suctionPressure", "suctionLine") == Impossible {
			continue
		}
		add(o.Instead, o.Reason)
	}
}

// saidByDoubt says that a doubt about the readings has already asked for what is to be
// done about a finding.
func (j *job) saidByDoubt(code diagnose.Code) bool {
	return slices.ContainsFunc(j.doubts, func(d Doubt) bool { return grave(d) && slices.Contains(doubtedAs[d.Code], code) })
}

// doubtedAs are the findings that a grave doubt asks to mend as well.
var doubtedAs = map[string][]diagnose.Code{
	"gauges-swapped":                {diagnose.HosesSwapped},
	"return-saturated":              {diagnose.DryWick},
	"return-dry-bulb-is-a-wet-bulb": {diagnose.DryWick},
	"supply-above-return":           {diagnose.SupplySensor},
}

// diagnosedAs are the findings that stand for the same repair as an obstacle.
var diagnosedAs = map[string]diagnose.Code{
	"filter-dirty":       diagnose.LowIndoorAir,
	"outdoor-coil-dirty": diagnose.CondenserAir,
	"return-cold":        diagnose.LowLoad,
	"valve-flooding":     diagnose.Overfeed,
}

// diagnosisMends reports whether the repair of a finding is among the steps.
func (j *job) diagnosisMends(code diagnose.Code) bool {
	d := j.diagnosis
	return d != nil && d.Verdict == diagnose.Faulty && slices.ContainsFunc(d.Order, func(s diagnose.Step) bool { return slices.Contains(s.For, code) })
}

// otherSide names what is missing of the subcooling beside a superheat that
// reads wrong.
func (j *job) otherSide() string {
	if j.visit.Equipment.Metering != FixedRestrictor || j.charge.Outcome != ChargeLow && j.charge.Outcome != ChargeHigh || j.derived.Subcooling != nil {
		return ""
	}
	return labelled(j.wanting(charge.Subcooling))
}

// airUnproven says why the indoor air has to be looked at before a dose; empty
// where it was measured, or where the split shows enough of it.
func (j *job) airUnproven() string {
	if j.readings.Airflow != nil {
		return ""
	}
	for _, r := range j.risks {
		if r.Code == "evaporating-cold" || r.Code == "evaporating-coldest" {
			return r.Text + ", and too little air does that at any charge"
		}
	}
	if j.air == nil || j.air.TargetSplit == nil {
		return "neither the airflow nor the temperature split is known, and too little air passes for a wrong charge"
	}
	return ""
}

// sure words a probability; nothing a field instrument says is certain.
func sure(p float64) string {
	if p > 0.99 {
		return "more than 99 % sure"
	}
	return fmt.Sprintf("%.0f %% sure", 100*p)
}

// likeliest is the outcome with the largest chance.
func (j *job) likeliest() (ChargeOutcome, float64) {
	c := &j.charge
	switch {
	case c.InBand >= c.Low && c.InBand >= c.High:
		return ChargeInBand, c.InBand
	case c.Low > c.High:
		return ChargeLow, c.Low
	}
	return ChargeHigh, c.High
}

func (j *job) cautions() []string {
	out := []string{
		"The unit's label and its maker's charging chart outrank every general rule here; local codes and licensed practice apply.",
	}
	add := func(cautions []string) {
		for _, c := range cautions {
			c = closed(sentence(c))
			if !slices.Contains(out, c) && !strings.Contains(c, "licensed hands") { // the first says so
				out = append(out, c)
			}
		}
	}
	add(j.fluid.Cautions())
	if d := j.nextDose; d != nil && j.charge.Outcome == ChargeLow {
		add(d.Cautions)
	}
	if w := j.weighing; w != nil {
		add(w.Cautions)
	}
	return append(out,
		"Never heat or overfill a cylinder, and weigh what goes in and out of it.",
		"Mains voltage and charged capacitors are inside: lock out before you reach in.",
	)
}

// closed ends a sentence.
func closed(s string) string {
	if strings.HasSuffix(s, "?") {
		return s
	}
	return s + "."
}

// sentence starts with a capital letter and has no full stop of its own.
func sentence(s string) string {
	s = strings.TrimRight(s, ".")
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}
