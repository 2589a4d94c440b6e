package diagnose

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/satline/satline/internal/diagnose/signature"
	"github.com/satline/satline/internal/normal"
	"github.com/satline/satline/quantity"
)

// A Measurement is the one that is expected to tell most.
type Measurement struct {
	// Code names it for programs.
	Code string
	// Gain is the information about the cause that it is expected to bring, in
	// bits (Lindley 1956, Annals of Mathematical Statistics 27:986-1005).
	Gain float64
	// Outcomes of a reading stand by rising value; of a test the yes comes
	// before the no.
	Outcomes []Outcome

	test    *test
	reading *scale
}

// An Outcome is a result and what would follow from it.
type Outcome struct {
	Chance float64
	// Low and High bound the reading in kelvin, m³/s or W; they are infinite at
	// the ends, and both zero for a test.
	Low, High float64
	// Then is the likeliest explanation given the outcome, with its probability.
	Then            string
	ThenProbability float64

	said string // for a test
	then *Explanation
	ends []weighted // the explanations after it, not made to add to 1
}

// A scale turns a feature into the reading that gives it: sign·feature + base.
type scale struct {
	feature    signature.Feature
	code, name string
	field      string // in a visit
	sign, base float64
	minutes    float64 // to take it
}

// grid is how finely a reading is divided, and terms how many components stand
// for the mixture, when its expected information is computed.
const (
	grid  = 30
	terms = 24
)

// next returns the measurement that separates the causes most; where none does,
// the look that tells most of which fault makes the cause; nil where nothing
// tells anything worth its time.
func (c *caseFile) next() *Measurement {
	leading, all := c.leading(), c.byExplanation()
	var cause, fault struct {
		gain    float64
		test    *test
		reading *scale
	}
	for i := range tests {
		t := &tests[i]
		if c.evidence.answered(t) || t.fits != nil && !t.fits(c.evidence) {
			continue
		}
		byCause, byFault := c.gainOfTest(t, all)
		if byCause > cause.gain {
			cause.gain, cause.test = byCause, t
		}
		if byFault > fault.gain {
			fault.gain, fault.test = byFault, t
		}
	}
	for _, s := range c.untaken() {
		if gain := c.gainOfReading(s.feature, leading); gain > cause.gain {
			cause.gain, cause.test, cause.reading = gain, nil, s
		}
	}
	const (
		unsettled  = 0.1 // bits that the cause still stands open by
		worthwhile = 0.02
	)
	switch {
	case max(cause.gain, fault.gain) < worthwhile:
		return nil
	case cause.gain < unsettled && cause.gain <= fault.gain:
		_, m := c.tryTest(fault.test, all)
		return m
	case cause.reading != nil:
		return c.tryReading(cause.reading, leading)
	}
	m, _ := c.tryTest(cause.test, all)
	return m
}

// entropy in bits of weights that need not add to 1.
func entropy(weights []float64) float64 {
	sum, h := 0.0, 0.0
	for _, w := range weights {
		sum += w
	}
	if sum <= 0 {
		return 0
	}
	for _, w := range weights {
		if w > 0 {
			h -= w / sum * math.Log2(w/sum)
		}
	}
	return h
}

// A pair of suspects (none, one or two) with its posterior.
type weighted struct {
	key    [2]int
	weight float64
}

// byExplanation sums the mixture over severities and drops what is negligible.
func (c *caseFile) byExplanation() []weighted {
	const negligible = 1e-4
	all := make([]weighted, 0, 2*mostSuspects)
	var index [mostSuspects + 1][mostSuspects + 1]int16 // from 1
	for i := range c.parts {
		p := &c.parts[i]
		at := &index[p.a+1][p.b+1]
		if *at == 0 {
			all = append(all, weighted{key: [2]int{p.a, p.b}})
			*at = int16(len(all))
		}
		all[*at-1].weight += p.weight
	}
	return slices.DeleteFunc(all, func(w weighted) bool { return w.weight < negligible })
}

// tryTest computes what a yes-or-no test is expected to tell of the explanations,
// and of single faults: a look at the filter tells a filter from a blower, which
// gauges never do.
func (c *caseFile) tryTest(t *test, all []weighted) (byCause, byFault *Measurement) {
	var prior, yes, no []float64
	ends := c.ends(t, all)
	chance := weightOf(ends[0])
	for _, x := range all {
		for i, share := range c.shares(x.key[0]) {
			w, p := x.weight*share, c.chanceOfYes(t, x.key, i)
			prior, yes, no = append(prior, w), append(yes, w*p), append(no, w*(1-p))
		}
	}
	gain := func(prior, yes, no []float64) float64 {
		return entropy(prior) - chance*entropy(yes) - (1-chance)*entropy(no)
	}
	weights := func(all []weighted) (out []float64) {
		for _, x := range all {
			out = append(out, x.weight)
		}
		return out
	}
	m := Measurement{Code: t.code, test: t, Gain: gain(weights(all), weights(ends[0]), weights(ends[1]))}
	for k, end := range ends {
		o := Outcome{said: [...]string{t.yes, t.no}[k]}
		c.conclude(&o, end)
		if o.then != nil {
			o.then.after(t, k == 0)
		}
		m.Outcomes = append(m.Outcomes, o)
	}
	fault := m
	fault.Gain = gain(prior, yes, no)
	return &m, &fault
}

