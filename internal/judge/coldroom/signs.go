package coldroom

import (
	"math"
	"sort"

	"github.com/satline/satline/internal/judge/coldroom/signature"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// signCodes are the facts that show a feature beside what machines of the kind read.
var signCodes = [signature.Features]fact.Code{
	signature.Difference: "cold-sign.difference", signature.Superheat: "cold-sign.superheat",
	signature.BulbSuperheat: "cold-sign.bulb", signature.Split: "cold-sign.split",
	signature.OverOutdoor: "cold-sign.over-outdoor", signature.Subcooling: "cold-sign.subcooling",
	signature.Hot: "cold-sign.discharge", signature.Rise: "cold-sign.rise",
	signature.OverBox: "cold-sign.box",
}

// signs are the readings that speak for a cause against a sound machine, and those that speak
// against it, the strongest first.
func (b *belief) signs(k *known, code string) (pro, contra []fact.Fact) {
	type sign struct {
		fact fact.Fact
		by   float64
	}
	var list []sign
	normal, of := b.middle(sound), b.middle(code)
	if normal == nil || of == nil {
		return nil, nil
	}
	for i := range signature.Features {
		if !k.read(i) || signCodes[i] == "" {
			continue
		}
		reads, slope := signature.Bend(i, k.value[i])
		away := func(c *cluster) float64 {
			return math.Abs(reads-c.mean[i]) / math.Sqrt(c.spread[i][i]+sq(slope*k.std[i]))
		}
		const moves = 0.5 // standard deviations of sound machines
		moved := math.Abs(of.mean[i] - normal.mean[i])
		if code != sound && moved < moves*math.Sqrt(normal.spread[i][i]) {
			continue // what it hardly moves speaks neither for it nor against it
		}
		s := sign{by: away(normal) - away(of)}
		if code == sound {
			s.by = 1 - away(normal)
		}
		if math.Abs(s.by) < 0.3 {
			continue
		}
		usual, bent := signature.Straighten(i, normal.mean[i])
		s.fact = fact.New(
			signCodes[i],
			fact.Amount("measured", quantity.TemperatureDelta(k.value[i])),
			fact.Measured("sound", quantity.Uncertain[quantity.TemperatureDelta]{
				Value: quantity.TemperatureDelta(usual),
				Std:   math.Sqrt(normal.spread[i][i]) / bent,
			}),
		)
		if code != sound {
			this, _ := signature.Straighten(i, of.mean[i])
			s.fact = s.fact.With(fact.Amount("this", quantity.TemperatureDelta(this)))
		}
		list = append(list, s)
	}
	sort.SliceStable(list, func(i, j int) bool { return math.Abs(list[i].by) > math.Abs(list[j].by) })
	for _, s := range list {
		if s.by > 0 {
			pro = append(pro, s.fact)
		} else {
			contra = append(contra, s.fact)
		}
	}
	return pro, contra
}

// middle is the likeliest size of a cause; nil for one that this machine cannot have.
func (b *belief) middle(code string) *cluster {
	var top *cluster
	chance := -1.0
	for i := range b.clusters {
		if c := &b.clusters[i]; signature.Causes[c.cause].Code == code && b.of[i] > chance {
			top, chance = c, b.of[i]
		}
	}
	return top
}
