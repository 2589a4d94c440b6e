package diagnose

import (
	"math"
	"slices"

	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/internal/judge/diagnose/signature"
)

// A Measurement is a look or a reading that can be taken.
type Measurement struct {
	// Code names it for programs.
	Code string
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

	then *Explanation
}

// A scale turns a feature into the reading that gives it: sign·feature + base.
type scale struct {
	feature    signature.Feature
	code       string
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

// A pair of suspects (none, one or two) with its posterior.
type weighted struct {
	key    [2]int
	weight float64
}

// byExplanation sums the mixture over severities and drops what is negligible. It stands until
// the next call.
func (c *caseFile) byExplanation() []weighted {
	const negligible = 1e-4
	all := c.work.explained[:0]
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
	all = slices.DeleteFunc(all, func(w weighted) bool { return w.weight < negligible })
	c.work.explained = all
	return all
}

// tryTest works out what would follow from a yes and from a no.
func (c *caseFile) tryTest(t *test, all []weighted) *Measurement {
	m := &Measurement{Code: t.code, test: t}
	for _, end := range c.ends(t, all) {
		var o Outcome
		c.conclude(&o, end)
		m.Outcomes = append(m.Outcomes, o)
	}
	return m
}

// ends are the explanations after a yes and after a no, not made to add to 1; they stand until
// the next call.
func (c *caseFile) ends(t *test, all []weighted) *[2][]weighted {
	ends := &c.work.ends
	ends[0], ends[1] = ends[0][:0], ends[1][:0]
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

var whole = [1]float64{1}

// shares of the faults of a suspect; all of it where there is no suspect.
func (c *caseFile) shares(a int) []float64 {
	if a == none {
		return whole[:]
	}
	return c.suspects[a].share
}

// conclude finds the likeliest explanation of an outcome and its chance.
func (c *caseFile) conclude(o *Outcome, all []weighted) {
	top := 0
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
		for _, f := range c.suspects[a].faults {
			cause.Kind = max(cause.Kind, f.Kind)
		}
		x.Causes = append(x.Causes, cause)
	}
	return x
}

// fieldOf are the readings by their name in a visit.
var fieldOf = [raws]string{
	rEvaporating: "suctionPressure", rSuctionLine: "suctionLine", rLiquidLine: "liquidLine",
	rDischargeLine:    "dischargeLine",
	rCondenserLeaving: "condenserLeaving", rSupplyDryBulb: "supplyDryBulb",
	rSupplyWetBulb: "supplyWetBulb",
	rAirflow:       "airflow", rPower: "power",
}

// untaken lists the readings that were not taken and would give a feature.
func (c *caseFile) untaken() []scale {
	r := c.seen.raw
	out := make([]scale, 0, features)
	minutes := 3.0
	offer := func(f signature.Feature, missing int, needs []int, code string, sign, base float64) {
		if r.have[missing] || c.seen.have[f] || f == signature.DischargeOver && c.noDischarge {
			return
		}
		for _, n := range needs {
			if !r.have[n] {
				return
			}
		}
		out = append(out, scale{f, code, fieldOf[missing], sign, base, minutes})
	}
	v := &r.value
	offer(
		signature.Superheat, rSuctionLine, []int{rEvaporating}, "suction-line", 1,
		v[rEvaporating]+r.evapGlide,
	)
	offer(
		signature.Subcooling, rLiquidLine, []int{rCondensing}, "liquid-line", -1,
		v[rCondensing]-r.condGlide,
	)
	offer(
		signature.DischargeOver, rDischargeLine, []int{rCondensing}, "discharge-line", 1,
		v[rCondensing],
	)
	offer(
		signature.CondenserRise, rCondenserLeaving, []int{rOutdoor}, "condenser-leaving", 1,
		v[rOutdoor],
	)
	offer(
		signature.Split, rSupplyDryBulb, []int{rReturnDryBulb}, "supply-dry-bulb", -1,
		v[rReturnDryBulb],
	)
	offer(signature.Evaporating, rEvaporating, nil, "suction-pressure", 1, r.evapGlide)
	minutes = 8 // a wick to wet, in air that moves
	offer(
		signature.WetBulbSplit, rSupplyWetBulb, []int{rReturnWetBulb}, "supply-wet-bulb", -1,
		v[rReturnWetBulb],
	)
	minutes = 15
	if c.evidence.NominalCapacity > 0 || c.evidence.RatedAirflow > 0 {
		offer(signature.Airflow, rAirflow, nil, "airflow", 1, 0)
	}
	if c.evidence.NominalCapacity > 0 {
		offer(signature.Power, rPower, nil, "power", 1, 0)
	}
	return out
}

// ranges are those of a reading that it is told apart in.
type ranges struct {
	keys      [][2]int // the explanations
	spans     []span
	low, step float64 // of the cells
	after     [terms]weighted
	room      struct {
		keys  [terms][2]int
		spans [grid]span
		cells [grid][terms]float64
	}
}

// A span is a range, with the explanations that lead to it.
type span struct {
	from, to int // cells
	top      int // the likeliest
	weights  [terms]float64
	total    float64
}

// ends are the explanations after a span, not made to add to 1, until the next call.
func (r *ranges) ends(s *span) []weighted {
	for k, key := range r.keys {
		r.after[k] = weighted{key, s.weights[k]}
	}
	return r.after[:len(r.keys)]
}

// rangesOf works out what would follow from a reading. The ranges stand until the next call.
func (c *caseFile) rangesOf(s *scale, leading []lead) *ranges {
	r := &c.work.ranges
	f := s.feature
	low, high := reach(f, leading)
	r.low, r.step = low, (high-low)/grid
	r.keys = r.room.keys[:0]
	r.room.cells = [grid][terms]float64{}
	for i := range leading {
		p := &leading[i]
		key := [2]int{p.a, p.b}
		k := slices.Index(r.keys, key)
		if k < 0 {
			k = len(r.keys)
			r.keys = append(r.keys, key)
		}
		from, step := (low-p.mean[f])/p.std[f], r.step/p.std[f]
		below := normal.Near(from)
		for g := 0; g < grid && below < 1; g++ {
			upTo := normal.Near(from + float64(g+1)*step)
			r.room.cells[g][k] += p.weight * (upTo - below)
			below = upTo
		}
	}
	r.span()
	r.joinThin()
	return r
}

// span makes a range of neighboring cells with the same likeliest explanation.
func (r *ranges) span() {
	r.spans = r.room.spans[:0]
	for g := range grid {
		w := r.room.cells[g][:len(r.keys)]
		top := 0
		for i := range w {
			if w[i] > w[top] {
				top = i
			}
		}
		if n := len(r.spans); n == 0 || r.spans[n-1].top != top {
			r.spans = append(r.spans, span{from: g, top: top})
		}
		last := &r.spans[len(r.spans)-1]
		last.to = g
		for i, x := range w {
			last.weights[i] += x
			last.total += x
		}
	}
}

// joinThin has a range too thin to matter join the fatter of its neighbors, and so the thinnest
// of more than three.
func (r *ranges) joinThin() {
	const thin = 0.06
	for len(r.spans) > 1 {
		least := 0
		for i := range r.spans {
			if r.spans[i].total < r.spans[least].total {
				least = i
			}
		}
		if r.spans[least].total >= thin && len(r.spans) <= 3 {
			break
		}
		into := least - 1
		if into < 0 || least+1 < len(r.spans) && r.spans[least+1].total > r.spans[into].total {
			into = least + 1
		}
		a, b := &r.spans[min(into, least)], &r.spans[max(into, least)]
		for i := range a.weights {
			a.weights[i] += b.weights[i]
		}
		a.to, a.total = b.to, a.total+b.total
		r.spans = slices.Delete(r.spans, max(into, least), max(into, least)+1)
	}
}

// measurement tells the ranges of a reading as values of it.
func (c *caseFile) measurement(s *scale, r *ranges) *Measurement {
	reading := *s
	m := &Measurement{Code: s.code, reading: &reading}
	for i := range r.spans {
		sp := &r.spans[i]
		o := Outcome{Low: math.Inf(-1), High: math.Inf(1)}
		if i > 0 {
			o.Low = r.low + float64(sp.from)*r.step
		}
		if i < len(r.spans)-1 {
			o.High = r.low + float64(sp.to+1)*r.step
		}
		o.Low, o.High = c.read(s, o.Low), c.read(s, o.High)
		if s.sign < 0 {
			o.Low, o.High = o.High, o.Low
		}
		c.conclude(&o, r.ends(sp))
		m.Outcomes = append(m.Outcomes, o)
	}
	if s.sign < 0 {
		slices.Reverse(m.Outcomes)
	}
	return m
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

// Minutes that it takes.
func (m *Measurement) Minutes() float64 {
	if m.test != nil {
		return m.test.minutes
	}
	return m.reading.minutes
}

// OfInstruments reports whether it is a look that decides about instruments alone.
func (m *Measurement) OfInstruments() bool { return m.test != nil && m.test.instruments }

// Look reports whether it is a look or test that is answered by yes or no, the
// first outcome or the second, and no reading.
func (m *Measurement) Look() bool { return m.test != nil }
