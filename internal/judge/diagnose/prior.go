package diagnose

import (
	"math"

	"github.com/satline/satline/quantity/fact"
)

// priorSound is how common it is that nothing is wrong, beside the priors of the signatures.
const priorSound = 0.36

// priorAltitude is the weight of a wrong atmosphere where nobody stated it.
const priorAltitude = 0.03

// severityPrior is how common the levels of a cause are, the mildest first.
func severityPrior(levels int) []float64 { return severityPriors[levels] }

var severityPriors = func() (all [mostLevels + 1][]float64) {
	for n := range all {
		for i := range n {
			all[n] = append(all[n], math.Exp(-0.35*float64(i)))
		}
		normalize(all[n])
	}
	return all
}()

// A sight is something seen, heard or measured elsewhere than at the ports,
// that some faults are known by.
type sight struct {
	code string
	// usual is the chance of noting it on any machine, of the chance where the
	// fault (or any fault of the signature) is present.
	usual float64
	of    map[Code]float64
	seen  func(*Evidence) bool
}

// sights with their chances; common practice, no source.
var sights = []sight{
	{"filter-dirty", 0.12, map[Code]float64{"filter": 0.9, "iced-coil": 0.3},
		func(e *Evidence) bool { return e.Seen.FilterDirty }},
	{"outdoor-coil-dirty", 0.12, map[Code]float64{"condenser-coil": 0.85, "condenser-fan": 0.15},
		func(e *Evidence) bool { return e.Seen.OutdoorCoilDirty }},
	{"coil-iced", 0.02, map[Code]float64{
		"iced-coil": 0.95, "filter": 0.2, "blower": 0.2, "ducts": 0.15, "indoor-coil": 0.15,
		Undercharge: 0.15, Restriction: 0.15, LowLoad: 0.25, LowAmbient: 0.25, Overfeed: 0.1},
		func(e *Evidence) bool { return e.Seen.CoilIced }},
	{"economizer-open", 0.03, map[Code]float64{Economizer: 0.99},
		func(e *Evidence) bool { return e.Seen.EconomizerOpen }},
	{"circuit-opened", 0.08, map[Code]float64{
		NonCondensables: 0.75, "wrong-refrigerant": 0.6, Overcharge: 0.2, Undercharge: 0.12,
		NextToEmpty: 0.12, "compressor-backwards": 0.15,
		"liquid-line-restriction": 0.2, "restrictor-small": 0.2, "restrictor-large": 0.25},
		func(e *Evidence) bool { return e.Seen.SealedSystemOpened }},
	{"charge-weighed", 0.002, map[Code]float64{
		Undercharge: 1e-4, NextToEmpty: 1e-5, Overcharge: 1e-4, NonCondensables: 1e-3},
		func(e *Evidence) bool { return e.Seen.ChargeWeighed && e.Moved == 0 && e.Earlier == nil }},
	{"oil-stains", 0.04, map[Code]float64{Undercharge: 0.4, NextToEmpty: 0.4},
		func(e *Evidence) bool { return e.Seen.OilStains }},
	{"complaint-water", 0.03, map[Code]float64{Drain: 0.8, "iced-coil": 0.2, HighIndoorAir: 0.1},
		func(e *Evidence) bool { return e.Seen.WaterComplaint }},
	{"complaint-not-cooling", 0.3, map[Code]float64{
		Undercharge: 0.5, NextToEmpty: 0.95, NotPumping: 0.95, Restriction: 0.5, VaporLeak: 0.6,
		LowIndoorAir: 0.4, CondenserAir: 0.4, ReturnLeak: 0.4,
		NonCondensables: 0.4, OtherRefrigerant: 0.4},
		func(e *Evidence) bool { return e.Seen.NotCoolingComplaint }},
	{"compressor-still", 0.0005, map[Code]float64{compressorStopped: 0.97},
		func(e *Evidence) bool { return e.Seen.CompressorStill }},
	{"compressor-backwards", 0.0005, map[Code]float64{"compressor-backwards": 0.9},
		func(e *Evidence) bool { return e.Seen.CompressorBackwards }},
	{"outdoor-fan-still", 0.0005, map[Code]float64{fanDead: 0.97},
		func(e *Evidence) bool { return e.Seen.OutdoorFanStill }},
	{"blower-still", 0.0005, map[Code]float64{"blower": 0.97},
		func(e *Evidence) bool { return e.Seen.BlowerStill }},
	{"restrictor-smaller", 0.004, map[Code]float64{"restrictor-small": 0.5},
		func(e *Evidence) bool { return boreOver(e) < -otherBore }},
	{"restrictor-larger", 0.004, map[Code]float64{"restrictor-large": 0.5},
		func(e *Evidence) bool { return boreOver(e) > otherBore }},
	{"static-high", 0.15, map[Code]float64{
		"filter": 0.7, "ducts": 0.8, "indoor-coil": 0.3, "blower": 0.03, HighIndoorAir: 0.2},
		func(e *Evidence) bool { _, high := e.StaticHigh(); return high }},
	{"static-low", 0.15, map[Code]float64{
		"blower": 0.6, "filter": 0.02, "ducts": 0.02, "indoor-coil": 0.1, HighIndoorAir: 0.1},
		func(e *Evidence) bool { s := staticOver(e); return s > 0 && s < 0.5 }},
}