// ends are the explanations after a yes and after a no, not made to add to 1.
func (c *caseFile) ends(t *test, all []weighted) (ends [2][]weighted) {
	for _, x := range all {
		yes := 0.0
		for i, share := range c.shares(x.key[0]) {
			yes += x.weight * share * c.chanceOfYes(t, x.key, i)
		}
		ends[0] = append(ends[0], weighted{x.key, yes})
		ends[1] = append(ends[1], weighted{x.key, x.weight - yes})
	}
	return ends
}

// chanceOfYes is that of a test where an explanation holds, its first cause by fault i.
func (c *caseFile) chanceOfYes(t *test, key [2]int, i int) float64 {
	p := t.usual
	if key[0] != none {
		p = t.chance(c.suspects[key[0]].faults[i])
	}
	if b := key[1]; b != none {
		q := 0.0
		for j, f := range c.suspects[b].faults {
			q += c.suspects[b].share[j] * t.chance(f)
		}
		p = max(p, q, 1-(1-p)*(1-q)/(1-t.usual))
	}
	return p
}

// after weighs the faults of each cause by what a test said: a look at the
// filter says little about whether air is short, and much about why.
func (x *Explanation) after(t *test, yes bool) {
	for i := range x.Causes {
		faults, sum := x.Causes[i].Faults, 0.0
		for j := range faults {
			p := t.chance(faults[j].Fault)
			if !yes {
				p = 1 - p
			}
			faults[j].Chance *= p
			sum += faults[j].Chance
		}
		for j := range faults {
			if sum > 0 {
				faults[j].Chance /= sum
			}
		}
		slices.SortStableFunc(faults, func(i, j FaultChance) int { return compare(j.Chance, i.Chance) })
	}
}

// shares of the faults of a suspect; all of it where there is no suspect.
func (c *caseFile) shares(a int) []float64 {
	if a == none {
		return []float64{1}
	}
	return c.suspects[a].share
}

// conclude finds the likeliest explanation of an outcome and its chance.
func (c *caseFile) conclude(o *Outcome, all []weighted) {
	top := 0
	o.ends = all
	for i, x := range all {
		o.Chance += x.weight
		if x.weight > all[top].weight {
			top = i
		}
	}
	if o.Chance <= 0 {
		return
	}
	o.ThenProbability = all[top].weight / o.Chance
	o.then = c.explanation(all[top].key)
	o.Then = o.then.Code()
}

// explanation names two suspects without size or evidence.
func (c *caseFile) explanation(k [2]int) *Explanation {
	x := &Explanation{}
	for _, a := range k {
		if a == none {
			continue
		}
		cause := Cause{Signature: c.suspects[a].signature}
		for i, f := range c.suspects[a].faults {
			cause.Kind = max(cause.Kind, f.Kind)
			cause.Faults = append(cause.Faults, FaultChance{f, c.suspects[a].share[i]})
		}
		slices.SortStableFunc(cause.Faults, func(i, j FaultChance) int { return compare(j.Chance, i.Chance) })
		x.Causes = append(x.Causes, cause)
	}
	return x
}

// fieldOf are the readings by their name in a visit.
var fieldOf = [raws]string{
	rEvaporating: "suctionPressure", rSuctionLine: "suctionLine", rLiquidLine: "liquidLine", rDischargeLine: "dischargeLine",
	rCondenserLeaving: "condenserLeaving", rSupplyDryBulb: "supplyDryBulb", rSupplyWetBulb: "supplyWetBulb",
	rAirflow: "airflow", rPower: "power",
}

