package electrical

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// band returns the limits of the supply: those that the label prints, or 10 % about what it
// rates.
func (n *Nameplate) band() (low, high quantity.Voltage, from fact.Source, ok bool) {
	low, high, from = n.MinVoltage, n.MaxVoltage, label
	if n.Voltage > 0 {
		if low == 0 {
			low, from = n.Voltage*(1-mostVoltageOff), voltageBand
		}
		if high == 0 {
			high, from = max(n.Voltage, n.HighVoltage)*(1+mostVoltageOff), voltageBand
		}
	}
	return low, high, from, low > 0 && high > 0
}

// dead is a supply that is not there, whatever the label says.
func (n *Nameplate) dead(v quantity.Voltage) bool { return v < max(40, n.Voltage/5) }

func (j *judge) supply() {
	s, n := &j.r.Supply, &j.r.Nameplate
	if n.dead(highestOr(s.AtRest, n.Voltage+40)) {
		j.add(
			SupplyPart, "electrical.supply-dead", fact.Amount("measured", highest(s.AtRest).Value),
		)
		return
	}
	j.level("electrical.at-rest", s.AtRest, "electrical.supply-low")
	j.level("electrical.running", s.Running, "electrical.supply-low-running")
	if len(s.Starting) > 0 && n.Voltage > 0 {
		v, least := sureVolts(lowest(s.Starting)), n.Voltage*leastAtStart
		if sideOf(v, least, quantity.Voltage(most)) == below {
			j.add(SupplyPart, "electrical.supply-low-starting",
				fact.Amount("measured", v.Value), fact.Amount("low", least))
		}
	}
	if len(s.AtRest) > 0 && len(s.Running) > 0 {
		rest, run := mean(s.AtRest), mean(s.Running)
		drop := quantity.Ratio((rest - run) / rest)
		code := fact.Code("electrical.drop-within")
		if drop > mostDrop {
			code = "electrical.drop-large"
		}
		j.add(SupplyPart, code, fact.Amount("drop", max(0, rest-run)),
			fact.Amount("share", max(0, drop)), fact.Amount("limit", quantity.Ratio(mostDrop)))
	}
	j.phases()
}

// level judges one set of line voltages.
func (j *judge) level(when string, of []volts, low fact.Code) {
	least, top, from, ok := j.r.Nameplate.band()
	if len(of) == 0 || !ok || lost(of) {
		return
	}
	v := sureVolts(lowest(of))
	at := sideOf(v, least, top)
	if up := sureVolts(highest(of)); at == within || at == near {
		if s := sideOf(up, least, top); s != within {
			v, at = up, s
		}
	}
	code := map[side]fact.Code{within: "electrical.supply-within", near: "electrical.supply-near",
		below: low, above: "electrical.supply-high"}[at]
	j.add(SupplyPart, code, termValue("when", when), fact.Amount("measured", v.Value),
		fact.Amount("low", least), fact.Amount("high", top))
	j.from(from)
}

// lost reports whether one of three phases is not there.
func lost(of []volts) bool {
	return len(of) == 3 && lowest(of).Value < lostPhase*highest(of).Value
}

// phases judges how equal three voltages are, while it runs where they were read so.
func (j *judge) phases() {
	of := j.r.Supply.Running
	if len(of) != 3 {
		of = j.r.Supply.AtRest
	}
	u, ok := unbalanceOf(of)
	values := []fact.Value{fact.Amount("unbalance", u)}
	switch {
	case !ok:
	case lost(of):
		j.add(SupplyPart, "electrical.phase-lost", fact.Amount("measured", lowest(of).Value),
			fact.Amount("others", highest(of).Value))
	case u > mostUnbalance:
		j.add(SupplyPart, "electrical.unbalance-highest", append(values,
			fact.Amount("limit", quantity.Ratio(mostUnbalance)))...)
	case u > watchedUnbalance:
		part, _ := Derating(u)
		j.add(SupplyPart, "electrical.unbalance-high", append(values,
			fact.Amount("limit", quantity.Ratio(watchedUnbalance)), fact.Amount("power", part))...)
	default:
		j.add(SupplyPart, "electrical.unbalance-within", append(values,
			fact.Amount("limit", quantity.Ratio(watchedUnbalance)))...)
	}
}

func highestOr(of []volts, other quantity.Voltage) quantity.Voltage {
	if len(of) == 0 {
		return other
	}
	return highest(of).Value
}
