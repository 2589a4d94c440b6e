package coldroom

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"github.com/satline/satline/charge/coldroom"
	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/physics/cyclefluid"
	"github.com/satline/satline/quantity"
)

// known is what a belief is made of: features that could be read, with their variances, and
// answers to looks.
type known struct {
	fluid *cyclefluid.Fluid
	usual coldroom.Usual
	valve bool
	// heated says that a defrost heats the coil.
	heated  bool
	weather place
	doubt   place // standard uncertainty of the weather
	value   signature.Vector
	std     signature.Vector // zero where the feature could not be read
	// bounded are the values on the scale of the signatures, none beyond what machines with a
	// fault read, and bent their standard uncertainties there.
	bounded, bent signature.Vector
	answers       map[string]bool
	// hints are sights by the code of the look that they answer with a yes.
	hints []string
	// course is what the log shows of the box and of defrosts.
	course course
	// complaint says that the box is said to be warm, stains that oil was seen.
	complaint, stains bool
	weighed           bool // the whole charge, into an evacuated circuit
	added             bool // refrigerant, to a machine that was believed short of it
	// overloaded says that the load sheet asks for more than the machine gives in a day.
	overloaded bool
	// tooCold says that it runs on in a box colder than it is kept.
	tooCold bool
	// gain is what the suction line adds from the bulb to the compressor, where that is more than
	// such lines do; zero else.
	gain quantity.TemperatureDelta
	// vacuum says that suction is in one where none belongs.
	vacuum bool
	// hottest says that the head is higher than any sound machine's.
	hottest bool
}

// read reports whether a feature could be read.
func (k *known) read(f int) bool { return k.std[f] > 0 }

// A place is the box and the air that the condenser gives its heat to, K.
type place struct{ box, outdoor float64 }

// belief is the chance of each fault, in the order of faults, alone or beside another, and of
// each cluster.
type belief struct {
	faults   []float64
	alone    []float64 // each fault by itself
	pairs    []pair
	clusters []cluster
	of       []float64 // of each cluster
}

// outlier is the chance that a machine is unlike those of its kind, as one three times as
// widely spread.
const outlier = 0.04

func believe(k *known) *belief {
	return weigh(k, clusters(k))
}

// weigh makes a belief of what is known and of what machines would read.
func weigh(k *known, of []cluster) *belief {
	b := &belief{clusters: of}
	b.of = make([]float64, len(b.clusters))
	b.alone = make([]float64, len(faults))
	logs := make([]float64, len(b.clusters))
	top := math.Inf(-1)
	for i := range b.clusters {
		logs[i] = k.orFlooded(&b.clusters[i])
		top = max(top, logs[i])
	}
	byCause := make([]float64, len(signature.Causes))
	for i := range b.clusters {
		c := &b.clusters[i]
		b.of[i] = math.Exp(logs[i]-top) * c.share
		byCause[c.cause] += b.of[i]
	}
	k.shut(byCause)
	sum := 0.0
	for i := range faults {
		f := &faults[i]
		if f.code == defrostHeats && !k.heated || f.code == tooSmall && !k.overloaded {
			continue
		}
		reads := byCause[causeOf[i]]
		if size := begins[f.code]; size > 0 {
			reads = b.from(causeOf[i], size)
		}
		b.alone[i] = f.share * reads * k.answered(f, nil)
		sum += b.alone[i]
	}
	// Two things at once are weighed where one is likely at all.
	if b.alone[0] < likely*sum {
		b.pairs = k.pairs(k.couplings(of, top))
		for i := range b.pairs {
			sum += b.pairs[i].chance
		}
	}
	for i := range b.alone {
		b.alone[i] /= sum
	}
	b.faults = slices.Clone(b.alone)
	for i := range b.pairs {
		p := &b.pairs[i]
		p.chance /= sum
		b.faults[p.first] += p.chance
		b.faults[p.second] += p.chance
	}
	for i := range b.clusters {
		c := b.clusters[i].cause
		b.of[i] *= b.cause(signature.Causes[c].Code) / max(byCause[c], 1e-300)
	}
	return b
}

// from is the likelihood of a cause that begins at a size.
func (b *belief) from(cause, size int) float64 {
	sum, sizes := 0.0, signature.Causes[cause].Sizes
	for i := range b.clusters {
		if c := &b.clusters[i]; c.cause == cause && c.size >= size {
			sum += b.of[i]
		}
	}
	return sum * float64(sizes) / float64(sizes-size)
}

