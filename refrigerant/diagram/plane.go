package diagram

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"gonum.org/v1/gonum/interp"
	"gonum.org/v1/plot/vg"
)

// A plane maps enthalpy and the logarithm of pressure to points of the page.
type plane struct {
	scales
	fluid *refrigerant.Refrigerant
	dome  dome

	low, high   quantity.Pressure
	least, most quantity.SpecificEnthalpy

	frame vg.Rectangle
}

// bounds are those asked for, or the dome's stretched to all that is on the diagram.
func (d *Diagram) bounds() (low, high quantity.Pressure, least, most quantity.SpecificEnthalpy) {
	o := d.options
	marked := d.marked()
	if low, high = o.MinPressure, o.MaxPressure; low == 0 {
		pc := d.dome.critical.p
		low, high = pc/60, 1.3*pc
		for i, s := range marked {
			if i == 0 {
				low, high = pc/8, 1.15*pc
			}
			low, high = min(low, s.Pressure/2.2), max(high, s.Pressure*1.2)
		}
		if len(marked) == 0 {
			low = max(low, d.dome.dew[0].p)
		}
	}
	if least, most = o.MinEnthalpy, o.MaxEnthalpy; least == 0 && most == 0 {
		least, most = d.dome.within(low)
		width := most - least
		least, most = least-0.06*width, most+0.22*width
		for _, s := range marked {
			least, most = min(least, s.Enthalpy-0.06*width), max(most, s.Enthalpy+0.13*width)
		}
	}
	return low, high, least, most
}

// marked are all states that are marked or passed.
func (d *Diagram) marked() (out []refrigerant.State) {
	for _, s := range d.states {
		out = append(out, s.State)
	}
	for _, p := range d.paths {
		out = append(out, p.points...)
	}
	return out
}

func (pl *plane) x(h quantity.SpecificEnthalpy) vg.Length {
	share := float64((h - pl.least) / (pl.most - pl.least))
	return pl.frame.Min.X + vg.Length(share)*(pl.frame.Max.X-pl.frame.Min.X)
}

func (pl *plane) y(p quantity.Pressure) vg.Length {
	share := math.Log(float64(p/pl.low)) / math.Log(float64(pl.high/pl.low))
	return pl.frame.Min.Y + vg.Length(share)*(pl.frame.Max.Y-pl.frame.Min.Y)
}

func (pl *plane) point(s refrigerant.State) vg.Point {
	return vg.Point{X: pl.x(s.Enthalpy), Y: pl.y(s.Pressure)}
}

func (pl *plane) points(line []spot) []vg.Point {
	out := make([]vg.Point, 0, len(line))
	for _, s := range line {
		out = append(out, vg.Point{X: pl.x(s.h), Y: pl.y(s.p)})
	}
	return out
}

// How far a line may be off its curve, in points. Above the critical point a state of
// a blend costs a hundred times what it does below, and lines there are nearly
// straight.
const (
	bend  = 0.12
	loose = 0.25
)

// curve follows the states of at from one pressure to another, in steps that shorten
// where it bends. It ends where there are no more states.
func (pl *plane) curve(
	from, to quantity.Pressure, bend float64, at func(quantity.Pressure) (refrigerant.State, error),
) (line []vg.Point) {
	const depth = 6
	steps := 6
	if bend == loose {
		steps = 2
	}
	where := func(u float64) (vg.Point, bool) {
		s, err := at(from * quantity.Pressure(math.Pow(float64(to/from), u)))
		return pl.point(s), err == nil
	}
	var refine func(a, b float64, pa, pb vg.Point, left int)
	refine = func(a, b float64, pa, pb vg.Point, left int) {
		if left > 0 {
			m := (a + b) / 2
			pm, ok := where(m)
			if off := pm.Sub(pa.Add(pb).Scale(0.5)); ok &&
				math.Hypot(float64(off.X), float64(off.Y)) > bend {
				refine(a, m, pa, pm, left-1)
				refine(m, b, pm, pb, left-1)
				return
			}
		}
		line = append(line, pb)
	}
	var last vg.Point
	for i := range steps + 1 {
		u := float64(i) / float64(steps)
		p, ok := where(u)
		if !ok {
			if len(line) > 0 {
				break
			}
			continue
		}
		if len(line) == 0 {
			line = append(line, p)
		} else {
			refine(u-1/float64(steps), u, last, p, depth)
		}
		last = p
	}
	return line
}

// An isotherm has three pieces: liquid, across the dome, and vapor. Across the dome it
// is level for a pure fluid; in a zeotropic blend it falls from the bubble to the dew
// pressure of its temperature. Above the critical temperature it is of one
// piece. That of a blend within 0.3 % of it lies along the top of the dome and is left
// out.
type isotherm struct{ liquid, across, vapor []vg.Point }

