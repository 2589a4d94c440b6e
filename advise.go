package satline

import (
	"fmt"
	"slices"
	"strings"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/diagnose"
)

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
	others := len(out)
	elsewhere := j.mend(add)
	repairs := len(out) - others
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
		waits := len(out) > repairs || repairs > 0 && j.waitsForRepairs()
		if hold := j.held(); !waits && hold != "" { // several small doubts, none of them worth a step
			if j.settle != nil {
				add("take "+j.settle.Take, j.settle.Why)
			} else {
				add("take all readings again, with a second instrument where there is one", "no single one of them is likely to be off, and together they leave a doubt")
			}
			add("leave the charge alone until this is settled, then take all readings again", hold)
			break
		}
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

// waitsForRepairs says that the charge waits for what the diagnosis would have seen
// to first. It does not where the diagnosis finds the charge off and holds nothing
// against moving it, and the rest is looked at with the circuit closed.
func (j *job) waitsForRepairs() bool {
	d := j.diagnosis
	if d == nil || d.Verdict != diagnose.Faulty || !d.Explanations[0].OfCharge() || j.held() != "" {
		return true
	}
	return slices.ContainsFunc(d.Order, func(s diagnose.Step) bool {
		return !s.OfCharge() && !s.Measures() && !s.Closing && !s.Outside()
	})
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