// shut weighs valves that let nothing through, which no signature is of: suction in a vacuum under
// a head that liquid stands at reads as if the refrigerant were gone. That what starves an
// evaporator is as good as shut is half as likely as that a shortage goes so far (common practice,
// no source).
func (k *known) shut(byCause []float64) {
	const asGoodAsShut = 0.5
	if !k.vacuum || k.below(signature.OverOutdoor) {
		return
	}
	alike := asGoodAsShut * byCause[causeIndex(undercharge)]
	for _, cause := range []string{starving, restriction} {
		i := causeIndex(cause)
		byCause[i] = max(byCause[i], alike)
	}
}

// pairs are those of the faults of couplings, not yet divided by the sum of all chances.
func (k *known) pairs(of []coupling) []pair {
	const all = 100 // of which the shares of faults are
	var out []pair
	for i := range of {
		c := &of[i]
		for first := range faults {
			f := &faults[first]
			if f.cause != c.causes[0] {
				continue
			}
			for second := range faults {
				if s := &faults[second]; s.cause == c.causes[1] {
					out = append(out, pair{
						first, second,
						seldom * f.share * s.share / all * c.likelihood * k.answered(f, s),
					})
				}
			}
		}
	}
	return out
}

// causeOf is the place of each fault's cause in signature.Causes.
var causeOf = func() (out []int) {
	for i := range faults {
		out = append(out, causeIndex(faults[i].cause))
	}
	return out
}()

func causeIndex(code string) int {
	return slices.IndexFunc(
		signature.Causes, func(c signature.Cause) bool { return c.Code == code },
	)
}

// below reports whether a feature is below nought: a liquid line that is warmer than its
// refrigerant boils holds no liquid, and below the temperature of its air nothing condenses.
func (k *known) below(f int) bool {
	const beyond = 1.5 // K, more than what the table or the place of a gauge is off
	return k.read(f) && k.value[f]+2*k.std[f] < -beyond
}

// letsVapor are the causes that let vapor into the liquid line.
var letsVapor = map[string]bool{undercharge: true, restriction: true, headLow: true}

// raisesHead are the causes by which a head gets so high that no sound machine runs with it.
var raisesHead = map[string]bool{condenser: true, overcharge: true, gas: true, headHigh: true}

// answered is the likelihood of what was looked at and seen, by a fault, and by another beside
// it where there is one.
func (k *known) answered(f, beside *fault) float64 {
	p := 1.0
	for i := range looks {
		l := &looks[i]
		chance := l.chance(f)
		if beside != nil {
			chance = l.chanceOfBoth(f, beside)
		}
		if yes, ok := k.answers[l.code]; ok {
			p *= chanceOf(chance, yes)
		} else if slices.Contains(k.hints, l.code) {
			p *= chance
		}
	}
	by := func(of func(cause string) bool) bool {
		return of(f.cause) || beside != nil && of(beside.cause)
	}
	is := func(causes ...string) bool {
		return by(func(cause string) bool { return slices.Contains(causes, cause) })
	}
	if k.hottest && !by(func(cause string) bool { return raisesHead[cause] }) {
		p *= 0.03
	}
	if k.below(signature.Subcooling) && !by(func(cause string) bool { return letsVapor[cause] }) {
		p *= 0.05
	}
	if k.below(signature.OverOutdoor) && !is(undercharge, compressor) {
		p *= 0.05
	}
	if k.tooCold && is(load) {
		p *= 0.05
	}
	p *= k.course.likelihood(f, beside)
	if k.complaint && is(sound, clamp) {
		p *= 0.5
	}
	if k.weighed && is(undercharge, reserve, overcharge, gas) {
		p *= 0.05
	}
	if k.added && !is(undercharge, reserve) {
		p *= 0.2
	}
	if k.stains && !is(undercharge, reserve) {
		p *= 0.25
	}
	return p
}

func chanceOf(p float64, yes bool) float64 {
	if yes {
		return p
	}
	return 1 - p
}

// cause is the chance of a cause.
func (b *belief) cause(code string) float64 {
	sum := 0.0
	for i := range faults {
		if faults[i].cause == code {
			sum += b.faults[i]
		}
	}
	return sum
}

// A ranked cause with its faults, the likeliest first.
type ranked struct {
	code   string
	chance float64
	faults []int
}

// ranking lists the causes by falling chance.
func (b *belief) ranking() []ranked {
	var out []ranked
	for i := range signature.Causes {
		r := ranked{code: signature.Causes[i].Code, chance: b.cause(signature.Causes[i].Code)}
		for j := range faults {
			if faults[j].cause == r.code {
				r.faults = append(r.faults, j)
			}
		}
		slices.SortStableFunc(r.faults, func(x, y int) int {
			return cmp.Compare(modes.Rank(b.faults[y]), modes.Rank(b.faults[x]))
		})
		out = append(out, r)
	}
	sort.SliceStable(out, func(i, j int) bool {
		return modes.Rank(out[i].chance) > modes.Rank(out[j].chance)
	})
	return out
}

