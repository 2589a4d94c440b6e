package chart

import (
	"math"

	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
	"gonum.org/v1/plot/vg"
)

// A plane maps dry bulb and humidity ratio to points of the page.
type plane struct {
	scales
	p     quantity.Pressure
	model psychro.Model

	low, high quantity.Temperature
	wettest   float64 // kg/kg

	frame vg.Rectangle
}

func (pl *plane) x(t quantity.Temperature) vg.Length {
	share := float64(t-pl.low) / float64(pl.high-pl.low)
	return pl.frame.Min.X + vg.Length(share)*(pl.frame.Max.X-pl.frame.Min.X)
}

func (pl *plane) y(w float64) vg.Length {
	return pl.frame.Min.Y + vg.Length(w/pl.wettest)*(pl.frame.Max.Y-pl.frame.Min.Y)
}

func (pl *plane) point(a psychro.Air) vg.Point {
	return vg.Point{X: pl.x(a.DryBulb()), Y: pl.y(a.HumidityRatio())}
}

// saturated is the humidity ratio of saturated air, or the top of the plane where
// that is beyond it.
func (pl *plane) saturated(t quantity.Temperature) float64 {
	a, err := pl.model.Saturated(t, pl.p)
	if err != nil || a.HumidityRatio() > pl.wettest {
		return pl.wettest
	}
	return a.HumidityRatio()
}

// fullAt is the dry bulb at which saturated air reaches the top of the plane.
func (pl *plane) fullAt() quantity.Temperature {
	if a, err := pl.model.FromHumidityRatioAndRelativeHumidity(pl.wettest, 1, pl.p); err == nil &&
		a.DryBulb() < pl.high {
		return max(pl.low, a.DryBulb())
	}
	return pl.high
}

// relativeHumidity is the line of one relative humidity.
func (pl *plane) relativeHumidity(rh float64) (line []vg.Point) {
	const steps = 160
	for i := range steps + 1 {
		t := pl.low + (pl.high-pl.low)*quantity.Temperature(i)/steps
		a, err := pl.model.FromRelativeHumidity(t, rh, pl.p)
		if err != nil {
			break
		}
		line = append(line, pl.point(a))
		if a.HumidityRatio() > 1.5*pl.wettest {
			break
		}
	}
	return line
}

// region is the outline of all air on the plane: under the saturation curve.
func (pl *plane) region() (outline []vg.Point) {
	outline = append(outline, vg.Point{X: pl.frame.Min.X, Y: pl.frame.Min.Y})
	full := pl.fullAt()
	const steps = 160
	for i := range steps + 1 {
		t := pl.low + (full-pl.low)*quantity.Temperature(i)/steps
		outline = append(outline, vg.Point{X: pl.x(t), Y: pl.y(pl.saturated(t))})
	}
	return append(outline,
		vg.Point{X: pl.frame.Max.X, Y: outline[len(outline)-1].Y},
		vg.Point{X: pl.frame.Max.X, Y: pl.frame.Min.Y})
}

// wetBulb is the line of one wet bulb, from saturated to dry air.
func (pl *plane) wetBulb(b quantity.Temperature) (line []vg.Point) {
	s, err := pl.model.Saturated(b, pl.p)
	if err != nil {
		return nil
	}
	const steps = 16
	for i := range steps + 1 {
		w := s.HumidityRatio() * (1 - float64(i)/steps)
		a, err := pl.model.FromWetBulbAndHumidityRatio(b, w, pl.p)
		if err != nil {
			break
		}
		line = append(line, pl.point(a))
	}
	return line
}

// volume is the line of one specific volume, from dry to saturated air.
func (pl *plane) volume(v quantity.SpecificVolume) (line []vg.Point) {
	at := func(w float64) (quantity.Temperature, bool) {
		lo, hi := float64(pl.low)-120, float64(pl.high)+60
		for range 60 {
			mid := 0.5 * (lo + hi)
			if pl.volumeOf(quantity.Temperature(mid), w) < v {
				lo = mid
			} else {
				hi = mid
			}
		}
		t := quantity.Temperature(0.5 * (lo + hi))
		return t, w <= pl.saturated(t)
	}
	const steps = 24
	for i := range steps + 1 {
		w := pl.wettest * float64(i) / steps
		t, ok := at(w)
		if !ok {
			// The last stretch, up to the curve.
			low, high := pl.wettest*float64(i-1)/steps, w
			for range 40 {
				mid := 0.5 * (low + high)
				if _, ok := at(mid); ok {
					low = mid
				} else {
					high = mid
				}
			}
			if t, ok = at(low); ok {
				line = append(line, vg.Point{X: pl.x(t), Y: pl.y(low)})
			}
			break
		}
		line = append(line, vg.Point{X: pl.x(t), Y: pl.y(w)})
	}
	return line
}

// volumeOf is for any temperature: beyond the model's range it grows with it.
func (pl *plane) volumeOf(t quantity.Temperature, w float64) quantity.SpecificVolume {
	if t < quantity.Celsius(-100) {
		return 0
	}
	// Supersaturated air has no state, but its volume as a gas is wanted to find
	// where the line leaves the chart.
	a, err := pl.model.FromHumidityRatio(t, min(w, pl.saturatedRaw(t)), pl.p)
	if err != nil {
		return 0
	}
	return a.SpecificVolume() * quantity.SpecificVolume(
		(molarRatio+w)/(molarRatio+a.HumidityRatio()),
	)
}

// molarRatio is the molar mass of water over that of dry air.
const molarRatio = 0.622

func (pl *plane) saturatedRaw(t quantity.Temperature) float64 {
	a, err := pl.model.Saturated(t, pl.p)
	if err != nil {
		return math.Inf(1)
	}
	return a.HumidityRatio()
}