// otherBore is how far a restrictor's opening is from that of the label, relative, before it is
// another part: restrictors are numbered in steps of about 4 % of it (common practice, no source).
const otherBore = 0.05

// boreOver is the opening of the restrictor that is fitted over that of the label, less one; zero
// where one of the two was not read, or the device is not fixed.
func boreOver(e *Evidence) float64 {
	if !hasFixed(e) || e.Bore <= 0 || e.RatedBore <= 0 {
		return 0
	}
	ratio := float64(e.Bore / e.RatedBore)
	return ratio*ratio - 1
}

// StaticHigh says that the blower works against more than its limit; false where it does not,
// or where the static pressure was not read.
func (e *Evidence) StaticHigh() (fact.Fact, bool) {
	return fact.New("sight.static-high"), staticOver(e) > 1.05
}

// staticOver is the external static pressure over its limit, by default
// 0.5 in w.c. (common practice for residential blowers, no source); zero where
// it was not read.
func staticOver(e *Evidence) float64 {
	if e.ExternalStatic == nil {
		return 0
	}
	limit := float64(e.MaxExternalStatic)
	if limit <= 0 {
		limit = 124.5
	}
	return float64(e.ExternalStatic.Value) / limit
}

// A clue is a sight that was seen, or what a test said.
type clue struct {
	code  fact.Code
	usual float64
	of    map[Code]float64
	// absent says that it was looked for and is not there.
	absent bool
	// doubt is the chance that it was not seen at all.
	doubt float64
}

// clues of a case: what was seen, and what was found by looking for it.
func (e *Evidence) clues() []clue {
	var out []clue
	for i := range sights {
		if s := &sights[i]; s.seen(e) {
			out = append(out, clue{code: fact.Code("sight." + s.code), usual: s.usual, of: s.of})
		}
	}
	for _, a := range e.Answers {
		if t := lookupTest(a.Code); t != nil {
			out = append(out, clue{code: t.answer(a.Yes), usual: t.usual, of: t.of, absent: !a.Yes})
		}
	}
	return out
}

// chance of the thing where a fault is present, whether it was there or not.
func (k *clue) chance(f *Fault) float64 {
	if p, ok := k.of[f.Code]; ok {
		return p
	}
	if p, ok := k.of[f.Signature]; ok {
		return p
	}
	return k.usual
}

// as turns the chance of the thing into that of the clue.
func (k *clue) as(p float64) float64 {
	if k.absent {
		p = 1 - p
	}
	return k.doubt + (1-k.doubt)*p
}

// A suspect is a signature with the chances of its faults and of each clue.
type suspect struct {
	signature Code
	*traits
	faults  []*Fault
	decided uint64 // the tests that decide about it, as in decidedBy
	// share of each fault after all clues; they add to 1.
	share []float64
	// notes is the chance of what each clue is about given the signature and the clues
	// before it.
	notes []float64
}

func newSuspect(signature Code, e *Evidence, clues []clue, w *workspace) suspect {
	s := suspect{
		signature: signature, traits: traitsOf[signature], faults: faultsOf(signature, e),
	}
	s.decided = decidedBy[s.faults[0].index]
	s.share, s.notes = w.number(len(s.faults)), w.number(len(clues))
	for i, f := range s.faults {
		s.share[i] = f.Share
	}
	normalize(s.share)
	// Each clue weighs the faults anew before the next is asked for: a path that was seen
	// clear leaves the blower, and what else would show there no longer speaks.
	for j := range clues {
		for i, f := range s.faults {
			s.notes[j] += s.share[i] * clues[j].chance(f)
		}
		for i, f := range s.faults {
			s.share[i] *= clues[j].as(clues[j].chance(f))
		}
		normalize(s.share)
	}
	return s
}

func normalize(w []float64) {
	sum := 0.0
	for _, x := range w {
		sum += x
	}
	for i := range w {
		if sum > 0 {
			w[i] /= sum
		}
	}
}

// logClues is the log likelihood of all clues, given one or two suspects; each
// shows what a clue is about independently of the other.
func (c *caseFile) logClues(a, b *suspect) float64 {
	sum := 0.0
	for j := range c.clues {
		k := &c.clues[j]
		p := k.usual
		switch {
		case a != nil && b != nil:
			p = max(a.notes[j], b.notes[j], 1-(1-a.notes[j])*(1-b.notes[j])/(1-k.usual))
		case a != nil:
			p = a.notes[j]
		}
		sum += math.Log(k.as(p))
	}
	return sum
}
