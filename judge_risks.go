package satline

import "github.com/satline/satline/charge"

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
