package satline

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// Values lists the derived values that are there, in the order a technician works them out,
// each under its JSON name.
func (d Derived) Values() []fact.Value {
	var out []fact.Value
	out = appendValue(out, "evaporatingDew", d.EvaporatingDew)
	out = appendValue(out, "condensingBubble", d.CondensingBubble)
	out = appendValue(out, "superheat", d.Superheat)
	out = appendValue(out, "subcooling", d.Subcooling)
	out = appendValue(out, "condensingOverOutdoor", d.CondensingOverOutdoor)
	out = appendValue(out, "approach", d.Approach)
	if r := d.CompressionRatio; r != nil {
		out = append(out, fact.Of("compressionRatio", fact.Times(r.Value)))
	}
	out = appendValue(out, "temperatureSplit", d.TemperatureSplit)
	if r := d.ReturnHumidity; r != nil {
		out = append(out, fact.Of("returnHumidity", fact.Share(r.Value)))
	}
	out = appendValue(out, "totalCapacity", d.TotalCapacity)
	out = appendValue(out, "sensibleCapacity", d.SensibleCapacity)
	out = appendValue(out, "latentCapacity", d.LatentCapacity)
	if r := d.SensibleHeatRatio; r != nil {
		out = append(out, fact.Of("sensibleHeatRatio", fact.Share(r.Value)))
	}
	out = appendValue(out, "condensate", d.Condensate)
	if e := d.Efficiency; e != nil {
		out = append(out, fact.Of("efficiency", fact.Number(e.COP)))
	}
	return out
}

// in takes away what means nothing in a mode.
func (d Derived) in(m Mode) Derived {
	if m != Heating {
		return d
	}
	return Derived{
		EvaporatingDew: d.EvaporatingDew, CondensingBubble: d.CondensingBubble,
		CondensingDew: d.CondensingDew, Superheat: d.Superheat, Subcooling: d.Subcooling,
		CompressionRatio: d.CompressionRatio, ReturnHumidity: d.ReturnHumidity,
	}
}

func appendValue[T quantity.Quantity](
	out []fact.Value, name string, u *quantity.Uncertain[T],
) []fact.Value {
	if u == nil {
		return out
	}
	return append(out, fact.Measured(name, *u))
}
