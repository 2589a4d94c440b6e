package satline

import (
	"cmp"
	"slices"

	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/internal/judge/readcheck"
)

// dangersOf are those that the meter showed, and those to the compressor that readings taken
// show, in every mode, whatever else is in doubt.
func dangersOf(p *prepared, s *settled, d *Derived, c *modes.Case, mode Mode) []modes.Danger {
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
		if !passing(r.Code, p, c) {
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
		DischargeLine: r.DischargeLine.read(),
		Outdoor:       r.OutdoorDryBulb.read(),
		Atmosphere:    p.atmosphere.Pressure.Value,
		Heating:       mode != Cooling,
		Current:       r.CompressorCurrent.read(),
		RatedLoad:     p.visit.Equipment.Label.RatedLoadCurrent,
	}
	switch mode {
	case Heating:
		c.Outdoor = r.ReturnDryBulb.read() // the air that the condenser gives its heat to
	case 0:
		c.Outdoor = nil
	}
	for _, v := range []*SteadinessVerdict{s.steadiness, s.valve} {
		if v != nil && v.Method == charge.Superheat && v.Course.State == charge.Hunting {
			c.LowestSuperheat = new(v.Course.Low)
		}
	}
	if r.SuctionPressure.taken {
		c.Suction = new(p.absolute(r.SuctionPressure.of))
	}
	if high := cmp.Or(r.DischargePressure.read(), r.LiquidPressure.read()); high != nil {
		c.Discharge = new(p.absolute(*high))
	}
	return c
}

// passing says that a danger is that of a start, of the ice or of readings that cannot be, and
// not of the machine: for minutes after every start the suction dips and a valve finds its
// place, a small superheat on an iced coil says nothing beside the ice, and no liquid makes a
// line far colder than it boils.
func passing(code string, p *prepared, c *modes.Case) bool {
	iced := p.visit.coilIced()
	short := slices.ContainsFunc(
		c.Spoils, func(o charge.Obstacle) bool { return o.Code == "run-short" },
	)
	fails := func(check string) bool {
		return slices.ContainsFunc(
			c.Doubts, func(x readcheck.Doubt) bool { return x.Code == check },
		)
	}
	switch code {
	case "evaporating-coldest", "evaporating-cold":
		return short && !iced
	case "superheat-low":
		return short || iced || fails(readcheck.LineCannotBe)
	case "floodback", "slugging":
		return fails(readcheck.LineCannotBe)
	}
	return false
}