func (pl *plane) isotherm(t quantity.Temperature) (out isotherm) {
	at := func(p quantity.Pressure) (refrigerant.State, error) { return pl.fluid.State(p, t) }
	if tc := pl.fluid.Critical().Temperature; t < tc && t > 0.997*tc && !pl.fluid.Pure() {
		return out
	}
	bubble, errBubble := pl.fluid.SaturatedLiquid(t)
	dew, errDew := pl.fluid.SaturatedVapor(t)
	if errBubble != nil || errDew != nil {
		if t > pl.fluid.Critical().Temperature {
			from := pl.high
			// The critical pressure itself is where a solver fails first.
			if seam := 1.003 * pl.dome.critical.p; from > seam && pl.low < seam &&
				!pl.fluid.Pure() {
				out.vapor = pl.curve(from, seam, loose, at)
				from = seam
			}
			out.vapor = append(out.vapor, pl.curve(from, pl.low, bend, at)...)
		}
		return out
	}
	// Beside the edge the rounding of table and equation may put a state on the
	// other side of it.
	const aside = 1e-4
	end := pl.point(bubble)
	if p := bubble.Pressure * (1 + aside); p < pl.high {
		out.liquid = pl.curve(pl.high, max(p, pl.low), bend, at)
	}
	if bubble.Pressure >= pl.low {
		if len(out.liquid) > 0 {
			out.liquid = append(out.liquid, end)
		}
		out.across = append(out.across, end)
		if fall := end.Y - pl.point(dew).Y; fall > 0.5 {
			steps := 3 + int(fall/vg.Points(8))
			for i := 1; i < steps; i++ {
				share := quantity.Pressure(i) / quantity.Pressure(steps)
				p := bubble.Pressure + (dew.Pressure-bubble.Pressure)*share
				if s, err := pl.fluid.State(p, t); err == nil && s.Phase == refrigerant.TwoPhase {
					out.across = append(out.across, pl.point(s))
				}
			}
		}
		out.across = append(out.across, pl.point(dew))
	}
	if p := dew.Pressure * (1 - aside); p > pl.low {
		out.vapor = append(
			[]vg.Point{pl.point(dew)}, pl.curve(min(p, pl.high), pl.low, bend, at)...,
		)
	}
	return out
}

// isentrope is the line of one entropy where it runs in vapor; that of a fluid whose
// dew line leans over may come in pieces. above are isobars above the critical
// pressure, upwards.
func (pl *plane) isentrope(
	s, critical quantity.SpecificEntropy, above []isobar,
) (lines [][]vg.Point) {
	top := min(pl.high, almostCritical*pl.dome.critical.p)
	if pl.low < top {
		lines = pl.vaporIsentrope(s, top)
	}
	var line []vg.Point
	for _, b := range above {
		if h, ok := b.enthalpy(s); ok && s >= critical {
			line = append(line, vg.Point{X: pl.x(h), Y: pl.y(b.p)})
		}
	}
	if n := len(lines); n > 0 && len(line) > 0 && distanceUp(lines[n-1], pl.y(top)) < 0.01 {
		lines[n-1] = append(lines[n-1], line...)
		return lines
	}
	return append(lines, line)
}

// almostCritical is the share of the critical pressure up to which states at an
// entropy start from saturation.
const almostCritical = 0.97

// distanceUp is how far the end of a line is from a height.
func distanceUp(line []vg.Point, y vg.Length) float64 {
	return math.Abs(float64(line[len(line)-1].Y - y))
}

// vaporIsentrope is that below the critical pressure.
func (pl *plane) vaporIsentrope(
	s quantity.SpecificEntropy, top quantity.Pressure,
) (lines [][]vg.Point) {
	dry := func(p quantity.Pressure) bool {
		t, err := pl.fluid.DewTemperature(p)
		if err != nil {
			return p < pl.dome.dew[0].p
		}
		edge, err := pl.fluid.DewEntropy(t)
		return err == nil && s >= edge
	}
	ratio := math.Log(float64(top / pl.low))
	place := func(u float64) quantity.Pressure {
		return pl.low * quantity.Pressure(math.Exp(ratio*u))
	}
	// turn is where dry changes between two places, on its dry side.
	turn := func(a, b float64) float64 {
		was := dry(place(a))
		for range 24 {
			if m := (a + b) / 2; dry(place(m)) == was {
				a = m
			} else {
				b = m
			}
		}
		if was {
			return a
		}
		return b
	}
	run := func(from, to float64) {
		line := pl.curve(
			place(from), place(to), bend,
			func(p quantity.Pressure) (refrigerant.State, error) {
				return pl.fluid.StateAtEntropy(p, s)
			},
		)
		if len(line) > 1 {
			lines = append(lines, line)
		}
	}
	const steps = 24
	start, inside := 0.0, dry(place(0))
	for i := 1; i <= steps; i++ {
		before, u := float64(i-1)/steps, float64(i)/steps
		now := dry(place(u))
		switch {
		case now && !inside:
			start = turn(before, u)
		case inside && !now:
			run(start, turn(before, u))
		}
		if now && i == steps {
			run(start, 1)
		}
		inside = now
	}
	return lines
}

