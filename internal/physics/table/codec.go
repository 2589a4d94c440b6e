package table

import (
	"encoding/binary"
	"errors"
	"math"
)

// The stored form of all saturation tables: a magic line, the number of fluids,
// a directory of names and places, then each fluid's curves, the value at a node and the
// slope there as float32. A float32 holds 24 bits, 6e-8 of a value, which is far below what
// interpolation costs. A sum over all of them ends a fluid.

const magic = "satline saturation 2\n"

var errFormat = errors.New("table: not a table of this version")

// A Nodes is one curve as it is stored.
type Nodes struct {
	Values []float64
	Slopes []float64 // per cell
}

// A Source is everything that is stored for one fluid.
type Source struct {
	Name string
	// CriticalTemperature is also the end of the Root grid from Low to High.
	CriticalTemperature, CriticalPressure, CriticalDensity float64
	// EnthalpyOffset and EntropyOffset bring the equation to the datum of
	// the curves.
	EnthalpyOffset, EntropyOffset float64
	Low, High                     float64
	Curves                        [Curves]Nodes // all of the same length
}

// Encode stores fluids.
func Encode(fluids []Source) []byte {
	names, bodies := make([]string, len(fluids)), make([][]byte, len(fluids))
	for i := range fluids {
		names[i], bodies[i] = fluids[i].Name, fluids[i].encode()
	}
	return pack(magic, names, bodies)
}

// pack writes a magic line, the directory of names, and their bodies.
func pack(magic string, names []string, bodies [][]byte) []byte {
	at := len(magic) + 4
	for _, name := range names {
		at += 1 + len(name) + 8
	}
	out := append([]byte(nil), magic...)
	out = binary.LittleEndian.AppendUint32(out, uint32(len(names)))
	for i, name := range names {
		out = append(out, byte(len(name)))
		out = append(out, name...)
		out = binary.LittleEndian.AppendUint32(out, uint32(at))
		out = binary.LittleEndian.AppendUint32(out, uint32(len(bodies[i])))
		at += len(bodies[i])
	}
	for _, b := range bodies {
		out = append(out, b...)
	}
	return out
}

// unpack returns the body of a name, and "" where there is no such name.
func unpack(magic, stored, name string) (body string, err error) {
	r := reader{rest: stored}
	if r.take(len(magic)) != magic {
		return "", errFormat
	}
	for range r.uint32() {
		found := r.take(int(r.byte())) == name
		at, size := uint64(r.uint32()), uint64(r.uint32())
		if r.failed || found && (size == 0 || at+size > uint64(len(stored))) {
			return "", errFormat
		}
		if found {
			return stored[at : at+size], nil
		}
	}
	return "", nil
}

func (f *Source) encode() []byte {
	var b []byte
	for _, v := range []float64{
		f.CriticalTemperature, f.CriticalPressure, f.CriticalDensity, f.EnthalpyOffset,
		f.EntropyOffset, f.Low, f.High,
	} {
		b = binary.LittleEndian.AppendUint64(b, math.Float64bits(v))
	}
	pure := f.pure()
	var all sum
	for c, n := range f.Curves {
		if pure && Curve(c) == DewPressure {
			n = Nodes{}
		}
		b = binary.LittleEndian.AppendUint16(b, uint16(len(n.Values)))
		values, slopes := float32s(n.Values), float32s(n.Slopes)
		b = appendSmooth(b, values, slopes)
		all.add(values)
		all.add(slopes)
	}
	return binary.LittleEndian.AppendUint32(b, uint32(all))
}

func float32s(v []float64) []float32 {
	out := make([]float32, len(v))
	for i := range v {
		out[i] = float32(v[i])
	}
	return out
}

// A sum tells whether numbers are those that were stored, to the last bit.
type sum uint32

func (s *sum) add(v []float32) {
	for _, x := range v {
		*s = *s*31 + sum(math.Float32bits(x))
	}
}

// pure reports whether bubble and dew pressure are one curve, which is then
// stored once.
func (f *Source) pure() bool {
	b, d := f.Curves[BubblePressure].Values, f.Curves[DewPressure].Values
	for i := range b {
		if b[i] != d[i] {
			return false
		}
	}
	return true
}

// Decode makes the table of the named fluid ready, reading only its part of
// stored. It returns nil and no error where stored has no such fluid.
func Decode(stored, name string) (*Saturation, error) {
	body, err := unpack(magic, stored, name)
	if body == "" || err != nil {
		return nil, err
	}
	return decode(body)
}

func decode(body string) (*Saturation, error) {
	r := reader{rest: body}
	s := &Saturation{}
	for _, v := range []*float64{
		&s.CriticalTemperature, &s.CriticalPressure, &s.CriticalDensity, &s.EnthalpyOffset,
		&s.EntropyOffset, &s.Low, &s.High,
	} {
		*v = r.float64()
	}
	var all sum
	for c := range Curves {
		values, slopes := r.nodes(&all)
		s.curves[c] = Hermite(values, slopes, func(int) float64 { return 1 })
	}
	if len(s.curves[DewPressure]) == 0 {
		s.curves[DewPressure] = s.curves[BubblePressure]
	}
	cells := len(s.curves[BubblePressure])
	for c := range Curves {
		if len(s.curves[c]) != cells {
			r.failed = true
		}
	}
	if r.uint32() != uint32(all) || r.failed || r.rest != "" || cells == 0 ||
		!(0 < s.Low && s.Low < s.High && s.High < s.CriticalTemperature) {
		return nil, errFormat
	}
	s.grid = NewRoot(s.CriticalTemperature, s.Low, s.High, cells)
	for e := range Edges {
		curve := s.curves[BubblePressure+Curve(e)]
		if !rising(curve) {
			return nil, errFormat
		}
		s.inverse[e] = newInverse(curve, s.grid)
	}
	return s, nil
}

// rising reports whether a curve of eighth roots starts above a microscopic
// pressure, rises from node to node, and ends below an astronomic one.
func rising(curve []Cubic) bool {
	last := 0.01
	for i := range curve {
		start := curve[i].At(0)
		if !(start > last) { // nor where a slope is no number
			return false
		}
		last = start
	}
	end := curve[len(curve)-1].At(1)
	return end > last && end < 100
}

// A reader takes values off the front of a string. Past the end it yields zeros
// and remembers.
type reader struct {
	rest   string
	failed bool
}

func (r *reader) take(n int) string {
	if n > len(r.rest) {
		r.failed, r.rest = true, ""
		return ""
	}
	s := r.rest[:n]
	r.rest = r.rest[n:]
	return s
}

func (r *reader) uint(n int) (v uint64) {
	s := r.take(n)
	for i := range len(s) {
		v |= uint64(s[i]) << (8 * i)
	}
	return v
}

func (r *reader) byte() byte       { return byte(r.uint(1)) }
func (r *reader) uint32() uint32   { return uint32(r.uint(4)) }
func (r *reader) float64() float64 { return math.Float64frombits(r.uint(8)) }

func (r *reader) nodes(all *sum) (values, slopes []float64) {
	v, m := r.smooth(int(r.uint(2)))
	all.add(v)
	all.add(m)
	values, slopes = make([]float64, len(v)), make([]float64, len(v))
	for i := range v {
		values[i], slopes[i] = float64(v[i]), float64(m[i])
	}
	return values, slopes
}
