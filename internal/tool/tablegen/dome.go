package main

import (
	"errors"
	"fmt"
	"math"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/refrigerant"
)

// The inside of the two-phase region of a blend is solved at the roots of
// Chebyshev polynomials by pressure and by share of the heat, which gives the
// terms of its series directly, and compared with the equation between them.

// grids are the numbers of pressures and shares that are tried, the fewest first.
var grids = [...]struct{ pressures, shares int }{
	{18, 14}, {26, 20}, {table.MaxRows, table.MaxColumns},
}

// nearestDome lists how close to the critical temperature a dome may go.
var nearestDome = [...]float64{0.01, 0.015, 0.02, 0.03, 0.04}

// What the terms that are left out may add up to, and what an error may be
// between the points that were solved.
var (
	leftOut = [table.Inners]float64{
		table.InnerTemperature: 1e-4,
		table.InnerQuality:     3e-6,
		table.InnerEntropy:     2e-6,
		table.InnerVolume:      3e-6,
	}
	between = [table.Inners]float64{
		table.InnerTemperature: 3e-4,
		table.InnerQuality:     1e-5,
		table.InnerEntropy:     4e-6,
		table.InnerVolume:      1e-5,
	}
)

// solveDome returns the dome of a blend that has the saturation table s.
func solveDome(r *refrigerant.Refrigerant, s *table.Source) (d table.DomeSource, err error) {
	f, err := newFluid(r)
	if err != nil {
		return d, err
	}
	for _, share := range nearestDome {
		for _, g := range grids {
			d = table.DomeSource{
				Name:     s.Name,
				Low:      s.Low,
				High:     s.CriticalTemperature * (1 - share),
				Critical: s.CriticalTemperature,
			}
			if err = f.fillDome(&d, s.High, g.pressures, g.shares); errors.Is(err, errCoarse) {
				continue
			}
			if err == nil {
				err = f.checkDome(&d)
			}
			if err == nil {
				return d, nil
			}
		}
	}
	return d, err
}

var errCoarse = errors.New("the terms of a series do not fade within the grid")

// fillDome solves the grid. Both edges must be inside their table, which ends at
// last.
func (f *fluid) fillDome(d *table.DomeSource, last float64, pressures, shares int) error {
	var off [table.Inners][][]float64
	for k := range off {
		off[k] = make([][]float64, pressures)
	}
	a, b := math.Sqrt(d.Critical-d.Low), math.Sqrt(d.Critical-d.High)
	for i := range pressures {
		w := (a+b)/2 - (a-b)/2*root(i, pressures)
		e, err := f.edges(d.Critical - w*w)
		if err != nil {
			return err
		}
		if e.dew.temperature >= last {
			return fmt.Errorf("the dew point at %.3f K is beyond its table", e.dew.temperature)
		}
		for k := range off {
			off[k][i] = make([]float64, shares)
		}
		for j := range shares {
			share := (1 + root(j, shares)) / 2
			in, err := f.inside(&e, share)
			if err != nil {
				return fmt.Errorf("at %.3f K and share %.4f: %w", e.bubble.temperature, share, err)
			}
			for k := range off {
				off[k][i][j] = in.off[k] / (share * (1 - share))
			}
		}
	}
	for k := range d.Surfaces {
		var ok bool
		// A quarter is the most of share·(1−share). The volume is held in
		// proportion to itself, and near the bubble point it is as small as that.
		weight := 0.25
		if table.Inner(k) == table.InnerVolume {
			weight = 1
		}
		if d.Surfaces[k], ok = fewest(chebyshev(off[k]), leftOut[k]/weight); !ok {
			return errCoarse
		}
	}
	return nil
}

// root is root i of the Chebyshev polynomial of degree n, rising with i.
func root(i, n int) float64 { return -math.Cos(math.Pi * (float64(i) + 0.5) / float64(n)) }

// An isobar is the edges at one pressure.
type isobar struct {
	bubble, dew saturated
	start, end  vle.Point // the same
}

func (f *fluid) edges(bubble float64) (e isobar, err error) {
	if e.start, err = f.system.BubbleT(bubble); err != nil {
		return e, fmt.Errorf("bubble: %w", err)
	}
	if e.end, err = f.system.DewP(e.start.P); err != nil {
		return e, fmt.Errorf("dew: %w", err)
	}
	e.bubble, e.dew = f.properties(table.Bubble, e.start), f.properties(table.Dew, e.end)
	return e, nil
}

