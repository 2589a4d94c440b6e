package satline

import (
	"errors"
	"fmt"
	"strings"

	"github.com/satline/satline/airside"
	"github.com/satline/satline/quantity"
)

// judgeAir holds the temperature split against its target and works out the
// capacity, as far as the readings go.
func (j *job) judgeAir() {
	r := &j.readings
	if j.visit.Conditions.Heating {
		return
	}
	j.measureCapacity()
	if r.ReturnDryBulb == nil || r.ReturnWetBulb == nil || r.SupplyDryBulb == nil || j.forbidden("run-short") {
		return
	}
	if worst := gravest(j.doubts, "returnDryBulb", "returnWetBulb", "supplyDryBulb"); worst == Doubted || worst == Impossible {
		j.air = &AirVerdict{Outcome: "not judged", Reasons: []string{"the air readings cannot be believed as they stand"}}
		return
	}
	v, err := airside.JudgeSplit(airside.SplitReadings{ReturnDryBulb: *r.ReturnDryBulb, ReturnWetBulb: *r.ReturnWetBulb, SupplyDryBulb: *r.SupplyDryBulb, Atmosphere: j.atmosphere.Pressure.Value})
	if err != nil {
		reason := err.Error()
		if out := (*quantity.RangeError)(nil); errors.As(err, &out) {
			reason = fmt.Sprintf("no target split for a return of %s dry bulb and %s wet bulb: %s", r.ReturnDryBulb.Value.Format(j.visit.Units), r.ReturnWetBulb.Value.Format(j.visit.Units), out.Advice)
		}
		j.air = &AirVerdict{Outcome: "no target here", Reasons: []string{reason}}
		return
	}
	j.air = &AirVerdict{
		Outcome:     v.Outcome.String(),
		TargetSplit: &v.Target,
		Deviation:   &v.Deviation,
		Tolerance:   v.Tolerance,
		Source:      v.Source,
		Reasons:     v.Reasons(j.visit.Units),
	}
	if v.AirflowFirst() {
		j.air.Do, j.air.Why = strings.Join(v.Do(), ", "), j.air.Reasons[0]
		if v.Outcome == airside.SplitHigh {
			j.air.Do = "see to the air before the charge: look at " + airPath + "; measure the airflow or the external static pressure"
		}
		for _, d := range j.doubts {
			if d.Code == "supply-dry-bulb-is-a-wet-bulb" {
				j.air.Do, j.air.Why = d.Mend, d.Text
				j.air.Reasons = append(j.air.Reasons[:1:1], "as read there is too little air; but the supply may be a wet bulb, so read it again first")
			}
		}
	}
}

// airPath is what the air of the indoor coil passes, in the order to look at it.
const airPath = "the filter, the coil face, the blower wheel and its speed, the dampers, registers and ducts"

// measureCapacity needs the air on both sides of the coil and its flow.
func (j *job) measureCapacity() {
	r := &j.readings
	if r.Airflow == nil || r.ReturnDryBulb == nil || r.ReturnWetBulb == nil || r.SupplyDryBulb == nil || r.SupplyWetBulb == nil {
		return
	}
	c, err := airside.MeasureCapacity(airside.CapacityReadings{
		Return:     airside.AirReading{DryBulb: *r.ReturnDryBulb, WetBulb: *r.ReturnWetBulb},
		Supply:     airside.AirReading{DryBulb: *r.SupplyDryBulb, WetBulb: *r.SupplyWetBulb},
		Airflow:    *r.Airflow,
		Atmosphere: j.atmosphere.Pressure,
	})
	if err != nil {
		// The readings contradict each other, and a doubt has said so.
		return
	}
	for _, p := range []struct {
		to   *derivedPower
		from quantity.Uncertain[quantity.Power]
	}{{&j.derived.TotalCapacity, c.Total}, {&j.derived.SensibleCapacity, c.Sensible}, {&j.derived.LatentCapacity, c.Latent}} {
		value := p.from
		*p.to = &value
	}
	j.derived.Condensate = &c.Condensate
	if c.SensibleHeatRatio != 0 {
		j.derived.SensibleHeatRatio, j.derived.SensibleHeatRatioStd = &c.SensibleHeatRatio, c.SensibleHeatRatioStd
	}
	if r.Power != nil {
		if e, err := airside.EfficiencyOf(c.Total, *r.Power); err == nil {
			j.derived.Efficiency = &e
		}
	}
}
