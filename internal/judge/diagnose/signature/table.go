package signature

import (
	"bytes"
	_ "embed"
	"encoding/binary"
	"errors"
	"math"
	"sort"
	"sync"
)

// A Vector is a value for each feature; a Matrix one for each pair.
type (
	Vector [Features]float64
	Matrix [Features]Vector
)

// A Device is what meters the refrigerant.
type Device int

// The devices of the table. An electronic valve that holds a superheat behaves
// as a thermostatic one in the steady state.
const (
	Fixed Device = iota
	Valve

	Devices = iota
)

// A Sound describes machines with nothing wrong.
type Sound struct {
	mean [Features][meanTerms]float64
	// extreme is the covariance of single machines about their kind in extreme weather.
	extreme Matrix
	Kinds   []Kind // as package population lists them
	// Reach is the range of weather that the fit covers.
	Low, High Weather
}

// At returns the weather and a refrigerant as Mean and Shift of a table take them.
func (s *Sound) At(w Weather, r Fluid) Point { return basis(s.within(w), r) }

// Mean returns what sound machines read there on average.
func (s *Sound) Mean(at Point) (v Vector) {
	for f := range v {
		v[f] = at.dot(&s.mean[f])
	}
	return v
}

func (at *Point) dot(x *[meanTerms]float64) float64 {
	var _ [meanTerms]struct{} = [20]struct{}{}
	return (x[0]*at[0] + x[1]*at[1] + x[2]*at[2] + x[3]*at[3] + x[4]*at[4]) +
		(x[5]*at[5] + x[6]*at[6] + x[7]*at[7] + x[8]*at[8] + x[9]*at[9]) +
		(x[10]*at[10] + x[11]*at[11] + x[12]*at[12] + x[13]*at[13] + x[14]*at[14]) +
		(x[15]*at[15] + x[16]*at[16] + x[17]*at[17] + x[18]*at[18] + x[19]*at[19])
}

// A Kind is how a kind of machines departs from the mean of all.
type Kind struct {
	// Share of the kind among machines with the device.
	Share   float64
	Offset  Vector
	scatter Matrix // of single machines in ordinary weather
}

// Scatter returns the covariance of single machines about the mean in the weather.
func (s *Sound) Scatter(w Weather) Matrix {
	shares := make([]float64, len(s.Kinds))
	for k := range s.Kinds {
		shares[k] = s.Kinds[k].Share
	}
	_, m := s.Among(shares, w)
	return m
}

// Among returns the mean offset, and the covariance about it, of machines of which so many
// are of each kind; the shares add to 1.
func (s *Sound) Among(shares []float64, w Weather) (offset Vector, scatter Matrix) {
	for k, p := range shares {
		for f := range offset {
			offset[f] += p * s.Kinds[k].Offset[f]
		}
	}
	x := w.extreme()
	for k, p := range shares {
		if p == 0 {
			continue
		}
		kind := &s.Kinds[k]
		d := minus(kind.Offset, offset)
		for a := range scatter {
			for b := range scatter {
				scatter[a][b] += p * ((1-x)*kind.scatter[a][b] + x*s.extreme[a][b] + d[a]*d[b])
			}
		}
	}
	return offset, scatter
}

// Slopes returns the derivatives of Mean by outdoor temperature, return wet
// bulb and return dry bulb.
func (s *Sound) Slopes(w Weather, r Fluid) (d [3]Vector) {
	for c, by := range slopes(s.within(w), r) {
		for f := range d[c] {
			for _, k := range sloping[c] {
				d[c][f] += by[k] * s.mean[f][k]
			}
		}
	}
	return d
}

// within holds the weather to the range of the fit: a polynomial is not to be
// trusted beyond it.
func (s *Sound) within(w Weather) Weather {
	return Weather{
		Outdoor:       min(max(w.Outdoor, s.Low.Outdoor), s.High.Outdoor),
		ReturnWetBulb: min(max(w.ReturnWetBulb, s.Low.ReturnWetBulb), s.High.ReturnWetBulb),
		ReturnDryBulb: min(max(w.ReturnDryBulb, s.Low.ReturnDryBulb), s.High.ReturnDryBulb),
		Thin:          min(max(w.Thin, s.Low.Thin), s.High.Thin),
	}
}

// A Level is a cause at about one severity.
type Level struct {
	// Severity is in the unit of the cause: see the gen command.
	Severity float64
	shift    [Features][shiftTerms]float64
	// Gain is how the shift of a machine follows that machine's own offset.
	Gain Matrix
	// Rest is the covariance of what Gain leaves.
	Rest Matrix
	// Capacity and Efficiency are mean fractions lost.
	Capacity, Efficiency float64
}

// Shift returns by how much the cause moves each feature there, on average.
func (l *Level) Shift(at Point) (v Vector) {
	var _ [shiftTerms]struct{} = [11]struct{}{}
	for f := range v {
		x := &l.shift[f]
		v[f] = x[0]*at[0] + x[1]*at[1] + x[2]*at[2] + x[3]*at[3] + x[4]*at[4] + x[5]*at[5] +
			x[6]*at[6] + x[7]*at[7] + x[8]*at[8] + x[9]*at[9] + x[10]*at[10]
	}
	return v
}

// A Cause is a fault signature at rising severity.
type Cause struct {
	Code   string
	Levels []Level
}

// OfHeatPumps ends the code of an entry that was learnt of heat pumps alone; that of other
// machines has the code without it.
const OfHeatPumps = "-of-heat-pumps"

