package refrigerant

import (
	"math"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/quantity"
)

// A boiling is the two-phase states of a blend at one pressure, from the table.
// Where on its way a state is, is said by its share of the heat: 0 at the bubble
// point, 1 at the dew point, linear in enthalpy.
type boiling struct {
	liquid, vapor saturated
	isobar        table.Isobar
}

// boilAt makes b the states between two edges at one pressure. It reports false
// where there is no table.
func (r *Refrigerant) boilAt(b *boiling, liquid, vapor *saturated) bool {
	if !r.insideDome().At(liquid.temperature, &b.isobar) {
		return false
	}
	b.liquid, b.vapor = *liquid, *vapor
	return true
}

func (b *boiling) temperature(share float64) float64 {
	line := b.liquid.temperature + share*(b.vapor.temperature-b.liquid.temperature)
	return line + b.isobar.Off(table.InnerTemperature, share)
}

func (b *boiling) quality(share float64) float64 {
	return share + b.isobar.Off(table.InnerQuality, share)
}

func (b *boiling) density(share float64) float64 {
	from, to := 1/b.liquid.density, 1/b.vapor.density
	return 1 / (from + (to-from)*(share+b.isobar.Off(table.InnerVolume, share)))
}

func (b *boiling) entropy(share float64) float64 {
	share += b.isobar.Off(table.InnerEntropy, share)
	return b.liquid.entropy + (b.vapor.entropy-b.liquid.entropy)*share
}

// shareAt returns the share of the heat at which enthalpy or entropy has the
// value given, which is between those of the edges.
func (b *boiling) shareAt(c caloric, value float64) float64 {
	from, to := c.ofSaturated(&b.liquid), c.ofSaturated(&b.vapor)
	share := (value - from) / (to - from)
	if c == entropy {
		return b.shareWhere(table.InnerEntropy, share)
	}
	return share
}

// shareWhere returns the share of the heat at which quality or entropy, which
// rise from 0 to 1, has the value given: by Newton's method, kept inside
// a bracket.
func (b *boiling) shareWhere(k table.Inner, value float64) float64 {
	low, high, share := 0.0, 1.0, value
	for range 60 {
		off := share + b.isobar.Off(k, share) - value
		if off > 0 {
			high = share
		} else {
			low = share
		}
		next := share - off/(1+b.isobar.Slope(k, share))
		if !(next >= low && next <= high) {
			next = (low + high) / 2
		}
		last := share
		if share = next; math.Abs(share-last) < 1e-9 {
			break // the next step would be the square of this one
		}
	}
	return share
}

// state returns the whole state at a share of the heat.
func (b *boiling) state(p quantity.Pressure, share float64) State {
	return State{
		Phase:       TwoPhase,
		Pressure:    p,
		Temperature: quantity.Temperature(b.temperature(share)),
		Density:     quantity.Density(b.density(share)),
		Enthalpy: quantity.SpecificEnthalpy(
			b.liquid.enthalpy + share*(b.vapor.enthalpy-b.liquid.enthalpy),
		),
		Entropy: quantity.SpecificEntropy(b.entropy(share)),
		Quality: min(1, max(0, b.quality(share))),
	}
}