// An inner is a state between the edges.
type inner struct {
	off    [table.Inners]float64 // as in a table.Dome
	volume float64               // m³/kg
}

// inside solves the state at a share of the heat.
func (f *fluid) inside(e *isobar, share float64) (in inner, err error) {
	m := f.model.MolarMass()
	line := func(a, b float64) float64 { return a + share*(b-a) }
	s, err := f.system.FlashPHBetween(&e.start, &e.end, line(e.bubble.enthalpy, e.dew.enthalpy)*m)
	if err != nil {
		return in, err
	}
	in.volume = 1 / (s.Rho * m)
	liquid, vapor := 1/e.bubble.density, 1/e.dew.density
	in.off = [table.Inners]float64{
		table.InnerTemperature: s.T - line(e.bubble.temperature, e.dew.temperature),
		table.InnerQuality:     s.VaporFraction*f.model.MolarMassOf(&s.Y)/m - share,
		table.InnerEntropy:     (s.S/m-e.bubble.entropy)/(e.dew.entropy-e.bubble.entropy) - share,
		table.InnerVolume:      (in.volume-liquid)/(vapor-liquid) - share,
	}
	return in, nil
}

// chebyshev turns values at the roots into the terms of the series through them,
// by the discrete orthogonality of the polynomials.
func chebyshev(v [][]float64) [][]float64 {
	c := transpose(terms(v))
	return transpose(terms(c))
}

// terms does that for every column.
func terms(v [][]float64) [][]float64 {
	n := len(v)
	c := make([][]float64, n)
	for j := range c {
		c[j] = make([]float64, len(v[0]))
		for i, row := range v {
			t := math.Cos(float64(j)*math.Acos(root(i, n))) * 2 / float64(n)
			if j == 0 {
				t /= 2
			}
			for k, x := range row {
				c[j][k] += t * x
			}
		}
	}
	return c
}

func transpose(v [][]float64) [][]float64 {
	t := make([][]float64, len(v[0]))
	for k := range t {
		t[k] = make([]float64, len(v))
		for i := range v {
			t[k][i] = v[i][k]
		}
	}
	return t
}

// fewest cuts a series to the least rectangle of terms such that those left out
// do not add up to more than allowed. It reports false where the last two rows or
// columns are among those needed: then there may be more beyond.
func fewest(c [][]float64, allowed float64) (best table.Series, ok bool) {
	rows, columns := len(c), len(c[0])
	all := 0.0
	for _, row := range c {
		for _, v := range row {
			all += math.Abs(v)
		}
	}
	size := math.MaxInt
	kept := make([]float64, columns+1) // in the first n columns of the rows so far
	for j := 1; j <= rows-2; j++ {
		sum := 0.0
		for k := 1; k <= columns; k++ {
			sum += math.Abs(c[j-1][k-1])
			kept[k] += sum
		}
		for k := 1; k <= columns-2 && j*k < size; k++ {
			if all-kept[k] <= allowed {
				size = j * k
				best.Rows, best.Columns = j, k
			}
		}
	}
	for _, row := range c[:best.Rows] {
		best.Coefficients = append(best.Coefficients, row[:best.Columns]...)
	}
	return best, size < math.MaxInt
}

// checkDome compares a dome, as it is stored, with the equation off the points
// that were solved.
func (f *fluid) checkDome(d *table.DomeSource) error {
	made, err := table.DecodeDome(string(table.EncodeDomes([]table.DomeSource{*d})), d.Name)
	if err != nil {
		return err
	}
	var at table.Isobar
	for i := range 9 {
		u := (float64(i) + 0.5) / 9
		e, err := f.edges(d.High - (d.High-d.Low)*u*u)
		if err != nil {
			return err
		}
		if !made.At(e.bubble.temperature, &at) {
			return fmt.Errorf("nothing at %.3f K", e.bubble.temperature)
		}
		for _, share := range [...]float64{0.01, 0.07, 0.2, 0.4, 0.6, 0.8, 0.93, 0.99} {
			in, err := f.inside(&e, share)
			if err != nil {
				return err
			}
			for k := range table.Inners {
				off := math.Abs(at.Off(k, share) - in.off[k])
				if k == table.InnerVolume {
					off *= math.Abs(1/e.dew.density-1/e.bubble.density) / in.volume
				}
				if off > between[k] {
					return fmt.Errorf(
						"property %d is off by %.1e at %.3f K and share %.2f", k, off,
						e.bubble.temperature, share,
					)
				}
			}
		}
	}
	return nil
}
