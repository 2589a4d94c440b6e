// Package signature holds what is read of a machine that keeps a cold room, sound or with one
// thing wrong: the mean of every feature over the weather and the machine's kind, and the
// covariance about it, learnt from machines of package machine by the program in gen.
package signature

//go:generate go run ./gen

import (
	_ "embed"
	"math"

	"github.com/satline/satline/internal/physics/cyclefluid"
)

// Features of a machine, in K but for the current, which is a share of the rated.
const (
	Difference = iota // box less evaporating
	Superheat         // at the compressor
	BulbSuperheat
	Split       // box less supply
	OverOutdoor // condensing
	Subcooling
	Hot     // discharge line over condensing
	Rise    // of the air at the condenser
	OverBox // box over what it is kept at
	Current
	Features
)

// A Vector is a value of every feature.
type Vector [Features]float64

// A Matrix is a covariance of the features.
type Matrix [Features]Vector

// A Cause is what readings alone can tell apart: what fails in the machine, at some sizes, each
// as likely as the others.
type Cause struct {
	Code  string
	Sizes int
	// ValveOnly, ReceiverOnly and ColdOnly limit it to machines with a valve, with a receiver,
	// and to cool weather.
	ValveOnly, ReceiverOnly, ColdOnly bool
}

// Codes of the causes.
const (
	Sound       = "cold-sound"
	Undercharge = "cold-undercharge"
	// Reserve is a shortage behind a receiver, which nothing but the level tells before its
	// outlet draws vapor.
	Reserve     = "cold-reserve"
	Overcharge  = "cold-overcharge"
	Gas         = "cold-gas"
	Condenser   = "cold-condenser"
	Evaporator  = "cold-evaporator"
	Restriction = "cold-restriction"
	Starving    = "cold-starving"
	Flooding    = "cold-flooding"
	Compressor  = "cold-compressor"
	HeadLow     = "cold-head-low"
	HeadHigh    = "cold-head-high"
	Load        = "cold-load"
	ShortCycle  = "cold-short-cycle"
	Clamp       = "cold-clamp"
)

// Causes in the order of the table.
var Causes = []Cause{
	{Code: Sound, Sizes: 1}, {Code: Undercharge, Sizes: 5},
	{Code: Reserve, Sizes: 1, ReceiverOnly: true}, {Code: Overcharge, Sizes: 4},
	{Code: Gas, Sizes: 3}, {Code: Condenser, Sizes: 4}, {Code: Evaporator, Sizes: 6},
	{Code: Restriction, Sizes: 6}, {Code: Starving, Sizes: 5, ValveOnly: true},
	{Code: Flooding, Sizes: 3, ValveOnly: true}, {Code: Compressor, Sizes: 4},
	{Code: HeadLow, Sizes: 2, ValveOnly: true, ColdOnly: true},
	{Code: HeadHigh, Sizes: 3, ValveOnly: true}, {Code: Load, Sizes: 3},
	{Code: ShortCycle, Sizes: 1}, {Code: Clamp, Sizes: 2},
}

// CoolWeather is the outdoor air, 60 °F in K, below which a head that is not held falls too low.
const CoolWeather = 288.7

// A Kind is what a machine is built as.
type Kind int

// The kinds of coolers; Freezer added to one is that of a freezer.
const (
	Receiver Kind = iota // with a valve
	NoReceiver
	Tube
	Freezer
	Kinds = 2 * Freezer
)

// Has reports whether a machine of the kind can have a cause.
func (k Kind) Has(c *Cause) bool {
	device := k % Freezer
	return !(c.ValveOnly && device == Tube || c.ReceiverOnly && device != Receiver)
}

// A Place is what the means depend on.
type Place struct {
	Box, Outdoor float64 // K of the air
	Setpoint     float64 // K that the box is kept at
	Difference   float64 // K from the box to evaporating, as built
	// Ideal is the discharge of such a machine over its condensing temperature, K, and Glide
	// that of its refrigerant in the evaporator.
	Ideal, Glide float64
}

// Refrigerant sets what a place has from a refrigerant, whose vapor comes with a superheat and
// which a control keeps from condensing below 301 K.
func (p *Place) Refrigerant(f *cyclefluid.Fluid, superheat float64) {
	const floor, over, efficiency = 301, 11, 0.62
	low := f.At(f.DewPressure(p.Setpoint - p.Difference))
	high := f.At(f.DewPressure(max(p.Outdoor+over, floor)))
	in := low.VaporAt(low.Dew.T + superheat)
	out := high.AtEnthalpy(in.H + (high.AtEntropy(in.S).H-in.H)/efficiency)
	p.Ideal, p.Glide = out.T-high.Dew.T, low.Dew.T-low.Bubble.T
}

