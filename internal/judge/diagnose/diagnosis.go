package diagnose

import (
	"math"
	"slices"
	"sort"

	"github.com/satline/satline/internal/judge/diagnose/signature"
)

// A Diagnosis is what follows from the evidence.
type Diagnosis struct {
	// Explanations by falling probability; the probabilities of all, with Rest,
	// add to 1. There is none where nothing was read.
	Explanations []Explanation
	// Rest is the probability of the explanations not listed.
	Rest float64
	// Healthy is the probability that nothing is wrong with the machine or the
	// instruments, whatever the weather.
	Healthy float64
	// Decision is what to do by all of it.
	Decision Decision
	// Freeze answers the complaint of a frozen coil; nil where it is none.
	Freeze *Freeze
	// Change compares with the readings before something was done; nil where
	// there are none.
	Change *Change

	// Charge is what is believed of the charge.
	Charge ChargeBelief
	// Weight is the logarithm of how likely such a machine is, and of how likely it reads so; zero
	// unless Evidence.Compared.
	Weight float64

	chances   []float64 // of the signatures, as traits number them
	marginals []Marginal
	sums      []summed
}

// Probability that a signature is present, alone or with another.
func (d *Diagnosis) Probability(signature Code) float64 {
	if t := traitsOf[signature]; t != nil && d.chances != nil {
		return d.chances[t.number]
	}
	return 0
}

// An Explanation is nothing wrong (no causes), one cause or two.
type Explanation struct {
	Causes      []Cause
	Probability float64
	// Signs are the readings for and against it.
	Signs []Sign

	notes []note
}

// A Cause is a signature that is taken to be present.
type Cause struct {
	Signature Code
	Kind      Kind
	// Severity is the likeliest size, in the unit of the signature; see Size.
	Severity float64
	// Capacity is the part of the cooling capacity that it costs, as far as the
	// system model says.
	Capacity float64
	// Faults that make the signature, the likeliest first.
	Faults  []FaultChance
	variant string
	// Fluid is the refrigerant that the readings belong to, where they belong
	// to another.
	Fluid string
}

// A FaultChance is a fault and its probability given its signature.
type FaultChance struct {
	Fault  *Fault
	Chance float64
}

// Infer weighs the evidence.
func Infer(e Evidence) Diagnosis {
	c := open(&e)
	defer c.close()
	c.infer()
	weight := 0.0
	if e.Compared {
		weight = math.Log(e.known().Chance()) + c.evidenceLog()
	}
	if c.seen.n == 0 && !e.Seen.turns() {
		return Diagnosis{Charge: c.chargeBelief(), Weight: weight}
	}
	var change *Change
	if e.Earlier != nil {
		change = c.compareWith(e.Earlier)
	}
	d := c.diagnosis()
	d.Weight = weight
	if change != nil {
		change.revise(&d.Explanations[0])
		d.Change = change
	}
	d.Decision = c.decide(&d.Charge)
	d.Freeze = c.freeze(&d)
	if d.Freeze != nil && d.Contradictory() {
		d.Freeze.Explained = 0 // by readings that are not what they are taken for
	}
	return d
}

// open takes in the evidence and lists the suspects.
func open(e *Evidence) *caseFile {
	c := &caseFile{
		evidence: e,
		clues:    e.clues(),
		table:    signature.For(deviceOf(e.Metering)),
		work:     workspaces.Get().(*workspace),
	}
	w := c.work
	w.taken, w.pulling, w.states, w.numbers = 0, 0, w.states[:0], w.numbers[:0]
	c.suspects, c.states, c.prior = w.suspects[:0], w.tried[:0], w.prior[:0]
	in := e.Input
	superheat, reached := superheatOf(e.Fluid)
	if !reached {
		// The other features hardly depend on it.
		c.noDischarge, in.DischargeLine = true, nil
	}
	r := &c.work.readings
	*r = newReadings(&in, e.Airflow, e.Power, e)
	r.fluid.Superheat = superheat
	r.takeCurrent(e, &c.table.Sound)
	for _, look := range [...]func(*Evidence, *readings) (clue, bool){passedFloor, overLiquid} {
		if k, yes := look(e, r); yes {
			c.clues = append(c.clues, k)
		}
	}
	c.seen, c.machine = &c.work.seen, &c.work.machine
	c.seen.take(r, &c.table.Sound)
	c.bound = r.bound()
	*c.machine = expect(
		c.table, e.known().Weights(), c.seen, append(e.expected(), e.normal(c.seen.weather)...),
	)
	c.addTabled()
	c.countMoves()
	c.addHalts()
	c.addCircumstances()
	c.addInstruments()
	c.short, c.full = c.suspect(Undercharge), c.suspect(Overcharge)
	return c
}