// A Table is all signatures of a device.
type Table struct {
	Sound  Sound
	Causes []Cause
}

// Cause returns the levels of a cause; nil where the table has none.
func (t *Table) Cause(code string) []Level {
	i := sort.Search(len(t.Causes), func(i int) bool { return t.Causes[i].Code >= code })
	if i < len(t.Causes) && t.Causes[i].Code == code {
		return t.Causes[i].Levels
	}
	return nil
}

//go:embed signatures.bin
var stored []byte

// For returns the table of a device. It is shared: do not write to it.
func For(d Device) *Table {
	all := tables()
	if d < 0 || d >= Devices {
		d = Fixed
	}
	return &all[d]
}

var tables = sync.OnceValue(func() *[Devices]Table {
	t, err := Decode(stored)
	if err != nil {
		// The file is part of the program, and a test reads it.
		panic("signature: " + err.Error())
	}
	return &t
})

const magic = "satline signatures 3\n"

var errFormat = errors.New("not a signature table of this version")

// Encode writes tables as they are stored: numbers as float32, whose 24 bits
// are far finer than the scatter they describe.
func Encode(all [Devices]Table) []byte {
	w := &writer{}
	w.buf.WriteString(magic)
	for d := range all {
		t := &all[d]
		w.weather(t.Sound.Low)
		w.weather(t.Sound.High)
		for f := range t.Sound.mean {
			w.floats(t.Sound.mean[f][:])
		}
		w.symmetric(&t.Sound.extreme)
		w.count(len(t.Sound.Kinds))
		for k := range t.Sound.Kinds {
			kind := &t.Sound.Kinds[k]
			w.floats([]float64{kind.Share})
			w.floats(kind.Offset[:])
			w.symmetric(&kind.scatter)
		}
		w.count(len(t.Causes))
		for _, c := range t.Causes {
			w.count(len(c.Code))
			w.buf.WriteString(c.Code)
			w.count(len(c.Levels))
			for i := range c.Levels {
				l := &c.Levels[i]
				w.floats([]float64{l.Severity, l.Capacity, l.Efficiency})
				for f := range l.shift {
					w.floats(l.shift[f][:])
				}
				for f := range l.Gain {
					w.floats(l.Gain[f][:])
				}
				w.symmetric(&l.Rest)
			}
		}
	}
	return w.buf.Bytes()
}

// Decode reads what Encode wrote.
func Decode(b []byte) (all [Devices]Table, err error) {
	rest, found := bytes.CutPrefix(b, []byte(magic))
	if !found {
		return all, errFormat
	}
	r := &reader{rest: rest}
	for d := range all {
		t := &all[d]
		t.Sound.Low, t.Sound.High = r.weather(), r.weather()
		for f := range t.Sound.mean {
			r.floats(t.Sound.mean[f][:])
		}
		r.symmetric(&t.Sound.extreme)
		t.Sound.Kinds = make([]Kind, r.count())
		for k := range t.Sound.Kinds {
			kind := &t.Sound.Kinds[k]
			var share [1]float64
			r.floats(share[:])
			kind.Share = share[0]
			r.floats(kind.Offset[:])
			r.symmetric(&kind.scatter)
		}
		for range r.count() {
			c := Cause{Code: string(r.bytes(r.count()))}
			for range r.count() {
				var l Level
				var head [3]float64
				r.floats(head[:])
				l.Severity, l.Capacity, l.Efficiency = head[0], head[1], head[2]
				for f := range l.shift {
					r.floats(l.shift[f][:])
				}
				for f := range l.Gain {
					r.floats(l.Gain[f][:])
				}
				r.symmetric(&l.Rest)
				c.Levels = append(c.Levels, l)
			}
			t.Causes = append(t.Causes, c)
		}
		sort.Slice(t.Causes, func(i, j int) bool { return t.Causes[i].Code < t.Causes[j].Code })
	}
	if r.failed || len(r.rest) != 0 {
		return all, errFormat
	}
	return all, nil
}

type writer struct{ buf bytes.Buffer }

func (w *writer) count(n int) { w.buf.WriteByte(byte(n)) }

func (w *writer) floats(v []float64) {
	for _, x := range v {
		w.buf.Write(binary.LittleEndian.AppendUint32(nil, math.Float32bits(float32(x))))
	}
}

func (w *writer) weather(v Weather) {
	w.floats([]float64{v.Outdoor, v.ReturnWetBulb, v.ReturnDryBulb, v.Thin})
}

func (w *writer) symmetric(m *Matrix) {
	for i := range m {
		w.floats(m[i][:i+1])
	}
}

// A reader takes numbers off the front; past the end it yields zeros and
// remembers that it failed.
type reader struct {
	rest   []byte
	failed bool
}

func (r *reader) bytes(n int) []byte {
	if n > len(r.rest) {
		r.failed, r.rest = true, nil
		return make([]byte, n)
	}
	b := r.rest[:n]
	r.rest = r.rest[n:]
	return b
}

func (r *reader) count() int { return int(r.bytes(1)[0]) }

func (r *reader) floats(v []float64) {
	for i := range v {
		v[i] = float64(math.Float32frombits(binary.LittleEndian.Uint32(r.bytes(4))))
	}
}

func (r *reader) weather() Weather {
	var v [4]float64
	r.floats(v[:])
	return Weather{v[0], v[1], v[2], v[3]}
}

func (r *reader) symmetric(m *Matrix) {
	for i := range m {
		r.floats(m[i][:i+1])
		for j := range i {
			m[j][i] = m[i][j]
		}
	}
}
