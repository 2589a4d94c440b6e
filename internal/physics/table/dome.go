package table

import "math"

// An Inner names one of the properties that a Dome keeps for the inside of the
// two-phase region.
type Inner uint8

// The properties, each as what it is off a straight line from bubble to dew.
const (
	// InnerTemperature is in kelvin.
	InnerTemperature Inner = iota
	// InnerQuality is the vapor's share of the mass.
	InnerQuality
	// InnerEntropy is in proportion to the difference of the edges' entropies.
	InnerEntropy
	// InnerVolume is in proportion to the difference of the edges' specific
	// volumes.
	InnerVolume
	Inners // how many there are
)

// A Dome is the inside of the two-phase region of a blend. On an isobar, with
// the heat that has been taken up since the bubble point as a share of the heat
// up to the dew point, every property starts and ends on the straight line
// between the edges and bends away from it in between, since the most volatile
// component boils off first. The distance from the line over share·(1−share) is
// smooth in share and in pressure, and is kept as a Chebyshev series in both.
// So what is served joins the edges exactly and has every derivative.
//
// Pressure counts as √(Tc − T) of its bubble point T, along which nothing steepens
// toward the critical point. A Dome does not change and may be shared; the zero
// Dome answers nothing.
type Dome struct {
	end, middle, perUnit float64
	rows                 int // the most of all surfaces
	surfaces             [Inners]surface
}

// A surface is a Chebyshev series: rows by pressure, columns by share, row after
// row.
type surface struct {
	rows, columns int
	c             []float64
}

// MaxRows and MaxColumns bound the terms of a series by pressure and by share.
const (
	MaxRows    = 40
	MaxColumns = 32
)

// beyond is how far past its ends a series may be asked: a pressure that was
// computed for the very end in another way is taken for it.
const beyond = 1e-4

// An Isobar is a Dome at one pressure.
type Isobar struct {
	columns [Inners]int
	c       [Inners][MaxColumns]float64
}

// At makes i the isobar whose bubble point has the temperature given. It reports
// false outside the table.
func (d *Dome) At(bubble float64, i *Isobar) bool {
	x := d.place(bubble)
	if d.rows == 0 || !(math.Abs(x) <= 1+beyond) {
		return false
	}
	var terms [MaxRows]float64
	t := terms[:d.rows]
	t[0] = 1
	for j, last, next := 1, 1.0, x; j < len(t); j++ {
		t[j] = next
		last, next = next, 2*x*next-last
	}
	for k := range d.surfaces {
		s := &d.surfaces[k]
		c := i.c[k][:s.columns]
		clear(c)
		i.columns[k] = s.columns
		for j := range s.rows {
			for l, v := range s.c[j*s.columns : (j+1)*s.columns] {
				c[l] += t[j] * v
			}
		}
	}
	return true
}

// place returns the argument of the series by pressure.
func (d *Dome) place(bubble float64) float64 {
	return (d.middle - math.Sqrt(d.end-bubble)) * d.perUnit
}

// Off returns how far the property k is off the straight line at a share of
// the heat, 0 to 1. The series is summed by Clenshaw's recurrence (Math. Tables
// Aids Comput. 9 (1955) 118-120).
func (i *Isobar) Off(k Inner, share float64) float64 {
	c := i.c[k][:i.columns[k]]
	x := 4*share - 2 // twice the argument
	var b1, b2 float64
	for l := len(c) - 1; l > 0; l-- {
		b1, b2 = c[l]+x*b1-b2, b1
	}
	return share * (1 - share) * (c[0] + x/2*b1 - b2)
}

// Slope returns the derivative of Off by the share.
func (i *Isobar) Slope(k Inner, share float64) float64 {
	c := i.c[k][:i.columns[k]]
	x := 4*share - 2
	var b1, b2, d1, d2 float64
	for l := len(c) - 1; l > 0; l-- {
		d1, d2 = 2*b1+x*d1-d2, d1
		b1, b2 = c[l]+x*b1-b2, b1
	}
	return (1-2*share)*(c[0]+x/2*b1-b2) + share*(1-share)*2*(b1+x/2*d1-d2)
}
