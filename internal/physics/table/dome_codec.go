package table

import (
	"encoding/binary"
	"math"
)

// The stored form of all domes: the same directory as that of the saturation
// tables, then for each blend the temperatures that bound it and its series, each term as a
// whole number of steps. All terms of a series together are off by a tenth of what
// the terms that are left out may add up to, at the very most.

const domeMagic = "satline dome 2\n"

// steps of the terms, in the unit of the property.
var steps = [Inners]float64{
	InnerTemperature: 1. / (1 << 21), InnerQuality: 1. / (1 << 28),
	InnerEntropy: 1. / (1 << 28), InnerVolume: 1. / (1 << 28),
}

// A Series is one surface of a dome as it is stored.
type Series struct {
	Rows, Columns int
	Coefficients  []float64 // row after row
}

// A DomeSource is everything that is stored for the dome of one blend.
type DomeSource struct {
	Name string
	// Low and High bound the temperatures of the bubble point; Critical is the
	// critical temperature.
	Low, High, Critical float64
	Surfaces            [Inners]Series
}

// EncodeDomes stores domes.
func EncodeDomes(domes []DomeSource) []byte {
	names, bodies := make([]string, len(domes)), make([][]byte, len(domes))
	for i := range domes {
		names[i], bodies[i] = domes[i].Name, domes[i].encode()
	}
	return pack(domeMagic, names, bodies)
}

func (d *DomeSource) encode() (b []byte) {
	for _, v := range []float64{d.Low, d.High, d.Critical} {
		b = binary.LittleEndian.AppendUint64(b, math.Float64bits(v))
	}
	for k, s := range d.Surfaces {
		b = append(b, byte(s.Rows), byte(s.Columns))
		for _, v := range s.Coefficients {
			b = binary.AppendVarint(b, int64(math.Round(v/steps[k])))
		}
	}
	return b
}

// DecodeDome makes the dome of the named blend ready, reading only its part of
// stored. It returns nil and no error where stored has no such blend.
func DecodeDome(stored, name string) (*Dome, error) {
	body, err := unpack(domeMagic, stored, name)
	if body == "" || err != nil {
		return nil, err
	}
	r := reader{rest: body}
	low, high, critical := r.float64(), r.float64(), r.float64()
	d := &Dome{}
	for k := range d.surfaces {
		s := &d.surfaces[k]
		s.rows, s.columns = int(r.byte()), int(r.byte())
		if s.rows < 1 || s.rows > MaxRows || s.columns < 1 || s.columns > MaxColumns ||
			s.rows*s.columns > len(r.rest) {
			return nil, errFormat
		}
		s.c = make([]float64, s.rows*s.columns)
		for i := range s.c {
			s.c[i] = float64(r.varint()) * steps[k]
		}
		d.rows = max(d.rows, s.rows)
	}
	if r.failed || r.rest != "" || !(0 < low && low < high && high < critical) ||
		math.IsInf(critical, 0) {
		return nil, errFormat
	}
	a, b := math.Sqrt(critical-low), math.Sqrt(critical-high)
	d.end, d.middle, d.perUnit = critical, (a+b)/2, 2/(a-b)
	return d, nil
}
