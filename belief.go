package satline

import (
	"cmp"
	"math"
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/diagnose/population"
	"github.com/satline/satline/internal/judge/diagnose/signature"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// belief is what is believed of the machine, its charge and its instruments, by everything
// that is known.
type belief struct {
	diagnose.Diagnosis
	doubts []readcheck.Doubt
	// spoiled are the conditions in which the readings are not those of the machine as it
	// usually runs, the first to mend first.
	spoiled []charge.Obstacle
}

// believe weighs everything together.
func believe(p *prepared, s *settled, d *Derived, t *targeted, mode ModeFound) (belief, error) {
	input := inputOf(p, &s.readings, d, mode.Mode)
	b := belief{doubts: readcheck.Check(input)}
	for _, o := range t.obstacles {
		if o.Spoils {
			b.spoiled = append(b.spoiled, o)
		}
	}
	if mode.Mode == Cooling {
		evidence := evidenceOf(p, s, input, t)
		evidence.Doubts = b.doubts
		earlier, err := earlierOf(p, mode.Mode)
		if err != nil {
			return b, err
		}
		evidence.Earlier = earlier
		evidence.Moved = movedBefore(p.visit.Moves, earlier)
		b.Diagnosis = diagnose.Infer(evidence)
		if !p.ofComfort() && !b.present(diagnose.OtherRefrigerant) {
			// The models of comfort cooling know no such machine; but that the readings suit
			// another refrigerant than the one named is worth knowing.
			b.Diagnosis = diagnose.Diagnosis{}
		}
	}
	return b, nil
}

// chargeVerdict says what is believed of the charge, or why it is not judged.
func chargeVerdict(
	p *prepared, b *belief, s *settled, t *targeted, mode ModeFound, dangers []Danger,
) ChargeVerdict {
	v := ChargeVerdict{Outcome: ChargeNotJudged, Reading: t.reading, Missing: t.wanting}
	because := func(why fact.Fact) { v.Why = append(v.Why, why) }
	if p.unwell() {
		because(fact.New("charge.electrical-first"))
		return v
	}
	switch {
	case mode.Mode != Cooling:
		because(mode.Says)
	case !s.later:
		because(fact.New("charge.read-before-move"))
	case s.moving():
		because(s.steadiness.Says)
	}
	if mode.Mode == Cooling {
		for _, o := range b.spoiled {
			because(o.Says)
		}
	}
	for _, x := range dangers {
		if x.Stops && mode.Mode == Cooling &&
			!b.present(diagnose.NextToEmpty, diagnose.Undercharge) {
			because(x.Says)
		}
	}
	if len(v.Why) > 0 {
		return v
	}
	if lie, wrong := b.wrongInstrument(t.method); wrong {
		because(fact.New("charge.instrument-first", fact.Of("cause", term("cause", string(lie)))))
		return v
	}
	if b.Verdict == diagnose.NotEnough {
		if len(t.wanting) > 0 {
			because(
				fact.New(
					"charge.not-measured", fact.Of("method", term("method", t.method.String())),
					fact.Of("readings", readingTerms(t.wanting)),
				),
			)
		} else {
			because(fact.New("charge.no-readings"))
		}
		return v
	}
	if b.Verdict == diagnose.Contradictory {
		because(b.contradiction())
		return v
	}
	c := b.Charge
	v.Low, v.InBand, v.High = c.Low, c.InBand, c.High
	v.Error = &Ratio{c.Error.Mean, c.Error.Std}
	v.Outcome = chargeOutcomes[c.Call()]
	return v
}

var chargeOutcomes = map[diagnose.ChargeCall]ChargeOutcome{
	diagnose.ChargeOpen: ChargeOpen, diagnose.ChargeLow: ChargeLow,
	diagnose.ChargeInBand: ChargeInBand, diagnose.ChargeHigh: ChargeHigh,
}

// likely is the chance from which a cause is taken to be present, and worth from which it
// is worth a step.
const likely, worth = 0.5, 0.2

// present reports whether a cause is likely.
func (b *belief) present(codes ...diagnose.Code) bool {
	return slices.ContainsFunc(
		codes, func(c diagnose.Code) bool { return b.Probability(c) >= likely },
	)
}

// contradiction is the gravest check that the readings fail, or that no cause gives them.
func (b *belief) contradiction() fact.Fact {
	for _, x := range b.doubts {
		if x.Weight != readcheck.Note {
			return fact.New(fact.Code("doubt."+x.Code), x.Values...)
		}
	}
	return fact.New("charge.contradictory")
}

// wrongInstrument is the instrument or setting that is likely to be wrong of those that the
// charge is read with.
func (b *belief) wrongInstrument(m charge.Method) (diagnose.Code, bool) {
	if b.present(diagnose.OtherRefrigerant) {
		return diagnose.OtherRefrigerant, true
	}
	for _, l := range diagnose.WrongInstruments() {
		if b.present(l.Signature) && slices.ContainsFunc(
			methodFields[m], func(f string) bool { return slices.Contains(l.Readings, f) },
		) {
			return l.Signature, true
		}
	}
	return "", false
}

// inputOf is what the checks and the diagnosis look at.
func inputOf(p *prepared, r *Readings, d *Derived, mode Mode) readcheck.Input {
	return readcheck.Input{
		SuctionPressure: r.SuctionPressure, LiquidPressure: r.LiquidPressure,
		EvaporatingDew: d.EvaporatingDew, CondensingBubble: d.CondensingBubble, CondensingDew: d.CondensingDew,
		SuctionLine: r.SuctionLine, LiquidLine: r.LiquidLine, DischargeLine: r.DischargeLine,
		OutdoorDryBulb: r.OutdoorDryBulb, CondenserLeaving: r.CondenserLeaving,
		ReturnDryBulb: r.ReturnDryBulb, ReturnWetBulb: r.ReturnWetBulb,
		SupplyDryBulb: r.SupplyDryBulb, SupplyWetBulb: r.SupplyWetBulb,
		Atmosphere: p.atmosphere.Pressure.Value,
		Heating:    mode != Cooling,
	}
}

func evidenceOf(p *prepared, s *settled, input readcheck.Input, t *targeted) diagnose.Evidence {
	v, r, c, e := &p.visit, &s.readings, &p.visit.Conditions, &p.visit.Equipment
	out := diagnose.Evidence{
		Input:             input,
		Airflow:           r.Airflow,
		Power:             r.Power,
		ExternalStatic:    r.ExternalStatic,
		Current:           r.CompressorCurrent,
		RatedLoadCurrent:  e.Label.RatedLoadCurrent,
		Fluid:             p.fluid,
		Others:            diagnose.Alternatives(p.fluid),
		Atmosphere:        p.atmosphere.Pressure.Value,
		AtmosphereAssumed: p.atmosphere.Source == SeaLevelAssumed,
		Metering:          e.Metering,
		HeatPump:          e.Arrangement == SplitHeatPump || e.Arrangement == PackageHeatPump,
		NominalCapacity:   e.NominalCapacity,
		RatedAirflow:      e.Label.RatedAirflow,
		MaxExternalStatic: e.Label.MaxExternalStatic,
		Charge:            e.Label.Charge,
		Expected:          expected(e, t),
		Known:             knownOf(e, c),
		Seen: diagnose.Sights{
			FilterDirty: c.FilterDirty, OutdoorCoilDirty: c.OutdoorCoilDirty, CoilIced: c.CoilIced, CoilWet: c.CoilWet,
			PanelsOff: c.PanelsOff, DoorsOpen: c.DoorsOpen, EconomizerOpen: c.EconomizerOpen, FanCycling: c.CondenserFanCycling,
			SealedSystemOpened: c.SealedSystemOpened, OilStains: c.OilStains,
			FrozenComplaint: v.Complaint == FrozenCoil, WaterComplaint: v.Complaint == WaterLeak, NotCoolingComplaint: v.Complaint == NotCooling,
		},
		House:   v.House.faults(),
		NoPairs: v.Scope == VerdictOnly,
	}
	p.seeElectrical(&out)
	for _, n := range e.Label.Normal {
		out.Normal = append(out.Normal, diagnose.NormalReading(n))
	}
	for _, c := range v.Checks {
		out.Answers = append(out.Answers, diagnose.Answer{Code: c.Look, Yes: c.Found})
	}
	return out
}

// knownOf is what is known of how a machine is built and runs.
func knownOf(e *Equipment, c *Conditions) population.Known {
	k := population.Known{
		Year: e.Label.Year, Arrangement: e.Arrangement.known(), SEER: e.Label.SEER,
		Stages: population.Stages(e.Stages), Share: c.CapacityShare,
	}
	if k.SEER == 0 {
		k.SEER = e.Label.SEER2 * population.SEERPerSEER2
	}
	return k
}

// expected is what this machine should read when sound, by label and table.
func expected(e *Equipment, t *targeted) []diagnose.Expectation {
	var out []diagnose.Expectation
	if t.target != nil && t.method == charge.Superheat {
		out = append(
			out,
			diagnose.Expectation{
				Feature: signature.Superheat,
				Value:   float64(t.target.Value.Value),
				Std:     t.target.Value.Std,
				Rule:    t.target.General(),
			},
		)
	}
	if s := e.Label.Subcooling; s != nil {
		out = append(
			out,
			diagnose.Expectation{
				Feature: signature.Subcooling,
				Value:   float64(s.Value),
				Std:     max(s.Std, 1),
				AtRated: true,
			},
		)
	}
	if a := e.Label.Approach; a != nil {
		out = append(
			out,
			diagnose.Expectation{
				Feature: diagnose.Approach,
				Value:   float64(a.Value),
				Std:     max(a.Std, 1),
				AtRated: true,
			},
		)
	}
	return out
}

// movedBefore is the net mass added before the first readings that the diagnosis goes by.
func movedBefore(moves []Move, earlier *diagnose.Earlier) quantity.Mass {
	if earlier != nil {
		moves = moves[:len(moves)-1]
	}
	sum := quantity.Mass(0)
	for _, m := range moves {
		sum += m.Added - m.Recovered
	}
	return sum
}

// earlierOf are the settled readings before the last move, and the move; nil where there
// are none.
func earlierOf(p *prepared, mode Mode) (*diagnose.Earlier, error) {
	n := len(p.visit.Moves)
	if n == 0 || len(p.log) == 0 {
		return nil, nil
	}
	last := p.visit.Moves[n-1]
	var before []LogEntry
	for i := range p.log {
		if p.log[i].At <= last.At {
			before = p.log[:i+1]
		}
	}
	if len(before) == 0 {
		return nil, nil
	}
	before = thinned(before)
	course, err := follow(p, before, charge.MethodFor(p.visit.Equipment.Metering))
	if err != nil {
		return nil, err
	}
	var r Readings
	takeStretch(&r, before, course, deltaCourse{})
	d, err := derive(p, &r)
	if err != nil {
		return nil, nil // what was read then cannot be, and the log says so elsewhere
	}
	action := diagnose.Action{Kind: diagnose.ChargeAdded, Mass: last.Added}
	if last.Recovered > 0 {
		action = diagnose.Action{Kind: diagnose.ChargeRecovered, Mass: last.Recovered}
	}
	return &diagnose.Earlier{
		Input: inputOf(
			p, &r, &d, mode,
		), Airflow: r.Airflow, Power: r.Power, Done: []diagnose.Action{action},
	}, nil
}

// findings lists the causes that may be present, the likeliest first, each with all of its
// chance, alone and beside others.
func (b *belief) findings() []Finding {
	const least, most = 0.05, 6
	if b.Verdict == diagnose.NotEnough || len(b.Explanations) == 0 {
		return nil
	}
	out := []Finding{}
	sound := Finding{
		Cause:  "sound",
		Chance: b.Healthy,
		Says:   fact.New("finding.sound", fact.Of("chance", fact.Share(b.Healthy))),
	}
	for i := range b.Explanations {
		if x := &b.Explanations[i]; len(x.Causes) == 0 {
			sound.For, sound.Against = x.Side(1), x.Side(-1)
			break
		}
	}
	out = append(out, sound)
	for _, m := range b.Marginals() {
		if m.Chance < least {
			continue
		}
		f := Finding{Cause: string(m.Signature), Chance: m.Chance, Says: b.findingFact(&m)}
		for _, x := range m.Faults {
			f.Faults = append(f.Faults, FaultChance{string(x.Fault.Code), x.Chance})
		}
		for i := range b.Explanations {
			if x := &b.Explanations[i]; slices.ContainsFunc(
				x.Causes, func(c diagnose.Cause) bool { return c.Signature == m.Signature },
			) {
				f.For, f.Against = x.Side(1), x.Side(-1)
				break
			}
		}
		out = append(out, f)
	}
	slices.SortStableFunc(out, func(x, y Finding) int { return cmp.Compare(y.Chance, x.Chance) })
	return out[:min(most, len(out))]
}

// findingFact names a cause with its chance and, where that can be told, its size.
func (b *belief) findingFact(m *diagnose.Marginal) fact.Fact {
	f := fact.New(
		fact.Code("finding."+string(m.Signature)), fact.Of("chance", fact.Share(m.Chance)),
	)
	if size, ok := m.Size(); ok {
		f = f.With(size)
	}
	for i := range b.Explanations {
		for _, c := range b.Explanations[i].Causes {
			if c.Signature == m.Signature && c.Fluid != "" {
				return f.With(fact.Of("fluid", c.Fluid))
			}
		}
	}
	return f
}

// changeVerdict compares with the readings before the last move; nil where they have not
// answered yet.
func (b *belief) changeVerdict(s *settled) *ChangeVerdict {
	c := b.Change
	if c == nil || s.moving() || !s.later {
		return nil
	}
	out := &ChangeVerdict{
		AsExpected: c.AsSaid,
		Chance:     c.Chance,
		Revised:    c.Revised,
		Says:       c.Fact(),
	}
	for _, m := range c.Moves {
		if f, worth := m.Fact(); worth {
			out.Moved = append(out.Moved, f)
		}
	}
	return out
}

// ofInstrument reports whether a cause is that of a wrong instrument.
func ofInstrument(code diagnose.Code) bool {
	return slices.ContainsFunc(
		diagnose.WrongInstruments(), func(f diagnose.Fault) bool { return f.Signature == code },
	)
}

// judged lists the readings in the order of readingFields; each takes the gravest of the
// doubts that touch it, and the chance that its instrument is wrong.
func (b *belief) judged(s *settled) []JudgedReading {
	rank := []Belief{Believed, Unusual, Doubted, Impossible}
	out := []JudgedReading{}
	for _, f := range readingFields {
		value, ok := f.value(&s.readings)
		if !ok {
			continue
		}
		r := JudgedReading{
			Field:   f.name,
			Value:   value,
			Belief:  Believed,
			Settled: s.fromLog[f.name],
		}
		raise := func(to Belief) {
			if slices.Index(rank, to) > slices.Index(rank, r.Belief) {
				r.Belief = to
			}
		}
		for _, d := range b.doubts {
			if slices.Contains(d.Fields, f.name) {
				r.Why = append(r.Why, fact.Code("doubt."+d.Code))
				raise(beliefs[d.Weight])
			}
		}
		for _, l := range diagnose.WrongInstruments() {
			if slices.Contains(l.Readings, f.name) {
				r.Lies += b.Probability(l.Signature)
			}
		}
		if r.Lies = math.Min(r.Lies, 1); r.Lies >= likely {
			raise(Doubted)
		}
		out = append(out, r)
	}
	return out
}

var beliefs = map[readcheck.Weight]Belief{
	readcheck.Note:       Unusual,
	readcheck.Doubtful:   Doubted,
	readcheck.Impossible: Impossible,
}

// doubtsOf words the checks that the readings fail.
func (b *belief) doubtsOf() []Doubt {
	var out []Doubt
	for _, d := range b.doubts {
		code := fact.Code("doubt." + d.Code)
		out = append(out, Doubt{
			Says: fact.New(code, d.Values...), Fields: d.Fields, Belief: beliefs[d.Weight],
			Mend: fact.New(code + ".mend"),
		})
	}
	return out
}

func readingTerms(fields []string) fact.Terms {
	var out fact.Terms
	for _, f := range fields {
		out = append(out, term("reading", f))
	}
	return out
}
