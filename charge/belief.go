package charge

import (
	"math"

	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/quantity"
)

// belief is what is known of how a machine answers to charge: a set of weighted
// possibilities. Within it every value is turned so that it falls with added
// charge (a subcooling counts negative), in kelvin and kilograms.
type belief []node

// A node is one possibility: near the usual target the value falls by gain per
// kilogram, and by curvature it falls the faster the nearer it is to zero. What
// the value is now, held by no floor, is normal with mean x and standard
// deviation std.
//
// For given gain and curvature a move takes x to an affine function of x (see
// move), so that readings sharpen a normal x to a normal x.
type node struct {
	gain, curvature float64
	x, std          float64
	weight          float64 // its logarithm, until normalize
}

// The grid. Curvature is (slope at zero)/(slope at the top) − 1.
const (
	gainSteps   = 25
	gainReach   = 2.5 // standard deviations of the logarithm
	hiddenSteps = 41
	// unevenness is the part of a change by which a machine strays from its
	// own curve.
	unevenness = 0.1
)

var (
	curvatures = [...]float64{0, 1, 3}
	top        = float64(starvedMost.value)
	reference  = float64(quantity.FahrenheitDelta(12)) // a usual target, where the gain is counted
	// deepest is how far a flooded superheat or an empty liquid line may hide
	// behind its zero.
	deepest = float64(quantity.FahrenheitDelta(40))
)

func newBelief(d Dosing, whole, wholeDoubt float64) belief {
	m := d.Target.Method
	prior := float64(gainOf(m)) * 100 / whole
	doubt := math.Hypot(math.Log(gainFactor.value), wholeDoubt)
	curves := curvatures[:1]
	if m == Superheat {
		curves = curvatures[:]
	}
	starts := startsOf(d.History[0].Value, m)
	b := make(belief, 0, gainSteps*len(curves)*len(starts))
	for i := range gainSteps {
		z := gainReach * (2*float64(i)/(gainSteps-1) - 1)
		for _, c := range curves {
			for _, n := range starts {
				n.gain, n.curvature = prior*math.Exp(doubt*z), c
				n.weight -= z * z / 2
				for k := 1; k < len(d.History); k++ {
					n = n.after(float64(d.History[k].Net-d.History[k-1].Net)).
						seen(d.History[k].Value, d.History[0].Value, m)
				}
				b = append(b, n)
			}
		}
	}
	return b.normalized()
}

// startsOf returns what the first reading leaves possible: one normal value, or
// many narrow ones where a zero hides how far below zero it would be.
func startsOf(first delta, m Method) []node {
	std := stdOf(first)
	if float64(first.Value) > max(coverage*std, float64(wetLine.value)) {
		return []node{{x: m.falls() * float64(first.Value), std: std}}
	}
	from, to := -deepest, max(float64(first.Value), 0)+coverage*std
	width := (to - from) / hiddenSteps
	out := make([]node, hiddenSteps)
	for k := range out {
		value := from + (float64(k)+0.5)*width
		over := (max(value, 0) - max(float64(first.Value), 0)) / std
		out[k] = node{x: m.falls() * value, std: width / math.Sqrt(12), weight: -over * over / 2}
		out[k].std = max(out[k].std, float64(finestField.value))
	}
	return out
}

func stdOf(v delta) float64 { return max(v.Std, float64(finestField.value)) }

// seen weighs the node by a reading, and sharpens it where the reading is off
// the floor: the usual update of a normal value by a normal reading. Below zero
// a reading says no more than zero does.
func (n node) seen(value, first delta, m Method) node {
	noise := square(stdOf(value)) + square(unevenness*float64(value.Value-first.Value))
	shown := max(float64(value.Value), 0)
	floored := shown <= max(coverage*stdOf(value), float64(wetLine.value))
	expected := max(m.falls()*n.x, 0)
	spread := square(n.std) + noise
	r := shown - expected
	if !floored {
		r = shown - m.falls()*n.x
	}
	n.weight -= r*r/spread/2 + math.Log(spread)/2
	if !floored {
		gain := square(n.std) / spread
		n.x += m.falls() * gain * r
		n.std *= math.Sqrt(1 - gain)
	}
	return n
}

// normalized turns logarithms into weights that sum to 1, and drops what hardly
// counts.
func (b belief) normalized() belief {
	const hardly = 1e-4
	best, sum := math.Inf(-1), 0.0
	for _, n := range b {
		best = max(best, n.weight)
	}
	kept := b[:0]
	for _, n := range b {
		if n.weight = math.Exp(n.weight - best); n.weight > hardly {
			kept = append(kept, n)
			sum += n.weight
		}
	}
	for i := range kept {
		kept[i].weight /= sum
	}
	return kept
}

// after returns the node when mass m is added:
//
//	dx/dm = −g·(1 + c·(1 − x/top)) / (1 + c·(1 − reference/top))
//
// solved in closed form.
func (n node) after(m float64) node {
	if n.curvature == 0 {
		n.x -= n.gain * m
		return n
	}
	unit := n.gain / (1 + n.curvature*(1-reference/top))
	flat := top * (1 + n.curvature) / n.curvature // where the slope would be zero
	stretch := math.Exp(unit * n.curvature / top * m)
	n.x = flat + (min(n.x, 0.95*flat)-flat)*stretch
	n.std *= stretch
	return n
}

// slope is −dx/dm at x.
func (n node) slope() float64 {
	if n.curvature == 0 {
		return n.gain
	}
	return n.gain * (1 + n.curvature*(1-min(n.x, top)/top)) / (1 + n.curvature*(1-reference/top))
}

// past returns the probability that after adding m the value lies beyond edge,
// in the direction that sign moves it; the edge itself is uncertain. below is the normal
// distribution function.
func (b belief) past(m, sign, edge, edgeStd float64, below func(float64) float64) float64 {
	p := 0.0
	for i := range b {
		moved := b[i].after(m)
		std := math.Sqrt(square(moved.std) + square(edgeStd))
		p += moved.weight * below(sign*(edge-moved.x)/std)
	}
	return p
}

// expect returns mean and standard deviation of what will be read after adding
// m. A superheat or a subcooling is never read below zero, however far behind
// its zero the machine is, so each possibility is cut off there (the moments of
// a rectified normal distribution).
func (b belief) expect(m float64, method Method) (mean, std float64) {
	squares := 0.0
	for _, n := range b {
		moved := n.after(m)
		y, s := method.falls()*moved.x, max(moved.std, 1e-9)
		above, density := normal.Below(y/s), math.Exp(-square(y/s)/2)/math.Sqrt(2*math.Pi)
		mean += n.weight * (y*above + s*density)
		squares += n.weight * ((y*y+s*s)*above + y*s*density)
	}
	return mean, math.Sqrt(max(0, squares-mean*mean))
}

// gain returns mean and standard deviation of the fall per kilogram at the
// present value.
func (b belief) gain() (mean, std float64) { return b.moments(node.slope) }

func (b belief) moments(of func(node) float64) (mean, std float64) {
	squares := 0.0
	for _, n := range b {
		v := of(n)
		mean += n.weight * v
		squares += n.weight * v * v
	}
	return mean, math.Sqrt(max(0, squares-mean*mean))
}
