package satline

import (
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/diagnose"
)

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