// knots of the outdoor temperature, K, between which a mean is straight.
var knots = [...]float64{255, 272, 283, 291, 300, 311, 321}

// Terms of a mean.
const Terms = len(knots) + 12

// Basis is what the terms multiply.
func (p *Place) Basis() (b [Terms]float64) {
	at, i := min(max(p.Outdoor, knots[0]), knots[len(knots)-1]), 0
	for i < len(knots)-2 && at > knots[i+1] {
		i++
	}
	part := (at - knots[i]) / (knots[i+1] - knots[i])
	b[i], b[i+1] = 1-part, part
	rest := b[len(knots):] // four that are straight, and their products
	rest[0] = (p.Difference - 6.5) / 2
	rest[1] = min(max(p.Box-p.Setpoint, -2), 15) / 4
	rest[2], rest[3] = (p.Ideal-30)/15, p.Glide/4
	outdoor := (at - 290) / 20
	for i := range rest[4:8] {
		rest[4+i] = outdoor * rest[i]
	}
	for i := range rest[8:11] {
		rest[8+i] = rest[i] * rest[i]
	}
	rest[11] = rest[0] * rest[1]
	return b
}

// Warm is how much of a spread is that of warm weather, in which no control holds the head.
func (p *Place) Warm() float64 { return min(max((p.Outdoor-279)/(300-279), 0), 1) }

// A Row is what the machines of a kind read that have a cause of one size.
type Row struct {
	Coefficients [Features][Terms]float64
	Cold, Warm   Matrix // covariances
	// Loss of capacity against the sound machine.
	Loss float64
}

// Mean of the features at a place, on the scale that Bend takes them to.
func (r *Row) Mean(p *Place) (out Vector) {
	b := p.Basis()
	for f := range out {
		for i, x := range b {
			out[f] += r.Coefficients[f][i] * x
		}
	}
	for _, f := range []int{Superheat, BulbSuperheat, Subcooling} {
		out[f] = max(out[f], 0) // vapor and liquid at saturation are no colder and no warmer
	}
	return out
}

// Spread about the mean at a place, on that scale.
func (r *Row) Spread(p *Place) (out Matrix) {
	w := p.Warm()
	for f := range out {
		for g := range out {
			out[f][g] = (1-w)*r.Cold[f][g] + w*r.Warm[f][g]
		}
	}
	return out
}

//go:embed signatures.bin
var table []byte

const rowLength = Features*Terms + Features*(Features+1) + 1

// starts of the rows of each kind and cause; -1 where there are none.
var starts, count = func() (out [Kinds][]int, n int) {
	for k := range Kinds {
		for i := range Causes {
			if !k.Has(&Causes[i]) {
				out[k] = append(out[k], -1)
				continue
			}
			out[k] = append(out[k], n)
			n += Causes[i].Sizes
		}
	}
	return out, n
}()

// rows of all kinds and causes.
var rows = func() []Row {
	out := make([]Row, count)
	if len(table) != count*rowLength*2 {
		return out // being generated
	}
	at, low := 0, table[len(table)/2:]
	for i := range out {
		out[i].each(func(v *float64) {
			*v = float64(math.Float32frombits(uint32(table[at])<<24 | uint32(low[at])<<16))
			at++
		})
	}
	return out
}()

// each passes over the values of a row as the table has them.
func (r *Row) each(value func(*float64)) {
	for f := range r.Coefficients {
		for i := range r.Coefficients[f] {
			value(&r.Coefficients[f][i])
		}
	}
	for _, m := range []*Matrix{&r.Cold, &r.Warm} {
		for f := range m {
			for g := range f + 1 {
				value(&m[f][g])
				m[g][f] = m[f][g]
			}
		}
	}
	value(&r.Loss)
}

// Of returns the rows of a cause, by its place in Causes, of a kind: one for each size; none
// where machines of the kind cannot have it.
func Of(k Kind, cause int) []Row {
	at := starts[k][cause]
	if at < 0 {
		return nil
	}
	return rows[at : at+Causes[cause].Sizes]
}

// Encode writes rows in the order of kinds, causes and sizes, each value with the eight leading
// bits of its fraction: first the upper bytes of all, then the lower ones, since bytes that are
// alike compress better side by side.
func Encode(rows []Row) []byte {
	var upper, lower []byte
	for i := range rows {
		rows[i].each(func(v *float64) {
			const half = 1 << 15
			bits := math.Float32bits(float32(*v)) + half
			upper, lower = append(upper, byte(bits>>24)), append(lower, byte(bits>>16))
		})
	}
	return append(upper, lower...)
}
