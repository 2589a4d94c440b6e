package satline

import (
	"strings"

	"github.com/satline/satline/charge"
)

// judgeRisks names what endangers the compressor. A machine whose charge may
// not be judged now can still be flooding it.
func (j *job) judgeRisks() {
	if gravest(j.doubts, "suctionPressure", "suctionLine", "liquidPressure") == Impossible {
		return
	}
	d, r := &j.derived, &j.readings
	c := charge.Compressor{
		Units:         j.visit.Units,
		Superheat:     d.Superheat,
		Evaporating:   d.EvaporatingDew,
		Condensing:    j.condensingDew,
		DischargeLine: r.DischargeLine,
		Atmosphere:    j.atmosphere.Pressure.Value,
		Heating:       j.visit.Conditions.Heating,
		Current:       r.CompressorCurrent,
		RatedLoad:     j.visit.Equipment.Label.RatedLoadCurrent,
	}
	for _, s := range []*SteadinessVerdict{j.steadiness, j.valve} {
		if s != nil && s.Of == "superheat" && s.Course.State == charge.Hunting {
			low := s.Course.Low
			c.LowestSuperheat = &low
		}
	}
	if r.SuctionPressure != nil {
		p := j.absolute(*r.SuctionPressure)
		c.Suction = &p
	}
	if r.DischargePressure != nil {
		p := j.absolute(*r.DischargePressure)
		c.Discharge = &p
	} else if r.LiquidPressure != nil {
		p := j.absolute(*r.LiquidPressure)
		c.Discharge = &p
	}
	for _, x := range charge.Risks(c) {
		if j.passing(x.Code) {
			continue
		}
		j.risks = append(j.risks, Risk{Code: x.Code, Grave: x.Grave, Text: x.Text, Why: x.Why, Do: x.Do, Stop: x.Stop})
	}
}

// passing says that a danger is that of a start or of the ice and not of the machine:
// the suction dips for minutes after every start, and a small superheat on an iced
// coil says nothing beside the ice.
func (j *job) passing(code string) bool {
	switch code {
	case "evaporating-coldest", "evaporating-cold":
		return j.forbidden("run-short") && !j.visit.Conditions.CoilIced
	case "superheat-low":
		return j.visit.Conditions.CoilIced
	}
	return false
}

// secured is the step that comes before every other where the machine may harm
// itself as it runs.
func (j *job) secured() (Step, bool) {
	if o, ok := j.iced(); ok {
		thaw, _, _ := strings.Cut(o.Instead, "; ")
		return Step{Do: closed(sentence(thaw)), Why: o.Reason}, true
	}
	for _, r := range j.risks {
		if r.Stop != "" {
			return Step{Do: closed(sentence(r.Stop)), Why: r.Text + "; " + r.Why}, true
		}
	}
	return Step{}, false
}

// iced is the obstacle of an iced coil: thaw it; then read again.
func (j *job) iced() (charge.Obstacle, bool) {
	for _, o := range j.obstacles {
		if o.Code == "coil-iced" {
			return o, true
		}
	}
	return charge.Obstacle{}, false
}

// afterThaw is what is left to do of instead once the coil is being thawed.
func (j *job) afterThaw(instead string) string {
	if o, ok := j.iced(); ok && instead == o.Instead {
		_, instead, _ = strings.Cut(instead, "; ")
	}
	return instead
}

// then is what follows once the machine is secured.
func (r Risk) then() string {
	return strings.TrimPrefix(r.Do, r.Stop+"; ")
}
