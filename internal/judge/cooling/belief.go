package cooling

import (
	"math"
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// belief is what is believed of the machine, its charge and its instruments, by everything
// that is known.
type belief struct {
	diagnose.Diagnosis
	c *modes.Case
	// headHeld: a control keeps condensing warm in the cold.
	headHeld bool
}

// believe weighs everything together.
func believe(c *modes.Case) *belief {
	evidence := c.Evidence
	evidence.Response = responseOf(c)
	held := slices.ContainsFunc(c.Spoils, holdsHead(c))
	if held {
		evidence.OutdoorDryBulb = nil // the condenser does not feel it
	}
	b := &belief{diagnose.Infer(evidence), c, held}
	if !modes.OfComfort(c.Fluid) && !b.present(diagnose.OtherRefrigerant) {
		// The models of comfort cooling know no such machine; but that the readings suit
		// another refrigerant than the one named is worth knowing.
		b.Diagnosis = diagnose.Diagnosis{Weight: b.Weight}
	}
	if b.plain() || b.leaks() {
		b.Decision.Looks = nil
	}
	b.Decision.Looks = slices.DeleteFunc(b.Decision.Looks, b.cleanedFirst)
	// Both are worth their time: the shorter first, and none stops what the other needs.
	if l := b.Decision.Looks; len(l) == 2 && l[1].Minutes() < l[0].Minutes() {
		l[0], l[1] = l[1], l[0]
	}
	return b
}

// holdsHead finds a control that keeps condensing warm in the cold: by what was told, or, since
// nobody asks for it, where condensing is farther over the air than cold air leaves it but at a
// failed fan, and no higher than controls hold it. Common practice, no source.
func holdsHead(c *modes.Case) func(charge.Obstacle) bool {
	const over, held = quantity.TemperatureDelta(30 / 1.8), quantity.Temperature((110 + 459.67) / 1.8)
	return func(o charge.Obstacle) bool {
		t, air := c.CondensingDew, c.OutdoorDryBulb
		return o.Code == "condenser-fan-cycling" || o.Code == outdoorCold && t != nil &&
			air != nil && t.Value < held && t.Value.Sub(air.Value) > over
	}
}

const outdoorCold = "outdoor-cold"

// cold is the weather where it alone keeps the charge from being judged: what else is wrong shows
// all the same. Nil where it does not, or more does.
func (b *belief) cold() *charge.Obstacle {
	if s := b.c.Spoils; len(s) == 1 && s[0].Code == outdoorCold && !b.NotEnough() {
		return &s[0]
	}
	return nil
}

// plain: a machine that reads sound, and that nobody complains of, is not searched for what would
// not be mended unseen, nor for more once its charge was put right.
func (b *belief) plain() bool {
	d := &b.Decision
	over := d.Act == diagnose.Mend && !b.worthMending(d.Chance) ||
		d.Act == diagnose.Leave && b.c.NetMoved != 0
	return over && b.Healthy >= likely && !b.complains()
}

// worthMending: what is less likely than that nothing is wrong is not taken apart.
func (b *belief) worthMending(chance float64) bool { return chance >= worth && chance > b.Healthy }

func (b *belief) complains() bool {
	s := &b.c.Seen
	return s.FrozenComplaint || s.NotCoolingComplaint || b.c.Complaint == "high bill"
}

// leaks: a leak that was found is mended, however much is missing by now.
func (b *belief) leaks() bool {
	found := slices.Contains(b.c.Answers, diagnose.Answer{Code: leakLook, Yes: true})
	return found && b.present(diagnose.Undercharge)
}

// cleanedFirst says that dirt was seen already that a look is after, or that a reading would be
// taken behind: it is cleaned, and the next readings tell what else there is. What blocks air that
// was measured to be as rated is not looked for, and nothing read that takes longer than the proof
// of a compressor which is doubted.
func (b *belief) cleanedFirst(m *diagnose.Measurement) bool {
	s := &b.c.Seen
	if m.Field() != "" {
		const proof = 6 // minutes
		return s.FilterDirty || s.OutdoorCoilDirty || weak(b.Decision.Signature) && m.Minutes() > proof
	}
	const within = 0.95
	air := b.c.Airflow
	asRated := air != nil && b.c.RatedAirflow > 0 && air.Value >= within*b.c.RatedAirflow
	return (s.FilterDirty || asRated) && m.Answers(diagnose.LowIndoorAir) ||
		s.OutdoorCoilDirty && m.Answers(diagnose.CondenserAir)
}

// weak says that a cause is a compressor that moves too little.
func weak(c diagnose.Code) bool { return c == diagnose.VaporLeak || c == diagnose.NotPumping }

// likely is the chance from which a cause is taken to be present, and worth from which it
// is worth a step.
const likely, worth = 0.5, 0.2

// present reports whether a cause is likely.
func (b *belief) present(codes ...diagnose.Code) bool {
	return slices.ContainsFunc(
		codes, func(c diagnose.Code) bool { return b.Probability(c) >= likely },
	)
}

// misread reports whether an instrument is likely to be wrong.
func (b *belief) misread() bool {
	for _, m := range b.Marginals() {
		if m.Chance >= likely && diagnose.OfInstrument(m.Signature) {
			return true
		}
	}
	return false
}

// starved says that a leak or a restriction is likely, and that nothing tells which: no liquid was
// read.
func (b *belief) starved() bool {
	if b.c.LiquidPressure != nil || b.c.LiquidLine != nil {
		return false
	}
	of := []diagnose.Code{diagnose.Undercharge, diagnose.Restriction, diagnose.NextToEmpty}
	for _, c := range of {
		if b.Probability(c) >= diagnose.CallLow {
			return false
		}
	}
	return b.Any(of...) >= likely
}

// unexplained is the check that readings fail which cannot be true together, where no cause that is
// likely says why; nil for none.
func (b *belief) unexplained() *readcheck.Doubt {
	if b.misread() ||
		b.present(diagnose.NextToEmpty, diagnose.NotPumping, diagnose.OtherRefrigerant) {
		return nil
	}
	for i := range b.c.Doubts {
		x := &b.c.Doubts[i]
		if x.Weight == readcheck.Impossible ||
			b.Contradictory() && x.Weight == readcheck.Doubtful {
			return x
		}
	}
	return nil
}

// wrongInstrument is the instrument or setting that is likely to be wrong of those that the
// charge is read with.
func (b *belief) wrongInstrument() (diagnose.Code, bool) {
	if b.present(diagnose.OtherRefrigerant) {
		return diagnose.OtherRefrigerant, true
	}
	ofMethod := modes.MethodReadings(b.c.Method)
	for _, l := range diagnose.WrongInstruments() {
		if b.present(l.Signature) && slices.ContainsFunc(
			l.Readings, func(f string) bool { return slices.Contains(ofMethod, f) },
		) {
			return l.Signature, true
		}
	}
	return "", false
}

// leastFound is the chance from which a cause is listed, mostFound how many are.
const leastFound, mostFound = 0.05, 6

// findings lists the causes that may be present, the likeliest first, each with all of its
// chance, alone and beside others.
func (b *belief) findings() []modes.Finding {
	if b.NotEnough() {
		return nil
	}
	out := make([]modes.Finding, 0, mostFound)
	sound := modes.Finding{
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
		if m.Chance < leastFound {
			continue
		}
		f := modes.Finding{Cause: string(m.Signature), Chance: m.Chance, Says: b.findingFact(&m)}
		for _, x := range m.Faults {
			f.Faults = append(f.Faults, modes.FaultChance{
				Fault: string(x.Fault.Code), Chance: x.Chance,
			})
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
	likeliestFirst(out)
	return out[:min(mostFound, len(out))]
}

// likeliestFirst puts findings that are nearly in order in order; a sort compiled for them takes
// 4 kB of the page.
func likeliestFirst(all []modes.Finding) {
	for i := range all {
		for k := i; k > 0 && all[k].Chance > all[k-1].Chance; k-- {
			all[k], all[k-1] = all[k-1], all[k]
		}
	}
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

// change compares with the readings before the last move; nil where they have not answered
// yet.
func (b *belief) change() *modes.Change {
	c := b.Change
	if c == nil || !b.c.Moving.IsZero() || b.c.ReadBeforeMove {
		return nil
	}
	out := &modes.Change{
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

// lies are the chances that a reading is of a wrong instrument.
func (b *belief) lies() map[string]float64 {
	out := map[string]float64{}
	for _, l := range diagnose.WrongInstruments() {
		if p := b.Probability(l.Signature); p > 0 {
			for _, name := range l.Readings {
				out[name] = math.Min(1, out[name]+p)
			}
		}
	}
	return out
}

// apparent says that a wrong instrument or setting, or a control of the head, is likely to be all
// there is to a danger.
func (b *belief) apparent(danger string) bool {
	if b.headHeld && danger == "condensing-high" {
		return true
	}
	sum := 0.0
	for _, c := range diagnose.SeemsTo(danger) {
		sum += b.Probability(c)
	}
	return math.Min(1, sum) >= likely
}

// ask is the look or reading that comes before anything is done; nil where nothing is worth
// its time.
func (b *belief) ask() *modes.Question {
	if len(b.Decision.Looks) == 0 || len(b.c.Spoils) > 0 && b.cold() == nil {
		return nil
	}
	m := b.Decision.Looks[0]
	q := &modes.Question{Look: lookCode(m), Field: m.Field(), Take: m.Fact()}
	for i, f := range m.Facts() {
		o := &m.Outcomes[i]
		q.Outcomes = append(q.Outcomes, modes.Outcome{
			Chance: o.Chance, Then: o.Then, ThenChance: o.ThenProbability, Says: f,
		})
	}
	return q
}
