package satline

import (
	"math"
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/diagnose"
	"github.com/satline/satline/quantity/fact"
)

// dangersOf are the dangers that readings taken show, in every mode, whatever else is in
// doubt; but for those that a wrong instrument or setting only seems to show.
func dangersOf(p *prepared, s *settled, d *Derived, b *belief, mode Mode) []Danger {
	var out []Danger
	flooded := false
	for _, r := range charge.Risks(compressorOf(p, s, d, mode)) {
		flooded = flooded || r.Code == "floodback" && !b.apparent(r.Code)
		if r.Code == "discharge-cool" && flooded {
			continue // it says the same
		}
		if passing(r.Code, p, b) || b.apparent(r.Code) {
			continue
		}
		out = append(out, Danger{
			Code: r.Code, Grave: r.Grave, Stops: r.Stops, Says: r.Says,
			Why: fact.New(fact.Code("danger." + r.Code + ".why")), Source: r.Source,
		})
	}
	return out
}

func compressorOf(p *prepared, s *settled, d *Derived, mode Mode) charge.Compressor {
	r := &s.readings
	c := charge.Compressor{
		Superheat:     d.Superheat,
		Evaporating:   d.EvaporatingDew,
		Condensing:    d.CondensingDew,
		DischargeLine: r.DischargeLine,
		Outdoor:       r.OutdoorDryBulb,
		Atmosphere:    p.atmosphere.Pressure.Value,
		Heating:       mode != Cooling,
		Current:       r.CompressorCurrent,
		RatedLoad:     p.visit.Equipment.Label.RatedLoadCurrent,
	}
	switch mode {
	case Heating:
		c.Outdoor = r.ReturnDryBulb // the air that the condenser gives its heat to
	case 0:
		c.Outdoor = nil
	}
	for _, v := range []*SteadinessVerdict{s.steadiness, s.valve} {
		if v != nil && v.Method == charge.Superheat && v.Course.State == charge.Hunting {
			low := v.Course.Low
			c.LowestSuperheat = &low
		}
	}
	if r.SuctionPressure != nil {
		suction := p.absolute(*r.SuctionPressure)
		c.Suction = &suction
	}
	if high := r.DischargePressure; high != nil {
		discharge := p.absolute(*high)
		c.Discharge = &discharge
	} else if high := r.LiquidPressure; high != nil {
		discharge := p.absolute(*high)
		c.Discharge = &discharge
	}
	return c
}

// passing says that a danger is that of a start or of the ice and not of the machine:
// the suction dips for minutes after every start, and a small superheat on an iced
// coil says nothing beside the ice.
func passing(code string, p *prepared, b *belief) bool {
	switch code {
	case "evaporating-coldest", "evaporating-cold":
		short := slices.ContainsFunc(
			b.spoiled, func(o charge.Obstacle) bool { return o.Code == "run-short" },
		)
		return short && !p.visit.Conditions.CoilIced
	case "superheat-low":
		return p.visit.Conditions.CoilIced
	}
	return false
}

// apparent says that a wrong instrument or setting is likely to be all there is to a danger.
func (b *belief) apparent(code string) bool {
	sum := 0.0
	for _, c := range diagnose.SeemsTo(code) {
		sum += b.Probability(c)
	}
	return math.Min(1, sum) >= likely
}
