package coldroom

import (
	"math"
	"slices"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// signCodes are the facts that show a feature beside what machines of the kind read.
var signCodes = [features]fact.Code{
	difference: "cold-sign.difference", superheat: "cold-sign.superheat",
	bulbSuperheat: "cold-sign.bulb", split: "cold-sign.split",
	overOutdoor: "cold-sign.over-outdoor", subcooling: "cold-sign.subcooling",
	hot: "cold-sign.discharge", rise: "cold-sign.rise", overBox: "cold-sign.box",
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
	for i := range features {
		if k.std[i] == 0 || signCodes[i] == "" {
			continue
		}
		away := func(c *cluster) float64 {
			return math.Abs(k.value[i]-c.mean[i]) / math.Sqrt(c.spread[i][i]+sq(k.std[i]))
		}
		s := sign{by: away(normal) - away(of)}
		if code == sound {
			s.by = 1 - away(normal)
		}
		if math.Abs(s.by) < 0.3 {
			continue
		}
		s.fact = fact.New(
			signCodes[i],
			fact.Amount("measured", quantity.TemperatureDelta(k.value[i])),
			fact.Measured("sound", quantity.Uncertain[quantity.TemperatureDelta]{
				Value: quantity.TemperatureDelta(normal.mean[i]), Std: math.Sqrt(normal.spread[i][i]),
			}),
		)
		if code != sound {
			s.fact = s.fact.With(fact.Amount("this", quantity.TemperatureDelta(of.mean[i])))
		}
		list = append(list, s)
	}
	slices.SortStableFunc(list, func(x, y sign) int { return compare(math.Abs(y.by), math.Abs(x.by)) })
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
		if c := &b.clusters[i]; causes[c.cause].code == code && b.of[i] > chance {
			top, chance = c, b.of[i]
		}
	}
	return top
}