// try is another state of the suspect that add adds.
func (c *caseFile) try() *state {
	w := c.work
	w.states = append(w.states, state{})
	return &w.states[len(w.states)-1]
}

// add makes a suspect with the states that were tried since the last one.
func (c *caseFile) add(signature Code, prior float64) {
	from, to := c.tried, len(c.work.states)
	c.tried = to
	if from == to || prior <= 0 || len(c.suspects) == mostSuspects {
		return
	}
	c.suspects = append(c.suspects, newSuspect(signature, c.evidence, c.clues, c.work))
	if c.evidence.Earlier != nil { // room for what earlier readings are followed to
		c.tried = to + to - from
		c.work.states = slices.Grow(c.work.states, to-from)[:c.tried]
	}
	c.states = append(c.states, c.work.states[from:to:c.tried])
	c.prior = append(c.prior, prior)
}

func (c *caseFile) addTabled() {
	for _, code := range tabled {
		c.trySizes(code)
		c.add(code, traitsOf[code].prior)
	}
}

func (c *caseFile) addInstruments() {
	for _, code := range instrumentSignatures {
		for _, l := range liesOf[code] {
			c.tryLie(l)
		}
		prior := traitsOf[code].prior
		if code == Altitude && c.evidence.AtmosphereAssumed {
			prior = priorAltitude
		}
		c.add(code, prior)
	}
	all := 0.0
	for _, other := range c.evidence.Others {
		all += shareOf(other)
	}
	for _, other := range c.evidence.Others {
		c.tryOther(other, shareOf(other)/all)
	}
	unlisted := c.tryClash()
	unlisted.weight, unlisted.bound = 0.1, c.bound
	c.add(OtherRefrigerant, traitsOf[OtherRefrigerant].prior)
	c.tryClash()
	c.add(readingsClash, clashTraits.prior)
}

// listed is how many explanations are reported with their evidence, unless
// more are likelier than leastListed.
const (
	listed      = 3
	leastListed = 0.03
)

// A bundle is all parts of one explanation, whatever its sizes.
type bundle struct {
	a, b   int
	weight float64
	best   int // the likeliest part
}

// bundles are the explanations, the likeliest first, with the chance of every suspect and that
// of nothing wrong with the machine or the instruments; room is for them.
func (c *caseFile) bundles(
	room []bundle,
) (all []bundle, chance [mostSuspects]float64, healthy float64) {
	var index [mostSuspects + 1][mostSuspects + 1]int16 // of the bundle of a pair, from 1
	all = room[:0]
	for i := range c.parts {
		p := &c.parts[i]
		at := &index[p.a+1][p.b+1]
		if *at == 0 {
			all = append(all, bundle{a: p.a, b: p.b, best: i})
			*at = int16(len(all))
		}
		s := &all[*at-1]
		s.weight += p.weight
		if p.weight > c.parts[s.best].weight {
			s.best = i
		}
		for _, x := range [...]int{p.a, p.b} {
			if x != none {
				chance[x] += p.weight
			}
		}
		if p.a == none || c.suspects[p.a].faults[0].Kind == Circumstance {
			healthy += p.weight
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].weight > all[j].weight })
	return all, chance, healthy
}