// untaken lists the readings that were not taken and would give a feature.
func (c *caseFile) untaken() []*scale {
	r := c.seen.raw
	var out []*scale
	minutes := 3.0
	offer := func(f signature.Feature, missing int, needs []int, code, name string, sign, base float64) {
		if r.have[missing] || c.seen.have[f] || f == signature.DischargeOver && c.noDischarge {
			return
		}
		for _, n := range needs {
			if !r.have[n] {
				return
			}
		}
		out = append(out, &scale{f, code, name, fieldOf[missing], sign, base, minutes})
	}
	v := &r.value
	offer(signature.Superheat, rSuctionLine, []int{rEvaporating}, "suction-line", "the suction line temperature near the compressor", 1, v[rEvaporating]+r.evapGlide)
	offer(signature.Subcooling, rLiquidLine, []int{rCondensing}, "liquid-line", "the liquid line temperature at the condenser outlet", -1, v[rCondensing]-r.condGlide)
	offer(signature.DischargeOver, rDischargeLine, []int{rCondensing}, "discharge-line", "the discharge line temperature, about {6 in} from the compressor", 1, v[rCondensing])
	offer(signature.CondenserRise, rCondenserLeaving, []int{rOutdoor}, "condenser-leaving", "the air leaving the outdoor unit", 1, v[rOutdoor])
	offer(signature.Split, rSupplyDryBulb, []int{rReturnDryBulb}, "supply-dry-bulb", "the supply dry bulb", -1, v[rReturnDryBulb])
	offer(signature.WetBulbSplit, rSupplyWetBulb, []int{rReturnWetBulb}, "supply-wet-bulb", "the supply wet bulb", -1, v[rReturnWetBulb])
	offer(signature.Evaporating, rEvaporating, nil, "suction-pressure", "the suction pressure (its dew temperature)", 1, r.evapGlide)
	minutes = 15
	if c.evidence.NominalCapacity > 0 || c.evidence.RatedAirflow > 0 {
		offer(signature.Airflow, rAirflow, nil, "airflow", "the indoor airflow", 1, 0)
	}
	if c.evidence.NominalCapacity > 0 {
		offer(signature.Power, rPower, nil, "power", "the electric power of the whole machine (live parts: qualified hands only)", 1, 0)
	}
	return out
}

// tryReading computes what a reading is expected to tell: the entropy of the
// mixture that predicts it less the mean entropy of its parts by cause.
func (c *caseFile) tryReading(s *scale, leading []lead) *Measurement {
	f := s.feature
	low, high := reach(f, leading)
	type key = [2]int
	groups := map[key]int{}
	var keys []key
	for _, p := range leading {
		k := key{p.a, p.b}
		if _, known := groups[k]; !known {
			groups[k] = len(keys)
			keys = append(keys, k)
		}
	}
	prior := make([]float64, len(keys))
	cells := make([][]float64, grid)
	step := (high - low) / grid
	for g := range cells {
		cells[g] = make([]float64, len(keys))
	}
	for _, p := range leading {
		group := groups[key{p.a, p.b}]
		prior[group] += p.weight
		below := normal.Below((low - p.mean[f]) / p.std[f])
		for g := range cells {
			upTo := normal.Below((low + float64(g+1)*step - p.mean[f]) / p.std[f])
			cells[g][group] += p.weight * (upTo - below)
			below = upTo
		}
	}
	gain := entropy(prior)
	for g := range cells {
		sum := 0.0
		for _, w := range cells[g] {
			sum += w
		}
		gain -= sum * entropy(cells[g])
	}
	m := &Measurement{Code: s.code, Gain: max(0, gain), reading: s}
	m.Outcomes = c.ranges(cells, keys, low, step, s)
	return m
}

// ranges joins neighbouring cells with the same leading explanation.
func (c *caseFile) ranges(cells [][]float64, keys [][2]int, low, step float64, s *scale) []Outcome {
	type span struct {
		from, to int
		top      int
		weights  []float64
		total    float64
	}
	var spans []span
	for g, w := range cells {
		top := 0
		for i := range w {
			if w[i] > w[top] {
				top = i
			}
		}
		if n := len(spans); n == 0 || spans[n-1].top != top {
			spans = append(spans, span{from: g, to: g, top: top, weights: make([]float64, len(keys))})
		}
		last := &spans[len(spans)-1]
		last.to = g
		for i := range w {
			last.weights[i] += w[i]
			last.total += w[i]
		}
	}
	// A range too thin to matter joins the fatter of its neighbours.
	const thin = 0.06
	for len(spans) > 1 {
		least := 0
		for i := range spans {
			if spans[i].total < spans[least].total {
				least = i
			}
		}
		if spans[least].total >= thin && len(spans) <= 3 {
			break
		}
		into := least - 1
		if into < 0 || least+1 < len(spans) && spans[least+1].total > spans[into].total {
			into = least + 1
		}
		a, b := &spans[min(into, least)], &spans[max(into, least)]
		for i := range a.weights {
			a.weights[i] += b.weights[i]
		}
		a.to, a.total = b.to, a.total+b.total
		spans = slices.Delete(spans, max(into, least), max(into, least)+1)
	}
	var out []Outcome
	for i, sp := range spans {
		o := Outcome{Low: math.Inf(-1), High: math.Inf(1)}
		if i > 0 {
			o.Low = low + float64(sp.from)*step
		}
		if i < len(spans)-1 {
			o.High = low + float64(sp.to+1)*step
		}
		o.Low, o.High = c.read(s, o.Low), c.read(s, o.High)
		if s.sign < 0 {
			o.Low, o.High = o.High, o.Low
		}
		end := make([]weighted, len(keys))
		for k, w := range sp.weights {
			end[k] = weighted{keys[k], w}
		}
		c.conclude(&o, end)
		out = append(out, o)
	}
	if s.sign < 0 {
		slices.Reverse(out)
	}
	return out
}

