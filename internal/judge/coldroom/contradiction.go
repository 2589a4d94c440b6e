package coldroom

import (
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// swapped reports whether suction reads more than the high side: every figure of the gauges is that
// of the other port.
func swapped(c *modes.Case) bool { return doubtOf(c, "gauges-swapped") != nil }

func doubtOf(c *modes.Case, code string) *readcheck.Doubt {
	for i := range c.Doubts {
		if x := &c.Doubts[i]; x.Code == code {
			return x
		}
	}
	return nil
}

// contradiction says which readings cannot be those of a machine that runs, each at the place that
// it is named by; without one the fact has no code. A suction line takes up heat on its way, unless
// it passes through air that is colder. Margins are common practice, no source.
func contradiction(c *modes.Case, k *known) fact.Fact {
	const air, pipe, colder = 1, 2, 5 // K
	if x := doubtOf(c, "gauges-swapped"); x != nil {
		return fact.New(fact.Code("doubt."+x.Code), x.Values...)
	}
	if beyond(c.SupplyDryBulb, c.ReturnDryBulb, air) {
		return exchanged("doubt.cold-air", c.SupplyDryBulb, c.ReturnDryBulb)
	}
	if b := c.BulbLine; beyond(b, c.SuctionLine, pipe) && k.weather.outdoor > float64(b.Value)+colder {
		return exchanged("doubt.cold-clamps", b, c.SuctionLine)
	}
	return fact.Fact{}
}

// beyond reports whether a reads more than b by a margin, K, and two standard uncertainties.
func beyond(a, b readcheck.Temp, margin float64) bool {
	return a != nil && b != nil && float64(a.Value.Sub(b.Value)) > margin+2*(a.Std+b.Std)
}

func exchanged(code fact.Code, a, b *quantity.Uncertain[quantity.Temperature]) fact.Fact {
	return fact.New(code, fact.Amount("a", a.Value), fact.Amount("b", b.Value))
}

// contradicts has readings taken again that cannot be.
func (p *planner) contradicts() bool {
	says := contradiction(p.c, p.k)
	if says.Code == "" {
		return false
	}
	p.unjudged = says
	p.headline = fact.New("headline.cold-early", fact.Of("why", fact.Term(says.Code))).
		With(says.Values...)
	p.add(says.Code + ".mend").Why = says
	p.add(modes.ReadAgain)
	return true
}
