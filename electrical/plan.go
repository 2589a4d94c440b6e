package electrical

import (
	"slices"

	"github.com/satline/satline/quantity/fact"
)

// plan puts what is wrong in the order in which it is mended, or asks for what is not known.
func (j *judge) plan() {
	stops := slices.ContainsFunc(j.rep.Dangers, func(d Danger) bool { return d.Stops })
	if stops {
		j.step(lockOut, nil)
	}
	for _, i := range j.order() {
		c := &j.rep.Checks[i]
		if c.Outcome != fact.Wrong || kinds[c.Says.Code].leans && j.explained(i) {
			continue
		}
		if j.rep.Finding.IsZero() {
			j.rep.Finding = c.Says
		}
		if s, ok := j.more[i]; ok {
			j.put(s, &c.Says)
		}
		for _, code := range kinds[c.Says.Code].does {
			if _, own := j.more[i]; !own {
				j.step(code, &c.Says, partValue(c.Part))
			}
		}
		if c.Says.Code == "electrical.overload-open" {
			j.step(whyTripped, nil)
		}
	}
	if n := len(j.rep.Plan); n == 0 || n == 1 && stops {
		j.next()
		return
	}
	if !j.planned(notStarted...) {
		j.step(startAndRead, nil)
	}
}

// order of the checks in the plan: that of the chain, but that a grounded winding is proved
// before anything is fed again.
func (j *judge) order() []int {
	var first, rest []int
	for i := range j.rep.Checks {
		if j.rep.Checks[i].Says.Code == "electrical.grounded" {
			first = append(first, i)
		} else {
			rest = append(rest, i)
		}
	}
	return append(first, rest...)
}

func (j *judge) planned(codes ...fact.Code) bool {
	return slices.ContainsFunc(j.rep.Plan, func(s Step) bool {
		return slices.Contains(codes, s.Do.Code)
	})
}

// notStarted are the steps after which it is not started: their answer comes first.
var notStarted = []fact.Code{
	readSwitches, readCapacitor, readFan, readBoard, proveGround, proveWinding, proveLocked,
}

// explained reports whether a check that leans on others has one before it that is wrong.
func (j *judge) explained(i int) bool {
	c := &j.rep.Checks[i]
	return slices.ContainsFunc(j.rep.Checks[:i], func(o fact.Check) bool {
		if o.Outcome != fact.Wrong {
			return false
		}
		switch o.Part {
		case SupplyPart, ControlPart, ContactorPart, c.Part:
			return true
		}
		return c.Part == CompressorPart && o.Part == OutdoorFanPart
	})
}

func (j *judge) step(code fact.Code, why *fact.Fact, values ...fact.Value) {
	s := ways[code]
	s.Do = fact.New(code, values...)
	j.put(s, why)
}

// put appends a step that is not there yet, and what is done locked out after the lock-out.
func (j *judge) put(s Step, why *fact.Fact) {
	same := func(x Step) bool {
		part, _ := x.Do.Value("part")
		other, _ := s.Do.Value("part")
		return x.Do.Code == s.Do.Code && part == other
	}
	if slices.ContainsFunc(j.rep.Plan, same) {
		return
	}
	locked := slices.ContainsFunc(j.rep.Plan, func(x Step) bool { return x.Stops })
	if s.Locked && !locked {
		j.step(lockOut, nil)
	}
	s.Why = why
	j.rep.Plan = append(j.rep.Plan, s)
}

// next asks for the reading that comes next in the chain, where a motor does not run and
// nothing that was read says why.
func (j *judge) next() {
	stopped, r := j.stopped(), j.r
	supply := len(r.Supply.AtRest)+len(r.Supply.Running) > 0
	// The blower has a feed of its own. What trips or hums is fed, and so is the fan beside it.
	outdoor := slices.ContainsFunc(stopped, func(m named) bool { return m.part != IndoorFanPart })
	outdoors := outdoor && (j.rep.Compressor == 0 || j.rep.Compressor == Silent)
	motors := slices.ContainsFunc(j.rep.Checks, func(c fact.Check) bool {
		return c.Part != SupplyPart && c.Part != ControlPart
	})
	if c := &r.Compressor; j.rep.Compressor == Trips && !supply && len(c.Currents) == 0 &&
		c.ToGround == nil { // nobody starts it once more into a short
		j.step(readGround, nil, partValue(CompressorPart))
		return
	}
	code := fact.Code("")
	switch {
	case len(stopped) == 0 && (motors || r.Compressor.State != 0):
		code = goOn
	case !supply && (outdoor || len(stopped) == 0):
		code = readSupply
	case outdoors && r.Control.Coil == nil, len(stopped) == 0:
		code = readControl
	case outdoors && r.Contactor.PulledIn == nil && len(r.Contactor.Drops) == 0:
		code = seeContactor
	}
	if code != "" {
		j.step(code, nil)
		return
	}
	for _, m := range stopped {
		part := partValue(m.part)
		locked := j.found(m.part, "electrical.fan-stands")
		quiet := m.state == Silent && len(m.Currents) == 0 && m.RunCapacitor == nil
		switch {
		case m.state == Trips && j.wrong("electrical.fan-stands", OutdoorFanPart):
			// Without its fan it trips.
		case r.Nameplate.Inverter && m.part == CompressorPart:
			j.step(readBoard, nil)
		case quiet && m.AtTerminals == nil && !locked:
			j.step(readTerminals, nil, part)
		case (!r.threePhase() || m.part != CompressorPart) && !m.RunCapacitor.judged():
			j.step(asks(m), nil, part)
		case m.Windings == nil:
			j.step(readWindings, nil, part)
		case m.ToGround == nil:
			j.step(readGround, nil, part)
		case m.part == CompressorPart:
			j.step(readCurrents, nil, part)
		default:
			j.step(mendMotor, nil, part)
		}
	}
}

// cautions come before any step.
func (j *judge) cautions() {
	add := func(code fact.Code) { j.rep.Cautions = append(j.rep.Cautions, fact.New(code)) }
	add("electrical.caution.lock-out")
	add("electrical.caution.discharge")
	add("electrical.caution.tester")
	add("electrical.caution.qualified")
	if len(j.r.Control.Across) > 0 || j.wrong("", ControlPart) {
		add("electrical.caution.no-bridge")
	}
	insulated := slices.ContainsFunc(j.motors(), func(m named) bool { return m.ToGround != nil })
	if insulated || j.planned(readGround, findSupply, proveGround) {
		add("electrical.caution.insulation-test")
	}
}
