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