// diagnosis tells the mixture by explanation and by signature.
func (c *caseFile) diagnosis() Diagnosis {
	believed := c.chargeBelief()
	bundles, chance, healthy := c.bundles(make([]bundle, 0, 4*mostSuspects))
	d := Diagnosis{
		Healthy: healthy, Rest: 1,
		chances: make([]float64, len(traitsOf)),
		sums:    make([]summed, 0, len(bundles)),
	}
	for a := range c.suspects {
		d.chances[c.suspects[a].number] += chance[a]
	}
	for _, s := range bundles {
		d.sums = append(d.sums, summed{c.signaturesOf(s.a, s.b), s.weight})
	}
	c.chances = make([]FaultChance, 0, mostSuspects)
	d.marginals, d.Charge = c.sumBySignature(&chance), believed
	sound := c.foresee(component{a: none, b: none})
	first := c.foresee(c.parts[bundles[0].best])
	second := first
	if len(bundles) > 1 {
		second = c.foresee(c.parts[bundles[1].best])
	}
	told := 0
	for told < min(len(bundles), 3*listed) &&
		(told < listed || bundles[told].weight >= leastListed) {
		told++
	}
	d.Explanations = make([]Explanation, 0, told)
	signs := make([]Sign, told*c.seen.n)
	for i, s := range bundles[:told] {
		best := &c.parts[s.best]
		x := Explanation{Probability: s.weight, Causes: c.causes(best)}
		room := signs[i*c.seen.n:][:0:c.seen.n]
		switch i {
		case 0:
			x.Signs = c.signs(room, &first, &second, &sound, s.a == none)
		case 1:
			x.Signs = c.signs(room, &second, &first, &sound, s.a == none)
		default:
			own := c.foresee(*best)
			x.Signs = c.signs(room, &own, &first, &sound, s.a == none)
		}
		x.notes = c.notes(s.a, s.b)
		d.Explanations = append(d.Explanations, x)
		d.Rest -= s.weight
	}
	d.Rest = max(0, d.Rest)
	return d
}

// signaturesOf two suspects; that of none is empty.
func (c *caseFile) signaturesOf(a, b int) (of [2]Code) {
	if a != none {
		of[0] = c.suspects[a].signature
	}
	if b != none {
		of[1] = c.suspects[b].signature
	}
	return of
}

// causes of an explanation, by the likeliest of its parts.
func (c *caseFile) causes(best *component) (causes []Cause) {
	if best.a != none {
		causes = append(causes, c.cause(best.a, best.sa, best.a, best.b))
	}
	if best.b != none {
		causes = append(causes, c.cause(best.b, best.sb, best.a, best.b))
	}
	return causes
}

// cause describes suspect a, at its mean severity over the mixture's terms of
// the explanation (x, y).
func (c *caseFile) cause(a, best, x, y int) Cause {
	first := &c.states[a][best]
	out := Cause{
		Signature: c.suspects[a].signature, Severity: first.severity, Fluid: first.fluid,
		Capacity: first.capacity, variant: first.variant,
	}
	sizes := c.sizesTried(a)
	for i := range c.parts {
		switch p := &c.parts[i]; {
		case p.a != x || p.b != y:
		case a == x:
			sizes.take(p.weight, &c.states[a][p.sa])
		default:
			sizes.take(p.weight, &c.states[a][p.sb])
		}
	}
	if v := &sizes.of[sizes.index(first.variant)]; first.gain != nil && v.posterior.weight > 0 {
		out.Severity = v.posterior.spread().Mean
	}
	for _, f := range c.suspects[a].faults {
		out.Kind = max(out.Kind, f.Kind)
	}
	out.Faults = c.faultChances(a, &sizes)
	return out
}

// NotEnough reports whether nothing was read that anything follows from.
func (d *Diagnosis) NotEnough() bool { return len(d.Explanations) == 0 }

// Contradictory reports whether it is likeliest that the readings cannot all be true.
func (d *Diagnosis) Contradictory() bool {
	if d.NotEnough() {
		return false
	}
	causes := d.Explanations[0].Causes
	return len(causes) == 1 && causes[0].Signature == readingsClash
}
