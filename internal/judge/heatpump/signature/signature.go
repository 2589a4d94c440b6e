// Package signature holds what is read of a heat pump that heats, sound or with one thing
// wrong: the mean of every feature over the weather and the covariance about it, learnt from
// machines of package cycle by the program in gen.
package signature

//go:generate go run ./gen

import (
	_ "embed"
	"encoding/binary"
	"math"
)

// A Feature is one figure that the readings of a machine come to.
type Feature int

// The features, in K but for the last two, which are in per cent.
const (
	EvaporatingUnder Feature = iota // outdoor air less evaporating (dew)
	Superheat                       // at the compressor
	CondensingOver                  // condensing (bubble) less return air
	Subcooling                      // leaving the indoor coil
	DischargeOver                   // discharge line less condensing (bubble)
	Rise                            // supply less return air
	OutdoorDrop                     // outdoor air less the air leaving the outdoor coil
	Airflow                         // 100 ln of the indoor airflow over 400 CFM a ton
	Power                           // 100 ln of the electric power over 1 kW a ton
	Features         = iota
)

// A Device is what meters at the outdoor coil.
type Device int

// The devices.
const (
	Fixed Device = iota
	Valve
	Devices = iota
)

// A Weather is what the means depend on.
type Weather struct{ Outdoor, Return float64 } // K

// Terms of the mean.
const Terms = 5

// Basis is what the terms multiply.
func (w Weather) Basis() [Terms]float64 {
	o := (math.Min(math.Max(w.Outdoor, 250), 295) - 275) / 10
	return [Terms]float64{1, o, o * o, o * o * o,
		(math.Min(math.Max(w.Return, 283), 303) - 294) / 3}
}

// A Part of the machines with a cause: those whose compressor gets vapor, and those that flood
// it, as most with a fixed device do in the cold. What they read differs more than a single
// spread could hold.
type Part int

// The parts.
const (
	Dry Part = iota
	Flooded
	Parts = iota
)

// A Row is what a part of the machines with a cause of one size reads behind one device.
type Row struct {
	// Shares gives the part's share of them over the weather.
	Shares [Terms]float64
	// From and To are the outdoor temperatures, K, that its mean was learnt between; beyond
	// them it stays as it is there.
	From, To     float64
	Coefficients [Features][Terms]float64
	Covariance   [Features][Features]float64
}

// Mean of the features in a weather.
func (r *Row) Mean(w Weather) (out [Features]float64) {
	w.Outdoor = math.Min(math.Max(w.Outdoor, r.From), r.To)
	b := w.Basis()
	for f := range out {
		for i, x := range b {
			out[f] += r.Coefficients[f][i] * x
		}
	}
	return out
}

// Share of the machines that are in the part, in a weather.
func (r *Row) Share(w Weather) float64 {
	share := 0.0
	for i, x := range w.Basis() {
		share += r.Shares[i] * x
	}
	return math.Min(math.Max(share, 0.001), 1)
}

// Mean of the features over both parts of the machines with a cause.
func Mean(cause, size int, d Device, w Weather) (out [Features]float64) {
	sum := 0.0
	for p := range Part(Parts) {
		r := Of(cause, size, d, p)
		share := r.Share(w)
		sum += share
		for f, m := range r.Mean(w) {
			out[f] += share * m
		}
	}
	for f := range out {
		out[f] /= sum
	}
	return out
}

// Causes that leave a signature, in the order of the table; each in Sizes sizes.
var Causes = []string{
	"sound", "undercharge", "overcharge", "non-condensables", "restriction", "overfeed",
	"vapor-leak", "low-indoor-airflow", "outdoor-air-short", "auxiliary-heat", "next-to-empty",
	"suction-clamp", "liquid-clamp", "suction-gauge-zero", "liquid-gauge-zero", "supply-sensor",
	"reversing-valve",
}

// Sizes of a cause: slight, middling, large.
const Sizes = 3

//go:embed signatures.bin
var table []byte

const rowLength = Terms + 2 + Features*Terms + Features*(Features+1)/2

// rows by cause, size, device and part.
var rows = func() []Row {
	out := make([]Row, len(Causes)*Sizes*Devices*Parts)
	if len(table) != len(out)*rowLength*4 {
		return out // being generated
	}
	at := 0
	next := func() float64 {
		v := math.Float32frombits(binary.LittleEndian.Uint32(table[at:]))
		at += 4
		return float64(v)
	}
	for i := range out {
		r := &out[i]
		for k := range r.Shares {
			r.Shares[k] = next()
		}
		r.From, r.To = next(), next()
		for f := range r.Coefficients {
			for k := range r.Coefficients[f] {
				r.Coefficients[f][k] = next()
			}
		}
		for f := range r.Covariance {
			for g := range f + 1 {
				r.Covariance[f][g] = next()
				r.Covariance[g][f] = r.Covariance[f][g]
			}
		}
	}
	return out
}()

// Of returns the row of a cause by its place in Causes, a size, a device and a part.
func Of(cause, size int, d Device, p Part) *Row {
	return &rows[((cause*Sizes+size)*Devices+int(d))*Parts+int(p)]
}

// Encode writes rows in the order that Of reads them.
func Encode(rows []Row) []byte {
	var out []byte
	add := func(v float64) {
		out = binary.LittleEndian.AppendUint32(out, math.Float32bits(float32(v)))
	}
	for i := range rows {
		for _, v := range rows[i].Shares {
			add(v)
		}
		add(rows[i].From)
		add(rows[i].To)
		for _, c := range rows[i].Coefficients {
			for _, v := range c {
				add(v)
			}
		}
		for f, c := range rows[i].Covariance {
			for _, v := range c[:f+1] {
				add(v)
			}
		}
	}
	return out
}