// best is the fault that is likeliest, with its chance.
func best(chances []float64) (int, float64) {
	at := 0
	for i := range chances {
		if chances[i] > chances[at] {
			at = i
		}
	}
	return at, chances[at]
}

// An asked look is what it is worth before anything is done.
type asked struct {
	look        *look
	gain        float64
	yes         float64   // chance
	ifYes, ifNo []float64 // of each fault, not yet divided by the chance of the answer
}

// next is the look that most raises the chance of naming the cause, against the minutes it
// takes; nil where none is worth them. It is one of those after, where there are any.
func (b *belief) next(k *known, after ...string) *asked {
	const perMinute = 0.003
	worthGain := 0.04
	var top, quick *asked
	code, now := b.bestCause(b.faults)
	holds := k.read(signature.OverBox) && k.value[signature.OverBox] < 1.5
	if code == sound && (holds && now >= likely || now >= 0.65) {
		worthGain = 0.12 // nothing calls for a look
	}
	for i := range looks {
		l := &looks[i]
		if !k.open(l) || len(after) > 0 && !slices.Contains(after, l.code) {
			continue
		}
		a := b.ask(l)
		better := func(than *asked) bool {
			return than == nil || a.gain-perMinute*l.minutes >
				than.gain-perMinute*than.look.minutes
		}
		if a.gain-perMinute*l.minutes <= worthGain {
			continue
		}
		if better(top) {
			top = &a
		}
		if l.minutes <= fewMinutes && better(quick) {
			quick = &a
		}
	}
	// What is seen at once comes before what takes a stop or half an hour.
	if top != nil && top.look.minutes >= manyMinutes && quick != nil {
		return quick
	}
	return top
}

// fewMinutes is what a look may take that comes before one that takes manyMinutes.
const fewMinutes, manyMinutes = 6, 15

// wantsBulb says that the superheat at the bulb was not read and a valve may be at fault.
func (b *belief) wantsBulb(k *known) bool {
	const may, settled = 0.1, 0.9
	_, top := b.bestCause(b.faults)
	return k.valve && !k.read(signature.BulbSuperheat) && top <= settled &&
		b.cause(flooding)+b.cause(starving) >= may
}

// open says that a look can be taken on the machine and was not yet; what is asked of a vacuum
// alone, heldUp asks.
func (k *known) open(l *look) bool {
	_, done := k.answers[l.code]
	// A box that falls, and a circuit that stood while it was filled, tell of a stop themselves.
	shown := (k.course.falls() || k.weighed) && l.of[pullsDown] >= likely
	return !done && !shown && !slices.Contains(k.hints, l.code) && (k.valve || !l.valve) &&
		(k.heated || !l.heated) && (k.usual.Receiver >= 0.5 || !l.receiver) &&
		!l.vacuum
}

// ask is what a look is worth, which raises the chance of naming the cause. Which of the faults
// of a cause it is counts for half of which cause it is.
func (b *belief) ask(l *look) asked {
	a := asked{look: l, ifYes: make([]float64, len(faults)), ifNo: make([]float64, len(faults))}
	answer := func(chance, p float64, of ...int) {
		a.yes += chance * p
		for _, j := range of {
			a.ifYes[j] += chance * p
			a.ifNo[j] += chance * (1 - p)
		}
	}
	for j := range faults {
		answer(b.alone[j], l.chance(&faults[j]), j)
	}
	for _, p := range b.pairs {
		both := l.chanceOfBoth(&faults[p.first], &faults[p.second])
		answer(p.chance, both, p.first, p.second)
	}
	_, now := b.bestCause(b.faults)
	_, yes := b.bestCause(a.ifYes)
	_, no := b.bestCause(a.ifNo)
	_, faultNow := best(b.faults)
	_, faultYes := best(a.ifYes)
	_, faultNo := best(a.ifNo)
	a.gain = yes + no - now + 0.5*(faultYes+faultNo-faultNow)
	return a
}

// bestCause is the likeliest cause by chances of faults, which need not add up to one.
func (b *belief) bestCause(chances []float64) (code string, chance float64) {
	sums := make([]float64, len(signature.Causes))
	for i := range faults {
		sums[causeOf[i]] += chances[i]
	}
	at, chance := best(sums)
	return signature.Causes[at].Code, chance
}
