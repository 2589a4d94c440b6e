package satline

import (
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/modes"
)

// dangersOf are those that the meter showed, and those to the compressor that readings taken
// show, in every mode, whatever else is in doubt.
func dangersOf(
	p *prepared, s *settled, d *Derived, spoils []charge.Obstacle, mode Mode,
) []modes.Danger {
	var out []modes.Danger
	if p.electrical != nil {
		for _, x := range p.electrical.Dangers {
			out = append(out, modes.Danger{
				Code: x.Code, Grave: x.Grave, Stops: x.Stops, Says: x.Says, Why: x.Why,
				Source: x.Source, Meter: true,
			})
		}
	}
	for _, r := range charge.Risks(compressorOf(p, s, d, mode)) {
		if !passing(r.Code, p, spoils) {
			out = append(out, modes.Danger{
				Code: r.Code, Grave: r.Grave, Stops: r.Stops, Says: r.Says, Source: r.Source,
			})
		}
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
func passing(code string, p *prepared, spoils []charge.Obstacle) bool {
	switch code {
	case "evaporating-coldest", "evaporating-cold":
		short := slices.ContainsFunc(
			spoils, func(o charge.Obstacle) bool { return o.Code == "run-short" },
		)
		return short && !p.visit.Conditions.CoilIced
	case "superheat-low":
		return p.visit.Conditions.CoilIced
	}
	return false
}