// read turns a value of a feature into the reading.
func (c *caseFile) read(s *scale, v float64) float64 {
	if s.feature == signature.Airflow || s.feature == signature.Power {
		if math.IsInf(v, 0) {
			return v
		}
		return c.unit(s.feature) * math.Exp(v/100)
	}
	return s.sign*v + s.base
}

// OpensCircuit reports whether the refrigerant has to come out for it.
func (m *Measurement) OpensCircuit() bool { return m.Code == "restrictor-number" }

// Look reports whether it is a look or test that is answered by yes or no, the
// first outcome or the second, and no reading.
func (m *Measurement) Look() bool { return m.test != nil }

// Take says what to measure.
func (m *Measurement) Take(sys quantity.System) string {
	if m.test != nil {
		return inUnits(m.test.take, sys)
	}
	return inUnits(m.reading.name, sys)
}

// Why says what it is good for.
func (m *Measurement) Why(sys quantity.System) string {
	if len(m.Outcomes) == 0 {
		return "nothing follows without them"
	}
	var ends []string
	for i := range m.Outcomes {
		if o := &m.Outcomes[i]; o.then != nil {
			if title := m.means(o); !slices.Contains(ends, title) {
				ends = append(ends, title)
			}
		}
	}
	var text []string
	if m.test != nil {
		text = append(text, m.test.why)
	}
	switch {
	case len(ends) == 2:
		text = append(text, "it decides between "+ends[0]+" and "+ends[1])
	case len(ends) > 2:
		text = append(text, "it decides between "+strings.Join(ends[:len(ends)-1], "; ")+"; and "+ends[len(ends)-1])
	case len(ends) == 1:
		text = append(text, "it confirms, or weakens, "+ends[0])
	}
	return inUnits(strings.Join(text, "; "), sys)
}

// short is the title without sizes.
func (x *Explanation) short() string { return x.named((*Cause).Name) }

func (x *Explanation) named(name func(*Cause) string) string {
	if len(x.Causes) == 0 {
		return "nothing wrong"
	}
	var names []string
	for i := range x.Causes {
		names = append(names, name(&x.Causes[i]))
	}
	return strings.Join(names, " with ")
}

// means names what an outcome leads to, with the likeliest fault where a test
// tells the faults of one signature apart.
func (m *Measurement) means(o *Outcome) string {
	if m.test == nil {
		return o.then.short()
	}
	return o.then.named(func(c *Cause) string {
		name := signatureNames[c.Signature]
		if len(c.Faults) < 2 || name == "" {
			return c.Name()
		}
		return name + " (most often " + c.Faults[0].Fault.Name + ")"
	})
}

// Texts says what each outcome would mean.
func (m *Measurement) Texts(sys quantity.System) []string {
	var out []string
	for i := range m.Outcomes {
		o := &m.Outcomes[i]
		if o.then == nil {
			continue
		}
		if len(m.Outcomes) == 1 {
			return []string{fmt.Sprintf("%s stays the likeliest whatever it reads, %.0f %%", o.then.short(), 100*o.ThenProbability)}
		}
		said := inUnits(o.said, sys)
		if m.reading != nil {
			said = between(m.reading.feature, o.Low, o.High, sys)
		}
		out = append(out, fmt.Sprintf("%s (chance %.0f %%): %s, %.0f %%", said, 100*o.Chance, m.means(o), 100*o.ThenProbability))
	}
	return out
}

func between(f signature.Feature, low, high float64, sys quantity.System) string {
	if f != signature.Airflow && f != signature.Power {
		f = signature.Evaporating // a temperature, whatever difference it makes
	}
	lowest, highest := math.IsInf(low, 0), math.IsInf(high, 0)
	switch {
	case lowest && highest:
		return "whatever it reads"
	case lowest:
		return "below " + show(f, high, 0, sys)
	case highest:
		return "above " + show(f, low, 0, sys)
	}
	return show(f, low, 0, sys) + " to " + show(f, high, 0, sys)
}

// firstReadings is what to take where nothing was.
func firstReadings() *Measurement {
	return &Measurement{Code: "first-readings", reading: &scale{
		code: "first-readings",
		name: "suction and liquid pressure, suction and liquid line temperature, outdoor dry bulb, return dry and wet bulb and supply dry bulb, after 15 minutes of steady running",
	}}
}
