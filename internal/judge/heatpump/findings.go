package heatpump

import (
	"math"
	"sort"

	"github.com/satline/satline/internal/judge/heatpump/signature"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

func lookFact(code, suffix string) fact.Fact { return fact.New(fact.Code("look." + code + suffix)) }

func outcomeFact(code, suffix string, chance float64, then string, thenChance float64) fact.Fact {
	return fact.New("outcome.look",
		fact.Of("answer", fact.Term(lookFact(code, suffix).Code)),
		fact.Of("chance", fact.Share(chance)),
		fact.Of("then", fact.Term("cause."+then)), fact.Of("thenChance", fact.Share(thenChance)))
}

// share is the size of a cause in steps of 5 %; false where it has none.
func (s *standing) share() (fact.Value, bool) {
	rounded := math.Round(20*s.size) / 20
	return fact.Of("size", fact.Share(rounded)), s.high > 0 && rounded > 0
}

// findings lists the causes that may be present.
func (b *belief) findings(ranked []standing) []modes.Finding {
	const few, rare = 6, 0.02
	var out []modes.Finding
	for i := range ranked {
		s := &ranked[i]
		if len(out) == few || s.chance < rare && s.code != sound {
			continue
		}
		f := modes.Finding{Cause: s.code, Chance: s.chance, Says: fact.New(
			fact.Code("finding."+s.code), fact.Of("chance", fact.Share(s.chance)),
		)}
		if size, ok := s.share(); ok {
			f.Says = f.Says.With(size)
		}
		if s.code != sound {
			f.Faults = s.faults
		}
		f.For, f.Against = b.signs(s)
		out = append(out, f)
	}
	return out
}

var featureTerms = [signature.Features]fact.Term{
	"feature.evaporating-under", "feature.superheat", "feature.condensing-over-room",
	"feature.subcooling", "feature.discharge-over", "feature.rise", "feature.outdoor-drop",
	"feature.airflow", "feature.power-over",
}

// signs are the readings that speak for and against a cause, the strongest first.
func (b *belief) signs(s *standing) (for_, against []fact.Fact) {
	const clear, near, most = 1.2, 0.8, 4
	type sign struct {
		f        signature.Feature
		strength float64
	}
	var pro, con []sign
	reads := b.readsWith(s)
	for f := range signature.Features {
		if !b.seen.has[f] {
			continue
		}
		std := math.Hypot(b.spread[f], math.Sqrt(b.seen.noise[f][f]))
		off := math.Abs(b.seen.value[f]-b.mean[f]) / std
		moves := math.Abs(reads[f]-b.mean[f]) / std
		miss := math.Abs(b.seen.value[f]-reads[f]) / std
		switch {
		case s.code == sound && off < near:
			pro = append(pro, sign{signature.Feature(f), near - off})
		case s.code == sound && off > 1.8:
			con = append(con, sign{signature.Feature(f), off})
		case s.code != sound && moves > clear && miss < off:
			pro = append(pro, sign{signature.Feature(f), off - miss})
		case s.code != sound && miss > 1.8 && miss > off:
			con = append(con, sign{signature.Feature(f), miss - off})
		}
	}
	list := func(signs []sign, codes [2]fact.Code) (out []fact.Fact) {
		sort.SliceStable(signs, func(i, j int) bool { return signs[i].strength > signs[j].strength })
		code := codes[0]
		if s.code == sound {
			code = codes[1]
		}
		for _, x := range signs[:min(most, len(signs))] {
			out = append(out, fact.New(code, fact.Of("feature", featureTerms[x.f]),
				b.valueOf("value", x.f, b.seen.value[x.f]), b.valueOf("sound", x.f, b.mean[x.f]),
				b.valueOf("reads", x.f, reads[x.f])))
		}
		return out
	}
	return list(pro, [2]fact.Code{"sign.for", "sign.as-sound"}),
		list(con, [2]fact.Code{"sign.against", "sign.not-as-sound"})
}

// readsWith is what a cause of its likely size reads.
func (b *belief) readsWith(s *standing) [signature.Features]float64 {
	reads := b.mean
	if s.signature <= 0 {
		if change := special[s.code]; change != nil && s.code != contradiction {
			var r signature.Row
			change(&r, &reads)
		}
		return reads
	}
	var weight float64
	sum := [signature.Features]float64{}
	by := devices(b.c.Metering)
	for i := range b.atoms {
		chance := b.atoms[i].chance
		b.atoms[i].each(func(p part) {
			if p.cause != s.cause {
				return
			}
			for d, share := range by {
				with := signature.Mean(s.signature, p.size, signature.Device(d), b.seen.weather)
				without := signature.Mean(0, 0, signature.Device(d), b.seen.weather)
				for f := range sum {
					sum[f] += chance * share * (with[f] - without[f])
				}
			}
			weight += chance
		})
	}
	for f := range reads {
		if weight > 0 {
			reads[f] += sum[f] / weight
		}
	}
	return reads
}

// valueOf is a feature as a quantity.
func (b *belief) valueOf(name string, f signature.Feature, v float64) fact.Value {
	tons := b.c.NominalCapacity.Tons()
	switch f {
	case signature.Airflow:
		return fact.Amount(name, quantity.CFM(400*tons*math.Exp(v/100)))
	case signature.Power:
		return fact.Of(name, fact.Number(math.Exp((v-b.mean[f])/100))) // times what is usual
	}
	return fact.Amount(name, quantity.TemperatureDelta(v))
}