// An isobar gives enthalpy for entropy. Along one dh = T ds, so that few states with
// their temperatures as slopes give the whole line.
type isobar struct {
	p         quantity.Pressure
	low, high float64
	atEntropy interp.PiecewiseCubic
}

func (b *isobar) enthalpy(s quantity.SpecificEntropy) (quantity.SpecificEnthalpy, bool) {
	if !(float64(s) >= b.low && float64(s) <= b.high) {
		return 0, false
	}
	return quantity.SpecificEnthalpy(b.atEntropy.Predict(float64(s))), true
}

// isobars are those from the critical pressure to the top of the plane, for the
// temperatures from critical to the warmest.
func (pl *plane) isobars(warmest quantity.Temperature) (out []isobar) {
	pc, tc := pl.dome.critical.p, pl.fluid.Critical().Temperature
	from := max(pl.low, pc*1.005)
	if from >= pl.high || warmest <= tc {
		return nil
	}
	const temperatures = 6
	levels := 2 + int(math.Log(float64(pl.high/from))/0.2)
	for i := range levels + 1 {
		b := isobar{
			p: from * quantity.Pressure(
				math.Pow(float64(pl.high/from), float64(i)/float64(levels)),
			),
		}
		var s, h, t []float64
		for j := range temperatures + 1 {
			u := quantity.Temperature(j) / temperatures
			st, err := pl.fluid.State(b.p, tc+(warmest-tc)*u*u)
			if err == nil && (len(s) == 0 || float64(st.Entropy) > s[len(s)-1]) {
				s, h = append(s, float64(st.Entropy)), append(h, float64(st.Enthalpy))
				t = append(t, float64(st.Temperature))
			}
		}
		if len(s) < 2 {
			continue
		}
		b.low, b.high = s[0], s[len(s)-1]
		b.atEntropy.FitWithDerivatives(s, h, t)
		out = append(out, b)
	}
	return out
}

// qualities are the lines of several qualities, from low pressure to the critical
// point. A blend's come from few flashes at each pressure: between them enthalpy is a
// smooth function of quality, nearly straight.
func (pl *plane) qualities(shares []float64) [][]vg.Point {
	lines := make([][]vg.Point, len(shares))
	from, to := max(pl.low, pl.dome.bubble[0].p), 0.985*pl.dome.critical.p
	if from >= to {
		return nil
	}
	const levels, inner = 14, 4
	for i := range levels + 1 {
		u := 1 - float64(i)/levels
		p := to * quantity.Pressure(math.Pow(float64(from/to), u*u))
		liquid, errLiquid := pl.fluid.StateAtQuality(p, 0)
		vapor, errVapor := pl.fluid.StateAtQuality(p, 1)
		if errLiquid != nil || errVapor != nil {
			continue
		}
		xs, hs := []float64{0}, []float64{float64(liquid.Enthalpy)}
		if !pl.fluid.Pure() {
			for j := 1; j <= inner; j++ {
				h := liquid.Enthalpy + (vapor.Enthalpy-liquid.Enthalpy)*quantity.SpecificEnthalpy(
					j,
				)/(inner+1)
				if s, err := pl.fluid.StateAtEnthalpy(p, h); err == nil &&
					s.Quality > xs[len(xs)-1] &&
					s.Quality < 1 {
					xs, hs = append(xs, s.Quality), append(hs, float64(h))
				}
			}
		}
		var along interp.FritschButland
		if along.Fit(append(xs, 1), append(hs, float64(vapor.Enthalpy))) != nil {
			continue
		}
		for j, x := range shares {
			lines[j] = append(
				lines[j],
				vg.Point{X: pl.x(quantity.SpecificEnthalpy(along.Predict(x))), Y: pl.y(p)},
			)
		}
	}
	for j := range lines {
		lines[j] = append(
			lines[j], vg.Point{X: pl.x(pl.dome.critical.h), Y: pl.y(pl.dome.critical.p)},
		)
	}
	return lines
}
