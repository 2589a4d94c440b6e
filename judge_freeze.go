package satline

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/internal/diagnose"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// judgeFreeze says how near the coil is to freezing and what would freeze it:
// a cool night, a low set-point, less air. It stands on a coil of common make
// for the nominal capacity, unless the machine's own is known.
func (j *job) judgeFreeze() {
	j.judgeSurface()
	if j.frozen == nil {
		return
	}
	if j.freeze == nil {
		j.freeze = &FreezeVerdict{Outcome: "not judged"}
	}
	if j.visit.Conditions.CoilIced && !j.frozen.Explains() {
		j.freeze.Why = []string{"readings taken on ice do not tell what began it: thaw the coil, and read again after a full run"}
		return
	}
	j.freeze.Why = j.frozen.Texts(j.visit.Units, j.freeze.Surface != nil)
	rule := airside.IcingText(j.visit.Units)
	told := slices.ContainsFunc(j.freeze.Reasons, func(s string) bool { return strings.Contains(s, rule) })
	for i, s := range j.freeze.Why {
		if strings.Contains(s, rule) {
			if told {
				j.freeze.Why[i] = strings.Replace(s, rule, "the same rule", 1)
			}
			told = true
		}
	}
}

func (j *job) judgeSurface() {
	r, e := &j.readings, &j.visit.Equipment
	flow, taken := j.airflow()
	if j.visit.Conditions.Heating || j.forbidden("run-short") || e.NominalCapacity == 0 || flow == nil ||
		r.ReturnDryBulb == nil || r.ReturnWetBulb == nil || j.derived.EvaporatingDew == nil {
		return
	}
	if worst := gravest(j.doubts, "returnDryBulb", "returnWetBulb", "suctionPressure"); worst == Doubted || worst == Impossible {
		return
	}
	rated := e.Label.RatedAirflow
	if rated == 0 {
		rated = usualAirflow(e.NominalCapacity)
	}
	coil, err := airside.RatedCoil(e.NominalCapacity, rated)
	if err != nil {
		return
	}
	frost, err := airside.JudgeFrost(airside.FrostReadings{
		Return:      airside.AirAt{DryBulb: *r.ReturnDryBulb, WetBulb: *r.ReturnWetBulb, Atmosphere: j.atmosphere.Pressure},
		Airflow:     *flow,
		Evaporating: *j.derived.EvaporatingDew,
		Coil:        coil,
	})
	if err != nil {
		return
	}
	j.freeze = &FreezeVerdict{
		Outcome: frost.Outcome.String(),
		Surface: &frost.Surface,
		Margin:  &frost.Margin,
		Chance:  max(frost.SurfaceChance, airside.IcingChance(*j.derived.EvaporatingDew)),
		Reasons: frost.Reasons(j.visit.Units),
	}
	if taken != "" {
		j.freeze.Reasons = append(j.freeze.Reasons, fmt.Sprintf("the airflow was not measured and is taken as %s%s", flow.Format(j.visit.Units), taken))
	}
	if r.OutdoorDryBulb != nil {
		j.wouldFreeze(coil, flow.Value)
	}
}

// wouldFreeze looks for what would bring the coil to freezing, and what the
// usual controls would change.
func (j *job) wouldFreeze(coil airside.Coil, flow quantity.VolumeFlow) {
	r := &j.readings
	air, err := psychro.FromWetBulb(r.ReturnDryBulb.Value, r.ReturnWetBulb.Value, j.atmosphere.Pressure.Value)
	if err != nil {
		return
	}
	at := airside.Conditions{Return: air, Airflow: flow, Outdoor: r.OutdoorDryBulb.Value}
	plant, err := airside.SeenAt(coil, at, j.derived.EvaporatingDew.Value)
	if err != nil {
		return
	}
	limits, err := airside.FindFreezeLimits(plant, at)
	if err != nil {
		return
	}
	if !j.visit.Conditions.CoilIced { // else the readings are those of the ice
		j.freeze.Would = limits.Reasons(j.visit.Units)
	}
	if limits.Freezes && limits.ReturnDryBulb == nil && limits.ReturnWetBulb == nil && limits.Outdoor == nil && limits.Airflow == nil {
		return // none of them helps
	}
	if j.freeze.Outcome != airside.FrostForming.String() && j.visit.Complaint != FrozenCoil {
		return
	}
	full := max(flow, usualAirflow(j.visit.Equipment.NominalCapacity))
	remedies, err := airside.FreezeRemedies(plant, at, higherSetPoint, full, heldOutdoor)
	if err != nil {
		return
	}
	for _, x := range remedies {
		text := x.Do
		if x.Change > 0 {
			text += fmt.Sprintf(": the coldest surface %s warmer", x.Change.Format(j.visit.Units))
		}
		if x.Note != "" {
			text += " (" + x.Note + ")"
		}
		j.freeze.Instead = append(j.freeze.Instead, text)
	}
}

// What a customer bears of a higher set-point, and the weather that a head-pressure
// control makes the condenser feel. Common practice, no source.
const (
	higherSetPoint = quantity.TemperatureDelta(3 / 1.8)
	heldOutdoor    = quantity.Temperature((75 + 459.67) / 1.8)
)

// airflow is the measured one, or the rated or usual one with a wide doubt,
// less what the likeliest cause says is missing of it. Taken says in words what
// an unmeasured one stands on.
func (j *job) airflow() (flow *quantity.Uncertain[quantity.VolumeFlow], taken string) {
	e := &j.visit.Equipment
	full, taken := e.Label.RatedAirflow, ", the label's"
	switch {
	case j.readings.Airflow != nil:
		return j.readings.Airflow, ""
	case full == 0 && e.NominalCapacity == 0:
		return nil, ""
	case full == 0:
		full, taken = usualAirflow(e.NominalCapacity), ", the usual 400 CFM (190 L/s) per ton"
	}
	found := full
	if d := j.diagnosis; d != nil && d.Verdict == diagnose.Faulty {
		for _, c := range d.Explanations[0].Causes {
			if c.Signature == diagnose.LowIndoorAir {
				lacking := math.Round(20*c.Severity) / 20 // as it is told
				found = full * quantity.VolumeFlow(1-lacking)
				taken += fmt.Sprintf(" less the %.0f %% that look missing", 100*lacking)
			}
		}
	}
	u := found.PlusMinus(airflowDoubt * full)
	return &u, taken
}

// airflowDoubt is the standard uncertainty of an airflow that was not measured, as a
// part of the full one (common practice, no source).
const airflowDoubt = 1. / 6

// usualAirflow is 400 CFM a ton (common practice, no source).
func usualAirflow(capacity quantity.Power) quantity.VolumeFlow {
	return quantity.CFM(400 * capacity.Tons())
}
