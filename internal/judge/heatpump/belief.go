package heatpump

import (
	"math"
	"slices"
	"sort"

	"github.com/satline/satline/internal/judge/heatpump/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// An atom is a cause in one of its faults and sizes, with what is wrong beside it where
// something is, and the chance that it is so.
type atom struct {
	cause  *cause
	fault  *fault
	size   int
	beside part
	chance float64
}

// A belief is what is believed of a machine: chances of atoms that add up to one.
type belief struct {
	c     *modes.Case
	seen  *observation
	atoms []atom
	// mean and spread of a sound machine in this weather.
	mean, spread [signature.Features]float64
	// chart says that the maker's chart for this weather was used, shift by how much it moves
	// what a machine reads.
	chart bool
	shift [signature.Features]float64
	by    [signature.Devices]float64
	// speeds that it may run at.
	speeds []speed
}

// ordinary is the share of sizes of a fault, slight, middling and large: a slight one is
// seldom what a technician is called for, and a large one seldom lets a machine run on (common
// practice, no source).
var ordinary = [signature.Sizes]float64{0.35, 0.4, 0.25}

// devices are the chances of what meters at the outdoor coil, by the device indoors: common
// practice, no source.
func devices(m refrigerant.Metering) [signature.Devices]float64 {
	switch m {
	case refrigerant.TXV:
		return [signature.Devices]float64{signature.Fixed: 0.35, signature.Valve: 0.65}
	case refrigerant.EXV:
		return [signature.Devices]float64{signature.Fixed: 0.1, signature.Valve: 0.9}
	case refrigerant.FixedRestrictor, refrigerant.Capillary:
		return [signature.Devices]float64{signature.Fixed: 0.8, signature.Valve: 0.2}
	}
	return [signature.Devices]float64{signature.Fixed: 0.5, signature.Valve: 0.5}
}

// eachRow calls do with the rows of a cause of one size, by device and part, and the share of
// each; the shares add up to about one.
func eachRow(
	cause, size int, by [signature.Devices]float64, w signature.Weather,
	do func(r *signature.Row, d signature.Device, share float64),
) {
	for d, device := range by {
		for p := range signature.Part(signature.Parts) {
			r := signature.Of(cause, size, signature.Device(d), p)
			do(r, signature.Device(d), device*r.Share(w))
		}
	}
}

// believe weighs every atom by the readings, by what was seen and by the looks answered.
func believe(c *modes.Case) *belief {
	b := &belief{c: c, seen: observe(c, c.EvaporatingDew, c.CondensingBubble)}
	b.by, b.speeds = devices(c.Metering), speeds(c.Known)
	b.seen.bounded(b.by)
	b.shift = b.ofChart(b.by)
	ofSound := func(row *signature.Row, _ signature.Device, share float64) {
		for _, s := range b.speeds {
			r, mean := *row, row.Mean(b.seen.weather)
			s.slow(&r, &mean)
			for f, m := range mean {
				b.mean[f] += share * s.chance * m
				b.spread[f] += share * s.chance * (r.Covariance[f][f] + m*m)
			}
		}
	}
	eachRow(0, 0, b.by, b.seen.weather, ofSound)
	for f := range b.mean {
		b.spread[f] = math.Sqrt(max(b.spread[f]-b.mean[f]*b.mean[f], 0.01))
		b.mean[f] += b.shift[f]
	}
	for i := range causes {
		k := &causes[i]
		logs := b.weigh(k, b.by, b.shift)
		for s, log := range logs {
			if math.IsInf(log, -1) {
				continue
			}
			for j := range k.faults {
				f := &k.faults[j]
				b.atoms = append(b.atoms, atom{
					cause: k, fault: f, size: s, chance: log + math.Log(k.prior*b.shareOf(f)),
				})
			}
		}
	}
	see(b.c, b.atoms)
	base := b.normalize()
	// Two things at once are weighed where one is likely at all.
	if b.of(sound) < likely {
		b.pairs(base)
	}
	return b
}

// shareOf is the share of a fault in this weather.
func (b *belief) shareOf(f *fault) float64 {
	if o := b.c.OutdoorDryBulb; f.cold && o != nil && o.Value > warmestFrost {
		return 0.02 * f.share
	}
	return f.share
}

// bounded takes a reading beyond those of machines next to empty for one of theirs: in a vacuum
// or with vapor in the liquid line, further tells nothing more.
func (o *observation) bounded(by [signature.Devices]float64) {
	empty := slices.Index(signature.Causes, nextToEmpty)
	most := [signature.Features]float64{}
	far := func(r *signature.Row, _ signature.Device, _ float64) {
		const wide = 2 // standard deviations
		for f, m := range r.Mean(o.weather) {
			way := 1.0
			if f == int(signature.Subcooling) {
				way = -1
			}
			most[f] = max(most[f], way*m+wide*math.Sqrt(r.Covariance[f][f]))
		}
	}
	eachRow(empty, signature.Sizes-1, by, o.weather, far)
	for _, f := range []signature.Feature{signature.EvaporatingUnder, signature.Superheat} {
		o.value[f] = min(o.value[f], most[f])
	}
	o.value[signature.Subcooling] = max(o.value[signature.Subcooling], -most[signature.Subcooling])
}

// weigh is the logarithm of the likelihood of a cause in each size, its share of sizes in it.
func (b *belief) weigh(
	k *cause, by [signature.Devices]float64, shift [signature.Features]float64,
) [signature.Sizes]float64 {
	out := [signature.Sizes]float64{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	type changes = func(*signature.Row, *[signature.Features]float64)
	row := func(cause, size int, o *observation, change changes) {
		weighed := func(row *signature.Row, _ signature.Device, share float64) {
			for _, s := range b.speeds {
				r, m := *row, row.Mean(o.weather)
				s.slow(&r, &m)
				charted(&r, &m, &shift)
				if change != nil {
					change(&r, &m)
				}
				log := o.likelihood(m, &r.Covariance) + math.Log(share*s.chance)
				out[size] = sumLog(out[size], log)
			}
		}
		eachRow(cause, size, by, o.weather, weighed)
	}
	switch {
	case k.code == sound || k.code == defrost:
		row(0, 0, b.seen, nil)
	case k.code == otherFluid:
		for _, o := range b.otherFluids() {
			row(0, 0, o, nil)
		}
	case k.signature < 0:
		row(0, 0, b.seen, special[k.code])
	default:
		for s := range signature.Sizes {
			row(k.signature, s, b.seen, nil)
			out[s] += math.Log(ordinary[s])
		}
	}
	return out
}

// charted moves a row by the maker's chart, which tells more of this machine than its kind does.
func charted(r *signature.Row, m, shift *[signature.Features]float64) {
	for f := range m {
		if m[f] += shift[f]; shift[f] == 0 {
			continue
		}
		for g := range m {
			r.Covariance[f][g] *= chartNarrows
			r.Covariance[g][f] *= chartNarrows
		}
	}
}

// chartNarrows is what is left of the spread of a kind, one factor for a row and one for a
// column, once the maker's chart is known.
const chartNarrows = 0.6

// special are rows of their own, from those of a sound machine.
var special = map[string]func(*signature.Row, *[signature.Features]float64){
	// In heating the large line carries hot gas: the hose there reads the head.
	suctionPort: func(r *signature.Row, m *[signature.Features]float64) {
		far := -m[signature.CondensingOver] - usualReturn + usualOutdoor
		wide(r, m, signature.EvaporatingUnder, far, 12)
		wide(r, m, signature.Superheat, far+m[signature.EvaporatingUnder], 30)
	},
	// A clamp that hangs in the air, or the figure of another reading: grossly wrong, and seldom.
	dischargeClamp: func(r *signature.Row, m *[signature.Features]float64) {
		wide(r, m, signature.DischargeOver, m[signature.DischargeOver]-15, 30)
	},
	// The compressor turns and moves little: both pressures drift to what the air gives.
	notPumping: func(r *signature.Row, m *[signature.Features]float64) {
		wide(r, m, signature.EvaporatingUnder, 0, 5)
		wide(r, m, signature.Superheat, 6, 8)
		wide(r, m, signature.CondensingOver, 4, 5)
		wide(r, m, signature.Subcooling, 2, 4)
		wide(r, m, signature.DischargeOver, 25, 20)
		wide(r, m, signature.Rise, 1, 2)
		wide(r, m, signature.OutdoorDrop, 0.5, 1)
		wide(r, m, signature.Power, -60, 20)
	},
	// Anything at all.
	contradiction: func(r *signature.Row, m *[signature.Features]float64) {
		for f := range r.Covariance {
			for g := range r.Covariance {
				r.Covariance[f][g] *= 6
			}
			r.Covariance[f][f] += 200
		}
	},
}

func wide(
	r *signature.Row, m *[signature.Features]float64, f signature.Feature, mean, std float64,
) {
	m[f] = mean
	for g := range r.Covariance {
		r.Covariance[f][g], r.Covariance[g][f] = 0, 0
	}
	r.Covariance[f][f] = std * std
}

// otherFluids are the features by the refrigerants that the named one could be taken for.
func (b *belief) otherFluids() []*observation {
	var out []*observation
	at := func(
		of func(quantity.Pressure) (quantity.Temperature, error),
		gauge *quantity.Uncertain[quantity.GaugePressure],
		like *quantity.Uncertain[quantity.Temperature],
	) *quantity.Uncertain[quantity.Temperature] {
		if gauge == nil || like == nil {
			return nil
		}
		t, err := of(gauge.Value.Absolute(b.c.Evidence.Atmosphere))
		if err != nil {
			return nil
		}
		return &quantity.Uncertain[quantity.Temperature]{Value: t, Std: like.Std}
	}
	for _, f := range b.c.Others {
		e := at(f.DewTemperature, b.c.SuctionPressure, b.c.EvaporatingDew)
		k := at(f.BubbleTemperature, b.c.LiquidPressure, b.c.CondensingBubble)
		if e != nil && k != nil {
			out = append(out, observe(b.c, e, k))
		}
	}
	return out
}

// see takes in what caught the eye and the looks that were answered, by logarithms of chances.
func see(c *modes.Case, atoms []atom) {
	for _, s := range sights(c) {
		l := look{usual: s.usual, of: s.of}
		for i := range atoms {
			a := &atoms[i]
			p := l.chance(a)
			if !s.seen {
				p = 1 - p
			}
			a.chance += math.Log(p)
		}
	}
	for _, answer := range c.Answers {
		for i := range looks {
			if l := &looks[i]; l.code == answer.Code {
				for k := range atoms {
					p := l.chance(&atoms[k])
					if !answer.Yes {
						p = 1 - p
					}
					atoms[k].chance += math.Log(p)
				}
			}
		}
	}
}

// normalize makes chances of logarithms, and returns the logarithm of their sum.
func (b *belief) normalize() float64 {
	most := math.Inf(-1)
	for i := range b.atoms {
		most = max(most, b.atoms[i].chance)
	}
	sum := 0.0
	for i := range b.atoms {
		b.atoms[i].chance = math.Exp(b.atoms[i].chance - most)
		sum += b.atoms[i].chance
	}
	for i := range b.atoms {
		b.atoms[i].chance /= sum
	}
	return most + math.Log(sum)
}

// A standing is a cause with all of its chance, its faults and its likely size.
type standing struct {
	*cause
	chance float64
	faults []modes.FaultChance
	size   float64
}

// standings lists the causes by falling chance.
func (b *belief) standings() []standing {
	var out []standing
	for i := range causes {
		s := standing{cause: &causes[i]}
		by := map[string]float64{}
		for i := range b.atoms {
			chance := b.atoms[i].chance
			b.atoms[i].each(func(p part) {
				if p.cause == s.cause {
					s.chance += chance
					by[p.fault.code] += chance
					size := s.low + (s.high-s.low)*(float64(p.size)+0.5)/signature.Sizes
					s.size += chance * size
				}
			})
		}
		if s.chance > 0 {
			s.size /= s.chance
		}
		for _, f := range s.cause.faults {
			if p := by[f.code]; p > 0 {
				s.faults = append(s.faults, modes.FaultChance{Fault: f.code, Chance: p / s.chance})
			}
		}
		sort.SliceStable(s.faults, func(i, j int) bool {
			return modes.Rank(s.faults[i].Chance) > modes.Rank(s.faults[j].Chance)
		})
		out = append(out, s)
	}
	sort.SliceStable(out, func(i, j int) bool {
		return modes.Rank(out[i].chance) > modes.Rank(out[j].chance)
	})
	return out
}

// of is the chance that any of some causes is there.
func (b *belief) of(codes ...string) float64 {
	sum := 0.0
	for i := range b.atoms {
		there := false
		b.atoms[i].each(func(p part) { there = there || slices.Contains(codes, p.cause.code) })
		if there {
			sum += b.atoms[i].chance
		}
	}
	return sum
}
