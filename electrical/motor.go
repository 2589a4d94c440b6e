package electrical

import (
	"math"
	"slices"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// motor judges one motor: what feeds it, its windings, its currents.
func (j *judge) motor(m named) {
	if c := m.RunCapacitor; c != nil {
		j.capacitor(m.part, c, false)
	}
	if c := m.StartCapacitor; c != nil {
		j.capacitor(m.part, c, true)
	}
	if v := m.AtTerminals; v != nil {
		code := fact.Code("electrical.terminals-fed")
		if v.Value < openFrom*max(j.r.Nameplate.Voltage, 100) {
			code = "electrical.terminals-dead"
		}
		j.add(m.part, code, fact.Amount("measured", v.Value))
	}
	j.insulation(m)
	if m.Windings != nil {
		j.windings(m)
	}
	if m.Tight {
		j.add(m.part, "electrical.tight")
	}
	j.stalls(m)
	if m.state == Backwards {
		j.backwards(m)
		return
	}
	j.currents(m)
}

// stalls: a fan that stands while the compressor works is a danger by itself.
func (j *judge) stalls(m named) {
	works := j.rep.Compressor == Runs || j.rep.Compressor == Trips
	if m.part != CompressorPart && works && (m.state == Hums || m.state == Silent) {
		j.add(m.part, "electrical.fan-stands")
	}
}

// backwards: what turns the wrong way draws a current that says nothing. Where the fan of three
// phases does too, it is the supply that is swapped.
func (j *judge) backwards(m named) {
	switch three := j.r.threePhase(); {
	case three && j.rep.Compressor == Backwards && j.rep.OutdoorFan == Backwards:
		if m.part == CompressorPart {
			j.add(m.part, "electrical.backwards")
			j.does(swapLines)
		}
	case m.part == CompressorPart:
		j.add(m.part, "electrical.backwards")
		j.does(swapLeads, partValue(m.part))
	default:
		j.add(m.part, "electrical.fan-backwards")
		if three {
			j.does(swapLeads, partValue(m.part))
		} else {
			j.does(turnFan, partValue(m.part))
		}
	}
}

func (j *judge) insulation(m named) {
	if m.ToGround == nil {
		return
	}
	v := j.r.Nameplate.Voltage
	if v == 0 {
		v = quantity.Volts(240)
	}
	least := leastInsulation(v)
	code := fact.Code("electrical.insulation-within")
	switch u := sureOhms(*m.ToGround); {
	case sideOf(u, least, quantity.Resistance(most)) == below:
		code = "electrical.grounded"
	case sideOf(u, soundInsulation, quantity.Resistance(most)) == below:
		code = "electrical.insulation-low"
	}
	j.add(m.part, code, fact.Amount("measured", m.ToGround.Value),
		fact.Amount("least", least), fact.Amount("sound", soundInsulation))
}

func (j *judge) windings(m named) {
	w := m.Windings
	if len(w.Lines) == 3 {
		j.lines(m, w.Lines)
	}
	cr, cs, sr := w.CommonRun, w.CommonStart, w.StartRun
	isOpen := func(u *ohms) bool { return u != nil && u.Value >= openLine }
	common := isOpen(cr) || isOpen(cs)
	both := isOpen(cr) && isOpen(cs) && sr != nil
	switch {
	case common && !isOpen(sr) && (both || m.Hot):
		j.protector(m)
	case common || isOpen(sr):
		j.add(m.part, "electrical.winding-open")
	case cr == nil || cs == nil || sr == nil:
	default:
		sum, whole := cr.Value+cs.Value, sr.Value
		code := fact.Code("electrical.windings-within")
		off := math.Abs(float64(sum - whole))
		slack := sumWithin*float64(max(sum, whole)) + float64(sumSlack)
		for _, u := range []*ohms{cr, cs, sr} {
			slack = math.Hypot(slack, sureOhms(*u).Std)
		}
		if off > slack {
			code = "electrical.windings-off"
		}
		j.add(m.part, code, fact.Amount("sum", sum), fact.Amount("whole", whole))
	}
}

// lines judges the windings of three phases. All of them open is a protector in their middle.
func (j *judge) lines(m named, of []ohms) {
	open := 0
	for _, u := range of {
		if u.Value >= openLine {
			open++
		}
	}
	mid := float64(mean(of))
	off := math.Hypot(mostUneven*mid, sureOhms(highest(of)).Std)
	switch {
	case open == 3:
		j.protector(m)
	case open > 0:
		j.add(m.part, "electrical.winding-open")
	case float64(highest(of).Value)-mid > off || mid-float64(lowest(of).Value) > off:
		j.add(m.part, "electrical.windings-off", fact.Amount("sum", highest(of).Value),
			fact.Amount("whole", lowest(of).Value))
	default:
		j.add(m.part, "electrical.windings-within", fact.Amount("sum", highest(of).Value),
			fact.Amount("whole", lowest(of).Value))
	}
}

// protector: the overload within has opened.
func (j *judge) protector(m named) { j.add(m.part, "electrical.overload-open") }

func (j *judge) currents(m named) {
	if m.state == Hums && len(m.Currents) == 0 {
		j.stands(m)
		return
	}
	if len(m.Currents) == 0 {
		return
	}
	top := sureAmperes(highest(m.Currents))
	measured := fact.Amount("measured", top.Value)
	if float64(top.Value) <= idle(m.Motor) {
		j.add(m.part, "electrical.current-none", measured)
		return
	}
	if j.lines3(m) {
		return
	}
	if lockedAt(m.Motor) || m.state == Hums {
		j.stands(m)
		return
	}
	limit, rated, from, ok := m.limit()
	values := []fact.Value{measured, fact.Amount("rated", rated), fact.Amount("limit", limit)}
	fan := m.part != CompressorPart
	switch {
	case !ok:
	case sideOf(top, quantity.Current(none), limit) == above && fan:
		j.add(m.part, "electrical.fan-current-highest", values...)
	case sideOf(top, quantity.Current(none), limit) == above:
		j.add(m.part, "electrical.current-highest", values...)
		j.from(from)
	case sideOf(top, quantity.Current(none), rated) == above:
		j.add(m.part, "electrical.current-over-rated", values...)
	case !fan && m.state == Runs && top.Value < littleLoad*rated:
		j.add(m.part, "electrical.current-little", values...)
	default:
		j.add(m.part, "electrical.current-within", values...)
	}
}

// limit is what a motor may draw without end, with the rated current; false where the label
// states neither.
func (m named) limit() (limit, rated quantity.Current, from fact.Source, ok bool) {
	rated = m.RatedLoad
	switch {
	case m.MaxContinuous > 0:
		limit, from = m.MaxContinuous, label
		if rated == 0 {
			rated = limit / mostContinuous
		}
	case m.part == CompressorPart:
		limit, from = mostContinuous*rated, overload
	default:
		limit, from = mostOfFan*rated, fanOverload
	}
	return limit, rated, from, limit > 0
}

// stands: the rotor does not turn, and what should start it is not at fault.
func (j *judge) stands(m named) {
	var values []fact.Value
	if len(m.Currents) > 0 {
		values = append(values, fact.Amount("measured", highest(m.Currents).Value))
	}
	j.add(m.part, "electrical.locked", values...)
	switch {
	case j.r.Nameplate.Inverter && m.part == CompressorPart:
		j.does(readBoard)
	case j.r.threePhase() && m.part == CompressorPart:
		j.does(proveLocked)
	case !m.RunCapacitor.judged():
		j.does(asks(m), partValue(m.part))
	case m.part == CompressorPart:
		j.does(freeCompressor)
	default:
		j.does(mendMotor, partValue(m.part))
	}
}

// asks is how the capacitor of a motor is read, with what else is found at a fan.
func asks(m named) fact.Code {
	if m.part == CompressorPart {
		return readCapacitor
	}
	return readFan
}

// judged reports whether its capacitance was read.
func (c *Capacitor) judged() bool {
	return c != nil && (c.Measured != nil || c.Current != nil && c.Voltage != nil || c.Bulged)
}

// lines3 judges how equal three currents are; true where that is all there is to say.
func (j *judge) lines3(m named) bool {
	u, ok := unbalanceOf(m.Currents)
	if !ok {
		return false
	}
	least := lowest(m.Currents)
	values := []fact.Value{fact.Amount("unbalance", u),
		fact.Amount("limit", quantity.Ratio(mostCurrentUnbalance))}
	switch {
	case float64(least.Value) <= idle(m.Motor):
		j.add(m.part, "electrical.single-phase", fact.Amount("measured", least.Value),
			fact.Amount("others", highest(m.Currents).Value))
		return true
	case u > mostCurrentUnbalance && !lockedAt(m.Motor):
		j.add(m.part, "electrical.current-unbalanced", values...)
	default:
		j.add(m.part, "electrical.current-balanced", values...)
	}
	return false
}

func (r *Readings) threePhase() bool {
	return r.Nameplate.Phases == 3 || len(r.Supply.AtRest) == 3 || len(r.Supply.Running) == 3 ||
		len(r.Compressor.Currents) == 3
}

// stopped are the motors that do not run, as far as was seen.
func (j *judge) stopped() []named {
	return slices.DeleteFunc(
		j.motors(), func(m named) bool { return m.state == 0 || m.state == Runs },
	)
}
